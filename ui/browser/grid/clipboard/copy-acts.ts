// Copying and cutting what is selected.

import type { ColumnView } from '../../../../engine/index.ts';
import { announce, tell } from '../../store/notices.ts';
import { columnOf } from '../../store/sheets.ts';
import type { SheetCells } from '../sheet-cells.ts';
import { type Copied, type CopyArea, copyOf } from './copied.ts';
import { beginCut, cutCell, forgetCut } from './cut.ts';
import { keepCopied } from './last-copied.ts';

export class CopyActs {
  readonly #cells: SheetCells;

  constructor(cells: SheetCells) {
    this.#cells = cells;
  }

  /** The selection as text and HTML; undefined where it can't be copied as one block, which is said. */
  copied(withHeaders = false): Copied | undefined {
    const area = this.#area();
    if (area === undefined) return undefined;
    forgetCut();
    const { book, sheet } = this.#cells;
    const count = area.rows.length * area.columns.length;
    announce(count === 1 ? 'Copied a cell.' : `Copied ${count} cells.`);
    return keepCopied(copyOf(book, sheet.id, area, withHeaders));
  }

  cut(): Copied | undefined {
    const area = this.#area();
    const copied = this.copied();
    if (area === undefined || copied === undefined) return undefined;
    const { book, sheet } = this.#cells;
    const lines = area.rows.map(({ id }) => area.columns.map((column) => cutCell(book, sheet.id, id, column.id)));
    beginCut(book, copied.text, lines);
    const count = lines.flat().length;
    announce(`Cut ${count === 1 ? 'a cell' : `${count} cells`}: it goes when it is pasted.`);
    return copied;
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
