// The picture of a planted bed holds as many places as the sheet counts, groups of the sizes asked for, and nothing that
// lies outside the stretch shown.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { offsetStations, stations } from '../../engine/agronomy/spacing.ts';
import {
  countAt,
  groupsIn,
  type PlantedBed,
  plantRadius,
  ring,
  stretchOf,
} from '../../ui/browser/panels/bed-picture/bed-layout.ts';

const INCH = 0.0254;
const FOOT = 0.3048;

/** 50 ft by 30 in, 4 rows, 8 in apart. */
const BED: PlantedBed = {
  length: 50 * FOOT,
  width: 30 * INCH,
  spacing: 8 * INCH,
  rows: 4,
  pattern: 'square',
  perStation: 3.5,
  diameter: 2.5 * INCH,
};

const beds = fc.record({
  length: fc.double({ min: 1, max: 30, noNaN: true }),
  width: fc.double({ min: 0.3, max: 1.5, noNaN: true }),
  spacing: fc.double({ min: 0.05, max: 1, noNaN: true }),
  rows: fc.integer({ min: 1, max: 8 }),
  pattern: fc.constantFrom('square' as const, 'offset' as const),
  perStation: fc.double({ min: 1, max: 6, noNaN: true }),
  diameter: fc.constantFrom(undefined, 0.06),
});

describe('groups', () => {
  test('the whole bed shows as many places as are counted', () => {
    fc.assert(
      fc.property(beds, (bed) => {
        const count = bed.pattern === 'offset' ? offsetStations : stations;
        expect(groupsIn(bed, bed.length)).toHaveLength(count(bed.length, bed.spacing, bed.rows));
      }),
    );
  });

  test('a stretch shows the places of the whole bed that lie in it, and no others', () => {
    fc.assert(
      fc.property(beds, fc.double({ min: 0.1, max: 1, noNaN: true }), (bed, share) => {
        const until = bed.length * share;
        const reach = until + bed.spacing / 2;
        const shown = groupsIn(bed, until);
        const whole = groupsIn(bed, bed.length).filter(({ station }) => station.x < reach - 1e-9);
        expect(shown.length).toBeGreaterThanOrEqual(whole.length);
        for (const { station } of shown) expect(station.x).toBeLessThanOrEqual(reach + 1e-9);
      }),
    );
  });

  test('half a spacing stays free at the end of a row', () => {
    const [first] = groupsIn(BED, 2);
    expect(first?.station.x).toBeCloseTo(4 * INCH);
    expect(first?.station.y).toBeCloseTo((30 / 8) * INCH);
  });

  test('3.5 to a place is half threes and half fours, turn about', () => {
    const counts = Array.from({ length: 100 }, (_, index) => countAt(index, 3.5));
    expect(counts.filter((count) => count === 3)).toHaveLength(50);
    expect(counts.filter((count) => count === 4)).toHaveLength(50);
    expect(counts.slice(0, 4)).toEqual([3, 4, 3, 4]);
  });

  test('fewer than one to a place leaves places empty', () => {
    const counts = Array.from({ length: 40 }, (_, index) => countAt(index, 0.75));
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(30);
    expect(Math.max(...counts)).toBe(1);
  });
});

test('plants of one group touch and do not overlap', () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 12 }), (count) => {
      const plants = ring(count, 1);
      expect(plants).toHaveLength(count);
      const gaps = plants.flatMap((a, index) => plants.slice(index + 1).map((b) => Math.hypot(a.x - b.x, a.y - b.y)));
      expect(Math.min(...gaps)).toBeGreaterThan(2 - 1e-9);
      expect(Math.min(...gaps)).toBeLessThan(2 + 1e-9);
    }),
  );
});

test('bulbs are drawn at their size, other plants as dots that leave room', () => {
  expect(plantRadius(BED)).toBeCloseTo(1.25 * INCH);
  expect(plantRadius({ ...BED, diameter: undefined, spacing: 0.02 })).toBeLessThan(0.01);
});

test("the stretch is set by the bed and the usual spacing, never by today's", () => {
  expect(stretchOf(BED, 8 * INCH)).toBeCloseTo(60 * INCH);
  expect(stretchOf({ ...BED, spacing: 3 * INCH }, 8 * INCH)).toBe(stretchOf(BED, 8 * INCH));
  expect(stretchOf(BED, 24 * INCH)).toBeCloseTo(96 * INCH);
  expect(stretchOf(BED, 1 * INCH)).toBeCloseTo(30 * INCH);
  expect(stretchOf({ ...BED, length: 1 }, 24 * INCH)).toBe(1);
});
