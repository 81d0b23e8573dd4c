// Selling out of store as a function: what is taken of a lot in a week, when all lots of a product and what is asked for each
// week are known. The model stands in agronomy/selling-from-store.ts; read by trade/index.ts.

import { soldFromStore } from '../../agronomy/selling-from-store.ts';
import { MASS, NONE } from '../../units/dimension.ts';
import type { FunctionDefinition, OverNumbers } from '../definition.ts';
import { columnOf, columnOfDates, date, inUnit, KILOGRAM, overMatchingNumbers, plain } from './build.ts';

const NONE_KNOWN = new Float64Array(0);

/** The run of a product's lots, worked out once for all rows that ask of it. */
const soldOf: OverNumbers = ([place = NONE_KNOWN, week = NONE_KNOWN, incoming = NONE_KNOWN, wanted = NONE_KNOWN]) => {
  const { of } = soldFromStore({ place, week, incoming, wanted });
  return ([lot = Number.NaN, at = Number.NaN]) => of(lot, at);
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
