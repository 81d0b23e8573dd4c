// What filters and colours ask, in words: figures and days as the place writes them.

import { expect, test } from 'vitest';
import { type Condition, sheetView, Workbook, type World } from '../../engine/index.ts';
import { conditionWords } from '../../ui/browser/store/condition-words.ts';
import { writingOf } from '../../ui/browser/store/writing.ts';
import { BEGINNING, world } from '../document/farm.ts';

function words(locale: string, id: string, condition: Condition): string {
  const at: World = { ...world(), writings: (named) => writingOf(named ?? locale) };
  const workbook = Workbook.open(BEGINNING, at);
  const column = workbook && sheetView(workbook, 'plantings')?.columns.find((each) => each.id === id);
  if (workbook === undefined || column === undefined) throw new Error(`no column ${id}`);
  return conditionWords(workbook, column, condition);
}

// 20 cm are 7.87402 in, 1.25 in are 0.03175 m; 20,898 is 21 March 2027.
test.each([
  ['en-US', 'spacing', { is: 'at least', least: 0.0381 }, 'at least 1.5 in'],
  ['de-DE', 'spacing', { is: 'at least', least: 0.0381 }, 'at least 1,5 in'],
  ['de-DE', 'spacing', { is: 'between', least: 0.03175, most: 0.2 }, '1,25 in to 7,87402 in'],
  ['de-DE', 'spacing', { is: 'one of', values: ['0.0381'] }, 'is 1,5 in'],
  ['fr-FR', 'length', { is: 'at most', most: 3810 }, 'at most 12\u202f500 ft'],
  ['en-US', 'length', { is: 'at least', least: 0 }, 'at least 0 ft'],
  ['en-US', 'share-of-bed', { is: 'at least', least: 0.125 }, 'at least 12.5%'],
  ['de-DE', 'share-of-bed', { is: 'at least', least: 0.125 }, 'at least 12,5%'],
  ['de-DE', 'sown', { is: 'at most', most: 20_898 }, 'at most 21. März 2027'],
  ['en-US', 'sown', { is: 'one of', values: ['2027-03-21', ''] }, 'is 21 Mar 2027 or nothing'],
] as const)('%s: %s', (locale, column, condition, expected) => {
  expect(words(locale, column, condition)).toBe(expected);
});
