// The beta distribution and those made of it: Snedecor's F and Student's t. Shares below and above a value to near full relative
// accuracy, and the values that have them. Called by the functions and the fits of trials; calls the incomplete beta function.

import { betaShare, betaTerm } from './incomplete-beta.ts';
import { reaches } from './quantile-search.ts';
import { logBeta } from './special-functions.ts';

/** Exponents and degrees of freedom between which the sums of the incomplete beta function are worked out. */
const LEAST_DEGREES = 1e-6;
const MOST_DEGREES = 1e10;

function known(a: number, b: number): boolean {
  return a >= LEAST_DEGREES && b >= LEAST_DEGREES && a <= MOST_DEGREES && b <= MOST_DEGREES;
}

/** Density at x, 0 to 1; none at an end where it has no bound. */
export function betaPdf(x: number, a: number, b: number): number {
  if (!known(a, b)) return Number.NaN;
  if (x < 0 || x > 1) return 0;
  if (x === 0) return a === 1 ? b : a > 1 ? 0 : Number.NaN;
  if (x === 1) return b === 1 ? a : b > 1 ? 0 : Number.NaN;
  return betaTerm(a, b, x, 1 - x) / x / (1 - x);
}

/** Share at or below x. */
export function betaCdf(x: number, a: number, b: number): number {
  return known(a, b) ? betaShare(a, b, x, 1 - x) : Number.NaN;
}

/** x / (1 - x) of the value with `below` of the distribution under it, `above` being 1 - below; both above 0. */
function betaOdds(below: number, above: number, a: number, b: number): number {
  const rises = below <= 0.5;
  const share = (odds: number): number => {
    const [x, y] = [odds / (1 + odds), 1 / (1 + odds)];
    return rises ? betaShare(a, b, x, y) : betaShare(b, a, y, x);
  };
  const slope = (odds: number): number => betaTerm(a, b, odds / (1 + odds), 1 / (1 + odds));
  return reaches({ share, slope, rises }, rises ? below : above, a / b);
}

/** The value with `below` of the distribution under it, 0 to 1, `above` being 1 - below. */
export function betaQuantile(below: number, above: number, a: number, b: number): number {
  if (!known(a, b) || !(below >= 0 && above >= 0)) return Number.NaN;
  if (below === 0) return 0;
  if (above === 0) return 1;
  const odds = betaOdds(below, above, a, b);
  return odds === Number.POSITIVE_INFINITY ? 1 : odds / (1 + odds);
}

/** Share at or below x of an F distribution; 0 below 0. */
export function fCdf(x: number, above: number, below: number): number {
  if (!known(above, below) || Number.isNaN(x)) return Number.NaN;
  return x <= 0 ? 0 : betaShare(above / 2, below / 2, (above * x) / (above * x + below), below / (above * x + below));
}

/** Share above x, a small one with its figures. */
export function fAbove(x: number, above: number, below: number): number {
  if (!known(above, below) || Number.isNaN(x)) return Number.NaN;
  return x <= 0 ? 1 : betaShare(below / 2, above / 2, below / (above * x + below), (above * x) / (above * x + below));
}

/** Density at x of an F distribution; none at 0 where it has no bound (one degree of freedom above). */
export function fPdf(x: number, above: number, below: number): number {
  if (!known(above, below)) return Number.NaN;
  if (x < 0) return 0;
  if (x === 0) return above === 2 ? 1 : above > 2 ? 0 : Number.NaN;
  return betaTerm(above / 2, below / 2, (above * x) / (above * x + below), below / (above * x + below)) / x;
}

/** The value with `share` of an F distribution under it, `rest` over it; 0 where nothing is under it, none where nothing is over it. */
export function fQuantile(share: number, rest: number, above: number, below: number): number {
  if (!known(above, below) || !(share >= 0 && rest > 0)) return Number.NaN;
  return share === 0 ? 0 : betaOdds(share, rest, above / 2, below / 2) * (below / above);
}

/** Share of a t distribution further out than |t| on one side, a small one with its figures. */
export function tBeyond(t: number, degrees: number): number {
  if (!known(degrees, degrees) || Number.isNaN(t)) return Number.NaN;
  const square = (t * t) / degrees;
  if (square === Number.POSITIVE_INFINITY) return 0;
  return 0.5 * betaShare(degrees / 2, 0.5, 1 / (1 + square), square / (1 + square));
}

/** Share at or below t. */
export function tCdf(t: number, degrees: number): number {
  return t > 0 ? 1 - tBeyond(t, degrees) : tBeyond(t, degrees);
}

/** Density at t. */
export function tPdf(t: number, degrees: number): number {
  if (!known(degrees, degrees)) return Number.NaN;
  const square = (t * t) / degrees;
  if (square === Number.POSITIVE_INFINITY) return 0;
  if (square === 0) return Math.exp(-logBeta(degrees / 2, 0.5)) / Math.sqrt(degrees);
  return betaTerm(degrees / 2, 0.5, 1 / (1 + square), square / (1 + square)) / Math.abs(t);
}

/** The t, 0 or above, with `share` of the distribution further out on one side: 0 < share <= 0.5. */
export function tWithBeyond(share: number, degrees: number): number {
  if (!known(degrees, degrees) || !(share > 0 && share <= 0.5)) return Number.NaN;
  const inside = 1 - 2 * share;
  if (inside === 0) return 0;
  // Odds of t^2 / degrees: that much of a beta distribution lies inside.
  return Math.sqrt(degrees * betaOdds(inside, 2 * share, 0.5, degrees / 2));
}

/** The t with `share` of the distribution under it, 0 < share < 1. */
export function tQuantile(share: number, degrees: number): number {
  if (!(share > 0 && share < 1)) return Number.NaN;
  return share < 0.5 ? -tWithBeyond(share, degrees) : tWithBeyond(1 - share, degrees);
}
