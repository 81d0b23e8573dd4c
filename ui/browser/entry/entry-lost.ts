// An entry that was open when its place went: its row, column or sheet was removed, in another tab or by a step taken back, or a
// view no longer shows it. That is said, and what was typed can still be copied, or taken where its cell is there.

import { type Book, rowWithId, sheetView } from '../../../engine/index.ts';
import { typeCell } from '../store/change.ts';
import { type NoticeAct, tell } from '../store/notices.ts';
import { columnAt } from '../store/sheets.ts';
import { workbookNow } from '../store/workbook.ts';

export interface LostEntry {
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
  /** What its box was called: 'Length, Bed 3'. */
  readonly label: string;
  readonly text: string;
}

/** So much of a text stands in the sentence. */
const SHOWN = 80;

/** Why an entry was not taken. */
export function lostWords(book: Book, entry: LostEntry): string {
  const { label, text } = entry;
  const quoted = text.length > SHOWN ? `${text.slice(0, SHOWN)}…` : text;
  return `${label}: “${quoted}” was not taken. ${whyLost(book, entry)}`;
}

function whyLost(book: Book, { sheet, row, column }: LostEntry): string {
  if (sheetView(book, sheet) === undefined) return 'The sheet was removed meanwhile.';
  if (columnAt(book, { sheet, column }) === undefined) return 'The column was removed meanwhile.';
  if (rowWithId(book, sheet, row) === undefined) return 'The row was removed meanwhile.';
  return 'The cell is no longer shown here.';
}

/** Says that an entry was not taken, and offers what can still be done with it. */
export function tellLost(book: Book, entry: LostEntry): void {
  const { sheet, row, column, text } = entry;
  const view = columnAt(book, { sheet, column });
  const acts: NoticeAct[] = [{ label: 'Copy it', run: () => copy(text) }];
  if (view !== undefined && rowWithId(book, sheet, row) !== undefined) {
    const take = (): void => {
      if (workbookNow() === book) typeCell({ sheet, row, column }, view.name, text);
    };
    acts.unshift({ label: 'Take it', run: take });
  }
  tell(lostWords(book, entry), 'refusal', ...acts);
}

function copy(text: string): void {
  navigator.clipboard.writeText(text).then(
    () => tell('Copied what was typed.'),
    () => tell(`The browser does not let this page copy. This was typed: ${text}`, 'refusal'),
  );
}
