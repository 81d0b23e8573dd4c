// Crowding: limits of the curves, their inverse, the optimum of the general form, the squareness penalty.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cropYield,
  densityForMass,
  farazdaghiHarrisPlantMass,
  generalPlantMass,
  hollidayPlantMass,
  lineThroughYields,
  optimumDensity,
  plantMass,
  SQUARENESS_LOSS_AT_RANGE,
  squarenessFactor,
  standPlantMass,
} from '../../engine/agronomy/yield-density.ts';

const density = fc.double({ min: 0.01, max: 500, noNaN: true });
const isolated = fc.double({ min: 0.01, max: 5, noNaN: true });
const ceiling = fc.double({ min: 0.5, max: 20, noNaN: true });

describe('plant mass', () => {
  it('is the isolated mass without neighbours and falls with density while yield climbs to the ceiling', () => {
    expect(plantMass(0, 0.53, 10.9)).toBeCloseTo(0.53, 15);
    fc.assert(
      fc.property(density, isolated, ceiling, (d, w, y) => {
        expect(plantMass(d * 1.01, w, y)).toBeLessThan(plantMass(d, w, y));
        expect(cropYield(d * 1.01, w, y)).toBeGreaterThan(cropYield(d, w, y));
        expect(cropYield(d, w, y)).toBeLessThan(y);
      }),
    );
  });

  it('turns round to the density it came from', () => {
    fc.assert(
      fc.property(density, isolated, ceiling, (d, w, y) => {
        expect(densityForMass(plantMass(d, w, y), w, y) / d).toBeCloseTo(1, 6);
      }),
    );
    expect(densityForMass(0.6, 0.5, 10)).toBeNaN();
  });

  it('has no answer for figures that cannot be', () => {
    expect(plantMass(-1, 0.5, 10)).toBeNaN();
    expect(plantMass(10, 0, 10)).toBeNaN();
    expect(plantMass(10, 0.5, 0)).toBeNaN();
    expect(plantMass(Number.NaN, 0.5, 10)).toBeNaN();
  });

  it('runs through two measured yields', () => {
    const line = lineThroughYields({ density: 20, yield: 3.358 }, { density: 60, yield: 4.192 });
    expect(cropYield(20, line.isolated, line.ceiling)).toBeCloseTo(3.358, 10);
    expect(cropYield(60, line.isolated, line.ceiling)).toBeCloseTo(4.192, 10);
  });
});

describe('the general form', () => {
  it('is the reciprocal form at theta 1', () => {
    fc.assert(
      fc.property(density, isolated, ceiling, (d, w, y) => {
        expect(generalPlantMass(d, 1 / w, 1 / y, 1) / plantMass(d, w, y)).toBeCloseTo(1, 10);
        expect(hollidayPlantMass(d, 1 / w, 1 / y, 0) / plantMass(d, w, y)).toBeCloseTo(1, 10);
        expect(farazdaghiHarrisPlantMass(d, 1 / w, 1 / y, 1) / plantMass(d, w, y)).toBeCloseTo(1, 10);
      }),
    );
  });

  it('has its greatest yield at the optimum density below theta 1, and none from there on', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 0.97, noNaN: true }), isolated, ceiling, (theta, w, y) => {
        const a = w ** -theta;
        const b = 1 / y;
        const best = optimumDensity(a, b, theta);
        const yieldAt = (d: number): number => d * generalPlantMass(d, a, b, theta);
        expect(yieldAt(best)).toBeGreaterThanOrEqual(yieldAt(best * 0.98));
        expect(yieldAt(best)).toBeGreaterThanOrEqual(yieldAt(best * 1.02));
      }),
    );
    expect(optimumDensity(0.004, 0.0001, 1)).toBeNaN();
    expect(optimumDensity(-0.004, 0.0001, 0.9)).toBeNaN();
  });

  it('has no mass where the bracket is not above zero', () => {
    expect(generalPlantMass(1, -0.001, 0.0005, 1.3)).toBeNaN();
    expect(hollidayPlantMass(100, 0.001, 0, -0.01)).toBeNaN();
  });
});

describe('squareness', () => {
  it('costs nothing square, the stated loss at 8 to 1, and no more beyond', () => {
    expect(squarenessFactor(1)).toBe(1);
    expect(squarenessFactor(8)).toBeCloseTo(1 - SQUARENESS_LOSS_AT_RANGE, 12);
    expect(squarenessFactor(30)).toBe(squarenessFactor(8));
    expect(squarenessFactor(Math.sqrt(8), 0.2)).toBeCloseTo(0.9, 12);
    expect(squarenessFactor(5, 0)).toBe(1);
    expect(squarenessFactor(0.5)).toBeNaN();
    expect(squarenessFactor(2, 1.2)).toBeNaN();
  });

  it('and the clump factor multiply the mass of a stand', () => {
    const stand = { density: 60, isolated: 0.53, ceiling: 10.9, rectangularity: 8 };
    expect(standPlantMass({ ...stand, squarenessLoss: 0 })).toBeCloseTo(plantMass(60, 0.53, 10.9), 15);
    expect(standPlantMass({ ...stand, clumpFactor: 0.9 })).toBeCloseTo(
      plantMass(60, 0.53, 10.9) * squarenessFactor(8) * 0.9,
      15,
    );
    expect(standPlantMass({ ...stand, clumpFactor: 0 })).toBeNaN();
  });
});
