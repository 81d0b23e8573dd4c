// The fields of a row under the questions they belong to, each with its reasons a press away. The panel and the phone's
// cards call it; a field is typed under the same rules as a cell of the grid.

import { useSignal } from '@preact/signals';
import type { ColumnView, TableView } from '../../../engine/index.ts';
import { FormField } from '../form/form-field.tsx';
import { canTakeBack, takeBack } from '../sheet-actions.ts';
import { attention, readOnly, workbook } from '../state.ts';
import { Reasons } from './reasons.tsx';

export interface FieldsWishes {
  readonly table: TableView;
  readonly row: number;
  /** Whether going to a cell ends at its field here; the grid has cells of its own for that. */
  readonly arrives?: boolean;
}

export function Fields({ table, row, arrives = false }: FieldsWishes) {
  return (
    <div class="fields">
      {groupsOf(table.columns).map(({ name, columns }) => (
        <section key={name} class="field-group" aria-label={name}>
          <h3>{name}</h3>
          {columns.map((column) => (
            <ReasonedField key={column.name} table={table.name} row={row} column={column} arrives={arrives} />
          ))}
        </section>
      ))}
    </div>
  );
}

export interface Group {
  readonly name: string;
  readonly columns: readonly ColumnView[];
}

/** Columns under their questions, each question where its first column stands. */
export function groupsOf(columns: readonly ColumnView[]): readonly Group[] {
  const groups = new Map<string, ColumnView[]>();
  for (const column of columns) groups.set(column.group, [...(groups.get(column.group) ?? []), column]);
  return [...groups].map(([name, within]) => ({ name, columns: within }));
}

interface FieldWishes {
  readonly table: string;
  readonly row: number;
  readonly column: ColumnView;
  readonly arrives: boolean;
}

function ReasonedField({ table, row, column, arrives }: FieldWishes) {
  const open = useSignal(false);
  const cell = workbook().cell(table, row, column.name);
  const place = { table, row, column: column.name };
  const found = attention.value.filter(
    (item) => item.table === table && item.row === row && item.column === column.name,
  );
  const hasReasons = column.role !== 'entered' || (typeof cell.value === 'object' && cell.value !== null);
  return (
    <div class="reasoned">
      <FormField table={table} row={row} column={column} arrives={arrives} />
      {hasReasons ? (
        <button
          type="button"
          class="quiet ask-why"
          aria-expanded={open.value}
          onClick={() => {
            open.value = !open.value;
          }}
        >
          Why<span class="spoken">: {column.name}</span>
        </button>
      ) : null}
      {found.map(({ says, level }) => (
        <p key={says} class={`finding level-${level}`}>
          {says}
        </p>
      ))}
      {open.value ? (
        <div class="reasons-room">
          <Reasons table={table} row={row} column={column.name} />
          {canTakeBack(place) && readOnly.value === undefined ? (
            <button type="button" class="quiet" onClick={() => takeBack([place])}>
              Back to the formula<span class="spoken">: {column.name}</span>
            </button>
          ) : null}
        </div>
      ) : null}
    </div>
  );
}
