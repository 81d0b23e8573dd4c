// What growers type, in every type of column: what it means, what is refused and with which words.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createVocabulary } from '../../engine/units/vocabulary.ts';
import { civilDayOfIso, isoDate } from '../../engine/values/civil.ts';
import { type EntryContext, readEntry } from '../../engine/values/entry.ts';
import { showDate } from '../../engine/values/show.ts';
import { DATE, TEXT, type ValueType, YESNO } from '../../engine/values/type.ts';
import { runs } from '../runs.ts';

const vocabulary = createVocabulary({ currency: 'USD' });
const context: EntryContext = { vocabulary, year: 2027 };

function quantity(symbol: string): ValueType {
  const unit = vocabulary.find(symbol);
  if (unit === undefined) throw new Error(`no unit ${symbol}`);
  return { kind: 'number', dimension: unit.dimension, unit };
}

function temperature(symbol: string): ValueType {
  const unit = vocabulary.find(symbol);
  if (unit === undefined) throw new Error(`no unit ${symbol}`);
  return { kind: 'temperature', unit };
}

function value(text: string, type: ValueType, more: Partial<EntryContext> = {}) {
  const read = readEntry(text, type, { ...context, ...more });
  if (!read.ok) throw new Error(read.why);
  return read.value;
}

function unit(text: string, type: ValueType): string | undefined {
  const read = readEntry(text, type, context);
  if (!read.ok) throw new Error(read.why);
  return read.unit?.symbol;
}

function why(text: string, type: ValueType, more: Partial<EntryContext> = {}): string {
  const read = readEntry(text, type, { ...context, ...more });
  if (read.ok) throw new Error(`${text} was taken for ${read.value}`);
  return read.why;
}

describe('lengths, masses and the like', () => {
  it.each([
    ['8 in', 'in', 0.2032, 'in'],
    ['8in', 'in', 0.2032, 'in'],
    ['8"', 'in', 0.2032, 'in'],
    ['8', 'in', 0.2032, undefined],
    ['8 inches', 'cm', 0.2032, 'in'],
    ['20 cm', 'in', 0.2, 'cm'],
    ['2 ft 6 in', 'in', 0.762, 'ft in'],
    ['2\' 6"', 'in', 0.762, 'ft in'],
    ['2\'6"', 'in', 0.762, 'ft in'],
    ['2\'-6"', 'in', 0.762, 'ft in'],
    ["2' 6", 'in', 0.762, 'ft in'],
    ['2 feet 6 inches', 'ft', 0.762, 'ft in'],
    ['2 ft, 6 1/2 in', 'ft', 0.7747, 'ft in'],
    ['1/2 in', 'in', 0.0127, 'in'],
    ['1 1/2 in', 'in', 0.0381, 'in'],
    ['1-1/2"', 'in', 0.0381, 'in'],
    ['½ lb', 'lb', 0.226796185, 'lb'],
    ['1½ lb', 'lb', 0.680388555, 'lb'],
    ['1 1/2 lb', 'oz', 0.680388555, 'lb'],
    ['3 lb 4 oz', 'lb', 1.4741752025, 'lb oz'],
    ['1 h 30 min', 'h', 1.5 / 24, 'h min'],
    ['2 weeks', 'day', 14, 'week'],
    ['1,250 lb', 'lb', 566.9904625, 'lb'],
    ['1 250 g', 'g', 1.25, 'g'],
    ['1.5 lb/ft2', 'lb/ft2', (1.5 * 45359237) / 9290304, 'lb/ft2'],
    ['4/m2', 'plants/m2', 4, 'plants/m2'],
    ['4 per m2', 'plants/m2', 4, 'plants/m2'],
    ['-3 in', 'in', -0.0762, 'in'],
    ['−3 in', 'in', -0.0762, 'in'],
  ])('%s in a column of %s', (text, column, canonical, typedUnit) => {
    expect(value(text, quantity(column))).toBeCloseTo(canonical, 12);
    expect(unit(text, quantity(column))).toBe(typedUnit);
  });

  it('counts 2 ft 6 in as the very same length as 30 in', () => {
    expect(value('2 ft 6 in', quantity('ft'))).toBe(value('30 in', quantity('in')));
    expect(value('-2 ft 6 in', quantity('ft'))).toBe(value('-30 in', quantity('in')));
  });

  it.each([
    ['1,250', 1250],
    ['1 250', 1250],
    ['12 500', 12500],
    ['1,5', 1.5],
    ['0,125', 0.125],
    ['1.234,5', 1234.5],
    ['1,234.5', 1234.5],
    ['1,234,567', 1234567],
    ['1.234.567', 1234567],
    ['1.250', 1.25],
    ['.5', 0.5],
    ['5.', 5],
    ['1e3', 1000],
    ['3/4', 0.75],
    ['¾', 0.75],
    ['+7', 7],
    ['-0', 0],
    ['85%', 0.85],
    ['2 dozen', 24],
    ['40 plants', 40],
  ])('%s is %d', (text, number) => {
    expect(value(text, quantity(''))).toBe(number);
  });

  it('reads the comma as the decimal mark where the workbook has it so', () => {
    expect(value('1,250', quantity(''), { decimalComma: true })).toBe(1.25);
    expect(value('1.250', quantity(''), { decimalComma: true })).toBe(1250);
    expect(value('1.5', quantity(''), { decimalComma: true })).toBe(1.5);
    expect(value('1,250.5', quantity(''), { decimalComma: true })).toBe(1250.5);
  });

  it('takes bare numbers in a per cent column as per cent, and between 0 and 1 as a share', () => {
    const share = quantity('%');
    expect(['85', '85%', '85 %', '0.85', '0,85', '½'].map((text) => value(text, share))).toEqual([
      0.85, 0.85, 0.85, 0.85, 0.85, 0.5,
    ]);
    expect(['0.5%', '1', '0', '100', '110%'].map((text) => value(text, share))).toEqual([0.005, 0.01, 0, 1, 1.1]);
  });

  it('reads latitudes', () => {
    const latitude = quantity('deg');
    expect(value('43.6', latitude)).toBe(43.6);
    expect(value('43.6 N', latitude)).toBe(43.6);
    expect(value('43.6° S', latitude)).toBe(-43.6);
    expect(value("43° 30' N", latitude)).toBe(43.5);
    expect(value('43.6°', latitude)).toBe(43.6);
  });

  it('reads differences of temperatures and degree-days', () => {
    expect(value('9 degF', quantity('Cdeg'))).toBe(5);
    expect(value('9 F', quantity('Cdeg'))).toBe(5);
    expect(unit('9 degF', quantity('Cdeg'))).toBe('Fdeg');
    expect(value('900 degF day', quantity('degCday'))).toBe(500);
  });

  it.each([
    ['banana', 'in', '"banana" isn\'t a length: this column wants a length, such as 8 in.'],
    ['8 lb', 'in', '8 lb is a mass; this column wants a length, such as 8 in.'],
    ['8 in 3', 'in', '"in 3" isn\'t a unit known here: this column wants a length, such as 8 in.'],
    ['8 bananas', 'in', '"bananas" isn\'t a unit known here: this column wants a length, such as 8 in.'],
    [
      '8 inchs',
      'in',
      '"inchs" isn\'t a unit known here: did you mean in? If not, this column wants a length, such as 8 in.',
    ],
    ['many', 'seeds', '"many" isn\'t a number of seeds: this column wants a number of seeds, such as 8 seeds.'],
    ['5 plants', '%', '5 plants is a count; this column wants a share, such as 85%.'],
    ['85%', 'seeds', '85% is a share; this column wants a number of seeds, such as 8 seeds.'],
    ['1.2.3', '', '"1.2.3" doesn\'t read as one number: write 1250 or 1250.5.'],
    ['1/0', 'in', '"1/0" divides by 0.'],
    ['1e999', 'in', 'The number is too large to count with.'],
    ['20 degC', 'Cdeg', undefined],
  ])('%s in a column of %s', (text, column, sentence) => {
    if (sentence === undefined) expect(value(text, quantity(column))).toBe(20);
    else expect(why(text, quantity(column))).toBe(sentence);
  });

  it('says why months and years are no times', () => {
    expect(why('2 months', quantity('day'))).toContain('no fixed length');
    expect(why('1 year', quantity('day'))).toContain('365 days');
  });
});

describe('money', () => {
  it.each([
    ['$3.50', 'money', 3.5],
    ['3.50', 'money', 3.5],
    ['3.50 USD', 'money', 3.5],
    ['USD 3.50', 'money', 3.5],
    ['$1,250', 'money', 1250],
    ['-$3', 'money', -3],
    ['$ 4', 'money', 4],
  ])('%s', (text, column, canonical) => {
    expect(value(text, quantity(column))).toBe(canonical);
  });

  it('reads prices', () => {
    const price = quantity('money/lb');
    const canonical = value('3.50', price);
    for (const text of ['$3.50', '$3.50/lb', '3.50/lb', '$3.50 per lb', '3.50 USD/lb']) {
      if (text === '$3.50') expect(why(text, price)).toContain('money per mass');
      else expect(value(text, price)).toBe(canonical);
    }
    expect(value('$56/cwt', price)).toBeCloseTo(0.56 / 0.45359237, 12);
  });

  it('refuses another currency by name', () => {
    for (const text of ['3.50 EUR', '€3.50', 'EUR 3.50', '3.50 €', '€3/lb'])
      expect(why(text, quantity('money'))).toMatch(/^This workbook counts in USD: write the amount in USD instead of/);
  });

  it('is no length', () => {
    expect(why('$5', quantity('in'))).toBe('$5 is an amount of money; this column wants a length, such as 8 in.');
  });
});

describe('temperatures', () => {
  it.each([
    ['45 F', 'degF', 45],
    ['45 °F', 'degF', 45],
    ['45f', 'degF', 45],
    ['45', 'degF', 45],
    ['45°', 'degF', 45],
    ['7 C', 'degC', 7],
    ['7 degC', 'degC', 7],
    ['-3,5 °C', 'degC', -3.5],
  ])('%s on the scale %s', (text, scale, reading) => {
    expect(value(text, temperature(scale))).toBe(value(String(reading), temperature(scale)));
  });

  it('converts between scales', () => {
    expect(value('50 F', temperature('degC'))).toBeCloseTo(283.15, 10);
    expect(value('10 C', temperature('degF'))).toBeCloseTo(283.15, 10);
    expect(value('283.15 K', temperature('degF'))).toBe(283.15);
    expect(unit('50 F', temperature('degC'))).toBe('degF');
    expect(unit('50', temperature('degC'))).toBeUndefined();
  });

  it('refuses what is no temperature', () => {
    expect(why('warm', temperature('degF'))).toBe(
      '"warm" isn\'t a temperature: this column wants a temperature, such as 45 degF.',
    );
    expect(why('5 Cdeg', temperature('degF'))).toContain('a difference of temperatures');
    expect(why('5 lb', temperature('degF'))).toBe('5 lb is a mass; this column wants a temperature, such as 45 degF.');
    expect(why('-500 C', temperature('degC'))).toContain('colder');
  });
});

describe('dates', () => {
  it.each([
    ['3/15', '2027-03-15'],
    ['3-15', '2027-03-15'],
    ['13/3', '2027-03-13'],
    ['3/4', '2027-03-04'],
    ['3/15/2027', '2027-03-15'],
    ['3/15/28', '2028-03-15'],
    ["15 Mar '26", '2026-03-15'],
    ['3/15/99', '1999-03-15'],
    ['15 Mar', '2027-03-15'],
    ['15 mar.', '2027-03-15'],
    ['15-Mar-2027', '2027-03-15'],
    ['15 March 2027', '2027-03-15'],
    ['Mar 15', '2027-03-15'],
    ['March 15th, 2028', '2028-03-15'],
    ['Sept 1', '2027-09-01'],
    ['2027-03-15', '2027-03-15'],
    ['2027/3/5', '2027-03-05'],
    ['15.3.', '2027-03-15'],
    ['15.3', '2027-03-15'],
    ['4.3.2027', '2027-03-04'],
    ['Mon 15 Mar', '2027-03-15'],
    ['29 Feb 2028', '2028-02-29'],
    ['2027-03-15 00:00:00', '2027-03-15'],
    ['2027-03-15T09:05:30.250', '2027-03-15'],
    ['15/03/2027 14:30', '2027-03-15'],
    ['15/03/2027, 14:30', '2027-03-15'],
    ['3/15/27 0:00', '2027-03-15'],
    ['3/15/2027 2:30:00 PM', '2027-03-15'],
    ['15.3. 14:30', '2027-03-15'],
    ['Mon 15 Mar 2027 14:30', '2027-03-15'],
  ])('%s is %s', (text, iso) => {
    expect(value(text, DATE)).toBe(civilDayOfIso(iso));
  });

  it('puts the day first where the workbook does', () => {
    expect(value('3/4', DATE, { dayFirst: true })).toBe(civilDayOfIso('2027-04-03'));
    expect(value('3/15', DATE, { dayFirst: true })).toBe(civilDayOfIso('2027-03-15'));
  });

  // ISO 8601: 2027-W01 starts on 4 January 2027; 2026 has 53 weeks, 2027 has 52; 2025-W01 starts on 30 December 2024.
  it.each([
    ['week 11', '2027-03-15'],
    ['W11', '2027-03-15'],
    ['wk 1', '2027-01-04'],
    ['2027-W11', '2027-03-15'],
    ['2027W11', '2027-03-15'],
    ['week 11 2028', '2028-03-13'],
    ['2027-W11-3', '2027-03-17'],
    ['2025-W01', '2024-12-30'],
    ['2026-W53', '2026-12-28'],
  ])('%s is the Monday %s', (text, iso) => {
    expect(value(text, DATE)).toBe(civilDayOfIso(iso));
  });

  it.each([
    ['30 Feb', '30 Feb 2027 does not exist: that month has 28 days.'],
    ['2027-02-30', '30 Feb 2027 does not exist: that month has 28 days.'],
    ['2027-02-30 14:30', '30 Feb 2027 does not exist: that month has 28 days.'],
    ['14:30', '"14:30" isn\'t a date: write 15 Mar, 3/15, 2027-03-15 or week 11.'],
    ['15 Mar 14:75', '"15 Mar 14:75" isn\'t a date: write 15 Mar, 3/15, 2027-03-15 or week 11.'],
    ['0 Mar', '0 Mar 2027 does not exist: that month has 31 days.'],
    ['14/14', 'There is no month 14: months run from 1 to 12.'],
    ['2027-13-01', 'There is no month 13: months run from 1 to 12.'],
    ['week 53', 'There is no week 53 in 2027: its weeks run from 1 to 52.'],
    ['week 0', 'There is no week 0 in 2027: its weeks run from 1 to 52.'],
    ['Tue 15 Mar', '15 Mar 2027 is a Monday, not a Tuesday.'],
    ['March', '"March" doesn\'t say which day: write 15 March.'],
    ['Mar 2027', '"Mar 2027" doesn\'t say which day: write 15 March.'],
    ['soon', '"soon" isn\'t a date: write 15 Mar, 3/15, 2027-03-15 or week 11.'],
    ['15', '"15" isn\'t a date: write 15 Mar, 3/15, 2027-03-15 or week 11.'],
    ['45000', '"45000" isn\'t a date: write 15 Mar, 3/15, 2027-03-15 or week 11.'],
    ['15 Mar 0027', 'Write the year with four figures, such as 2027.'],
  ])('refuses %s', (text, sentence) => {
    expect(why(text, DATE)).toBe(sentence);
  });

  it('without their year are the ones of the twelve months from the first day of the season', () => {
    const firsts = ['2027-07-01', '2026-10-01', '2027-03-15', '2027-01-01', '2028-02-29'];
    for (const first of firsts) {
      const starts = civilDayOfIso(first) ?? 0;
      const missed: string[] = [];
      for (let civil = starts; civil < starts + 365; civil += 1) {
        const [year, month, day] = isoDate(civil).split('-').map(Number);
        const shown = showDate(civil).replace(` ${year}`, '');
        for (const text of [shown, `${month}/${day}`, `${day}.${month}.`]) {
          if (value(text, DATE, { starts }) !== civil) missed.push(text);
        }
      }
      expect(missed, first).toEqual([]);
    }
  });

  // Weeks as ISO 8601 counts them; Mondays by the calendar.
  it.each([
    // Most days of the last week of June 2028 are in the season, fewer of the one of 2027.
    ['week 26', '2028-06-26'],
    ['week 27', '2027-07-05'],
    ['week 52', '2027-12-27'],
    ['week 1', '2028-01-03'],
    ['wk 11', '2028-03-13'],
    ['2027-W11', '2027-03-15'],
  ])('%s of a season from July 2027 is the Monday %s', (text, iso) => {
    expect(value(text, DATE, { starts: civilDayOfIso('2027-07-01') ?? 0 })).toBe(civilDayOfIso(iso));
  });

  it.each([
    [2020, 53, '2020-12-28'],
    [2025, 1, '2024-12-30'],
    [2025, 52, '2025-12-22'],
    [2026, 1, '2025-12-29'],
  ])('in a season of the calendar year %s week %s is the one that the year counts', (year, week, iso) => {
    const starts = civilDayOfIso(`${year}-01-01`) ?? 0;
    expect(value(`week ${week}`, DATE, { year, starts })).toBe(civilDayOfIso(iso));
    expect(value(`week ${week}`, DATE, { year })).toBe(civilDayOfIso(iso));
  });

  it('in a season over New Year keep the year that is typed, and those that are not there are said with theirs', () => {
    const starts = civilDayOfIso('2027-07-01') ?? 0;
    expect(value('15 Feb 2027', DATE, { starts })).toBe(civilDayOfIso('2027-02-15'));
    expect(value("15 Feb '27", DATE, { starts })).toBe(civilDayOfIso('2027-02-15'));
    expect(value('Tue 15 Feb', DATE, { starts })).toBe(civilDayOfIso('2028-02-15'));
    expect(value('29 Feb', DATE, { starts })).toBe(civilDayOfIso('2028-02-29'));
    expect(why('30 Feb', DATE, { starts })).toContain('30 Feb 2028 does not exist');
    expect(why('week 53', DATE, { year: 2025, starts: civilDayOfIso('2025-01-01') ?? 0 })).toContain(
      'no week 53 in 2025',
    );
  });

  it('reads back every day as shown and as ISO text', () => {
    fc.assert(
      fc.property(fc.integer({ min: -300_000, max: 2_900_000 }), (civil) => {
        expect(value(showDate(civil), DATE)).toBe(civil);
        expect(value(isoDate(civil), DATE)).toBe(civil);
      }),
      { numRuns: 2_000 },
    );
  });
});

describe('words', () => {
  it('reads yes and no', () => {
    expect(['yes', 'Y', 'true', 'no', 'N', 'FALSE'].map((text) => value(text, YESNO))).toEqual([
      true,
      true,
      true,
      false,
      false,
      false,
    ]);
    expect(why('perhaps', YESNO)).toBe('"perhaps" is neither yes nor no: write yes or no.');
  });

  it('reads choices by their beginning where only one begins so', () => {
    const kind: ValueType = { kind: 'choice', options: ['bulb', 'bunch', 'root', 'Root crop'] };
    expect(value('BULB', kind)).toBe('bulb');
    expect(value('bun', kind)).toBe('bunch');
    expect(value('root', kind)).toBe('root');
    expect(why('bu', kind)).toBe('"bu" could be bulb or bunch: write more of it.');
    expect(why('leaf', kind)).toBe('"leaf" isn\'t among the choices: write bulb, bunch, root, Root crop.');
  });

  it('keeps text as typed but for blanks around it, and links as their text', () => {
    expect(value('  Amber  early ', TEXT)).toBe('Amber  early');
    expect(value('12', TEXT)).toBe('12');
    expect(value('Amber early', { kind: 'link', table: 'Varieties' })).toBe('Amber early');
  });

  it('takes blanks for blank in every type', () => {
    for (const type of [TEXT, DATE, YESNO, quantity('in'), temperature('degC')]) expect(value('  ', type)).toBeNull();
  });
});

it('never throws, whatever is typed', () => {
  const types: readonly ValueType[] = [
    quantity('in'),
    quantity('%'),
    quantity('deg'),
    quantity('money/lb'),
    quantity('plants/ft2'),
    temperature('degF'),
    DATE,
    YESNO,
    { kind: 'choice', options: ['a'] },
  ];
  const pieces = fc.array(
    fc.constantFrom(
      '1',
      '25',
      '.',
      ',',
      ' ',
      '/',
      '-',
      '+',
      'e',
      '½',
      '"',
      "'",
      'ft',
      'in',
      '$',
      '€',
      '%',
      '°',
      'W',
      'Mar',
      '^',
      '9',
    ),
    { maxLength: 12 },
  );
  const typed = fc.oneof(
    pieces.map((all) => all.join('')),
    fc.string({ unit: 'grapheme', maxLength: 20 }),
  );
  fc.assert(
    fc.property(typed, fc.constantFrom(...types), (text, type) => {
      const read = readEntry(text, type, context);
      if (!read.ok) expect(read.why).toMatch(/\S.*\.$/s);
      else if (typeof read.value === 'number') expect(Number.isFinite(read.value)).toBe(true);
    }),
    { numRuns: runs(5_000, 20_000) },
  );
});
