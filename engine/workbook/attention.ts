// What the checks found: formulas that don't check, cells that became errors where they began, empty cells that must be
// filled, and the sentences of the sheets' own checks. Read when asked for; keeps nothing.

import { BLANK, FILLED } from '../values/column.ts';
import { isError } from '../values/error.ts';
import { rowName, scalarAt } from './cells.ts';
import type { Attention } from './face.ts';
import { checkColumn } from './names.ts';
import { isComputed, type Sheet } from './sheet.ts';
import type { State } from './state.ts';

const ORDER: Readonly<Record<Attention['level'], number>> = { error: 0, warning: 1, note: 2 };

/** Everything that needs a look, errors first, then in the order of sheets and rows. */
export function attentionOf(state: State): readonly Attention[] {
  const found: Attention[] = [];
  for (const sheet of state.sheets.values()) {
    complaints(sheet, found);
    const rows = sheet.data.rows();
    faults(sheet, rows, state, found);
    missing(sheet, rows, state, found);
    checks(sheet, rows, state, found);
  }
  return found.sort((a, b) => ORDER[a.level] - ORDER[b.level]);
}

function complaints(sheet: Sheet, found: Attention[]): void {
  for (const { complaint, declaration } of [...sheet.columns, ...sheet.hidden]) {
    if (complaint === undefined) continue;
    const column = declaration.name.startsWith('·') ? '' : declaration.name;
    found.push({ level: 'error', table: sheet.name, row: undefined, rowName: '', column, says: complaint.why });
  }
}

function faults(sheet: Sheet, rows: Int32Array, state: State, found: Attention[]): void {
  for (const column of sheet.columns) {
    if (!isComputed(column) || column.complaint !== undefined || column.data.exceptions === 0) continue;
    const { name } = column.declaration;
    for (const row of rows) {
      if ((column.data.states[row] ?? FILLED) <= BLANK) continue;
      const error = scalarAt(column, row, state);
      if (!isError(error) || error.at?.table !== sheet.name || error.at.row !== row || error.at.column !== name)
        continue;
      found.push({
        level: 'error',
        table: sheet.name,
        row,
        rowName: rowName(sheet, row, state),
        column: name,
        says: error.why,
      });
    }
  }
}

function missing(sheet: Sheet, rows: Int32Array, state: State, found: Attention[]): void {
  for (const { declaration, data, role } of sheet.columns) {
    if (declaration.required !== true || role !== 'entered' || data.exceptions === 0) continue;
    for (const row of rows) {
      if (data.states[row] === FILLED) continue;
      const says = `${declaration.name} is empty: fill it in, much else rests on it.`;
      found.push({
        level: 'warning',
        table: sheet.name,
        row,
        rowName: rowName(sheet, row, state),
        column: declaration.name,
        says,
      });
    }
  }
}

function checks(sheet: Sheet, rows: Int32Array, state: State, found: Attention[]): void {
  sheet.declaration.checks.forEach((check, index) => {
    const column = sheet.hidden.find((one) => one.declaration.name === checkColumn(index));
    if (column === undefined || column.complaint !== undefined) return;
    for (const row of rows) {
      if (column.data.states[row] !== FILLED) continue;
      const says = state.model.texts.text(column.data.values[row] ?? 0);
      if (says === '') continue;
      found.push({
        level: check.level,
        table: sheet.name,
        row,
        rowName: rowName(sheet, row, state),
        column: check.column,
        says,
      });
    }
  });
}
