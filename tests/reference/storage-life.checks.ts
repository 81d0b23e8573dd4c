// How long crops keep, as the Department of Agriculture printed it in 1954, beside the library's store life, which comes from later
// handbooks and guides (sheets-templates/library/sources-keeping.ts).

import type { Fact, Publication } from './check.ts';
import { numberOf, offOf, readTable, textOf } from './table.ts';
import { cropFigure } from './workbook.ts';

const HANDBOOK_66: Publication = {
  author: 'Wright, R. C., Rose, D. H. & Whiteman, T. M.',
  year: 1954,
  title: 'The commercial storage of fruits, vegetables, and florist and nursery stocks (Agriculture Handbook 66)',
  publisher: 'U.S. Department of Agriculture, Washington',
};

const DAYS_A_WEEK = 7;
/** Where a single figure is printed, or a very short range. */
const HALF_A_WEEK = 3.5;

export const facts: readonly Fact[] = readTable('storage-life-1954').map((row): Fact => {
  const crop = textOf(row, 'crop');
  const [from, to] = [numberOf(row, 'from_weeks') * DAYS_A_WEEK, numberOf(row, 'to_weeks') * DAYS_A_WEEK];
  return {
    kind: 'published',
    fact: `days that ${crop.toLowerCase()} keeps in store`,
    unit: 'd',
    source: HANDBOOK_66,
    at: 'table of recommended temperatures, humidities and approximate length of storage period',
    points: [
      {
        what: `middle of ${textOf(row, 'from_weeks')} to ${textOf(row, 'to_weeks')} weeks, in the best store`,
        given: (from + to) / 2,
        computed: () => cropFigure(crop, 'Storage life'),
        tolerance: Math.max((to - from) / 2, HALF_A_WEEK),
        ...offOf(row),
      },
    ],
  };
});
