// One thing that needs a look: of which row and column it is, how that is named, and the sentence about it.

import type { ProgramSheet } from '../schema/compile.ts';
import type { Book } from './book.ts';
import { inOwnDegrees } from './own-units.ts';
import { rowName } from './shown.ts';

export type FindingLevel = 'error' | 'warning' | 'note';

export interface Finding {
  readonly level: FindingLevel;
  readonly sheet: string;
  readonly sheetName: string;
  /** The row's slot and id; undefined for what concerns a whole sheet or column. */
  readonly row: number | undefined;
  readonly rowId: string;
  readonly rowName: string;
  /** '' for what concerns no one column. */
  readonly column: string;
  readonly columnName: string;
  readonly says: string;
  /** The check that found it; '' for what every sheet is checked for. */
  readonly check: string;
}

/** What a finding is about. */
export interface About {
  readonly level: FindingLevel;
  readonly sheet: ProgramSheet;
  readonly column: string;
  readonly check: string;
}

export function finding(
  book: Book,
  { level, sheet, column, check }: About,
  row: number | undefined,
  says: string,
): Finding {
  return {
    level,
    sheet: sheet.id,
    sheetName: sheet.name,
    row,
    rowId: row === undefined ? '' : (book.document.rowIdOf(sheet.id, row) ?? ''),
    rowName: row === undefined ? '' : rowName(book, sheet.id, row),
    column,
    columnName: sheet.column(column)?.name ?? '',
    says: inOwnDegrees(says, book.document.program.units),
    check,
  };
}
