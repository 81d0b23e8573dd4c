// Operations: what each operator gives, which of two units shows, what signs and per cents do to what stands beside them,
// and the sentences where two sides don't go together. Formulas stand in the sheet Plantings of the invented plan.

import { describe, expect, test } from 'vitest';
import { DATE, TEXT } from '../../engine/values/type.ts';
import { type Case, expectDiagnostic } from './diagnostic-case.ts';
import { checked, inUnit, shortType } from './plan.ts';

const NOTHING = 'IF([Treated]; ; )';

describe('what an operation gives', () => {
  test.each([
    ['[Length] <= [Row spacing]', 'yesno'],
    ['[Length] <> 3 ft', 'yesno'],
    ['[Treated] <> TRUE', 'yesno'],
    ['[Treated] = [Treated]', 'yesno'],
    ['[Start] <= "sets"', 'yesno'],
    ['+[Low]', 'temperature degF'],
    ['+[Length]', 'number ft'],
    ['3 in + [Length]', 'number in'],
    ['[Length] + 3 in', 'number ft'],
    ['0 + [Row spacing]', 'number in'],
    ['[Row spacing] - 0', 'number in'],
    [`${NOTHING} + [Row spacing]`, 'number in'],
    [`${NOTHING} + 0`, 'number'],
    [`[Sown] + ${NOTHING}`, 'date'],
    [`${NOTHING} + [Sown]`, 'date'],
    ['0 + [Sown]', 'date'],
    [`[Low] + ${NOTHING}`, 'temperature degF'],
    ['0 + [Low]', 'temperature degF'],
    ['2 h + [Sown]', 'date'],
    ['[Sown] + 2 h', 'date'],
    ['[High] - [Low]', 'number Fdeg'],
    ['[Area] ^ -(1 / 2)', 'number 1/ft'],
    ['[Length] ^ (1 - 1)', 'number'],
    ['[Mass] / [Length] * 2', 'number lb/ft'],
    ['2 / [Length]', 'number 1/ft'],
    ['[Seeds] * 2', 'number seeds'],
  ])('%s gives %s', (formula, type) => {
    expect(shortType(checked(formula).type)).toBe(type);
  });

  test('two sides that are compared come to the type they share', () => {
    expect(checked('3 in < [Length]')).toMatchObject({ left: { node: 'constant' }, right: { node: 'cell' } });
    expect(checked(`${NOTHING} < [Sown]`)).toMatchObject({ left: { type: DATE }, right: { type: DATE } });
    expect(checked('0 < [Length]')).toMatchObject({ left: { type: inUnit('ft') }, right: { type: inUnit('ft') } });
    expect(checked('[Treated] = [Treated]')).toMatchObject({ left: { node: 'cell' }, right: { node: 'cell' } });
    expect(checked('[Variety] <> [Variety]')).toMatchObject({ left: { node: 'cell' }, right: { node: 'cell' } });
  });

  test('a zero beside a date is so many days, beside a temperature so many degrees', () => {
    expect(checked('[Sown] - 0')).toMatchObject({ left: { type: DATE }, right: { type: inUnit('day') } });
    expect(checked('[Sown] - 2 h')).toMatchObject({ right: { type: inUnit('h') } });
    expect(checked('0 + [Low]')).toMatchObject({ left: { type: inUnit('Fdeg') }, right: { type: inUnit('degF') } });
  });

  test('nothing joins as no text, numbers and dates as they are', () => {
    expect(checked(`${NOTHING} & [Rows]`)).toMatchObject({ left: { type: TEXT }, right: { type: inUnit('') } });
    expect(checked('0 & [Sown]')).toMatchObject({ left: { type: inUnit('') }, right: { type: DATE } });
  });
});

describe('signs and per cents', () => {
  test('minus nothing is plain zero', () => {
    const zero = checked('-0');
    expect(zero.node === 'constant' ? zero.value : undefined).toBe(0);
  });

  test.each([
    ['-[Length]', { node: 'negate', from: 0, to: 9 }],
    ['-8 in', { node: 'constant', from: 0, to: 5 }],
    ['-5 degC', { node: 'constant', from: 0, to: 7, value: 268.15 }],
    ['-3', { node: 'constant', from: 0, to: 2, value: -3 }],
    ['50%', { node: 'constant', from: 0, to: 3, value: 0.5 }],
    ['[Rows]%', { node: 'binary', operator: '/', from: 0, to: 7, right: { value: 100, from: 0, to: 7 } }],
  ])('%s', (formula, shape) => {
    expect(checked(formula)).toMatchObject(shape);
  });
});

describe('sentences', () => {
  test.each<Case>([
    ['7 + [Sown]', '7', '7 is a plain number: say how long it is, 7 days.', '7 days + [Sown]'],
    ['[Length] + [Sown]', '[Length]', '[Length] is a length (ft): only a time, such as 7 days, moves a date.'],
    ['[Sown] - [Length]', '[Length]', '[Length] is a length (ft): only a time, such as 7 days, moves a date.'],
    ['[Sown] + [Low]', '[Low]', '[Low] is a temperature (degF): only a time, such as 7 days, moves a date.'],
    [
      '[Low] - [Sown]',
      '[Low] - [Sown]',
      "A date can't be taken from a temperature: put the date first, as in [Sown] - 7 days.",
    ],
    [
      '0 - [Sown]',
      '0 - [Sown]',
      "A date can't be taken from a plain number: put the date first, as in [Sown] - 7 days.",
    ],
    ['[Sown] + [Note]', '[Note]', '[Note] is text: only a time, such as 7 days, moves a date.'],
    ['5 + [Low]', '5', '5 is a plain number: write the difference with its unit, 5 Fdeg.', '5 Fdeg + [Low]'],
    ['[Low] - 5', '5', '5 is a plain number: write the difference with its unit, 5 Fdeg.', '[Low] - 5 Fdeg'],
    ['[High] - -5', '-5', '-5 is a plain number: write the difference with its unit, -5 Fdeg.', '[High] - -5 Fdeg'],
    [
      '[Low] - [Length]',
      '[Length]',
      '[Length] is a length (ft): only a difference of temperatures, such as 5 Fdeg, can be added to one.',
    ],
    ['[Length] - [Low]', '[Length] - [Low]', "A temperature can't be taken from a length: put the temperature first."],
    [
      '[Note] + [Low]',
      '[Note]',
      '[Note] is text: only a difference of temperatures, such as 5 Fdeg, can be added to one.',
    ],
    [
      '[Treated] + 1',
      '[Treated]',
      '[Treated] is yes or no, not a number: IF([Treated]; 1; 0) counts it.',
      'IF([Treated]; 1; 0) + 1',
    ],
    [
      '1 - [Treated]',
      '[Treated]',
      '[Treated] is yes or no, not a number: IF([Treated]; 1; 0) counts it.',
      '1 - IF([Treated]; 1; 0)',
    ],
    [
      '[Note] - [Rows]',
      '[Note]',
      '[Note] is text, not a number: VALUE([Note]) reads a number from text.',
      'VALUE([Note]) - [Rows]',
    ],
    ['[Note] + [Note]', '[Note]', '[Note] is text, not a number: texts are joined with &.', '[Note] & [Note]'],
    ['[Note]%', '[Note]', '[Note] is text, not a number: VALUE([Note]) reads a number from text.', 'VALUE([Note])%'],
    ['+[Note]', '[Note]', '[Note] is text, not a number: VALUE([Note]) reads a number from text.', '+VALUE([Note])'],
    [
      '[Length] ^ [Low]',
      '[Low]',
      "[Low] is a temperature on its scale, so it can't be reckoned with like this: take a difference first, as in [Low] - 40 degF.",
    ],
    ['[Treated] >= FALSE', '[Treated] >= FALSE', 'Yes and no have no order: compare them with = or <>.'],
  ])('%s', (...one) => expectDiagnostic(one));
});
