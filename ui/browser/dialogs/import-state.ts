// A CSV file on its way into a sheet: read and understood, not yet done, so that a person sees first what it would do. The
// dialog shows it; what can't be taken is said with its line and changes nothing.

import { signal } from '@preact/signals';
import { type CsvRows, readCsvRows } from '../../../engine/index.ts';
import { splitCsv } from '../../csv-splitter.ts';
import { tell } from '../messages.ts';
import { edit, undo, workbookNow } from '../state.ts';

export interface PendingImport {
  readonly table: string;
  readonly file: string;
  /** What the rows ask for; or why the file can't be taken, in a sentence. */
  readonly rows: CsvRows | string;
}

/** The file that waits for a yes; undefined where none does. */
export const pendingImport = signal<PendingImport | undefined>(undefined);

/** Reads a picked file for a sheet and asks. */
export async function readImport(table: string, file: File): Promise<void> {
  const workbook = workbookNow();
  if (workbook === undefined) return;
  const text = await file.text().catch(() => undefined);
  if (text === undefined) {
    pendingImport.value = { table, file: file.name, rows: 'The file could not be read from the disk.' };
    return;
  }
  const read = readCsvRows(workbook, table, text, splitCsv);
  pendingImport.value = { table, file: file.name, rows: read.ok ? read : read.why };
}

/** Does what the waiting file asks, all of it or nothing. */
export function takeImport(): void {
  const pending = pendingImport.peek();
  if (pending === undefined || typeof pending.rows === 'string') return;
  const { edits, lines } = pending.rows;
  const done = edit(edits, `Import ${pending.file} into ${pending.table}`, true);
  if (done.refused) {
    const line = lines[done.index];
    const where = line === undefined ? '' : `Line ${line}: `;
    pendingImport.value = { ...pending, rows: `${where}${done.why}` };
    return;
  }
  pendingImport.value = undefined;
  tell(`Imported ${pending.file} into ${pending.table}.`, 'done', { label: 'Undo', run: undo });
}
