// Before a CSV file goes into a sheet: what it would add, change and pass over, or why it can't be taken.

import { useLayoutEffect, useRef } from 'preact/hooks';
import { type Command, type CsvRows, rowName, rowWithId } from '../../../engine/index.ts';
import { columnAt } from '../store/sheets.ts';
import { workbookNow } from '../store/workbook.ts';
import { type PendingImport, pendingImport, takeImport } from './import-state.ts';

/** Rows shown of what is to come. */
const SHOWN = 8;

export function ImportDialog() {
  const pending = pendingImport.value;
  const box = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    if (pending !== undefined && box.current?.open === false) box.current.showModal();
  }, [pending]);
  if (pending === undefined) return null;
  return (
    <dialog class="dialog" ref={box} aria-labelledby="import-title" onClose={giveUp}>
      <h2 id="import-title">{`${pending.file} into ${pending.sheetName}`}</h2>
      {typeof pending.rows === 'string' ? <Refused why={pending.rows} /> : <Preview {...pending} rows={pending.rows} />}
    </dialog>
  );
}

function giveUp(): void {
  pendingImport.value = undefined;
}

function Refused({ why }: { readonly why: string }) {
  return (
    <>
      <p class="refusal">{why}</p>
      <p>Nothing was imported; the sheet is as it was.</p>
      <div class="dialog-acts">
        <button type="button" onClick={giveUp}>
          Close
        </button>
      </div>
    </>
  );
}

function Preview({ sheet, rows }: PendingImport & { readonly rows: CsvRows }) {
  const nothing = rows.commands.length === 0;
  return (
    <>
      <p>{countsOf(rows)}</p>
      {rows.notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      <ul class="import-rows">
        {rows.commands.slice(0, SHOWN).map((command, index) => (
          <li key={`${index} ${rows.lines[index] ?? ''}`}>
            <span class="within">{`Line ${rows.lines[index] ?? ''}`}</span>
            <span>{commandWords(sheet, command)}</span>
          </li>
        ))}
      </ul>
      {rows.commands.length > SHOWN ? <p class="within">{`and ${rows.commands.length - SHOWN} more`}</p> : null}
      <div class="dialog-acts">
        <button type="button" onClick={giveUp}>
          {nothing ? 'Close' : 'Leave it'}
        </button>
        {nothing ? null : (
          <button type="button" class="primary" onClick={takeImport}>
            Import
          </button>
        )}
      </div>
    </>
  );
}

function countsOf({ added, updated, unchanged }: CsvRows): string {
  const parts = [
    added > 0 ? `adds ${rowsInWords(added)}` : '',
    updated > 0 ? `changes ${rowsInWords(updated)}` : '',
    unchanged > 0 ? `says nothing new of ${rowsInWords(unchanged)}` : '',
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'The file holds no rows.' : `The file ${parts.join(', ')}.`;
}

function rowsInWords(count: number): string {
  return count === 1 ? '1 row' : `${count} rows`;
}

/** One command as a line of the preview: 'Bed 3: Length 60 ft', or a new row with its first entries. */
function commandWords(sheet: string, command: Command): string {
  const book = workbookNow();
  if (book === undefined) return '';
  const columnName = (column: string): string => columnAt(book, { sheet, column })?.name ?? column;
  if (command.command === 'insert row') {
    const entries = Object.entries(command.entries).filter(([, entry]) => entry !== '');
    return `New: ${entries.map(([column, entry]) => `${columnName(column)} ${entry}`).join(', ')}`;
  }
  if (command.command !== 'set cell') return command.command;
  const slot = rowWithId(book, sheet, command.row);
  const name = slot === undefined ? '' : rowName(book, sheet, slot);
  return `${name}: ${columnName(command.column)} ${command.entry === '' ? 'emptied' : command.entry}`;
}
