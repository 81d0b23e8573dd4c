// The main job from end to end as a grower does it: change a bed's length, a variety's critical day length and a planting's
// spacing; stations, density, mean mass, yield, seeds, packs and cost follow; undo restores every figure; the downloaded
// seed order holds the same numbers. Expected figures are worked out by the engine beside the page from the same edits.

import { readFile } from 'node:fs/promises';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import type { Book } from '../book.ts';
import { openWorkbook } from './harness.ts';
import { demoBook, WorkbookPage } from './workbook-page.ts';

const PLANTING_FIGURES = [
  'Stations',
  'Plant density',
  'Mean plant mass',
  'Total yield',
  'Blocks to start',
  'Seeds needed',
] as const;
const ORDER_FIGURES = ['Seeds needed', 'Seeds on hand', 'Seeds to buy', 'Packs', 'Cost', 'Left over'] as const;
const VARIETY_FIGURES = ['Critical day length', 'Day length reached', 'Suits this farm'] as const;

/** What the sheets should read for the first planting, its variety and its line of the seed order. */
function expected(demo: Book): readonly string[] {
  const read = (sheet: string, columns: readonly string[]): readonly string[] =>
    columns.map((column) => demo.cell(sheet, demo.rows(sheet)[0] ?? -1, column).text);
  return [
    ...read('Plantings', PLANTING_FIGURES),
    ...read('Varieties', VARIETY_FIGURES),
    ...read('Seed order', ORDER_FIGURES),
  ];
}

/** What the page reads for the same cells. */
async function shown(book: WorkbookPage): Promise<readonly string[]> {
  const texts: string[] = [];
  for (const [sheet, columns] of [
    ['Plantings', PLANTING_FIGURES],
    ['Varieties', VARIETY_FIGURES],
    ['Seed order', ORDER_FIGURES],
  ] as const) {
    await book.openSheet(sheet);
    for (const column of columns) texts.push(await book.read(0, column));
  }
  return texts;
}

function mustType(demo: Book, table: string, row: number, column: string, entry: string): void {
  const done = demo.edit([{ edit: 'cell', table, row, column, entry }]);
  if (done.refused) throw new Error(done.why);
}

test('a grower changes a bed, a variety and a spacing, sees everything follow, takes it back, and downloads the order', {
  timeout: 180_000,
}, async () => {
  const { page, problems, requestsAfterLoad, requestsElsewhere } = await openWorkbook({ width: 1440, height: 900 });
  const book = new WorkbookPage(page);
  const demo = demoBook();
  const bed = demo.rowOf('Beds', 'Barn 1') ?? -1;
  const planting = demo.rows('Plantings')[0] ?? -1;
  const variety = demo.rows('Varieties')[0] ?? -1;

  const atFirst = await shown(book);
  expect(atFirst).toEqual(expected(demo));

  // The planting takes the whole bed, however long it is.
  await book.openSheet('Beds');
  await book.type(0, 'Length', '62 ft');
  mustType(demo, 'Beds', bed, 'Length', '62 ft');
  const longerBed = await shown(book);
  expect(longerBed).toEqual(expected(demo));
  expect(longerBed[0]).not.toBe(atFirst[0]);

  await book.openSheet('Varieties');
  await book.type(0, 'Critical day length', '16 h');
  mustType(demo, 'Varieties', variety, 'Critical day length', '16 h');
  await expect.poll(() => shown(book)).toEqual(expected(demo));

  await book.openSheet('Plantings');
  expect(await book.read(0, 'In-row spacing')).toMatch(/^8(\.0+)?$/);
  await book.type(0, 'In-row spacing', '6 in');
  mustType(demo, 'Plantings', planting, 'In-row spacing', '6 in');
  const closer = await shown(book);
  expect(closer).toEqual(expected(demo));
  // Closer blocks: more stations, a denser stand, smaller plants, more seed, another order.
  for (const [index, name] of PLANTING_FIGURES.entries()) expect(closer[index], name).not.toBe(longerBed[index]);
  const firstOfOrder = PLANTING_FIGURES.length + VARIETY_FIGURES.length;
  expect(closer[firstOfOrder + ORDER_FIGURES.indexOf('Cost')]).not.toBe(
    atFirst[firstOfOrder + ORDER_FIGURES.indexOf('Cost')],
  );

  await book.openSheet('Seed order');
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Download CSV' }).click();
  const download = await downloading;
  expect(download.suggestedFilename()).toBe('Seed order.csv');
  const { data, errors } = Papa.parse<string[]>(await readFile(await download.path(), 'utf8'), {
    skipEmptyLines: true,
  });
  expect(errors).toEqual([]);
  const [header = [], ...records] = data;
  const rows = [...demo.rows('Seed order')];
  expect(records.length).toBe(rows.length);
  for (const [index, row] of rows.entries()) {
    for (const name of ORDER_FIGURES) {
      const at = header.findIndex((title) => title === name || title.startsWith(`${name} (`));
      const cell = demo.cell('Seed order', row, name);
      const field = records[index]?.[at] ?? '';
      if (cell.number === undefined) expect(field, name).toBe(cell.text);
      else expect(Number(field), name).toBeCloseTo(cell.number, 9);
    }
  }

  // One undo for each of the three changes brings every figure back.
  await page.locator('.ag-cell').first().click();
  for (let step = 0; step < 3; step += 1) await page.keyboard.press('Control+z');
  await expect.poll(() => book.undoButton().isDisabled()).toBe(true);
  expect(await shown(book)).toEqual(atFirst);

  expect(problems).toEqual([]);
  expect(requestsElsewhere).toEqual([]);
  expect(requestsAfterLoad).toEqual([]);
});
