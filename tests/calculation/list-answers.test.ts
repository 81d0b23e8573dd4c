// Answers of a few cells one below the other are found again by what the cells hold, whichever rows they are of.

import { expect, test } from 'vitest';
import { ListAnswers } from '../../engine/calculation/plans/list-answers.ts';
import { BLANK, Column, FILLED } from '../../engine/values/column.ts';

const column = new Column(true);
[11, 12, 11, 12, 0, 11, 12, 13, 14, 15].forEach((value, row) => {
  column.grow(row + 1);
  column.write(row, value, row === 4 ? BLANK : FILLED);
});
const KEPT = { value: 99, state: FILLED };

/** What is known of some rows once the first two were answered, in batches of so many reading rows. */
function known(rows: readonly number[], batch = 32): number | undefined {
  const lists = new ListAnswers();
  const into = { value: 0, state: FILLED };
  lists.expect(batch);
  expect(lists.answered(Int32Array.of(0, 1), 2, column, into)).toBe(false);
  lists.keep(KEPT);
  return lists.answered(Int32Array.from(rows), rows.length, column, into) ? into.value : undefined;
}

test('the same cells of other rows are known', () => {
  expect(known([2, 3])).toBe(99);
});

test.each([[[1, 0]], [[0]], [[0, 4]], [[0, 1, 4]], [[0, 7]]])('rows %j hold something else', (rows) => {
  expect(known(rows)).toBeUndefined();
});

test('a list longer than those that are remembered is never known, nor is it kept', () => {
  const lists = new ListAnswers();
  const into = { value: 0, state: FILLED };
  const rows = Int32Array.of(0, 1, 5, 6, 7, 8, 9);
  lists.expect(32);
  for (let time = 0; time < 2; time++) {
    expect(lists.answered(rows, rows.length, column, into)).toBe(false);
    lists.keep(KEPT);
  }
});

test.each([
  [100_000, 1500, true],
  [200, 3000, false],
  [32, 1500, false],
])('of a sheet of %i rows that asks for %i lists again and again most are known: %s', (among, lists, isKnown) => {
  const answers = new ListAnswers();
  const into = { value: 0, state: FILLED };
  const cells = new Column(false);
  cells.grow(lists);
  for (let row = 0; row < lists; row++) cells.write(row, row, FILLED);
  let found = 0;
  for (let time = 0; time < 12; time++) {
    found = 0;
    for (let row = 0; row < lists; row++) {
      if (row % 500 === 0) answers.expect(500, among);
      if (answers.answered(Int32Array.of(row), 1, cells, into)) found += into.value === row ? 1 : Number.NaN;
      else answers.keep({ value: row, state: FILLED });
    }
  }
  expect([found > lists * 0.75, found < lists * 0.25]).toEqual([isKnown, !isKnown]);
});

test('nothing is remembered where only a few rows ask', () => {
  expect(known([2, 3], 4)).toBeUndefined();
});
