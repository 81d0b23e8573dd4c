// Twelve monthly means made into 365 smooth daily values whose monthly means are the ones given. Called by the climate
// sheet; calls elimination.ts.

import { eliminate } from './elimination.ts';
import type { ModelSource } from './source.ts';

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Daily values from monthly means',
    gives: 'a smooth year of 365 daily temperatures',
    equation:
      'a mean, five yearly waves and the sixth cosine, their twelve weights solved so that the days of each month average to its mean',
    range: 'monthly means of temperature; day-to-day weather is not in it',
    source: 'Epstein 1991, On obtaining daily climatological values from monthly means, Journal of Climate 4:365-368',
    standing: 'published',
  },
];

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const MONTHS = 12;
const DAYS = 365;
const MIDDLE_OF_JANUARY = 15.5;

// Value of wave `k` in the middle of calendar day `i`: 0 the mean, 1-2 once a year, ... 11 the sixth cosine, which
// swings from the middle of one month to the middle of the next.
function wave(k: number, i: number): number {
  if (k === 0) return 1;
  const angle = (2 * Math.PI * Math.ceil(k / 2) * (i + 0.5 - MIDDLE_OF_JANUARY)) / DAYS;
  return k % 2 === 1 ? Math.cos(angle) : Math.sin(angle);
}

/**
 * 365 daily values, 1 January first, from twelve monthly means in any unit; each month's days average to its mean.
 * Empty where a mean is missing. Source: see SOURCES.
 */
export function dailyFromMonthlyMeans(means: readonly number[]): Float64Array {
  if (means.length !== MONTHS || means.some((mean) => !Number.isFinite(mean))) return new Float64Array(0);
  const rows: Float64Array[] = [];
  let first = 0;
  for (const [month, length] of MONTH_DAYS.entries()) {
    const row = new Float64Array(MONTHS + 1);
    for (let k = 0; k < MONTHS; k += 1) {
      let sum = 0;
      for (let i = first; i < first + length; i += 1) sum += wave(k, i);
      row[k] = sum / length;
    }
    row[MONTHS] = means[month] ?? Number.NaN;
    rows.push(row);
    first += length;
  }
  // The weights are always the same ones, and no pivot among them comes near zero.
  eliminate(rows);
  const weights = Float64Array.from(rows, (row, k) => (row[MONTHS] as number) / (row[k] as number));
  return Float64Array.from({ length: DAYS }, (_, i) =>
    weights.reduce((sum, weight, k) => sum + weight * wave(k, i), 0),
  );
}
