// Which seed packs to buy: the cheapest combination of packs that holds at least the seeds needed, exact, any number of
// each pack. Seeds are counts; prices are in any currency, told apart to a ten-thousandth. Calls values/tolerance.ts; the
// function library calls it.

import { tolerantCeil, tolerantFloor } from '../values/tolerance.ts';
import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

export interface Pack {
  readonly seeds: number;
  readonly price: number;
}

/** `counts[k]` of pack k; blank where nothing covers the need. */
export interface Cover {
  readonly counts: readonly number[];
  readonly cost: number;
  readonly seeds: number;
}

/** The greatest number of seeds one order is worked out for; above it a grower buys by weight from a contract. */
export const MOST_SEEDS = 2_000_000;

export const SEED_PACK_LIMITS = {
  needed: { max: MOST_SEEDS, why: 'pack combinations are worked out for up to two million seeds of one variety' },
} satisfies Limits;

/** A pack of this many times the need is not bought, though it be the cheapest, where a smaller one is sold (a judgement). */
export const FAR_TOO_LARGE = 50;

/** Of packs of these sizes, those that a grower would buy: none far larger than the need where a smaller one is sold. */
export function fittingPacks(needed: number, sizes: readonly number[]): readonly boolean[] {
  const fits = (size: number): boolean => size < FAR_TOO_LARGE * needed;
  const anyFits = sizes.some((size) => size > 0 && fits(size));
  return sizes.map((size) => !anyFits || fits(size));
}

const PRICE_STEPS = 10_000;
const NOTHING: Cover = { counts: [], cost: 0, seeds: 0 };

interface Offer {
  readonly index: number;
  readonly seeds: number;
  /** In ten-thousandths, whole, so that equal sums are equal. */
  readonly price: number;
}

function greatestCommonDivisor(a: number, b: number): number {
  let high = a;
  let low = b;
  while (low > 0) [high, low] = [low, high % low];
  return high;
}

/** Packs that can be bought: at least one seed, a price of 0 or more. Seeds by weight are rounded down to whole ones. */
function offersOf(packs: readonly Pack[]): Offer[] {
  const offers: Offer[] = [];
  packs.forEach(({ seeds, price }, index) => {
    const whole = tolerantFloor(seeds);
    if (whole >= 1 && Number.isFinite(whole) && price >= 0 && Number.isFinite(price)) {
      offers.push({ index, seeds: whole, price: Math.round(price * PRICE_STEPS) });
    }
  });
  return offers;
}

// Most seeds for the money; of equal value the larger, so that a cover in it takes the fewest packs.
function bestValue(offers: readonly Offer[]): Offer | undefined {
  let best: Offer | undefined;
  for (const offer of offers) {
    const dearer = best === undefined ? -1 : offer.price * best.seeds - best.price * offer.seeds;
    if (best === undefined || dearer < 0 || (dearer === 0 && offer.seeds > best.seeds)) best = offer;
  }
  return best;
}

/**
 * How much, at most, a cheapest cover holds in other packs than the best one. The best alone covers any need for less than one of
 * it above its rate for the need, and another pack is dearer than its seeds at that rate, or as dear. And among as many others as
 * the best one has seeds (in the common divisor) some add up to a multiple of it, and best-value packs in their place cost no more.
 */
function mostInOthers(best: Offer, offers: readonly Offer[], divisor: number): number {
  const largest = offers.reduce((most, { seeds }) => Math.max(most, seeds), 0);
  const inMultiples = (best.seeds / divisor - 1) * largest;
  const atTheRate = offers.reduce((most, offer) => {
    if (offer === best) return most;
    const dearer = offer.price * best.seeds - best.price * offer.seeds;
    return dearer > 0 ? Math.max(most, (offer.seeds * best.price * best.seeds) / dearer) : Number.POSITIVE_INFINITY;
  }, 0);
  return Math.min(inMultiples, atTheRate);
}

/**
 * The cheapest packs that hold at least `needed` seeds, any number of each. Of combinations that cost the same, the one with the
 * fewest seeds left over, then the fewest packs. Packs without seeds or price are passed over. An empty cover for a need of 0 or
 * less; undefined where no pack is on offer, the need is not a number, or it is above `MOST_SEEDS`.
 */
export function cheapestCover(needed: number, packs: readonly Pack[]): Cover | undefined {
  if (Number.isNaN(needed) || needed > MOST_SEEDS) return undefined;
  if (needed <= 0) return { ...NOTHING, counts: packs.map(() => 0) };
  const offers = offersOf(packs);
  const best = bestValue(offers);
  if (best === undefined) return undefined;

  const divisor = offers.reduce((sofar, offer) => greatestCommonDivisor(sofar, offer.seeds), 0);
  const units = Math.ceil(tolerantCeil(needed) / divisor);
  // So many of the best-value pack any cheapest cover holds.
  const bulk = Math.max(0, Math.floor((units * divisor - mostInOthers(best, offers, divisor)) / best.seeds) - 1);
  const chosen = coverRest(units - bulk * (best.seeds / divisor), offers, divisor);

  const counts = packs.map(() => 0);
  counts[best.index] = bulk;
  for (const index of chosen) counts[index] = (counts[index] ?? 0) + 1;
  const sum = (value: (offer: Offer) => number): number =>
    offers.reduce((total, offer) => total + (counts[offer.index] ?? 0) * value(offer), 0);
  return { counts, cost: sum((offer) => offer.price) / PRICE_STEPS, seeds: sum((offer) => offer.seeds) };
}

/** Marks what can still be needed after some packs: a few needs of all, where packs are large. */
function needsMet(units: number, sizes: Float64Array): Uint8Array {
  const open = new Uint8Array(units + 1);
  open[units] = 1;
  for (let need = units; need > 0; need -= 1) {
    if (open[need] !== 1) continue;
    for (let k = 0; k < sizes.length; k++) {
      const size = sizes[k] as number;
      open[need > size ? need - size : 0] = 1;
    }
  }
  return open;
}

/** Dynamic programme over what is still needed: cost, then seeds, then packs. Gives the packs chosen, one entry each. */
function coverRest(units: number, offers: readonly Offer[], divisor: number): number[] {
  const cost = new Float64Array(units + 1);
  const held = new Float64Array(units + 1);
  const packs = new Float64Array(units + 1);
  const choice = new Int32Array(units + 1);
  const sizes = Float64Array.from(offers, ({ seeds }) => seeds / divisor);
  const prices = Float64Array.from(offers, ({ price }) => price);
  const open = needsMet(units, sizes);
  for (let need = 1; need <= units; need += 1) {
    if (open[need] === 0) continue;
    let bestCost = Number.POSITIVE_INFINITY;
    let bestHeld = 0;
    let bestPacks = 0;
    for (let k = 0; k < sizes.length; k++) {
      const size = sizes[k] as number;
      const rest = need > size ? need - size : 0;
      const newCost = (prices[k] as number) + (cost[rest] as number);
      const newHeld = size + (held[rest] as number);
      const newPacks = 1 + (packs[rest] as number);
      const better =
        newCost < bestCost ||
        (newCost === bestCost && (newHeld < bestHeld || (newHeld === bestHeld && newPacks < bestPacks)));
      if (better) {
        bestCost = newCost;
        bestHeld = newHeld;
        bestPacks = newPacks;
        choice[need] = k;
      }
    }
    cost[need] = bestCost;
    held[need] = bestHeld;
    packs[need] = bestPacks;
  }
  const chosen: number[] = [];
  for (let need = units; need > 0; ) {
    const offer = offers[choice[need] ?? 0];
    if (offer === undefined) break;
    chosen.push(offer.index);
    need -= offer.seeds / divisor;
  }
  return chosen;
}

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Seed packs',
    gives: 'the cheapest packs that hold the seeds needed',
    equation: 'least sum of price x count with sum of seeds x count at least the need, by dynamic programming',
    range: 'up to two million seeds of one variety; postage and quantity discounts are not reckoned',
    source:
      'Gilmore & Gomory 1966, "The theory and computation of knapsack functions", Operations Research 14: 1045-1074',
    standing: 'published',
  },
];
