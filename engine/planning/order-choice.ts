// The cheapest order under one choice: who is ordered from, and what goods at some of them must come to. Covers of the needs are
// joined one by one; what cannot come to a cheaper whole is left out by a bound, in which goods where an amount is asked count
// for less than they cost (Lagrange's multipliers). Called by whole-order.ts.

import { type Label, notWorse, type OrderCovers, toppedUp } from './order-covers.ts';

export interface Choice {
  /** Who is ordered from, as bits. */
  readonly used: number;
  /** Postage paid, and goods ordered already. */
  readonly fixed: number;
  /** What goods at a supplier must come to. */
  readonly goals: readonly { readonly supplier: number; readonly amount: number }[];
}

export interface FoundOrders {
  /** Packs bought, by the number of the offer; the cheapest among them. */
  readonly orders: readonly ReadonlyMap<number, number>[];
  /** False where there was too much to try. */
  readonly whole: boolean;
}

/** Covers of each need that are worth while, and whether all of them are there. */
interface Lists {
  readonly lists: readonly (readonly Label[])[];
  readonly whole: boolean;
}

/** How much less than its price a pack counts, by goal: from 0 to 1. */
type Weights = readonly number[];

const STEPS = 24;
/** More ways than this under way at once are cut to the cheapest. */
const MOST_LABELS = 4000;
const DUST = 1e-7;

/** The least that any order of a choice costs, if it is to cost less than `most`; infinite where none can. */
export function loosestBound(covers: OrderCovers, needs: readonly number[], choice: Choice, most: number): number {
  const { lists } = listsOf(covers, needs, choice, most);
  return weigh(lists, choice).bound;
}

export function cheapestOfChoice(
  covers: OrderCovers,
  needs: readonly number[],
  choice: Choice,
  most: number,
): FoundOrders {
  const { lists, whole } = listsOf(covers, needs, choice, most);
  const { weights, bound } = weigh(lists, choice);
  if (bound >= most) return { orders: [], whole };
  const joined = join(lists, choice, weights, most);
  const orders = joined.labels.flatMap((label) => {
    const counts = toppedUpTo(covers, label, choice);
    return counts === undefined ? [] : [counts];
  });
  return { orders, whole: whole && joined.whole };
}

/** No cover of a need may cost more than the cheapest by all that is between the cheapest whole and `most`. */
function listsOf(covers: OrderCovers, needs: readonly number[], { used, fixed, goals }: Choice, most: number): Lists {
  const cheapest = needs.map((need) => covers.cheapest(need, used)?.cost ?? 0);
  const least = cheapest.reduce((sum, cost) => sum + cost, fixed);
  const suppliers = goals.map(({ supplier }) => supplier);
  const found = needs.map((need) => covers.dearer(need, used, suppliers, Math.max(0, most - least)));
  return { lists: found.map(({ labels }) => labels), whole: found.every(({ whole }) => whole) };
}

function reduced({ cost, spends }: Label, weights: Weights): number {
  let sum = cost;
  for (let k = 0; k < weights.length; k += 1) sum -= (weights[k] ?? 0) * (spends[k] ?? 0);
  return sum;
}

function lowest(list: readonly Label[], weights: Weights): Label | undefined {
  let best: Label | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const label of list) {
    const value = reduced(label, weights);
    if (value < least) [best, least] = [label, value];
  }
  return best;
}

/** Weights whose bound is high, found by going up its slope in ever smaller steps. */
function weigh(
  lists: readonly (readonly Label[])[],
  { fixed, goals }: Choice,
): { readonly weights: Weights; readonly bound: number } {
  let weights: Weights = goals.map(() => 0);
  let best = { weights, bound: Number.NEGATIVE_INFINITY };
  for (let step = 0; step < STEPS; step += 1) {
    const spent = goals.map(() => 0);
    let bound = fixed + goals.reduce((sum, { amount }, k) => sum + amount * (weights[k] ?? 0), 0);
    for (const list of lists) {
      const chosen = lowest(list, weights);
      if (chosen === undefined) return { weights, bound: Number.POSITIVE_INFINITY };
      bound += reduced(chosen, weights);
      chosen.spends.forEach((amount, k) => {
        spent[k] = (spent[k] ?? 0) + amount;
      });
    }
    if (bound > best.bound) best = { weights, bound };
    if (goals.length === 0) break;
    const slope = goals.map(({ amount }, k) => amount - (spent[k] ?? 0));
    const steepest = slope.reduce((most, one) => Math.max(most, Math.abs(one)), 0);
    if (steepest < DUST) break;
    const pace = 0.5 / (1 + step / 2) / steepest;
    weights = weights.map((weight, k) => Math.min(1, Math.max(0, weight + pace * (slope[k] ?? 0))));
  }
  return best;
}

/** All covers joined to whole orders that can cost less than `most`. */
function join(
  lists: readonly (readonly Label[])[],
  { fixed, goals }: Choice,
  weights: Weights,
  most: number,
): { readonly labels: readonly Label[]; readonly whole: boolean } {
  // What is bought in one way only comes first, and then what there are few ways for.
  const sorted = [...lists].sort((a, b) => a.length - b.length);
  let rest = sorted.reduce((sum, list) => sum + Math.min(...list.map((label) => reduced(label, weights))), 0);
  let labels: readonly Label[] = [{ cost: fixed, spends: goals.map(() => 0), counts: new Map() }];
  let whole = true;
  for (const list of sorted) {
    rest -= Math.min(...list.map((label) => reduced(label, weights)));
    const joined: Label[] = [];
    for (const label of labels) {
      for (const cover of list) {
        const cost = label.cost + cover.cost;
        let bound = cost + rest;
        const spends = goals.map(({ amount }, k) => {
          const spent = Math.min(amount, (label.spends[k] ?? 0) + (cover.spends[k] ?? 0));
          bound += (weights[k] ?? 0) * (amount - spent);
          return spent;
        });
        if (bound < most) joined.push({ cost, spends, counts: new Map([...label.counts, ...cover.counts]) });
      }
    }
    const kept = notWorse(joined);
    if (kept.length > MOST_LABELS) whole = false;
    labels = kept.slice(0, MOST_LABELS);
  }
  return { labels, whole };
}

/** With further packs where goods at a supplier come to too little; undefined where they can't. */
function toppedUpTo(
  covers: OrderCovers,
  { spends, counts }: Label,
  { goals }: Choice,
): ReadonlyMap<number, number> | undefined {
  const all = new Map(counts);
  for (const [k, { supplier, amount }] of goals.entries()) {
    const missing = amount - (spends[k] ?? 0);
    if (missing <= DUST) continue;
    const extra = toppedUp(covers.all, supplier, missing);
    if (extra === undefined) return undefined;
    for (const [offer, count] of extra) all.set(offer, (all.get(offer) ?? 0) + count);
  }
  return all;
}
