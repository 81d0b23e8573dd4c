// The formulas of the season that work out a whole sheet when one row of another changes: few, and known one by one.

import { expect, test } from 'vitest';
import { wholeTableFormulas } from '../../engine/queries/whole-tables.ts';
import { opened } from '../book.ts';
import { seasonOf } from '../sheets/season.ts';
import { besideFarm, computed, entered, plain, sheet } from '../workbook/small.ts';

const TEXT = { type: 'text' } as const;

/** Sheets that are set up once: a change there is a change of the season. */
const SET_UP_ONCE = new Set([
  'climate',
  'monthly-climate',
  'frost-years',
  'size-grades',
  'products',
  'stores',
  'hands',
]);

test('a change of a planting, lot, job or delivery works out no other sheet whole', () => {
  const daily = wholeTableFormulas(seasonOf({}).book.workbook).flatMap(({ sheet, column, reads }) =>
    reads.filter((read) => !SET_UP_ONCE.has(read)).map((read) => `${sheet}/${column} reads all ${read}`),
  );
  // Each planting's part of the margin of all: one division a row.
  expect(daily).toEqual(['plantings/share-of-margin reads all plantings']);
});

test('what an index answers is not listed; whole columns and unlike keys are', () => {
  const of = (formula: string): readonly string[] =>
    wholeTableFormulas(
      opened(
        besideFarm(
          [
            sheet('Lots', {
              key: 'Lot',
              columns: [entered('Lot', TEXT), entered('On', plain), entered('Mass', plain)],
            }),
            sheet('Days', {
              key: 'Day',
              columns: [entered('Day', TEXT), entered('At', plain), computed('Asked', plain, formula)],
            }),
          ],
          {},
        ),
      ).workbook,
    ).flatMap(({ reads }) => reads);
  expect(of('SUMIFS(Lots[Mass]; Lots[On]; [At])')).toEqual([]);
  expect(of('SUMIFS(Lots[Mass]; Lots[On]; "<=" & [At])')).toEqual([]);
  expect(of('SUM(Lots[Mass])')).toEqual(['lots']);
  expect(of('[At] / MAX(Lots[On])')).toEqual(['lots']);
  expect(of('COUNTIFS(Lots[Lot]; "a*")')).toEqual(['lots']);
});
