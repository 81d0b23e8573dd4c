// What commands look at to know whether they apply and what about: the cell in hand, the selection, the grid. Asked when a key
// comes, a menu opens or a button is drawn.

import { type ColumnView, type SheetView, sheetView, type Workbook } from '../../../engine/index.ts';
import { type GridSurface, gridOnScreen } from '../grid/grid-surface.ts';
import {
  type CellAt,
  cellsIn,
  type Place,
  rowAt,
  rowsIn,
  type SelectedCells,
  selectedCells,
  selection,
} from '../store/selection.ts';
import { columnOf } from '../store/sheets.ts';
import { isOpen, workbook } from '../store/workbook.ts';

/** Where a key was pressed. */
export type Surface =
  /** A cell of the grid. */
  | 'grid'
  /** A field of a form, the panel or a card, at rest. */
  | 'field'
  /** The box of an entry that is open in the grid. */
  | 'entry'
  | 'formula line'
  /** The cells of a scratch paper. */
  | 'scratch'
  /** Any other box in which text is typed. */
  | 'text'
  | 'dialog'
  /** Anywhere else on the page. */
  | 'page';

export class Situation {
  readonly surface: Surface;
  /** Where a column's own menu was opened: that column. */
  readonly #column: string | undefined;

  constructor(surface: Surface, column?: string) {
    this.surface = surface;
    this.#column = column;
  }

  get book(): Workbook | undefined {
    return isOpen.value ? workbook() : undefined;
  }

  get place(): Place {
    return selection.value;
  }

  get sheet(): SheetView | undefined {
    return this.book === undefined ? undefined : sheetView(this.book, this.place.sheet);
  }

  /** The column in hand. */
  get column(): ColumnView | undefined {
    return columnOf(this.sheet, this.#column ?? this.place.column);
  }

  /** The selection; the cell in hand alone where nothing else says more. */
  get selected(): SelectedCells | undefined {
    const { sheet, row, column } = this.place;
    const selected = selectedCells.value;
    if (selected?.sheet === sheet) return selected;
    const at = this.book === undefined ? undefined : rowAt(this.book, sheet, row);
    if (at === undefined) return undefined;
    return { sheet, areas: [{ rows: [at], columns: column === undefined ? [] : [column] }] };
  }

  get cells(): readonly CellAt[] {
    return this.selected === undefined ? [] : cellsIn(this.selected);
  }

  /** Ids of the selected rows. */
  get rows(): readonly string[] {
    return this.selected === undefined ? [] : rowsIn(this.selected).map(({ id }) => id);
  }

  get grid(): GridSurface | undefined {
    return gridOnScreen.value;
  }
}
