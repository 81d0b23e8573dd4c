// `import` and `export`: rows of a table from a CSV file and to one.

import { exportCsv, importCsv } from '../../engine/index.ts';
import { splitCsv } from '../csv-splitter.ts';
import type { Given } from './arguments.ts';
import { findTable } from './places.ts';
import { openWorkbook, readText, saveWorkbook, writeWhole } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

/** Adds or updates rows, all or none. */
export function importRows({ words, values }: Given, world: World): number {
  const [file = '', tableName = '', csv = ''] = words;
  const workbook = openWorkbook(file);
  const table = findTable(workbook, file, tableName);
  const imported = importCsv(workbook, table.name, readText(csv), splitCsv);
  if (!imported.ok) return refuse(onOneLine(`${csv}: ${imported.why}`));
  saveWorkbook(values.get('out') ?? file, workbook);
  const { added, updated, unchanged, notes } = imported;
  const counts = [
    `${added} added`,
    `${updated} updated`,
    ...(unchanged === 0 ? [] : [`${unchanged} left as they were`]),
  ];
  world.out(`${table.name}: ${counts.join(', ')}.\n`);
  for (const note of notes) world.out(`${note}\n`);
  return 0;
}

/** The table as CSV, to standard output where no file is named. */
export function exportTable({ words: [file = '', name = ''], values }: Given, world: World): number {
  const workbook = openWorkbook(file);
  const table = findTable(workbook, file, name);
  const text = exportCsv(workbook, table.name);
  const out = values.get('out');
  if (out === undefined) {
    world.out(text);
    return 0;
  }
  writeWhole(out, text);
  world.out(`Wrote ${out}: ${workbook.rows(table.name).length} rows of ${table.name}.\n`);
  return 0;
}
