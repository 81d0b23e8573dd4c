// Selling out of store as a function: what is taken of a lot in a week, when all lots of a product and what is asked for each
// week are known. The model stands in agronomy/selling-from-store.ts; read by trade/index.ts.

import { type LotWeek, soldFromStore } from '../../agronomy/selling-from-store.ts';
import { MASS, NONE } from '../../units/dimension.ts';
import type { Scalar } from '../../values/error.ts';
import type { FunctionDefinition } from '../definition.ts';
import { columnOf, columnOfDates, date, inUnit, KILOGRAM, overMatching, plain } from './build.ts';
import { numberOf, numbersOf } from './over-days.ts';

/** What is sold, by week and then by place. */
type Sold = ReadonlyMap<number, ReadonlyMap<number, number>>;

const runs = new WeakMap<readonly Scalar[], Sold>();

/** The run of a product's lots, worked out once for as long as the engine hands over the same lists. */
function runOf(columns: readonly (readonly Scalar[])[]): Sold {
  const [places = []] = columns;
  const kept = runs.get(places);
  if (kept !== undefined) return kept;
  const [place, week, incoming, wanted] = columns.map(numbersOf);
  const known: LotWeek[] = [];
  for (let row = 0; row < places.length; row++) {
    const one = {
      place: place?.[row] ?? Number.NaN,
      week: week?.[row] ?? Number.NaN,
      incoming: incoming?.[row] ?? Number.NaN,
      wanted: wanted?.[row] ?? Number.NaN,
    };
    if (!Number.isNaN(one.place + one.week)) known.push(one);
  }
  const sold = soldFromStore(known);
  const made = new Map<number, Map<number, number>>();
  for (let row = 0; row < known.length; row++) {
    const one = known[row] as LotWeek;
    let ofWeek = made.get(one.week);
    if (ofWeek === undefined) {
      ofWeek = new Map();
      made.set(one.week, ofWeek);
    }
    ofWeek.set(one.place, sold[row] ?? 0);
  }
  runs.set(places, made);
  return made;
}

export const SELLING: readonly FunctionDefinition[] = [
  overMatching(
    {
      name: 'SOLDFROMSTORE',
      group: 'after harvest',
      parameters: [plain('place'), date('week')],
      result: inUnit(KILOGRAM),
      doc: 'What is taken in a week of the lot with this place in the order of selling: what is asked for comes from the first lots first.',
      source: 'First to expire, first out: common practice',
    },
    [columnOf('places', NONE), columnOfDates('weeks'), columnOf('incoming', MASS), columnOf('wanted', MASS)],
    ([place = null, week = null], columns) => runOf(columns).get(numberOf(week))?.get(numberOf(place)) ?? null,
  ),
];
