// Column types. A quantity is a number with a dimension and a unit to show it in; date and time span, temperature and
// temperature difference are point and difference and never mix. Used by the checker, the sheets and the faces.

import { type Dimension, isPlain, nameOfDimension, sameDimension } from '../units/dimension.ts';
import type { Unit } from '../units/unit.ts';

export type ValueType =
  /** A quantity; a plain number has dimension NONE and unit ONE, '%' or a counting word. */
  | { readonly kind: 'number'; readonly dimension: Dimension; readonly unit: Unit }
  /** A temperature on its scale; canonical in K. Their difference is a number of dimension WARMTH. */
  | { readonly kind: 'temperature'; readonly unit: Unit }
  | { readonly kind: 'date' }
  | { readonly kind: 'text' }
  | { readonly kind: 'yesno' }
  | { readonly kind: 'choice'; readonly options: readonly string[] }
  /** A row of another table, shown by its key; `called` is the name people know the table by, where that is not its id. */
  | { readonly kind: 'link'; readonly table: string; readonly called?: string }
  /** Figures that one function works out together; each is read as [Column].[Figure]. */
  | { readonly kind: 'record'; readonly record: RecordType };

export interface RecordType {
  readonly id: string;
  /** 'yield curve': for sentences. */
  readonly name: string;
  readonly figures: readonly RecordFigure[];
}

export interface RecordFigure {
  readonly id: string;
  readonly name: string;
  readonly type: ValueType;
  /** What US customary workbooks show it in, where that is another unit. */
  readonly usUnit?: Unit;
}

export const TEXT: ValueType = { kind: 'text' };
export const DATE: ValueType = { kind: 'date' };
export const YESNO: ValueType = { kind: 'yesno' };

/** 'a length', 'a date', 'a row of Varieties': for sentences about types. */
export function nameOfType(type: ValueType): string {
  switch (type.kind) {
    case 'number':
      return nameOfDimension(type.dimension);
    case 'temperature':
      return 'a temperature';
    case 'date':
      return 'a date';
    case 'text':
      return 'text';
    case 'yesno':
      return 'yes or no';
    case 'choice':
      return `one of ${type.options.join(', ')}`;
    case 'link':
      return `a row of ${type.called ?? type.table}`;
    case 'record':
      return `the figures of a ${type.record.name}`;
  }
}

/** Whether values of `given` may stand where `wanted` is wanted: same kind and dimension; choice and text are one. */
export function fits(wanted: ValueType, given: ValueType): boolean {
  if (wanted.kind === 'number') return given.kind === 'number' && sameDimension(wanted.dimension, given.dimension);
  if (wanted.kind === 'link') return given.kind === 'link' && given.table === wanted.table;
  if (wanted.kind === 'record') return given.kind === 'record' && given.record.id === wanted.record.id;
  if (isText(wanted)) return isText(given);
  return wanted.kind === given.kind;
}

/** Whether values are texts, those of a choice too; no where there is no type. */
export function isText(type: ValueType | undefined): boolean {
  return type?.kind === 'text' || type?.kind === 'choice';
}

export function isPlainNumber(type: ValueType): boolean {
  return type.kind === 'number' && isPlain(type.dimension);
}
