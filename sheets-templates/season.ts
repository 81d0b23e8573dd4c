// The season template: every built-in sheet in the order of a grower's work, with the rows it ships. index.ts offers it; the
// demo farm and the terminal's `new` start from it. Its version rises with every change that reaches people.

import { isoDate, type SheetDeclaration, type Start, type Template, type TemplateRow } from '../engine/index.ts';
import { bedCalendarSheet, bedNitrogenSheet } from './bed-calendar.ts';
import { bedsSheet } from './beds.ts';
import { bestSpacingSheet } from './best-spacing.ts';
import { bulbingRecordsSheet } from './bulbing-records.ts';
import { climateSheet, frostYearsSheet, MONTHLY_CLIMATE_ROWS, monthlyClimateSheet } from './climate.ts';
import { COVER_CROP_ROWS, coverCropKindsSheet, coverCropsSheet } from './cover-crops.ts';
import { cropsSheet } from './crops.ts';
import { curingSheet } from './curing.ts';
import { demandByWeekSheet, demandSheet, supplyAgainstDemandSheet } from './demand.ts';
import { farmSheet } from './farm.ts';
import { usualGround } from './ground.ts';
import { handsSheet, ownJobsByWeekSheet, ownJobsSheet } from './hands.ts';
import { INPUT_ROWS, inputKindsSheet, inputsSheet } from './inputs.ts';
import { labourSheet } from './labour.ts';
import { learnedCropsSheet, learnedVarietiesSheet, learnedWorkSheet } from './learned.ts';
import { cropId, libraryRows } from './library/library.ts';
import { lotsByWeekSheet, lotsSheet } from './lots.ts';
import { MIX_INGREDIENT_ROWS, MIX_ROWS, mixesSheet, mixIngredientsSheet } from './mixes.ts';
import { budgetSheet, monthsSheet } from './months.ts';
import { type NamedRow, rowsById, shippedRows, wordOf } from './names.ts';
import { nutrientsSheet } from './nutrients.ts';
import { outletMonthsSheet } from './outlet-months.ts';
import { deliveriesSheet, outletsSheet } from './outlets.ts';
import { ownCostsByMonthSheet, ownCostsSheet } from './own-costs.ts';
import { packsSheet } from './packs.ts';
import { plantOrderSheet } from './plant-order.ts';
import { plantingJobsSheet } from './planting-jobs.ts';
import { plantingsSheet } from './plantings.ts';
import { PRODUCT_ROWS, productsSheet } from './products.ts';
import { propagationSheet, sowingListSheet } from './propagation.ts';
import { raisingSheet } from './raising.ts';
import { recordsSheet } from './records.ts';
import { bedResultsSheet, cropResultsSheet, pastResultsSheet, plantingResultsSheet } from './results.ts';
import { seedLotsSheet } from './seed-lots.ts';
import { seedOrderSheet } from './seed-order.ts';
import { shareBoxesSheet } from './share-boxes.ts';
import { SIZE_GRADE_ROWS, sizeGradesSheet } from './size-grades.ts';
import { SOURCE_ROWS, sourcesSheet } from './sources.ts';
import { storageSheet, storeByWeekSheet, storesByWeekSheet } from './storage.ts';
import { lotsAndStoresSheet, STORE_ROWS, storesSheet } from './stores.ts';
import { successionsSheet } from './successions.ts';
import { orderLinesSheet, suppliersSheet } from './suppliers.ts';
import { tasksSheet } from './tasks.ts';
import { TRAY_ROWS, traysSheet } from './trays.ts';
import { trialFitsSheet, trialsSheet } from './trials.ts';
import { varietiesSheet } from './varieties.ts';
import { withViews } from './views.ts';
import { bedWaterSheet, weatherByWeekSheet } from './water.ts';
import { bedsToTrySheet, WAY_ROWS, waysSheet, waysToPlantSheet } from './ways.ts';
import { weeklyHarvestSheet } from './weekly-harvest.ts';
import { weeksSheet } from './weeks.ts';
import { WORK_RATE_ROWS, workRatesSheet } from './work-rates.ts';

export const SEASON_SHEETS: readonly SheetDeclaration[] = withViews([
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
  successionsSheet,
  plantingsSheet,
  raisingSheet,
  sowingListSheet,
  propagationSheet,
  mixesSheet,
  mixIngredientsSheet,
  seedOrderSheet,
  plantOrderSheet,
  suppliersSheet,
  orderLinesSheet,
  sizeGradesSheet,
  bestSpacingSheet,
  waysToPlantSheet,
  bedsToTrySheet,
  waysSheet,
  weeksSheet,
  weeklyHarvestSheet,
  curingSheet,
  storesSheet,
  storageSheet,
  storeByWeekSheet,
  storesByWeekSheet,
  lotsSheet,
  lotsByWeekSheet,
  lotsAndStoresSheet,
  productsSheet,
  outletsSheet,
  demandSheet,
  supplyAgainstDemandSheet,
  demandByWeekSheet,
  deliveriesSheet,
  shareBoxesSheet,
  tasksSheet,
  labourSheet,
  handsSheet,
  ownJobsSheet,
  ownJobsByWeekSheet,
  plantingJobsSheet,
  budgetSheet,
  monthsSheet,
  outletMonthsSheet,
  ownCostsSheet,
  ownCostsByMonthSheet,
  bedCalendarSheet,
  coverCropsSheet,
  coverCropKindsSheet,
  inputsSheet,
  inputKindsSheet,
  bedNitrogenSheet,
  weatherByWeekSheet,
  bedWaterSheet,
  nutrientsSheet,
  recordsSheet,
  plantingResultsSheet,
  cropResultsSheet,
  bedResultsSheet,
  learnedVarietiesSheet,
  learnedCropsSheet,
  learnedWorkSheet,
  pastResultsSheet,
  trialsSheet,
  trialFitsSheet,
  bulbingRecordsSheet,
  sourcesSheet,
]);

/** What a fresh workbook holds: the crop library, tray formats, size bands, months and sources. */
const SHIPPED: Template['rows'] = {
  [monthlyClimateSheet.id]: shippedRows(monthlyClimateSheet, MONTHLY_CLIMATE_ROWS, ({ Month }) =>
    wordOf(String(Month)),
  ),
  [workRatesSheet.id]: shippedRows(workRatesSheet, WORK_RATE_ROWS, ({ Work }) => wordOf(String(Work))),
  [cropsSheet.id]: shippedRows(cropsSheet, libraryRows(), ({ Crop }) => cropId(String(Crop))),
  [traysSheet.id]: shippedRows(traysSheet, TRAY_ROWS, ({ Tray }) => wordOf(String(Tray))),
  [waysSheet.id]: shippedRows(waysSheet, WAY_ROWS, ({ Way }) => wordOf(String(Way))),
  [mixesSheet.id]: shippedRows(mixesSheet, MIX_ROWS, ({ Mix }) => wordOf(String(Mix))),
  [mixIngredientsSheet.id]: shippedRows(mixIngredientsSheet, MIX_INGREDIENT_ROWS, ({ Mix, Ingredient }) =>
    wordOf(`${String(Mix)} ${String(Ingredient)}`),
  ),
  [sizeGradesSheet.id]: shippedRows(sizeGradesSheet, SIZE_GRADE_ROWS, ({ Grade }) => wordOf(String(Grade))),
  [coverCropKindsSheet.id]: shippedRows(coverCropKindsSheet, COVER_CROP_ROWS, ({ Kind }) => wordOf(String(Kind))),
  [inputKindsSheet.id]: shippedRows(inputKindsSheet, INPUT_ROWS, ({ Input }) => wordOf(String(Input))),
  [storesSheet.id]: shippedRows(storesSheet, STORE_ROWS, ({ Store }) => wordOf(String(Store))),
  [productsSheet.id]: shippedRows(productsSheet, PRODUCT_ROWS, ({ Product }) => wordOf(String(Product))),
  [sourcesSheet.id]: shippedRows(sourcesSheet, SOURCE_ROWS, ({ Model }) => wordOf(String(Model))),
};

export const SEASON: Template = {
  name: 'season',
  version: 4,
  sheets: SEASON_SHEETS,
  rows: SHIPPED,
  year: { sheet: farmSheet.id, column: 'season', starts: 'season-starts' },
};

export interface SeasonOptions {
  readonly title?: string;
  readonly units?: 'us' | 'si';
  /** ISO 4217 code. */
  readonly currency?: string;
  /** The year being planned. */
  readonly season: number;
  /** Civil day that TODAY() gives. */
  readonly today: number;
  /** The day a person begins it on: no seed is proposed to be sown before. */
  readonly begun?: number;
  /** Further columns of the one Farm row, as typed, by name: { Latitude: '44.5' }. */
  readonly farm?: NamedRow;
  /** Further rows by the names of sheets and columns, after those a fresh workbook starts with; a row named like one of those changes it. */
  readonly rows?: Readonly<Record<string, readonly NamedRow[]>>;
}

/** How a season workbook starts: empty of a farm's own rows but ready for them, or with those given. */
export function seasonStart(options: SeasonOptions): Start {
  return startOf(SEASON_SHEETS, options);
}

/** As seasonStart, on other sheets: of a farm's usual trays and mix those that are there. */
export function startOf(sheets: readonly SheetDeclaration[], options: SeasonOptions): Start {
  const { title = 'Season', units = 'us', currency = 'USD', season, today, begun, farm = {}, rows = {} } = options;
  const ownFarm: NamedRow = {
    Season: String(season),
    Currency: currency,
    'Block tray': '2 in blocks',
    'Cell tray': '128 cells',
    'Deep tray': 'Deep tray',
    'Usual mix': 'Compost, coir and grit',
    ...usualGround(units),
    ...(begun === undefined ? {} : { 'Nothing sown before': isoDate(begun) }),
    ...farm,
  };
  return { title, units, currency, today, rows: rowsById(sheets, { ...rows, Farm: [ownFarm] }) };
}

/** The rows that a template ships, for fewer sheets and columns. */
export function rowsOfSheets(rows: Template['rows'], sheets: readonly SheetDeclaration[]): Template['rows'] {
  return Object.fromEntries(
    sheets.flatMap(({ id, columns }) => {
      const shipped = rows[id];
      if (shipped === undefined) return [];
      const has = new Set(columns.map((column) => column.id));
      const cells = (row: TemplateRow) => Object.entries(row.cells).filter(([column]) => has.has(column));
      return [[id, shipped.map((row) => ({ ...row, cells: Object.fromEntries(cells(row)) }))]];
    }),
  );
}
