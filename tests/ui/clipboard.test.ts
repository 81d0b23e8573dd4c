// What goes over the clipboard from cell to cell of the workbook: ranges whole, quantities as what they are, and what was cut from
// where it stood, on whatever sheet, unless it was changed since.

import { expect, test } from 'vitest';
import { cellView, message, rowId, rows, sheetView, sheetViews, tryEntry, type Workbook } from '../../engine/index.ts';
import type { BlockCell } from '../../ui/browser/grid/clipboard/block.ts';
import { copyOf } from '../../ui/browser/grid/clipboard/copied.ts';
import { type CutCell, cutCell, holdsStill } from '../../ui/browser/grid/clipboard/cut.ts';
import { PasteJob } from '../../ui/browser/grid/clipboard/paste-job.ts';
import { inColumn } from '../../ui/browser/grid/typed-here.ts';
import { demoAsItComes } from '../browser/workbook-page.ts';
import { openFarm } from '../document/farm.ts';

const NONE: ReadonlySet<string> = new Set();

function at(workbook: Workbook, sheet: string, row: number) {
  const slot = rows(workbook, sheet)[row] ?? -1;
  return { slot, id: rowId(workbook, sheet, slot) };
}

function columnOf(workbook: Workbook, sheet: string, id: string) {
  const view = sheetView(workbook, sheet);
  const column = view?.columns.find((each) => each.id === id);
  if (view === undefined || column === undefined) throw new Error(`${sheet} has no ${id}`);
  return { view, column };
}

function type(workbook: Workbook, sheet: string, row: number, column: string, entry: string): void {
  const { id } = at(workbook, sheet, row);
  const done = workbook.do([{ command: 'set cell', sheet, row: id, column, entry }], message('paste cell'));
  if (done.refused) throw new Error(done.why);
}

function entry(workbook: Workbook, sheet: string, row: number, column: string): string {
  return cellView(workbook, sheet, at(workbook, sheet, row).slot, column).entry;
}

function pasting(workbook: Workbook, cells: readonly BlockCell[], sheet: string, row: number, id: string): PasteJob {
  const { view, column } = columnOf(workbook, sheet, id);
  const { columns } = view;
  return new PasteJob({
    book: workbook,
    sheet: view,
    block: { cells: [cells] },
    repeated: false,
    columns: columns.slice(columns.indexOf(column)),
    rows: () => [{ row: at(workbook, sheet, row) }],
    keepFormulas: false,
  });
}

function paste(workbook: Workbook, job: PasteJob, skipped = NONE): void {
  const done = workbook.do(job.commands(job.plan(), skipped), message('paste cell'));
  if (done.refused) throw new Error(done.why);
}

function htmlOf(workbook: Workbook, sheet: string, row: number, id: string): string {
  const { column } = columnOf(workbook, sheet, id);
  return copyOf(workbook, sheet, { rows: [at(workbook, sheet, row)], columns: [column] }, false).html;
}

test('a copied range goes to other programs as its likely figure, and says beside it how it was typed', () => {
  const farm = openFarm();
  type(farm, 'beds', 0, 'length', '40..50');
  const { column } = columnOf(farm, 'beds', 'length');
  const { text, html } = copyOf(farm, 'beds', { rows: [at(farm, 'beds', 0)], columns: [column] }, false);
  expect(text).toBe('45');
  expect(html).toContain('data-dibble-typed="40..50" data-dibble-unit="ft">45</td>');
  expect(htmlOf(farm, 'beds', 0, 'bed')).not.toContain('data-dibble-typed');
});

test('an entry keeps what it is in a column of another unit, and stays as it is where the unit is the same', () => {
  expect(inColumn({ entry: '60', unit: 'ft' }, { unit: 'in' })).toBe('60 ft');
  expect(inColumn({ entry: '60', unit: 'ft' }, { unit: 'ft' })).toBe('60');
  expect(inColumn({ entry: '40..50', unit: 'ft' }, { unit: 'in' })).toBe('40 ft..50 ft');
  expect(inColumn({ entry: '2 ft 6 in', unit: 'ft' }, { unit: 'in' })).toBe('2 ft 6 in');
  expect(inColumn({ entry: '20 cm', unit: 'ft' }, { unit: 'in' })).toBe('20 cm');
  expect(inColumn({ entry: '85', unit: '%' }, { unit: '' })).toBe('85%');
  // A third of all, whose entry is the share for want of a per cent that says it exactly.
  expect(inColumn({ entry: '0.33333333333333331', unit: '%' }, { unit: '' })).toBe('33.3333333333333%');
  expect(inColumn({ entry: '0,125', unit: '%' }, { unit: '' })).toBe('12,5%');
  expect(inColumn({ entry: '60', unit: '' }, { unit: 'in' })).toBe('60');
  expect(inColumn({ entry: '12 May..28 May', unit: '' }, { unit: '' })).toBe('12 May..28 May');
});

test('the unit of every column of the season is read again as it is written behind a figure', () => {
  const { workbook } = demoAsItComes();
  const wrong = sheetViews(workbook).flatMap((sheet) =>
    sheet.columns
      .filter(({ unit, role }) => unit !== '' && role !== 'made')
      .filter(({ id, unit }) => {
        const [bare, named] = ['12', inColumn({ entry: '12', unit }, { unit: '' })].map((typed) =>
          tryEntry(workbook, sheet.id, id, typed),
        );
        return JSON.stringify(named) !== JSON.stringify(bare);
      })
      .map(({ name, unit }) => `${sheet.name} ${name} ${unit}`),
  );
  expect(wrong).toEqual([]);
});

test('a quantity that is pasted on a column of another unit is the same quantity there, a range with both its ends', () => {
  const farm = openFarm();
  const typed = (given: string): BlockCell => ({ text: '45', typed: { entry: given, unit: 'ft' } });
  const length = pasting(farm, [typed('2')], 'plantings', 0, 'spacing');
  expect(length.questions(length.plan())).toEqual([]);
  paste(farm, length);
  const cell = cellView(farm, 'plantings', at(farm, 'plantings', 0).slot, 'spacing');
  // 2 ft are 24 in.
  expect(cell.number).toBeCloseTo(24, 9);
  paste(farm, pasting(farm, [typed('1..3')], 'plantings', 0, 'spacing'));
  expect(cellView(farm, 'plantings', at(farm, 'plantings', 0).slot, 'spacing').range).toBe('1 ft..3 ft');
  paste(farm, pasting(farm, [typed('40..50')], 'beds', 1, 'length'));
  expect(entry(farm, 'beds', 1, 'length')).toBe('40..50');
});

test('what another program puts there is read in the unit of the column, as it always was', () => {
  const farm = openFarm();
  paste(farm, pasting(farm, [{ text: '7' }], 'plantings', 0, 'spacing'));
  expect(entry(farm, 'plantings', 0, 'spacing')).toBe('7');
});

function cutFrom(farm: Workbook, sheet: string, row: number, column: string): CutCell {
  return cutCell(farm, sheet, at(farm, sheet, row).id, column);
}

test('what is cut on one sheet and pasted on another goes from there, in one step', () => {
  const farm = openFarm();
  type(farm, 'beds', 0, 'length', '37');
  const there = entry(farm, 'plantings', 0, 'length');
  const cut = cutFrom(farm, 'beds', 0, 'length');
  paste(farm, pasting(farm, [{ text: '37', cut }], 'plantings', 0, 'length'));
  expect(entry(farm, 'plantings', 0, 'length')).toBe('37');
  expect(entry(farm, 'beds', 0, 'length')).toBe('');
  farm.undo();
  expect(entry(farm, 'plantings', 0, 'length')).toBe(there);
  expect(entry(farm, 'beds', 0, 'length')).toBe('37');
});

test('what was typed where something was cut stays when the cut is pasted', () => {
  const farm = openFarm();
  type(farm, 'beds', 0, 'length', '37');
  const cut = cutFrom(farm, 'beds', 0, 'length');
  expect(holdsStill(farm, cut)).toBe(true);
  type(farm, 'beds', 0, 'length', '30..44');
  // Its likely figure is 37 again, but it is another entry.
  expect(holdsStill(farm, cut)).toBe(false);
  paste(farm, pasting(farm, [{ text: '37', cut }], 'beds', 1, 'length'));
  expect([entry(farm, 'beds', 0, 'length'), entry(farm, 'beds', 1, 'length')]).toEqual(['30..44', '37']);
});

test('a cut lasts while the workbook is shown in other units, and ends where its row goes', () => {
  const farm = openFarm();
  type(farm, 'plantings', 0, 'length', '37');
  const cut = cutFrom(farm, 'plantings', 0, 'length');
  farm.do([{ command: 'set units', units: 'si' }], message('si units'));
  expect(holdsStill(farm, cut)).toBe(true);
  farm.do([{ command: 'remove rows', sheet: 'plantings', rows: [cut.row] }], message('remove rows', { count: 1 }));
  expect(holdsStill(farm, cut)).toBe(false);
});

test('of a cut only what is pasted goes: what is skipped stays where it stands', () => {
  const farm = openFarm();
  type(farm, 'plantings', 0, 'length', '31');
  type(farm, 'plantings', 0, 'spacing', '5');
  const cells = ['length', 'spacing'].map(
    (column): BlockCell => ({
      text: entry(farm, 'plantings', 0, column),
      cut: cutFrom(farm, 'plantings', 0, column),
    }),
  );
  paste(farm, pasting(farm, cells, 'plantings', 1, 'length'), new Set(['0 1']));
  expect([entry(farm, 'plantings', 1, 'length'), entry(farm, 'plantings', 0, 'length')]).toEqual(['31', '']);
  expect(entry(farm, 'plantings', 0, 'spacing')).toBe('5');
});

test('a far date is asked about as what it is, never as one that could be read in two ways', () => {
  const farm = openFarm();
  const job = pasting(farm, [{ text: '4 Mar 1891' }], 'plantings', 0, 'sown');
  expect(job.questions(job.plan())).toEqual([
    'One date lies far from the season and from the dates around: see that the year is meant.',
  ]);
  const open = pasting(farm, [{ text: '3/4/2027' }], 'plantings', 0, 'sown');
  expect(open.questions(open.plan())).toEqual(['One cell could be read in two ways.']);
});
