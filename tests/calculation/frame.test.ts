// What a frame holds: cells, rows that come and go, what is typed over, and a frame beside another.
import { describe, expect, test } from 'vitest';
import { Frame } from '../../engine/calculation/frame.ts';
import { linkedKernel, loadKernel, singleKernel, todayKernel } from '../../engine/calculation/kernels/load-kernels.ts';
import { isHidden, Layout } from '../../engine/calculation/layout.ts';
import { TypedCells, TypedUnits } from '../../engine/calculation/typed-cells.ts';
import { createVocabulary } from '../../engine/units/vocabulary.ts';
import { BLANK, FAULT, FILLED } from '../../engine/values/column.ts';
import { emptyFrame } from './frames.ts';

function small() {
  const layout = new Layout();
  const table = layout.addTable('beds');
  const [length, zone] = [layout.addColumn(table, 'length', false), layout.addColumn(table, 'zone', true)];
  const frame = emptyFrame(layout);
  const cells = (): string[] => {
    const { values, states } = frame.column(length);
    return Array.from({ length: frame.table(table).length }, (_, row) => `${values[row]} ${states[row]}`);
  };
  return { layout, table, length, zone, frame, cells };
}

describe('a layout', () => {
  test('finds tables and columns by their ids, and says which is not there', () => {
    const { layout, table, length, zone } = small();
    expect([layout.table('beds'), layout.findTable('beds')]).toEqual([table, table]);
    expect(layout.column('beds', 'zone')).toBe(zone);
    expect([length.number, zone.number, length.whole, zone.whole]).toEqual([0, 1, false, true]);
    expect(table.columns).toEqual([length, zone]);
    expect([layout.findTable('paths'), layout.findColumn('beds', 'width')]).toEqual([undefined, undefined]);
    expect(() => layout.table('paths')).toThrow('No table paths');
    expect(() => layout.column('beds', 'width')).toThrow('No column width in beds');
  });

  test('beside another has the same things at the same numbers, and more that the other never has', () => {
    const { layout, table, zone } = small();
    const beside = Layout.beside(layout);
    const added = beside.addTable('trial');
    const column = beside.addColumn(added, 'answer', false);
    expect([beside.table('beds'), beside.column('beds', 'zone')]).toEqual([table, zone]);
    expect([added.number, column.number]).toEqual([1, 2]);
    expect([layout.tables.length, layout.columns.length, layout.findTable('trial')]).toEqual([1, 2, undefined]);
  });

  test('what no one sees has an id that begins with a dot', () => {
    expect([isHidden('·where'), isHidden('length')]).toEqual([true, false]);
  });
});

describe('cells', () => {
  test('say whether a write changed them; a blank has no value and minus nought is nought', () => {
    const { table, length, frame, cells } = small();
    frame.addRows(table, 2);
    expect(cells()).toEqual([`0 ${BLANK}`, `0 ${BLANK}`]);
    expect(frame.write(length, 0, 2.5, FILLED)).toBe(true);
    expect(frame.write(length, 0, 2.5, FILLED)).toBe(false);
    expect(frame.write(length, 0, 2.5, FAULT)).toBe(true);
    expect(frame.write(length, 1, 9, BLANK)).toBe(false);
    expect(frame.write(length, 1, -0, FILLED)).toBe(true);
    expect(Object.is(frame.column(length).values[1], 0)).toBe(true);
    expect(frame.write(length, 1, -0, FILLED)).toBe(false);
    expect(cells()).toEqual([`2.5 ${FAULT}`, `0 ${FILLED}`]);
  });

  test('of a dead row read as filled noughts and hold nothing typed; of a new one they are blank', () => {
    const { table, length, frame, cells } = small();
    frame.addRows(table, 3);
    for (const row of [0, 1, 2]) frame.write(length, row, row + 1, FILLED);
    frame.ownTyped(length).over.add(1);
    frame.ownTyped(length).setUnit(1, 2);
    frame.setLive(table, 1, false);
    expect(cells()).toEqual([`1 ${FILLED}`, `0 ${FILLED}`, `3 ${FILLED}`]);
    expect(frame.column(length).exceptions).toBe(0);
    expect(frame.typed[length.number]?.isMarked(1)).toBe(false);
    frame.setLive(table, 1, true);
    expect(cells()[1]).toBe(`0 ${BLANK}`);
    frame.setLive(table, 5, true);
    expect(cells()).toEqual([`1 ${FILLED}`, `0 ${BLANK}`, `3 ${FILLED}`, `0 ${BLANK}`, `0 ${BLANK}`, `0 ${BLANK}`]);
    expect([...frame.rows(table)]).toEqual([0, 1, 2, 5]);
  });
});

describe('slots', () => {
  test('that come or go together leave what they leave one by one', () => {
    const both = [small(), small()].map(({ table, length, zone, frame, cells }, one) => {
      frame.addRows(table, 5);
      for (const row of [0, 2, 3]) frame.write(length, row, row + 0.5, FILLED);
      frame.ownTyped(length).over.add(2);
      frame.ownTyped(zone).setUnit(3, 1);
      const turn = (rows: number[], alive: boolean): void => {
        if (one === 0) frame.setManyLive(table, rows, alive);
        else for (const row of rows) frame.setLive(table, row, alive);
      };
      const seen = [];
      for (const [rows, alive] of [
        [[3, 2, 1, 2], false],
        [[2, 4], true],
        [[0, 2], false],
      ] as const) {
        turn([...rows], alive);
        const marked = [2, 3].map((row) => [length, zone].map(({ number }) => frame.typed[number]?.isMarked(row)));
        seen.push([cells(), frame.column(length).exceptions, [...frame.rows(table)], marked]);
      }
      frame.releaseSlots();
      return [...seen, [1, 2, 3].map(() => frame.ownTable(table).takeSlot())];
    });
    expect(both[0]).toEqual(both[1]);
    expect(both[0]?.at(-1)).toEqual([3, 1, 0]);
  });

  test('of rows that died are taken by others only once all is up to date', () => {
    const { table, frame } = small();
    frame.addRows(table, 3);
    frame.setLive(table, 0, false);
    expect(frame.ownTable(table).takeSlot()).toBe(3);
    frame.releaseSlots();
    expect(frame.ownTable(table).takeSlot()).toBe(0);
    // Released once: another release gives nothing back.
    frame.releaseSlots();
    expect(frame.ownTable(table).takeSlot()).toBe(3);
  });

  test('of rows that go and come back again and again are remembered once', () => {
    const { table, frame } = small();
    frame.addRows(table, 200);
    const round = (): number => {
      for (let row = 50; row < 150; row++) frame.setLive(table, row, false);
      frame.releaseSlots();
      // One is taken by another row, so that not all come back into their own.
      const taken = frame.ownTable(table).takeSlot();
      for (let row = 50; row < 150; row++) frame.setLive(table, row, true);
      return taken;
    };
    expect(round()).toBe(50);
    const bytes = frame.bytes();
    for (let again = 0; again < 100; again++) expect(round()).toBe(50);
    expect(frame.bytes() - bytes).toBeLessThan(10_000);
  });

  test('that a frame released are its own: a branch may take them too, once each', () => {
    const { table, frame } = small();
    frame.addRows(table, 2);
    frame.setLive(table, 1, false);
    frame.releaseSlots();
    const branch = frame.branch();
    expect(branch.ownTable(table).takeSlot()).toBe(1);
    expect(branch.ownTable(table).takeSlot()).toBe(2);
    expect(frame.ownTable(table).takeSlot()).toBe(1);
  });

  test('that were released are no reason to copy a table again', () => {
    const { table, frame } = small();
    frame.addRows(table, 2);
    frame.setLive(table, 1, false);
    frame.releaseSlots();
    const branch = frame.branch();
    frame.releaseSlots();
    branch.releaseSlots();
    expect(frame.table(table)).toBe(branch.table(table));
  });
});

describe('what is typed', () => {
  test('over computed cells and in units of their own is known by row', () => {
    const cells = new TypedCells({});
    expect([cells.unitNumber(40), cells.isMarked(40)]).toEqual([0, false]);
    cells.setUnit(40, 0);
    cells.setUnit(40, 3);
    cells.over.add(2);
    expect([cells.unitNumber(40), cells.unitNumber(39), cells.unitNumber(41)]).toEqual([3, 0, 0]);
    expect([cells.isMarked(40), cells.isMarked(2), cells.isMarked(3)]).toEqual([true, true, false]);
    cells.forget(40);
    cells.forget(2);
    expect([cells.isMarked(40), cells.isMarked(2)]).toEqual([false, false]);
  });

  test('units have numbers from 1; none of its own is 0', () => {
    const units = new TypedUnits();
    const vocabulary = createVocabulary({ currency: 'EUR' });
    const [inch, metre] = [vocabulary.find('in'), vocabulary.find('m')];
    expect([units.number(undefined), units.number(inch), units.number(metre), units.number(inch)]).toEqual([
      0, 1, 2, 1,
    ]);
    expect([units.unit(0), units.unit(1), units.unit(2), units.unit(3)]).toEqual([undefined, inch, metre, undefined]);
  });
});

test('a kernel reads the frame it is asked in', () => {
  const { layout, table, length, zone, frame } = small();
  const zones = layout.addTable('zones');
  const name = layout.addColumn(zones, 'factor', false);
  const first = Frame.beside(frame, layout, 0);
  first.addRows(zones, 2);
  first.addRows(table, 1);
  first.write(name, 0, 5, FILLED);
  first.write(name, 1, 6, FILLED);
  first.write(length, 0, 10, FILLED);
  first.write(zone, 0, 0, FILLED);
  first.today = 100;
  const second = first.branch();
  second.write(length, 0, 20, FILLED);
  second.write(zone, 0, 1, FILLED);
  second.write(name, 0, 7, FILLED);
  second.today = 200;
  const kernels = [loadKernel(length), linkedKernel(zone, name), singleKernel(name), todayKernel()];
  const given = (of: Frame): number[] =>
    kernels.map((kernel) => {
      const { values, at } = kernel({ frame: of, rows: undefined, from: 0, count: 1 });
      return values[at] ?? Number.NaN;
    });
  expect(given(first)).toEqual([10, 5, 5, 100]);
  expect(given(second)).toEqual([20, 6, 7, 200]);
  expect(given(first)).toEqual([10, 5, 5, 100]);
});

describe('a frame beside another', () => {
  test('reads what there is and has room for more; what it writes stays with it', () => {
    const { layout, table, length, frame } = small();
    frame.addRows(table, 2);
    frame.write(length, 0, 4, FILLED);
    frame.ownTyped(length).over.add(0);
    frame.today = 77;
    const wider = Layout.beside(layout);
    const added = wider.addColumn(wider.addTable('trial'), 'answer', false);
    const beside = Frame.beside(frame, wider, 3);
    expect([beside.column(length).values[0], beside.today, beside.pending.length]).toEqual([4, 77, 3]);
    expect(beside.typed[length.number]?.over.has(0)).toBe(true);
    beside.addRows(added.table, 1);
    beside.write(added, 0, 8, FILLED);
    beside.write(length, 0, 5, FILLED);
    beside.ownTyped(length).over.add(1);
    beside.setLive(table, 1, false);
    expect(frame.column(length).values[0]).toBe(4);
    expect([...(frame.typed[length.number]?.over ?? [])]).toEqual([0]);
    expect([...frame.rows(table)]).toEqual([0, 1]);
    expect(frame.tables.length).toBe(1);
    expect([beside.column(added).values[0], beside.column(length).values[0]]).toEqual([8, 5]);
    expect([...beside.rows(table)]).toEqual([0]);
  });

  test('counts the bytes of its rows and columns', () => {
    const { table, frame } = small();
    const before = frame.bytes();
    frame.addRows(table, 1000);
    // A double, a whole number and a state each for two cells, and whether the row lives.
    expect(frame.bytes() - before).toBeGreaterThanOrEqual(950 * (8 + 4 + 2 + 1));
  });
});
