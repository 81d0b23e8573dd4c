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
  });

  it('turns round to no neighbours at the isolated mass, and to no density above it', () => {
    // 10 x (1/0.25 - 1/0.5) = 20.
    expect(densityForMass(0.25, 0.5, 10)).toBe(20);
    expect(densityForMass(0.5, 0.5, 10)).toBe(0);
    expect(densityForMass(0.6, 0.5, 10)).toBeNaN();
  });

  it.each([
    [0, 0.5, 10],
    [-0.1, 0.5, 10],
    [0.1, 0, 10],
    [0.1, -0.5, 10],
    [0.1, 0.5, 0],
    [0.1, 0.5, -10],
    [Number.NaN, 0.5, 10],
    [0.1, Number.NaN, 10],
    [0.1, 0.5, Number.NaN],
  ])('has no density for a mass of %d of %d, ceiling %d', (mass, isolated, ceiling) => {
    expect(densityForMass(mass, isolated, ceiling)).toBeNaN();
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
    // 0.5 x 0.75 / (0.125 x 0.25) = 12.
    expect(optimumDensity(0.5, 0.125, 0.75)).toBe(12);
  });

  it.each([
    [0, 0.125, 0.75],
    [-0.5, 0.125, 0.75],
    [0.5, 0, 0.75],
    [0.5, -0.125, 0.75],
    [0.5, 0.125, 0],
    [0.5, 0.125, -0.5],
    [0.5, 0.125, 1],
    [0.5, 0.125, 1.2],
  ])('has no best density for a %d, b %d, theta %d', (a, b, theta) => {
    expect(optimumDensity(a, b, theta)).toBeNaN();
  });

  it('has a mass down to density nought', () => {
    expect(generalPlantMass(0, 0.25, 0.1, 0.5)).toBe(16);
    expect(hollidayPlantMass(0, 0.25, 0.1, 0.5)).toBe(4);
    expect(farazdaghiHarrisPlantMass(0, 0.25, 0.1, 0.5)).toBe(4);
    // 0.25 + 0.5 x 2 + 0.125 x 4 = 1.75; 0.25 + 0.5 x 2^2 = 2.25.
    expect(hollidayPlantMass(2, 0.25, 0.5, 0.125)).toBeCloseTo(1 / 1.75, 15);
    expect(farazdaghiHarrisPlantMass(2, 0.25, 0.5, 2)).toBeCloseTo(1 / 2.25, 15);
  });

  it.each([
    ['a density below nought', -1, 1, 0.25, 1],
    ['a power of nought', 2, 1, 0.25, 0],
    ['a power below nought', 2, 1, 0.25, -1],
    ['a bracket of nought', 4, 1, -0.25, 1],
    ['a bracket below nought', 8, 1, -0.25, 1],
    ['a bracket below nought, squared', 8, 1, -0.25, 0.5],
  ])('has no mass for %s', (_, density, a, b, power) => {
    expect(generalPlantMass(density, a, b, power)).toBeNaN();
    if (power !== 0.5) expect(farazdaghiHarrisPlantMass(density, a, b, power)).toBeNaN();
  });

  it('of Holliday has none below density nought or where its sum is not above nought', () => {
    expect(hollidayPlantMass(-1, 1, 0.25, 0)).toBeNaN();
    expect(hollidayPlantMass(2, 1, 0, -0.25)).toBeNaN();
    expect(hollidayPlantMass(4, 1, 0, -0.25)).toBeNaN();
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
    expect(squarenessFactor(2, -0.1)).toBeNaN();
    expect(squarenessFactor(8, 1)).toBe(0);
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
