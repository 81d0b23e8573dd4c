// Typed links to rows of a sheet, read from the document as it stands. Called by commands, which refuse to take named rows out, and by
// queries, which tell who names them.

import type { ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { FILLED } from '../values/column.ts';
import type { Document } from './document.ts';

/** A cell in which a person named a row. */
export interface TypedLink {
  readonly sheet: ProgramSheet;
  readonly column: ProgramColumn;
  readonly slot: number;
  /** The slot of the row named. */
  readonly named: number;
}

/** Typed links to rows of a sheet, from rows that are not among them. */
export function* typedLinksTo(
  document: Document,
  sheet: ProgramSheet,
  isAmong: (slot: number) => boolean,
): Generator<TypedLink> {
  for (const other of document.program.sheets) {
    for (const column of other.columns) {
      if (column.type?.kind !== 'link' || column.type.table !== sheet.id || column.role === 'made') continue;
      const { values, states } = document.frame.column(column.def);
      for (const slot of document.frame.rows(other.table)) {
        const named = values[slot] ?? -1;
        if (states[slot] !== FILLED || !isAmong(named) || !document.isTyped(column, slot)) continue;
        if (other.id === sheet.id && isAmong(slot)) continue;
        yield { sheet: other, column, slot, named };
      }
    }
  }
}
