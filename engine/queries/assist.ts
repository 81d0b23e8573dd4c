// Help while a formula is typed for a sheet of a workbook, whose names and units it knows.

import { SIGNATURES } from '../functions/index.ts';
import { type CallHelp, type Completions, callAt, completionsAt } from '../language/assist.ts';
import type { Book } from './book.ts';

/** What the word that ends at the cursor could become in a formula of this sheet; undefined where nothing is to be proposed. */
export function completeFormula(book: Book, sheet: string, text: string, cursor: number): Completions | undefined {
  const { catalog, vocabulary } = book.document.program;
  return completionsAt(text, cursor, { catalog, table: sheet, functions: SIGNATURES, vocabulary });
}

/** The call that the cursor stands in, and which part of it; undefined where it stands in none. */
export function callInFormula(text: string, cursor: number): CallHelp | undefined {
  return callAt(text, cursor, SIGNATURES);
}
