// What a table shows, and that the text an editor opens with always reads back as the very same value.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toCanonical } from '../../engine/units/unit.ts';
import { createVocabulary } from '../../engine/units/vocabulary.ts';
import { civilDay } from '../../engine/values/civil.ts';
import { readEntry } from '../../engine/values/entry.ts';
import type { ErrorKind } from '../../engine/values/error.ts';
import { entryText, showDate, showValue, showWithUnit, unitLabel } from '../../engine/values/show.ts';
import { DATE, TEXT, type ValueType, YESNO } from '../../engine/values/type.ts';
import { runs } from '../runs.ts';

const currency = 'EUR';
const vocabulary = createVocabulary({ currency });

function unit(symbol: string) {
  const found = vocabulary.find(symbol);
  if (found === undefined) throw new Error(`no unit ${symbol}`);
  return found;
}

function quantity(symbol: string): ValueType {
  return { kind: 'number', dimension: unit(symbol).dimension, unit: unit(symbol) };
}

function shown(n: number, symbol: string, decimals?: number): string {
  return showValue(toCanonical(unit(symbol), n), quantity(symbol), { currency, decimals });
}

describe('showing', () => {
  it.each([
    [8, 'in', undefined, '8'],
    [12.3456, 'lb', undefined, '12.346'],
    [2.5, 'lb', undefined, '2.5'],
    [0.00123456, 'oz', undefined, '0.00123'],
    [0, 'lb', undefined, '0'],
    [-0.0004, 'lb', 2, '0.00'],
    [1.005, '', 2, '1.01'],
    [9999, 'seeds', undefined, '9999'],
    [12500, 'seeds', undefined, '12,500'],
    [1234567.891, 'lb', 1, '1,234,567.9'],
    [85, '%', undefined, '85'],
    [85.25, '%', 0, '85'],
    [3.5, 'money', undefined, '3.50'],
    [1250, 'money', undefined, '1250.00'],
    [0.0034, 'money', undefined, '0.0034'],
    [2.999, 'money/lb', undefined, '3.00'],
    [1e-13, '', undefined, '1e-13'],
    [1.25e18, '', undefined, '1250000000000000000'],
  ])('%d %s with %s decimals reads %s', (n, symbol, decimals, text) => {
    expect(shown(n, symbol, decimals)).toBe(text);
  });

  it("names a unit only where it is not the column's", () => {
    const length = quantity('in');
    expect(showValue(0.2, length, { currency, unit: unit('cm'), decimals: 1 })).toBe('20 cm');
    expect(showValue(0.2032, length, { currency, unit: unit('in') })).toBe('8');
    expect(showValue(0.762, length, { currency, unit: unit('ft in') })).toBe('2 ft 6 in');
    expect(showValue(-0.762, length, { currency, unit: unit('ft in') })).toBe('-2 ft 6 in');
    expect(showValue(0.6096 - 1e-9, length, { currency, unit: unit('ft in') })).toBe('2 ft 0 in');
    expect(showValue(0.85, quantity(''), { currency, unit: unit('%') })).toBe('85%');
    expect(showWithUnit(toCanonical(unit('lb'), 12.4), quantity('lb'), { currency })).toBe('12.4 lb');
    expect(showWithUnit(0.85, quantity('%'), { currency })).toBe('85%');
    expect(showWithUnit(3.5, quantity('money'), { currency })).toBe('3.50 EUR');
    expect(showWithUnit(0.2, length, { currency, unit: unit('cm') })).toBe('20 cm');
    expect([1, 14].map((n) => showWithUnit(n, quantity('day'), { currency }))).toEqual(['1 day', '14 days']);
    expect([1, 4].map((n) => showWithUnit(n, quantity('plants'), { currency }))).toEqual(['1 plant', '4 plants']);
    expect(showWithUnit(null, length, { currency })).toBe('');
  });

  it('shows temperatures, dates, yes and no, text and blanks', () => {
    const fahrenheit: ValueType = { kind: 'temperature', unit: unit('degF') };
    expect(showValue(toCanonical(unit('degF'), 45), fahrenheit, { currency })).toBe('45');
    expect(showValue(toCanonical(unit('degC'), 12), fahrenheit, { currency })).toBe('53.6');
    expect(showValue(toCanonical(unit('degC'), 7), fahrenheit, { currency, unit: unit('degC') })).toBe('7 °C');
    expect(showDate(civilDay(2027, 3, 15))).toBe('15 Mar 2027');
    expect(showValue(civilDay(2027, 12, 1), DATE, { currency })).toBe('1 Dec 2027');
    expect(showValue(true, YESNO, { currency })).toBe('yes');
    expect(showValue('Amber', TEXT, { currency })).toBe('Amber');
    expect(showValue(null, TEXT, { currency })).toBe('');
  });

  it('shows each error by a short word of its own', () => {
    const kinds: readonly ErrorKind[] = [
      'formula',
      'circle',
      'divide',
      'number',
      'range',
      'missing',
      'value',
      'reference',
    ];
    const words = kinds.map((error) => showValue({ error, why: 'A reason.' }, TEXT, { currency }));
    expect(new Set(words).size).toBe(kinds.length);
    expect(words.every((word) => word.length > 0 && word.length <= 14)).toBe(true);
  });

  it('labels units with raised figures, degrees and the own currency, and every label reads back', () => {
    const labels = ['lb/ft2', 'yd3', 'degF', 'degCday', 'money/lb', '%', '', 'g/plant', 'fl oz'];
    expect(labels.map((symbol) => unitLabel(unit(symbol), currency))).toEqual([
      'lb/ft²',
      'yd³',
      '°F',
      '°C·day',
      'EUR/lb',
      '%',
      '',
      'g/plant',
      'fl oz',
    ]);
    // Differences of temperatures have the label of their scale, which is read as one where one is wanted.
    const differences = ['Cdeg', 'Fdeg'];
    expect(differences.map((symbol) => unitLabel(unit(symbol), currency))).toEqual(['°C', '°F']);
    for (const symbol of [...labels, ...vocabulary.symbols].filter((one) => !differences.includes(one)))
      expect(vocabulary.find(unitLabel(unit(symbol), currency))?.symbol).toBe(unit(symbol).symbol);
  });
});

describe('the text an editor opens with', () => {
  const context = { vocabulary, year: 2027 };

  it('is what was typed, without grouping', () => {
    expect(entryText(toCanonical(unit('lb'), 12500.25), quantity('lb'), { currency })).toBe('12500.25');
    expect(entryText(0.2, quantity('in'), { currency, unit: unit('cm') })).toBe('20 cm');
    expect(entryText(0.762, quantity('in'), { currency, unit: unit('ft in') })).toBe('2 ft 6 in');
    expect(entryText(0.85, quantity('%'), { currency })).toBe('85');
    expect(entryText(0.005, quantity('%'), { currency })).toBe('0.5%');
    expect(entryText(civilDay(2027, 3, 15), DATE, { currency })).toBe('15 Mar 2027');
    expect(entryText(1.25, quantity(''), { currency, decimalComma: true })).toBe('1,25');
    expect(entryText(null, TEXT, { currency })).toBe('');
  });

  it('reads back as the same value and unit, in every unit and with either decimal mark', () => {
    const columns = [
      'in',
      'ft',
      'lb',
      '%',
      'money',
      'money/lb',
      'plants/ft2',
      'day',
      'L',
      'degCday',
      '',
      'seeds',
      'deg',
    ];
    const typedIn = ['in', 'cm', 'ft in', 'lb oz', 'oz', 'g', 'h min', 'week', 'gal', '%', 'dozen', 'money/kg'];
    const numbers = fc.oneof(
      fc
        .tuple(fc.integer({ min: -9_999_999, max: 9_999_999 }), fc.integer({ min: 0, max: 5 }))
        .map(([n, e]) => n / 10 ** e),
      fc.double({ min: -1e9, max: 1e9, noNaN: true }),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...columns),
        fc.option(fc.constantFrom(...typedIn), { nil: undefined }),
        numbers,
        fc.boolean(),
        (column, symbol, n, decimalComma) => {
          const type = quantity(column);
          const first = readEntry(symbol === undefined ? `${n}` : `${n} ${symbol}`, type, context);
          if (!first.ok || typeof first.value !== 'number') return;
          const opened = entryText(first.value, type, { currency, unit: first.unit, decimalComma });
          const again = readEntry(opened, type, { ...context, decimalComma });
          if (!again.ok) throw new Error(`${opened}: ${again.why}`);
          expect(again.value).toBe(first.value);
          if (first.unit !== undefined && first.unit.symbol !== column && again.unit?.symbol !== 'EUR')
            expect(again.unit?.symbol).toBe(first.unit.symbol);
        },
      ),
      { numRuns: runs(5_000, 20_000) },
    );
  });

  it('reads temperatures back as the same value', () => {
    const scale = fc.constantFrom('degF', 'degC');
    fc.assert(
      fc.property(scale, scale, fc.double({ min: -200, max: 200, noNaN: true }), (column, symbol, n) => {
        const type: ValueType = { kind: 'temperature', unit: unit(column) };
        const first = readEntry(`${n} ${symbol}`, type, context);
        if (!first.ok) throw new Error(first.why);
        const again = readEntry(entryText(first.value, type, { currency, unit: first.unit }), type, context);
        if (!again.ok) throw new Error(again.why);
        expect(again.value).toBe(first.value);
      }),
      { numRuns: 5_000 },
    );
  });

  it('keeps feet and inches as typed', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 0, max: 1199 }), (feet, hundredths) => {
        const text = `${feet} ft ${hundredths / 100} in`;
        const read = readEntry(text, quantity('in'), context);
        if (!read.ok) throw new Error(read.why);
        expect(showValue(read.value, quantity('in'), { currency, unit: read.unit })).toBe(text);
        expect(entryText(read.value, quantity('in'), { currency, unit: read.unit })).toBe(text);
      }),
      { numRuns: 5_000 },
    );
  });
});
