// The floor, harvest week by week: what each planting gives in each week of its harvest. The columns stand in weekly-harvest.ts
// of the templates.

import type { Harvest } from './harvest.ts';
import { type Columns, columnOf, type Inputs, isBlank, least } from './inputs.ts';
import { type Part, type Weeks, weeksOf } from './part.ts';

/** A figure of each planting in each week: planting x weeks + week. */
export type ByWeek = Float64Array;

/** Figures of each planting in a few weeks one after another, blank in all others. */
export class WeeksOfRows {
  readonly #columns: readonly ByWeek[];
  readonly #weeks: number;
  readonly #from: Int32Array;
  readonly #until: Int32Array;

  constructor(columns: readonly ByWeek[], weeks: Weeks) {
    this.#columns = columns;
    this.#weeks = weeks.count;
    const count = (columns[0]?.length ?? 0) / weeks.count;
    this.#from = new Int32Array(count);
    this.#until = new Int32Array(count);
  }

  /** These weeks of a planting are filled next. */
  fills(row: number, from: number, to: number): void {
    this.#from[row] = row * this.#weeks + from;
    this.#until[row] = Math.max(row * this.#weeks + to + 1, row * this.#weeks + from);
  }

  blank(row: number): void {
    for (const column of this.#columns) column.fill(Number.NaN, this.#from[row], this.#until[row]);
  }

  blankAll(): void {
    for (let row = 0; row < this.#from.length; row++) this.blank(row);
  }
}

export interface HarvestByWeek extends Part {
  readonly columns: ReadonlyMap<string, ByWeek>;
}

export function harvestByWeek(inputs: Inputs, columns: Columns, harvest: Harvest, weeks: Weeks): HarvestByWeek {
  const made = (): ByWeek => new Float64Array(inputs.count * weeks.count).fill(Number.NaN);
  const out = {
    'week-starts': made(),
    from: made(),
    to: made(),
    'picked-before': made(),
    'picked-by-the-end': made(),
    share: made(),
    mass: made(),
    picked: made(),
    'sorted-out': made(),
    pieces: made(),
    'picking-hours': made(),
    'packing-hours': made(),
    hours: made(),
    'pick-on': made(),
    'pack-on': made(),
  };
  const was = (id: string): Float64Array => columnOf(columns, id);
  const filled = new WeeksOfRows(Object.values(out), weeks);
  const pickedTo = (row: number, time: number): number => (time <= 0 ? 0 : harvest.pickedBy(row, time));
  return {
    columns: new Map(Object.entries(out)),
    take: (row) => filled.blank(row),
    put(row) {
      const first = was('harvest')[row] as number;
      const [from, to] = weeksOf(weeks, first, was('harvest-ends')[row] as number);
      filled.fills(row, from, to);
      const days = was('days-picked')[row] as number;
      const ifAll = was('marketable-if-all-is-picked')[row] as number;
      const finishes = was('finishes')[row] as number;
      const marketable = was('marketable-yield')[row] as number;
      const [sellable, piece] = [was('marketable-share')[row] as number, was('mass-of-a-piece')[row] as number];
      const [picking, packing] = [was('picking-hours')[row] as number, was('packing-hours')[row] as number];
      const liftedAtOnce = !isBlank(was('cured-yield')[row] as number);
      for (let week = from; week <= to; week++) {
        const monday = weeks.first + week * 7;
        const at = row * weeks.count + week;
        const begins = Math.max(0, monday - first);
        const ends = least(days, monday + 7 - first);
        const before = pickedTo(row, begins);
        const after = pickedTo(row, ends);
        const share = after - before;
        const mass = share * ifAll * finishes;
        const picked = mass / sellable;
        const pickingHours = (mass / marketable) * picking;
        const packingHours = (mass / marketable) * packing;
        const pickOn = !liftedAtOnce && mass > 0 ? Math.max(monday, first) : Number.NaN;
        out['week-starts'][at] = monday;
        out.from[at] = begins;
        out.to[at] = ends;
        out['picked-before'][at] = before;
        out['picked-by-the-end'][at] = after;
        out.share[at] = share;
        out.mass[at] = mass;
        out.picked[at] = picked;
        out['sorted-out'][at] = picked - mass;
        out.pieces[at] = mass / piece;
        out['picking-hours'][at] = pickingHours;
        out['packing-hours'][at] = packingHours;
        out.hours[at] = pickingHours + packingHours;
        out['pick-on'][at] = pickOn;
        out['pack-on'][at] = packingHours > 0 ? pickOn : Number.NaN;
      }
    },
    finish() {},
    clear: () => filled.blankAll(),
  };
}
