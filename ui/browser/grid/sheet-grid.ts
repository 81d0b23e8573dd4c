// One sheet in the grid: makes the grid, draws what the workbook says in the view that it is seen in, repaints the cells that
// change sets name, and joins ranges, entries, acts and menus to it. Made and thrown away by grid.tsx, one for each sheet on
// screen.

import { createGrid, type GridApi } from 'ag-grid-community';
import {
  type Book,
  type ChangeSet,
  type ColumnView,
  type Finding,
  rows,
  rowWithId,
  type SheetView,
  sheetView,
  type View,
} from '../../../engine/index.ts';
import { addedWords } from '../commands/rows.ts';
import { tellLost } from '../entry/entry-lost.ts';
import { change, typeCell } from '../store/change.ts';
import { desk, setWidth } from '../store/device.ts';
import { whenIdle } from '../store/idle.ts';
import { changeView, viewNow } from '../store/looks.ts';
import { selectedCells } from '../store/selection.ts';
import { columnOf } from '../store/sheets.ts';
import { subtotalWords } from '../store/subtotal.ts';
import type { BegunEntry, OpenEntry } from './cell-editor.ts';
import { CellPainter } from './cell-painter.ts';
import type { CellMarks } from './cell-words.ts';
import { CopyActs } from './clipboard/copy-acts.ts';
import { isCut } from './clipboard/cut.ts';
import { PasteActs } from './clipboard/paste-acts.ts';
import { gridColumns } from './columns.ts';
import type { Drawing } from './drawing.ts';
import { drawFewBeyond } from './far-rows.ts';
import type { Room } from './figures.ts';
import { FillActs } from './fill/fill-acts.ts';
import { FillDrag } from './fill/fill-drag.ts';
import { GridEntry } from './grid-entry.ts';
import { GridHands, holdRefused } from './grid-hands.ts';
import { gridOptions } from './grid-options.ts';
import { type GridSurface, gridOnScreen, rowsOnScreen } from './grid-surface.ts';
import { lightenStyles } from './grid-theme.ts';
import { measureLetters } from './letters.ts';
import { SheetMarks } from './marks.ts';
import { RangeLayer } from './range-layer.ts';
import { RangePresses } from './range-presses.ts';
import { type Corner, rangeOfCell } from './ranges.ts';
import { ColumnRooms } from './rooms.ts';
import { RowActs } from './row-acts.ts';
import { HANDLES } from './row-face.ts';
import { isHead, isSpare, type RowHandle } from './row-handle.ts';
import { RowOrder } from './row-order.ts';
import { drawWhatIsInSight } from './scroll-rest.ts';
import { SheetCells } from './sheet-cells.ts';
import { keepFrontStill } from './still-front.ts';
import { surfaceOf } from './surface-of.ts';
import { lastPlaceOn, tellSelection } from './told.ts';
import { fittedWidth } from './widths.ts';

export class SheetGrid implements Drawing {
  readonly book: Book;
  sheet: SheetView;
  view: View;
  private readonly api: GridApi<RowHandle>;
  private readonly layer: RangeLayer;
  private readonly hands: GridHands;
  private readonly presses: RangePresses;
  private readonly entry: GridEntry;
  private readonly order: RowOrder;
  private readonly cells: SheetCells;
  private readonly surface: GridSurface;
  private readonly rooms: ColumnRooms;
  private readonly marked: SheetMarks;
  private readonly painter: CellPainter;
  private readonly whenGone: readonly (() => void)[];
  private shownView: string | undefined;
  private shownQuestions: readonly string[] | undefined;

  constructor(host: HTMLElement, book: Book, sheet: SheetView, found: readonly Finding[]) {
    this.book = book;
    this.sheet = sheet;
    this.view = viewNow(sheet);
    this.shownView = desk.peek().views[sheet.id];
    this.shownQuestions = desk.peek().questions[sheet.id];
    const now = () => this.sheet;
    this.rooms = new ColumnRooms(book, now);
    this.marked = new SheetMarks(book, now, (row, column) => isCut(this.sheet.id, row, column));
    this.marked.takeFindings(found);
    this.order = new RowOrder({
      book,
      sheet: now,
      view: () => this.view,
      found: (row, level) => this.marked.found(row, level),
      offersRow: () => this.sheet.entered,
    });
    this.api = createGrid<RowHandle>(host, {
      ...gridOptions({
        isInHand: (rowIndex) => this.layer?.anchor()?.row === rowIndex,
        focusInHand: () => this.focusInHand(),
        widthDrawn: (column, width) => setWidth(this.sheet.id, column, width),
        columnMoved: () => this.keepOrder(),
      }),
      columnDefs: gridColumns(this),
      rowData: this.order.handles(),
    });
    lightenStyles();
    this.whenGone = [drawWhatIsInSight(host, this.api), keepFrontStill(host), drawFewBeyond(host, this.api)];
    whenIdle(() => measureLetters(host));
    const { api, rooms, marked: marks } = this;
    const isDrawn = (column: string): boolean => this.width(column) !== undefined;
    this.painter = new CellPainter({ book, sheet: now, api, rooms, marks, isDrawn });
    // Before the range layer: a press elsewhere doesn't leave an entry that can't stand.
    holdRefused(host, this.api);
    this.layer = new RangeLayer(host, this.api, {
      ranged: (ranges) => tellSelection(this.sheet.id, this.layer, ranges),
      isFilled: (cell) => (this.cells.cell(cell)?.text ?? '') !== '',
    });
    this.cells = new SheetCells(book, now, this.layer);
    const copies = new CopyActs(this.cells);
    const fills = new FillActs(this.cells);
    const pastes = new PasteActs(this.cells, (added) => this.showAdded(added));
    const drag = new FillDrag(host, this.cells, fills);
    this.entry = new GridEntry(host, this.api, this.layer, {
      fillAll: (entry) => fills.fillAll(entry),
      paste: (text, html) => pastes.paste(text, html, false),
      rowAdded: () => this.redrawRows(),
      spareLeft: () => this.spareLeft(),
      refusal: () => this.whyNotTyped(),
    });
    const rowActs = new RowActs({
      host,
      cells: this.cells,
      order: this.order,
      entry: this.entry,
      view: () => this.view,
      redrawRows: () => this.redrawRows(),
    });
    this.presses = new RangePresses(host, this.layer, {
      fillOver: (cell) => drag.over(cell),
      fillTaken: (withCtrl) => drag.take(withCtrl),
      fillToEnd: () => drag.toEnd(),
      rowsOver: (before) => rowActs.dragOver(before),
      rowsTaken: () => rowActs.drop(),
      canMoveRows: () => rowActs.canMove(),
      headPressed: (row) => this.headPressed(row),
    });
    const parts = { layer: this.layer, entry: this.entry, rows: rowActs, copies, pastes, fills };
    this.surface = surfaceOf(parts, {
      fitColumn: (column) => this.fitColumn(column),
      rowsOf: (id) => (id === this.sheet.id ? this.order.ids() : undefined),
      columnsDrawn: (id) => (id === this.sheet.id ? this.layer.columnsDrawn() : undefined),
      arrangeAgain: () => this.arrangeAgain(),
      foldGroups: () => this.foldGroups(),
    });
    this.hands = new GridHands(host, this.layer, { sheet: now, fit: (column) => this.fitColumn(column) });
    this.api.setGridAriaProperty('label', `${sheet.name}: ${sheet.about}`);
    this.api.setGridAriaProperty('multiselectable', 'true');
    gridOnScreen.value = this.surface;
    this.tellRows();
  }

  destroy(): void {
    if (sheetView(this.book, this.sheet.id) === undefined) this.keepingEntry(() => undefined);
    if (gridOnScreen.peek() === this.surface) gridOnScreen.value = undefined;
    for (const stop of this.whenGone) stop();
    this.hands.destroy();
    this.presses.destroy();
    this.entry.destroy();
    selectedCells.value = undefined;
    // When the next sheet's grid stands: the last grid there is takes its style sheets along, and the page would be styled anew twice.
    setTimeout(() => this.api.destroy());
  }

  // What the columns ask while they draw.

  get folded(): readonly string[] {
    return desk.peek().questions[this.sheet.id] ?? [];
  }

  width(column: string): number | undefined {
    return desk.peek().widths[this.sheet.id]?.[column];
  }

  room(column: string): Room {
    return this.rooms.room(column);
  }

  marks(row: RowHandle, column: string): CellMarks {
    return this.marked.of(row, column);
  }

  total(row: RowHandle, column: string): string {
    return row.group === undefined ? '' : subtotalWords(this.book, this.sheet.id, this.view, column, row.group.rows);
  }

  numberOf({ id }: RowHandle): number | undefined {
    return this.order.numberOf(id);
  }

  dressRange(cell: HTMLElement, rowIndex: number, column: string): void {
    this.layer?.dress(cell, rowIndex, column);
  }

  begunWith(): BegunEntry | undefined {
    return this.entry.begunWith();
  }

  write(row: RowHandle, column: ColumnView, entry: string): boolean {
    const sheet = this.sheet.id;
    if (!isSpare(row)) return !typeCell({ sheet, row: row.id, column: column.id }, column.name, entry).refused;
    if (entry.trim() === '') return false;
    const entries = { [column.id]: entry };
    const before = this.order.putBefore;
    const done = change([{ command: 'insert row', sheet, entries, before }], addedWords(this.sheet, entries));
    const [added] = done.refused ? [] : done.inserted;
    if (added !== undefined) {
      this.order.keepAdded(added);
      this.order.putSpare(undefined);
    }
    return !done.refused;
  }

  // What the page tells the grid.

  /** Repaints what a change set names in this sheet, and nothing else. */
  follow(changed: ChangeSet): void {
    const { id } = this.sheet;
    const areFresh = changed.rowsOf.includes(id);
    const columnsChanged = changed.columnsOf.includes(id) || changed.settings;
    if (columnsChanged || changed.looksOf.includes(id)) this.keepingEntry(() => this.redrawLooks());
    else if (areFresh) this.keepingEntry(() => this.redrawRows());
    const cells = changed.cells.filter(
      ({ sheet, column }) => sheet === id && columnOf(this.sheet, column) !== undefined,
    );
    if (cells.length > 0 && !columnsChanged) this.painter.repaint(cells, areFresh);
  }

  /** Marks the cells in which something was found and unmarks the others. */
  showFindings(found: readonly Finding[]): void {
    this.painter.showFindings(found);
  }

  /** Changes have come to rest: what may come a moment after the cells in sight. */
  atRest(): void {
    this.painter.atRest();
    this.tellRows();
  }

  /** What is looked for, or what was cut, changed: the cells are marked anew. */
  showMatches(): void {
    this.api.refreshCells({ force: true });
    this.layer.paint();
  }

  /** Another view was chosen, or a question folded. */
  showView(view: string | undefined, questions: readonly string[] | undefined): void {
    if (view === this.shownView && questions === this.shownQuestions) return;
    this.shownView = view;
    this.shownQuestions = questions;
    this.redrawLooks();
  }

  /** Puts a cell in hand and in view; with the focus where `focus` is true. Without a row, where a person last was. */
  arrive(row: string | undefined, column: string | undefined, focus: boolean): void {
    const last = row === undefined ? lastPlaceOn(this.sheet.id) : undefined;
    const id = row ?? last?.row;
    if (id !== undefined && this.api.getRowNode(id) === undefined) this.makeSeen(id);
    const rowIndex = (id === undefined ? undefined : this.api.getRowNode(id)?.rowIndex) ?? this.firstRow();
    const colId = this.shownColumn(column ?? last?.column);
    const corner = colId === undefined ? undefined : this.layer.cornerOf(rowIndex, colId);
    if (corner === undefined || colId === undefined) return;
    if (focus) {
      this.layer.focus(corner);
      return;
    }
    this.layer.show(corner);
    this.layer.select(rangeOfCell(corner));
  }

  /** The column where the view shows it; where it doesn't, another view that does comes on screen. */
  private shownColumn(column: string | undefined): string | undefined {
    if (column === undefined || this.layer.cornerOf(0, column) !== undefined) return column ?? this.layer.columnAt(0);
    // It may have been added a moment ago.
    this.sheet = sheetView(this.book, this.sheet.id) ?? this.sheet;
    if (columnOf(this.sheet, column) === undefined) return this.layer.columnAt(0);
    this.hands.showColumn(column);
    this.redrawLooks();
    return column;
  }

  /** A row that the view folds away or keeps back is shown, since somebody came for it. */
  private makeSeen(id: string): void {
    this.order.open(id);
    this.order.keepAdded(id);
    this.order.follow();
    this.drawRows();
  }

  private firstRow(): number {
    const { rows: count } = this.layer.bounds();
    for (let index = 0; index < count; index += 1) {
      const row = this.layer.rowAt(index);
      if (row !== undefined && !isHead(row)) return index;
    }
    return 0;
  }

  // Drawing anew.

  /** Draws anew; an entry that is open meanwhile goes on where its cell stands then, with what was typed so far. */
  private keepingEntry(draw: () => void): void {
    const entry = this.entry.takeUp();
    draw();
    if (entry === undefined) return;
    const at = this.cornerOf(entry);
    if (at !== undefined) this.entry.putDown(entry, at);
    else if (entry.begun !== undefined) tellLost(this.book, entry);
  }

  /** Where the cell of an entry stands now; its row is shown again where the view keeps it back. */
  private cornerOf({ row, column }: OpenEntry): Corner | undefined {
    if (sheetView(this.book, this.sheet.id) === undefined) return undefined;
    if (this.api.getRowNode(row) === undefined && rowWithId(this.book, this.sheet.id, row) !== undefined) {
      this.makeSeen(row);
    }
    const index = this.api.getRowNode(row)?.rowIndex;
    return index === undefined || index === null ? undefined : this.layer.cornerOf(index, column);
  }

  private redrawLooks(): void {
    this.sheet = sheetView(this.book, this.sheet.id) ?? this.sheet;
    const before = this.layer.anchor();
    const inHand = before === undefined ? undefined : this.layer.rowAt(before.row)?.id;
    const column = before === undefined ? undefined : this.layer.columnAt(before.column);
    this.view = viewNow(this.sheet);
    this.rooms.clear();
    this.marked.takeRules();
    this.order.arrange();
    this.api.setGridOption('columnDefs', gridColumns(this));
    this.layer.columnsChanged();
    this.drawRows();
    this.api.refreshHeader();
    this.api.refreshCells({ force: true });
    this.keepInHand(inHand, column);
    this.tellRows();
  }

  /** After the order of rows or columns changed, the same cell is in hand wherever it stands now. */
  private keepInHand(row: string | undefined, column: string | undefined): void {
    const index = row === undefined ? undefined : this.api.getRowNode(row)?.rowIndex;
    const corner =
      index === undefined || index === null || column === undefined ? undefined : this.layer.cornerOf(index, column);
    const focused = document.activeElement?.closest('.grid-host') !== null;
    if (corner === undefined) this.layer.keepWithin();
    else this.layer.select(rangeOfCell(corner));
    if (focused) this.layer.focusAnchor();
    this.layer.paint();
  }

  private redrawRows(): void {
    this.rooms.clear();
    this.order.follow();
    this.drawRows();
    this.tellRows();
  }

  /** Rows that a paste made are in sight at once, whatever the filters say. */
  private showAdded(added: readonly string[]): void {
    for (const id of added) this.order.keepAdded(id);
    this.redrawRows();
  }

  private drawRows(): void {
    this.api.setGridOption('rowData', this.order.handles());
    // Rows that stay are not drawn anew, but those below one that came or went have another number.
    this.api.refreshCells({ columns: [HANDLES] });
    this.layer.keepWithin();
    this.layer.paint();
  }

  private arrangeAgain(): void {
    const anchor = this.layer.anchor();
    const inHand = anchor === undefined ? undefined : this.layer.rowAt(anchor.row)?.id;
    const column = anchor === undefined ? undefined : this.layer.columnAt(anchor.column);
    this.order.arrange();
    this.drawRows();
    this.keepInHand(inHand, column);
    this.tellRows();
  }

  /** Says how the rows on screen stand to the view. */
  private tellRows(): void {
    const now = {
      shown: this.order.count(),
      left: this.order.left,
      old: this.order.isOld(),
      grouped: this.view.groupBy !== undefined,
    };
    const { shown, left, old, grouped } = rowsOnScreen.peek();
    if (shown === now.shown && left === now.left && old === now.old && grouped === now.grouped) return;
    rowsOnScreen.value = now;
  }

  private foldGroups(): void {
    this.order.foldAll();
    this.drawFolds();
  }

  private headPressed(row: number): boolean {
    const head = this.layer.rowAt(row);
    if (head?.group === undefined) return false;
    this.order.foldGroup(head.group.key);
    this.drawFolds();
    return true;
  }

  /** Heads stay the rows that they are, and show otherwise whether theirs are folded. */
  private drawFolds(): void {
    this.drawRows();
    this.api.refreshCells({ force: true });
  }

  private spareLeft(): void {
    if (this.order.putBefore === undefined) return;
    this.order.putSpare(undefined);
    this.redrawRows();
  }

  private whyNotTyped(): string | undefined {
    const anchor = this.layer.anchor();
    const row = anchor === undefined ? undefined : this.layer.rowAt(anchor.row);
    if (row !== undefined && isHead(row)) return 'This line sums its group up: type in a row under it.';
    const column = anchor === undefined ? undefined : this.cells.column(anchor.column);
    return column?.role === 'made' ? 'This cell comes from other sheets.' : undefined;
  }

  private fitColumn(column: string): void {
    const view = columnOf(this.sheet, column);
    if (view === undefined) return;
    const width = fittedWidth(this.book, this.sheet.id, rows(this.book, this.sheet.id), view);
    setWidth(this.sheet.id, column, width);
    this.api.setColumnWidths([{ key: column, newWidth: width }]);
    this.api.refreshCells({ columns: [column], force: true });
  }

  /** A person dragged a column to another place: the view keeps it there. */
  private keepOrder(): void {
    const ids = this.api.getAllDisplayedColumns().map((column) => column.getColId());
    const shown = ids.filter((id) => id !== HANDLES);
    const folded = this.view.shows.filter((id) => !shown.includes(id));
    const pinned = this.view.shows.slice(0, this.view.inFront);
    const columns = [...shown.filter((id) => !pinned.includes(id)), ...folded];
    changeView(this.sheet, { columns });
  }

  private focusInHand(): boolean {
    if (this.layer.anchor() === undefined) this.layer.focus({ row: this.firstRow(), column: 0 });
    else this.layer.focusAnchor();
    return true;
  }
}
