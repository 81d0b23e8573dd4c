// What kernels say of their batches, on which the fast paths rest: all cells filled, one value for all rows. And the lane of
// scalars: texts, blanks and errors as they are.
import { describe, expect, test } from 'vitest';
import { throughKernel } from '../../engine/calculation/kernels/load-kernels.ts';
import { loopKernel } from '../../engine/calculation/kernels/loop-kernels.ts';
import {
  arithmeticKernel,
  type Branch,
  catchKernel,
  chooseKernel,
  pointKernel1,
  pointKernel2,
  pointKernel3,
  pointKernel4,
  pointKernelN,
} from '../../engine/calculation/kernels/point-kernels.ts';
import { type ScalarRules, scalarKernel } from '../../engine/calculation/kernels/scalar-kernels.ts';
import type { Kernel } from '../../engine/calculation/kernels/vector.ts';
import { PLAIN } from '../../engine/functions/standard/types.ts';
import { isError, type Scalar } from '../../engine/values/error.ts';
import { dictionaries } from './frames.ts';
import { always, columnOf, given, rows, run, said } from './kernel-rows.ts';

const FAULTS = { divide: 91, overflow: 92 };
const sum = (...numbers: number[]): number => numbers.reduce((total, one) => total + one, 0);

/** Kernels of so many arguments, all adding up. */
const KERNELS: readonly (readonly [name: string, count: number, make: (kernels: readonly Kernel[]) => Kernel])[] = [
  ['arithmetic', 2, ([a = always('1'), b = always('1')]) => arithmeticKernel('+', a, b, FAULTS)],
  ['one number', 1, ([a = always('1')]) => pointKernel1(a, sum, 9)],
  ['two numbers', 2, ([a = always('1'), b = always('1')]) => pointKernel2(a, b, sum, 9)],
  ['three numbers', 3, ([a = always('1'), b = always('1'), c = always('1')]) => pointKernel3([a, b, c], sum, 9)],
  [
    'four numbers',
    4,
    ([a = always('1'), b = always('1'), c = always('1'), d = always('1')]) => pointKernel4([a, b, c, d], sum, 9),
  ],
  ['five numbers', 5, (kernels) => pointKernelN(kernels, sum, 9)],
  [
    'scalars',
    3,
    (kernels) =>
      scalarKernel(
        dictionaries(),
        kernels,
        kernels.map(() => PLAIN),
        (args) => sum(...args.map(Number)),
        {
          blanks: 'pass',
          errors: 'pass',
        },
      ),
  ],
  [
    'a loop',
    2,
    (kernels) =>
      loopKernel(
        kernels,
        (out, count, args) => {
          for (let i = 0; i < count; i++)
            out[i] = sum(...args.map(({ values, at, uniform }) => values[uniform ? at : at + i] ?? 0));
        },
        ([a = always('1'), b = always('1')]) => pointKernel2(a, b, sum, 9),
      ),
  ],
];

test.each(KERNELS)('%s: clean where every argument is, one for all where every argument is', (_, count, make) => {
  const with_ = (other: Kernel, at: number, rest: Kernel): readonly Kernel[] =>
    Array.from({ length: count }, (_, k) => (k === at ? other : rest));
  for (let at = 0; at < count; at++) {
    expect(said(make(with_(rows('1 2'), at, rows('3 4'))), 2)).toEqual({ clean: true, uniform: false });
    expect(said(make(with_(rows('1 -'), at, rows('3 4'))), 2)).toEqual({ clean: false, uniform: false });
    expect(said(make(with_(rows('!1 2'), at, rows('3 4'))), 2)).toEqual({ clean: false, uniform: false });
    expect(said(make(with_(always('1'), at, always('2'))), 2)).toEqual({ clean: true, uniform: true });
    expect(said(make(with_(always('-'), at, always('2'))), 2)).toEqual({ clean: false, uniform: true });
    if (count > 1) {
      expect(said(make(with_(rows('1 2'), at, always('2'))), 2)).toEqual({ clean: true, uniform: false });
      expect(said(make(with_(always('1'), at, rows('1 2'))), 2)).toEqual({ clean: true, uniform: false });
    }
  }
});

test('a result that is no number makes its batch unclean, its neighbours stay filled', () => {
  const kernel = pointKernel1(rows('1 -1 4 9'), (a) => (a < 0 ? Number.NaN : Math.sqrt(a)), 9);
  expect(said(kernel, 2)).toEqual({ clean: false, uniform: false });
  expect(given(kernel, 4)).toBe('1 !9 2 3');
  const holed = pointKernel1(rows('- -1 4 !3'), (a) => (a < 0 ? Number.NaN : a), undefined);
  expect(given(holed, 4)).toBe('- - 4 !3');
});

const cheap = (kernel: Kernel): Branch => ({ kernel, isCostly: false });

test('choosing hands a whole branch on, catching a batch without errors', () => {
  expect(said(chooseKernel(always('1'), cheap(always('2')), cheap(rows('1 2'))), 2)).toEqual({
    clean: true,
    uniform: true,
  });
  expect(said(chooseKernel(rows('1 0'), cheap(always('2')), cheap(always('3'))), 2)).toEqual({
    clean: true,
    uniform: false,
  });
  expect(said(chooseKernel(rows('1 -'), cheap(always('2')), cheap(always('3'))), 2).clean).toBe(false);
  expect(said(chooseKernel(rows('1 1'), cheap(rows('2 2')), cheap(always('-'))), 2).clean).toBe(true);
  expect(
    said(
      catchKernel(always('1'), rows('2 3'), () => true),
      2,
    ),
  ).toEqual({ clean: true, uniform: true });
  expect(
    said(
      catchKernel(rows('!1 2'), rows('2 3'), () => true),
      2,
    ),
  ).toEqual({ clean: true, uniform: false });
  expect(said(throughKernel(always('1'), columnOf('1 2')), 2)).toEqual({ clean: true, uniform: true });
  expect(said(throughKernel(rows('1 0'), columnOf('1 -')), 2)).toEqual({ clean: false, uniform: false });
});

describe('the lane of scalars', () => {
  const tell = (args: readonly Scalar[]): Scalar =>
    args.map((arg) => (arg === null ? '-' : isError(arg) ? arg.error : String(arg))).join(' ');

  /** What the function is given, cell by cell; a cell that it never sees is told as it comes out. */
  function seen(rules: ScalarRules, lines: readonly (string | undefined)[]): string[] {
    const words = dictionaries();
    const fault = words.faults.number({ error: 'divide', why: 'Nought.' });
    const other = words.faults.number({ error: 'missing', why: 'None.' });
    const kernels = lines.map((line) =>
      line === undefined ? undefined : rows(line.replaceAll('!', `!${fault}`).replaceAll('?', `!${other}`)),
    );
    const kernel = scalarKernel(
      words,
      kernels,
      lines.map(() => PLAIN),
      tell,
      rules,
    );
    const { values, states, clean } = run(kernel, { rows: undefined, from: 0, count: 3 });
    return [0, 1, 2].map((i) => {
      if (clean || states[i] === 0) return words.texts.text(values[i] ?? -1);
      return states[i] === 1 ? 'blank' : words.faults.error(values[i] ?? -1).error;
    });
  }

  test.each<readonly [ScalarRules, readonly string[]]>([
    [{ blanks: 'pass', errors: 'pass' }, ['1 4 -', 'blank', 'divide']],
    [{ blanks: 'given', errors: 'pass' }, ['1 4 -', '- 5 -', 'divide']],
    [{ blanks: 'pass', errors: 'given' }, ['1 4 -', 'blank', 'divide 6 -']],
    [{ blanks: 'given', errors: 'given' }, ['1 4 -', '- 5 -', 'divide 6 -']],
  ])('%o', (rules, wanted) => {
    expect(seen(rules, ['1 - !', '4 5 6', undefined])).toEqual(wanted);
  });

  test('of two errors the left one passes on, before a blank on either side', () => {
    expect(seen({ blanks: 'pass', errors: 'pass' }, ['! - ?', '? ! -'])).toEqual(['divide', 'divide', 'missing']);
  });
});
