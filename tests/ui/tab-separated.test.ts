// Cells on the clipboard: what is copied reads back the same, and what spreadsheets put there is understood.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fromTabSeparated, toTabSeparated } from '../../ui/browser/grid/clipboard/tab-separated.ts';

const field = fc.string({ unit: fc.constantFrom('a', '7', ' ', '\t', '\n', '\r', '"', ',', 'é') });

test('what is copied reads back the same, tabs, line ends and quotes in it too', () => {
  const rows = fc
    .tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 }))
    .chain(([height, width]) =>
      fc.array(fc.array(field, { minLength: width, maxLength: width }), { minLength: height, maxLength: height }),
    )
    // A last row of one empty field leaves no trace in the text; a sheet's own copy never ends so.
    .filter((cells) => cells.at(-1)?.join('') !== '' || (cells[0]?.length ?? 0) > 1);
  fc.assert(
    fc.property(rows, (cells) => {
      expect(fromTabSeparated(toTabSeparated(cells))).toEqual(cells);
    }),
  );
});

test('a line end after the last row adds no row, and an empty first cell is kept', () => {
  expect(fromTabSeparated('a\tb\r\nc\td\r\n')).toEqual([
    ['a', 'b'],
    ['c', 'd'],
  ]);
  expect(fromTabSeparated('\tb\n')).toEqual([['', 'b']]);
  expect(fromTabSeparated('a\t')).toEqual([['a', '']]);
});

test('quoted fields hold line ends, doubled quotes and tabs; an unclosed quote runs to the end', () => {
  expect(fromTabSeparated('"2 ft\n6 in"\t"8"""\n')).toEqual([['2 ft\n6 in', '8"']]);
  expect(fromTabSeparated('"left open\tb')).toEqual([['left open\tb']]);
  expect(fromTabSeparated('8"\t9')).toEqual([['8"', '9']]);
});
