// Blanks are unknown here and nought there, so random formulas over tables with blanks are held against this engine's own
// rule instead: what is reckoned from a blank is blank, what goes over a column passes blanks by, and only ISBLANK, &, AND, OR
// and IF have a say of their own.

import { describe, expect, test } from 'vitest';
import { ownResults, type Value } from './engines.ts';
import { type Expression, ownText, partsOf } from './expression.ts';
import { CALLS } from './functions.ts';
import { constant, Generator } from './generator.ts';
import { type Random, randomFrom, seedOfRun } from './random.ts';
import {
  type Cell,
  COLUMN_NAMES,
  COLUMNS,
  type ColumnName,
  lastRow,
  MAIN,
  randomTables,
  type Tables,
} from './tables.ts';

const ROWS = lastRow('Amount');
const ALL_ROWS = Array.from({ length: ROWS }, (_, row) => row);
const FORMULAS = 400;
const ROUNDS = 10;

/** Functions that have a say of their own about blanks or errors, or that look over columns. */
const OWN_SAY = new Set(
  `IF IFS SWITCH CHOOSE IFERROR IFNA AND OR ISBLANK ISERROR ISERR ISNA ISNUMBER ISTEXT ISNONTEXT ISLOGICAL N T CONCATENATE
  SUM PRODUCT SUMSQ GCD LCM COUNT COUNTA COUNTBLANK MIN MAX AVERAGE MEDIAN STDEV STDEV.S STDEVP STDEV.P VAR VAR.S VARP VAR.P
  AVEDEV DEVSQ GEOMEAN HARMEAN SKEW TEXTJOIN NPV`.split(/\s+/),
);

const seed = seedOfRun();

/** Every cell of the main table blank at a chance; the key of blanks by column. */
function withBlanks(tables: Tables, random: Random, share: number): Tables {
  const holed = (name: ColumnName): readonly Cell[] =>
    tables.columns[name].map((cell) => (COLUMNS[name].table === MAIN && random.chance(share) ? '' : cell));
  return { ...tables, columns: columnsBy(holed) };
}

function columnsBy(of: (name: ColumnName) => readonly Cell[]): Tables['columns'] {
  return Object.fromEntries(COLUMN_NAMES.map((name) => [name, of(name)])) as Tables['columns'];
}

function every(of: Expression, holds: (part: Expression) => boolean): boolean {
  return holds(of) && partsOf(of).every((part) => every(part, holds));
}

/** Reckons with this row alone, by functions and operators that a blank makes blank. */
function isStrict(of: Expression): boolean {
  return every(of, (part) => {
    if (part.is === 'column' || part.is === 'table') return false;
    if (part.is === 'binary') return part.operator !== '&';
    return part.is !== 'call' || !OWN_SAY.has(part.name);
  });
}

function cellsOf(of: Expression): readonly ColumnName[] {
  return of.is === 'cell' ? [of.column] : partsOf(of).flatMap(cellsOf);
}

function isError(value: Value | undefined): boolean {
  return typeof value === 'object' && value !== null;
}

function strictFormulas(generator: Generator): readonly Expression[] {
  const names = [...CALLS.keys()];
  const formulas: Expression[] = [];
  while (formulas.length < FORMULAS) {
    const { random } = generator;
    const depth = random.whole(1, 3);
    const formula = random.chance(0.4) ? generator.operation(depth) : generator.callOf(random.pick(names), depth);
    if (isStrict(formula)) formulas.push(formula);
  }
  return formulas;
}

describe(`blanks, seed ${seed}`, () => {
  test('what is reckoned from a blank is blank; all else is as without blanks', () => {
    let blanks = 0;
    for (let round = 0; round < ROUNDS; round++) {
      const random = randomFrom(seed + round);
      const full = randomTables(random);
      const holed = withBlanks(full, random, 0.25);
      const formulas = strictFormulas(new Generator(random, CALLS));
      const before = ownResults(full, formulas, ALL_ROWS);
      const after = ownResults(holed, formulas, ALL_ROWS);
      formulas.forEach((formula, at) => {
        for (const row of ALL_ROWS) {
          const isUnknown = cellsOf(formula).some((name) => holed.columns[name][row] === '');
          const [was, now] = [before[at]?.[row], after[at]?.[row]];
          // An error in a part that rests on no blank may win over the blank.
          if (isUnknown && isError(now)) continue;
          if (isUnknown) blanks += 1;
          expect(now, `${ownText(formula)} in row ${row}`).toEqual(isUnknown ? null : was);
        }
      });
    }
    expect(blanks).toBeGreaterThan(1000);
  });

  test('what goes over a column gives the same as over the column without its blank rows', () => {
    const overColumns = (g: Generator): Expression => {
      const kind = g.random.pick(['number', 'number', 'date'] as const);
      const name = g.random.pick(FOLDS);
      const column = g.column(NUMBERS_ONLY.has(name) ? 'number' : kind, MAIN);
      return { is: 'call', kind: resultOf(name, column), name, args: [column, ...(EXTRA.get(name) ?? [])] };
    };
    for (let round = 0; round < ROUNDS; round++) {
      const random = randomFrom(seed + 1000 + round);
      const full = randomTables(random);
      const holed = withBlanks(full, random, 0.3);
      const formulas = Array.from({ length: 100 }, () => overColumns(new Generator(random, CALLS)));
      const given = ownResults(holed, formulas, [0]);
      // Blanks go to the end, so that the others stand together in their order, and the rows left over are blank in both.
      const packed: Tables = { ...holed, columns: columnsBy((name) => packedColumn(holed.columns[name])) };
      const wanted = ownResults(packed, formulas, [0]);
      formulas.forEach((formula, at) => {
        expect(given[at], ownText(formula)).toEqual(wanted[at]);
      });
      const counts = ownResults(
        holed,
        COUNTS.map(([count]) => count),
        [0],
      );
      COUNTS.forEach(([count, column, blank], at) => {
        const filled = holed.columns[column].filter((cell) => (cell === '') === blank).length;
        expect(counts[at], ownText(count)).toEqual([filled]);
      });
    }
  });

  test('AND, OR, IF, ISBLANK and & have their say', () => {
    const [yes, no, blank] = [constant('yesno', true), constant('yesno', false), unknown('yesno')];
    const say = (name: string, ...args: readonly Expression[]): Expression => ({
      is: 'call',
      kind: 'yesno',
      name,
      args,
    });
    const cases: readonly (readonly [Expression, Value])[] = [
      [say('AND', yes, blank), null],
      [say('AND', no, blank), false],
      [say('AND', blank, no), false],
      [say('AND', blank, yes), null],
      [say('OR', yes, blank), true],
      [say('OR', blank, yes), true],
      [say('OR', no, blank), null],
      [say('NOT', blank), null],
      [say('IF', blank, yes, no), null],
      [say('IF', yes, no, blank), false],
      [say('IF', no, yes), null],
      [say('ISBLANK', blank), true],
      [say('ISBLANK', yes), false],
      [{ is: 'binary', kind: 'text', operator: '&', args: [constant('text', 'bed '), unknown('text')] }, 'bed '],
      [{ is: 'binary', kind: 'number', operator: '+', args: [constant('number', 1), unknown('number')] }, null],
      [{ is: 'binary', kind: 'yesno', operator: '=', args: [unknown('text'), unknown('text')] }, null],
    ];
    const results = ownResults(
      randomTables(randomFrom(seed)),
      cases.map(([formula]) => formula),
      [0],
    );
    cases.forEach(([formula, wanted], at) => {
      expect(results[at], ownText(formula)).toEqual([wanted]);
    });
  });
});

const FOLDS =
  'SUM PRODUCT SUMSQ COUNT COUNTA MIN MAX AVERAGE MEDIAN STDEV STDEVP VAR VARP AVEDEV DEVSQ SKEW LARGE SMALL PERCENTILE QUARTILE'.split(
    ' ',
  );
const NUMBERS_ONLY = new Set('SUM PRODUCT SUMSQ VAR VARP DEVSQ STDEV STDEVP AVEDEV'.split(' '));
const EXTRA = new Map<string, readonly Expression[]>([
  ['LARGE', [constant('number', 2)]],
  ['SMALL', [constant('number', 2)]],
  ['PERCENTILE', [constant('number', 0.4)]],
  ['QUARTILE', [constant('number', 3)]],
]);
const ONE_NUMBER = new Set(['COUNT', 'COUNTA', 'SKEW']);

function resultOf(name: string, column: Expression): Expression['kind'] {
  return ONE_NUMBER.has(name) ? 'number' : column.kind;
}

function over(name: string, column: ColumnName): Expression {
  return { is: 'call', kind: 'number', name, args: [{ is: 'column', kind: COLUMNS[column].kind, column }] };
}

/** A count, its column, and whether it counts blanks. */
const COUNTS: readonly (readonly [Expression, ColumnName, boolean])[] = [
  [over('COUNT', 'Amount'), 'Amount', false],
  [over('COUNTA', 'Name'), 'Name', false],
  [over('COUNTA', 'Good'), 'Good', false],
  [over('COUNTBLANK', 'Sown'), 'Sown', true],
  [over('COUNTBLANK', 'Note'), 'Note', true],
];

function packedColumn(column: readonly Cell[]): readonly Cell[] {
  const filled = column.filter((cell) => cell !== '');
  return [...filled, ...column.slice(filled.length).map(() => '')];
}

/** A blank of this type: what IF gives without otherwise. */
function unknown(kind: Expression['kind']): Expression {
  const value = kind === 'number' ? 1 : kind === 'text' ? 'x' : true;
  return { is: 'call', kind, name: 'IF', args: [constant('yesno', false), constant(kind, value)] };
}
