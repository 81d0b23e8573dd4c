// A file of a person's own, read and brought on screen. Fetched when the first one is opened (open.ts).

import { workbookText } from '../../../engine/index.ts';
import { offerUpgrade } from '../dialogs/upgrade-offer.ts';
import { contentSum } from '../keeping/entries.ts';
import { showAndKeep } from '../keeping/showing.ts';
import { openKept, switchTo } from '../keeping/switching.ts';
import { workbookWithFile } from '../keeping/workbooks.ts';
import { tell } from '../store/notices.ts';
import { openedWords } from './opened-words.ts';
import { readWorkbook } from './read.ts';

let last: Promise<void> = Promise.resolve();

/**
 * Opens a file of a person's own; one whose content is kept here already opens with what was changed here since. Files are opened one
 * after another, so that what is said, and what stands on screen in the end, is of the one that was picked last.
 */
export function openPicked(file: File, handle?: FileSystemFileHandle): Promise<void> {
  const before = last.catch(() => undefined);
  last = before.then(() => openNext(file, handle));
  return last;
}

async function openNext(file: File, handle: FileSystemFileHandle | undefined): Promise<void> {
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
    void offerUpgrade();
    return openedWords(file.name, notes);
  });
}
