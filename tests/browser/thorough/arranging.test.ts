// Filters, order, groups, colours, notes: each of the view on screen, undoable, and the empty row stays last.

import { expect, test } from 'vitest';
import { at, drag, fillHandle, middle, spareRow } from '../hands/hands.ts';

type Opened = Awaited<ReturnType<typeof at>>;

async function columnMenu({ book, page }: Opened, column: string, item: string | RegExp): Promise<void> {
  // Brought into sight as a person would scroll to it.
  await book.cell(0, column);
  await (await book.header(column)).click({ button: 'right' });
  await page.getByRole('menuitem', { name: item }).click();
}

/** The texts of a column from the top, the empty row left out. */
async function texts({ book, page }: Opened, column: string): Promise<readonly string[]> {
  const id = await book.columnId(column);
  return page.evaluate(
    (wanted) =>
      [...document.querySelectorAll('.ag-row:not(.spare-row):not(.head-row)')]
        .map(
          (row) =>
            [
              Number(row.getAttribute('row-index')),
              row.querySelector(`[col-id="${wanted}"]`)?.textContent ?? '',
            ] as const,
        )
        .sort(([a], [b]) => a - b)
        .map(([, text]) => text),
    id,
  );
}

async function spareIsLast({ page }: Opened): Promise<boolean> {
  await spareRow(page);
  return page.evaluate(() => {
    const rows = [...document.querySelectorAll('.ag-row')].map((row) => Number(row.getAttribute('row-index')));
    return Number(document.querySelector('.ag-row.spare-row')?.getAttribute('row-index')) === Math.max(...rows);
  });
}

test('sorting by several columns shows on the headers, and undo takes each key back', async () => {
  const opened = await at('Beds');
  const { book, page } = opened;
  // So many rows are drawn at the top wherever the sheet was scrolled before.
  const before = (await texts(opened, 'Bed')).slice(0, 20);
  await columnMenu(opened, 'Field', 'Z to A');
  await expect
    .poll(async () => (await book.header('Field')).locator('.column-sort').getAttribute('aria-label'))
    .toBe('sorted greatest first');
  const fields = await texts(opened, 'Field');
  expect(fields).toEqual([...fields].sort((a, b) => b.localeCompare(a, 'en', { numeric: true, sensitivity: 'base' })));
  await columnMenu(opened, 'Bed', 'Then by this, Z to A');
  await expect.poll(async () => (await book.header('Bed')).locator('.column-sort').textContent()).toBe('↓2');
  expect(await (await book.header('Field')).locator('.column-sort').textContent()).toBe('↓1');
  expect(await spareIsLast(opened)).toBe(true);
  await page.getByText(/^Sorted by Field, then Bed$/).waitFor();
  await book.press(0, 'Bed');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect
    .poll(async () => {
      await book.cell(0, 'Bed');
      return (await texts(opened, 'Bed')).slice(0, 20);
    })
    .toEqual(before);
});

test('a filter by values, by an amount, by a finding; each a chip that is taken off', async () => {
  const opened = await at('Plantings');
  const { page } = opened;
  const all = await spareRow(page);
  await columnMenu(opened, 'Variety', 'Filter by Variety');
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('checkbox', { name: /^Lamplight/ }).check();
  await dialog.getByRole('button', { name: 'Show these rows' }).click();
  await expect.poll(async () => new Set(await texts(opened, 'Variety'))).toEqual(new Set(['Lamplight']));
  await page
    .locator('.rows-left')
    .getByText(/ of \d+ rows/)
    .waitFor();
  await page.getByRole('button', { name: /^Show the rows that it keeps back: Variety is Lamplight/ }).click();
  await expect.poll(() => spareRow(page)).toBe(all);
  await columnMenu(opened, 'Rows', 'Filter by Rows');
  await dialog.getByLabel('Rows', { exact: true }).selectOption('is at least');
  await dialog.getByLabel('From').fill('5');
  await dialog.getByRole('button', { name: 'Show these rows' }).click();
  await expect.poll(async () => (await texts(opened, 'Rows')).every((rows) => Number(rows) >= 5)).toBe(true);
  await page.getByRole('button', { name: /keeps back: Rows at least 5/ }).click();
  await page.getByRole('button', { name: 'View', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Rows in which something was found' }).click();
  await expect.poll(() => spareRow(page)).toBeLessThan(all);
  expect(await spareIsLast(opened)).toBe(true);
});

test('a row that is typed while a filter stands stays in sight until the rows are arranged again', async () => {
  const opened = await at('Beds');
  const { book, page } = opened;
  await columnMenu(opened, 'Length', 'Filter by Length');
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Length', { exact: true }).selectOption('is at least');
  await dialog.getByLabel(/^From/).fill('20 ft');
  await dialog.getByRole('button', { name: 'Show these rows' }).click();
  const first = await book.read(0, 'Bed');
  await book.type(0, 'Length', '3');
  await expect.poll(() => book.read(0, 'Bed')).toBe(first);
  await page.getByRole('button', { name: 'Sort and filter again' }).click();
  await expect.poll(() => texts(opened, 'Bed')).not.toContain(first);
});

test('groups have a head with their count and subtotals, and fold', async () => {
  const opened = await at('Plantings');
  const { book, page } = opened;
  await columnMenu(opened, 'Bed', 'Group by Bed');
  const head = page.locator('.ag-row.head-row[row-index="0"]');
  await page.locator('.ag-row.head-row').first().waitFor();
  // The row in hand stays in sight, wherever its group comes to lie.
  await page.locator('.ag-grid-viewport').evaluate((grid) => {
    grid.scrollTop = 0;
  });
  await head.waitFor();
  await expect.poll(() => head.textContent()).toMatch(/\d+ rows?/);
  const sum = await head
    .locator('.total-face')
    .evaluateAll((faces) => faces.filter((face) => face.textContent !== '').length);
  expect(sum).toBeGreaterThan(0);
  // Whatever of it the column cuts is told where the pointer rests on it; here nothing is.
  expect(await head.locator('.group-face').getAttribute('title')).toMatch(/^.+, \d+ rows?$/);
  const cut = await page
    .locator('.head-row .total-face, .head-row .stacked > span')
    .evaluateAll((texts) => texts.filter((one) => one.scrollWidth > one.clientWidth).map((one) => one.textContent));
  expect(cut).toEqual([]);
  const before = (await texts(opened, 'Planting')).length;
  await head.locator('.group-face').click();
  await expect.poll(async () => page.locator('.ag-row.head-row[row-index="0"]').textContent()).toContain('▸');
  expect((await texts(opened, 'Planting')).length).toBeLessThanOrEqual(before);
  // All at once: each head shows it as soon as its rows are folded away.
  const foldAll = async (): Promise<void> => {
    await page.getByRole('button', { name: 'View', exact: true }).click();
    await page.getByRole('menuitem', { name: 'Fold all groups, or open them' }).click();
  };
  const signs = async () => new Set(await page.locator('.head-row .fold-sign').allTextContents());
  await foldAll();
  await expect.poll(signs).toEqual(new Set(['▸']));
  await foldAll();
  await expect.poll(signs).toEqual(new Set(['▾']));
  // Filled across the head of the next group: the head is no cell that was filled.
  await expect.poll(async () => page.locator('.ag-row.head-row[row-index="0"]').textContent()).toContain('▾');
  const next = Number(await page.locator('.ag-row.head-row').nth(1).getAttribute('row-index'));
  await book.type(next - 1, 'Rows', '3');
  await book.press(next - 1, 'Rows');
  const below = await middle(await book.cell(next + 1, 'Rows'));
  await drag(page, await fillHandle(page), below);
  await expect.poll(() => book.message().last().textContent()).toMatch(/^Filled a cell\./);
  // The word of it may come before the frame that paints it.
  await expect.poll(() => book.read(next + 1, 'Rows')).toBe('3');
  await page.getByRole('button', { name: /^Without groups/ }).click();
  await expect.poll(() => page.locator('.ag-row.head-row').count()).toBe(0);
  expect(await book.read(0, 'Planting')).not.toBe('');
});

test('a colour by rule has its words and a sign; a note is read out; both are taken back', async () => {
  const opened = await at('Beds');
  const { book, page } = opened;
  await columnMenu(opened, 'Length', 'Colour Length by rule');
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Length', { exact: true }).selectOption('is at least');
  await dialog.getByLabel(/^From/).fill('1');
  await dialog.getByLabel(/^What it means/).fill('a real bed');
  await dialog.getByLabel(/^A sign/).fill('✓');
  await dialog.getByRole('button', { name: 'Colour these cells' }).click();
  const cell = await book.cell(0, 'Length');
  await expect.poll(() => cell.getAttribute('aria-description')).toMatch(/a real bed/);
  expect(await cell.locator('.colour-mark').textContent()).toBe('✓');
  await book.press(0, 'Length');
  await page.keyboard.press('Shift+F2');
  await dialog.getByRole('textbox').fill('Measured twice');
  await dialog.getByRole('button', { name: 'Keep the note' }).click();
  await expect.poll(() => cell.getAttribute('aria-description')).toMatch(/Note: Measured twice/);
  await book.press(0, 'Length');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect.poll(async () => (await cell.getAttribute('aria-description')) ?? '').not.toMatch(/real bed|Note/);
});
