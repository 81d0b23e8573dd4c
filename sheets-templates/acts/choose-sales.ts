// What outlets take of what plantings give, as sales that a choice of amounts can make: what is wanted of each product in each week, and
// what each planting brings of it. Called by choose-limits.ts.

import { type Book, type Choice, rowName, showDate } from '../../engine/index.ts';
import { each, rowAt } from './act.ts';

/** Tells that a planting takes so much of a limit; less than nothing is what it gives. */
export type Take = (slot: number, limit: string, amount: number) => void;
export type Limited = (id: string, name: string, most: number) => void;

export interface Sold {
  readonly sales: Choice[];
  readonly plantings: Set<number>;
}

/** A week of a product: what of it is wanted, and the share of what stands in store that is still there. */
interface WeekOfProduct {
  readonly week: number;
  readonly wanted: number;
  readonly kept: number;
}

interface Selling {
  readonly take: Take;
  readonly limit: Limited;
  readonly sold: Sold;
  /** The unit of mass. */
  readonly size: number;
  readonly chosen: ReadonlySet<number>;
  /** Whether a planting earns by what outlets take. */
  readonly isCounted: (slot: number) => boolean;
}

/** What one lot brings of a product in one week. */
interface LotOfWeek {
  readonly planting: number;
  readonly product: number;
  readonly week: number;
  readonly came: number;
  readonly sold: number;
}

/**
 * What is wanted of each product in each week, as sales that can be made of what has been picked by then: in the same week of what
 * does not go into store, in any later one of what does, less what it shrinks by. How long it keeps is left aside. What plantings that
 * earn otherwise sell is wanted no more, and products of nothing that is chosen sell as they do.
 */
export function readDemand(book: Book, { take, limit, sold, size, chosen, isCounted }: Selling): void {
  const lots = lotsByWeek(book);
  const weeks = weeksOfProducts(book);
  const prices = pricesOfProducts(book);
  const stored = new Set<number>();
  each(book, 'lots', (row) => {
    const product = row.number('product');
    if (product !== undefined && row.number('store') !== undefined) stored.add(product);
  });
  const given = new Set<number>();
  const gone = new Map<string, number>();
  for (const lot of lots) {
    const id = supplyOf(lot.product, lot.week);
    if (!isCounted(lot.planting)) gone.set(id, (gone.get(id) ?? 0) + lot.sold);
    else if (chosen.has(lot.planting)) given.add(lot.product);
  }
  each(book, 'products', (row, product) => {
    if (!given.has(product)) return;
    const price = prices.get(product) ?? row.number('price-by-weight') ?? 0;
    const ofProduct = weeks.get(product) ?? [];
    const name = rowName(book, 'products', product);
    ofProduct.forEach(({ week, wanted, kept }, at) => {
      const id = supplyOf(product, week);
      limit(id, `what there is of ${name} in the week of ${showDate(week)}`, 0);
      const most = (wanted - (gone.get(id) ?? 0)) / size;
      if (most <= 0) return;
      const later = stored.has(product) ? ofProduct.slice(at) : ofProduct.slice(at, at + 1);
      const takes = new Map(later.map((one): [string, number] => [supplyOf(product, one.week), 1 / kept]));
      sold.sales.push({ id: `sold ${product} ${week}`, name, gain: price * size, least: 0, most, takes });
    });
  });
  for (const { planting, product, week, came } of lots) {
    const ofProduct = weeks.get(product) ?? [];
    const at = ofProduct.findIndex((one) => one.week === week);
    if (at < 0 || !isCounted(planting)) continue;
    sold.plantings.add(planting);
    if (!given.has(product)) continue;
    const standing = came / (ofProduct[at]?.kept ?? 1);
    const reached = stored.has(product) ? ofProduct.slice(at) : ofProduct.slice(at, at + 1);
    for (const one of reached) take(planting, supplyOf(product, one.week), -standing);
  }
}

function lotsByWeek(book: Book): readonly LotOfWeek[] {
  const found: LotOfWeek[] = [];
  each(book, 'lots-by-week', (row) => {
    const [planting, product] = [row.number('planting'), row.number('product')];
    const [week, came] = [row.number('week-starts'), row.number('in')];
    if (planting === undefined || product === undefined || week === undefined || came === undefined) return;
    found.push({ planting, product, week, came, sold: row.number('sold') ?? 0 });
  });
  return found;
}

/** Plantings whose harvest goes to outlets, week by week, whether they take it or not. */
export function plantingsInLots(book: Book): ReadonlySet<number> {
  return new Set(lotsByWeek(book).map(({ planting }) => planting));
}

/** Whether a planting earns by a price typed for it, and not by what outlets take. */
export function isPriced(book: Book, slot: number): boolean {
  const row = rowAt(book, 'plantings', '', slot);
  return ['price', 'price-each', 'fresh-price'].some((column) => row.number(column) !== undefined);
}

/** Whether outlets want anything: an empty Demand says nothing of what could be sold. */
export function isAnythingWanted(book: Book): boolean {
  let found = false;
  each(book, 'supply-against-demand', (row) => {
    found ||= (row.number('wanted') ?? 0) > 0;
  });
  return found;
}

/** What outlets pay by the weight of each product that they take. */
function pricesOfProducts(book: Book): ReadonlyMap<number, number> {
  const found = new Map<number, { mass: number; money: number }>();
  each(book, 'lots', (row) => {
    const [product, mass] = [row.number('product'), row.number('sold') ?? 0];
    if (product === undefined || mass <= 0) return;
    const known = found.get(product) ?? { mass: 0, money: 0 };
    found.set(product, { mass: known.mass + mass, money: known.money + (row.number('money') ?? 0) });
  });
  return new Map([...found].map(([product, { mass, money }]) => [product, money / mass]));
}

function supplyOf(product: number, week: number): string {
  return `supply ${product} ${week}`;
}

/** The weeks in which a product is wanted or there, in order. */
function weeksOfProducts(book: Book): ReadonlyMap<number, readonly WeekOfProduct[]> {
  const kept = new Map<string, number>();
  each(book, 'lots-by-week', (row) => {
    const [product, week, share] = [row.number('product'), row.number('week-starts'), row.number('kept')];
    if (share !== undefined && share > 0) kept.set(`${product} ${week}`, share);
  });
  const weeks = new Map<number, WeekOfProduct[]>();
  each(book, 'supply-against-demand', (row) => {
    const [product, week] = [row.number('product'), row.number('week-starts')];
    if (product === undefined || week === undefined) return;
    const known = weeks.get(product) ?? [];
    weeks.set(product, known);
    known.push({ week, wanted: row.number('wanted') ?? 0, kept: kept.get(`${product} ${week}`) ?? 1 });
  });
  for (const known of weeks.values()) known.sort((a, b) => a.week - b.week);
  return weeks;
}
