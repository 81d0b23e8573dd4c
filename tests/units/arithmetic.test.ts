// How products, quotients and powers of units are written, and that dimension and size always agree with the parts.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  canonicalUnit,
  differenceUnit,
  divideUnits,
  multiplyUnits,
  ONE,
  PERCENT,
  powerUnit,
} from '../../engine/units/arithmetic.ts';
import {
  AREA,
  divideDimensions,
  MASS,
  MONEY,
  multiplyDimensions,
  NONE,
  powerOfDimension,
  sameDimension,
  TIME,
  VOLUME,
  WARMTH,
} from '../../engine/units/dimension.ts';
import { createVocabulary } from '../../engine/units/vocabulary.ts';

const vocabulary = createVocabulary({ currency: 'EUR' });

function unit(symbol: string) {
  const found = vocabulary.find(symbol);
  if (found === undefined) throw new Error(`no unit ${symbol}`);
  return found;
}

describe('products of units', () => {
  it.each([
    ['in', 'ft', 'in2'],
    ['ft', 'in', 'ft2'],
    ['lb/ft', 'ft', 'lb'],
    ['lb/ft', 'in', 'lb'],
    ['lb/ft2', 'acre', 'lb'],
    ['lb/acre', 'ft2', 'lb'],
    ['acre', 'in', 'in3'],
    ['acre', '', 'acre'],
    ['%', 'lb', 'lb'],
    ['lb', '%', 'lb'],
    ['%', '%', '%'],
    ['%', '', ''],
    ['', '%', ''],
    ['plants/ft2', 'ft2', 'plants'],
    ['plants/ft2', 'acre', 'plants'],
    ['g/plant', 'plants/m2', 'g/m2'],
    ['g/plant', 'plants', 'g'],
    ['seeds/g', 'g', 'seeds'],
    ['seeds/g', 'oz', 'seeds'],
    ['plants', '', 'plants'],
    ['plants', '%', 'plants'],
    ['blocks', 'seeds', ''],
    ['EUR/lb', 'oz', 'EUR'],
    ['EUR/h', 'min', 'EUR'],
    ['%/day', 'week', '%'],
    ['gal/ft2', 'ft2', 'gal'],
    ['gal/ft2', 'acre', 'gal'],
    ['degC', 'day', 'degCday'],
    ['Fdeg', 'day', 'degFday'],
    ['ft in', 'ft in', 'ft2'],
    ['ft/acre', 'acre', 'ft'],
    ['bu/acre', 'ft2', 'bu'],
  ])('%s x %s is written %s', (a, b, product) => {
    expect(multiplyUnits(unit(a), unit(b)).symbol).toBe(product);
  });

  it.each([
    ['lb', 'ft', 'lb/ft'],
    ['lb', 'ft2', 'lb/ft2'],
    ['in', 'ft', ''],
    ['ft', 'ft', ''],
    ['ft2', 'ft', 'ft'],
    ['acre', 'ft', 'ft'],
    ['acre', 'ha', ''],
    ['ft', 'acre', 'ft/acre'],
    ['bu', 'acre', 'bu/acre'],
    ['gal', 'ft2', 'gal/ft2'],
    ['gal', 'L', ''],
    ['in3', 'acre', 'in'],
    ['lb', 'lb/ft', 'ft'],
    ['', 'ft2', '1/ft2'],
    ['plants', 'ft2', 'plants/ft2'],
    ['g', 'plants', 'g/plant'],
    ['plants', 'plants', ''],
    ['%', 'day', '%/day'],
    ['%', '%', ''],
    ['%', '', '%'],
    ['EUR', 'lb', 'EUR/lb'],
    ['degCday', 'Cdeg', 'day'],
    ['degFday', 'day', 'Fdeg'],
  ])('%s / %s is written %s', (a, b, quotient) => {
    expect(divideUnits(unit(a), unit(b)).symbol).toBe(quotient);
  });

  it.each([
    ['ft', 2, 'ft2'],
    ['ft2', 0.5, 'ft'],
    ['acre', 0.5, 'ft'],
    ['ha', 0.5, 'm'],
    ['gal', 1 / 3, 'ft'],
    ['ft', -1, '1/ft'],
    ['ft', 0, ''],
    ['plants', 2, ''],
    ['%', 2, ''],
    ['ft', 0.5, 'ft^0.5'],
  ])('%s to the power %d is written %s', (a, exponent, power) => {
    expect(powerUnit(unit(a), exponent).symbol).toBe(power);
  });

  it('stores each dimension in a unit of factor 1', () => {
    expect(canonicalUnit(NONE)).toBe(ONE);
    expect([AREA, VOLUME, MASS, TIME, WARMTH, MONEY].map((of) => canonicalUnit(of).symbol)).toEqual([
      'm2',
      'm3',
      'kg',
      'day',
      'Cdeg',
      'money',
    ]);
    expect(canonicalUnit(divideDimensions(MASS, AREA)).symbol).toBe('kg/m2');
    expect(canonicalUnit(multiplyDimensions(WARMTH, TIME)).symbol).toBe('degCday');
  });

  it('survives powers that nobody means', () => {
    expect(powerUnit(unit('ft'), 1e9).dimension.length).toBe(1e9);
    expect(vocabulary.find('ft^999999999')?.numerator).toBe(1);
    expect(powerUnit(unit('ft'), Number.POSITIVE_INFINITY)).toBe(ONE);
  });

  it('gives temperatures their differences', () => {
    expect(differenceUnit(unit('degF')).symbol).toBe('Fdeg');
    expect(differenceUnit(unit('degC')).symbol).toBe('Cdeg');
    expect(differenceUnit(unit('ft'))).toBe(unit('ft'));
    expect(PERCENT.numerator / PERCENT.denominator).toBe(0.01);
  });

  it('always has the dimension of the product and a symbol that reads back as the same unit', () => {
    const any = fc
      .constantFrom(...vocabulary.symbols, 'lb/ft2', 'gal/ft2', 'plants/ft2', 'g/plant', 'EUR/lb', 'bu/acre', 'ft3', '')
      .map(unit);
    fc.assert(
      fc.property(any, any, any, fc.constantFrom(-2, -1, 0.5, 1, 2, 3), (a, b, c, exponent) => {
        const product = multiplyUnits(divideUnits(a, b), c);
        const expected = multiplyDimensions(divideDimensions(a.dimension, b.dimension), c.dimension);
        expect(sameDimension(product.dimension, expected)).toBe(true);
        const power = powerUnit(a, exponent);
        expect(sameDimension(power.dimension, powerOfDimension(a.dimension, exponent))).toBe(true);
        for (const made of [product, power]) {
          const back = unit(made.symbol);
          expect(back.symbol).toBe(made.symbol);
          expect(sameDimension(back.dimension, made.dimension)).toBe(true);
          expect(back.numerator / back.denominator).toBe(made.numerator / made.denominator);
        }
      }),
      { numRuns: 5_000 },
    );
  });
});
