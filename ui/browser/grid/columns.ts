// From the workbook's columns to the grid's: groups, headers, how a cell gets its text, how an entry is written. Holds no
// state of its own; sheet-grid.ts calls it whenever a sheet's columns change.

import type { ColDef, ColGroupDef, ICellRendererParams } from 'ag-grid-community';
import {
  type Book,
  type CellView,
  type ColumnView,
  cellView,
  type Finding,
  rows,
  type SheetView,
} from '../../../engine/index.ts';
import { isFigure } from '../store/sheets.ts';
import { CellEditor } from './cell-editor.ts';
import { cellClasses, cellElement, originWords } from './cell-face.ts';
import type { Room } from './figures.ts';
import { HeaderFace } from './header-face.ts';
import { isSpare, type RowHandle } from './row-handle.ts';
import { startingWidth } from './widths.ts';

/** What cells ask while they are drawn; the sheet grid keeps it current. */
export interface Drawing {
  readonly book: Book;
  readonly sheet: SheetView;
  room(column: string): Room;
  found(row: string, column: string): Finding | undefined;
  inRange(rowIndex: number, column: string): boolean;
  /** Writes what was typed; whether it was taken. */
  write(row: RowHandle, column: ColumnView, entry: string): boolean;
  canEdit(): boolean;
}

type Cell = CellView | undefined;
type GridColumn = ColDef<RowHandle, Cell>;

/** The grid's column definitions, the key column fixed at the left, the others under their questions. */
export function gridColumns(drawing: Drawing): (ColDef<RowHandle> | ColGroupDef<RowHandle>)[] {
  const { book, sheet } = drawing;
  const slots = rows(book, sheet.id);
  const fixed = fixedColumns(sheet);
  const defs: (ColDef<RowHandle> | ColGroupDef<RowHandle>)[] = [];
  let group: ColGroupDef<RowHandle> | undefined;
  const ordered = [...sheet.columns].sort((a, b) => Number(fixed.has(b.id)) - Number(fixed.has(a.id)));
  for (const column of ordered) {
    const def = gridColumn(drawing, column, startingWidth(book, sheet.id, slots, column));
    if (fixed.has(column.id)) {
      defs.push({ ...def, pinned: 'left', lockPinned: true });
      continue;
    }
    if (group === undefined || group.headerName !== column.group) {
      group = { headerName: column.group, children: [], headerClass: 'question-head', marryChildren: true };
      defs.push(group);
    }
    group.children.push(def);
  }
  return defs;
}

/** What names a row stays in view: the key, or what made the row. */
function fixedColumns({ key, columns }: SheetView): ReadonlySet<string> {
  if (key !== undefined) return new Set([key]);
  const made = columns.filter(({ role }) => role === 'made').map(({ id }) => id);
  const first = columns[0]?.id;
  return new Set(made.length > 0 ? made.slice(0, 2) : first === undefined ? [] : [first]);
}

function gridColumn(drawing: Drawing, column: ColumnView, width: number): GridColumn {
  const { sheet } = drawing;
  const { id, name } = column;
  const view = (row: RowHandle | undefined): Cell =>
    row === undefined || isSpare(row) ? undefined : cellView(drawing.book, sheet.id, row.slot, id);
  const foundIn = (row: RowHandle | undefined): Finding | undefined =>
    row === undefined ? undefined : drawing.found(row.id, id);
  return {
    colId: id,
    headerName: name,
    headerComponent: HeaderFace,
    headerComponentParams: { shows: column },
    headerClass: isFigure(column) ? 'figure' : '',
    width,
    minWidth: 48,
    cellDataType: false,
    sortable: true,
    resizable: true,
    suppressHeaderMenuButton: true,
    comparator: (a, b, first, second) =>
      compareCells(column, a ?? undefined, b ?? undefined, isSpareNode(first.data), isSpareNode(second.data)),
    editable: () => column.role !== 'made' && drawing.canEdit(),
    cellEditor: CellEditor,
    cellEditorParams: { book: () => drawing.book, sheet: sheet.id, shows: column },
    valueGetter: ({ data }) => view(data),
    valueSetter: ({ data, newValue }: { data: RowHandle; newValue: unknown }) =>
      typeof newValue === 'string' && drawing.write(data, column, newValue),
    // After an edit the grid looks through the whole row: cells that read the same stay as they are.
    equals: (a, b) => sameCell(a ?? undefined, b ?? undefined),
    cellRenderer: (params: ICellRendererParams<RowHandle, Cell>) => {
      describe(params.eGridCell, params.value ?? undefined, column, foundIn(params.data));
      return cellElement(params.value ?? undefined, column, drawing.room(id));
    },
    cellClass: ({ data, value }) => cellClasses(value ?? undefined, column, foundIn(data)),
    cellClassRules: {
      'in-range': ({ rowIndex }) => drawing.inRange(rowIndex, id),
      'spare-name': ({ data }) => isSpareNode(data) && id === (sheet.key ?? sheet.columns[0]?.id),
    },
  };
}

function isSpareNode(row: RowHandle | undefined): boolean {
  return row !== undefined && isSpare(row);
}

function sameCell(a: Cell, b: Cell): boolean {
  if (a === undefined || b === undefined) return a === b;
  return a.text === b.text && a.origin === b.origin && a.value === b.value;
}

/** What a screen reader says of a cell beyond its text. */
function describe(cell: HTMLElement, value: Cell, column: ColumnView, found: Finding | undefined): void {
  const origin = value === undefined ? '' : originWords(value);
  const words = [origin, found?.says ?? ''].filter((part) => part !== '').join('. ');
  if (words === '') cell.removeAttribute('aria-description');
  else cell.setAttribute('aria-description', words);
  cell.setAttribute('aria-readonly', String(column.role === 'made'));
  cell.title = found?.says ?? '';
}

/** Blanks last, numbers and days by size, the rest by their texts; the empty row stays at the end either way. */
function compareCells(column: ColumnView, a: Cell, b: Cell, aIsSpare: boolean, bIsSpare: boolean): number {
  if (aIsSpare || bIsSpare) return Number(aIsSpare) - Number(bIsSpare);
  const blankA = a === undefined || a.text === '';
  const blankB = b === undefined || b.text === '';
  if (blankA || blankB) return Number(blankA) - Number(blankB);
  const bySize = column.type?.kind !== 'link' && typeof a.value === 'number' && typeof b.value === 'number';
  if (bySize) return a.value - b.value;
  return a.text.localeCompare(b.text, 'en', { numeric: true, sensitivity: 'base' });
}
