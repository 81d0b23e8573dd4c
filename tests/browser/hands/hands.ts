// What the tests of hands share: a sheet opened at a desk, real drags, the real clipboard, which cells are selected.

import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Opening } from '../harness.ts';
import { type AtSheet, atOnionSheet, openOnionFarm } from '../one-page.ts';
import { WorkbookPage } from '../workbook-page.ts';

export async function at(sheet: string, opening?: Opening): Promise<AtSheet> {
  if (opening === undefined) {
    const shared = await atOnionSheet(sheet);
    await shared.page.locator('.ag-row [class*="role-"]').first().waitFor();
    return shared;
  }
  const opened = await openOnionFarm(opening);
  const book = new WorkbookPage(opened.page);
  await book.openSheet(sheet);
  await opened.page.locator('.ag-row [class*="role-"]').first().waitFor();
  return { ...opened, book };
}

/** Presses at one place, moves to another in steps and lets go there. */
export async function drag(page: Page, from: Point, to: Point, keys: readonly string[] = []): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2, { steps: 4 });
  await page.mouse.move(to.x, to.y, { steps: 4 });
  for (const key of keys) await page.keyboard.down(key);
  await page.mouse.up();
  for (const key of keys) await page.keyboard.up(key);
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

export async function middle(element: Locator): Promise<Point> {
  await element.waitFor();
  let box = await element.boundingBox();
  // While the grid is drawn anew its parts are put in place of one another: it is pressed once it stands still.
  const standsStill = async (): Promise<boolean> => {
    const before = box;
    box = await element.boundingBox();
    return box !== null && before !== null && box.x === before.x && box.y === before.y;
  };
  await expect.poll(standsStill).toBe(true);
  if (box === null) throw new Error('What was to be pressed is not on the page.');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** The fill handle: the lower right corner of the selection. */
export async function fillHandle(page: Page): Promise<Point> {
  const box = await page.locator('.ag-cell.range-corner').boundingBox();
  if (box === null) throw new Error('There is no fill handle.');
  return { x: box.x + box.width - 3, y: box.y + box.height - 3 };
}

/** The number in front of a row. */
export function rowHandle(page: Page, row: number): Locator {
  return page.locator(`.ag-row[row-index="${row}"] .row-handle`);
}

/** Where the empty row after all others stands; the sheet is scrolled to its end for it. */
export async function spareRow(page: Page): Promise<number> {
  await page.locator('.ag-grid-viewport').evaluate((grid) => {
    grid.scrollTop = grid.scrollHeight;
  });
  return Number(await page.locator('.ag-row.spare-row').first().getAttribute('row-index'));
}

/** The cells that are marked as selected, as 'row column', in the order of the rows. */
export async function selected(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('.ag-cell.in-range')]
      .map((cell) => `${cell.closest('.ag-row')?.getAttribute('row-index')} ${cell.getAttribute('col-id')}`)
      .sort(),
  );
}

/** The cell that has the focus, as 'row column'. */
export async function inHand(page: Page): Promise<string> {
  return page.evaluate(() => {
    const cell = document.activeElement?.closest('.ag-cell');
    return `${cell?.closest('.ag-row')?.getAttribute('row-index')} ${cell?.getAttribute('col-id')}`;
  });
}

export interface OnClipboard {
  readonly text: string;
  readonly html?: string;
}

/** Puts something on the system's clipboard, as another program would. */
export async function putOnClipboard(page: Page, { text, html }: OnClipboard): Promise<void> {
  await page.evaluate(
    async ([plain, table]) => {
      const parts: Record<string, Blob> = { 'text/plain': new Blob([plain], { type: 'text/plain' }) };
      if (table !== '') parts['text/html'] = new Blob([table], { type: 'text/html' });
      await navigator.clipboard.write([new ClipboardItem(parts)]);
    },
    [text, html ?? ''] as const,
  );
}

/** Pastes in the cell in hand what another program put there: from the page's own clipboard hidden lines and attributes are gone. */
export async function pasteAsItCame(page: Page, { text, html = '' }: OnClipboard): Promise<void> {
  await page.evaluate(
    ([plain, table]) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text/plain', plain);
      clipboardData.setData('text/html', table);
      document.activeElement?.dispatchEvent(
        new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
      );
    },
    [text, html] as const,
  );
}

export async function clipboardText(page: Page): Promise<string> {
  return page.evaluate(() => navigator.clipboard.readText());
}

export async function clipboardHtml(page: Page): Promise<string> {
  return page.evaluate(async () => {
    const [item] = await navigator.clipboard.read();
    return item?.types.includes('text/html') === true ? (await item.getType('text/html')).text() : '';
  });
}

export async function undo(page: Page, times = 1): Promise<void> {
  for (let step = 0; step < times; step += 1) await page.keyboard.press('Control+z');
}
