// The geometry of selections: rectangles, moves, how far a far move goes.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  cellCount,
  cellsOf,
  contains,
  moved,
  movedFar,
  rectangleOf,
  wholeColumns,
  wholeRows,
} from '../../ui/browser/grid/ranges.ts';

const BOUNDS = { rows: 20, columns: 12, filledRows: 19 };
const corner = fc.record({ row: fc.nat({ max: 19 }), column: fc.nat({ max: 11 }) });
const range = fc.record({ anchor: corner, head: corner });

test('a range covers the same cells from whichever corner it was stretched', () => {
  fc.assert(
    fc.property(range, ({ anchor, head }) => {
      expect(rectangleOf({ anchor, head })).toEqual(rectangleOf({ anchor: head, head: anchor }));
    }),
  );
});

test('the cells of a rectangle are all inside it, each once, as many as it counts', () => {
  fc.assert(
    fc.property(range, (selected) => {
      const area = rectangleOf(selected);
      const cells = cellsOf(area);
      expect(cells.length).toBe(cellCount(area));
      expect(new Set(cells.map(({ row, column }) => `${row} ${column}`)).size).toBe(cells.length);
      expect(cells.every((cell) => contains(area, cell))).toBe(true);
    }),
  );
});

test('no move leaves the sheet', () => {
  fc.assert(
    fc.property(corner, fc.constantFrom('up', 'down', 'left', 'right'), (from, move) => {
      expect(contains({ top: 0, bottom: 19, left: 0, right: 11 }, moved(from, move, BOUNDS))).toBe(true);
    }),
  );
  expect(moved({ row: 3, column: 4 }, 'row end', BOUNDS)).toEqual({ row: 3, column: 11 });
  expect(moved({ row: 3, column: 4 }, 'sheet end', BOUNDS)).toEqual({ row: 18, column: 11 });
  expect(moved({ row: 3, column: 4 }, 'sheet start', BOUNDS)).toEqual({ row: 0, column: 0 });
});

test('a far move stops where the data ends, then where it goes on, and never in the empty row', () => {
  const filled = new Set([1, 2, 3, 7, 8]);
  const down = (row: number): number =>
    movedFar({ row, column: 0 }, 'down', BOUNDS, (cell) => filled.has(cell.row)).row;
  expect([0, 1, 3, 5, 7, 8].map(down)).toEqual([1, 3, 7, 7, 8, 18]);
  fc.assert(
    fc.property(corner, fc.constantFrom('up', 'down', 'left', 'right'), fc.boolean(), (from, move, full) => {
      const to = movedFar(from, move, BOUNDS, () => full);
      expect(contains({ top: 0, bottom: Math.max(18, from.row), left: 0, right: 11 }, to)).toBe(true);
    }),
  );
});

test('whole rows and whole columns keep what the selection touched', () => {
  const selected = { anchor: { row: 5, column: 2 }, head: { row: 7, column: 3 } };
  expect(rectangleOf(wholeRows(selected, BOUNDS))).toEqual({ top: 5, bottom: 7, left: 0, right: 11 });
  expect(rectangleOf(wholeColumns(selected, BOUNDS))).toEqual({ top: 0, bottom: 18, left: 2, right: 3 });
});
