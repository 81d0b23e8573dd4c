// The panel of the row in hand, used as a person would: the spacing typed, slid, stepped and dragged; figures, picture and
// curves that follow; reasons that open; one step back. Figures are held against the grid's own cells and against geometry.

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { drawFrames, type Opening } from '../harness.ts';
import { faultsInBoth } from '../looks/guidelines.ts';
import { oneOnionPage, openOnionFarm } from '../one-page.ts';

const PLANTING = 'Keeper clumps';

async function openPanel(row: string, opening?: Opening) {
  const opened = opening === undefined ? await oneOnionPage() : await openOnionFarm(opening);
  const { page } = opened;
  await page.locator('#go-to').fill(row);
  await page.getByRole('option', { name: row }).filter({ hasText: 'row of' }).first().click();
  if ((await page.locator('.panel-inside').count()) === 0) await page.locator('.fold').click();
  await page.locator('.row-panel h2', { hasText: row }).waitFor();
  return opened;
}

/** The text of a figure of the panel: '190 lb'. */
async function shown(page: Page, figure: string): Promise<string> {
  const text = await page.locator('.key-figure', { hasText: figure }).locator('.key-value').textContent();
  return (text ?? '').trim();
}

async function number(page: Page, figure: string): Promise<number> {
  return Number.parseFloat(await shown(page, figure));
}

const FIGURES = ['Stations', 'Plant density', 'Mean plant mass', 'Marketable yield', 'Blocks to start', 'Margin'];

async function allFigures(page: Page): Promise<readonly string[]> {
  return Promise.all(FIGURES.map((figure) => shown(page, figure)));
}

async function typeSpacing(page: Page, entry: string): Promise<void> {
  const field = page.locator('.spacing > .field');
  await field.locator('.field-value').click();
  await field.locator('.entry-box').fill(entry);
  await page.keyboard.press('Enter');
}

const slider = (page: Page) => page.getByRole('slider', { name: 'In-row spacing' });

/** What the page's live regions say. */
function readOut(page: Page): Promise<readonly string[]> {
  return page.locator('[aria-live], [role="status"]').allTextContents();
}

/** The middle of the handle on the picture. */
async function handle(page: Page): Promise<{ readonly x: number; readonly y: number }> {
  const box = await page.locator('.handle-knob').boundingBox();
  if (box === null) throw new Error('The picture has no handle.');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

test('a typed spacing is followed by every figure, the picture and the curve, and undo restores them', async () => {
  const { page, problems } = await openPanel(PLANTING);
  await typeSpacing(page, '8 in');
  await expect.poll(() => shown(page, 'Stations')).toBe('300');
  await page.locator('.following').waitFor({ state: 'detached' });
  const before = await allFigures(page);
  await typeSpacing(page, '6 in');
  // 4 rows of 50 ft / 6 in = 100 places each.
  await expect.poll(() => shown(page, 'Stations')).toBe('400');
  // Money rests on the whole season and follows a moment after what the row works out by itself.
  await expect.poll(() => shown(page, 'Margin')).not.toBe(before.at(-1));
  const after = await allFigures(page);
  // Two digits of a yield need not change: the curve beside it shows by how little it does.
  expect(FIGURES.filter((name, index) => name !== 'Marketable yield' && after[index] === before[index])).toEqual([]);
  expect(Number.parseFloat(after[2] ?? '')).toBeLessThan(Number.parseFloat(before[2] ?? ''));
  await expect.poll(() => readOut(page)).toContainEqual(expect.stringContaining('In-row spacing 6 in: Stations 400, '));
  // The whole bed is drawn with a mark for every place.
  const places = await page.locator('.whole-places').getAttribute('d');
  expect(places?.match(/M/g)).toHaveLength(400);
  await expect.poll(() => page.locator('.chart-says').first().textContent()).toContain('Now at 6 in');
  await page.keyboard.press('Control+z');
  await expect.poll(() => allFigures(page)).toEqual(before);
  expect(problems).toEqual([]);
});

test("a spacing in other units is understood, and one that can't be is refused where it stands", async () => {
  const { page } = await openPanel(PLANTING);
  await typeSpacing(page, '20 cm');
  // 15.24 m / 0.2 m = 76 places in each of 4 rows.
  await expect.poll(() => shown(page, 'Stations')).toBe('304');
  await typeSpacing(page, 'banana');
  await expect.poll(() => page.locator('.entry-refusal').textContent()).toMatch(/banana/);
  expect(await shown(page, 'Stations')).toBe('304');
});

test('dragging the handle is live and one step of undo', async () => {
  const { page, problems } = await openPanel(PLANTING);
  const before = await allFigures(page);
  const from = await handle(page);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  const during: number[] = [];
  for (const step of [6, 12, 18, 24, 30]) {
    await page.mouse.move(from.x - step, from.y);
    await drawFrames(page, 4);
    during.push(await number(page, 'Stations'));
  }
  await page.mouse.up();
  expect([...during].sort((a, b) => a - b)).toEqual(during);
  expect(during.at(-1)).toBeGreaterThan(during[0] ?? 0);
  expect(during[0]).toBeGreaterThan(Number.parseFloat(before[0] ?? ''));
  // The outcome is read out once it has come to rest.
  await expect
    .poll(() => readOut(page))
    .toContainEqual(expect.stringMatching(/In-row spacing .* in: Stations \d+, .*Mean plant mass/));
  await page.keyboard.press('Control+z');
  await expect.poll(() => allFigures(page)).toEqual(before);
  expect(problems).toEqual([]);
});

test('the slider goes by key, the buttons a step closer and wider', async () => {
  const { page } = await openPanel(PLANTING);
  await typeSpacing(page, '8 in');
  await slider(page).focus();
  for (let press = 0; press < 4; press += 1) await page.keyboard.press('ArrowLeft');
  await expect.poll(() => slider(page).getAttribute('aria-valuetext')).toBe('7 in');
  // 600 in / 7 in = 85 places in each of 4 rows.
  expect(await shown(page, 'Stations')).toBe('340');
  await page.getByRole('button', { name: '0.25 in wider' }).click();
  await expect.poll(() => slider(page).getAttribute('aria-valuetext')).toBe('7.25 in');
  await page.getByRole('button', { name: '0.25 in closer' }).click();
  await expect.poll(() => slider(page).getAttribute('aria-valuetext')).toBe('7 in');
});

test("the curve's table holds the figures in hand, and its point stands on its line", async () => {
  const { page } = await openPanel(PLANTING);
  await typeSpacing(page, '8 in');
  await expect.poll(() => page.locator('.chart-says').first().textContent()).toContain('Now at 8 in');
  const chart = page.locator('.chart').first();
  await chart.locator('summary').click();
  const read = (): Promise<readonly (readonly number[])[]> =>
    chart
      .locator('tbody tr')
      .evaluateAll((all) =>
        all.map((row) => [...row.children].map((cell) => Number.parseFloat(cell.textContent ?? ''))),
      );
  // The table is made when it is opened, and the curve comes in parts.
  await expect.poll(async () => (await read()).some(([spacing]) => spacing === 8)).toBe(true);
  const rows = await read();
  const here = rows.find(([spacing]) => spacing === 8);
  // The figure in hand lies in a range, and has two significant digits.
  expect(Number(here?.[1]?.toPrecision(2))).toBe(await number(page, 'Marketable yield'));
  expect(rows.length).toBeGreaterThan(10);
  const [point, line] = await Promise.all([
    chart
      .locator('.today-point')
      .evaluate((mark) => [Number(mark.getAttribute('cx')), Number(mark.getAttribute('cy'))]),
    chart.locator('.curve').first().getAttribute('d'),
  ]);
  const corners = (line ?? '')
    .slice(1)
    .split('L')
    .map((corner) => corner.split(' ').map(Number));
  const nearest = Math.min(...corners.map(([x = 0, y = 0]) => Math.hypot(x - (point[0] ?? 0), y - (point[1] ?? 0))));
  expect(nearest).toBeLessThan(1);
});

test('a figure opens its reasons in words, the formula one step below, and an input its own', async () => {
  const { page } = await openPanel(PLANTING);
  await page.locator('.key-figure', { hasText: 'Mean plant mass' }).click();
  const reasons = page.locator('.key-figures .reasons').first();
  await expect
    .poll(() => reasons.locator('.in-words').first().textContent())
    .toMatch(
      /^[\d.]+ oz, because it is what a plant weighs at [\d.]+ plants\/ft² \(one with all the room it wants weighs [\d.]+ oz/,
    );
  expect(await reasons.locator('.formula-words').count()).toBe(0);
  await reasons.getByRole('button', { name: 'How it is worked out' }).click();
  expect(await reasons.locator('.formula-words').first().textContent()).toContain('PLANTMASS([Plant density]');
  expect(await reasons.locator('.terms').textContent()).toContain('SQUARENESS');
  expect(await reasons.locator('.formula-words.values').first().textContent()).toMatch(/PLANTMASS\([\d.]+ plants/);
  await reasons.getByRole('button', { name: /^Plant density/ }).click();
  await expect.poll(() => reasons.locator('.reasons').first().textContent()).toContain('Plants standing (');
});

test('offset rows are judged in words on this bed', async () => {
  const { page } = await openPanel(PLANTING);
  await typeSpacing(page, '8 in');
  // Each of 2 shifted rows of 50 ft loses one of its 75 places.
  await expect.poll(() => page.locator('.bed-notes').textContent()).toContain('offset rows hold 2 places fewer');
});

test('a variety shows the date on which its day length is reached, a bed what stands on it, a lot how it ages', async () => {
  const { page, problems } = await openPanel('Lamplight');
  await expect
    .poll(() => page.locator('.chart-says').textContent())
    .toMatch(/It needs days of 14.5 h, reached here on \d+ \w+\./);
  const reached = await page.locator('.field', { hasText: 'Day length reached' }).locator('.field-value').textContent();
  const said = await page.locator('.chart-says').textContent();
  expect(said).toContain((reached ?? '').trim().replace(/ \d+$/, ''));
  await page.locator('#go-to').fill('Barn 1');
  await page.getByRole('option', { name: 'Barn 1' }).filter({ hasText: 'row of' }).first().click();
  await expect.poll(() => page.locator('.season-name').allTextContents()).toContain(PLANTING);
  expect(await page.locator('.free-times').textContent()).toMatch(/free until .*20\d\d/);
  await page.locator('#go-to').fill('Lamplight 2026');
  await page.getByRole('option', { name: 'Lamplight 2026' }).first().click();
  await expect.poll(() => page.locator('.chart-says').textContent()).toMatch(/Sown on .*, \d+% germinate\./);
  expect(problems).toEqual([]);
});

test('the drawer below 1100 px holds the same panel and folds away', async () => {
  const { page } = await openPanel(PLANTING, { width: 1000, height: 800 });
  await expect.poll(() => page.locator('.bed-picture').count()).toBe(1);
  await page.locator('.fold').click();
  await expect.poll(() => page.locator('.row-panel').count()).toBe(0);
});

test('the panel keeps to the accessibility guidelines in light and dark', async () => {
  const { page } = await openPanel(PLANTING);
  await page.locator('.key-figure', { hasText: 'Marketable yield' }).click();
  await page.locator('.chart summary').first().click();
  expect(await faultsInBoth(page, { within: '.row-panel' })).toEqual([]);
  await page.locator('#go-to').fill('Barn 1');
  await page.getByRole('option', { name: 'Barn 1' }).filter({ hasText: 'row of' }).first().click();
  await page.locator('.bed-season').waitFor();
  expect(await faultsInBoth(page, { within: '.row-panel' })).toEqual([]);
});
