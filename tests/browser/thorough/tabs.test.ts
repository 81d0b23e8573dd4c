// One workbook in several tabs: what is done in one is in the others at once, all of them may be worked in, one writes, and when
// it goes another does.

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { type Opening, reload } from '../harness.ts';
import { keptRecords } from '../kept.ts';
import { openSmallWorkbook } from '../small-workbook.ts';
import { WorkbookPage } from '../workbook-page.ts';

async function openTwo(opening: Opening = {}) {
  const opened = await openSmallWorkbook(opening);
  const first = new WorkbookPage(opened.page);
  await first.openSheet('Beds');
  await first.type(0, 'Length', '60');
  await first.kept();
  const second = await another(opened.page);
  return { ...opened, first, second };
}

async function another(page: Page): Promise<WorkbookPage> {
  const next = await page.context().newPage();
  await next.goto(page.url());
  await next.locator('.desk').waitFor();
  const book = new WorkbookPage(next);
  await book.openSheet('Beds');
  return book;
}

test('what is done in either tab is in the other at once and kept once, in one order', async () => {
  const { first, second, page, problems } = await openTwo();
  expect(await second.read(0, 'Length')).toBe('60');
  await first.type(1, 'Length', '61');
  await expect.poll(() => second.read(1, 'Length')).toBe('61');
  await second.type(2, 'Length', '62');
  await expect.poll(() => first.read(2, 'Length')).toBe('62');
  await second.kept();
  // Undo takes back what was done last, wherever it was done.
  await first.press(3, 'Bed');
  await page.keyboard.press('Control+z');
  await expect.poll(() => second.read(2, 'Length')).not.toBe('62');
  await second.press(3, 'Bed');
  await second.page.keyboard.press('Control+z');
  await expect.poll(() => first.read(1, 'Length')).not.toBe('61');
  await second.page.keyboard.press('Control+y');
  await expect.poll(() => first.read(1, 'Length')).toBe('61');
  const entries = await keptRecords(page, 'journal');
  const ids = entries.flatMap(({ text }) => (text === '' ? [] : [idIn(text)]));
  expect(new Set(ids).size).toBe(ids.length);
  expect(problems).toEqual([]);
});

function idIn(text: unknown): string {
  const step: unknown = JSON.parse(String(text));
  return typeof step === 'object' && step !== null && 'done' in step ? JSON.stringify(step.done) : '';
}

test('when the tab that writes goes, the other writes on with all that was done', async () => {
  const { first, second, page } = await openTwo();
  await second.type(1, 'Length', '61');
  await expect.poll(() => first.read(1, 'Length')).toBe('61');
  await first.type(2, 'Length', '62');
  await page.close();
  await expect.poll(() => second.read(2, 'Length')).toBe('62');
  await second.type(3, 'Length', '63');
  await second.kept();
  await reload(second.page);
  await second.openSheet('Beds');
  for (const row of [0, 1, 2, 3]) expect(await second.read(row, 'Length')).toBe(String(60 + row));
});

test('two tabs that type at once lose nothing', async () => {
  const { first, second } = await openTwo();
  const rows = [1, 2, 3, 4];
  const typing = async (book: WorkbookPage, column: string, entry: (row: number) => string): Promise<void> => {
    for (const row of rows) await book.type(row, column, entry(row));
  };
  await Promise.all([
    typing(first, 'Length', (row) => String(70 + row)),
    typing(second, 'Width', (row) => String(30 + row)),
  ]);
  await first.kept();
  await second.kept();
  for (const book of [first, second]) {
    for (const row of rows) {
      await expect.poll(() => book.read(row, 'Length')).toBe(String(70 + row));
      await expect.poll(() => book.read(row, 'Width')).toBe(String(30 + row));
    }
  }
  await reload(second.page);
  await second.openSheet('Beds');
  for (const row of rows) {
    expect(await second.read(row, 'Length')).toBe(String(70 + row));
    expect(await second.read(row, 'Width')).toBe(String(30 + row));
  }
  // An entry that is open stays with its bed, wherever another tab puts that, and goes on where it was.
  const bed = await first.read(1, 'Bed');
  await first.press(1, 'Field');
  await first.page.keyboard.type('typ');
  await (await second.header('Length')).click({ button: 'right' });
  await second.page.getByRole('menuitem', { name: 'Greatest first' }).click();
  await expect.poll(() => first.read(0, 'Length')).toBe('74');
  await first.page.keyboard.type('ing');
  await first.page.keyboard.press('Enter');
  const places = await Promise.all([0, 1, 2, 3, 4, 5].map((row) => first.read(row, 'Bed')));
  const fields = await Promise.all([0, 1, 2, 3, 4, 5].map((row) => first.read(row, 'Field')));
  expect(fields).toEqual(places.map((name) => (name === bed ? 'typing' : 'Yard')));
  // Where its bed goes, it is not taken for another's.
  const going = places.indexOf(bed);
  await first.press(going, 'Field');
  await first.page.keyboard.type('lost');
  await expect.poll(() => second.read(going, 'Field')).toBe('typing');
  await second.press(going, 'Bed');
  await second.page.keyboard.press('Alt+Delete');
  await expect.poll(() => first.message().textContent()).toContain(`Field, ${bed}: “lost” was not taken. The row was`);
  await first.page.keyboard.type(' more');
  await first.page.keyboard.press('Enter');
  for (const row of [0, 1, 2, 3, 4]) expect(await first.read(row, 'Field')).toBe('Yard');
  await first.page.getByRole('button', { name: 'Copy it' }).click();
  await expect.poll(() => first.page.evaluate(() => navigator.clipboard.readText())).toBe('lost');
});

test('where the browser has no locks, each tab says so and goes on', async () => {
  const { first, second } = await openTwo({
    prepare: (context) =>
      context.addInitScript(() => {
        Reflect.deleteProperty(Navigator.prototype, 'locks');
      }),
  });
  await expect.poll(() => second.message().textContent()).toMatch(/keeps tabs from talking to each other/);
  await second.type(1, 'Length', '61');
  await second.kept();
  // The first finds its place taken, reads what is kept, and does its own change after it.
  await first.type(2, 'Length', '62');
  await first.kept();
  await expect.poll(() => first.read(1, 'Length')).toBe('61');
  await expect.poll(() => first.read(2, 'Length')).toBe('62');
});
