// The workbook on a phone of 390 by 844, used as a person would: sheets, search, cards, typing, adding and removing rows,
// files. Nothing is cut off, every target can be hit with a thumb.

import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { type Opening, openWorkbook } from './harness.ts';
import { onePhone } from './one-page.ts';
import { smallWorkbook } from './small-workbook.ts';

/** The demo farm as it comes; another workbook where the browser keeps one. */
async function openPhone(storage?: Exclude<Opening['storage'], undefined>) {
  const opened = await (storage === undefined ? onePhone() : openWorkbook({ width: 390, height: 844, storage }));
  await opened.page.locator('.phone').waitFor();
  return opened;
}

async function openSheet(page: Page, sheet: string): Promise<void> {
  await page.locator('.phone-bar button', { hasText: 'Sheets' }).click();
  await page.locator('.phone-list button', { hasText: sheet }).first().click();
  await page.locator('.phone-top h1', { hasText: sheet }).waitFor();
}

async function openCard(page: Page, sheet: string, row: string): Promise<void> {
  await openSheet(page, sheet);
  await page.locator('.phone-search').fill(row);
  await page.locator('.phone-cards button', { hasText: row }).first().click();
  await page.locator('.phone-top h1', { hasText: row }).waitFor();
}

async function typeIn(page: Page, name: string, entry: string): Promise<void> {
  const field = page
    .locator('.fields .field')
    .filter({ has: page.locator('.field-name', { hasText: new RegExp(`^${name}$`) }) });
  await field.locator('.field-value').click();
  await field.locator('.entry-box').fill(entry);
  await page.keyboard.press('Enter');
}

function fieldValue(page: Page, name: string) {
  return page
    .locator('.fields .field')
    .filter({ has: page.locator('.field-name', { hasText: new RegExp(`^${name}$`) }) })
    .locator('.field-value');
}

/** Parts of the page that reach past its right edge, and targets too small for a thumb. */
function misfits(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const seen = (element: Element): boolean =>
      element.getClientRects().length > 0 && !element.matches('.spoken, .unseen');
    const named = (element: Element): string =>
      `${element.tagName} ${element.getAttribute('class') ?? ''} ${(element.textContent ?? '').slice(0, 30)}`;
    const past = [...document.querySelectorAll('.phone *')].filter(
      (element) =>
        seen(element) &&
        element.getBoundingClientRect().right > innerWidth + 1 &&
        element.closest('.table-scroll, .spoken, .unseen') === null,
    );
    const cut = [...document.querySelectorAll('.phone :is(button, p, h1, h2, h3, span)')].filter(
      (element) =>
        seen(element) &&
        element.closest('.spoken, .table-scroll') === null &&
        element.scrollWidth > element.clientWidth + 1 &&
        element.clientWidth > 0,
    );
    const small = [...document.querySelectorAll('.phone :is(button, summary, input)')].filter(
      (element) => seen(element) && element.closest('label') === null && element.getBoundingClientRect().height < 47.5,
    );
    return [
      ...past.map((element) => `past the edge: ${named(element)}`),
      ...cut.map((element) => `cut off: ${named(element)}`),
      ...small.map((element) => `small: ${named(element)}`),
    ];
  });
}

/** Targets of a dialog too small for a thumb, and whether it reaches past the screen. */
function tooSmall(dialog: Locator): Promise<readonly string[]> {
  return dialog.evaluate((box) => {
    const small = [...box.querySelectorAll('button, select, summary, input')].filter((element) => {
      const target = element.matches('[type="radio"], [type="checkbox"]')
        ? (element.closest('label') ?? element)
        : element;
      return target.getClientRects().length > 0 && target.getBoundingClientRect().height < 47.5;
    });
    const { left, right } = box.getBoundingClientRect();
    return [
      ...small.map(({ outerHTML }) => outerHTML.slice(0, 120)),
      ...(left < 0 || right > innerWidth ? ['past'] : []),
    ];
  });
}

test('every place fits the phone and can be hit with a thumb', async () => {
  const { page, problems } = await openPhone();
  expect(await page.locator('.phone-bar button').count()).toBeLessThanOrEqual(4);
  expect(await misfits(page)).toEqual([]);
  await openSheet(page, 'Plantings');
  expect(await misfits(page)).toEqual([]);
  await openCard(page, 'Plantings', 'Keeper clumps');
  await page.locator('.chart').first().waitFor();
  expect(await misfits(page)).toEqual([]);
  await openCard(page, 'Varieties', 'Lamplight');
  expect(await misfits(page)).toEqual([]);
  await openSheet(page, 'Farm');
  expect(await misfits(page)).toEqual([]);
  await page.locator('.phone-bar button', { hasText: 'Attention' }).click();
  expect(await misfits(page)).toEqual([]);
  await page.locator('.phone-bar button', { hasText: 'Workbook' }).click();
  expect(await misfits(page)).toEqual([]);
  expect(problems).toEqual([]);
});

test('a list to pick from lies within the phone and has targets for a thumb', async () => {
  const { page } = await openPhone();
  await openCard(page, 'Plantings', 'Keeper clumps');
  await fieldValue(page, 'Variety').click();
  const options = page.locator('.entry-under [role="option"]');
  await expect.poll(() => options.count()).toBeGreaterThan(5);
  const box = await options.first().boundingBox();
  expect(box?.height).toBeGreaterThanOrEqual(47.5);
  expect((box?.x ?? 0) + (box?.width ?? 999)).toBeLessThanOrEqual(390);
});

test('anything is found by its name from the first place', async () => {
  const { page } = await openPhone();
  await page.locator('.phone-search').fill('keeper singles');
  await page.locator('.phone-list button', { hasText: 'Keeper singles' }).first().click();
  await expect.poll(() => page.locator('.phone-top h1').textContent()).toBe('Keeper singles');
  await expect.poll(() => page.locator('.bed-picture').count()).toBe(1);
});

test('a spacing typed on a card moves its figures; what cannot be meant is refused with a sentence; undo goes back', async () => {
  const { page, problems } = await openPhone();
  await openCard(page, 'Plantings', 'Keeper clumps');
  await typeIn(page, 'In-row spacing', '8 in');
  await expect.poll(() => fieldValue(page, 'Stations').textContent()).toBe('300');
  await typeIn(page, 'In-row spacing', 'banana');
  await expect.poll(() => page.locator('.entry-refusal').textContent()).toMatch(/banana/);
  await page.keyboard.press('Escape');
  expect(await fieldValue(page, 'Stations').textContent()).toBe('300');
  await typeIn(page, 'In-row spacing', '6 in');
  await expect.poll(() => fieldValue(page, 'Stations').textContent()).toBe('400');
  await page.locator('.phone-undo').click();
  await expect.poll(() => fieldValue(page, 'Stations').textContent()).toBe('300');
  expect(problems).toEqual([]);
});

test('a row is added, filled, removed and brought back', async () => {
  const { page } = await openPhone();
  await openSheet(page, 'Beds');
  const beds = await page.locator('.phone-cards > li').count();
  await page.getByRole('button', { name: 'Add a row' }).click();
  await page.locator('.phone-add input').fill('By the gate');
  await page.keyboard.press('Enter');
  await expect.poll(() => page.locator('.phone-top h1').textContent()).toBe('By the gate');
  await typeIn(page, 'Length', '12 m');
  await expect.poll(() => fieldValue(page, 'Length').textContent()).toContain('12 m');
  await page.getByRole('button', { name: 'Remove' }).click();
  await expect.poll(() => page.locator('.phone-cards > li').count()).toBe(beds);
  await page.locator('.phone-undo').click();
  await expect.poll(() => page.locator('.phone-cards > li').count()).toBe(beds + 1);
});

test('cards are looked at through views, put in order and kept back, with one step back for each and forward again', async () => {
  const { page, problems } = await openPhone(await smallWorkbook());
  await openSheet(page, 'Beds');
  const names = () => page.locator('.phone-cards .phone-name').allTextContents();
  const there = await names();
  await page.getByLabel('In order of').selectOption({ label: 'Bed' });
  await page.getByRole('button', { name: 'A to Z' }).click();
  await expect.poll(names).toEqual([...there].reverse());
  await page.locator('.phone-undo').click();
  await expect.poll(names).toEqual(there);
  await page.locator('.phone-top').getByRole('button', { name: 'Redo' }).click();
  await expect.poll(names).toEqual([...there].reverse());
  const views = await page.getByLabel('Look at').locator('option').allTextContents();
  await page.getByLabel('Look at').selectOption({ label: views.at(-1) ?? '' });
  await expect.poll(() => page.locator('.phone-told').first().locator('.told-name').count()).toBeGreaterThan(2);
  expect(await misfits(page)).toEqual([]);

  // A file of rows is shown before it is taken.
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Import rows' }).click();
  const buffer = Buffer.from('Bed,Field,Length (ft)\nRow A,Yard,70\nPond 1,Pond,71\n');
  await (await chooser).setFiles({ name: 'beds.csv', mimeType: 'text/csv', buffer });
  const dialog = page.getByRole('dialog');
  await expect.poll(() => dialog.textContent(), { timeout: 30_000 }).toMatch(/adds 1 row, changes 1 row/);
  expect(await tooSmall(dialog)).toEqual([]);
  await dialog.getByRole('button', { name: 'Import', exact: true }).click();
  await expect.poll(() => page.locator('.phone-cards > li').count()).toBe(there.length + 1);

  // What if: a branch made, changed in and left again.
  await page.locator('.phone-bar button', { hasText: 'Workbook' }).click();
  await page.getByRole('button', { name: 'What if' }).click();
  await dialog.getByLabel('Name of a new branch').waitFor();
  expect(await tooSmall(dialog)).toEqual([]);
  await dialog.getByLabel('Name of a new branch').fill('Longer beds');
  await dialog.getByRole('button', { name: 'Branch the plan' }).click();
  await page.locator('.branch-bar').getByText('Longer beds').waitFor();
  expect(await misfits(page)).toEqual([]);
  await page.getByRole('button', { name: 'Back to the plan' }).click();
  await expect.poll(() => page.locator('.branch-bar').count()).toBe(0);

  // Pages for paper and scratch paper are found under the workbook, and the way back leads there.
  for (const [name, there] of [
    ['Pages for paper', '.paper-page'],
    ['Scratch paper', '.scratch-page'],
  ] as const) {
    await page.locator('.phone-bar button', { hasText: 'Workbook' }).click();
    await page.getByRole('button', { name }).click();
    await page.locator(there).waitFor();
    if (there === '.paper-page') expect(await tooSmall(page.locator('.paper-choices'))).toEqual([]);
    await page.locator('.phone-up').click();
    await expect.poll(() => page.locator('.phone-top h1').textContent()).toBe('Workbook');
  }
  expect(problems).toEqual([]);
});

test('a name that is taken is refused with a sentence', async () => {
  const { page } = await openPhone();
  await openSheet(page, 'Beds');
  await page.getByRole('button', { name: 'Add a row' }).click();
  await page.locator('.phone-add input').fill('Barn 1');
  await page.keyboard.press('Enter');
  await expect.poll(() => page.locator('.messages').textContent()).toContain('already has a row called “Barn 1”');
});

test('what needs attention leads to its field', async () => {
  const { page } = await openPhone();
  await page.locator('.phone-bar button', { hasText: 'Attention' }).click();
  const first = page.locator('.findings button').first();
  const where = (await first.locator('.where').textContent())?.split(' / ') ?? [];
  await first.click();
  await expect.poll(() => page.locator('.phone-top h1').textContent()).toBe(where[1]);
  await expect
    .poll(() =>
      page.evaluate(() => document.activeElement?.closest('.field')?.querySelector('.field-name')?.textContent),
    )
    .toBe(where.at(-1));
});

test("the browser's way back leads from a card to its sheet and on to the sheets", async () => {
  const { page } = await openPhone();
  await openCard(page, 'Beds', 'Barn 1');
  await page.goBack();
  await expect.poll(() => page.locator('.phone-top h1').textContent()).toBe('Beds');
  await page.goBack();
  await expect.poll(() => page.locator('.phone-question').count()).toBeGreaterThan(3);
});

test('the seed order and the workbook are saved as files', async () => {
  const { page } = await openPhone();
  await page.locator('.phone-bar button', { hasText: 'Workbook' }).click();
  const [order] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Download the seed order' }).click(),
  ]);
  expect(order.suggestedFilename()).toBe('Seed order.csv');
  const csv = await readFile((await order.path()) ?? '', 'utf8');
  expect(csv).toMatch(/Seeds to buy/);
  expect(csv).toMatch(/Lamplight/);
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save to a file' }).click(),
  ]);
  const saved: unknown = JSON.parse(await readFile((await file.path()) ?? '', 'utf8'));
  expect(saved).toBeTypeOf('object');
});
