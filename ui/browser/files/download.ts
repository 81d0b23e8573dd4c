// Hands files to the person: a sheet or all sheets in any of the formats that the engine lists. Menus and the phone call it.

import { type Format, settings, sheetView, sheetViews } from '../../../engine/index.ts';
import { tell } from '../store/notices.ts';
import { workbookNow } from '../store/workbook.ts';

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
    const { browserTools } = await import('./browser-tools.ts');
    const { content, notes } = await format.write(book, sheets, browserTools);
    download(content, name, format.mediaType);
    tell([`Downloaded ${name}.`, ...notes].join(' '), notes.length === 0 ? 'done' : 'refusal');
  } catch (fault) {
    tell(`${name} was not written. ${fault instanceof Error ? fault.message : String(fault)} Try again.`, 'refusal');
  }
}

/** Hands a file's content to the browser to be downloaded under this name. */
export function download(content: string | Uint8Array, name: string, type: string): void {
  const part = typeof content === 'string' ? content : content.slice().buffer;
  const address = URL.createObjectURL(new Blob([part], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** A title as a file's name: without what file systems don't take. */
export function fileName(title: string): string {
  const plain = title
    .normalize('NFC')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: no file system takes them in a name
    .replace(/[\\/:*?"<>|\u0000-\u001f]+/g, ' ')
    .slice(0, 120)
    .replace(/^[. ]+|[. ]+$/g, '');
  return plain === '' ? 'workbook' : plain;
}
