// What is kept and what can't be lost: the working copy over a reload, a saved file opened again, damaged files and a
// damaged working copy.

import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { readWorkbookFile } from '../../../engine/index.ts';
import { YARD_TEMPLATES } from '../../yard.ts';
import { reload, workbookAddress } from '../harness.ts';
import { forgetKept, keptRecords, putFirstCopy, putRecords } from '../kept.ts';
import { atSmallBeds } from '../small-workbook.ts';

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

test('a change survives a reload, even one right after it', async () => {
  const { book, page, problems } = await atSmallBeds();
  const begin = await book.read(0, 'Length');
  await book.type(0, 'Length', '61');
  await book.kept();
  // How it stood before the first change is a version.
  await expect.poll(async () => (await keptRecords(page, 'versions')).map(({ kind }) => kind)).toEqual(['opened']);
  const [first] = await keptRecords(page, 'texts');
  const read = readWorkbookFile(String(first?.text), YARD_TEMPLATES);
  const was = read.ok ? read.data.rows.beds?.[0]?.cells.length : read.why;
  expect(was).toMatchObject({ number: Number(begin) });
  await book.type(1, 'Length', '62');
  await reload(page);
  await book.openSheet('Beds');
  expect(await book.read(0, 'Length')).toBe('61');
  expect(await book.read(1, 'Length')).toBe('62');
  expect(problems).toEqual([]);
});

test('what was done before a reload is taken back after it, and done again', async () => {
  const { book, page } = await atSmallBeds();
  const before = await book.read(0, 'Length');
  await book.type(0, 'Length', '61');
  await book.kept();
  await reload(page);
  await book.openSheet('Beds');
  expect(await book.read(0, 'Length')).toBe('61');
  await book.press(1, 'Bed');
  await page.keyboard.press('Control+z');
  await expect.poll(() => book.read(0, 'Length')).toBe(before);
  await book.kept();
  await reload(page);
  await book.openSheet('Beds');
  await book.press(1, 'Bed');
  await page.keyboard.press('Control+y');
  await expect.poll(() => book.read(0, 'Length')).toBe('61');
});

test('a saved file opens again as it was; a damaged one gets a sentence and changes nothing', async () => {
  const { book, page } = await atSmallBeds();
  await book.type(0, 'Length', '20 m');
  const text = await savedText(page);
  const read = readWorkbookFile(text, YARD_TEMPLATES);
  expect(read.ok && read.data.rows.beds?.[0]?.cells.length).toEqual({ number: 20, unit: 'm' });

  await book.type(0, 'Length', '5');
  await openFile(page, 'season.json', text);
  await expect.poll(() => book.message().textContent()).toMatch(/Opened season.json/);
  await book.openSheet('Beds');
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
  const { book, page, problems } = await atSmallBeds();
  const text = readFileSync(new URL('../../fixtures/version-1/demo.json', import.meta.url), 'utf8');
  await openFile(page, 'first.json', text);
  const dialog = page.getByRole('dialog');
  // Its sheets stay as they were until somebody takes today's.
  await expect.poll(() => dialog.textContent()).toMatch(/made from the sheets of an earlier Dibble/);
  await dialog.getByRole('button', { name: 'Keep the sheets as they are' }).click();
  await book.openSheet('Beds');
  expect(await book.read(0, 'Bed')).toBe('Barn 1');
  expect(await book.read(0, 'Length')).toBe('50');
  expect(problems).toEqual([]);
});

test('a damaged journal gives everything up to the damage, and the rest stays to be had', async () => {
  const { book, page, problems } = await atSmallBeds();
  const second = await book.read(1, 'Length');
  await book.type(0, 'Length', '61');
  await book.type(1, 'Length', '62');
  await book.type(2, 'Length', '63');
  await book.kept();
  const entries = await keptRecords(page, 'journal');
  const damaged = entries.filter(({ text }) => String(text).includes('"62"'));
  expect(damaged).toHaveLength(1);
  await putRecords(
    page,
    'journal',
    damaged.map((entry) => ({ ...entry, text: String(entry.text).replaceAll('"62"', '"92"') })),
  );
  await reload(page);
  await expect.poll(() => book.message().textContent()).toMatch(/changes from number \d+ on can't be read.*set aside/);
  await book.openSheet('Beds');
  expect(await book.read(0, 'Length')).toBe('61');
  expect(await book.read(1, 'Length')).toBe(second);
  const aside = (await keptRecords(page, 'versions')).filter(({ kind }) => kind === 'set aside');
  expect(aside).toHaveLength(1);
  const texts = await keptRecords(page, 'texts');
  expect(String(texts.find(({ id }) => id === aside[0]?.id)?.text)).toMatch(/92.*63/s);
  // What is done from here on stands on whole ground.
  await book.type(1, 'Length', '64');
  await book.kept();
  await reload(page);
  await book.openSheet('Beds');
  expect(await book.read(1, 'Length')).toBe('64');
  expect(problems).toEqual([]);
});

test('a working copy that cannot be read gives the latest version and is set aside, never written over', async () => {
  const { book, page } = await atSmallBeds();
  await book.type(0, 'Length', '66');
  await book.kept();
  await expect.poll(async () => (await keptRecords(page, 'texts')).length).toBe(1);
  const [snapshot] = await keptRecords(page, 'snapshots');
  const cut = String(snapshot?.text).slice(0, 200);
  await putRecords(page, 'snapshots', [{ ...snapshot, text: cut }]);
  await reload(page);
  // The version of its opening and the changes since are all of it.
  await expect.poll(() => book.message().textContent()).toMatch(/is damaged.*set aside among the versions/);
  await book.openSheet('Beds');
  expect(await book.read(0, 'Length')).toBe('66');
  await book.kept();

  // Where no version can be read either:
  const texts = await keptRecords(page, 'texts');
  await putRecords(page, 'snapshots', [{ ...snapshot, text: cut }]);
  await putRecords(
    page,
    'texts',
    texts.map((each) => ({ ...each, text: cut })),
  );
  await reload(page);
  await expect.poll(() => book.message().textContent()).toMatch(/can't be opened.*cut short/);
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Download it as it is' }).click();
  const found = await readFile(await (await download).path(), 'utf8');
  expect(found).toContain(JSON.stringify(cut).slice(1, -1));
  expect(found).toContain('66');
  await page.getByRole('button', { name: 'Open the demo farm' }).click();
  await book.openSheet('Beds');
  await book.type(0, 'Length', '67');
  await book.kept();
  const after = await keptRecords(page, 'snapshots');
  expect(after.map(({ text }) => text)).toContain(cut);
});

test('a working copy that the first Dibble kept opens, and newer sheets are offered', async () => {
  const { book, page, problems } = await atSmallBeds();
  await page.goto('about:blank');
  await page.goto(new URL('/icon.svg', workbookAddress()).href);
  await forgetKept(page);
  await putFirstCopy(page, readFileSync(new URL('../../fixtures/version-1/demo.json', import.meta.url), 'utf8'));
  await page.goto(workbookAddress());
  await expect
    .poll(() => book.message().textContent())
    .toMatch(/sheets of this workbook are those of an earlier Dibble/);
  await book.openSheet('Beds');
  expect(await book.read(0, 'Length')).toBe('50');
  expect(problems).toEqual([]);
});

test('what was in hand is in hand again after a reload', async () => {
  const { book, page } = await atSmallBeds();
  await book.type(0, 'Length', '61');
  await book.kept();
  await book.press(2, 'Length');
  await expect.poll(async () => (await keptRecords(page, 'hands')).length).toBe(1);
  await expect.poll(async () => (await keptRecords(page, 'hands'))[0]?.column).toBe(await book.columnId('Length'));
  await reload(page);
  await page.getByRole('main', { name: 'Beds', exact: true }).waitFor();
  await page.keyboard.press('F6');
  await expect.poll(() => book.formulaBox().getAttribute('aria-label')).toMatch(/Length/);
});

test('a CSV file is shown before it is imported; a broken one changes nothing', async () => {
  const { book, page } = await atSmallBeds();
  const choose = async (text: string): Promise<void> => {
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Import rows' }).click();
    await (await chooser).setFiles({ name: 'beds.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
  };
  const dialog = page.getByRole('dialog');
  await choose('Bed,Length (ft)\n"Row A,70\nRow B,71\n');
  // A worker reads it, which has to be fetched first.
  await expect.poll(() => dialog.textContent(), { timeout: 30_000 }).toMatch(/Line 2 has a quotation mark/);
  await page.keyboard.press('Escape');
  await expect.poll(() => dialog.count()).toBe(0);
  expect(await book.undoButton().isDisabled()).toBe(true);

  await choose('Bed,Field,Length (ft)\nRow A,Yard,70\nPond 1,Pond,71\n');
  await expect.poll(() => dialog.textContent(), { timeout: 30_000 }).toMatch(/adds 1 row, changes 1 row/);
  expect(await book.undoButton().isDisabled()).toBe(true);
  await dialog.getByRole('button', { name: 'Import', exact: true }).click();
  await expect.poll(() => book.read(0, 'Length')).toBe('70');
  await page.locator('.message').getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => book.undoButton().isDisabled()).toBe(true);
});
