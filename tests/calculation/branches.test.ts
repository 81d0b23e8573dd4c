// Branches of a frame: whatever is written in one never shows in the frame it came from, nor the other way. Random work on a
// growing family of branches, each compared with a frame of its own that only ever knew its own history.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Frame, FrameState } from '../../engine/calculation/frame.ts';
import { EventSlots } from '../../engine/calculation/generators/events.ts';
import { Pairs } from '../../engine/calculation/generators/pairs.ts';
import { GroupIndex } from '../../engine/calculation/indexes/group-index.ts';
import { RangedRows, SeenRows } from '../../engine/calculation/indexes/ranged-rows.ts';
import { type TotalOf, Totals } from '../../engine/calculation/indexes/totals.ts';
import { type ColumnDef, Layout } from '../../engine/calculation/layout.ts';
import { RowSet } from '../../engine/calculation/row-set.ts';
import { BLANK, FAULT, FILLED } from '../../engine/values/column.ts';
import { emptyFrame, rowsOf } from './frames.ts';

const ROWS = 6;
const VALUES = 9;

const layout = new Layout();
const beds = layout.addTable('beds');
const key = layout.addColumn(beds, 'key', false);
const length = layout.addColumn(beds, 'length', false);
const link = layout.addColumn(beds, 'link', true);
const paths = layout.addTable('paths');
const width = layout.addColumn(paths, 'width', false);
const COLUMNS: readonly ColumnDef[] = [key, length, link, width];

const grouping = { table: beds, keys: [{ column: key, text: false }], leftOutToo: false };
const index = new FrameState(0, (owner) => new GroupIndex(grouping, owner));
const totals = new FrameState(1, (owner) => new Totals(owner));
const pairs = new FrameState(2, (owner) => new Pairs(owner));
const events = new FrameState(3, (owner) => new EventSlots(owner));
const RANGE = {
  table: beds,
  index,
  filters: [],
  conditions: [{ column: length, comparison: '<', wanted: width } as const],
  sortedBy: length,
  values: [],
};
const ranged = new FrameState(4, (owner) => new RangedRows(RANGE, owner));
const TOTAL: TotalOf = {
  index,
  column: length,
  filters: [],
  fold: {
    takes: 'numbers',
    undefinedMeans: 'blank',
    fold: (values, count) => values.subarray(0, count).reduce((sum, one) => sum + one, 0),
  },
};

/** One piece of work on a frame. */
type Work = (frame: Frame) => void;

/** Keeps groups, totals and sorted rows current after a change of a row, as their nodes do. */
function keep(frame: Frame, row: number): void {
  const touched = new RowSet();
  const groups = index.own(frame);
  if (groups.built) groups.update(frame, rowsOf(row), touched);
  else groups.fromScratch(frame);
  const sorted = ranged.own(frame);
  if (sorted.built) sorted.update(frame, rowsOf(row), new SeenRows(RANGE));
  else sorted.fromScratch(frame);
  const sums = totals.own(frame);
  sums.ready(TOTAL, frame);
  for (let group = 0; group < groups.groupCount; group++) sums.refresh(TOTAL, group, frame);
}

const row = fc.nat({ max: ROWS - 1 });

/** Mostly few values, so that groups have several rows; now and then one that no row has had. */
const value = fc.oneof(
  { weight: 3, arbitrary: fc.nat({ max: 1 }) },
  { weight: 1, arbitrary: fc.nat({ max: VALUES - 1 }) },
);

function cell(column: ColumnDef): fc.Arbitrary<Work> {
  return fc.tuple(row, value, fc.constantFrom(FILLED, FILLED, BLANK, FAULT)).map(([at, given, state]) => (frame) => {
    if (frame.table(column.table).live[at] !== 1) return;
    frame.write(column, at, given, state);
    if (column.table === beds) keep(frame, at);
  });
}

const works: fc.Arbitrary<Work> = fc.oneof(
  { weight: 5, arbitrary: fc.oneof(...COLUMNS.map(cell)) },
  fc.tuple(fc.constantFrom(beds, paths), row, fc.boolean()).map(
    ([table, at, alive]): Work =>
      (frame) => {
        frame.setLive(table, at, alive);
        if (table === beds) keep(frame, at);
      },
  ),
  fc.tuple(fc.constantFrom(beds, paths), fc.boolean()).map(
    ([table, released]): Work =>
      (frame) => {
        if (released) frame.releaseSlots();
        const slot = frame.ownTable(table).takeSlot();
        frame.setLive(table, slot, true);
        if (table === beds) keep(frame, slot);
      },
  ),
  fc.tuple(row, fc.nat({ max: 9 })).map(
    ([at, label]): Work =>
      (frame) => {
        if (frame.table(beds).length <= at) return;
        const rows = frame.ownTable(beds);
        rows.setLabel(at, label);
        rows.reordered();
        keep(frame, at);
      },
  ),
  fc.constant<Work>((frame) => {
    frame.ownTable(beds).labels = undefined;
    frame.ownTable(beds).reordered();
    index.own(frame).fromScratch(frame);
    ranged.own(frame).fromScratch(frame);
    keep(frame, 0);
  }),
  fc.tuple(fc.constantFrom(...COLUMNS), row, fc.boolean()).map(
    ([column, at, over]): Work =>
      (frame) => {
        const typed = frame.ownTyped(column);
        if (over) typed.over.add(at);
        else typed.forget(at);
      },
  ),
  fc.tuple(fc.constantFrom(...COLUMNS), row, fc.nat({ max: 3 })).map(
    ([column, at, unit]): Work =>
      (frame) => {
        frame.ownTyped(column).setUnit(at, unit);
      },
  ),
  fc.tuple(row, fc.dictionary(fc.constantFrom('0', '1', '2'), fc.nat({ max: 9 }))).map(
    ([at, partners]): Work =>
      (frame) => {
        pairs.own(frame).byRow[at] = {
          partners: Int32Array.from(Object.keys(partners), Number),
          slots: Int32Array.from(Object.values(partners)),
        };
      },
  ),
  fc.tuple(fc.nat({ max: 2 }), row, fc.integer({ min: -1, max: 9 })).map(
    ([kind, at, slot]): Work =>
      (frame) => {
        events.own(frame).put(kind, at, slot);
      },
  ),
  fc.nat({ max: 9 }).map(
    (today): Work =>
      (frame) => {
        frame.today = today;
      },
  ),
  fc.constant<Work>((frame) => frame.releaseSlots()),
);

/** What the sorted rows were last seen with, as looking at all of them again tells. */
function seenOf(frame: Frame): unknown {
  const probe = frame.branch();
  const seen = new SeenRows(RANGE);
  ranged.own(probe).update(probe, rowsOf(...frame.rows(beds)), seen);
  return Array.from({ length: seen.count }, (_, at) => [seen.group(at), seen.cell(at, 0), seen.cell(at, 1)]);
}

/** Everything that a frame holds, as plain data. */
function held(frame: Frame): unknown {
  const members = (group: number): readonly number[] => {
    const { rows, from, count } = index.read(frame).members(group);
    return [...rows.subarray(from, from + count)];
  };
  const groups = Array.from({ length: index.read(frame).groupCount }, (_, group) => group);
  const sums = totals.read(frame).cells;
  const all = Array.from({ length: ROWS + 3 }, (_, at) => at);
  return {
    today: frame.today,
    tables: layout.tables.map((table) => {
      const { length: slots, live, liveCount, labels } = frame.table(table);
      const taken = frame.branch().ownTable(table).takeSlot();
      return {
        live: [...live.subarray(0, slots)],
        liveCount,
        labels: labels === undefined ? undefined : [...labels.subarray(0, slots)],
        rows: [...frame.rows(table)],
        taken,
      };
    }),
    columns: layout.columns.map((column) => {
      const { values, states, exceptions, length: slots } = frame.column(column);
      const typed = frame.typed[column.number];
      return {
        values: [...values.subarray(0, slots)],
        states: [...states.subarray(0, slots)],
        exceptions,
        over: [...(typed?.over ?? [])].sort(),
        units: all.map((at) => typed?.unitNumber(at) ?? 0),
      };
    }),
    groups: groups.map((group) => [index.read(frame).keyValue(group, 0), ...members(group)]),
    sorted: groups.map((group) => {
      const { rows, values, from, count } = ranged.read(frame).group(group);
      return [...rows.subarray(from, from + count)].map((at, i) => [at, values[from + i]]);
    }),
    seen: seenOf(frame),
    groupOf: all.map((at) => index.read(frame).groupOf[at] ?? -1),
    found: Array.from({ length: VALUES }, (_, value) => index.read(frame).findOne(value)),
    sums: groups.map((group) => [sums.values[group] ?? 0, sums.states[group] ?? BLANK]),
    pairs: all.map((at) => pairs.read(frame).byRow[at]),
    events: [0, 1, 2].map((kind) => all.map((at) => events.read(frame).slot(kind, at))),
  };
}

interface Line {
  readonly frame: Frame;
  readonly history: readonly Work[];
}

/** Works on the frame of one line, or begins a new line as its branch. */
type Step = { readonly line: number; readonly work: Work | 'branch' };

const steps: fc.Arbitrary<Step> = fc.record({
  line: fc.nat({ max: 20 }),
  work: fc.oneof({ weight: 12, arbitrary: works }, { weight: 1, arbitrary: fc.constant('branch' as const) }),
});

function replayed(history: readonly Work[]): Frame {
  const frame = emptyFrame(layout);
  for (const table of layout.tables) frame.addRows(table, ROWS);
  for (let at = 0; at < ROWS; at++) {
    frame.write(key, at, at % 2, FILLED);
    frame.write(length, at, at % 3, FILLED);
  }
  keep(frame, 0);
  for (const work of history) work(frame);
  return frame;
}

const release: Work = (frame) => frame.releaseSlots();

/** Branches are taken of frames that are up to date. */
function branched(lines: Line[], at: number): void {
  const line = lines[at];
  if (line === undefined) return;
  release(line.frame);
  const history = [...line.history, release];
  lines[at] = { frame: line.frame, history };
  lines.push({ frame: line.frame.branch(), history });
}

test('whatever is done in any of them, every branch holds what it would have held alone', () => {
  fc.assert(
    fc.property(
      fc.array(works, { maxLength: 15 }),
      fc.array(steps, { minLength: 10, maxLength: 80 }),
      (before, sequence) => {
        const lines: Line[] = [{ frame: replayed(before), history: before }];
        branched(lines, 0);
        for (const { line, work } of sequence) {
          const at = line % lines.length;
          const chosen = lines[at];
          if (chosen === undefined) continue;
          if (work === 'branch') branched(lines, at);
          else {
            work(chosen.frame);
            lines[at] = { frame: chosen.frame, history: [...chosen.history, work] };
          }
        }
        for (const { frame, history } of lines) expect(held(frame)).toEqual(held(replayed(history)));
      },
    ),
    { numRuns: 300 },
  );
});

describe('a branch', () => {
  function farm(): Frame {
    const frame = emptyFrame(layout);
    frame.addRows(beds, 3);
    for (const at of [0, 1, 2]) {
      frame.write(key, at, 1, FILLED);
      frame.write(length, at, 10 * (at + 1), FILLED);
    }
    keep(frame, 0);
    return frame;
  }

  test('shares all storage until one of the two writes it, and then only that piece is copied', () => {
    const frame = farm();
    const branch = frame.branch();
    expect(layout.columns.every((column) => branch.column(column) === frame.column(column))).toBe(true);
    expect(layout.tables.every((table) => branch.table(table) === frame.table(table))).toBe(true);
    expect(index.read(branch)).toBe(index.read(frame));
    const before = frame.column(length);
    expect(branch.write(length, 0, 10, FILLED)).toBe(false);
    expect(branch.column(length)).toBe(before);
    expect(branch.write(length, 0, 11, FILLED)).toBe(true);
    expect(branch.column(length)).not.toBe(before);
    expect(frame.column(length)).toBe(before);
    expect(branch.column(key)).toBe(frame.column(key));
    expect([frame.column(length).values[0], branch.column(length).values[0]]).toEqual([10, 11]);
  });

  test('leaves the frame it came from its own to write, which copies too', () => {
    const frame = farm();
    const branch = frame.branch();
    frame.write(length, 0, 12, FILLED);
    expect([frame.column(length).values[0], branch.column(length).values[0]]).toEqual([12, 10]);
    const own = frame.column(length);
    frame.write(length, 1, 13, FILLED);
    expect(frame.column(length)).toBe(own);
    expect(branch.column(length).values[1]).toBe(20);
  });

  test('copies of an index only the groups whose rows change', () => {
    const frame = farm();
    const branch = frame.branch();
    branch.write(key, 1, 2, FILLED);
    keep(branch, 1);
    const members = (of: Frame, value: number): readonly number[] => {
      const { rows, from, count } = index.read(of).members(index.read(of).findOne(value));
      return [...rows.subarray(from, from + count)];
    };
    expect([members(frame, 1), members(frame, 2)]).toEqual([[0, 1, 2], []]);
    expect([members(branch, 1), members(branch, 2)]).toEqual([[0, 2], [1]]);
    // 10 + 20 + 30 and, without the second, 10 + 30.
    const sums = (of: Frame): readonly number[] => [...totals.read(of).cells.values.subarray(0, 2)];
    expect([sums(frame)[0], sums(branch)]).toEqual([60, [40, 20]]);
  });

  test('that is given up gives the frame back what was its own', () => {
    const frame = farm();
    const { token } = frame;
    const own = frame.column(length);
    frame.branch().write(length, 0, 99, FILLED);
    frame.token = token;
    frame.write(length, 0, 7, FILLED);
    expect(frame.column(length)).toBe(own);
    expect(own.values[0]).toBe(7);
  });
});
