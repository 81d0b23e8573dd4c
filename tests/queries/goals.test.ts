// Goals as people write them, in both systems of units and in the writing of a place: what they mean for a figure, and what is refused.

import { describe, expect, test } from 'vitest';
import { civilDay, figureIn, readGoal, Workbook, type Writing } from '../../engine/index.ts';
import { BEGINNING, openFarm, world } from '../document/farm.ts';

const MESSAGE = { code: 'work', parts: {} };

function farm(units: 'us' | 'si'): Workbook {
  const workbook = openFarm();
  workbook.do([{ command: 'set units', units }], MESSAGE);
  return workbook;
}

function goal(workbook: Workbook, formula: string, text: string): number | string {
  const read = readGoal(workbook, text, figureIn(workbook, { figure: 'formula', formula }).type);
  return read.ok ? read.value : read.why;
}

const LENGTHS = 'SUM(Plantings[Length])';
const FOOT = 0.3048;

describe('a goal', () => {
  test.each([
    ['us', '40', 40 * FOOT],
    ['us', '12 m', 12],
    ['us', "40'", 40 * FOOT],
    ['si', '40', 40],
    ['si', '40 ft', 40 * FOOT],
    ['si', '1,200', 1200],
  ] as const)('of a length in %s: %s', (units, text, metres) => {
    expect(goal(farm(units), LENGTHS, text)).toBeCloseTo(metres, 9);
  });

  test.each(['us', 'si'] as const)(
    'of money in %s has its currency or none; of another kind it is refused',
    (units) => {
      const workbook = farm(units);
      const money = '12 EUR * 3';
      expect(goal(workbook, money, '5730')).toBe(5730);
      expect(goal(workbook, money, '5,730 EUR')).toBe(5730);
      expect(goal(workbook, money, '€5730')).toBe(5730);
      expect(goal(workbook, money, '5730 lb')).toBe(
        '5730 lb is a mass; this figure wants an amount of money, such as 3.50 EUR.',
      );
      expect(goal(workbook, LENGTHS, '100 EUR')).toBe(
        `100 EUR is an amount of money; this figure wants a length, such as 8 ${units === 'us' ? 'ft' : 'm'}.`,
      );
      expect(goal(workbook, money, '5730 USD')).toContain('counts in EUR');
    },
  );

  test.each(['us', 'si'] as const)('of hours, shares and counts in %s', (units) => {
    const workbook = farm(units);
    expect(goal(workbook, '12 h', '14')).toBeCloseTo(14 / 24, 12);
    expect(goal(workbook, '12 h', '14 m')).toContain('is a length');
    // As in a cell of per cents: 85 is 85 %, and so is 0.85.
    expect(goal(workbook, 'MAX(Varieties[Germination])', '85')).toBe(0.85);
    expect(goal(workbook, 'SUM(Varieties[Seeds])', '5000')).toBe(5000);
    expect(goal(workbook, 'SUM(Varieties[Seeds])', '5 kg')).toContain('is a mass');
    // How many findings there are is a figure without a type.
    expect(readGoal(workbook, '3')).toEqual({ ok: true, value: 3 });
    expect(readGoal(workbook, '3 kg').ok).toBe(false);
  });

  test('of a date is read as a date is in a cell', () => {
    const ready = 'MAX(Plantings[Ready])';
    const first = civilDay(2027, 11, 1);
    for (const text of ['1 Nov 2027', '2027-11-01', '1 Nov', 'Nov 1', '11/1']) {
      expect(goal(farm('us'), ready, text)).toBe(first);
    }
    expect(goal(farm('si'), ready, '1/11')).toBe(first);
    expect(goal(farm('us'), ready, '5000')).toContain("isn't a date");
    expect(goal(farm('us'), ready, '31 Nov')).toContain('30 days');
  });

  test('is read in the writing of the place', () => {
    const writing: Writing = {
      locale: 'de-DE',
      decimal: ',',
      group: '.',
      dayFirst: true,
      months: 'Januar Februar März April Mai Juni Juli August September Oktober November Dezember'
        .split(' ')
        .map((month) => [month]),
      yearFirst: '',
      shortMonths: [],
      monthsAlone: [],
      date: '{d}. {m} {y}',
      weekdays: [],
      weeks: [],
    };
    const there = Workbook.open(BEGINNING, { ...world(), writings: () => writing });
    if (there === undefined) throw new Error('its template is not known');
    expect(goal(there, LENGTHS, '1.200,5 m')).toBe(1200.5);
    expect(goal(there, 'MAX(Plantings[Ready])', '5. März')).toBe(civilDay(2027, 3, 5));
    expect(goal(there, 'MAX(Plantings[Ready])', '3/4')).toBe(civilDay(2027, 4, 3));
  });

  test('of what is no figure is refused, and so is none', () => {
    expect(goal(farm('us'), '1 = 1', '1')).toBe(
      'This figure is yes or no, which reaches no goal: ask for a number, an amount or a date.',
    );
    expect(goal(farm('us'), '"a"', '1')).toContain('This figure is text');
    expect(goal(farm('us'), LENGTHS, ' ')).toBe('Write the goal that the figure is to reach.');
  });
});
