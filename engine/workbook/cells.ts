// Single cells between what people type and what columns hold: reading an entry with every check a column asks for, and the
// text, number and entry that a cell shows. Knows sheets; changes nothing.

import { nearestName } from '../language/nearest.ts';
import { type Stored, toScalar, toStored } from '../recalculation/scalars.ts';
import type { Unit } from '../units/unit.ts';
import { fromCanonical, shownNumber, toCanonical } from '../units/unit.ts';
import { civilDayOfIso, isoDate } from '../values/civil.ts';
import { BLANK, FILLED } from '../values/column.ts';
import { type EntryContext, readEntry } from '../values/entry.ts';
import type { Scalar } from '../values/error.ts';
import { entryText, showValue, showWithUnit } from '../values/show.ts';
import type { ValueType } from '../values/type.ts';
import type { CompileContext } from './compile.ts';
import type { Entry } from './declaration.ts';
import type { CellView, Standing } from './face.ts';
import { findSheetColumn, isTyped, type Sheet, type SheetColumn } from './sheet.ts';

/** A cell's content as a person gave it: what is stored and the unit it was typed in. */
export interface Content extends Stored {
  readonly unit: Unit | undefined;
}

export type ContentRead =
  | { readonly ok: true; readonly content: Content }
  | { readonly ok: false; readonly why: string };

export const NOTHING: Content = { value: 0, state: BLANK, unit: undefined };

export interface CellContext extends CompileContext {
  readonly entry: EntryContext;
  /** Units that cells were typed in, by the number kept in SheetColumn.typedUnits. */
  readonly typedUnits: readonly Unit[];
}

/** What an entry means in a column, with links found and limits kept; '' is nothing. */
export function readContent(column: SheetColumn, entry: Entry, context: CellContext): ContentRead {
  const { type, declaration } = column;
  if (type === undefined)
    return { ok: false, why: `${declaration.name} has a formula that doesn't check yet: mend it first.` };
  if (typeof entry === 'number' && (type.kind === 'number' || type.kind === 'temperature')) {
    return checked(column, Number.isFinite(entry) ? filled(toCanonical(type.unit, entry)) : NOTHING, context);
  }
  if (typeof entry === 'string' && type.kind === 'date') {
    const civil = civilDayOfIso(entry);
    if (civil !== undefined) return checked(column, filled(civil), context);
  }
  if (type.kind === 'text' || type.kind === 'link')
    return wordsContent(column, type, entryWords(entry).trim(), context);
  const read = readEntry(entryWords(entry), type, context.entry);
  if (!read.ok) return read;
  if (read.value === null) return emptyContent(column);
  const stored: Stored = { value: 0, state: FILLED };
  toStored(context.model, read.value, stored);
  return checked(column, { ...stored, unit: read.unit }, context);
}

function emptyContent({ declaration }: SheetColumn): ContentRead {
  return declaration.required === true
    ? { ok: false, why: `${declaration.name} can't be empty here: give it a value.` }
    : { ok: true, content: NOTHING };
}

function wordsContent(column: SheetColumn, type: ValueType, words: string, context: CellContext): ContentRead {
  if (words === '') return emptyContent(column);
  if (type.kind === 'link') return linkContent(type.table, words, context);
  return { ok: true, content: filled(context.model.texts.code(words)) };
}

function filled(value: number): Content {
  return { value, state: FILLED, unit: undefined };
}

/** An entry as a person would have typed it. */
function entryWords(entry: Entry): string {
  if (typeof entry === 'boolean') return entry ? 'yes' : 'no';
  return String(entry);
}

/** The column that takes an entry which this one can't; undefined where there is none, or it can't either. */
export function otherColumnFor(
  sheet: Sheet,
  column: SheetColumn,
  entry: Entry,
  context: CellContext,
): SheetColumn | undefined {
  const { orElse } = column.declaration;
  const other = orElse === undefined ? undefined : findSheetColumn(sheet, orElse);
  return other !== undefined && other !== column && readContent(other, entry, context).ok ? other : undefined;
}

function linkContent(table: string, key: string, context: CellContext): ContentRead {
  const keys = context.sheets.get(table)?.keys;
  const row = keys?.get(key.toLowerCase());
  if (row !== undefined) return { ok: true, content: filled(row) };
  const sheet = context.sheets.get(table);
  const names = sheet === undefined ? [] : [...sheet.data.rows()].map((slot) => rowName(sheet, slot, context));
  const near = nearestName(key, names);
  const advice =
    near === undefined ? `add it to ${table} first` : `did you mean “${near}”? Else add it to ${table} first`;
  return { ok: false, why: `No row of ${table} is called “${key}”: ${advice}.` };
}

/** Keeps a column's limits, which are declared in SI units. */
function checked(column: SheetColumn, content: Content, context: CellContext): ContentRead {
  const { least, most, name } = column.declaration;
  const { type } = column;
  if (content.state !== FILLED || (least === undefined && most === undefined) || type === undefined)
    return { ok: true, content };
  const declared = column.declaration.type;
  const unit = declared.type === 'number' ? context.vocabulary.find(declared.unit.si) : context.vocabulary.find('degC');
  const canonical = (n: number): number => (unit === undefined || type.kind === 'date' ? n : toCanonical(unit, n));
  const say = (n: number): string => showWithUnit(canonical(n), type, { currency: context.currency });
  if (least !== undefined && content.value < canonical(least)) {
    return { ok: false, why: `${name} can't be below ${say(least)}: write a larger value.` };
  }
  if (most !== undefined && content.value > canonical(most)) {
    return { ok: false, why: `${name} can't be above ${say(most)}: write a smaller value.` };
  }
  return { ok: true, content };
}

/** How a row is named: by its key, else by what its source made it of, else by its place. */
export function rowName(sheet: Sheet, row: number, context: CompileContext): string {
  const { source, declaration } = sheet;
  if (source.from === 'single') return sheet.name;
  const names =
    declaration.key !== undefined
      ? [declaration.key]
      : source.from === 'each' || source.from === 'span'
        ? [source.as]
        : source.from === 'pairs'
          ? source.as
          : source.from === 'events'
            ? [source.as, source.event]
            : [];
  if (names.length === 0) return `row ${placeOf(sheet, row)}`;
  return names.map((name) => cellText(sheet, row, name, context)).join(' / ');
}

/** Which of the rows there are a row is, from 1: slots of removed rows are not counted. */
function placeOf(sheet: Sheet, row: number): number {
  let place = 1;
  for (let before = 0; before < row; before++) if (sheet.data.live[before] === 1) place++;
  return place;
}

function cellText(sheet: Sheet, row: number, name: string, context: CompileContext): string {
  const column = sheet.columns.find((one) => one.declaration.name === name);
  if (column?.type === undefined) return '';
  return shownScalar(scalarAt(column, row, context), column.type, undefined, context, undefined);
}

/** A cell's canonical value. */
export function scalarAt(column: SheetColumn, row: number, context: CompileContext): Scalar {
  const { data, type } = column;
  if (row < 0 || row >= data.length) return null;
  return toScalar(context.model, type ?? { kind: 'text' }, data.values[row] ?? 0, data.states[row] ?? BLANK);
}

function shownScalar(
  scalar: Scalar,
  type: ValueType,
  unit: Unit | undefined,
  context: CompileContext,
  decimals: number | undefined,
): string {
  if (type.kind === 'link' && typeof scalar === 'number') {
    const target = context.sheets.get(type.table);
    return target === undefined ? '' : rowName(target, scalar, context);
  }
  return showValue(scalar, type, { unit, decimals, currency: context.currency });
}

/** A cell's value in words, with its unit. */
export function cellInWords(column: SheetColumn, row: number, context: CellContext): string {
  const { type } = column;
  if (type === undefined) return 'see formula';
  const scalar = scalarAt(column, row, context);
  if (scalar === null) return 'blank';
  if (type.kind === 'link') return shownScalar(scalar, type, undefined, context, undefined);
  return showWithUnit(scalar, type, {
    unit: typedUnit(column, row, context),
    decimals: isTyped(column, row)
      ? typedDecimals(scalar, type, column.declaration.decimals)
      : column.declaration.decimals,
    currency: context.currency,
  });
}

export function typedUnit(column: SheetColumn, row: number, context: CellContext): Unit | undefined {
  const number = column.typedUnits?.[row] ?? 0;
  return number === 0 ? undefined : context.typedUnits[number - 1];
}

export function standingOf(column: SheetColumn, row: number): Standing {
  if (column.role === 'entered') return 'entered';
  if (column.role === 'default') return column.overrides.has(row) ? 'entered' : 'default';
  return column.overrides.has(row) ? 'override' : 'computed';
}

export function viewCell(column: SheetColumn, row: number, context: CellContext): CellView {
  const { type, declaration } = column;
  const value = scalarAt(column, row, context);
  const unit = typedUnit(column, row, context);
  const shownType = type ?? { kind: 'text' };
  const inUnit = typeof value === 'number' && (shownType.kind === 'number' || shownType.kind === 'temperature');
  const decimals = isTyped(column, row) ? typedDecimals(value, shownType, declaration.decimals) : declaration.decimals;
  const text = shownScalar(value, shownType, unit, context, decimals);
  return {
    value,
    number: inUnit ? fromCanonical(shownType.unit, value) : undefined,
    text,
    entry: shownType.kind === 'link' ? text : entryText(value, shownType, { unit, currency: context.currency }),
    standing: standingOf(column, row),
  };
}

/** What is typed is what is shown: as many decimals as were typed, not the column's; money keeps its two. */
function typedDecimals(value: Scalar, type: ValueType, declared: number | undefined): number | undefined {
  if (typeof value !== 'number') return declared;
  if (type.kind !== 'temperature' && (type.kind !== 'number' || type.dimension.money !== 0)) return declared;
  const [, fraction = ''] = /\.(\d+)$/.exec(String(shownNumber(type.unit, value))) ?? [];
  return Math.min(fraction.length, MOST_TYPED_DECIMALS);
}

/** Past this many decimals a typed figure is shown rounded; the editor opens with all of them. */
const MOST_TYPED_DECIMALS = 6;

/** A typed cell as a file keeps it: a number in the column's unit where no other was typed; undefined for nothing. */
export function entryOf(column: SheetColumn, row: number, context: CellContext): Entry | undefined {
  const { type } = column;
  if (type === undefined || !isTyped(column, row)) return undefined;
  const scalar = scalarAt(column, row, context);
  if (scalar === null || typeof scalar === 'object') return undefined;
  if (typeof scalar !== 'number') return scalar;
  if (type.kind === 'link') return shownScalar(scalar, type, undefined, context, undefined);
  if (type.kind === 'date') return isoDate(scalar);
  if (type.kind !== 'number' && type.kind !== 'temperature') return scalar;
  const unit = typedUnit(column, row, context);
  if (unit !== undefined && unit.symbol !== type.unit.symbol)
    return entryText(scalar, type, { unit, currency: context.currency });
  const number = shownNumber(type.unit, scalar);
  // Typed with the unit that the column happens to show: it stays so when the workbook's units are switched.
  if (unit !== undefined && followsUnits(column)) return `${number} ${unit.symbol}`;
  if (toCanonical(type.unit, number) === scalar) return number;
  const exact = exactUnit(column, scalar, context);
  return exact === undefined ? number : entryText(scalar, type, { unit: exact, currency: context.currency });
}

/** Whether the column shows another unit when the workbook's units are switched. */
function followsUnits({ declaration: { type } }: SheetColumn): boolean {
  return type.type === 'temperature' || (type.type === 'number' && type.unit.us !== type.unit.si);
}

/** Of the two units a column may be shown in, one in which a figure keeps its last bit: that in which it was typed before units were switched. */
function exactUnit({ declaration }: SheetColumn, canonical: number, context: CellContext): Unit | undefined {
  const { type } = declaration;
  const symbols = type.type === 'number' ? [type.unit.us, type.unit.si] : ['degF', 'degC'];
  return symbols
    .map((symbol) => context.vocabulary.find(symbol))
    .find((unit) => unit !== undefined && toCanonical(unit, shownNumber(unit, canonical)) === canonical);
}
