// Between what a person typed, as plain data that says what it is, and what a column of a frame stores. Content that is not
// of the column's kind is refused here with a sentence; the document then keeps it aside.

import type { Frame } from '../calculation/frame.ts';
import type { Program, ProgramColumn } from '../schema/compile.ts';
import { canonicalUnit } from '../units/arithmetic.ts';
import { sameDimension } from '../units/dimension.ts';
import { MIXED_UNITS } from '../units/table.ts';
import { shownNumber, toCanonical, type Unit } from '../units/unit.ts';
import { civilDayOfIso, isoDate } from '../values/civil.ts';
import { BLANK, FILLED } from '../values/column.ts';
import { nameOfType, type ValueType } from '../values/type.ts';
import { type Content, isDateContent, isLinkContent, isQuantity, type Quantity } from './content.ts';

/** A cell as a column stores it: canonical value, state, and the unit it was typed in where that was not the column's. */
export interface StoredCell {
  readonly value: number;
  readonly state: number;
  readonly unit: Unit | undefined;
}

export type Placed = { readonly ok: true; readonly cell: StoredCell } | { readonly ok: false; readonly why: string };

export const EMPTY_CELL: StoredCell = { value: 0, state: BLANK, unit: undefined };

/** Finds the rows that links name. */
export interface RowFinder {
  /** The slot of a row; undefined where it is not there. */
  slotOf(sheet: string, row: string): number | undefined;
  rowIdOf(sheet: string, slot: number): string | undefined;
}

function filled(value: number, unit?: Unit): Placed {
  return { ok: true, cell: { value, state: FILLED, unit } };
}

/** What a column stores for a content, or why it can't hold it. */
export function placeContent(content: Content, column: ProgramColumn, program: Program, rows: RowFinder): Placed {
  const { type } = column;
  if (content === null) return { ok: true, cell: EMPTY_CELL };
  if (type === undefined) return { ok: false, why: `the formula of ${column.name} doesn't check yet` };
  switch (type.kind) {
    case 'number':
    case 'temperature':
      return placeNumber(content, type, program);
    case 'date': {
      const civil = isDateContent(content) ? civilDayOfIso(content.date) : undefined;
      return civil === undefined ? misfit(content, column) : filled(civil);
    }
    case 'yesno':
      return typeof content === 'boolean' ? filled(content ? 1 : 0) : misfit(content, column);
    case 'text':
      return typeof content === 'string' ? filled(program.words.texts.code(content)) : misfit(content, column);
    case 'choice': {
      const option = type.options.find((one) => one === content);
      return option === undefined ? misfit(content, column) : filled(program.words.texts.code(option));
    }
    case 'link': {
      if (!isLinkContent(content)) return misfit(content, column);
      const slot = rows.slotOf(type.table, content.row);
      if (slot !== undefined) return filled(slot);
      return { ok: false, why: `it named a row of ${type.called ?? type.table} that is not there` };
    }
    case 'record':
      return misfit(content, column);
  }
}

function misfit(content: Content, column: ProgramColumn): Placed {
  const wanted = column.type === undefined ? 'another sort of entry' : nameOfType(column.type);
  return { ok: false, why: `${contentInWords(content)} was typed where ${column.name} now holds ${wanted}` };
}

function placeNumber(content: Content, type: FigureType, program: Program): Placed {
  if (typeof content === 'number') {
    const plain = type.kind === 'number' && isPlainUnit(canonicalUnit(type.dimension));
    return plain ? filled(content) : { ok: false, why: `${content} was typed without a unit` };
  }
  if (!isQuantity(content)) return { ok: false, why: `${contentInWords(content)} is no number` };
  const unit = findUnit(content.unit, program);
  if (unit === undefined) return { ok: false, why: `“${content.unit}” is not a unit known here` };
  if (!fits(unit, type)) return { ok: false, why: `${contentInWords(content)} is not ${nameOfType(type)}` };
  const value = toCanonical(unit, content.number);
  if (!Number.isFinite(value)) return { ok: false, why: `${content.number} is too large to count with` };
  if (content.follows === true) return filled(value);
  const shownIn = content.shownIn === undefined ? undefined : findUnit(content.shownIn, program);
  return filled(value, shownIn !== undefined && fits(shownIn, type) ? shownIn : unit);
}

/** Whether figures of a type can be given in a unit. */
function fits(unit: Unit, type: FigureType): boolean {
  if (type.kind !== 'temperature') return unit.offset === 0 && sameDimension(unit.dimension, type.dimension);
  return (unit.offset !== 0 || unit.symbol === 'K') && sameDimension(unit.dimension, type.unit.dimension);
}

function isPlainUnit(unit: Unit): boolean {
  return unit.symbol === '';
}

/** Units of two parts (2 ft 6 in) have symbols that no vocabulary reads. */
function findUnit(symbol: string, program: Program): Unit | undefined {
  return MIXED_UNITS.find((unit) => unit.symbol === symbol) ?? program.vocabulary.find(symbol);
}

/** What is typed in a cell, from what its column stores; null where nothing is. */
export function contentAt(
  column: ProgramColumn,
  slot: number,
  frame: Frame,
  program: Program,
  rows: RowFinder,
): Content {
  const { type, def } = column;
  const { values, states } = frame.column(def);
  if (type === undefined || states[slot] !== FILLED) return null;
  const value = values[slot] ?? 0;
  switch (type.kind) {
    case 'number':
    case 'temperature': {
      const number = frame.typed[def.number]?.unitNumber(slot) ?? 0;
      return numberContent(value, type, column, program.typedUnits.unit(number), program);
    }
    case 'date':
      return { date: isoDate(value) };
    case 'yesno':
      return value === 1;
    case 'text':
    case 'choice':
      return program.words.texts.text(value);
    case 'link': {
      const row = rows.rowIdOf(type.table, value);
      return row === undefined ? null : { row };
    }
    case 'record':
      return null;
  }
}

/** A figure as it was typed, in a unit that gives the very same canonical value back. */
export function numberContent(
  value: number,
  type: FigureType,
  column: ProgramColumn,
  typedIn: Unit | undefined,
  program: Program,
): Content {
  const exactIn = (unit: Unit): number | undefined => {
    const number = shownNumber(unit, value);
    return toCanonical(unit, number) === value ? number : undefined;
  };
  if (typedIn !== undefined) {
    const number = exactIn(typedIn);
    if (number !== undefined) return { number, unit: typedIn.symbol };
    return { number: value, unit: canonicalSymbol(type), shownIn: typedIn.symbol };
  }
  if (type.kind === 'number' && canonicalSymbol(type) === '' && type.unit.numerator === type.unit.denominator)
    return value;
  const shown = type.unit.symbol === '' ? undefined : exactIn(type.unit);
  if (shown !== undefined) return followed(shown, type.unit);
  for (const unit of otherUnits(column, program)) {
    const number = exactIn(unit);
    if (number !== undefined && unit.symbol !== '') return followed(number, unit);
  }
  return canonicalSymbol(type) === '' ? value : { number: value, unit: canonicalSymbol(type), follows: true };
}

function followed(number: number, unit: Unit): Quantity {
  return { number, unit: unit.symbol, follows: true };
}

/** Of the two units that a column may be shown in, the one of the other system. */
function otherUnits({ declaration: { type } }: ProgramColumn, program: Program): readonly Unit[] {
  const symbols = type.type === 'number' ? [type.unit.us, type.unit.si] : ['degF', 'degC'];
  return symbols.flatMap((symbol) => program.vocabulary.find(symbol) ?? []);
}

type FigureType = Extract<ValueType, { readonly kind: 'number' | 'temperature' }>;

/** A column has one type for as long as the sheets stay as they are, and very many cells. */
const canonicalSymbols = new WeakMap<FigureType, string>();

function canonicalSymbol(type: FigureType): string {
  const known = canonicalSymbols.get(type);
  if (known !== undefined) return known;
  const symbol = type.kind === 'temperature' ? 'K' : canonicalUnit(type.dimension).symbol;
  canonicalSymbols.set(type, symbol);
  return symbol;
}

/** For sentences about what was typed. */
export function contentInWords(content: Content): string {
  if (content === null) return 'nothing';
  if (typeof content === 'string') return `“${content}”`;
  if (typeof content === 'boolean') return content ? 'yes' : 'no';
  if (typeof content === 'number') return String(content);
  if (isQuantity(content)) return `${content.number} ${content.unit}`.trim();
  return isDateContent(content) ? content.date : 'a row of another sheet';
}
