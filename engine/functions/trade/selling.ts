// Selling out of store as a function: what is taken of a lot in a week, when all lots of a product and what is asked for each
// week are known. The model stands in agronomy/selling-from-store.ts; read by trade/index.ts.

import { soldFromStore } from '../../agronomy/selling-from-store.ts';
import { MASS, NONE } from '../../units/dimension.ts';
import type { Scalar } from '../../values/error.ts';
import type { FunctionDefinition } from '../definition.ts';
import { columnOf, columnOfDates, date, inUnit, KILOGRAM, overMatching, plain } from './build.ts';
import { numberOf, numbersOf } from './over-days.ts';

/** What is sold, by week and then by place. */
type Sold = ReadonlyMap<number, ReadonlyMap<number, number>>;

const runs = new WeakMap<readonly Scalar[], Sold>();
const NONE_KNOWN = new Float64Array(0);

/** The run of a product's lots, worked out once for as long as the engine hands over the same lists. */
function runOf(columns: readonly (readonly Scalar[])[]): Sold {
  const [places = []] = columns;
  const kept = runs.get(places);
  if (kept !== undefined) return kept;
  const [place = NONE_KNOWN, week = NONE_KNOWN, incoming = NONE_KNOWN, wanted = NONE_KNOWN] = columns.map(numbersOf);
  const sold = soldFromStore({ place, week, incoming, wanted });
  const made = new Map<number, Map<number, number>>();
  for (let row = 0; row < place.length; row++) {
    const [ofPlace, at] = [place[row] as number, week[row] as number];
    if (Number.isNaN(ofPlace + at)) continue;
    let ofWeek = made.get(at);
    if (ofWeek === undefined) {
      ofWeek = new Map();
      made.set(at, ofWeek);
    }
    ofWeek.set(ofPlace, sold[row] as number);
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
