// What an entry or a formula would mean, without doing it.

import { toScalar } from '../calculation/kernels/scalars.ts';
import { otherColumnFor, readTyped } from '../commands/cells.ts';
import { rangeParts, readRange } from '../commands/ranges.ts';
import { placeContent } from '../document/cells.ts';
import type { Diagnostic } from '../language/tree.ts';
import type { Typed } from '../language/typed.ts';
import { checkText } from '../schema/check.ts';
import type { ProgramColumn } from '../schema/compile.ts';
import { isComputed } from '../schema/schema.ts';
import { canonicalUnit } from '../units/arithmetic.ts';
import { showWithUnit, unitLabel } from '../values/show.ts';
import { nameOfType } from '../values/type.ts';
import { type Book, columnOf, sheetOf } from './book.ts';
import { rowName } from './rows.ts';

export type TriedEntry = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly why: string };

/** What an entry would mean in a column: the value as it would read, or the sentence that refuses it. */
export function tryEntry(book: Book, sheetId: string, columnId: string, entry: string): TriedEntry {
  const sheet = sheetOf(book, sheetId);
  const column = columnOf(book, sheetId, columnId);
  if (sheet === undefined || column === undefined) return { ok: false, why: 'There is no such column any more.' };
  const parts = rangeParts(column, entry);
  if (parts !== undefined) return tryRange(book, column, parts);
  const read = readTyped(column, entry, book);
  if (!read.ok) {
    const other = otherColumnFor(sheet, column, entry, book);
    return other === undefined ? read : tryEntry(book, sheetId, other.id, entry);
  }
  const { document } = book;
  const placed = placeContent(read.content, column, document.program, document);
  const { type } = column;
  if (!placed.ok) return placed;
  const { value, state, unit } = placed.cell;
  if (state !== 0 || type === undefined) return { ok: true, text: '' };
  if (type.kind === 'link') return { ok: true, text: rowName(book, type.table, value) };
  const scalar = toScalar(document.program.words, type, value, state);
  return { ok: true, text: showWithUnit(scalar, type, { unit, currency: document.program.currency }) };
}

function tryRange(book: Book, column: ProgramColumn, parts: readonly string[]): TriedEntry {
  const read = readRange(column, parts, book);
  if (!read.ok) return read;
  const { document } = book;
  const placed = placeContent(read.likely, column, document.program, document);
  if (!placed.ok || column.type === undefined) return { ok: true, text: '' };
  const { value, unit } = placed.cell;
  const likely = showWithUnit(value, column.type, { unit, currency: document.program.currency });
  return { ok: true, text: `${parts[0]} to ${parts.at(-1)}, likely ${likely}` };
}

export type TriedFormula =
  /** `inferred`: its type in words, with unit. */
  { readonly ok: true; readonly inferred: string } | { readonly ok: false; readonly diagnostic: Diagnostic };

/** Checks a formula for a column, or for a new one where there is none. */
export function tryFormula(book: Book, sheet: string, columnId: string | undefined, formula: string): TriedFormula {
  const { program } = book.document;
  const column = columnId === undefined ? undefined : columnOf(book, sheet, columnId);
  const given = column !== undefined && isComputed(column) && column.declaration.inferred !== true;
  const place = {
    table: sheet,
    wanted: given ? column.type : undefined,
    ...(column === undefined ? {} : { column: column.name }),
  };
  const checked = checkText(formula, place, program.catalog, program.vocabulary);
  return checked.ok ? { ok: true, inferred: typeInWords(checked.typed, program.currency) } : checked;
}

function typeInWords({ type }: Typed, currency: string): string {
  const words = nameOfType(type);
  if (type.kind !== 'number') return words;
  const unit = unitLabel(type.unit, currency) || canonicalUnit(type.dimension).symbol;
  return unit === '' ? words : `${words} in ${unit}`;
}
