// How pictures ask a workbook: whether it has the columns a picture needs (needs.ts), figures by row, and figures in words in a
// column's own unit. Pure questions; the models of the pictures call it.

import {
  type Book,
  type ColumnView,
  cellValue,
  cellView,
  fromCanonical,
  rowId,
  rows,
  settings,
  sheetView,
  showWithUnit,
} from '../../../../engine/index.ts';
import { columnOf } from '../../store/sheets.ts';
import { inWords } from '../../store/shown.ts';

export { hasColumns, type Needs } from './needs.ts';

/** One row of a sheet, asked by column ids. */
export interface AskedRow {
  readonly slot: number;
  readonly id: string;
  /** A figure in canonical units, a civil day, or the slot that a link names; undefined where blank or an error. */
  figure(column: string): number | undefined;
  /** As the sheet shows it; '' where blank. */
  text(column: string): string;
  /** With its unit: '50 ft'. */
  full(column: string): string;
  yes(column: string): boolean;
  /** Whether a person typed it. */
  typed(column: string): boolean;
}

export function askRow(book: Book, sheet: string, slot: number): AskedRow {
  return {
    slot,
    // Of a season's thousands of jobs most are never asked who they are.
    get id() {
      return rowId(book, sheet, slot);
    },
    figure: (column) => {
      const value = cellValue(book, sheet, slot, column);
      return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
    },
    text: (column) => cellView(book, sheet, slot, column).text,
    full: (column) => inWords(cellView(book, sheet, slot, column)),
    yes: (column) => cellValue(book, sheet, slot, column) === true,
    typed: (column) => {
      const { origin, value } = cellView(book, sheet, slot, column);
      return (origin === 'entered' || origin === 'override') && value !== null;
    },
  };
}

export function askRows(book: Book, sheet: string): readonly AskedRow[] {
  return Array.from(rows(book, sheet), (slot) => askRow(book, sheet, slot));
}

/** The sum of a column over rows; undefined where no row has a figure. */
export function sumOf(asked: readonly AskedRow[], column: string): number | undefined {
  const figures = asked.flatMap((row) => row.figure(column) ?? []);
  return figures.length === 0 ? undefined : figures.reduce((sum, figure) => sum + figure, 0);
}

/** A figure of a column in words, as its cells show it: '50 ft', '12.4 lb'; with other `decimals` than theirs where given. */
export function inUnit(book: Book, sheet: string, column: string, canonical: number, decimals?: number): string {
  const view = columnOf(sheetView(book, sheet), column);
  if (view?.type === undefined) return String(canonical);
  return showWithUnit(canonical, view.type, { ...settings(book), decimals: decimals ?? view.decimals });
}

/** A figure of a column as a bare number in the column's unit. */
export function bareFigure(view: ColumnView | undefined, canonical: number): number {
  const unit = view?.type?.kind === 'number' || view?.type?.kind === 'temperature' ? view.type.unit : undefined;
  return unit === undefined ? canonical : fromCanonical(unit, canonical);
}
