// The functions of the year's course, its cold and its harvest as formulas, over a year of one wave: coldest on 1 January at
// -5 degC, warmest in the middle of the year at 25.

import { describe, expect, it } from 'vitest';
import { civilDay, isoDate } from '../../engine/index.ts';
import { type Answer, answers, type Table } from './formulas.ts';

const FIRST = civilDay(2027, 1, 1);
const meanOf = (day: number): number => 10 - 15 * Math.cos((2 * Math.PI * day) / 365);

const YEAR: Table = {
  name: 'Year',
  key: undefined,
  columns: {
    Day: { type: 'date' },
    Mean: { type: 'temperature' },
    Low: { type: 'temperature' },
    High: { type: 'temperature' },
    Empty: { type: 'temperature' },
  },
  rows: Array.from({ length: 365 }, (_, day) => [
    isoDate(FIRST + day),
    `${meanOf(day)} degC`,
    `${meanOf(day) - 6} degC`,
    `${meanOf(day) + 6} degC`,
    '',
  ]),
};

function all(...formulas: readonly string[]): readonly Answer[] {
  return answers(formulas, [YEAR]);
}

function values(...formulas: readonly string[]): readonly (number | string | boolean | undefined)[] {
  return all(...formulas).map((answer) => (answer.is === 'value' ? answer.value : undefined));
}

const MEANS = 'Year[Day]; Year[Mean]';

describe('the course of the year', () => {
  it('has its summer nearest to a date, in any year', () => {
    const [this_, last, next] = values(
      `HOTTESTDAY(DATE(2027; 5; 1); ${MEANS})`,
      `HOTTESTDAY(DATE(2026; 12; 1); ${MEANS})`,
      `HOTTESTDAY(DATE(2028; 3; 1); ${MEANS})`,
    );
    expect(Math.abs(Number(this_) - (FIRST + 182))).toBeLessThanOrEqual(2);
    expect(Number(last)).toBe(Number(this_) - 365);
    expect(Number(next)).toBe(Number(this_) + 365);
  });

  it('is warm from and until the dates on which it passes a temperature', () => {
    const [from, until, all_, none] = values(
      `WARMFROM(DATE(2027; 7; 1); 15 degC; ${MEANS})`,
      `WARMUNTIL(DATE(2027; 7; 1); 15 degC; ${MEANS})`,
      `WARMFROM(DATE(2027; 7; 1); -20 degC; ${MEANS})`,
      `WARMUNTIL(DATE(2027; 7; 1); 30 degC; ${MEANS})`,
    );
    // 10 - 15 cos = 15 where the cosine is -1/3, at 0.3041 of the year; smoothing moves it by a day at most.
    expect(Math.abs(Number(from) - (FIRST + 0.3041 * 365))).toBeLessThan(2);
    expect(Math.abs(Number(until) - (FIRST + (1 - 0.3041) * 365))).toBeLessThan(2);
    expect([all_, none]).toEqual([undefined, undefined]);
  });

  it('has a smooth temperature around a date, and none over an empty column', () => {
    const [around, blank, summer] = all(
      `TEMPERATUREAROUND(DATE(2027; 4; 1); ${MEANS})`,
      'TEMPERATUREAROUND(DATE(2027; 4; 1); Year[Day]; Year[Empty])',
      'HOTTESTDAY(DATE(2027; 4; 1); Year[Day]; Year[Empty])',
    );
    expect(around?.is === 'value' ? Number(around.value) : Number.NaN).toBeCloseTo(meanOf(90), 0);
    expect([blank?.is, summer?.is]).toEqual(['blank', 'blank']);
  });

  it('gives the temperature a bed must have by the weeks from the last frost', () => {
    const [early, late] = values('STARTWARMTH(-6 weeks)', 'STARTWARMTH(1)');
    expect(Number(early)).toBeCloseTo(5.5, 9);
    expect(Number(late)).toBeCloseTo(16.5, 9);
    expect(all('STARTWARMTH(40 weeks)')[0]?.is).toBe('error');
  });

  it('starts at the latest where the warmth still comes by a date', () => {
    const [start, never] = values(
      `WARMTHSTART(DATE(2027; 9; 1); 500 degC day; 10 degC; 30 degC; ${MEANS})`,
      `WARMTHSTART(DATE(2027; 9; 1); 50000 degC day; 10 degC; 30 degC; ${MEANS})`,
    );
    const [sum, shorter] = values(
      `WARMTHBETWEEN(DATE(2027; 1; 1) + ${Number(start) - FIRST} days; DATE(2027; 9; 1); 10 degC; 30 degC; ${MEANS})`,
      `WARMTHBETWEEN(DATE(2027; 1; 1) + ${Number(start) - FIRST + 1} days; DATE(2027; 9; 1); 10 degC; 30 degC; ${MEANS})`,
    );
    expect(Number(sum)).toBeGreaterThanOrEqual(500 - 1e-6);
    expect(Number(shorter)).toBeLessThan(500);
    expect(never).toBeUndefined();
  });
});

describe('cold and heat', () => {
  it('are counted between dates', () => {
    const [felt, thaws, none, hot, blank] = values(
      `COLDFELT(DATE(2027; 1; 1); DATE(2028; 1; 1); -30 degC; -30 degC; 30 degC; 30 degC; ${MEANS})`,
      'FREEZETHAWDAYS(DATE(2027; 1; 1); DATE(2028; 1; 1); 0 Cdeg; Year[Day]; Year[Low]; Year[High])',
      'FREEZETHAWDAYS(DATE(2027; 1; 1); DATE(2028; 1; 1); 20 Cdeg; Year[Day]; Year[Low]; Year[High])',
      `DAYSABOVE(DATE(2027; 1; 1); DATE(2028; 1; 1); 10 degC; ${MEANS})`,
      'DAYSABOVE(DATE(2027; 1; 1); DATE(2028; 1; 1); 10 degC; Year[Day]; Year[Empty])',
    );
    const days = Array.from({ length: 365 }, (_, day) => meanOf(day));
    expect(felt).toBe(365);
    expect(thaws).toBe(days.filter((mean) => mean - 6 < 0 && mean + 6 > 0).length);
    expect(none).toBe(0);
    expect(hot).toBe(days.filter((mean) => mean > 10 + 1e-9).length);
    expect(blank).toBeUndefined();
  });

  it('of short days has its first date', () => {
    const [short, never] = values('SHORTDAYFROM(52; 10; DATE(2027; 7; 1))', 'SHORTDAYFROM(20; 10; DATE(2027; 7; 1))');
    expect(Math.abs(Number(short) - civilDay(2027, 10, 26))).toBeLessThanOrEqual(2);
    expect(never).toBeUndefined();
  });
});

describe('a harvest', () => {
  it('is picked along its curve: tomatoes over ten weeks, week by week', () => {
    // Worked out by hand from the logistic: 1/(1 + exp(-(t - 0.45)/0.16)), cut off at 0 and 1.
    const weeks = values(
      ...Array.from({ length: 11 }, (_, week) => `HARVESTED(${7 * week} days; 70 days; 45%; 16%)`),
    ).map(Number);
    const shares = weeks.slice(1).map((share, index) => 100 * (share - (weeks[index] ?? 0)));
    const expected = [4.8, 7.9, 11.9, 15.5, 17.0, 15.5, 11.9, 7.9, 4.8, 2.8];
    for (const [week, share] of expected.entries()) expect(shares[week]).toBeCloseTo(share, 1);
  });

  it('comes in cuts, and an onion with little leaf yields little', () => {
    const [first, second, light, more] = values(
      'CUTS(0 days; 14 days; 75%; 0%)',
      'CUTS(14 days; 14 days; 75%; 0%)',
      'BULBLIGHT(30 degC day)',
      'BULBLIGHT(400 degC day)',
    );
    expect(first).toBeCloseTo(1 / 1.75, 12);
    expect(second).toBe(1);
    expect(Number(light)).toBeLessThan(0.3);
    expect(Number(more)).toBeGreaterThan(0.95);
    expect(all('HARVESTED(1 day; 70 days; 200%; 16%)')[0]?.is).toBe('error');
  });
});
