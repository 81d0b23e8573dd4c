// The Size grades sheet: the grower's own bands of bulb diameter and what each fetches. Plantings sorts its bulbs by the
// four names; limits and prices are the grower's.

import type { SheetDeclaration } from '../engine/index.ts';
import { entered, group, SHARE, SIZE, TEXT } from './authoring.ts';

export const sizeGradesSheet: SheetDeclaration = {
  id: 'size-grades',
  name: 'Size grades',
  question: 'Selling',
  about:
    'Bands of diameter that do not overlap, with what each fetches against the full price. The names small, medium, large and extra large are read by Plantings; limits and prices are yours.',
  rows: { from: 'entry' },
  key: 'grade',
  columns: [
    ...group(
      'Band',
      entered('grade', 'Grade', TEXT, { required: true }),
      entered('from', 'From', SIZE, { note: 'This diameter and larger; blank is open.', least: 0 }),
      entered('to', 'To', SIZE, { note: 'Smaller than this; blank is open.', least: 0 }),
    ),
    ...group(
      'Selling',
      entered('price-share', 'Price share', SHARE, {
        note: 'Of the full price; 0 % is not sold.',
        decimals: 0,
        least: 0,
        most: 1000,
      }),
    ),
    ...group('Sources', entered('source', 'Source', TEXT)),
  ],
  checks: [
    {
      id: 'band-upside-down',
      name: 'Band upside down',
      level: 'error',
      column: 'to',
      says: 'IF([To] <= [From]; "The upper limit must be above the lower one.")',
    },
    {
      id: 'bands-overlap',
      name: 'Bands overlap',
      level: 'error',
      column: 'from',
      says: `IF(COUNTIFS('Size grades'[From]; "<" & [From]; 'Size grades'[To]; ">" & [From]) > 0; "This band begins inside another, so a bulb could be counted twice: let one end where the other begins.")`,
    },
  ],
  cautions: [
    'Official size names overlap, so they cannot sort a crop: where you must use them, check the standard you sell under.',
  ],
};

/**
 * Bands to start from: medium, large and extra large as in the Malheur spacing trials, nothing below the default minimum
 * of 7 CFR 51.3198.
 */
export const SIZE_GRADE_ROWS: readonly Readonly<Record<string, string>>[] = [
  { Grade: 'small', From: '1.5 in', To: '2.25 in', 'Price share': '60%', Source: 'From 7 CFR 51.3198 default minimum' },
  { Grade: 'medium', From: '2.25 in', To: '3 in', 'Price share': '100%', Source: 'Shock et al., Malheur' },
  { Grade: 'large', From: '3 in', To: '4 in', 'Price share': '100%', Source: 'Shock et al., Malheur: jumbo' },
  { Grade: 'extra large', From: '4 in', To: '', 'Price share': '90%', Source: 'Shock et al., Malheur: colossal' },
];
