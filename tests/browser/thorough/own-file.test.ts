// The workbook's own file: saved back to where it came from, never over what somebody else changed; a file dropped on the page;
// the reminder when the file is older than the work. Files are those of the browser's private file system, which has the same
// handles as the dialogs give.

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { readWorkbookFile } from '../../../engine/index.ts';
import { YARD_TEMPLATES } from '../../yard.ts';
import { reload } from '../harness.ts';
import { keptRecords } from '../kept.ts';
import { openSmallWorkbook } from '../small-workbook.ts';
import { WorkbookPage } from '../workbook-page.ts';

/** Opens the page in a browser whose dialogs give 'season.json' of its private file system. */
async function openWithFiles() {
  const opened = await openSmallWorkbook({
    width: 1440,
    height: 900,
    prepare: (context) =>
      context.addInitScript(() => {
        const file = async (): Promise<FileSystemFileHandle> => {
          const folder = await navigator.storage.getDirectory();
          return folder.getFileHandle('season.json', { create: true });
        };
        Object.assign(window, { showSaveFilePicker: file, showOpenFilePicker: async () => [await file()] });
      }),
  });
  const book = new WorkbookPage(opened.page);
  await book.openSheet('Beds');
  return { ...opened, book };
}

function fileText(page: Page): Promise<string> {
  return page.evaluate(async () => {
    const folder = await navigator.storage.getDirectory();
    return (await (await folder.getFileHandle('season.json')).getFile()).text();
  });
}

function lengthIn(text: string): unknown {
  const read = readWorkbookFile(text, YARD_TEMPLATES);
  return read.ok ? read.data.rows.beds?.[0]?.cells.length : read.why;
}

test('Save writes back to the same file, and never over what somebody else wrote there', async () => {
  const { page, book, problems } = await openWithFiles();
  const save = page.getByRole('button', { name: 'Save', exact: true });
  await book.type(0, 'Length', '61');
  await save.click();
  await expect.poll(() => book.message().textContent()).toMatch(/Saved to season.json/);
  const first = await fileText(page);
  // After a reload the file is still its own.
  await book.kept();
  await reload(page);
  await book.openSheet('Beds');
  await book.type(0, 'Length', '62');
  await save.click();
  await expect.poll(() => book.message().textContent()).toMatch(/Saved to season.json/);
  const second = await fileText(page);
  expect(lengthIn(second)).not.toEqual(lengthIn(first));
  await page.evaluate(async (text) => {
    const folder = await navigator.storage.getDirectory();
    const stream = await (await folder.getFileHandle('season.json')).createWritable();
    await stream.write(text);
    await stream.close();
  }, first);
  await book.type(0, 'Length', '63');
  await save.click();
  await expect.poll(() => book.message().textContent()).toMatch(/changed by somebody else.*It is as it was/);
  expect(await fileText(page)).toBe(first);
  await book.message().getByRole('button', { name: 'Save over it' }).click();
  await expect.poll(() => book.message().textContent()).toMatch(/Saved to season.json/);
  expect(lengthIn(await fileText(page))).not.toEqual(lengthIn(second));
  expect(problems).toEqual([]);
});

test('a file opened again is the workbook that was saved to it; a workbook dropped on the page stands beside', async () => {
  const { page, book } = await openWithFiles();
  await book.type(0, 'Length', '61');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await expect.poll(() => book.message().textContent()).toMatch(/Saved to season.json/);
  await book.type(1, 'Length', '64');
  await book.kept();
  const address = page.url();
  const text = await fileText(page);
  await dropFile(page, 'other.json', text.replace(/"title": "[^"]*"/, '"title": "Dropped here"'));
  await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toBe('Dropped here');
  await book.openSheet('Beds');
  expect(await book.read(0, 'Length')).toBe('61');
  expect(page.url()).not.toBe(address);
  // The file of before has what was saved; here it has more.
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await expect.poll(() => page.url()).toBe(address);
  await book.openSheet('Beds');
  expect(await book.read(1, 'Length')).toBe('64');
  await dropFile(page, 'rows.csv', 'Bed,Field\nPond 1,Pond\n');
  await expect.poll(() => page.getByRole('dialog').textContent()).toMatch(/rows.csv into Beds/);
});

function dropFile(page: Page, name: string, text: string): Promise<void> {
  return page.evaluate(
    ([called, content]) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([content], called));
      window.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
    },
    [name, text] as const,
  );
}

test('a file that is older than the work is told of, once a day', async () => {
  const { page, book } = await openWithFiles();
  await book.type(0, 'Length', '61');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await expect.poll(() => book.message().textContent()).toMatch(/Saved to season.json/);
  await book.type(1, 'Length', '64');
  await book.kept();
  const days = async (count: number): Promise<void> => {
    await page.clock.setFixedTime(Date.now() + count * 86_400_000);
    await reload(page);
  };
  await days(0);
  await book.openSheet('Beds');
  expect(await book.message().count()).toBe(0);
  await days(2);
  await expect.poll(() => book.message().textContent()).toMatch(/season.json is 2 days older than the work/);
  // That it was told is written down after it is.
  await expect.poll(async () => (await keptRecords(page, 'workbooks')).some((kept) => 'reminded' in kept)).toBe(true);
  await reload(page);
  await book.openSheet('Beds');
  expect(await book.message().count()).toBe(0);
  await days(4);
  await expect.poll(() => book.message().textContent()).toMatch(/season.json is 4 days older/);
  await book.message().getByRole('button', { name: 'Save it now' }).click();
  await expect.poll(() => book.message().textContent()).toMatch(/Saved to season.json/);
});
