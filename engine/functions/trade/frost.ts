// Chance of frost by date, as functions over one frost date a year: how likely a frost still is in spring or has come in
// autumn, and the date at a risk. A year in the rows without a date had no frost. Models stand in agronomy/frost.ts; read
// by trade/index.ts.

import {
  autumnDateAtRisk,
  chanceOfEarlierFrost,
  chanceOfLaterFrost,
  type FrostFit,
  fitFrostDates,
  springDateAtRisk,
} from '../../agronomy/frost.ts';
import type { Parameter, Result } from '../../language/signature.ts';
import { civilDay, dayOfYear } from '../../values/civil.ts';
import type { Scalar } from '../../values/error.ts';
import type { FunctionDefinition } from '../definition.ts';
import { keptFor } from '../kept-for.ts';
import { columnOfDates, date, inUnit, overMatching, plain, SHARE } from './build.ts';

const MIDDLE_OF_YEAR = 182;
const YEAR_DAYS = 365;
const SOURCE =
  'Thom & Shaw 1958, Monthly Weather Review 86:251-257; years without a frost as in the NOAA freeze probabilities';
const RISK_LIMIT = { min: 0.001, max: 0.999, why: 'a risk lies between 0 and 100 %' };

/** The season of the year that frost dates belong to, and their fit; south of the equator the halves change places. */
interface Record {
  readonly fit: FrostFit;
  /** Spring after midsummer's day number, or autumn before it: the southern half of the world. */
  readonly southern: boolean;
}

function recordOf(dates: readonly Scalar[], half: 'spring' | 'autumn'): Record {
  const numbers = dates.map((day) => (typeof day === 'number' ? dayOfYear(day) : Number.NaN));
  const late = numbers.filter((day) => day > MIDDLE_OF_YEAR).length;
  const early = numbers.filter((day) => day <= MIDDLE_OF_YEAR).length;
  const southern = half === 'spring' ? late > early : early > late;
  // A southern spring runs into January, which counts on from December.
  const counted = half === 'spring' && southern ? numbers.map(afterMidsummer) : numbers;
  return { fit: fitFrostDates(counted), southern };
}

const springOf = keptFor((dates: readonly Scalar[]) => recordOf(dates, 'spring'));
const autumnOf = keptFor((dates: readonly Scalar[]) => recordOf(dates, 'autumn'));

function afterMidsummer(day: number): number {
  return day <= MIDDLE_OF_YEAR ? day + YEAR_DAYS : day;
}

function toCome(day: number, dates: readonly Scalar[]): number {
  const { fit, southern } = springOf(dates);
  const number = dayOfYear(day);
  return chanceOfLaterFrost(fit, southern ? afterMidsummer(number) : number);
}

function come(day: number, dates: readonly Scalar[]): number {
  const { fit, southern } = autumnOf(dates);
  const number = dayOfYear(day);
  return chanceOfEarlierFrost(fit, southern && number > MIDDLE_OF_YEAR ? number - YEAR_DAYS : number);
}

function lastFrost(risk: number, year: number, dates: readonly Scalar[]): number {
  return civilDay(year, 1, 1) + Math.ceil(springDateAtRisk(springOf(dates).fit, risk)) - 1;
}

function firstFrost(risk: number, year: number, dates: readonly Scalar[]): number {
  const { fit, southern } = autumnOf(dates);
  return civilDay(southern ? year + 1 : year, 1, 1) + Math.floor(autumnDateAtRisk(fit, risk)) - 1;
}

function overFrosts(
  name: string,
  doc: string,
  parameters: readonly Parameter[],
  result: Result,
  compute: (scalars: readonly number[], dates: readonly Scalar[]) => number,
): FunctionDefinition {
  return overMatching(
    { name, group: 'light and climate', parameters, result, doc, source: SOURCE },
    [columnOfDates('frosts')],
    (scalars, [dates = []]) => {
      const numbers = scalars.filter((value) => typeof value === 'number');
      return dates.length === 0 || numbers.length < parameters.length ? null : compute(numbers, dates);
    },
  );
}

const BY_DATE = [date('date')];
const AT_RISK = [plain('risk', { limit: RISK_LIMIT }), plain('year')];

export const FROST: readonly FunctionDefinition[] = [
  overFrosts(
    'FROSTTOCOME',
    'Chance of a spring frost after a date, from the last frost of each year; blank with fewer than two years.',
    BY_DATE,
    inUnit(SHARE),
    ([day = Number.NaN], dates) => toCome(day, dates),
  ),
  overFrosts(
    'FROSTCOME',
    'Chance that the first frost of autumn has come by a date, from the first frost of each year.',
    BY_DATE,
    inUnit(SHARE),
    ([day = Number.NaN], dates) => come(day, dates),
  ),
  overFrosts(
    'LASTFROSTDATE',
    'Date in the season after which the chance of a spring frost is the risk accepted.',
    AT_RISK,
    { is: 'date' },
    ([risk = Number.NaN, year = Number.NaN], dates) => lastFrost(risk, year, dates),
  ),
  overFrosts(
    'FIRSTFROSTDATE',
    'Date in the season by which the chance that the first autumn frost has come is the risk accepted.',
    AT_RISK,
    { is: 'date' },
    ([risk = Number.NaN, year = Number.NaN], dates) => firstFrost(risk, year, dates),
  ),
];
