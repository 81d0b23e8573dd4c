// Learning from a farm's own records: the library's figure and the mean of what was observed, each weighted by how sure it is.
// The model is the normal mean with a normal prior; the scatter of the farm's own seasons is judged from them and, while they
// are few, from the library's range. Calls the t distribution.

import { tWithBeyond } from './distributions.ts';
import type { ModelSource } from './source.ts';

/** Standard deviations from the middle of a normal spread to the ends between which nine of ten lie. */
const NINE_IN_TEN = 1.6449;
/** Observations' worth of weight that the library's range has in judging how the farm's seasons scatter. */
const SCATTER_PRIOR = 2;
/** Spread of a figure whose range is not known, as a share of it (a judgement). */
const UNKNOWN_SPREAD = 0.25;

/** What the library says: a figure and the range in which nine farms of ten find theirs; NaN ends are not known. */
export interface Library {
  readonly figure: number;
  readonly low: number;
  readonly high: number;
}

/** What a farm noted: how many observations, their mean and standard deviation (NaN with fewer than two). */
export interface Observed {
  readonly count: number;
  readonly mean: number;
  readonly deviation: number;
}

export interface Learned {
  /** The weighted figure. */
  readonly figure: number;
  /** Nine times in ten the farm's own lies within. */
  readonly low: number;
  readonly high: number;
  /** Share of the weight that the farm's observations have. */
  readonly weight: number;
}

/** The spread of a library's figure over farms, from its range. */
function spreadOf({ figure, low, high }: Library): number {
  const width = high - low;
  return width > 0 ? width / (2 * NINE_IN_TEN) : Math.abs(figure) * UNKNOWN_SPREAD;
}

/**
 * The library's figure and the farm's mean, weighted by their precisions; undefined without a figure, or without an
 * observation. Gelman, Carlin, Stern, Dunson, Vehtari & Rubin 2013, Bayesian Data Analysis, third edition, section 2.5
 * (normal mean) with a scaled inverse chi-square judgement of the scatter, section 2.6; ends by the t distribution, on the
 * logarithmic scale by the delta method: a rate, a yield or a share lies above nothing.
 */
export function learn(library: Library, observed: Observed): Learned | undefined {
  const { count, mean, deviation } = observed;
  const { figure } = library;
  if (!Number.isFinite(figure) || !Number.isFinite(mean) || !(count >= 1)) return undefined;
  const spread = spreadOf(library);
  if (!(spread > 0)) return undefined;
  const own = Number.isFinite(deviation) ? (count - 1) * deviation ** 2 : 0;
  const scatter = (SCATTER_PRIOR * spread ** 2 + own) / (SCATTER_PRIOR + count - 1);
  const precision = 1 / spread ** 2;
  const ownPrecision = count / scatter;
  const weight = ownPrecision / (precision + ownPrecision);
  const middle = figure + weight * (mean - figure);
  const end = tWithBeyond(0.05, SCATTER_PRIOR + count - 1) / Math.sqrt(precision + ownPrecision);
  const times = middle > 0 ? Math.exp(end / middle) : 1;
  return { figure: middle, low: middle / times, high: middle * times, weight };
}

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Learned figures',
    gives: "a figure out of the library's and the farm's own",
    equation:
      'figure/spread^2 + n x mean/scatter^2 over 1/spread^2 + n/scatter^2; spread from the range of the library (nine in ten), scatter from own seasons and, while they are few, from that range; ends at the figure x exp(+-t x error/figure)',
    range: 'records of like seasons and beds; a figure without a printed range is taken to spread by a quarter',
    source:
      'Gelman, Carlin, Stern, Dunson, Vehtari & Rubin 2013, Bayesian Data Analysis, third edition, sections 2.5 and 2.6; ends as documented for delta_method_confidence_intervals, transformation log (R package directadjusting 0.6.1, CRAN)',
    standing: 'published',
  },
];
