// Finds the columns that a CSV file's header names, and what its fields mean by unit and decimal mark. Forgives case and
// blanks; refuses what it can't place, naming the nearest column. Called by csv-import.ts alone.

import { nearestName } from '../language/nearest.ts';
import type { Book } from '../queries/book.ts';
import type { ColumnView, SheetView } from '../queries/sheets.ts';
import { createVocabulary } from '../units/vocabulary.ts';
import { type EntryContext, readEntry } from '../values/entry.ts';
import { readNumber } from '../values/number-text.ts';
import { type CsvRecord, type CsvSplitter, type Delimiter, firstRecord, unguarded } from './csv.ts';
import { isNumeric } from './csv-export.ts';
import { headerOf } from './csv-fields.ts';

export interface FileColumn {
  /** Its place among the fields, from 0. */
  readonly at: number;
  readonly column: ColumnView;
  /** The header's unit where it is another than the column's: bare numbers count in it. */
  readonly unit: string | undefined;
  /** The header names a unit, the column's own or another. */
  readonly unitNamed: boolean;
}

export type Headers =
  | { readonly ok: true; readonly columns: readonly FileColumn[] }
  | { readonly ok: false; readonly why: string };

const DELIMITERS: readonly Delimiter[] = [',', ';', '\t'];

function alike(text: string): string {
  return unguarded(text).normalize('NFC').trim().replace(/\s+/g, ' ').toLowerCase();
}

/** The delimiter under which most of the header's fields are columns of the table; then that which makes most fields. */
export function delimiterOf(text: string, view: SheetView, split: CsvSplitter): Delimiter {
  const names = new Set(view.columns.flatMap((column) => [alike(column.name), alike(headerOf(column))]));
  const score = (delimiter: Delimiter): number => {
    const fields = firstRecord(text, delimiter, split) ?? [];
    const known = fields.filter((field) => names.has(alike(field)) || names.has(alike(withoutUnit(field)))).length;
    return known * 1000 + fields.length;
  };
  return DELIMITERS.reduce((best, next) => (score(next) > score(best) ? next : best));
}

function withoutUnit(header: string): string {
  return /^(.*\S)\s*\([^()]*\)$/.exec(header)?.[1] ?? header;
}

/** The columns of the header; fields without a header may only be empty, which the import sees to. */
export function readHeaders(header: CsvRecord, view: SheetView, book: Book): Headers {
  const columns: FileColumn[] = [];
  for (const [at, field] of header.fields.entries()) {
    if (field === '') continue;
    const found = findColumn(at, field, view, book);
    if (typeof found === 'string') return { ok: false, why: found };
    const twin = columns.find((one) => one.column.id === found.column.id);
    if (twin !== undefined) {
      return { ok: false, why: `Two columns of the file are headed ${found.column.name}: take one of them out.` };
    }
    columns.push(found);
  }
  return { ok: true, columns };
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
  const named = field
    .slice(base.length)
    .trim()
    .replace(/^\(\s*|\s*\)$/g, '');
  const refused = refuseUnit(named, column, book);
  if (refused === undefined) return { at, column, unit: named, unitNamed: true };
  // In a header all in capitals, LENGTH (M), the column tells what is meant.
  const small = named.toLowerCase();
  return refuseUnit(small, column, book) === undefined ? { at, column, unit: small, unitNamed: true } : refused;
}

function unknownHeader(field: string, view: SheetView): string {
  const names = view.columns.map((column) => column.name);
  const near = nearestName(withoutUnit(field), names);
  const advice = near === undefined ? '' : ` (did you mean ${near}?)`;
  return `${view.name} has no column called “${field}”${advice}: rename it in the file's header, or take it out.`;
}

/** A unit that a number of the column can be written in; the reader of entries knows. */
function refuseUnit(unit: string, column: ColumnView, book: Book): string | undefined {
  const { type } = column;
  if (type === undefined) return `${column.name} has a formula that doesn't check yet: mend it first.`;
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
