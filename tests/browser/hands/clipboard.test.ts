// Copying, cutting and pasting over the real clipboard, with what desktop spreadsheets put there.

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import {
  at,
  clipboardHtml,
  clipboardText,
  inHand,
  pasteAsItCame,
  putOnClipboard,
  selected,
  spareRow,
  undo,
} from './hands.ts';

function fixture(name: string): { readonly text: string; readonly html: string } {
  const read = (ending: string): string =>
    readFileSync(fileURLToPath(new URL(`../../fixtures/clipboard/${name}.${ending}`, import.meta.url)), 'utf8');
  return { text: read('tsv'), html: read('html') };
}

test('a block of a spreadsheet that fits lands at once, as many cells as it has, as one step', async () => {
  const { book, page } = await at('Beds');
  const before = [await book.read(1, 'Length'), await book.read(2, 'Width')];
  await putOnClipboard(page, fixture('desktop-spreadsheet'));
  await book.press(1, 'Length');
  await page.keyboard.press('Control+v');
  await expect.poll(() => book.read(2, 'Width')).toBe('31');
  expect([await book.read(1, 'Length'), await book.read(1, 'Width'), await book.read(2, 'Length')]).toEqual([
    '52',
    '30',
    '53',
  ]);
  await undo(page);
  await expect.poll(() => book.read(2, 'Width')).toBe(before[1]);
  expect(await book.read(1, 'Length')).toBe(before[0]);
  // A cell that reaches over two lines.
  await book.press(1, 'Field');
  await pasteAsItCame(page, {
    text: 'Slope\t52\t30\n\t53\t31',
    html:
      '<table><tr><td rowspan=2>Slope</td><td sdval=52>52</td><td sdval=30>30</td></tr>' +
      '<tr><td sdval=53>53</td><td sdval=31>31</td></tr></table>',
  });
  await expect.poll(() => book.read(2, 'Width')).toBe('31');
  expect(await book.read(2, 'Length')).toBe('53');
  await undo(page);
  await expect.poll(() => book.read(2, 'Width')).toBe(before[1]);
  // A line that is hidden.
  await book.press(1, 'Length');
  await pasteAsItCame(page, {
    text: '52\n53',
    html: "<table><tr><td>52</td></tr><tr style='display:none'><td>77</td></tr><tr><td>53</td></tr></table>",
  });
  await expect.poll(() => book.read(1, 'Length')).toBe('52');
  expect(await book.read(2, 'Length')).toBe('53');
  await undo(page);
  await expect.poll(() => book.read(1, 'Length')).toBe(before[0]);
});

test('a table with a line of headers says where its columns go, and the values behind its texts are taken', async () => {
  const { book, page } = await at('Beds');
  const spare = await spareRow(page);
  await putOnClipboard(page, fixture('office-suite'));
  await book.press(spare, 'Bed');
  await page.keyboard.press('Control+v');
  const dialog = page.getByRole('dialog', { name: 'Paste into Beds' });
  await expect
    .poll(() => dialog.textContent())
    .toMatch(
      /From Bed, a new row: 2 lines of 3 columns into 2 new rows.*first line names columns.*1: Bed, 2: Field, 3: Length/,
    );
  expect(await dialog.getByLabel('The first line names the columns').isChecked()).toBe(true);
  await dialog.getByRole('button', { name: /^Paste 6 cells/ }).click();
  await expect.poll(() => book.read(spare + 1, 'Bed')).toBe('Ditch 2');
  expect(await book.read(spare, 'Length')).toBe('40.5');
  expect(await book.read(spare + 1, 'Length')).toMatch(/^1,?234$/);
  await expect.poll(() => selected(page)).toHaveLength(6);
  await undo(page);
  await expect.poll(() => spareRow(page)).toBe(spare);
});

test('a table pasted into an entry that is open lands in as many cells, never in one', async () => {
  const { book, page } = await at('Beds');
  const spare = await spareRow(page);
  await putOnClipboard(page, { text: 'Ditch 1\tDitch\nDitch 2\tDitch' });
  await page.getByRole('button', { name: 'Add a row' }).click();
  await page.locator('.entry-box').waitFor();
  await page.keyboard.press('Control+v');
  await expect.poll(() => book.read(spare + 1, 'Bed')).toBe('Ditch 2');
  expect(await book.read(spare, 'Bed')).toBe('Ditch 1');
});

test('what doesn’t fit is shown with the reason; it is mended, skipped, or all is left', async () => {
  const { book, page } = await at('Beds');
  const before = await book.read(1, 'Length');
  await putOnClipboard(page, { text: 'banana\n44\npear' });
  await book.press(1, 'Length');
  await page.keyboard.press('Control+v');
  const dialog = page.getByRole('dialog', { name: 'Paste into Beds' });
  await expect
    .poll(() => dialog.textContent())
    .toMatch(/From Length, .*3 lines of 1 column.*2 cells don’t fit.*banana/);
  await dialog.getByLabel('Entry of Length, line 1').fill('43');
  await page.keyboard.press('Tab');
  await expect.poll(() => dialog.textContent()).toMatch(/One cell doesn’t fit/);
  await dialog.getByRole('button', { name: /^Skip the one/ }).click();
  await dialog.getByRole('button', { name: /^Paste 2 cells/ }).click();
  await expect.poll(() => book.read(1, 'Length')).toBe('43');
  expect(await book.read(2, 'Length')).toBe('44');
  await undo(page);
  await expect.poll(() => book.read(1, 'Length')).toBe(before);
  await book.press(1, 'Length');
  await page.keyboard.press('Control+v');
  await dialog.getByRole('button', { name: 'Cancel' }).click();
  expect(await book.read(1, 'Length')).toBe(before);
  expect(await inHand(page)).toBe('1 length');
});

test('a table copied from another sheet says so before it lands', async () => {
  const { book, page } = await at('Trays');
  await book.press(0, 'Tray');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Control+c');
  await book.openSheet('Beds');
  await book.press(0, 'Bed');
  await page.keyboard.press('Control+v');
  const dialog = page.getByRole('dialog', { name: 'Paste into Beds' });
  await expect.poll(() => dialog.textContent()).toMatch(/copied from another sheet/);
  await dialog.getByRole('button', { name: 'Cancel' }).click();
});

test('an order of days that stays open is chosen for the whole block', async () => {
  const { book, page } = await at('Plantings');
  await putOnClipboard(page, { text: '3/4/2027\n5/4/2027' });
  await book.press(0, 'Sown');
  await page.keyboard.press('Control+v');
  const dialog = page.getByRole('dialog', { name: 'Paste into Plantings' });
  await expect.poll(() => dialog.textContent()).toMatch(/2 cells could be read in two ways.*4 Mar 2027/);
  await dialog.getByLabel('Days').selectOption('day/month');
  await expect.poll(() => dialog.textContent()).toMatch(/3 Apr 2027/);
  await dialog.getByRole('button', { name: /^Paste/ }).click();
  await expect.poll(() => book.read(1, 'Sown')).toBe('5 Apr 2027');
});

test('a block over a formula leaves it be, and says so; with Shift one column does too', async () => {
  const { book, page } = await at('Plantings');
  const before = await book.read(0, 'Stations');
  await putOnClipboard(page, { text: '250' });
  await book.press(0, 'Stations');
  await page.keyboard.press('Control+Shift+v');
  await expect.poll(() => book.message().textContent()).toMatch(/filled by their formulas/);
  expect(await book.read(0, 'Stations')).toBe(before);
  await book.press(0, 'Stations');
  await page.keyboard.press('Control+v');
  await expect.poll(() => book.read(0, 'Stations')).toBe('250');
});

test('what is copied comes as text and as a table; with headers where asked for', async () => {
  const { book, page } = await at('Beds');
  await book.type(0, 'Length', '61.5');
  await book.press(0, 'Length');
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Control+c');
  await expect.poll(() => clipboardText(page)).toMatch(/^61\.5\t[\d.]+$/);
  expect(await clipboardHtml(page)).toMatch(/<table.*<td[^>]*>61\.5<\/td>/s);
  await page.keyboard.press('Control+Shift+c');
  await expect.poll(() => clipboardText(page)).toMatch(/^Length \(ft\)\tWidth \(in\)\r?\n61\.5\t/);
  await book.type(0, 'Length', '40..50');
  await book.press(0, 'Length');
  await page.keyboard.press('Control+c');
  await expect.poll(() => clipboardText(page)).toBe('45');
  await book.press(1, 'Length');
  await page.keyboard.press('Control+v');
  await page.keyboard.press('F2');
  expect(await page.locator('.entry-box').inputValue()).toBe('40..50');
  await page.keyboard.press('Escape');
});

test('what is cut stays, marked, until it is pasted, and goes in the same step', async () => {
  const { book, page } = await at('Beds');
  await book.type(1, 'Length', '41');
  await book.press(1, 'Length');
  await page.keyboard.press('Control+x');
  await expect.poll(async () => (await book.cell(1, 'Length')).getAttribute('class')).toContain('is-cut');
  expect(await book.read(1, 'Length')).toBe('41');
  await book.press(4, 'Length');
  await page.keyboard.press('Control+v');
  await expect.poll(() => book.read(4, 'Length')).toBe('41');
  await expect.poll(async () => (await book.cell(1, 'Length')).getAttribute('class')).toContain('origin-default');
  await undo(page);
  await expect.poll(() => book.read(1, 'Length')).toBe('41');
  await book.press(1, 'Length');
  await page.keyboard.press('Control+x');
  await book.type(1, 'Length', '43');
  await expect.poll(() => book.message().textContent()).toMatch(/has changed since: it stays where it is/);
  await book.press(3, 'Length');
  await page.keyboard.press('Control+v');
  await expect.poll(() => book.read(3, 'Length')).toBe('41');
  expect(await book.read(1, 'Length')).toBe('43');
});
