// One sheet in the grid: makes the grid, draws what the workbook says, repaints the cells that change sets name, and joins
// the range layer, its acts and the menus to it. Made and thrown away by grid.tsx, one for each sheet on screen.

import {
  CellApiModule,
  CellStyleModule,
  ClientSideRowModelApiModule,
  ClientSideRowModelModule,
  ColumnApiModule,
  CustomEditorModule,
  createGrid,
  type GridApi,
  ModuleRegistry,
  RenderApiModule,
  RowApiModule,
  RowStyleModule,
  ScrollApiModule,
} from 'ag-grid-community';
import {
  type Book,
  type ChangeSet,
  type ColumnView,
  cellView,
  type Finding,
  rows,
  type SheetView,
  sheetView,
} from '../../../engine/index.ts';
import { addedWords } from '../commands/rows.ts';
import { change, typeCell } from '../store/change.ts';
import { announce } from '../store/notices.ts';
import { rowsOf, selectedCells, selectPlace } from '../store/selection.ts';
import { columnOf, isFigure } from '../store/sheets.ts';
import { readOnly } from '../store/workbook.ts';
import { type Drawing, gridColumns } from './columns.ts';
import { type Figure, NO_ROOM, type Room, roomFor, widerRoom } from './figures.ts';
import { GridHands, holdRefused } from './grid-hands.ts';
import { type GridSurface, gridOnScreen } from './grid-surface.ts';
import { gridTheme } from './grid-theme.ts';
import { RangeActs } from './range-acts.ts';
import { RangeLayer } from './range-layer.ts';
import { cellCount, type Range, rangeOfCell, rectangleOf } from './ranges.ts';
import { isSpare, type RowHandle, SPARE } from './row-handle.ts';
import { surfaceOf } from './surface-of.ts';

ModuleRegistry.registerModules([
  ClientSideRowModelModule,
  ClientSideRowModelApiModule,
  CellApiModule,
  CellStyleModule,
  RowStyleModule,
  ColumnApiModule,
  CustomEditorModule,
  RenderApiModule,
  RowApiModule,
  ScrollApiModule,
]);

/** Figures of so many rows decide where a column's decimal mark stands. */
const ALIGNED_ROWS = 500;

/** Where a person last was on each sheet, so that coming back to one finds the same row in hand. */
const lastPlaces = new Map<string, { readonly row: string; readonly column: string }>();

function findingKey(row: string, column: string): string {
  return `${row} ${column}`;
}

export class SheetGrid implements Drawing {
  readonly book: Book;
  sheet: SheetView;
  private readonly api: GridApi<RowHandle>;
  private readonly layer: RangeLayer;
  private readonly hands: GridHands;
  private readonly surface: GridSurface;
  private readonly rooms = new Map<string, Room>();
  private findings: Map<string, Finding>;

  constructor(host: HTMLElement, book: Book, sheet: SheetView, found: readonly Finding[]) {
    this.book = book;
    this.sheet = sheet;
    this.findings = this.findingsOf(found);
    this.api = createGrid<RowHandle>(host, {
      theme: gridTheme,
      styleNonce: document.querySelector<HTMLMetaElement>('meta[property="csp-nonce"]')?.nonce ?? '',
      columnDefs: gridColumns(this),
      rowData: this.rowHandles(),
      getRowId: ({ data }) => data.id,
      rowClassRules: {
        'spare-row': ({ data }) => data !== undefined && isSpare(data),
        'row-in-hand': ({ rowIndex }) => this.layer?.rectangle() !== undefined && this.rowInHand() === rowIndex,
      },
      headerHeight: 50,
      groupHeaderHeight: 26,
      invalidEditValueMode: 'block',
      enterNavigatesVerticallyAfterEdit: true,
      stopEditingWhenCellsLoseFocus: true,
      suppressMovableColumns: true,
      suppressScrollOnNewData: true,
      animateRows: false,
      ensureDomOrder: true,
      focusGridInnerElement: () => this.focusInHand(),
      onSortChanged: () => this.layer.paint(),
    });
    // Before the range layer: a press elsewhere doesn't leave an entry that can't stand.
    holdRefused(host, this.api);
    this.layer = new RangeLayer(host, this.api, { ranged: (range) => this.ranged(range) });
    const acts = new RangeActs(book, () => this.sheet, this.layer);
    this.surface = surfaceOf({ api: this.api, layer: this.layer, acts, sheet: () => this.sheet });
    this.hands = new GridHands(host, this.layer);
    this.api.setGridAriaProperty('label', `${sheet.name}: ${sheet.about}`);
    this.api.setGridAriaProperty('multiselectable', 'true');
    gridOnScreen.value = this.surface;
  }

  destroy(): void {
    if (gridOnScreen.peek() === this.surface) gridOnScreen.value = undefined;
    this.hands.destroy();
    this.layer.destroy();
    this.api.destroy();
    selectedCells.value = undefined;
  }

  // What the columns ask while they draw.

  room(column: string): Room {
    const known = this.rooms.get(column);
    if (known !== undefined) return known;
    const view = columnOf(this.sheet, column);
    const first = rows(this.book, this.sheet.id).subarray(0, ALIGNED_ROWS);
    const room = view !== undefined && isFigure(view) ? roomFor(this.figures(column, first)) : NO_ROOM;
    this.rooms.set(column, room);
    return room;
  }

  found(row: string, column: string): Finding | undefined {
    return this.findings.get(findingKey(row, column));
  }

  inRange(rowIndex: number, column: string): boolean {
    return this.layer?.includes(rowIndex, column) ?? false;
  }

  canEdit(): boolean {
    return readOnly.peek() === undefined;
  }

  write(row: RowHandle, column: ColumnView, entry: string): boolean {
    const sheet = this.sheet.id;
    if (!isSpare(row)) return !typeCell({ sheet, row: row.id, column: column.id }, column.name, entry).refused;
    if (entry.trim() === '') return false;
    const entries = { [column.id]: entry };
    return !change([{ command: 'insert row', sheet, entries }], addedWords(this.sheet, entries)).refused;
  }

  // What the page tells the grid.

  /** Repaints what a change set names in this sheet, and nothing else. */
  follow(changed: ChangeSet): void {
    const { id } = this.sheet;
    if (changed.columnsOf.includes(id)) this.redrawColumns();
    if (changed.rowsOf.includes(id)) this.redrawRows();
    const cells = changed.cells.filter(
      ({ sheet, column }) => sheet === id && columnOf(this.sheet, column) !== undefined,
    );
    if (cells.length === 0 || changed.columnsOf.includes(id)) return;
    const rendered = this.api.getRenderedNodes();
    for (const { column, rows: slots } of cells) {
      const realigned = this.realign(column, slots);
      const named = slots === 'all' || realigned ? undefined : new Set(slots);
      const rowNodes = named === undefined ? rendered : rendered.filter(({ data }) => data && named.has(data.slot));
      if (rowNodes.length > 0) this.api.refreshCells({ rowNodes, columns: [column], force: true });
    }
    this.layer.paint();
  }

  /** Marks the cells in which something was found and unmarks the others. */
  showFindings(found: readonly Finding[]): void {
    const next = this.findingsOf(found);
    const before = this.findings;
    this.findings = next;
    const rendered = this.api.getRenderedNodes();
    for (const { id } of this.sheet.columns) {
      const rowNodes = rendered.filter(({ data }) => {
        const key = data === undefined ? '' : findingKey(data.id, id);
        return before.get(key)?.says !== next.get(key)?.says;
      });
      if (rowNodes.length > 0) this.api.refreshCells({ rowNodes, columns: [id], force: true });
    }
    this.layer.paint();
  }

  /** Puts a cell in hand and in view; with the focus where `focus` is true. Without a row, where a person last was. */
  arrive(row: string | undefined, column: string | undefined, focus: boolean): void {
    const last = row === undefined ? lastPlaces.get(this.sheet.id) : undefined;
    const id = row ?? last?.row;
    const rowIndex = (id === undefined ? undefined : this.api.getRowNode(id)?.rowIndex) ?? 0;
    const colId = column ?? last?.column ?? this.layer.columnAt(0);
    const corner = colId === undefined ? undefined : this.layer.cornerOf(rowIndex, colId);
    if (corner === undefined || colId === undefined) return;
    if (focus) {
      this.layer.focus(corner);
      return;
    }
    if (this.api.getDisplayedRowCount() > 0) this.api.ensureIndexVisible(rowIndex);
    this.api.ensureColumnVisible(colId);
    this.layer.select(rangeOfCell(corner));
  }

  private findingsOf(found: readonly Finding[]): Map<string, Finding> {
    const map = new Map<string, Finding>();
    for (const finding of found) {
      if (finding.sheet !== this.sheet.id || finding.row === undefined) continue;
      const key = findingKey(finding.rowId, finding.column);
      // The list comes with the gravest first.
      if (!map.has(key)) map.set(key, finding);
    }
    return map;
  }

  private rowHandles(): RowHandle[] {
    const there = rowsOf(this.book, this.sheet.id);
    return this.sheet.entered && readOnly.peek() === undefined ? [...there, SPARE] : [...there];
  }

  private *figures(column: string, slots: Int32Array): Iterable<Figure> {
    for (const slot of slots) yield cellView(this.book, this.sheet.id, slot, column);
  }

  /** Makes room for what changed in a column; whether its figures have to move. Room once made stays until a redraw. */
  private realign(column: string, slots: Int32Array | 'all'): boolean {
    const before = this.rooms.get(column);
    if (before === undefined) return false;
    if (slots === 'all') this.rooms.delete(column);
    else {
      const changed = roomFor(this.figures(column, slots.subarray(0, ALIGNED_ROWS)));
      this.rooms.set(column, before === NO_ROOM ? before : widerRoom(before, changed));
    }
    const now = this.room(column);
    return before.fraction !== now.fraction || before.unit !== now.unit;
  }

  private redrawColumns(): void {
    this.sheet = sheetView(this.book, this.sheet.id) ?? this.sheet;
    this.rooms.clear();
    this.api.setGridOption('columnDefs', gridColumns(this));
    this.layer.columnsChanged();
    this.api.refreshHeader();
    this.api.refreshCells({ force: true });
    this.layer.paint();
  }

  private redrawRows(): void {
    this.rooms.clear();
    this.api.setGridOption('rowData', this.rowHandles());
    this.layer.paint();
  }

  private rowInHand(): number | undefined {
    return this.layer.anchor()?.row;
  }

  private focusInHand(): boolean {
    this.layer.focus(this.layer.anchor() ?? { row: 0, column: 0 });
    return true;
  }

  private ranged(range: Range): void {
    const { anchor } = range;
    const { id: sheet } = this.sheet;
    const inHand = this.layer.rowAt(anchor.row);
    const column = this.layer.columnAt(anchor.column);
    const row = inHand === undefined || isSpare(inHand) ? undefined : inHand.id;
    if (row !== undefined && column !== undefined) lastPlaces.set(sheet, { row, column });
    selectPlace({ sheet, row, column });
    const area = rectangleOf(range);
    const selected = this.layer.rowsIn(area);
    const columns = this.layer.columnsIn(area);
    selectedCells.value = { sheet, rows: selected, columns };
    if (cellCount(area) > 1) announce(`${selected.length} rows, ${columns.length} columns selected.`);
  }
}
