// What own sheets read that is a person's own too and does not go along with them: other own sheets, own columns of the template's
// sheets. A file of sheets tells its names, so that who makes it and who brings it in hears of it. Called by sheets-file.ts.

import { idsIn } from '../language/stored.ts';
import { type Book, sheetOf } from '../queries/book.ts';
import type { RowSource, SheetDeclaration } from '../schema/declaration.ts';

/** By ids of sheets ('notes') and columns ('plantings/spare'): what people call them. */
export type Elsewhere = Readonly<Record<string, string>>;

/** Own sheets beside these that they lead to or read, and own columns of the template's sheets. */
export function elsewhereOf(book: Book, sheets: readonly SheetDeclaration[]): Elsewhere {
  const along = new Set(sheets.map(({ id }) => id));
  const found = new Map<string, string>();
  for (const reference of sheets.flatMap(referencesOf)) {
    const [id = '', columnId] = reference.split('/');
    const sheet = along.has(id) ? undefined : sheetOf(book, id);
    const column = columnId === undefined ? undefined : sheet?.column(columnId);
    if (sheet?.schema.own === true) found.set(id, sheet.name);
    else if (sheet !== undefined && column?.own === true) found.set(reference, `${sheet.name}, ${column.name}`);
  }
  return Object.fromEntries(found);
}

/** The names of those that a workbook has not. */
export function missingHere({ document }: Book, elsewhere: Elsewhere): readonly string[] {
  const { schema } = document.program;
  return Object.entries(elsewhere).flatMap(([reference, name]) => {
    const [id = '', column] = reference.split('/');
    const isHere = column === undefined ? schema.sheet(id) : schema.column(id, column);
    return isHere === undefined ? [name] : [];
  });
}

/** Ids of all sheets and columns that a sheet names in formulas, links and the source of its rows. */
function referencesOf({ columns, checks, rows }: SheetDeclaration): readonly string[] {
  const formulas = [...columns.map(({ formula }) => formula), ...checks.map(({ says }) => says), ...formulasOf(rows)];
  const inFormulas = formulas.flatMap(idsIn);
  const links = columns.flatMap(({ type }) => (type.type === 'link' ? [type.sheet] : []));
  return [...links, ...sheetsOf(rows), ...inFormulas];
}

function formulasOf(rows: RowSource): readonly string[] {
  if (rows.from === 'span') return [rows.first, rows.last];
  return rows.from === 'each' || rows.from === 'pairs' ? [rows.where] : [];
}

function sheetsOf(rows: RowSource): readonly string[] {
  switch (rows.from) {
    case 'each':
      return [rows.sheet];
    case 'pairs':
      return rows.sheets;
    case 'events':
      return rows.dates.map(({ sheet, column }) => `${sheet}/${column}`);
    default:
      return [];
  }
}
