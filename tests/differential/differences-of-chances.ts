// Where the engines part on purpose in distributions and in money over time; the other differences stand in differences.ts.

import type { Difference } from './compare.ts';
import { errorKind } from './compare.ts';
import { gap, isFraction, type KnownDifference, kinds, num, numbersOf, peerFails } from './difference-parts.ts';
import type { Value } from './engines.ts';

const CHANCES =
  'BINOM.DIST BINOMDIST NORM.DIST NORMDIST NORM.S.DIST PHI GAUSS POISSON.DIST POISSON NORM.S.INV NORM.INV NORMINV';

const SAMPLED =
  'T.DIST T.DIST.RT T.DIST.2T T.INV T.INV.2T TINV CHISQ.DIST CHISQ.DIST.RT CHISQ.INV CHISQ.INV.RT F.DIST F.DIST.RT F.INV F.INV.RT ' +
  'CONFIDENCE CONFIDENCE.NORM CONFIDENCE.T T.TEST TTEST GAMMA.DIST GAMMADIST GAMMA.INV GAMMAINV WEIBULL.DIST WEIBULL EXPON.DIST ' +
  'EXPONDIST BETA.DIST BETADIST BETA.INV BETAINV HYPGEOM.DIST HYPGEOMDIST';

/** Whether a rate brings payments and amounts to nothing, by the equation of 6.12.20. */
function paysOff(one: Difference, rate: Value): boolean {
  if (typeof rate !== 'number' || rate === 0) return false;
  const [periods, paid, present] = [num(one, 0), num(one, 1), num(one, 2)];
  const future = one.args.length > 3 ? num(one, 3) : 0;
  const grown = (1 + rate) ** periods;
  const left = future + present * grown + (paid * (grown - 1)) / rate;
  return Math.abs(left) <= 1e-6 * (Math.abs(future) + Math.abs(present * grown) + Math.abs((paid * grown) / rate));
}

export const DIFFERENCES_OF_CHANCES: readonly KnownDifference[] = [
  {
    on: CHANCES,
    why: 'The peer gives chances to some 1e-10 and loses the tails; ours hold their digits there (checked against published tables).',
    supports: 'arithmetic',
    applies: (one) => gap(one) <= 1e-9 * Math.max(1, ...numbersOf(one).map(Math.abs)),
  },
  {
    on: SAMPLED,
    why: "The peer's series and searches end some 1e-7 before the answer and lose the tails; ours hold their figures there (tests/agronomy/sampled.test.ts).",
    supports: 'arithmetic',
    applies: (one) => gap(one) <= 1e-6 * Math.max(Math.abs(Number(one.own)), 1e-3),
  },
  {
    on: 'CHISQ.INV CHISQ.INV.RT F.INV F.INV.RT',
    why: 'No value has all of the distribution below it (6.18.13, 6.18.24); the peer ends its search somewhere.',
    supports: 'standard',
    applies: (one) => errorKind(one.own) === 'number' && (num(one, 0) === 0 || num(one, 0) === 1),
  },
  {
    on: 'BETADIST',
    why: 'The bounds stand before the last argument, which may be left out (6.18.7); the peer has it before the bounds and wants it. BETA.DIST compares the rest.',
    supports: 'standard',
    applies: () => true,
  },
  {
    on: 'T.TEST TTEST',
    why: 'Tails and kinds are cut off to whole numbers; the peer refuses fractions.',
    supports: 'either',
    applies: (one) => numbersOf(one).some(isFraction),
  },
  {
    on: 'IPMT PPMT',
    why: 'A part of a period counts as it is; the peer has no interest within one.',
    supports: 'either',
    applies: (one) => isFraction(num(one, 1)),
  },
  {
    on: 'T.TEST TTEST CONFIDENCE.T',
    why: 'Too few or unspread values are a division by 0 or an error of the number; the peer has the other of the two.',
    supports: 'either',
    applies: (one) => kinds('divide', 'number')(one) || kinds('number', 'divide')(one),
  },
  {
    on: 'IPMT PPMT',
    why: 'The peer takes one large amount from another; ours reckons the small part itself, and goes on where a power of the rate overflows.',
    supports: 'arithmetic',
    applies: (one) =>
      gap(one) <= 1e-9 * Math.max(...numbersOf(one).map(Math.abs)) * (1 + num(one, 0)) || num(one, 2) > 300,
  },
  {
    on: 'MIRR',
    why: 'At a loss of more than all there is no rate; the peer reckons on with powers of negative numbers.',
    supports: 'arithmetic',
    applies: (one) => errorKind(one.own) === 'number' && numbersOf(one).some((rate) => rate <= -1),
  },
  {
    on: 'BETA.INV BETAINV GAMMA.INV GAMMAINV CHISQ.INV CHISQ.INV.RT F.INV F.INV.RT T.INV T.INV.2T TINV',
    why: "The peer's search ends too early in the far tails, as for NORM.INV.",
    supports: 'arithmetic',
    applies: (one) => (num(one, 0) < 1e-6 || num(one, 0) > 1 - 1e-6) && typeof one.own === 'number',
  },
  {
    on: SAMPLED,
    why: 'Of large shapes and exponents the peer has only the first figures.',
    supports: 'arithmetic',
    applies: (one) =>
      numbersOf(one).some((x) => x > 1e4) &&
      (gap(one) <= 1e-2 * Math.abs(Number(one.own)) || (typeof one.own === 'number' && peerFails('number')(one))),
  },
  {
    on: SAMPLED,
    why: 'Exponents and degrees of freedom end at 10,000,000,000, so that every sum ends.',
    supports: 'either',
    applies: (one) => errorKind(one.own) === 'number' && numbersOf(one).some((x) => x > 1e10),
  },
  {
    on: 'XIRR',
    why: 'The peer ends its steps before the rate is found.',
    supports: 'arithmetic',
    applies: (one) =>
      typeof one.own === 'number' && (peerFails('number')(one) || gap(one) <= 1e-6 * Math.max(1, Math.abs(one.own))),
  },
  {
    on: 'FDIST FINV',
    why: 'The share below is what FDIST gives and FINV takes (6.18.22, 6.18.24); the peer has the share above.',
    supports: 'standard',
    applies: () => true,
  },
  {
    on: 'GAMMA.DIST GAMMADIST WEIBULL.DIST WEIBULL EXPON.DIST EXPONDIST CHISQ.DIST CHISQ.DIST.RT F.DIST F.DIST.RT',
    why: 'Nothing of these distributions lies below 0 (6.18.12, 6.18.22, 6.18.31): a share of 0, or of 1 above it; the peer refuses negative values.',
    supports: 'standard',
    applies: (one) => num(one, 0) < 0 && (one.own === 0 || one.own === 1) && peerFails('number')(one),
  },
  {
    on: 'BETA.DIST BETADIST',
    why: 'Below the first bound lies nothing, above the second everything (6.18.7); the peer refuses such values and the bounds themselves.',
    supports: 'standard',
    applies: (one) => (one.own === 0 || one.own === 1) && peerFails('number')(one),
  },
  {
    on: 'BETA.INV BETAINV GAMMA.INV GAMMAINV',
    why: 'The value with nothing below it is the first bound (6.18.8, 6.18.32), with everything below it the last; the peer refuses both.',
    supports: 'standard',
    applies: (one) =>
      (num(one, 0) === 0 || num(one, 0) === 1) && typeof one.own === 'number' && peerFails('number')(one),
  },
  {
    on: 'HYPGEOM.DIST HYPGEOMDIST',
    why: 'More than there are, or fewer than there must be, has the chance 0, or 1 to be at most; the peer refuses it.',
    supports: 'arithmetic',
    applies: (one) => (one.own === 0 || one.own === 1) && peerFails('number')(one),
  },
  {
    on: 'IPMT PPMT',
    why: 'Payments are counted from 1 to the number of periods (6.12.23); the peer goes on outside.',
    supports: 'standard',
    applies: (one) => errorKind(one.own) === 'number' && !(num(one, 1) >= 1 && num(one, 1) <= num(one, 2)),
  },
  {
    on: 'BINOM.DIST BINOMDIST BINOM.INV CRITBINOM POISSON.DIST POISSON HYPGEOM.DIST HYPGEOMDIST',
    why: 'Counts end at a million millions, so that every sum ends; the peer goes on, or gives up.',
    supports: 'either',
    applies: (one) => errorKind(one.own) === 'number' && numbersOf(one).some((x) => x > 1e12),
  },
  {
    on: 'BINOM.INV CRITBINOM',
    why: 'A share of 0 or 1 is reached by no success or by all (6.18.19 takes 0 to 1); the peer refuses both ends.',
    supports: 'standard',
    applies: (one) => (num(one, 2) === 0 || num(one, 2) === 1) && peerFails('number')(one),
  },
  {
    on: 'PV NPV',
    why: 'At a loss of all there is no worth: an error of the number here, a division by 0 there.',
    supports: 'either',
    applies: (one) => num(one, 0) === -1 && kinds('number', 'divide')(one),
  },
  {
    on: 'IRR',
    why: 'A guess far off or below -100% is only a guess; the peer refuses it or never gets back.',
    supports: 'either',
    applies: (one) =>
      typeof one.own === 'number' &&
      (num(one, 1) <= -1 || num(one, 1) > 10) &&
      (peerFails('value')(one) || peerFails('number')(one)),
  },
  {
    on: 'NORM.INV NORMINV NORM.S.INV',
    why: "The peer's quantile is off in the far tails: of 1e-18 it gives -8.63 deviations for -8.76.",
    supports: 'arithmetic',
    applies: (one) => num(one, 0) < 1e-9 || num(one, 0) > 1 - 1e-9,
  },
  {
    on: 'FV PV PMT NPER EFFECT NOMINAL',
    why: 'A rate or a time so small that 1 + rate is 1 in doubles still grows here; the peer loses it.',
    supports: 'arithmetic',
    applies: (one) =>
      numbersOf(one)
        .slice(0, 2)
        .some((x) => x !== 0 && Math.abs(x) < 1e-6) || Math.abs(Number(one.own)) < 1e-6,
  },
  {
    on: 'POISSON.DIST POISSON',
    why: 'The peer gives up on large counts and means.',
    supports: 'arithmetic',
    applies: (one) => (num(one, 0) > 170 || num(one, 1) > 170) && peerFails('number')(one),
  },
  {
    on: 'RATE',
    why: 'The peer does not find a rate; ours is one at which the payments pay the loan off.',
    supports: 'arithmetic',
    applies: (one) => peerFails('number')(one) && paysOff(one, one.own),
  },
  {
    on: 'RATE',
    why: 'Where the payments are next to nothing the rate is hardly determined; ours pays the loan off.',
    supports: 'arithmetic',
    applies: (one) => paysOff(one, one.own) && Math.abs(num(one, 1)) < 1e-3,
  },
  {
    on: 'RATE',
    why: 'Rates beyond 100,000% a period are not looked for.',
    supports: 'either',
    applies: (one) => errorKind(one.own) === 'number' && Number(one.peer) > 1000,
  },
  {
    on: 'RATE IRR',
    why: "The peer's steps end some 1e-7 before the rate; ours go on to the last digits.",
    supports: 'arithmetic',
    applies: (one) => gap(one) <= 1e-6 * Math.max(1, Math.abs(Number(one.own))),
  },
  {
    on: 'RATE',
    why: 'The peer gives a rate at which the payments do not pay the loan off; here there is none.',
    supports: 'arithmetic',
    applies: (one) => errorKind(one.own) === 'number' && !paysOff(one, one.peer),
  },
  {
    on: 'SLN',
    why: 'A life of 0 is an error of the number here, a division by 0 there.',
    supports: 'either',
    applies: (one) => num(one, 2) === 0 && kinds('number', 'divide')(one),
  },
  {
    on: 'SYD DB DDB',
    why: 'Periods run from 1 to the life (6.12.14, 6.12.46); the peer goes on outside.',
    supports: 'standard',
    applies: (one) =>
      errorKind(one.own) === 'number' && (num(one, 3) < 1 || num(one, 3) > num(one, 2) || num(one, 2) <= 0),
  },
];
