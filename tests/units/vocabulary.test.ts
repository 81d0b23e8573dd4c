// Spellings that growers use, those that are refused, and the nearest unit to a misspelt one.

import { beforeAll, describe, expect, it } from 'vitest';
import { loadGeneralUnits } from '../../engine/units/general.ts';
import { FEET_AND_INCHES, TABLE } from '../../engine/units/table.ts';
import { toCanonical } from '../../engine/units/unit.ts';
import { createVocabulary } from '../../engine/units/vocabulary.ts';

const vocabulary = createVocabulary({ currency: 'EUR' });

beforeAll(loadGeneralUnits);

describe('the vocabulary', () => {
  it.each([
    ['inch', 'in'],
    ['Inches', 'in'],
    ['IN', 'in'],
    ['in.', 'in'],
    ['"', 'in'],
    ['”', 'in'],
    ["'", 'ft'],
    ['′', 'ft'],
    ['feet', 'ft'],
    ['FT', 'ft'],
    ['sq ft', 'ft2'],
    ['sq. ft.', 'ft2'],
    ['sqft', 'ft2'],
    ['square feet', 'ft2'],
    ['ft²', 'ft2'],
    ['ft^2', 'ft2'],
    ['cu ft', 'ft3'],
    ['cubic yards', 'yd3'],
    ['m³', 'm3'],
    ['LBS', 'lb'],
    ['Pounds', 'lb'],
    ['KG', 'kg'],
    ['l', 'L'],
    ['ML', 'mL'],
    ['liters', 'L'],
    ['fl. oz.', 'fl oz'],
    ['fluid ounces', 'fl oz'],
    ['bushels', 'bu'],
    ['acres', 'acre'],
    ['HA', 'ha'],
    ['Days', 'day'],
    ['hr', 'h'],
    ['°C', 'degC'],
    ['deg F', 'degF'],
    ['°', 'deg'],
    ['percent', '%'],
    ['seed', 'seeds'],
    ['bunch', 'bunches'],
    ['lb per acre', 'lb/acre'],
    ['lb / ft²', 'lb/ft2'],
    ['kg/m^2', 'kg/m2'],
    ['seeds per gram', 'seeds/g'],
    ['g/plants', 'g/plant'],
    ['1/ft2', '1/ft2'],
    ['ft^-2', '1/ft2'],
    ['degC day', 'degCday'],
    ['degF*day', 'degFday'],
    ['money', 'EUR'],
    ['eur', 'EUR'],
    ['€', 'EUR'],
    ['money/lb', 'EUR/lb'],
    ['€/h', 'EUR/h'],
    ['rod', 'rod'],
    ['sq rods', 'rods2'],
    ['kWh', 'kWh'],
    ['', ''],
  ])('reads %s as %s', (spelling, symbol) => {
    expect(vocabulary.find(spelling)?.symbol).toBe(symbol);
  });

  it.each([
    'banana',
    'USD',
    '$',
    'month',
    'years',
    'C',
    'F',
    'EC',
    'b',
    'bits',
    'stick',
    'lbf',
    'N',
    'M',
    'T',
    'Mg',
    'pm',
    'am',
    'mol',
    'rad',
    'volt',
    'lb/',
    '/ft',
    'lb//ft',
    '1',
    '8',
    'ft^x',
    'constructor',
    '__proto__',
  ])('does not take %s for a unit', (word) => {
    expect(vocabulary.find(word)).toBeUndefined();
  });

  it('states acres and spoons exactly, whatever the general library says', () => {
    expect(toCanonical(vocabulary.find('acres') ?? FEET_AND_INCHES, 1)).toBe(4046.8564224);
    expect(toCanonical(vocabulary.find('tablespoons') ?? FEET_AND_INCHES, 1)).toBe(0.00001478676478125);
  });

  it('keeps time in days in units of the general library', () => {
    const kilowattHour = vocabulary.find('kWh');
    const perHour = vocabulary.find('kWh/h');
    if (kilowattHour === undefined || perHour === undefined) throw new Error('kWh is a unit');
    // 1 kWh = 3.6e6 kg m2/s2 (NIST SP 811, app. B), and a day has 86400 s.
    expect(toCanonical(kilowattHour, 1) / (3.6e6 * 86400 ** 2)).toBeCloseTo(1, 14);
    expect(toCanonical(perHour, 1) / (1000 * 86400 ** 3)).toBeCloseTo(1, 14);
  });

  it.each([
    ['lbz', 'lb'],
    ['inchs', 'in'],
    ['poinds', 'lb'],
    ['aces', 'acre'],
    ['lb/arce', 'lb/acre'],
    ['C', 'degC'],
    ['F', 'degF'],
  ])('offers the nearest unit: %s -> %s', (misspelt, nearest) => {
    expect(vocabulary.nearest(misspelt)).toBe(nearest);
  });

  it('offers nothing where nothing is near', () => {
    for (const word of ['banana', 'x', 'month', 'M', '']) expect(vocabulary.nearest(word), word).toBeUndefined();
  });

  it('says why a month is no unit', () => {
    expect(vocabulary.refusal('Months')).toContain('no fixed length');
    expect(vocabulary.refusal('C')).toContain('degC');
    expect(vocabulary.refusal('lb')).toBeUndefined();
  });

  it('reads every spelling of the table, and every symbol as itself', () => {
    for (const [spelling, unit] of TABLE) expect(vocabulary.find(spelling), spelling).toBe(unit);
    for (const symbol of vocabulary.symbols) expect(vocabulary.find(symbol)?.symbol).toBe(symbol);
  });

  it('counts in the money of its own workbook', () => {
    const dollars = createVocabulary({ currency: 'USD' });
    expect(dollars.find('$/lb')?.symbol).toBe('USD/lb');
    expect(dollars.find('€')).toBeUndefined();
  });
});
