// Paper, as a person prints: pages without the program around them, heads that repeat, page numbers; any sheet prints whole though its
// grid draws only what is in sight.

import { inflateSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openWorkbook } from '../harness.ts';
import { onePage } from '../one-page.ts';

async function openView(page: Page, name: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name, exact: true }).click();
}

/** Millimetres on paper in pixels of a page. */
function toPixels(millimetres: number): number {
  return (millimetres * 96) / 25.4;
}

/** How many pages a PDF of the page has. */
async function pages(page: Page, format: 'Letter' | 'A4' = 'Letter'): Promise<number> {
  const pdf = await page.pdf({ format, preferCSSPageSize: true });
  return pdf.toString('latin1').match(/\/Type\s*\/Page(?!s)/g)?.length ?? 0;
}

/** How many texts stand on each page of a PDF of the page. */
async function textsByPage(page: Page): Promise<readonly number[]> {
  const pdf = await page.pdf({ format: 'Letter', preferCSSPageSize: true });
  const text = pdf.toString('latin1');
  return [...text.matchAll(/stream\r?\n/g)].flatMap(({ 0: mark, index }) => {
    const start = index + mark.length;
    const inflated = inflate(pdf.subarray(start, text.indexOf('endstream', start)));
    return /\bBT\b/.test(inflated) ? [inflated.match(/\bT[jJ]\b/g)?.length ?? 0] : [];
  });
}

/** '' where a stream is no deflated text. */
function inflate(stream: Uint8Array): string {
  try {
    return inflateSync(stream).toString('latin1');
  } catch {
    return '';
  }
}

test('no head of a table stands at the foot of a page without a row', async () => {
  const { page } = await onePage();
  await openView(page, 'Paper');
  await page.getByRole('navigation', { name: 'Pages' }).getByRole('button', { name: 'Any sheet' }).click();
  await page.locator('.paper-choices select').first().selectOption({ label: 'Suppliers' });
  const table = page.locator('.paper table').first();
  await table.waitFor();
  // The farm's name over the names of the columns, and what stands over all.
  const head = (await table.locator('thead th').count()) + 1 + (await table.locator('caption').count());
  const first: number[] = [];
  for (let down = 760; down <= 960; down += 10) {
    await table.evaluate((element, pixels) => {
      element.style.marginTop = `${pixels}px`;
    }, down);
    first.push((await textsByPage(page))[0] ?? 0);
  }
  const least = Math.min(...first);
  const begun = first.filter((count) => count > least);
  expect(begun.length).toBeGreaterThan(0);
  expect(begun.length).toBeLessThan(first.length);
  expect(Math.min(...begun) - least).toBeGreaterThan(head);
  await table.evaluate((element) => {
    element.style.marginTop = '';
  });
});

test('a week of jobs is on two pages at most, with a box before each, and nothing of the program', async () => {
  const { page, problems } = await openWorkbook({ width: 1440, height: 900, colorScheme: 'dark' });
  await openView(page, 'Paper');
  // The fullest weeks of the demo farm's season.
  for (const [day, week, jobs] of [
    ['2027-07-14', 'Jobs of week 28, 12 Jul 2027 to 18 Jul 2027', 97],
    ['2027-08-04', 'Jobs of week 31, 2 Aug 2027 to 8 Aug 2027', 97],
  ] as const) {
    await page.getByLabel('A day of the week').fill(day);
    await page.getByRole('heading', { name: week }).waitFor();
    expect(await page.locator('.paper-box').count()).toBe(jobs);
    expect(await pages(page), week).toBeLessThanOrEqual(2);
  }
  await page.emulateMedia({ media: 'print' });
  for (const part of ['.top-line', '.sheet-list', '.bottom-line', '.paper-choices']) {
    expect(await page.locator(part).first().isVisible(), part).toBe(false);
  }
  expect(await page.locator('.paper-running').first().isVisible()).toBe(true);
  expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe('rgb(255, 255, 255)');
  // As wide as what is printed on Letter: there is room for a hand in the columns to be written in.
  await page.setViewportSize({ width: Math.round(toPixels(192)), height: 900 });
  for (const [name, millimetres] of [
    ['Who', 12],
    ['Took', 12],
    ['Notes', 22],
  ] as const) {
    const head = await page.getByRole('columnheader', { name, exact: true }).boundingBox();
    expect(head?.width, name).toBeGreaterThan(toPixels(millimetres));
  }
  expect(problems).toEqual([]);
});

test('every kind of pages shows itself and prints', async () => {
  const { page } = await onePage();
  await openView(page, 'Paper');
  const kinds = page.getByRole('navigation', { name: 'Pages' });
  for (const [name, shows] of [
    ['Sowing list', '.paper table'],
    ['Orders', '.paper table'],
    ['Labels', '.label'],
    ['Beds of a week', '.bed-map'],
    ['Calendar of beds', '.season-calendar'],
  ] as const) {
    await kinds.getByRole('button', { name, exact: true }).click();
    await page.locator(shows).first().waitFor();
    expect(await pages(page), name).toBeGreaterThan(0);
  }
  // A drawing of beds stands on a page of its own, and nothing on a further one.
  await kinds.getByRole('button', { name: 'Calendar of beds' }).click();
  await page.locator('.season-calendar').first().waitFor();
  const drawings = await page.locator('.season-calendar').count();
  expect(drawings).toBeGreaterThan(1);
  for (const format of ['Letter', 'A4'] as const) expect(await pages(page, format)).toBe(drawings);
});

test('the calendar among the pictures prints a page a drawing, its title over the first, and the glance one page more', async () => {
  const { page } = await onePage();
  const drawings = async (): Promise<number> => {
    await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
    const count = await page.locator('.one-drawing').count();
    await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    return count;
  };
  await page.locator('.season-calendar').waitFor();
  const many = await drawings();
  expect(many).toBeGreaterThan(1);
  for (const format of ['Letter', 'A4'] as const) expect(await pages(page, format)).toBe(many + 1);
  await openView(page, 'Pictures');
  await page.locator('.picture-page .season-calendar').waitFor();
  for (const format of ['Letter', 'A4'] as const) expect(await pages(page, format)).toBe(many);
});

test('labels take a page a sheet of labels, of that sheet’s own size', async () => {
  const { page } = await onePage();
  await openView(page, 'Paper');
  await page.getByRole('navigation', { name: 'Pages' }).getByRole('button', { name: 'Labels', exact: true }).click();
  await page.locator('.label').first().waitFor();
  const grids = page.getByLabel('Sheet of labels');
  for (const name of await grids.locator('option').allInnerTexts()) {
    await grids.selectOption({ label: name });
    const sheets = await page.locator('.label-sheet').count();
    expect(sheets, name).toBeGreaterThan(1);
    await page.getByText(`labels on ${sheets} sheets`).waitFor();
    for (const format of ['Letter', 'A4'] as const) expect(await pages(page, format), name).toBe(sheets);
  }
  // The sheets in the printer are the same after a look at other pages.
  const chosen = await grids.inputValue();
  const kinds = page.getByRole('navigation', { name: 'Pages' });
  await kinds.getByRole('button', { name: 'Orders', exact: true }).click();
  await grids.waitFor({ state: 'detached' });
  await kinds.getByRole('button', { name: 'Labels', exact: true }).click();
  expect(await grids.inputValue()).toBe(chosen);
});

test('a sheet prints whole, and is the sheet again afterwards', async () => {
  const { page } = await onePage();
  await page
    .getByRole('navigation', { name: 'Sheets' })
    .getByRole('button', { name: /^Beds\s*(,|\d|$)/ })
    .click();
  await page.locator('.ag-row').first().waitFor();
  const printed = await page.evaluate(() => {
    window.dispatchEvent(new Event('beforeprint'));
    const rows = document.querySelectorAll('.print-only table:first-of-type tbody tr').length;
    window.dispatchEvent(new Event('afterprint'));
    return { rows, left: document.querySelectorAll('.print-only').length };
  });
  expect(printed.rows).toBeGreaterThanOrEqual(16);
  expect(printed.left).toBe(0);
  expect(await pages(page)).toBeGreaterThan(0);
  expect(await page.locator('.ag-row').first().isVisible()).toBe(true);
});

test('a sheet that is looked at through a view prints through it, and so it stands among the pages at first', async () => {
  const { page } = await onePage();
  await page
    .getByRole('navigation', { name: 'Sheets' })
    .getByRole('button', { name: /^Plantings/ })
    .click();
  const views = page.getByRole('navigation', { name: 'Views of this sheet' });
  await views.getByRole('button', { name: 'How close?' }).click();
  await page.locator('.ag-row').first().waitFor();
  const printed = await page.evaluate(() => {
    window.dispatchEvent(new Event('beforeprint'));
    const texts = (of: string): string[] =>
      [...document.querySelectorAll(`.print-only ${of}`)].map((each) => each.textContent?.split(', ')[0] ?? '');
    const all = { titles: texts('h2'), heads: texts('thead th') };
    window.dispatchEvent(new Event('afterprint'));
    return all;
  });
  expect(printed.titles).toEqual(['Plantings: How close?']);
  const shown = await page.locator('.ag-header-cell .column-name').allTextContents();
  expect(shown.length).toBeGreaterThan(3);
  expect(printed.heads.slice(0, shown.length)).toEqual(shown);
  await openView(page, 'Paper');
  await page.getByRole('navigation', { name: 'Pages' }).getByRole('button', { name: 'Any sheet' }).click();
  await page.getByRole('heading', { name: 'Plantings: How close?' }).waitFor();
  await page.getByLabel('Looked at through').selectOption({ label: 'Everything' });
  await page.getByRole('heading', { name: 'Plantings', exact: true }).waitFor();
  // A sheet of many rows stands begun on the screen, and whole on paper.
  await page.locator('.paper-choices select').first().selectOption({ label: 'Climate' });
  await page
    .getByText(/^And [\d,]+ more rows, which are printed\.$/)
    .first()
    .waitFor();
  const rows = await page.evaluate(() => {
    const count = (): number => document.querySelectorAll('.paper table:first-of-type tbody tr').length;
    const screen = count();
    window.dispatchEvent(new Event('beforeprint'));
    return { screen, paper: count() };
  });
  expect(rows.screen).toBeLessThan(rows.paper);
  expect(rows.paper).toBe(365);
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
});
