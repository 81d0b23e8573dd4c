// An act: what a grower asks for in one word and formulas can't do, such as laying a succession. It is worked out from the
// workbook as it stands and gives commands to be done together as one step of undo, or a sentence that says why not. Faces
// call the acts beside this file and do the commands; nothing here changes a workbook.

import {
  type Book,
  type CellView,
  type Command,
  type Content,
  cellValue,
  cellView,
  type DocumentData,
  isoDate,
  type message,
  rows,
  rowWithId,
  type Scalar,
  sheetView,
} from '../../engine/index.ts';

export type Act =
  | {
      readonly ok: true;
      readonly commands: readonly Command[];
      readonly message: ReturnType<typeof message>;
      /** What it comes to, in a sentence or two. */
      readonly said: string;
    }
  | { readonly ok: false; readonly why: string };

export function refused(why: string): Act {
  return { ok: false, why };
}

/** One row of a sheet, asked by column. */
export interface RowOf {
  readonly id: string;
  readonly slot: number;
  view(column: string): CellView;
  value(column: string): Scalar;
  /** A plain number, a canonical quantity, a civil day; undefined where there is none. */
  number(column: string): number | undefined;
  text(column: string): string;
}

/** The row with an id; undefined where the sheet has none such. */
export function rowOf(book: Book, sheet: string, id: string): RowOf | undefined {
  const slot = rowWithId(book, sheet, id);
  return slot === undefined ? undefined : rowAt(book, sheet, id, slot);
}

export function rowAt(book: Book, sheet: string, id: string, slot: number): RowOf {
  return {
    id,
    slot,
    view: (column) => cellView(book, sheet, slot, column),
    value: (column) => cellValue(book, sheet, slot, column),
    number: (column) => {
      const value = cellValue(book, sheet, slot, column);
      return typeof value === 'number' ? value : undefined;
    },
    text: (column) => cellView(book, sheet, slot, column).text,
  };
}

/** Visits every row of a sheet; none where the workbook lacks it. */
export function each(book: Book, sheet: string, visit: (row: RowOf, slot: number) => void): void {
  if (sheetView(book, sheet) === undefined) return;
  for (const slot of rows(book, sheet)) visit(rowAt(book, sheet, '', slot), slot);
}

/** What is typed in the rows of an entered sheet, by row id and column. */
export function typedIn(data: DocumentData, sheet: string): ReadonlyMap<string, ReadonlyMap<string, Content>> {
  return new Map((data.rows[sheet] ?? []).map(({ id, cells }) => [id, new Map(Object.entries(cells))]));
}

/** Ids of rows that something is noted of: on rows made of them, a job done or a note, or on a row that names them, such as a record. */
export function notedRows(data: DocumentData): ReadonlySet<string> {
  const made = Object.values(data.aside).flatMap((rows) => Object.keys(rows));
  const named = Object.values(data.rows).flatMap((rows) => rows.flatMap(({ cells }) => Object.values(cells)));
  return new Set([
    ...made.filter((id) => id.includes('~')).flatMap((id) => partsOfId(id)),
    ...named.flatMap((content) => rowNamed(content) ?? []),
  ]);
}

/** Ids of the rows that a made row is made of. */
export function partsOfId(id: string): readonly string[] {
  return id.split(/[~()]+/);
}

/** Id of the row that a cell names; undefined where it names none. */
export function rowNamed(content: Content | undefined): string | undefined {
  return typeof content === 'object' && content !== null && 'row' in content ? content.row : undefined;
}

/** A content in words that never change, so that equal contents read alike. */
export function contentInWords(content: Content): string {
  if (content === null) return '';
  if (typeof content !== 'object') return String(content);
  if ('date' in content) return content.date;
  return 'row' in content ? content.row : `${content.number} ${content.unit}`;
}

/** '3 Jul 2027' in the words of the language used throughout. */
export function dayInWords(civil: number): string {
  const [year = '', month = '', day = ''] = isoDate(civil).split('-');
  const names = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
  return `${Number(day)} ${names[Number(month) - 1] ?? ''} ${year}`;
}

/** '1 planting', '3 plantings', '2 branches'. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
