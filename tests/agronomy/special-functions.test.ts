// The special functions where their values are known in closed form, and where they have none.
import { describe, expect, it } from 'vitest';
import { deviance, logBeta, logGamma, stirlingError } from '../../engine/agronomy/special-functions.ts';

const relative = (a: number, b: number): number => Math.abs(a - b) / Math.abs(b);
const factorial = (n: number): number => Array.from({ length: n }, (_, i) => i + 1).reduce((a, b) => a * b, 1);

describe('log-gamma', () => {
  it('is exactly 0 at 1 and 2, and has no answer at 0 or below', () => {
    expect(logGamma(1)).toBe(0);
    expect(logGamma(2)).toBe(0);
    expect(logGamma(0)).toBeNaN();
    expect(logGamma(-1.5)).toBeNaN();
  });

  it.each([3, 5, 10, 14, 15, 16, 18, 22])('of %d is the logarithm of a factorial', (n) => {
    expect(relative(logGamma(n), Math.log(factorial(n - 1)))).toBeLessThan(1e-14);
  });

  it('of a half is half the logarithm of pi', () => {
    expect(relative(logGamma(0.5), Math.log(Math.PI) / 2)).toBeLessThan(1e-14);
  });
});

describe('what Stirling leaves out', () => {
  it.each([1, 2, 7, 15, 16, 18])('of %d! is the rest of its logarithm', (n) => {
    const stirling = (n + 0.5) * Math.log(n) - n + Math.log(2 * Math.PI) / 2;
    expect(stirlingError(n)).toBeCloseTo(Math.log(factorial(n)) - stirling, 13);
  });

  it('of 2.5! is the rest of the logarithm of 15 sqrt(pi) / 8', () => {
    const stirling = 3 * Math.log(2.5) - 2.5 + Math.log(2 * Math.PI) / 2;
    expect(stirlingError(2.5)).toBeCloseTo(Math.log((15 * Math.sqrt(Math.PI)) / 8) - stirling, 13);
  });
});

describe('deviance', () => {
  it('is nothing at the mean and half the squared distance close to it', () => {
    expect(deviance(5, 5)).toBe(0);
    // (x - m)^2 / (2 m) (1 - (x - m) / (3 m) + ...): at 1e6 + 1 over 1e6, 5e-7 less a third of a millionth of it.
    expect(relative(deviance(1_000_001, 1_000_000), 5e-7 * (1 - 1 / 3e6))).toBeLessThan(1e-11);
  });

  it('far from the mean is x ln(x / m) + m - x', () => {
    expect(deviance(Math.E, 1)).toBeCloseTo(1, 14);
    expect(deviance(1.21, 1)).toBeCloseTo(1.21 * Math.log(1.21) - 0.21, 14);
  });
});

describe('log-beta', () => {
  it.each([
    [1, 1],
    [2, 3],
    [3, 12],
    [9, 9],
    [10, 10],
    [11, 8],
    [12, 15],
  ])('of %d and %d is of factorials', (a, b) => {
    const exact = Math.log((factorial(a - 1) * factorial(b - 1)) / factorial(a + b - 1));
    expect(Math.abs(logBeta(a, b) - exact)).toBeLessThan(1e-13 * Math.max(1, Math.abs(exact)));
  });

  it('keeps its digits where the two are far apart', () => {
    // ln B(1/2, n) = ln sqrt(pi / n) + 1 / (8 n) - ...; ln B(20, n) = ln 19! - 20 ln n - 190 / n + ...
    expect(relative(logBeta(0.5, 1e12), Math.log(Math.sqrt(Math.PI) / 1e6))).toBeLessThan(1e-14);
    expect(relative(logBeta(1e12, 20), Math.log(factorial(19)) - 20 * Math.log(1e12))).toBeLessThan(1e-12);
  });

  it('has no answer where one of the two is not above zero', () => {
    for (const other of [0.5, 5, 12, 1e6]) {
      expect(logBeta(0, other)).toBeNaN();
      expect(logBeta(other, -1)).toBeNaN();
      expect(logBeta(Number.NaN, other)).toBeNaN();
    }
  });
});
