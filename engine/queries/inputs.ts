// An input that is tried at several values: a cell that takes a number, an amount or a date. Reads the values as people write
// them ('4 in..12 in by 2 in', '10 Apr; 20 Apr') and makes the command that puts one in. Changes nothing itself.

import { readTyped } from '../commands/cells.ts';
import type { Command } from '../commands/command.ts';
import { withUnitOf } from '../commands/ranges.ts';
import { numberContent, placeContent } from '../document/cells.ts';
import type { Content } from '../document/content.ts';
import type { ProgramColumn } from '../schema/compile.ts';
import type { Unit } from '../units/unit.ts';
import { isoDate } from '../values/civil.ts';
import { FILLED } from '../values/column.ts';
import { readEntry } from '../values/entry.ts';
import { showWithUnit } from '../values/show.ts';
import type { ValueType } from '../values/type.ts';
import { type Book, columnOf, sheetOf } from './book.ts';

/** A cell to be tried at several values, by ids. */
export interface Input {
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
}

/** One value of an input, canonical, with the unit in which it was written. */
export interface InputValue {
  readonly value: number;
  readonly unit: Unit | undefined;
}

export type InputsRead =
  | { readonly ok: true; readonly values: readonly InputValue[] }
  | { readonly ok: false; readonly why: string };

/** More would take long to try and could not be read in a table. */
export const MOST_VALUES = 60;

/** Why a cell can't be tried at several values; undefined where it can. */
export function refuseInput(book: Book, { sheet, row, column }: Input): string | undefined {
  const found = columnOf(book, sheet, column);
  if (found === undefined || book.document.slotOf(sheet, row) === undefined) return 'There is no such cell any more.';
  const { name, type, role } = found;
  if (role === 'made')
    return `${name} follows from the rows of ${sheetOf(book, sheet)?.name}, so it can't be tried at values.`;
  return type?.kind === 'number' || type?.kind === 'temperature' || type?.kind === 'date'
    ? undefined
    : `${name} holds no number or date: choose a cell that does.`;
}

/** Whether a cell holds whole days, or a plain count that is shown without decimals: rows on a bed, the year. */
export function comesInWholes({ type, declaration }: ProgramColumn): boolean {
  if (type?.kind === 'date') return true;
  return type?.kind === 'number' && type.unit.symbol === '' && declaration.decimals === 0;
}

/** One value as a person writes it. */
export function readInput(book: Book, input: Input, text: string): InputsRead {
  const column = columnOf(book, input.sheet, input.column);
  if (column === undefined) return { ok: false, why: 'There is no such cell any more.' };
  if (text.trim() === '') return { ok: false, why: `Write a value for ${column.name}.` };
  const read = readTyped(column, { entry: text }, book);
  if (!read.ok) return read;
  const placed = placeContent(read.content, column, book.document.program, book.document);
  if (!placed.ok) return { ok: false, why: `${placed.why}.` };
  if (placed.cell.state !== FILLED) return { ok: false, why: `Write a value for ${column.name}.` };
  return { ok: true, values: [{ value: placed.cell.value, unit: placed.cell.unit }] };
}

/** Several: a list parted by semicolons, or 'from..to by step'. */
export function readInputs(book: Book, input: Input, text: string): InputsRead {
  const range = /^(.+?)\s*(?:\.\.|…|–)\s*(.+?)\s+by\s+(.+)$/.exec(text.trim());
  if (range !== null) return readRange(book, input, range[1] ?? '', range[2] ?? '', range[3] ?? '');
  const values: InputValue[] = [];
  for (const part of text.split(';')) {
    const read = readInput(book, input, part);
    if (!read.ok) return read;
    values.push(...read.values);
  }
  return values.length > MOST_VALUES ? tooMany(values.length) : { ok: true, values };
}

function tooMany(count: number): InputsRead {
  return { ok: false, why: `That makes ${count} values: try ${MOST_VALUES} at most.` };
}

function readRange(book: Book, input: Input, from: string, to: string, by: string): InputsRead {
  const last = readInput(book, input, to);
  if (!last.ok) return last;
  const first = readInput(book, input, withUnitOf(from, to, typeOf(book, input), book.document.entry));
  if (!first.ok) return first;
  const [a, b] = [first.values[0], last.values[0]];
  const step = readStep(book, input, by, to);
  if (typeof step === 'string') return { ok: false, why: step };
  if (a === undefined || b === undefined || step <= 0) return { ok: false, why: `The step “${by}” must be above 0.` };
  if (b.value < a.value) return { ok: false, why: `${from} to ${to} runs backwards: write the smaller one first.` };
  const count = Math.floor((b.value - a.value) / step + 1e-9) + 1;
  if (count > MOST_VALUES) return tooMany(count);
  const unit = a.unit ?? b.unit;
  return { ok: true, values: Array.from({ length: count }, (_, i) => ({ value: a.value + i * step, unit })) };
}

/** How far apart two values are to be, canonical; or why it can't be read. */
function readStep(book: Book, input: Input, by: string, to: string): number | string {
  const type = typeOf(book, input);
  if (type?.kind === 'date') {
    const [, days = '', unit = ''] = /^(\d+)\s*(days?|weeks?)?$/.exec(by.trim()) ?? [];
    return days === '' ? `“${by}” is no number of days or weeks.` : Number(days) * (unit.startsWith('week') ? 7 : 1);
  }
  if (type === undefined) return 'There is no such cell any more.';
  const read = readEntry(withUnitOf(by, to, type, book.document.entry), type, book.document.entry);
  if (!read.ok) return read.why;
  if (typeof read.value !== 'number') return `“${by}” is no step.`;
  if (type.kind !== 'temperature') return read.value;
  const zero = readEntry(`0 ${read.unit?.symbol ?? type.unit.symbol}`, type, book.document.entry);
  return zero.ok && typeof zero.value === 'number' ? read.value - zero.value : `“${by}” is no step.`;
}

function typeOf(book: Book, { sheet, column }: Input): ValueType | undefined {
  return columnOf(book, sheet, column)?.type;
}

/** The command that puts a value in. */
export function putInput(book: Book, input: Input, { value, unit }: InputValue): Command {
  const column = columnOf(book, input.sheet, input.column);
  const content = column === undefined ? null : contentOf(book, column, value, unit);
  return { command: 'put cell', ...input, content };
}

function contentOf({ document }: Book, column: ProgramColumn, value: number, unit: Unit | undefined): Content {
  const { type } = column;
  if (type?.kind === 'date') return { date: isoDate(Math.round(value)) };
  if (type?.kind !== 'number' && type?.kind !== 'temperature') return null;
  return numberContent(comesInWholes(column) ? Math.round(value) : value, type, column, unit, document.program);
}

/** How a value of an input reads: '8 in', '12 May 2027'. */
export function sayInput(book: Book, input: Input, { value, unit }: InputValue, decimals?: number): string {
  const type = typeOf(book, input);
  if (type === undefined) return String(value);
  const { program, writing } = book.document;
  return showWithUnit(value, type, { unit, decimals, currency: program.currency, writing });
}
