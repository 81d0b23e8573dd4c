// Folds of the rows of a group other than what the reading row says, COUNTIFS(Plantings[Bed]; "<>" & [Bed]), and of those whose text stands
// before or behind its own. A group is put in order once, those that are alike side by side, and folded from its beginning on and from its
// end on: an answer is what lies before those that are like the row's, behind them, or both. Called by fold-plans.ts alone.

import type { Fold, Running } from '../../functions/definition.ts';
import { type Column, FAULT, FILLED } from '../../values/column.ts';
import type { Faults } from '../../values/texts.ts';
import type { Frame } from '../frame.ts';
import type { Members } from '../indexes/group-index.ts';
import { meetsAll, undefinedCell } from '../indexes/totals.ts';
import { type Kernel, room, scratch } from '../kernels/vector.ts';
import type { ColumnDef } from '../layout.ts';
import { type Arranged, FEW_TO_ORDER } from './arranged.ts';
import { readKey, roomForKey } from './group-keys.ts';
import { MANY } from './range-plans.ts';
import type { Matching } from './scan-plans.ts';

/** A group in order, `count` rows that may be counted in. */
interface Ordered extends Arranged {
  readonly count: number;
  /** What is known of the first so many, and of those from so many on. */
  readonly before: Float64Array;
  readonly behind: Float64Array;
  /** How many values the first so many hold. */
  readonly filled: Int32Array;
  /** Faulty values, as their rows stand in the table: their places in this order, and which fault. */
  readonly faulty: readonly { readonly place: number; readonly fault: number }[];
}

export interface SideFold {
  /** With one condition, for which rows can be put in order. */
  readonly matching: Matching;
  /** undefined: rows are counted rather than values. */
  readonly column: ColumnDef | undefined;
  readonly fold: Fold;
  readonly running: Running;
}

/** `oneByOne` counts the same, for a few rows. */
export function sideKernel(
  { matching, column, fold, running }: SideFold,
  { faults }: { readonly faults: Faults },
  oneByOne: Kernel,
): Kernel {
  const { index, keys, filters, tests } = matching;
  const [test] = tests;
  const arrange = test?.arrange;
  if (test === undefined || arrange === undefined || tests.length > 1) throw new Error('There is one condition');
  const none = undefinedCell(fold, faults);
  const known = new Map<number, Ordered>();
  let run: object | undefined;

  const order = (group: number, { rows, from, count }: Members, frame: Frame): Ordered => {
    const found = known.get(group);
    if (found !== undefined) return found;
    const { values, states } = frame.column(test.column);
    const taking = rows
      .subarray(from, from + count)
      .filter((row) => states[row] === FILLED && meetsAll(filters, row, frame));
    const made = arrange(taking, (row) => values[row] as number);
    const ordered = { ...made, ...folded(made.rows, taking, frame) };
    known.set(group, ordered);
    return ordered;
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
    const faulty = cells === undefined || cells.exceptions === 0 ? [] : faultsOf(rows, inTable, cells);
    return { count, before, behind, filled, faulty };
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
      if (column === undefined && members.count <= FEW_TO_ORDER) {
        out.values[i] = counted(members, wanted, batch.frame);
        continue;
      }
      const { count, until, since, before, behind, filled, faulty } = order(group, members, batch.frame);
      const [to, from] = [until(wanted), since(wanted)];
      const fault = faulty.find(({ place }) => place < to || place >= from);
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

/** The faulty cells of rows, as these stand in their table, with their places in another order. */
function faultsOf(rows: Int32Array, inTable: Int32Array, { values, states }: Column): Ordered['faulty'] {
  const places = new Map(Array.from(rows, (row, place) => [row, place]));
  return Array.from(inTable).flatMap((row) =>
    states[row] === FAULT ? { place: places.get(row) ?? 0, fault: values[row] as number } : [],
  );
}
