// Cold and heat as functions over the days of the Climate sheet: days' worth of the cold that sends a crop to seed, days that
// freeze and thaw, days above a temperature. Models stand in agronomy/; read by trade/index.ts.

import { type ColdRange, coldEffect, freezesAndThaws } from '../../agronomy/cold-of-year.ts';
import { runningTotals, totalBetween } from '../../agronomy/totals-of-year.ts';
import type { Parameter } from '../../language/signature.ts';
import type { FunctionDefinition } from '../definition.ts';
import { keptFor } from '../kept-for.ts';
import { columnOfDates, columnOfTemperatures, DAY, date, inUnit, temperature, warmth } from './build.ts';
import { celsiusOf, NO_DAYS, overDaysInNumbers, YEAR_OF_DAYS, type Year, yearOf } from './over-days.ts';

const SPAN: readonly Parameter[] = [date('from'), date('to')];

/** Running totals of the days of a column, by what is counted. */
type Totals<T> = { readonly of: T; readonly totals: Float64Array }[];

/** A season has some ranges of cold; more than so many begin anew. */
const MOST_RANGES = 50;
const coldOf = keptFor((_: Float64Array): Totals<ColdRange> => []);
const aboveOf = keptFor((_: Float64Array) => new Map<number, Float64Array>());
/** Of two columns together: what is worked out from both lasts as long as both. */
const thawsOf = keptFor((_: Float64Array) => keptFor((_other: Float64Array) => new Map<number, Float64Array>()));

/** Running totals by a number, worked out once. */
function totalsBy(
  kept: Map<number, Float64Array>,
  of: number,
  days: number,
  count: (day: number) => number,
): Float64Array {
  const found = kept.get(of) ?? runningTotals(days, count);
  kept.set(of, found);
  return found;
}

/** The total between two dates of the average year, the first two values; no answer where a date is none. */
function between(year: Year, given: Float64Array, make: () => Float64Array): number {
  const start = Math.floor(given[0] as number);
  const end = Math.floor(given[1] as number);
  if (Number.isNaN(start + end)) return Number.NaN;
  return totalBetween(make(), start - year.first, end - year.first);
}

const NO_ANSWER = (): number => Number.NaN;

/** The average year and its temperatures (C); undefined where the sheet is empty, or holds none of them. */
function temperaturesOf(
  days = NO_DAYS,
  kelvin = NO_DAYS,
): { readonly year: Year; readonly celsius: Float64Array } | undefined {
  const year = yearOf(days);
  const celsius = celsiusOf(kelvin);
  return year === undefined || celsius.every(Number.isNaN) ? undefined : { year, celsius };
}

export const COLD: readonly FunctionDefinition[] = [
  overDaysInNumbers(
    'COLDFELT',
    "Days' worth of the best cold from one date up to another: a day at the best counts whole, at the base or the limit not at all.",
    'Form: Atherton, Craigon & Basher 1990, Journal of Horticultural Science 65:423-429',
    [
      ...SPAN,
      temperature('base'),
      temperature('best_from'),
      temperature('best_to'),
      temperature('limit'),
      ...YEAR_OF_DAYS,
    ],
    inUnit(DAY),
    ([days, means]) => {
      const found = temperaturesOf(days, means);
      if (found === undefined) return NO_ANSWER;
      const { year, celsius } = found;
      const kept = coldOf(celsius);
      return (given) => {
        const [base, bestFrom] = [given[2] as number, given[3] as number];
        const [bestTo, maximum] = [given[4] as number, given[5] as number];
        if (Number.isNaN(base + bestFrom + bestTo + maximum)) return Number.NaN;
        return between(year, given, () => {
          for (const { of, totals } of kept) {
            if (of.base === base && of.bestFrom === bestFrom && of.bestTo === bestTo && of.maximum === maximum)
              return totals;
          }
          const of = { base, bestFrom, bestTo, maximum };
          const totals = runningTotals(celsius.length, (day) => coldEffect(of, celsius[day] as number));
          if (kept.length === MOST_RANGES) kept.length = 0;
          kept.push({ of, totals });
          return totals;
        });
      };
    },
  ),
  overDaysInNumbers(
    'FREEZETHAWDAYS',
    'Days from one date up to another with a low below and a high above freezing, under a cover that warms by `cover_gain`.',
    'Count of days',
    [...SPAN, warmth('cover_gain'), columnOfDates('days'), columnOfTemperatures('lows'), columnOfTemperatures('highs')],
    inUnit(DAY),
    ([days, lowColumn, highColumn]) => {
      const [found, beside] = [temperaturesOf(days, lowColumn), temperaturesOf(days, highColumn)];
      if (found === undefined || beside === undefined) return NO_ANSWER;
      const { year, celsius: lows } = found;
      const { celsius: highs } = beside;
      const kept = thawsOf(lows)(highs);
      return (given) => {
        const gain = given[2] as number;
        if (Number.isNaN(gain)) return Number.NaN;
        const counts = (day: number): number =>
          freezesAndThaws(lows[day] as number, highs[day] as number, gain) ? 1 : 0;
        return between(year, given, () => totalsBy(kept, gain, highs.length, counts));
      };
    },
  ),
  overDaysInNumbers(
    'DAYSABOVE',
    'Days from one date up to another with a mean above the temperature given, in the average year given.',
    'Count of days',
    [...SPAN, temperature('temperature'), ...YEAR_OF_DAYS],
    inUnit(DAY),
    ([days, means]) => {
      const found = temperaturesOf(days, means);
      if (found === undefined) return NO_ANSWER;
      const { year, celsius } = found;
      const kept = aboveOf(celsius);
      return (given) => {
        const limit = given[2] as number;
        if (Number.isNaN(limit)) return Number.NaN;
        const counts = (day: number): number => ((celsius[day] as number) > limit ? 1 : 0);
        return between(year, given, () => totalsBy(kept, limit, celsius.length, counts));
      };
    },
  ),
];
