// `import` and `export`: rows of a table from a CSV file and to one.

import { exportCsv, importCsv, rows } from '../../engine/index.ts';
import { splitCsv } from '../csv-splitter.ts';
import type { Given } from './arguments.ts';
import { findTable } from './places.ts';
import { openWorkbook, readText, saveWorkbook, writeWhole } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

/** Adds or updates rows, all or none. */
export async function importRows({ words, values }: Given, world: World): Promise<number> {
  const [file = '', tableName = '', csv = ''] = words;
  const workbook = await openWorkbook(file, world);
  const table = findTable(workbook, file, tableName);
  const imported = importCsv(workbook, table.id, readText(csv), splitCsv);
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
export async function exportTable({ words: [file = '', name = ''], values }: Given, world: World): Promise<number> {
  const workbook = await openWorkbook(file, world);
  const table = findTable(workbook, file, name);
  const text = exportCsv(workbook, table.id);
  const out = values.get('out');
  if (out === undefined) {
    world.out(text);
    return 0;
  }
  writeWhole(out, text);
  world.out(`Wrote ${out}: ${rows(workbook, table.id).length} rows of ${table.name}.\n`);
  return 0;
}
