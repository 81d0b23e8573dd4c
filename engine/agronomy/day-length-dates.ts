// Dates by day length: the longest day of a year and the first date that reaches a length. Called by the functions and
// the bulbing model; calls day length.

import { civilDay, yearMonthDay } from '../values/civil.ts';
import { dayLength } from './day-length.ts';

// Nearer the equator than this the year's day length has more than one hump, and every day is looked at.
const ONE_HUMP_LATITUDE = 5;

const HALF_A_YEAR = 182;

/** A season asks about the same days of one latitude over and over; more days than this begin anew. */
const MOST_KEPT = 4000;
const kept = new Map<number, number>();
let keptLatitude = Number.NaN;

/** Hours of a day, worked out once for the latitude in hand. */
function lengthOfDay(latitude: number, day: number): number {
  if (latitude !== keptLatitude || kept.size >= MOST_KEPT) {
    kept.clear();
    keptLatitude = latitude;
  }
  const known = kept.get(day);
  if (known !== undefined) return known;
  const hours = dayLength(latitude, day);
  kept.set(day, hours);
  return hours;
}

/** The years that dates run over. */
function isYear(year: number): boolean {
  return Number.isInteger(year) && year >= 1 && year <= 9999;
}

// The first day of the longest (sign 1) or the shortest (sign -1) from `from` to `to`.
function extremeDay(sign: 1 | -1, latitude: number, from: number, to: number): number {
  let best = from;
  let most = Number.NEGATIVE_INFINITY;
  for (let day = from; day <= to; day += 1) {
    const hours = sign * lengthOfDay(latitude, day);
    if (hours > most) {
      best = day;
      most = hours;
    }
  }
  return best;
}

/**
 * The civil day in the year with the most hours of day; where the sun stays up for weeks, the first of those days from
 * the 17th of the month of the solstice on. No answer beyond the poles.
 */
export function longestDayDate(latitudeDeg: number, year: number): number {
  if (!(Math.abs(latitudeDeg) <= 90) || !isYear(year)) return Number.NaN;
  if (Math.abs(latitudeDeg) < ONE_HUMP_LATITUDE) {
    return extremeDay(1, latitudeDeg, civilDay(year, 1, 1), civilDay(year, 12, 31));
  }
  const month = latitudeDeg > 0 ? 6 : 12;
  return extremeDay(1, latitudeDeg, civilDay(year, month, 17), civilDay(year, month, 25));
}

/** Hours of the year's longest day at a latitude (degrees, north positive). */
export function longestDay(latitudeDeg: number, year: number): number {
  const date = longestDayDate(latitudeDeg, year);
  return Number.isNaN(date) ? Number.NaN : lengthOfDay(latitudeDeg, date);
}

// First day in (from, to] with at least `hours`, where the days lengthen from `from` to `to`.
function firstReaching(latitude: number, hours: number, from: number, to: number): number {
  if (lengthOfDay(latitude, from) >= hours || lengthOfDay(latitude, to) < hours) return Number.NaN;
  let short = from;
  let long = to;
  while (long - short > 1) {
    const middle = Math.floor((short + long) / 2);
    if (lengthOfDay(latitude, middle) >= hours) long = middle;
    else short = middle;
  }
  return long;
}

function firstByEveryDay(latitude: number, hours: number, year: number): number {
  const last = civilDay(year, 12, 31);
  let before = lengthOfDay(latitude, civilDay(year, 1, 1) - 1);
  for (let day = civilDay(year, 1, 1); day <= last; day += 1) {
    const today = lengthOfDay(latitude, day);
    if (today >= hours && before < hours) return day;
    before = today;
  }
  return Number.NaN;
}

/**
 * First civil day in the year whose day has at least `hours` while the day before was shorter; no answer where there
 * is none (the length is never reached, or never missed).
 */
export function firstDateReaching(latitudeDeg: number, hours: number, year: number): number {
  if (!(Math.abs(latitudeDeg) <= 90) || Number.isNaN(hours) || !isYear(year)) return Number.NaN;
  if (Math.abs(latitudeDeg) < ONE_HUMP_LATITUDE) return firstByEveryDay(latitudeDeg, hours, year);
  const longest = longestDayDate(latitudeDeg, year);
  if (latitudeDeg < 0) {
    return firstReaching(
      latitudeDeg,
      hours,
      extremeDay(-1, latitudeDeg, civilDay(year, 6, 17), civilDay(year, 6, 25)),
      longest,
    );
  }
  const inSpring = firstReaching(latitudeDeg, hours, civilDay(year, 1, 1) - 1, longest);
  if (!Number.isNaN(inSpring)) return inSpring;
  const shortest = extremeDay(-1, latitudeDeg, civilDay(year, 12, 17), civilDay(year, 12, 25));
  return firstReaching(latitudeDeg, hours, shortest, civilDay(year, 12, 31));
}

// The day after which they lengthen again: the first of the shortest days from the 17th of the solstice's month on.
function shortestDayDate(latitude: number, year: number): number {
  const month = latitude > 0 ? 12 : 6;
  return extremeDay(-1, latitude, civilDay(year, month, 17), civilDay(year, month, 25));
}

/**
 * The first civil day on or after `from` whose day is shorter than `hours`; no answer where none comes within a year and a
 * half, nor within five degrees of the equator, where day length tells little of the season.
 */
export function shortDayFrom(latitudeDeg: number, hours: number, from: number): number {
  if (!(Math.abs(latitudeDeg) <= 90) || Math.abs(latitudeDeg) < ONE_HUMP_LATITUDE || !(hours > 0)) return Number.NaN;
  if (!Number.isFinite(from)) return Number.NaN;
  if (lengthOfDay(latitudeDeg, from) < hours) return from;
  const { year } = yearMonthDay(from);
  for (const winter of [shortestDayDate(latitudeDeg, year), shortestDayDate(latitudeDeg, year + 1)]) {
    if (winter < from || lengthOfDay(latitudeDeg, winter) >= hours) continue;
    let long = Math.max(from, winter - HALF_A_YEAR);
    let short = winter;
    while (short - long > 1) {
      const middle = Math.floor((long + short) / 2);
      if (lengthOfDay(latitudeDeg, middle) < hours) short = middle;
      else long = middle;
    }
    return short;
  }
  return Number.NaN;
}
