// A file made from earlier sheets: it opens on them, what today's would change is listed before anything is taken, and taking
// it is one step. The first sheets as served here differ from today's in one formula.

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeWorkbookFile } from '../../../engine/index.ts';
import { onions } from '../../../sheets-templates/onions.ts';
import { startOf } from '../../../sheets-templates/season.ts';
import { started } from '../../book.ts';
import { fileOnEarlierSheets } from '../earlier-file.ts';
import { openSmallWorkbook } from '../small-workbook.ts';
import { WorkbookPage } from '../workbook-page.ts';

const FORMULA = '[Bed length used] * [Bed width]';
const FORMULA_THEN = `${FORMULA} * 2`;

async function openOnEarlierSheets() {
  const opened = await openSmallWorkbook();
  const { page } = opened;
  const fetched: string[] = [];
  await page.route(/season-1.*\.js$/, async (route) => {
    fetched.push(route.request().url());
    const response = await route.fetch();
    await route.fulfill({ response, body: (await response.text()).replace(FORMULA, FORMULA_THEN) });
  });
  const buffer = Buffer.from(await fileOnEarlierSheets());
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await (await chooser).setFiles({ name: 'season.json', mimeType: 'application/json', buffer });
  await page.getByRole('dialog').waitFor();
  expect(fetched).toHaveLength(1);
  return { ...opened, book: new WorkbookPage(page), dialog: page.getByRole('dialog') };
}

async function askAgain(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Bring the sheets up to date' }).click();
  await page.getByRole('dialog').waitFor();
}

test('what would change is listed, kept away, and taken later as one step', async () => {
  const { page, book, dialog, problems } = await openOnEarlierSheets();
  const says = (await dialog.textContent()) ?? '';
  expect(says).toContain('Figures that move');
  expect(says).toMatch(/Plantings \/ Bed area.*in \d+ rows, most in .*: \d+ ft² becomes \d+ ft²/);
  expect(says).toMatch(/Formulas that change \(\d+\)/);
  expect(says).toContain(`=${FORMULA_THEN}`);
  await dialog.getByRole('button', { name: 'Keep the sheets as they are' }).click();
  await expect.poll(() => dialog.count()).toBe(0);

  await book.openSheet('Plantings');
  const kept = Number(await book.read(0, 'Bed area'));
  await askAgain(page);
  await dialog.getByRole('button', { name: 'Bring them up to date' }).click();
  await expect.poll(async () => Number(await book.read(0, 'Bed area'))).toBe(kept / 2);
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menu').waitFor();
  expect(await page.getByRole('menuitem', { name: 'Bring the sheets up to date' }).count()).toBe(0);
  await page.keyboard.press('Escape');
  await book.press(0, 'Bed');
  await page.keyboard.press('Control+z');
  await expect.poll(async () => Number(await book.read(0, 'Bed area'))).toBe(kept);
  expect(problems).toEqual([]);
});

test("an own formula stays, with the sheet's beside it", async () => {
  const { page, book, dialog } = await openOnEarlierSheets();
  await page.keyboard.press('Escape');
  await expect.poll(() => dialog.count()).toBe(0);
  await book.openSheet('Plantings');
  const then = Number(await book.read(0, 'Bed area'));
  await book.press(0, 'Bed area');
  await book.formulaBox().fill(`=${FORMULA} * 3`);
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await page.locator('.formula-beneath').textContent()) ?? '').toBe(`=${FORMULA_THEN}`);
  const own = (then / 2) * 3;
  await expect.poll(async () => Number(await book.read(0, 'Bed area'))).toBe(own);
  await askAgain(page);
  expect(await dialog.textContent()).toMatch(/Formulas of your own.*Plantings \/ Bed area.*yours, which stays/);
  await dialog.getByRole('button', { name: 'Bring them up to date' }).click();
  await expect.poll(async () => (await page.locator('.formula-beneath').textContent()) ?? '').toBe(`=${FORMULA}`);
  expect(Number(await book.read(0, 'Bed area'))).toBe(own);
});

/** A workbook of today's sheets with a column of its own that calls a function which only earlier sheets call. */
function fileThatCallsAFormerFunction(): string {
  const rows = {
    Beds: [{ Bed: 'A', Length: '50 ft', Width: '3 ft' }],
    Plantings: [
      {
        Planting: 'One',
        Bed: 'A',
        Start: 'sets',
        'Bed length used': '20 ft',
        'Planted out': '2027-04-01',
        Harvest: '2027-08-01',
      },
    ],
  };
  const yard = started(onions(), startOf(onions().sheets, { title: 'Ground', season: 2027, today: 20_774, rows }));
  if (!yard.ok) throw new Error(yard.problems.join(' '));
  const { workbook } = yard.workbook;
  const columns = 'Plantings[Planted out]; Plantings[Harvest]; Plantings[Bed area]';
  const formula = `AREAONDAY(DATE(2027; 4; 2); ${columns})`;
  const added = workbook.do([{ command: 'add formula', sheet: 'trays', name: 'Ground that day', formula }], {
    code: 'work',
    parts: {},
  });
  if (added.refused) throw new Error(added.why);
  return writeWorkbookFile(workbook.data());
}

test('a function that only earlier sheets call is fetched with the workbook that calls it, and when it is opened again', async () => {
  const { page, problems } = await openSmallWorkbook();
  const book = new WorkbookPage(page);
  const fetched: string[] = [];
  page.on('request', (request) => {
    if (request.url().includes('former')) fetched.push(request.url());
  });
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  const buffer = Buffer.from(fileThatCallsAFormerFunction());
  await (await chooser).setFiles({ name: 'ground.json', mimeType: 'application/json', buffer });
  await page.getByRole('heading', { name: 'Ground', exact: true }).waitFor();
  await book.openSheet('Trays');
  // 20 ft of a bed of 3 ft, in the unit that the function answers in.
  await expect.poll(() => book.read(0, 'Ground that day')).toBe('5.574');
  expect(fetched).not.toEqual([]);
  await book.kept();
  await page.reload();
  await book.openSheet('Trays');
  await expect.poll(() => book.read(0, 'Ground that day')).toBe('5.574');
  expect(problems).toEqual([]);
});
