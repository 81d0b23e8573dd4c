// Dragging the fill handle: which cells would be filled, shown while it goes on, and the filling where it is let go.

import { type Corner, contains, type Rectangle } from '../ranges.ts';
import type { SheetCells } from '../sheet-cells.ts';
import { type Direction, type FillActs, fillTarget } from './fill-acts.ts';

interface Target {
  readonly source: Rectangle;
  readonly area: Rectangle;
  readonly direction: Direction;
}

export class FillDrag {
  readonly #host: HTMLElement;
  readonly #cells: SheetCells;
  readonly #fills: FillActs;
  #target: Target | undefined;

  constructor(host: HTMLElement, cells: SheetCells, fills: FillActs) {
    this.#host = host;
    this.#cells = cells;
    this.#fills = fills;
  }

  /** The handle is over a cell; undefined gives the drag up. */
  over(cell: Corner | undefined): void {
    const source = this.#cells.layer.rectangle();
    const found =
      source === undefined || cell === undefined ? undefined : fillTarget(source, this.#within(source, cell));
    this.#target = source === undefined || found === undefined ? undefined : { source, ...found };
    this.#paint();
  }

  take(withCtrl: boolean): void {
    const target = this.#target;
    this.#target = undefined;
    this.#paint();
    if (target === undefined) return;
    const { source, area, direction } = target;
    this.#fills.fill(source, area, direction, withCtrl ? this.#fills.otherWay(source, direction) : undefined);
  }

  /** As far down as the column beside it is filled, or to the last row where none is. */
  toEnd(): void {
    const { layer } = this.#cells;
    const source = layer.rectangle();
    if (source === undefined) return;
    const { filledRows } = layer.bounds();
    const beside = [source.left - 1, source.right + 1].find((column) => this.#isFilled(source.bottom + 1, column));
    let bottom = source.bottom;
    while (bottom + 1 < filledRows && (beside === undefined || this.#isFilled(bottom + 1, beside))) bottom += 1;
    if (bottom === source.bottom) return;
    this.#fills.fill(source, { ...source, top: source.bottom + 1, bottom }, 'down');
  }

  #isFilled(row: number, column: number): boolean {
    return column >= 0 && (this.#cells.cell({ row, column })?.text ?? '') !== '';
  }

  /** Past the last row go only cells that make rows of their own there. */
  #within(source: Rectangle, { row, column }: Corner): Corner {
    const { filledRows } = this.#cells.layer.bounds();
    return { row: this.#fills.makesRows(source) ? row : Math.min(row, filledRows - 1), column };
  }

  #paint(): void {
    const area = this.#target?.area;
    for (const cell of this.#host.querySelectorAll('.ag-cell')) {
      const corner = this.#cells.layer.cornerOfElement(cell);
      const inside = area !== undefined && corner !== undefined && contains(area, corner);
      cell.classList.toggle('will-fill', inside);
    }
  }
}
