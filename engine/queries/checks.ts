// The checks of a sheet as a person can change them.

import { formulaText } from '../schema/lay-over.ts';
import { type Book, sheetOf } from './book.ts';
import type { FindingLevel } from './finding.ts';

export interface CheckView {
  readonly id: string;
  readonly name: string;
  readonly level: FindingLevel;
  readonly column: string;
  /** Its formula with names. */
  readonly says: string;
  /** What is wrong with the formula, if anything. */
  readonly why: string | undefined;
}

export function checksOf(book: Book, sheet: string): readonly CheckView[] {
  const { schema } = book.document.program;
  return (sheetOf(book, sheet)?.checks ?? []).map(({ check, diagnostic }) => {
    const { id, name, level, column, says } = check;
    return { id, name, level, column, says: formulaText(says, schema), why: diagnostic?.why };
  });
}
