// Calls as a whole: how many arguments there must be, the sheet their columns come from, the type of the result, and what a
// rule of its own is told. Formulas stand in the sheet Plantings of the invented plan.

import { describe, expect, test } from 'vitest';
import type { ArgumentType, Result, Signature } from '../../engine/language/signature.ts';
import { LENGTH } from '../../engine/units/dimension.ts';
import { DATE, TEXT } from '../../engine/values/type.ts';
import { type Case, expectDiagnostic } from './diagnostic-case.ts';
import { checked, diagnosticOf, FUNCTIONS, inUnit, shortType } from './plan.ts';

const MAX = FUNCTIONS.get('MAX');
if (MAX === undefined) throw new Error('MAX is missing');
const max: Signature = MAX;

/** A function of one number or more that gives `result`. */
function giving(result: Result): ReadonlyMap<string, Signature> {
  return new Map([...FUNCTIONS, ['GIVES', { ...max, name: 'GIVES', result }]]);
}

describe('how many arguments', () => {
  test.each<Case>([
    ['SWITCH([Rows])', 'SWITCH([Rows])', 'SWITCH still wants case: SWITCH(value; case; result; ...).'],
    ['SWITCH([Rows]; 1)', 'SWITCH([Rows]; 1)', 'SWITCH still wants result: SWITCH(value; case; result; ...).'],
    ['SUM()', 'SUM()', 'SUM still wants number: SUM(number; ...).'],
    ['IFS()', 'IFS()', 'IFS still wants condition: IFS(condition; result; ...).'],
    [
      'SUMIFS(Plantings[Seeds])',
      'SUMIFS(Plantings[Seeds])',
      'SUMIFS still wants range: SUMIFS(total; range; condition; ...).',
    ],
    [
      'SUMIFS(Plantings[Seeds]; Plantings[Note]; "x"; Plantings[Mass]; ">1 lb"; Plantings[Cover])',
      'SUMIFS(Plantings[Seeds]; Plantings[Note]; "x"; Plantings[Mass]; ">1 lb"; Plantings[Cover])',
      'SUMIFS still wants condition: SUMIFS(total; range; condition; ...).',
    ],
    ['WEIGH(1; 2 ft; 3)', '3', 'WEIGH takes at most 2 parts: WEIGH(share; [length]).'],
    ['WEIGH(1; 2 ft; 3; 4)', '3', 'WEIGH takes at most 2 parts: WEIGH(share; [length]).'],
  ])('%s', (...one) => expectDiagnostic(one));

  test.each(['SUM(1)', 'SUM(1; 2; 3)', 'WEIGH(1)', 'WEIGH(1; 2 ft)', 'TODAY()', 'SWITCH(1; 2; 3; 4)', 'IF(TRUE; 1)'])(
    '%s has as many as it wants',
    (formula) => {
      expect(checked(formula)).toMatchObject({ from: 0, to: formula.length });
    },
  );

  test('the value for all other cases ends SWITCH and agrees with the results', () => {
    expect(diagnosticOf('SWITCH([Rows]; 1; [Length]; 2)').why).toBe(
      '[Length] is a length (ft), 2 is a plain number: write 2 ft.',
    );
    expect(shortType(checked('SWITCH([Sown]; [Planted out]; [Length]; 2 ft)').type)).toBe('number ft');
  });
});

describe('the sheet that columns come from', () => {
  test('values may come from several sheets, columns from one', () => {
    expect(shortType(checked('SUM(Plantings[Length]; Beds[Length])').type)).toBe('number ft');
    expectDiagnostic([
      'SLOPE(Plantings[Mass]; Beds[Length])',
      'Beds[Length]',
      'SLOPE goes through the rows of one sheet: Plantings[Mass] and Beds[Length] stand in two.',
    ]);
    expectDiagnostic([
      'XLOOKUP("x"; \'Seed lots\'[Lot]; Beds[Length])',
      'Beds[Length]',
      "XLOOKUP goes through the rows of one sheet: 'Seed lots'[Lot] and Beds[Length] stand in two.",
    ]);
  });
});

describe('the type of the result', () => {
  test.each<readonly [Result, string]>([
    [{ is: 'quantity', dimension: LENGTH }, 'number m'],
    [{ is: 'letter', letter: 'O', among: 'ordered' }, 'number ft'],
    [{ is: 'letter', letter: 'Z', among: 'anything' }, 'number'],
    [{ is: 'temperature' }, 'temperature degC'],
    [{ is: 'date' }, 'date'],
    [{ is: 'text' }, 'text'],
    [{ is: 'yesno' }, 'yesno'],
    [{ is: 'power', letter: 'O', exponent: 2 }, 'number ft2'],
    [{ is: 'power', letter: 'Z', exponent: 2 }, 'number'],
    [{ is: 'product', powers: [] }, 'number'],
    [{ is: 'product', powers: [{ letter: 'O', exponent: -1 }] }, 'number 1/ft'],
    [{ is: 'product', powers: [{ letter: 'Z', exponent: 3 }] }, 'number'],
    [{ is: 'rule', rule: () => DATE }, 'date'],
  ])('%j', (result, type) => {
    expect(shortType(checked('GIVES([Length])', { functions: giving(result) }).type)).toBe(type);
  });

  test('a power of what is no number is a plain number', () => {
    const functions = giving({ is: 'power', letter: 'O', exponent: 2 });
    expect(shortType(checked('GIVES([Sown])', { functions }).type)).toBe('number');
  });

  test('a rule is told the type and the written value of each argument, of a missing one neither', () => {
    let told: readonly ArgumentType[] = [];
    const rule = (args: readonly ArgumentType[]): typeof TEXT => {
      told = args;
      return TEXT;
    };
    const functions = new Map([
      ...FUNCTIONS,
      [
        'TOLD',
        {
          ...max,
          name: 'TOLD',
          parameters: [{ name: 'value', pattern: { is: 'letter', letter: 'A', among: 'anything' } }],
          result: { is: 'rule', rule },
        } satisfies Signature,
      ] as const,
    ]);
    checked('TOLD([Length]; ; 2 ft; [Length])', { functions });
    expect(told).toStrictEqual([
      { type: inUnit('ft'), constant: undefined },
      { type: undefined, constant: undefined },
      { type: inUnit('ft'), constant: expect.closeTo(0.6096, 12) },
      { type: inUnit('ft'), constant: undefined },
    ]);
  });

  test('what a rule warns of is told at the whole call', () => {
    expectDiagnostic(['1 + POWER([Length]; 3)', 'POWER([Length]; 3)', 'POWER wants 2 here.']);
  });
});
