// The tree of a formula part by part: places of every kind of part, what is left out of a call, where the bounds on depth
// lie, and each sentence about a text that can't go on, with what it marks.

import { describe, expect, test } from 'vitest';
import { parseFormula } from '../../engine/language/parser.ts';
import type { UnitHelp } from '../../engine/language/stray.ts';
import type { Diagnostic, Tree } from '../../engine/language/tree.ts';
import { isUnit } from './trees.ts';

function treeOf(text: string): Tree {
  const parsed = parseFormula(text, isUnit);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.diagnostic.why}`);
  return parsed.tree;
}

function diagnosticOf(text: string, help?: UnitHelp): Diagnostic {
  const parsed = parseFormula(text, isUnit, help);
  if (parsed.ok) throw new Error(`${text} was read without diagnostic`);
  return parsed.diagnostic;
}

describe('every kind of part', () => {
  test.each<[string, Tree]>([
    [' 7', { tree: 'number', value: 7, from: 1, to: 2 }],
    ['=7', { tree: 'number', value: 7, from: 1, to: 2 }],
    [' = 7', { tree: 'number', value: 7, from: 3, to: 4 }],
    ['8 in', { tree: 'quantity', value: 8, unit: 'in', unitSpan: { from: 2, to: 4 }, from: 0, to: 4 }],
    [' "a b"', { tree: 'text', value: 'a b', from: 1, to: 6 }],
    [' FALSE ', { tree: 'yesno', value: false, from: 1, to: 6 }],
    ['False()', { tree: 'yesno', value: false, from: 0, to: 7 }],
    ['true( )', { tree: 'yesno', value: true, from: 0, to: 7 }],
    ['(TRUE)', { tree: 'yesno', value: true, from: 1, to: 5 }],
    [' Beds', { tree: 'table', table: { text: 'Beds', from: 1, to: 5 }, from: 1, to: 5 }],
    ["'TRUE'", { tree: 'table', table: { text: 'TRUE', from: 0, to: 6 }, from: 0, to: 6 }],
    [
      ' Beds [A]',
      {
        tree: 'column',
        table: { text: 'Beds', from: 1, to: 5 },
        column: { text: 'A', from: 6, to: 9 },
        from: 1,
        to: 9,
      },
    ],
    [
      'true[A]',
      {
        tree: 'column',
        table: { text: 'true', from: 0, to: 4 },
        column: { text: 'A', from: 4, to: 7 },
        from: 0,
        to: 7,
      },
    ],
    [
      '[A] . [B].[C]',
      {
        tree: 'cell',
        path: [
          { text: 'A', from: 0, to: 3 },
          { text: 'B', from: 6, to: 9 },
          { text: 'C', from: 10, to: 13 },
        ],
        from: 0,
        to: 13,
      },
    ],
    ['- 5', { tree: 'unary', operator: '-', operand: { tree: 'number', value: 5, from: 2, to: 3 }, from: 0, to: 3 }],
    ['+5', { tree: 'unary', operator: '+', operand: { tree: 'number', value: 5, from: 1, to: 2 }, from: 0, to: 2 }],
    ['5 %', { tree: 'unary', operator: '%', operand: { tree: 'number', value: 5, from: 0, to: 1 }, from: 0, to: 3 }],
    [
      '1 <= (2)',
      {
        tree: 'binary',
        operator: '<=',
        left: { tree: 'number', value: 1, from: 0, to: 1 },
        right: { tree: 'number', value: 2, from: 6, to: 7 },
        operatorSpan: { from: 2, to: 4 },
        from: 0,
        to: 8,
      },
    ],
    [' now( )', { tree: 'call', name: { text: 'NOW', from: 1, to: 4 }, args: [], from: 1, to: 7 }],
    [
      'true(1)',
      {
        tree: 'call',
        name: { text: 'TRUE', from: 0, to: 4 },
        args: [{ tree: 'number', value: 1, from: 5, to: 6 }],
        from: 0,
        to: 7,
      },
    ],
  ])('%s', (text, tree) => {
    expect(treeOf(text)).toEqual(tree);
  });

  test.each(['=', '<>', '<', '<=', '>', '>=', '&', '+', '-', '*', '/', '^'])('%s joins two parts', (operator) => {
    expect(treeOf(`1${operator}2`)).toMatchObject({ tree: 'binary', operator });
  });
});

describe('what a call leaves out stands where it would begin', () => {
  test.each<[string, readonly string[]]>([
    ['F(;)', ['missing 2', 'missing 3']],
    ['F(,)', ['missing 2', 'missing 3']],
    ['F(1;)', ['number 2', 'missing 4']],
    ['F(1, )', ['number 2', 'missing 5']],
    ['F(;1)', ['missing 2', 'number 3']],
    ['F(;;1)', ['missing 2', 'missing 3', 'number 4']],
    ['F(1,2;3)', ['number 2', 'number 4', 'number 6']],
    ['F()', []],
  ])('%s', (text, args) => {
    const tree = treeOf(text);
    expect(tree.tree === 'call' && tree.args.map((arg) => `${arg.tree} ${arg.from}`)).toEqual(args);
  });
});

describe('a text that can not go on', () => {
  test.each<[string, string, string, string?]>([
    ['== 2', '==', 'Equal is written with one sign: =.', '='],
    [')', ')', 'This ) closes nothing; take it out, or put ( where it should begin.'],
    ['1 + )', '+', 'Something is missing after +.'],
    ['(1 + )', '+', 'Something is missing after +.'],
    ['[A] <= ', '<=', 'Something is missing after <=.'],
    ['-', '-', 'Something is missing after -.'],
    ['SUM(1; -)', '-', 'Something is missing after -.'],
    ['SUM(* 2)', '*', 'Something is missing before *.'],
    ['SUM(1, / 2)', '/', 'Something is missing before /.'],
    ['(, 2)', ',', 'Something is missing before ,.'],
    ['; 2', ';', 'Something is missing before ;.'],
    ['(.[A])', '.', 'A point stands between a link and a column, as in [Variety].[Crop].'],
    ['(', '(', 'Something is missing at the end.'],
    ['1 * (', '(', 'Something is missing at the end.'],
    ['1 + ( )', '( )', 'Nothing stands between these parentheses.'],
    ['2 * (1 + 2', '(', 'This ( is not closed: put ) where it ends.'],
    ['(1 2)', '2', 'An operator such as + or * is missing before this.'],
    ['(1; 2)', ';', '; only separates the parts of a function; take it out or put an operator in its place.'],
    ['1 + sum(1; 2', 'sum(1; 2', 'SUM( is not closed: put ) after its last part.'],
    ['1 + sum( [A]; ', 'sum( [A]', 'SUM( is not closed: put ) after its last part.'],
    ['sum(', 'sum', 'SUM( is not closed: put ) after its last part.'],
    ['SUM(1 [A])', '[A]', 'An operator such as + or * is missing before this.'],
    ['[A].', '.', 'After the point the name of a column in brackets is wanted, as in [Variety].[Crop].'],
    ["1 + 'B'[X].[Y]", '.', 'A link can be followed from this row only: start with a column of this sheet.'],
    ['3 banana + 1', 'banana', 'banana is not a unit that Dibble knows.'],
    ['3 banana)', 'banana', 'banana is not a unit that Dibble knows.'],
    ['2 ft banana', 'banana', 'banana is not a unit that Dibble knows.'],
    ['3 banana[A]', 'banana', 'An operator such as + or * is missing before this.'],
    ['3 banana(2)', 'banana', 'An operator such as + or * is missing before this.'],
    ['3 "x"', '"x"', 'An operator such as + or * is missing before this.'],
    ['"x" banana', 'banana', 'An operator such as + or * is missing before this.'],
    ['2 6 in', '6 in', 'An operator such as + or * is missing before this.'],
    ['2 ft [A]', 'ft', 'An operator such as + or * is missing before this.'],
    ['3 * 2 ft  6 in', '2 ft  6 in', 'Write the parts of a measure as a sum: (2 ft + 6 in).', '(2 ft + 6 in)'],
    ['2 )', ')', 'This ) closes nothing; take it out, or put ( where it should begin.'],
    ['2 , 5', '2 , 5', 'The decimal mark in a formula is a point: 2.5.', '2.5'],
    ['2;5', ';', '; only separates the parts of a function; take it out or put an operator in its place.'],
    ['2 in, 5', ',', ', only separates the parts of a function; take it out or put an operator in its place.'],
    ['[A], 5', ',', ', only separates the parts of a function; take it out or put an operator in its place.'],
    ['1, [A]', ',', ', only separates the parts of a function; take it out or put an operator in its place.'],
    ['2 (3)', '(', '( has no place here.'],
    ['"x".[A]', '.', '. has no place here.'],
    [
      'BULBSALE().[Price]',
      '.',
      'A column is read off a link or off figures that stand in a column: put what is before the point in a column of its own, and name Price there, as in [Column].[Price].',
    ],
  ])('%s', (text, marked, why, fix) => {
    const { from, to, ...said } = diagnosticOf(text);
    expect(text.slice(from, to)).toBe(marked);
    expect(said).toEqual(fix === undefined ? { why } : { why, fix: { text: fix, span: { from, to } } });
  });

  test('what is said of a word that is no unit, and its fix, come from whoever knows the units', () => {
    const help: UnitHelp = (symbol) => ({ why: `${symbol} is unknown.`, fix: 'in' });
    expect(diagnosticOf('3 inchs', help)).toEqual({
      from: 2,
      to: 7,
      why: 'inchs is unknown.',
      fix: { text: 'in', span: { from: 2, to: 7 } },
    });
  });
});

/** '1+1+1': a chain of that many parts. */
function chain(parts: number): string {
  return Array(parts).fill('1').join('+');
}

describe('depth', () => {
  test('a chain of 1,000 parts is read, one more is refused at its place', () => {
    expect(treeOf(chain(1000))).toMatchObject({ tree: 'binary', from: 0, to: 1999 });
    expect(diagnosticOf(` ${chain(1002)}`)).toEqual({
      from: 1,
      to: 2002,
      why: 'This has more than 1000 steps in one chain; spread it over two columns, or total a column.',
    });
  });

  test.each([
    ['at the right', (long: string) => `1-(${long})`],
    ['behind a sign', (long: string) => `-(${long})`],
    ['before a per cent sign', (long: string) => `(${long})%`],
    ['in a call', (long: string) => `F(${long})`],
    ['in a call, not last', (long: string) => `F(1;${long};1)`],
  ])('a chain %s counts one step more', (_, around) => {
    expect(treeOf(around(chain(999)))).toMatchObject({ from: 0 });
    expect(diagnosticOf(around(chain(1000))).why).toBe(
      'This has more than 1000 steps in one chain; spread it over two columns, or total a column.',
    );
  });

  test('only what stands within each other counts, not what stands side by side', () => {
    expect(treeOf(Array(300).fill('(1)').join('+'))).toMatchObject({ tree: 'binary' });
    expect(treeOf(Array(300).fill('-1').join('+'))).toMatchObject({ tree: 'binary' });
    expect(treeOf(`F(${Array(255).fill('F(1)').join(';')})`)).toMatchObject({ tree: 'call' });
  });

  test('parentheses, signs and calls count alike: 200 are read, one more is refused at its place', () => {
    const why = 'More than 200 parts stand within each other here; put some of them in a column of their own.';
    const within = (extra: string) => `${'F('.repeat(100)}${'-('.repeat(50)}${extra}1${')'.repeat(150)}`;
    expect(treeOf(within(''))).toMatchObject({ tree: 'call' });
    expect(diagnosticOf(within('-'))).toEqual({ from: 300, to: 301, why });
    expect(diagnosticOf(within('+'))).toEqual({ from: 300, to: 301, why });
    expect(diagnosticOf(within('('))).toEqual({ from: 300, to: 301, why });
    expect(diagnosticOf(within('F('))).toEqual({ from: 301, to: 302, why });
  });
});
