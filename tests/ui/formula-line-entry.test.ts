// An entry typed in the line above the sheet: what is said of it while it is typed, and that a date far from all others is asked
// about once before it is taken.

import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { cellView, rowId, rows } from '../../engine/index.ts';
import { answerTo } from '../../ui/browser/formula-line/answers.ts';
import { beginLine, draft, refused } from '../../ui/browser/formula-line/draft.ts';
import { lineCell } from '../../ui/browser/formula-line/shown-text.ts';
import { takeLine } from '../../ui/browser/formula-line/taking.ts';
import { takeWorkbook } from '../../ui/browser/store/workbook.ts';
import { openFarm } from '../document/farm.ts';

const farm = openFarm();
const slot = rows(farm, 'plantings')[0] ?? -1;
const row = rowId(farm, 'plantings', slot);

beforeAll(() => {
  vi.stubGlobal('requestAnimationFrame', () => 0);
  takeWorkbook(farm);
});

afterAll(() => {
  vi.unstubAllGlobals();
});

function said(column: string, text: string) {
  const cell = lineCell(farm, { sheet: 'plantings', row, column });
  if (cell === undefined) throw new Error(column);
  return answerTo(farm, cell, text);
}

test('what could be read in two ways is shown with the other way, and a far date with how far it is', () => {
  expect(said('length', '1,234')).toEqual({
    tone: 'plain',
    says: 'Read as 1234 ft. If 1.234 ft is meant, write 1.234.',
  });
  expect(said('sown', '03/04').says).toBe('Read as 4 Mar 2027. If 3 Apr 2027 is meant, write 3 Apr 2027.');
  expect(said('sown', '5 Mar 1950').says).toBe(
    '5 Mar 1950 is 77 years before the season 2027. Enter again if it is meant.',
  );
  expect(said('length', '31')).toEqual({ tone: 'good', says: '31 ft.' });
});

test('a far date is taken when it is taken again, not at first', async () => {
  const sown = () => cellView(farm, 'plantings', slot, 'sown').text;
  const before = sown();
  beginLine('5 Mar 1950', { sheet: 'plantings', row, column: 'sown' });
  takeLine();
  expect(sown()).toBe(before);
  // Where a test before this one met a unit in general use, its list is fetched first.
  await vi.waitFor(() => expect(refused.peek()).toBeDefined());
  expect(refused.peek()).toBe('5 Mar 1950 is 77 years before the season 2027. Enter again if it is meant.');
  expect(draft.peek()?.text).toBe('5 Mar 1950');
  takeLine();
  expect(sown()).toBe('5 Mar 1950');
  expect(draft.peek()).toBeUndefined();
});

test('another far date typed after it is asked about by itself', async () => {
  const sown = () => cellView(farm, 'plantings', slot, 'sown').text;
  const before = sown();
  const place = { sheet: 'plantings', row, column: 'sown' };
  beginLine('6 Mar 1890', place);
  takeLine();
  await vi.waitFor(() => expect(refused.peek()).toContain('1890'));
  beginLine('6 Mar 1891', place);
  takeLine();
  await vi.waitFor(() => expect(refused.peek()).toContain('1891'));
  expect(sown()).toBe(before);
});
