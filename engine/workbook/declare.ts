// A workbook as a declaration again: what a file keeps. Formulas as they stand now, columns added by hand, and every typed
// cell by row. Opening it gives the same workbook, and declaring that one the same text.

import { isoDate } from '../values/civil.ts';
import type { ValueType } from '../values/type.ts';
import { entryOf, rowName, scalarAt } from './cells.ts';
import type {
  ColumnDeclaration,
  Entry,
  RowEntries,
  SheetDeclaration,
  TypeDeclaration,
  WorkbookDeclaration,
} from './declaration.ts';
import { isTyped, type Sheet, type SheetColumn } from './sheet.ts';
import type { State } from './state.ts';

export function declarationOf(state: State, opened: WorkbookDeclaration): WorkbookDeclaration {
  const rows: Record<string, readonly RowEntries[]> = {};
  for (const sheet of state.sheets.values()) {
    const given = rowsOf(sheet, state);
    if (given.length > 0) rows[sheet.name] = given;
  }
  return {
    ...opened,
    units: state.units,
    today: state.model.today.values[0] ?? opened.today,
    sheets: [...state.sheets.values()].map(sheetOf),
    rows,
  };
}

function sheetOf(sheet: Sheet): SheetDeclaration {
  return {
    ...sheet.declaration,
    columns: sheet.columns.filter((column) => column.role !== 'made').map(columnOf),
  };
}

function columnOf(column: SheetColumn): ColumnDeclaration {
  const type = column.inferred && column.type !== undefined ? declaredType(column.type) : column.declaration.type;
  return { ...column.declaration, type, formula: column.formula };
}

function declaredType(type: ValueType): TypeDeclaration {
  switch (type.kind) {
    case 'number':
      return { type: 'number', unit: { us: type.unit.symbol, si: type.unit.symbol } };
    case 'choice':
      return { type: 'choice', options: type.options };
    case 'link':
      return { type: 'link', table: type.table };
    default:
      return { type: type.kind };
  }
}

function rowsOf(sheet: Sheet, state: State): readonly RowEntries[] {
  const made = sheet.columns.filter((column) => column.role === 'made');
  const given: RowEntries[] = [];
  for (let row = 0; row < sheet.data.length; row++) {
    if (sheet.data.live[row] !== 1) continue;
    const entries: Record<string, Entry> = {};
    for (const column of sheet.columns) {
      const entry = column.role === 'made' || !isTyped(column, row) ? undefined : entryOf(column, row, state);
      if (entry !== undefined) entries[column.declaration.name] = entry;
    }
    if (made.length === 0) given.push(entries);
    else if (Object.keys(entries).length > 0) given.push({ ...madeNames(made, row, state), ...entries });
  }
  return given;
}

function madeNames(made: readonly SheetColumn[], row: number, state: State): RowEntries {
  const names: Record<string, Entry> = {};
  for (const column of made) {
    const value = scalarAt(column, row, state);
    const { type } = column;
    if (type?.kind === 'link' && typeof value === 'number') {
      const target = state.sheet(type.table);
      names[column.declaration.name] = target === undefined ? '' : rowName(target, value, state);
    } else if (type?.kind === 'date' && typeof value === 'number') names[column.declaration.name] = isoDate(value);
    else if (typeof value === 'string') names[column.declaration.name] = value;
  }
  return names;
}
