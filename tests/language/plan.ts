// A small invented plan for the checker's tests: sheets with every type of column, and functions with every form of
// signature. `checked` and `diagnosticOf` check a formula as if it stood in Plantings.

import { type CheckContext, checkFormula } from '../../engine/language/checker.ts';
import { parseFormula } from '../../engine/language/parser.ts';
import type { Parameter, Pattern, Result, Signature, ValuePattern } from '../../engine/language/signature.ts';
import type { Diagnostic } from '../../engine/language/tree.ts';
import type { Catalog, ColumnShape, TableShape, Typed } from '../../engine/language/typed.ts';
import { AREA, LENGTH, MASS, NONE, TIME } from '../../engine/units/dimension.ts';
import { createVocabulary } from '../../engine/units/vocabulary.ts';
import { DATE, TEXT, type ValueType, YESNO } from '../../engine/values/type.ts';
import { wordOf } from '../../sheets-templates/names.ts';

export const vocabulary = createVocabulary({ currency: 'EUR' });

export function inUnit(symbol: string): ValueType {
  const unit = vocabulary.find(symbol);
  if (unit === undefined) throw new Error(`no unit ${symbol}`);
  return unit.offset === 0 ? { kind: 'number', dimension: unit.dimension, unit } : { kind: 'temperature', unit };
}

export function choice(...options: readonly string[]): ValueType {
  return { kind: 'choice', options };
}

/** A column whose id is the word of its name, so that no test takes one for the other. */
export function column(name: string, type: ValueType | undefined): ColumnShape {
  return { id: wordOf(name), name, type };
}

/** A sheet of many rows, with its id made likewise. */
export function sheet(name: string, columns: readonly ColumnShape[], key?: string): TableShape {
  return { id: wordOf(name), name, oneRow: false, key: key === undefined ? undefined : wordOf(key), columns };
}

/** A link to the sheet of that name. */
export function link(table: string): ValueType {
  return { kind: 'link', table: wordOf(table), called: table };
}

export const CATALOG: Catalog = {
  tables: [
    {
      ...sheet('Farm', [
        column('Farm name', TEXT),
        column('Bed width', inUnit('in')),
        column('Confidence', inUnit('%')),
        column('Wage', inUnit('EUR/h')),
        column('Last frost', DATE),
        column('Beds per field', inUnit('')),
      ]),
      oneRow: true,
    },
    sheet('Crops', [column('Crop', TEXT), column('Family', TEXT), column('Seeds per gram', inUnit('seeds/g'))], 'Crop'),
    sheet(
      'Varieties',
      [
        column('Variety', TEXT),
        column('Crop', link('Crops')),
        column('Germination', inUnit('%')),
        column('Days to maturity', inUnit('day')),
        column('Broken', undefined),
      ],
      'Variety',
    ),
    sheet(
      'Seed lots',
      [column('Lot', TEXT), column('Quantity', inUnit('seeds')), column('Variety', link('Varieties'))],
      'Lot',
    ),
    sheet(
      'Beds',
      [column('Bed', TEXT), column('Field', TEXT), column('Length', inUnit('ft')), column('Area', inUnit('ft2'))],
      'Bed',
    ),
    sheet(
      'Plantings',
      [
        column('Planting', TEXT),
        column('Variety', link('Varieties')),
        column('Bed', link('Beds')),
        column('Start', choice('blocks', 'sets')),
        column('Cover', choice('none', 'fleece')),
        column('Treated', YESNO),
        column('Length', inUnit('ft')),
        column('Row spacing', inUnit('in')),
        column('Area', inUnit('ft2')),
        column('Mass', inUnit('lb')),
        column('Yield per length', inUnit('lb/ft')),
        column('Price', inUnit('EUR/lb')),
        column('Rows', inUnit('')),
        column('Seeds', inUnit('seeds')),
        column('Share', inUnit('%')),
        column('Days', inUnit('day')),
        column('Sown', DATE),
        column('Planted out', DATE),
        column('Low', inUnit('degF')),
        column('High', inUnit('degF')),
        column('Note', TEXT),
        column('Unchecked', undefined),
      ],
      'Planting',
    ),
  ],
};

const A: ValuePattern = { is: 'letter', letter: 'A', among: 'anything' };
const N: ValuePattern = { is: 'letter', letter: 'N', among: 'numbers' };
const O: ValuePattern = { is: 'letter', letter: 'O', among: 'ordered' };
const columnOf = (of: Pattern): Pattern => ({ is: 'column', of });
const valuesOf = (of: Pattern): Pattern => ({ is: 'values', of });
const plain: ValuePattern = { is: 'quantity', dimension: NONE };
const anything: Pattern = { is: 'anything' };

function needed(name: string, pattern: Pattern, more: Partial<Parameter> = {}): Parameter {
  return { name, pattern, ...more };
}

function optional(name: string, pattern: Pattern): Parameter {
  return { name, pattern, optional: true };
}

function signature(
  name: string,
  result: Result,
  parameters: readonly Parameter[],
  repeating = 0,
  more: Pick<Signature, 'otherwise'> = {},
): Signature {
  const doc = `What ${name} gives.`;
  return { name, group: 'mathematics', parameters, repeating, result, doc, source: 'a test', ...more };
}

const CONDITION = [needed('range', columnOf(anything)), needed('condition', { is: 'condition' })];

export const FUNCTIONS: ReadonlyMap<string, Signature> = new Map(
  [
    signature('IF', A, [needed('condition', { is: 'yesno' }), needed('then', A), optional('otherwise', A)]),
    signature('IFERROR', A, [needed('value', A), needed('otherwise', A)]),
    signature('SWITCH', A, [needed('value', O), needed('case', O), needed('result', A)], 2, { otherwise: true }),
    signature('IFS', A, [needed('condition', { is: 'yesno' }), needed('result', A)], 2),
    signature('AND', { is: 'yesno' }, [needed('condition', valuesOf({ is: 'yesno' }))], 1),
    signature('SUM', N, [needed('number', valuesOf(N))], 1),
    signature('MAX', O, [needed('value', valuesOf(O))], 1),
    signature('COUNTA', plain, [needed('value', valuesOf(anything))], 1),
    signature('AVERAGE', O, [needed('value', valuesOf(O))], 1),
    signature('SUMIFS', N, [needed('total', columnOf(N)), ...CONDITION], 2),
    signature('COUNTIF', plain, CONDITION),
    signature('SQRT', { is: 'power', letter: 'N', exponent: 0.5 }, [needed('number', N)]),
    signature(
      'SLOPE',
      {
        is: 'product',
        powers: [
          { letter: 'N', exponent: 1 },
          { letter: 'X', exponent: -1 },
        ],
      },
      [needed('y', columnOf(N)), needed('x', columnOf({ is: 'letter', letter: 'X', among: 'numbers' }))],
    ),
    signature(
      'POWER',
      {
        is: 'rule',
        rule: ([base, exponent]) => {
          if (base?.type?.kind !== 'number') return 'POWER wants a number.';
          return typeof exponent?.constant === 'number' && exponent.constant === 2 ? base.type : 'POWER wants 2 here.';
        },
      },
      [needed('base', N), optional('exponent', plain)],
    ),
    signature('XLOOKUP', A, [
      needed('wanted', { is: 'letter', letter: 'K', among: 'anything' }),
      needed('keys', columnOf({ is: 'letter', letter: 'K', among: 'anything' })),
      needed('results', columnOf(A)),
      optional('missing', A),
    ]),
    signature('ROWS', plain, [needed('sheet', { is: 'table' })]),
    signature('TODAY', { is: 'date' }, []),
    signature('DATE', { is: 'date' }, [needed('year', plain), needed('month', plain), needed('day', plain)]),
    signature('YEAR', plain, [needed('date', { is: 'date' })]),
    signature('LEFT', { is: 'text' }, [needed('text', { is: 'text' }), optional('count', plain)]),
    signature('VALUE', plain, [needed('text', { is: 'text' })]),
    signature('TRAYAREA', { is: 'quantity', dimension: AREA }, [
      needed('length', { is: 'quantity', dimension: LENGTH }),
    ]),
    signature('WEIGH', { is: 'quantity', dimension: MASS }, [
      needed('share', plain),
      optional('length', { is: 'quantity', dimension: LENGTH }),
    ]),
    signature('HOURS', plain, [needed('time', { is: 'quantity', dimension: TIME }, { unit: 'h', plain: true })]),
    signature('WARMTH', { is: 'temperature' }, [
      needed('temperature', { is: 'temperature' }, { unit: 'degC', plain: true }),
    ]),
    signature('COLD', { is: 'yesno' }, [needed('temperature', { is: 'temperature' })]),
  ].map((one) => [one.name, one]),
);

export function isUnitHere(symbol: string): boolean {
  return vocabulary.find(symbol) !== undefined;
}

export function contextOf(more: Partial<CheckContext> = {}): CheckContext {
  return { catalog: CATALOG, table: 'plantings', functions: FUNCTIONS, vocabulary, ...more };
}

/** The typed tree of a formula that must check. */
export function checked(text: string, more: Partial<CheckContext> = {}): Typed {
  const parsed = parseFormula(text, isUnitHere);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.diagnostic.why}`);
  const result = checkFormula(parsed.tree, contextOf(more));
  if (!result.ok) throw new Error(`${text}: ${result.diagnostic.why}`);
  return result.typed;
}

/** What is said of a formula that must not check. */
export function diagnosticOf(text: string, more: Partial<CheckContext> = {}): Diagnostic {
  const parsed = parseFormula(text, isUnitHere);
  if (!parsed.ok) throw new Error(`${text} is no formula: ${parsed.diagnostic.why}`);
  const result = checkFormula(parsed.tree, contextOf(more));
  if (result.ok) throw new Error(`${text} checked without diagnostic`);
  return result.diagnostic;
}

/** 'number in', 'temperature degF', 'date', 'link Varieties': a type in short. */
export function shortType(type: ValueType): string {
  if (type.kind === 'number' || type.kind === 'temperature') return `${type.kind} ${type.unit.symbol}`.trim();
  if (type.kind === 'link') return `link ${type.called ?? type.table}`;
  return type.kind === 'choice' ? `choice ${type.options.join('/')}` : type.kind;
}
