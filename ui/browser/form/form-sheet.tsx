// A sheet of one row, as a form: its fields under their questions, two columns wide, each with its unit and its sentence.
// A field is walked to and typed over like a cell of the grid, under the same entry rules.

import { useLayoutEffect } from 'preact/hooks';
import type { ColumnView, TableView } from '../../../engine/index.ts';
import { selection, selectPlace, workbook } from '../state.ts';
import { FormField } from './form-field.tsx';

export function FormSheet({ table }: { readonly table: TableView }) {
  const row = workbook().rows(table.name)[0];
  const first = table.columns[0]?.name;
  useLayoutEffect(() => {
    // A sheet that was gone to as a whole has its first field in hand.
    if (selection.peek().row === undefined && row !== undefined) selectPlace({ table: table.name, row, column: first });
  }, [table.name, row, first]);
  if (row === undefined) return null;
  return (
    <div class="form-sheet">
      {groupsOf(table.columns).map(({ name, columns }) => (
        <section key={name} class="form-group" aria-label={name}>
          <h3>{name}</h3>
          <div class="form-fields">
            {columns.map((column) => (
              <FormField key={column.name} table={table.name} row={row} column={column} arrives />
            ))}
          </div>
        </section>
      ))}
    </div>
  );
}

interface Group {
  readonly name: string;
  readonly columns: readonly ColumnView[];
}

function groupsOf(columns: readonly ColumnView[]): readonly Group[] {
  const groups = new Map<string, ColumnView[]>();
  for (const column of columns) groups.set(column.group, [...(groups.get(column.group) ?? []), column]);
  return [...groups].map(([name, within]) => ({ name, columns: within }));
}
