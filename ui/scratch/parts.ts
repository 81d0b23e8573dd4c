// Parts of a formula of the workbook while a sum of a paper is put into its language, and the units that they lose or get: numbers
// of a paper are plain. Called by translate.ts and answer-units.ts.

import { isoDate } from '../../engine/index.ts';
import { civilOf, type Measure } from './figures.ts';
import type { NamedColumn } from './names.ts';

export type Kind = 'number' | 'text' | 'date' | 'yes or no';

/** A part of the formula; `whole` where it binds closer than any operator. */
export interface Part {
  readonly text: string;
  readonly kind: Kind;
  readonly whole: boolean;
}

/** A whole column of a sheet. */
export function columnText({ sheet, column }: NamedColumn): string {
  return `${sheet.name}[${column.name}]`;
}

/** What is read from a column, as the plain figure that the paper had. */
export function counted(text: string, { column, unit }: NamedColumn): Part {
  if (unit !== undefined) return plainOf(text, { is: 'number', unit });
  if (column.type?.kind === 'date') return whole(text, 'date');
  return whole(text, column.type?.kind === 'yesno' ? 'yes or no' : 'text');
}

/** A number in a unit as the plain figure that it is in it. */
export function plainOf(text: string, { unit }: Extract<Measure, { is: 'number' }>): Part {
  const { symbol } = unit;
  if (symbol === '') return whole(text, 'number');
  if (symbol === '%') return open(`${text} * 100`, 'number');
  if (symbol === 'degF' || symbol === 'degC')
    return open(`(${text} - 0 ${symbol}) / (1 ${differenceOf(symbol)})`, 'number');
  return open(symbol.startsWith('1/') ? `${text} * (1 ${symbol.slice(2)})` : `${text} / (1 ${symbol})`, 'number');
}

function temperatureText(part: Part, symbol: string): string {
  return `0 ${symbol} + ${within(part)} * (1 ${differenceOf(symbol)})`;
}

/** A plain figure as the quantity that it is in a unit; anything else as it is. */
export function ofUnit(part: Part, symbol: string | undefined): Part {
  if (symbol === undefined || symbol === '' || part.kind !== 'number') return part;
  if (/^deg[CF]$/.test(symbol)) return open(temperatureText(part, symbol), 'number');
  return open(symbol === '%' ? `${within(part)} / 100` : `${within(part)} * ${oneOf(symbol)}`, 'number');
}

/** One of a unit. */
export function oneOf(symbol: string): string {
  if (symbol === '%') return '(1 / 100)';
  return symbol.startsWith('1/') ? `(1 / (1 ${symbol.slice(2)}))` : `(1 ${symbol})`;
}

function differenceOf(symbol: string): string {
  return symbol === 'degF' ? 'Fdeg' : 'Cdeg';
}

/** A part that binds closer than any operator. */
export function whole(text: string, kind: Kind): Part {
  return { text, kind, whole: true };
}

/** A part that needs brackets beside an operator. */
export function open(text: string, kind: Kind): Part {
  return { text, kind, whole: false };
}

/** A number. */
export function plain(value: number): Part {
  return { text: String(value), kind: 'number', whole: value >= 0 };
}

/** A part as it stands beside an operator. */
export function within({ text, whole: closed }: Part): string {
  return closed ? text : `(${text})`;
}

/** A text as a formula writes it. */
export function quoted(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

/** A day of a paper as a formula writes it. */
export function dateText(serial: number): string {
  const [year = '', month = '', day = ''] = isoDate(civilOf(serial)).split('-');
  return `DATE(${Number(year)}; ${Number(month)}; ${Number(day)})`;
}
