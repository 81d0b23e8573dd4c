// The floor, beds by week: what stands on each bed in each week of the season, what is free, and when the next planting comes. The
// columns stand in bed-calendar.ts of the templates. There are no cover crops.

import type { ByWeek } from './by-week.ts';
import { type Columns, columnOf, type Inputs, isBlank } from './inputs.ts';
import type { Part, Weeks } from './part.ts';

/** By bed and week. */
export type TextsByWeek = readonly string[];

export interface BedWeeks extends Part {
  readonly columns: ReadonlyMap<string, ByWeek>;
  readonly texts: ReadonlyMap<string, TextsByWeek>;
}

export function bedWeeksOf(inputs: Inputs, columns: Columns, weeks: Weeks): BedWeeks {
  const { count, bedOf } = inputs;
  const lengths = inputs.of('beds', 'length');
  const names = inputs.textsOf('plantings', 'planting');
  const families = inputs.textsOf('plantings', 'family');
  const besides = inputs.typed('spreads-over');
  const rowsOn: number[][] = [];
  const spreadingOn: number[][] = [];
  const note = (lists: number[][], bed: number, row: number): void => {
    const rows = lists[bed] ?? [];
    rows.push(row);
    lists[bed] = rows;
  };
  for (let row = 0; row < count; row++) {
    note(rowsOn, bedOf[row] as number, row);
    const beside = besides[row] as number;
    if (!isBlank(beside)) note(spreadingOn, beside, row);
  }
  const made = (): ByWeek => new Float64Array(lengths.length * weeks.count).fill(Number.NaN);
  const out = { planted: made(), free: made(), next: made(), until: made() };
  const none = (): string[] => new Array<string>(lengths.length * weeks.count).fill('');
  const [stands, standing] = [none(), none()];
  const touched = new Set<number>();

  function finish(bed: number): void {
    const planted = columnOf(columns, 'planted-out');
    const free = columnOf(columns, 'bed-free');
    const used = columnOf(columns, 'bed-length-used');
    const rows = rowsOn[bed] ?? [];
    for (let week = 0; week < weeks.count; week++) {
      const monday = weeks.first + week * 7;
      const middle = monday + 3;
      let sum = 0;
      let next = Number.NaN;
      let said = '';
      const kinds: string[] = [];
      for (const row of rows) {
        const day = planted[row] as number;
        if (day > middle && !(next <= day)) next = day;
        if (!(day <= middle && (free[row] as number) > middle)) continue;
        sum += used[row] as number;
        said += said === '' ? names[row] : `, ${names[row]}`;
        const family = families[row] ?? '';
        if (family !== '' && !kinds.includes(family)) kinds.push(family);
      }
      for (const row of spreadingOn[bed] ?? [])
        if ((planted[row] as number) <= middle && (free[row] as number) > middle) sum += used[row] as number;
      const at = bed * weeks.count + week;
      const room = Math.max(0, (lengths[bed] as number) - sum);
      out.planted[at] = sum;
      out.free[at] = room;
      out.next[at] = next;
      out.until[at] = room > 0 ? Math.trunc((next - monday) / 7) : Number.NaN;
      stands[at] = sum > 0 ? said : '';
      standing[at] = sum > 0 ? kinds.join(', ') : '';
    }
  }

  return {
    columns: new Map([
      ['planted', out.planted],
      ['free', out.free],
      ['next-planting', out.next],
      ['weeks-until-it', out.until],
    ]),
    texts: new Map([
      ['stands', stands],
      ['families', standing],
    ]),
    take() {},
    put(row) {
      touched.add(bedOf[row] as number);
      const beside = besides[row] as number;
      if (!isBlank(beside)) touched.add(beside);
    },
    finish() {
      for (const bed of touched) finish(bed);
      touched.clear();
    },
    clear() {
      for (let bed = 0; bed < lengths.length; bed++) touched.add(bed);
    },
  };
}
