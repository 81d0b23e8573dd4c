// A workbook of a few beds in the onions template, kept in the browser before the page opens: for tests of keeping, which open the
// page again and again and need a workbook, not a whole farm.

import type { BrowserContextOptions } from 'playwright-core';
import { writeWorkbookFile } from '../../engine/index.ts';
import { onions } from '../../sheets-templates/onions.ts';
import { startOf } from '../../sheets-templates/season.ts';
import { started } from '../book.ts';
import { type OpenedWorkbook, type Opening, openWorkbook } from './harness.ts';

const BEDS = ['A', 'B', 'C', 'D', 'E', 'F'].map((letter) => ({ Bed: `Row ${letter}`, Field: 'Yard', Length: '50 ft' }));

type State = Exclude<BrowserContextOptions['storageState'], string | undefined>;

let kept: Promise<State> | undefined;

/** A visit to a page that keeps the small workbook already. */
export async function openSmallWorkbook(opening: Opening = {}): Promise<OpenedWorkbook> {
  return openWorkbook({ width: 1440, height: 900, ...opening, storage: await smallWorkbook() });
}

/** What a browser keeps that keeps the small workbook. */
export function smallWorkbook(): Promise<State> {
  kept ??= keepOnce();
  return kept;
}

/** The file that the small workbook was opened from. */
export function smallWorkbookText(): string {
  const start = startOf(onions().sheets, { title: 'Yard', season: 2027, today: 20_774, rows: { Beds: BEDS } });
  const small = started(onions(), start);
  if (!small.ok) throw new Error(small.problems.join(' '));
  return writeWorkbookFile(small.workbook.workbook.data());
}

async function keepOnce(): Promise<State> {
  const { page, close } = await openWorkbook({ width: 1440, height: 900, stays: true, bare: true });
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a file' }).click();
  const buffer = Buffer.from(smallWorkbookText());
  await (await chooser).setFiles({ name: 'yard.json', mimeType: 'application/json', buffer });
  await page.getByText(/kept on this computer, \d\d:\d\d/).waitFor();
  const state = await page.context().storageState({ indexedDB: true });
  await close();
  return state;
}
