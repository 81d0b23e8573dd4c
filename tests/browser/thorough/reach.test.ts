// For everyone: what a screen reader is told, colours of one's own choosing, windows made narrow or text made large, the path by
// keys alone from opening the workbook to a changed spacing.

import { expect, test } from 'vitest';
import { drawFrames } from '../harness.ts';
import { atSheet, onePage, openOnionFarm } from '../one-page.ts';
import { atSmallBeds, openSmallWorkbook } from '../small-workbook.ts';

test('the name of a row is its header, and what a cell is stands in its description', async () => {
  const { page } = await atSheet('Beds');
  await page.locator('.ag-row [class*="role-"]').first().waitFor();
  const row = page.locator('.ag-row[row-index="0"]').first();
  expect(await row.locator('[role="rowheader"]').getAttribute('col-id')).toBe('bed');
  const computed = page.locator('.ag-row[row-index="0"] .ag-cell[col-id="area"]');
  await computed.scrollIntoViewIfNeeded();
  await expect.poll(() => computed.getAttribute('aria-description')).toMatch(/computed/);
});

test('colours of one’s own choosing show what is selected, which sheet it is and what is computed', async () => {
  const { book, page } = await atSmallBeds({ forcedColors: 'active' });
  await book.press(0, 'Length');
  await page.keyboard.press('Shift+ArrowDown');
  const style = (selector: string, property: string): Promise<string> =>
    page
      .locator(selector)
      .first()
      .evaluate((element, name) => getComputedStyle(element).getPropertyValue(name), property);
  await expect.poll(() => style('.ag-cell.in-range', 'outline-style')).toBe('solid');
  expect(await style('.sheet-list [aria-current="page"]', 'border-top-width')).toBe('2px');
  expect(await style('.ag-cell.role-computed', 'border-left-width')).toBe('2px');
});

test('in a window of half the height the rows have room, also below what finds, and what is walked to or found is in sight', async () => {
  const { book, page } = await atSheet('Plantings');
  await page.setViewportSize({ width: 720, height: 450 });
  await page.locator('.ag-row').first().waitFor();
  await drawFrames(page);
  const inSight = (): Promise<number> =>
    page.evaluate(() => {
      const head = document.querySelector('.ag-header')?.getBoundingClientRect().bottom ?? 0;
      const foot = Math.min(innerHeight, document.querySelector('.grid-host')?.getBoundingClientRect().bottom ?? 0);
      const boxes = [...document.querySelectorAll('.ag-row')].map((row) => row.getBoundingClientRect());
      return boxes.filter((box) => box.height > 0 && box.top >= head - 1 && box.bottom <= foot + 1).length;
    });
  await book.press(0, 'Variety');
  await page.keyboard.press('ArrowDown');
  await expect.poll(inSight).toBeGreaterThanOrEqual(5);
  await page.keyboard.press('Control+h');
  await page.getByRole('search', { name: 'Find in values' }).waitFor();
  await page.keyboard.type('Lamplight');
  await page.keyboard.press('Enter');
  await expect.poll(inSight).toBeGreaterThanOrEqual(5);
  // What stands above is where it was, and can be scrolled to.
  const top = page.locator('.top-line');
  await page.locator('.desk').evaluate((desk) => desk.scrollTo(0, 0));
  const inside = await top.evaluate(({ clientHeight, scrollHeight }) => scrollHeight - clientHeight);
  expect(inside).toBeLessThanOrEqual(1);
  expect((await top.boundingBox())?.y).toBe(0);
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  await page.setViewportSize({ width: 1440, height: 900 });
});

test('on a usual screen the workbook’s name stands in full beside what can be undone and done again', async () => {
  const { book, page } = await atSheet('Plantings');
  for (const row of [0, 1, 2]) {
    await book.press(row, 'Planting');
    await page.keyboard.type(`A planting of a good long name, ${row}`);
    await page.keyboard.press('Enter');
  }
  await page.keyboard.press('Control+z');
  await expect.poll(() => page.locator('.step-label').count()).toBe(2);
  await page.getByText(/kept on this computer, \d\d:\d\d/).waitFor();
  const cut = await page.locator('.top-line h1').evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth);
  expect(cut).toBeLessThanOrEqual(0);
});

test('at twice the size and in narrow windows nothing lies over another or runs out of the window', async () => {
  const { page } = await onePage();
  for (const [width, height] of [
    [720, 450],
    [1024, 768],
    [320, 640],
  ] as const) {
    await page.setViewportSize({ width, height });
    await page.locator(width < 700 ? '.phone' : '.desk').waitFor();
    await drawFrames(page);
    const found = await page.evaluate(() => {
      const over = document.documentElement.scrollWidth - document.documentElement.clientWidth;
      const parts = [...document.querySelectorAll<HTMLElement>('.top-line > *, .sheet-head > *, .view-bar > *')].filter(
        (part) => part.offsetParent !== null && part.getBoundingClientRect().width > 1,
      );
      const boxes = parts.map((part) => ({
        name: part.className || part.tagName,
        box: part.getBoundingClientRect(),
        parent: part.parentElement,
      }));
      const crossing = boxes.flatMap((a, i) =>
        boxes.slice(i + 1).flatMap((b) => {
          const apart =
            a.box.right <= b.box.left + 1 ||
            b.box.right <= a.box.left + 1 ||
            a.box.bottom <= b.box.top + 1 ||
            b.box.bottom <= a.box.top + 1;
          return apart || a.parent !== b.parent ? [] : [`${a.name} over ${b.name}`];
        }),
      );
      const out = boxes.flatMap(({ name, box }) => (box.right > window.innerWidth + 1 ? [`${name} runs out`] : []));
      return [...(over > 1 ? [`the page is ${over} px too wide`] : []), ...crossing, ...out];
    });
    expect(found, `${width} x ${height}`).toEqual([]);
  }
  // A menu longer than the window is scrolled through.
  await page.setViewportSize({ width: 1440, height: 480 });
  await page.getByRole('button', { name: 'More', exact: true }).click();
  const items = page.getByRole('menu').getByRole('menuitem');
  for (const item of [items.first(), items.last()]) {
    await item.scrollIntoViewIfNeeded();
    const box = await item.boundingBox();
    expect(box?.y).toBeGreaterThanOrEqual(0);
    expect((box?.y ?? 0) + (box?.height ?? 999)).toBeLessThanOrEqual(480);
  }
  await page.keyboard.press('Escape');
  await page.setViewportSize({ width: 1440, height: 900 });
});

test('by keys alone, as a screen reader has it: from opening the workbook to a changed spacing', async () => {
  const { page } = await openOnionFarm({});
  await page.keyboard.press('Control+k');
  await page.getByRole('combobox', { name: 'Go to a sheet, row or column' }).waitFor();
  await page.keyboard.type('Keeper clumps');
  await page
    .getByRole('option', { name: /^Keeper clumps/ })
    .first()
    .waitFor();
  await page.keyboard.press('Enter');
  const grid = page.getByRole('treegrid').or(page.getByRole('grid'));
  await grid.first().waitFor();
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.getAttribute('role')))
    .toMatch(/gridcell|rowheader/);
  await page.keyboard.press('Control+k');
  await page.keyboard.type('In-row spacing');
  await page
    .getByRole('option', { name: /^In-row spacing\s*column of Plantings/ })
    .first()
    .waitFor();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('col-id'))).toBe('in-row-spacing');
  await page.keyboard.type('6 in');
  await page.getByRole('textbox', { name: /^In-row spacing, Keeper clumps/ }).waitFor();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.getByRole('gridcell', { name: '6' }).first().isVisible()).toBe(true);
  await page.keyboard.press('Control+z');
  await expect
    .poll(() => page.getByRole('status').allTextContents())
    .toContainEqual(expect.stringMatching(/Undone: In-row spacing: 6 in/));
});

test('a phone on its side has the places of a phone, and a window as low with a mouse has the desk', async () => {
  const onItsSide = { width: 844, height: 390 };
  const { page, problems } = await openSmallWorkbook({ ...onItsSide, touch: true });
  const places = page.getByRole('navigation', { name: 'Places' }).getByRole('button');
  await expect.poll(() => places.count()).toBeGreaterThan(2);
  await places.nth(1).tap();
  await page.getByRole('button', { name: /^Beds/ }).first().tap();
  await expect.poll(() => page.locator('.phone-cards li').count()).toBeGreaterThan(0);
  const across = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(across).toBeLessThanOrEqual(0);
  expect(problems).toEqual([]);
  const desk = await openSmallWorkbook(onItsSide);
  await desk.page.locator('.desk').waitFor();
  expect(await desk.page.locator('.phone').count()).toBe(0);
});
