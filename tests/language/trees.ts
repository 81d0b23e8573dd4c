// Random formula trees for the properties of the language, a small stock of unit words, and trees without their places,
// for comparing what was printed with what was read.

import fc from 'fast-check';
import type { BinaryOperator, Missing, Name, Tree } from '../../engine/language/tree.ts';

const WORDS = [
  'in',
  'ft',
  'yd',
  'm',
  'lb',
  'oz',
  'kg',
  'h',
  'day',
  'days',
  'acre',
  'degC',
  'EUR',
  '€',
  'fl oz',
  'sq ft',
  'seeds',
];

/** Whether a word, or words with powers and strokes, is a unit: a stand-in that knows growers' common ones. */
export function isUnit(symbol: string): boolean {
  return symbol
    .split('/')
    .every((factor) => WORDS.includes(factor) || WORDS.includes(factor.replace(/(\^\d|[23²³])$/, '')));
}

const place = { from: 0, to: 0 };

function named(text: string): Name {
  return { text, ...place };
}

/** The same tree with every place set to 0. */
export function withoutPlaces(tree: Tree): Tree {
  switch (tree.tree) {
    case 'number':
    case 'text':
    case 'yesno':
      return { ...tree, ...place };
    case 'quantity':
      return { ...tree, ...place, unitSpan: place };
    case 'cell': {
      const [first, ...rest] = tree.path;
      return { tree: 'cell', path: [named(first.text), ...rest.map((name) => named(name.text))], ...place };
    }
    case 'column':
      return { tree: 'column', table: named(tree.table.text), column: named(tree.column.text), ...place };
    case 'table':
      return { tree: 'table', table: named(tree.table.text), ...place };
    case 'unary':
      return { ...tree, operand: withoutPlaces(tree.operand), ...place };
    case 'binary':
      return {
        ...tree,
        left: withoutPlaces(tree.left),
        right: withoutPlaces(tree.right),
        operatorSpan: place,
        ...place,
      };
    case 'call':
      return {
        tree: 'call',
        name: named(tree.name.text),
        args: tree.args.map((argument) =>
          argument.tree === 'missing' ? { tree: 'missing', ...place } : withoutPlaces(argument),
        ),
        ...place,
      };
  }
}

export interface Stock {
  /** Names to draw columns, tables and functions from; anything goes where none are given. */
  readonly columns?: readonly string[];
  readonly tables?: readonly string[];
  readonly functions?: readonly string[];
  readonly texts?: readonly string[];
}

const OPERATORS: readonly BinaryOperator[] = ['+', '-', '*', '/', '^', '&', '=', '<>', '<', '<=', '>', '>='];

function someOf(given: readonly string[] | undefined, otherwise: fc.Arbitrary<string>): fc.Arbitrary<string> {
  return given === undefined ? otherwise : fc.constantFrom(...given);
}

/** Random trees as a parser could make them: names trimmed and filled, numbers not negative. */
export function trees(stock: Stock = {}): fc.Arbitrary<Tree> {
  const anyName = fc
    .oneof(
      fc.string({ unit: 'grapheme', minLength: 1, maxLength: 8 }),
      fc.constantFrom("a'b", 'a]b', '[', ']]', 'Seed lots'),
    )
    .map((name) => name.trim())
    .filter((name) => name !== '');
  const column = someOf(stock.columns, anyName).map(named);
  const table = someOf(stock.tables, anyName).map(named);
  const name = someOf(stock.functions, fc.constantFrom('SUM', 'IF', 'BINOM.DIST', 'LOG10', 'A_1')).map(named);
  const value = fc.oneof(
    fc.nat(400),
    fc.double({ min: 0, noNaN: true, noDefaultInfinity: true }).map((number) => Math.abs(number)),
  );
  const unit = fc.constantFrom(
    'in',
    'ft2',
    'ft^2',
    'm²',
    'lb/ft',
    'lb/ft^2',
    'fl oz',
    'lb/sq ft',
    'degC',
    '€',
    'day',
    'seeds',
  );
  const text = someOf(stock.texts, fc.oneof(fc.string({ unit: 'grapheme', maxLength: 8 }), fc.constantFrom('"', '""')));
  const { tree } = fc.letrec<{ tree: Tree; argument: Tree | Missing }>((tie) => ({
    tree: fc.oneof(
      { maxDepth: 5, depthSize: 'small' },
      value.map((number): Tree => ({ tree: 'number', value: number, ...place })),
      fc
        .tuple(value, unit)
        .map(([number, word]): Tree => ({ tree: 'quantity', value: number, unit: word, unitSpan: place, ...place })),
      text.map((words): Tree => ({ tree: 'text', value: words, ...place })),
      fc.boolean().map((yes): Tree => ({ tree: 'yesno', value: yes, ...place })),
      fc
        .tuple(column, fc.array(column, { maxLength: 2 }))
        .map(([first, rest]): Tree => ({ tree: 'cell', path: [first, ...rest], ...place })),
      fc.tuple(table, column).map(([sheet, part]): Tree => ({ tree: 'column', table: sheet, column: part, ...place })),
      table.map((sheet): Tree => ({ tree: 'table', table: sheet, ...place })),
      fc
        .tuple(fc.constantFrom('-' as const, '+' as const, '%' as const), tie('tree'))
        .map(([operator, operand]): Tree => ({ tree: 'unary', operator, operand, ...place })),
      fc
        .tuple(fc.constantFrom(...OPERATORS), tie('tree'), tie('tree'))
        .map(
          ([operator, left, right]): Tree => ({ tree: 'binary', operator, left, right, operatorSpan: place, ...place }),
        ),
      fc
        .tuple(name, fc.array(tie('argument'), { maxLength: 4 }))
        .filter(([, args]) => args.length !== 1 || args[0]?.tree !== 'missing')
        .map(([word, args]): Tree => ({ tree: 'call', name: word, args, ...place })),
    ),
    argument: fc.oneof(
      { weight: 6, arbitrary: tie('tree') },
      { weight: 1, arbitrary: fc.constant<Missing>({ tree: 'missing', ...place }) },
    ),
  }));
  return tree;
}
