// What may stand for what: which type two values share, what a bare zero, a blank and a link pass for, which parameter an
// argument fills, and the numbers that are known before anything runs. Values are parts of formulas in the sheet Plantings.

import { describe, expect, test } from 'vitest';
import {
  constantOf,
  opennessOf,
  parameterAt,
  parameterIndex,
  sharedType,
  standingFor,
} from '../../engine/language/standing.ts';
import type { Typed } from '../../engine/language/typed.ts';
import { DATE, TEXT, type ValueType, YESNO } from '../../engine/values/type.ts';
import { checked, choice, FUNCTIONS, inUnit, link, shortType } from './plan.ts';

function functionNamed(name: string): Parameters<typeof parameterAt>[0] {
  const signature = FUNCTIONS.get(name);
  if (signature === undefined) throw new Error(`${name} is missing`);
  return signature;
}

const NOTHING = 'IF([Treated]; ; )';

test.each([
  ['0', 'zero'],
  ['-0', 'zero'],
  ['0 in', 'fixed'],
  ['0%', 'fixed'],
  ['0 seeds', 'fixed'],
  ['0 degC', 'fixed'],
  ['5', 'fixed'],
  ['""', 'fixed'],
  ['FALSE', 'fixed'],
  ['[Rows]', 'fixed'],
  ['0 + 0', 'fixed'],
  [NOTHING, 'blank'],
  ['IF([Treated]; 0; )', 'zero'],
  ['IF([Treated]; ; 0)', 'zero'],
  ['IF([Treated]; 0; 0)', 'zero'],
  ['IF([Treated]; 0; [Rows])', 'fixed'],
  ['IF([Treated]; [Rows]; )', 'fixed'],
  [`IF([Treated]; ${NOTHING}; 0)`, 'zero'],
  ['MAX(0; 0)', 'zero'],
  ['YEAR([Sown])', 'fixed'],
  ['SQRT(0)', 'fixed'],
  ['TRAYAREA(0)', 'fixed'],
])('%s is %s', (formula, openness) => {
  expect(opennessOf(checked(formula))).toBe(openness);
});

describe('the type that two values share', () => {
  test.each([
    ['[Length]', '[Row spacing]', 'number ft'],
    ['3 in', '[Length]', 'number ft'],
    ['[Length]', '3 in', 'number ft'],
    ['3 in', '2 ft', 'number in'],
    ['[Length]', '[Mass]', undefined],
    ['[Length]', '[Sown]', undefined],
    ['0', '[Length]', 'number ft'],
    ['[Length]', '0', 'number ft'],
    ['0', '[Sown]', undefined],
    ['[Sown]', '0', undefined],
    ['0', '[Note]', undefined],
    ['[Treated]', '0', undefined],
    ['0', '0', 'number'],
    [NOTHING, '[Sown]', 'date'],
    ['[Sown]', NOTHING, 'date'],
    [NOTHING, '[Treated]', 'yesno'],
    ['[Note]', NOTHING, 'text'],
    ['0', NOTHING, 'number'],
    [NOTHING, NOTHING, 'number'],
    ['[Start]', '[Start]', 'choice blocks/sets'],
    ['[Start]', '[Cover]', 'text'],
    ['[Start]', '[Note]', 'text'],
    ['[Variety]', '[Note]', 'text'],
    ['[Start]', '[Variety]', 'text'],
    ['[Variety]', '[Variety]', 'link Varieties'],
    ['[Variety]', '[Bed]', undefined],
    ['[Low]', '[High]', 'temperature degF'],
    ['[Low]', '5 degC', 'temperature degF'],
    ['[Low]', '[Length]', undefined],
    ['[Treated]', 'TRUE', 'yesno'],
    ['[Treated]', '[Note]', undefined],
  ])('%s and %s: %s', (one, other, shared) => {
    const type = sharedType(checked(one), checked(other));
    expect(type === undefined ? undefined : shortType(type)).toBe(shared);
  });

  test('a choice agrees with another only where all its options do, in their order', () => {
    const part = (...options: readonly string[]): Typed => ({ ...checked('[Start]'), type: choice(...options) });
    const shared = (one: Typed, other: Typed): string => shortType(sharedType(one, other) ?? YESNO);
    expect(shared(part('a', 'b'), part('a', 'b'))).toBe('choice a/b');
    expect(shared(part('a', 'b'), part('a', 'c'))).toBe('text');
    expect(shared(part('a', 'b'), part('b', 'a'))).toBe('text');
    expect(shared(part('a'), part('a', 'b'))).toBe('text');
    expect(shared(part('a', 'b'), part('a'))).toBe('text');
  });

  test('a zero beside nothing stays a number, whatever nothing stood for before', () => {
    const day: Typed = { node: 'blank', type: DATE, from: 0, to: 0 };
    expect(sharedType(checked('0'), day)).toEqual(inUnit(''));
    expect(sharedType(day, checked('0'))).toEqual(inUnit(''));
    expect(sharedType(checked('[Length]'), day)).toEqual(inUnit('ft'));
  });
});

describe('standing where a type is wanted', () => {
  const stands = (formula: string, type: ValueType): string | undefined => {
    const standing = standingFor(checked(formula), type);
    return standing === undefined ? undefined : `${standing.node}: ${shortType(standing.type)}`;
  };

  test.each<readonly [string, ValueType, string | undefined]>([
    ['0', inUnit('lb'), 'constant: number lb'],
    ['0', TEXT, undefined],
    ['0', DATE, undefined],
    ['0', YESNO, undefined],
    ['0', inUnit('degC'), undefined],
    [NOTHING, TEXT, 'call: text'],
    [NOTHING, DATE, 'call: date'],
    ['[Variety]', TEXT, 'key: text'],
    ['[Variety]', choice('a'), undefined],
    ['[Note]', choice('a'), 'cell: text'],
    ['[Note]', link('Varieties'), undefined],
    ['[Row spacing]', inUnit('ft'), 'cell: number in'],
    ['[Row spacing]', inUnit('lb'), undefined],
    ['5', inUnit('ft'), undefined],
  ])('%s', (formula, type, standing) => {
    expect(stands(formula, type)).toBe(standing);
  });

  test('the branches of a choice take the type, its condition keeps its own', () => {
    const standing = standingFor(checked('IF([Treated]; 0; IFERROR(0; ))'), inUnit('lb'));
    const shown = (typed: Typed): unknown =>
      typed.node === 'call' ? [shortType(typed.type), ...typed.args.map(shown)] : shortType(typed.type);
    expect(standing === undefined ? undefined : shown(standing)).toEqual([
      'number lb',
      'yesno',
      'number lb',
      ['number lb', 'number lb', 'number lb'],
    ]);
  });
});

describe('the parameter that an argument fills', () => {
  test.each([
    ['IF', 0, 3, 'condition'],
    ['IF', 2, 3, 'otherwise'],
    ['IF', 3, 4, undefined],
    ['TODAY', 0, 1, undefined],
    ['SUM', 0, 1, 'number'],
    ['SUM', 7, 8, 'number'],
    ['SUMIFS', 0, 5, 'total'],
    ['SUMIFS', 1, 5, 'range'],
    ['SUMIFS', 3, 5, 'range'],
    ['SUMIFS', 4, 5, 'condition'],
    ['SUMIFS', 3, 4, 'range'],
    ['SWITCH', 0, 1, 'value'],
    ['SWITCH', 1, 2, 'case'],
    ['SWITCH', 2, 3, 'result'],
    ['SWITCH', 3, 5, 'case'],
    ['SWITCH', 3, 4, 'result'],
    ['SWITCH', 4, 5, 'result'],
  ])('%s, argument %i of %i: %s', (name, index, count, parameter) => {
    expect(parameterAt(functionNamed(name), index, count)?.name).toBe(parameter);
  });

  test('as if more followed, and past the last where nothing repeats', () => {
    expect([0, 1, 2, 3, 4, 5].map((at) => parameterIndex(functionNamed('SUMIFS'), at))).toEqual([0, 1, 2, 1, 2, 1]);
    expect([2, 3, 4].map((at) => parameterIndex(functionNamed('IF'), at))).toEqual([2, 3, 4]);
  });
});

describe('numbers known before anything runs', () => {
  test.each<readonly [string, number | string | boolean | undefined]>([
    ['7', 7],
    ['"x"', 'x'],
    ['TRUE', true],
    ['2 + 3', 5],
    ['7 - 2', 5],
    ['2 * 3', 6],
    ['7 / 2', 3.5],
    ['1 / 0', undefined],
    ['2 ^ 3', 8],
    ['0 ^ -1', undefined],
    ['-(7 / 2)', -3.5],
    ['-(1 / 0)', undefined],
    ['"a" & "b"', undefined],
    ['1 < 2', undefined],
    ['2 + [Rows]', undefined],
    ['[Rows] * 2', undefined],
    ['-[Rows]', undefined],
    ['[Rows]', undefined],
    ['SQRT(4)', undefined],
  ])('%s', (formula, value) => {
    expect(constantOf(checked(formula))).toBe(value);
  });

  test('a blank and an error are none', () => {
    const place = { type: inUnit(''), from: 0, to: 0 };
    expect(constantOf({ node: 'constant', value: null, ...place })).toBe(undefined);
    expect(constantOf({ node: 'constant', value: { error: 'value', why: 'x' }, ...place })).toBe(undefined);
  });
});
