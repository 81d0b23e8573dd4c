// One row as a card: what needs attention, its picture at full width, its fields under their questions, and ways to copy or
// remove it.

import type { TableView } from '../../../engine/index.ts';
import { Fields } from '../row-panel/fields.tsx';
import { Findings } from '../row-panel/findings.tsx';
import { RowPictures } from '../row-panel/row-panel.tsx';
import { duplicateRow, removeRows } from '../sheet-actions.ts';
import { readOnly, workbook } from '../state.ts';
import { visit } from './places.ts';

export function Card({ table, row }: { readonly table: TableView; readonly row: number }) {
  return (
    <article class="card" key={`${table.name} ${row}`}>
      <Findings table={table.name} row={row} />
      <RowPictures table={table} row={row} />
      <Fields table={table} row={row} arrives />
      {table.entered && !table.oneRow && readOnly.value === undefined ? (
        <div class="phone-acts">
          <button type="button" onClick={() => duplicateRow(table.name, row)}>
            Duplicate
          </button>
          <button
            type="button"
            onClick={() => {
              removeRows(table.name, [row]);
              if (!workbook().rows(table.name).includes(row)) visit({ at: 'sheet', table: table.name });
            }}
          >
            Remove
          </button>
        </div>
      ) : null}
    </article>
  );
}
