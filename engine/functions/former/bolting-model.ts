// The risk of bolting as the first template told it: cold felt after a plant has the size for it, and alternations of
// freezing and thawing. Kept as it was for workbooks that still lie over that template; bolting.ts calls it.

import { dayReachingSum } from '../../agronomy/thermal-time.ts';
import type { BoltingCrop } from './bolting-crops.ts';

/** Days of freezing and thawing that raise the risk one step. */
export const FREEZE_THAW_DAYS = 10;

export type BoltingLevel = 'low' | 'raised' | 'high';

export interface BoltingRisk {
  readonly level: BoltingLevel;
  readonly reason: string;
  /** Days' worth of the best cold felt since the gate. */
  readonly coldDays: number;
  readonly freezeThawDays: number;
}

/** How much of a full day of cold a mean temperature (C) gives a crop, 0 to 1; no answer without a temperature. */
export function coldEffect(crop: BoltingCrop, mean: number): number {
  if (mean < crop.base || mean > crop.maximum) return 0;
  if (mean < crop.optimumFrom) return (mean - crop.base) / (crop.optimumFrom - crop.base);
  if (mean <= crop.optimumTo) return 1;
  return (crop.maximum - mean) / (crop.maximum - crop.optimumTo);
}

/**
 * Index of the day on which the plants pass the size gate, from daily means (C) and the index of emergence; emergence
 * itself where the crop has no gate, no answer where its thermal time is not known or not reached.
 */
export function gateDay(crop: BoltingCrop, means: ArrayLike<number>, emergence: number): number {
  if (crop.gate === undefined) return emergence;
  const time = crop.gate.thermalTime;
  return time === undefined ? Number.NaN : dayReachingSum(means, emergence, time.sum, time.base, time.upper);
}

export interface BoltingWeather {
  /** Daily lows and highs (C), one a day. */
  readonly lows: ArrayLike<number>;
  readonly highs: ArrayLike<number>;
  /** Index of the first day after the size gate, and of the first day no longer looked at. */
  readonly from: number;
  readonly to: number;
  /** C by which a cover warms the plants; 0 without one. */
  readonly coverGain: number;
}

function coldFelt(crop: BoltingCrop, weather: BoltingWeather, gain: number): number {
  let sum = 0;
  for (let i = Math.max(0, weather.from); i < Math.min(weather.to, weather.lows.length); i += 1) {
    const mean = ((weather.lows[i] ?? Number.NaN) + (weather.highs[i] ?? Number.NaN)) / 2 + gain;
    const effect = coldEffect(crop, mean);
    if (!Number.isNaN(effect)) sum += effect;
  }
  return sum;
}

/** Days with a low below and a high above freezing, under a cover that warms by `coverGain`. */
export function freezeThawDays(weather: BoltingWeather): number {
  let count = 0;
  for (let i = Math.max(0, weather.from); i < Math.min(weather.to, weather.lows.length); i += 1) {
    if (
      (weather.lows[i] ?? Number.NaN) + weather.coverGain < 0 &&
      (weather.highs[i] ?? Number.NaN) + weather.coverGain > 0
    ) {
      count += 1;
    }
  }
  return count;
}

const days = (count: number): string => `${count} ${count === 1 ? 'day' : 'days'}`;

function levelOf(crop: BoltingCrop, coldDays: number, freezing: number): BoltingLevel {
  const frozenOften = freezing >= FREEZE_THAW_DAYS;
  if (coldDays >= crop.mostBolt) return 'high';
  if (coldDays >= crop.someBolt) return frozenOften ? 'high' : 'raised';
  return frozenOften ? 'raised' : 'low';
}

/**
 * The risk that a planting bolts. `weather.from` is the day its plants pass the size gate; where they never do (not a
 * number) the risk is low. Cold under a cover never counts as more than without it. Days without readings count for
 * nothing.
 */
export function boltingRisk(crop: BoltingCrop, weather: BoltingWeather): BoltingRisk {
  const size = crop.gate?.words ?? 'emergence';
  if (Number.isNaN(weather.from) || weather.from >= weather.to) {
    const reason = `Low: the plants stay below ${size} while it is cool, and feel no cold before that.`;
    return { level: 'low', reason, coldDays: 0, freezeThawDays: 0 };
  }
  const open = coldFelt(crop, weather, 0);
  const coldDays = Math.min(open, coldFelt(crop, weather, weather.coverGain));
  const freezing = freezeThawDays(weather);
  const level = levelOf(crop, coldDays, freezing);
  const felt = `${days(Math.round(coldDays))} of full cold after ${size}; some bolt from about ${Math.round(crop.someBolt)}, most from about ${Math.round(crop.mostBolt)}`;
  const frozen = freezing > 0 ? `; ${days(freezing)} of freezing and thawing` : '';
  const word = level === 'low' ? 'Low' : level === 'raised' ? 'Raised' : 'High';
  return { level, reason: `${word}: ${felt}${frozen}.`, coldDays, freezeThawDays: freezing };
}
