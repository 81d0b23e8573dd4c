// The floor, lots: what each planting gives to sell and what becomes of it week by week, kept or not, and all stores together. The
// columns stand in lots.ts and stores.ts of the templates. There is one product, so a planting is one lot, and nobody asks for
// anything, so nothing is sold.

import { MONTH_DAYS } from '../../../../engine/agronomy/storage.ts';
import { type ByWeek, type HarvestByWeek, WeeksOfRows } from './by-week.ts';
import { type Columns, columnIn, columnOf, type Inputs, isBlank, most, or } from './inputs.ts';
import { type Part, type Weeks, weeksOf } from './part.ts';

export interface Lots extends Part {
  /** Of Lots, by planting. */
  readonly columns: Columns;
  /** Of Lots by week, by planting and week. */
  readonly byWeek: ReadonlyMap<string, ByWeek>;
  /** All stores, by week. */
  readonly store: Columns;
}

export function lotsOf(inputs: Inputs, columns: Columns, picked: HarvestByWeek, weeks: Weeks): Lots {
  const { count, varietyOf } = inputs;
  const keeps = inputs.variety('storage-life');
  const losses = inputs.crop('monthly-storage-loss');
  const season = inputs.farm('season-starts');
  const byName = placesByName(inputs.textsOf('plantings', 'planting'));
  const own: Columns = new Map();
  const lot = {
    mass: columnIn(own, 'mass', count),
    stored: columnIn(own, 'stored', count),
    atOnce: columnIn(own, 'all-at-once', count),
    firstIn: columnIn(own, 'first-in', count),
    lastIn: columnIn(own, 'last-in', count),
    until: columnIn(own, 'until', count),
    loss: columnIn(own, 'monthly-loss', count),
    withItsEnd: columnIn(own, 'with-its-end', count),
    place: columnIn(own, 'place', count),
    lost: columnIn(own, 'lost', count),
    left: columnIn(own, 'left', count),
  };
  const made = (): ByWeek => new Float64Array(count * weeks.count).fill(Number.NaN);
  const out = {
    'week-starts': made(),
    'keeps-until': made(),
    place: made(),
    'last-week': made(),
    in: made(),
    kept: made(),
    'kept-to-the-end': made(),
    'in-standing': made(),
    'from-before': made(),
    left: made(),
    lost: made(),
  };
  const filled = new WeeksOfRows(Object.values(out), weeks);
  const totals = {
    in: new Float64Array(weeks.count),
    lost: new Float64Array(weeks.count),
    left: new Float64Array(weeks.count),
  };
  const was = (id: string): Float64Array => columnOf(columns, id);
  const masses = picked.columns.get('mass') ?? new Float64Array(0);
  const weeksOfLot = (row: number): readonly [number, number] =>
    weeksOf(weeks, lot.firstIn[row] as number, lot.until[row] as number);
  /** Whether a lot that is kept ends on another day than when places were last given. */
  let ends = false;

  function work(row: number): void {
    const mass = was('sold-weight')[row] as number;
    const there = mass > 0;
    const kept = there && was('goes-into-store')[row] === 1;
    const v = varietyOf[row] as number;
    const cures = !isBlank(was('cured-yield')[row] as number);
    const harvestEnds = was('harvest-ends')[row] as number;
    const firstIn = (cures ? was('cured-on') : was('harvest'))[row] as number;
    const lastIn = cures ? firstIn : harvestEnds;
    const storedOn = cures ? firstIn : harvestEnds;
    const until = kept ? most(lastIn, storedOn + Math.floor(keeps[v] as number)) : lastIn;
    const blankUnless = (value: number): number => (there ? value : Number.NaN);
    if (!ends) ends = !(lot.until[row] === until && lot.stored[row] === (kept ? 1 : 0));
    lot.mass[row] = blankUnless(mass);
    lot.stored[row] = blankUnless(kept ? 1 : 0);
    lot.atOnce[row] = blankUnless(cures ? 1 : 0);
    lot.firstIn[row] = blankUnless(firstIn);
    lot.lastIn[row] = blankUnless(lastIn);
    lot.until[row] = blankUnless(until);
    lot.loss[row] = blankUnless(kept ? or(losses[v] as number, 0) : 0);
  }

  function byWeeks(row: number): void {
    const [mass, isKept, cures] = [lot.mass[row] as number, lot.stored[row] === 1, lot.atOnce[row] === 1];
    const [firstIn, until, stays] = [
      lot.firstIn[row] as number,
      lot.until[row] as number,
      1 - (lot.loss[row] as number),
    ];
    const [from, to] = weeksOfLot(row);
    filled.fills(row, from, to);
    let standing = 0;
    let lostInAll = 0;
    for (let week = from; week <= to; week++) {
      const monday = weeks.first + week * 7;
      const at = row * weeks.count + week;
      const kept = stays ** ((monday - season) / MONTH_DAYS);
      const keptToEnd = stays ** ((monday + 7 - season) / MONTH_DAYS);
      const comesNow = firstIn >= monday && firstIn <= monday + 6 ? mass : 0;
      const comes = cures ? comesNow : or(masses[at] as number, 0);
      const isLast = monday + 6 >= until;
      const before = isKept ? standing * kept : 0;
      const left = isLast || !isKept ? 0 : ((before + comes) / kept) * keptToEnd;
      const lost = Math.max(0, before + comes - left);
      out['week-starts'][at] = monday;
      out['keeps-until'][at] = until;
      out['last-week'][at] = isLast ? 1 : 0;
      out.in[at] = comes;
      out.kept[at] = kept;
      out['kept-to-the-end'][at] = keptToEnd;
      out['in-standing'][at] = isKept ? comes / kept : Number.NaN;
      out['from-before'][at] = before;
      out.left[at] = left;
      out.lost[at] = lost;
      standing += comes / kept;
      lostInAll += lost;
    }
    lot.lost[row] = isBlank(mass) ? Number.NaN : lostInAll;
    lot.left[row] = Math.max(0, mass - lostInAll);
  }

  function addToStore(row: number, sign: number): void {
    if (lot.stored[row] !== 1) return;
    const [from, to] = weeksOfLot(row);
    for (let week = from; week <= to; week++) {
      const at = row * weeks.count + week;
      totals.in[week] = (totals.in[week] as number) + sign * (out.in[at] as number);
      totals.left[week] = (totals.left[week] as number) + sign * (out.left[at] as number);
      totals.lost[week] = (totals.lost[week] as number) + sign * (out.lost[at] as number);
    }
  }

  /** Lots that are kept by the day they end on, then by name. */
  function givePlaces(): void {
    const keys = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
    for (let row = 0; row < count; row++)
      if (lot.stored[row] === 1) keys[row] = (lot.until[row] as number) * count + (byName[row] as number);
    const rows = new Int32Array(count);
    for (let row = 0; row < count; row++) rows[byName[row] as number] = row;
    lot.place.fill(Number.NaN);
    lot.withItsEnd.fill(Number.NaN);
    let [day, first] = [Number.NaN, 0];
    for (const [place, key] of keys.sort().entries()) {
      if (key === Number.POSITIVE_INFINITY) break;
      const row = rows[key % count] as number;
      if (lot.until[row] !== day) [day, first] = [lot.until[row] as number, place];
      lot.place[row] = place + 1;
      lot.withItsEnd[row] = place - first;
    }
  }

  return {
    columns: own,
    byWeek: new Map(Object.entries(out)),
    store: new Map(Object.entries(totals)),
    take(row) {
      addToStore(row, -1);
      filled.blank(row);
    },
    put(row) {
      work(row);
      byWeeks(row);
      addToStore(row, 1);
      placeWeeks(row);
    },
    finish() {
      if (!ends) return;
      ends = false;
      givePlaces();
      for (let row = 0; row < count; row++) placeWeeks(row);
    },
    clear() {
      for (const column of Object.values(totals)) column.fill(0);
      filled.blankAll();
    },
  };

  function placeWeeks(row: number): void {
    const [from, to] = weeksOfLot(row);
    const at = row * weeks.count;
    if (to >= from) out.place.fill(lot.place[row] as number, at + from, at + to + 1);
  }
}

/** Where each name stands among all, case aside. */
function placesByName(names: readonly string[]): Int32Array {
  const folded = names.map((name) => name.toLowerCase());
  const places = new Int32Array(names.length);
  const order = folded.map((_, row) => row).sort((a, b) => ((folded[a] ?? '') < (folded[b] ?? '') ? -1 : 1));
  for (const [place, row] of order.entries()) places[row] = place;
  return places;
}
