// One field of a form sheet: shows the value as a grid's cell would, becomes the entry box when it is pressed, typed on or
// opened with Enter, and keeps a bad entry open with its sentence.

import { useSignal, useSignalEffect } from '@preact/signals';
import { useId, useLayoutEffect, useRef } from 'preact/hooks';
import type { CellView, ColumnView } from '../../../engine/index.ts';
import { EntryBox } from '../entry/entry-box.ts';
import { beginFormula } from '../formula-line/requests.ts';
import { cellClasses, isErrorCell, standingWords } from '../grid/cell-face.ts';
import { clearCells, takeBack } from '../sheet-actions.ts';
import { arrival, attention, edit, readOnly, selection, selectPlace, workbook, workbookNow } from '../state.ts';

export interface FieldWishes {
  readonly table: string;
  readonly row: number;
  readonly column: ColumnView;
  /** Takes the focus when someone goes to its cell: true in the one place of the page that stands for the cell. */
  readonly arrives?: boolean;
}

export function FormField({ table, row, column, arrives = false }: FieldWishes) {
  const id = useId();
  /** What the entry box opens with while it is open. */
  const typing = useSignal<string | undefined>(undefined);
  const button = useRef<HTMLButtonElement>(null);
  const cell = workbook().cell(table, row, column.name);
  const found = attention.value.find(
    (each) => each.table === table && each.column === column.name && (each.row === undefined || each.row === row),
  );
  const place = { table, row, column: column.name };
  const inHand = selection.value.table === table && selection.value.column === column.name;

  useSignalEffect(() => {
    const count = arrival.value;
    const at = selection.peek();
    if (!arrives || count === 0) return;
    if (at.table === table && at.column === column.name && at.row !== undefined) {
      requestAnimationFrame(() => {
        button.current?.focus({ preventScroll: true });
        button.current?.scrollIntoView({ block: 'nearest' });
      });
    }
  });

  const open = (text: string): void => {
    if (column.role !== 'made' && readOnly.peek() === undefined) typing.value = text;
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey) return;
    if (event.altKey && event.key === 'Backspace') takeBack([place]);
    else if (event.key === 'Delete' || event.key === 'Backspace') clear();
    else if (event.key === '=' && column.role !== 'entered') beginFormula('=');
    else if (event.key.length === 1 && event.key !== ' ') open(event.key);
    else return;
    event.preventDefault();
  };
  const clear = (): void => {
    const view = workbookNow()?.table(table);
    if (view !== undefined) clearCells(view, [place]);
  };
  return (
    <div class={`field ${cellClasses(cell, column, found).join(' ')}${inHand ? ' in-hand' : ''}`}>
      <span class="field-name" id={id}>
        {column.name}
      </span>
      {typing.value === undefined ? (
        <button
          type="button"
          ref={button}
          class="field-value"
          aria-labelledby={id}
          aria-description={[cell.text, column.unit, standingWords(cell), found?.says ?? ''].filter(Boolean).join(', ')}
          title={found?.says}
          onFocus={() => selectPlace(place)}
          onClick={() => open(cell.entry)}
          onKeyDown={onKey}
        >
          <Value cell={cell} column={column} />
        </button>
      ) : (
        <OpenField
          {...{ table, row, column }}
          text={typing.value}
          onClose={() => {
            typing.value = undefined;
            requestAnimationFrame(() => button.current?.focus());
          }}
        />
      )}
      {column.note === '' ? null : <span class="field-note">{column.note}</span>}
    </div>
  );
}

function Value({ cell, column }: { readonly cell: CellView; readonly column: ColumnView }) {
  if (isErrorCell(cell)) return <span class="no-figure">see why</span>;
  if (cell.text === '') return <span class="nothing">{column.role === 'entered' ? 'not filled in' : 'blank'}</span>;
  return (
    <>
      <span>{cell.text}</span>
      {column.unit !== '' && /\d$/.test(cell.text) ? <span class="field-unit">{column.unit}</span> : null}
    </>
  );
}

interface OpenWishes extends FieldWishes {
  readonly text: string;
  readonly onClose: () => void;
}

/** The entry box in the field's place. */
function OpenField({ table, row, column, text, onClose }: OpenWishes) {
  const host = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const book = workbookNow();
    if (host.current === null || book === undefined) return undefined;
    const before = book.cell(table, row, column.name).entry;
    let closed = false;
    const close = (): void => {
      if (closed) return;
      closed = true;
      onClose();
    };
    const take = (): void => {
      const entry = box.text();
      if (entry === before || closed) {
        close();
        return;
      }
      const label = `${column.name}: ${entry === '' ? 'cleared' : entry}`;
      const done = edit([{ edit: 'cell', table, row, column: column.name, entry }], label, true);
      // A refused entry stays open: the sentence stands under it.
      if (!done.refused) close();
    };
    const box = new EntryBox({ workbook: book, table, column, text, label: column.name, onPick: take });
    host.current.append(box.input);
    box.open();
    box.input.focus({ preventScroll: true });
    const byKey = text !== before;
    if (byKey) {
      box.input.setSelectionRange(text.length, text.length);
      box.input.dispatchEvent(new Event('input'));
    } else box.input.select();
    box.input.addEventListener('keydown', (event) => {
      if (event.key === 'Enter') take();
      else if (event.key === 'Escape') close();
      else return;
      event.preventDefault();
      event.stopPropagation();
    });
    box.input.addEventListener('blur', take);
    return () => {
      closed = true;
      box.close();
    };
  }, []);
  return <div class="field-open" ref={host} />;
}
