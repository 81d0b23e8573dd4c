// What the amounts of plantings are chosen within: what each planting takes, as it stands, of beds, hands, bench, stores and demand, and how
// much of each there is. Everything is taken to grow with the planting's length, as it nearly does. Called by choose-amounts.ts.

import { type Book, type Choice, type Limit, rowName, settings, showDate } from '../../engine/index.ts';
import { each } from './act.ts';
import { isPriced, type Limited, readDemand, type Sold, type Take } from './choose-sales.ts';

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
  /** Sales of each product in each week that it is wanted in, of what the plantings to be chosen give. */
  readonly sales: readonly Choice[];
  /** Whether what a planting brings is reckoned by those sales: of all where demand is a limit, else of those that no price is typed for. */
  readonly isSold: (slot: number) => boolean;
}

/** Reads limits and what plantings, those to be `chosen` among them, take of them; sheets that a workbook lacks limit nothing. */
export function roomOf(book: Book, within: readonly Within[], chosen: ReadonlySet<number>): Room {
  const counted = COUNTED[settings(book).units];
  const limits: KindOfLimit[] = [];
  const takes = new Map<number, Map<string, number>>();
  const sold: Sold = { sales: [], plantings: new Set() };
  const isCounted = within.includes('demand') ? () => true : (slot: number) => !isPriced(book, slot);
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
    demand: (taken, limited) =>
      readDemand(book, { take: taken, limit: limited, sold, size: counted.demand.size, chosen, isCounted }),
  };
  // What a planting without a price brings is what outlets take, whatever else is to be kept within.
  for (const kind of new Set<Within>([...within, 'demand'])) {
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
