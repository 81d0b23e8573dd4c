// What a grower reads about whether an onion variety suits: each sentence, and the figures at which the verdict changes.

import { describe, expect, test } from 'vitest';
import type { Bulbing } from '../../engine/agronomy/bulbing.ts';
import { hoursAndMinutes, seasonSuitability, suitability } from '../../engine/agronomy/suitability.ts';

test.each([
  [14.8, '14 h 48 min'],
  [12, '12 h'],
  [11.999, '12 h'],
  [13.0167, '13 h 1 min'],
  [0.5, '0 h 30 min'],
])('%d hours read as %s', (hours, words) => {
  expect(hoursAndMinutes(hours)).toBe(words);
});

describe('by the longest day alone', () => {
  test.each([
    [15, 'yes', 'The longest day here, 15 h, is well past the 14 h it needs to bulb.'],
    [
      14.25,
      'marginal',
      'The longest day here, 14 h 15 min, is within half an hour of the 14 h it needs: it may bulb late or not at all.',
    ],
    [13, 'no', 'It never bulbs here: the longest day is 13 h and it needs 14 h.'],
  ])('a longest day of %d hours where 14 are needed: %s', (longestDay, verdict, reason) => {
    expect(suitability({ longestDay, criticalHours: 14 })).toEqual({ verdict, reason });
  });
});

describe('by leaf growth and latitude', () => {
  const good = { longestDay: 15, criticalHours: 14 };
  const tooSmall = (growth: number): string =>
    `Its day length comes with only ${growth} degree-days of leaf growth in the field, so the bulbs stay too small. Plant in autumn, or choose one that needs longer days.`;
  const smallish = (growth: number): string =>
    `Its day length comes after ${growth} degree-days of leaf growth in the field, which makes smallish bulbs: plant as early as you can.`;

  test.each([
    [29.9, 'no', tooSmall(30)],
    [30, 'marginal', smallish(30)],
    [59.9, 'marginal', smallish(60)],
    [60, 'yes', 'The longest day here, 15 h, is well past the 14 h it needs to bulb.'],
  ])('%d degree-days before bulbing: %s', (leafGrowth, verdict, reason) => {
    expect(suitability({ ...good, leafGrowth })).toEqual({ verdict, reason });
  });

  test.each([
    [24.9, 25, 35, 'This farm lies nearer the equator than the latitudes it is offered for (25 to 35 degrees).'],
    [-35.1, 25, 35, 'This farm lies farther from the equator than the latitudes it is offered for (25 to 35 degrees).'],
    [20, 25, undefined, 'This farm lies nearer the equator than the latitudes it is offered for (from 25 degrees).'],
    [
      40,
      undefined,
      35,
      'This farm lies farther from the equator than the latitudes it is offered for (up to 35 degrees).',
    ],
  ])('at latitude %d, offered from %s to %s', (latitude, adaptedFrom, adaptedTo, reason) => {
    const range = {
      ...(adaptedFrom === undefined ? {} : { adaptedFrom }),
      ...(adaptedTo === undefined ? {} : { adaptedTo }),
    };
    expect(suitability({ ...good, latitude, ...range })).toEqual({ verdict: 'marginal', reason });
  });

  test.each([25, 35, -25, -35])('both ends of the latitudes belong to them: %d', (latitude) => {
    expect(suitability({ ...good, latitude, adaptedFrom: 25, adaptedTo: 35 })?.verdict).toBe('yes');
  });

  test('the worst gives the reason, and of two alike the first', () => {
    const everything = { latitude: 60, adaptedFrom: 25, adaptedTo: 35 };
    expect(suitability({ ...good, ...everything, leafGrowth: 10 })?.reason).toBe(tooSmall(10));
    expect(suitability({ ...good, ...everything, leafGrowth: 45 })?.reason).toBe(smallish(45));
    expect(suitability({ longestDay: 13, criticalHours: 14, ...everything, leafGrowth: 10 })?.reason).toBe(
      'It never bulbs here: the longest day is 13 h and it needs 14 h.',
    );
  });
});

describe('by the season of a planting', () => {
  const gates = (thermalTimeMet: number, dayLengthMet: number, heldBy: Bulbing['heldBy'] = 'day length'): Bulbing => ({
    thermalTimeMet,
    dayLengthMet,
    starts: Math.max(thermalTimeMet, dayLengthMet),
    heldBy,
  });
  const never = Number.NaN;

  test.each([
    ['days too short', gates(100, never), 'never bulbs', 'The days never get long enough while it grows.'],
    ['neither', gates(never, never), 'never bulbs', 'The days never get long enough while it grows.'],
    [
      'too cool',
      gates(never, 100, 'thermal time'),
      'never bulbs',
      'The season is too cool or too short for the plants to grow to bulbing size.',
    ],
    [
      'warm enough when the days are short again',
      { ...gates(200, 100, 'thermal time'), starts: never },
      'never bulbs',
      'By the time the plants are large enough the days have grown too short: sow earlier.',
    ],
    [
      'warmth 31 days behind',
      gates(131, 100, 'thermal time'),
      'bulbs too small',
      'The days were long enough 31 days before the plants were, so they bulb with the fewest leaves that can: sow or plant earlier.',
    ],
    [
      'warmth 30 days behind',
      gates(130, 100, 'thermal time'),
      'suits',
      'The days are long enough soon before the plants are: warmth sets the start of bulbing.',
    ],
    [
      'held by the days',
      gates(100, 130),
      'suits',
      'Leaves grow until the days are long enough: the earlier it is planted, the larger the bulbs.',
    ],
  ])('%s', (_, planting, verdict, reason) => {
    expect(seasonSuitability(planting, 300)).toEqual({ verdict, reason });
  });

  test('fewer than 30 degree-days in the field make small bulbs', () => {
    expect(seasonSuitability(gates(100, 130), 29.6)).toEqual({
      verdict: 'bulbs too small',
      reason:
        'Bulbing starts after only 30 degree-days of leaf growth in the field: plant earlier, or choose one that needs longer days.',
    });
    expect(seasonSuitability(gates(100, 130), 30).verdict).toBe('suits');
  });
});
