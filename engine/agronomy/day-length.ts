// Day length: the time from sunrise to sunset, the events iterated to the sun's place at their own moment. Called by
// the functions and the bulbing model; calls the sun's position and the civil calendar. Fast enough for column kernels.

import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';
import { placeSun, sunDeclination, sunEquationOfTime } from './sun-position.ts';

const RADIANS = Math.PI / 180;

/** Upper limb on the horizon: half a degree of sun and 34 minutes of arc of refraction. */
export const SUNRISE_ZENITH = 90.833;
/** Sun 6 degrees down: the limits of civil twilight. */
export const CIVIL_TWILIGHT_ZENITH = 96;

export const DAY_LENGTH_LIMITS = {
  latitude: { min: -90, max: 90, why: 'latitude runs from 90 degrees south (-90) to 90 degrees north' },
  year: { min: 1800, max: 2200, why: 'the solar formulas are meant for the years 1800 to 2200' },
} satisfies Limits;

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Day length',
    gives: 'hours from sunrise to sunset on a date at a latitude',
    equation:
      'cos H = cos 90.833 deg / (cos L cos d) - tan L tan d, with the declination d and the equation of time taken at the rise and at the set; day length is set less rise',
    range:
      'all latitudes, 1800 to 2200, level horizon at sea level; within 0.25 minute of a full planetary theory to 52 degrees, 0.6 minute to 65',
    source: 'Meeus 1991, Astronomical Algorithms, chapters 15, 24 and 27, in the form of the NOAA solar calculator',
    standing: 'published',
  },
];

// The sun's place through one day as parabolas through 0 h, 12 h and 24 h: off by less than 1e-5 degree.
let followedDay = Number.NaN;
let noonDeclination = 0;
let declinationSlope = 0;
let declinationBend = 0;
let noonEquation = 0;
let equationSlope = 0;
let equationBend = 0;

function followSun(day: number): void {
  if (day === followedDay) return;
  followedDay = day;
  placeSun(day);
  const startDeclination = sunDeclination();
  const startEquation = sunEquationOfTime();
  placeSun(day + 1);
  const endDeclination = sunDeclination();
  const endEquation = sunEquationOfTime();
  placeSun(day + 0.5);
  noonDeclination = sunDeclination();
  noonEquation = sunEquationOfTime();
  declinationSlope = endDeclination - startDeclination;
  declinationBend = 2 * (endDeclination + startDeclination - 2 * noonDeclination);
  equationSlope = endEquation - startEquation;
  equationBend = 2 * (endEquation + startEquation - 2 * noonEquation);
}

// Hours; about a third of a millisecond.
const SETTLED = 1e-7;

// Hours between an event and noon by the clock; `side` is -1 for the morning and 1 for the evening.
function hoursFromNoon(side: number, tanLatitude: number, height: number): number {
  let hours = 6;
  for (let round = 0; round < 8; round += 1) {
    const fraction = (side * hours) / 24;
    const declination = noonDeclination + fraction * (declinationSlope + fraction * declinationBend);
    const cosDeclination = Math.cos(declination);
    const sinDeclination = Math.sin(declination);
    const cosHourAngle = (height - tanLatitude * sinDeclination) / cosDeclination;
    const before = hours;
    if (cosHourAngle >= 1) hours = 0;
    else if (cosHourAngle <= -1) hours = 12;
    else hours = Math.acos(cosHourAngle) / (15 * RADIANS);
    if (Math.abs(hours - before) < SETTLED) return hours;
  }
  return hours;
}

function equationAt(side: number, hours: number): number {
  const fraction = (side * hours) / 24;
  return noonEquation + fraction * (equationSlope + fraction * equationBend);
}

/**
 * Hours on a civil day, at longitude 0, for which the sun's centre stands less than `zenithDeg` from overhead: 24 where
 * it never sinks below, 0 where it never rises above. Latitude in degrees, north positive.
 */
export function hoursOfSunWithin(zenithDeg: number, latitudeDeg: number, civil: number): number {
  if (!(latitudeDeg >= -90 && latitudeDeg <= 90) || !Number.isFinite(civil)) return Number.NaN;
  const day = Math.floor(civil);
  followSun(day);
  const latitude = latitudeDeg * RADIANS;
  const tanLatitude = Math.tan(latitude);
  const height = Math.cos(zenithDeg * RADIANS) / Math.cos(latitude);
  const morning = hoursFromNoon(-1, tanLatitude, height);
  const evening = hoursFromNoon(1, tanLatitude, height);
  if (morning === 12 && evening === 12) return 24;
  const length = morning + evening + (equationAt(-1, morning) - equationAt(1, evening)) / 60;
  return Math.min(24, Math.max(0, length));
}

/**
 * Day length in hours: sunrise to sunset of the sun's upper limb (zenith 90.833 degrees), polar day 24, polar night 0.
 * Latitude in degrees, north positive; a civil day. No answer for a latitude beyond the poles. Source: see SOURCES.
 */
export function dayLength(latitudeDeg: number, civil: number): number {
  return hoursOfSunWithin(SUNRISE_ZENITH, latitudeDeg, civil);
}

/** Hours with daylight or civil twilight (zenith 96 degrees) on a civil day at a latitude. */
export function dayLengthWithCivilTwilight(latitudeDeg: number, civil: number): number {
  return hoursOfSunWithin(CIVIL_TWILIGHT_ZENITH, latitudeDeg, civil);
}

/** Local mean time of sunrise, hours after midnight; no answer on days without one. */
export function sunrise(latitudeDeg: number, civil: number): number {
  const length = dayLength(latitudeDeg, civil);
  if (!(length > 0 && length < 24)) return Number.NaN;
  const latitude = latitudeDeg * RADIANS;
  const height = Math.cos(SUNRISE_ZENITH * RADIANS) / Math.cos(latitude);
  const morning = hoursFromNoon(-1, Math.tan(latitude), height);
  return 12 - morning - equationAt(-1, morning) / 60;
}

/** Local mean time of sunset, hours after midnight; no answer on days without one. */
export function sunset(latitudeDeg: number, civil: number): number {
  return sunrise(latitudeDeg, civil) + dayLength(latitudeDeg, civil);
}
