// The page without a network: all of it works from the first load on, and a new build is taken only when the person says so.

import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { type PreviewServer, preview } from 'vite';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { openWorkbook, reload } from '../harness.ts';
import { openSmallWorkbook } from '../small-workbook.ts';
import { WorkbookPage } from '../workbook-page.ts';

// A copy of the built page, which becomes another build in mid-test.
const folder = mkdtempSync(join(tmpdir(), 'dibble-build-'));
let server: PreviewServer;
let address = '';

beforeAll(async () => {
  cpSync(inject('workbookFolder'), folder, { recursive: true });
  server = await preview({ logLevel: 'warn', preview: { port: 0 }, build: { outDir: folder } });
  address = server.resolvedUrls?.local[0] ?? '';
});

afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

async function openOffline() {
  const opened = await openSmallWorkbook({ offline: true, address });
  // All parts are kept before the worker takes the page.
  await expect.poll(() => opened.page.evaluate(() => navigator.serviceWorker.controller?.state)).toBe('activated');
  return { ...opened, book: new WorkbookPage(opened.page) };
}

async function openMenu(page: Page, item: string): Promise<void> {
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: item, exact: true }).click();
}

test('without a network the page opens, keeps what is typed, and brings parts it never showed before', async () => {
  const { page, book, problems } = await openOffline();
  await page.context().setOffline(true);
  await reload(page);
  await book.openSheet('Beds');
  await book.type(0, 'Length', '61');
  await book.kept();
  await reload(page);
  await book.openSheet('Beds');
  expect(await book.read(0, 'Length')).toBe('61');
  await openMenu(page, 'Versions');
  await page.getByRole('dialog').getByText('Keep how it stands now as').waitFor();
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
  // A worker of the page, fetched when a file is first read.
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Import rows' }).click();
  await (await chooser).setFiles({
    name: 'b.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('Bed,Field\nPond 1,Pond\n'),
  });
  await expect.poll(() => page.getByRole('dialog').textContent()).toMatch(/adds 1 row/);
  expect(problems).toEqual([]);
});

test('a new build waits until it is taken, with all that was typed', async () => {
  const { page, book } = await openOffline();
  await book.openSheet('Beds');
  await book.type(0, 'Length', '62');
  const worker = join(folder, 'service-worker.js');
  const index = join(folder, 'index.html');
  writeFileSync(worker, readFileSync(worker, 'utf8').replace(/const BUILD = "\w+"/, 'const BUILD = "another"'));
  writeFileSync(index, readFileSync(index, 'utf8').replace('<title>Dibble', '<title>New Dibble'));
  await book.kept();
  await reload(page);
  await expect.poll(() => book.message().textContent()).toMatch(/There is a new Dibble/);
  expect(await page.title()).not.toContain('New');
  await reload(page);
  await expect.poll(() => book.message().textContent()).toMatch(/There is a new Dibble/);
  expect(await page.title()).not.toContain('New');
  await book.openSheet('Beds');
  await book.type(1, 'Length', '63');
  await book.message().getByRole('button', { name: 'Take the new Dibble' }).click();
  await expect.poll(() => page.title()).toContain('New');
  await page.locator('.desk').waitFor();
  await book.openSheet('Beds');
  expect(await book.read(0, 'Length')).toBe('62');
  expect(await book.read(1, 'Length')).toBe('63');
});

test('it says how it installs, with icons of its own', async () => {
  const { page } = await openWorkbook({ bare: true });
  const manifest = await page.evaluate(async () => {
    const link = document.querySelector<HTMLLinkElement>('link[rel="manifest"]');
    const answer = await fetch(link?.href ?? '');
    const found: unknown = await answer.json();
    return found;
  });
  expect(manifest).toMatchObject({ name: 'Dibble', display: 'standalone', start_url: './index.html' });
  const sizes = await page.evaluate(async () => {
    const images = ['./icon-192.png', './icon-512.png'].map(async (src) => {
      const image = new Image();
      image.src = src;
      await image.decode();
      return image.naturalWidth;
    });
    return Promise.all(images);
  });
  expect(sizes).toEqual([192, 512]);
});
