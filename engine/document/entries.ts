// From what a person types, or a declaration holds, to content: read by the column's kind and the workbook's units, kept
// within the column's limits. Gives the content or the sentence that refuses it; changes nothing.

import type { Program, ProgramColumn } from '../schema/compile.ts';
import type { Entry } from '../schema/declaration.ts';
import { countsThings } from '../units/table.ts';
import { toCanonical } from '../units/unit.ts';
import { civilDayOfIso, isoDate } from '../values/civil.ts';
import { type EntryContext, readEntry } from '../values/entry.ts';
import { quoted } from '../values/reading.ts';
import { showWithUnit } from '../values/show.ts';
import type { ValueType } from '../values/type.ts';
import { numberContent } from './cells.ts';
import type { Content } from './content.ts';
import { KnownReads } from './known-reads.ts';

export type ContentRead =
  | { readonly ok: true; readonly content: Content }
  | { readonly ok: false; readonly why: string };

/** The id of the row of a sheet that is called so; undefined where none is. */
export type FindRow = (sheet: string, name: string) => string | undefined;

/** Why nothing can be read in a column that has no type. */
export function whyNoType({ name, role }: Pick<ProgramColumn, 'name' | 'role'>): string {
  if (role === 'entered') return `${name} is in a unit that is not known here: give it another.`;
  return `${name} has a formula that doesn't check yet: mend it first.`;
}

const known = new KnownReads<ContentRead>();

/** What an entry means in a column; '' is nothing. A number is one in the unit that the column shows. */
export function readEntryAs(
  entry: Entry,
  column: ProgramColumn,
  program: Program,
  context: EntryContext,
  findRow: FindRow,
): ContentRead {
  const { type } = column;
  if (type === undefined) return { ok: false, why: whyNoType(column) };
  if (typeof entry === 'number' && (type.kind === 'number' || type.kind === 'temperature')) {
    if (!Number.isFinite(entry)) return { ok: true, content: null };
    return numberRead(toCanonical(type.unit, entry), type, undefined, column, program, String(entry));
  }
  const words = typeof entry === 'boolean' ? (entry ? 'yes' : 'no') : String(entry).trim();
  if (words === '') return nothingIn(column);
  if (type.kind === 'text') return { ok: true, content: words };
  if (type.kind === 'link') return linkContent(words, type, findRow);
  return known.once(column, words, context, () => readFigure(words, type, column, program, context));
}

/** A date, a number, a choice, yes or no. */
function readFigure(
  words: string,
  type: ValueType,
  column: ProgramColumn,
  program: Program,
  context: EntryContext,
): ContentRead {
  const iso = type.kind === 'date' ? civilDayOfIso(words) : undefined;
  if (iso !== undefined) return dateRead(iso, type, column, program);
  const read = readEntry(words, type, context);
  if (!read.ok) return read;
  const { value } = read;
  if (value === null) return nothingIn(column);
  if (typeof value !== 'number') return { ok: true, content: value };
  if (type.kind === 'date') return dateRead(value, type, column, program);
  if (type.kind !== 'number' && type.kind !== 'temperature') return { ok: true, content: value };
  return numberRead(value, type, read.unit, column, program, words);
}

function nothingIn({ declaration, name }: ProgramColumn): ContentRead {
  return declaration.required === true
    ? { ok: false, why: `${name} can't be empty here: give it a value.` }
    : { ok: true, content: null };
}

function linkContent(words: string, type: Extract<ValueType, { kind: 'link' }>, findRow: FindRow): ContentRead {
  const row = findRow(type.table, words);
  if (row !== undefined) return { ok: true, content: { row } };
  const sheet = type.called ?? type.table;
  return { ok: false, why: `No row of ${sheet} is called “${words}”: add it to ${sheet} first.` };
}

function dateRead(civil: number, type: ValueType, column: ProgramColumn, program: Program): ContentRead {
  return limited(civil, type, column, program) ?? { ok: true, content: { date: isoDate(civil) } };
}

function numberRead(
  canonical: number,
  type: Extract<ValueType, { readonly kind: 'number' | 'temperature' }>,
  unit: Parameters<typeof numberContent>[3],
  column: ProgramColumn,
  program: Program,
  words: string,
): ContentRead {
  if (column.declaration.whole === true && !(Number.isInteger(canonical) && (unit === undefined || countsThings(unit))))
    return {
      ok: false,
      why: `${quoted(words)} doesn't say how many: write a whole number, such as 24.`,
    };
  return (
    limited(canonical, type, column, program) ?? {
      ok: true,
      content: numberContent(canonical, type, column, unit, program),
    }
  );
}

/** Keeps a column's limits, which are declared in SI units. */
function limited(value: number, type: ValueType, column: ProgramColumn, program: Program): ContentRead | undefined {
  const { least, most, type: declared } = column.declaration;
  if (least === undefined && most === undefined) return undefined;
  const unit = program.vocabulary.find(declared.type === 'number' ? declared.unit.si : 'degC');
  const canonical = (n: number): number => (unit === undefined || type.kind === 'date' ? n : toCanonical(unit, n));
  const say = (n: number): string => showWithUnit(canonical(n), type, { currency: program.currency });
  if (least !== undefined && value < canonical(least)) {
    return { ok: false, why: `${column.name} can't be below ${say(least)}: write a larger value.` };
  }
  if (most !== undefined && value > canonical(most)) {
    return { ok: false, why: `${column.name} can't be above ${say(most)}: write a smaller value.` };
  }
  return undefined;
}
