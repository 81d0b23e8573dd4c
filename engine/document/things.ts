// What an operation changes, by a name: of two people's changes of one thing the later counts.

import type { Operation } from './transaction.ts';

/** By lengths, so that whatever stands in an id no two cells are called the same: the names of a pasted block are made in no time. */
export function cellThing(sheet: string, row: string, column: string): string {
  return `cell ${sheet.length} ${row.length} ${sheet} ${row} ${column}`;
}

/** The sheet, row and column of a cell's name; undefined for the name of anything else. */
export function cellOfThing(
  thing: string,
): { readonly sheet: string; readonly row: string; readonly column: string } | undefined {
  const [, sheet, row] = /^cell (\d+) (\d+) /.exec(thing) ?? [];
  if (sheet === undefined || row === undefined) return undefined;
  const from = sheet.length + row.length + 7;
  const rowFrom = from + Number(sheet) + 1;
  const columnFrom = rowFrom + Number(row) + 1;
  return {
    sheet: thing.slice(from, rowFrom - 1),
    row: thing.slice(rowFrom, columnFrom - 1),
    column: thing.slice(columnFrom),
  };
}

/** A row by the cells in it, whichever. */
export function rowThing(sheet: string, row: string): string {
  return `cells ${sheet.length} ${sheet} ${row}`;
}

/** Whether a row is there. */
export function wholeRowThing(sheet: string, row: string): string {
  return JSON.stringify(['row', sheet, row]);
}

/** Where a row stands among the others. */
export function rowPlaceThing(sheet: string, row: string): string {
  return JSON.stringify(['row place', sheet, row]);
}

/** Of many rows at once each is a thing of its own, so they are named one by one (transaction.ts). */
export function thingOf(operation: Exclude<Operation, { readonly op: 'insert rows' | 'remove rows' }>): string {
  switch (operation.op) {
    case 'cell':
      return cellThing(operation.sheet, operation.row, operation.column);
    case 'range':
      return JSON.stringify(['range', operation.sheet, operation.row, operation.column]);
    case 'insert row':
    case 'remove row':
    case 'keep row':
      return wholeRowThing(operation.sheet, operation.row);
    case 'move row':
      return rowPlaceThing(operation.sheet, operation.row);
    case 'formula':
      return JSON.stringify(['formula', operation.sheet, operation.column]);
    case 'add column':
      return JSON.stringify(['column', operation.sheet, operation.column.id]);
    case 'remove column':
      return JSON.stringify(['column', operation.sheet, operation.column]);
    case 'rename column':
      return JSON.stringify(['column name', operation.sheet, operation.column]);
    case 'move column':
      return JSON.stringify(['column place', operation.sheet, operation.column]);
    case 'add sheet':
      return JSON.stringify(['sheet', operation.sheet.id]);
    case 'remove sheet':
      return JSON.stringify(['sheet', operation.sheet]);
    case 'rename sheet':
      return JSON.stringify(['sheet name', operation.sheet]);
    case 'move sheet':
      return JSON.stringify(['sheet place', operation.sheet]);
    case 'check':
      return JSON.stringify(['check', operation.sheet, operation.check]);
    case 'branch':
      return JSON.stringify(['branch', operation.branch]);
    case 'paper':
      return JSON.stringify(['paper', operation.paper]);
    case 'paper cell':
      return JSON.stringify(['paper cell', operation.paper, operation.cell]);
    case 'view':
      return JSON.stringify(['view', operation.sheet, operation.view]);
    case 'colour':
      return JSON.stringify(['colour', operation.sheet, operation.rule]);
    case 'note':
      return JSON.stringify(['note', operation.sheet, operation.row, operation.column]);
    default:
      return operation.op;
  }
}
