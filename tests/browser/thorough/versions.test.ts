// Versions of a workbook: kept by themselves and by hand, compared with the present cell by cell, brought back as a step; and the
// list of workbooks in this browser.

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { reload } from '../harness.ts';
import { keptRecords } from '../kept.ts';
import { atSmallBeds } from '../small-workbook.ts';

async function openBeds() {
  const opened = await atSmallBeds();
  return { ...opened, dialog: opened.page.getByRole('dialog') };
}

async function openList(page: Page, name: 'Versions' | 'Workbooks in this browser') {
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name, exact: true }).click();
  await page.getByRole('dialog').waitFor();
}

test('a version kept by hand is compared with the present and brought back as one step', async () => {
  const { page, book, dialog, problems } = await openBeds();
  const begin = await book.read(1, 'Length');
  await book.type(0, 'Length', '61');
  await book.kept();
  await openList(page, 'Versions');
  await dialog.getByLabel('Keep how it stands now as').fill('Before the second bed');
  await dialog.getByRole('button', { name: 'Keep', exact: true }).click();
  const named = dialog.getByRole('listitem').filter({ hasText: 'Before the second bed' });
  await named.waitFor();
  await dialog.getByRole('button', { name: 'Close' }).click();

  await book.type(1, 'Length', '62');
  await openList(page, 'Versions');
  await named.getByRole('button', { name: 'Compare with the present' }).click();
  const changes = dialog.getByRole('region', { name: 'What changed since' });
  await expect.poll(() => changes.textContent()).toMatch(/Typed \(1 cell\)Beds \/ Length/);
  const typed = changes.getByRole('row').filter({ hasText: '62 ft' }).first();
  expect(await typed.textContent()).toContain(`${begin} ft`);
  expect(await changes.textContent()).toMatch(/What follows from it \(\d+ cells\)/);
  await dialog.getByRole('button', { name: 'Bring this state back' }).click();
  await expect.poll(() => book.read(1, 'Length')).toBe(begin);
  await expect.poll(() => book.read(0, 'Length')).toBe('61');

  // The state in between is one step back, and among the versions.
  await page.locator('.message').getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => book.read(1, 'Length')).toBe('62');
  await openList(page, 'Versions');
  await dialog.getByRole('listitem').filter({ hasText: 'Before an earlier state was brought back' }).waitFor();
  expect(problems).toEqual([]);
});

test('versions keep themselves at opening and before an import, with what changed; one opens beside the present', async () => {
  const { page, book, dialog } = await openBeds();
  await book.type(0, 'Length', '61');
  await book.kept();
  await reload(page);
  await book.openSheet('Beds');
  await expect
    .poll(async () => (await keptRecords(page, 'versions')).map(({ kind }) => kind))
    .toEqual(['opened', 'opened']);
  // An opening after which nothing was changed is no version.
  await reload(page);
  await book.openSheet('Beds');
  await book.type(1, 'Length', '62');
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Import rows' }).click();
  await (await chooser).setFiles({
    name: 'beds.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('Bed,Field,Length (ft)\nPond 1,Pond,71\n'),
  });
  await dialog.getByRole('button', { name: 'Import', exact: true }).click();
  await expect.poll(async () => (await keptRecords(page, 'versions')).length).toBe(3);
  await expect.poll(() => dialog.count()).toBe(0);

  await openList(page, 'Versions');
  const before = dialog.getByRole('listitem').filter({ hasText: 'Before an import' });
  expect(await before.textContent()).toMatch(/One change since the one before: Length: 62/);
  await before.getByRole('button', { name: 'Open beside' }).click();
  await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toMatch(/as of \d{4}-/);
  await openList(page, 'Workbooks in this browser');
  await expect.poll(() => dialog.getByRole('listitem').count()).toBe(2);
});

test('several workbooks stand side by side, are copied, renamed, put by, taken out and brought back', async () => {
  const { page, book, dialog, problems } = await openBeds();
  await book.type(0, 'Length', '61');
  await book.kept();
  const title = (await page.getByRole('heading', { level: 1 }).textContent()) ?? '';
  await openList(page, 'Workbooks in this browser');
  await dialog.getByRole('button', { name: `Copy: ${title}` }).click();
  const copy = `${title}, copy`;
  await dialog.getByRole('button', { name: `Rename: ${copy}` }).click();
  await dialog.getByLabel('Its name').fill('Trial beds');
  await dialog.getByRole('button', { name: 'Take the name' }).click();
  await dialog.getByRole('button', { name: 'Open: Trial beds' }).click();
  await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toBe('Trial beds');
  await book.openSheet('Beds');
  // What was done before the copy is taken back in it; the other isn't touched.
  expect(await book.read(0, 'Length')).toBe('61');
  await book.type(0, 'Length', '99');
  await book.kept();
  await openList(page, 'Workbooks in this browser');
  await dialog.getByRole('button', { name: `Take out: ${title}` }).click();
  await dialog.getByRole('region', { name: 'Taken out' }).getByText('gone for good on').waitFor();
  await dialog.getByRole('button', { name: `Bring back: ${title}` }).click();
  await dialog.getByRole('button', { name: `Put by: ${title}` }).click();
  await dialog.getByRole('region', { name: 'Put by' }).waitFor();
  await dialog.getByRole('button', { name: `Open: ${title}` }).click();
  await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toBe(title);
  await book.openSheet('Beds');
  expect(await book.read(0, 'Length')).toBe('61');
  await page.locator('.message').getByRole('button', { name: 'Go back to the one before' }).click();
  await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toBe('Trial beds');
  await reload(page);
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Trial beds');
  await book.openSheet('Beds');
  expect(await book.read(0, 'Length')).toBe('99');
  expect(problems).toEqual([]);
});
