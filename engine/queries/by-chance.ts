// How a plan meets chance besides what its figures range over: counted shares, of which so many come out as each by itself does, and
// weather that differs from year to year. Each changes, season by season, what a step of the graph has worked out. Called by draws.ts.

import { drawBinomial } from '../agronomy/binomial-draw.ts';
import { standardNormalQuantile } from '../agronomy/normal.ts';
import type { Frame } from '../calculation/frame.ts';
import type { Node } from '../calculation/graph/graph.ts';
import type { ColumnDef } from '../calculation/layout.ts';
import type { Workbook } from '../commands/workbook.ts';
import { yearMonthDay } from '../values/civil.ts';
import { FILLED } from '../values/column.ts';
import { columnOf } from './book.ts';
import { rowId, rowName, rows } from './rows.ts';
import { scalarAt } from './shown.ts';

/** Numbers from 0 up to but not 1, the same again for the same seed and input. */
export type StreamOf = (inputId: string) => () => number;

/** The seasons to draw, of those that the streams give: from the first up to the last but one. */
export interface Seasons {
  readonly from: number;
  readonly until: number;
}

/** Something that was drawn: canonical, a season each. */
export interface DrawnInput {
  readonly id: string;
  readonly name: string;
  readonly values: Float64Array;
}

/** How a plan meets chance. */
export interface Chances {
  /** Sheets whose rows are the plan: what they lead to by links is what counts. */
  readonly plan: readonly string[];
  /** 'sheet/column' of what is decided beforehand and stays as planned, whatever chance brings. */
  readonly decided: readonly string[];
  /** Of what is decided: columns that follow from one another, so that in a row where one of them is drawn the others move with it. */
  readonly together?: readonly string[];
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

/** What chance makes of steps that are worked out: season by season from the first that is drawn, counted from 0. */
export interface ByChance {
  readonly inputs: readonly DrawnInput[];
  readonly touches: ReadonlyMap<Node, (frame: Frame, season: number) => void>;
}

interface CountedCell {
  readonly slot: number;
  readonly trials: number;
  readonly typed: number | undefined;
  readonly even: Float64Array;
  /** How far from its chance the share came out, by season. */
  readonly values: Float64Array;
}

const NOTHING: ByChance = { inputs: [], touches: new Map() };

/**
 * A share whose things are counted: what comes out of them is drawn as soon as their chance is worked out. `drawnToo`: ids of the
 * inputs that are drawn.
 */
export function countedByChance(
  branch: Workbook,
  { sheet, share, of, isLeft }: CountedShare,
  { from, until }: Seasons,
  drawnToo: ReadonlySet<string>,
  streamOf: StreamOf,
): ByChance {
  const [chance, number] = [columnOf(branch, sheet, share), columnOf(branch, sheet, of)];
  const node = chance === undefined ? undefined : branch.document.program.built.columnNode(chance.def);
  if (chance === undefined || number === undefined || node === undefined) return NOTHING;
  const { frame } = branch.document;
  const [chances, numbers] = [frame.column(chance.def), frame.column(number.def)];
  const inputs: DrawnInput[] = [];
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
    const even = manyOf(until - from, next);
    const values = new Float64Array(until - from);
    drawn.push({ slot, trials, typed, even, values });
    inputs.push({ id, name: `${rowName(branch, sheet, slot)} / ${chance.name}, as each comes out`, values });
  }
  const touch = (changing: Frame, at: number): void => {
    const { values: now, states } = changing.column(chance.def);
    for (const { slot, trials, typed, even, values } of drawn) {
      const likely = typed ?? now[slot] ?? 0;
      if (states[slot] !== FILLED || !(likely >= 0 && likely <= 1)) continue;
      const came = drawBinomial(even[at] ?? 0, trials, likely) / trials;
      values[at] = came - likely;
      changing.write(chance.def, slot, came, FILLED);
    }
  };
  return { inputs, touches: new Map([[node, touch]]) };
}

/** Months that are warmer or colder than the average year's, as in a year that was measured or by the spread that they have. */
export function yearsByChance(branch: Workbook, differ: YearsDiffer, seasons: Seasons, streamOf: StreamOf): ByChance {
  const { days } = differ;
  const date = columnOf(branch, days.sheet, days.date);
  if (date === undefined) return NOTHING;
  const { inputs, byMonth } =
    measuredYears(branch, differ, seasons, streamOf) ?? spreadOfMonths(branch, differ, seasons, streamOf);
  if (byMonth.size === 0) return NOTHING;
  const touches = new Map<Node, (frame: Frame, season: number) => void>();
  const monthsOf = monthsBy(date.def);
  for (const id of days.columns) {
    const column = columnOf(branch, days.sheet, id);
    const node = column === undefined ? undefined : branch.document.program.built.columnNode(column.def);
    if (column === undefined || node === undefined) continue;
    // A day that is typed is worked out by nobody, so the average year's is kept to start from.
    const average = branch.document.frame.column(column.def).values.slice();
    touches.set(node, (frame, season) => {
      const own = frame.ownColumn(column.def);
      const { values, states } = own;
      const typed = frame.typed[column.def.number]?.over;
      const months = monthsOf(frame);
      const warmer = Float64Array.from({ length: 13 }, (_, month) => byMonth.get(month)?.[season] ?? 0);
      for (const slot of rows(branch, days.sheet)) {
        if (states[slot] !== FILLED) continue;
        const usual = typed?.has(slot) === true ? average[slot] : values[slot];
        values[slot] = (usual ?? 0) + (warmer[months[slot] ?? 0] ?? 0) + 0;
      }
      own.touched();
    });
  }
  return { inputs, touches };
}

/** How much warmer months are than the average year's, by the month's number, a season each. */
interface Warmer {
  readonly inputs: readonly DrawnInput[];
  readonly byMonth: ReadonlyMap<number, Float64Array>;
}

/** A whole year of those measured for each season; undefined where there are too few. */
function measuredYears(
  branch: Workbook,
  { own }: YearsDiffer,
  { from, until }: Seasons,
  streamOf: StreamOf,
): Warmer | undefined {
  const columns = own?.months.map((id) => columnOf(branch, own.sheet, id)) ?? [];
  if (own === undefined || columns.length === 0) return undefined;
  const years: (readonly number[])[] = [];
  for (const slot of rows(branch, own.sheet)) {
    const warmer = columns.map((column) => (column === undefined ? null : scalarAt(branch, column, slot)));
    if (warmer.every((one) => typeof one === 'number')) years.push(warmer);
  }
  if (years.length < ENOUGH_YEARS) return undefined;
  const next = skipped(streamOf(own.sheet), from);
  // Its months go together, so the year is one input: what hangs on it is grouped by which year it was.
  const which = manyOf(until - from, () => Math.floor(next() * years.length));
  return {
    inputs: [{ id: own.sheet, name: 'Weather, as in a year that was measured', values: which }],
    byMonth: new Map(columns.map((_, index) => [index + 1, which.map((year) => years[year]?.[index] ?? 0)])),
  };
}

/** Each month by itself: normal, by the spread between years that it has. */
function spreadOfMonths(
  branch: Workbook,
  { months }: YearsDiffer,
  { from, until }: Seasons,
  streamOf: StreamOf,
): Warmer {
  const inputs: DrawnInput[] = [];
  const byMonth = new Map<number, Float64Array>();
  const [number, spread] = [
    columnOf(branch, months.sheet, months.number),
    columnOf(branch, months.sheet, months.spread),
  ];
  if (number === undefined || spread === undefined) return { inputs, byMonth };
  for (const slot of rows(branch, months.sheet)) {
    const [month, deviation] = [scalarAt(branch, number, slot), scalarAt(branch, spread, slot)];
    if (typeof month !== 'number' || typeof deviation !== 'number' || deviation <= 0) continue;
    const id = `${months.sheet}/${rowId(branch, months.sheet, slot)}/${months.spread}`;
    const next = skipped(streamOf(id), from);
    const values = manyOf(until - from, () => deviation * standardNormalQuantile(nearly(next())));
    byMonth.set(month, values);
    inputs.push({ id, name: `${rowName(branch, months.sheet, slot)} warmer or colder`, values });
  }
  return { inputs, byMonth };
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

/** So many numbers one after another. In a loop: `from` of a length costs more than most of what is drawn. */
export function manyOf(count: number, next: () => number): Float64Array {
  const values = new Float64Array(count);
  for (let at = 0; at < count; at++) values[at] = next();
  return values;
}

/** A stream from its so-many-th number on. */
export function skipped(next: () => number, count: number): () => number {
  for (let at = 0; at < count; at++) next();
  return next;
}
