// What happens to a crop in store: loss month by month, whether the store suits it, how long it still keeps, what to sell
// first and what is left week by week. Masses are in one unit, temperatures in deg C, humidity in shares, dates civil days.
// Calls nothing.

import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

export const STORAGE_LIMITS = {
  monthlyLoss: {
    min: 0,
    max: 0.5,
    why: 'warm stores lose 2 to 5 % a month; a store that loses half in a month has failed',
  },
  months: { min: 0, max: 14, why: 'no vegetable keeps longer than about a year' },
} satisfies Limits;

/** Days in a month, one twelfth of a mean Gregorian year. */
export const MONTH_DAYS = 365.2425 / 12;

/** Mass left after `months`, which may be a part of one: start x (1 - loss)^months. NaN for a loss outside 0 to 1. */
export function massAfter(start: number, monthlyLoss: number, months: number): number {
  if (!(start >= 0) || !(months >= 0) || !(monthlyLoss >= 0 && monthlyLoss <= 1)) return Number.NaN;
  return start * (1 - monthlyLoss) ** months;
}

/** Mass to put in for what must be left after `months`. NaN where nothing would be left. */
export function massToStore(wanted: number, monthlyLoss: number, months: number): number {
  const share = massAfter(1, monthlyLoss, months);
  return wanted >= 0 && share > 0 ? wanted / share : Number.NaN;
}

/** The monthly loss that compounds to a whole loss over `months`: 1 - (1 - loss)^(1 / months). */
export function monthlyLossOf(wholeLoss: number, months: number): number {
  return wholeLoss >= 0 && wholeLoss <= 1 && months > 0 ? 1 - (1 - wholeLoss) ** (1 / months) : Number.NaN;
}

/** The conditions a crop keeps best in, and where it freezes. */
export interface Optimum {
  readonly temperature: readonly [low: number, high: number];
  readonly humidity: readonly [low: number, high: number];
  readonly freezing?: number;
}

export interface StoreVerdict {
  readonly temperature: 'right' | 'too warm' | 'too cold' | 'freezes';
  readonly humidity: 'right' | 'too dry' | 'too damp';
}

/** Slack that an ordinary cold store keeps to: a degree, and five points of humidity. Common practice. */
export const STORE_SLACK = { temperature: 1, humidity: 0.05 } as const;

/** A store's temperature and humidity against a crop's optimum. Undefined where either is not known. */
export function storeVerdict(temperature: number, humidity: number, optimum: Optimum): StoreVerdict | undefined {
  if (Number.isNaN(temperature) || Number.isNaN(humidity)) return undefined;
  const [coldest, warmest] = optimum.temperature;
  const [driest, dampest] = optimum.humidity;
  const judgeTemperature = (): StoreVerdict['temperature'] => {
    if (optimum.freezing !== undefined && temperature <= optimum.freezing) return 'freezes';
    if (temperature > warmest + STORE_SLACK.temperature) return 'too warm';
    return temperature < coldest - STORE_SLACK.temperature ? 'too cold' : 'right';
  };
  const judgeHumidity = (): StoreVerdict['humidity'] => {
    if (humidity > dampest + STORE_SLACK.humidity) return 'too damp';
    return humidity < driest - STORE_SLACK.humidity ? 'too dry' : 'right';
  };
  return { temperature: judgeTemperature(), humidity: judgeHumidity() };
}

const TEMPERATURE_SENTENCES: Readonly<Record<StoreVerdict['temperature'], string>> = {
  right: 'The store is at the temperature this crop keeps best at',
  'too warm': 'The store is warmer than this crop keeps best at: it will sprout, soften or rot sooner',
  'too cold': 'The store is colder than this crop keeps best at: watch for chilling damage',
  freezes: 'The store is at or below the freezing point of this crop: it will be spoilt',
};

const HUMIDITY_SENTENCES: Readonly<Record<StoreVerdict['humidity'], string>> = {
  right: 'the humidity is right',
  'too dry': 'the air is drier than it should be: it will lose weight and shrivel',
  'too damp': 'the air is damper than it should be: it may root and rot',
};

/** A verdict as a grower reads it. */
export function storeSentence(verdict: StoreVerdict): string {
  return `${TEMPERATURE_SENTENCES[verdict.temperature]}; ${HUMIDITY_SENTENCES[verdict.humidity]}.`;
}

/** Something in store: what it is, since when, how many days it keeps there, and how much of it there is. */
export interface StoredLot {
  readonly name: string;
  readonly storedOn: number;
  readonly keepsDays: number;
  readonly mass: number;
}

/** The last day a lot is expected to keep. NaN where its keeping life is not known. */
export function keepsUntil(lot: StoredLot): number {
  return lot.keepsDays >= 0 ? lot.storedOn + Math.floor(lot.keepsDays) : Number.NaN;
}

/** Days a lot still keeps on a date; negative once it is past. */
export function daysLeft(lot: StoredLot, today: number): number {
  return keepsUntil(lot) - today;
}

/**
 * Lots in the order to sell them: shortest remaining life first, larger lot first among equals, those of unknown life last.
 * Empty lots are left out.
 */
export function sellingOrder(lots: readonly StoredLot[]): readonly StoredLot[] {
  const rank = (lot: StoredLot): number => {
    const end = keepsUntil(lot);
    return Number.isNaN(end) ? Number.MAX_SAFE_INTEGER : end;
  };
  return lots.filter((lot) => lot.mass > 0).toSorted((a, b) => rank(a) - rank(b) || b.mass - a.mass);
}

/** One period of a store: what was lost, what could be sold of what was asked for, and what is left. */
export interface StorePeriod {
  readonly lost: number;
  readonly sold: number;
  readonly short: number;
  readonly left: number;
}

/**
 * A store period by period (weeks of `periodDays` days): what is left loses its monthly share over the period, then what
 * comes in is added and what is asked for is taken as far as it goes.
 */
export function storeRun(
  incoming: readonly number[],
  wanted: readonly number[],
  monthlyLoss: number,
  periodDays = 7,
): readonly StorePeriod[] {
  const periods: StorePeriod[] = [];
  let held = 0;
  for (let index = 0; index < Math.max(incoming.length, wanted.length); index += 1) {
    const kept = massAfter(held, monthlyLoss, periodDays / MONTH_DAYS);
    const available = kept + (incoming[index] ?? 0);
    const asked = wanted[index] ?? 0;
    const sold = Math.min(asked, available);
    periods.push({ lost: held - kept, sold, short: asked - sold, left: available - sold });
    held = available - sold;
  }
  return periods;
}

/** Floor or shelf volume that a mass takes in store: bulk volume over the share of the room that can be filled. */
export function storeVolume(mass: number, bulkDensity: number, usableShare: number): number {
  return mass >= 0 && bulkDensity > 0 && usableShare > 0 && usableShare <= 1
    ? mass / bulkDensity / usableShare
    : Number.NaN;
}

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Loss in store',
    gives: 'mass left after months in store',
    equation: 'start x (1 - monthly loss)^months',
    range: 'onions in warm stores lose 2 to 5 % a month, mean 3.3; a rising loss after dormancy ends is not in it',
    source: 'Msika & Jackson 1997, in Rabinowitch & Currah 2002, Allium Crop Science',
    standing: 'published',
  },
  {
    model: 'Store against optimum',
    gives: 'whether a store suits a crop',
    equation: 'temperature within a degree, humidity within five points, above the freezing point',
    range: 'crops with a published optimum',
    source:
      'USDA Agriculture Handbook 66 and the New England Vegetable Management Guide, Table 16; the slack is common practice',
    standing: 'common practice',
  },
];
