// Size grades by number and by mass, mass and diameter turned both ways, and sets of bands.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { standardNormalCdf } from '../../engine/agronomy/distributions.ts';
import {
  bandMeanMass,
  gradeMassShare,
  gradeShare,
  meanDiameterOfMass,
  meanMassOfDiameter,
  ONION_SHAPE,
  pieceMass,
  shapeFactor,
} from '../../engine/agronomy/grades.ts';
import {
  bandFaultSentence,
  bandFaults,
  bandShares,
  ONION_BANDS,
  packSpread,
  US_ONION_SIZES,
} from '../../engine/agronomy/size-bands.ts';

const mean = fc.double({ min: 0.02, max: 0.15, noNaN: true });
const spread = fc.double({ min: 0.02, max: 0.3, noNaN: true });
const limit = fc.double({ min: 0, max: 0.2, noNaN: true });
const NONE = Number.NaN;
const OPEN = Number.POSITIVE_INFINITY;

describe('grade shares', () => {
  it('of touching bands add up to one, by number and by mass', () => {
    fc.assert(
      fc.property(mean, spread, (m, s) => {
        const shares = bandShares(m, s, ONION_BANDS);
        expect(shares.reduce((sum, share) => sum + share.byNumber, 0)).toBeCloseTo(1, 10);
        expect(shares.reduce((sum, share) => sum + share.byMass, 0)).toBeCloseTo(1, 10);
      }),
    );
  });

  it('lie between nothing and all, and larger pieces weigh more than their number', () => {
    fc.assert(
      fc.property(mean, spread, limit, (m, s, from) => {
        const number = gradeShare(m, s, from, OPEN);
        const mass = gradeMassShare(m, s, from, OPEN);
        expect(number).toBeGreaterThanOrEqual(0);
        expect(number).toBeLessThanOrEqual(1);
        expect(mass).toBeGreaterThanOrEqual(number - 1e-12);
        expect(mass).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('split a band without loss', () => {
    // At greater spreads the normal curve reaches below a diameter of nought, which no share counts.
    const moderate = fc.double({ min: 0.02, max: 0.15, noNaN: true });
    fc.assert(
      fc.property(mean, moderate, limit, limit, limit, (m, s, ...limits) => {
        const [low = 0, middle = 0, high = 0] = limits.sort((a, b) => a - b);
        const parts = gradeMassShare(m, s, low, middle) + gradeMassShare(m, s, middle, high);
        expect(parts).toBeCloseTo(gradeMassShare(m, s, low, high), 10);
      }),
    );
  });

  it('keep their digits far out on either side', () => {
    const far = gradeShare(0.05, 0.1, 0.09, OPEN);
    expect(far).toBeGreaterThan(0);
    expect(far / gradeShare(0.05, 0.1, -OPEN, 0.01)).toBeCloseTo(1, 8);
  });

  it('far above the mean are those of the lower tail: 0.09 over 0.05 at 10 % is 8 deviations', () => {
    expect(gradeShare(0.05, 0.1, 0.09, OPEN) / standardNormalCdf(-8)).toBeCloseTo(1, 10);
  });

  it('reach to a spread of 30 %, half on either side of the mean', () => {
    expect(gradeShare(0.05, 0.3, -OPEN, 0.05)).toBe(0.5);
    expect(gradeShare(0.05, 0.3, 0.05, OPEN)).toBe(0.5);
  });

  it('put every piece at the mean where there is no spread', () => {
    expect(gradeShare(0.06, 0, 0.06, 0.07)).toBe(1);
    expect(gradeShare(0.06, 0, 0.05, 0.06)).toBe(0);
    expect(gradeShare(0.06, 0, 0.07, 0.08)).toBe(0);
    expect(gradeMassShare(0.06, 0, 0.05, 0.07)).toBe(1);
    expect(gradeMassShare(0.06, 0, 0.06, 0.07)).toBe(1);
    expect(gradeMassShare(0.06, 0, 0.07, 0.08)).toBe(0);
  });

  it('have no answer for figures that cannot be, and none fall in a band turned round', () => {
    expect(gradeShare(0, 0.1, 0, 1)).toBeNaN();
    expect(gradeShare(-0.06, 0.1, 0, 1)).toBeNaN();
    expect(gradeShare(OPEN, 0.1, 0, 1)).toBeNaN();
    expect(gradeShare(0.06, 0.1, 0, NONE)).toBeNaN();
    expect(gradeShare(0.06, 0.31, 0, 1)).toBeNaN();
    expect(gradeShare(0.06, -0.1, 0, 1)).toBeNaN();
    expect(gradeShare(0.06, 0.1, Number.NaN, 1)).toBeNaN();
    expect(gradeMassShare(0.06, 0.1, 0.07, 0.05)).toBe(0);
  });
});

describe('mass and diameter', () => {
  it('turn round', () => {
    fc.assert(
      fc.property(mean, spread, (m, s) => {
        const mass = meanMassOfDiameter(m, s, ONION_SHAPE);
        expect(meanDiameterOfMass(mass, s, ONION_SHAPE)).toBeCloseTo(m, 10);
        expect(mass).toBeGreaterThan(pieceMass(m, ONION_SHAPE));
      }),
    );
    expect(shapeFactor(pieceMass(0.07, 430), 0.07)).toBeCloseTo(430, 9);
    expect(meanDiameterOfMass(0, 0.1, 430)).toBeNaN();
    expect(pieceMass(-1, 430)).toBeNaN();
    expect(shapeFactor(1, 0)).toBeNaN();
  });

  it('of one piece by hand: 430 x 0.1^3 is 0.43, of a crop with a spread of 20 % it is 1.12 times that', () => {
    expect(pieceMass(0.1, 430)).toBeCloseTo(0.43, 14);
    expect(shapeFactor(0.43, 0.1)).toBeCloseTo(430, 10);
    expect(meanMassOfDiameter(0.1, 0.2, 430)).toBeCloseTo(0.4816, 14);
    expect(meanDiameterOfMass(0.4816, 0.2, 430)).toBeCloseTo(0.1, 14);
    expect(pieceMass(0, 430)).toBe(0);
  });

  it.each([
    ['piece without a shape', () => pieceMass(0.1, 0)],
    ['piece of a shape below nothing', () => pieceMass(0.1, -430)],
    ['shape of what weighs nothing', () => shapeFactor(0, 0.1)],
    ['shape of what weighs less', () => shapeFactor(-0.1, 0.1)],
    ['shape of a diameter below nothing', () => shapeFactor(0.1, -0.1)],
    ['crop without a diameter', () => meanMassOfDiameter(0, 0.2, 430)],
    ['crop without a shape', () => meanMassOfDiameter(0.1, 0.2, 0)],
    ['crop of a shape below nothing', () => meanMassOfDiameter(0.1, 0.2, -430)],
    ['crop with too wide a spread', () => meanMassOfDiameter(0.1, 0.4, 430)],
    ['diameter without a shape', () => meanDiameterOfMass(0.4, 0.2, 0)],
    ['diameter of a shape below nothing', () => meanDiameterOfMass(0.4, 0.2, -430)],
    ['diameter with too wide a spread', () => meanDiameterOfMass(0.4, 0.4, 430)],
    ['band that holds none', () => bandMeanMass(0.4, 0, 0.1)],
    ['band that holds less than none', () => bandMeanMass(0.4, -0.1, 0.1)],
  ])('have no answer for a %s', (_, answer) => {
    expect(answer()).toBeNaN();
  });

  it('give a band its own mean mass inside its limits', () => {
    const whole = meanMassOfDiameter(0.07, 0.14, ONION_SHAPE);
    const number = gradeShare(0.07, 0.14, 0.0762, 0.1016);
    const mass = gradeMassShare(0.07, 0.14, 0.0762, 0.1016);
    const jumbo = bandMeanMass(whole, number, mass);
    expect(jumbo).toBeGreaterThan(pieceMass(0.0762, ONION_SHAPE));
    expect(jumbo).toBeLessThan(pieceMass(0.1016, ONION_SHAPE));
    expect(bandMeanMass(whole, 0, 0)).toBeNaN();
  });
});

describe('size bands', () => {
  it('to start from do not overlap, while the official names do', () => {
    expect(bandFaults(ONION_BANDS)).toEqual([]);
    const faults = bandFaults(US_ONION_SIZES);
    expect(faults).toContainEqual({ kind: 'overlap', band: 'Small', other: 'Repacker/Prepacker' });
    expect(faults).toContainEqual({ kind: 'overlap', band: 'Large or Jumbo', other: 'Colossal' });
    expect(faults).toHaveLength(5);
  });

  it('say what is wrong with them', () => {
    const [fault] = bandFaults([{ name: 'Minis', from: 0.04, to: 0.03 }]);
    expect(fault && bandFaultSentence(fault)).toBe('Minis: the upper limit must be above the lower one.');
    const [overlap] = bandFaults([
      { name: 'Minis', from: 0.02, to: 0.04 },
      { name: 'Boilers', from: 0.03, to: 0.05 },
    ]);
    expect(overlap && bandFaultSentence(overlap)).toContain('Minis and Boilers overlap');
  });

  it('in one pack may spread as the standard says', () => {
    expect(packSpread(0.009)).toBeNaN();
    expect([0.01, 0.02, 0.04, 0.07].map(packSpread)).toEqual([0.005, 0.015, 0.02, 0.03]);
  });
});
