// Days typed on scratch papers: read as the sheets read them, kept with the season's year, and counted with.

import { describe, expect, test } from 'vitest';
import { createVocabulary } from '../../engine/index.ts';
import { writingOf } from '../../ui/browser/store/writing.ts';
import { keptDay } from '../../ui/scratch/typed-days.ts';
import { Desk } from './paper.ts';

function context(locale: string) {
  const writing = writingOf(locale);
  const { dayFirst, decimal } = writing;
  return {
    vocabulary: createVocabulary({ currency: 'USD' }),
    year: 2027,
    dayFirst,
    decimalComma: decimal === ',',
    writing,
  };
}

describe.each<readonly [string, readonly (readonly [string, string])[]]>([
  [
    'en-US',
    [
      ['3/15', '2027-03-15'],
      ['3/4', '2027-03-04'],
      ['3/15/2026', '2026-03-15'],
      ['15 Mar', '2027-03-15'],
      ['Mar 15', '2027-03-15'],
      ['15-Mar-2028', '2028-03-15'],
    ],
  ],
  [
    'de-DE',
    [
      ['15.3.', '2027-03-15'],
      ['3/4', '2027-04-03'],
      ['15. März', '2027-03-15'],
    ],
  ],
])('%s', (locale, days) => {
  test.each(days)('%s', (typed, kept) => {
    expect(keptDay(typed, context(locale))).toBe(kept);
  });

  test.each(['8-10', '1.5', '13/32', 'Row 3', 'beds', '12 beds', 'week 11', '3/4 in', ''])('%s is no day', (typed) => {
    expect(keptDay(typed, context(locale))).toBeUndefined();
  });
});

test('sums count with what is kept', () => {
  const desk = new Desk();
  desk.type({ A1: keptDay('3/15', context('en-US')) ?? '', A2: '=A1+7' });
  expect([desk.text('A1'), desk.text('A2')]).toEqual(['15 Mar 2027', '22 Mar 2027']);
  desk.room.destroy();
});
