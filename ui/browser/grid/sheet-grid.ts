// One sheet in the grid: makes the grid, draws what the workbook says, repaints the cells that change sets name, and joins
// the range layer, its commands and the menus to it. Made and thrown away by grid.tsx, one for each sheet on screen.

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
import type { Attention, ChangeSet, ColumnView, TableView, WorkbookFace } from '../../../engine/index.ts';
import { announce } from '../messages.ts';
import { edit, editCell, readOnly, selectPlace } from '../state.ts';
import { type Drawing, gridColumns } from './columns.ts';
import { NO_ROOM, type Room, roomFor, widerRoom } from './figures.ts';
import { GridHands, holdRefused } from './grid-hands.ts';
import { gridTheme } from './grid-theme.ts';
import { RangeCommands } from './range-commands.ts';
import { RangeLayer } from './range-layer.ts';
import { cellCount, type Range, rangeOfCell, rectangleOf } from './ranges.ts';
import { type RowHandle, SPARE } from './row-handle.ts';
import { selectedCells } from './selected.ts';

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
const lastPlaces = new Map<string, { readonly row: number; readonly column: string }>();

function findingKey(row: number, column: string): string {
  return `${row} ${column}`;
}

export class SheetGrid implements Drawing {
  table: TableView;
  private readonly api: GridApi<RowHandle>;
  private readonly layer: RangeLayer;
  private readonly hands: GridHands;
  private readonly face: WorkbookFace;
  private readonly rooms = new Map<string, Room>();
  private findings = new Map<string, Attention>();

  constructor(host: HTMLElement, workbook: WorkbookFace, table: TableView, found: readonly Attention[]) {
    this.face = workbook;
    this.table = table;
    this.findings = this.findingsOf(found);
    this.api = createGrid<RowHandle>(host, {
      theme: gridTheme,
      styleNonce: document.querySelector<HTMLMetaElement>('meta[property="csp-nonce"]')?.nonce ?? '',
      columnDefs: gridColumns(this),
      rowData: this.rowHandles(),
      getRowId: ({ data }) => String(data.slot),
      rowClassRules: {
        'spare-row': ({ data }) => data?.slot === SPARE,
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
    const commands = new RangeCommands(
      () => this.face,
      () => this.table,
      this.layer,
    );
    this.api.setGridAriaProperty('label', `${table.name}: ${table.about}`);
    this.api.setGridAriaProperty('multiselectable', 'true');
    this.hands = new GridHands({
      host,
      api: this.api,
      layer: this.layer,
      commands,
      table: () => this.table,
    });
  }

  destroy(): void {
    this.hands.destroy();
    this.layer.destroy();
    this.api.destroy();
    selectedCells.value = undefined;
  }

  // What the columns ask while they draw.

  readonly workbook = (): WorkbookFace => this.face;

  room(column: string): Room {
    const known = this.rooms.get(column);
    if (known !== undefined) return known;
    const view = this.table.columns.find(({ name }) => name === column);
    const figures = view?.type?.kind === 'number' || view?.type?.kind === 'temperature';
    const first = this.face.rows(this.table.name).subarray(0, ALIGNED_ROWS);
    const room = figures ? roomFor(this.texts(column, first)) : NO_ROOM;
    this.rooms.set(column, room);
    return room;
  }

  found(row: number, column: string): Attention | undefined {
    return this.findings.get(findingKey(row, column));
  }

  inRange(rowIndex: number, column: string): boolean {
    return this.layer?.includes(rowIndex, column) ?? false;
  }

  canEdit(): boolean {
    return readOnly.peek() === undefined;
  }

  write(slot: number, column: ColumnView, entry: string): boolean {
    if (slot !== SPARE) return !editCell({ table: this.table.name, row: slot, column: column.name }, entry).refused;
    if (entry.trim() === '') return false;
    const wish = { edit: 'insert row', table: this.table.name, entries: { [column.name]: entry } } as const;
    const done = edit([wish], `Add ${entry} to ${this.table.name}`);
    return !done.refused;
  }

  // What the page tells the grid.

  /** Repaints what a change set names in this sheet, and nothing else. */
  follow(change: ChangeSet): void {
    const name = this.table.name;
    if (change.columnsOf.includes(name)) this.redrawColumns();
    if (change.rowsOf.includes(name)) this.redrawRows();
    const changed = change.cells.filter(({ table }) => table === name);
    if (changed.length === 0 || change.columnsOf.includes(name)) return;
    const rendered = this.api.getRenderedNodes();
    for (const { column, rows } of changed) {
      const realigned = this.realign(column, rows);
      const named = rows === 'all' || realigned ? undefined : new Set(rows);
      const rowNodes = named === undefined ? rendered : rendered.filter(({ data }) => data && named.has(data.slot));
      if (rowNodes.length > 0) this.api.refreshCells({ rowNodes, columns: [column], force: true });
    }
    this.layer.paint();
  }

  /** Marks the cells in which something was found and unmarks the others. */
  showFindings(found: readonly Attention[]): void {
    const next = this.findingsOf(found);
    const before = this.findings;
    this.findings = next;
    const rendered = this.api.getRenderedNodes();
    for (const { name } of this.table.columns) {
      const rowNodes = rendered.filter(({ data }) => {
        const key = data === undefined ? '' : findingKey(data.slot, name);
        return before.get(key)?.says !== next.get(key)?.says;
      });
      if (rowNodes.length > 0) this.api.refreshCells({ rowNodes, columns: [name], force: true });
    }
    this.layer.paint();
  }

  /** Puts a cell in hand and in view; with the focus where `focus` is true. Without a row, where a person last was. */
  arrive(row: number | undefined, column: string | undefined, focus: boolean): void {
    const last = row === undefined ? lastPlaces.get(this.table.name) : undefined;
    const slot = row ?? last?.row;
    const node = slot === undefined ? undefined : this.api.getRowNode(String(slot));
    const rowIndex = node?.rowIndex ?? 0;
    const name = column ?? last?.column ?? this.layer.columnAt(0);
    const corner = name === undefined ? undefined : this.layer.cornerOf(rowIndex, name);
    if (corner === undefined) return;
    if (focus) {
      this.layer.focus(corner);
      return;
    }
    if (this.api.getDisplayedRowCount() > 0) this.api.ensureIndexVisible(rowIndex);
    if (name !== undefined) this.api.ensureColumnVisible(name);
    this.layer.select(rangeOfCell(corner));
  }

  /** Opens the empty row at the sheet's end, at the column that names a row. */
  startNewRow(): void {
    const rowIndex = this.api.getDisplayedRowCount() - 1;
    const column =
      this.table.key ?? this.table.columns.find(({ required }) => required)?.name ?? this.layer.columnAt(0);
    if (this.layer.slotAt(rowIndex) !== SPARE || column === undefined) return;
    this.layer.focus(this.layer.cornerOf(rowIndex, column) ?? { row: rowIndex, column: 0 });
    this.api.startEditingCell({ rowIndex, colKey: column });
  }

  private findingsOf(found: readonly Attention[]): Map<string, Attention> {
    const map = new Map<string, Attention>();
    for (const finding of found) {
      if (finding.table !== this.table.name || finding.row === undefined) continue;
      const key = findingKey(finding.row, finding.column);
      // The list comes with the gravest first.
      if (!map.has(key)) map.set(key, finding);
    }
    return map;
  }

  private rowHandles(): RowHandle[] {
    const rows = [...this.face.rows(this.table.name)].map((slot) => ({ slot }));
    return this.table.entered && readOnly.peek() === undefined ? [...rows, { slot: SPARE }] : rows;
  }

  private *texts(column: string, rows: Int32Array): Iterable<string> {
    for (const row of rows) yield this.face.cell(this.table.name, row, column).text;
  }

  /** Makes room for what changed in a column; whether its figures have to move. Room once made stays until a redraw. */
  private realign(column: string, rows: Int32Array | 'all'): boolean {
    const before = this.rooms.get(column);
    if (before === undefined) return false;
    if (rows === 'all') this.rooms.delete(column);
    else {
      const changed = roomFor(this.texts(column, rows.subarray(0, ALIGNED_ROWS)));
      this.rooms.set(column, before === NO_ROOM ? before : widerRoom(before, changed));
    }
    const now = this.room(column);
    return before.fraction !== now.fraction || before.unit !== now.unit;
  }

  private redrawColumns(): void {
    this.table = this.face.table(this.table.name) ?? this.table;
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
    const slot = this.layer.slotAt(anchor.row);
    const column = this.layer.columnAt(anchor.column);
    const row = slot === SPARE ? undefined : slot;
    if (row !== undefined && column !== undefined) lastPlaces.set(this.table.name, { row, column });
    selectPlace({ table: this.table.name, row, column });
    const area = rectangleOf(range);
    const rows: number[] = [];
    for (let index = area.top; index <= area.bottom; index += 1) {
      const each = this.layer.slotAt(index);
      if (each !== undefined && each !== SPARE) rows.push(each);
    }
    const columns: string[] = [];
    for (let index = area.left; index <= area.right; index += 1) columns.push(this.layer.columnAt(index) ?? '');
    selectedCells.value = { table: this.table.name, rows, columns };
    if (cellCount(area) > 1) announce(`${rows.length} rows, ${columns.length} columns selected.`);
  }
}
