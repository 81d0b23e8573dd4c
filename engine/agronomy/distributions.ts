// The public face of the probability distributions: what the functions of the formula language, the stand models and
// the climate models may call. Each distribution stands in a file of its own.

export {
  betaCdf,
  betaPdf,
  betaQuantile,
  fAbove,
  fCdf,
  fPdf,
  fQuantile,
  tBeyond,
  tCdf,
  tPdf,
  tQuantile,
  tWithBeyond,
} from './beta-distribution.ts';
export { binomialAtLeast, binomialCdf, binomialPmf, binomialQuantile } from './binomial.ts';
export {
  exponentialCdf,
  exponentialPdf,
  gammaAbove,
  gammaCdf,
  gammaPdf,
  gammaQuantile,
  weibullCdf,
  weibullPdf,
} from './gamma-distribution.ts';
export { hypergeometricCdf, hypergeometricPmf } from './hypergeometric.ts';
export {
  normalCdf,
  normalPdf,
  normalQuantile,
  standardNormalCdf,
  standardNormalPdf,
  standardNormalQuantile,
} from './normal.ts';
export { poissonCdf, poissonPmf } from './poisson.ts';
export { logBeta, logGamma } from './special-functions.ts';
