// What the amounts of plantings are chosen within: what each planting takes, as it stands, of beds, hands, bench, stores and demand, and how
// much of each there is. Everything is taken to grow with the planting's length, as it nearly does. Called by choose-amounts.ts.

import {
  type Book,
  type Choice,
  type Limit,
  rowName,
  rows,
  settings,
  sheetView,
  showDate,
} from '../../engine/index.ts';
import { rowAt } from './act.ts';

export type Within = 'beds' | 'hands' | 'bench' | 'stores' | 'demand';
export const ALL_WITHIN: readonly Within[] = ['beds', 'hands', 'bench', 'stores', 'demand'];

/** The unit in which a limit is counted, so that one more of it is what a grower would add. */
interface Counted {
  readonly size: number;
  /** 'a foot more' */
  readonly more: string;
}

const HOUR: Counted = { size: 1 / 24, more: 'an hour more' };

const COUNTED: Readonly<Record<'us' | 'si', Readonly<Record<Within, Counted>>>> = {
  us: {
    beds: { size: 0.3048, more: 'a foot more' },
    hands: HOUR,
    bench: { size: 0.3048 ** 2, more: 'a square foot more' },
    stores: { size: 0.45359237, more: 'a pound more' },
    demand: { size: 0.45359237, more: 'a pound more' },
  },
  si: {
    beds: { size: 1, more: 'a metre more' },
    hands: HOUR,
    bench: { size: 1, more: 'a square metre more' },
    stores: { size: 1, more: 'a kilogram more' },
    demand: { size: 1, more: 'a kilogram more' },
  },
};

/** What one more of a kind is called. */
export function moreOf(book: Book, within: Within): string {
  return COUNTED[settings(book).units][within].more;
}

/** A limit with the kind of thing it is of. */
export interface KindOfLimit extends Limit {
  readonly within: Within;
  readonly more: string;
}

export interface Room {
  readonly limits: readonly KindOfLimit[];
  /** What a planting takes of limits in all, by the limit's id; by the planting's slot. */
  readonly takes: (slot: number) => ReadonlyMap<string, number>;
  /** Sales of each product in each week that it is wanted in; none where demand is no limit. */
  readonly sales: readonly Choice[];
  /** Whether what a planting brings is reckoned by those sales. */
  readonly isSold: (slot: number) => boolean;
}

/** Reads limits and what plantings take of them; sheets that a workbook lacks limit nothing. */
export function roomOf(book: Book, within: readonly Within[]): Room {
  const counted = COUNTED[settings(book).units];
  const limits: KindOfLimit[] = [];
  const takes = new Map<number, Map<string, number>>();
  const sold: Sold = { sales: [], plantings: new Set() };
  const take = (slot: number, limit: string, amount: number, kind: Within): void => {
    const known = takes.get(slot) ?? new Map<string, number>();
    takes.set(slot, known);
    known.set(limit, (known.get(limit) ?? 0) + amount / counted[kind].size);
  };
  const limit = (kind: Within, id: string, name: string, most: number): void => {
    const { size, more } = counted[kind];
    // Hands are hired by the week; beds, bench and stores are there all season.
    const thing = kind === 'stores' ? id.slice(0, id.lastIndexOf(' ')) : kind;
    const asked = kind === 'demand' ? { isBalance: true } : kind === 'hands' ? {} : { thing };
    limits.push({ id, name, most: Math.max(0, most) / size, within: kind, more, ...asked });
  };
  const readers: Readonly<Record<Within, (take: Take, limit: Limited) => void>> = {
    beds: (taken, limited) => readBeds(book, taken, limited),
    hands: (taken, limited) => readHands(book, taken, limited),
    bench: (taken, limited) => readBench(book, taken, limited),
    stores: (taken, limited) => readStores(book, taken, limited),
    demand: (taken, limited) => readDemand(book, taken, limited, sold, counted.demand.size),
  };
  for (const kind of within) {
    readers[kind](
      (slot, id, amount) => take(slot, id, amount, kind),
      (id, name, most) => limit(kind, id, name, most),
    );
  }
  return {
    limits,
    takes: (slot) => takes.get(slot) ?? new Map(),
    sales: sold.sales,
    isSold: (slot) => sold.plantings.has(slot),
  };
}

type Take = (slot: number, limit: string, amount: number) => void;
type Limited = (id: string, name: string, most: number) => void;

function each(book: Book, sheet: string, visit: (row: ReturnType<typeof rowAt>, slot: number) => void): void {
  if (sheetView(book, sheet) === undefined) return;
  for (const slot of rows(book, sheet)) visit(rowAt(book, sheet, '', slot), slot);
}

function mondays(book: Book): readonly number[] {
  const found: number[] = [];
  each(book, 'weeks', (row) => found.push(row.number('week') ?? 0));
  return found;
}

/** All bed length in every week that a planting stands in. */
function readBeds(book: Book, take: Take, limit: Limited): void {
  let length = 0;
  each(book, 'beds', (row) => {
    length += row.number('length') ?? 0;
  });
  const weeks = mondays(book);
  for (const week of weeks) limit(`beds ${week}`, `the beds in the week of ${showDate(week)}`, length);
  each(book, 'plantings', (row, slot) => {
    const [from, until, used] = [row.number('planted-out'), row.number('bed-free'), row.number('bed-length-used')];
    if (from === undefined || until === undefined || used === undefined) return;
    for (const week of weeks) if (week + 7 > from && week < until) take(slot, `beds ${week}`, used);
  });
}

/** The hours of each week that work on nothing in particular leaves; a week without hands named has no limit. */
function readHands(book: Book, take: Take, limit: Limited): void {
  const others = new Map<number, number>();
  each(book, 'tasks', (row) => {
    const [week, amount, planting] = [row.number('week-starts'), row.number('hours-counted'), row.number('planting')];
    if (week === undefined || amount === undefined) return;
    if (planting === undefined) others.set(week, (others.get(week) ?? 0) + amount);
    else take(planting, `hands ${week}`, amount);
  });
  each(book, 'labour', (row) => {
    const [week, available] = [row.number('monday'), row.number('available')];
    if (week === undefined || available === undefined) return;
    limit(`hands ${week}`, `the hands in the week of ${showDate(week)}`, available - (others.get(week) ?? 0));
  });
}

/** The bench in every week that a planting's trays stand on it. */
function readBench(book: Book, take: Take, limit: Limited): void {
  const weeks = mondays(book);
  each(book, 'farm', (farm) => {
    const area = farm.number('bench-area');
    if (area === undefined) return;
    for (const week of weeks) limit(`bench ${week}`, `the bench in the week of ${showDate(week)}`, area);
  });
  each(book, 'plantings', (row, slot) => {
    const [from, until] = [row.number('on-bench-from'), row.number('on-bench-until')];
    const area = row.number('bench-area');
    if (from === undefined || until === undefined || area === undefined) return;
    for (const week of weeks) if (week + 7 > from && week < until) take(slot, `bench ${week}`, area);
  });
}

/** What lots leave in each store at the end of each week. */
function readStores(book: Book, take: Take, limit: Limited): void {
  each(book, 'stores-by-week', (row) => {
    const [store, week, room] = [row.number('store'), row.number('week-starts'), row.number('room')];
    if (store === undefined || week === undefined || room === undefined) return;
    limit(`store ${store} ${week}`, `${rowName(book, 'stores', store)} in the week of ${showDate(week)}`, room);
  });
  each(book, 'lots-by-week', (row) => {
    const [store, week] = [row.number('store'), row.number('week-starts')];
    const [planting, left] = [row.number('planting'), row.number('left')];
    if (store === undefined || week === undefined || planting === undefined || left === undefined) return;
    take(planting, `store ${store} ${week}`, left);
  });
}

interface Sold {
  readonly sales: Choice[];
  readonly plantings: Set<number>;
}

/** A week of a product: what of it is wanted, and the share of what stands in store that is still there. */
interface WeekOfProduct {
  readonly week: number;
  readonly wanted: number;
  readonly kept: number;
}

/**
 * What is wanted of each product in each week, as sales that can be made of what has been picked by then: in the same week of what
 * does not go into store, in any later one of what does, less what it shrinks by. How long it keeps is left aside.
 */
function readDemand(book: Book, take: Take, limit: Limited, sold: Sold, size: number): void {
  const weeks = weeksOfProducts(book);
  const prices = pricesOfProducts(book);
  const stored = new Set<number>();
  each(book, 'lots', (row) => {
    const product = row.number('product');
    if (product !== undefined && row.number('store') !== undefined) stored.add(product);
  });
  each(book, 'products', (row, product) => {
    const price = prices.get(product) ?? row.number('price-by-weight') ?? 0;
    const ofProduct = weeks.get(product) ?? [];
    const name = rowName(book, 'products', product);
    ofProduct.forEach(({ week, wanted, kept }, at) => {
      limit(supplyOf(product, week), `what there is of ${name} in the week of ${showDate(week)}`, 0);
      if (wanted <= 0) return;
      const later = stored.has(product) ? ofProduct.slice(at) : ofProduct.slice(at, at + 1);
      const takes = new Map(later.map((one): [string, number] => [supplyOf(product, one.week), 1 / kept]));
      const most = wanted / size;
      sold.sales.push({ id: `sold ${product} ${week}`, name, gain: price * size, least: 0, most, takes });
    });
  });
  each(book, 'lots-by-week', (row) => {
    const [planting, product] = [row.number('planting'), row.number('product')];
    const [week, came] = [row.number('week-starts'), row.number('in')];
    if (planting === undefined || product === undefined || week === undefined || came === undefined) return;
    const ofProduct = weeks.get(product) ?? [];
    const at = ofProduct.findIndex((one) => one.week === week);
    if (at < 0) return;
    sold.plantings.add(planting);
    const standing = came / (ofProduct[at]?.kept ?? 1);
    const reached = stored.has(product) ? ofProduct.slice(at) : ofProduct.slice(at, at + 1);
    for (const one of reached) take(planting, supplyOf(product, one.week), -standing);
  });
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
