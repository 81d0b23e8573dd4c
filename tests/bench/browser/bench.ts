// npm run bench -- browser: the page in Chromium with the demo's plantings copied: a spacing from the edit until it is painted, the spacing
// dragged, sheets switched, 20,000 rows scrolled. The page's clock, which waits for a busy machine, and its main thread's CPU time.

import { copiedBook } from '../season/copies.ts';
import { drag, scrollDown, slide, switchTo } from './in-page.ts';
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
    const values = Array.from({ length: 40 }, (_, at) => least + ((most - least) * ((at * 7) % 40)) / 40);
    const edits = await counted(bench, 'spacing edits', values.length, () =>
      page.evaluate(slide, { name: SLIDER, values }),
    );
    tell(
      'spacing edit until painted',
      edits.map(({ whole }) => whole),
    );
    tell(
      'the same without the wait for the next frame',
      edits.map(({ work }) => work),
    );
    const dragged = await counted(bench, 'frames of a drag', 60, () =>
      page.evaluate(drag, { frames: 60, low: least, high: most }),
    );
    tellFrames('spacing dragged', dragged);
    const switches: number[] = [];
    await counted(bench, 'sheet switches', SHEETS.length, async () => {
      for (const name of SHEETS) switches.push(await page.evaluate(switchTo, name));
    });
    tell('sheet switched until painted', switches);
    await openSheet(page, 'Bed water');
    const scrolled = await counted(bench, 'frames of scrolling', 300, () =>
      page.evaluate(scrollDown, { rows: 20_000, frames: 300 }),
    );
    tellFrames(`${scrolled.rows} rows scrolled`, scrolled.times);
  } finally {
    await bench.close();
  }
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
