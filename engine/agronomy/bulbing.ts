// When onions start to bulb: two gates, thermal time since emergence and day length, the date each is met and which of
// them holds the crop back. Called by the plantings sheet; calls day length and degree-days.

import { dayLength } from './day-length.ts';
import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';
import { dayReachingSum } from './thermal-time.ts';

/** Degree-days since emergence before an onion can bulb. */
export const BULBING_THERMAL_TIME = 600;
/** C; the abstract that gives the 600 does not print its base, and 5 C is from memory. */
export const BULBING_BASE = 5;
/** C; above it warmth no longer hastens bulbing (Tesfay et al. 2011). */
export const BULBING_UPPER = 25;

export const BULBING_LIMITS = {
  criticalHours: { min: 8, max: 20, why: 'critical day lengths of onions run from about 11 to 16 hours' },
  thermalTime: { min: 0, max: 3000, why: 'a thermal time before bulbing is some hundreds of degree-days' },
} satisfies Limits;

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Start of bulbing of onions',
    gives: 'the date on which both gates are open, and which one held',
    equation:
      'thermal time since emergence >= 600 degree-days and day length >= the critical day length of the variety',
    range:
      'fitted on long-keeping onions of New Zealand (13.75 hours); base 5 C from memory; dense beds and hot summers bulb earlier',
    source:
      'Lancaster, Triggs, de Ruiter & Gandar 1996, Annals of Botany 78:423-430; no gain above 25 C: Tesfay et al. 2011, African Journal of Biotechnology 10:15875-15882',
    standing: 'published',
  },
];

export interface BulbingInput {
  /** Degrees, north positive. */
  readonly latitude: number;
  /** Civil day of the first daily mean. */
  readonly firstDay: number;
  /** Daily mean temperatures (C) from firstDay on, at least to the end of the season. */
  readonly means: ArrayLike<number>;
  /** Civil day of emergence. */
  readonly emergence: number;
  /** Hours, sunrise to sunset. */
  readonly criticalHours: number;
  readonly thermalTime?: number;
  readonly base?: number;
  readonly upper?: number;
}

export interface Bulbing {
  /** Civil day on which the thermal time is reached; not a number where it never is. */
  readonly thermalTimeMet: number;
  /** First civil day from emergence on with days long enough. */
  readonly dayLengthMet: number;
  /** Civil day on which bulbing starts. */
  readonly starts: number;
  /** The gate that was met last, or was never met. */
  readonly heldBy: 'thermal time' | 'day length';
}

/** The two gates of bulbing for one planting; blank weather counts as thermal time never reached. Source: see SOURCES. */
export function bulbing(input: BulbingInput): Bulbing {
  const { latitude, firstDay, means, emergence, criticalHours } = input;
  const wanted = input.thermalTime ?? BULBING_THERMAL_TIME;
  const reached = dayReachingSum(
    means,
    Math.max(0, emergence - firstDay),
    wanted,
    input.base ?? BULBING_BASE,
    input.upper ?? BULBING_UPPER,
  );
  const thermalTimeMet = firstDay + reached;
  const end = firstDay + means.length;
  let dayLengthMet = Number.NaN;
  let starts = Number.NaN;
  for (let day = emergence; day < end; day += 1) {
    if (dayLength(latitude, day) < criticalHours) continue;
    if (Number.isNaN(dayLengthMet)) dayLengthMet = day;
    if (Number.isNaN(thermalTimeMet)) break;
    if (day >= thermalTimeMet) {
      starts = day;
      break;
    }
  }
  const waitsForLight = Number.isNaN(dayLengthMet) || dayLengthMet > thermalTimeMet;
  return { thermalTimeMet, dayLengthMet, starts, heldBy: waitsForLight ? 'day length' : 'thermal time' };
}
