// Size grades by number and by mass, mass and diameter turned both ways, and sets of bands.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
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

  it('put every piece at the mean where there is no spread', () => {
    expect(gradeShare(0.06, 0, 0.06, 0.07)).toBe(1);
    expect(gradeShare(0.06, 0, 0.05, 0.06)).toBe(0);
    expect(gradeMassShare(0.06, 0, 0.05, 0.07)).toBe(1);
  });

  it('have no answer for figures that cannot be, and none fall in a band turned round', () => {
    expect(gradeShare(0, 0.1, 0, 1)).toBeNaN();
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
