// Files on their way into a sheet and out of one, in the page: how a file was read is shown and can be changed, columns matched by
// hand are remembered, each row that can't be taken is told, the good ones are taken as one step, a check can be left; XLSX comes
// back as it went.

import { readFile } from 'node:fs/promises';
import { unzipSync, zipSync } from 'fflate';
import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { atOnionSheet } from '../one-page.ts';

interface File {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

const csv = (content: string | Buffer, name = 'rows.csv'): File => ({
  name,
  mimeType: 'text/csv',
  buffer: Buffer.from(content),
});

async function openSheet(name: string, begun?: 'afresh') {
  const opened = await atOnionSheet(name, begun);
  return { ...opened, dialog: opened.page.getByRole('dialog') };
}

async function choose(page: Page, file: File, button = 'Import rows'): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: button, exact: true }).click();
  await (await chooser).setFiles(file);
}

async function says(dialog: Locator, words: RegExp): Promise<void> {
  await expect.poll(() => dialog.textContent(), { timeout: 30_000 }).toMatch(words);
}

async function savedText(page: Page): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  return readFile(await (await download).path(), 'utf8');
}

test('letters, marks and columns are as the person says, and the columns are remembered', async () => {
  const { page, book, dialog, problems } = await openSheet('Beds');
  const file = csv(Buffer.from('Name;Lang (m);Notiz\nG\u00e4rten;1.125;x\nGem\u00fcse;2;y\n', 'latin1'), 'beete.csv');
  await choose(page, file);
  await says(dialog, /the file has no column Bed, which names each row of Beds/);
  await dialog.getByLabel('Name', { exact: true }).selectOption({ label: 'Bed' });
  await dialog.getByLabel('Lang (m)', { exact: true }).selectOption({ label: 'Length' });
  await says(dialog, /“1\.125” can be read in two ways here/);
  await dialog.getByLabel('The decimal mark is').selectOption({ label: 'a point: 1.5' });
  await says(dialog, /adds 2 rows.*read as Windows-1252/);
  await says(dialog, /New: Bed Gärten, Length 1\.125 m/);
  await dialog.getByLabel('Letters').selectOption({ label: 'UTF-8' });
  await says(dialog, /Line 2 isn’t UTF-8/);
  await dialog.getByLabel('Letters').selectOption({ label: 'Windows-1252 (western Europe, older programs)' });
  await dialog.getByRole('button', { name: 'Import', exact: true }).click();
  await expect.poll(() => book.message().textContent()).toMatch(/Imported beete\.csv into Beds/);

  await choose(page, file);
  await dialog.getByLabel('The decimal mark is').selectOption({ label: 'a point: 1.5' });
  await says(dialog, /says nothing new of 2 rows/);
  await page.keyboard.press('Escape');
  expect(problems).toEqual([]);
});

test('each row that can’t be taken is told, and the good ones go in as one step', async () => {
  const { page, book, dialog } = await openSheet('Beds');
  await choose(page, csv('Bed,Length (ft)\nBarn 1,70\nPond 1,many\nPond 2\nPond 3,71\n'));
  await says(dialog, /adds 1 row, changes 1 row\. 2 rows can’t be taken/);
  await says(dialog, /Line 3, Length: "many" isn't a length/);
  await says(dialog, /Line 4: it has 1 field where the header has 2/);
  await dialog.getByRole('button', { name: 'Import the 2 rows that can be taken' }).click();
  await expect.poll(() => book.read(0, 'Length')).toBe('70');
  await page.locator('.message').getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => book.undoButton().isDisabled()).toBe(true);
});

test('a check that is under way is left at once, and nothing has changed', async () => {
  const { page, book, dialog } = await openSheet('Beds');
  const rows = Array.from({ length: 300_000 }, (_, i) => `Bed ${i},${50 + (i % 50)} ft,${i}`);
  await choose(page, csv(`Bed,Length,Field\n${rows.join('\n')}\n`));
  await dialog.getByRole('button', { name: 'Cancel' }).click();
  await expect.poll(() => dialog.count()).toBe(0);
  expect(await book.undoButton().isDisabled()).toBe(true);
});

test('an import that is left while its rows are taken leaves the workbook exactly as it was', async () => {
  const { page, book, dialog, problems } = await openSheet('Suppliers', 'afresh');
  const before = await savedText(page);
  const rows = Array.from({ length: 30_000 }, (_, i) => `Supplier ${i},note ${i}`);
  await choose(page, csv(`Supplier,Notes\n${rows.join('\n')}\n`));
  await says(dialog, /adds 30,?000 rows/);
  // Pressed in the frame that tells of the first rows: a hand from outside might come when all of them are taken.
  await page.evaluate(() => {
    const look = (): void => {
      const open = document.querySelector('dialog[open]');
      const cancel = [...(open?.querySelectorAll('button') ?? [])].find(({ textContent }) => textContent === 'Cancel');
      if ((open?.querySelector('progress')?.value ?? 0) > 0) cancel?.click();
      else requestAnimationFrame(look);
    };
    look();
  });
  await dialog.getByRole('button', { name: 'Import', exact: true }).click();
  await expect.poll(() => dialog.count()).toBe(0);
  await expect.poll(() => book.undoButton().isDisabled()).toBe(true);
  // What had been taken is not offered again either.
  expect(await page.getByRole('button', { name: /^Redo/ }).isDisabled()).toBe(true);
  expect(await savedText(page)).toBe(before);
  expect(problems).toEqual([]);
});

test('a weather station’s file has its button where the days are', async () => {
  const { page, book, dialog } = await openSheet('Climate');
  const days = Array.from({ length: 730 }, (_, i) => {
    const day = new Date(Date.UTC(2024, 0, 1 + i)).toISOString().slice(0, 10);
    return `${day},${(15 - 12 * Math.cos((i * 2 * Math.PI) / 365.25)).toFixed(1)},${(5 - 12 * Math.cos((i * 2 * Math.PI) / 365.25)).toFixed(1)}`;
  });
  await choose(page, csv(`DATE,TMAX (degC),TMIN (degC)\n${days.join('\n')}\n`, 'station.csv'), 'Import daily weather');
  await says(dialog, /The mean of 730 days, 2024 to 2025/);
  await dialog.getByRole('button', { name: 'Import', exact: true }).click();
  await expect.poll(() => book.message().textContent()).toMatch(/Imported station\.csv into Climate/);
});

test('a sheet goes out as XLSX and comes back as it was; files of other kinds and too large ones are named', async () => {
  const { page, book, dialog, problems, requestsElsewhere } = await openSheet('Beds');
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Download XLSX' }).click();
  const download = await downloading;
  expect(download.suggestedFilename()).toBe('Beds.xlsx');
  const bytes = await readFile(await download.path());
  await choose(page, { name: 'Beds.xlsx', mimeType: 'application/octet-stream', buffer: bytes });
  await says(dialog, /The file says nothing new of \d+ rows\./);
  await dialog.getByRole('button', { name: 'Close' }).click();
  await choose(page, csv('%PDF-1.7 and so on', 'beds.csv'));
  await says(dialog, /This is a PDF, and no table/);
  await page.keyboard.press('Escape');
  // A small file that would unpack to 60 MB.
  const swollen = zipSync({ ...unzipSync(bytes), 'xl/sharedStrings.xml': new Uint8Array(60_000_000) }, { level: 1 });
  await choose(page, { name: 'swollen.xlsx', mimeType: 'application/octet-stream', buffer: Buffer.from(swollen) });
  await says(dialog, /50 MB/);
  await page.keyboard.press('Escape');
  expect(await book.undoButton().isDisabled()).toBe(true);
  expect([problems, requestsElsewhere]).toEqual([[], []]);
});

test('all sheets go out in one file', async () => {
  const { page } = await openSheet('Beds');
  await page.getByRole('button', { name: 'More', exact: true }).click();
  const downloading = page.waitForEvent('download');
  await page.getByRole('menuitem', { name: 'Download all sheets as XLSX' }).click();
  const bytes = await readFile(await (await downloading).path());
  expect(bytes.subarray(0, 4)).toEqual(Buffer.from('PK\u0003\u0004', 'latin1'));
  expect(bytes.length).toBeGreaterThan(100_000);
});
