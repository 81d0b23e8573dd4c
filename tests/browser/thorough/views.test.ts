// Ways of looking: views, columns shown, moved, pinned, wide; what is kept; the room for the grid.

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { at, drag, middle } from '../hands/hands.ts';
import { reload } from '../harness.ts';
import { atSmallBeds } from '../small-workbook.ts';

/** The ids of the columns on screen, in order, as far as they are drawn. */
async function columns(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('.ag-header-cell:not(.corner-head)')]
      .sort((a, b) => a.getBoundingClientRect().left - b.getBoundingClientRect().left)
      .map((cell) => cell.getAttribute('col-id') ?? ''),
  );
}

async function columnMenu(page: Page, id: string, item: string): Promise<void> {
  await page.locator(`.ag-header-cell[col-id="${id}"]`).click({ button: 'right' });
  await page.getByRole('menuitem', { name: item, exact: true }).click();
}

async function viewMenu(page: Page, item: string): Promise<void> {
  await page.getByRole('button', { name: 'View', exact: true }).click();
  await page.getByRole('menuitem', { name: item }).click();
}

async function size(page: Page): Promise<{ readonly width: number; readonly height: number }> {
  const box = await page.locator('.grid-host').boundingBox();
  return { width: box?.width ?? 0, height: box?.height ?? 0 };
}

test('the grid gets the room, and list and panel fold and are remembered', async () => {
  // A page of its own: how the desk is set up stays in the browser.
  const { page } = await atSmallBeds();
  const both = await size(page);
  expect(both.width).toBeGreaterThanOrEqual(900);
  expect(both.height).toBeGreaterThanOrEqual(680);
  await page.getByRole('button', { name: 'Fold the panel away' }).click();
  await expect.poll(async () => (await size(page)).width).toBeGreaterThanOrEqual(1150);
  await page.getByRole('button', { name: 'Fold the list away' }).click();
  await expect.poll(async () => (await size(page)).width).toBeGreaterThanOrEqual(1350);
  await reload(page);
  await page.getByRole('button', { name: 'Show the list of sheets' }).waitFor();
  await page.keyboard.press('Control+k');
  await page.keyboard.type('Beds');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Show the row in hand' }).waitFor();
});

test('a column is drawn wider and stays so; twice on its border fits it to its texts', async () => {
  const { page } = await atSmallBeds();
  const header = page.locator('.ag-header-cell[col-id="length"]');
  const width = async (): Promise<number> => (await header.boundingBox())?.width ?? 0;
  const before = await width();
  const border = await middle(header.locator('.ag-header-cell-resize'));
  await drag(page, border, { x: border.x + 90, y: border.y });
  await expect.poll(width).toBeGreaterThan(before + 70);
  const wide = await width();
  // The grid tells of a width once it is drawn, not while the button goes up: a page that goes within that moment hears of nothing.
  const kept = (): Promise<string | null> => page.evaluate(() => localStorage.getItem('dibble: desk'));
  await expect.poll(kept).toContain(`"length":${Math.round(wide)}`);
  await reload(page);
  await page
    .getByRole('navigation', { name: 'Sheets' })
    .getByRole('button', { name: /^Beds\s*(,|\d|$)/ })
    .click();
  await expect.poll(width).toBe(wide);
  const again = await middle(header.locator('.ag-header-cell-resize'));
  await page.mouse.dblclick(again.x, again.y);
  await expect.poll(width).toBeLessThan(wide);
});

test('columns are hidden, moved, kept in sight; undo takes each back', async () => {
  const { book, page } = await at('Plantings');
  await book.look('How close?');
  await expect.poll(() => columns(page)).toContain('rows');
  const before = await columns(page);
  await columnMenu(page, 'rows', 'Hide the column');
  await expect.poll(() => columns(page)).not.toContain('rows');
  await columnMenu(page, 'in-row-spacing', 'Move to the right');
  await expect.poll(async () => (await columns(page)).indexOf('in-row-spacing')).toBe(3);
  await columnMenu(page, 'pattern', 'Keep in sight at the left');
  await expect.poll(async () => (await columns(page))[1]).toBe('pattern');
  await book.press(0, 'Planting');
  for (let step = 0; step < 3; step += 1) await page.keyboard.press('Control+z');
  await expect.poll(() => columns(page)).toEqual(before);
});

test('a header dragged to another place keeps it', async () => {
  const { book, page } = await at('Plantings');
  await book.look('What goes where?');
  await expect.poll(() => columns(page)).toContain('start');
  const from = await middle(page.locator('.ag-header-cell[col-id="start"]'));
  const to = await middle(page.locator('.ag-header-cell[col-id="variety"]'));
  await drag(page, from, { x: to.x - 30, y: to.y });
  await expect.poll(async () => (await columns(page)).slice(1, 3)).toEqual(['start', 'variety']);
});

test('a question folds to its first column and opens again', async () => {
  const { book, page } = await at('Plantings');
  await book.look('What goes where?');
  await expect.poll(() => columns(page)).toContain('rows');
  await page.locator('.question-face', { hasText: 'Bed' }).first().click();
  await expect.poll(() => columns(page)).not.toContain('rows');
  expect(await columns(page)).toContain('bed');
  await page.locator('.question-face', { hasText: 'and' }).first().click();
  await expect.poll(() => columns(page)).toContain('rows');
});

test('going to a column that the view leaves out shows it', async () => {
  const { book, page } = await at('Plantings');
  await book.look('How close?');
  await page.keyboard.press('Control+k');
  await page.keyboard.type('Seed cost');
  await page
    .getByRole('listbox', { name: 'Found' })
    .getByRole('option', { name: /column of Plantings/ })
    .first()
    .click();
  await expect.poll(() => page.locator('.formula-address').textContent()).toMatch(/Seed cost$/);
  await expect.poll(() => columns(page)).toContain('seed-cost');
});

test('a sheet opens on its first question, the name of the row always in front', async () => {
  const { book, page, problems } = await at('Plantings');
  await book.look('How close?');
  await expect.poll(() => columns(page)).toContain('plant-density');
  const shown = await columns(page);
  expect(shown[0]).toBe('planting');
  expect(shown.length).toBeLessThanOrEqual(12);
  await book.look('What does it earn?');
  await expect.poll(() => columns(page)).toContain('revenue');
  expect((await columns(page))[0]).toBe('planting');
  await reload(page);
  await page
    .getByRole('navigation', { name: 'Sheets' })
    .getByRole('button', { name: /^Plantings/ })
    .click();
  await expect.poll(() => columns(page)).toContain('revenue');
  expect(problems).toEqual([]);
});

test('a view of one’s own is made, named, kept with the workbook and removed', async () => {
  const { book, page } = await at('Plantings');
  await book.look('How close?');
  await viewMenu(page, 'A new view like this one');
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Name').fill('For Maria');
  await dialog.getByRole('checkbox', { name: 'Rows', exact: true }).click();
  await dialog.getByLabel('Find a column').fill('Share of margin');
  await dialog.getByRole('checkbox', { name: /^Share of margin/ }).click();
  await dialog.getByRole('button', { name: 'Add the view' }).click();
  await expect.poll(() => book.viewButton('For Maria').getAttribute('aria-pressed')).toBe('true');
  // Scrolled to, as it stands last.
  await book.cell(0, 'Share of margin');
  expect(await columns(page)).not.toContain('rows');
  await book.kept();
  await reload(page);
  await page
    .getByRole('navigation', { name: 'Sheets' })
    .getByRole('button', { name: /^Plantings/ })
    .click();
  await book.viewButton('For Maria').waitFor();
  await viewMenu(page, 'Remove this view');
  await expect.poll(() => book.viewButton('For Maria').count()).toBe(0);
});

/** What becomes of texts that are wider than their cells: how many are cut off, and how many run over the next cell. */
async function wideTexts(page: Page): Promise<{ readonly cut: number; readonly over: number; readonly free: number }> {
  return page.evaluate(() => {
    let [cut, over, free] = [0, 0, 0];
    const range = document.createRange();
    for (const cell of document.querySelectorAll<HTMLElement>('.ag-row .ag-cell')) {
      const { overflow, paddingLeft, paddingRight } = getComputedStyle(cell);
      range.selectNodeContents(cell);
      const room = cell.clientWidth - Number.parseFloat(paddingLeft) - Number.parseFloat(paddingRight);
      const isWide = range.getBoundingClientRect().width > room + 0.5;
      if (overflow === 'visible') free += 1;
      if (isWide && overflow === 'visible') over += 1;
      if (isWide && overflow !== 'visible') cut += 1;
    }
    return { cut, over, free };
  });
}

test('a text that a column has no room for is cut off at its end, in whichever view and however narrow it is drawn', async () => {
  const { book, page } = await at('Plantings');
  for (const view of ['What goes where?', 'How close?', 'What does it earn?']) {
    await book.look(view);
    await page.locator('.ag-grid-viewport').evaluate((sheet) => sheet.scrollTo({ top: 400 }));
    await expect.poll(async () => (await wideTexts(page)).free).toBeGreaterThan(50);
    expect((await wideTexts(page)).over).toBe(0);
  }
  await book.look('What goes where?');
  const header = page.locator('.ag-header-cell[col-id="variety"]');
  const border = await middle(header.locator('.ag-header-cell-resize'));
  const before = await wideTexts(page);
  await drag(page, border, { x: border.x - 150, y: border.y });
  await expect.poll(async () => (await wideTexts(page)).cut).toBeGreaterThan(before.cut + 5);
  expect((await wideTexts(page)).over).toBe(0);
});

test('a figure that is not drawn when what it follows from is changed reads right as soon as it is scrolled to', async () => {
  const { book, page } = await at('Plantings');
  await book.look('What goes where?');
  const column = page.locator('.ag-header-cell[col-id="marketable-yield"]');
  await expect.poll(() => column.count()).toBe(0);
  const before = await book.read(3, 'Marketable yield');
  await book.press(3, 'In-row spacing');
  await page.locator('.ag-grid-viewport').evaluate((sheet) => sheet.scrollTo({ left: 0 }));
  await expect.poll(() => column.count()).toBe(0);
  // Pasted and scrolled to within one turn of the page, before anything that waits for an idle moment.
  const read = await page.evaluate(async () => {
    const cell = (id: string): HTMLElement | null =>
      document.querySelector(`.ag-row[row-index="3"] .ag-cell[col-id="${id}"]`);
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', '24');
    document.activeElement?.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
    );
    const sheet = document.querySelector('.ag-grid-viewport');
    if (sheet !== null) sheet.scrollLeft = 2_000;
    while (cell('marketable-yield') === null) await new Promise((resolve) => requestAnimationFrame(resolve));
    return cell('marketable-yield')?.textContent ?? '';
  });
  expect(read).not.toBe(before);
  await expect.poll(() => book.read(3, 'Marketable yield')).toBe(read);
});
