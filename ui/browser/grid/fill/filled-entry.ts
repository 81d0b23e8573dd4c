// What comes next in a filling, as it is typed in a cell.

import { isoDate } from '../../../../engine/index.ts';
import type { Filled } from './series.ts';

/**
 * The entry of a value that was counted on in a column of `unit`, with the decimal mark of the place; '' for a blank. A figure
 * below 1 in a column of per cent names it: bare, it is read as a share.
 */
export function filledEntry(value: Filled, unit: string, decimal: string): string {
  if (value === undefined) return '';
  if ('day' in value) return isoDate(value.day);
  if ('text' in value) return value.text;
  if ('ends' in value) return value.ends.map((end) => filledEntry(end, unit, decimal)).join('..');
  const { number } = value;
  const isSmallShare = unit === '%' && value.unit === '' && number > 0 && number < 1;
  return `${String(number).replace('.', decimal)}${isSmallShare ? '%' : value.unit}`;
}
