// Every sheet, whole view, picture and page keeps to the accessibility guidelines that axe checks, in light and dark, at a
// desk and on the phone: two walks, each over one opened page. On the phone, where all sheets look alike, the short form looks at
// every third.

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { runs } from '../../runs.ts';
import { openWorkbook } from '../harness.ts';
import { faults, faultsInBoth } from './guidelines.ts';

/** Rows of the grid after the first two are like those, and the list of sheets is the same on every sheet. */
const LOOKED_AT = ['.ag-row:not([row-index="0"]):not([row-index="1"])', '.sheet-list', '.top-line', '.bottom-line'];

/** Sheets differ from one another in nothing that has a colour: contrast is looked at on these, in both. */
const IN_COLOUR = ['At a glance', 'Farm', 'Plantings', 'Weeks'];

async function sheetNames(page: Page): Promise<readonly string[]> {
  return page
    .getByRole('navigation', { name: 'Sheets' })
    .getByRole('button')
    .evaluateAll((buttons) =>
      buttons.flatMap((button) => button.querySelector('.sheet-name')?.textContent ?? button.textContent ?? []),
    );
}

test('at a desk', { timeout: 300_000 }, async () => {
  const { page, problems } = await openWorkbook({ width: 1440, height: 900 });
  const found: string[] = [];
  const look = async (where: string, colour: boolean): Promise<void> => {
    const without = LOOKED_AT;
    const lines = await (colour ? faultsInBoth(page, { without }) : faults(page, { without, rules: 'structure' }));
    found.push(...lines.map((line) => `${where}: ${line}`));
  };
  found.push(...(await faultsInBoth(page)));
  const sheets = page.getByRole('navigation', { name: 'Sheets' });
  for (const name of await sheetNames(page)) {
    if (/Fold|^\W*$/.test(name)) continue;
    await sheets
      .getByRole('button', { name: new RegExp(`^${name}`) })
      .first()
      .click();
    await page.locator('main [class*="role-"], main .field, main .empty, main.whole > *').first().waitFor();
    await look(name, IN_COLOUR.includes(name));
  }
  for (const whole of ['Pictures', 'Paper']) {
    await sheets.getByRole('button', { name: whole, exact: true }).click();
    const pages = page.locator('main nav button');
    await pages.first().waitFor();
    for (let at = 0; at < (await pages.count()); at += 1) {
      await pages.nth(at).click();
      await look(`${whole} ${at}`, true);
    }
  }

  await sheets.getByRole('button', { name: /^Plantings/ }).click();
  const cell = page.locator('.ag-row[row-index="0"] .ag-cell[col-id="variety"]');
  await cell.click();
  await page.locator('.key-figure', { hasText: 'Stations' }).click();
  await page.getByRole('button', { name: 'How it is worked out' }).first().click();
  await look('reasons', true);
  await cell.click({ button: 'right' });
  await page.getByRole('menu').waitFor();
  await look('menu', true);
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+h');
  await page.getByLabel('Put instead').waitFor();
  await look('find', true);
  expect(found).toEqual([]);
  expect(problems).toEqual([]);
});

test('on the phone', { timeout: 300_000 }, async () => {
  const { page, problems } = await openWorkbook({ width: 390, height: 844 });
  const found: string[] = [];
  const look = async (where: string, colour: boolean): Promise<void> => {
    const without = ['.phone-cards li + li + li'];
    const lines = await (colour ? faultsInBoth(page, { without }) : faults(page, { without, rules: 'structure' }));
    found.push(...lines.map((line) => `${where}: ${line}`));
  };
  const bar = page.getByRole('navigation', { name: 'Places' });
  await page.locator('.today').waitFor();
  for (const place of await bar.getByRole('button').all()) {
    await place.click();
    await look((await place.textContent()) ?? '', true);
  }
  const toSheets = (): Promise<void> => bar.getByRole('button', { name: 'Sheets' }).click();
  await toSheets();
  const listed = page.locator('.phone-question .phone-list button');
  await listed.first().waitFor();
  const count = await listed.count();
  for (let at = 0; at < count; at += runs(3, 1)) {
    const name = (await listed.nth(at).locator('.phone-name').textContent()) ?? '';
    const colour = IN_COLOUR.includes(name);
    await listed.nth(at).click();
    await page.locator('.phone-about').waitFor();
    // Lists of cards are alike; of each sheet its first card is looked at.
    if (colour) await look(name, colour);
    const card = page.locator('.phone-cards button').first();
    if ((await card.count()) > 0) {
      await card.click();
      await page.locator('article.card').waitFor();
      await look(`a card of ${name}`, colour);
    }
    await toSheets();
    await listed.first().waitFor();
  }
  expect(found).toEqual([]);
  expect(problems).toEqual([]);
});
