// The least of a group is compared with the rows that changed: its rows are looked through only where the one that held it holds it no more.

import { expect, test } from 'vitest';
import { type Frame, FrameState } from '../../engine/calculation/frame.ts';
import { GroupIndex } from '../../engine/calculation/indexes/group-index.ts';
import { type TotalOf, Totals } from '../../engine/calculation/indexes/totals.ts';
import { Layout } from '../../engine/calculation/layout.ts';
import { RowSet } from '../../engine/calculation/row-set.ts';
import { BLANK, FILLED } from '../../engine/values/column.ts';
import { emptyFrame, rowsOf, told } from './frames.ts';

const layout = new Layout();
const jobs = layout.addTable('jobs');
const bed = layout.addColumn(jobs, 'bed', false);
const day = layout.addColumn(jobs, 'day', false);
const index = new FrameState(
  0,
  (owner) => new GroupIndex({ table: jobs, keys: [{ column: bed, text: false }], leftOutToo: false }, owner),
);
const totals = new FrameState(1, (owner) => new Totals(owner));
let folded = 0;
const FIRST_DAY: TotalOf = {
  index,
  column: day,
  filters: [],
  fold: {
    picks: 'least',
    takes: 'numbers',
    undefinedMeans: 'blank',
    fold: (values, count) => {
      folded++;
      return count === 0 ? Number.NaN : Math.min(...values.subarray(0, count));
    },
  },
};

/** Three jobs on bed 7, on days 3, 5 and 8, and one on bed 9. */
function begun(): Frame {
  const frame = emptyFrame(layout);
  frame.addRows(jobs, 4);
  [7, 7, 7, 9].forEach((value, row) => {
    frame.write(bed, row, value, FILLED);
  });
  [3, 5, 8, 1].forEach((value, row) => {
    frame.write(day, row, value, FILLED);
  });
  index.own(frame).fromScratch(frame);
  totals.own(frame).ready(FIRST_DAY, frame);
  totals.own(frame).refreshAll(FIRST_DAY, frame, new RowSet());
  return frame;
}

/** What is the first day on bed 7 once a row was changed, how often a group was looked through, and which beds heard. */
function after(row: number, change: (frame: Frame) => void): string {
  const frame = begun();
  change(frame);
  const [groups, changed] = [new RowSet(), new RowSet()];
  index.own(frame).update(frame, rowsOf(row), groups);
  const group = index.read(frame).groupOf[row] ?? -1;
  if (group >= 0) groups.add(group);
  folded = 0;
  totals.own(frame).ready(FIRST_DAY, frame);
  totals.own(frame).pickAgain(FIRST_DAY, groups, rowsOf(row), frame, changed);
  const seven = index.read(frame).findOne(7);
  const beds = told(changed)
    .split(' ')
    .filter(Boolean)
    .map((at) => index.read(frame).keyValue(Number(at), 0));
  return `day ${totals.read(frame).cells.values[seven]}, looked through ${folded}, heard ${beds.join(' and ')}`;
}

test.each<readonly [string, number, (frame: Frame) => void, string]>([
  ['a later job moves', 1, (frame) => frame.write(day, 1, 6, FILLED), 'day 3, looked through 0, heard '],
  ['a later job comes first', 2, (frame) => frame.write(day, 2, 1, FILLED), 'day 1, looked through 0, heard 7'],
  ['the first job comes sooner', 0, (frame) => frame.write(day, 0, 2, FILLED), 'day 2, looked through 0, heard 7'],
  ['the first job moves behind', 0, (frame) => frame.write(day, 0, 9, FILLED), 'day 5, looked through 1, heard 7'],
  ['the first job loses its day', 0, (frame) => frame.write(day, 0, 0, BLANK), 'day 5, looked through 1, heard 7'],
  ['the first job goes', 0, (frame) => frame.setLive(jobs, 0, false), 'day 5, looked through 1, heard 7'],
  ['a later job goes', 2, (frame) => frame.setLive(jobs, 2, false), 'day 3, looked through 0, heard '],
  [
    'a job comes from another bed',
    3,
    (frame) => frame.write(bed, 3, 7, FILLED),
    'day 1, looked through 1, heard 7 and 9',
  ],
])('%s', (_, row, change, expected) => {
  expect(after(row, change)).toBe(expected);
});
