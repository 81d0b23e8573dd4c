// The built page in Chromium with a large season opened in it, for the benchmark: built and served for one run, closed at its end.
// What is measured runs inside the page (in-page.ts), so that no message on the way is counted.

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type CDPSession, chromium, type Page } from 'playwright-core';
import { build, preview } from 'vite';
import { chromiumPath } from '../../../ui/set-up.mjs';

export interface BenchPage {
  readonly page: Page;
  /** CPU milliseconds that the page's main thread has taken so far. */
  cpu(): Promise<number>;
  close(): Promise<void>;
}

/** Patience with a machine that others use too; nothing is timed by it. */
const PATIENCE = 300_000;

export async function openBenchPage(): Promise<BenchPage> {
  const executablePath = chromiumPath();
  if (executablePath === undefined) throw new Error('There is no Chromium: npm test installs one or says how to.');
  const folder = await mkdtemp(join(tmpdir(), 'dibble-bench-'));
  await build({ logLevel: 'error', build: { outDir: folder, emptyOutDir: true } });
  const server = await preview({ logLevel: 'error', preview: { port: 0 }, build: { outDir: folder } });
  const address = server.resolvedUrls?.local[0] ?? '';
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu', '--no-first-run'] });
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    locale: 'en-US',
    timezoneId: 'UTC',
  });
  // Playwright can't answer the dialogs of the File System Access API.
  await context.addInitScript(() => {
    Reflect.deleteProperty(window, 'showOpenFilePicker');
    Reflect.deleteProperty(Navigator.prototype, 'serviceWorker');
  });
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE);
  await page.goto(new URL('#demo', address).href, { waitUntil: 'load' });
  await page.locator('.desk').waitFor();
  const session = await context.newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  return {
    page,
    cpu: () => taskTime(session),
    close: async () => {
      await browser.close();
      await server.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

async function taskTime(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics');
  return (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN) * 1000;
}

/** Opens a workbook file as a person does, and waits until it is there. */
export async function openFile(page: Page, title: string, text: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await (await chooser).setFiles({ name: 'season.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.getByRole('heading', { level: 1, name: title }).waitFor();
}

/** Shows a sheet; its button reads its name and then perhaps how many rows it has. */
export async function openSheet(page: Page, name: string): Promise<void> {
  const button = page
    .getByRole('navigation', { name: 'Sheets' })
    .getByRole('button', { name: new RegExp(`^${name}\\s*(,|\\d|$)`) });
  await button.click();
  await page.getByRole('main', { name, exact: true }).waitFor();
  await page.locator('.ag-row [class*="role-"]').first().waitFor();
}
