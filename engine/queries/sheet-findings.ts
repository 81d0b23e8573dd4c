// What needs a look in whole sheets and columns, and in rows themselves: formulas that don't check, names given twice, rows brought
// back, and what is kept aside. Few things, looked at every time.

import { contentInWords, placeContent } from '../document/cells.ts';
import type { ProgramSheet } from '../schema/compile.ts';
import { entry } from '../schema/records.ts';
import { isEnteredSheet, isMadeSheet } from '../schema/schema.ts';
import type { Book } from './book.ts';
import { type Finding, finding } from './finding.ts';

export function sheetFindings(book: Book): readonly Finding[] {
  return book.document.program.sheets.flatMap((sheet) => [
    ...diagnostics(book, sheet),
    ...namesakes(book, sheet),
    ...broughtBack(book, sheet),
    ...keptAside(book, sheet),
    ...goneColumns(book, sheet),
  ]);
}

function diagnostics(book: Book, sheet: ProgramSheet): readonly Finding[] {
  const say = (column: string, why: string): Finding =>
    finding(book, { level: 'error', sheet, column, check: '' }, undefined, why);
  return [
    ...sheet.rowDiagnostics.map(({ why }) => say('', why)),
    ...sheet.columns.flatMap(({ id, diagnostic }) => (diagnostic === undefined ? [] : [say(id, diagnostic.why)])),
    ...sheet.checks.flatMap(({ check, diagnostic }) =>
      diagnostic === undefined ? [] : [say(check.column, diagnostic.why)],
    ),
  ];
}

function namesakes(book: Book, sheet: ProgramSheet): readonly Finding[] {
  const { key } = sheet.schema;
  if (key === undefined) return [];
  return book.document
    .namesOf(sheet.id)
    .shared()
    .flatMap((slots) =>
      slots.map((slot) => {
        const says = `${slots.length} rows of ${sheet.name} have this name, and what names it means the first: give each its own.`;
        return finding(book, { level: 'error', sheet, column: key, check: '' }, slot, says);
      }),
    );
}

function broughtBack(book: Book, sheet: ProgramSheet): readonly Finding[] {
  if (!isEnteredSheet(sheet.schema)) return [];
  const says = 'Somebody removed this row while another changed it: keep it, or remove it again.';
  const about = { level: 'warning', sheet, column: sheet.schema.key ?? '', check: '' } as const;
  return book.document
    .rowsOf(sheet.id)
    .broughtBack()
    .map((slot) => finding(book, about, slot, says));
}

/** What was typed and has no place now. */
function keptAside(book: Book, sheet: ProgramSheet): readonly Finding[] {
  const { document } = book;
  if (document.shelf.isEmpty) return [];
  const found: Finding[] = [];
  for (const row of document.shelf.rows(sheet.id)) {
    const slot = document.slotOf(sheet.id, row);
    const isRemoved = document.rowsOf(sheet.id).record(row)?.removed !== undefined;
    if (slot === undefined && (isMadeSheet(sheet.schema) || isRemoved)) continue;
    for (const [columnId, content] of document.shelf.cells(sheet.id, row)) {
      const column = sheet.column(columnId);
      if (column === undefined) continue;
      const placed = placeContent(content, column, document.program, document);
      if (placed.ok) continue;
      const says = `${contentInWords(content)} is kept aside: ${placed.why}. Type it anew, or clear the cell.`;
      found.push(finding(book, { level: 'warning', sheet, column: columnId, check: '' }, slot, says));
    }
  }
  return found;
}

/** Typed cells of columns that the template has no more. Those of a column that a person took out are known to them. */
function goneColumns(book: Book, sheet: ProgramSheet): readonly Finding[] {
  const { document } = book;
  const { shelf, program } = document;
  if (shelf.isEmpty) return [];
  const own = entry(program.schema.own, sheet.id)?.columns;
  const contents = new Map<string, string[]>();
  for (const row of shelf.rows(sheet.id)) {
    if (document.rowsOf(sheet.id).record(row)?.removed !== undefined) continue;
    for (const [column, content] of shelf.cells(sheet.id, row)) {
      if (sheet.column(column) !== undefined || entry(own, column)?.removed === true) continue;
      contents.set(column, [...(contents.get(column) ?? []), contentInWords(content)]);
    }
  }
  return [...contents].map(([column, words]) => {
    const first = words.slice(0, 3).join(', ');
    const says = `${sheet.name} has a column “${column}” no more. What was typed there is kept aside: ${first}${words.length > 3 ? ` and ${words.length - 3} more` : ''}.`;
    return finding(book, { level: 'note', sheet, column: '', check: '' }, undefined, says);
  });
}
