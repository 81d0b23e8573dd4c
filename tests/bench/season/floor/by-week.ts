// The floor, week by week: what each planting gives in each week of its harvest, and what of the stored lots is in, lost and left.
// The columns stand in weekly-harvest.ts, lots.ts and storage.ts of the templates. Nobody asks for anything, so nothing is sold.

import { MONTH_DAYS } from '../../../../engine/agronomy/storage.ts';
import type { Harvest } from './harvest.ts';
import { type Columns, columnOf, type Inputs, isBlank, least, most, or } from './inputs.ts';
import { type Part, type Weeks, weeksOf } from './part.ts';

/** A figure of each planting in each week: planting x weeks + week. */
export type ByWeek = Float64Array;

export interface HarvestByWeek extends Part {
  readonly columns: ReadonlyMap<string, ByWeek>;
}

export function harvestByWeek(inputs: Inputs, columns: Columns, harvest: Harvest, weeks: Weeks): HarvestByWeek {
  const made = (): ByWeek => new Float64Array(inputs.count * weeks.count).fill(Number.NaN);
  const out = {
    share: made(),
    mass: made(),
    picked: made(),
    sorted: made(),
    pieces: made(),
    picking: made(),
    packing: made(),
  };
  const was = (id: string): Float64Array => columnOf(columns, id);
  const all = Object.values(out);
  const names = ['share', 'mass', 'picked', 'sorted-out', 'pieces', 'picking-hours', 'packing-hours'];
  const pickedTo = (row: number, time: number): number => (time <= 0 ? 0 : harvest.pickedBy(row, time));
  return {
    columns: new Map(names.map((name, index) => [name, all[index] ?? out.share])),
    take(row) {
      const at = row * weeks.count;
      for (const column of all) column.fill(Number.NaN, at, at + weeks.count);
    },
    put(row) {
      const first = was('harvest')[row] as number;
      const [from, to] = weeksOf(weeks, first, was('harvest-ends')[row] as number);
      const days = was('days-picked')[row] as number;
      const ifAll = was('marketable-if-all-is-picked')[row] as number;
      const finishes = was('finishes')[row] as number;
      const marketable = was('marketable-yield')[row] as number;
      const [sellable, piece] = [was('marketable-share')[row] as number, was('mass-of-a-piece')[row] as number];
      const [picking, packing] = [was('picking-hours')[row] as number, was('packing-hours')[row] as number];
      for (let week = from; week <= to; week++) {
        const monday = weeks.first + week * 7;
        const at = row * weeks.count + week;
        const before = pickedTo(row, Math.max(0, monday - first));
        const share = pickedTo(row, least(days, monday + 7 - first)) - before;
        const mass = share * ifAll * finishes;
        const picked = mass / sellable;
        out.share[at] = share;
        out.mass[at] = mass;
        out.picked[at] = picked;
        out.sorted[at] = picked - mass;
        out.pieces[at] = mass / piece;
        out.picking[at] = (mass / marketable) * picking;
        out.packing[at] = (mass / marketable) * packing;
      }
    },
    finish() {},
    clear() {
      for (const column of all) column.fill(Number.NaN);
    },
  };
}

export interface StoreByWeek extends Part {
  readonly columns: Columns;
}

/** All stores together, by the weeks of the season and half a year more. */
export function storeByWeek(inputs: Inputs, columns: Columns, picked: HarvestByWeek, weeks: Weeks): StoreByWeek {
  const { varietyOf } = inputs;
  const keeps = inputs.variety('storage-life');
  const losses = inputs.crop('monthly-storage-loss');
  const season = inputs.farm('season-starts');
  const totals = {
    in: new Float64Array(weeks.count),
    lost: new Float64Array(weeks.count),
    left: new Float64Array(weeks.count),
  };
  const was = (id: string): Float64Array => columnOf(columns, id);
  const masses = picked.columns.get('mass') ?? new Float64Array(0);

  function add(row: number, sign: number): void {
    const mass = was('sold-weight')[row] as number;
    if (was('goes-into-store')[row] !== 1 || !(mass > 0)) return;
    const v = varietyOf[row] as number;
    const cures = !isBlank(was('cured-yield')[row] as number);
    const ends = was('harvest-ends')[row] as number;
    const storedOn = cures ? (was('cured-on')[row] as number) : ends;
    const firstIn = cures ? storedOn : (was('harvest')[row] as number);
    const until = most(cures ? firstIn : ends, storedOn + Math.floor(keeps[v] as number));
    const loss = or(losses[v] as number, 0);
    const [from, to] = weeksOf(weeks, firstIn, until);
    let standing = 0;
    for (let week = from; week <= to; week++) {
      const monday = weeks.first + week * 7;
      const kept = (1 - loss) ** ((monday - season) / MONTH_DAYS);
      const keptToEnd = (1 - loss) ** ((monday + 7 - season) / MONTH_DAYS);
      const comes = cures
        ? firstIn >= monday && firstIn <= monday + 6
          ? mass
          : 0
        : or(masses[row * weeks.count + week] as number, 0);
      const before = standing * kept;
      const left = monday + 6 >= until ? 0 : ((before + comes) / kept) * keptToEnd;
      totals.in[week] = (totals.in[week] as number) + sign * comes;
      totals.left[week] = (totals.left[week] as number) + sign * left;
      totals.lost[week] = (totals.lost[week] as number) + sign * Math.max(0, before + comes - left);
      standing += comes / kept;
    }
  }

  return {
    columns: new Map(Object.entries(totals)),
    take: (row) => add(row, -1),
    put: (row) => add(row, 1),
    finish() {},
    clear() {
      for (const column of Object.values(totals)) column.fill(0);
    },
  };
}
