// How much light a bed of bulb onions catches while its bulbs fill, by the leaf it has grown when bulbing starts: what an onion
// planted late, or one whose days come early, loses. Called by the functions; calls leaf growth's figures.

import { onionLeafArea } from './leaf-growth.ts';
import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

/** Light extinction of the upright leaves of onions. */
export const ONION_EXTINCTION = 0.35;

/** Plants per m2 at which the relation is read: crowding is reckoned for itself. */
export const BULB_LIGHT_DENSITY = 40;

/** Degree-days (6 to 20 C) that leaves go on growing once bulbing starts, until the canopy is fullest. */
export const LEAF_GROWTH_IN_BULBING = 500;

/** Share of the light that a crop with the library's likely yield catches when fullest. */
export const USUAL_LIGHT = 0.9;

/**
 * Share of the best yield that is lost for each week that onions go into the bed after the days are long enough, and what is left
 * of it at least: a fifth (a judgement; the latest of the trials had a quarter).
 */
export const LOST_A_WEEK_LATE = 0.066;
export const LEFT_WHEN_LATE = 0.2;

export const BULB_LIGHT_LIMITS = {
  leafGrowth: { min: 0, max: 3000, why: 'leaf growth before bulbing is some hundreds of degree-days' },
} satisfies Limits;

const SQUARE_CENTIMETRES = 1e4;

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Light caught by bulbing onions',
    gives: 'yield against the usual one, by the leaf growth when bulbing starts',
    equation: `leaves that shade one another: light caught = k x / (1 + k x), k = ${ONION_EXTINCTION}, x = ${BULB_LIGHT_DENSITY} plants/m2 x leaf area of a plant on its own, ${LEAF_GROWTH_IN_BULBING} degree-days after bulbing starts; over ${USUAL_LIGHT}`,
    range:
      'a week of delay in spring (some 40 degree-days) costs 5 to 9 %; published 6.3 to 6.7 %. Onions only, as sown or set for one season',
    source:
      'form: Goudriaan & Monteith 1990, Annals of Botany 66:695-701 (expolinear growth); leaf area: Brewster 2008, eq 4.17a; k between the two points of Brewster 2008 Table 4.2 (0.32 and 0.40). The 500 degree-days are set so that a week costs what Brewster 2008 Table 4.2 (52 N) and a trial of six dates at 37 S give',
    standing: 'common practice',
  },
  {
    model: 'Late onions',
    gives: 'share of the yield, by the weeks after the first day long enough',
    equation: `1 - ${LOST_A_WEEK_LATE} a week, no less than ${LEFT_WHEN_LATE}`,
    range: 'spring onions; the day and the least are judgements',
    source: 'a trial of six dates at 37 S: 6.3 and 6.7 %; Brewster 2008, Table 4.2 (52 N): 6.6 %',
    standing: 'common practice',
  },
];

/** Share of the light (0 to 1) that a bed of onions catches with so much leaf over its ground. */
export function lightCaught(leafAreaIndex: number): number {
  return leafAreaIndex >= 0 ? 1 - Math.exp(-ONION_EXTINCTION * leafAreaIndex) : Number.NaN;
}

/**
 * Leaf over ground of plants that shade one another, from what they would have grown each on its own: both the same while
 * small, then in a straight line.
 */
export function shadedLeafArea(alone: number): number {
  return Math.log(1 + ONION_EXTINCTION * alone) / ONION_EXTINCTION;
}

/** Share of the light caught when the canopy is fullest, by the leaf growth (degree-days 6 to 20 C) at the start of bulbing. */
export function bulbingLight(leafGrowth: number): number {
  if (!(leafGrowth >= 0)) return Number.NaN;
  const alone = onionLeafArea(leafGrowth + LEAF_GROWTH_IN_BULBING) / SQUARE_CENTIMETRES;
  return lightCaught(shadedLeafArea(BULB_LIGHT_DENSITY * alone));
}

/** Yield over the usual one for a bulb crop with so much leaf growth when bulbing starts. Source and range: see SOURCES. */
export function bulbYieldFactor(leafGrowth: number): number {
  return bulbingLight(leafGrowth) / USUAL_LIGHT;
}
