// A unit: a symbol, its dimension and the exact ratio to the canonical unit (m, kg, day, K, money, 1). Ratios are kept
// as two whole-number-like factors so that 8 in becomes 0.2032 m and comes back as 8 in, not a hair less.

import type { Dimension } from './dimension.ts';

export interface Unit {
  /** As a person writes and reads it: 'in', 'lb/ft2', '%', 'degC'. */
  readonly symbol: string;
  readonly dimension: Dimension;
  /** canonical = n * numerator / denominator + offset */
  readonly numerator: number;
  readonly denominator: number;
  /** Not 0 only for a temperature on its scale (degC, degF). */
  readonly offset: number;
}

/** The canonical number (m, kg, day, K, ...) of `n` in this unit. */
export function toCanonical(unit: Unit, n: number): number {
  return (n * unit.numerator) / unit.denominator + unit.offset;
}

/** The number in this unit of a canonical number, unrounded. */
export function fromCanonical(unit: Unit, canonical: number): number {
  return ((canonical - unit.offset) * unit.denominator) / unit.numerator;
}

/**
 * The number in this unit of a canonical number as a person would have typed it: the shortest decimal that converts to
 * the very same canonical number, else the full unrounded one. Writing and reading a file so keeps every bit.
 */
export function shownNumber(unit: Unit, canonical: number): number {
  const raw = fromCanonical(unit, canonical);
  for (const digits of [6, 9, 12, 13, 14, 15, 16]) {
    const shorter = Number(raw.toPrecision(digits));
    if (toCanonical(unit, shorter) === canonical) return shorter;
  }
  const neighbours = [0, 1, -1, 2, -2, 3, -3].map((steps) => raw + steps * spacingOfDoubles(raw));
  return neighbours.find((n) => toCanonical(unit, n) === canonical) ?? raw;
}

function spacingOfDoubles(x: number): number {
  return x === 0 ? 0 : 2 ** (Math.floor(Math.log2(Math.abs(x))) - 52);
}
