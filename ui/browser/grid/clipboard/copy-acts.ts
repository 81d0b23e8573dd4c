// Copying and cutting what is selected. What was cut stays where it is, marked, until it is pasted; then it goes in the same
// step.

import type { ColumnView } from '../../../../engine/index.ts';
import { announce, tell } from '../../store/notices.ts';
import type { CellAt } from '../../store/selection.ts';
import { columnOf } from '../../store/sheets.ts';
import type { SheetCells } from '../sheet-cells.ts';
import { type Copied, type CopyArea, copyOf } from './copied.ts';

/** What was cut last: a paste of the same text takes it from where it stood. */
export interface Cut {
  readonly text: string;
  readonly cells: readonly CellAt[];
}

export class CopyActs {
  readonly #cells: SheetCells;
  readonly #redraw: () => void;
  #cut: Cut | undefined;

  /** `redraw` draws the cells anew, those that were cut with their mark. */
  constructor(cells: SheetCells, redraw: () => void) {
    this.#cells = cells;
    this.#redraw = redraw;
  }

  /** The selection as text and HTML; undefined where it can't be copied as one block, which is said. */
  copied(withHeaders = false): Copied | undefined {
    const area = this.#area();
    if (area === undefined) return undefined;
    this.forgetCut();
    const { book, sheet } = this.#cells;
    const count = area.rows.length * area.columns.length;
    announce(count === 1 ? 'Copied a cell.' : `Copied ${count} cells.`);
    return copyOf(book, sheet.id, area, withHeaders);
  }

  cut(): Copied | undefined {
    const area = this.#area();
    const copied = this.copied();
    if (area === undefined || copied === undefined) return undefined;
    const { sheet } = this.#cells;
    const cells = area.rows.flatMap((row) =>
      area.columns.map(({ id }): CellAt => ({ sheet: sheet.id, row, column: id })),
    );
    this.#cut = { text: copied.text, cells };
    this.#redraw();
    announce(`Cut ${cells.length === 1 ? 'a cell' : `${cells.length} cells`}: it goes when it is pasted.`);
    return copied;
  }

  /** What was cut and is now pasted. */
  cutFor(text: string): Cut | undefined {
    return this.#cut?.text === text ? this.#cut : undefined;
  }

  isCut(row: string, column: string): boolean {
    return this.#cut?.cells.some((cell) => cell.row.id === row && cell.column === column) === true;
  }

  get hasCut(): boolean {
    return this.#cut !== undefined;
  }

  forgetCut(): void {
    if (this.#cut === undefined) return;
    this.#cut = undefined;
    this.#redraw();
  }

  /** One block: the selected area, or several that lie in the same rows or the same columns. */
  #area(): CopyArea | undefined {
    const areas = this.#cells.layer.rectangles();
    const [first] = areas;
    if (first === undefined) return undefined;
    const rows = joined(areas.map(({ top, bottom }): Span => [top, bottom]));
    const columns = joined(areas.map(({ left, right }): Span => [left, right]));
    const sameRows = areas.every(({ top, bottom }) => top === first.top && bottom === first.bottom);
    const sameColumns = areas.every(({ left, right }) => left === first.left && right === first.right);
    if (!sameRows && !sameColumns) {
      tell('These ranges don’t line up: copy those in the same rows, or in the same columns, together.', 'refusal');
      return undefined;
    }
    return {
      rows: rows.flatMap((index) => this.#cells.row(index) ?? []),
      columns: columns.flatMap((index): ColumnView[] => {
        const column = columnOf(this.#cells.sheet, this.#cells.layer.columnAt(index));
        return column === undefined ? [] : [column];
      }),
    };
  }
}

type Span = readonly [from: number, to: number];

/** Every position in the spans, once and in order. */
function joined(spans: readonly Span[]): readonly number[] {
  const all = spans.flatMap(([from, to]) => Array.from({ length: to - from + 1 }, (_, at) => from + at));
  return [...new Set(all)].sort((a, b) => a - b);
}
