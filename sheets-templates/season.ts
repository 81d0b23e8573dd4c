// The season template: every built-in sheet in the order of a grower's work, with the rows a fresh workbook starts with.
// index.ts offers it; the demo farm and the terminal's `new` start from it.

import type { SheetDeclaration, WorkbookDeclaration } from '../engine/index.ts';
import { bedsSheet } from './beds.ts';
import { bestSpacingSheet } from './best-spacing.ts';
import { bulbingRecordsSheet } from './bulbing-records.ts';
import { climateSheet, frostYearsSheet, MONTHLY_CLIMATE_ROWS, monthlyClimateSheet } from './climate.ts';
import { cropsSheet } from './crops.ts';
import { curingSheet } from './curing.ts';
import { farmSheet } from './farm.ts';
import { libraryRows } from './library/library.ts';
import { nutrientsSheet } from './nutrients.ts';
import { packsSheet } from './packs.ts';
import { plantingsSheet } from './plantings.ts';
import { seedLotsSheet } from './seed-lots.ts';
import { seedOrderSheet } from './seed-order.ts';
import { SIZE_GRADE_ROWS, sizeGradesSheet } from './size-grades.ts';
import { SOURCE_ROWS, sourcesSheet } from './sources.ts';
import { storageSheet, storeByWeekSheet } from './storage.ts';
import { TRAY_ROWS, traysSheet } from './trays.ts';
import { trialFitsSheet, trialsSheet } from './trials.ts';
import { varietiesSheet } from './varieties.ts';
import { bedWaterSheet, weatherByWeekSheet } from './water.ts';
import { weeklyHarvestSheet } from './weekly-harvest.ts';
import { WORK_RATE_ROWS, workRatesSheet } from './work-rates.ts';

export type Row = Readonly<Record<string, string>>;

export const SEASON_SHEETS: readonly SheetDeclaration[] = [
  farmSheet,
  climateSheet,
  monthlyClimateSheet,
  frostYearsSheet,
  workRatesSheet,
  cropsSheet,
  varietiesSheet,
  packsSheet,
  seedLotsSheet,
  bedsSheet,
  traysSheet,
  plantingsSheet,
  seedOrderSheet,
  sizeGradesSheet,
  bestSpacingSheet,
  curingSheet,
  storageSheet,
  storeByWeekSheet,
  weatherByWeekSheet,
  weeklyHarvestSheet,
  bedWaterSheet,
  nutrientsSheet,
  trialsSheet,
  trialFitsSheet,
  bulbingRecordsSheet,
  sourcesSheet,
];

export interface SeasonOptions {
  readonly title?: string;
  readonly units?: 'us' | 'si';
  /** ISO 4217 code. */
  readonly currency?: string;
  /** The year being planned. */
  readonly season: number;
  /** Civil day that TODAY() gives. */
  readonly today: number;
  /** Further columns of the one Farm row, as typed: { Latitude: '44.5' }. */
  readonly farm?: Row;
  /** Further rows by sheet, after those a fresh workbook starts with; a row of the same name changes that row. */
  readonly rows?: Readonly<Record<string, readonly Row[]>>;
}

/** What a fresh workbook holds: the crop library, tray formats, size bands, months and sources. */
function startingRows(): Readonly<Record<string, readonly Row[]>> {
  return {
    'Monthly climate': MONTHLY_CLIMATE_ROWS,
    'Work rates': WORK_RATE_ROWS,
    Crops: libraryRows(),
    Trays: TRAY_ROWS,
    'Size grades': SIZE_GRADE_ROWS,
    Sources: SOURCE_ROWS,
  };
}

/** Own rows after the starting ones; a row of the same name goes over the starting one, column by column. */
function merge(starting: readonly Row[], own: readonly Row[], key: string | undefined): readonly Row[] {
  if (key === undefined) return [...starting, ...own];
  const byName = new Map(starting.map((row) => [row[key], row]));
  for (const row of own) byName.set(row[key], { ...byName.get(row[key]), ...row });
  return [...byName.values()];
}

/** The season workbook, empty of a farm's own rows but ready for them, or with those given. */
export function seasonTemplate(options: SeasonOptions): WorkbookDeclaration {
  const { title = 'Season', units = 'us', currency = 'USD', season, today, farm = {}, rows = {} } = options;
  const starting = startingRows();
  const ownFarm: Row = {
    Season: String(season),
    Currency: currency,
    'Block tray': '2 in blocks',
    'Cell tray': '128 cells',
    ...farm,
  };
  const together: Record<string, readonly Row[]> = {};
  for (const sheet of SEASON_SHEETS) {
    const merged = merge(starting[sheet.name] ?? [], rows[sheet.name] ?? [], sheet.key);
    if (merged.length > 0) together[sheet.name] = merged;
  }
  together.Farm = [ownFarm];
  return {
    title,
    units,
    currency,
    today,
    year: { sheet: 'Farm', column: 'Season' },
    sheets: SEASON_SHEETS,
    rows: together,
  };
}
