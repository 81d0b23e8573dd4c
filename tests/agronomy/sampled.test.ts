// The gamma, beta, F, t and hypergeometric distributions: against figures worked out to 40 digits with mpmath 1.3.0 (gammainc and
// betainc, regularized), against closed forms deep into the tails, and against themselves the other way round.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  betaCdf,
  betaPdf,
  betaQuantile,
  exponentialCdf,
  fAbove,
  fCdf,
  fPdf,
  fQuantile,
  gammaAbove,
  gammaCdf,
  gammaPdf,
  gammaQuantile,
  hypergeometricCdf,
  hypergeometricPmf,
  tBeyond,
  tCdf,
  tPdf,
  tQuantile,
  tWithBeyond,
  weibullCdf,
  weibullPdf,
} from '../../engine/agronomy/distributions.ts';
import { logGammaOnePlus, stirlingError } from '../../engine/agronomy/special-functions.ts';

const relative = (a: number, b: number): number => Math.abs(a - b) / Math.abs(b);

/** What doubles allow: 1e-13, less in tails whose logarithm has itself lost digits. */
const allowed = (share: number): number => Math.max(1e-13, 2e-15 * Math.abs(Math.log(share)));

const GAMMA: readonly (readonly [shape: number, x: number, below: number, above: number])[] = [
  [0.01, 1e-5, 0.8963367982671973, 0.1036632017328028],
  [0.01, 3, 0.9998670286434298, 0.0001329713565701555],
  [0.3, 0.02, 0.3429975158569879, 0.6570024841430121],
  [0.5, 0.5, 0.6826894921370859, 0.3173105078629141],
  [1.5, 40, 1, 3.069277486172417e-17],
  [2.75, 0.001, 1.2704738338475613e-9, 0.9999999987295262],
  [7.5, 7, 0.4744708702370911, 0.5255291297629089],
  [12.25, 90, 1.0, 1.225790347521227e-25],
  [80.5, 60, 0.006644542301774156, 0.9933554576982259],
  [350, 420, 0.9997963729034979, 0.00020362709650207476],
  [1043.3172902247177, 1001.1993773145848, 0.09483440760626753, 0.9051655923937325],
  [5000, 4800, 0.0021027954807304734, 0.9978972045192696],
  [100000, 100500, 0.9428967300239713, 0.057103269976028714],
];

const BETA: readonly (readonly [a: number, b: number, x: number, below: number])[] = [
  [0.05, 0.5, 0.001, 0.6630897291502511],
  [0.5, 0.5, 0.3, 0.36901011956554536],
  [1.5, 20, 0.4, 0.999877027642437],
  [20, 1.5, 0.4, 4.446272742117723e-8],
  [2.25, 0.05, 0.9, 0.0628290837740148],
  [12.5, 0.5, 0.05, 8.831789211195057e-18],
  [37, 52, 0.3, 0.01089492293004386],
  [0.2, 300, 0.004, 0.9611840532018675],
  [800, 1200, 0.37, 0.002880920840258158],
];

const T: readonly (readonly [degrees: number, t: number, beyond: number])[] = [
  [1, 0.1, 0.4682744825694464],
  [1, 2e6, 1.5915494309188206e-7],
  [3, 2.5, 0.04385332350403277],
  [3, 100, 0.0000011022609615924557],
  [12, 1.7823, 0.04999894343993047],
  [30, 6, 6.971384383602371e-7],
  [200, 1.65, 0.050256265017521846],
  [200, 12, 1.2110680026233156e-25],
  [5000, 3, 0.001356554512142897],
];

describe('shares', () => {
  test.each(GAMMA)('gamma of shape %d at %d', (shape, x, below, above) => {
    expect(relative(gammaCdf(x, shape, 1), below)).toBeLessThan(allowed(below));
    expect(relative(gammaAbove(x, shape, 1), above)).toBeLessThan(allowed(above));
  });

  test.each(BETA)('beta of %d and %d at %d', (a, b, x, below) => {
    expect(relative(betaCdf(x, a, b), below)).toBeLessThan(allowed(below));
  });

  test.each(T)('t of %d degrees beyond %d', (degrees, t, beyond) => {
    expect(relative(tBeyond(t, degrees), beyond)).toBeLessThan(allowed(beyond));
    expect(tCdf(-t, degrees)).toBe(tBeyond(t, degrees));
  });

  test('closed forms: sums of Poisson, arc tangent, powers', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), fc.double({ min: 0.01, max: 500, noNaN: true }), (shape, x) => {
        let [sum, term] = [0, 1];
        for (let k = 0; k < shape; k += 1) {
          sum += term;
          term *= x / (k + 1);
        }
        const above = sum * Math.exp(-x);
        expect(relative(gammaAbove(x, shape, 1), above)).toBeLessThan(allowed(above));
      }),
    );
    fc.assert(
      fc.property(fc.double({ min: -7, max: 14, noNaN: true }), (power) => {
        const t = Math.exp(power);
        expect(relative(tBeyond(t, 1), Math.atan(1 / t) / Math.PI)).toBeLessThan(1e-13);
        const root = Math.sqrt(2 + t * t);
        expect(relative(tBeyond(t, 2), 1 / (root * (root + t)))).toBeLessThan(1e-13);
        expect(relative(exponentialCdf(1e-9 * t, 3), -Math.expm1(-3e-9 * t))).toBeLessThan(1e-14);
      }),
    );
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.double({ min: 0.001, max: 50, noNaN: true }), (below, x) => {
        const above = Math.exp((-below / 2) * Math.log1p((2 * x) / below));
        expect(relative(fAbove(x, 2, below), above)).toBeLessThan(allowed(above));
        expect(fCdf(x, 2, below) + fAbove(x, 2, below)).toBeCloseTo(1, 14);
      }),
    );
  });

  test('large shapes go over into the other way of reckoning without a step', () => {
    for (const deviates of [-6, -1.5, 0, 0.3, 4]) {
      const at = (shape: number): number => gammaCdf(shape + deviates * Math.sqrt(shape), shape, 1);
      expect(relative(at(1.0001e8), at(0.9999e8))).toBeLessThan(1e-6);
      expect(at(1e13)).toBeGreaterThan(0);
    }
    expect(betaCdf(0.5, 1e10, 1e10)).toBeCloseTo(0.5, 13);
    expect(betaCdf(0.5, 1e11, 3)).toBeNaN();
    expect(tCdf(1, 1e10)).toBeCloseTo(0.8413447460685429, 9);
  });

  test('densities are the slopes of shares', () => {
    const slope = (share: (x: number) => number, x: number): number => (share(x + 1e-5) - share(x - 1e-5)) / 2e-5;
    expect(slope((x) => gammaCdf(x, 2.5, 3), 4)).toBeCloseTo(gammaPdf(4, 2.5, 3), 8);
    expect(slope((x) => betaCdf(x, 2.5, 3), 0.4)).toBeCloseTo(betaPdf(0.4, 2.5, 3), 8);
    expect(slope((x) => fCdf(x, 5, 9), 1.3)).toBeCloseTo(fPdf(1.3, 5, 9), 8);
    expect(slope((x) => tCdf(x, 7), -0.8)).toBeCloseTo(tPdf(-0.8, 7), 8);
    expect(slope((x) => weibullCdf(x, 2.5, 3), 4)).toBeCloseTo(weibullPdf(4, 2.5, 3), 8);
    expect(tPdf(0, 2)).toBeCloseTo(1 / Math.sqrt(8), 14);
  });

  test('ends and what is no distribution', () => {
    expect([gammaCdf(-1, 2, 3), gammaAbove(0, 2, 3), gammaCdf(Infinity, 2, 3)]).toEqual([0, 1, 1]);
    expect([gammaPdf(0, 1, 4), gammaPdf(0, 2, 4), gammaPdf(0, 0.5, 4), gammaPdf(-1, 2, 4)]).toEqual([0.25, 0, NaN, 0]);
    expect([betaPdf(0, 1, 4), betaPdf(1, 3, 1), betaPdf(0, 0.5, 2), betaPdf(2, 2, 2)]).toEqual([4, 3, NaN, 0]);
    expect([fPdf(0, 2, 5), fPdf(0, 3, 5), fPdf(0, 1, 5), fCdf(-1, 3, 5), fAbove(0, 3, 5)]).toEqual([1, 0, NaN, 0, 1]);
    expect([gammaCdf(1, 0, 1), gammaCdf(1, 1, 0), betaCdf(0.5, 0, 1), tBeyond(1, 0)]).toEqual([NaN, NaN, NaN, NaN]);
    expect([tBeyond(1e200, 3), tPdf(1e200, 3)]).toEqual([0, 0]);
    expect([weibullPdf(0, 1, 2), weibullPdf(0, 0.5, 2), weibullCdf(-3, 1, 2)]).toEqual([0.5, NaN, 0]);
  });
});

describe('values with a share below', () => {
  const shares = fc.double({ min: 1e-8, max: 1 - 1e-8, noNaN: true });
  const shapes = fc.double({ min: -2, max: 6, noNaN: true }).map(Math.exp);

  test('undo the share', () => {
    fc.assert(
      fc.property(shares, shapes, shapes, (share, a, b) => {
        const gamma = gammaQuantile(share, 1 - share, a, b);
        expect(relative(gammaCdf(gamma, a, b), share)).toBeLessThan(1e-12);
        const f = fQuantile(share, 1 - share, a, b);
        expect(relative(fCdf(f, a, b), share)).toBeLessThan(1e-12);
        const t = tQuantile(share, a);
        expect(relative(tCdf(t, a), share)).toBeLessThan(1e-12);
        // Close to 1 a double has no room for what is above.
        const beta = betaQuantile(share, 1 - share, a + 0.5, b + 0.5);
        expect(Math.abs(betaCdf(beta, a + 0.5, b + 0.5) - share)).toBeLessThan(1e-9);
      }),
      { numRuns: 300 },
    );
  });

  test('closed forms', () => {
    fc.assert(
      fc.property(fc.double({ min: -25, max: -0.7, noNaN: true }), (power) => {
        const share = Math.exp(power);
        expect(relative(tWithBeyond(share, 1), 1 / Math.tan(Math.PI * share))).toBeLessThan(2e-13);
        expect(relative(gammaQuantile(1 - share, share, 1, 1), -power)).toBeLessThan(1e-13);
        expect(relative(gammaQuantile(share, 1 - share, 1, 2), -2 * Math.log1p(-share))).toBeLessThan(1e-13);
      }),
    );
    expect(betaQuantile(0.25, 0.75, 1, 1)).toBeCloseTo(0.25, 15);
  });

  test('ends', () => {
    expect([gammaQuantile(0, 1, 2, 3), gammaQuantile(1, 0, 2, 3)]).toEqual([0, NaN]);
    expect([betaQuantile(0, 1, 2, 3), betaQuantile(1, 0, 2, 3)]).toEqual([0, 1]);
    expect([fQuantile(0, 1, 2, 3), fQuantile(1, 0, 2, 3)]).toEqual([0, NaN]);
    expect([tQuantile(0, 3), tQuantile(1, 3), tQuantile(0.5, 3), tWithBeyond(0.6, 3)]).toEqual([NaN, NaN, 0, NaN]);
    expect(gammaQuantile(1e-3, 0.999, 0.001, 1)).toBe(0);
  });
});

describe('hypergeometric', () => {
  const counts = fc
    .tuple(fc.integer({ min: 1, max: 60 }), fc.nat(60), fc.nat(60))
    .filter(([all, drawn, kind]) => drawn <= all && kind <= all);

  test('chances add up to one and to their sums', () => {
    fc.assert(
      fc.property(counts, ([all, drawn, kind]) => {
        let sum = 0;
        for (let found = 0; found <= all; found += 1) {
          sum += hypergeometricPmf(found, drawn, kind, all);
          expect(hypergeometricCdf(found, drawn, kind, all)).toBeCloseTo(sum, 12);
        }
        expect(sum).toBeCloseTo(1, 12);
      }),
    );
  });

  test('what is no sample has no chance', () => {
    expect([hypergeometricPmf(1, 9, 2, 8), hypergeometricCdf(1, 2, 9, 8), hypergeometricPmf(0.5, 2, 3, 8)]).toEqual([
      NaN,
      NaN,
      NaN,
    ]);
    expect([hypergeometricPmf(3, 2, 3, 8), hypergeometricCdf(-1, 2, 3, 8), hypergeometricCdf(2, 2, 3, 8)]).toEqual([
      0, 0, 1,
    ]);
  });
});

describe('under them', () => {
  test('ln gamma(1 + x) near 0 keeps its figures, and meets its reflection', () => {
    expect(relative(logGammaOnePlus(1e-12), -0.5772156649015329e-12)).toBeLessThan(1e-11);
    expect(relative(logGammaOnePlus(0.5), Math.log(Math.sqrt(Math.PI) / 2))).toBeLessThan(1e-14);
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.5, noNaN: true }), (x) => {
        const both = Math.log((Math.PI * x) / Math.sin(Math.PI * x));
        expect(logGammaOnePlus(x) + logGammaOnePlus(-x)).toBeCloseTo(both, 14);
      }),
    );
  });

  test('what Stirling leaves out runs on between whole numbers', () => {
    // n! of -1/2 and 1/2 is the root of pi and half of it.
    const half = Math.log(Math.sqrt(Math.PI) / 2) - Math.log(0.5) + 0.5 - Math.log(2 * Math.PI) / 2;
    expect(relative(stirlingError(0.5), half)).toBeLessThan(1e-14);
    for (const n of [1, 4, 9, 15]) expect(relative(stirlingError(n + 1e-9), stirlingError(n))).toBeLessThan(1e-8);
    expect(relative(stirlingError(0.4999999), stirlingError(0.5))).toBeLessThan(1e-6);
  });
});
