// Hands a text to the person as a file: the workbook, a sheet as CSV. Menus, the sheet's head and the phone call it.

import { exportCsv, settings, sheetView, writeWorkbookFile } from '../../../engine/index.ts';
import { tell } from '../store/notices.ts';
import { workbookNow } from '../store/workbook.ts';

/** Writes the workbook to a file the browser downloads. */
export function saveFile(): void {
  const book = workbookNow();
  if (book === undefined) return;
  const name = `${fileName(settings(book).title)}.json`;
  download(writeWorkbookFile(book.data()), name, 'application/json');
  tell(`Saved as ${name}.`);
}

/** A sheet as a CSV file, as the terminal exports it. */
export function downloadCsv(sheet: string): void {
  const book = workbookNow();
  const view = book === undefined ? undefined : sheetView(book, sheet);
  if (book === undefined || view === undefined) return;
  const name = `${fileName(view.name)}.csv`;
  download(exportCsv(book, sheet), name, 'text/csv;charset=utf-8');
  tell(`Downloaded ${name}.`);
}

/** Hands a text to the browser to be downloaded under this name. */
export function download(text: string, name: string, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** A title as a file's name: without what file systems don't take. */
function fileName(title: string): string {
  const plain = title
    .normalize('NFC')
    .replace(/[\\/:*?"<>|]+/g, ' ')
    .trim();
  return plain === '' ? 'workbook' : plain;
}
