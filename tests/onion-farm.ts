// The demo farm as far as it grows onions, in the onions template: its beds, its onion varieties with their packs and lots, its first
// plantings. For browser tests of the page itself, which need a farm's rows but not all that a whole farm works out after each step.

import { demoFarm } from '../demo/farm.ts';
import { type Start, writeWorkbookFile } from '../engine/index.ts';
import { onions } from '../sheets-templates/onions.ts';
import { type Book, started } from './book.ts';

/** The farm begun on this day. */
export function onionFarm(today = demoFarm.today): Book {
  const opened = started(onions(), { ...demoFarm, today, rows: onionRows() });
  if (!opened.ok) throw new Error(opened.problems.join(' '));
  return opened.workbook;
}

/** The same as a file's text. */
export function onionFarmText(): string {
  return writeWorkbookFile(onionFarm().data());
}

/** The demo's rows on the sheets and columns that are there, of varieties only onions and of other rows those that name no other variety. */
function onionRows(): Start['rows'] {
  const given = demoFarm.rows;
  const isOnion = new Set(
    (given.varieties ?? []).filter(({ crop }) => crop === 'Onion, bulb').map(({ variety }) => variety),
  );
  return Object.fromEntries(
    onions().sheets.flatMap(({ id, columns }) => {
      const rows = (given[id] ?? []).filter(({ variety }) => variety === undefined || isOnion.has(variety));
      const has = new Set(columns.map((column) => column.id));
      const cells = (row: (typeof rows)[number]) => Object.entries(row).filter(([column]) => has.has(column));
      return rows.length === 0 ? [] : [[id, rows.map((row) => Object.fromEntries(cells(row)))]];
    }),
  );
}
