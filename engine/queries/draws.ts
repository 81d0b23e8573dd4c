// Seasons drawn by chance: every figure that is not known for sure is drawn between its lowest and highest, most often near
// what is likely (triangular), counted shares are drawn of their number (binomial), and the figures asked for are noted. One stream
// of chance an input, by its id, so that an edit elsewhere does not reshuffle it. The streams come from outside: the engine
// has no chance.
//
// What is drawn is written straight into a branch's cells, and only the steps between it and the figures run (TrialRun). A season is
// the same whichever was drawn before it, so workers may share them.

import { drawBinomial } from '../agronomy/binomial-draw.ts';
import { standardNormalQuantile } from '../agronomy/normal.ts';
import type { Frame } from '../calculation/frame.ts';
import type { Node } from '../calculation/graph/graph.ts';
import { type Touch, TrialRun } from '../calculation/graph/trial-run.ts';
import type { ColumnDef, TableDef } from '../calculation/layout.ts';
import { RowSet } from '../calculation/row-set.ts';
import type { Command } from '../commands/command.ts';
import type { Workbook } from '../commands/workbook.ts';
import type { ProgramColumn } from '../schema/compile.ts';
import { yearMonthDay } from '../values/civil.ts';
import { FILLED } from '../values/column.ts';
import { columnOf } from './book.ts';
import { type Asked, type DrawnFigure, type DrawnWeeks, type Read, reading } from './drawn-figures.ts';
import { putInput } from './inputs.ts';
import { rowId, rowName, rows } from './rows.ts';
import { scalarAt } from './shown.ts';
import type { UncertainInput } from './uncertain.ts';

/** Numbers from 0 up to but not 1, the same again for the same seed and input. */
export type StreamOf = (inputId: string) => () => number;

/** How a plan meets chance. */
export interface Chances {
  /** Sheets whose rows are the plan: what they lead to by links is what counts. */
  readonly plan: readonly string[];
  /** 'sheet/column' of what is decided beforehand and stays as planned, whatever chance brings. */
  readonly decided: readonly string[];
  /** Computed shares of things that each come out by themselves. */
  readonly counted: readonly CountedShare[];
  /** Weather that differs from year to year. */
  readonly years?: YearsDiffer;
}

/** Days whose figures lie above or below the average year's together, a month at a time. */
export interface YearsDiffer {
  /** The sheet of days, its date, and the columns that a warmer or colder month moves. */
  readonly days: { readonly sheet: string; readonly date: string; readonly columns: readonly string[] };
  /** The sheet of months, the month's number from 1, and the standard deviation of its mean between years. */
  readonly months: { readonly sheet: string; readonly number: string; readonly spread: string };
  /** Years that were measured, and the columns of how much warmer January to December were; enough of them take the spread's place. */
  readonly own?: { readonly sheet: string; readonly months: readonly string[] };
}

/** With fewer years than these a drawn season is no measured one: its months vary by their spread, each by itself (a judgement). */
const ENOUGH_YEARS = 10;

/** Of so many things, each with the chance that its sheet gives. */
export interface CountedShare {
  readonly sheet: string;
  readonly share: string;
  /** The column with their number; or with the number of those that come out. */
  readonly of: string;
  readonly isLeft: boolean;
}

/** Something that was drawn: canonical, a season each. */
export interface DrawnInput {
  readonly id: string;
  readonly name: string;
  readonly values: Float64Array;
}

export interface Drawn {
  readonly inputs: readonly DrawnInput[];
  readonly figures: readonly DrawnFigure[];
  readonly weekly: readonly DrawnWeeks[];
}

export interface DrawOrder {
  readonly inputs: readonly UncertainInput[];
  readonly asked: Asked;
  /** The seasons to draw, of those that the streams give: from the first up to the last but one. */
  readonly from: number;
  readonly until: number;
  readonly chances?: Chances;
}

/** So many seasons that no face could hold more. */
export const MOST_DRAWS = 100_000;

/** The cells of one column that are drawn, side by side. */
interface DrawnColumn {
  readonly column: ProgramColumn;
  readonly slots: RowSet;
  readonly cells: readonly { readonly slot: number; readonly values: Float64Array }[];
}

interface CountedCell {
  readonly slot: number;
  readonly trials: number;
  readonly typed: number | undefined;
  readonly even: Float64Array;
  /** How far from its chance the share came out, by season. */
  readonly values: Float64Array;
}

export class Draws {
  readonly #branch: Workbook;
  /** The branch's, worked out here alone. */
  readonly #frame: Frame;
  readonly #order: DrawOrder;
  readonly #drawn: readonly Float64Array[];
  readonly #counted: DrawnInput[] = [];
  readonly #columns: readonly DrawnColumn[];
  readonly #read: Read;
  readonly #run: TrialRun;
  #done = 0;

  constructor(workbook: Workbook, order: DrawOrder, streamOf: StreamOf) {
    this.#order = order;
    const count = order.until - order.from;
    this.#drawn = order.inputs.map((input) => {
      const next = skipped(streamOf(input.id), order.from);
      return Float64Array.from({ length: count }, () => drawnFrom(input, next()));
    });
    this.#columns = columnsOf(workbook, order.inputs, this.#drawn);
    this.#read = reading(workbook, order.asked, count);
    // Nothing else is worked out, here or in the workbook.
    workbook.document.frame.upTo(this.#read.nodes);
    this.#branch = workbook.branch();
    const { built } = workbook.document.program;
    const tried = this.#columns.flatMap(({ column: { def } }) => {
      const typed = built.typedSource(def);
      return typed === undefined ? [built.columnSource(def)] : [built.columnSource(def), typed];
    });
    const held = new Set<Node>(nodesOf(workbook, order.chances?.decided ?? []));
    const touched = new Map<Node, Touch>();
    for (const counted of order.chances?.counted ?? []) this.#count(counted, streamOf, touched);
    if (order.chances?.years !== undefined) this.#differ(order.chances.years, streamOf, touched);
    this.#frame = this.#branch.document.frame.takenOver(this.#read.nodes);
    const free = freeTables(workbook, this.#frame, held);
    this.#run = new TrialRun(built.graph, { tried, wanted: this.#read.nodes, held, touched, free });
  }

  get done(): number {
    return this.#done;
  }

  get isDone(): boolean {
    return this.#done >= this.#order.until - this.#order.from;
  }

  /** Draws so many seasons more; the sentence of a refusal, which ends it. */
  step(seasons: number): string | undefined {
    const { inputs, from, until } = this.#order;
    const last = Math.min(until - from, this.#done + seasons);
    const frame = this.#frame;
    const { program } = this.#branch.document;
    if (this.#done === 0) {
      // Once as a person would put them in, so that the cells count as typed; from then on only their numbers change.
      const commands = inputs.map(
        (input, i): Command => putInput(this.#branch, input, { value: this.#drawn[i]?.[0] ?? 0, unit: undefined }),
      );
      const refused = this.#branch.tryOut(commands, []);
      if (refused !== undefined) return refused;
    }
    const { built } = program;
    for (; this.#done < last; this.#done++) {
      const at = this.#done;
      for (const { column, cells, slots } of this.#columns) {
        for (const { slot, values } of cells) frame.write(column.def, slot, values[at] ?? 0, FILLED);
        this.#run.changed(frame, built.columnSource(column.def), slots);
        const typed = built.typedSource(column.def);
        if (typed !== undefined) this.#run.changed(frame, typed, slots);
      }
      this.#run.run(frame);
      this.#read.note(this.#branch, frame, at);
    }
    return undefined;
  }

  /** What was drawn so far. */
  result(): Drawn {
    const upTo = (values: Float64Array): Float64Array => values.slice(0, this.#done);
    const inputs = this.#order.inputs.map(({ id, name }, i): DrawnInput => {
      return { id, name, values: upTo(this.#drawn[i] ?? new Float64Array()) };
    });
    const counted = this.#counted.map((one) => ({ ...one, values: upTo(one.values) }));
    return { inputs: [...inputs, ...counted], ...this.#read.result(this.#done) };
  }

  /** A share whose things are counted: what comes out of them is drawn as soon as their chance is worked out. */
  #count({ sheet, share, of, isLeft }: CountedShare, streamOf: StreamOf, touched: Map<Node, Touch>): void {
    const branch = this.#branch;
    const [chance, number] = [columnOf(branch, sheet, share), columnOf(branch, sheet, of)];
    const node = chance === undefined ? undefined : branch.document.program.built.columnNode(chance.def);
    if (chance === undefined || number === undefined || node === undefined) return;
    const { frame } = branch.document;
    const [chances, numbers] = [frame.column(chance.def), frame.column(number.def)];
    const { from, until } = this.#order;
    const drawnToo = new Set(this.#order.inputs.map(({ id }) => id));
    const drawn: CountedCell[] = [];
    for (const slot of rows(branch, sheet)) {
      const known = chances.states[slot] === FILLED && numbers.states[slot] === FILLED;
      const planned = (numbers.values[slot] ?? 0) / (isLeft ? (chances.values[slot] ?? 1) : 1);
      const trials = Math.round(planned);
      if (!known || !Number.isFinite(planned) || trials < 1) continue;
      const place = `${sheet}/${rowId(branch, sheet, slot)}/${share}`;
      const id = `${place}/count`;
      const next = skipped(streamOf(id), from);
      // What is typed is worked out by nobody, so what came out of it stands in its place until it is drawn again.
      const isTyped = frame.typedIn(chance.def)?.over.has(slot) === true && !drawnToo.has(place);
      const typed = isTyped ? chances.values[slot] : undefined;
      const even = Float64Array.from({ length: until - from }, next);
      const values = new Float64Array(until - from);
      drawn.push({ slot, trials, typed, even, values });
      this.#counted.push({ id, name: `${rowName(branch, sheet, slot)} / ${chance.name}, as each comes out`, values });
    }
    touched.set(node, (changing: Frame) => {
      const at = this.#done;
      const { values: now, states } = changing.column(chance.def);
      for (const { slot, trials, typed, even, values } of drawn) {
        const likely = typed ?? now[slot] ?? 0;
        if (states[slot] !== FILLED || !(likely >= 0 && likely <= 1)) continue;
        const came = drawBinomial(even[at] ?? 0, trials, likely) / trials;
        values[at] = came - likely;
        changing.write(chance.def, slot, came, FILLED);
      }
    });
  }

  /** Months that are warmer or colder than the average year's, as in a year that was measured or by the spread that they have. */
  #differ(differ: YearsDiffer, streamOf: StreamOf, touched: Map<Node, Touch>): void {
    const branch = this.#branch;
    const { days } = differ;
    const date = columnOf(branch, days.sheet, days.date);
    if (date === undefined) return;
    const byMonth = this.#measuredYears(differ, streamOf) ?? this.#spreadOfMonths(differ, streamOf);
    if (byMonth.size === 0) return;
    const monthsOf = monthsBy(date.def);
    for (const id of days.columns) {
      const column = columnOf(branch, days.sheet, id);
      const node = column === undefined ? undefined : branch.document.program.built.columnNode(column.def);
      if (column === undefined || node === undefined) continue;
      // A day that is typed is worked out by nobody, so the average year's is kept to start from.
      const average = branch.document.frame.column(column.def).values.slice();
      touched.set(node, (frame) => {
        const own = frame.ownColumn(column.def);
        const { values, states } = own;
        const typed = frame.typed[column.def.number]?.over;
        const months = monthsOf(frame);
        const warmer = Float64Array.from({ length: 13 }, (_, month) => byMonth.get(month)?.[this.#done] ?? 0);
        for (const slot of rows(branch, days.sheet)) {
          if (states[slot] !== FILLED) continue;
          const usual = typed?.has(slot) === true ? average[slot] : values[slot];
          values[slot] = (usual ?? 0) + (warmer[months[slot] ?? 0] ?? 0) + 0;
        }
        own.touched();
      });
    }
  }

  /** A whole year of those measured for each season: how much warmer its months were, by the month's number; where there are enough. */
  #measuredYears({ own }: YearsDiffer, streamOf: StreamOf): ReadonlyMap<number, Float64Array> | undefined {
    const branch = this.#branch;
    const columns = own?.months.map((id) => columnOf(branch, own.sheet, id)) ?? [];
    if (own === undefined || columns.length === 0) return undefined;
    const years: (readonly number[])[] = [];
    for (const slot of rows(branch, own.sheet)) {
      const warmer = columns.map((column) => (column === undefined ? null : scalarAt(branch, column, slot)));
      if (warmer.every((one) => typeof one === 'number')) years.push(warmer);
    }
    if (years.length < ENOUGH_YEARS) return undefined;
    const { from, until } = this.#order;
    const next = skipped(streamOf(own.sheet), from);
    // Its months go together, so the year is one input: what hangs on it is grouped by which year it was.
    const which = Float64Array.from({ length: until - from }, () => Math.floor(next() * years.length));
    this.#counted.push({ id: own.sheet, name: 'Weather, as in a year that was measured', values: which });
    return new Map(columns.map((_, index) => [index + 1, which.map((year) => years[year]?.[index] ?? 0)]));
  }

  /** Each month by itself: normal, by the spread between years that it has. */
  #spreadOfMonths({ months }: YearsDiffer, streamOf: StreamOf): ReadonlyMap<number, Float64Array> {
    const branch = this.#branch;
    const { from, until } = this.#order;
    const byMonth = new Map<number, Float64Array>();
    const [number, spread] = [
      columnOf(branch, months.sheet, months.number),
      columnOf(branch, months.sheet, months.spread),
    ];
    if (number === undefined || spread === undefined) return byMonth;
    for (const slot of rows(branch, months.sheet)) {
      const [month, deviation] = [scalarAt(branch, number, slot), scalarAt(branch, spread, slot)];
      if (typeof month !== 'number' || typeof deviation !== 'number' || deviation <= 0) continue;
      const id = `${months.sheet}/${rowId(branch, months.sheet, slot)}/${months.spread}`;
      const next = skipped(streamOf(id), from);
      const values = Float64Array.from(
        { length: until - from },
        () => deviation * standardNormalQuantile(nearly(next())),
      );
      byMonth.set(month, values);
      this.#counted.push({ id, name: `${rowName(branch, months.sheet, slot)} warmer or colder`, values });
    }
    return byMonth;
  }
}

/** The months of days, by slot, from 1; looked at again where the days are others. */
function monthsBy(date: ColumnDef): (frame: Frame) => Uint8Array {
  let stamp: number | undefined;
  let months = new Uint8Array(0);
  return (frame) => {
    const { values, length, stamp: now } = frame.column(date);
    if (stamp !== now) months = Uint8Array.from({ length }, (_, slot) => yearMonthDay(values[slot] ?? 0).month);
    stamp = now;
    return months;
  };
}

/** Chance never gives 1, and of 0 there is no normal value. */
function nearly(even: number): number {
  return Math.max(even, 2 ** -54);
}

/** A stream from its so-many-th number on. */
function skipped(next: () => number, count: number): () => number {
  for (let at = 0; at < count; at++) next();
  return next;
}

function columnsOf(
  book: Workbook,
  inputs: readonly UncertainInput[],
  drawn: readonly Float64Array[],
): readonly DrawnColumn[] {
  const columns = new Map<ProgramColumn, { slot: number; values: Float64Array }[]>();
  inputs.forEach(({ sheet, row, column: id }, i) => {
    const column = columnOf(book, sheet, id);
    const slot = book.document.slotOf(sheet, row);
    const values = drawn[i];
    if (column === undefined || slot === undefined || values === undefined) return;
    const cells = columns.get(column);
    if (cells === undefined) columns.set(column, [{ slot, values }]);
    else cells.push({ slot, values });
  });
  return [...columns].map(([column, cells]) => {
    const slots = new RowSet();
    for (const { slot } of cells) slots.add(slot);
    return { column, cells, slots };
  });
}

function nodesOf(book: Workbook, places: readonly string[]): readonly Node[] {
  return places.flatMap((place) => {
    const [sheet = '', id = ''] = place.split('/');
    const column = columnOf(book, sheet, id);
    const node = column === undefined ? undefined : book.document.program.built.columnNode(column.def);
    return node ?? [];
  });
}

/** Tables of made rows in which nothing is typed and to which no link leads that is typed or stays as it is. */
function freeTables({ document }: Workbook, frame: Frame, held: ReadonlySet<Node>): ReadonlySet<TableDef> {
  const { sheets, built } = document.program;
  const linked = new Set<string>();
  for (const { role, type, def } of sheets.flatMap(({ columns }) => columns)) {
    if (type?.kind !== 'link') continue;
    const node = built.columnNode(def);
    const isHeld = node !== undefined && held.has(node);
    if (role === 'entered' || isHeld || (frame.typed[def.number]?.over.size ?? 0) > 0) linked.add(type.table);
  }
  const free = sheets.filter(({ id, schema }) => {
    const isMade = schema.rows.from !== 'entry' && schema.rows.from !== 'single';
    return isMade && !linked.has(id) && !document.shelf.has(id);
  });
  return new Set(free.map(({ table }) => table));
}

/** A triangular value from an even one: the inverse of its distribution (Kotz & van Dorp 2004, Beyond Beta, section 1.2). */
export function drawnFrom({ low, likely, high, whole }: Omit<UncertainInput, 'id'>, even: number): number {
  const span = high - low;
  const below = span === 0 ? 0 : (likely - low) / span;
  const value =
    even < below
      ? low + Math.sqrt(even * span * (likely - low))
      : high - Math.sqrt((1 - even) * span * (high - likely));
  return whole ? Math.round(value) : value;
}
