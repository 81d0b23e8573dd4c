// What is told of the rows of a file before they are taken: figures and days as they were read, in the writing of the place, since
// marks and years may be others than were meant.

import { expect, test } from 'vitest';
import { readRowsOrStation, readTableFile, sheetView } from '../../engine/index.ts';
import { writingOf } from '../../ui/browser/store/writing.ts';
import { formatTools } from '../../ui/format-tools.ts';
import { seasonOf } from '../sheets/season.ts';

const ROWS = { Varieties: [{ Variety: 'Reds', Crop: 'Tomato' }] };

async function told(sheet: string, text: string, locale?: string): Promise<readonly (readonly string[])[]> {
  const { workbook } = seasonOf(ROWS, { Latitude: '-34' }).book;
  const view = sheetView(workbook, sheet);
  if (view === undefined) throw new Error(`There is no ${sheet}.`);
  const file = await readTableFile(new TextEncoder().encode(text), view, formatTools, {});
  if (!file.ok) throw new Error(file.why);
  let made = 0;
  const writing = locale === undefined ? undefined : writingOf(locale);
  const rows = readRowsOrStation(workbook, sheet, file, { newId: () => `n${++made}`, writing });
  if (!rows.ok) throw new Error(rows.why);
  return rows.taken.map(({ entries }) => entries.map((entry) => entry.join(': ')));
}

const PACKS = 'Variety;Pack;Seeds;Price\nReds;Tüte;1250;12,50\n';

test('figures stand in the writing of the workbook', async () => {
  expect(await told('packs', PACKS, 'de-DE')).toEqual([
    ['Variety: Reds', 'Pack: Tüte', 'Seeds: 1250', 'Price: 12,50 USD'],
  ]);
  expect(await told('packs', PACKS)).toEqual([['Variety: Reds', 'Pack: Tüte', 'Seeds: 1250', 'Price: 12.50 USD']]);
});

test('days stand with the year in which they are taken', async () => {
  const days = 'Planting;Variety;Planted out\nLate;Reds;15 Feb\n';
  expect(await told('plantings', days, 'de-DE')).toEqual([
    ['Planting: Late', 'Variety: Reds', 'Planted out: 15. Feb. 2028'],
  ]);
  expect(await told('plantings', days)).toEqual([['Planting: Late', 'Variety: Reds', 'Planted out: 15 Feb 2028']]);
});
