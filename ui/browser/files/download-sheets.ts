// Hands sheets to the person as files: one or all, in any of the formats that the engine lists. Fetched when one is wanted.

import { type Format, settings, sheetView, sheetViews } from '../../../engine/index.ts';
import { tell } from '../store/notices.ts';
import { workbookNow } from '../store/workbook.ts';
import { browserTools } from './browser-tools.ts';
import { download, fileName } from './download.ts';

/** A sheet as a file, as the terminal exports it. */
export function downloadSheet(format: Format, sheet: string): Promise<void> {
  const book = workbookNow();
  const view = book === undefined ? undefined : sheetView(book, sheet);
  return view === undefined ? Promise.resolve() : downloadSheets(format, [sheet], view.name);
}

/** All sheets in one file. */
export function downloadAll(format: Format): Promise<void> {
  const book = workbookNow();
  if (book === undefined) return Promise.resolve();
  const sheets = sheetViews(book).map(({ id }) => id);
  return downloadSheets(format, sheets, settings(book).title);
}

async function downloadSheets(format: Format, sheets: readonly string[], title: string): Promise<void> {
  const book = workbookNow();
  if (book === undefined) return;
  const name = `${fileName(title)}.${format.ending}`;
  try {
    const { content, notes } = await format.write(book, sheets, browserTools);
    download(content, name, format.mediaType);
    tell([`Downloaded ${name}.`, ...notes].join(' '), notes.length === 0 ? 'done' : 'refusal');
  } catch (fault) {
    tell(`${name} was not written. ${fault instanceof Error ? fault.message : String(fault)} Try again.`, 'refusal');
  }
}
