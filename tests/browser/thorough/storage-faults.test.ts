// A browser whose storage fails: site data blocked, no room left, a database that doesn't answer, one that is cleared under the
// open page. The page opens, says in a sentence what is not kept, and keeps it as soon as it can.

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { readWorkbookFile } from '../../../engine/index.ts';
import { chromiumPath } from '../../../ui/set-up.mjs';
import { YARD_TEMPLATES } from '../../yard.ts';
import { demoAt, reload, workbookAddress } from '../harness.ts';
import { atSmallBeds } from '../small-workbook.ts';
import { WorkbookPage } from '../workbook-page.ts';

async function savedLength(page: Page): Promise<unknown> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  const read = readWorkbookFile(await readFile(await (await download).path(), 'utf8'), YARD_TEMPLATES);
  return read.ok ? read.data.rows.beds?.[0]?.cells.length : read.why;
}

/**
 * Another page of the same browser, which holds all stores for itself until it is closed: it asks one of them again and again. Between
 * two questions it stands still until a slow answer comes, so that holding on costs the machine nothing.
 */
async function holdStores(page: Page): Promise<Page> {
  const other = await page.context().newPage();
  await other.route('**/slow', (route) => void setTimeout(() => route.abort().catch(() => undefined), 250));
  await other.goto(new URL('/manifest.webmanifest', workbookAddress()).href);
  await other.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('dibble workbooks');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const stores = [...opening.result.objectStoreNames];
          const store = opening.result.transaction(stores, 'readwrite').objectStore('marks');
          const hold = (): void => {
            const slow = new XMLHttpRequest();
            slow.open('GET', './slow', false);
            try {
              slow.send();
            } catch {
              // It is never answered, only late.
            }
            store.get('nothing').onsuccess = hold;
          };
          hold();
          resolve();
        };
      }),
  );
  return other;
}

test('where site data is blocked the page works, says that nothing is kept, and saves to a file', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'dibble-profile-'));
  mkdirSync(join(folder, 'Default'));
  // The browser's own setting: sites may keep nothing. The headless shell has no settings.
  const preferences = { profile: { default_content_setting_values: { cookies: 2 } } };
  writeFileSync(join(folder, 'Default', 'Preferences'), JSON.stringify(preferences));
  const executablePath = chromiumPath() ?? '';
  const context = await chromium.launchPersistentContext(folder, {
    executablePath,
    args: ['--no-sandbox', '--disable-gpu'],
    viewport: { width: 1440, height: 900 },
  });
  try {
    await context.addInitScript(() => {
      Reflect.deleteProperty(window, 'showSaveFilePicker');
      // As where the page stands in a frame that may keep nothing.
      Object.defineProperty(navigator, 'serviceWorker', {
        get: () => {
          throw new DOMException('No.', 'SecurityError');
        },
      });
    });
    const page = await context.newPage();
    const thrown: string[] = [];
    page.on('pageerror', (error) => thrown.push(error.message));
    await page.goto(demoAt(workbookAddress()));
    const book = new WorkbookPage(page);
    await expect.poll(() => book.message().textContent()).toMatch(/lets the page keep nothing.*Save it to a file/);
    await book.openSheet('Beds');
    await book.type(0, 'Length', '61');
    await expect.poll(() => book.read(0, 'Length')).toBe('61');
    await page.getByText('not kept: save to a file').waitFor();
    expect(await savedLength(page)).toMatchObject({ number: 61, unit: 'ft' });
    await book.press(1, 'Bed');
    await page.keyboard.press('Control+z');
    await expect.poll(() => book.read(0, 'Length')).not.toBe('61');
    expect(thrown).toEqual([]);
  } finally {
    await context.close();
    rmSync(folder, { recursive: true, force: true });
  }
});

test('where no room is left it says so, and keeps all once there is room', async () => {
  const { page, book } = await atSmallBeds({
    // The browser looks at the room that is left only now and then, so a full one is played: as the standard says it fails.
    prepare: (context) =>
      context.addInitScript(() => {
        const { add, put } = IDBObjectStore.prototype;
        const full = (store: IDBObjectStore): void => {
          if (Reflect.get(window, 'noRoom') !== true) return;
          store.transaction.abort();
          throw new DOMException('No room is left.', 'QuotaExceededError');
        };
        IDBObjectStore.prototype.add = function (...given) {
          full(this);
          return add.apply(this, given);
        };
        IDBObjectStore.prototype.put = function (...given) {
          full(this);
          return put.apply(this, given);
        };
      }),
  });
  await book.type(0, 'Length', '61');
  await book.kept();
  await page.evaluate(() => Reflect.set(window, 'noRoom', true));
  await book.type(1, 'Length', '62');
  await expect.poll(() => book.message().textContent()).toMatch(/storage is full.*not kept on this computer/);
  await book.type(2, 'Length', '63');
  await page.getByText('not kept: save to a file').waitFor();
  await page.evaluate(() => Reflect.set(window, 'noRoom', false));
  await book.type(3, 'Length', '64');
  await book.kept();
  await reload(page);
  await book.openSheet('Beds');
  for (const row of [0, 1, 2, 3]) expect(await book.read(row, 'Length')).toBe(String(61 + row));
});

test('a database that stops answering is told of, and what waited is kept when it answers', async () => {
  const { page, book } = await atSmallBeds();
  await book.type(0, 'Length', '61');
  await book.kept();
  const other = await holdStores(page);
  await book.type(1, 'Length', '62');
  await expect.poll(() => book.message().textContent()).toMatch(/storage does not answer.*Save it to a file/);
  // The page opens all the same, and says what can't be shown.
  const late = await page.context().newPage();
  await late.goto(page.url());
  await late.locator('.first-choice').waitFor();
  await expect.poll(() => late.locator('.message').textContent()).toMatch(/does not answer.*can't be shown/);
  await late.close();
  await other.close();
  await book.type(2, 'Length', '63');
  await book.kept();
  await reload(page);
  await book.openSheet('Beds');
  for (const row of [0, 1, 2]) expect(await book.read(row, 'Length')).toBe(String(61 + row));
});

test('what was not on the disk yet when the page went is there at the next visit', async () => {
  const { page, book } = await atSmallBeds();
  await book.type(0, 'Length', '61');
  await book.kept();
  const other = await holdStores(page);
  await book.type(1, 'Length', '62');
  await page.close({ runBeforeUnload: true });
  await expect.poll(() => page.isClosed()).toBe(true);
  await other.close();
  const late = await page.context().newPage();
  await late.goto(workbookAddress());
  await late.locator('.desk').waitFor();
  const again = new WorkbookPage(late);
  await again.openSheet('Beds');
  expect([await again.read(0, 'Length'), await again.read(1, 'Length')]).toEqual(['61', '62']);
  await again.kept();
  await reload(late);
  await again.openSheet('Beds');
  expect(await again.read(1, 'Length')).toBe('62');
});

test('what was cleared under the open page is kept again, with what can be undone', async () => {
  const { page, book } = await atSmallBeds();
  const begin = await book.read(0, 'Length');
  await book.type(0, 'Length', '61');
  await book.type(1, 'Length', '62');
  await book.kept();
  const control = await page.context().newCDPSession(page);
  const { origin } = new URL(page.url());
  await control.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });
  await book.type(2, 'Length', '63');
  await expect.poll(() => book.message().textContent()).toMatch(/had cleared what it kept.*kept again/);
  await book.kept();
  await reload(page);
  await book.openSheet('Beds');
  for (const row of [0, 1, 2]) expect(await book.read(row, 'Length')).toBe(String(61 + row));
  await book.press(4, 'Bed');
  for (const _ of [0, 1, 2]) await page.keyboard.press('Control+z');
  await expect.poll(() => book.read(0, 'Length')).toBe(begin);
});
