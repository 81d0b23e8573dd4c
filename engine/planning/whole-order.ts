// The cheapest whole order across suppliers: packs for every need, postage, orders that go free from an amount, least orders.
// Exact for up to eight suppliers: every set of suppliers, and within it every choice of whose postage is to fall away, is
// bounded from below and worked out in the order of its bound until no other can be cheaper. Called by the function library;
// calls the covers of one need in order-covers.ts. Money in any currency.

import { coversOf, type Label, notWorse, type Offer, OrderCovers, toppedUp } from './order-covers.ts';

export interface OrderSupplier {
  /** Paid once where anything is ordered. */
  readonly postage: number;
  /** Goods for which no postage is paid; undefined where it always is. */
  readonly freeFrom: number | undefined;
  /** Goods that an order must come to. */
  readonly least: number;
}

export interface OrderQuestion {
  /** How many are needed of each thing, seeds or sets or plants. */
  readonly needs: readonly number[];
  readonly offers: readonly Offer[];
  readonly suppliers: readonly OrderSupplier[];
}

export interface WholeOrder {
  /** How many of each offer. */
  readonly counts: readonly number[];
  /** Goods and postage by supplier. */
  readonly goods: readonly number[];
  readonly postage: readonly number[];
  readonly cost: number;
  /** Needs that nobody offers. */
  readonly missing: readonly number[];
  /** False where the search was cut short, or there are more suppliers than can be tried: then another order may be cheaper. */
  readonly proven: boolean;
}

/** So many suppliers are tried in every set; of more, those that offer most of what is needed. */
export const MOST_SUPPLIERS = 8;
const DUST = 1e-7;

/** Who is ordered from, and whose postage is to fall away; as bits. */
interface Choice {
  readonly used: number;
  readonly free: number;
  readonly bound: number;
}

export function wholeOrder(question: OrderQuestion): WholeOrder {
  return new Search(question).run();
}

function bits(mask: number): readonly number[] {
  const list: number[] = [];
  for (let s = 0; mask >> s > 0; s += 1) if ((mask >> s) & 1) list.push(s);
  return list;
}

class Search {
  readonly #question: OrderQuestion;
  readonly #covers: OrderCovers;
  /** Needs that somebody offers. */
  readonly #needs: readonly number[];
  /** Suppliers tried, by bit. */
  readonly #tried: readonly number[];
  #proven: boolean;
  #best: { readonly counts: readonly number[]; readonly cost: number } | undefined;

  constructor(question: OrderQuestion) {
    this.#question = question;
    const offered = (need: number): boolean => question.offers.some((offer) => offer.need === need);
    const wanted = question.needs.flatMap((need, v) => (need > 0 && offered(v) ? [v] : []));
    this.#tried = suppliersToTry(question, wanted);
    this.#proven = this.#tried.length === new Set(question.offers.map(({ supplier }) => supplier)).size;
    this.#covers = new OrderCovers(question.needs, question.offers, this.#tried);
    this.#needs = wanted.filter((need) => this.#covers.mask(need) !== 0);
  }

  run(): WholeOrder {
    const { needs } = this.#question;
    const sets = this.#sets();
    // As it falls out at each set, so that few choices are left to look into.
    for (const { used } of sets) this.#keep(this.#cheapestCounts(used));
    for (const choice of this.#choices(sets)) {
      if (this.#best !== undefined && choice.bound >= this.#best.cost - DUST) break;
      this.#tryChoice(choice);
    }
    const counts = this.#best?.counts ?? this.#question.offers.map(() => 0);
    const missing = needs.flatMap((need, v) => (need > 0 && !this.#needs.includes(v) ? [v] : []));
    return { ...this.#priced(counts), counts, missing, proven: this.#proven };
  }

  /** Every set of suppliers that covers all needs, with the least that the goods cost there. */
  #sets(): readonly { readonly used: number; readonly goods: number }[] {
    const sets: { used: number; goods: number }[] = [];
    for (let used = 0; used < 1 << this.#tried.length; used += 1) {
      const goods = this.#goods(used);
      if (goods < Number.POSITIVE_INFINITY) sets.push({ used, goods });
    }
    return sets;
  }

  /** Every choice of free postage at sets that can still be cheaper than the best known, cheapest bound first. */
  #choices(sets: readonly { readonly used: number; readonly goods: number }[]): readonly Choice[] {
    const choices: Choice[] = [];
    for (const { used, goods } of sets) {
      if (this.#best !== undefined && goods >= this.#best.cost - DUST) continue;
      // Only where there is postage to save and an amount from which it is saved.
      const saving = bits(used).filter((bit) => this.#postage(bit) > 0 && this.#supplier(bit)?.freeFrom !== undefined);
      const all = bits(used).reduce((sum, bit) => sum + this.#postage(bit), 0);
      for (let choice = 0; choice < 1 << saving.length; choice += 1) {
        const free = bits(choice).map((k) => saving[k] ?? 0);
        const saved = free.reduce((sum, bit) => sum + this.#postage(bit), 0);
        choices.push({ used, free: free.reduce((mask, bit) => mask | (1 << bit), 0), bound: goods + all - saved });
      }
    }
    return choices.sort((a, b) => a.bound - b.bound || bits(a.used).length - bits(b.used).length);
  }

  #supplier(bit: number): OrderSupplier | undefined {
    return this.#question.suppliers[this.#tried[bit] ?? -1];
  }

  #postage(bit: number): number {
    return this.#supplier(bit)?.postage ?? 0;
  }

  #cheapestCounts(used: number): readonly number[] {
    const counts = this.#question.offers.map(() => 0);
    for (const need of this.#needs) {
      for (const [offer, count] of this.#covers.cheapest(need, used)?.counts ?? []) counts[offer] = count;
    }
    return counts;
  }

  /** The least that goods cost from a set of suppliers, whatever they ask besides. */
  #goods(used: number): number {
    let sum = 0;
    for (const need of this.#needs) sum += this.#covers.cheapest(need, used)?.cost ?? Number.POSITIVE_INFINITY;
    return sum;
  }

  /** What goods at a supplier must come to under a choice. */
  #wanted({ free }: Choice, bit: number): number {
    const supplier = this.#supplier(bit);
    const saving = (free >> bit) & 1 ? (supplier?.freeFrom ?? 0) : 0;
    return Math.max(supplier?.least ?? 0, saving);
  }

  #tryChoice(choice: Choice): void {
    const bound = bits(choice.used).filter((bit) => this.#wanted(choice, bit) > 0);
    const wanted = bound.map((bit) => this.#wanted(choice, bit));
    const suppliers = bound.map((bit) => this.#tried[bit] ?? -1);
    const goods = this.#goods(choice.used);
    const slack = Math.min(
      this.#most(suppliers, wanted),
      (this.#best?.cost ?? Number.POSITIVE_INFINITY) - choice.bound,
    );
    let labels: readonly Label[] = [{ cost: 0, spends: wanted.map(() => 0), counts: new Map() }];
    let least = 0;
    for (const need of this.#needs) {
      const cheapest = this.#covers.cheapest(need, choice.used)?.cost ?? 0;
      least += cheapest;
      const limits = { suppliers, wanted, most: cheapest + slack };
      const given = coversOf(this.#covers.offers(need, choice.used), this.#question.needs[need] ?? 0, limits);
      const joined = joinLabels(labels, given.labels, wanted, least + slack);
      if (!given.whole || !joined.whole) this.#proven = false;
      labels = joined.labels;
    }
    for (const label of labels) if (label.cost <= goods + slack + DUST) this.#finish(label, bound, wanted);
  }

  /** No order is worth dearer packs by more than all it must come to and a pack at each supplier. */
  #most(suppliers: readonly number[], wanted: readonly number[]): number {
    const dearest = suppliers.map((supplier) =>
      this.#question.offers.reduce(
        (most, offer) => (offer.supplier === supplier ? Math.max(most, offer.price) : most),
        0,
      ),
    );
    return [...wanted, ...dearest].reduce((sum, amount) => sum + amount, 0);
  }

  /** Tops orders up to what they must come to, and keeps the whole where it is the cheapest so far. */
  #finish(label: Label, bound: readonly number[], wanted: readonly number[]): void {
    const counts = this.#question.offers.map((_, k) => label.counts.get(k) ?? 0);
    for (const [k, bit] of bound.entries()) {
      const missing = (wanted[k] ?? 0) - (label.spends[k] ?? 0);
      if (missing <= DUST) continue;
      const extra = toppedUp(this.#question.offers, this.#tried[bit] ?? 0, missing);
      if (extra === undefined) return;
      for (const [offer, count] of extra) counts[offer] = (counts[offer] ?? 0) + count;
    }
    this.#keep(counts);
  }

  #keep(counts: readonly number[]): void {
    const { cost, met } = this.#priced(counts);
    if (met && (this.#best === undefined || cost < this.#best.cost - DUST)) this.#best = { counts, cost };
  }

  #priced(counts: readonly number[]): {
    readonly goods: readonly number[];
    readonly postage: readonly number[];
    readonly cost: number;
    readonly met: boolean;
  } {
    const { suppliers, offers } = this.#question;
    const goods = suppliers.map(() => 0);
    const ordered = suppliers.map(() => false);
    offers.forEach(({ supplier, price }, k) => {
      const count = counts[k] ?? 0;
      goods[supplier] = (goods[supplier] ?? 0) + count * price;
      if (count > 0) ordered[supplier] = true;
    });
    const postage = suppliers.map((supplier, s) => {
      const isFree = supplier.freeFrom !== undefined && (goods[s] ?? 0) >= supplier.freeFrom - DUST;
      return ordered[s] === true && !isFree ? supplier.postage : 0;
    });
    const met = suppliers.every(({ least }, s) => ordered[s] !== true || (goods[s] ?? 0) >= least - DUST);
    const cost = [...goods, ...postage].reduce((sum, amount) => sum + amount, 0);
    return { goods, postage, cost, met };
  }
}

/** All that offer something needed; of more than can be tried, those that offer most of it. */
function suppliersToTry({ offers, suppliers }: OrderQuestion, needs: readonly number[]): readonly number[] {
  const offering = (s: number): number =>
    needs.filter((need) => offers.some((offer) => offer.need === need && offer.supplier === s)).length;
  return suppliers
    .map((_, s) => s)
    .filter((s) => offering(s) > 0)
    .sort((a, b) => offering(b) - offering(a) || a - b)
    .slice(0, MOST_SUPPLIERS);
}

/** More ways than this under way at once are cut to the cheapest. */
const MOST_LABELS = 3000;

/** Every label with every cover of the next need, without those that cost too much, or no less and spend no more where it counts. */
function joinLabels(
  labels: readonly Label[],
  covers: readonly Label[],
  wanted: readonly number[],
  most: number,
): { readonly labels: readonly Label[]; readonly whole: boolean } {
  const joined: Label[] = [];
  for (const label of labels) {
    for (const cover of covers) {
      const cost = label.cost + cover.cost;
      if (cost > most + DUST) continue;
      const spends = wanted.map((amount, k) => Math.min(amount, (label.spends[k] ?? 0) + (cover.spends[k] ?? 0)));
      joined.push({ cost, spends, counts: new Map([...label.counts, ...cover.counts]) });
    }
  }
  const kept = notWorse(joined);
  return { labels: kept.slice(0, MOST_LABELS), whole: kept.length <= MOST_LABELS };
}
