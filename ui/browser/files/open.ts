// Workbooks that come on screen from elsewhere: a file that a person picks or drops, a fresh season, the demo farm. Each stands
// beside those that are kept here and replaces none. What can't be opened is said and leaves everything as it is.

import { settings, type Workbook, workbookText } from '../../../engine/index.ts';
import type { Offer } from '../../../sheets-templates/index.ts';
import { offerUpgrade } from '../dialogs/upgrade-state.ts';
import { DEMO, writeAddress } from '../keeping/address.ts';
import { contentSum } from '../keeping/entries.ts';
import { showAndKeep, showFresh } from '../keeping/showing.ts';
import { openKept, type Shown, switchTo } from '../keeping/switching.ts';
import { workbookWithFile } from '../keeping/workbooks.ts';
import { tell } from '../store/notices.ts';
import { freshDemo, freshOffer, freshSeason } from './fresh.ts';
import { readWorkbook } from './read.ts';

/** Opens a file of a person's own; one whose content is kept here already opens with what was changed here since. */
export async function openFile(file: File, handle?: FileSystemFileHandle): Promise<void> {
  const bytes = await file.arrayBuffer().catch(() => undefined);
  const decoded =
    bytes === undefined
      ? ({ ok: false, why: 'It could not be read from the disk.' } as const)
      : workbookText(new Uint8Array(bytes));
  const opened = decoded.ok ? await readWorkbook(decoded.text) : decoded;
  if (!opened.ok) {
    tell(`${file.name} was not opened. ${opened.why} The workbook on screen is as it was.`, 'refusal');
    return;
  }
  const { workbook, notes, leftOut } = opened;
  const sum = contentSum(workbook);
  const here = leftOut ? undefined : await workbookWithFile(file.name, sum).catch(() => undefined);
  if (here !== undefined) {
    await openKept(here.id, here.title);
    return;
  }
  // A file that could not be read whole is not saved over: it still holds what was left out.
  const again = handle === undefined || leftOut ? {} : { handle, modified: file.lastModified };
  const own = { name: file.name, at: Date.now(), sum, ...again };
  await switchTo(async () => {
    await showAndKeep(workbook, own);
    offerUpgrade();
    return said(file.name, notes);
  });
}

/** The demo farm as it comes. */
export async function openDemo(): Promise<void> {
  await openFresh(await freshDemo(), DEMO);
}

/** A fresh season, empty of the farm's own rows. */
export async function openFreshSeason(season: number): Promise<void> {
  await openFresh(await freshSeason(season));
}

/** A fresh workbook of another template than the whole season. */
export async function openFreshOffer(offer: Offer, season: number): Promise<void> {
  await openFresh(await freshOffer(offer, season));
}

function openFresh(workbook: Workbook, name?: string): Promise<void> {
  return switchTo(async () => {
    showFresh(workbook);
    writeAddress(name);
    return said(settings(workbook).title, []);
  });
}

function said(name: string, notes: readonly string[]): Shown {
  return { ok: true, says: [`Opened ${name}.`, ...notes].join(' '), flawed: notes.length > 0 };
}
