// Every sheet and page, looked at once: it opens without an error, shows in its first row what the engine gives, and keeps to the
// accessibility guidelines that axe checks, in light and dark, at a desk and on the phone. Two walks, each over one opened page; the
// tests say what each walk found. On the phone, where all sheets look alike, the short form looks at every third. Pictures are
// looked at in pictures.test.ts, dialogs in dialogs.test.ts.

import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type CellView, cellView } from '../../../engine/index.ts';
import { runs } from '../../runs.ts';
import { drawFrames, type OpenedWorkbook, openWorkbook } from '../harness.ts';
import { faults, faultsInBoth } from '../looks/guidelines.ts';
import { demoAsItComes, WorkbookPage } from '../workbook-page.ts';

/** Rows of the grid after the first two are like those, and the list of sheets is the same on every sheet. */
const LOOKED_AT = ['.ag-row:not([row-index="0"]):not([row-index="1"])', '.sheet-list', '.top-line', '.bottom-line'];

/** Sheets differ from one another in nothing that has a colour: contrast is looked at on these, in both. */
const IN_COLOUR = ['Farm', 'Plantings', 'Weeks'];

describe('at a desk', () => {
  const found: string[] = [];
  const differing: string[] = [];
  let opened: OpenedWorkbook | undefined;

  beforeAll(async () => {
    opened = await openWorkbook({ width: 1440, height: 900, stays: true });
    const { page } = opened;
    const book = new WorkbookPage(page);
    const demo = demoAsItComes();
    const look = async (where: string, colour: boolean): Promise<void> => {
      const without = LOOKED_AT;
      const lines = await (colour ? faultsInBoth(page, { without }) : faults(page, { without, rules: 'structure' }));
      found.push(...lines.map((line) => `${where}: ${line}`));
    };
    await page.getByRole('heading', { name: 'This week' }).waitFor();
    found.push(...(await faultsInBoth(page)));
    const inColour = demo.tables().filter(({ name }) => IN_COLOUR.includes(name));
    const others = demo.tables().filter((sheet) => !inColour.includes(sheet));
    for (const sheet of [...inColour, ...others]) {
      // What has no colour to look at needs no more than the first rows in sight, which are sooner drawn.
      if (sheet === others[0]) await page.setViewportSize({ width: 1440, height: 480 });
      await book.comeTo(sheet.name);
      await page.locator('main [class*="role-"], main .field, main .empty').first().waitFor();
      const [first] = demo.rows(sheet.name);
      if (!sheet.oneRow && first !== undefined) {
        const wrong = await wrongCells(page, (column) => cellView(demo.workbook, sheet.id, first, column));
        differing.push(...wrong.map((cell) => `${sheet.name}: ${cell}`));
      }
      await look(sheet.name, IN_COLOUR.includes(sheet.name));
    }
    await page.setViewportSize({ width: 1440, height: 900 });
    const sheets = page.getByRole('navigation', { name: 'Sheets' });
    await sheets.getByRole('button', { name: 'Paper', exact: true }).click();
    const pages = page.locator('main nav button');
    await pages.first().waitFor();
    for (let at = 0; at < (await pages.count()); at += 1) {
      await pages.nth(at).click();
      await look(`Paper ${at}`, true);
    }

    await book.comeTo('Plantings');
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
  }, 300_000);

  afterAll(() => opened?.close());

  test('every sheet shows the rows the engine gives', () => {
    expect(differing).toEqual([]);
  });

  test('every sheet and page keeps to the guidelines', () => {
    expect(found).toEqual([]);
  });

  test('no sheet opens with an error', () => {
    expect(opened?.problems).toEqual([]);
  });
});

/** The cells of the first row on screen that don't read as they should, once the grid has drawn what stands in it. */
async function wrongCells(page: Page, right: (column: string) => CellView): Promise<readonly string[]> {
  const shown = page.locator('.ag-row[row-index="0"] .ag-cell[class*="role-"]');
  await shown.first().waitFor();
  const wrong = async (): Promise<readonly string[]> => {
    const drawn = await shown.evaluateAll((cells) =>
      cells.map((cell) => [cell.getAttribute('col-id') ?? '', cell.textContent.replaceAll('\u00a0', ' ')] as const),
    );
    if (drawn.length === 0) return ['no cell'];
    return drawn.flatMap(([column, text]) => (reads(text, right(column)) ? [] : [`${column} reads ${text}`]));
  };
  // The grid lays a row out before it draws what stands in it.
  let last = await wrong();
  for (const given = Date.now() + 10_000; last.length > 0 && Date.now() < given; last = await wrong())
    await drawFrames(page);
  return last;
}

function reads(text: string, view: CellView): boolean {
  if (typeof view.value === 'object' && view.value !== null) return true;
  return view.ends === '' ? text === view.text : text.startsWith(view.figure) && text.includes(`(${view.ends})`);
}

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
  await page.locator('.phone-list button', { hasText: 'Plantings' }).first().click();
  await page.locator('.phone-search').fill('Keeper clumps');
  await page.locator('.phone-cards button', { hasText: 'Keeper clumps' }).first().click();
  await page.locator('.chart').first().waitFor();
  await look('a card with a curve', true);
  expect(found).toEqual([]);
  expect(problems).toEqual([]);
});
