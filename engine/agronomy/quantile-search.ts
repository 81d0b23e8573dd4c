// Finds where a tail of a distribution reaches a share: Newton's steps on the logarithms of both, held within a bracket that only
// ever narrows, so that the answer keeps its figures however small it is. Called by the distributions; calls nothing.

export interface Tail {
  /** The share at z > 0, rising all the way or falling all the way. */
  share(z: number): number;
  /** z times the density at z. */
  slope(z: number): number;
  readonly rises: boolean;
}

const MOST_STEPS = 400;
const SETTLED = 3e-16;
/** How far a step goes at most, as a logarithm, while one side is still open. */
const STRIDE = 7;

/** The z above 0 at which the tail has this share, 0 < share < 1, searched from `start`; 0 or infinity where it lies beyond what a double holds. */
export function reaches(tail: Tail, share: number, start: number): number {
  let [low, high] = [0, Number.POSITIVE_INFINITY];
  let z = Number.isFinite(start) && start > 0 ? start : 1;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const here = tail.share(z);
    const off = here > 0 ? logarithmOfRatio(here, share) : Number.NEGATIVE_INFINITY;
    const beyond = tail.rises ? off > 0 : off < 0;
    if (off === 0) return z;
    if (beyond) high = z;
    else low = z;
    const change = (tail.rises ? -off : off) / (tail.slope(z) / here);
    if (Math.abs(change) <= SETTLED) return z * (1 + change);
    const next = z * Math.exp(Math.max(-STRIDE, Math.min(STRIDE, change)));
    z = next > low && next < high ? next : between(low, high, z);
    if (z === low || z === high) return z;
  }
  return z;
}

/** ln(a / b), with its figures where the two are close. */
function logarithmOfRatio(a: number, b: number): number {
  const part = (a - b) / b;
  return Math.abs(part) < 0.5 ? Math.log1p(part) : Math.log(a / b);
}

function between(low: number, high: number, z: number): number {
  if (high === Number.POSITIVE_INFINITY) return z * Math.exp(STRIDE);
  if (low === 0) return z * Math.exp(-STRIDE);
  return Math.sqrt(low) * Math.sqrt(high);
}
