// Kernels over batches: runs and lists of rows, one value for all, blanks and faults beside numbers.
import { describe, expect, test } from 'vitest';
import { compareKernel, ORDERS } from '../../engine/calculation/kernels/compare-kernels.ts';
import {
  linkedKernel,
  loadKernel,
  ownRowKernel,
  singleKernel,
  throughKernel,
} from '../../engine/calculation/kernels/load-kernels.ts';
import { loopKernel } from '../../engine/calculation/kernels/loop-kernels.ts';
import {
  arithmeticKernel,
  type Branch,
  catchKernel,
  chooseKernel,
  junctionKernel,
  pointKernel1,
  pointKernel2,
  pointKernel3,
  pointKernel4,
  pointKernelN,
} from '../../engine/calculation/kernels/point-kernels.ts';
import { BATCH, constantKernel, type Kernel, room, scratch } from '../../engine/calculation/kernels/vector.ts';
import { FILLED } from '../../engine/values/column.ts';
import { always, columnOf, emptyColumn, given, givenFor, put, rows, run } from './kernel-rows.ts';

const ONE_ROW = { rows: undefined, from: 0, count: 1 };

const FAULTS = { divide: 91, overflow: 92 };

describe('reading', () => {
  test('a column is read from any row on, or where rows are listed', () => {
    const kernel = loadKernel(columnOf('1 2 - !4 5'));
    expect(given(kernel, 5)).toBe('1 2 - !4 5');
    expect(given(kernel, 2, 3)).toBe('!4 5');
    expect(givenFor(kernel, [4, 0, 2])).toBe('5 1 -');
    expect(givenFor(loadKernel(columnOf('1 2 3')), [2, 0])).toBe('3 1');
    expect(given(loadKernel(columnOf('7 8 9', true)), 2, 1)).toBe('8 9');
    expect(given(loadKernel(columnOf('7 - 9', true)), 2, 1)).toBe('- 9');
  });

  test('a cell of a one-row sheet stands for every row, and is blank while the sheet has no row', () => {
    expect(given(singleKernel(columnOf('6')), 3)).toBe('6 6 6');
    expect(given(singleKernel(columnOf('!2')), 2)).toBe('!2 !2');
    expect(given(singleKernel(emptyColumn()), 2)).toBe('- -');
  });

  test('the own row is a link to itself', () => {
    expect(given(ownRowKernel(), 3, 4)).toBe('4 5 6');
    expect(givenFor(ownRowKernel(), [9, 2])).toBe('9 2');
  });

  const LINKS: readonly (readonly [links: string, cells: string, through: string])[] = [
    ['2 0 1', '10 20 30', '30 10 20'],
    ['2 - 1', '10 20 30', '30 - 20'],
    ['2 !5 1', '10 20 30', '30 !5 20'],
    ['2 0 1', '10 - !7', '!7 10 -'],
    ['- !1 1', '10 - !7', '- !1 -'],
  ];
  test.each(LINKS)('links %s into %s give %s', (links, cells, through) => {
    for (const kernel of [
      throughKernel(loadKernel(columnOf(links, true)), columnOf(cells)),
      linkedKernel(columnOf(links, true), columnOf(cells)),
    ]) {
      const [, second, third] = through.split(' ');
      expect(given(kernel, 3)).toBe(through);
      expect(given(kernel, 2, 1)).toBe(`${second} ${third}`);
      expect(givenFor(kernel, [2, 1])).toBe(`${third} ${second}`);
    }
  });

  test('one link for all rows gives one cell for all', () => {
    expect(given(throughKernel(always('1'), columnOf('10 20')), 3)).toBe('20 20 20');
    expect(given(throughKernel(always('-'), columnOf('10 20')), 2)).toBe('- -');
  });

  test('a link to texts gives their numbers', () => {
    expect(given(linkedKernel(columnOf('1 0', true), columnOf('3 4', true)), 2)).toBe('4 3');
  });

  test('what was read carefully once is read fast when every cell is filled again', () => {
    const cells = columnOf('10 - 30');
    const kernel = linkedKernel(columnOf('2 1 0', true), cells);
    expect(given(kernel, 3)).toBe('30 - 10');
    put(cells, 1, '20');
    expect(given(kernel, 3)).toBe('30 20 10');
  });
});

describe('arithmetic', () => {
  const CASES: readonly (readonly ['+' | '-' | '*' | '/', string, string, string])[] = [
    ['+', '1 2 3', '10 20 30', '11 22 33'],
    ['-', '1 2 3', '10 20 30', '-9 -18 -27'],
    ['*', '1 2 3', '10 20 30', '10 40 90'],
    ['/', '1 2 3', '4 5 6', '0.25 0.4 0.5'],
    ['+', '1 - 3', '10 20 -', '11 - -'],
    ['*', '1 !5 3', '- !6 !7', '- !5 !7'],
    ['-', '- 2', '!3 !4', '!3 !4'],
    ['/', '1 0 2', '0 0 4', '!91 !91 0.5'],
    ['/', '1 - 3', '0 0 6', '!91 - 0.5'],
    ['*', '1e300 2', '1e300 3', '!92 6'],
    ['+', '1.7e308 1', '1.7e308 1', '!92 2'],
    ['/', '1e300 1', '1e-300 2', '!92 0.5'],
  ];
  test.each(CASES)('%s of %s and %s gives %s', (operator, left, right, result) => {
    const count = result.split(' ').length;
    const kernel = arithmeticKernel(operator, rows(left), rows(right), FAULTS);
    expect(given(kernel, count)).toBe(result);
    expect(given(kernel, count - 1, 1)).toBe(result.split(' ').slice(1).join(' '));
  });

  test('one value on either side goes with every row, and two make one', () => {
    for (const [operator, left, right] of [
      ['+', '101 102', '101 102'],
      ['-', '99 98', '-99 -98'],
      ['*', '100 200', '100 200'],
      ['/', '100 50', '0.01 0.02'],
    ] as const) {
      expect(given(arithmeticKernel(operator, always('100'), rows('1 2'), FAULTS), 2)).toBe(left);
      expect(given(arithmeticKernel(operator, rows('1 2'), always('100'), FAULTS), 2)).toBe(right);
    }
    expect(given(arithmeticKernel('-', always('7'), always('2'), FAULTS), 3)).toBe('5 5 5');
    expect(given(arithmeticKernel('/', always('7'), always('0'), FAULTS), 2)).toBe('!91 !91');
    expect(given(arithmeticKernel('*', always('-'), rows('1 !2'), FAULTS), 2)).toBe('- !2');
    expect(given(arithmeticKernel('/', rows('1 2'), always('0'), FAULTS), 2)).toBe('!91 !91');
  });

  test('a batch after a faulty one starts afresh', () => {
    const kernel = arithmeticKernel('/', rows('1 2 3 4'), rows('0 1 1 2'), FAULTS);
    expect(given(kernel, 2)).toBe('!91 2');
    expect(given(kernel, 2, 2)).toBe('3 2');
  });
});

test.each([
  ['=', '0 1 0'],
  ['<>', '1 0 1'],
  ['<', '1 0 0'],
  ['<=', '1 1 0'],
  ['>', '0 0 1'],
  ['>=', '0 1 1'],
] as const)('1, 2, 3 %s 2', (sign, result) => {
  expect(given(compareKernel(rows('1 2 3'), always('2'), ORDERS[sign]), 3)).toBe(result);
});

test('a comparison of a blank is blank, of a fault its fault, and takes the order it is given', () => {
  expect(given(compareKernel(rows('1 - !3'), rows('1 2 3'), ORDERS['=']), 3)).toBe('1 - !3');
  expect(given(compareKernel(rows('1 2'), always('0.30000000000000004'), ORDERS['=']), 2)).toBe('0 0');
  expect(given(compareKernel(rows('0.3 2'), always('0.30000000000000004'), ORDERS['=']), 2)).toBe('1 0');
  expect(
    given(
      compareKernel(rows('1 2'), always('2'), ORDERS['<'], (a, b) => b - a),
      2,
    ),
  ).toBe('0 0');
});

test('a constant is one kernel for all formulas that have it, each nought its own', () => {
  expect(always('7')).toBe(always('7'));
  expect(always('7')).not.toBe(always('!7'));
  const signs = [constantKernel(0, FILLED), constantKernel(-0, FILLED)].map((zero) => run(zero, ONE_ROW).values[0]);
  expect(signs).toEqual([0, -0]);
});

describe('functions of numbers', () => {
  // Undefined from ten on, so that every kernel meets a result that is no number.
  const join = (...numbers: number[]): number => {
    const joined = Number(numbers.map((one) => (Number.isNaN(one) ? 9 : one)).join(''));
    return numbers[0] !== undefined && numbers[0] >= 10 ? Number.NaN : joined;
  };
  const MADE: readonly (readonly [number, (kernels: readonly Kernel[], fault: number | undefined) => Kernel])[] = [
    [1, ([a = always('1')], fault) => pointKernel1(a, join, fault)],
    [2, ([a = always('1'), b = always('1')], fault) => pointKernel2(a, b, join, fault)],
    [3, ([a = always('1'), b = always('1'), c = always('1')], fault) => pointKernel3([a, b, c], join, fault)],
    [
      4,
      ([a = always('1'), b = always('1'), c = always('1'), d = always('1')], fault) =>
        pointKernel4([a, b, c, d], join, fault),
    ],
    [5, (kernels, fault) => pointKernelN(kernels, join, fault)],
  ];

  test.each(MADE)('of %i: numbers, one for all, blanks, faults, results that are none', (count, make) => {
    const lines = ['1 2 3 12', '3 4 5 6', '5 6 7 8', '7 8 9 1', '2 3 4 5'].slice(0, count);
    const digits = (row: number): string => lines.map((line) => line.split(' ')[row]).join('');
    const kernel = make(lines.map(rows), 77);
    expect(given(kernel, 3)).toBe(`${digits(0)} ${digits(1)} ${digits(2)}`);
    expect(given(kernel, 4)).toBe(`${digits(0)} ${digits(1)} ${digits(2)} !77`);
    expect(given(kernel, 2, 1)).toBe(`${digits(1)} ${digits(2)}`);
    expect(given(make(lines.map(rows), undefined), 2, 2)).toBe(`${digits(2)} -`);
    const alike = lines.map((line) => always(line[0] ?? ''));
    expect(given(make(alike, 77), 2)).toBe(`${digits(0)} ${digits(0)}`);
    for (let k = 0; k < count; k++) {
      const one = lines.map((line, i) => (i === k ? always('4') : rows(line)));
      const inPlace = (row: number): string => lines.map((line, i) => (i === k ? '4' : line.split(' ')[row])).join('');
      expect(given(make(one, 77), 3)).toBe(`${inPlace(0)} ${inPlace(1)} ${inPlace(2)}`);
      const holed = lines.map((line, i) => rows(i === k ? '- 2 !8 10' : line));
      const filled = lines.map((line, i) => (i === k ? '2' : line.split(' ')[1])).join('');
      expect(given(make(holed, 77), 3)).toBe(`- ${filled} !8`);
    }
    expect(
      given(
        make(
          lines.map((_, i) => rows(i === 0 ? '- 12 1' : '1 1 1')),
          77,
        ),
        3,
      ),
    ).toBe(`- !77 ${'1'.repeat(count)}`);
  });

  test('a fault on the left is told before one on the right, and both before a blank', () => {
    expect(given(pointKernel2(rows('!1 - !1'), rows('!2 !2 -'), join, 77), 3)).toBe('!1 !2 !1');
    expect(given(pointKernelN([rows('- !1'), undefined, rows('!3 !4')], join, 77), 2)).toBe('!3 !1');
  });

  test('blanks of several arguments meet in a row, and one that stands for all rows blanks all but faults', () => {
    expect(given(pointKernel3([rows('1 - 3 4'), rows('1 2 - 4'), rows('1 - 3 -')], join, 77), 4)).toBe('111 - - -');
    expect(given(pointKernel3([rows('1 - 3'), always('-'), rows('!3 1 1')], join, 77), 3)).toBe('!3 - -');
    expect(given(pointKernel2(always('-'), rows('1 2'), join, 77), 2)).toBe('- -');
    expect(given(pointKernel2(always('!5'), rows('1 -'), join, 77), 2)).toBe('!5 !5');
  });

  test('an argument left out is told from one that is there', () => {
    expect(given(pointKernelN([rows('1 2'), undefined, rows('3 4')], join, 77), 2)).toBe('193 294');
    expect(given(pointKernelN([always('1'), undefined, always('3')], join, 77), 2)).toBe('193 193');
  });
});

test('a loop does clean batches; others go value by value', () => {
  const walked: string[] = [];
  const kernel = (a: Kernel, b: Kernel): Kernel =>
    loopKernel(
      [a, b],
      (out, count, [x, y]) => {
        walked.push('loop');
        for (let i = 0; i < count; i++) {
          const [p = 0, q = 0] = [x, y].map((run) => run?.values[run.at + (run.uniform ? 0 : i)] ?? 0);
          out[i] = p / q;
        }
      },
      ([x = a, y = b]) => pointKernel2(x, y, (p, q) => (q === 0 ? Number.NaN : p / q), 55),
    );
  expect(given(kernel(rows('1 2 3'), rows('2 2 4')), 3)).toBe('0.5 1 0.75');
  expect(given(kernel(rows('1 2 3'), always('2')), 2, 1)).toBe('1 1.5');
  expect(given(kernel(always('1'), always('4')), 2)).toBe('0.25 0.25');
  expect(walked).toEqual(['loop', 'loop', 'loop']);
  expect(given(kernel(rows('1 - !3'), rows('2 2 4')), 3)).toBe('0.5 - !3');
  expect(walked).toHaveLength(3);
  expect(given(kernel(rows('1 2 0'), rows('2 0 0')), 3)).toBe('0.5 !55 !55');
});

const cheap = (kernel: Kernel): Branch => ({ kernel, isCostly: false });

describe('choosing', () => {
  test('a branch that costs much is asked for the rows that take it and no others', () => {
    const asked: string[] = [];
    const costly = (name: string): Branch => ({
      isCostly: true,
      kernel: ({ rows: listed, from, count }) => {
        const places =
          listed === undefined ? Array.from({ length: count }, (_, i) => from + i) : [...listed.slice(0, count)];
        asked.push(`${name} ${places.join(' ')}`);
        const out = room(scratch(), BATCH);
        places.forEach((row, i) => {
          out.values[i] = 10 * row;
        });
        return out;
      },
    });
    const choose = (condition: string, count: number): string => {
      asked.length = 0;
      return given(chooseKernel(rows(condition), costly('yes'), costly('no')), count);
    };
    expect(choose('1 0 1 0 - !9', 6)).toBe('0 10 20 30 - !9');
    expect(asked).toEqual(['yes 0 2', 'no 1 3']);
    expect(choose('1 1 0', 3)).toBe('0 10 20');
    expect(asked).toEqual(['yes 0 1', 'no 2']);
    expect(choose('0 0', 2)).toBe('0 10');
    expect(asked).toEqual(['no 0 1']);
  });

  test('IF takes a branch row by row', () => {
    const choose = (condition: string, yes = '1 2 3 4', no = '5 6 7 8'): string =>
      given(chooseKernel(rows(condition), cheap(rows(yes)), cheap(rows(no))), 4);
    expect(choose('1 0 1 0')).toBe('1 6 3 8');
    expect(choose('1 0 - !9')).toBe('1 6 - !9');
    expect(choose('1 0 1 0', '- !2 !3 4', '5 - !7 !8')).toBe('- - !3 !8');
    expect(choose('- - !1 1', '1 2 3 -')).toBe('- - !1 -');
  });

  test('one condition for all rows takes the whole branch; one value in a branch goes with every row', () => {
    expect(given(chooseKernel(always('1'), cheap(rows('1 2')), cheap(rows('5 6'))), 2)).toBe('1 2');
    expect(given(chooseKernel(always('0'), cheap(rows('1 2')), cheap(rows('5 6'))), 2)).toBe('5 6');
    expect(given(chooseKernel(always('-'), cheap(rows('1 2')), cheap(rows('5 6'))), 2)).toBe('- -');
    expect(given(chooseKernel(always('!3'), cheap(rows('1 2')), cheap(rows('5 6'))), 2)).toBe('!3 !3');
    expect(given(chooseKernel(rows('1 0 1'), cheap(always('4')), cheap(rows('5 6 7'))), 3)).toBe('4 6 4');
    expect(given(chooseKernel(rows('1 0 1'), cheap(rows('1 2 3')), cheap(always('-'))), 3)).toBe('1 - 3');
    expect(given(chooseKernel(rows('0 1 0'), cheap(always('4')), cheap(always('5'))), 2, 1)).toBe('4 5');
  });

  test('a fault that is caught gives way', () => {
    const caught = (value: Kernel, instead: Kernel): string =>
      given(
        catchKernel(value, instead, (fault) => fault > 5),
        3,
      );
    expect(caught(rows('1 2 3'), rows('7 8 9'))).toBe('1 2 3');
    expect(caught(rows('1 !6 !5'), rows('7 8 9'))).toBe('1 8 !5');
    expect(caught(rows('- !6 !7'), rows('7 - !9'))).toBe('- - !9');
    expect(caught(always('!6'), rows('7 8 9'))).toBe('7 8 9');
    expect(caught(rows('!6 - !7'), always('4'))).toBe('4 - 4');
    expect(
      given(
        catchKernel(rows('1 !6 !7 4'), rows('5 6 7 8'), () => true),
        2,
        2,
      ),
    ).toBe('7 4');
  });

  test('AND and OR are decided from the left, blanks leave them open', () => {
    const AND: readonly (readonly [string, string, string])[] = [
      ['1 1 0 0', '1 0 1 0', '1 0 0 0'],
      ['- 1 - 0', '1 - 0 -', '- - 0 0'],
      ['!5 1 0 -', '0 !6 !6 !6', '!5 !6 0 !6'],
    ];
    for (const [left, right, both] of AND) {
      expect(given(junctionKernel([rows(left), rows(right)], 0), 4)).toBe(both);
    }
    const OR: readonly (readonly [string, string, string])[] = [
      ['1 1 0 0', '1 0 1 0', '1 1 1 0'],
      ['- 1 - 0', '1 - 0 -', '1 1 - -'],
      ['!5 1 0 -', '1 !6 !6 !6', '!5 1 !6 !6'],
    ];
    for (const [left, right, either] of OR) {
      expect(given(junctionKernel([rows(left), rows(right)], 1), 4)).toBe(either);
    }
    expect(given(junctionKernel([always('1'), rows('1 0')], 0), 2)).toBe('1 0');
    expect(given(junctionKernel([rows('1 0'), always('-')], 1), 2)).toBe('1 -');
    expect(given(junctionKernel([rows('0 1 0'), rows('0 0 1')], 1), 2, 1)).toBe('1 1');
  });
});
