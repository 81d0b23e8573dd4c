// From the columns that a view shows to the grid's: row handles, what stays in sight at the left, the others under their
// questions; headers, how a cell gets its text, how an entry is written. Holds no state of its own; sheet-grid.ts calls it
// whenever the columns or the view change.

import type { ColDef, ColGroupDef } from 'ag-grid-community';
import { type CellView, type ColumnView, cellView, rows } from '../../../engine/index.ts';
import { columnOf, isFigure } from '../store/sheets.ts';
import { cellDrawer } from './cell-drawer.ts';
import { CellEditor } from './cell-editor.ts';
import { NEW_ROW } from './cell-face.ts';
import type { Drawing } from './drawing.ts';
import { GroupFace } from './group-face.ts';
import { HeaderFace } from './header-face.ts';
import { handleColumn } from './row-face.ts';
import { isHead, isRow, type RowHandle } from './row-handle.ts';
import { startingWidth, widthOfText } from './widths.ts';

type Cell = CellView | undefined;
type GridColumn = ColDef<RowHandle, Cell>;
type Definition = ColDef<RowHandle> | ColGroupDef<RowHandle>;

export function gridColumns(drawing: Drawing): Definition[] {
  const { book, sheet, view, folded } = drawing;
  const slots = rows(book, sheet.id);
  const shown = view.shows.flatMap((id) => columnOf(sheet, id) ?? []);
  const define = (column: ColumnView): GridColumn => {
    const least = sheet.entered && namesRows(drawing, column) ? widthOfText(NEW_ROW) : 0;
    const width = drawing.width(column.id) ?? Math.max(least, startingWidth(book, sheet.id, slots, column));
    return gridColumn(drawing, column, width);
  };
  const front = shown.slice(0, view.inFront).map(
    (column, at): Definition => ({
      ...define(column),
      pinned: 'left',
      lockPinned: at === 0,
      suppressMovable: at === 0,
    }),
  );
  const runs = runsOf(shown.slice(view.inFront));
  return [
    handleColumn(slots.length, drawing),
    ...front,
    ...runs.map(({ question, columns }, at): Definition => {
      const isFolded = columns.length > 1 && folded.includes(question);
      const visible = isFolded ? columns.slice(0, 1) : columns;
      return {
        groupId: `${question} ${at}`,
        headerName: question,
        headerGroupComponent: GroupFace,
        headerGroupComponentParams: { question, folded: isFolded, count: columns.length },
        headerClass: 'question-head',
        children: visible.map(define),
      };
    }),
  ];
}

interface Run {
  readonly question: string;
  readonly columns: readonly ColumnView[];
}

/** Columns side by side that belong to one question. */
function runsOf(columns: readonly ColumnView[]): readonly Run[] {
  const runs: { question: string; columns: ColumnView[] }[] = [];
  for (const column of columns) {
    const last = runs.at(-1);
    if (last?.question === column.group) last.columns.push(column);
    else runs.push({ question: column.group, columns: [column] });
  }
  return runs;
}

/** The first column that a view shows tells its rows apart. */
function namesRows({ view }: Drawing, { id }: ColumnView): boolean {
  return id === view.shows[0];
}

function gridColumn(drawing: Drawing, column: ColumnView, width: number): GridColumn {
  const { sheet } = drawing;
  const { id, name } = column;
  const naming = namesRows(drawing, column);
  const view = (row: RowHandle | undefined): Cell =>
    row === undefined || !isRow(row) ? undefined : cellView(drawing.book, sheet.id, row.slot, id);
  return {
    colId: id,
    headerName: name,
    headerComponent: HeaderFace,
    headerComponentParams: { shows: column, view: drawing.view },
    headerClass: isFigure(column) ? 'figure' : '',
    width,
    minWidth: 48,
    // Said outright: what isn't said the grid leaves as it was.
    pinned: null,
    cellDataType: false,
    sortable: false,
    resizable: true,
    suppressHeaderMenuButton: true,
    // The name of a row is read out before its other cells.
    ...(naming ? { cellAriaRole: 'rowheader' } : {}),
    editable: ({ data }) => column.role !== 'made' && data !== undefined && !isHead(data),
    cellEditor: CellEditor,
    cellEditorParams: {
      book: () => drawing.book,
      sheet: sheet.id,
      shows: column,
      begunWith: () => drawing.begunWith(),
    },
    suppressKeyboardEvent: () => true,
    valueGetter: ({ data }) => view(data),
    valueSetter: ({ data, newValue }: { data: RowHandle; newValue: unknown }) =>
      typeof newValue === 'string' && drawing.write(data, column, newValue),
    // After an edit the grid looks through the whole row: cells that read the same stay as they are.
    equals: (a, b) => sameCell(a ?? undefined, b ?? undefined),
    cellRenderer: cellDrawer(drawing, column, naming),
  };
}

function sameCell(a: Cell, b: Cell): boolean {
  if (a === undefined || b === undefined) return a === b;
  return a.text === b.text && a.ends === b.ends && a.origin === b.origin && a.value === b.value;
}
