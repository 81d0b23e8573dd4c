// Where a pasted block lands: once, again and again over a selection, in each of several ranges; past heads of groups and the last
// row; and which cells are selected after it.

import { expect, test } from 'vitest';
import { sheetView } from '../../engine/index.ts';
import type { Block } from '../../ui/browser/grid/clipboard/block.ts';
import { laidOver, runsOf } from '../../ui/browser/grid/clipboard/landing.ts';
import { PasteJob } from '../../ui/browser/grid/clipboard/paste-job.ts';
import type { Rectangle } from '../../ui/browser/grid/ranges.ts';
import { headOf, type RowHandle, SPARE } from '../../ui/browser/grid/row-handle.ts';
import { rowsOf } from '../../ui/browser/store/selection.ts';
import { openFarm } from '../document/farm.ts';

const farm = openFarm();
const sheet = sheetView(farm, 'plantings');
if (sheet === undefined) throw new Error('there are no plantings');
const there = rowsOf(farm, sheet.id);
const head = headOf({ key: 'a', name: 'a', rows: [] }, false);

function block(...lines: readonly string[]): Block {
  return { cells: lines.map((line) => line.split(' ').map((text) => ({ text }))) };
}

function area(top: number, bottom: number, left: number, right = left): Rectangle {
  return { top, bottom, left, right };
}

/** What lands where, as 'row column text'; rows by their place on screen. */
function landed(given: Block, areas: readonly Rectangle[], list: readonly RowHandle[]) {
  const laid = laidOver(given, areas, {
    rowAt: (index) => list[index],
    columnAt: (index) => sheet?.columns[index],
    rows: list.length,
    columns: sheet?.columns.length ?? 0,
    entered: true,
  });
  if (laid === undefined) return undefined;
  const into = laid.rows(laid.block.cells.length);
  return laid.block.cells.flatMap((line, at) =>
    line.flatMap((cell, across) => {
      const row = into[at];
      const place = row === undefined ? 'none' : 'row' in row ? list.findIndex(({ id }) => id === row.row.id) : 'new';
      return cell === undefined ? [] : [`${place} ${laid.columns[across]?.name} ${cell.text}`];
    }),
  );
}

const [A, B, C] = there;
if (A === undefined || B === undefined || C === undefined) throw new Error('there are three plantings');

test('a single value goes into every cell selected, heads of groups and the empty row passed over', () => {
  const list = [A, head, B, SPARE];
  expect(landed(block('7'), [area(0, 3, 3, 4)], list)).toEqual([
    '0 Length 7',
    '0 Spacing 7',
    '2 Length 7',
    '2 Spacing 7',
  ]);
});

test('a block lands in each of several ranges that are a whole multiple of it, and else in none', () => {
  const list = [A, B, C];
  expect(landed(block('1 2'), [area(0, 0, 3, 4), area(2, 2, 3, 4)], list)).toEqual([
    '0 Length 1',
    '0 Spacing 2',
    '2 Length 1',
    '2 Spacing 2',
  ]);
  expect(landed(block('7'), [area(0, 0, 3), area(1, 2, 4)], list)).toEqual([
    '0 Length 7',
    '1 Spacing 7',
    '2 Spacing 7',
  ]);
  expect(landed(block('1 2'), [area(0, 0, 3, 4), area(2, 2, 3)], list)).toBeUndefined();
  expect(landed(block('1', '2'), [area(0, 0, 3), area(2, 2, 3)], list)).toBeUndefined();
});

test('a block on one cell lands once, past heads of groups, and past the last row in new ones', () => {
  expect(landed(block('1', '2', '3'), [area(0, 0, 3)], [A, head, B, SPARE])).toEqual([
    '0 Length 1',
    '2 Length 2',
    'new Length 3',
  ]);
});

test('what fits one of the selected columns only is asked about cell by cell', () => {
  const laid = laidOver(block('hello'), [area(0, 1, 0), area(0, 1, 3)], {
    rowAt: (index) => [A, B][index],
    columnAt: (index) => sheet?.columns[index],
    rows: 2,
    columns: 10,
    entered: true,
  });
  if (laid === undefined) throw new Error('it lands');
  const job = new PasteJob({ book: farm, sheet, ...laid, keepFormulas: false });
  const plan = job.plan();
  const states = plan.cells.map(({ column, state }) => `${column.name} ${state}`);
  expect(states).toEqual(['Planting fits', 'Length refused', 'Planting refused', 'Length refused']);
  expect(job.questions(plan)).toEqual(['3 cells don’t fit.']);
});

test('1,234 and 03/04 are asked about on several cells as on one', () => {
  const screen = {
    rowAt: (index: number) => [A, B][index],
    columnAt: (index: number) => sheet?.columns[index],
    rows: 2,
    columns: 10,
    entered: true,
  };
  const asked = (text: string, column: string) => {
    const at = sheet?.columns.findIndex(({ id }) => id === column) ?? -1;
    const laid = laidOver(block(text), [area(0, 1, at)], screen);
    if (laid === undefined) throw new Error('it lands');
    const job = new PasteJob({ book: farm, sheet, ...laid, keepFormulas: false });
    return job.questions(job.plan());
  };
  expect(asked('1,234', 'length')).toEqual(['2 cells could be read in two ways.']);
  expect(asked('03/04/2027', 'sown')).toEqual(['2 cells could be read in two ways.']);
  expect(asked('31', 'length')).toEqual([]);
  // A value that is the name of a column is no line of headers.
  expect(asked('Length', 'planting')).not.toContain('Its first line names columns.');
});

test('rows that follow each other are one run, whatever heads stand between them', () => {
  const list = [A, head, B, C];
  const isHead = (index: number): boolean => list[index] === head;
  expect(runsOf([3, 0, 2], isHead)).toEqual([{ from: 0, to: 3 }]);
  expect(runsOf([0, 3], isHead)).toEqual([
    { from: 0, to: 0 },
    { from: 3, to: 3 },
  ]);
});
