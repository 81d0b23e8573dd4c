// Selecting as hands know it: Shift, Ctrl, drags, handles, the corner, headers, and what keeps a selection.

import { expect, test } from 'vitest';
import { at, drag, inHand, middle, rowHandle, selected, spareRow } from '../../hands/hands.ts';
import { onionsAsTheyCome } from '../../workbook-page.ts';

test('Shift with a press selects from the cell in hand, and again from there', async () => {
  const { book, page, problems } = await at('Beds');
  await book.press(1, 'Length');
  await (await book.cell(3, 'Width')).click({ modifiers: ['Shift'] });
  await expect
    .poll(() => selected(page))
    .toEqual(['1 length', '1 width', '2 length', '2 width', '3 length', '3 width']);
  expect(await inHand(page)).toBe('1 length');
  await (await book.cell(2, 'Length')).click({ modifiers: ['Shift'] });
  await expect.poll(() => selected(page)).toEqual(['1 length', '2 length']);
  expect(problems).toEqual([]);
});

test('the right button inside a selection keeps it, outside puts the cell in hand', async () => {
  const { book, page } = await at('Beds');
  await book.press(1, 'Length');
  await page.keyboard.press('Shift+ArrowDown');
  await (await book.cell(2, 'Length')).click({ button: 'right' });
  await page.getByRole('menuitem', { name: /^Remove 2 rows/ }).waitFor();
  expect(await selected(page)).toEqual(['1 length', '2 length']);
  await page.keyboard.press('Escape');
  await (await book.cell(5, 'Width')).click({ button: 'right' });
  await page.getByRole('menuitem', { name: /^Remove the row/ }).waitFor();
  expect(await selected(page)).toEqual([]);
});

test('several ranges are selected with Ctrl, summed up and cleared together', async () => {
  const { book, page } = await at('Beds');
  await book.type(1, 'Length', '41');
  await book.type(3, 'Length', '43');
  await book.press(1, 'Length');
  await (await book.cell(3, 'Length')).click({ modifiers: ['Control'] });
  await expect.poll(() => selected(page)).toEqual(['1 length', '3 length']);
  await expect.poll(() => page.locator('.summary').textContent()).toMatch(/Sum 84 ft/);
  await page.keyboard.press('Delete');
  for (const row of [1, 3]) {
    await expect.poll(async () => (await book.cell(row, 'Length')).getAttribute('class')).toContain('origin-default');
  }
});

test('a drag selects, and scrolls where it is held past the edge', async () => {
  const { book, page } = await at('Varieties');
  const first = await middle(await book.cell(0, 'Variety'));
  const grid = await page.locator('.ag-grid-viewport').boundingBox();
  const rows = Number(await page.locator('.ag-root [aria-rowcount], .ag-root').first().getAttribute('aria-rowcount'));
  await page.mouse.move(first.x, first.y);
  await page.mouse.down();
  await page.mouse.move(first.x, first.y + 80, { steps: 3 });
  await expect.poll(async () => (await selected(page)).length).toBeGreaterThan(2);
  await page.mouse.move(first.x, (grid?.y ?? 0) + (grid?.height ?? 0) + 60, { steps: 3 });
  if (rows > 24)
    await expect.poll(() => page.locator('.ag-grid-viewport').evaluate((view) => view.scrollTop)).toBeGreaterThan(100);
  await page.mouse.up();
  expect(await page.locator('.ag-cell.in-range').count()).toBeGreaterThan(3);
});

test('Ctrl with an arrow goes to the edge of the data and never into the empty row', async () => {
  const { book, page } = await at('Beds');
  await book.press(0, 'Bed');
  await page.keyboard.press('Control+ArrowDown');
  const last = Number((await inHand(page)).split(' ')[0]);
  const spare = await spareRow(page);
  expect(last).toBe(spare - 1);
  await page.keyboard.press('Control+ArrowUp');
  expect(await inHand(page)).toBe('0 bed');
  await page.keyboard.press('Control+Shift+ArrowDown');
  await expect.poll(() => page.locator('.summary').textContent()).toMatch(new RegExp(`Filled ${spare}$`));
});

test('handles select rows, headers columns, the corner everything', async () => {
  const { book, page } = await at('Trays');
  await rowHandle(page, 1).click();
  const columns = (await selected(page)).length;
  expect((await selected(page)).every((cell) => cell.startsWith('1 '))).toBe(true);
  await rowHandle(page, 3).click({ modifiers: ['Shift'] });
  await expect.poll(async () => (await selected(page)).length).toBe(3 * columns);
  await rowHandle(page, 5).click({ modifiers: ['Control'] });
  await expect.poll(async () => (await selected(page)).length).toBe(4 * columns);
  await drag(page, await middle(rowHandle(page, 0)), await middle(rowHandle(page, 2)));
  await expect.poll(async () => new Set((await selected(page)).map((cell) => cell.split(' ')[0])).size).toBe(3);
  await (await book.header('Holds')).click();
  await expect
    .poll(async () => new Set((await selected(page)).map((cell) => cell.split(' ')[1])))
    .toEqual(new Set([await book.columnId('Holds')]));
  await page.locator('.corner-face').click();
  await expect.poll(async () => (await selected(page)).length).toBe(onionsAsTheyCome().rows('Trays').length * columns);
});

test('pages, Shift with them, whole rows and columns by keys, Esc back to the cell', async () => {
  const { book, page } = await at('Beds');
  await book.press(0, 'Bed');
  await page.keyboard.press('PageDown');
  const [row] = (await inHand(page)).split(' ');
  expect(Number(row)).toBeGreaterThan(8);
  await page.keyboard.press('PageUp');
  expect(await inHand(page)).toBe('0 bed');
  await page.keyboard.press('Shift+PageDown');
  await expect.poll(async () => (await selected(page)).length).toBeGreaterThan(8);
  await page.keyboard.press('Escape');
  expect(await selected(page)).toEqual([]);
  await page.keyboard.press('Shift+Space');
  await expect.poll(async () => (await selected(page)).every((cell) => cell.startsWith('0 '))).toBe(true);
  await page.keyboard.press('Control+Space');
  await expect.poll(() => page.locator('.summary').textContent()).toMatch(/Cells|Filled/);
});
