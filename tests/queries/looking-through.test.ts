// Looking through cells finds the very cells whose text holds what is wanted, whatever their type, unit or origin.

import { expect, test } from 'vitest';
import { cellView, lookThrough, message, rows, sheetViews } from '../../engine/index.ts';
import { demoBook } from '../browser/workbook-page.ts';

const { workbook } = demoBook();
// Shares of nothing, so that there are faults.
workbook.do(
  [{ command: 'add formula', sheet: 'beds', name: 'Share', formula: '[Length] / (0 * [Length])' }],
  message('trial'),
);

/** Places of cells, 'sheet row column'. */
function found(text: string, typed: boolean): readonly string[] {
  const wanted = { text, holds: (shown: string) => shown.toLowerCase().includes(text) };
  return sheetViews(workbook).flatMap(({ id }) => {
    const holding = lookThrough(workbook, id, wanted, { typed });
    return Array.from(rows(workbook, id)).flatMap((row) => holding(row).map((column) => `${id} ${row} ${column}`));
  });
}

const all = sheetViews(workbook).flatMap(({ id, columns }) =>
  Array.from(rows(workbook, id)).flatMap((row) =>
    columns.map((column) => {
      const { text, origin } = cellView(workbook, id, row, column.id);
      return { place: `${id} ${row} ${column.id}`, text: text.toLowerCase(), origin };
    }),
  ),
);

// A name, a unit typed by hand, a month, a figure with a group, a part of one, a yes, what stands for a fault, a sign alone.
test.each(['onion', ' in', 'mar 2027', '10,', '.5', 'yes', '÷', '-', 'e'])('“%s”', (text) => {
  const holding = all.filter((cell) => cell.text.includes(text));
  expect(holding).not.toEqual([]);
  expect(found(text, false)).toEqual(holding.map(({ place }) => place));
  const typed = holding.filter(({ origin }) => origin === 'entered' || origin === 'override');
  expect(found(text, true)).toEqual(typed.map(({ place }) => place));
});
