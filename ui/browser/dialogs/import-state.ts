// A CSV file on its way into a sheet: read and understood, not yet done, so that a person sees first what it would do. The
// dialog shows it; what can't be taken is said with its line and changes nothing.

import { signal } from '@preact/signals';
import { type CsvFailure, type CsvRows, message, sheetView } from '../../../engine/index.ts';
import { change, UNDO } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import { withUnits } from '../store/units.ts';
import { workbookNow } from '../store/workbook.ts';

export interface PendingImport {
  readonly sheet: string;
  readonly sheetName: string;
  readonly file: string;
  /** What the rows ask for; or why the file can't be taken, in a sentence. */
  readonly rows: CsvRows | string;
}

/** The file that waits for a yes; undefined where none does. */
export const pendingImport = signal<PendingImport | undefined>(undefined);

/** Reads a picked file for a sheet and asks. */
export async function readImport(sheet: string, file: File): Promise<void> {
  const book = workbookNow();
  const view = book === undefined ? undefined : sheetView(book, sheet);
  if (book === undefined || view === undefined) return;
  const about = { sheet, sheetName: view.name, file: file.name };
  const text = await file.text().catch(() => undefined);
  const reader = await import('./read-csv.ts').catch(() => undefined);
  if (text === undefined || reader === undefined) {
    const rows =
      text === undefined
        ? 'The file could not be read from the disk.'
        : 'The part that reads CSV could not be fetched.';
    pendingImport.value = { ...about, rows };
    return;
  }
  withUnits<CsvRows | CsvFailure>(
    () => reader.readCsv(book, sheet, text),
    (read) => !read.ok,
    (read) => {
      pendingImport.value = { ...about, rows: read.ok ? read : read.why };
    },
  );
}

/** Does what the waiting file asks, all of it or nothing. */
export function takeImport(): void {
  const pending = pendingImport.peek();
  if (pending === undefined || typeof pending.rows === 'string') return;
  const { file, sheetName, rows } = pending;
  withUnits(
    () =>
      change(rows.commands, message('import file', { file, sheet: sheetName }), { quietly: true, source: 'import' }),
    ({ refused }) => refused,
    (done) => {
      if (done.refused) {
        const line = rows.lines[done.index];
        const where = line === undefined ? '' : `Line ${line}: `;
        pendingImport.value = { ...pending, rows: `${where}${done.why}` };
        return;
      }
      pendingImport.value = undefined;
      tell(`Imported ${file} into ${sheetName}.`, 'done', UNDO);
    },
  );
}
