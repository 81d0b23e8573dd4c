// Folds of the rows of a group that are not as the reading row says: COUNTIFS(Plantings[Bed]; "<>" & [Bed]). A group is put in order once,
// those that are alike side by side, and folded from its beginning on and from its end on: what lies before and behind those that a
// row leaves out is its answer. Called by fold-plans.ts alone.

import type { Fold, Running } from '../../functions/definition.ts';
import { BLANK, FAULT, FILLED } from '../../values/column.ts';
import type { Faults, Texts } from '../../values/texts.ts';
import type { Frame } from '../frame.ts';
import type { Members } from '../indexes/group-index.ts';
import { boundary } from '../indexes/ranged-rows.ts';
import { meetsAll } from '../indexes/totals.ts';
import { type Kernel, room, scratch } from '../kernels/vector.ts';
import type { ColumnDef } from '../layout.ts';
import { readKey, roomForKey } from './group-keys.ts';
import type { Matching } from './scan-plans.ts';

/** How cells are told to be alike: numbers but for dust, texts but for case, links and the like by what they hold. */
export type Alike = 'numbers' | 'texts' | 'same';

/** A group in order, `count` rows that may be counted in. */
interface Ordered {
  readonly count: number;
  /** Where those like a value begin, and where they end. */
  readonly beginOf: (wanted: number) => number;
  readonly endOf: (wanted: number) => number;
  /** What is known of the first so many, and of those from so many on. */
  readonly before: Float64Array;
  readonly behind: Float64Array;
  /** How many values the first so many hold. */
  readonly filled: Int32Array;
  /** Faulty values, as their rows stand in the table: their places in this order, and which fault. */
  readonly faults: readonly { readonly place: number; readonly fault: number }[];
}

export interface OthersOf {
  /** Where the one condition is that rows are not alike. */
  readonly matching: Matching;
  readonly alike: Alike;
  /** undefined: rows are counted rather than values. */
  readonly column: ColumnDef | undefined;
  readonly fold: Fold;
  readonly running: Running;
}

export function othersKernel(
  { matching, alike, column, fold, running }: OthersOf,
  words: { readonly texts: Texts; readonly faults: Faults },
): Kernel {
  const { index, keys, filters, tests } = matching;
  const [test] = tests;
  if (test === undefined || tests.length > 1) throw new Error('Rows are left out by one condition');
  const { undefinedMeans } = fold;
  const none =
    undefinedMeans === 'blank'
      ? { value: 0, state: BLANK }
      : { value: words.faults.number(undefinedMeans), state: FAULT };
  const known = new Map<number, Ordered>();
  let run: object | undefined;

  const order = (group: number, { rows, from, count }: Members, frame: Frame): Ordered => {
    const found = known.get(group);
    if (found !== undefined) return found;
    const { values, states } = frame.column(test.column);
    const taking = rows
      .subarray(from, from + count)
      .filter((row) => states[row] === FILLED && meetsAll(filters, row, frame));
    const asked = (row: number): number => values[row] as number;
    const made = alike === 'numbers' ? byNumber(taking, asked) : byKind(taking, (row) => kindOf(asked(row)));
    const ordered = { ...made, ...folded(made.rows, taking, frame) };
    known.set(group, ordered);
    return ordered;
  };

  const kindOf = (value: number): number => (alike === 'texts' ? words.texts.fold(value) : value);

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
    const isFaulty = cells !== undefined && rows.some((row) => cells.states[row] === FAULT);
    return { count, before, behind, filled, faults: isFaulty ? faultsOf(rows, inTable, frame) : [] };
  };

  const faultsOf = (rows: Int32Array, inTable: Int32Array, frame: Frame): Ordered['faults'] => {
    if (column === undefined) return [];
    const { values, states } = frame.column(column);
    const places = new Map(Array.from(rows, (row, place) => [row, place]));
    return Array.from(inTable).flatMap((row) =>
      states[row] === FAULT ? { place: places.get(row) ?? 0, fault: values[row] as number } : [],
    );
  };

  const out = scratch();
  const key = roomForKey(keys.length + 1);
  return (batch) => {
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
      const { count, beginOf, endOf, before, behind, filled, faults } = order(
        group,
        groups.members(group),
        batch.frame,
      );
      const wanted = kindOf(key[keys.length] as number);
      const [begin, end] = [beginOf(wanted), endOf(wanted)];
      const fault = faults.find(({ place }) => place < begin || place >= end);
      const values = (filled[begin] as number) + (filled[count] as number) - (filled[end] as number);
      const result =
        fault?.fault ?? running.comesTo(running.join(before[begin] as number, behind[end] as number), values);
      const isNumber = result - result === 0;
      out.values[i] = isNumber ? result : none.value;
      const answered = fault !== undefined ? FAULT : isNumber ? FILLED : none.state;
      out.states[i] = answered;
      if (answered !== FILLED) out.clean = false;
    }
    return out;
  };
}

/** Rows by rising number, those with one number as in the table. */
function byNumber(taking: Int32Array, number: (row: number) => number) {
  const rows = Int32Array.from(Array.from(taking).sort((a, b) => number(a) - number(b)));
  const numbers = Float64Array.from(rows, number);
  return {
    rows,
    beginOf: (wanted: number) => boundary(numbers, 0, numbers.length, '<', wanted),
    endOf: (wanted: number) => boundary(numbers, 0, numbers.length, '<=', wanted),
  };
}

/** Rows by kind, the kind first that comes first in the table. */
function byKind(taking: Int32Array, kind: (row: number) => number) {
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
    beginOf: (wanted: number) => begins.get(wanted) ?? 0,
    endOf: (wanted: number) => (begins.get(wanted) ?? 0) + (sizes.get(wanted) ?? 0),
  };
}
