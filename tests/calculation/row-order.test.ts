// How rows stand in order: by labels of their own, as the rows they were made from, by pairs, by date; the slots and labels
// of one table's rows; and slots put in order by keys, as a stable sort of the language's own would.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Layout, type RowOrder } from '../../engine/calculation/layout.ts';
import { rowsByKeys } from '../../engine/calculation/row-order.ts';
import { TableRows } from '../../engine/calculation/table-rows.ts';
import { BLANK, FILLED } from '../../engine/values/column.ts';
import { emptyFrame } from './frames.ts';

function beds(count: number) {
  const layout = new Layout();
  const table = layout.addTable('beds');
  const shown = layout.addColumn(table, 'shown', false);
  const frame = emptyFrame(layout);
  frame.addRows(table, count);
  const label = (...labels: readonly number[]): void => {
    const rows = frame.ownTable(table);
    for (const [row, one] of labels.entries()) rows.setLabel(row, one);
    rows.reordered();
  };
  return { layout, table, shown, frame, label, rows: () => [...frame.rows(table)] };
}

describe('rows of their own', () => {
  test('stand as their slots do until they have labels', () => {
    const { table, frame, label, rows } = beds(4);
    expect(frame.compare(table)).toBeUndefined();
    expect(rows()).toEqual([0, 1, 2, 3]);
    label(30, 10, 20, 40);
    expect(rows()).toEqual([1, 2, 0, 3]);
    expect(frame.compare(table)?.(0, 3)).toBeLessThan(0);
    expect(frame.compare(table)?.(0, 1)).toBeGreaterThan(0);
  });

  test('keep the places of their slots where only one is given another', () => {
    const { frame, table, rows } = beds(4);
    frame.ownTable(table).setLabel(0, 2.5);
    frame.ownTable(table).reordered();
    expect(rows()).toEqual([1, 2, 0, 3]);
  });

  test('with equal labels stand as their slots do', () => {
    const { label, rows } = beds(4);
    label(7, 7, 3, 7);
    expect(rows()).toEqual([2, 0, 1, 3]);
  });

  test('are listed anew after any change of rows, labels and of the condition, and not else', () => {
    const { table, shown, frame, label, rows } = beds(3);
    const first = frame.rows(table);
    expect(frame.rows(table)).toBe(first);
    label(2, 1, 0);
    expect(rows()).toEqual([2, 1, 0]);
    frame.setLive(table, 1, false);
    expect(rows()).toEqual([2, 0]);
    const listed = frame.rows(table);
    frame.write(shown, 0, 1, FILLED);
    expect(frame.rows(table)).toBe(listed);
    table.shown = shown;
    frame.write(shown, 2, 0, FILLED);
    expect(rows()).toEqual([0]);
    expect([frame.exists(table, 0), frame.exists(table, 1), frame.exists(table, 2)]).toEqual([true, false, false]);
    frame.write(shown, 2, 1, FILLED);
    expect(rows()).toEqual([2, 0]);
    frame.write(shown, 2, 0, BLANK);
    expect(rows()).toEqual([0]);
  });

  test('are just those that live and are shown, by label, then by slot', () => {
    const row = fc.record({ label: fc.integer({ min: -3, max: 3 }), alive: fc.boolean(), shown: fc.boolean() });
    fc.assert(
      fc.property(fc.array(row, { maxLength: 30 }), fc.boolean(), (all, labelled) => {
        const { table, shown, frame, label, rows } = beds(all.length);
        table.shown = shown;
        if (labelled) label(...all.map((one) => one.label));
        for (const [slot, one] of all.entries()) {
          frame.write(shown, slot, one.shown ? 1 : 0, FILLED);
          frame.setLive(table, slot, one.alive);
        }
        const wanted = all.flatMap((one, slot) => (one.alive && one.shown ? [slot] : []));
        if (labelled) wanted.sort((a, b) => (all[a]?.label ?? 0) - (all[b]?.label ?? 0) || a - b);
        expect(rows()).toEqual(wanted);
      }),
    );
  });
});

describe('rows that follow from others', () => {
  function setting(order: (made: ReturnType<typeof columns>) => RowOrder) {
    const made = columns(beds(0).layout);
    made.table.order = order(made);
    return { ...made, frame: emptyFrame(made.layout) };
  }

  function columns(layout: Layout) {
    const table = layout.addTable('made');
    const weeks = layout.addTable('weeks');
    const [bed, week] = [layout.addColumn(table, 'bed', true), layout.addColumn(table, 'week', true)];
    const [date, kind] = [layout.addColumn(table, 'date', false), layout.addColumn(table, 'kind', false)];
    return { layout, table, weeks, bed, week, date, kind, source: layout.table('beds') };
  }

  test('each from one, stand as those do', () => {
    const { frame, source, table } = setting((made) => ({ by: 'table', table: made.source }));
    for (const of of [source, table]) frame.addRows(of, 3);
    expect([...frame.rows(table)]).toEqual([0, 1, 2]);
    frame.ownTable(source).setLabel(0, 9);
    frame.ownTable(source).reordered();
    expect([...frame.rows(table)]).toEqual([1, 2, 0]);
  });

  test('pairs stand by the first of the two, then by the second, as those stand themselves', () => {
    const { frame, source, weeks, table, bed, week } = setting((made) => ({
      by: 'links',
      links: [
        { column: made.bed, to: made.source },
        { column: made.week, to: made.weeks },
      ],
    }));
    frame.addRows(source, 2);
    frame.addRows(weeks, 2);
    frame.addRows(table, 4);
    const pairs = [
      [1, 1],
      [0, 1],
      [1, 0],
      [0, 0],
    ];
    for (const [row, [one = 0, other = 0]] of pairs.entries()) {
      frame.write(bed, row, one, FILLED);
      frame.write(week, row, other, FILLED);
    }
    expect([...frame.rows(table)]).toEqual([3, 1, 2, 0]);
    frame.ownTable(source).setLabel(0, 5);
    frame.ownTable(source).reordered();
    expect([...frame.rows(table)]).toEqual([2, 0, 3, 1]);
    frame.ownTable(weeks).setLabel(0, 5);
    frame.ownTable(weeks).reordered();
    expect([...frame.rows(table)]).toEqual([0, 2, 1, 3]);
  });

  test('events stand by date, then by which dated column, then by the row they are about', () => {
    const { frame, source, weeks, table, bed, week, date, kind } = setting((made) => ({
      by: 'events',
      date: made.date,
      kind: made.kind,
      about: [
        { column: made.bed, to: made.source },
        { column: made.week, to: made.weeks },
      ],
    }));
    frame.addRows(source, 2);
    frame.addRows(weeks, 2);
    frame.addRows(table, 5);
    const events = [
      { at: 20, of: 1, about: 1 },
      { at: 20, of: 0, about: 1 },
      { at: 10, of: 1, about: 0 },
      { at: 20, of: 0, about: 0 },
      { at: 20, of: 1, about: 0 },
    ];
    for (const [row, { at, of, about }] of events.entries()) {
      frame.write(date, row, at, FILLED);
      frame.write(kind, row, of, FILLED);
      frame.write(of === 0 ? bed : week, row, about, FILLED);
    }
    expect([...frame.rows(table)]).toEqual([2, 3, 1, 4, 0]);
    frame.ownTable(source).setLabel(0, 5);
    frame.ownTable(source).reordered();
    expect([...frame.rows(table)]).toEqual([2, 1, 3, 4, 0]);
    frame.write(date, 2, 30, FILLED);
    expect([...frame.rows(table)]).toEqual([1, 3, 4, 0, 2]);
  });

  test('are listed as comparing any two of them says, dates far apart, blank cells and labels of their own or not', () => {
    const row = fc.record({
      bed: fc.nat({ max: 5 }),
      week: fc.nat({ max: 5 }),
      day: fc.constantFrom(0, 1, 2, 3, 3.5, 9000, -40),
      kind: fc.nat({ max: 2 }),
      alive: fc.constantFrom(true, true, true, false),
    });
    const labels = fc.option(fc.array(fc.constantFrom(1, 2, 2.5, 7), { minLength: 6, maxLength: 6 }));
    fc.assert(
      fc.property(fc.array(row, { maxLength: 40 }), labels, fc.boolean(), (rows, labelled, byDate) => {
        const { frame, source, weeks, table, bed, week, date, kind } = setting((made) => {
          const links = [
            { column: made.bed, to: made.source },
            { column: made.week, to: made.weeks },
          ] as const;
          return byDate ? { by: 'events', date: made.date, kind: made.kind, about: links } : { by: 'links', links };
        });
        for (const of of [source, weeks]) frame.addRows(of, 6);
        labelled?.forEach((label, slot) => {
          frame.ownTable(source).setLabel(slot, label);
        });
        frame.addRows(table, rows.length);
        for (const [slot, one] of rows.entries()) {
          frame.write(bed, slot, one.bed, FILLED);
          frame.write(week, slot, one.week, FILLED);
          frame.write(date, slot, one.day, FILLED);
          frame.write(kind, slot, one.kind, FILLED);
          frame.setLive(table, slot, one.alive);
        }
        const living = rows.flatMap(({ alive }, slot) => (alive ? [slot] : []));
        expect([...frame.rows(table)]).toEqual(living.sort(frame.compare(table)));
      }),
    );
  });
});

describe('slots', () => {
  test('of rows that died are taken again only once they are released, and never one that lives', () => {
    const rows = new TableRows();
    rows.grow(3);
    for (const slot of [0, 1, 2]) rows.setLive(slot, true);
    expect(rows.takeSlot()).toBe(3);
    rows.setLive(1, false);
    expect(rows.takeSlot()).toBe(3);
    rows.releaseSlots();
    expect(rows.takeSlot()).toBe(1);
    expect(rows.takeSlot()).toBe(3);
    rows.setLive(2, false);
    rows.setLive(2, true);
    rows.releaseSlots();
    expect(rows.takeSlot()).toBe(3);
  });

  test('a row that died twice leaves its slot to one other', () => {
    const rows = new TableRows();
    rows.grow(1);
    rows.setLive(0, true);
    rows.setLive(0, false);
    rows.setLive(0, true);
    rows.setLive(0, false);
    rows.releaseSlots();
    expect(rows.takeSlot()).toBe(0);
    rows.setLive(0, true);
    expect(rows.takeSlot()).toBe(1);
    // And is not taken before it is released again.
    rows.setLive(0, false);
    expect(rows.takeSlot()).toBe(1);
    rows.releaseSlots();
    expect(rows.takeSlot()).toBe(0);
  });

  test('of a row that came back by itself is no one else’s', () => {
    const rows = new TableRows();
    rows.grow(2);
    for (const slot of [0, 1]) rows.setLive(slot, true);
    rows.setLive(0, false);
    rows.releaseSlots();
    rows.setLive(0, true);
    expect(rows.takeSlot()).toBe(2);
  });

  test('are counted while they live; saying the same again changes nothing', () => {
    const rows = new TableRows();
    rows.grow(20);
    expect([rows.length, rows.liveCount]).toEqual([20, 0]);
    const { stamp } = rows;
    expect(rows.setLive(12, true)).toBe(true);
    expect(rows.stamp).not.toBe(stamp);
    const alive = rows.stamp;
    expect(rows.setLive(12, true)).toBe(false);
    expect([rows.liveCount, rows.stamp]).toEqual([1, alive]);
    rows.grow(5);
    expect(rows.length).toBe(20);
    rows.reordered();
    expect(rows.stamp).not.toBe(alive);
  });

  test('keep their labels while the table grows', () => {
    const rows = new TableRows();
    rows.grow(2);
    rows.setLabel(1, -4);
    expect([...(rows.labels ?? [])].slice(0, 2)).toEqual([0, -4]);
    rows.grow(100);
    rows.setLabel(99, 7);
    expect([rows.labels?.[0], rows.labels?.[1], rows.labels?.[99]]).toEqual([0, -4, 7]);
    expect(rows.bytes()).toBeGreaterThanOrEqual(100 * 9);
  });
});

/** Whole and near one another, spread about, crowded about one value with others far off, mostly the same few, and of any size. */
const keys = fc.oneof(
  fc.array(fc.integer({ min: -50, max: 50 }), { maxLength: 300 }),
  fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { maxLength: 300 }),
  fc.array(fc.oneof(fc.double({ min: 0, max: 1e-3, noNaN: true }), fc.constantFrom(0.5, 1e9)), { maxLength: 300 }),
  fc.array(fc.oneof(fc.constantFrom(0.25, 0.5, 0.75), fc.double({ min: 0, max: 1, noNaN: true })), { maxLength: 300 }),
  fc.array(fc.double({ noNaN: true }), { maxLength: 100 }),
);

test('slots stand by rising key, those of equal keys as they stood', () => {
  fc.assert(
    fc.property(keys, (given) => {
      const slots = Int32Array.from(given, (_, at) => 1000 - at);
      const stable = Array.from(given, (key, at) => ({ key, slot: 1000 - at })).sort((a, b) =>
        a.key < b.key ? -1 : a.key > b.key ? 1 : 0,
      );
      expect(Array.from(rowsByKeys(slots, Float64Array.from(given)))).toEqual(stable.map(({ slot }) => slot));
    }),
    { numRuns: 500 },
  );
});
