// Every dialog keeps to the accessibility guidelines that axe checks, with all that folds out of it, in light and dark, at a desk and on
// the phone, where the same dialogs lie over the cards: one walk over one opened page.

import { expect, test } from 'vitest';
import { fileOnEarlierSheets } from '../earlier-file.ts';
import { putOnClipboard } from '../hands/hands.ts';
import { faultsInBoth } from '../looks/guidelines.ts';
import { openSmallWorkbook } from '../small-workbook.ts';
import { WorkbookPage } from '../workbook-page.ts';

const DESK = { width: 1440, height: 900 };
const PHONE = { width: 390, height: 844 };

test('in every dialog', { timeout: 300_000 }, async () => {
  const { page, problems } = await openSmallWorkbook(DESK);
  const book = new WorkbookPage(page);
  const dialog = page.getByRole('dialog');
  const found: string[] = [];
  const look = async (name: string): Promise<void> => {
    await page.evaluate(() => {
      for (const folded of document.querySelectorAll<HTMLDetailsElement>('dialog details')) folded.open = true;
    });
    for (const size of [DESK, PHONE]) {
      await page.setViewportSize(size);
      await page.locator(size === DESK ? '.desk' : '.phone').waitFor();
      const lines = await faultsInBoth(page, { within: 'dialog' });
      found.push(...lines.map((line) => `${name} at ${size.width}: ${line}`));
      const wide = await dialog.evaluate((box) => box.scrollWidth - box.clientWidth);
      if (wide > 0) found.push(`${name} at ${size.width}: ${wide} px wider than the window`);
    }
    await page.setViewportSize(DESK);
    await page.locator('.desk').waitFor();
  };
  const leave = async (): Promise<void> => {
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
  };
  const menu = async (item: string): Promise<void> => {
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('menuitem', { name: item }).first().click();
  };
  const ofColumn = async (name: string, item: RegExp): Promise<void> => {
    await (await book.header(name)).click({ button: 'right' });
    await page.getByRole('menuitem', { name: item }).click();
  };
  const ofView = async (item: RegExp): Promise<void> => {
    await page.getByRole('button', { name: 'View', exact: true }).click();
    await page.getByRole('menuitem', { name: item }).click();
  };
  const paste = async (text: string): Promise<void> => {
    await putOnClipboard(page, { text });
    await book.press(1, 'Length');
    await page.keyboard.press('Control+v');
  };
  const choose = async (button: string, file: { name: string; mimeType: string; buffer: Buffer }): Promise<void> => {
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: button, exact: true }).click();
    await (await chooser).setFiles(file);
  };
  const csv = (text: string) => ({ name: 'beds.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });

  await book.openSheet('Beds');
  const dialogs: Readonly<Record<string, () => Promise<unknown>>> = {
    workbooks: () => menu('Workbooks in this browser'),
    versions: () => menu('Versions'),
    'own sheets': () => menu('Sheets of your own'),
    'what if': () => menu('What if'),
    writing: () => menu('How figures and days'),
    keys: () => page.keyboard.press('F1'),
    filter: () => ofColumn('Length', /^Filter by/),
    'filter of a choice': () => ofColumn('Field', /^Filter by/),
    colours: () => ofColumn('Length', /^Colour .* by rule/),
    columns: () => ofColumn('Length', /^Choose the columns/),
    'a new view': () => ofView(/^A new view/),
    'a column': () => ofColumn('Length', /^Add a column/),
    'a formula tried': async () => {
      await ofColumn('Area', /^Change the formula side by side/);
      await dialog.getByRole('textbox', { name: 'Formula' }).fill('[Length] * [Width] * 2');
      await dialog.getByRole('button', { name: 'Compare', exact: true }).click();
      await dialog.getByRole('table').first().waitFor();
    },
    'a formula with a fault': async () => {
      await ofColumn('Area', /^Change the formula side by side/);
      await dialog.getByRole('textbox', { name: 'Formula' }).fill('[Lenght]');
      await dialog.getByRole('button', { name: 'Compare', exact: true }).click();
      await dialog.getByRole('alert').waitFor();
    },
    note: async () => {
      await book.press(1, 'Length');
      await page.keyboard.press('Shift+F2');
    },
    'a paste with cells that do not fit': () => paste('banana\t30\n44\tpear'),
    'a paste with names of columns': () => paste('Length\tWidth\n40\t30'),
    'rows of a file': async () => {
      await choose('Import rows', csv('Bed,Length (ft)\nNew 1,40\nNew 2,44\n'));
      await expect.poll(() => dialog.textContent()).toMatch(/2 (new )?rows/);
    },
    'rows of a file with faults': async () => {
      await choose('Import rows', csv('Name;Long (m)\nNew 1;banana\nNew 2;44\n'));
      await expect.poll(() => dialog.textContent()).toMatch(/no column Bed/);
    },
  };
  for (const [name, open] of Object.entries(dialogs)) {
    await open();
    await dialog.waitFor();
    await look(name);
    await leave();
  }
  await choose('Open', {
    name: 'season.json',
    mimeType: 'application/json',
    buffer: Buffer.from(await fileOnEarlierSheets()),
  });
  await dialog.waitFor();
  await look('an upgrade');
  expect(found).toEqual([]);
  expect(problems).toEqual([]);
});
