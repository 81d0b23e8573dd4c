// What stands for a column under a group of rows: its sum, mean, least or most. Sums are of what adds up (weights, areas,
// money, counts, hours); of spacings, shares and rates the mean is told.

import type { ProgramColumn } from '../schema/compile.ts';
import type { Total } from '../schema/views.ts';
import { AREA, isPlain, LENGTH, MASS, MONEY, sameDimension, TIME, VOLUME } from '../units/dimension.ts';
import { type Atom, isMixed } from '../units/table.ts';
import { fromCanonical, toCanonical, type Unit } from '../units/unit.ts';
import { showValue } from '../values/show.ts';
import type { ValueType } from '../values/type.ts';
import { type Book, columnOf } from './book.ts';
import { scalarAt } from './shown.ts';

/** Units in which a single thing is measured: what stands in them is told by its mean. */
const OF_ONE_THING = new Set(['in', 'cm', 'mm', 'oz', 'g', 'mg', 'day', 'week', 'min']);

/** How a column is summed up where nothing else was asked for. */
export function usualTotal(book: Book, sheet: string, column: string): Total {
  const type = columnOf(book, sheet, column)?.type;
  if (type?.kind === 'temperature') return 'mean';
  if (type?.kind !== 'number') return 'none';
  const { dimension, unit } = type;
  if (isPlain(dimension)) return isCount(unit) ? 'sum' : unit.symbol === '' ? 'none' : 'mean';
  const addsUp = [AREA, VOLUME, MASS, MONEY, LENGTH, TIME].some((one) => sameDimension(one, dimension));
  return addsUp && !OF_ONE_THING.has(unit.symbol) ? 'sum' : 'mean';
}

function isCount(unit: Unit & Pick<Atom, 'singular'>): boolean {
  return unit.singular !== undefined;
}

/** The figure in the column's unit; '' where nothing is to be told. Blanks and errors are passed over. */
export function totalText(book: Book, sheet: string, columnId: string, slots: readonly number[], total: Total): string {
  const column = columnOf(book, sheet, columnId);
  if (column?.type === undefined || total === 'none') return '';
  const values = slots.flatMap((row) => numberAt(book, column, row));
  const figure = values.length === 0 ? undefined : FOLDS[total](values);
  if (figure === undefined) return '';
  const { program, writing } = book.document;
  const own = total === 'mean' ? undefined : column.declaration.decimals;
  const most = total === 'sum' || total === 'mean' ? decimalsThatSay(figure, column.type) : undefined;
  const shown = { currency: program.currency, writing };
  // Rounded but once: to the decimals that are shown, or where the column names none to those that say something.
  if (own !== undefined) return showValue(figure, column.type, { ...shown, decimals: Math.min(own, most ?? own) });
  return showValue(most === undefined ? figure : rounded(figure, column.type, most), column.type, shown);
}

/**
 * How many decimals of a sum or mean say something at its size: one from a hundred on, two from ten on; undefined where all do, as of
 * money, whatever it is for, and of feet and inches.
 */
function decimalsThatSay(figure: number, type: ValueType): number | undefined {
  if (type.kind !== 'number' || type.unit.dimension.money === 1 || isMixed(type.unit)) return undefined;
  const size = Math.abs(fromCanonical(type.unit, figure));
  return size < 10 ? undefined : size < 100 ? 2 : 1;
}

function rounded(figure: number, type: ValueType, decimals: number): number {
  if (type.kind !== 'number') return figure;
  const steps = 10 ** decimals;
  return toCanonical(type.unit, Math.round(fromCanonical(type.unit, figure) * steps) / steps);
}

function numberAt(book: Book, column: ProgramColumn, row: number): readonly number[] {
  const kind = column.type?.kind;
  if (kind !== 'number' && kind !== 'temperature' && kind !== 'date') return [];
  const value = scalarAt(book, column, row);
  return typeof value === 'number' ? [value] : [];
}

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

const FOLDS: Readonly<Record<Exclude<Total, 'none'>, (values: readonly number[]) => number>> = {
  sum,
  mean: (values) => sum(values) / values.length,
  least: (values) => values.reduce((a, b) => Math.min(a, b)),
  most: (values) => values.reduce((a, b) => Math.max(a, b)),
};
