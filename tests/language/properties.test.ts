// What holds for every formula: checking never fails whatever the tree and the sheets, diagnostics lie within the text,
// and a formula that checks is made of nodes whose types go together.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkFormula } from '../../engine/language/checker.ts';
import { parseFormula } from '../../engine/language/parser.ts';
import { printFormula } from '../../engine/language/printer.ts';
import type { Catalog, Typed } from '../../engine/language/typed.ts';
import { divideDimensions, isPlain, multiplyDimensions, sameDimension } from '../../engine/units/dimension.ts';
import { DATE, fits, TEXT, type ValueType, YESNO } from '../../engine/values/type.ts';
import { CATALOG, choice, column, contextOf, FUNCTIONS, inUnit, isUnitHere, link, sheet } from './plan.ts';
import { trees } from './trees.ts';

const NAMES = ['A', 'B', 'C', 'D', 'E', 'F'];
const TABLES = ['One', 'Two', 'Three'];

const types: fc.Arbitrary<ValueType | undefined> = fc.constantFrom<ValueType | undefined>(
  undefined,
  inUnit(''),
  inUnit('%'),
  inUnit('ft'),
  inUnit('in'),
  inUnit('lb'),
  inUnit('lb/ft'),
  inUnit('ft2'),
  inUnit('day'),
  inUnit('degC'),
  inUnit('Fdeg'),
  inUnit('EUR'),
  DATE,
  TEXT,
  YESNO,
  choice('a', 'b'),
  link('One'),
  link('Two'),
  link('Gone'),
);

const catalogs: fc.Arbitrary<Catalog> = fc
  .tuple(
    ...TABLES.map(() =>
      fc.tuple(
        fc.boolean(),
        fc.uniqueArray(fc.constantFrom(...NAMES)),
        fc.array(types, { minLength: 6, maxLength: 6 }),
      ),
    ),
  )
  .map((shapes) => ({
    tables: shapes.map(([oneRow, names, all], at) => ({
      ...sheet(
        TABLES[at] ?? '',
        names.map((name, index) => column(name, all[index])),
      ),
      oneRow,
    })),
  }));

/** Every node of a typed tree. */
function nodes(typed: Typed): readonly Typed[] {
  switch (typed.node) {
    case 'negate':
    case 'key':
      return [typed, ...nodes(typed.operand)];
    case 'binary':
      return [typed, ...nodes(typed.left), ...nodes(typed.right)];
    case 'condition':
      return [typed, ...nodes(typed.value)];
    case 'call':
      return [typed, ...typed.args.flatMap(nodes)];
    default:
      return [typed];
  }
}

/** What must hold of a node by itself: names have become ids that the catalogue has, and types go together. */
function expectSound(typed: Typed, { tables }: Catalog): void {
  if (typed.node === 'cell' || typed.node === 'single' || typed.node === 'column') {
    const table = tables.find(({ id }) => id === typed.table);
    expect(table?.columns.some(({ id }) => id === typed.column)).toBe(true);
  }
  if (typed.type.kind === 'number') expect(sameDimension(typed.type.dimension, typed.type.unit.dimension)).toBe(true);
  if (typed.node === 'key') expect(typed.operand.type.kind).toBe('link');
  if (typed.node === 'constant' && typeof typed.value === 'number') expect(Number.isNaN(typed.value)).toBe(false);
  if (typed.node !== 'binary') return;
  const [left, right] = [typed.left.type, typed.right.type];
  if (typed.operator === '&') expect(typed.type.kind).toBe('text');
  if (/^[<=>]/.test(typed.operator)) {
    expect(typed.type.kind).toBe('yesno');
    expect(fits(left, right)).toBe(true);
  }
  if (left.kind !== 'number' || right.kind !== 'number' || typed.type.kind !== 'number') return;
  const { dimension } = typed.type;
  if (typed.operator === '*')
    expect(sameDimension(dimension, multiplyDimensions(left.dimension, right.dimension))).toBe(true);
  if (typed.operator === '/')
    expect(sameDimension(dimension, divideDimensions(left.dimension, right.dimension))).toBe(true);
  if (typed.operator === '+' || typed.operator === '-') {
    expect(sameDimension(left.dimension, right.dimension)).toBe(true);
    expect(sameDimension(left.dimension, dimension)).toBe(true);
  }
  if (typed.operator === '^') expect(isPlain(right.dimension)).toBe(true);
}

test('checking never fails, whatever the tree, the sheets and the type that is wanted', () => {
  const stock = {
    columns: NAMES,
    tables: TABLES,
    functions: [...FUNCTIONS.keys(), 'NOPE'],
    texts: ['', 'x', '>=', '>=5', '<3 ft', '<>', '2027-03-15', 'yes', '>-5%'],
  };
  fc.assert(
    fc.property(
      trees(stock),
      catalogs,
      types,
      fc.constantFrom('one', 'two', 'gone', undefined),
      (tree, catalog, wanted, table) => {
        const context = contextOf({ catalog, table, ...(wanted === undefined ? {} : { wanted }) });
        const parsed = parseFormula(printFormula(tree), isUnitHere);
        if (!parsed.ok) throw new Error(parsed.diagnostic.why);
        const checked = checkFormula(parsed.tree, context);
        if (checked.ok) {
          for (const node of nodes(checked.typed)) expectSound(node, catalog);
          if (wanted !== undefined) expect(fits(wanted, checked.typed.type)).toBe(true);
          return;
        }
        const { from, to, why, fix } = checked.diagnostic;
        const { length } = printFormula(tree);
        for (const span of [{ from, to }, ...(fix === undefined ? [] : [fix.span])]) {
          expect(span.from).toBeGreaterThanOrEqual(0);
          expect(span.to).toBeGreaterThanOrEqual(span.from);
          expect(span.to).toBeLessThanOrEqual(length);
        }
        expect(why).toMatch(/[.]$/);
        expect(why).not.toMatch(/undefined|NaN|null|Infinity|\[object/);
      },
    ),
    { numRuns: 6000 },
  );
});

/** Formulas that check, made so by construction: lengths and plain numbers alone. */
const lengths: fc.Arbitrary<string> = fc.letrec<{ length: string; plain: string }>((tie) => ({
  length: fc.oneof(
    { maxDepth: 4 },
    fc.constantFrom('[Length]', '[Row spacing]', '2 ft', '30 cm', 'Farm[Bed width]', '[Bed].[Length]'),
    fc.tuple(tie('length'), fc.constantFrom('+', '-'), tie('length')).map(([a, sign, b]) => `(${a} ${sign} ${b})`),
    fc.tuple(tie('length'), tie('plain')).map(([a, b]) => `(${a} * ${b})`),
    fc.tuple(tie('length'), tie('plain')).map(([a, b]) => `${a} / ${b}`),
    tie('length').map((a) => `-${a}`),
    fc.tuple(tie('length'), tie('length')).map(([a, b]) => `IF(${a} > ${b}; ${a}; 0)`),
    fc.tuple(tie('length'), tie('length')).map(([a, b]) => `MAX(${a}; ${b})`),
    fc.tuple(tie('length'), tie('length')).map(([a, b]) => `SQRT(${a} * ${b})`),
  ),
  plain: fc.oneof(
    { maxDepth: 3 },
    fc.constantFrom('2', '15%', '[Rows]', '[Share]', 'ROWS(Beds)'),
    fc.tuple(tie('length'), tie('length')).map(([a, b]) => `(${a} / (${b}))`),
    fc.tuple(tie('plain'), tie('plain')).map(([a, b]) => `(${a} + ${b})`),
  ),
})).length;

test('formulas of lengths and plain numbers that go together always check, and give a length', () => {
  fc.assert(
    fc.property(lengths, (text) => {
      const parsed = parseFormula(text, isUnitHere);
      if (!parsed.ok) throw new Error(`${text}: ${parsed.diagnostic.why}`);
      const checked = checkFormula(parsed.tree, contextOf({ catalog: CATALOG, wanted: inUnit('yd') }));
      expect(checked.ok ? '' : `${text}: ${checked.diagnostic.why}`).toBe('');
    }),
    { numRuns: 1500 },
  );
});

test('a chain as long as the reader allows checks, and so do 190 choices within each other', () => {
  const chain = parseFormula(Array(700).fill('[Length]').join(' + '), isUnitHere);
  expect(chain.ok && checkFormula(chain.tree, contextOf())).toMatchObject({ ok: true });
  const nested = parseFormula(`${'IF([Treated]; 0; '.repeat(190)}[Mass]${')'.repeat(190)}`, isUnitHere);
  expect(nested.ok && checkFormula(nested.tree, contextOf())).toMatchObject({ ok: true });
});
