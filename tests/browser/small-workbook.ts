// The workbook of a few beds (../yard.ts), kept in the browser before the page opens, with its beds in hand: the page opens on them.

import type { BrowserContextOptions } from 'playwright-core';
import { expect } from 'vitest';
import { yardText } from '../yard.ts';
import { type OpenedWorkbook, type Opening, openWorkbook, workbookAddress } from './harness.ts';
import { keptRecords } from './kept.ts';
import { WorkbookPage } from './workbook-page.ts';

type State = Exclude<BrowserContextOptions['storageState'], string | undefined>;

let kept: Promise<State> | undefined;

/** A visit to a page that keeps the small workbook already. */
export async function openSmallWorkbook(opening: Opening = {}): Promise<OpenedWorkbook> {
  const state = await smallWorkbook();
  const { origin } = new URL(opening.address ?? workbookAddress());
  const storage = { ...state, origins: state.origins.map((kept) => ({ ...kept, origin })) };
  return openWorkbook({ width: 1440, height: 900, ...opening, storage });
}

/** The same, at its beds. */
export async function atSmallBeds(opening: Opening = {}): Promise<OpenedWorkbook & { readonly book: WorkbookPage }> {
  const opened = await openSmallWorkbook(opening);
  const book = new WorkbookPage(opened.page);
  await book.openSheet('Beds');
  return { ...opened, book };
}

/** What a browser keeps that keeps the small workbook. */
export function smallWorkbook(): Promise<State> {
  kept ??= keepOnce();
  return kept;
}

async function keepOnce(): Promise<State> {
  const { page, close } = await openWorkbook({ width: 1440, height: 900, stays: true, bare: true });
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a file' }).click();
  const buffer = Buffer.from(yardText());
  await (await chooser).setFiles({ name: 'yard.json', mimeType: 'application/json', buffer });
  const book = new WorkbookPage(page);
  await book.kept();
  await book.openSheet('Beds');
  await book.press(0, 'Bed');
  await expect.poll(async () => (await keptRecords(page, 'hands'))[0]?.sheet).toBe('beds');
  const state = await page.context().storageState({ indexedDB: true });
  await close();
  return state;
}
