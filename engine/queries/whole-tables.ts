// Which formulas cost a whole table when one row changes: those that read all of another table without a condition that an
// index answers. Asked by the benchmark and by the test that keeps their list short.

import { isOneRow } from '../schema/schema.ts';
import type { Book } from './book.ts';

/** A computed column of a sheet with many rows, and the sheets with many rows of which any changed row works all of it out again. */
export interface WholeTableFormula {
  readonly sheet: string;
  readonly column: string;
  readonly reads: readonly string[];
}

/** In the order of the sheets and their columns; none for a workbook in which every formula finds its rows by an index. */
export function wholeTableFormulas({ document }: Book): readonly WholeTableFormula[] {
  const { program } = document;
  const manyRows = new Set(program.sheets.filter(({ schema }) => !isOneRow(schema)).map(({ id }) => id));
  return program.sheets
    .filter(({ id }) => manyRows.has(id))
    .flatMap(({ id: sheet, columns }) =>
      columns.flatMap(({ id: column, def }) => {
        const whole = def === undefined ? [] : [...program.built.readWhole(def)];
        const reads = whole.map(({ id }) => id).filter((id) => manyRows.has(id));
        return reads.length === 0 ? [] : [{ sheet, column, reads }];
      }),
    );
}
