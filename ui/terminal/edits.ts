// `set` and `formula`: one edit of a workbook file, written back whole or not at all.

import {
  type Book,
  cellView,
  message,
  rowId,
  rowName,
  sheetViews,
  tryFormula,
  type Workbook,
} from '../../engine/index.ts';
import type { Given } from './arguments.ts';
import { diagnosticInWords } from './evaluate.ts';
import { findColumn, findRow, findTable, placeInWords } from './places.ts';
import { changeWorkbook } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

/** Types one cell's value, as a person would; an empty one clears the cell or takes it back to its formula. */
export function setCell(given: Given, world: World): Promise<number> {
  const [file = ''] = given.words;
  return changeWorkbook(file, given, world, (workbook) => ({ says: typed(workbook, given.words) }));
}

/** Types the entry and gives the line that says what stands there now. */
function typed(workbook: Workbook, words: readonly string[]): string {
  const [file = '', tableName = '', key = '', columnName = '', entry = ''] = words;
  const table = findTable(workbook, file, tableName);
  const row = findRow(workbook, table, file, key);
  const column = findColumn(table, file, columnName);
  const place = placeInWords(table, rowName(workbook, table.id, row), column.name);
  const cell = { sheet: table.id, row: rowId(workbook, table.id, row), column: column.id };
  const done = workbook.do(
    [{ command: 'set cell', ...cell, entry }],
    message('type cell', { column: column.name, entry }),
  );
  if (done.refused) return refuse(onOneLine(`${file}: ${place}: ${done.why}`));
  const { text, unit, number } = cellView(workbook, table.id, row, column.id);
  const shown = text === '' ? 'blank' : text;
  const columnUnit =
    number === undefined || unit !== '' || column.unit === '' || column.unit === '%' ? '' : ` ${column.unit}`;
  return `${place}: ${onOneLine(shown)}${columnUnit}\n`;
}

/** Replaces a computed column's formula or adds a computed column; a formula that doesn't check is refused. */
export function setFormula(given: Given, world: World): Promise<number> {
  const [file = ''] = given.words;
  return changeWorkbook(file, given, world, (workbook) => ({ says: replaced(workbook, given.words) }));
}

/** Sets the formula and gives the lines that say so, and which others no longer check. */
function replaced(workbook: Workbook, words: readonly string[]): string {
  const [file = '', tableName = '', columnName = '', given = ''] = words;
  const formula = given.replace(/^\s*=/, '').trim();
  const table = findTable(workbook, file, tableName);
  const known = table.columns.find((one) => one.name.toLowerCase() === columnName.trim().toLowerCase());
  const column = known?.name ?? columnName;
  const place = placeInWords(table, '', column);
  const failing = failingFormulas(workbook);
  const tried = tryFormula(workbook, table.id, known?.id, formula);
  if (!tried.ok) return refuse(onOneLine(`${file}: ${place}: ${diagnosticInWords(tried.diagnostic, formula)}`));
  const done = workbook.do(
    [
      known === undefined
        ? { command: 'add formula', sheet: table.id, name: column, formula }
        : { command: 'set formula', sheet: table.id, column: known.id, formula },
    ],
    message('set formula', { column }),
  );
  if (done.refused) return refuse(onOneLine(`${file}: ${place}: ${done.why}`));
  const own = failingFormulas(workbook).get(place);
  if (own !== undefined) return refuse(onOneLine(`${file}: ${place}: ${own}`));
  const broken = [...failingFormulas(workbook)].filter(([other]) => !failing.has(other));
  const lines = broken.map(([other, why]) => `${onOneLine(`${other} no longer checks: ${why}`)}\n`);
  return `${place} = ${formula}\n${lines.join('')}`;
}

/** Columns whose formula doesn't check or goes in a circle, with the sentence. */
function failingFormulas(book: Book): ReadonlyMap<string, string> {
  return new Map(
    sheetViews(book).flatMap((table) =>
      table.columns.flatMap(({ name, diagnostic }): [string, string][] =>
        diagnostic === undefined ? [] : [[placeInWords(table, '', name), diagnostic.why]],
      ),
    ),
  );
}
