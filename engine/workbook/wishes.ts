// From what a face wishes (edits with typed text) to steps, or the sentence that refuses it. Steps are applied one by one as
// they are found, so that a later wish sees the earlier ones; the caller takes all back where one is refused.

import { nearestName } from '../language/nearest.ts';
import { NOTHING, otherColumnFor, readContent, rowName, typedUnit } from './cells.ts';
import { checkText } from './compile.ts';
import type { Edit, Refusal } from './face.ts';
import { isHidden } from './names.ts';
import { findSheetColumn, isComputed, isEnteredSheet, isTyped, type Sheet } from './sheet.ts';
import type { State } from './state.ts';
import type { Step } from './steps.ts';

/** Does one step at once. */
export type Do = (step: Step) => void;

/** Why a wish is refused, and where. */
export type Refused = Omit<Refusal, 'refused' | 'index'>;

/** Does what an edit asks for by steps; undefined where all went well. `inserted` takes the slot of a new row. */
export function grant(edit: Edit, state: State, perform: Do, inserted: number[]): Refused | undefined {
  switch (edit.edit) {
    case 'cell':
      return setCell(edit.table, edit.row, edit.column, edit.entry, state, perform);
    case 'take back':
      return takeBack(edit, state, perform);
    case 'insert row':
      return insertRow(edit, state, perform, inserted);
    case 'remove row':
      return removeRow(edit.table, edit.row, state, perform);
    case 'formula':
      return setFormula(edit, state, perform);
    case 'add column':
      return addColumn(edit, state, perform);
    case 'remove column':
      return removeColumn(edit, state, perform);
    case 'units':
      if (edit.units !== state.units) perform({ step: 'units', units: edit.units });
      return undefined;
    case 'today':
      if (!Number.isInteger(edit.today)) return { why: 'Today must be a whole day, such as 15 Mar 2027.' };
      perform({ step: 'today', today: edit.today });
      return undefined;
  }
}

function unknownSheet(table: string, state: State): Refused {
  const near = nearestName(table, state.sheets.keys());
  return { table, why: `There is no sheet called ${table}${near === undefined ? '' : `: did you mean ${near}?`}` };
}

function unknownColumn(sheet: Sheet, column: string): Refused {
  const near = nearestName(
    column,
    sheet.columns.map((one) => one.declaration.name),
  );
  return {
    table: sheet.name,
    column,
    why: `${sheet.name} has no column called ${column}${near === undefined ? '.' : `: did you mean ${near}?`}`,
  };
}

function missingRow(sheet: Sheet, row: number): Refused | undefined {
  return sheet.data.live[row] === 1
    ? undefined
    : { table: sheet.name, row, why: `${sheet.name} has no such row any more.` };
}

function setCell(
  table: string,
  row: number,
  name: string,
  entry: string,
  state: State,
  perform: Do,
): Refused | undefined {
  const sheet = state.sheet(table);
  if (sheet === undefined) return unknownSheet(table, state);
  const column = findSheetColumn(sheet, name);
  if (column === undefined) return unknownColumn(sheet, name);
  const gone = missingRow(sheet, row);
  if (gone !== undefined) return gone;
  const place = { table, row, column: name };
  if (column.role === 'made')
    return {
      ...place,
      why: `${name} follows from the rows of ${sheet.name} and isn't typed: change what the rows are made from.`,
    };
  if (isComputed(column) && (sheet.source.from === 'pairs' || sheet.source.from === 'events')) {
    return {
      ...place,
      why: `Rows of ${sheet.name} are laid out anew with every change, so ${name} can't be typed over here.`,
    };
  }
  if (entry.trim() === '' && isComputed(column)) {
    if (column.overrides.has(row)) perform({ step: 'cell', table, column: name, row, content: NOTHING, own: false });
    return undefined;
  }
  const read = readContent(column, entry, state);
  if (!read.ok) {
    const other = otherColumnFor(sheet, column, entry, state);
    if (other === undefined) return { ...place, why: read.why };
    perform({ step: 'cell', table, column: name, row, content: NOTHING, own: false });
    return setCell(table, row, other.declaration.name, entry, state, perform);
  }
  if (sheet.declaration.key === name) {
    const refused = refuseKey(sheet, row, read.content.state === 0 ? state.model.texts.text(read.content.value) : '');
    if (refused !== undefined) return { ...place, why: refused };
  }
  perform({ step: 'cell', table, column: name, row, content: read.content, own: true });
  return undefined;
}

function refuseKey(sheet: Sheet, row: number | undefined, key: string): string | undefined {
  const name = sheet.declaration.key ?? '';
  if (key === '') return `${name} names the row, so it can't be empty: write a name.`;
  const taken = sheet.keys?.get(key.toLowerCase());
  return taken === undefined || taken === row
    ? undefined
    : `${sheet.name} already has a row called “${key}”: choose another name.`;
}

function takeBack(edit: Extract<Edit, { edit: 'take back' }>, state: State, perform: Do): Refused | undefined {
  const sheet = state.sheet(edit.table);
  if (sheet === undefined) return unknownSheet(edit.table, state);
  const column = findSheetColumn(sheet, edit.column);
  if (column === undefined) return unknownColumn(sheet, edit.column);
  if (column.overrides.has(edit.row)) {
    perform({ step: 'cell', table: edit.table, column: edit.column, row: edit.row, content: NOTHING, own: false });
  }
  return undefined;
}

function insertRow(
  edit: Extract<Edit, { edit: 'insert row' }>,
  state: State,
  perform: Do,
  inserted: number[],
): Refused | undefined {
  const sheet = state.sheet(edit.table);
  if (sheet === undefined) return unknownSheet(edit.table, state);
  if (!isEnteredSheet(sheet))
    return { table: edit.table, why: `Rows of ${sheet.name} follow from other sheets; none can be added by hand.` };
  const { key } = sheet.declaration;
  if (key !== undefined) {
    const refused = refuseKey(sheet, undefined, (edit.entries[key] ?? '').trim());
    if (refused !== undefined) return { table: edit.table, column: key, why: refused };
  }
  const row = sheet.data.length;
  perform({ step: 'row', table: edit.table, row, alive: true });
  for (const [name, entry] of Object.entries(edit.entries)) {
    if (entry.trim() === '') continue;
    const refused = setCell(edit.table, row, name, entry, state, perform);
    if (refused !== undefined) return refused;
  }
  inserted.push(row);
  return undefined;
}

function removeRow(table: string, row: number, state: State, perform: Do): Refused | undefined {
  const sheet = state.sheet(table);
  if (sheet === undefined) return unknownSheet(table, state);
  if (!isEnteredSheet(sheet))
    return { table, why: `Rows of ${sheet.name} follow from other sheets; none can be removed by hand.` };
  const gone = missingRow(sheet, row);
  if (gone !== undefined) return gone;
  const user = firstUser(sheet, row, state);
  if (user !== undefined) {
    return {
      table,
      row,
      why: `${rowName(sheet, row, state)} is still named in ${user}: change that first, then remove it.`,
    };
  }
  clearRow(sheet, row, state, perform);
  for (const other of state.sheets.values()) {
    if (other.source.from === 'each' && other.source.table === table) clearRow(other, row, state, perform);
  }
  perform({ step: 'row', table, row, alive: false });
  return undefined;
}

/** A cell whose typed link names the row: 'Plantings / Onions early / Variety'. */
function firstUser(sheet: Sheet, row: number, state: State): string | undefined {
  for (const other of state.sheets.values()) {
    for (const column of other.columns) {
      if (column.type?.kind !== 'link' || column.type.table !== sheet.name || column.role === 'made') continue;
      for (let at = 0; at < other.data.length; at++) {
        if (
          other.data.live[at] === 1 &&
          column.data.states[at] === 0 &&
          column.data.values[at] === row &&
          isTyped(column, at)
        ) {
          return `${other.name} / ${rowName(other, at, state)} / ${column.declaration.name}`;
        }
      }
    }
  }
  return undefined;
}

/** Empties a row's typed cells, so that undo has them to put back. */
function clearRow(sheet: Sheet, row: number, state: State, perform: Do): void {
  for (const column of sheet.columns) {
    if (column.role === 'made' || !isTyped(column, row)) continue;
    if (column.role === 'entered' && column.data.states[row] !== 0 && typedUnit(column, row, state) === undefined)
      continue;
    perform({ step: 'cell', table: sheet.name, column: column.declaration.name, row, content: NOTHING, own: false });
  }
}

function setFormula(edit: Extract<Edit, { edit: 'formula' }>, state: State, perform: Do): Refused | undefined {
  const sheet = state.sheet(edit.table);
  if (sheet === undefined) return unknownSheet(edit.table, state);
  const column = findSheetColumn(sheet, edit.column);
  if (column === undefined) {
    const refused = refuseColumnName(sheet, edit.column);
    if (refused !== undefined) return refused;
    perform({
      step: 'new column',
      table: edit.table,
      column: edit.column,
      formula: edit.formula,
      type: undefined,
      at: sheet.columns.length,
    });
    return undefined;
  }
  if (!isComputed(column)) {
    return {
      table: edit.table,
      column: edit.column,
      why: `${edit.column} is typed by hand and has no formula: add a column of your own for this one.`,
    };
  }
  if (edit.formula.trim() === '') {
    return {
      table: edit.table,
      column: edit.column,
      why: 'A computed column needs a formula: write one, or remove the column if it is your own.',
    };
  }
  perform({ step: 'formula', table: edit.table, column: edit.column, formula: edit.formula });
  return undefined;
}

function refuseColumnName(sheet: Sheet, name: string): Refused | undefined {
  const place = { table: sheet.name, column: name };
  if (name.trim() === '' || name !== name.trim())
    return { ...place, why: 'A column needs a name without blanks at its ends.' };
  if (isHidden(name) || /[[\]']/.test(name))
    return { ...place, why: `“${name}” can't be a column's name: leave out brackets, quotes and a dot in front.` };
  if (sheet.columns.some((column) => column.declaration.name.toLowerCase() === name.toLowerCase())) {
    return { ...place, why: `${sheet.name} already has a column called ${name}: choose another name.` };
  }
  return undefined;
}

function addColumn(edit: Extract<Edit, { edit: 'add column' }>, state: State, perform: Do): Refused | undefined {
  const sheet = state.sheet(edit.table);
  if (sheet === undefined) return unknownSheet(edit.table, state);
  const refused = refuseColumnName(sheet, edit.column);
  if (refused !== undefined) return refused;
  const { type } = edit;
  if (type.type === 'number' && state.vocabulary.find(type.unit[state.units]) === undefined) {
    return {
      table: edit.table,
      column: edit.column,
      why: `“${type.unit[state.units]}” is not a unit known here: use one such as in, cm, lb or kg.`,
    };
  }
  if (type.type === 'link' && state.sheet(type.table)?.declaration.key === undefined) {
    return {
      table: edit.table,
      column: edit.column,
      why: `A link needs a sheet whose rows have names; ${type.table} is none.`,
    };
  }
  perform({ step: 'new column', table: edit.table, column: edit.column, formula: '', type, at: sheet.columns.length });
  return undefined;
}

function removeColumn(edit: Extract<Edit, { edit: 'remove column' }>, state: State, perform: Do): Refused | undefined {
  const sheet = state.sheet(edit.table);
  if (sheet === undefined) return unknownSheet(edit.table, state);
  const column = findSheetColumn(sheet, edit.column);
  if (column === undefined) return unknownColumn(sheet, edit.column);
  if (column.declaration.own !== true)
    return {
      table: edit.table,
      column: edit.column,
      why: `${edit.column} belongs to the sheet; only columns you added can be removed.`,
    };
  for (let row = 0; row < sheet.data.length; row++) {
    if (sheet.data.live[row] === 1 && isTyped(column, row)) {
      perform({ step: 'cell', table: sheet.name, column: edit.column, row, content: NOTHING, own: false });
    }
  }
  perform({ step: 'drop column', table: edit.table, column: edit.column });
  return undefined;
}

/** What a formula would be in a column, without doing anything. */
export function tryText(table: string, name: string, formula: string, state: State): ReturnType<typeof checkText> {
  const sheet = state.sheet(table);
  const column = sheet === undefined ? undefined : findSheetColumn(sheet, name);
  const wanted = column === undefined || column.inferred || !isComputed(column) ? undefined : column.type;
  return checkText(formula, table, wanted, name, state);
}
