// Indexes of a table's rows, by key and sorted within their groups: kept row by row against ones made from scratch.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Frame, FrameState } from '../../engine/calculation/frame.ts';
import { GroupIndex, type KeyColumn } from '../../engine/calculation/indexes/group-index.ts';
import {
  type RangeCondition,
  RangedRows,
  type RangeOf,
  SeenRows,
} from '../../engine/calculation/indexes/ranged-rows.ts';
import { type ColumnDef, Layout, type TableDef } from '../../engine/calculation/layout.ts';
import { RowSet } from '../../engine/calculation/row-set.ts';
import { BLANK, FILLED } from '../../engine/values/column.ts';
import { emptyFrame, rowsOf, told } from './frames.ts';

/** A table with key columns, and an index of its rows by them. */
function grouped(keys: readonly Omit<KeyColumn, 'column'>[], leftOutToo = false) {
  const layout = new Layout();
  const table = layout.addTable('t');
  const columns = keys.map(({ text }, k) => layout.addColumn(table, `k${k}`, text));
  const grouping = { table, keys: columns.map((column, k) => ({ column, text: keys[k]?.text === true })), leftOutToo };
  const frame = emptyFrame(layout);
  const made = (): GroupIndex => {
    const index = new GroupIndex(grouping, frame.token);
    index.fromScratch(frame);
    return index;
  };
  return { table, columns, frame, made };
}

function grouping(index: GroupIndex, values: readonly number[]): readonly (readonly number[])[] {
  return values.map((value) => {
    const { rows, from, count } = index.members(index.findOne(value));
    return [...rows.subarray(from, from + count)];
  });
}

const VALUES = [0, 1, 2, 3, 4, 5];

describe('a group index kept row by row equals one made from scratch', () => {
  const change = fc.tuple(fc.nat({ max: 45 }), fc.integer({ min: -1, max: 5 }), fc.boolean());

  /** Gives one row its key and its life. */
  function put(frame: Frame, table: TableDef, key: ColumnDef, [row, value, alive]: [number, number, boolean]): void {
    frame.setLive(table, row, alive);
    if (alive) frame.write(key, row, Math.max(0, value), value < 0 ? BLANK : FILLED);
  }

  test('after any changes of keys and rows, told one by one', () => {
    fc.assert(
      fc.property(fc.array(change, { maxLength: 80 }), (changes) => {
        const { table, columns, frame, made } = grouped([{ text: false }]);
        const [key] = columns;
        if (key === undefined) throw new Error('no key');
        const kept = made();
        const touched = new RowSet();
        for (const one of changes) {
          put(frame, table, key, one);
          kept.update(frame, rowsOf(one[0]), touched);
        }
        expect(grouping(kept, VALUES)).toEqual(grouping(made(), VALUES));
      }),
    );
  });

  test.each([12, 90])('after any changes of keys, rows and their order, told up to %i at a time', (most) => {
    const places = fc.array(fc.tuple(change, fc.option(fc.nat({ max: 9 }))), { minLength: most - 12, maxLength: most });
    fc.assert(
      fc.property(fc.array(places, { maxLength: 12 }), (batches) => {
        const { table, columns, frame, made } = grouped([{ text: false }]);
        const [key] = columns;
        if (key === undefined) throw new Error('no key');
        const kept = made();
        const touched = new RowSet();
        for (const batch of batches) {
          for (const [one, label] of batch) {
            put(frame, table, key, one);
            if (label !== null) frame.ownTable(table).setLabel(one[0], label);
          }
          frame.ownTable(table).reordered();
          kept.update(frame, rowsOf(...batch.map(([[row]]) => row)), touched);
        }
        expect(grouping(kept, VALUES)).toEqual(grouping(made(), VALUES));
      }),
    );
  });

  test('the groups a row left and joined are both told', () => {
    const { table, columns, frame, made } = grouped([{ text: false }]);
    const [key] = columns;
    if (key === undefined) throw new Error('no key');
    put(frame, table, key, [0, 1, true]);
    const index = made();
    const touched = new RowSet();
    index.update(frame, rowsOf(0), touched);
    expect(touched.empty).toBe(true);
    frame.write(key, 0, 2, FILLED);
    index.update(frame, rowsOf(0), touched);
    expect([...touched.sorted()]).toEqual([index.findOne(1), index.findOne(2)]);
    expect(index.keyValue(index.findOne(2), 0)).toBe(2);
  });

  test('the group of a row that moved in the order of the table is told, as its rows stand otherwise now', () => {
    const { table, columns, frame, made } = grouped([{ text: false }]);
    const [key] = columns;
    if (key === undefined) throw new Error('no key');
    for (const row of [0, 1, 2]) put(frame, table, key, [row, 4, true]);
    frame.ownTable(table).setLabel(0, 0);
    const index = made();
    frame.ownTable(table).setLabel(0, 10);
    frame.ownTable(table).reordered();
    const touched = new RowSet();
    index.update(frame, rowsOf(0), touched);
    expect(told(touched)).toBe(String(index.findOne(4)));
    expect(grouping(index, [4])).toEqual([[1, 2, 0]]);
  });

  test('texts are grouped ignoring case; several columns make one key', () => {
    const { table, columns, frame, made } = grouped([{ text: true }, { text: false }]);
    const [name, size] = columns;
    if (name === undefined || size === undefined) throw new Error('no keys');
    ['Red', 'RED', 'blue'].forEach((text, row) => {
      frame.setLive(table, row, true);
      frame.write(name, row, frame.texts.code(text), FILLED);
      frame.write(size, row, 1, FILLED);
    });
    const index = made();
    expect(index.members(index.find([frame.texts.foldOf('red'), 1])).count).toBe(2);
    expect(index.find([frame.texts.foldOf('red'), 2])).toBe(-1);
  });

  test('rows that the condition on their sheet leaves out are in no group, unless the way back along links is looked for', () => {
    for (const leftOutToo of [false, true]) {
      const { table, columns, frame, made } = grouped([{ text: false }, { text: false }], leftOutToo);
      const [key, shown] = columns;
      table.shown = shown;
      if (key === undefined || shown === undefined) throw new Error('no keys');
      for (const row of [0, 1]) {
        put(frame, table, key, [row, 4, true]);
        frame.write(shown, row, row, FILLED);
      }
      expect(made().find([4, 0])).toBe(leftOutToo ? 0 : -1);
      expect(made().find([4, 1])).toBe(leftOutToo ? 1 : 0);
    }
  });
});

describe('rows sorted within their groups', () => {
  /** Sales of crops by day and boxes, from which rows of another table ask for days before and boxes above. */
  function setting() {
    const layout = new Layout();
    const table = layout.addTable('sales');
    const crop = layout.addColumn(table, 'crop', false);
    const [day, boxes] = [layout.addColumn(table, 'day', false), layout.addColumn(table, 'boxes', false)];
    const wanted = layout.addColumn(layout.addTable('asking'), 'wanted', false);
    const keys = [{ column: crop, text: false }];
    const index = new FrameState(0, (owner) => new GroupIndex({ table, keys, leftOutToo: false }, owner));
    const conditions: readonly RangeCondition[] = [
      { column: day, comparison: '<', wanted },
      { column: boxes, comparison: '>=', wanted },
    ];
    const filters = [{ column: boxes, meets: (value: number) => value !== 2 }];
    const of: RangeOf = { table, index, filters, conditions, sortedBy: day, values: [] };
    const frame = emptyFrame(layout);
    const fresh = (): RangedRows => {
      const rows = new RangedRows(of, frame.token);
      rows.fromScratch(frame);
      return rows;
    };
    index.own(frame).fromScratch(frame);
    return { table, crop, day, boxes, of, index, frame, fresh };
  }

  function shown(rows: RangedRows, groups: number): readonly string[] {
    return Array.from({ length: groups }, (_, group) => {
      const { rows: slots, values, from, count } = rows.group(group);
      return [...slots.subarray(from, from + count)].map((row, i) => `${row}@${values[from + i]}`).join(' ');
    });
  }

  test('stand by value, equal ones in the order of the table; blanks and what a filter leaves out are not there', () => {
    const { table, crop, day, boxes, index, frame, fresh } = setting();
    const sales = [
      [1, 5, 9],
      [1, 3, 9],
      [2, 4, 9],
      [1, 3, 9],
      [1, 1, 2],
    ];
    frame.addRows(table, 6);
    for (const [row, [of = 0, on = 0, count = 0]] of sales.entries()) {
      frame.write(crop, row, of, FILLED);
      frame.write(day, row, on, FILLED);
      frame.write(boxes, row, count, FILLED);
    }
    // Without a day it is before none.
    frame.write(crop, 5, 1, FILLED);
    frame.write(boxes, 5, 9, FILLED);
    index.own(frame).fromScratch(frame);
    expect(shown(fresh(), 2)).toEqual(['1@3 3@3 0@5', '2@4']);
    frame.ownTable(table).setLabel(1, 50);
    frame.ownTable(table).reordered();
    expect(shown(fresh(), 2)).toEqual(['3@3 1@3 0@5', '2@4']);
  });

  test.each([
    { told: 'a few at a time', last: 9, least: 0, most: 6, batches: 25 },
    { told: 'many at a time', last: 59, least: 60, most: 120, batches: 6 },
  ])(
    'kept $told equal ones sorted from scratch, and tell each row that is not as it was, as it was and as it is',
    ({ last, least, most, batches: mostBatches }) => {
      // Mostly alike, so that many rows of a group stand by their labels alone.
      const change = fc.record({
        row: fc.nat({ max: last }),
        alive: fc.constantFrom(true, true, true, true, false),
        cells: fc.tuple(
          fc.constantFrom(0, 0, 0, 1),
          fc.constantFrom(0, 0, 0, 1, -1),
          fc.constantFrom(3, 3, 3, 1, 2, -1),
        ),
        label: fc.option(fc.nat({ max: 20 })),
      });
      fc.assert(
        fc.property(
          fc.array(fc.array(change, { minLength: least, maxLength: most }), { maxLength: mostBatches }),
          (batches) => {
            const { table, crop, day, boxes, of, index, frame, fresh } = setting();
            const kept = fresh();
            const asSeen = (): Map<number, string> => {
              const seen = new Map<number, string>();
              for (const row of frame.rows(table)) {
                const group = index.read(frame).groupOf[row] ?? -1;
                const cells = [day, boxes].map((column) => frame.column(column));
                const filled = cells.every(({ states }) => states[row] === FILLED) && cells[1]?.values[row] !== 2;
                if (group >= 0 && filled)
                  seen.set(row, `${group}: ${cells.map(({ values }) => values[row]).join(' ')}`);
              }
              return seen;
            };
            for (const batch of batches) {
              const before = asSeen();
              for (const { row, alive, cells, label } of batch) {
                frame.setLive(table, row, alive);
                if (alive) {
                  [crop, day, boxes].forEach((column, k) => {
                    const value = cells[k] ?? 0;
                    frame.write(column, row, Math.max(0, value), value < 0 ? BLANK : FILLED);
                  });
                }
                if (label !== null) frame.ownTable(table).setLabel(row, label);
              }
              frame.ownTable(table).reordered();
              const rows = rowsOf(...batch.map(({ row }) => row));
              index.own(frame).update(frame, rows, new RowSet());
              const heard = new SeenRows(of);
              kept.update(frame, rows, heard);
              const groups = index.read(frame).groupCount;
              expect(shown(kept, groups)).toEqual(shown(fresh(), groups));
              const after = asSeen();
              const said = Array.from({ length: heard.count }, (_, at) => {
                return `${heard.group(at)}: ${heard.cell(at, 0)} ${heard.cell(at, 1)}`;
              });
              expect(new Set(said).size).toBe(said.length);
              for (let i = 0; i < rows.count; i++) {
                const row = rows.at(i);
                if (before.get(row) === after.get(row)) continue;
                for (const state of [before.get(row), after.get(row)])
                  if (state !== undefined) expect(said).toContain(state);
              }
            }
          },
        ),
      );
    },
  );
});
