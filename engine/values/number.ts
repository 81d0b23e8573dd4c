// Number operations whose corner cases the language fixes: powers as OpenFormula 6.4.6 has them.

/** a ^ b; 0 ^ 0 is 1. Not a number for 0 to a negative power and for a negative number to a broken power. */
export function powerOf(a: number, b: number): number {
  return a === 0 && b < 0 ? Number.NaN : a ** b;
}
