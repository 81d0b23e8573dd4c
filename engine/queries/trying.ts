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
import { civilDay, yearMonthDay } from '../values/civil.ts';
import { type EntryContext, readEntry } from '../values/entry.ts';
import { entryText, showWithUnit, unitLabel } from '../values/show.ts';
import { nameOfType, TEXT, type ValueType } from '../values/type.ts';
import { type Book, columnOf, sheetOf } from './book.ts';
import { rowName } from './rows.ts';
import { scalarAt } from './shown.ts';

export type TriedEntry =
  | {
      readonly ok: true;
      /** The value as it would read, with its unit. */
      readonly text: string;
      /** What else the entry could have meant, where marks or order leave that open: 1,234 and 3/4. */
      readonly other?: { readonly text: string; readonly write: string };
      /** Of a date far from all others around it: how far, in words. */
      readonly far?: string;
    }
  | { readonly ok: false; readonly why: string };

/**
 * What an entry would mean in a column: the value as it would read, or the sentence that refuses it. With the slot of its row
 * a date is held against the others of the row.
 */
export function tryEntry(book: Book, sheetId: string, columnId: string, entry: string, row?: number): TriedEntry {
  const sheet = sheetOf(book, sheetId);
  const column = columnOf(book, sheetId, columnId);
  if (sheet === undefined || column === undefined) return { ok: false, why: 'There is no such column any more.' };
  const parts = rangeParts(column, entry);
  if (parts !== undefined) return tryRange(book, column, parts);
  const read = readTyped(column, { entry }, book);
  if (!read.ok) {
    const other = otherColumnFor(sheet, column, { entry }, book);
    return other === undefined ? read : tryEntry(book, sheetId, other.id, entry, row);
  }
  const { document } = book;
  const placed = placeContent(read.content, column, document.program, document);
  const { type } = column;
  if (!placed.ok) return placed;
  const { value, state, unit } = placed.cell;
  if (state !== 0 || type === undefined) return { ok: true, text: '' };
  if (type.kind === 'link') return { ok: true, text: rowName(book, type.table, value) };
  const { writing, program } = document;
  const options = { unit, currency: program.currency, writing };
  const text = (shown: number): string => showWithUnit(toScalar(program.words, type, shown, state), type, options);
  const otherwise = otherReading(entry, type, document.entryIn(column));
  // What is counted is never a broken number.
  const other = column.declaration.whole === true && !Number.isInteger(otherwise) ? undefined : otherwise;
  const far = type.kind === 'date' ? farFromOthers(book, sheetId, columnId, value, row) : undefined;
  return {
    ok: true,
    text: text(value),
    ...(other === undefined || other === value
      ? {}
      : { other: { text: text(other), write: entryText(other, type, options) } }),
    ...(far === undefined ? {} : { far }),
  };
}

/** What an entry would be with the marks or the order of other places, where a person here may have meant that. */
function otherReading(entry: string, type: ValueType, context: EntryContext): number | undefined {
  const { decimalComma = false, dayFirst = false } = context;
  const isDate = type.kind === 'date';
  if (!isDate && type.kind !== 'number' && type.kind !== 'temperature') return undefined;
  // Where decimals have a point, 1.234 is one and a bit, and nobody means a thousand by it.
  if (!isDate && !decimalComma && !entry.includes(',')) return undefined;
  // Only figures beside each other could be day and month in either order.
  if (isDate && !/\d\s*[/.-]\s*\d/.test(entry)) return undefined;
  if (!isDate) return figureOf(entry, type, { ...context, decimalComma: !decimalComma });
  const { writing } = context;
  const behind = writing === undefined ? context : { ...context, writing: { ...writing, yearFirst: '' } };
  // Where two figures in front are taken for the year, they could be the day.
  const yearBehind = figureOf(entry, type, behind);
  return yearBehind === figureOf(entry, type, context)
    ? figureOf(entry, type, { ...context, dayFirst: !dayFirst })
    : yearBehind;
}

function figureOf(entry: string, type: ValueType, context: EntryContext): number | undefined {
  const read = readEntry(entry, type, context);
  return read.ok && typeof read.value === 'number' ? read.value : undefined;
}

/** Further than this from everything around it a date is asked about. */
const FAR_DAYS = 400;

/** How far a date is from the season, from the other dates of its row and from those of its column; undefined where it isn't. */
function farFromOthers(
  book: Book,
  sheetId: string,
  columnId: string,
  civil: number,
  row: number | undefined,
): string | undefined {
  const { document } = book;
  const sheet = sheetOf(book, sheetId);
  const { year, starts = civilDay(year, 1, 1) } = document.entry;
  const first = yearMonthDay(starts);
  const near = (other: number): boolean => Math.abs(other - civil) <= FAR_DAYS;
  if (civil >= starts - FAR_DAYS && civil < civilDay(first.year + 1, first.month, first.day) + FAR_DAYS)
    return undefined;
  const dated = (sheet?.columns ?? []).filter(({ type }) => type?.kind === 'date');
  for (const column of dated) {
    const isItself = column.id === columnId;
    const slots = isItself && sheet !== undefined ? document.frame.rows(sheet.table) : row === undefined ? [] : [row];
    for (const slot of slots) {
      // What is worked out may rest on the very cell.
      const counts = document.isTyped(column, slot) && !(isItself && slot === row);
      const value = counts ? scalarAt(book, column, slot) : null;
      if (typeof value === 'number' && near(value)) return undefined;
    }
  }
  const { year: itsYear, month, day } = yearMonthDay(civil);
  const isBefore = month < first.month || (month === first.month && day < first.day);
  const years = (isBefore ? itsYear - 1 : itsYear) - first.year;
  const count = Math.abs(years) === 1 ? 'a year' : `${Math.abs(years)} years`;
  return `${count} ${years < 0 ? 'before' : 'after'} the season ${year}`;
}

function tryRange(book: Book, column: ProgramColumn, parts: readonly string[]): TriedEntry {
  const read = readRange(column, parts, book);
  if (!read.ok) return read;
  const { document } = book;
  const placed = placeContent(read.likely, column, document.program, document);
  if (!placed.ok || column.type === undefined) return { ok: true, text: '' };
  const { value, unit } = placed.cell;
  const likely = showWithUnit(value, column.type, {
    unit,
    currency: document.program.currency,
    writing: document.writing,
  });
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

/** Checks the formula of a check of a sheet. */
export function tryCheck({ document }: Book, sheet: string, says: string): TriedFormula {
  const { program } = document;
  const place = { table: sheet, wanted: TEXT, saysSomething: true };
  const checked = checkText(says, place, program.catalog, program.vocabulary);
  return checked.ok ? { ok: true, inferred: typeInWords(checked.typed, program.currency) } : checked;
}

function typeInWords({ type }: Typed, currency: string): string {
  const words = nameOfType(type);
  if (type.kind !== 'number') return words;
  const unit = unitLabel(type.unit, currency) || canonicalUnit(type.dimension).symbol;
  return unit === '' ? words : `${words} in ${unit}`;
}
