// A sheet on paper as it is looked at: the columns of a view in their order and widths, the rows that its filters leave in its order
// and under its groups, colours by their marks; the view of all columns in a table a question. Pure.

import {
  arrange,
  type Book,
  type ColumnView,
  cellView,
  type FoundIn,
  type RowGroup,
  rows,
  type SheetView,
  type View,
} from '../../../engine/index.ts';
import { columnOf, groupsOf, isFigure } from '../store/sheets.ts';
import { endsAfter } from '../store/shown.ts';
import { subtotalWords } from '../store/subtotal.ts';
import { lookSays } from './look-says.ts';
import { marksOf, type SheetMarks } from './marks-on-paper.ts';
import {
  counted,
  farmName,
  type Paper,
  type PaperCell,
  type PaperColumn,
  type PaperTable,
  unbroken,
  words,
} from './paper.ts';

/** How a sheet is looked at. */
export interface Look {
  readonly view: View;
  /** Whether something of a level was found in a row. */
  readonly found: FoundIn;
  /** Pixels on the screen, by column, where a person drew them. */
  readonly widths?: Readonly<Record<string, number>>;
}

/** So many columns stand in a table side by side; more stand in further tables, what names the rows in front of each. */
const MOST_COLUMNS = 14;
/** More columns than these are set along the long side of the paper. */
const UPRIGHT = 9;
/**
 * More cells than these go on paper at once only in parts: a browser lays all pages out before it prints the first, and a table of
 * 300,000 cells, some thousand pages, has ended the page.
 */
const MOST_CELLS = 100_000;
/** The type on paper beside that on the screen. */
const SMALLER = 0.87;

/** A sheet of one row is a form without views. Questions folded on the screen, for want of room there, stand open on paper. */
export function sheetOnPaper(book: Book, sheet: SheetView, look: Look): Paper {
  const marks = marksOf(book, sheet.id);
  if (sheet.oneRow) {
    const tables = formTables({ book, sheet, look, slots: Array.from(rows(book, sheet.id)), marks });
    return { title: sheet.name, farm: farmName(book), says: sheet.about, tables, marks: marks.met() };
  }
  const { view } = look;
  const shown = arrange(book, sheet.id, view, look.found);
  const parts = partsOf({ book, sheet, look, slots: shown.rows, marks });
  const most = Math.floor(MOST_CELLS / parts.reduce((sum, { columns }) => sum + columns.length, 0));
  const setting: Setting = { book, sheet, look, slots: shown.rows.slice(0, most), marks };
  const groups = shown.groups === undefined ? undefined : firstOf(shown.groups, most);
  const tables = parts.flatMap(({ heading, columns }) => rowTables(setting, heading, columns, groups));
  const says = [lookSays(book, sheet, view, shown), cutWords(shown.rows.length, most)]
    .filter((part) => part !== '')
    .join(' ');
  return {
    title: view.columns === undefined ? sheet.name : `${sheet.name}: ${view.name}`,
    farm: farmName(book),
    says: says === '' && view.columns === undefined ? sheet.about : says,
    tables,
    marks: marks.met(),
    wide: tables.some(({ columns }) => columns.length > UPRIGHT),
  };
}

/** Why not all rows are there; '' where they are. */
function cutWords(count: number, most: number): string {
  return count <= most
    ? ''
    : `Here are the first ${most} of ${count} rows, as many as a browser prints at once: filter the sheet to print it in parts, or download it.`;
}

interface GroupPart extends RowGroup {
  /** How many rows it has, with those that are left out. */
  readonly count: number;
}

/** Groups with the first `most` of their rows. */
function firstOf(groups: readonly RowGroup[], most: number): readonly GroupPart[] {
  let room = most;
  return groups.flatMap((group): readonly GroupPart[] => {
    const rows = group.rows.slice(0, room);
    room -= rows.length;
    return rows.length === 0 ? [] : [{ ...group, rows, count: group.rows.length }];
  });
}

interface Setting {
  readonly book: Book;
  readonly sheet: SheetView;
  readonly look: Look;
  readonly slots: readonly number[];
  readonly marks: SheetMarks;
}

interface Part {
  readonly heading: string;
  readonly columns: readonly ColumnView[];
}

/** The columns of each table, what names the rows first. The view of all columns leaves out what holds nothing. */
function partsOf(setting: Setting): readonly Part[] {
  const { sheet, look } = setting;
  const { view } = look;
  const shown = view.shows.flatMap((id) => columnOf(sheet, id) ?? []);
  const front = shown.slice(0, view.inFront);
  const rest = shown.slice(view.inFront);
  if (view.columns !== undefined) return inChunks(front, rest);
  const filled = rest.filter((column) => isFilled(setting, column));
  const parts = groupsOf(filled).map(({ name, within }) => ({ heading: name, columns: [...front, ...within] }));
  return parts.length === 0 ? [{ heading: sheet.name, columns: front }] : parts;
}

function inChunks(front: readonly ColumnView[], rest: readonly ColumnView[]): readonly Part[] {
  const each = Math.max(1, MOST_COLUMNS - front.length);
  const count = Math.max(1, Math.ceil(rest.length / each));
  // As many in one table as in the other.
  const even = Math.ceil(rest.length / count);
  return Array.from({ length: count }, (_, at) => ({
    heading: at === 0 ? '' : 'Continued',
    columns: [...front, ...rest.slice(at * even, (at + 1) * even)],
  }));
}

function isFilled({ book, sheet, slots }: Setting, { id }: ColumnView): boolean {
  return slots.some((slot) => cellView(book, sheet.id, slot, id).figure !== '');
}

/** One table, or one a group with what stands for its columns under it. */
function rowTables(
  setting: Setting,
  heading: string,
  columns: readonly ColumnView[],
  groups: readonly GroupPart[] | undefined,
): readonly PaperTable[] {
  const { book, sheet, look, slots } = setting;
  const heads = columns.map((column) => headOf(column, look.widths?.[column.id]));
  const rowOf = (slot: number): readonly PaperCell[] =>
    columns.map(({ id, type }) => onPaper(setting, slot, { id, unit: '', type }));
  if (groups === undefined) return [{ heading, columns: heads, rows: slots.map(rowOf), boxes: false }];
  return groups.map((group): PaperTable => {
    const name = group.name === '' ? 'Nothing there' : group.name;
    // What stands under a group stands only under a whole one.
    const totals = (group.rows.length < group.count ? [] : columns.slice(1)).map(({ id }) =>
      subtotalWords(book, sheet.id, look.view, id, group.rows),
    );
    return {
      heading: `${name}, ${counted(group.count, 'row')}`,
      above: heading,
      columns: heads,
      rows: group.rows.map(rowOf),
      boxes: false,
      ...(totals.some((text) => text !== '') ? { totals: [`${name} in all`, ...totals] } : {}),
    };
  });
}

function headOf(column: ColumnView, width: number | undefined): PaperColumn {
  return {
    name: column.unit === '' ? column.name : `${column.name}, ${column.unit}`,
    figure: isFigure(column),
    ...(width === undefined ? {} : { width: `${Math.round(width * SMALLER)}px` }),
  };
}

/** The same of every question: so they are set as one table, whose head is there once a page. */
const FORM_COLUMNS = words('What', 'Entry');

/** A sheet of one row: what is asked, and its entry. */
function formTables(setting: Setting): readonly PaperTable[] {
  const { sheet, slots } = setting;
  const only = slots[0] ?? -1;
  const columns = sheet.columns.filter((column) => column.role !== 'made' && isFilled(setting, column));
  return groupsOf(columns).map(({ name, within }) => ({
    heading: name,
    columns: FORM_COLUMNS,
    rows: within.map((column) => [column.name, onPaper(setting, only, column)]),
    boxes: false,
  }));
}

/** A cell as it stands on paper, with the ends of a figure that has them, and the mark of its colour. */
function onPaper(
  { book, sheet, marks }: Setting,
  row: number,
  { id, unit, type }: Pick<ColumnView, 'id' | 'unit' | 'type'>,
): PaperCell {
  const { text: bare, ends } = cellView(book, sheet.id, row, id);
  const text = (type?.kind === 'date' ? unbroken(bare) : withUnit(bare, unit)) + endsAfter(ends);
  const mark = marks.of(row, id);
  return mark === '' ? text : { mark, text };
}

function withUnit(text: string, unit: string): string {
  return text === '' || unit === '' || /[^\d.,\s-]$/.test(text) ? text : `${text} ${unit}`;
}
