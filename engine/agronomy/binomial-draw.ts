// A binomial count drawn from one even number, exactly. Called where seasons are drawn by chance.

import { binomialPmf } from './binomial.ts';

/**
 * How many of `trials` succeed, each with `chance`, for a number from 0 up to but not 1 that chance gave: the counts are tried from
 * the likeliest outwards until their probabilities add up to it, so each comes as often as it should. Steps about as many as
 * the standard deviation. NaN where trials are not whole or chance is none. Source: Kemp, C. D. 1986, A modal method for
 * generating binomial variables, Communications in Statistics: Theory and Methods 15:805.
 */
export function drawBinomial(even: number, trials: number, chance: number): number {
  if (!(chance >= 0 && chance <= 1) || !Number.isInteger(trials) || trials < 0) return Number.NaN;
  if (chance === 0 || trials === 0) return 0;
  if (chance === 1) return trials;
  const odds = chance / (1 - chance);
  const likeliest = Math.min(trials, Math.floor((trials + 1) * chance));
  let below = likeliest;
  let above = likeliest;
  let under = binomialPmf(likeliest, trials, chance);
  let over = under;
  let left = even - under;
  while (left >= 0 && (below > 0 || above < trials)) {
    if (above < trials) {
      over *= ((trials - above) / (above + 1)) * odds;
      above += 1;
      left -= over;
      if (left < 0) return above;
    }
    if (below > 0) {
      under *= below / ((trials - below + 1) * odds);
      below -= 1;
      left -= under;
      if (left < 0) return below;
    }
    // What is left over is the rounding of the sums: both ends are past what a double tells from nothing.
    if (over === 0 && under === 0) return likeliest;
  }
  return likeliest;
}
