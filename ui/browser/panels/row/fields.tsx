// The fields of a row under the questions they belong to, each with its reasons a press away. The panel and the phone's
// cards call it; a field is typed under the same rules as a cell of the grid.

import { useSignal } from '@preact/signals';
import { type ColumnView, cellView } from '../../../../engine/index.ts';
import { canTakeBack, takeBack } from '../../commands/cells.ts';
import { FormField } from '../../form/form-field.tsx';
import { isErrorCell } from '../../grid/cell-words.ts';
import { findingsAt } from '../../store/findings.ts';
import type { RowAt } from '../../store/selection.ts';
import { groupsOf } from '../../store/sheets.ts';
import { workbook } from '../../store/workbook.ts';
import type { PanelProps } from '../panel.ts';
import { Reasons } from './reasons-later.ts';

export interface FieldsProps extends PanelProps {
  /** Whether going to a cell ends at its field here; the grid has cells of its own for that. */
  readonly arrives?: boolean;
}

export function Fields({ sheet, row, arrives = false }: FieldsProps) {
  return (
    <div class="fields">
      {groupsOf(sheet.columns).map(({ name, within }) => (
        <section key={name} class="field-group" aria-label={name === '' ? undefined : name}>
          {name === '' ? null : <h3>{name}</h3>}
          {within.map((column) => (
            <ReasonedField key={column.id} sheet={sheet.id} row={row} column={column} arrives={arrives} />
          ))}
        </section>
      ))}
    </div>
  );
}

interface FieldProps {
  readonly sheet: string;
  readonly row: RowAt;
  readonly column: ColumnView;
  readonly arrives: boolean;
}

function ReasonedField({ sheet, row, column, arrives }: FieldProps) {
  const open = useSignal(false);
  const book = workbook();
  const cell = cellView(book, sheet, row.slot, column.id);
  const place = { sheet, row, column: column.id };
  const found = findingsAt(sheet, row.id, column.id);
  const hasReasons = column.role !== 'entered' || isErrorCell(cell);
  return (
    <div class="reasoned">
      <FormField sheet={sheet} row={row} column={column} arrives={arrives} />
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
          <Reasons {...place} />
          {canTakeBack(book, place) ? (
            <button type="button" class="quiet" onClick={() => takeBack([place])}>
              Back to the formula<span class="spoken">: {column.name}</span>
            </button>
          ) : null}
        </div>
      ) : null}
    </div>
  );
}
