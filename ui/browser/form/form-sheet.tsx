// A sheet of one row, as a form: its fields under their questions, two columns wide, each with its unit and its sentence.
// A field is walked to and typed over like a cell of the grid, under the same entry rules.

import { useLayoutEffect } from 'preact/hooks';
import type { SheetView } from '../../../engine/index.ts';
import { onlyRow, selectCell, selection } from '../store/selection.ts';
import { groupsOf } from '../store/sheets.ts';
import { workbook } from '../store/workbook.ts';
import { FormField } from './form-field.tsx';

export function FormSheet({ sheet }: { readonly sheet: SheetView }) {
  const row = onlyRow(workbook(), sheet.id);
  const first = sheet.columns[0]?.id;
  useLayoutEffect(() => {
    // A sheet that was gone to as a whole has its first field in hand.
    if (selection.peek().row !== undefined || row === undefined || first === undefined) return;
    selectCell({ sheet: sheet.id, row, column: first });
  }, [sheet.id, row?.id, first]);
  if (row === undefined) return null;
  return (
    <div class="form-sheet">
      {groupsOf(sheet.columns).map(({ name, within }) => (
        <section key={name} class="form-group" aria-label={name === '' ? undefined : name}>
          {name === '' ? null : <h3>{name}</h3>}
          <div class="form-fields">
            {within.map((column) => (
              <FormField key={column.id} sheet={sheet.id} row={row} column={column} arrives />
            ))}
          </div>
        </section>
      ))}
    </div>
  );
}
