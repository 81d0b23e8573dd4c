// Which rows stand on screen and in which order while rows come, go and are moved.

import { expect, test } from 'vitest';
import {
  type Command,
  message,
  rowId,
  rowName,
  rowNamed,
  sheetView,
  type ViewDeclaration,
  views,
  type Workbook,
} from '../../engine/index.ts';
import { RowOrder } from '../../ui/browser/grid/row-order.ts';
import { openFarm } from '../document/farm.ts';

/** Beds, some long and some short, in a view. */
function beds(view: Partial<ViewDeclaration>) {
  const workbook = openFarm();
  const does = (...commands: readonly Command[]): readonly string[] => {
    const done = workbook.do(commands, message('trial'));
    if (done.refused) throw new Error(done.why);
    return done.inserted;
  };
  for (const [bed, length] of [
    ['L1', '900 ft'],
    ['S1', '1 ft'],
    ['L2', '800 ft'],
    ['S2', '2 ft'],
    ['L3', '850 ft'],
  ] as const) {
    does({ command: 'insert row', sheet: 'beds', entries: { bed, length } });
  }
  does({ command: 'set view', sheet: 'beds', view: { id: 'all', name: 'Everything', ...view } });
  const sheet = () => {
    const found = sheetView(workbook, 'beds');
    if (found === undefined) throw new Error('no beds');
    return found;
  };
  const order = new RowOrder({
    book: workbook,
    sheet,
    view: () => views(workbook, sheet()).find(({ id }) => id === 'all') ?? fail(),
    found: () => false,
    offersRow: () => false,
  });
  const names = (): readonly string[] => order.handles().map(({ slot }) => rowName(workbook, 'beds', slot));
  return { workbook, does, order, names, id: (name: string) => idOf(workbook, name) };
}

function fail(): never {
  throw new Error('no such view');
}

function idOf(workbook: Workbook, name: string): string {
  return rowId(workbook, 'beds', rowNamed(workbook, 'beds', name) ?? -1);
}

/** 200 m and more. */
const LONG: Partial<ViewDeclaration> = {
  filters: [{ by: 'cell', column: 'length', when: { is: 'at least', least: 200 } }],
};

test('filtered alone, rows that are moved stand where they were moved to, again and again', () => {
  const { does, order, names, id } = beds(LONG);
  expect(names()).toEqual(['L1', 'L2', 'L3']);
  does({ command: 'move rows', sheet: 'beds', rows: [id('L1')], before: id('L3') });
  order.follow();
  expect(names()).toEqual(['L2', 'L1', 'L3']);
  does({ command: 'move rows', sheet: 'beds', rows: [id('L1')], before: undefined });
  order.follow();
  expect(names()).toEqual(['L2', 'L3', 'L1']);
});

test('filtered alone, a row put in above another stands there, also one that the filter would keep back', () => {
  const { does, order, names, id } = beds(LONG);
  const [added = ''] = does({
    command: 'insert row',
    sheet: 'beds',
    entries: { bed: 'S3', length: '3 ft' },
    before: id('L2'),
  });
  order.keepAdded(added);
  order.follow();
  expect(names()).toEqual(['L1', 'S3', 'L2', 'L3']);
  expect(order.left).toBe(4);
});

test('filtered alone, a row that the filter would keep back by now stays until the rows are arranged again', () => {
  const { does, order, names, id } = beds(LONG);
  does({ command: 'set cell', sheet: 'beds', row: id('L2'), column: 'length', entry: '4 ft' });
  does({ command: 'move rows', sheet: 'beds', rows: [id('L3')], before: id('L2') });
  order.follow();
  expect(names()).toEqual(['L1', 'L3', 'L2']);
  order.arrange();
  expect(names()).toEqual(['L1', 'L3']);
});

test('sorted, rows stay where they are and one that comes stands last, until they are arranged again', () => {
  const { does, order, names, id } = beds({ ...LONG, sort: [{ column: 'length' }] });
  expect(names()).toEqual(['L2', 'L3', 'L1']);
  does({ command: 'set cell', sheet: 'beds', row: id('L2'), column: 'length', entry: '990 ft' });
  does({ command: 'insert row', sheet: 'beds', entries: { bed: 'L4', length: '700 ft' }, before: id('L1') });
  order.follow();
  expect(names()).toEqual(['L2', 'L3', 'L1', 'L4']);
  order.arrange();
  expect(names()).toEqual(['L4', 'L3', 'L1', 'L2']);
});

test('rows are numbered as if no heads stood among them, also where groups are folded', () => {
  const { order, id } = beds({ groupBy: 'length' });
  const numbers = (): readonly (number | undefined)[] => order.handles().map((row) => order.numberOf(row.id));
  const all = numbers();
  expect(all[0]).toBeUndefined();
  const given = all.filter((number) => number !== undefined);
  expect(given).toEqual(given.map((_, index) => index + 1));
  expect(given.length).toBeGreaterThanOrEqual(5);
  const before = order.numberOf(id('L2'));
  const [head] = order.handles();
  order.foldGroup(head?.group?.key ?? '');
  expect(numbers().filter((number) => number !== undefined).length).toBeLessThan(given.length);
  expect(order.numberOf(id('L2'))).toBe(before);
});
