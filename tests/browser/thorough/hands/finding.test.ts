// Find and replace over values, go to, the steps of undo, the page of keys.

import type { BrowserContext } from 'playwright-core';
import { expect, test } from 'vitest';
import { at, inHand, undo } from '../../hands/hands.ts';
import { openOnionFarm } from '../../one-page.ts';
import { WorkbookPage } from '../../workbook-page.ts';

test('Ctrl F counts what holds a text, walks through it, and Esc leads back to the cells', async () => {
  const { page, problems } = await at('Plantings');
  await page.keyboard.press('Control+f');
  await page.keyboard.type('lamplight');
  const count = page.locator('.find-count');
  await expect.poll(() => count.textContent()).toMatch(/^\d+ found$/);
  const total = Number((await count.textContent())?.split(' ')[0]);
  expect(total).toBeGreaterThan(1);
  await page.keyboard.press('Enter');
  await expect.poll(() => count.textContent()).toBe(`1 of ${total}`);
  await page.keyboard.press('Enter');
  await expect.poll(() => count.textContent()).toBe(`2 of ${total}`);
  await page.keyboard.press('Shift+Enter');
  await expect.poll(() => count.textContent()).toBe(`1 of ${total}`);
  await expect.poll(() => page.locator('.ag-cell.is-match').count()).toBeGreaterThan(0);
  // Asked for again from the cells, the box is in hand again, with what is looked for.
  await page.locator('.ag-cell.is-match').first().click();
  await page.keyboard.press('Control+f');
  const box = page.locator('.find-bar').getByRole('textbox', { name: 'Find' });
  await expect.poll(() => box.evaluate((input) => input === document.activeElement)).toBe(true);
  await expect.poll(() => count.textContent()).toBe(`${total} found`);
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await expect.poll(() => page.locator('.find-bar').count()).toBe(0);
  await expect.poll(() => inHand(page)).toMatch(/variety/);
  expect(problems).toEqual([]);
});

test('a look that takes its time can be stopped, and the box is in hand again', async () => {
  const { page, problems } = await at('Plantings');
  await page.keyboard.press('Control+f');
  await page.getByRole('checkbox', { name: 'All sheets' }).check();
  // A clock that runs ahead makes any look a long one, in which the page has its turn after every row.
  await page.evaluate(() => {
    let now = performance.now();
    performance.now = () => {
      now += 1_000;
      return now;
    };
  });
  const box = page.getByLabel('Find', { exact: true });
  await box.fill('lamplight');
  await page.getByRole('button', { name: 'Stop looking' }).click();
  await expect.poll(() => page.locator('.find-count').textContent()).toContain('so far');
  expect(await page.getByRole('button', { name: 'Stop looking' }).count()).toBe(0);
  expect(await box.evaluate((input) => input === document.activeElement)).toBe(true);
  await page.reload();
  expect(problems).toEqual([]);
});

test('Ctrl H replaces in what was typed, all as one step, and passes over what formulas give', async () => {
  const { book, page } = await at('Beds');
  const before = await book.read(0, 'Field');
  expect(before).not.toBe('');
  await page.keyboard.press('Control+h');
  await page.getByLabel('Find', { exact: true }).fill(before);
  await page.getByLabel('Put instead').fill('Far end');
  await expect.poll(() => page.locator('.find-count').textContent()).toMatch(/found/);
  await page.getByRole('button', { name: 'Replace all' }).click();
  await expect.poll(() => book.message().textContent()).toMatch(/Replaced in/);
  await expect.poll(() => book.read(0, 'Field')).toBe('Far end');
  await book.press(0, 'Field');
  await undo(page);
  await expect.poll(() => book.read(0, 'Field')).toBe(before);
});

test('all sheets are looked through where asked for', async () => {
  const { page } = await at('Trays');
  await page.keyboard.press('Control+f');
  await page.keyboard.type('Red clumps');
  await expect.poll(() => page.locator('.find-count').textContent()).toBe('not found');
  await page.getByLabel('In all sheets').check();
  await expect.poll(() => page.locator('.find-count').textContent()).toMatch(/^\d+ found$/);
});

test('go to finds on this sheet first, and values', async () => {
  const { book, page } = await at('Plantings');
  await page.keyboard.press('Control+k');
  await page.keyboard.type('variety');
  const first = page.getByRole('listbox', { name: 'Found' }).getByRole('option').first();
  await expect.poll(() => first.textContent()).toMatch(/column of Plantings/);
  await page.keyboard.press('Escape');
  await book.openSheet('Beds');
  const field = await book.read(0, 'Field');
  await page.keyboard.press('Control+k');
  await page.keyboard.type(field);
  await expect.poll(() => page.getByRole('listbox', { name: 'Found' }).textContent()).toContain('Field, ');
});

test('undo lists its steps, and choosing one goes back to before it', async () => {
  const { book, page } = await at('Beds');
  const before = await book.read(0, 'Length');
  for (const entry of ['61', '62', '63']) await book.type(0, 'Length', entry);
  await page.getByRole('button', { name: /What was done/ }).click();
  const menu = page.getByRole('menu');
  await menu.waitFor();
  expect(await menu.getByRole('menuitem').allTextContents()).toEqual([
    '1. Length: 63',
    '2. Length: 62',
    '3. Length: 61',
  ]);
  await menu.getByRole('menuitem').nth(1).click();
  await expect.poll(() => book.read(0, 'Length')).toBe('61');
  await book.press(0, 'Length');
  await undo(page);
  await expect.poll(() => book.read(0, 'Length')).toBe(before);
});

test('every key stands on one page, the same as in the menus', async () => {
  const { book, page } = await at('Beds');
  await book.press(0, 'Bed');
  await page.keyboard.press('F1');
  const dialog = page.getByRole('dialog', { name: 'Keys' });
  const ofSheets = dialog.locator('section', { hasNot: page.getByRole('heading', { name: 'On scratch paper' }) });
  for (const words of [
    'Fill down',
    'Copy with headers',
    'Move the rows down',
    'Find and replace',
    'Take the entry and go down',
  ]) {
    await ofSheets.getByText(words, { exact: true }).waitFor();
  }
  await page.keyboard.press('Escape');
  await expect.poll(() => dialog.count()).toBe(0);
});

test('what is typed while a bar or a dialog is still on its way goes into it, never into a cell', async () => {
  const { page, problems, comes } = await openHoldingBack('find-bar', 'note-dialog');
  const book = new WorkbookPage(page);
  await book.openSheet('Plantings');
  const before = await book.read(0, 'Variety');
  await book.press(0, 'Variety');
  await page.keyboard.press('Control+f');
  await page.keyboard.type('lamplighx');
  await page.keyboard.press('Backspace');
  await page.keyboard.type('t');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  expect(await page.locator('.find-bar').count()).toBe(0);
  comes('find-bar');
  await expect.poll(() => page.locator('.find-count').textContent()).toMatch(/^2 of \d+$/);
  expect(await page.getByLabel('Find', { exact: true }).inputValue()).toBe('lamplight');
  await page.keyboard.type('s');
  expect(await page.getByLabel('Find', { exact: true }).inputValue()).toBe('lamplights');
  await page.keyboard.press('Escape');
  expect(await book.read(0, 'Variety')).toBe(before);

  await book.press(0, 'Variety');
  await page.keyboard.press('Shift+F2');
  await page.keyboard.type('from the tray');
  comes('note-dialog');
  await expect.poll(() => page.getByLabel(/What is to be remembered/).inputValue()).toBe('from the tray');
  await page.keyboard.type(' by the door');
  await page.getByRole('button', { name: 'Keep the note' }).click();
  await expect.poll(() => inHand(page)).toMatch(/variety/);
  expect(await book.read(0, 'Variety')).toBe(before);
  await page.keyboard.press('Shift+F2');
  expect(await page.getByLabel(/What is to be remembered/).inputValue()).toBe('from the tray by the door');
  expect(problems).toEqual([]);
});

test('a place asked for before what finds it has come is gone to once it has', async () => {
  const { page, problems, comes } = await openHoldingBack('find-places');
  await new WorkbookPage(page).openSheet('Plantings');
  await page.keyboard.press('Control+k');
  await page.keyboard.type('beds');
  await page.keyboard.press('Enter');
  expect(await page.getByRole('listbox', { name: 'Found' }).count()).toBe(0);
  comes('find-places');
  await page.getByRole('main', { name: 'Beds', exact: true }).waitFor();
  expect(problems).toEqual([]);
});

/**
 * The demo farm's onions on a page of which some parts are kept on their way until they are let come: from before the page opens, so
 * that none of them slips by while holding begins.
 */
async function openHoldingBack(...parts: readonly string[]) {
  const gates = new Map<string, () => void>();
  const prepare = async (context: BrowserContext): Promise<void> => {
    for (const part of parts) {
      const asked = new Promise<void>((resolve) => gates.set(part, resolve));
      await context.route(new RegExp(`/assets/${part}-[^/]*\\.js$`), async (route) => {
        await asked;
        await route.continue();
      });
    }
  };
  const opened = await openOnionFarm({ prepare });
  return { ...opened, comes: (part: string): void => gates.get(part)?.() };
}
