// The floor, places: beds by the day a planting goes in, racks by the day a batch comes in, bench and sowing by week. The columns
// stand in planting-money.ts, curing.ts and propagation.ts of the templates. Batches all cure in the farm's curing area.

import { rackArea } from '../../../../engine/agronomy/curing.ts';
import { type Columns, columnIn, columnOf, DIRECT, type Inputs, isBlank } from './inputs.ts';
import { type Part, type Weeks, weeksOf } from './part.ts';

/** Rows of plantings by the bed they stand on. */
export function bedsOf(inputs: Inputs, columns: Columns): Part {
  const { count, bedOf } = inputs;
  const rowsOn: number[][] = [];
  for (let row = 0; row < count; row++) {
    const bed = bedOf[row] as number;
    const rows = rowsOn[bed] ?? [];
    rows.push(row);
    rowsOn[bed] = rows;
  }
  const used = columnIn(columns, 'bed-in-use', count);
  const touched = new Set<number>();
  return {
    take() {},
    put: (row) => void touched.add(bedOf[row] as number),
    finish() {
      const planted = columnOf(columns, 'planted-out');
      const free = columnOf(columns, 'bed-free');
      const length = columnOf(columns, 'bed-length-used');
      for (const bed of touched) {
        const rows = rowsOn[bed] ?? [];
        for (const row of rows) {
          const day = planted[row] as number;
          let sum = 0;
          for (const other of rows)
            if ((planted[other] as number) <= day && (free[other] as number) > day) sum += length[other] as number;
          used[row] = sum;
        }
      }
      touched.clear();
    },
    clear: () => touched.clear(),
  };
}

const BULK_DENSITY = 550;
const FOUR_INCHES = 0.1016;

export interface Racks extends Part {
  /** By planting, blank where nothing is cured. */
  readonly columns: Columns;
}

export function racksOf(inputs: Inputs, columns: Columns): Racks {
  const { count } = inputs;
  const first = inputs.farm('season-starts') - 400;
  const days = 1600;
  const steps = new Float64Array(days);
  const levels = new Float64Array(days);
  const own: Columns = new Map();
  const area = columnIn(own, 'rack-area', count);
  const thatDay = columnIn(own, 'racks-that-day', count);
  const place = (day: number): number => Math.min(days - 1, Math.max(0, day - first));

  function add(row: number, sign: number): void {
    const mass = area[row] as number;
    if (isBlank(mass)) return;
    const from = place(columnOf(columns, 'harvest')[row] as number);
    const until = place(columnOf(columns, 'cured-on')[row] as number);
    steps[from] = (steps[from] as number) + sign * mass;
    steps[until] = (steps[until] as number) - sign * mass;
  }

  return {
    columns: own,
    take(row) {
      add(row, -1);
    },
    put(row) {
      const cures = !isBlank(columnOf(columns, 'cured-yield')[row] as number);
      const mass = columnOf(columns, 'marketable-yield')[row] as number;
      area[row] = cures ? rackArea(mass, BULK_DENSITY, FOUR_INCHES) : Number.NaN;
      add(row, 1);
    },
    finish() {
      const harvest = columnOf(columns, 'harvest');
      let level = 0;
      for (let day = 0; day < days; day++) {
        level += steps[day] as number;
        levels[day] = level;
      }
      for (let row = 0; row < count; row++)
        thatDay[row] = isBlank(area[row] as number) ? Number.NaN : (levels[place(harvest[row] as number)] as number);
    },
    clear() {
      steps.fill(0);
    },
  };
}

export interface Bench extends Part {
  readonly columns: Columns;
}

/** Raised plantings by the Thursday of each week, and what is sown in it. */
export function benchOf(inputs: Inputs, columns: Columns, start: Int8Array, weeks: Weeks): Bench {
  const room = inputs.farm('bench-area');
  const out: Columns = new Map();
  const [trays, blocks, seeds, mix, stands, free] = [
    columnIn(out, 'trays', weeks.count),
    columnIn(out, 'blocks', weeks.count),
    columnIn(out, 'seeds', weeks.count),
    columnIn(out, 'mix-to-make', weeks.count),
    columnIn(out, 'bench-used', weeks.count),
    columnIn(out, 'bench-free', weeks.count),
  ];
  const was = (id: string): Float64Array => columnOf(columns, id);

  function add(row: number, sign: number): void {
    if ((start[row] as number) >= DIRECT) return;
    const sown = was('sown')[row] as number;
    const [week, same] = weeksOf(weeks, sown, sown);
    if (same >= week) {
      const sum = (column: Float64Array, value: number): void => {
        if (!isBlank(value)) column[week] = (column[week] as number) + sign * value;
      };
      sum(trays, was('trays')[row] as number);
      sum(blocks, was('blocks-to-start')[row] as number);
      sum(seeds, was('seeds-needed')[row] as number);
      sum(mix, was('mix-volume')[row] as number);
    }
    const area = was('bench-area')[row] as number;
    const [from, to] = weeksOf(weeks, sown + 3, (was('planted-out')[row] as number) + 3);
    if (isBlank(area)) return;
    for (let at = from; at <= to; at++) {
      const thursday = weeks.first + at * 7 + 3;
      if (sown <= thursday && (was('planted-out')[row] as number) > thursday)
        stands[at] = (stands[at] as number) + sign * area;
    }
  }

  return {
    columns: out,
    take: (row) => add(row, -1),
    put: (row) => add(row, 1),
    finish() {
      for (let week = 0; week < weeks.count; week++) free[week] = room - (stands[week] as number);
    },
    clear() {
      for (const column of out.values()) column.fill(0);
    },
  };
}
