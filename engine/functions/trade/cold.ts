// Cold and heat as functions over the days of the Climate sheet: days' worth of the cold that sends a crop to seed, days that
// freeze and thaw, days above a temperature. Models stand in agronomy/; read by trade/index.ts.

import { coldEffect, freezesAndThaws } from '../../agronomy/cold-of-year.ts';
import { runningTotals, totalBetween } from '../../agronomy/totals-of-year.ts';
import type { Parameter } from '../../language/signature.ts';
import type { FunctionDefinition } from '../definition.ts';
import { keptFor } from '../kept-for.ts';
import { type Argument, columnOfDates, columnOfTemperatures, DAY, date, inUnit, temperature, warmth } from './build.ts';
import { celsiusOf, numberOf, numbersOf, overDays, YEAR_OF_DAYS, yearOf } from './over-days.ts';

const SPAN: readonly Parameter[] = [date('from'), date('to')];

type Totals = Map<string, Float64Array>;
const totalsOf = keptFor((_: Float64Array): Totals => new Map());
/** Of two columns together: what is worked out from both lasts as long as both. */
const totalsOfPairs = keptFor((_: Float64Array) => keptFor((_other: Float64Array): Totals => new Map()));

/** Running totals of so many days under a name, worked out once for as long as the engine hands over the same columns. */
function totals(kept: Totals, name: string, count: number, of: (day: number) => number): Float64Array {
  const found = kept.get(name) ?? runningTotals(count, of);
  kept.set(name, found);
  return found;
}

/** The total between two dates of the average year; no answer where the sheet is empty or a date is none. */
function between(from: Argument, to: Argument, days: Argument, make: () => Float64Array): number {
  const year = yearOf(numbersOf(days));
  const start = Math.floor(numberOf(from));
  const end = Math.floor(numberOf(to));
  if (year === undefined || Number.isNaN(start + end)) return Number.NaN;
  return totalBetween(make(), start - year.first, end - year.first);
}

function allBlank(column: Float64Array): boolean {
  return column.every(Number.isNaN);
}

export const COLD: readonly FunctionDefinition[] = [
  overDays(
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
    ([from, to, base, bestFrom, bestTo, limit, days, means]) => {
      const celsius = celsiusOf(numbersOf(means));
      const range = {
        base: numberOf(base),
        bestFrom: numberOf(bestFrom),
        bestTo: numberOf(bestTo),
        maximum: numberOf(limit),
      };
      if (allBlank(celsius) || Number.isNaN(range.base + range.bestFrom + range.bestTo + range.maximum))
        return Number.NaN;
      const name = `cold ${range.base} ${range.bestFrom} ${range.bestTo} ${range.maximum}`;
      return between(from, to, days, () =>
        totals(totalsOf(celsius), name, celsius.length, (day) => coldEffect(range, celsius[day] as number)),
      );
    },
  ),
  overDays(
    'FREEZETHAWDAYS',
    'Days from one date up to another with a low below and a high above freezing, under a cover that warms by `cover_gain`.',
    'Count of days',
    [...SPAN, warmth('cover_gain'), columnOfDates('days'), columnOfTemperatures('lows'), columnOfTemperatures('highs')],
    inUnit(DAY),
    ([from, to, cover, days, lowColumn, highColumn]) => {
      const lows = celsiusOf(numbersOf(lowColumn));
      const highs = celsiusOf(numbersOf(highColumn));
      const gain = numberOf(cover);
      if (allBlank(lows) || allBlank(highs) || Number.isNaN(gain)) return Number.NaN;
      const counts = (day: number): number =>
        freezesAndThaws(lows[day] as number, highs[day] as number, gain) ? 1 : 0;
      return between(from, to, days, () => totals(totalsOfPairs(lows)(highs), `thaws ${gain}`, highs.length, counts));
    },
  ),
  overDays(
    'DAYSABOVE',
    'Days from one date up to another with a mean above the temperature given, in the average year given.',
    'Count of days',
    [...SPAN, temperature('temperature'), ...YEAR_OF_DAYS],
    inUnit(DAY),
    ([from, to, level, days, means]) => {
      const celsius = celsiusOf(numbersOf(means));
      const limit = numberOf(level);
      if (allBlank(celsius) || Number.isNaN(limit)) return Number.NaN;
      return between(from, to, days, () =>
        totals(totalsOf(celsius), `above ${limit}`, celsius.length, (day) =>
          (celsius[day] as number) > limit ? 1 : 0,
        ),
      );
    },
  ),
];
