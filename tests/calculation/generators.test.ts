// Rows that follow from other data: one for each row, one for each day, week or month; and what people typed on such rows.
import { describe, expect, test } from 'vitest';
import { eachRow } from '../../engine/calculation/generators/each.ts';
import { spanRows } from '../../engine/calculation/generators/span.ts';
import { Source } from '../../engine/calculation/graph/graph.ts';
import { Layout, type TableDef } from '../../engine/calculation/layout.ts';
import { isoDate } from '../../engine/values/civil.ts';
import { BLANK, FAULT, FILLED } from '../../engine/values/column.ts';
import { listed, rowsOf, told } from './frames.ts';
import { made, working } from './generating.ts';

describe('one row for each row', () => {
  function setting() {
    const layout = new Layout();
    const source = layout.addTable('varieties');
    const table = layout.addTable('order');
    const link = layout.addColumn(table, 'variety', true);
    table.order = { by: 'table', table: source };
    const work = working(layout, eachRow(table, link, source));
    work.frame.addRows(source, 3);
    return { source, table, link, ...work };
  }

  test('has the source row’s slot, comes and goes with it, and tells rows that stay where the source row was told', () => {
    const { source, table, link, frame, make } = setting();
    expect(make()).toBe('0 1 2');
    expect(listed(frame, table, link)).toBe('0:0 1:1 2:2');
    frame.setLive(source, 1, false);
    frame.addRows(source, 1);
    expect(make(rowsOf(1, 2, 3))).toBe('1 2 3');
    expect(listed(frame, table, link)).toBe('0:0 2:2 3:3');
    const { stamp } = frame.table(table);
    expect(make()).toBe('0 2 3');
    expect(listed(frame, table, link)).toBe('0:0 2:2 3:3');
    expect(frame.table(table).stamp).toBe(stamp);
    frame.setLive(source, 0, false);
    frame.setLive(source, 1, true);
    expect(make(rowsOf(1))).toBe('1');
    expect(listed(frame, table, link)).toBe('0:0 1:1 2:2 3:3');
    expect(make()).toBe('0 1 2 3');
    expect(listed(frame, table, link)).toBe('1:1 2:2 3:3');
  });

  test('rows that died before they were made are not made', () => {
    const { source, table, frame, make } = setting();
    frame.setLive(source, 2, false);
    expect(make(rowsOf(2))).toBe('');
    expect(frame.table(table).length).toBe(0);
  });

  test('stands in the order of the rows it was made from, whatever the slots', () => {
    const { source, table, frame, make } = setting();
    make();
    frame.ownTable(source).setLabel(0, 10);
    frame.ownTable(source).reordered();
    make(rowsOf(0));
    expect([...frame.rows(table)]).toEqual([1, 2, 0]);
  });

  test('rows left out by the condition on the source sheet are left out here', () => {
    const { source, table, link, frame, make } = setting();
    const layout = new Layout();
    const varieties = layout.addTable('varieties');
    varieties.shown = layout.addColumn(varieties, 'shown', false);
    const order = layout.addTable('order');
    const own = layout.addColumn(order, 'variety', true);
    const work = working(layout, eachRow(order, own, varieties));
    work.frame.addRows(varieties, 3);
    work.frame.write(varieties.shown, 0, 1, FILLED);
    work.frame.write(varieties.shown, 1, 0, FILLED);
    expect(work.make()).toBe('0');
    expect(listed(work.frame, order, own)).toBe('0:0');
    // Without a condition all three are there.
    make();
    expect(listed(frame, table, link)).toBe('0:0 1:1 2:2');
    expect([...frame.rows(source)]).toEqual([0, 1, 2]);
  });
});

describe('one row for each day, week or month', () => {
  function setting(step: 'day' | 'week' | 'month') {
    const layout = new Layout();
    const farm = layout.addTable('farm');
    const [first, last] = [layout.addColumn(farm, 'first', false), layout.addColumn(farm, 'last', false)];
    const table = layout.addTable('days');
    const date = layout.addColumn(table, 'date', false);
    const note = layout.addColumn(table, 'note', true);
    const noteSource = new Source(undefined);
    const work = working(layout, spanRows(table, date, first, last, step), new Map([[note, noteSource]]));
    work.frame.addRows(farm, 1);
    return { first, last, table, date, note, noteSource, ...work };
  }

  function dates(step: 'day' | 'week' | 'month', from: string, to: string): string[] {
    const { first, last, table, date, frame, make } = setting(step);
    const day = (text: string): number => Math.round(Date.parse(text) / 86_400_000);
    frame.write(first, 0, day(from), FILLED);
    frame.write(last, 0, day(to), FILLED);
    make();
    return [...frame.rows(table)].map((row) => isoDate(frame.column(date).values[row] ?? 0));
  }

  test.each([
    ['day', '2027-02-27', '2027-03-02', ['2027-02-27', '2027-02-28', '2027-03-01', '2027-03-02']],
    ['day', '2028-02-28', '2028-03-01', ['2028-02-28', '2028-02-29', '2028-03-01']],
    ['week', '2027-01-04', '2027-01-24', ['2027-01-04', '2027-01-11', '2027-01-18']],
    ['week', '2027-01-04', '2027-01-25', ['2027-01-04', '2027-01-11', '2027-01-18', '2027-01-25']],
    ['month', '2027-01-31', '2027-04-30', ['2027-01-31', '2027-02-28', '2027-03-31', '2027-04-30']],
    ['month', '2027-11-15', '2028-02-14', ['2027-11-15', '2027-12-15', '2028-01-15']],
    ['day', '2027-03-02', '2027-03-02', ['2027-03-02']],
    ['day', '2027-03-02', '2027-03-01', []],
  ] as const)('%s from %s to %s', (step, from, to, wanted) => {
    expect(dates(step, from, to)).toEqual(wanted);
  });

  test('a span of centuries is cut off at 4,000 rows', () => {
    expect(dates('day', '1900-01-01', '2027-01-01')).toHaveLength(4000);
  });

  test('moves with its ends, tells the rows that moved, and is empty while an end is blank or faulty', () => {
    const { first, last, table, date, frame, make } = setting('day');
    const between = (from: number, to: number, state = FILLED, fromState = FILLED): string => {
      frame.write(first, 0, from, fromState);
      frame.write(last, 0, to, state);
      const changed = make();
      frame.releaseSlots();
      return `${listed(frame, table, date)} changed ${changed}`;
    };
    expect(between(10, 12)).toBe('0:10 1:11 2:12 changed 0 1 2');
    expect(between(10, 11)).toBe('0:10 1:11 changed 2');
    expect(between(10, 13)).toBe('0:10 1:11 2:12 3:13 changed 2 3');
    expect(between(11, 13)).toBe('1:11 2:12 3:13 changed 0');
    // An earlier day comes before the others, whatever slot it has.
    expect(between(9, 12)).toBe('0:9 4:10 1:11 2:12 changed 0 3 4');
    expect(between(11, 12)).toBe('1:11 2:12 changed 0 4');
    expect(between(11, 13, BLANK)).toBe(' changed 1 2');
    expect(between(11, 13, FILLED, FAULT)).toBe(' changed ');
  });

  test('what is typed stays with its day when the first day moves', () => {
    const { first, last, note, frame, make } = setting('day');
    frame.write(first, 0, 10, FILLED);
    frame.write(last, 0, 12, FILLED);
    make();
    frame.write(note, 1, 5, FILLED);
    frame.ownTyped(note).setUnit(1, 3);
    frame.ownTyped(note).over.add(1);
    frame.write(last, 0, 14, FILLED);
    frame.write(first, 0, 11, FILLED);
    make();
    expect([...frame.column(note).states.subarray(1, 5)]).toEqual([FILLED, BLANK, BLANK, BLANK]);
    expect(frame.typed[note.number]?.isMarked(1)).toBe(true);
    frame.write(first, 0, 12, FILLED);
    make();
    expect(frame.typed[note.number]?.isMarked(1)).toBe(false);
  });

  test('a day that comes again gets what was typed of it, and readers hear of it', () => {
    const { first, last, table, date, note, noteSource, node, frame, make } = setting('day');
    const notes = new Map([[10, 1]]);
    frame.madeCells = {
      rowMade(of, row) {
        expect(of).toBe(table);
        const kept = notes.get(frame.column(date).values[row] ?? -1);
        if (kept === undefined) return [];
        frame.write(note, row, kept, FILLED);
        return [note];
      },
    };
    frame.write(first, 0, 11, FILLED);
    frame.write(last, 0, 13, FILLED);
    make();
    const heard: string[] = [];
    noteSource.edges.push({ to: node, propagate: (changed) => heard.push(told(changed)) });
    frame.write(first, 0, 10, FILLED);
    make();
    expect([...frame.rows(table)].map((row) => frame.column(date).values[row])).toEqual([10, 11, 12, 13]);
    expect(frame.column(note).states[3]).toBe(FILLED);
    expect(heard).toEqual(['3']);
  });
});

describe('what is typed on made rows', () => {
  /** An order sheet with a note for each variety, which someone keeps for rows that come back. */
  function setting(notes: ReadonlyMap<number, number>) {
    const layout = new Layout();
    const source = layout.addTable('varieties');
    const table = layout.addTable('order');
    const link = layout.addColumn(table, 'variety', true);
    const note = layout.addColumn(table, 'note', false);
    const noteSource = new Source(undefined);
    const work = working(layout, eachRow(table, link, source), new Map([[note, noteSource]]));
    const { frame } = work;
    const asked: number[] = [];
    frame.madeCells = {
      rowMade(of: TableDef, row) {
        expect(of).toBe(table);
        asked.push(row);
        const kept = notes.get(frame.column(link).values[row] ?? -1);
        if (kept === undefined) return [];
        frame.write(note, row, kept, FILLED);
        return [note];
      },
    };
    frame.addRows(source, 3);
    return { source, table, note, noteSource, asked, ...work };
  }

  test('is put back when the row comes to life, after its made columns are filled, and for no other row', () => {
    const { source, note, frame, make, asked } = setting(new Map([[1, 42]]));
    make();
    expect(asked).toEqual([0, 1, 2]);
    expect([...frame.column(note).states.subarray(0, 3)]).toEqual([BLANK, FILLED, BLANK]);
    expect(frame.column(note).values[1]).toBe(42);
    frame.setLive(source, 1, false);
    make(rowsOf(1));
    expect(frame.column(note).values[1]).toBe(0);
    frame.setLive(source, 1, true);
    make(rowsOf(0, 1));
    expect(asked).toEqual([0, 1, 2, 1]);
    expect(frame.column(note).values[1]).toBe(42);
  });

  test('is not put on a row that went again before the others were done', () => {
    const layout = new Layout();
    const table = layout.addTable('order');
    const { frame, make } = working(layout, {
      table,
      columns: [],
      inputs: [],
      generate(_frame, _dirty, rows) {
        rows.add(0);
        rows.add(1);
        rows.remove(0);
      },
    });
    const asked: number[] = [];
    frame.madeCells = {
      rowMade(_table, row) {
        asked.push(row);
        return [];
      },
    };
    expect(make()).toBe('0 1');
    expect(asked).toEqual([1]);
    expect([...frame.rows(table)]).toEqual([1]);
  });

  test('is told to those who read the column, which the rows’ own change does not reach', () => {
    const { noteSource, node, make } = setting(new Map([[2, 7]]));
    const heard: string[] = [];
    noteSource.edges.push({ to: node, propagate: (changed) => heard.push(told(changed)) });
    make();
    expect(heard).toEqual(['2']);
    make();
    expect(heard).toEqual(['2']);
  });

  test('is put back in the frame that is worked out alone', () => {
    const { source, note, frame, node, make } = setting(new Map([[1, 42]]));
    make();
    frame.setLive(source, 1, false);
    make(rowsOf(1));
    const branch = frame.branch();
    expect(branch.madeCells).toBeUndefined();
    branch.setLive(source, 1, true);
    made(branch, node, rowsOf(1));
    expect(branch.column(note).states[1]).toBe(BLANK);
    frame.setLive(source, 1, true);
    make(rowsOf(1));
    expect(frame.column(note).values[1]).toBe(42);
    expect(branch.column(note).states[1]).toBe(BLANK);
  });
});
