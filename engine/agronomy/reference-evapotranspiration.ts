// Water that short grass takes, from temperatures alone: the Hargreaves equation with the radiation that reaches the top of the
// atmosphere (FAO Irrigation and Drainage Paper 56, equations 21 to 25 and 52). For places without a weather service. Calls nothing.

import type { ModelSource } from './source.ts';

/** Solar constant, MJ m-2 min-1. */
const SOLAR_CONSTANT = 0.082;
const MINUTES_OF_DAY = 24 * 60;
/** mm of water that one MJ m-2 evaporates (FAO-56, equation 20). */
const MILLIMETRES_PER_MEGAJOULE = 0.408;

/**
 * Radiation at the top of the atmosphere on a day of the year (1 January is 1), MJ m-2 a day; latitude in degrees, north
 * positive. Where the sun never sets or never rises that day, all or none of it. FAO-56, equations 21 to 25.
 */
export function topRadiation(latitude: number, dayOfYear: number): number {
  if (!(Math.abs(latitude) <= 90)) return Number.NaN;
  const phi = (latitude * Math.PI) / 180;
  const angle = (2 * Math.PI * dayOfYear) / 365;
  const distance = 1 + 0.033 * Math.cos(angle);
  const declination = 0.409 * Math.sin(angle - 1.39);
  const sunset = Math.acos(Math.min(1, Math.max(-1, -Math.tan(phi) * Math.tan(declination))));
  return (
    (MINUTES_OF_DAY / Math.PI) *
    SOLAR_CONSTANT *
    distance *
    (sunset * Math.sin(phi) * Math.sin(declination) + Math.cos(phi) * Math.cos(declination) * Math.sin(sunset))
  );
}

/**
 * Reference evapotranspiration of short grass, mm a day, from the daily low and high (C), latitude (degrees) and day of the
 * year; 0 in frost so hard that the equation falls below it, NaN where the low is above the high. FAO-56, equation 52.
 */
export function hargreaves(low: number, high: number, latitude: number, dayOfYear: number): number {
  if (!(high >= low)) return Number.NaN;
  const radiation = topRadiation(latitude, dayOfYear) * MILLIMETRES_PER_MEGAJOULE;
  return Math.max(0, 0.0023 * ((low + high) / 2 + 17.8) * Math.sqrt(high - low) * radiation);
}

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Water of grass from temperatures',
    gives: 'reference evapotranspiration where no weather service gives it',
    equation: '0.0023 (mean + 17.8) sqrt(high - low) x radiation at the top of the atmosphere (equations 21 and 52)',
    range: 'weeks and months rather than days; too high where air is humid, too low in strong wind',
    source:
      'Allen, Pereira, Raes & Smith 1998, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56, chapters 3 and 4; Hargreaves & Samani 1985',
    standing: 'published',
  },
];
