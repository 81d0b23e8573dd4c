// Rows of a document as acts on a whole season make them anew: read beside what is worked out on them, their cells left out, their
// dates moved on, put in order.

import { type Content, civilDayOfIso, type DocumentData, rowWithId, type Workbook } from '../../engine/index.ts';
import { type RowOf, rowAt } from './act.ts';

export type Row = DocumentData['rows'][string][number];
export type Cells = Row['cells'];

/** The rows of an entered sheet as the workbook has them now, with what is typed on each. */
export function rowsIn(
  workbook: Workbook,
  data: DocumentData,
  sheet: string,
): readonly { readonly row: Row; readonly of: RowOf }[] {
  return (data.rows[sheet] ?? []).flatMap((row) => {
    const slot = rowWithId(workbook, sheet, row.id);
    return slot === undefined ? [] : [{ row, of: rowAt(workbook, sheet, row.id, slot) }];
  });
}

export function without(cells: Cells, ...columns: readonly string[]): Cells {
  return Object.fromEntries(Object.entries(cells).filter(([column]) => !columns.includes(column)));
}

/** Dates so many years on, the 29th of February on the 28th. */
export function movedOn(cells: Cells, years: number): Cells {
  return Object.fromEntries(Object.entries(cells).map(([column, content]) => [column, contentLater(content, years)]));
}

/** A date so many years on; anything else as it is. */
export function contentLater(content: Content, years: number): Content {
  if (typeof content !== 'object' || content === null || !('date' in content)) return content;
  return { date: isoLater(content.date, years) };
}

/** A day so many years on; the 28th for a 29th of February that the year does not have. */
export function isoLater(iso: string, years: number): string {
  const [year = '', month = '', day = ''] = iso.split('-');
  const moved = `${String(Number(year) + years).padStart(4, '0')}-${month}`;
  return civilDayOfIso(`${moved}-${day}`) === undefined ? `${moved}-28` : `${moved}-${day}`;
}

/** Rows that have no place yet come after the last, in their order. */
export function placed(list: readonly Row[]): readonly Row[] {
  const last = list.reduce((most, { at }) => (at !== undefined && at > most ? at : most), '');
  return list.map((row, index) => (row.at === '' ? { ...row, at: `${last}z${String(index).padStart(6, '0')}1` } : row));
}

/** A figure worked out, as one that is typed and shown in its column's unit. */
export function numberOf(number: number, unit: string): Content {
  return { number: Number(number.toPrecision(12)), unit, follows: true };
}
