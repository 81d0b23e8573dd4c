// The typed tree of the smallest formulas, node by node, and what is said of a whole formula that gives another type than
// its column wants: whole sentence, place and fix. Factors: NIST SP 811 (2008), app. B.

import { describe, expect, test } from 'vitest';
import { checkFormula } from '../../engine/language/checker.ts';
import { parseFormula } from '../../engine/language/parser.ts';
import { DATE, TEXT, type ValueType, YESNO } from '../../engine/values/type.ts';
import { checked, choice, contextOf, diagnosticOf, inUnit, link, shortType } from './plan.ts';

const PLAIN = inUnit('');

describe('every leaf of a formula', () => {
  test.each([
    [' 7', { node: 'constant', value: 7, type: PLAIN, from: 1, to: 2 }],
    [' 8 in', { node: 'constant', value: 8 * 0.0254, type: inUnit('in'), from: 1, to: 5 }],
    ['20 degC', { node: 'constant', value: 293.15, type: inUnit('degC'), from: 0, to: 7 }],
    [' "x"', { node: 'constant', value: 'x', type: TEXT, from: 1, to: 4 }],
    [' true', { node: 'constant', value: true, type: YESNO, from: 1, to: 5 }],
    ['FALSE', { node: 'constant', value: false, type: YESNO, from: 0, to: 5 }],
    [
      ' [length]',
      { node: 'cell', links: [], table: 'plantings', column: 'length', type: inUnit('ft'), from: 1, to: 9 },
    ],
    [
      '[bed].[area]',
      { node: 'cell', links: ['bed'], table: 'beds', column: 'area', type: inUnit('ft2'), from: 0, to: 12 },
    ],
    [' farm[last frost]', { node: 'single', table: 'farm', column: 'last-frost', type: DATE, from: 1, to: 17 }],
  ])('%s', (text, typed) => {
    expect(checked(text)).toEqual(typed);
  });
});

test('a unit that the reader took and the checker does not know is marked alone, with the nearest as the fix', () => {
  const read = parseFormula('1 + 3 inchs', (symbol) => symbol === 'inchs');
  expect(read.ok && checkFormula(read.tree, contextOf())).toEqual({
    ok: false,
    diagnostic: {
      from: 6,
      to: 11,
      why: 'inchs is not a unit that Dibble knows; the nearest is in.',
      fix: { text: 'in', span: { from: 6, to: 11 } },
    },
  });
});

describe('the whole formula gives what its column wants', () => {
  test.each<[string, ValueType, string]>([
    ['[Row spacing]', inUnit('ft'), 'number in'],
    ['0', inUnit('ft'), 'number ft'],
    ['IF([Treated]; 0; )', inUnit('lb'), 'number lb'],
    ['[Start]', TEXT, 'choice blocks/sets'],
    ['[Variety]', link('Varieties'), 'link Varieties'],
    ['[Sown] + 7 days', DATE, 'date'],
    ['[Low]', inUnit('degC'), 'temperature degF'],
  ])('%s', (text, wanted, type) => {
    expect(shortType(checked(text, { wanted }).type)).toBe(type);
  });

  test('a link stands for the text of its key', () => {
    expect(checked('[Variety]', { wanted: TEXT })).toMatchObject({ node: 'key', type: TEXT, from: 0, to: 9 });
  });
});

describe('the whole formula gives something else', () => {
  test.each<[string, ValueType, string, string?]>([
    ['[Mass] + 1 lb', inUnit('in'), 'This gives a mass (lb); Spacing wants a length.'],
    [' 8', inUnit('in'), 'This gives a plain number; Spacing wants a length: write 8 in.', '8 in'],
    ['[Low]', PLAIN, 'This gives a temperature (degF); Spacing wants a plain number.'],
    ['[Sown]', choice('a', 'b'), 'This gives a date; Spacing wants one of a, b.'],
    ['[Rows]', TEXT, 'This gives a plain number; Spacing wants text: write [Rows] & "".', '[Rows] & ""'],
  ])('%s', (text, wanted, why, fix) => {
    const span = { from: text.length - text.trimStart().length, to: text.length };
    expect(diagnosticOf(text, { wanted, column: 'Spacing' })).toEqual({
      ...span,
      why,
      ...(fix === undefined ? {} : { fix: { text: fix, span } }),
    });
  });

  test('where the column has no name, the sentence says here', () => {
    expect(diagnosticOf('8', { wanted: inUnit('in') })).toEqual({
      from: 0,
      to: 1,
      why: 'This gives a plain number; a length is wanted here: write 8 in.',
      fix: { text: '8 in', span: { from: 0, to: 1 } },
    });
  });
});
