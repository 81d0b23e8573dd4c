// Sheets of one's own on the page: one added, its columns and checks, the gallery; a built-in formula changed with its figures side
// by side, and taken back.

import { expect, test } from 'vitest';
import { faults } from '../looks/guidelines.ts';
import { atOnionSheet, oneOnionPage } from '../one-page.ts';

test('a sheet is added, named, given a check, removed, and others come from the gallery', async () => {
  const { page } = await oneOnionPage();
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Sheets of your own' }).click();
  const dialog = page.getByRole('dialog', { name: 'Sheets of your own' });
  await dialog.getByRole('textbox', { name: 'Name', exact: true }).fill('Bed notes');
  await dialog.getByLabel('Its rows').selectOption('each');
  await dialog.getByRole('button', { name: 'Add the sheet' }).click();
  const name = dialog.getByRole('textbox', { name: 'Its name' });
  await expect.poll(() => name.inputValue()).toBe('Bed notes');
  await name.fill('Bed diary');
  await name.press('Enter');
  await page.locator('.sheet-list').getByText('Bed diary').waitFor();
  // What there is to save and to choose from is as it stands.
  await dialog.getByRole('button', { name: 'Save Bed diary as a file' }).waitFor();
  expect(await dialog.getByLabel('Of the sheet').locator('option').allTextContents()).toContain('Bed diary');
  await name.fill('Beds');
  await name.press('Enter');
  await dialog.getByRole('alert').waitFor();
  expect(await name.inputValue()).toBe('Bed diary');
  await dialog.getByText(/^Checks/).click();
  await dialog.getByRole('textbox', { name: 'Name of a new check' }).fill('Long');
  const sentence = dialog.getByRole('textbox', { name: 'Its sentence' });
  await sentence.fill('[Bed].[Length] > 1 ft');
  await dialog.getByRole('button', { name: 'Add the check' }).click();
  await dialog.getByText('write IF([Bed].[Length] > 1 ft; "...")').waitFor();
  expect(await sentence.inputValue()).toBe('[Bed].[Length] > 1 ft');
  await sentence.fill('IF([Bed].[Length] > 1 ft; "Longer than a foot.")');
  await dialog.getByRole('button', { name: 'Add the check' }).click();
  await dialog.getByText('Long, warning').waitFor();
  await dialog.getByRole('button', { name: 'Change Long' }).click();
  expect(await sentence.inputValue()).toBe('IF([Bed].[Length] > 1 ft; "Longer than a foot.")');
  // What is left is as it was, and what is written then is a new check.
  const nameOfCheck = dialog.getByRole('textbox', { name: /^Name of (the|a new) check$/ });
  await dialog.getByRole('button', { name: 'Leave it as it is' }).click();
  await dialog.getByRole('button', { name: 'Add the check' }).waitFor();
  expect([await nameOfCheck.inputValue(), await sentence.inputValue()]).toEqual(['', '']);
  expect(await nameOfCheck.evaluate((field) => field === document.activeElement)).toBe(true);
  await dialog.getByRole('button', { name: 'Change Long' }).click();
  expect(await nameOfCheck.evaluate((field) => field === document.activeElement)).toBe(true);
  await dialog.getByRole('combobox', { name: 'Level' }).selectOption('note');
  await dialog.getByRole('button', { name: 'Change the check' }).click();
  await dialog.getByText('Long, note').waitFor();
  expect(await dialog.getByText(/^Long, /).count()).toBe(1);
  expect(await faults(page, { within: 'dialog.own' })).toEqual([]);
  const choosing = page.waitForEvent('filechooser');
  await dialog.getByRole('button', { name: 'Bring in sheets from a file' }).click();
  const file = { name: 'notes.json', mimeType: 'application/json', buffer: Buffer.from('{"beds": 3}') };
  await (await choosing).setFiles(file);
  await dialog.getByText('This is no file of sheets.').waitFor();
  await dialog.getByRole('button', { name: 'Bring in Egg count' }).click();
  await dialog.waitFor({ state: 'detached' });
  await page.locator('.sheet-list').getByText('Egg count').waitFor();
  await page.locator('.sheet-list').getByText('Bed diary').click();
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Sheets of your own' }).click();
  await dialog.getByRole('button', { name: 'Remove it' }).click();
  await dialog.getByRole('button', { name: 'Save Bed diary as a file' }).waitFor({ state: 'detached' });
  await dialog.getByRole('button', { name: 'Save Egg count as a file' }).waitFor();
  await page.keyboard.press('Escape');
  await page.locator('.top-acts').getByRole('button', { name: /^Undo/ }).click();
  await page.locator('.top-acts').getByRole('button', { name: /^Undo/ }).click();
  await page.locator('.sheet-list').getByText('Egg count').waitFor({ state: 'detached' });
});

test('a built-in formula is tried side by side, taken, and given back', async () => {
  const { book, page } = await atOnionSheet('Beds');
  const open = async () => {
    await (await book.header('Area')).click({ button: 'right' });
    await page.getByRole('menuitem', { name: 'Change the formula side by side' }).click();
  };
  await open();
  const dialog = page.locator('dialog.own');
  const formula = dialog.getByRole('textbox', { name: 'Formula' });
  const before = await formula.inputValue();
  await formula.fill('[Lenght]');
  await dialog.getByRole('button', { name: 'Compare', exact: true }).click();
  await dialog.getByRole('alert').waitFor();
  await formula.fill(`(${before}) * 2`);
  await dialog.getByRole('button', { name: 'Compare', exact: true }).click();
  await dialog.getByText(/of \d+ rows change\./).waitFor();
  expect(await faults(page, { within: 'dialog.own' })).toEqual([]);
  const take = async () => {
    await dialog.getByRole('button', { name: 'Take it' }).click();
    await dialog.waitFor({ state: 'detached' });
  };
  await take();
  // What is compared last is what is taken, whatever stands in the box.
  await open();
  expect(await formula.inputValue()).not.toBe(before);
  await dialog.getByRole('button', { name: "Compare with the sheet's own" }).click();
  await dialog.getByText("The new formula is the sheet's own.").waitFor();
  await take();
  await open();
  expect(await formula.inputValue()).toBe(before);
  await formula.fill(`(${before}) * 2`);
  await dialog.getByRole('button', { name: 'Compare', exact: true }).click();
  await take();
  await open();
  await dialog.getByRole('button', { name: "Return to the sheet's own" }).click();
  await dialog.waitFor({ state: 'detached' });
  await open();
  expect(await formula.inputValue()).toBe(before);
});
