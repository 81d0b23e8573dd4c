// Whole numbers out of measured ones. Lengths that came through inches or feet carry binary dust, so that fifty feet over
// eight inches may read 74.99999999999999: these two forgive it. Every model that counts things may call this file; it
// calls nothing.

const DUST = 1e-14;

function nearbyWhole(value: number): number | undefined {
  const whole = Math.round(value);
  return Math.abs(value - whole) <= DUST * Math.abs(whole) ? whole : undefined;
}

/** The whole number at or below a value; a value within 1e-14 of its size from a whole number is that number. */
export function wholeBelow(value: number): number {
  return nearbyWhole(value) ?? Math.floor(value);
}

/** The whole number at or above a value, with the same forgiveness: 110.00000000000001 is 110, not 111. */
export function wholeAbove(value: number): number {
  return nearbyWhole(value) ?? Math.ceil(value);
}
