// Counts the rows of a group whose text stands before or after one of the reading row's: where many rows ask, the texts of each
// group are put in order once and looked up, rather than compared one by one for each of them. Called by fold-plans.ts alone.

import type { Comparison } from '../../language/typed.ts';
import { FILLED } from '../../values/column.ts';
import type { Texts } from '../../values/texts.ts';
import type { Frame } from '../frame.ts';
import type { GroupIndex } from '../indexes/group-index.ts';
import { meetsAll } from '../indexes/totals.ts';
import { type Kernel, room, scratch } from '../kernels/vector.ts';
import { readKey, roomForKey } from './group-keys.ts';
import { MANY } from './range-plans.ts';
import type { Matching } from './scan-plans.ts';

/** What of a list in order is counted: those up to a place or those from it on, and whether texts equal to the wanted one lie before it. */
interface Counted {
  readonly upTo: boolean;
  readonly equalBefore: boolean;
}

const COUNTED: Partial<Readonly<Record<Comparison, Counted>>> = {
  '<': { upTo: true, equalBefore: false },
  '<=': { upTo: true, equalBefore: true },
  '>': { upTo: false, equalBefore: true },
  '>=': { upTo: false, equalBefore: false },
};

/** `oneByOne` counts the same, for a few rows; it is all there is where the one condition is no comparison of texts in order. */
export function countedTexts(matching: Matching, comparison: Comparison, texts: Texts, oneByOne: Kernel): Kernel {
  const counted = COUNTED[comparison];
  const [test] = matching.tests;
  if (counted === undefined || test === undefined || matching.tests.length > 1) return oneByOne;
  const { index, keys } = matching;
  const { upTo, equalBefore } = counted;
  const order = (a: number, b: number): number => texts.order(a, b);
  const known = new Map<number, Float64Array>();
  let run: object | undefined;
  const inOrder = (group: number, groups: GroupIndex, frame: Frame): Float64Array => {
    const found = known.get(group);
    if (found !== undefined) return found;
    const { rows, from, count } = groups.members(group);
    const { values, states } = frame.column(test.column);
    const given = rows
      .subarray(from, from + count)
      .filter((row) => states[row] === FILLED && meetsAll(matching.filters, row, frame));
    const made = Float64Array.from(given, (row) => values[row] as number).sort(order);
    known.set(group, made);
    return made;
  };
  const key = roomForKey(keys.length + 1);
  const out = scratch();
  return (batch) => {
    if (batch.run === undefined || batch.count < MANY) return oneByOne(batch);
    room(out, batch.count);
    if (batch.run !== run) known.clear();
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
      const list = inOrder(groups.find(key), groups, batch.frame);
      const place = placeIn(list, key[keys.length] as number, equalBefore, order);
      out.values[i] = upTo ? place : list.length - place;
    }
    return out;
  };
}

/** Before which place of a list in order a text stands, and after those equal to it where that is asked. */
function placeIn(
  list: Float64Array,
  wanted: number,
  equalBefore: boolean,
  order: (a: number, b: number) => number,
): number {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const there = order(list[middle] as number, wanted);
    if (there < 0 || (there === 0 && equalBefore)) low = middle + 1;
    else high = middle;
  }
  return low;
}
