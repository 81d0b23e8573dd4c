// What is kept and what can't be lost: the working copy over a reload, a saved file opened again, damaged files and a
// damaged working copy, two tabs at once.

import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { readWorkbookFile } from '../../engine/index.ts';
import { templateShelf } from '../../sheets-templates/index.ts';
import { openWorkbook } from './harness.ts';
import { WorkbookPage } from './workbook-page.ts';

async function openBeds() {
  const opened = await openWorkbook({ width: 1440, height: 900 });
  const book = new WorkbookPage(opened.page);
  await book.openSheet('Beds');
  return { ...opened, book };
}

async function openFile(page: Page, name: string, text: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
}

async function savedText(page: Page): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  return readFile(await (await download).path(), 'utf8');
}

/** Puts a text where the browser keeps the working copy. */
async function putCopy(page: Page, copy: string): Promise<void> {
  await page.evaluate(
    (text) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('dibble');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const transaction = opening.result.transaction('copies', 'readwrite');
          transaction.objectStore('copies').put({ text, at: 0 }, 'latest');
          transaction.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
    copy,
  );
}

test('a change survives a reload, even one right after it', async () => {
  const { book, page, problems } = await openBeds();
  await book.type(0, 'Length', '61');
  await book.kept();
  await book.type(1, 'Length', '62');
  await page.reload({ waitUntil: 'networkidle' });
  await book.openSheet('Beds');
  expect(await book.read(0, 'Length')).toBe('61');
  expect(await book.read(1, 'Length')).toBe('62');
  expect(problems).toEqual([]);
});

test('what was done before a reload is taken back after it, and done again', async () => {
  const { book, page } = await openBeds();
  const before = await book.read(0, 'Length');
  await book.type(0, 'Length', '61');
  await book.kept();
  await page.reload({ waitUntil: 'networkidle' });
  await book.openSheet('Beds');
  expect(await book.read(0, 'Length')).toBe('61');
  await book.press(1, 'Bed');
  await page.keyboard.press('Control+z');
  await expect.poll(() => book.read(0, 'Length')).toBe(before);
  await book.kept();
  await page.reload({ waitUntil: 'networkidle' });
  await book.openSheet('Beds');
  await book.press(1, 'Bed');
  await page.keyboard.press('Control+y');
  await expect.poll(() => book.read(0, 'Length')).toBe('61');
});

test('a saved file opens again as it was; a damaged one gets a sentence and changes nothing', async () => {
  const { book, page } = await openBeds();
  await book.type(0, 'Length', '20 m');
  const text = await savedText(page);
  const read = readWorkbookFile(text, templateShelf());
  expect(read.ok && read.data.rows.beds?.[0]?.cells.length).toEqual({ number: 20, unit: 'm' });

  await book.type(0, 'Length', '5');
  await openFile(page, 'season.json', text);
  await expect.poll(() => book.message().textContent()).toMatch(/Opened season.json/);
  await expect.poll(() => book.read(0, 'Length')).toMatch(/^20\sm$/);

  for (const [name, broken, why] of [
    ['cut.json', text.slice(0, text.length / 2), /cut\.json was not opened.*cut short/],
    ['other.json', '{"format":"something else"}', /other\.json was not opened.*not a Dibble workbook/],
    ['empty.json', '', /empty\.json was not opened.*empty/],
  ] as const) {
    await openFile(page, name, broken);
    await expect.poll(() => book.message().textContent()).toMatch(why);
    expect(await book.read(0, 'Length')).toMatch(/^20\sm$/);
  }
});

test('a file that the first Dibble saved opens with everything typed in it', async () => {
  const { book, page, problems } = await openBeds();
  const text = readFileSync(new URL('../fixtures/version-1/demo.json', import.meta.url), 'utf8');
  await openFile(page, 'first.json', text);
  const dialog = page.getByRole('dialog');
  // Its sheets are those of today: nothing would change.
  await expect.poll(() => dialog.textContent()).toMatch(/No figure of yours moves/);
  await dialog.getByRole('button', { name: 'Keep the sheets as they are' }).click();
  expect(await book.read(0, 'Bed')).toBe('Barn 1');
  expect(await book.read(0, 'Length')).toBe('50');
  expect(problems).toEqual([]);
});

test('a second tab shows the workbook and changes nothing until the first is closed', async () => {
  const { book, page } = await openBeds();
  await book.type(0, 'Length', '63');
  await book.kept();
  const second = await page.context().newPage();
  await second.goto(page.url(), { waitUntil: 'networkidle' });
  const other = new WorkbookPage(second);
  await other.openSheet('Beds');
  expect(await other.read(0, 'Length')).toBe('63');
  expect(await second.locator('.read-only').textContent()).toMatch(/open in another tab/);
  await other.press(0, 'Length');
  await second.keyboard.type('7');
  expect(await second.locator('.entry-box').count()).toBe(0);
  await book.type(0, 'Length', '64');
  await book.kept();
  await page.close();
  await expect.poll(() => second.locator('.read-only').count()).toBe(0);
  await other.openSheet('Beds');
  await expect.poll(() => other.read(0, 'Length')).toBe('64');
  await other.type(0, 'Length', '65');
  await expect.poll(() => other.read(0, 'Length')).toBe('65');
});

test('a working copy that cannot be read is set aside, never written over', async () => {
  const { book, page } = await openBeds();
  await book.type(0, 'Length', '66');
  await book.kept();
  const damaged = '{"format":"dibble-workbook","version":1,"title":"Half a f';
  await putCopy(page, damaged);
  await page.reload({ waitUntil: 'networkidle' });
  await expect.poll(() => book.message().textContent()).toMatch(/can't be opened.*cut short/);
  await book.openSheet('Beds');
  await book.type(0, 'Length', '67');
  await book.kept();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Download it as it is' }).click();
  expect(await readFile(await (await download).path(), 'utf8')).toBe(damaged);
});

test('a working copy that the first Dibble kept opens, and newer sheets are offered', async () => {
  const { book, page, problems } = await openBeds();
  await book.type(0, 'Length', '68');
  await book.kept();
  await putCopy(page, readFileSync(new URL('../fixtures/version-1/demo.json', import.meta.url), 'utf8'));
  await page.reload({ waitUntil: 'networkidle' });
  await expect
    .poll(() => book.message().textContent())
    .toMatch(/sheets of this workbook are those of an earlier Dibble/);
  await book.openSheet('Beds');
  expect(await book.read(0, 'Length')).toBe('50');
  expect(problems).toEqual([]);
});

test('a CSV file is shown before it is imported; a broken one changes nothing', async () => {
  const { book, page } = await openBeds();
  const choose = async (text: string): Promise<void> => {
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Import rows' }).click();
    await (await chooser).setFiles({ name: 'beds.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
  };
  const dialog = page.getByRole('dialog');
  await choose('Bed,Length (ft)\n"Barn 1,70\nBarn 2,71\n');
  await expect.poll(() => dialog.textContent()).toMatch(/Line 2 has a quotation mark/);
  await page.keyboard.press('Escape');
  await expect.poll(() => dialog.count()).toBe(0);
  expect(await book.undoButton().isDisabled()).toBe(true);

  await choose('Bed,Field,Length (ft)\nBarn 1,Barn,70\nPond 1,Pond,71\n');
  await expect.poll(() => dialog.textContent()).toMatch(/adds 1 row, changes 1 row/);
  expect(await book.undoButton().isDisabled()).toBe(true);
  await dialog.getByRole('button', { name: 'Import', exact: true }).click();
  await expect.poll(() => book.read(0, 'Length')).toBe('70');
  await page.locator('.message').getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => book.undoButton().isDisabled()).toBe(true);
});
