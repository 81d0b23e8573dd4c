// One rounding policy for the whole engine: a number within 1e-14 of its own size from a whole number is that number,
// so that 100 x (1 + 10%) rounds up to 110 and three times 8 in is 2 ft. Rounding functions and comparisons use it;
// plain arithmetic keeps its raw doubles.

const DUST = 1e-14;

/** From here on doubles are whole numbers. */
const WHOLE_FROM = 2 ** 52;

/** The whole number that x is but for binary dust, else x itself. */
export function settled(x: number): number {
  const whole = Math.round(x);
  return Math.abs(x - whole) <= DUST * Math.abs(x) ? whole : x;
}

/** Largest whole number not above x, dust forgiven. */
export function tolerantFloor(x: number): number {
  return Math.floor(settled(x));
}

/** Smallest whole number not below x, dust forgiven. */
export function tolerantCeil(x: number): number {
  return Math.ceil(settled(x));
}

/** Nearest whole number, halves away from zero (OpenFormula ROUND), dust forgiven at the half. */
export function tolerantRound(x: number): number {
  const size = Math.abs(x);
  if (size >= WHOLE_FROM) return x;
  return Math.sign(x) * Math.floor(settled(size * 2) / 2 + 0.5);
}

/** Equal but for binary dust. */
export function equalNumbers(a: number, b: number): boolean {
  return a === b || Math.abs(a - b) <= DUST * Math.max(Math.abs(a), Math.abs(b));
}

/** Negative, 0 or positive as a is below, equal to or above b, dust forgiven. */
export function compareNumbers(a: number, b: number): number {
  return equalNumbers(a, b) ? 0 : a < b ? -1 : 1;
}

/** What is above this is above x by more than dust. */
export function clearlyAbove(x: number): number {
  return x + 4 * DUST * Math.abs(x);
}

/** What is below this is below x by more than dust. */
export function clearlyBelow(x: number): number {
  return x - 4 * DUST * Math.abs(x);
}
