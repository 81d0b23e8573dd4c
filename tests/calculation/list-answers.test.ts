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

test('nothing is remembered where only a few rows ask', () => {
  expect(known([2, 3], 4)).toBeUndefined();
});
