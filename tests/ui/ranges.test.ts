// The geometry of selections: rectangles, moves, where pasted blocks land, what filling down writes.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  cellCount,
  cellsOf,
  contains,
  fillDownWrites,
  moved,
  pasteWrites,
  rectangleOf,
  wholeColumns,
  wholeRows,
} from '../../ui/browser/grid/ranges.ts';

const BOUNDS = { rows: 20, columns: 12 };
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

test('no move leaves the sheet, and a far move reaches its edge', () => {
  fc.assert(
    fc.property(corner, fc.constantFrom('up', 'down', 'left', 'right'), fc.boolean(), (from, move, far) => {
      const to = moved(from, move, far, BOUNDS);
      expect(contains({ top: 0, bottom: 19, left: 0, right: 11 }, to)).toBe(true);
      if (far) expect([0, 19, 11]).toContain(move === 'up' || move === 'down' ? to.row : to.column);
    }),
  );
  expect(moved({ row: 3, column: 4 }, 'row end', false, BOUNDS)).toEqual({ row: 3, column: 11 });
  expect(moved({ row: 3, column: 4 }, 'sheet end', false, BOUNDS)).toEqual({ row: 19, column: 11 });
  expect(moved({ row: 3, column: 4 }, 'sheet start', false, BOUNDS)).toEqual({ row: 0, column: 0 });
});

test('whole rows and whole columns keep what the selection touched', () => {
  const selected = { anchor: { row: 5, column: 2 }, head: { row: 7, column: 3 } };
  expect(rectangleOf(wholeRows(selected, BOUNDS))).toEqual({ top: 5, bottom: 7, left: 0, right: 11 });
  expect(rectangleOf(wholeColumns(selected, BOUNDS))).toEqual({ top: 0, bottom: 19, left: 2, right: 3 });
});

const block = [
  ['a', 'b'],
  ['c', 'd'],
];

test('a block lands at the upper left corner whatever smaller part is selected', () => {
  expect(pasteWrites(block, { top: 4, bottom: 4, left: 1, right: 1 }, 12)).toEqual([
    { row: 4, column: 1, text: 'a' },
    { row: 4, column: 2, text: 'b' },
    { row: 5, column: 1, text: 'c' },
    { row: 5, column: 2, text: 'd' },
  ]);
});

test('a block repeats over a selection that is a whole multiple of it, and stops at the last column', () => {
  const over = pasteWrites(block, { top: 0, bottom: 3, left: 0, right: 3 }, 12);
  expect(over.length).toBe(16);
  expect(over.find(({ row, column }) => row === 3 && column === 3)?.text).toBe('d');
  expect(over.find(({ row, column }) => row === 2 && column === 1)?.text).toBe('b');
  const clipped = pasteWrites(block, { top: 0, bottom: 0, left: 11, right: 11 }, 12);
  expect(clipped.map(({ text }) => text)).toEqual(['a', 'c']);
});

test('one cell fills a selection of any shape', () => {
  fc.assert(
    fc.property(range, (selected) => {
      const area = rectangleOf(selected);
      const writes = pasteWrites([['x']], area, 12);
      expect(writes.length).toBe(cellCount(area));
      expect(writes.every(({ text }) => text === 'x')).toBe(true);
    }),
  );
});

test('rows of unlike length write only what they have', () => {
  expect(
    pasteWrites([['a', 'b'], ['c']], { top: 0, bottom: 0, left: 0, right: 0 }, 12).map(({ text }) => text),
  ).toEqual(['a', 'b', 'c']);
});

test('filling down takes the first row of each column', () => {
  const writes = fillDownWrites({ top: 1, bottom: 3, left: 0, right: 1 }, ({ row, column }) => `${row}/${column}`);
  expect(writes.length).toBe(4);
  expect(writes.every(({ column, text }) => text === `1/${column}`)).toBe(true);
});
