// Planning from the page: the whole order worked out and taken back, a supplier's order as a file, and a bed proposed by the worker
// for a planting that lost its own.

import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { onePage } from './one-page.ts';
import { WorkbookPage } from './workbook-page.ts';

async function open() {
  const opened = await onePage();
  return { ...opened, book: new WorkbookPage(opened.page) };
}

async function fromMenu(page: Page, item: string): Promise<void> {
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: item, exact: true }).click();
}

test('the order is worked out, each supplier gets a file, and undo takes it back', async () => {
  const { page, book, problems, requestsElsewhere } = await open();
  await fromMenu(page, 'Work out the order');
  await expect.poll(() => book.message().textContent()).toMatch(/The cheapest whole order costs \d+\.\d\d: /);
  await book.openSheet('Suppliers');
  expect(Number.parseFloat(await book.read(0, 'To pay'))).toBeGreaterThan(0);
  const supplier = await book.read(0, 'Supplier');
  await (await book.cell(0, 'Supplier')).click({ button: 'right' });
  const downloading = page.waitForEvent('download');
  await page.getByRole('menuitem', { name: "Download the supplier's order as CSV" }).click();
  const file = await readFile(await (await downloading).path(), 'utf8');
  expect(file).toMatch(/^Supplier,Variety,Crop,Form,Pack,/);
  expect(file).toContain(`\r\n${supplier},`);
  await book.undoButton().click();
  await expect.poll(() => book.undoButton().isDisabled()).toBe(true);
  expect([problems, requestsElsewhere]).toEqual([[], []]);
});

test('a planting without a bed gets one proposed', async () => {
  const { page, book, problems } = await open();
  await book.openSheet('Plantings');
  await book.press(0, 'Bed');
  await page.keyboard.press('Delete');
  await expect.poll(() => book.read(0, 'Bed')).toBe('');
  await fromMenu(page, 'Propose beds');
  await expect.poll(() => book.message().textContent(), { timeout: 15_000 }).toMatch(/^1 planting of 1 placed\./);
  await expect.poll(() => book.read(0, 'Bed')).not.toBe('');
  expect(problems).toEqual([]);
});

test('a learned figure is taken over where it stands, and undo gives the old one back', async () => {
  const { page, book, problems } = await open();
  await book.openSheet('Learned of varieties');
  const variety = await book.read(0, 'Variety');
  const learned = await book.read(0, 'Germination learned');
  await (await book.cell(0, 'Germination learned')).click({ button: 'right' });
  await page.getByRole('menuitem', { name: 'Take over the learned figure' }).click();
  await expect.poll(() => book.message().textContent()).toContain(variety);
  await book.openSheet('Varieties');
  expect(await book.read(0, 'Variety')).toBe(variety);
  await expect.poll(() => book.read(0, 'Own germination')).toBe(learned);
  await page.keyboard.press('Control+z');
  await expect.poll(() => book.read(0, 'Own germination')).toBe('');
  expect(problems).toEqual([]);
});

test('a way becomes a planting, and the next season is begun with a version of this one kept first', async () => {
  const { page, book, problems } = await open();
  await book.openSheet('Beds to try');
  await book.type(0, 'Bed to try', 'One bed');
  await book.type(0, 'Variety', 'Lamplight');
  await book.openSheet('Ways to plant');
  const way = await book.read(0, 'Way');
  await (await book.cell(0, 'Way')).click({ button: 'right' });
  await page.getByRole('menuitem', { name: 'Plant it this way' }).click();
  await expect.poll(() => book.message().textContent()).toContain(`One bed, ${way.toLowerCase()} is in Plantings.`);
  await page.keyboard.press('Control+z');
  const season = page.locator('.top-line h1');
  const ending = (await season.textContent()) ?? '';
  const first = async () => [await book.read(0, 'Variety'), await book.read(0, 'Bed')];
  await book.openSheet('Plantings');
  const planned = await first();
  await fromMenu(page, 'Next season, with all plantings, their beds and lots');
  await expect
    .poll(() => book.message().textContent())
    .toContain('Season 2027 stays among the workbooks, with a version kept as “End of season 2027”.');
  expect(await season.textContent()).toBe(ending.replace('2027', '2028'));
  await book.openSheet('Plantings');
  expect(planned[1]).not.toBe('');
  expect(await first()).toEqual(planned);
  await page.getByRole('button', { name: 'Go back to the one before' }).click();
  await expect.poll(() => season.textContent()).toBe(ending);
  expect(problems).toEqual([]);
});
