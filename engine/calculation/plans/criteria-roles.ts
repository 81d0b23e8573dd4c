// The parts that the arguments of a conditional function play: value columns, criteria and scalars; and when a stored value
// meets a condition. Shared by the files that plan totals and scans.

import type { Comparison, Typed } from '../../language/typed.ts';
import { BLANK, FILLED } from '../../values/column.ts';
import { compareNumbers } from '../../values/tolerance.ts';
import { isText, TEXT, type ValueType } from '../../values/type.ts';
import type { Frame } from '../frame.ts';
import type { RowFilter } from '../indexes/totals.ts';
import { ORDERS } from '../kernels/compare-kernels.ts';
import { type Stored, toStored } from '../kernels/scalars.ts';
import { keyColumn, type Reader } from './reader.ts';

export type ColumnNode = Extract<Typed, { node: 'column' }>;

export interface Criterion {
  readonly column: ColumnNode;
  readonly comparison: Comparison;
  readonly value: Typed;
}

export interface Roles {
  readonly scalars: readonly Typed[];
  readonly values: readonly ColumnNode[];
  readonly criteria: readonly Criterion[];
}

/** A column followed by a condition is a criterion; other columns are values; the rest are scalars. */
export function rolesOf(args: readonly Typed[]): Roles {
  const scalars: Typed[] = [];
  const values: ColumnNode[] = [];
  const criteria: Criterion[] = [];
  for (let i = 0; i < args.length; i++) {
    const argument = args[i];
    const next = args[i + 1];
    if (argument === undefined) continue;
    if (argument.node === 'column' && next?.node === 'condition') {
      criteria.push({ column: argument, comparison: next.comparison, value: next.value });
      i++;
    } else if (argument.node === 'column') values.push(argument);
    else scalars.push(argument);
  }
  return { scalars, values, criteria };
}

/**
 * A condition on a link that asks for rows before or behind one, or other than one that a text names, as one on the texts that the
 * rows are known by: where rows stand in memory says nothing.
 */
export function onKeys(criterion: Criterion, reader: Reader): Criterion {
  const { column, comparison, value } = criterion;
  if (column.type.kind !== 'link' || comparison === '=' || reader.keyOf(column.type.table) === undefined)
    return criterion;
  const isLink = value.type.kind === 'link';
  if (comparison === '<>' && isLink && value.type.table === column.type.table) return criterion;
  const cell: Typed = { ...column, node: 'cell', links: [] };
  const keys = reader.asColumn(keyOf(cell), reader.layout.table(column.table));
  return { column: { ...column, column: keys.id, type: TEXT }, comparison, value: isLink ? keyOf(value) : value };
}

function keyOf(link: Typed): Typed {
  return { node: 'key', operand: link, type: TEXT, from: link.from, to: link.to };
}

/** Whether values of the type stand in an order of numbers: quantities, dates, temperatures. */
export function holdsNumbers(type: ValueType): boolean {
  return type.kind === 'number' || type.kind === 'date' || type.kind === 'temperature';
}

/** Whether a stored value stands in this comparison to a fixed one. */
export function meets(reader: Reader, criterion: Criterion): (value: number, wanted: number) => boolean {
  const { column, comparison } = criterion;
  const takes = ORDERS[comparison];
  if (isText(column.type)) return textComparison(comparison, reader);
  return (value, wanted) => takes(compareNumbers(value, wanted));
}

/** Whether a stored text stands in this comparison to another, case aside. */
function textComparison(comparison: Comparison, reader: Reader): (value: number, wanted: number) => boolean {
  const takes = ORDERS[comparison];
  const { texts } = reader.words;
  if (comparison === '=') return (value, wanted) => texts.fold(value) === texts.fold(wanted);
  if (comparison === '<>') return (value, wanted) => texts.fold(value) !== texts.fold(wanted);
  return (value, wanted) => takes(texts.order(value, wanted));
}

/** Whether a condition's value is written out; a blank is = or <> with nothing behind it. */
export function isFixed({ value }: Criterion): boolean {
  return value.node === 'constant' || value.node === 'blank';
}

/** A constant condition as a filter; undefined where its value is not constant, or is the key of a link. */
export function fixedFilter(criterion: Criterion, reader: Reader): RowFilter | undefined {
  const { column, comparison, value } = criterion;
  const data = reader.layout.column(column.table, column.column);
  if (value.node === 'blank') {
    return { column: data, meets: (_, state) => (state === BLANK) === (comparison === '=') };
  }
  if (value.node !== 'constant') return undefined;
  const test = meets(reader, criterion);
  const stored: Stored = { value: 0, state: FILLED };
  toStored(reader.words, value.value, stored);
  const wanted = stored.value;
  if (column.type.kind === 'link') {
    if (reader.keyOf(column.type.table) === undefined) return undefined;
    const keys = keyColumn(reader, column.type.table);
    reader.readsWhole(column.type.table, keys.id);
    const compare = textComparison(comparison, reader);
    const meetsByKey = (slot: number, state: number, frame: Frame): boolean => {
      const { values, states } = frame.column(keys);
      return state === FILLED && states[slot] === FILLED && compare(values[slot] ?? 0, wanted);
    };
    return { column: data, keys, meets: meetsByKey };
  }
  return { column: data, meets: (cell, state) => state === FILLED && test(cell, wanted) };
}
