// Planting places on beds with edges: counting, offset rows, triangular grids, positions.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  drilledDensity,
  type Layout,
  nearestNeighbour,
  offsetGain,
  offsetStations,
  offsetVerdict,
  patternStations,
  plantDensity,
  plantsOnArea,
  rectangularity,
  rowSpacing,
  squareGrid,
  stationPositions,
  stations,
  triangularGain,
  triangularGrid,
} from '../../engine/agronomy/spacing.ts';

const FOOT = 0.3048;
const INCH = 0.0254;
const NONE = Number.NaN;

describe('stations', () => {
  it('counts whole quotients exactly whatever unit the lengths came through', () => {
    for (let feet = 1; feet <= 200; feet += 1) {
      for (const inches of [1, 2, 3, 4, 6, 8, 12]) {
        expect(stations(feet * FOOT, inches * INCH, 4)).toBe(4 * Math.floor((feet * 12) / inches));
      }
    }
  });

  it('counts a part of a spacing and a part of a row as none', () => {
    expect(stations(10, 0.3, 3)).toBe(99);
    expect(stations(10, 0.3, 3.9)).toBe(99);
    expect(stations(0.2, 0.3, 3)).toBe(0);
    expect(stations(10, 0.3, 0)).toBe(0);
  });

  it('has no answer for lengths that cannot be', () => {
    expect(stations(-1, 0.3, 3)).toBeNaN();
    expect(stations(10, 0, 3)).toBeNaN();
    expect(stations(10, 0.3, -1)).toBeNaN();
    expect(stations(Number.NaN, 0.3, 1)).toBeNaN();
    expect(stations(10, 0.3, Number.POSITIVE_INFINITY)).toBeNaN();
  });
});

describe('offset rows', () => {
  it('lose a place in every second row where half a spacing does not fit', () => {
    expect(offsetStations(600, 6, 4)).toBe(2 * 100 + 2 * 99);
    expect(offsetStations(603, 6, 4)).toBe(4 * 100);
    expect(offsetStations(1, 3, 2)).toBe(0);
  });

  it('never hold more than square rows, and say so', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 60, noNaN: true }),
        fc.double({ min: 0.02, max: 1, noNaN: true }),
        fc.integer({ min: 1, max: 12 }),
        (length, spacing, rows) => {
          const gain = offsetGain(length, spacing, rows);
          expect(gain).toBeLessThanOrEqual(0);
          expect(gain).toBeGreaterThanOrEqual(-Math.floor(rows / 2));
        },
      ),
    );
    expect(offsetVerdict(600, 6, 4)).toBe(
      'Offset rows hold 2 places fewer than square rows on this bed: every second row loses half a spacing at its ends.',
    );
    expect(offsetVerdict(600, 6, 2)).toBe(
      'Offset rows hold 1 place fewer than square rows on this bed: every second row loses half a spacing at its ends.',
    );
    expect(offsetVerdict(603, 6, 4)).toBe(
      'Offset rows hold as many plants as square rows on this bed; they only stand more evenly.',
    );
    expect(offsetStations(-10, 6, 2)).toBeNaN();
    expect(offsetStations(600, 6, -1)).toBeNaN();
    expect(offsetVerdict(600, 0, 4)).toBe('');
  });

  it('stand further from their nearest neighbour where rows are close', () => {
    expect(nearestNeighbour(6, 4, 'offset')).toBeCloseTo(5, 12);
    expect(nearestNeighbour(6, 4, 'square')).toBe(4);
    expect(nearestNeighbour(6, 2, 'offset')).toBeCloseTo(Math.hypot(2, 3), 12);
    expect(nearestNeighbour(0, 2, 'offset')).toBeNaN();
    expect(nearestNeighbour(6, 0, 'offset')).toBeNaN();
    expect(nearestNeighbour(6, -4, 'square')).toBeNaN();
    expect(nearestNeighbour(6, 1, 'offset')).toBe(2);
  });
});

describe('triangular grids', () => {
  it('near the gain of 2 over the root of 3 only on a wide field', () => {
    const square = squareGrid(200, 200, 0.1, 0).stations;
    const triangular = triangularGrid(200, 200, 0.1, 0).stations;
    expect(triangular / square).toBeCloseTo(2 / Math.sqrt(3), 2);
  });

  it('gain nothing or lose on narrow beds', () => {
    expect(triangularGain(600, 30, 6, 3)).toBe(-2);
    expect(triangularGain(600, 30, 12, 3)).toBe(0);
    expect(triangularGain(1200, 48, 6, 3)).toBe(196);
  });

  it.each([
    [600, 30, 6, 3, 500, 498],
    [600, 30, 6, 6, 396, 394],
    [600, 30, 8, 3, 300, 298],
    [600, 30, 10, 5, 180, 179],
    [600, 30, 12, 3, 150, 150],
    [1200, 48, 6, 3, 1600, 1796],
    [1000, 120, 10, 5, 1200, 1294],
  ])(
    'on %d x %d at %d, set back %d, hold as many as counted by hand',
    (length, width, spacing, setback, square, triangular) => {
      expect(squareGrid(length, width, spacing, setback).stations).toBe(square);
      expect(triangularGrid(length, width, spacing, setback).stations).toBe(triangular);
    },
  );

  it.each([
    ['one line along the bed', 60, 12, 6, 6, 1, 9, 9],
    ['one line across it', 12, 60, 6, 6, 9, 9, 5],
    ['one plant', 12, 12, 6, 6, 1, 1, 1],
    ['half a spacing of room', 15, 24, 6, 6, 3, 3, 3],
    ['less than half a spacing of room', 14.9, 24, 6, 6, 3, 3, 2],
  ])('hold %s', (_, length, width, spacing, setback, rows, square, triangular) => {
    // Rows of a triangle stand 5.196 apart, so 48 takes 10 of them and 12 takes 3; of the 10 on one line the 5 shifted ones find no room.
    expect(squareGrid(length, width, spacing, setback)).toEqual({ rows, stations: square });
    expect(triangularGrid(length, width, spacing, setback).stations).toBe(triangular);
  });

  it('have no answer for a setback below nothing or an edge too short for it', () => {
    const none = { rows: Number.NaN, stations: Number.NaN };
    expect(squareGrid(10, 10, 1, -1)).toEqual(none);
    expect(squareGrid(11.9, 20, 1, 6)).toEqual(none);
    expect(squareGrid(20, 11.9, 1, 6)).toEqual(none);
    expect(triangularGrid(20, 11.9, 1, 6)).toEqual(none);
  });

  it('have no answer where the setbacks meet', () => {
    expect(triangularGrid(10, 10, 1, 6).stations).toBeNaN();
    expect(squareGrid(10, 10, 0, 1).stations).toBeNaN();
  });
});

describe('positions', () => {
  const layouts: fc.Arbitrary<Layout> = fc.record({
    length: fc.double({ min: 0.5, max: 20, noNaN: true }),
    width: fc.double({ min: 0.3, max: 2, noNaN: true }),
    spacing: fc.double({ min: 0.05, max: 0.8, noNaN: true }),
    rows: fc.integer({ min: 1, max: 8 }),
    pattern: fc.constantFrom('square' as const, 'offset' as const),
  });

  it('are as many as the count and keep half a spacing from both ends', () => {
    fc.assert(
      fc.property(layouts, (layout) => {
        const places = stationPositions(layout);
        expect(places).toHaveLength(patternStations(layout));
        const half = layout.spacing / 2 - 1e-9;
        for (const { x, y } of places) {
          expect(x).toBeGreaterThanOrEqual(half);
          expect(layout.length - x).toBeGreaterThanOrEqual(half);
          expect(y).toBeGreaterThan(0);
          expect(y).toBeLessThan(layout.width);
        }
      }),
    );
  });

  it('stand nowhere closer than the nearest neighbour', () => {
    fc.assert(
      fc.property(layouts, (layout) => {
        const places = stationPositions(layout).slice(0, 60);
        const nearest = nearestNeighbour(layout.spacing, rowSpacing(layout.width, layout.rows), layout.pattern) - 1e-9;
        places.forEach((one, index) => {
          for (const other of places.slice(index + 1)) {
            expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThanOrEqual(nearest);
          }
        });
      }),
      { numRuns: 40 },
    );
  });

  it('are none for a bed that cannot be laid out', () => {
    expect(stationPositions({ length: 1, width: 1, spacing: 0, rows: 2, pattern: 'square' })).toEqual([]);
  });
});

describe('densities', () => {
  it('need an area above zero', () => {
    expect(plantDensity(160, 1, 0)).toBeNaN();
    expect(plantDensity(160, 3, 4)).toBe(120);
    expect(plantsOnArea(100, 0, 1)).toBeNaN();
    expect(rowSpacing(0.76, 0)).toBeNaN();
  });

  it.each([
    ['a bed without width', () => rowSpacing(0, 3), 0],
    ['a bed of negative width', () => rowSpacing(-0.76, 3), NONE],
    ['no places', () => plantDensity(0, 1, 4), 0],
    ['places without plants', () => plantDensity(160, 0, 4), 0],
    ['fewer than no places', () => plantDensity(-160, 1, 4), NONE],
    ['places with less than no plants', () => plantDensity(160, -1, 4), NONE],
    ['no area', () => plantsOnArea(0, 0.3, 0.1), 0],
    ['an area below nothing', () => plantsOnArea(-1, 0.3, 0.1), NONE],
    ['plants in one spot', () => plantsOnArea(1, 0.3, 0), NONE],
    ['plants set backwards', () => plantsOnArea(1, 0.3, -0.1), NONE],
    ['rows set backwards', () => plantsOnArea(1, -0.3, 0.1), NONE],
    ['3 rows of seeds 0.02 apart, half of which come up, on 1.5', () => drilledDensity(0.5, 3, 1.5, 0.02), 50],
    ['seeds that do not come up', () => drilledDensity(0, 3, 1.5, 0.02), 0],
    ['a bed without rows', () => drilledDensity(0.5, 0, 1.5, 0.02), 0],
    ['less than none that come up', () => drilledDensity(-0.5, 3, 1.5, 0.02), NONE],
    ['fewer than no rows', () => drilledDensity(0.5, -3, 1.5, 0.02), NONE],
    ['fewer than both', () => drilledDensity(-0.5, -3, 1.5, 0.02), NONE],
    ['a drilled bed without width', () => drilledDensity(0.5, 3, 0, 0.02), NONE],
    ['a drilled bed of negative width', () => drilledDensity(0.5, 3, -1.5, 0.02), NONE],
    ['seeds in one spot', () => drilledDensity(0.5, 3, 1.5, 0), NONE],
    ['seeds set backwards', () => drilledDensity(0.5, 3, 1.5, -0.02), NONE],
    ['rows in one spot', () => rectangularity(0, 0.4), NONE],
    ['rows of negative spacing', () => rectangularity(-0.4, 0.4), NONE],
  ])('of %s', (_, answer, expected) => {
    expect(answer()).toBe(expected);
  });

  it('take the longer spacing over the shorter', () => {
    expect(rectangularity(0.1, 0.4)).toBeCloseTo(4, 12);
    expect(rectangularity(0.4, 0.1)).toBeCloseTo(4, 12);
    expect(rectangularity(0.4, 0)).toBeNaN();
  });
});
