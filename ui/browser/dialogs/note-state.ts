// The note that is being written on a cell: where, and what stands there. The dialog draws it.

import { signal } from '@preact/signals';
import { message, noteOn } from '../../../engine/index.ts';
import { change } from '../store/change.ts';
import type { Place } from '../store/selection.ts';
import { columnAt } from '../store/sheets.ts';
import { workbookNow } from '../store/workbook.ts';

export interface NoteInHand {
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
  readonly text: string;
}

export const noteInHand = signal<NoteInHand | undefined>(undefined);

export function beginNote({ sheet, row, column }: Place): void {
  const book = workbookNow();
  if (book === undefined || row === undefined || column === undefined) return;
  noteInHand.value = { sheet, row, column, text: noteOn(book, sheet, row, column) };
}

/** Keeps the note; '' takes it away. */
export function takeNote(text: string): void {
  const note = noteInHand.peek();
  const book = workbookNow();
  noteInHand.value = undefined;
  if (note === undefined || book === undefined || text.trim() === note.text) return;
  const { sheet, row, column } = note;
  const name = columnAt(book, { sheet, column })?.name ?? '';
  const said = message(text.trim() === '' ? 'remove note' : 'set note', { column: name });
  change([{ command: 'set note', sheet, row, column, note: text }], said);
}
