// Ways to cover one need by packs of several suppliers: the cheapest from any set of them, and all that may be worth while where
// an order must come to an amount. Called by whole-order.ts; the cheapest covers are worked out in agronomy/seed-packs.ts.

import { cheapestCover, fittingPacks } from '../agronomy/seed-packs.ts';

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
  readonly #dearer = new Map<string, Covers & { readonly over: number }>();
  /** Everything on offer that is not far too large, whoever is tried. */
  readonly all: readonly NumberedOffer[];

  constructor(needs: readonly number[], offers: readonly Offer[], tried: readonly number[]) {
    this.#needs = needs;
    this.#bit = new Map(tried.map((supplier, bit) => [supplier, bit]));
    const numbered = offers.map((offer, number) => ({ ...offer, number }));
    this.all = needs.flatMap((need, v) => {
      const own = numbered.filter((one) => one.need === v);
      const fits = fittingPacks(
        need,
        own.map(({ size }) => size),
      );
      return own.filter((_, k) => fits[k]);
    });
    this.#byNeed = needs.map((_, need) => this.all.filter((one) => one.need === need && this.#bit.has(one.supplier)));
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

  /**
   * Covers of a need from a set of suppliers that may be worth while where an order must come to an amount at some of `goals`: the
   * cheapest, and dearer ones by no more than `over` that spend more there.
   */
  dearer(need: number, used: number, goals: readonly number[], over: number): Covers {
    const cheapest = this.cheapest(need, used);
    if (cheapest === undefined) return { labels: [], whole: true };
    const offers = this.offers(need, used);
    const spending = goals.filter((goal) => offers.some(({ supplier }) => supplier === goal));
    if (spending.length === 0) return { labels: [{ ...cheapest, spends: goals.map(() => 0) }], whole: true };
    const name = `${need} ${used & this.mask(need)} ${spending.join()}`;
    let kept = this.#dearer.get(name);
    if (kept === undefined || kept.over < over) {
      const limit = Number.isFinite(over) ? over : cheapest.cost;
      kept = { ...coversUpTo(offers, this.#needs[need] ?? 0, spending, cheapest.cost + limit), over: limit };
      this.#dearer.set(name, kept);
    }
    const places = goals.map((goal) => spending.indexOf(goal));
    const labels = kept.labels.map((label) => ({ ...label, spends: places.map((at) => label.spends[at] ?? 0) }));
    return { labels, whole: kept.whole && Number.isFinite(over) };
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

/** More steps than this for one need are not worth a page's time. */
const MOST_STEPS = 20_000;

/** Covers of a need, and whether all that cost no more than was asked are among them. */
export interface Covers {
  readonly labels: readonly Label[];
  readonly whole: boolean;
}

/** Covers without a pack too many that cost up to `most`; what is spent at each of `suppliers` stands in their order. */
function coversUpTo(
  offers: readonly NumberedOffer[],
  needed: number,
  suppliers: readonly number[],
  most: number,
): Covers {
  const spent = (counts: ReadonlyMap<number, number>): readonly number[] =>
    suppliers.map((supplier) =>
      offers.reduce((sum, offer) => {
        return offer.supplier === supplier ? sum + offer.price * (counts.get(offer.number) ?? 0) : sum;
      }, 0),
    );
  const sorted = [...offers].filter(({ size }) => size > 0).sort((a, b) => b.size - a.size);
  // The least that one of those still to be looked at costs for what it holds.
  const least = sorted.map((_, k) => Math.min(...sorted.slice(k).map(({ price, size }) => price / size)));
  const labels: Label[] = [];
  let steps = 0;
  const look = (k: number, left: number, cost: number, counts: ReadonlyMap<number, number>): void => {
    steps += 1;
    if (steps > MOST_STEPS) return;
    if (left <= 0) {
      // Without a pack too many: taking out the smallest would leave too few.
      const tooMany = sorted.some(({ number, size }) => (counts.get(number) ?? 0) > 0 && size <= -left);
      if (!tooMany && cost <= most + DUST) labels.push({ cost, spends: spent(counts), counts });
      return;
    }
    const offer = sorted[k];
    if (offer === undefined || cost + left * (least[k] ?? 0) > most + DUST) return;
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
    if (!kept.some((one) => spendsAsMuch(one, label))) kept.push(label);
  }
  return kept;
}

function spendsAsMuch({ spends }: Label, other: Label): boolean {
  for (let k = 0; k < spends.length; k += 1) if ((spends[k] ?? 0) < (other.spends[k] ?? 0) - DUST) return false;
  return true;
}

/** The cheapest further packs of a supplier that cost at least an amount; undefined where it offers none. */
export function toppedUp(
  offers: readonly NumberedOffer[],
  supplier: number,
  amount: number,
): readonly (readonly [offer: number, count: number])[] | undefined {
  const own = offers.filter((offer) => offer.supplier === supplier && offer.price > 0);
  const cents = (money: number): number => Math.round(money * CENTS);
  const cover = cheapestCover(
    Math.ceil(amount * CENTS - DUST * CENTS),
    own.map(({ price }) => ({ seeds: cents(price), price })),
  );
  return cover?.counts.flatMap((count, k): (readonly [number, number])[] =>
    count > 0 ? [[own[k]?.number ?? 0, count]] : [],
  );
}
