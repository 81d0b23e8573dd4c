// The fill handle and filling by keys: series of dates, numbers and names, from two cells their step, copies with Ctrl.

import { expect, test } from 'vitest';
import { at, drag, fillHandle, middle, spareRow, undo } from '../../hands/hands.ts';
import { drawFrames } from '../../harness.ts';

test('a date goes on by the day; the notice offers weeks, months and the same again', async () => {
  const { book, page, problems } = await at('Plantings');
  await book.type(1, 'Sown', '1 Feb 2027');
  await book.press(1, 'Sown');
  await drag(page, await fillHandle(page), await middle(await book.cell(4, 'Sown')));
  await expect.poll(() => book.read(4, 'Sown')).toBe('4 Feb 2027');
  await book.message().getByRole('button', { name: 'By the week' }).click();
  await expect.poll(() => book.read(4, 'Sown')).toBe('22 Feb 2027');
  await book.message().getByRole('button', { name: 'By the month' }).click();
  await expect.poll(() => book.read(4, 'Sown')).toBe('1 May 2027');
  await book.message().getByRole('button', { name: 'Copy instead' }).click();
  await expect.poll(() => book.read(4, 'Sown')).toBe('1 Feb 2027');
  expect(problems).toEqual([]);
});

test('two dates go on by their step, and one step of undo takes it back', async () => {
  const { book, page } = await at('Plantings');
  await book.look('When?');
  const before = await book.read(5, 'Sown');
  await book.type(1, 'Sown', '1 Feb 2027');
  await book.type(2, 'Sown', '11 Feb 2027');
  await book.press(1, 'Sown');
  await page.keyboard.press('Shift+ArrowDown');
  // Looking for the cell may scroll the grid, and the handle with it.
  const last = await middle(await book.cell(5, 'Sown'));
  await drag(page, await fillHandle(page), last);
  await expect.poll(() => book.read(5, 'Sown')).toBe('13 Mar 2027');
  await undo(page);
  await expect.poll(() => book.read(5, 'Sown')).toBe(before);
});

test('one number is copied, with Ctrl counted on; two go on by their step, upwards too', async () => {
  const { book, page } = await at('Beds');
  await book.type(4, 'Length', '50.5');
  await book.press(4, 'Length');
  await drag(page, await fillHandle(page), await middle(await book.cell(6, 'Length')));
  await expect.poll(() => book.read(6, 'Length')).toBe('50.5');
  await book.press(4, 'Length');
  await drag(page, await fillHandle(page), await middle(await book.cell(6, 'Length')), ['Control']);
  await expect.poll(() => book.read(6, 'Length')).toBe('52.5');
  await book.type(5, 'Length', '60.5');
  await book.press(4, 'Length');
  await page.keyboard.press('Shift+ArrowDown');
  await drag(page, await fillHandle(page), await middle(await book.cell(2, 'Length')));
  await expect.poll(() => book.read(2, 'Length')).toBe('30.5');
  // The other way on takes the filling back first: it is offered only while that is the last step.
  const otherWay = book.message().getByRole('button', { name: 'Copy instead' });
  await expect.poll(() => otherWay.count()).toBe(1);
  await book.type(0, 'Length', '33');
  await expect.poll(() => otherWay.count()).toBe(0);
});

test('the handle held past the lower edge fills on, also where scrollbars lie over the rows', async () => {
  // So low that rows go on below the edge.
  const { book, page } = await at('Beds', { height: 480 });
  await book.type(0, 'Length', '50.5');
  await book.press(0, 'Length');
  const grid = await page.locator('.ag-grid-viewport').boundingBox();
  const bottom = (grid?.y ?? 0) + (grid?.height ?? 0);
  const handle = await fillHandle(page);
  await page.mouse.move(handle.x, handle.y);
  await page.mouse.down();
  await page.mouse.move(handle.x, bottom - 30, { steps: 4 });
  const marked = page.locator('.will-fill');
  await expect.poll(() => marked.count()).toBeGreaterThan(2);
  // On the scrollbar, and past the grid: the last rows in sight are marked, and fill.
  for (const y of [bottom - 4, bottom + 10]) {
    await page.mouse.move(handle.x, y, { steps: 3 });
    await drawFrames(page);
    expect(await marked.count()).toBeGreaterThan(2);
  }
  await page.mouse.up();
  await expect.poll(() => book.read(3, 'Length')).toBe('50.5');
});

test('names that end in numbers count on', async () => {
  const { book, page } = await at('Beds');
  await book.type(1, 'Field', 'Field 07');
  await book.press(1, 'Field');
  await drag(page, await fillHandle(page), await middle(await book.cell(3, 'Field')));
  await expect.poll(() => book.read(3, 'Field')).toBe('Field 09');
  await book.press(1, 'Field');
  await drag(page, await fillHandle(page), await middle(await book.cell(3, 'Field')), ['Control']);
  await expect.poll(() => book.read(3, 'Field')).toBe('Field 07');
});

test('twice on the handle fills as far as the column beside goes', async () => {
  const { book, page } = await at('Beds');
  const last = (await spareRow(page)) - 1;
  await book.type(0, 'Length', '77');
  await book.press(0, 'Length');
  const handle = await fillHandle(page);
  await page.mouse.dblclick(handle.x, handle.y);
  await expect.poll(() => book.read(last, 'Length')).toBe('77');
});

test('Ctrl R fills to the right and Ctrl D down; formulas stay', async () => {
  const { book, page } = await at('Beds');
  await book.type(0, 'Length', '44');
  const area = await book.read(0, 'Area');
  await book.press(0, 'Length');
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Control+r');
  await expect.poll(() => book.read(0, 'Width')).toMatch(/^44\s*ft$/);
  expect(await book.read(0, 'Area')).not.toBe(area);
  await book.press(0, 'Length');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Control+d');
  await expect.poll(() => book.read(1, 'Length')).toBe('44');
});

test('names filled on past the last row become rows; without names nothing does', async () => {
  const { book, page } = await at('Suppliers');
  const first = await spareRow(page);
  await book.type(first, 'Supplier', 'House 1');
  await book.type(first, 'Postage', '4.50');
  await book.press(first, 'Supplier');
  const corner = await fillHandle(page);
  await drag(page, corner, { x: corner.x, y: corner.y + 3 * 32 });
  await expect.poll(() => book.message().textContent()).toContain('Filled 3 cells, in 3 new rows.');
  await expect.poll(() => book.read(first + 3, 'Supplier')).toBe('House 4');
  expect(await book.read(first + 3, 'Postage')).toBe('');
  await book.message().getByRole('button', { name: 'Undo' }).or(book.undoButton()).first().click();
  await expect.poll(() => spareRow(page)).toBe(first + 1);

  await book.press(first, 'Postage');
  const below = await fillHandle(page);
  await drag(page, below, { x: below.x, y: below.y + 3 * 32 });
  expect(await spareRow(page)).toBe(first + 1);
});

test('heads of groups are passed over: no step is counted for them, and nothing is filled from them', async () => {
  const { book, page } = await at('Beds', { height: 1400 });
  await (await book.header('Field')).click({ button: 'right' });
  await page.getByRole('menuitem', { name: 'Group by Field' }).click();
  await page.locator('.ag-row.head-row').first().waitFor();
  await page.locator('.ag-grid-viewport').evaluate((grid) => {
    grid.scrollTop = 0;
  });
  await page.locator('.ag-row.head-row[row-index="0"]').waitFor();
  const heads = await page
    .locator('.ag-row.head-row')
    .evaluateAll((rows) => rows.map((row) => Number(row.getAttribute('row-index'))).toSorted((a, b) => a - b));
  const [first = -1, second = -1] = heads;
  expect(first).toBe(0);
  expect(second).toBeGreaterThan(2);
  await book.type(first + 1, 'Length', '10');
  await book.type(first + 2, 'Length', '12');
  await book.press(first + 1, 'Length');
  await page.keyboard.press('Shift+ArrowDown');
  await drag(page, await fillHandle(page), await middle(await book.cell(second + 2, 'Length')));
  const rows = Array.from({ length: second + 2 }, (_, at) => at + 1).filter((row) => row !== second);
  await expect
    .poll(() => Promise.all(rows.map((row) => book.read(row, 'Length'))))
    .toEqual(rows.map((_, at) => String(10 + 2 * at)));
  // Down into the first row of a group comes what stands in the row above its head.
  await book.press(second + 1, 'Length');
  await page.keyboard.press('Control+d');
  await expect.poll(() => book.read(second + 1, 'Length')).toBe(String(10 + 2 * (second - 2)));
  // From a selection that begins with a head comes its first row.
  await book.press(second + 1, 'Length');
  await page.keyboard.press('Shift+ArrowUp');
  await page.keyboard.press('Control+d');
  await expect.poll(() => book.read(second + 1, 'Length')).toBe(String(10 + 2 * (second - 2)));
});
