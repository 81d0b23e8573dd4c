// The cheapest whole order across suppliers: packs for every need, postage, orders that go free from an amount, least orders.
// Exact to the cent for up to eight suppliers: for every set of suppliers, and within it every choice of whose postage is to fall
// away, order-choice.ts finds the cheapest order, those with the lowest bound first, until no other can be cheaper. Called by
// the acts of the templates. Money in any currency.

import { type Choice, cheapestOfChoice, loosestBound } from './order-choice.ts';
import { type Offer, OrderCovers, toppedUp } from './order-covers.ts';

export interface OrderSupplier {
  /** Paid once where anything is ordered. */
  readonly postage: number;
  /** Goods for which no postage is paid; undefined where it always is. */
  readonly freeFrom: number | undefined;
  /** Goods that an order must come to. */
  readonly least: number;
  /** Goods ordered here whatever else is; none where left out. */
  readonly already?: number;
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
  /** Goods and postage by supplier, what was ordered already among them. */
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
/** Orders that are cheaper by less are not looked for: prices are in cents. */
const LESS_THAN_A_CENT = 0.004;
const DUST = 1e-7;

/** A choice with the least that it can cost. */
interface Bounded extends Choice {
  readonly bound: number;
}

export function wholeOrder(question: OrderQuestion): WholeOrder {
  return new Search(question).run();
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
    this.#proven = offeringAny(question, wanted) <= MOST_SUPPLIERS;
    this.#covers = new OrderCovers(question.needs, question.offers, this.#tried);
    this.#needs = wanted.filter((need) => this.#covers.mask(need) !== 0);
  }

  run(): WholeOrder {
    const { needs } = this.#question;
    const sets = this.#sets();
    // As it falls out at each set, so that few choices are left to look into.
    for (const { used } of sets) {
      this.#keep(this.#cheapestCounts(used));
      this.#keep(this.#toppedUp(used, this.#cheapestCounts(used)));
    }
    for (const choice of this.#choices(sets)) {
      if (choice.bound >= this.#most()) break;
      this.#tryChoice(choice);
    }
    const counts = this.#best?.counts ?? this.#question.offers.map(() => 0);
    const missing = needs.flatMap((need, v) => (need > 0 && !this.#needs.includes(v) ? [v] : []));
    return { ...this.#priced(counts), counts, missing, proven: this.#proven };
  }

  /** What an order must be cheaper than to be worth while. */
  #most(): number {
    return (this.#best?.cost ?? Number.POSITIVE_INFINITY) - LESS_THAN_A_CENT;
  }

  /** Every set of suppliers that covers all needs, with the least that the goods cost there. */
  #sets(): readonly { readonly used: number; readonly goods: number }[] {
    const begun = this.#tried.reduce((mask, s, bit) => (this.#already(s) > 0 ? mask | (1 << bit) : mask), 0);
    const sets: { used: number; goods: number }[] = [];
    for (let used = 0; used < 1 << this.#tried.length; used += 1) {
      const goods = (used & begun) === begun ? this.#goods(used) : Number.POSITIVE_INFINITY;
      if (goods < Number.POSITIVE_INFINITY) sets.push({ used, goods });
    }
    return sets;
  }

  #already(supplier: number): number {
    return this.#question.suppliers[supplier]?.already ?? 0;
  }

  /** Every choice of free postage at sets that can still be cheaper than the best known, lowest bound first. */
  #choices(sets: readonly { readonly used: number; readonly goods: number }[]): readonly Bounded[] {
    const choices: Bounded[] = [];
    for (const { used, goods } of sets) {
      const suppliers = this.#tried.filter((_, bit) => (used >> bit) & 1);
      // Only where there is postage to save and an amount from which it is saved.
      const saving = suppliers.filter((s) => this.#postage(s) > 0 && this.#supplier(s)?.freeFrom !== undefined);
      const all = suppliers.reduce((sum, s) => sum + this.#postage(s), 0);
      const already = suppliers.reduce((sum, s) => sum + this.#already(s), 0);
      for (let chosen = 0; chosen < 1 << saving.length; chosen += 1) {
        const free = saving.filter((_, k) => (chosen >> k) & 1);
        const fixed = all + already - free.reduce((sum, s) => sum + this.#postage(s), 0);
        if (goods + fixed >= this.#most()) continue;
        const choice = { used, fixed, goals: this.#goals(suppliers, free) };
        const bound = loosestBound(this.#covers, this.#needs, choice, this.#most());
        if (bound < this.#most()) choices.push({ ...choice, bound });
      }
    }
    return choices.sort((a, b) => a.bound - b.bound);
  }

  /** What goods must still come to, at suppliers where there is such an amount. */
  #goals(suppliers: readonly number[], free: readonly number[]): Choice['goals'] {
    return suppliers.flatMap((supplier) => {
      const { least = 0, freeFrom = 0 } = this.#supplier(supplier) ?? {};
      const amount = Math.max(least, free.includes(supplier) ? freeFrom : 0) - this.#already(supplier);
      return amount > DUST ? [{ supplier, amount }] : [];
    });
  }

  #supplier(s: number): OrderSupplier | undefined {
    return this.#question.suppliers[s];
  }

  #postage(s: number): number {
    return this.#supplier(s)?.postage ?? 0;
  }

  #cheapestCounts(used: number): readonly number[] {
    const counts = this.#question.offers.map(() => 0);
    for (const need of this.#needs) {
      for (const [offer, count] of this.#covers.cheapest(need, used)?.counts ?? []) counts[offer] = count;
    }
    return counts;
  }

  /** With further packs where a least order is not met. */
  #toppedUp(used: number, cheapest: readonly number[]): readonly number[] {
    const counts = [...cheapest];
    const { goods } = this.#priced(cheapest);
    for (const [bit, s] of this.#tried.entries()) {
      const missing = (this.#supplier(s)?.least ?? 0) - (goods[s] ?? 0);
      if (((used >> bit) & 1) === 0 || missing <= DUST) continue;
      for (const [offer, count] of toppedUp(this.#covers.all, s, missing) ?? []) {
        counts[offer] = (counts[offer] ?? 0) + count;
      }
    }
    return counts;
  }

  /** The least that goods cost from a set of suppliers, whatever they ask besides. */
  #goods(used: number): number {
    let sum = 0;
    for (const need of this.#needs) sum += this.#covers.cheapest(need, used)?.cost ?? Number.POSITIVE_INFINITY;
    return sum;
  }

  #tryChoice(choice: Bounded): void {
    const found = cheapestOfChoice(this.#covers, this.#needs, choice, this.#most());
    if (!found.whole) this.#proven = false;
    for (const bought of found.orders) {
      const counts = this.#question.offers.map((_, k) => bought.get(k) ?? 0);
      this.#keep(counts);
    }
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
    const goods = suppliers.map((_, s) => this.#already(s));
    const ordered = goods.map((amount) => amount > 0);
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

function offering({ offers }: OrderQuestion, needs: readonly number[], s: number): number {
  return needs.filter((need) => offers.some((offer) => offer.need === need && offer.supplier === s)).length;
}

function offeringAny(question: OrderQuestion, needs: readonly number[]): number {
  return question.suppliers.filter(({ already = 0 }, s) => already > 0 || offering(question, needs, s) > 0).length;
}

/** All that offer something needed or are ordered from already; of more than can be tried, those that offer most of it. */
function suppliersToTry(question: OrderQuestion, needs: readonly number[]): readonly number[] {
  const offers = question.suppliers.map((_, s) => offering(question, needs, s));
  const begun = (s: number): number => ((question.suppliers[s]?.already ?? 0) > 0 ? 1 : 0);
  return question.suppliers
    .map((_, s) => s)
    .filter((s) => (offers[s] ?? 0) + begun(s) > 0)
    .sort((a, b) => begun(b) - begun(a) || (offers[b] ?? 0) - (offers[a] ?? 0) || a - b)
    .slice(0, MOST_SUPPLIERS);
}
