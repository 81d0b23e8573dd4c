// The unit table against the exact definitions that the standards publish, and what is typed against what comes back.

import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { loadGeneralUnits } from '../../engine/units/general.ts';
import { MIXED_UNITS, TABLE } from '../../engine/units/table.ts';
import { fromCanonical, shownNumber, toCanonical } from '../../engine/units/unit.ts';
import { createVocabulary } from '../../engine/units/vocabulary.ts';
import { equalNumbers, tolerantFloor } from '../../engine/values/tolerance.ts';
import { runs } from '../runs.ts';

const vocabulary = createVocabulary({ currency: 'USD' });

beforeAll(loadGeneralUnits);

function unit(symbol: string) {
  const found = vocabulary.find(symbol);
  if (found === undefined) throw new Error(`no unit ${symbol}`);
  return found;
}

/** n of one unit is m of another, as two published numbers. */
type Published = readonly [n: number, of: string, m: number, other: string];

const NIST_SP_811: readonly Published[] = [
  [1, 'in', 25.4, 'mm'],
  [1, 'ft', 0.3048, 'm'],
  [1, 'yd', 0.9144, 'm'],
  [1, 'mi', 1.609344, 'km'],
  [1, 'in2', 6.4516, 'cm2'],
  [1, 'ft2', 0.09290304, 'm2'],
  [1, 'yd2', 0.83612736, 'm2'],
  [1, 'in3', 16.387064, 'cm3'],
  [1, 'ft3', 0.028316846592, 'm3'],
  [1, 'yd3', 0.764554857984, 'm3'],
  [1, 'lb', 0.45359237, 'kg'],
  [1, 'oz', 28.349523125, 'g'],
  [1, 'cwt', 45.359237, 'kg'],
  [1, 'ton', 907.18474, 'kg'],
  [1, 't', 1000, 'kg'],
  [1, 'ha', 10000, 'm2'],
  [1, 'L', 1000, 'cm3'],
  [1, 'day', 86400, 's'],
  [1, 'h', 60, 'min'],
  [1, 'Fdeg', 5 / 9, 'K'],
];

const NIST_HANDBOOK_44: readonly Published[] = [
  [1, 'acre', 43560, 'ft2'],
  [1, 'acre', 4046.8564224, 'm2'],
  [640, 'acre', 1, 'mi2'],
  [1, 'gal', 231, 'in3'],
  [1, 'gal', 3.785411784, 'L'],
  [1, 'gal', 4, 'qt'],
  [1, 'qt', 2, 'pt'],
  [1, 'pt', 2, 'cup'],
  [1, 'cup', 8, 'fl oz'],
  [1, 'cup', 16, 'tbsp'],
  [1, 'tbsp', 3, 'tsp'],
  [1, 'fl oz', 29.5735295625, 'mL'],
  [1, 'bu', 2150.42, 'in3'],
  [1, 'bu', 35.23907016688, 'L'],
  [1, 'bu', 4, 'peck'],
  [1, 'lb', 16, 'oz'],
  [1, 'cwt', 100, 'lb'],
  [1, 'ton', 2000, 'lb'],
  [1, 'rod', 16.5, 'ft'],
  [1, 'chain', 66, 'ft'],
  [10, 'chain2', 1, 'acre'],
];

describe('the unit table', () => {
  for (const [source, rows] of [
    ['NIST SP 811 (2008), app. B', NIST_SP_811],
    ['NIST Handbook 44, app. C', NIST_HANDBOOK_44],
  ] as const) {
    it.each(rows)(`${source}: %d %s = %d %s`, (n, of, m, other) => {
      expect(unit(of).dimension).toEqual(unit(other).dimension);
      expect(equalNumbers(toCanonical(unit(of), n), toCanonical(unit(other), m))).toBe(true);
    });
  }

  it.each([
    [0, 'degC', 273.15],
    [32, 'degF', 273.15],
    [212, 'degF', 373.15],
    [-40, 'degF', 233.15],
    [-40, 'degC', 233.15],
  ])('NIST SP 811, app. B.8: %d %s is %d K', (n, scale, kelvin) => {
    expect(toCanonical(unit(scale), n)).toBeCloseTo(kelvin, 10);
  });

  it('three times 8 in is 2 ft, not a hair less', () => {
    const metres = 3 * toCanonical(unit('in'), 8);
    expect(tolerantFloor(fromCanonical(unit('ft'), metres))).toBe(2);
  });

  it('keeps every factor as two whole numbers', () => {
    for (const { symbol, numerator, denominator } of TABLE.values()) {
      expect(Number.isInteger(numerator), symbol).toBe(true);
      expect(Number.isInteger(denominator), symbol).toBe(true);
    }
  });

  it('gives back every typed number, in every unit of the table and in quotients', () => {
    const symbols = [
      ...new Set([...TABLE.values()].map(({ symbol }) => symbol)),
      'USD',
      'lb/ft2',
      'lb/acre',
      'kg/m2',
      'USD/lb',
      'plants/ft2',
      'g/plant',
      'gal/ft2',
      'seeds/g',
      'degCday',
      'degFday',
    ];
    const scales = new Set(['degC', 'degF']);
    const decimals = fc
      .tuple(fc.integer({ min: -99_999_999, max: 99_999_999 }), fc.integer({ min: 0, max: 6 }))
      .map(([digits, places]) => Number(`${digits}e-${places}`));
    fc.assert(
      fc.property(fc.constantFrom(...symbols), decimals, (symbol, typed) => {
        // A scale adds 273.15, which costs the last digits of readings near 0.
        const reading = scales.has(symbol) ? Math.round(typed * 1000) / 1000 : typed;
        const back = shownNumber(unit(symbol), toCanonical(unit(symbol), reading));
        expect(back === reading || (back === 0 && reading === 0)).toBe(true);
      }),
      { numRuns: runs(5_000, 20_000) },
    );
  });

  it('counts a mixed unit as its larger one', () => {
    for (const mixed of MIXED_UNITS) expect(toCanonical(mixed, 3)).toBe(toCanonical(mixed.larger, 3));
  });
});
