// The formula line as a person uses it: reading a column's formula, being told what is wrong with a new one and where,
// completing names, changing a formula for all rows, and nothing typed being lost.

import type { Locator } from 'playwright-core';
import { expect, test } from 'vitest';
import { atOnionSheet } from '../one-page.ts';

async function openAtStations() {
  const opened = await atOnionSheet('Plantings');
  await opened.book.press(0, 'Stations');
  return opened;
}

test('a formula that adds a count to a length is refused, the offending part underlined, and kept as typed', async () => {
  const { book, page, problems } = await openAtStations();
  const formula = await book.formulaBox().inputValue();
  expect(formula).toMatch(/^=/);
  const wrong = '=[Rows] + [In-row spacing]';
  await book.formulaBox().fill(wrong);
  await expect
    .poll(() => book.formulaAnswer().textContent())
    .toMatch(/\[Rows\].*plain number.*\[In-row spacing\].*length/);
  const marked = page.locator('.formula-behind mark');
  expect(wrong).toContain((await marked.textContent()) ?? 'nothing marked');
  await page.keyboard.press('Enter');
  expect(await book.formulaBox().inputValue()).toBe(wrong);
  await book.press(2, 'Bed');
  expect(await book.formulaBox().inputValue()).toBe(wrong);
  await book.formulaBox().focus();
  await page.keyboard.press('Escape');
  await book.press(0, 'Stations');
  await expect.poll(() => book.formulaBox().inputValue()).toBe(formula);
  expect(await book.undoButton().isDisabled()).toBe(true);

  await book.formulaBox().fill('=1 lb + 2 in');
  await expect.poll(() => book.formulaAnswer().textContent()).toMatch(/1 lb is a mass.*2 in is a length/);
  expect(await marked.textContent()).toBe('2 in');
  // What is said of functions that are not here is fetched once the page stands.
  const saidOf = async (formula: string): Promise<string | null> => {
    await book.formulaBox().fill('=');
    await book.formulaBox().fill(formula);
    return book.formulaAnswer().textContent();
  };
  await expect.poll(() => saidOf('=OFFSET([Bed length used]; 1)')).toMatch(/no OFFSET here.*Use instead: .*XLOOKUP/);
  await page.keyboard.press('Escape');
  expect(problems).toEqual([]);
});

test('a formula is changed for every row, what rests on it follows, and undo brings it back', async () => {
  const { book, page } = await openAtStations();
  const before = [await book.read(0, 'Stations'), await book.read(1, 'Stations'), await book.read(0, 'Plant density')];
  await book.press(0, 'Stations');
  const formula = await book.formulaBox().inputValue();
  await book.formulaBox().fill(`${formula} * 2`);
  await expect.poll(() => book.formulaAnswer().textContent()).toMatch(/Gives a plain number/);
  await page.keyboard.press('Enter');
  await expect.poll(() => book.read(0, 'Stations')).toBe(String(Number(before[0]) * 2));
  await expect.poll(() => book.read(1, 'Stations')).toBe(String(Number(before[1]) * 2));
  await expect.poll(() => book.read(0, 'Plant density')).not.toBe(before[2]);
  await book.press(0, 'Stations');
  await page.keyboard.press('Control+z');
  await expect
    .poll(async () => [
      await book.read(0, 'Stations'),
      await book.read(1, 'Stations'),
      await book.read(0, 'Plant density'),
    ])
    .toEqual(before);
});

test('a circle is named in full and not taken', async () => {
  const { book, page } = await openAtStations();
  await book.formulaBox().fill('=[Seeds needed] * 2');
  await page.keyboard.press('Enter');
  await expect.poll(() => book.formulaAnswer().textContent()).toMatch(/circle: .*\[Seeds needed\] reads \[Stations\]/);
  expect(await book.formulaBox().inputValue()).toBe('=[Seeds needed] * 2');
  await page.keyboard.press('Escape');
  await expect.poll(() => book.read(0, 'Stations')).toMatch(/^\d+$/);
  expect(await book.undoButton().isDisabled()).toBe(true);
});

test('names are completed, the part of a function that is being typed is shown, and = in the grid begins a formula', async () => {
  const { book, page } = await openAtStations();
  const formula = await book.formulaBox().inputValue();
  await page.keyboard.type('=');
  await expect.poll(() => book.formulaBox().evaluate((box) => box === document.activeElement)).toBe(true);
  await page.keyboard.type('STATIONS([Bed le');
  const list = page.getByRole('listbox', { name: 'What could stand here' });
  await expect.poll(() => list.getByRole('option').first().textContent()).toMatch(/^Bed length used/);
  await page.keyboard.press('Tab');
  await expect.poll(() => book.formulaBox().inputValue()).toBe('=STATIONS([Bed length used]');
  await page.keyboard.type('; ');
  await expect.poll(() => page.locator('.call-help b').textContent()).toMatch(/spacing/);
  await page.keyboard.press('Escape');
  await expect.poll(() => book.formulaBox().inputValue()).toBe(formula);
});

test('an entry is typed in the line under the same rules, and an override is taken back from it', async () => {
  const { book, page } = await openAtStations();
  const before = await book.read(0, 'Stations');
  await book.formulaBox().fill('many');
  await expect.poll(() => book.formulaAnswer().textContent()).toMatch(/many/);
  await book.formulaBox().fill('280');
  await page.keyboard.press('Enter');
  await expect.poll(() => book.read(0, 'Stations')).toBe('280');
  await page.getByRole('region', { name: 'Formula' }).getByRole('button', { name: 'Take back to the formula' }).click();
  await expect.poll(() => book.read(0, 'Stations')).toBe(before);
});

test('a column of one’s own is added with a formula, refused while it is wrong, and removed again', async () => {
  const { book, page } = await atOnionSheet('Beds');
  await (await book.header('Length')).click({ button: 'right' });
  await page.getByRole('menuitem', { name: 'Add a column' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Name').fill('Half length');
  await dialog.getByLabel('Formula').fill('=[Length] + [Area]');
  await expect.poll(() => dialog.getByRole('status').textContent()).toMatch(/\[Length\].*\[Area\]/);
  await dialog.getByRole('button', { name: 'Add the column' }).click();
  expect(await dialog.getByRole('alert').textContent()).toMatch(/\[Length\].*\[Area\]/);
  await dialog.getByLabel('Formula').fill('=[Length] / 2');
  await expect.poll(() => dialog.getByRole('status').textContent()).toBe('Gives a length in ft.');
  await dialog.getByRole('button', { name: 'Add the column' }).click();
  await expect.poll(() => book.read(0, 'Half length')).toBe('25');
  await (await book.header('Half length')).click({ button: 'right' });
  await page.getByRole('menuitem', { name: 'Remove Half length' }).click();
  await expect.poll(() => page.locator('.column-name', { hasText: 'Half length' }).count()).toBe(0);
});

test('a column of choices and one that leads to another sheet are added and filled', async () => {
  const { book, page } = await atOnionSheet('Beds');
  const add = async (beside: string, name: string, kind: string, take: (dialog: Locator) => Promise<unknown>) => {
    await (await book.header(beside)).click({ button: 'right' });
    await page.getByRole('menuitem', { name: 'Add a column' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Name').fill(name);
    await dialog.getByLabel('What fills it').selectOption(kind);
    await take(dialog);
    await dialog.getByRole('button', { name: 'Add the column' }).click();
    await dialog.waitFor({ state: 'detached' });
  };
  await add('Length', 'Look', 'choice', (dialog) => dialog.getByLabel('Choices').fill('good; fair; poor'));
  await book.type(0, 'Look', 'fair');
  await expect.poll(() => book.read(0, 'Look')).toBe('fair');
  await add('Look', 'Last variety', 'link', (dialog) => dialog.getByLabel('Of the sheet').selectOption('Varieties'));
  await book.type(0, 'Last variety', 'Lamplight');
  await expect.poll(() => book.read(0, 'Last variety')).toBe('Lamplight');
});

test('an own formula stands with the sheet’s own beside it, which is taken back', async () => {
  const { book, page } = await openAtStations();
  const before = await book.read(0, 'Stations');
  await book.press(0, 'Stations');
  const formula = await book.formulaBox().inputValue();
  const line = page.getByRole('region', { name: 'Formula' });
  expect(await line.locator('.formula-beneath').count()).toBe(0);
  await book.formulaBox().fill(`${formula} * 2`);
  await page.keyboard.press('Enter');
  await expect.poll(() => book.read(0, 'Stations')).toBe(String(Number(before) * 2));
  await book.press(0, 'Stations');
  await expect.poll(() => line.locator('.formula-beneath').textContent()).toBe(formula);
  await line.getByRole('button', { name: "Take the sheet's own back" }).click();
  await expect.poll(() => book.read(0, 'Stations')).toBe(before);
  expect(await book.formulaBox().inputValue()).toBe(formula);
  await page.keyboard.press('Control+z');
  await expect.poll(() => book.read(0, 'Stations')).toBe(String(Number(before) * 2));
});

test('a formula with a unit in general use is understood once the list of them has come', async () => {
  const { book, page } = await openAtStations();
  const before = await book.read(0, 'Stations');
  await book.press(0, 'Stations');
  // 1 rod is 16 1/2 ft, so that a bed of 50 ft is three rods and a bit.
  await book.formulaBox().fill('=ROUNDDOWN([Bed length used] / 1 rod)');
  await expect.poll(() => book.formulaAnswer().textContent()).toMatch(/Gives a plain number/);
  await page.keyboard.press('Enter');
  await expect.poll(() => book.read(0, 'Stations')).toBe('3');
  await book.press(0, 'Stations');
  await page.keyboard.press('Control+z');
  await expect.poll(() => book.read(0, 'Stations')).toBe(before);
});
