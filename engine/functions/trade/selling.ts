// Selling out of store as a function: what is taken of a lot in a week, when all lots of a product and what is asked for each
// week are known. The model stands in agronomy/selling-from-store.ts; read by trade/index.ts.

import { soldFromStore } from '../../agronomy/selling-from-store.ts';
import { MASS, NONE } from '../../units/dimension.ts';
import type { Scalar } from '../../values/error.ts';
import type { FunctionDefinition } from '../definition.ts';
import { columnOf, columnOfDates, date, inUnit, KILOGRAM, overMatching, plain } from './build.ts';
import { numberOf, numbersOf } from './over-days.ts';

/** What is sold, by place and week in one word. */
type Sold = ReadonlyMap<string, number>;

const runs = new WeakMap<readonly Scalar[], Sold>();

function cell(place: number, week: number): string {
  return `${place} ${week}`;
}

/** The run of a product's lots, worked out once for as long as the engine hands over the same lists. */
function runOf(columns: readonly (readonly Scalar[])[]): Sold {
  const [places = []] = columns;
  const kept = runs.get(places);
  if (kept !== undefined) return kept;
  const [place, week, incoming, wanted] = columns.map(numbersOf);
  const weeks = places.map((_, row) => ({
    place: place?.[row] ?? Number.NaN,
    week: week?.[row] ?? Number.NaN,
    incoming: incoming?.[row] ?? Number.NaN,
    wanted: wanted?.[row] ?? Number.NaN,
  }));
  const known = weeks.filter((one) => !Number.isNaN(one.place + one.week));
  const sold = soldFromStore(known);
  const made = new Map<string, number>();
  for (const [row, one] of known.entries()) made.set(cell(one.place, one.week), sold[row] ?? 0);
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
    ([place = null, week = null], columns) => runOf(columns).get(cell(numberOf(place), numberOf(week))) ?? null,
  ),
];
