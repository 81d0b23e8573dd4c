// The average year of the floor: twelve months to 365 days, their smooth course, and sums of warmth kept by the temperatures they are
// taken between. The models are the engine's own; only what is kept, and where, is the floor's.

import { calendarIndex } from '../../../../engine/agronomy/climate.ts';
import { coldEffect, freezesAndThaws } from '../../../../engine/agronomy/cold-of-year.ts';
import {
  type CourseOfYear,
  courseOfYear,
  type WarmSpan,
  warmSpan,
} from '../../../../engine/agronomy/course-of-year.ts';
import { dayLength } from '../../../../engine/agronomy/day-length.ts';
import { firstDateReaching } from '../../../../engine/agronomy/day-length-dates.ts';
import { dailyFromMonthlyMeans } from '../../../../engine/agronomy/monthly-means.ts';
import { runningTotals, totalBetween } from '../../../../engine/agronomy/totals-of-year.ts';
import {
  dayOfWarmth,
  latestStartForWarmth,
  type WarmthOfYear,
  warmthBetween,
  warmthOfYear,
} from '../../../../engine/agronomy/warmth-of-year.ts';
import { yearMonthDay } from '../../../../engine/values/civil.ts';
import { isBlank } from './inputs.ts';

/** 0 degC in K. */
export const FREEZING = 273.15;

const DAYS = 365;

/** What stands under a key, made where nothing does. */
function kept<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  const found = map.get(key);
  if (found !== undefined) return found;
  const made = make();
  map.set(key, made);
  return made;
}

/** Temperatures in K, dates as civil days throughout. */
export class Year {
  readonly first: number;
  readonly lows = new Float64Array(DAYS);
  readonly highs = new Float64Array(DAYS);
  readonly means = new Float64Array(DAYS);
  readonly #celsius = new Float64Array(DAYS);
  #meanCourse: CourseOfYear | undefined;
  #lowCourse: CourseOfYear | undefined;
  readonly #warmth = new Map<number, Map<number, WarmthOfYear>>();
  readonly #spans = new Map<CourseOfYear, Map<number, WarmSpan | 'all' | 'none'>>();
  readonly #totals = new Map<string, Float64Array>();
  readonly #longDays = new Map<number, number>();

  constructor(first: number, lows: ArrayLike<number>, highs: ArrayLike<number>) {
    this.first = first;
    this.fill(lows, highs);
  }

  /** From twelve months' lows and highs, January first. */
  fill(lows: ArrayLike<number>, highs: ArrayLike<number>): void {
    const [low, high] = [dailyFromMonthlyMeans(Array.from(lows)), dailyFromMonthlyMeans(Array.from(highs))];
    for (let day = 0; day < DAYS; day++) {
      const at = calendarIndex(this.first + day);
      const [cold, warm] = [low[at] as number, high[at] as number];
      this.lows[day] = cold;
      this.highs[day] = warm;
      this.means[day] = cold + (warm - cold) / 2;
      this.#celsius[day] = (this.means[day] as number) - FREEZING;
    }
    this.#meanCourse = courseOfYear(this.#celsius);
    this.#lowCourse = courseOfYear(this.lows.map((kelvin) => kelvin - FREEZING));
    for (const sums of [this.#warmth, this.#spans, this.#totals]) sums.clear();
  }

  #warmthOf(base: number, upper: number): WarmthOfYear {
    const ofBase = kept(this.#warmth, base, () => new Map<number, WarmthOfYear>());
    return kept(ofBase, upper, () => warmthOfYear(this.#celsius, base - FREEZING, upper - FREEZING));
  }

  /** Degree-days between two dates. */
  warmth(from: number, to: number, base: number, upper: number): number {
    if (isBlank(from + to + base)) return Number.NaN;
    return warmthBetween(this.#warmthOf(base, upper), Math.floor(from) - this.first, Math.floor(to - this.first));
  }

  /** The date by which so many degree-days have come. */
  warmthDate(from: number, wanted: number, base: number, upper: number): number {
    if (isBlank(from + base)) return Number.NaN;
    return this.first + dayOfWarmth(this.#warmthOf(base, upper), Math.floor(from) - this.first, wanted);
  }

  /** The latest date to begin for so many by a date. */
  warmthStart(by: number, wanted: number, base: number, upper: number): number {
    if (isBlank(by + base)) return Number.NaN;
    return this.first + latestStartForWarmth(this.#warmthOf(base, upper), Math.floor(by) - this.first, wanted);
  }

  /** The middle of the summer nearest to a date. */
  summerNear(day: number, course = this.#meanCourse): number {
    if (course === undefined || isBlank(day)) return Number.NaN;
    const warmest = this.first + course.warmest;
    return warmest + Math.round((Math.floor(day) - warmest) / DAYS) * DAYS;
  }

  #around(day: number, course: CourseOfYear | undefined): number {
    if (course === undefined || isBlank(day)) return Number.NaN;
    const offset = (Math.floor(day) - this.first) % DAYS;
    return (course.values[offset < 0 ? offset + DAYS : offset] as number) + FREEZING;
  }

  meanAround(day: number): number {
    return this.#around(day, this.#meanCourse);
  }

  lowAround(day: number): number {
    return this.#around(day, this.#lowCourse);
  }

  #span(course: CourseOfYear | undefined, level: number): WarmSpan | undefined {
    if (course === undefined || isBlank(level)) return undefined;
    const ofCourse = kept(this.#spans, course, () => new Map<number, WarmSpan | 'all' | 'none'>());
    const found = kept(ofCourse, level, () => warmSpan(course, level - FREEZING));
    return typeof found === 'string' ? undefined : found;
  }

  /** From when the mean is at least so warm, in the summer nearest to a date. */
  warmFrom(summer: number, level: number): number {
    const span = this.#span(this.#meanCourse, level);
    return span === undefined ? Number.NaN : this.summerNear(summer) + span.from;
  }

  warmUntil(summer: number, level: number): number {
    const span = this.#span(this.#meanCourse, level);
    return span === undefined ? Number.NaN : this.summerNear(summer) + span.until;
  }

  /** The same of lows. */
  lowFrom(summer: number, level: number): number {
    const span = this.#span(this.#lowCourse, level);
    return span === undefined ? Number.NaN : this.summerNear(summer, this.#lowCourse) + span.from;
  }

  lowUntil(summer: number, level: number): number {
    const span = this.#span(this.#lowCourse, level);
    return span === undefined ? Number.NaN : this.summerNear(summer, this.#lowCourse) + span.until;
  }

  #between(name: string, from: number, to: number, of: (day: number) => number): number {
    if (isBlank(from + to)) return Number.NaN;
    const totals = kept(this.#totals, name, () => runningTotals(DAYS, of));
    return totalBetween(totals, Math.floor(from) - this.first, Math.floor(to) - this.first);
  }

  /** Days with a mean above a temperature. */
  daysAbove(from: number, to: number, level: number): number {
    if (isBlank(level)) return Number.NaN;
    const limit = level - FREEZING;
    return this.#between(`above ${level}`, from, to, (day) => ((this.#celsius[day] as number) > limit ? 1 : 0));
  }

  /** Days' worth of cold, its range in K. */
  coldFelt(from: number, to: number, base: number, bestFrom: number, bestTo: number, maximum: number): number {
    if (isBlank(base + bestFrom + bestTo + maximum)) return Number.NaN;
    const range = {
      base: base - FREEZING,
      bestFrom: bestFrom - FREEZING,
      bestTo: bestTo - FREEZING,
      maximum: maximum - FREEZING,
    };
    return this.#between(`cold ${base} ${bestFrom} ${bestTo} ${maximum}`, from, to, (day) =>
      coldEffect(range, this.#celsius[day] as number),
    );
  }

  freezeThawDays(from: number, to: number, gain: number): number {
    if (isBlank(gain)) return Number.NaN;
    return this.#between(`thaws ${gain}`, from, to, (day) =>
      freezesAndThaws((this.lows[day] as number) - FREEZING, (this.highs[day] as number) - FREEZING, gain) ? 1 : 0,
    );
  }

  /** First date on or after `from` whose day has so many hours. */
  longDayFrom(latitude: number, hours: number, from: number): number {
    if (isBlank(latitude + hours + from)) return Number.NaN;
    if (dayLength(latitude, from) >= hours) return from;
    const { year } = yearMonthDay(from);
    const thisYear = this.#reaching(latitude, hours, year);
    return thisYear >= from ? thisYear : this.#reaching(latitude, hours, year + 1);
  }

  #reaching(latitude: number, hours: number, year: number): number {
    return kept(this.#longDays, year * 100 + hours, () => firstDateReaching(latitude, hours, year));
  }
}
