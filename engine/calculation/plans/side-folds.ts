// Folds of the rows of a group other than what the reading row says, COUNTIFS(Plantings[Bed]; "<>" & [Bed]), and of those whose text stands
// before or behind its own. A group is put in order once, those that are alike side by side, and folded from its beginning on and from its
// end on: an answer is what lies before those that are like the row's, behind them, or both. Called by fold-plans.ts alone.

import type { Fold, Running } from '../../functions/definition.ts';
import type { Comparison } from '../../language/typed.ts';
import { type Column, FAULT, FILLED } from '../../values/column.ts';
import { firstPlace } from '../../values/first-place.ts';
import type { Faults, Texts } from '../../values/texts.ts';
import type { Frame } from '../frame.ts';
import type { Members } from '../indexes/group-index.ts';
import { boundary } from '../indexes/ranged-rows.ts';
import { meetsAll, undefinedCell } from '../indexes/totals.ts';
import { type Kernel, room, scratch } from '../kernels/vector.ts';
import type { ColumnDef } from '../layout.ts';
import { readKey, roomForKey } from './group-keys.ts';
import { MANY } from './range-plans.ts';
import type { Matching } from './scan-plans.ts';

/** How cells are told to be alike: numbers but for dust, texts but for case, links and the like by what they hold. */
export type Alike = 'numbers' | 'texts' | 'same';

/** Rows in order, and where those like a value begin and end. */
interface Arranged {
  readonly rows: Int32Array;
  readonly beginOf: (wanted: number) => number;
  readonly endOf: (wanted: number) => number;
}

/** A group in order, `count` rows that may be counted in. */
interface Ordered extends Arranged {
  readonly count: number;
  /** What is known of the first so many, and of those from so many on. */
  readonly before: Float64Array;
  readonly behind: Float64Array;
  /** How many values the first so many hold. */
  readonly filled: Int32Array;
  /** Faulty values, as their rows stand in the table: their places in this order, and which fault. */
  readonly faults: readonly { readonly place: number; readonly fault: number }[];
}

/** Up to where, and from where on, rows are taken: where those like the reading row's begin or end. */
interface Sides {
  readonly before?: 'begin' | 'end';
  readonly behind?: 'begin' | 'end';
}

const SIDES: Readonly<Record<Exclude<Comparison, '='>, Sides>> = {
  '<': { before: 'begin' },
  '<=': { before: 'end' },
  '>': { behind: 'end' },
  '>=': { behind: 'begin' },
  '<>': { before: 'begin', behind: 'end' },
};

export interface SideFold {
  /** With the one condition. */
  readonly matching: Matching;
  readonly comparison: Exclude<Comparison, '='>;
  /** Of others than texts only those that are other are asked for. */
  readonly alike: Alike;
  /** undefined: rows are counted rather than values. */
  readonly column: ColumnDef | undefined;
  readonly fold: Fold;
  readonly running: Running;
}

/** So many rows are counted sooner one by one than put in order, however many ask for them. */
const FEW_TO_COUNT = 16;

/** `oneByOne` counts the same, for a few rows. */
export function sideKernel(
  { matching, comparison, alike, column, fold, running }: SideFold,
  words: { readonly texts: Texts; readonly faults: Faults },
  oneByOne: Kernel,
): Kernel {
  const { index, keys, filters, tests } = matching;
  const [test] = tests;
  if (test === undefined || tests.length > 1) throw new Error('There is one condition');
  const { before: until, behind: since } = SIDES[comparison];
  const none = undefinedCell(fold, words.faults);
  const known = new Map<number, Ordered>();
  let run: object | undefined;

  const order = (group: number, { rows, from, count }: Members, frame: Frame): Ordered => {
    const found = known.get(group);
    if (found !== undefined) return found;
    const { values, states } = frame.column(test.column);
    const taking = rows
      .subarray(from, from + count)
      .filter((row) => states[row] === FILLED && meetsAll(filters, row, frame));
    const made = arranged(taking, (row) => values[row] as number);
    const ordered = { ...made, ...folded(made.rows, taking, frame) };
    known.set(group, ordered);
    return ordered;
  };

  const { texts } = words;
  const arranged = (taking: Int32Array, held: (row: number) => number): Arranged => {
    if (alike === 'numbers') return byNumber(taking, held);
    if (comparison !== '<>') return byText(taking, held, texts);
    return byKind(taking, held, alike === 'texts' ? (code) => texts.fold(code) : (value) => value);
  };

  const folded = (rows: Int32Array, inTable: Int32Array, frame: Frame) => {
    const cells = column === undefined ? undefined : frame.column(column);
    const count = rows.length;
    const before = new Float64Array(count + 1).fill(running.none);
    const behind = new Float64Array(count + 1).fill(running.none);
    const filled = new Int32Array(count + 1);
    const takes = (row: number): boolean => cells === undefined || cells.states[row] === FILLED;
    const told = (sofar: number, row: number): number =>
      takes(row) ? running.join(sofar, cells === undefined ? 1 : (cells.values[row] as number)) : sofar;
    for (let place = 0; place < count; place++) {
      const row = rows[place] as number;
      before[place + 1] = told(before[place] as number, row);
      filled[place + 1] = (filled[place] as number) + (takes(row) ? 1 : 0);
    }
    for (let place = count - 1; place >= 0; place--)
      behind[place] = told(behind[place + 1] as number, rows[place] as number);
    const faults = cells === undefined || cells.exceptions === 0 ? [] : faultsOf(rows, inTable, cells);
    return { count, before, behind, filled, faults };
  };

  const counted = ({ rows, from, count }: Members, wanted: number, frame: Frame): number => {
    const { values, states } = frame.column(test.column);
    let found = 0;
    for (let place = from; place < from + count; place++) {
      const row = rows[place] as number;
      const isCounted = states[row] === FILLED && test.meets(values[row] as number, wanted);
      if (isCounted && meetsAll(filters, row, frame)) found++;
    }
    return found;
  };

  const out = scratch();
  const key = roomForKey(keys.length + 1);
  return (batch) => {
    if (column === undefined && (batch.run === undefined || batch.count < MANY)) return oneByOne(batch);
    room(out, batch.count);
    if (batch.run === undefined || batch.run !== run) known.clear();
    run = batch.run;
    const parts = [...keys.map(({ kernel }) => kernel(batch)), test.kernel(batch)];
    const groups = index.read(batch.frame);
    out.clean = true;
    for (let i = 0; i < batch.count; i++) {
      const state = readKey(parts, i, key);
      out.states[i] = state;
      if (state !== FILLED) {
        out.values[i] = key[0] as number;
        out.clean = false;
        continue;
      }
      const group = groups.find(key);
      const members = groups.members(group);
      const wanted = key[keys.length] as number;
      if (column === undefined && members.count <= FEW_TO_COUNT) {
        out.values[i] = counted(members, wanted, batch.frame);
        continue;
      }
      const { count, beginOf, endOf, before, behind, filled, faults } = order(group, members, batch.frame);
      const [begin, end] = [beginOf(wanted), endOf(wanted)];
      const [to, from] = [
        until === undefined ? 0 : { begin, end }[until],
        since === undefined ? count : { begin, end }[since],
      ];
      const fault = faults.find(({ place }) => place < to || place >= from);
      const values = (filled[to] as number) + (filled[count] as number) - (filled[from] as number);
      const result =
        fault?.fault ?? running.comesTo(running.join(before[to] as number, behind[from] as number), values);
      const isNumber = result - result === 0;
      out.values[i] = isNumber ? result : none.value;
      const answered = fault !== undefined ? FAULT : isNumber ? FILLED : none.state;
      out.states[i] = answered;
      if (answered !== FILLED) out.clean = false;
    }
    return out;
  };
}

/** Rows by their texts, those with one text as in the table. */
function byText(taking: Int32Array, text: (row: number) => number, texts: Texts): Arranged {
  const rows = Int32Array.from(Array.from(taking).sort((a, b) => texts.order(text(a), text(b))));
  const against = (place: number, wanted: number): number => texts.order(text(rows[place] as number), wanted);
  return {
    rows,
    beginOf: (wanted) => firstPlace(0, rows.length, (place) => against(place, wanted) < 0),
    endOf: (wanted) => firstPlace(0, rows.length, (place) => against(place, wanted) <= 0),
  };
}

/** Rows by rising number, those with one number as in the table. */
function byNumber(taking: Int32Array, number: (row: number) => number): Arranged {
  const rows = Int32Array.from(Array.from(taking).sort((a, b) => number(a) - number(b)));
  const numbers = Float64Array.from(rows, number);
  return {
    rows,
    beginOf: (wanted) => boundary(numbers, 0, numbers.length, '<', wanted),
    endOf: (wanted) => boundary(numbers, 0, numbers.length, '<=', wanted),
  };
}

/** Rows by kind, the kind first that comes first in the table. */
function byKind(taking: Int32Array, held: (row: number) => number, kindOf: (value: number) => number): Arranged {
  const kind = (row: number): number => kindOf(held(row));
  const sizes = new Map<number, number>();
  for (const row of taking) sizes.set(kind(row), (sizes.get(kind(row)) ?? 0) + 1);
  const begins = new Map<number, number>();
  let begin = 0;
  for (const [one, size] of sizes) {
    begins.set(one, begin);
    begin += size;
  }
  const next = new Map(begins);
  const rows = new Int32Array(taking.length);
  for (const row of taking) {
    const place = next.get(kind(row)) ?? 0;
    rows[place] = row;
    next.set(kind(row), place + 1);
  }
  return {
    rows,
    beginOf: (wanted) => begins.get(kindOf(wanted)) ?? 0,
    endOf: (wanted) => (begins.get(kindOf(wanted)) ?? 0) + (sizes.get(kindOf(wanted)) ?? 0),
  };
}

/** The faulty cells of rows, as these stand in their table, with their places in another order. */
function faultsOf(rows: Int32Array, inTable: Int32Array, { values, states }: Column): Ordered['faults'] {
  const places = new Map(Array.from(rows, (row, place) => [row, place]));
  return Array.from(inTable).flatMap((row) =>
    states[row] === FAULT ? { place: places.get(row) ?? 0, fault: values[row] as number } : [],
  );
}
