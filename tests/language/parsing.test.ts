// Reading formulas: strength of operators after OpenFormula (ODF 1.3 part 4, 5.5), places of the parts, units after
// numbers, and what is said of a text that is no formula.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseFormula } from '../../engine/language/parser.ts';
import type { Diagnostic, Tree } from '../../engine/language/tree.ts';
import { isUnit } from './trees.ts';

function treeOf(text: string): Tree {
  const parsed = parseFormula(text, isUnit);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.diagnostic.why}`);
  return parsed.tree;
}

function diagnosticOf(text: string): Diagnostic {
  const parsed = parseFormula(text, isUnit);
  if (parsed.ok) throw new Error(`${text} was read without diagnostic`);
  return parsed.diagnostic;
}

/** The tree with every operation in parentheses, so that a text shows its structure. */
function grouped(tree: Tree): string {
  switch (tree.tree) {
    case 'number':
      return String(tree.value);
    case 'quantity':
      return `${tree.value} ${tree.unit}`;
    case 'cell':
      return tree.path.map((name) => name.text).join('.');
    case 'unary':
      return tree.operator === '%' ? `(${grouped(tree.operand)}%)` : `(${tree.operator}${grouped(tree.operand)})`;
    case 'binary':
      return `(${grouped(tree.left)} ${tree.operator} ${grouped(tree.right)})`;
    default:
      return tree.tree;
  }
}

describe('operators hold as in OpenFormula 5.5', () => {
  test.each([
    ['1+2*3', '(1 + (2 * 3))'],
    ['1-2-3', '((1 - 2) - 3)'],
    ['8/4/2', '((8 / 4) / 2)'],
    ['2^3^2', '((2 ^ 3) ^ 2)'],
    ['-2^2', '((-2) ^ 2)'],
    ['2^-1', '(2 ^ (-1))'],
    ['2^50%', '(2 ^ (50%))'],
    ['-50%', '((-50)%)'],
    ['5%*2', '((5%) * 2)'],
    ['1+2&3+4', '((1 + 2) & (3 + 4))'],
    ['1&2=3&4', '((1 & 2) = (3 & 4))'],
    ['1<2=3', '((1 < 2) = 3)'],
    ['--2', '(-(-2))'],
    ['2*-3', '(2 * (-3))'],
  ])('%s', (text, structure) => {
    expect(grouped(treeOf(text))).toBe(structure);
  });
});

describe('a number takes the unit that follows it', () => {
  test.each([
    ['8 in', '8 in'],
    ['8in', '8 in'],
    ['2.5 lb/ft', '2.5 lb/ft'],
    ['2.5 lb / ft2', '2.5 lb/ft2'],
    ['8 ft^2', '8 ft^2'],
    ['8 m²', '8 m²'],
    ['3 fl oz', '3 fl oz'],
    ['5 €/lb', '5 €/lb'],
    ['1e3 ft', '1000 ft'],
    ['.5 ft', '0.5 ft'],
    ['8 ft / [Row spacing]', '(8 ft / Row spacing)'],
    ['8 ft / 2 in', '(8 ft / 2 in)'],
    ['8 ft ^ [N]', '(8 ft ^ N)'],
    ['8 ft^2.5', '(8 ft ^ 2.5)'],
  ])('%s', (text, structure) => {
    expect(grouped(treeOf(text))).toBe(structure);
  });

  test('but not a word that opens a call or a column', () => {
    expect(treeOf('8 ft / in(2)')).toMatchObject({ tree: 'binary', right: { tree: 'call', name: { text: 'IN' } } });
    expect(treeOf('8 ft / in[A]')).toMatchObject({ tree: 'binary', right: { tree: 'column', table: { text: 'in' } } });
  });
});

describe('every part knows its place', () => {
  test('operators, operands and units', () => {
    expect(treeOf('= ( [A] + 8 in ) * 2')).toMatchObject({
      from: 2,
      to: 20,
      operatorSpan: { from: 17, to: 18 },
      left: { from: 4, to: 14, right: { from: 10, to: 14, unitSpan: { from: 12, to: 14 } } },
      right: { from: 19, to: 20 },
    });
  });

  test('calls, their names and what is left out', () => {
    expect(treeOf('IF([A]; ;"x")')).toMatchObject({
      from: 0,
      to: 13,
      name: { from: 0, to: 2 },
      args: [
        { from: 3, to: 6 },
        { tree: 'missing', from: 8, to: 8 },
        { from: 9, to: 12 },
      ],
    });
  });

  test('links and columns', () => {
    expect(treeOf('[A].[B]')).toMatchObject({
      path: [
        { from: 0, to: 3 },
        { from: 4, to: 7 },
      ],
    });
    expect(treeOf("'Seed lots'[Lot]")).toMatchObject({ table: { from: 0, to: 11 }, column: { from: 11, to: 16 } });
  });
});

test('a trailing separator leaves its last argument out', () => {
  expect(treeOf('IF([A];1;)')).toMatchObject({ args: [{}, {}, { tree: 'missing' }] });
  expect(treeOf('F(;)')).toMatchObject({ args: [{ tree: 'missing' }, { tree: 'missing' }] });
  expect(treeOf('F()')).toMatchObject({ args: [] });
});

test('TRUE and FALSE stand bare or with parentheses, in any case', () => {
  expect(treeOf('true')).toMatchObject({ tree: 'yesno', value: true });
  expect(treeOf('False()')).toMatchObject({ tree: 'yesno', value: false });
});

describe('what is wrong with a text is said once, in place, with the fix where one is plain', () => {
  test.each<[string, number, number, string, string?]>([
    ['', 0, 0, 'The formula is empty: write what the column should hold.'],
    ['=', 1, 1, 'The formula is empty: write what the column should hold.'],
    ['[Length * 2', 0, 11, 'This [ is not closed: put ] after the name of the column.'],
    ['[Length * [Width]', 0, 10, 'This [ is not closed: put ] after the name of the column.'],
    ['[ ] * 2', 0, 3, 'Write the name of a column between the brackets.'],
    ['"abc', 0, 4, 'This text is not closed: put " at its end.'],
    ["'Seed lots[Lot]", 0, 15, "This ' is not closed: put ' after the name of the table."],
    ["''[Lot]", 0, 2, 'Write the name of a table between the quotes.'],
    ['(1 + 2', 0, 1, 'This ( is not closed: put ) where it ends.'],
    ['SUM(1; 2', 0, 8, 'SUM( is not closed: put ) after its last part.'],
    ['SUM(', 0, 3, 'SUM( is not closed: put ) after its last part.'],
    ['1 + 2)', 5, 6, 'This ) closes nothing; take it out, or put ( where it should begin.'],
    ['()', 0, 2, 'Nothing stands between these parentheses.'],
    ['[A] +', 4, 5, 'Something is missing after +.'],
    ['[A] * / 2', 4, 5, 'Something is missing after *.'],
    ['* 2', 0, 1, 'Something is missing before *.'],
    ['SUM(; * 2)', 6, 7, 'Something is missing before *.'],
    ['(', 0, 1, 'Something is missing at the end.'],
    ['[A] [B]', 4, 7, 'An operator such as + or * is missing before this.'],
    ['2 SUM([A])', 2, 5, 'An operator such as + or * is missing before this.'],
    ['3 banana', 2, 8, 'banana is not a unit that Dibble knows.'],
    ['[A] + 3 banana', 8, 14, 'banana is not a unit that Dibble knows.'],
    ['SUM(2 ft banana)', 9, 15, 'banana is not a unit that Dibble knows.'],
    ['(2 in 3)', 6, 7, 'An operator such as + or * is missing before this.'],
    ['[A] banana', 4, 10, 'An operator such as + or * is missing before this.'],
    ['1 + 2 ft 6 in', 4, 13, 'Write the parts of a measure as a sum: (2 ft + 6 in).', '(2 ft + 6 in)'],
    ['2 ft 6 in', 0, 9, 'Write the parts of a measure as a sum: (2 ft + 6 in).', '(2 ft + 6 in)'],
    ['2,5 * 3', 0, 3, 'The decimal mark in a formula is a point: 2.5.', '2.5'],
    ['3 * 2,5 in', 4, 10, 'The decimal mark in a formula is a point: 2.5 in.', '2.5 in'],
    ['(2,[A])', 2, 3, ', only separates the parts of a function; take it out or put an operator in its place.'],
    ['[A]; 2', 3, 4, '; only separates the parts of a function; take it out or put an operator in its place.'],
    ['[A].2', 3, 5, 'An operator such as + or * is missing before this.'],
    ['[A].B', 3, 4, 'After the point the name of a column in brackets is wanted, as in [Variety].[Crop].'],
    ['. [A]', 0, 1, 'A point stands between a link and a column, as in [Variety].[Crop].'],
    ['2 . [A]', 2, 3, '. has no place here.'],
    ['Beds[Field].[Area]', 11, 12, 'A link can be followed from this row only: start with a column of this sheet.'],
    ['8" * 2', 0, 2, 'Inches and feet are written with letters in a formula: 8 in.', '8 in'],
    ["8' * 2", 0, 2, 'Inches and feet are written with letters in a formula: 8 ft.', '8 ft'],
    ['[A] == 2', 4, 6, 'Equal is written with one sign: =.', '='],
    ['[A] != 2', 4, 6, 'Unequal is written <>.', '<>'],
    ['[A] => 2', 4, 6, 'At least is written >=.', '>='],
    ['[A] =< 2', 4, 6, 'At most is written <=.', '<='],
    ['2 ** 3', 2, 4, 'A power is written with ^.', '^'],
    ['A1:B3', 2, 3, 'Columns are named whole, not by ranges of cells: write Table[Column].'],
    ['“abc”', 0, 1, 'Put text between straight quotes: "text".'],
    ['‘Seed lots’', 0, 1, "Put the name of a table between straight quotes: 'Seed lots'."],
    ['A]', 1, 2, 'This ] closes nothing: put [ before the name of the column.'],
    ['{1;2}', 0, 1, 'Lists of values are not written in formulas; put them in a table and name its column.'],
    ['$5', 0, 1, 'Write the amount before its currency: 5 $.'],
    ['[A] # 2', 4, 5, '# has no meaning in a formula; take it out.'],
    ['1e999', 0, 5, 'This number is too large to reckon with.'],
  ])('%s', (text, from, to, why, fix) => {
    const diagnostic = diagnosticOf(text);
    expect(diagnostic).toMatchObject({ from, to, why });
    expect(diagnostic.fix).toEqual(fix === undefined ? undefined : { text: fix, span: { from, to } });
  });
});

describe('depth is bounded, so that nothing later runs out of stack', () => {
  test('200 parts within each other are read, 201 are refused', () => {
    expect(treeOf(`${'('.repeat(200)}1${')'.repeat(200)}`)).toMatchObject({ tree: 'number' });
    const deep = diagnosticOf(`${'('.repeat(201)}1${')'.repeat(201)}`);
    expect(deep.why).toBe(
      'More than 200 parts stand within each other here; put some of them in a column of their own.',
    );
    expect(diagnosticOf('-'.repeat(8000)).why).toBe(deep.why);
    expect(diagnosticOf('SUM('.repeat(2000)).why).toBe(deep.why);
  });

  test('8,192 letters are read, one more is refused before anything is cut', () => {
    const long = `1${' '.repeat(8190)}`;
    expect(treeOf(`${long} `)).toMatchObject({ tree: 'number' });
    expect(diagnosticOf(`${long}  `)).toMatchObject({
      from: 8192,
      to: 8193,
      why: expect.stringContaining('at most 8192 letters'),
    });
  });

  test('255 parts of a call are read, one more is refused at its place', () => {
    const call = (count: number): string => `SUM(${Array(count).fill('1').join(';')})`;
    expect(treeOf(call(255))).toMatchObject({ tree: 'call' });
    expect(diagnosticOf(call(256))).toMatchObject({
      from: 514,
      to: 515,
      why: expect.stringContaining('at most 255 parts'),
    });
    expect(diagnosticOf(`SUM(${';'.repeat(4000)})`).why).toContain('at most 255 parts');
  });

  test('twelve units divided make one, thousands are refused in a sentence', () => {
    const divided = (count: number): string => `1 m${'/m'.repeat(count - 1)}`;
    expect(treeOf(divided(12))).toMatchObject({ tree: 'quantity' });
    expect(diagnosticOf(divided(13)).why).toContain('at most 12 others');
    expect(diagnosticOf(divided(4000)).why).toContain('at most 12 others');
  });

  test('a chain of 900 steps is read, one of 1,100 is refused', () => {
    expect(treeOf(Array(900).fill('1').join('+'))).toMatchObject({ tree: 'binary' });
    expect(diagnosticOf(Array(1100).fill('1').join('+')).why).toBe(
      'This has more than 1000 steps in one chain; spread it over two columns, or total a column.',
    );
  });
});

test('random text never makes the reader fail, and its diagnostics lie within the text', () => {
  const signs = fc.constantFrom(
    ...'[]()\'";,.+-*/^&=<>%12 eAIF!#°€:{}',
    'in',
    'ft',
    '[A]',
    'SUM(',
    '8 lb/ft',
    '"x"',
    "'T'",
    '=',
  );
  const texts = fc.oneof(
    fc.array(signs, { maxLength: 14 }).map((parts) => parts.join('')),
    fc.string({ unit: 'binary' }),
  );
  fc.assert(
    fc.property(texts, (text) => {
      const parsed = parseFormula(text, isUnit);
      const span = parsed.ok ? parsed.tree : parsed.diagnostic;
      expect(span.from).toBeGreaterThanOrEqual(0);
      expect(span.to).toBeGreaterThanOrEqual(span.from);
      expect(span.to).toBeLessThanOrEqual(text.length);
    }),
    { numRuns: 5000 },
  );
});
