// One field of a form sheet: shows the value as a grid's cell would, becomes the entry box when it is pressed, typed on or
// opened with Enter, and keeps a bad entry open with its sentence.

import { useSignal, useSignalEffect } from '@preact/signals';
import { useId, useLayoutEffect, useRef } from 'preact/hooks';
import { type CellView, type ColumnView, cellView, type Done, type Refusal, rowName } from '../../../engine/index.ts';
import { EntryBox } from '../entry/entry-box.ts';
import { tellLost } from '../entry/entry-lost.ts';
import { cellClasses, isErrorCell, originWords } from '../grid/cell-words.ts';
import { typeCell } from '../store/change.ts';
import { findingsFor } from '../store/findings.ts';
import { arrival, type RowAt, selectCell, selection } from '../store/selection.ts';
import { endsAfter, unitBehind } from '../store/shown.ts';
import { withFetched } from '../store/wanted.ts';
import { workbook, workbookNow } from '../store/workbook.ts';

export interface FieldProps {
  readonly sheet: string;
  readonly row: RowAt;
  readonly column: ColumnView;
  /** Takes the focus when someone goes to its cell: true in the one place of the page that stands for the cell. */
  readonly arrives?: boolean;
}

export function FormField({ sheet, row, column, arrives = false }: FieldProps) {
  const id = useId();
  /** What the entry box opens with while it is open. */
  const typing = useSignal<string | undefined>(undefined);
  const button = useRef<HTMLButtonElement>(null);
  /** The focus comes back to the field once its box is closed. */
  const comesBack = useRef(false);
  const cell = cellView(workbook(), sheet, row.slot, column.id);
  const [found] = findingsFor(sheet, row.id, column.id);
  const { value: at } = selection;
  const inHand = at.sheet === sheet && at.column === column.id;

  useSignalEffect(() => {
    const count = arrival.value;
    const to = selection.peek();
    if (!arrives || count === 0) return;
    if (to.sheet === sheet && to.column === column.id && to.row !== undefined) {
      requestAnimationFrame(() => {
        button.current?.focus({ preventScroll: true });
        button.current?.scrollIntoView({ block: 'nearest' });
      });
    }
  });

  useLayoutEffect(() => {
    if (typing.value !== undefined || !comesBack.current) return;
    comesBack.current = false;
    button.current?.focus();
  }, [typing.value]);

  const open = (text: string): void => {
    if (column.role !== 'made') typing.value = text;
  };
  return (
    <div class={`field ${cellClasses(cell, column, { found })}${inHand ? ' in-hand' : ''}`}>
      <span class="field-name" id={id}>
        {column.name}
      </span>
      {typing.value === undefined ? (
        <button
          type="button"
          ref={button}
          class="field-value"
          id={`${id}-value`}
          aria-labelledby={`${id} ${id}-value`}
          aria-description={[originWords(cell), found?.says ?? ''].filter(Boolean).join(', ')}
          title={found?.says}
          onFocus={() => selectCell({ sheet, row, column: column.id })}
          onClick={() => open(cell.entry)}
          onKeyDown={(event) => {
            if (event.ctrlKey || event.metaKey || event.altKey || event.key.length !== 1 || event.key === ' ') return;
            open(event.key);
            event.preventDefault();
          }}
        >
          <Value cell={cell} column={column} />
        </button>
      ) : (
        <OpenField
          {...{ sheet, row, column }}
          text={typing.value}
          onClose={(stay) => {
            typing.value = undefined;
            comesBack.current = stay;
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
      <span>{cell.figure}</span>
      {cell.fullUnit === '' ? null : <span class="field-unit">{unitBehind(cell.fullUnit)}</span>}
      {cell.ends === '' ? null : <span class="field-unit">{endsAfter(cell.ends)}</span>}
    </>
  );
}

interface OpenProps extends FieldProps {
  readonly text: string;
  /** `stay` is false where the person has gone elsewhere: the focus is theirs. */
  readonly onClose: (stay: boolean) => void;
}

/** The entry box in the field's place. */
function OpenField({ sheet, row, column, text, onClose }: OpenProps) {
  const host = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const book = workbookNow();
    if (host.current === null || book === undefined) return undefined;
    const before = cellView(book, sheet, row.slot, column.id).entry;
    const named = rowName(book, sheet, row.slot);
    let closed = false;
    const close = (stay: boolean): void => {
      if (closed) return;
      closed = true;
      onClose(stay);
    };
    const take = (stay: boolean): void => {
      const entry = box.text();
      if (box.holds(before) || closed) {
        close(stay);
        return;
      }
      if (box.asks() !== undefined && box.held() !== undefined) return;
      withFetched<Done | Refusal>(
        () => typeCell({ sheet, row: row.id, column: column.id }, column.name, entry, { quietly: true }),
        ({ refused }) => refused,
        ({ refused }) => {
          // A refused entry stays open: the sentence stands under it.
          if (!refused) close(stay);
        },
      );
    };
    const box = new EntryBox({ book, sheet, column, text, label: column.name, onPick: () => take(true) });
    host.current.append(box.input);
    box.open();
    box.input.focus({ preventScroll: true });
    const byKey = text !== before;
    if (byKey) {
      box.input.setSelectionRange(text.length, text.length);
      box.input.dispatchEvent(new Event('input'));
    } else box.input.select();
    const input: HTMLElement = box.input;
    input.addEventListener('keydown', (event) => {
      if (event.key === 'Enter' && !event.altKey) take(true);
      else if (event.key === 'Escape') close(true);
      else return;
      event.preventDefault();
      event.stopPropagation();
    });
    input.addEventListener('blur', () => take(false));
    return () => {
      // The field goes while its entry is open: its row or column went.
      if (!closed && !box.holds(before)) {
        tellLost(book, { sheet, row: row.id, column: column.id, label: `${column.name}, ${named}`, text: box.text() });
      }
      closed = true;
      box.close();
    };
  }, []);
  return <div class="field-open" ref={host} />;
}
