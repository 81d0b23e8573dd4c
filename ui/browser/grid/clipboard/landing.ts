// Where a block lands on the selection: once from its first cell, again and again over a selection that is a whole multiple of it,
// and in each of several ranges that are. Heads of groups are passed over.

import type { ColumnView } from '../../../../engine/index.ts';
import type { Rectangle } from '../ranges.ts';
import { isHead, isRow, isSpare, type RowHandle } from '../row-handle.ts';
import { type Block, type BlockCell, height, width } from './block.ts';
import type { LandingRow } from './paste-plan.ts';

/** What is on screen, by position. */
export interface OnScreen {
  readonly rowAt: (index: number) => RowHandle | undefined;
  readonly columnAt: (index: number) => ColumnView | undefined;
  readonly rows: number;
  readonly columns: number;
  /** Rows can be added by hand. */
  readonly entered: boolean;
}

export interface Laid {
  readonly block: Block;
  /** It stands there more often than once, so that its first line is no line of headers. */
  readonly repeated: boolean;
  /** The columns from the first cell to the right; of several ranges those that they touch. */
  readonly columns: readonly ColumnView[];
  /** Where so many lines land; fewer where there is no room. */
  readonly rows: (lines: number) => readonly LandingRow[];
}

/** undefined where one of several ranges is no whole multiple of the block. */
export function laidOver(block: Block, areas: readonly Rectangle[], screen: OnScreen): Laid | undefined {
  const last = areas.at(-1);
  if (last === undefined) return undefined;
  const filled = areas.filter((area) => rowsIn(area, screen).length > 0);
  return filled.length < 2 ? overOne(block, filled[0] ?? last, screen) : overSeveral(block, filled, screen);
}

function overOne(block: Block, area: Rectangle, screen: OnScreen): Laid {
  const [high, wide] = [height(block), width(block)];
  const lines = rowsIn(area, screen).length;
  const across = area.right - area.left + 1;
  const down = lines % high === 0 ? Math.max(1, lines / high) : 1;
  const over = across % wide === 0 ? across / wide : 1;
  return {
    block: down * over === 1 ? block : repeated(block, down, over),
    repeated: down * over > 1,
    columns: columnsFrom(area.left, screen),
    rows: (count) => rowsFrom(area.top, count, screen),
  };
}

function repeated(block: Block, down: number, over: number): Block {
  const wide = width(block);
  const once = block.cells.map((cells) => {
    if (over === 1) return cells;
    const padded = Array.from({ length: wide }, (_, at): BlockCell => cells[at] ?? { text: '' });
    return Array.from({ length: over }, () => padded).flat();
  });
  return { ...block, cells: Array.from({ length: down }, () => once).flat() };
}

/** One block over all rows and columns that the ranges touch, with holes where they don't. */
function overSeveral(block: Block, areas: readonly Rectangle[], screen: OnScreen): Laid | undefined {
  const [high, wide] = [height(block), width(block)];
  const found = new Map<number, Map<number, BlockCell | undefined>>();
  for (const area of areas) {
    const indexes = rowsIn(area, screen);
    if (indexes.length % high > 0 || (area.right - area.left + 1) % wide > 0) return undefined;
    indexes.forEach((index, line) => {
      const cells = found.get(index) ?? new Map<number, BlockCell | undefined>();
      found.set(index, cells);
      for (let at = area.left; at <= area.right; at += 1)
        cells.set(at, block.cells[line % high]?.[(at - area.left) % wide]);
    });
  }
  const indexes = [...found.keys()].sort((a, b) => a - b);
  const places = [...new Set(areas.flatMap(({ left, right }) => span(left, right)))].sort((a, b) => a - b);
  const rows = indexes.flatMap((index): LandingRow[] => {
    const row = screen.rowAt(index);
    return row === undefined ? [] : [{ row }];
  });
  return {
    block: { ...block, cells: indexes.map((index) => places.map((at) => found.get(index)?.get(at))) },
    repeated: true,
    columns: places.flatMap((at) => screen.columnAt(at) ?? []),
    rows: (count) => rows.slice(0, count),
  };
}

function span(from: number, to: number): readonly number[] {
  return Array.from({ length: to - from + 1 }, (_, at) => from + at);
}

/** The positions of the sheet's rows in an area. */
function rowsIn({ top, bottom }: Rectangle, screen: OnScreen): readonly number[] {
  return span(top, bottom).filter((index) => {
    const row = screen.rowAt(index);
    return row !== undefined && isRow(row);
  });
}

function columnsFrom(left: number, screen: OnScreen): readonly ColumnView[] {
  return span(left, screen.columns - 1).flatMap((at) => screen.columnAt(at) ?? []);
}

/** Rows from a position downwards; past the last, new ones where rows are added by hand. */
function rowsFrom(top: number, lines: number, screen: OnScreen): readonly LandingRow[] {
  const found: LandingRow[] = [];
  for (let index = top; index < screen.rows && found.length < lines; index += 1) {
    const row = screen.rowAt(index);
    if (row === undefined || isHead(row)) continue;
    if (isSpare(row)) break;
    found.push({ row });
  }
  if (!screen.entered) return found;
  const there = found.length;
  return [...found, ...Array.from({ length: lines - there }, (_, fresh): LandingRow => ({ fresh }))];
}

/** Positions as runs of such as follow each other, with nothing between them but what `passes`. */
export function runsOf(
  indexes: readonly number[],
  passes: (index: number) => boolean,
): readonly { readonly from: number; readonly to: number }[] {
  const runs: { from: number; to: number }[] = [];
  for (const index of [...indexes].sort((a, b) => a - b)) {
    const run = runs.at(-1);
    if (run !== undefined && span(run.to + 1, index - 1).every(passes)) run.to = index;
    else runs.push({ from: index, to: index });
  }
  return runs;
}
