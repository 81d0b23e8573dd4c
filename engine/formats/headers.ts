// Finds the columns that a file's header names, and what its fields mean by unit and decimal mark. Forgives case and blanks;
// what it can't place it says, naming the nearest column, and a person may place it by hand. Called by rows-import.ts.

import { whyNoType } from '../document/entries.ts';
import { nearestName } from '../language/nearest.ts';
import type { Book } from '../queries/book.ts';
import type { ColumnView, SheetView } from '../queries/sheets.ts';
import { createVocabulary } from '../units/vocabulary.ts';
import { type EntryContext, readEntry } from '../values/entry.ts';
import { readNumber } from '../values/number-text.ts';
import { type CsvRecord, type CsvSplitter, type Delimiter, firstRecord, unguarded } from './csv.ts';
import { isNumeric } from './csv-export.ts';
import { headerOf } from './fields.ts';

export interface FileColumn {
  /** Its place among the fields, from 0. */
  readonly at: number;
  readonly column: ColumnView;
  /** The header's unit where it is another than the column's: bare numbers count in it. */
  readonly unit: string | undefined;
  /** The header names a unit, the column's own or another. */
  readonly unitNamed: boolean;
}

/** A column of the file that has no place in the sheet, and why. */
export interface Unplaced {
  readonly at: number;
  readonly why: string;
}

export interface Headers {
  readonly columns: readonly FileColumn[];
  readonly unplaced: readonly Unplaced[];
}

/** Where a person puts the columns of a file: a column's id by the header's text, null to leave it out. */
export type ByHand = Readonly<Record<string, string | null>>;

const DELIMITERS: readonly Delimiter[] = [',', ';', '\t'];

function alike(text: string): string {
  return unguarded(text).normalize('NFC').trim().replace(/\s+/g, ' ').toLowerCase();
}

/** The delimiter under which most of the header's fields are columns of the table; then that which makes most fields. */
export function delimiterOf(text: string, view: SheetView, split: CsvSplitter): Delimiter {
  const score = (delimiter: Delimiter): number => {
    const fields = firstRecord(text, delimiter, split) ?? [];
    return namedIn(fields, view) * 1000 + fields.length;
  };
  return DELIMITERS.reduce((best, next) => (score(next) > score(best) ? next : best));
}

function withoutUnit(header: string): string {
  return /^(.*\S)\s*\([^()]*\)$/.exec(header)?.[1] ?? header;
}

/** Where each field of the header belongs; fields without a header may only be empty, which the check of rows sees to. */
export function readHeaders(header: CsvRecord, view: SheetView, book: Book, byHand: ByHand = {}): Headers {
  const columns: FileColumn[] = [];
  const unplaced: Unplaced[] = [];
  for (const [at, field] of header.fields.entries()) {
    const chosen = Object.hasOwn(byHand, field) ? byHand[field] : undefined;
    if (field === '' || chosen === null) continue;
    const found =
      chosen === undefined ? findColumn(at, field, view, book) : chosenColumn(at, field, chosen, view, book);
    if (typeof found === 'string') {
      unplaced.push({ at, why: found });
      continue;
    }
    const twin = columns.some((one) => one.column.id === found.column.id);
    if (twin) {
      unplaced.push({ at, why: `Two columns of the file are headed ${found.column.name}: take one of them out.` });
    } else columns.push(found);
  }
  return { columns, unplaced };
}

/** How many fields of a record name columns of the sheet, case, blanks and units aside. */
export function namedIn(fields: readonly string[], view: SheetView): number {
  const names = namesOf(view);
  return fields.filter((field) => names.has(alike(field)) || names.has(alike(withoutUnit(field)))).length;
}

function namesOf(view: SheetView): ReadonlySet<string> {
  return new Set(view.columns.flatMap((column) => [alike(column.name), alike(headerOf(column))]));
}

/** A column that a person chose; a unit that the header names is heeded where it can be. */
function chosenColumn(at: number, field: string, id: string, view: SheetView, book: Book): FileColumn | string {
  const column = view.columns.find((one) => one.id === id);
  if (column === undefined) return unknownHeader(field, view);
  const named = namedUnit(field);
  if (named === '' || !isNumeric(column) || column.role === 'computed')
    return { at, column, unit: undefined, unitNamed: false };
  if (alike(named) === alike(column.unit)) return { at, column, unit: undefined, unitNamed: true };
  const refused = refuseUnit(named, column, book);
  if (refused === undefined) return { at, column, unit: named, unitNamed: true };
  // What stands in brackets need not be a unit; one of another kind must not be passed over.
  const isUnit = createVocabulary({ currency: book.document.program.currency }).find(named) !== undefined;
  return isUnit ? refused : { at, column, unit: undefined, unitNamed: false };
}

function findColumn(at: number, field: string, view: SheetView, book: Book): FileColumn | string {
  const whole = alike(field);
  const own = view.columns.find((column) => alike(headerOf(column)) === whole && column.unit !== '');
  if (own !== undefined) return { at, column: own, unit: undefined, unitNamed: true };
  const plain = view.columns.find((column) => alike(column.name) === whole);
  if (plain !== undefined) return { at, column: plain, unit: undefined, unitNamed: false };
  const base = withoutUnit(field);
  const column = view.columns.find((one) => alike(one.name) === alike(base));
  if (column === undefined || base === field) return unknownHeader(field, view);
  // What is worked out here is passed over anyway, whatever its unit.
  if (!isNumeric(column) || column.role === 'computed') return { at, column, unit: undefined, unitNamed: false };
  const named = namedUnit(field);
  const refused = refuseUnit(named, column, book);
  if (refused === undefined) return { at, column, unit: named, unitNamed: true };
  // In a header all in capitals, LENGTH (M), the column tells what is meant.
  const small = named.toLowerCase();
  return refuseUnit(small, column, book) === undefined ? { at, column, unit: small, unitNamed: true } : refused;
}

/** What stands in brackets at the end of a header; '' where nothing does. */
function namedUnit(field: string): string {
  return field
    .slice(withoutUnit(field).length)
    .trim()
    .replace(/^\(\s*|\s*\)$/g, '');
}

function unknownHeader(field: string, view: SheetView): string {
  const names = view.columns.map((column) => column.name);
  const near = nearestName(withoutUnit(field), names);
  const advice = near === undefined ? '' : ` (did you mean ${near}?)`;
  return `${view.name} has no column called “${field}”${advice}: rename it in the file's header, or take it out.`;
}

/** Why a number of the column can't be written in a unit; the reader of entries knows. */
function refuseUnit(unit: string, column: ColumnView, book: Book): string | undefined {
  const { type } = column;
  if (type === undefined) return whyNoType(column);
  const context: EntryContext = {
    vocabulary: createVocabulary({ currency: book.document.program.currency }),
    year: 1970,
  };
  const read = readEntry(`300 ${unit}`, type, context);
  if (read.ok && unit !== '') return undefined;
  const why = read.ok ? 'the unit is empty' : (read.why.replace(/^300 /, '').split(/[:;.] /)[0] ?? '');
  const example = column.unit === '' ? column.name : headerOf(column);
  return `The header “${column.name} (${unit})” can't be used: ${why}. Write ${example}, or another unit of its kind.`;
}

/**
 * Whether commas are the decimal marks of a file's numbers. Files with commas between fields say so number by number; in
 * others one clear number tells for all. Gives the number that can't be told where none is clear.
 */
export function decimalMark(
  delimiter: Delimiter,
  numbers: Iterable<string>,
): { readonly comma: boolean } | { readonly unclear: string } {
  if (delimiter === ',') return { comma: false };
  let point = false;
  let unclear: string | undefined;
  for (const text of numbers) {
    if (/\d,\d/.test(text)) return { comma: true };
    if (/(?:^|\D)[1-9]\d{0,2}\.\d{3}(?!\d)/.test(text)) unclear ??= text;
    else if (/\d\.\d|(?:^|\D)\.\d/.test(text)) point = true;
  }
  return unclear === undefined || point ? { comma: !point } : { unclear };
}

/** A number's field as it is typed into a cell: decimal points, and the header's unit after a bare number. */
export function numberEntry(field: string, header: FileColumn, comma: boolean): string {
  const pointed = comma ? field.replace(/\d+(?:[.,]\d+)*|[.,]\d+/g, (digits) => withPoint(digits)) : field;
  const read = readNumber(pointed, false);
  if (read === undefined || !read.ok || read.rest !== '') return pointed;
  if (header.unit !== undefined) return `${pointed} ${header.unit}`;
  // A bare 0.5 in a per cent column is a half; under a header that says % it is half a per cent.
  const small = header.column.unit === '%' && Math.abs(read.value) < 1 && read.value !== 0;
  return small && header.unitNamed ? `${pointed}%` : pointed;
}

function withPoint(digits: string): string {
  const read = readNumber(digits, true);
  return read?.ok === true ? String(read.value) : digits;
}
