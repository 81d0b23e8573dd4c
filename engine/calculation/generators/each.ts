// One row per row of another table, in the same slot.

import { FILLED } from '../../values/column.ts';
import type { ColumnDef, TableDef } from '../layout.ts';
import type { RowGenerator } from './generator.ts';

/** `link` holds the slot of the row it was made from, which is its own. */
export function eachRow(table: TableDef, link: ColumnDef, source: TableDef): RowGenerator {
  return {
    table,
    columns: [link],
    inputs: [{ rowsOf: source }],
    generate(frame, [dirty], rows) {
      const look = (row: number): void => {
        const exists = frame.exists(source, row);
        const lives = frame.table(table).live[row] === 1;
        if (!exists) {
          if (lives) rows.remove(row);
          return;
        }
        if (lives) rows.change(row);
        else {
          rows.add(row);
          frame.write(link, row, row, FILLED);
        }
      };
      if (dirty === undefined) return;
      if (!dirty.all) for (let i = 0; i < dirty.count; i++) look(dirty.at(i));
      else {
        const length = Math.max(frame.table(source).length, frame.table(table).length);
        for (let row = 0; row < length; row++) look(row);
      }
    },
  };
}
