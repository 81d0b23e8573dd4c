// Rows by hand: put in above and below, moved by keys and by dragging, removed by keys, each taken back.

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { at, drag, middle, rowHandle, spareRow, undo } from '../../hands/hands.ts';

async function names(book: Awaited<ReturnType<typeof at>>['book'], count: number): Promise<readonly string[]> {
  const list: string[] = [];
  for (let row = 0; row < count; row += 1) list.push(await book.read(row, 'Tray'));
  return list;
}

/** The numbers in front of the first rows. */
function numbers(page: Page, count: number): Promise<readonly (string | null)[]> {
  return Promise.all(Array.from({ length: count }, (_, row) => rowHandle(page, row).textContent()));
}

test('a row is put in above and below the cell in hand', async () => {
  const { book, page, problems } = await at('Trays');
  const [first = '', second = '', third = ''] = await names(book, 3);
  await book.press(1, 'Tray');
  await page.keyboard.press('Alt+Insert');
  await page.locator('.entry-box').waitFor();
  await page.keyboard.type('Put above');
  await page.keyboard.press('Enter');
  await expect.poll(() => names(book, 4)).toEqual([first, 'Put above', second, third]);
  await book.press(2, 'Tray');
  await page.keyboard.press('Alt+Shift+Insert');
  await page.locator('.entry-box').waitFor();
  await page.keyboard.type('Put below');
  await page.keyboard.press('Enter');
  await expect.poll(() => names(book, 5)).toEqual([first, 'Put above', second, 'Put below', third]);
  await expect.poll(() => numbers(page, 5)).toEqual(['1', '2', '3', '4', '5']);
  await undo(page, 2);
  await expect.poll(() => names(book, 3)).toEqual([first, second, third]);
  await expect.poll(() => numbers(page, 3)).toEqual(['1', '2', '3']);
  expect(problems).toEqual([]);
});

test('an empty row that is left without an entry goes again', async () => {
  const { book, page } = await at('Trays');
  const before = await names(book, 3);
  await book.press(1, 'Tray');
  await page.keyboard.press('Alt+Insert');
  await page.locator('.entry-box').waitFor();
  await page.keyboard.press('Escape');
  await expect.poll(() => names(book, 3)).toEqual(before);
});

test('Alt with arrows moves the rows in hand', async () => {
  const { book, page } = await at('Trays');
  const [a = '', b = '', c = '', d = ''] = await names(book, 4);
  await book.press(0, 'Tray');
  await page.keyboard.press('Alt+ArrowDown');
  await expect.poll(() => names(book, 4)).toEqual([b, a, c, d]);
  await page.keyboard.press('Alt+ArrowDown');
  await expect.poll(() => names(book, 4)).toEqual([b, c, a, d]);
  await page.keyboard.press('Alt+ArrowUp');
  await expect.poll(() => names(book, 4)).toEqual([b, a, c, d]);
  await undo(page, 3);
  await expect.poll(() => names(book, 4)).toEqual([a, b, c, d]);
});

test('selected rows are dragged by their handles, and Esc gives the drag up', async () => {
  const { book, page } = await at('Trays');
  const [a = '', b = '', c = '', d = '', e = ''] = await names(book, 5);
  await rowHandle(page, 0).click();
  await rowHandle(page, 1).click({ modifiers: ['Shift'] });
  const below = await middle(rowHandle(page, 3));
  await drag(page, await middle(rowHandle(page, 0)), { x: below.x, y: below.y + 10 });
  await expect.poll(() => names(book, 5)).toEqual([c, d, a, b, e]);
  await undo(page);
  await expect.poll(() => names(book, 5)).toEqual([a, b, c, d, e]);
  await rowHandle(page, 0).click();
  const from = await middle(rowHandle(page, 0));
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(below.x, below.y, { steps: 4 });
  await page.keyboard.press('Escape');
  await page.mouse.up();
  expect(await names(book, 5)).toEqual([a, b, c, d, e]);
});

test('rows are removed with keys and come back', async () => {
  const { book, page } = await at('Trays');
  await page.getByRole('button', { name: 'Add a row' }).click();
  await page.keyboard.type('One to go');
  await page.keyboard.press('Enter');
  const row = (await spareRow(page)) - 1;
  await expect.poll(() => book.read(row, 'Tray')).toBe('One to go');
  await book.press(row, 'Tray');
  await page.keyboard.press('Alt+Delete');
  await expect.poll(() => book.message().textContent()).toMatch(/Removed One to go/);
  await undo(page);
  await expect.poll(() => book.read(row, 'Tray')).toBe('One to go');
});

test('in a sorted sheet rows are not moved by hand, and it says why; the empty row stays last', async () => {
  const { book, page } = await at('Trays');
  await (await book.header('Tray')).click({ button: 'right' });
  await page.getByRole('menuitem', { name: 'Z to A' }).click();
  await book.press(0, 'Tray');
  await page.keyboard.press('Alt+ArrowDown');
  await expect.poll(() => book.message().textContent()).toMatch(/in the order of Tray/);
  const last = await page
    .locator('.ag-row')
    .evaluateAll((rows) => Math.max(...rows.map((row) => Number(row.getAttribute('row-index')))));
  expect(await spareRow(page)).toBe(last);
});
