// The figures that drawn seasons are asked for: which steps of the graph they rest on, and how they are read after each season.
// Called by draws.ts.

import type { Frame } from '../calculation/frame.ts';
import type { Node } from '../calculation/graph/graph.ts';
import { toScalar } from '../calculation/kernels/scalars.ts';
import { formulaText } from '../schema/lay-over.ts';
import { BLANK, FILLED } from '../values/column.ts';
import type { Scalar } from '../values/error.ts';
import { mondayOf } from '../values/iso-week.ts';
import { TEXT, type ValueType } from '../values/type.ts';
import { type Book, columnOf, sheetOf } from './book.ts';
import type { WeeklyFigure } from './by-week.ts';
import { planFormula } from './evaluate.ts';
import { type Figure, figureIn, numberOf } from './figures.ts';
import { rows } from './rows.ts';

/** A column by week, summed over the rows of each; or the most or least of them, where sums say nothing. */
export interface AskedWeeks extends WeeklyFigure {
  readonly fold?: 'sum' | 'least' | 'most';
}

export interface Asked {
  readonly figures: readonly Figure[];
  readonly weekly: readonly AskedWeeks[];
}

export interface DrawnFigure {
  readonly type: ValueType | undefined;
  /** Canonical, a season each; NaN where the figure was blank or an error. */
  readonly values: Float64Array;
}

/** A figure of every week. */
export interface DrawnWeeks {
  readonly type: ValueType | undefined;
  /** Mondays, in order. */
  readonly weeks: readonly { readonly week: number; readonly values: Float64Array }[];
}

export interface Read {
  /** The steps that must be up to date before figures are read. */
  readonly nodes: readonly Node[];
  /** Notes the figures of a season: of a branch of the book, whose frame was handed over. */
  readonly note: (branch: Book, frame: Frame, season: number) => void;
  readonly result: (seasons: number) => {
    readonly figures: readonly DrawnFigure[];
    readonly weekly: readonly DrawnWeeks[];
  };
}

/** Reads the figures of a book's branch again and again. */
export function reading(book: Book, asked: Asked, count: number): Read {
  const { built } = book.document.program;
  const nodes = new Set<Node>();
  const single = asked.figures.map((figure) => readFigure(book, figure, nodes, built.graph.order));
  const values = asked.figures.map(() => new Float64Array(count));
  const weekly = asked.weekly.map((figure) => new Weeks(book, figure, count, nodes));
  return {
    nodes: [...nodes],
    note: (branch, frame, season) => {
      values.forEach((seasons, i) => {
        seasons[season] = single[i]?.read(branch, frame) ?? Number.NaN;
      });
      for (const weeks of weekly) weeks.note(branch, season);
    },
    result: (seasons) => ({
      figures: values.map((all, i) => ({ type: single[i]?.type, values: all.slice(0, seasons) })),
      weekly: weekly.map((weeks) => weeks.result(seasons)),
    }),
  };
}

interface FigureRead {
  readonly type: DrawnFigure['type'];
  readonly read: (branch: Book, frame: Frame) => number | undefined;
}

function readFigure(book: Book, figure: Figure, nodes: Set<Node>, everything: readonly Node[]): FigureRead {
  if (figure.figure === 'formula') {
    const planned = planFormula(book, formulaText(figure.formula, book.document.program.schema));
    if (!planned.ok) return { type: undefined, read: () => undefined };
    for (const place of planned.reads) addNodes(book, place, nodes);
    const { type, follow } = planned;
    let answer: (() => Scalar) | undefined;
    const read = (_: Book, frame: Frame): number | undefined => {
      answer ??= follow(frame);
      return numberOf({ value: answer(), type, shown: '' });
    };
    return { type, read };
  }
  if (figure.figure === 'cell') {
    addNodes(book, `${figure.sheet}/${figure.column}`, nodes);
    const column = columnOf(book, figure.sheet, figure.column);
    const type = column?.type;
    const read = (branch: Book, frame: Frame): number | undefined => {
      const slot = branch.document.slotOf(figure.sheet, figure.row);
      if (slot === undefined || column === undefined) return undefined;
      const { values, states } = frame.column(column.def);
      const { words } = branch.document.program;
      const value = toScalar(words, type ?? TEXT, values[slot] ?? 0, states[slot] ?? BLANK);
      return numberOf({ value, type, shown: '' });
    };
    return { type, read };
  }
  // Any cell of any sheet may give a finding.
  for (const node of everything) nodes.add(node);
  return { type: undefined, read: (branch) => numberOf(figureIn(branch, figure)) };
}

/** The steps that make a sheet's rows and put them in order, and its column, of a place 'sheet' or 'sheet/column'. */
function addNodes(book: Book, place: string, nodes: Set<Node>): void {
  const { built } = book.document.program;
  const [sheetId = '', columnId] = place.split('/');
  const sheet = sheetOf(book, sheetId);
  if (sheet === undefined) return;
  const { table } = sheet;
  const maker = built.rowsSource(table).maker;
  if (maker !== undefined) nodes.add(maker);
  const column = columnId === undefined ? undefined : sheet.column(columnId)?.def;
  for (const def of [table.shown, column]) {
    const node = def === undefined ? undefined : built.columnNode(def);
    if (node !== undefined) nodes.add(node);
  }
}

/** A column by week, season by season. */
class Weeks {
  readonly #book: Book;
  readonly #figure: AskedWeeks;
  readonly #count: number;
  readonly #weeks = new Map<number, Float64Array>();

  constructor(book: Book, figure: AskedWeeks, count: number, nodes: Set<Node>) {
    this.#book = book;
    this.#figure = figure;
    this.#count = count;
    for (const column of [figure.date, figure.column]) addNodes(book, `${figure.sheet}/${column}`, nodes);
  }

  note(book: Book, season: number): void {
    const { sheet, date, column, fold = 'sum' } = this.#figure;
    const [day, amount] = [columnOf(book, sheet, date), columnOf(book, sheet, column)];
    if (day === undefined || amount === undefined) return;
    const { frame } = book.document;
    const [days, amounts] = [frame.column(day.def), frame.column(amount.def)];
    for (const slot of rows(book, sheet)) {
      if (days.states[slot] !== FILLED || amounts.states[slot] !== FILLED) continue;
      const of = this.#of(mondayOf(days.values[slot] ?? 0));
      const [before = Number.NaN, value = 0] = [of[season], amounts.values[slot]];
      of[season] = Number.isNaN(before) ? value : FOLDS[fold](before, value);
    }
  }

  #of(week: number): Float64Array {
    const known = this.#weeks.get(week);
    if (known !== undefined) return known;
    const made = new Float64Array(this.#count).fill(Number.NaN);
    this.#weeks.set(week, made);
    return made;
  }

  result(seasons: number): DrawnWeeks {
    const { sheet, column } = this.#figure;
    const weeks = [...this.#weeks].sort(([a], [b]) => a - b);
    return {
      type: columnOf(this.#book, sheet, column)?.type,
      weeks: weeks.map(([week, values]) => ({ week, values: values.slice(0, seasons) })),
    };
  }
}

const FOLDS = {
  sum: (a: number, b: number): number => a + b,
  least: Math.min,
  most: Math.max,
};
