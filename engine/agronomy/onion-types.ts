// Day-length types of onions: the hours each begins to bulb at, in several extension services' words, and the default
// of each type. Read by the varieties sheet and the suitability model; calls nothing.

export type DayLengthType = 'short' | 'intermediate' | 'long';

export interface TypeBand {
  readonly type: DayLengthType;
  /** Hours. */
  readonly from: number;
  /** Hours; not a number where the source gives no upper end. */
  readonly to: number;
  readonly source: string;
}

const OPEN = Number.NaN;
const OREGON = 'Oregon State University Extension 2006 (J. Myers)';
const IOWA = 'Iowa State University Extension, "What is a long-day-type onion variety?"';
const TEXAS = 'Texas Cooperative Extension, Horticulture Update Jan-Feb 2006 (D. Welsh)';

/** What extension services give as the hours at which each type bulbs; they do not agree, so all are kept. */
export const TYPE_BANDS: readonly TypeBand[] = [
  { type: 'short', from: 11, to: 13, source: OREGON },
  { type: 'intermediate', from: 13, to: 14, source: OREGON },
  { type: 'long', from: 14, to: OPEN, source: OREGON },
  { type: 'short', from: 10, to: 12, source: IOWA },
  { type: 'intermediate', from: 12, to: 14, source: IOWA },
  { type: 'long', from: 14, to: OPEN, source: IOWA },
  { type: 'short', from: 12, to: 12, source: TEXAS },
  { type: 'long', from: 15, to: 16, source: TEXAS },
];

/**
 * Critical day length (h) where a variety has no figure of its own. Short 12: the three short-day varieties that Oregon
 * State lists at 12 h, and Texas. Intermediate 13.5: the four it lists at 13.5 h, the lower half of its intermediate
 * group. Long 14.5: between its lowest long-day variety (14.25 h) and the next two (14.9 h).
 */
export const DEFAULT_CRITICAL_HOURS: Readonly<Record<DayLengthType, number>> = {
  short: 12,
  intermediate: 13.5,
  long: 14.5,
};

/** Critical day length (h) of a type's name; no answer for other words. */
export function criticalHoursOfType(type: string): number {
  return type === 'short' || type === 'intermediate' || type === 'long' ? DEFAULT_CRITICAL_HOURS[type] : Number.NaN;
}
