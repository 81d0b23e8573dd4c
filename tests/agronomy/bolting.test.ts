// Bolting: the size gate, the shape of the cold response, freezing and thawing, and covers.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boltingRisk, coldEffect, FREEZE_THAW_DAYS, freezeThawDays, gateDay } from '../../engine/agronomy/bolting.ts';
import { BOLTING_CROPS, type BoltingCrop, boltingCrop } from '../../engine/agronomy/bolting-crops.ts';

function crop(name: string): BoltingCrop {
  const found = boltingCrop(name);
  if (found === undefined) throw new Error(`no bolting figures for ${name}`);
  return found;
}

const days = (count: number, low: number, high: number): { lows: number[]; highs: number[] } => ({
  lows: new Array<number>(count).fill(low),
  highs: new Array<number>(count).fill(high),
});

const RANK = { low: 0, raised: 1, high: 2 };

describe('cold', () => {
  test('carrot: nought at -1 and 16 C, full at 6.5 C (Atherton, Craigon & Basher 1990)', () => {
    const carrot = crop('Carrot');
    expect(coldEffect(carrot, -1)).toBe(0);
    expect(coldEffect(carrot, 16)).toBe(0);
    expect(coldEffect(carrot, 6.5)).toBe(1);
    expect(coldEffect(carrot, 2.75)).toBeCloseTo(0.5, 14);
    expect(coldEffect(carrot, 11.25)).toBeCloseTo(0.5, 14);
  });

  test('carrot: nine weeks at 3 and at 12 C bolt some (Atherton, Craigon & Basher 1990)', () => {
    for (const temperature of [3, 12]) {
      const risk = boltingRisk(crop('Carrot'), {
        ...days(63, temperature, temperature),
        from: 0,
        to: 63,
        coverGain: 0,
      });
      expect(risk.level).not.toBe('low');
    }
  });

  test('celery bolts at 10 C, partly at 14 C, not at 18 C', () => {
    const celery = crop('Celery');
    expect(coldEffect(celery, 10)).toBe(1);
    expect(coldEffect(celery, 14)).toBeCloseTo(0.5, 14);
    expect(coldEffect(celery, 18)).toBe(0);
  });

  test('onion feels nothing above 17 C (Holdsworth & Heath 1950)', () => {
    expect(coldEffect(crop('Onion'), 17)).toBe(0);
    expect(coldEffect(crop('Onion'), 9)).toBe(1);
  });

  test('every crop: between 0 and 1, some before most, nought at both ends of the thermometer', () => {
    for (const record of BOLTING_CROPS) {
      expect(record.someBolt).toBeLessThan(record.mostBolt);
      for (let t = -20; t <= 40; t += 0.5) {
        expect(coldEffect(record, t)).toBeGreaterThanOrEqual(0);
        expect(coldEffect(record, t)).toBeLessThanOrEqual(1);
      }
      expect(coldEffect(record, -10)).toBe(0);
      expect(coldEffect(record, 30)).toBe(0);
      expect(coldEffect(record, Number.NaN)).toBeNaN();
    }
  });
});

describe('cold at the ends of the range', () => {
  test('beet counts every day from 0 to 13 C alike, both ends included (Milford, Jarvis & Walters 2010)', () => {
    const beet = crop('Beet');
    expect([-0.1, 0, 6, 13, 13.1].map((mean) => coldEffect(beet, mean))).toEqual([0, 1, 1, 1, 0]);
  });

  test('onion: a tenth above 0 C for each half degree, level to 13 C, half at 14 C', () => {
    const onion = crop('Onion');
    expect([0, 0.5, 2.5, 5, 13, 14, 15].map((mean) => coldEffect(onion, mean))).toEqual([0, 0.1, 0.5, 1, 1, 0.5, 0]);
  });
});

describe('size gate', () => {
  test('celery is deaf to cold for 61 days at 15 C', () => {
    expect(gateDay(crop('Celery'), new Float64Array(200).fill(15), 0)).toBe(60);
  });

  test('a gate without a thermal time has no date, a crop without a gate feels cold at once', () => {
    expect(gateDay(crop('Cabbage'), new Float64Array(200).fill(15), 5)).toBeNaN();
    expect(gateDay(crop('Beet'), new Float64Array(200).fill(15), 5)).toBe(5);
  });

  test('plants that stay small are at low risk whatever the cold', () => {
    const risk = boltingRisk(crop('Onion'), { ...days(100, 4, 10), from: Number.NaN, to: 100, coverGain: 0 });
    expect(risk.level).toBe('low');
    expect(risk.reason).toContain('pencil');
  });
});

describe('risk', () => {
  test('onion past a pencil: a few cool days low, three weeks raised, ten weeks high', () => {
    const level = (count: number): string =>
      boltingRisk(crop('Onion'), { ...days(count, 5, 13), from: 0, to: count, coverGain: 0 }).level;
    expect(level(5)).toBe('low');
    expect(level(21)).toBe('raised');
    expect(level(70)).toBe('high');
  });

  test('ten days of freezing and thawing raise it one step', () => {
    const cold = { ...days(FREEZE_THAW_DAYS, -6, 2), from: 0, to: FREEZE_THAW_DAYS, coverGain: 0 };
    const risk = boltingRisk(crop('Onion'), cold);
    expect(risk.freezeThawDays).toBe(FREEZE_THAW_DAYS);
    expect(risk.level).toBe('raised');
    expect(risk.reason).toContain('freezing and thawing');
    expect(boltingRisk(crop('Onion'), { ...cold, to: FREEZE_THAW_DAYS - 1 }).level).toBe('low');
  });

  test('a day frozen through or thawed through is no alternation', () => {
    expect(freezeThawDays({ ...days(5, -8, -1), from: 0, to: 5, coverGain: 0 })).toBe(0);
    expect(freezeThawDays({ ...days(5, 1, 9), from: 0, to: 5, coverGain: 0 })).toBe(0);
    expect(freezeThawDays({ ...days(5, -1, 9), from: 0, to: 5, coverGain: 2 })).toBe(0);
  });

  test('a cover never raises the risk, more days never lower it', () => {
    const weather = fc.array(
      fc.tuple(fc.double({ min: -10, max: 15, noNaN: true }), fc.double({ min: 0, max: 15, noNaN: true })),
      {
        minLength: 1,
        maxLength: 120,
      },
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...BOLTING_CROPS),
        weather,
        fc.double({ min: 0, max: 5, noNaN: true }),
        (record, nights, gain) => {
          const lows = nights.map(([low]) => low);
          const highs = nights.map(([low, rise]) => low + rise);
          const open = boltingRisk(record, { lows, highs, from: 0, to: lows.length, coverGain: 0 });
          const covered = boltingRisk(record, { lows, highs, from: 0, to: lows.length, coverGain: gain });
          const shorter = boltingRisk(record, { lows, highs, from: 0, to: lows.length - 1, coverGain: 0 });
          expect(covered.coldDays).toBeLessThanOrEqual(open.coldDays);
          expect(RANK[shorter.level]).toBeLessThanOrEqual(RANK[open.level]);
        },
      ),
    );
  });
});

describe('what is counted and what is said', () => {
  const onion = crop('Onion');
  const full = (count: number, cold: number): string =>
    `${count} ${count === 1 ? 'day' : 'days'} of full cold after ${cold === 14 ? 'pencil thickness (about five leaves)' : 'emergence'}; some bolt from about ${cold}`;

  test.each([
    [1, 'low', `Low: ${full(1, 14)}, most from about 60.`],
    [13, 'low', `Low: ${full(13, 14)}, most from about 60.`],
    [14, 'raised', `Raised: ${full(14, 14)}, most from about 60.`],
    [59, 'raised', `Raised: ${full(59, 14)}, most from about 60.`],
    [60, 'high', `High: ${full(60, 14)}, most from about 60.`],
  ])('%d days at 9 C: %s', (count, level, reason) => {
    expect(boltingRisk(onion, { ...days(count, 5, 13), from: 0, to: count, coverGain: 0 })).toEqual({
      level,
      reason,
      coldDays: count,
      freezeThawDays: 0,
    });
  });

  test('a crop without a gate counts from emergence', () => {
    const risk = boltingRisk(crop('Beet'), { ...days(40, 4, 10), from: 0, to: 40, coverGain: 0 });
    expect(risk.reason).toBe(`Raised: ${full(40, 40)}, most from about 60.`);
  });

  test('figures that are not whole are said rounded: carrot, 126 and 336 C days of 7.5', () => {
    const risk = boltingRisk(crop('Carrot'), { ...days(20, 6.5, 6.5), from: 0, to: 20, coverGain: 0 });
    expect(risk.reason).toBe(
      'Raised: 20 days of full cold after eight leaves begun; some bolt from about 17, most from about 45.',
    );
  });

  test('freezing and thawing is said, and takes raised to high', () => {
    const weather = { ...days(20, -1, 11), from: 0, coverGain: 0 };
    expect(boltingRisk(onion, { ...weather, to: 14 })).toEqual({
      level: 'high',
      reason: `High: ${full(14, 14)}, most from about 60; 14 days of freezing and thawing.`,
      coldDays: 14,
      freezeThawDays: 14,
    });
    expect(boltingRisk(onion, { ...weather, to: 10 }).level).toBe('raised');
    expect(boltingRisk(onion, { ...weather, to: 1 }).reason).toBe(
      `Low: ${full(1, 14)}, most from about 60; 1 day of freezing and thawing.`,
    );
  });

  test.each([
    ['never', Number.NaN, 30],
    ['on the last day', 30, 30],
    ['after the last day', 31, 30],
  ])('a gate passed %s leaves the plants deaf to cold', (_, from, to) => {
    expect(boltingRisk(onion, { ...days(40, 5, 13), from, to, coverGain: 0 })).toEqual({
      level: 'low',
      reason:
        'Low: the plants stay below pencil thickness (about five leaves) while it is cool, and feel no cold before that.',
      coldDays: 0,
      freezeThawDays: 0,
    });
  });

  test('only days from the gate on and before the end count, and only those there are', () => {
    const counted = (from: number, to: number): readonly [number, number] => {
      const risk = boltingRisk(onion, { ...days(20, -1, 11), from, to, coverGain: 0 });
      return [risk.coldDays, risk.freezeThawDays];
    };
    expect(counted(0, 20)).toEqual([20, 20]);
    expect(counted(15, 20)).toEqual([5, 5]);
    expect(counted(0, 5)).toEqual([5, 5]);
    expect(counted(-3, 99)).toEqual([20, 20]);
  });

  test('days without readings count for nothing', () => {
    const risk = boltingRisk(onion, {
      lows: [-1, Number.NaN, -1],
      highs: [11, 11, Number.NaN],
      from: 0,
      to: 3,
      coverGain: 0,
    });
    expect([risk.coldDays, risk.freezeThawDays]).toEqual([1, 1]);
  });

  test.each([
    [-1, 1, 0, 1],
    [0, 5, 0, 0],
    [-5, 0, 0, 0],
    [-2, 5, 2, 0],
    [-5, 1, 2, 1],
    [-5, -2, 2, 0],
    [-5, -1, 2, 1],
  ])('low %d, high %d, cover %d: %d days of freezing and thawing', (low, high, coverGain, count) => {
    expect(freezeThawDays({ lows: [low], highs: [high], from: 0, to: 1, coverGain })).toBe(count);
  });

  test('a cover that warms 13 C to 15 C takes the cold away, and one that warms 2 C to 4 C adds none', () => {
    const felt = (mean: number): number =>
      boltingRisk(onion, { ...days(10, mean, mean), from: 0, to: 10, coverGain: 2 }).coldDays;
    expect(felt(13)).toBe(0);
    expect(felt(2)).toBeCloseTo(4, 12);
  });
});
