// Seed moisture and seed viability at the edges: the last figures that have an answer and the first that have none.
import { describe, expect, it } from 'vitest';
import {
  dryWeightShare,
  freshWeightShare,
  humidityAtMoisture,
  seedMoisture,
} from '../../engine/agronomy/seed-moisture.ts';
import {
  daysUntilViability,
  moistureForStorage,
  seedViability,
  temperatureForStorage,
} from '../../engine/agronomy/seed-viability.ts';

const NONE = Number.NaN;
const ONION = { ke: 6.975, cw: 3.47, ch: 0.04, cq: 0.000428 }; // Ellis & Roberts 1981

describe('seed moisture', () => {
  it('of 10 % dry weight is an eleventh of the fresh weight, and back', () => {
    expect(freshWeightShare(0.1)).toBeCloseTo(1 / 11, 15);
    expect(dryWeightShare(1 / 11)).toBeCloseTo(0.1, 15);
  });

  it.each([
    ['in air without water', 0, 20, 0.2, 0],
    ['in air drier than dry', -0.1, 20, 0.2, NONE],
    ['in air more than full', 1.2, 20, 0.2, NONE],
    ['with oil below nothing', 0.4, 20, -0.1, NONE],
    ['all oil', 0.4, 20, 1, NONE],
    ['more than all oil', 0.4, 20, 1.5, NONE],
    ['colder than the equation holds', 0.4, -120, 0.2, NONE],
  ])('%s', (_, humidity, temperature, oil, moisture) => {
    expect(seedMoisture(humidity, temperature, oil)).toBe(moisture);
  });

  it('is what oil-free seed has: 1 - R = exp(-(Me (1.1 + T / 90))^2 / 440)', () => {
    // At 1 - R = 1 / e and 9 C, Me = sqrt(440) / 1.2 = 17.480 % of the dry weight, 14.879 % of the fresh.
    expect(seedMoisture(1 - Math.exp(-1), 9, 0)).toBeCloseTo(0.14879, 5);
    expect(humidityAtMoisture(0.14879, 9, 0)).toBeCloseTo(1 - Math.exp(-1), 4);
  });

  it.each([
    ['without water', 0, 0.2, 0],
    ['with less than none', -0.1, 0.2, NONE],
    ['all water', 1, 0.2, NONE],
    ['more than all water', 1.2, 0.2, NONE],
    ['with oil below nothing', 0.1, -0.1, NONE],
    ['all oil', 0.1, 1, NONE],
    ['more than all oil', 0.1, 1.2, NONE],
  ])('air in balance with seed %s', (_, moisture, oil, humidity) => {
    expect(humidityAtMoisture(moisture, 20, oil)).toBe(humidity);
  });
});

describe('seed viability', () => {
  it('takes no time to fall to what it is', () => {
    expect(daysUntilViability(0.9, 0.9, 0.08, 20, ONION)).toBe(0);
  });

  it.each([
    ['no fall', 0.9, 0.9, 365],
    ['a rise', 0.8, 0.9, 365],
    ['no time', 0.9, 0.8, 0],
    ['a time gone by', 0.9, 0.8, -365],
    ['a rise in a time gone by', 0.8, 0.9, -365],
    ['no fall in no time', 0.9, 0.9, 0],
  ])('no moisture and no temperature gives %s', (_, germination, wanted, age) => {
    expect(moistureForStorage(germination, wanted, age, 10, ONION)).toBeNaN();
    expect(temperatureForStorage(germination, wanted, age, 0.08, ONION)).toBeNaN();
  });

  it('no temperature keeps seed without moisture, or with less', () => {
    expect(temperatureForStorage(0.9, 0.8, 365, 0, ONION)).toBeNaN();
    expect(temperatureForStorage(0.9, 0.8, 365, -0.05, ONION)).toBeNaN();
  });

  it('no temperature keeps seed longer than the coldest the curve knows', () => {
    // The curve of lives bends over at -ch / (2 cq), about -47 C; at 20 % moisture it takes 3 years there.
    expect(temperatureForStorage(0.9, 0.8, 1_000_000, 0.2, ONION)).toBeNaN();
  });

  it('answers to temperature in a straight line where a crop has no bend', () => {
    // log10 of the spread = 6 - 3 log10 10 - 0.05 x 20 = 2, so 100 days lose one probit: from 84.134 % to 50 %.
    const straight = { ke: 6, cw: 3, ch: 0.05, cq: 0 };
    const oneProbitUp = 0.841344746068543;
    expect(daysUntilViability(oneProbitUp, 0.5, 0.1, 20, straight)).toBeCloseTo(100, 9);
    expect(temperatureForStorage(oneProbitUp, 0.5, 100, 0.1, straight)).toBeCloseTo(20, 9);
    expect(temperatureForStorage(oneProbitUp, 0.5, 1000, 0.1, straight)).toBeCloseTo(0, 9);
    expect(moistureForStorage(oneProbitUp, 0.5, 100, 20, straight)).toBeCloseTo(0.1, 12);
    expect(seedViability(oneProbitUp, 200, 0.1, 20, 6, 3, 0.05, 0)).toBeCloseTo(1 - oneProbitUp, 12);
  });
});
