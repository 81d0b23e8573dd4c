// Writing a note on a cell, changing it or taking it away.

import { useSignal } from '@preact/signals';
import { rowName, sheetView } from '../../../engine/index.ts';
import { rowAt } from '../store/selection.ts';
import { columnAt } from '../store/sheets.ts';
import { workbook } from '../store/workbook.ts';
import { Dialog } from './dialog.tsx';
import { type NoteInHand, noteInHand, takeNote } from './note-state.ts';

export function NoteDialog() {
  const note = noteInHand.value;
  return note === undefined ? null : <Note note={note} />;
}

function Note({ note }: { readonly note: NoteInHand }) {
  const text = useSignal(note.text);
  const book = workbook();
  const at = rowAt(book, note.sheet, note.row);
  const column = columnAt(book, note)?.name ?? '';
  const row = at === undefined ? (sheetView(book, note.sheet)?.name ?? '') : rowName(book, note.sheet, at.slot);
  return (
    <Dialog
      id="note"
      title={`Note on ${column}, ${row}`}
      takes="Keep the note"
      onTake={() => takeNote(text.value)}
      onLeave={() => {
        noteInHand.value = undefined;
      }}
    >
      <div>
        <label for="note-text">What is to be remembered of this cell; empty takes the note away</label>
        <textarea
          id="note-text"
          rows={5}
          maxLength={2000}
          value={text.value}
          onInput={({ currentTarget }) => {
            text.value = currentTarget.value;
          }}
        />
      </div>
    </Dialog>
  );
}
