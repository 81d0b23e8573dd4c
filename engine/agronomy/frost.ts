// Frost dates: the last of spring and the first of autumn in each year, a normal distribution fitted to them, the chance
// of frost still to come or already come by a date. Called by the climate sheet; calls the normal distribution.

import { civilDay, yearMonthDay } from '../values/civil.ts';
import { normalCdf, standardNormalQuantile } from './normal.ts';
import { meanAndDeviation } from './sample.ts';
import type { ModelSource } from './source.ts';

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Frost dates',
    gives: 'chance of a frost later in spring or earlier in autumn than a date; the date at an accepted chance',
    equation: 'normal distribution of the dates of the years with a frost, times the share of years that have one',
    range:
      'stations with several years of daily lows; a half-year with more than a tenth of its days missing is left out',
    source:
      'Thom & Shaw 1958, Climatological analysis of freeze data for Iowa, Monthly Weather Review 86:251-257; years without a frost as in the NOAA freeze probabilities',
    standing: 'published',
  },
];

/** A half-year with more than this share of its days missing is not read. */
export const MOST_MISSING = 0.1;

export interface FrostYear {
  readonly year: number;
  /** Civil day of the last low at or below the threshold before midsummer; not a number where there was none. */
  readonly lastSpring: number;
  /** Civil day of the first such low after midsummer. */
  readonly firstAutumn: number;
  /** Whether the half-year's record is whole enough to be read. */
  readonly springKnown: boolean;
  readonly autumnKnown: boolean;
}

interface Half {
  from: number;
  to: number;
}

// North: spring January to July, autumn August to December. South: autumn February to June, spring July to January.
function springOf(year: number, southern: boolean): Half {
  return southern
    ? { from: civilDay(year, 7, 1), to: civilDay(year + 1, 1, 31) }
    : { from: civilDay(year, 1, 1), to: civilDay(year, 7, 31) };
}

function autumnOf(year: number, southern: boolean): Half {
  return southern
    ? { from: civilDay(year, 2, 1), to: civilDay(year, 6, 30) }
    : { from: civilDay(year, 8, 1), to: civilDay(year, 12, 31) };
}

function wholeEnough(half: Half, lowOfDay: ReadonlyMap<number, number>): boolean {
  let missing = 0;
  for (let day = half.from; day <= half.to; day += 1) if (!lowOfDay.has(day)) missing += 1;
  return missing <= MOST_MISSING * (half.to - half.from + 1);
}

/**
 * Frost dates of each year in a record: `days` civil, `lows` and `threshold` in one unit; a low at the threshold is a
 * frost. In the southern half of the world a year's spring runs from July to the January after. Missing lows are never
 * filled here: a filled night would hide a frost.
 */
export function frostYears(
  days: ArrayLike<number>,
  lows: ArrayLike<number>,
  threshold: number,
  southern: boolean,
): readonly FrostYear[] {
  const lowOfDay = new Map<number, number>();
  const years = new Set<number>();
  for (let i = 0; i < days.length; i += 1) {
    const day = days[i] ?? Number.NaN;
    const low = lows[i] ?? Number.NaN;
    if (Number.isNaN(day) || Number.isNaN(low)) continue;
    lowOfDay.set(day, low);
    years.add(yearMonthDay(day).year);
  }
  return [...years]
    .sort((a, b) => a - b)
    .map((year) => {
      const spring = springOf(year, southern);
      const autumn = autumnOf(year, southern);
      const isFrost = (day: number): boolean => (lowOfDay.get(day) ?? Number.POSITIVE_INFINITY) <= threshold;
      let lastSpring = spring.to;
      while (lastSpring >= spring.from && !isFrost(lastSpring)) lastSpring -= 1;
      let firstAutumn = autumn.from;
      while (firstAutumn <= autumn.to && !isFrost(firstAutumn)) firstAutumn += 1;
      return {
        year,
        lastSpring: lastSpring >= spring.from ? lastSpring : Number.NaN,
        firstAutumn: firstAutumn <= autumn.to ? firstAutumn : Number.NaN,
        springKnown: wholeEnough(spring, lowOfDay),
        autumnKnown: wholeEnough(autumn, lowOfDay),
      };
    });
}

/** A civil day as a day number of `year`: 1 = 1 January; beyond 365 in the January after. */
export function dayNumberOf(civil: number, year: number): number {
  return civil - civilDay(year, 1, 1) + 1;
}

export interface FrostFit {
  /** Day number of the mean date, of years with a frost. */
  readonly mean: number;
  /** Standard deviation, days. */
  readonly deviation: number;
  /** Share of years with a frost at all. */
  readonly frostShare: number;
}

/**
 * Mean, standard deviation (n - 1) and share of years with a frost, from one day number a year; a year without a frost
 * is not a number. No mean without a frost, no deviation with fewer than two.
 */
export function fitFrostDates(dayNumbers: readonly number[]): FrostFit {
  const dates = dayNumbers.filter((day) => !Number.isNaN(day));
  return { ...meanAndDeviation(dates), frostShare: dates.length / dayNumbers.length };
}

/** One line of a printed table: the day number with this chance (0 to 1) of a later frost in spring. */
export interface FrostLevel {
  readonly day: number;
  readonly chance: number;
}

/**
 * The fit behind a printed table of spring dates and chances of a later frost, by least squares of the date on the
 * normal deviate; every year is taken to have a frost. For an autumn table give one less the chance of an earlier one.
 */
export function fitFrostLevels(levels: readonly FrostLevel[]): FrostFit {
  const points = levels.map(({ day, chance }) => ({ day, z: -standardNormalQuantile(chance) }));
  const meanZ = points.reduce((sum, { z }) => sum + z, 0) / points.length;
  const meanDay = points.reduce((sum, { day }) => sum + day, 0) / points.length;
  const across = points.reduce((sum, { day, z }) => sum + (z - meanZ) * day, 0);
  const along = points.reduce((sum, { z }) => sum + (z - meanZ) ** 2, 0);
  const deviation = across / along;
  return { mean: meanDay - deviation * meanZ, deviation, frostShare: 1 };
}

function shareBefore(fit: FrostFit, dayNumber: number): number {
  if (fit.deviation === 0) return dayNumber < fit.mean ? 0 : 1;
  return normalCdf(dayNumber, fit.mean, fit.deviation);
}

/** Chance (0 to 1) that spring's last frost comes after a day number. */
export function chanceOfLaterFrost(fit: FrostFit, dayNumber: number): number {
  if (fit.frostShare === 0) return 0;
  return fit.frostShare * (1 - shareBefore(fit, dayNumber));
}

/** Chance (0 to 1) that autumn's first frost has come by a day number. */
export function chanceOfEarlierFrost(fit: FrostFit, dayNumber: number): number {
  if (fit.frostShare === 0) return 0;
  return fit.frostShare * shareBefore(fit, dayNumber);
}

/** Day number after which spring's chance of a frost is `risk`; no answer where frost in a year is itself less likely. */
export function springDateAtRisk(fit: FrostFit, risk: number): number {
  const share = risk / fit.frostShare;
  return share > 0 && share < 1 ? fit.mean - fit.deviation * standardNormalQuantile(share) : Number.NaN;
}

/** Day number by which autumn's chance of a frost is `risk`; no answer where frost in a year is itself less likely. */
export function autumnDateAtRisk(fit: FrostFit, risk: number): number {
  const share = risk / fit.frostShare;
  return share > 0 && share < 1 ? fit.mean + fit.deviation * standardNormalQuantile(share) : Number.NaN;
}
