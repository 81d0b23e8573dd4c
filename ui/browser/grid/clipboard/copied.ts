// Selected cells as other programs take them: tab-separated text and an HTML table, with or without a line of headers. Figures
// go out bare and at full length, with the decimal mark of the place; days as 2027-03-15; the rest as shown. The table says
// besides what was typed, for cells of ours that it is pasted in.

import {
  type Book,
  type CellView,
  type ColumnView,
  cellView,
  isoDate,
  settings,
  shownNumber,
  toCanonical,
} from '../../../../engine/index.ts';
import type { RowAt } from '../../store/selection.ts';
import type { TypedHere } from '../typed-here.ts';
import { FROM_COLUMNS, FROM_DECIMAL, FROM_SHEET, TYPED, TYPED_UNIT } from './block.ts';
import { toTabSeparated } from './tab-separated.ts';

export interface Copied {
  readonly text: string;
  readonly html: string;
}

export interface CopyArea {
  readonly rows: readonly RowAt[];
  readonly columns: readonly ColumnView[];
}

interface CopiedCell {
  readonly text: string;
  readonly typed?: TypedHere | undefined;
}

export function copyOf(book: Book, sheet: string, { rows, columns }: CopyArea, withHeaders: boolean): Copied {
  const decimal = settings(book).writing?.decimal ?? '.';
  const lines = rows.map(({ slot }) =>
    columns.map((column): CopiedCell => {
      const cell = cellView(book, sheet, slot, column.id);
      return { text: copyText(cell, column, decimal), typed: typedHere(cell, column) };
    }),
  );
  const headers = columns.map((column): CopiedCell => ({ text: headerText(column) }));
  const all = withHeaders ? [headers, ...lines] : lines;
  const from = [
    attribute(FROM_SHEET, sheet),
    attribute(FROM_COLUMNS, columns.map(({ id }) => id).join(' ')),
    attribute(FROM_DECIMAL, decimal),
  ];
  const head = withHeaders ? row(headers, 'th') : '';
  return {
    text: toTabSeparated(all.map((cells) => cells.map(({ text }) => text))),
    html: `<table${from.join('')}>${head}${lines.map((cells) => row(cells, 'td')).join('')}</table>`,
  };
}

/** 'Length (ft)'. */
function headerText({ name, unit }: ColumnView): string {
  return unit === '' ? name : `${name} (${unit})`;
}

function copyText(cell: CellView, { type, unit }: ColumnView, decimal: string): string {
  if (type?.kind === 'date' && typeof cell.value === 'number') return isoDate(cell.value);
  const inColumnUnit = cell.unit === '' && cell.fullUnit === unit;
  if (cell.number === undefined || !inColumnUnit) return cell.text;
  // What is typed, or came with the template, is copied to its last bit; what is worked out without the dust at its end.
  const typed = cell.origin === 'entered' || cell.origin === 'override';
  const measured = type?.kind === 'number' || type?.kind === 'temperature' ? type : undefined;
  if (!typed || typeof cell.value !== 'number' || measured === undefined)
    return String(Number(cell.number.toPrecision(15))).replace('.', decimal);
  const number = shownNumber(measured.unit, cell.value);
  // The middle of a range is no figure that was typed.
  const isExact = cell.range !== '' || toCanonical(measured.unit, number) === cell.value;
  return isExact ? String(number).replace('.', decimal) : cell.entry;
}

/** What its text alone doesn't say: the ends of a range, the unit of a quantity. */
function typedHere({ entry, number, range }: CellView, { unit }: ColumnView): TypedHere | undefined {
  return range !== '' || (number !== undefined && unit !== '') ? { entry, unit } : undefined;
}

function row(cells: readonly CopiedCell[], tag: 'td' | 'th'): string {
  const one = ({ text, typed }: CopiedCell): string => {
    const more = typed === undefined ? '' : attribute(TYPED, typed.entry) + attribute(TYPED_UNIT, typed.unit);
    return `<${tag}${more}>${escaped(text)}</${tag}>`;
  };
  return `<tr>${cells.map(one).join('')}</tr>`;
}

function attribute(name: string, value: string): string {
  return ` ${name}="${escaped(value)}"`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}
