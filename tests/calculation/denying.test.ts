// NOT and whether a cell is blank: numbers, blanks, faults and one value for all rows, and batches of which some rows are filled.

import { expect, test } from 'vitest';
import { blanknessKernel, denyKernel } from '../../engine/calculation/kernels/denying-kernels.ts';
import { isError, type Scalar } from '../../engine/values/error.ts';
import { opened } from '../book.ts';
import { besideFarm, computed, entered, plain, sheet } from '../workbook/small.ts';
import { always, given, rows, said } from './kernel-rows.ts';

/** Errors by their kind: each says in which column it began. */
const kindOf = (value: Scalar): unknown => (isError(value) ? value.error : value);

test('what holds is denied, a blank stays blank and a fault its fault', () => {
  expect(given(denyKernel(rows('1 0 - !3 0')), 5)).toBe('0 1 - !3 1');
  expect(given(denyKernel(rows('0 1')), 2)).toBe('1 0');
  expect(given(denyKernel(always('1')), 2)).toBe('0 0');
  expect(given(denyKernel(always('-')), 2)).toBe('- -');
});

test('blanks are told from all else, and the other way round', () => {
  expect(given(blanknessKernel(rows('1 - !3')), 3)).toBe('0 1 0');
  expect(given(blanknessKernel(rows('1 - !3'), true), 3)).toBe('1 0 1');
  expect(given(blanknessKernel(rows('1 0'), true), 2)).toBe('1 1');
  expect(said(blanknessKernel(rows('1 0'), true), 2)).toEqual({ clean: true, uniform: true });
  expect(given(blanknessKernel(always('-'), true), 2)).toBe('0 0');
});

test('a formula that denies gives what asking the other way round gives, errors too', () => {
  const asked = [
    ['Is there', 'NOT(ISBLANK([Amount]))', 'IF(ISBLANK([Amount]); FALSE; TRUE)'],
    ['Is not large', 'NOT([Amount] > 2)', '[Amount] <= 2'],
    ['Shares at all', 'NOT(ISBLANK(6 / [Amount]))', 'IF(ISBLANK(6 / [Amount]); FALSE; TRUE)'],
    ['Shares few', 'NOT(6 / [Amount] > 2)', '6 / [Amount] <= 2'],
  ] as const;
  const columns = asked.flatMap(([name, formula, same]) => [
    computed(name, { type: 'yesno' }, formula),
    computed(`${name}, again`, { type: 'yesno' }, same),
  ]);
  const amounts = [1, 0, undefined, 2, 7];
  const book = opened(
    besideFarm(
      [sheet('Work', { columns: [entered('Name', { type: 'text' }), entered('Amount', plain), ...columns] })],
      {
        Work: amounts.map((amount, at) => ({ Name: `job ${at}`, ...(amount === undefined ? {} : { Amount: amount }) })),
      },
    ),
  );
  for (const [name] of asked) {
    const [told, again] = [name, `${name}, again`].map((column) =>
      amounts.map((_, row) => kindOf(book.value('Work', row, column))),
    );
    expect(told).toEqual(again);
  }
});
