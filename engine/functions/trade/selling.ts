// Selling out of store as a function: what is taken of a lot in a week, when all lots of a product and what is asked for each
// week are known. The model stands in agronomy/selling-from-store.ts; read by trade/index.ts.

import { soldFromStore } from '../../agronomy/selling-from-store.ts';
import { MASS, NONE } from '../../units/dimension.ts';
import type { FunctionDefinition, OverNumbers } from '../definition.ts';
import { columnOf, columnOfDates, date, inUnit, KILOGRAM, overMatchingNumbers, plain } from './build.ts';
import { numberOf } from './over-days.ts';

const NONE_KNOWN = new Float64Array(0);

/** The run of a product's lots, worked out once for all rows that ask of it. */
const soldOf: OverNumbers = ([place = NONE_KNOWN, week = NONE_KNOWN, incoming = NONE_KNOWN, wanted = NONE_KNOWN]) => {
  const sold = soldFromStore({ place, week, incoming, wanted });
  const byWeek = new Map<number, Map<number, number>>();
  for (let row = 0; row < place.length; row++) {
    const [ofPlace, at] = [place[row] as number, week[row] as number];
    if (Number.isNaN(ofPlace + at)) continue;
    let ofWeek = byWeek.get(at);
    if (ofWeek === undefined) {
      ofWeek = new Map();
      byWeek.set(at, ofWeek);
    }
    ofWeek.set(ofPlace, sold[row] as number);
  }
  return ([lot = null, at = null]) => byWeek.get(numberOf(at))?.get(numberOf(lot)) ?? null;
};

export const SELLING: readonly FunctionDefinition[] = [
  overMatchingNumbers(
    {
      name: 'SOLDFROMSTORE',
      group: 'after harvest',
      parameters: [plain('place'), date('week')],
      result: inUnit(KILOGRAM),
      doc: 'What is taken in a week of the lot with this place in the order of selling: what is asked for comes from the first lots first.',
      source: 'First to expire, first out: common practice',
    },
    [columnOf('places', NONE), columnOfDates('weeks'), columnOf('incoming', MASS), columnOf('wanted', MASS)],
    soldOf,
  ),
];
