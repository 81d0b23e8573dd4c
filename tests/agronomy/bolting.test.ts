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
