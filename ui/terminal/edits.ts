// `set` and `formula`: one edit of a workbook file, written back whole or not at all.

import type { Workbook } from '../../engine/index.ts';
import type { Given } from './arguments.ts';
import { complaintInWords } from './evaluate.ts';
import { findColumn, findRow, findTable, placeInWords } from './places.ts';
import { openWorkbook, saveWorkbook } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

/** Types one cell's value, as a person would; an empty one clears the cell or takes it back to its formula. */
export function setCell({ words, values }: Given, world: World): number {
  const [file = '', tableName = '', key = '', columnName = '', entry = ''] = words;
  const workbook = openWorkbook(file);
  const table = findTable(workbook, file, tableName);
  const row = findRow(workbook, table, file, key);
  const column = findColumn(table, file, columnName);
  const place = placeInWords(table, workbook.rowName(table.name, row), column.name);
  const cell = { table: table.name, row, column: column.name };
  const change = workbook.edit([{ edit: 'cell', ...cell, entry }], `Set ${column.name}`);
  if (change.refused) return refuse(onOneLine(`${file}: ${place}: ${change.why}`));
  saveWorkbook(values.get('out') ?? file, workbook);
  const { text } = workbook.cell(table.name, row, column.name);
  const shown = text === '' ? 'blank' : text;
  const unit = column.unit === '' || text === '' || !/\d$/.test(text) ? '' : ` ${column.unit}`;
  world.out(`${place}: ${onOneLine(shown)}${unit}\n`);
  return 0;
}

/** Replaces a computed column's formula or adds a computed column; a formula that doesn't check is refused. */
export function setFormula({ words, values }: Given, world: World): number {
  const [file = '', tableName = '', columnName = '', given = ''] = words;
  const formula = given.replace(/^\s*=/, '').trim();
  const workbook = openWorkbook(file);
  const table = findTable(workbook, file, tableName);
  const known = table.columns.find((one) => one.name.toLowerCase() === columnName.trim().toLowerCase());
  const column = known?.name ?? columnName;
  const place = placeInWords(table, '', column);
  const failing = failingFormulas(workbook);
  const tried = workbook.tryFormula(table.name, column, formula);
  if (!tried.ok) return refuse(onOneLine(`${file}: ${place}: ${complaintInWords(tried.complaint, formula)}`));
  const change = workbook.edit([{ edit: 'formula', table: table.name, column, formula }], `Formula of ${column}`);
  if (change.refused) return refuse(onOneLine(`${file}: ${place}: ${change.why}`));
  const own = failingFormulas(workbook).get(place);
  if (own !== undefined) return refuse(onOneLine(`${file}: ${place}: ${own}`));
  saveWorkbook(values.get('out') ?? file, workbook);
  world.out(`${place} = ${formula}\n`);
  for (const [other, why] of failingFormulas(workbook)) {
    if (!failing.has(other)) world.out(`${onOneLine(`${other} no longer checks: ${why}`)}\n`);
  }
  return 0;
}

/** Columns whose formula doesn't check or goes in a circle, with the sentence. */
function failingFormulas(workbook: Workbook): ReadonlyMap<string, string> {
  return new Map(
    workbook
      .tables()
      .flatMap((table) =>
        table.columns.flatMap(({ name, complaint }): [string, string][] =>
          complaint === undefined ? [] : [[placeInWords(table, '', name), complaint.why]],
        ),
      ),
  );
}
