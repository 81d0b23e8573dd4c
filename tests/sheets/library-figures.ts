// Figures of the crop library for tests: typed text read as the workbook reads it, in a unit of choice.

import { expect } from 'vitest';
import type { TypeDeclaration } from '../../engine/schema/declaration.ts';
import type { Unit } from '../../engine/units/unit.ts';
import { createVocabulary } from '../../engine/units/vocabulary.ts';
import { readEntry } from '../../engine/values/entry.ts';
import type { ValueType } from '../../engine/values/type.ts';
import { cropsSheet } from '../../sheets-templates/crops.ts';
import type { FigureColumn } from '../../sheets-templates/library/columns.ts';
import type { Crop } from '../../sheets-templates/library/figure.ts';
import { LIBRARY } from '../../sheets-templates/library/library.ts';

const vocabulary = createVocabulary({ currency: 'USD' });

/** The value; throws where it is missing. */
export function found<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`${what} is missing`);
  return value;
}

export function cropOf(name: string): Crop {
  return found(
    LIBRARY.find((crop) => crop.name === name),
    name,
  );
}

export function typeOf(column: string): TypeDeclaration {
  return found(
    cropsSheet.columns.find(({ name }) => name === column),
    column,
  ).type;
}

function unitOf(symbol: string): Unit {
  return found(vocabulary.find(symbol), `unit ${symbol}`);
}

/** The unit that a bare number of the column is read in. */
export function unitOfColumn(type: TypeDeclaration, units: 'us' | 'si'): Unit {
  if (type.type === 'number') return unitOf(type.unit[units]);
  return unitOf(units === 'us' ? 'degF' : 'degC');
}

/** The column's type in a workbook of US customary or of SI units. */
function valueType(type: TypeDeclaration, units: 'us' | 'si'): ValueType {
  if (type.type === 'choice') return { kind: 'choice', options: type.options };
  if (type.type === 'temperature') return { kind: 'temperature', unit: unitOfColumn(type, units) };
  if (type.type !== 'number') return { kind: 'text' };
  const unit = unitOfColumn(type, units);
  return { kind: 'number', dimension: unit.dimension, unit };
}

/** What the workbook makes of a typed figure: the same value in US customary and in SI units. */
export function read(text: string, type: TypeDeclaration): string | number {
  const [inUs, inSi] = (['us', 'si'] as const).map((units) => {
    const entry = readEntry(text, valueType(type, units), { vocabulary, year: 2027 });
    if (!entry.ok) throw new Error(entry.why);
    return entry.value;
  });
  expect(inUs, text).toBe(inSi);
  if (typeof inSi !== 'number' && typeof inSi !== 'string') throw new Error(`${text} is neither number nor text`);
  return inSi;
}

/** A typed figure, '8 in' or '340', as its canonical number (m, kg, day, K, 1). */
export function canonical(text: string, type: TypeDeclaration): number {
  const value = read(text, type);
  if (typeof value !== 'number') throw new Error(`${text} is no number`);
  return value;
}

function inUnit(value: number, unit: Unit): number {
  return ((value - unit.offset) * unit.denominator) / unit.numerator;
}

/** The figure of a crop in a unit; undefined where the library leaves it blank. */
export function figure(crop: Crop, column: FigureColumn, symbol: string): number | undefined {
  const text = crop.figures[column]?.text;
  if (text === undefined) return undefined;
  return inUnit(canonical(text, typeOf(column)), unitOf(symbol));
}

export function figureOf(name: string, column: FigureColumn, symbol: string): number {
  return found(figure(cropOf(name), column, symbol), `${name} ${column}`);
}

/** The lowest and highest of a figure; the figure twice where it has no range. */
export function bandOf(name: string, column: FigureColumn, symbol: string): readonly [number, number] {
  const { text, range } = found(cropOf(name).figures[column], `${name} ${column}`);
  const unit = unitOf(symbol);
  return [
    inUnit(canonical(range?.low ?? text, typeOf(column)), unit),
    inUnit(canonical(range?.high ?? text, typeOf(column)), unit),
  ];
}
