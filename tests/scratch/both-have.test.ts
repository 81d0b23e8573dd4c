// Functions that hyperformula and the engine both have. Where they differ over a table of arguments the engine goes first, but for a few
// that are named here with the reason; what OASIS's collection of OpenFormula cases expects of those that go first is what a paper gives.

import { HyperFormula } from 'hyperformula';
import { afterAll, describe, expect, test } from 'vitest';
import {
  createVocabulary,
  FUNCTIONS,
  type FunctionDefinition,
  isError,
  parameterAt,
  type Scalar,
} from '../../engine/index.ts';
import { callPlainly, canBeCalled } from '../../ui/scratch/engine-call.ts';
import { ENGINE_FIRST } from '../../ui/scratch/engine-first.ts';
import { FROM_ENGINE } from '../../ui/scratch/engine-functions.ts';
import { PASTED } from '../../ui/scratch/inside.ts';
import { ERROR } from '../reference/openformula.case.ts';
import { SECTIONS } from '../reference/openformula.cases.ts';
import { Desk } from './paper.ts';

type Argument = number | string | boolean | { readonly cells: 'A1:A6' | 'B1:B6' };

const A: Argument = { cells: 'A1:A6' };
const B: Argument = { cells: 'B1:B6' };
const CELLS = { 'A1:A6': [3, 1.5, -2, 8, 5, 7.25], 'B1:B6': [2, 4, 6, 1, 9, 3] };
const NUMBERS = [0, 1, -1, 2, 3, 0.5, -0.2, -1.5, 2.5, 1.005, 2.675, 7, 12, 100, 1234.5, -7];
const FEW = [0, 1, 2, 3, -1, 0.5, 0.256, 4, 7, 12, -3];
const TEXTS = ['', 'abc', 'Hello World', 'aXbXc', '2.5', 'a  b ', '12%', '1,234.5', 'X', 'c\u0085d'];
// 28 February, 5 March and 1 August 2027, 28 and 29 February, 31 December and 31 January 2024.
const DAYS = [46446, 46451, 46600, 45350, 45351, 45657, 45322];

/** Not the engine's, though the two differ: what each is as the engine has it, and why a paper has it as hyperformula does. */
const HYPERFORMULAS: Readonly<Record<string, string>> = {
  'DATE HOUR MINUTE SECOND TIME TIMEVALUE':
    'a time is a part of a day on a paper, and a span with a unit in the sheets',
  VALUE: 'a paper reads days and times in texts too',
  MATCH: 'a column that is not in order has no answer that is right, and both are found by halves or in turn',
  'NETWORKDAYS SEARCH': 'they differ in what no other spreadsheet takes: parts of letters, a text for days off',
  'FDIST FINV': 'other spreadsheets mean the share above under these names, OpenFormula the share below',
  'AVERAGEIF COUNTBLANK FALSE NOT TRUE': 'those of the sheets are made for whole columns or worked out by the planner',
  'FV PV NPER': 'they differ in the last digits, and at a loss of all there is',
};
const KEPT = new Set(Object.keys(HYPERFORMULAS).flatMap((names) => names.split(' ')));

function samples(name: string, definition: FunctionDefinition, i: number, count: number): readonly Argument[] {
  if (name === 'TEXT' && i === 1) return ['0', '0.00', '0%', '#,##0', '#,##0.00', '0.00E+00', '000'];
  if (name === 'DATEDIF' && i === 2) return ['d', 'D', 'm', 'M', 'y', 'Y', 'ym', 'md', 'yd'];
  const parameter = parameterAt(definition.signature, i, count);
  switch (definition.body.lane === 'fold' ? 'values' : parameter?.pattern.is) {
    case 'date':
      return DAYS;
    case 'text':
      return TEXTS;
    case 'yesno':
      return [true, false];
    case 'column':
    case 'values':
      return [A, B];
    case 'condition':
      return [2];
    default:
      return i === 0 ? NUMBERS : FEW;
  }
}

function combinations(name: string, definition: FunctionDefinition, count: number): readonly (readonly Argument[])[] {
  let all: readonly (readonly Argument[])[] = [[]];
  for (let i = 0; i < count; i++) {
    const more = all.flatMap((begun) => samples(name, definition, i, count).map((one) => [...begun, one]));
    const step = Math.ceil(more.length / 600);
    all = more.filter((_, at) => at % step === 0);
  }
  return all;
}

function written(argument: Argument): string {
  if (typeof argument === 'object') return argument.cells;
  return typeof argument === 'string' ? `"${argument}"` : String(argument).toUpperCase();
}

function isSame(own: Scalar | readonly Scalar[], peer: unknown): boolean {
  const fails = typeof own === 'object' && own !== null && !Array.isArray(own) && isError(own as Scalar);
  if (fails || (typeof peer === 'object' && peer !== null)) return fails && typeof peer === 'object' && peer !== null;
  if (typeof own === 'number' && typeof peer === 'number')
    return Math.abs(own - peer) <= 1e-9 * Math.max(1e-6, Math.abs(own));
  return own === peer || ((own === null || own === '') && (peer === null || peer === ''));
}

describe('functions that both have', () => {
  const measures = { units: 'us', vocabulary: createVocabulary({ currency: 'USD' }) } as const;
  const peer = HyperFormula.buildEmpty({ licenseKey: 'gpl-v3', precisionRounding: 14, useArrayArithmetic: true });
  peer.addSheet('S');
  peer.setSheetContent(
    0,
    CELLS['A1:A6'].map((a, i) => [a, CELLS['B1:B6'][i] ?? null]),
  );
  for (const name of ['TRUE', 'FALSE']) peer.addNamedExpression(name, `=${name}()`);
  afterAll(() => peer.destroy());

  const both = HyperFormula.getRegisteredFunctionNames('enGB').filter((name) => {
    const definition = FUNCTIONS.get(name);
    if (definition === undefined || !canBeCalled(definition)) return false;
    return !FROM_ENGINE.includes(name) && !ENGINE_FIRST.has(name) && !PASTED.has(name);
  });

  test.each(both.filter((name) => !KEPT.has(name)))('%s is the same in both', (name) => {
    const definition = FUNCTIONS.get(name);
    if (definition === undefined) return;
    const { parameters, repeating } = definition.signature;
    const least = parameters.filter(({ optional }) => optional !== true).length;
    for (let count = least; count <= Math.min(5, parameters.length + (repeating > 0 ? 1 : 0)); count++) {
      for (const args of combinations(name, definition, count)) {
        const formula = `=${name}(${args.map(written).join(',')})`;
        const own = callPlainly(
          definition,
          args.map((one) => (typeof one === 'object' ? { cells: CELLS[one.cells] } : one)),
          measures,
        );
        const given = peer.calculateFormula(formula, 0);
        expect([formula, isSame(own, given), own, given]).toEqual([formula, true, own, given]);
      }
    }
  });

  test('every one that goes first is one of both', () => {
    const there = new Set(HyperFormula.getRegisteredFunctionNames('enGB'));
    expect([...ENGINE_FIRST].filter((name) => !there.has(name) || !FUNCTIONS.has(name))).toEqual([]);
  });
});

describe('OpenFormula, the OASIS collection of 2006, on a paper', () => {
  const desk = new Desk();
  afterAll(() => desk.room.destroy());
  /** Without sheets, units and columns, none of which a paper says so. */
  const cases = SECTIONS.flatMap(({ cases: all }) => all).filter(({ formula }) => {
    const called = [...formula.matchAll(/([A-Z][A-Z0-9.]*)\(/g)].map(([, name = '']) => name);
    return called.some((name) => ENGINE_FIRST.has(name)) && !/[[{]|\d (?:day|h|min)\b|Stars|B\d+_/.test(formula);
  });

  test.each(cases.map((one) => [one.row, one.formula, one] as const))(
    'row %i: %s',
    (_row, formula, { gives, within }) => {
      desk.type({ A1: `=${formula.replaceAll(';', ',')}` });
      const shown = desk.shown('A1');
      if (gives === ERROR) expect(shown.is).toBe('fault');
      else if (typeof gives === 'number')
        expect(Math.abs(Number(shown.value) - gives), shown.why).toBeLessThanOrEqual(
          within ?? 1e-12 * Math.max(1, Math.abs(gives)),
        );
      else expect(shown.value ?? '', shown.why).toBe(gives);
    },
  );
});
