// The floor of the season template: a hand-written program for the same season's columns over typed arrays: no graph, no states, no
// units, no formulas. It knows which parts an edit can reach. floor/agree.ts says whether it and a workbook hold the same.

import type { Workbook } from '../../../../engine/index.ts';
import { type BedWeeks, bedWeeksOf } from './bed-weeks.ts';
import { type ByWeek, harvestByWeek } from './by-week.ts';
import { datesOf, type FarmYear } from './dates.ts';
import { harvestOf } from './harvest.ts';
import { type Columns, columnIn, columnOf, inputsOf, isBlank, numbersOf } from './inputs.ts';
import { lotsOf } from './lots.ts';
import { moneyOf } from './money.ts';
import { orderOf } from './order.ts';
import type { Part, Weeks } from './part.ts';
import { bedsOf, benchOf, racksOf } from './places.ts';
import { standOf } from './stand.ts';
import { waterOf } from './water.ts';
import { windowOf } from './window.ts';
import { Year } from './year.ts';
import { yieldsOf } from './yields.ts';

export interface SeasonFloor {
  /** Every column, from what is entered. */
  all(): void;
  /** A planting's spacing in the row, m. */
  spacing(row: number, value: number): void;
  /** The day a planting goes into the bed. */
  plantedOut(row: number, day: number): void;
  /** What new seed of a variety germinates, 0 to 1. */
  germination(variety: number, value: number): void;
  /** A month's mean of the days' highs, K; January is 0. */
  high(month: number, value: number): void;
  /** Of Plantings, by planting. */
  readonly plantings: Columns;
  /** Other sheets, by the slot of what their rows are made of. */
  readonly racks: Columns;
  readonly bench: Columns;
  readonly store: Columns;
  readonly order: Columns;
  readonly waterByWeek: Columns;
  readonly lots: Columns;
  /** Sheets of a planting in a week. */
  readonly harvestByWeek: ReadonlyMap<string, ByWeek>;
  readonly lotsByWeek: ReadonlyMap<string, ByWeek>;
  readonly bedWater: ReadonlyMap<string, ByWeek>;
  /** Of a bed in a week of the season. */
  readonly bedWeeks: BedWeeks;
  readonly seasonWeeks: Weeks;
  readonly weeks: Weeks;
  readonly waterWeeks: Weeks;
  readonly columnCount: number;
}

export function seasonFloor(workbook: Workbook): SeasonFloor {
  const inputs = inputsOf(workbook);
  const { count } = inputs;
  const columns: Columns = new Map();
  const season = inputs.farm('season-starts');
  const mondays = numbersOf(workbook, 'weeks', 'next');
  const weeks: Weeks = { first: (mondays[0] ?? Number.NaN) - 7, count: mondays.length };
  const seasonEnds = inputs.farm('season-ends');
  const seasonWeeks: Weeks = { first: weeks.first, count: mondays.filter((next) => next - 7 <= seasonEnds).length };
  const waterWeeks: Weeks = { first: season, count: numbersOf(workbook, 'weather-by-week', 'rain').length };
  const lows = numbersOf(workbook, 'monthly-climate', 'low');
  const highs = numbersOf(workbook, 'monthly-climate', 'high');
  const year = new Year(season, lows, highs);
  const frost = { first: inputs.farm('first-frost'), last: inputs.farm('last-frost-of-half-the-years') };
  const farm: FarmYear = { lowAtFirstFrost: 0, lowAtLastFrost: 0, warmest: 0, coldest: 0 };
  const sown = new Float64Array(count);
  const stand = standOf(inputs, columns, sown);
  const dates = datesOf(inputs, columns, stand.start, year, farm, stand.plantedTyped, sown);
  const harvest = harvestOf(inputs, columns, year);
  const window = windowOf(inputs, columns, stand.start, year, farm);
  const yields = yieldsOf(inputs, columns, stand.start, year);
  const money = moneyOf(inputs, columns, stand.start);
  const shareOfMargin = columnIn(columns, 'share-of-margin', count);
  const picked = harvestByWeek(inputs, columns, harvest, weeks);
  const beds = bedsOf(inputs, columns);
  const racks = racksOf(inputs, columns);
  const bench = benchOf(inputs, columns, stand.start, weeks);
  const lots = lotsOf(inputs, columns, picked, weeks);
  const water = waterOf(inputs, columns, waterWeeks);
  const order = orderOf(inputs, columns);
  const bedWeeks = bedWeeksOf(inputs, columns, seasonWeeks);
  const parts: readonly Part[] = [picked, beds, racks, bench, lots, water, order, bedWeeks];
  const afterSpacing: readonly Part[] = [picked, racks, bench, lots, order];
  const rowsOf: number[][] = [];
  for (let row = 0; row < count; row++) {
    const variety = inputs.varietyOf[row] as number;
    const rows = rowsOf[variety] ?? [];
    rows.push(row);
    rowsOf[variety] = rows;
  }

  function work(from: number, to: number, withDates: boolean): void {
    if (withDates) dates.work(from, to);
    stand.work(from, to);
    harvest.work(from, to);
    if (withDates) window(from, to);
    yields(from, to);
    money(from, to);
  }

  function shareMargins(): void {
    const margin = columnOf(columns, 'margin');
    let sum = 0;
    for (let row = 0; row < count; row++) if (!isBlank(margin[row] as number)) sum += margin[row] as number;
    for (let row = 0; row < count; row++) shareOfMargin[row] = (margin[row] as number) / sum;
  }

  function again(rows: readonly number[], withDates: boolean, reached: readonly Part[]): void {
    // Backwards: a part that reads another's figures takes its share out while they stand.
    for (const row of rows) for (const part of reached.toReversed()) part.take(row);
    for (const row of rows) work(row, row + 1, withDates);
    for (const row of rows) for (const part of reached) part.put(row);
    for (const part of reached) part.finish();
    shareMargins();
  }

  function all(): void {
    farm.lowAtFirstFrost = year.lowAround(frost.first);
    farm.lowAtLastFrost = year.lowAround(frost.last);
    const summer = year.summerNear(season + 182);
    farm.warmest = year.meanAround(summer);
    farm.coldest = year.meanAround(summer + 183);
    work(0, count, true);
    for (const part of parts) {
      part.clear();
      for (let row = 0; row < count; row++) part.put(row);
      part.finish();
    }
    shareMargins();
  }

  return {
    all,
    spacing(row, value) {
      stand.spacing[row] = value;
      again([row], false, afterSpacing);
    },
    plantedOut(row, day) {
      stand.plantedTyped[row] = day;
      again([row], true, parts);
    },
    germination(variety, value) {
      stand.newSeedGermination[variety] = value;
      again(rowsOf[variety] ?? [], false, afterSpacing);
    },
    high(month, value) {
      highs[month] = value;
      year.fill(lows, highs);
      all();
    },
    plantings: columns,
    racks: racks.columns,
    bench: bench.columns,
    store: lots.store,
    lots: lots.columns,
    lotsByWeek: lots.byWeek,
    order: order.columns,
    waterByWeek: water.byWeek,
    harvestByWeek: picked.columns,
    bedWater: water.columns,
    bedWeeks,
    seasonWeeks,
    weeks,
    waterWeeks,
    columnCount:
      columns.size +
      [racks, bench, lots, order].reduce((sum, part) => sum + part.columns.size, water.byWeek.size) +
      lots.store.size +
      lots.byWeek.size +
      picked.columns.size +
      water.columns.size +
      bedWeeks.columns.size +
      bedWeeks.texts.size,
  };
}
