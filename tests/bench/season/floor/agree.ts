// Whether the floor and the workbook hold the same figures, column by column: nothing is timed before they do.

import { rows, type Workbook } from '../../../../engine/index.ts';
import type { SeasonFloor } from './floor.ts';
import { numbersOf, textsOf } from './inputs.ts';

/** Of its own size. */
const CLOSE = 1e-9;

/** The columns that the floor works out, by sheet. */
export function columnsOfFloor(floor: SeasonFloor): readonly (readonly [sheet: string, columns: readonly string[]])[] {
  return [
    ['plantings', [...floor.plantings.keys()]],
    ['harvest-and-curing', [...floor.racks.keys()]],
    ['propagation', [...floor.bench.keys()]],
    ['store-by-week', [...floor.store.keys()]],
    ['lots', [...floor.lots.keys()]],
    ['lots-by-week', [...floor.lotsByWeek.keys()]],
    ['seed-order', [...floor.order.keys()]],
    ['weather-by-week', [...floor.waterByWeek.keys()]],
    ['weekly-harvest', [...floor.harvestByWeek.keys()]],
    ['bed-water', [...floor.bedWater.keys()]],
    ['bed-calendar', [...floor.bedWeeks.columns.keys(), ...floor.bedWeeks.texts.keys()]],
  ];
}

/** Sentences of where they differ: a column each, with the first row that does. None where all is the same. */
export function differences(workbook: Workbook, floor: SeasonFloor): readonly string[] {
  const said: string[] = [];
  const link = (sheet: string, column: string): Float64Array => numbersOf(workbook, sheet, column);
  const compare = (
    sheet: string,
    columns: ReadonlyMap<string, Float64Array>,
    placeOf: (slot: number) => number,
    count: number,
  ): void => {
    const there = Array.from(rows(workbook, sheet));
    if (there.length !== count) said.push(`${sheet} has ${there.length} rows, the floor ${count}`);
    for (const [id, figures] of columns) {
      const kept = link(sheet, id);
      const slots = there.filter((slot) => !close(figures[placeOf(slot)], kept[slot]));
      const [first] = slots;
      if (first !== undefined)
        said.push(
          `${sheet}/${id} in ${slots.length} rows; in row ${first} ${figures[placeOf(first)]}, not ${kept[first]}`,
        );
    }
  };
  const linked = (sheet: string, to: string): ((slot: number) => number) => {
    const places = link(sheet, to);
    return (slot) => places[slot] ?? Number.NaN;
  };
  const ofPairs = (sheet: string, weeks: number, of = 'planting'): ((slot: number) => number) => {
    const [first, week] = [link(sheet, of), link(sheet, 'week')];
    return (slot) => (first[slot] ?? Number.NaN) * weeks + (week[slot] ?? Number.NaN);
  };
  const size = (columns: ReadonlyMap<string, Float64Array>): number =>
    [...columns.values()][0]?.filter((value) => !Number.isNaN(value)).length ?? 0;
  const same = (slot: number): number => slot;
  const among = (sheet: string): number => rows(workbook, sheet).length;
  compare('plantings', floor.plantings, same, among('plantings'));
  compare('harvest-and-curing', floor.racks, linked('harvest-and-curing', 'planting'), size(floor.racks));
  compare('propagation', floor.bench, linked('propagation', 'week'), among('propagation'));
  compare('lots', floor.lots, linked('lots', 'planting'), size(floor.lots));
  compare('lots-by-week', floor.lotsByWeek, ofPairs('lots-by-week', floor.weeks.count), size(floor.lotsByWeek));
  compare('store-by-week', floor.store, same, floor.weeks.count);
  compare('seed-order', floor.order, linked('seed-order', 'variety'), among('seed-order'));
  compare('weather-by-week', floor.waterByWeek, same, floor.waterWeeks.count);
  compare(
    'weekly-harvest',
    floor.harvestByWeek,
    ofPairs('weekly-harvest', floor.weeks.count),
    size(floor.harvestByWeek),
  );
  compare('bed-water', floor.bedWater, ofPairs('bed-water', floor.waterWeeks.count), size(floor.bedWater));
  const { bedWeeks, seasonWeeks } = floor;
  const ofBed = ofPairs('bed-calendar', seasonWeeks.count, 'bed');
  compare('bed-calendar', bedWeeks.columns, ofBed, among('beds') * seasonWeeks.count);
  for (const [id, texts] of bedWeeks.texts) {
    const kept = textsOf(workbook, 'bed-calendar', id);
    const slots = Array.from(rows(workbook, 'bed-calendar')).filter((slot) => texts[ofBed(slot)] !== kept[slot]);
    if (slots.length > 0) said.push(`bed-calendar/${id} in ${slots.length} rows`);
  }
  return said;
}

/** Equal but for a thousand-millionth of their size; blanks are equal to blanks. */
export function close(a = Number.NaN, b = Number.NaN): boolean {
  if (Number.isNaN(a) || Number.isNaN(b)) return Number.isNaN(a) && Number.isNaN(b);
  return Math.abs(a - b) <= CLOSE * Math.max(Math.abs(a), Math.abs(b), 1e-3);
}
