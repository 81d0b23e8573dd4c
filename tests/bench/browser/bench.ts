// npm run bench -- browser: the page in Chromium with the demo's plantings copied: a spacing from the edit until it is painted, the spacing
// dragged, sheets switched, 500 rows of ten columns pasted, 20,000 rows scrolled and imported. The page's clock, which waits for a busy machine, and its main thread's CPU time.

import type { Page } from 'playwright-core';
import { cellView, rows, type Workbook } from '../../../engine/index.ts';
import { copiedBook } from '../season/copies.ts';
import { drag, framesSince, noteFrames, paste, scrollDown, slide, switchTo } from './in-page.ts';
import { type BenchPage, openBenchPage, openFile, openSheet } from './page.ts';

const SHEETS = [
  'Varieties',
  'Plantings',
  'Seed order',
  'Bed water',
  'Weeks',
  'Plantings',
  'Weekly harvest',
  'Beds',
] as const;
const SLIDER = 'In-row spacing';

/** The first ten columns of Plantings as they come on screen, of which a formula keeps the last; and how many rows of them are pasted. */
const PASTED = [
  'planting',
  'variety',
  'start',
  'bed',
  'bed-length-used',
  'rows',
  'in-row-spacing',
  'sown',
  'planted-out',
  'harvest',
] as const;
const PASTED_ROWS = 500;

const IMPORTED_ROWS = 20_000;

/** The columns of a file of plantings, with the names that they have there. */
const IMPORTED = {
  planting: 'Planting',
  variety: 'Variety',
  bed: 'Bed',
  'bed-length-used': 'Bed length used',
  rows: 'Rows',
  'in-row-spacing': 'In-row spacing',
  'planted-out': 'Planted out',
} as const;

/** Milliseconds in which the page follows edits or a paste, so that none of that counts for what comes next. */
const FOLLOWED = 4_000;

export async function benchBrowser(size: number): Promise<void> {
  const { workbook, text } = copiedBook(size);
  const bench = await openBenchPage();
  const { page } = bench;
  try {
    console.log(`${size} plantings in Chromium, ms`);
    await counted(bench, 'file opened', 1, () => openFile(page, workbook.document.title, text));
    await openSheet(page, 'Plantings');
    await page.locator('.ag-row[row-index="3"] .ag-cell').first().click();
    if ((await page.locator('.panel-inside').count()) === 0) await page.locator('.fold').click();
    await page.locator('.spacing input[type="range"]').waitFor();
    const [least, most] = await page
      .locator('.spacing input[type="range"]')
      .evaluate((slider) => [Number(slider.getAttribute('min')), Number(slider.getAttribute('max'))] as const);
    const values = Array.from({ length: 100 }, (_, at) => least + ((most - least) * ((at * 7) % 100)) / 100);
    for (const when of ['just opened', 'settled']) {
      const edits = await counted(bench, `spacing edits, ${when}`, values.length, () =>
        page.evaluate(slide, { name: SLIDER, values }),
      );
      tell(
        `spacing edit until painted, ${when}`,
        edits.map(({ whole }) => whole),
      );
      tell(
        '  the same without the wait for the next frame',
        edits.map(({ work }) => work),
      );
      await page.waitForTimeout(FOLLOWED);
    }
    const dragged = await counted(bench, 'frames of a drag', 60, () =>
      page.evaluate(drag, { frames: 60, low: least, high: most }),
    );
    tellFrames('spacing dragged', dragged);
    const switches: number[] = [];
    await counted(bench, 'sheet switches', SHEETS.length, async () => {
      for (const name of SHEETS) switches.push(await page.evaluate(switchTo, name));
    });
    tell('sheet switched until painted', switches);
    await openSheet(page, 'Plantings');
    await page.locator('.ag-row[row-index="0"] [class*="role-"]').first().click();
    for (const [at, which] of ['first', 'second', 'third'].entries()) {
      const before = await bench.cpu();
      const clock = await page.evaluate(paste, pastedText(workbook, at + 1));
      const cpu = (await bench.cpu()) - before;
      console.log(
        `  ${which} paste, until painted: ${cpu.toFixed(0)} ms of CPU time, ${clock.toFixed(0)} by the clock`,
      );
      await page
        .locator('.message')
        .getByText(/^Pasted \d+ cells/)
        .last()
        .waitFor();
      await page.waitForTimeout(FOLLOWED);
    }
    await openSheet(page, 'Bed water');
    const scrolled = await counted(bench, 'frames of scrolling', 300, () =>
      page.evaluate(scrollDown, { rows: 20_000, frames: 300 }),
    );
    tellFrames(`${scrolled.rows} rows scrolled`, scrolled.times);
    await page.evaluate(noteFrames);
    await importInto(page, 'Beds', bedRows());
    await importInto(page, 'Plantings', plantingRows(workbook));
  } finally {
    await bench.close();
  }
}

/** The first rows of Plantings with what stands beside each name moved up by so many rows, as a spreadsheet puts it on the clipboard. */
function pastedText(workbook: Workbook, by: number): string {
  const slots = rows(workbook, 'plantings').subarray(0, PASTED_ROWS);
  const text = (at: number, column: string): string =>
    cellView(workbook, 'plantings', slots[at % slots.length] ?? 0, column).text;
  const lines = Array.from(slots, (_, at) =>
    PASTED.map((column, across) => text(across === 0 ? at : at + by, column)).join('\t'),
  );
  return `${lines.join('\r\n')}\r\n`;
}

/** Takes the rows of a file, as a person does, and tells how long its frames were meanwhile and once it was done. */
async function importInto(page: Page, sheet: string, text: string): Promise<void> {
  await openSheet(page, sheet);
  await page.waitForTimeout(FOLLOWED);
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Import rows', exact: true }).click();
  await (await chooser).setFiles({ name: 'rows.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
  const dialog = page.getByRole('dialog');
  await dialog.getByText(`adds ${IMPORTED_ROWS} rows`).waitFor();
  await page.evaluate(framesSince);
  await dialog.getByRole('button', { name: 'Import', exact: true }).click();
  await page
    .locator('.message')
    .getByText(/^Imported/)
    .waitFor();
  tellFrames(`${IMPORTED_ROWS} rows of ${sheet} imported`, await page.evaluate(framesSince));
  await page.waitForTimeout(5 * FOLLOWED);
  tellFrames('  and afterwards', await page.evaluate(framesSince));
}

function bedRows(): string {
  const beds = Array.from({ length: IMPORTED_ROWS }, (_, at) => `Bed ${at},${50 + (at % 50)} ft,30 in`);
  return ['Bed,Length,Width', ...beds].join('\n');
}

/** Plantings as they stand in the workbook, again and again under other names. */
function plantingRows(workbook: Workbook): string {
  const slots = rows(workbook, 'plantings');
  const columns = Object.entries(IMPORTED);
  const line = (at: number): string => {
    const cells = columns.map(([column]) =>
      column === 'planting' ? `Lot ${at}` : cellView(workbook, 'plantings', slots[at % slots.length] ?? 0, column).text,
    );
    return cells.map((text) => `"${text.replaceAll('"', '""')}"`).join(',');
  };
  const head = columns.map(([, name]) => name).join(',');
  return [head, ...Array.from({ length: IMPORTED_ROWS }, (_, at) => line(at))].join('\n');
}

/** Does something and tells the CPU time it took on the page's main thread. */
async function counted<T>(bench: BenchPage, what: string, times: number, act: () => Promise<T>): Promise<T> {
  const before = await bench.cpu();
  const result = await act();
  const each = ((await bench.cpu()) - before) / times;
  console.log(`  ${what}: ${each.toFixed(1)} ms of CPU time each, with what follows`);
  return result;
}

function tell(what: string, times: readonly number[]): void {
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number): string =>
    (sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0).toFixed(1);
  console.log(`  ${what}: p50 ${at(0.5)}, p95 ${at(0.95)} ms by the clock`);
}

function tellFrames(what: string, times: readonly number[]): void {
  const all = times.reduce((sum, time) => sum + time, 0);
  const longest = Math.max(...times);
  console.log(
    `  ${what}: ${((times.length * 1000) / all).toFixed(0)} frames a second, the longest ${longest.toFixed(0)} ms`,
  );
}
