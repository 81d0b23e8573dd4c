// The spacing that serves best: the curve holds together, the goals pull the way a grower expects, ties go to fewer plants.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BedCrop, bestSpacing, candidatesOf, spacingCurve } from '../../engine/agronomy/best-spacing.ts';
import { ONION_SHAPE, ONION_SPREAD } from '../../engine/agronomy/grades.ts';
import { ONION_BANDS } from '../../engine/agronomy/size-bands.ts';
import { stations } from '../../engine/agronomy/spacing.ts';

const INCH = 0.0254;
const PRICES: Readonly<Record<string, number>> = { Small: 2, Medium: 3, Jumbo: 3.2, Colossal: 3 };

const CROP: BedCrop = {
  length: 50 * 0.3048,
  width: 30 * INCH,
  pattern: 'square',
  plantsPerStation: 1,
  isolated: 0.531,
  ceiling: 10.92,
  spread: ONION_SPREAD,
  shape: ONION_SHAPE,
  bands: ONION_BANDS.map((band) => {
    const price = PRICES[band.name];
    return price === undefined ? band : { ...band, price };
  }),
};

const CANDIDATES = candidatesOf(
  [1, 2, 3, 4, 5, 6, 8, 10, 12].map((inches) => inches * INCH),
  [3, 4, 5],
);

describe('the spacing curve', () => {
  it('holds places, density, mass and yield that belong together', () => {
    const curve = spacingCurve(CROP, CANDIDATES);
    expect(curve).toHaveLength(27);
    for (const result of curve) {
      expect(result.stations).toBe(stations(CROP.length, result.spacing, result.rows));
      expect(result.density).toBeCloseTo(result.stations / (CROP.length * CROP.width), 10);
      expect(result.yield).toBeCloseTo(result.stations * result.meanMass, 8);
      expect(result.yieldPerArea).toBeCloseTo(result.density * result.meanMass, 10);
      expect(result.bands.reduce((sum, band) => sum + band.mass, 0)).toBeCloseTo(result.yield, 6);
      expect(result.bands.reduce((sum, band) => sum + band.number, 0)).toBeCloseTo(result.stations, 6);
      expect(result.marketableMass).toBeLessThanOrEqual(result.yield);
    }
  });

  // By hand: 100 places of 2 plants on 10 x 1; density 20. No crowding law to trust here but one: isolated 0.3 and ceiling 6
  // give 1 / (1 / 0.3 + 20 / 6) = 0.15 each, 30 in all. With no spread every bulb is in one band.
  it('reckons a bed by hand: sold, sound and unsold bands, takings less the cost of places', () => {
    const bed: BedCrop = {
      length: 10,
      width: 1,
      pattern: 'square',
      plantsPerStation: 2,
      isolated: 0.3,
      ceiling: 6,
      squarenessLoss: 0,
      spread: 0,
      shape: 430,
      sound: 0.8,
      costPerStation: 0.05,
      bands: [
        { name: 'thick', from: 0.06, to: 0.09, price: 1.5 },
        { name: 'thin', from: 0.03, to: 0.06 },
      ],
    };
    const [result] = spacingCurve(bed, [{ spacing: 0.2, rows: 2 }]);
    expect(result).toMatchObject({ stations: 100, density: 20, rowSpacing: 0.5, rectangularity: 2.5 });
    expect(result?.meanMass).toBeCloseTo(0.15, 12);
    expect(result?.yield).toBeCloseTo(30, 12);
    expect(result?.yieldPerArea).toBeCloseTo(3, 12);
    expect(result?.bands[0]).toMatchObject({ name: 'thick', number: 160, mass: expect.closeTo(24, 10) });
    expect(result?.bands[0]?.money).toBeCloseTo(36, 10);
    expect(result?.bands[1]).toMatchObject({ name: 'thin', number: 0, mass: 0, money: 0 });
    expect(result?.marketableMass).toBeCloseTo(24, 10);
    expect(result?.money).toBeCloseTo(31, 10);
    const [unsold] = spacingCurve({ ...bed, bands: bed.bands.map(({ price: _, ...band }) => band) }, [
      { spacing: 0.2, rows: 2 },
    ]);
    expect(unsold?.bands[0]?.money).toBe(0);
    expect(unsold?.marketableMass).toBe(0);
  });

  it('has no figures for a bed without width or length', () => {
    for (const bed of [
      { ...CROP, width: 0 },
      { ...CROP, length: -1 },
    ]) {
      expect(spacingCurve(bed, [{ spacing: 0.1, rows: 3 }])[0]?.yieldPerArea).toBeNaN();
    }
  });

  it('grows larger bulbs the wider it plants', () => {
    const fourRows = spacingCurve(CROP, CANDIDATES).filter((result) => result.rows === 4 && result.spacing >= 7 * INCH);
    fourRows.slice(1).forEach((wider, index) => {
      expect(wider.meanDiameter).toBeGreaterThan(fourRows[index]?.meanDiameter ?? Number.NaN);
    });
  });
});

describe('the best spacing', () => {
  it('is at least as good for its goal as every other', () => {
    const curve = spacingCurve(CROP, CANDIDATES);
    const mass = bestSpacing(curve, { most: 'mass' });
    const money = bestSpacing(curve, { most: 'money' });
    for (const result of curve) {
      expect(mass?.marketableMass).toBeGreaterThanOrEqual(result.marketableMass);
      expect(money?.money).toBeGreaterThanOrEqual(result.money);
    }
  });

  it('plants closer for small bulbs than for large ones', () => {
    const curve = spacingCurve(CROP, CANDIDATES);
    const small = bestSpacing(curve, { most: 'bulbs', band: 'Small' });
    const medium = bestSpacing(curve, { most: 'bulbs', band: 'Medium' });
    const colossal = bestSpacing(curve, { most: 'bulbs', band: 'Colossal' });
    expect(small?.density).toBeGreaterThan(medium?.density ?? Number.NaN);
    expect(medium?.density).toBeGreaterThan(colossal?.density ?? Number.NaN);
  });

  it('plants wider when each place costs more', () => {
    const curve = spacingCurve(CROP, CANDIDATES);
    const dear = bestSpacing(spacingCurve({ ...CROP, costPerStation: 0.2 }, CANDIDATES), { most: 'money' });
    expect(dear?.stations).toBeLessThan(bestSpacing(curve, { most: 'money' })?.stations ?? Number.NaN);
  });

  it('takes fewer places of equals, and has none for a band that is not there', () => {
    const curve = spacingCurve(CROP, CANDIDATES);
    const unsold = spacingCurve({ ...CROP, bands: ONION_BANDS }, CANDIDATES);
    const best = bestSpacing(unsold, { most: 'mass' });
    expect(best?.marketableMass).toBe(0);
    expect(best?.stations).toBe(Math.min(...unsold.map((result) => result.stations)));
    expect(bestSpacing(curve, { most: 'bulbs', band: 'Giant' })).toBeUndefined();
    expect(bestSpacing([], { most: 'mass' })).toBeUndefined();
  });

  it('keeps the first of candidates that are alike, wherever it stands', () => {
    const twins = spacingCurve(CROP, [
      { spacing: 0.1, rows: 4 },
      { spacing: 0.1, rows: 4 },
    ]);
    expect(bestSpacing(twins, { most: 'mass' })).toBe(twins[0]);
    const last = spacingCurve(CROP, [
      { spacing: 0, rows: 4 },
      { spacing: 0.6, rows: 1 },
      { spacing: 0.1, rows: 4 },
    ]);
    expect(bestSpacing(last, { most: 'mass' })).toBe(last[2]);
  });

  it('skips candidates that cannot be laid out', () => {
    const withBad = spacingCurve(CROP, [
      { spacing: 0, rows: 4 },
      { spacing: 0.1, rows: 4 },
      { spacing: 0.1, rows: 0 },
    ]);
    expect(withBad[0]?.stations).toBeNaN();
    expect(bestSpacing(withBad, { most: 'mass' })?.spacing).toBe(0.1);
  });

  it('sells only the sound share', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (sound) => {
        const [whole] = spacingCurve(CROP, [{ spacing: 0.1, rows: 4 }]);
        const [part] = spacingCurve({ ...CROP, sound }, [{ spacing: 0.1, rows: 4 }]);
        expect(part?.marketableMass).toBeCloseTo((whole?.marketableMass ?? Number.NaN) * sound, 8);
      }),
    );
  });
});
