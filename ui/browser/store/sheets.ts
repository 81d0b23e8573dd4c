// Columns by their ids, and how sheets and columns are set out under the questions they belong to. Pure questions to the
// workbook; every part of the page calls them.

import { type Book, type ColumnView, type SheetView, sheetView, type Unit } from '../../../engine/index.ts';
import { grouped } from './grouped.ts';

export function columnOf(sheet: SheetView | undefined, id: string | undefined): ColumnView | undefined {
  return sheet?.columns.find((column) => column.id === id);
}

export function columnAt(
  book: Book,
  place: { readonly sheet: string; readonly column: string | undefined },
): ColumnView | undefined {
  return columnOf(sheetView(book, place.sheet), place.column);
}

/** The unit in which a column shows its figures; undefined where it holds none. */
export function unitOf(column: ColumnView | undefined): Unit | undefined {
  return column?.type?.kind === 'number' ? column.type.unit : undefined;
}

/** Whether a column's values are figures: they stand to the right, on the decimal mark. */
export function isFigure({ type }: ColumnView): boolean {
  return type?.kind === 'number' || type?.kind === 'temperature';
}

/** Whether a formula gives the column's values, or stands in for them. */
export function hasFormula({ role }: ColumnView): boolean {
  return role === 'computed' || role === 'default';
}

export interface Group<T> {
  readonly name: string;
  readonly within: readonly T[];
}

/** Columns under their questions, each question where its first column stands. */
export function groupsOf(columns: readonly ColumnView[]): readonly Group<ColumnView>[] {
  return groupsBy(columns, ({ group }) => group);
}

/** Sheets under their questions, each question where its first sheet stands. */
export function questionsOf(sheets: readonly SheetView[]): readonly Group<SheetView>[] {
  return groupsBy(sheets, ({ question }) => question);
}

function groupsBy<T>(things: readonly T[], nameOf: (thing: T) => string): readonly Group<T>[] {
  return [...grouped(things, nameOf)].map(([name, within]) => ({ name, within }));
}

/** Whether a person types in a column, over a usual value or where there is none. */
export function isTyped({ role }: ColumnView): boolean {
  return role === 'entered' || role === 'default';
}
