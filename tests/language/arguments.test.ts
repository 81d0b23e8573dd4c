// How one argument meets its parameter: blanks where it is left out, units a plain number is taken in, letters that several
// arguments share, and each sentence where they don't go together. Formulas stand in the sheet Plantings unless said.

import { describe, expect, test } from 'vitest';
import type { Pattern, Signature } from '../../engine/language/signature.ts';
import type { Typed } from '../../engine/language/typed.ts';
import { TIME } from '../../engine/units/dimension.ts';
import { type Case, expectDiagnostic } from './diagnostic-case.ts';
import { checked, FUNCTIONS, inUnit, shortType } from './plan.ts';

const first = FUNCTIONS.get('IF');
if (first === undefined) throw new Error('IF is missing');
const about: Signature = first;

function taking(name: string, ...patterns: readonly Pattern[]): Signature {
  const parameters = patterns.map((pattern, at) => ({ name: `part${at + 1}`, pattern, optional: at > 0 }));
  return { ...about, name, parameters, repeating: 0, result: { is: 'text' } };
}

const time: Pattern = { is: 'quantity', dimension: TIME };
const ANY_OF_THEM = taking(
  'OFALL',
  { is: 'yesno' },
  { is: 'date' },
  { is: 'text' },
  { is: 'yesno' },
  { is: 'temperature' },
  time,
  { is: 'letter', letter: 'N', among: 'numbers' },
  { is: 'column', of: { is: 'date' } },
);
const SOAK: Signature = {
  ...taking('SOAK', time),
  parameters: [{ name: 'time', pattern: time, unit: 'h' }],
};
const LATER = taking('LATER', { is: 'column', of: { is: 'date' } }, { is: 'date' });
const functions = new Map([...FUNCTIONS, ...[ANY_OF_THEM, SOAK, LATER].map((one) => [one.name, one] as const)]);

function argsOf(formula: string, table = 'plantings'): readonly Typed[] {
  const typed = checked(formula, { functions, table });
  return typed.node === 'call' ? typed.args : [];
}

describe('an argument that is left out', () => {
  test('is a blank of the type its parameter takes', () => {
    const blanks = argsOf('OFALL([Treated]; ; ; ; ; ; ; )').slice(1);
    expect(blanks.map(({ node }) => node)).toEqual(Array(7).fill('blank'));
    expect(blanks.map(({ type }) => shortType(type))).toEqual([
      'date',
      'text',
      'yesno',
      'temperature degC',
      'number day',
      'number',
      'number',
    ]);
    expect(blanks[0]).toMatchObject({ from: 17, to: 17 });
  });

  test('a column that is left out ties the others to no sheet', () => {
    expect(argsOf('LATER(Plantings[Sown]; )')).toMatchObject([{ node: 'column' }, { node: 'blank' }]);
  });

  test('a bare zero takes the unit that the sheet shows, a plain one none', () => {
    expect(argsOf('TRAYAREA(0)').map(({ type }) => shortType(type))).toEqual(['number ft']);
    expect(argsOf('SOAK(0)').map(({ type }) => shortType(type))).toEqual(['number h']);
    expect(argsOf('WEIGH(0)', 'seed-lots').map(({ type }) => shortType(type))).toEqual(['number']);
  });
});

describe('a plain number in the unit of its parameter', () => {
  test('stands where it stood, with the type of the quantity', () => {
    const [hours] = argsOf('HOURS(14)');
    expect(hours).toMatchObject({ from: 6, to: 8, type: inUnit('h') });
    expect(hours).toMatchObject({
      left: { value: 14, type: inUnit('h') },
      right: { value: 24, type: inUnit(''), from: 6, to: 8 },
    });
    const [warmth] = argsOf('WARMTH([Rows])');
    expect(warmth).toMatchObject({
      type: inUnit('degC'),
      right: { value: 273.15, type: inUnit('degC'), from: 7, to: 13 },
    });
  });
});

describe('letters', () => {
  test('arguments that come to be texts are read by their keys, whole columns too', () => {
    expect(argsOf("XLOOKUP(\"x\"; 'Seed lots'[Variety]; 'Seed lots'[Lot])")[1]).toMatchObject({
      node: 'key',
      operand: { node: 'column', table: 'seed-lots', column: 'variety' },
    });
  });

  test('nothing and zeros leave the type to what comes after them', () => {
    const nothing = 'IF([Treated]; ; )';
    expect(shortType(checked(`IF([Treated]; ${nothing}; [Sown])`).type)).toBe('date');
    expect(shortType(checked(`IF([Treated]; [Sown]; ${nothing})`).type)).toBe('date');
    expect(shortType(checked(`MAX(${nothing}; 0; [Length])`).type)).toBe('number ft');
    expect(shortType(checked(`SQRT(${nothing})`).type)).toBe('number');
  });
});

describe('sentences', () => {
  test.each<Case>([
    ['SWITCH(; 1; 2)', '', 'SWITCH still wants value here.'],
    ['SLOPE(; Plantings[Mass])', '', 'SLOPE still wants y here.'],
    ['SQRT([Low])', '[Low]', 'SQRT wants a number or a quantity for number; [Low] is a temperature (degF).'],
    ['SUM([Sown])', '[Sown]', 'SUM wants a number or a quantity for number; [Sown] is a date.'],
    [
      'SUM(Plantings[Variety])',
      'Plantings[Variety]',
      'SUM wants a number or a quantity for number; Plantings[Variety] is a row of Varieties.',
    ],
    [
      'MAX([Treated])',
      '[Treated]',
      'MAX wants a number, a quantity, a temperature or a date for value; [Treated] is yes or no: IF([Treated]; 1; 0) counts it.',
      'MAX(IF([Treated]; 1; 0))',
    ],
    [
      'AND(Plantings[Rows])',
      'Plantings[Rows]',
      'AND wants yes or no for condition; Plantings[Rows] is a plain number.',
    ],
    ['IF([Note]; 1; 2)', '[Note]', 'IF wants yes or no for condition; [Note] is text.'],
    ['WEIGH([Note])', '[Note]', 'WEIGH wants a plain number for share; [Note] is text.'],
    ['SOAK(8)', '8', 'SOAK wants a time; 8 is a plain number: write 8 h.', 'SOAK(8 h)'],
    ['HOURS([Length])', '[Length]', 'HOURS wants a time; [Length] is a length (ft).'],
    ['WARMTH([Length])', '[Length]', 'WARMTH wants a temperature; [Length] is a length (ft).'],
    ['COLD([Rows])', '[Rows]', 'COLD wants a temperature; [Rows] is a plain number.'],
    [
      'SUMIFS(-[Seeds]; Plantings[Variety]; "x")',
      '-[Seeds]',
      'SUMIFS wants a whole column for total: put -[Seeds] in a column of its own and name that.',
    ],
    [
      'SUMIFS(SQRT([Area]); Plantings[Variety]; "x")',
      'SQRT([Area])',
      'SUMIFS wants a whole column for total: put SQRT([Area]) in a column of its own and name that.',
    ],
    ['SUMIFS([Moon]; Plantings[Variety]; "x")', '[Moon]', 'SUMIFS wants a whole column for total, as in Beds[Area].'],
    ['IF([Treated]; [Rows]; "x")', '"x"', '[Rows] is a plain number, "x" is text: IF needs them alike.'],
    [
      'IF([Treated]; "2027-03-15"; [Sown])',
      '"2027-03-15"',
      '"2027-03-15" is text, [Sown] is a date: write DATE(2027; 3; 15).',
      'IF([Treated]; DATE(2027; 3; 15); [Sown])',
    ],
    ['IF([Treated]; [Note]; [Sown])', '[Sown]', '[Note] is text, [Sown] is a date: IF needs them alike.'],
    ['MAX([Length]; 0; 3 lb)', '3 lb', '[Length] is a length (ft), 3 lb is a mass (lb): MAX needs them alike.'],
    ['MAX(0; [Length]; 3 lb)', '3 lb', '[Length] is a length (ft), 3 lb is a mass (lb): MAX needs them alike.'],
    [
      'IF([Treated]; [Length] ^ -1; 3)',
      '3',
      '[Length] ^ -1 is a number per length (1/ft), 3 is a plain number: write 3 / 1 ft.',
      'IF([Treated]; [Length] ^ -1; 3 / 1 ft)',
    ],
    [
      'IF([Treated]; [Mass] * [Length]; [Rows])',
      '[Rows]',
      '[Mass] * [Length] is a quantity of length x mass (lb*ft), [Rows] is a plain number: IF needs them alike.',
    ],
  ])('%s', (...one) => expectDiagnostic(one, { functions }));

  test('in a formula that stands in no sheet', () => {
    const nowhere = { functions, table: undefined };
    expectDiagnostic(
      ['TRAYAREA(8)', '8', 'TRAYAREA wants a length; 8 is a plain number: write 8 m.', 'TRAYAREA(8 m)'],
      nowhere,
    );
    expectDiagnostic(
      [
        'SUMIFS([Seeds]; Plantings[Variety]; "x")',
        '[Seeds]',
        'SUMIFS wants a whole column for total, as in Beds[Area].',
      ],
      nowhere,
    );
  });
});
