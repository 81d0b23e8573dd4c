// Whether an onion variety suits a farm: first by day length alone, then by the season worked out for a planting. Called
// by the varieties and plantings sheets; calls nothing. Types are guides, so near misses are marginal, not refused.

import type { Bulbing } from './bulbing.ts';
import type { ModelSource } from './source.ts';

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Suits this farm',
    gives: 'yes, marginal or no, with the reason',
    equation:
      'longest day against the critical day length, half an hour either way being marginal; leaf growth before bulbing; the latitudes a variety is adapted to',
    range: 'onions; a guide for choosing varieties, not a forecast',
    source: 'common practice; critical day lengths by Lancaster et al. 1996 and extension services',
    standing: 'common practice',
  },
];

export type Verdict = 'yes' | 'marginal' | 'no';

export interface Suitability {
  readonly verdict: Verdict;
  /** A sentence for the sheet. */
  readonly reason: string;
}

/** Hours either side of the critical day length within which a variety is marginal. */
export const MARGINAL_HOURS = 0.5;

/** Degree-days (6 to 20 C) in the field before bulbing: fewer than the first make small bulbs, fewer than the second are a risk. */
export const LEAF_GROWTH_TOO_SMALL = 30;
export const LEAF_GROWTH_ENOUGH = 60;

/** Days by which the thermal time may lag the day length before bulbs stay small for want of leaves. */
export const LONGEST_LAG = 30;

const RANK: Readonly<Record<Verdict, number>> = { yes: 0, marginal: 1, no: 2 };

/** Hours as a grower says them: 14 h 48 min. */
export function hoursAndMinutes(hours: number): string {
  const minutes = Math.round(hours * 60);
  const rest = minutes % 60;
  return rest === 0 ? `${minutes / 60} h` : `${Math.floor(minutes / 60)} h ${rest} min`;
}

/** Yes, marginal or no by the longest day alone (hours); undefined where either is missing. */
export function dayLengthVerdict(longestDay: number, criticalHours: number): Verdict | undefined {
  const spare = longestDay - criticalHours;
  if (Number.isNaN(spare)) return undefined;
  if (spare >= MARGINAL_HOURS) return 'yes';
  return spare > -MARGINAL_HOURS ? 'marginal' : 'no';
}

export interface SuitabilityInput {
  /** Hours. */
  readonly longestDay: number;
  /** Hours. */
  readonly criticalHours: number;
  /** Degree-days 6 to 20 C from the earliest practical planting-out to the critical day length; left out where unknown. */
  readonly leafGrowth?: number;
  /** Degrees, north positive. */
  readonly latitude?: number;
  /** Latitudes, without regard to north or south, that the variety is offered for. */
  readonly adaptedFrom?: number;
  readonly adaptedTo?: number;
}

function byDayLength(longestDay: number, criticalHours: number, verdict: Verdict): Suitability {
  const here = hoursAndMinutes(longestDay);
  const needed = hoursAndMinutes(criticalHours);
  if (verdict === 'yes')
    return { verdict, reason: `The longest day here, ${here}, is well past the ${needed} it needs to bulb.` };
  if (verdict === 'marginal') {
    return {
      verdict,
      reason: `The longest day here, ${here}, is within half an hour of the ${needed} it needs: it may bulb late or not at all.`,
    };
  }
  return { verdict, reason: `It never bulbs here: the longest day is ${here} and it needs ${needed}.` };
}

function byLeafGrowth(leafGrowth: number): Suitability | undefined {
  if (!(leafGrowth < LEAF_GROWTH_ENOUGH)) return undefined;
  const degreeDays = Math.round(leafGrowth);
  return leafGrowth < LEAF_GROWTH_TOO_SMALL
    ? {
        verdict: 'no',
        reason: `Its day length comes with only ${degreeDays} degree-days of leaf growth in the field, so the bulbs stay too small. Plant in autumn, or choose one that needs longer days.`,
      }
    : {
        verdict: 'marginal',
        reason: `Its day length comes after ${degreeDays} degree-days of leaf growth in the field, which makes smallish bulbs: plant as early as you can.`,
      };
}

function byLatitude(latitude: number, from: number, to: number): Suitability | undefined {
  const distance = Math.abs(latitude);
  if (!(distance < from || distance > to)) return undefined;
  const side = distance < from ? 'nearer the equator' : 'farther from the equator';
  const offered = Number.isNaN(from) ? `up to ${to}` : Number.isNaN(to) ? `from ${from}` : `${from} to ${to}`;
  return {
    verdict: 'marginal',
    reason: `This farm lies ${side} than the latitudes it is offered for (${offered} degrees).`,
  };
}

/**
 * Whether a variety suits, by the longest day, then leaf growth before bulbing and adapted latitudes where known; the
 * worst of them gives the reason. Undefined where the longest day or the critical day length is missing.
 */
export function suitability(input: SuitabilityInput): Suitability | undefined {
  const verdict = dayLengthVerdict(input.longestDay, input.criticalHours);
  if (verdict === undefined) return undefined;
  let worst = byDayLength(input.longestDay, input.criticalHours, verdict);
  const others = [
    byLeafGrowth(input.leafGrowth ?? Number.NaN),
    byLatitude(input.latitude ?? Number.NaN, input.adaptedFrom ?? Number.NaN, input.adaptedTo ?? Number.NaN),
  ];
  for (const other of others) if (other !== undefined && RANK[other.verdict] > RANK[worst.verdict]) worst = other;
  return worst;
}

export type SeasonVerdict = 'never bulbs' | 'bulbs too small' | 'suits';

export interface SeasonSuitability {
  readonly verdict: SeasonVerdict;
  readonly reason: string;
}

/**
 * What one planting comes to, from its two gates and the degree-days (6 to 20 C) it grows in the field, planting out or
 * emergence to the start of bulbing.
 */
export function seasonSuitability(gates: Bulbing, fieldGrowth: number): SeasonSuitability {
  if (Number.isNaN(gates.starts)) {
    if (Number.isNaN(gates.dayLengthMet)) {
      return { verdict: 'never bulbs', reason: 'The days never get long enough while it grows.' };
    }
    return Number.isNaN(gates.thermalTimeMet)
      ? {
          verdict: 'never bulbs',
          reason: 'The season is too cool or too short for the plants to grow to bulbing size.',
        }
      : {
          verdict: 'never bulbs',
          reason: 'By the time the plants are large enough the days have grown too short: sow earlier.',
        };
  }
  const lag = gates.thermalTimeMet - gates.dayLengthMet;
  if (lag > LONGEST_LAG) {
    return {
      verdict: 'bulbs too small',
      reason: `The days were long enough ${Math.round(lag)} days before the plants were, so they bulb with the fewest leaves that can: sow or plant earlier.`,
    };
  }
  if (fieldGrowth < LEAF_GROWTH_TOO_SMALL) {
    return {
      verdict: 'bulbs too small',
      reason: `Bulbing starts after only ${Math.round(fieldGrowth)} degree-days of leaf growth in the field: plant earlier, or choose one that needs longer days.`,
    };
  }
  return {
    verdict: 'suits',
    reason:
      gates.heldBy === 'day length'
        ? 'Leaves grow until the days are long enough: the earlier it is planted, the larger the bulbs.'
        : 'The days are long enough soon before the plants are: warmth sets the start of bulbing.',
  };
}
