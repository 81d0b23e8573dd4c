// Ways to cover one need by packs of several suppliers: the cheapest from any set of them, and all that may be worth while where
// an order must come to an amount. Called by whole-order.ts; the cheapest covers are worked out in agronomy/seed-packs.ts.

import { cheapestCover } from '../agronomy/seed-packs.ts';

/** A pack on offer: how many it holds of which need, from whom. */
export interface Offer {
  readonly need: number;
  readonly supplier: number;
  readonly size: number;
  readonly price: number;
}

/** Packs bought so far: what they cost, what of it counts at each supplier whose order must come to an amount. */
export interface Label {
  readonly cost: number;
  readonly spends: readonly number[];
  /** By the number of the offer. */
  readonly counts: ReadonlyMap<number, number>;
}

export interface NumberedOffer extends Offer {
  readonly number: number;
}

const CENTS = 100;
const DUST = 1e-9;

export class OrderCovers {
  readonly #needs: readonly number[];
  readonly #byNeed: readonly (readonly NumberedOffer[])[];
  /** The bit of each supplier that is tried. */
  readonly #bit: ReadonlyMap<number, number>;
  readonly #masks: readonly number[];
  readonly #cheapest: Map<number, Label | undefined>[];

  constructor(needs: readonly number[], offers: readonly Offer[], tried: readonly number[]) {
    this.#needs = needs;
    this.#bit = new Map(tried.map((supplier, bit) => [supplier, bit]));
    const numbered = offers.map((offer, number) => ({ ...offer, number }));
    this.#byNeed = needs.map((_, need) => numbered.filter((one) => one.need === need && this.#bit.has(one.supplier)));
    this.#masks = this.#byNeed.map((list) => list.reduce((mask, { supplier }) => mask | this.#bitOf(supplier), 0));
    this.#cheapest = needs.map(() => new Map());
  }

  #bitOf(supplier: number): number {
    return 1 << (this.#bit.get(supplier) ?? 0);
  }

  /** Who offers it, as bits. */
  mask(need: number): number {
    return this.#masks[need] ?? 0;
  }

  offers(need: number, used: number): readonly NumberedOffer[] {
    return (this.#byNeed[need] ?? []).filter(({ supplier }) => (used & this.#bitOf(supplier)) !== 0);
  }

  /** The cheapest packs for a need from a set of suppliers; undefined where none of them offers it. */
  cheapest(need: number, used: number): Label | undefined {
    const kept = this.#cheapest[need];
    const asked = used & this.mask(need);
    if (kept === undefined || asked === 0) return undefined;
    if (!kept.has(asked)) kept.set(asked, cheapestOf(this.offers(need, asked), this.#needs[need] ?? 0));
    return kept.get(asked);
  }
}

const COVERS_KEPT = 2000;
const known = new Map<string, readonly number[] | undefined>();

/** Asked again for the same packs and need, it is not worked out again: an edit changes the need of one variety alone. */
function coverCounts(offers: readonly Offer[], needed: number): readonly number[] | undefined {
  const name = `${needed} ${offers.map(({ size, price }) => `${size}:${price}`).join()}`;
  if (!known.has(name)) {
    if (known.size >= COVERS_KEPT) known.clear();
    const packs = offers.map(({ size, price }) => ({ seeds: size, price }));
    known.set(name, cheapestCover(needed, packs)?.counts);
  }
  return known.get(name);
}

function cheapestOf(offers: readonly NumberedOffer[], needed: number): Label | undefined {
  const counts = coverCounts(offers, needed);
  if (counts === undefined) return undefined;
  const bought = offers.flatMap((offer, k): [number, number][] =>
    (counts[k] ?? 0) > 0 ? [[offer.number, counts[k] ?? 0]] : [],
  );
  return {
    cost: offers.reduce((sum, { price }, k) => sum + price * (counts[k] ?? 0), 0),
    spends: [],
    counts: new Map(bought),
  };
}

export interface CoverLimits {
  /** Suppliers whose orders must come to an amount, and the amounts. */
  readonly suppliers: readonly number[];
  readonly wanted: readonly number[];
  /** No cover that costs more. */
  readonly most: number;
}

/** More steps than this for one need are not worth a page's time. */
const MOST_STEPS = 20_000;

/**
 * Covers without a pack too many, of the least cost and dearer ones that spend more where an order must come to an amount.
 * `whole` is false where there were too many to try.
 */
export function coversOf(
  offers: readonly NumberedOffer[],
  needed: number,
  { suppliers, wanted, most }: CoverLimits,
): { readonly labels: readonly Label[]; readonly whole: boolean } {
  const cheapest = cheapestOf(offers, needed);
  if (cheapest === undefined) return { labels: [], whole: true };
  const spent = (counts: ReadonlyMap<number, number>): readonly number[] =>
    suppliers.map((supplier, k) => {
      const sum = offers.reduce(
        (total, offer) => (offer.supplier === supplier ? total + offer.price * (counts.get(offer.number) ?? 0) : total),
        0,
      );
      return Math.min(wanted[k] ?? 0, sum);
    });
  const first: Label = { ...cheapest, spends: spent(cheapest.counts) };
  if (!offers.some(({ supplier }) => suppliers.includes(supplier))) return { labels: [first], whole: true };
  const sorted = [...offers].filter(({ size }) => size > 0).sort((a, b) => b.size - a.size);
  const labels: Label[] = [first];
  let steps = 0;
  const look = (k: number, left: number, cost: number, counts: ReadonlyMap<number, number>): void => {
    steps += 1;
    if (steps > MOST_STEPS || cost > most + DUST) return;
    if (left <= 0) {
      // Without a pack too many: taking out the smallest would leave too few.
      const tooMany = sorted.some(({ number, size }) => (counts.get(number) ?? 0) > 0 && size <= -left);
      if (!tooMany) labels.push({ cost, spends: spent(counts), counts });
      return;
    }
    const offer = sorted[k];
    if (offer === undefined) return;
    for (let count = Math.ceil(left / offer.size - DUST); count >= 0; count -= 1) {
      const more = count === 0 ? counts : new Map([...counts, [offer.number, count]]);
      look(k + 1, left - count * offer.size, cost + count * offer.price, more);
    }
  };
  look(0, needed, 0, new Map());
  return { labels: notWorse(labels), whole: steps <= MOST_STEPS };
}

/** Cheapest first; one goes that costs no less than another and spends no more anywhere. */
export function notWorse(labels: readonly Label[]): readonly Label[] {
  const kept: Label[] = [];
  for (const label of [...labels].sort((a, b) => a.cost - b.cost)) {
    if (!kept.some((one) => one.spends.every((spent, k) => spent >= (label.spends[k] ?? 0) - DUST))) kept.push(label);
  }
  return kept;
}

/** The cheapest further packs of a supplier that cost at least an amount; undefined where it offers none. */
export function toppedUp(
  offers: readonly Offer[],
  supplier: number,
  amount: number,
): readonly (readonly [offer: number, count: number])[] | undefined {
  const own = offers.flatMap((offer, number) =>
    offer.supplier === supplier && offer.price > 0 ? [{ number, price: offer.price }] : [],
  );
  const cents = (money: number): number => Math.round(money * CENTS);
  const cover = cheapestCover(
    Math.ceil(amount * CENTS - DUST * CENTS),
    own.map(({ price }) => ({ seeds: cents(price), price })),
  );
  return cover?.counts.flatMap((count, k): (readonly [number, number])[] =>
    count > 0 ? [[own[k]?.number ?? 0, count]] : [],
  );
}
