// What is likely and between which ends, in words. Pure; how sure, the totals and the panels call it.

import { decimalText, roundedInterval, type Uncertain, type Writing } from '../../../../engine/index.ts';
import { withUnit } from '../../store/shown.ts';

/** What is likely and between which ends, in any one unit. */
export type Interval = Uncertain;

/** '150 to 230 lb, likely 190'; just the likely figure where the ends fall on it. */
export function intervalWords(interval: Interval, unit: string, writing?: Writing): string {
  const { low, likely, high } = roundedInterval(interval);
  const say = (figure: number): string => decimalText(figure, 0, 6, writing);
  if (low === high) return withUnit(say(likely), unit);
  return `${say(low)} to ${withUnit(say(high), unit)}, likely ${say(likely)}`;
}
