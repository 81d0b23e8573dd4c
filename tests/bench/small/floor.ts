// The floor: hand-written loops over typed arrays that work out the same columns and rollups with no graph, no states and
// no units. The special functions are the engine's own, so that only the execution differs.

import { binomialCdf } from '../../../engine/agronomy/distributions.ts';
import { civilDay, yearMonthDay } from '../../../engine/values/civil.ts';
import { tolerantCeil, tolerantFloor } from '../../../engine/values/tolerance.ts';
import { BEDS, type SeasonFigures, VARIETIES } from './season.ts';

const COMPUTED = [
  'Germination',
  'Rows',
  'Row spacing',
  'Stations',
  'Area',
  'Density',
  'Target',
  'Seeds per cell',
  'Cell chance',
  'Cells',
  'Cells per tray',
  'Trays',
  'Whole cells',
  'Seeds',
  'Seed mass',
  'Planted out',
  'First harvest',
  'Last harvest',
  'Harvest week',
  'Shortfall risk',
  'Plants standing',
  'Yield',
  'Yield per area',
  'Price',
  'Revenue',
  'Revenue per area',
] as const;

type ComputedName = (typeof COMPUTED)[number];

export interface Floor {
  readonly columns: Readonly<Record<ComputedName, Float64Array>>;
  readonly beds: {
    readonly length: Float64Array;
    readonly plants: Float64Array;
    readonly revenue: Float64Array;
    readonly count: Float64Array;
    readonly free: Float64Array;
  };
  readonly order: {
    readonly seeds: Float64Array;
    readonly mass: Float64Array;
    readonly packs: Float64Array;
    readonly cost: Float64Array;
  };
  /** Every column, then every rollup. */
  all(): void;
  /** One planting's columns, its bed and its variety's order. */
  spacing(row: number, spacing: number): void;
  germination(variety: number, germination: number): void;
  spare(spare: number): void;
  readonly bytes: number;
}

/** ISO 8601 week of a civil day: the week of its Thursday. */
function isoWeek(day: number): number {
  const thursday = day - ((((day + 3) % 7) + 7) % 7) + 3;
  const { year } = yearMonthDay(thursday);
  return Math.floor((thursday - civilDay(year, 1, 1)) / 7) + 1;
}

export function makeFloor(figures: SeasonFigures): Floor {
  const count = figures.plantings.length;
  const of = (read: (one: SeasonFigures['plantings'][number]) => number): Float64Array =>
    Float64Array.from(figures.plantings, read);
  const ofVariety = (read: (one: SeasonFigures['varieties'][number]) => number): Float64Array =>
    Float64Array.from(figures.varieties, read);
  const variety = Int32Array.from(figures.plantings, (one) => one.variety);
  const bed = Int32Array.from(figures.plantings, (one) => one.bed);
  const [length, spacing, sown, wanted, waste] = [
    of((one) => one.length),
    of((one) => one.spacing),
    of((one) => one.sown),
    of((one) => one.wanted),
    of((one) => one.waste),
  ];
  const v = {
    germination: ofVariety((one) => one.germination),
    seedsPerKilogram: ofVariety((one) => one.seedsPerGram * 1000),
    trayDays: ofVariety((one) => one.trayDays),
    days: ofVariety((one) => one.daysToMaturity),
    harvest: ofVariety((one) => one.harvestDays),
    mass: ofVariety((one) => one.plantMass),
    price: ofVariety((one) => one.price),
    cells: ofVariety((one) => one.cellsPerTray),
    rows: ofVariety((one) => one.rows),
    survival: ofVariety((one) => one.survival),
  };
  const farm = { ...figures.farm };
  const bedLength = Float64Array.from(figures.bedLengths);
  const column = (): Float64Array => new Float64Array(count);
  const c = Object.fromEntries(COMPUTED.map((name) => [name, column()])) as Record<ComputedName, Float64Array>;
  const beds = {
    length: new Float64Array(BEDS),
    plants: new Float64Array(BEDS),
    revenue: new Float64Array(BEDS),
    count: new Float64Array(BEDS),
    free: new Float64Array(BEDS),
  };
  const order = {
    seeds: new Float64Array(VARIETIES),
    mass: new Float64Array(VARIETIES),
    packs: new Float64Array(VARIETIES),
    cost: new Float64Array(VARIETIES),
  };
  const rowsOfVariety: number[][] = Array.from({ length: VARIETIES }, () => []);
  const rowsOfBed: number[][] = Array.from({ length: BEDS }, () => []);
  for (let row = 0; row < count; row++) {
    rowsOfVariety[variety[row] as number]?.push(row);
    rowsOfBed[bed[row] as number]?.push(row);
  }

  const work = (from: number, to: number): void => {
    const {
      Germination,
      Rows,
      Stations,
      Area,
      Density,
      Target,
      Cells,
      Trays,
      Seeds,
      Yield,
      Price,
      Revenue,
      'Row spacing': RowSpacing,
      'Seeds per cell': SeedsPerCell,
      'Cell chance': CellChance,
      'Cells per tray': CellsPerTray,
      'Whole cells': WholeCells,
      'Seed mass': SeedMass,
      'Planted out': PlantedOut,
      'First harvest': FirstHarvest,
      'Last harvest': LastHarvest,
      'Harvest week': HarvestWeek,
      'Shortfall risk': ShortfallRisk,
      'Plants standing': PlantsStanding,
      'Yield per area': YieldPerArea,
      'Revenue per area': RevenuePerArea,
    } = c;
    for (let i = from; i < to; i++) {
      const k = variety[i] as number;
      const germination = v.germination[k] as number;
      Germination[i] = germination;
      const rows = v.rows[k] as number;
      Rows[i] = rows;
      RowSpacing[i] = farm.bedWidth / rows;
      const stations = rows * tolerantFloor((length[i] as number) / (spacing[i] as number));
      Stations[i] = stations;
      const area = (length[i] as number) * farm.bedWidth;
      Area[i] = area;
      Density[i] = stations / area;
      const target = tolerantCeil(stations * (1 + farm.spare));
      Target[i] = target;
      const perCell = Math.max(1, tolerantCeil(Math.log(1 - (wanted[i] as number)) / Math.log(1 - germination)));
      SeedsPerCell[i] = perCell;
      const chance = (1 - binomialCdf(0, perCell, germination)) * farm.nursery;
      CellChance[i] = chance;
      const cells = tolerantCeil(target / chance);
      Cells[i] = cells;
      const perTray = v.cells[k] as number;
      CellsPerTray[i] = perTray;
      const trays = tolerantCeil(cells / perTray);
      Trays[i] = trays;
      WholeCells[i] = trays * perTray;
      const seeds = trays * perTray * perCell;
      Seeds[i] = seeds;
      SeedMass[i] = seeds / (v.seedsPerKilogram[k] as number);
      const out = (sown[i] as number) + (v.trayDays[k] as number);
      PlantedOut[i] = out;
      const first = out + (v.days[k] as number);
      FirstHarvest[i] = first;
      LastHarvest[i] = first + (v.harvest[k] as number);
      HarvestWeek[i] = isoWeek(first);
      ShortfallRisk[i] = binomialCdf(stations - 1, cells, chance);
      const standing = stations * (v.survival[k] as number);
      PlantsStanding[i] = standing;
      const mass = standing * (v.mass[k] as number) * (1 - (waste[i] as number));
      Yield[i] = mass;
      YieldPerArea[i] = mass / area;
      const price = (v.price[k] as number) * farm.priceFactor;
      Price[i] = price;
      const revenue = mass * price;
      Revenue[i] = revenue;
      RevenuePerArea[i] = revenue / area;
    }
  };
  const finishBed = (b: number): void => {
    beds.free[b] = (bedLength[b] as number) - (beds.length[b] as number);
  };
  const finishOrder = (k: number): void => {
    order.mass[k] = (order.seeds[k] as number) / (v.seedsPerKilogram[k] as number);
    order.packs[k] = tolerantCeil((order.mass[k] as number) / 0.005);
    order.cost[k] = (order.packs[k] as number) * 3.5;
  };
  const rollBed = (b: number): void => {
    let [metres, plants, revenue] = [0, 0, 0];
    for (const row of rowsOfBed[b] ?? []) {
      metres += length[row] as number;
      plants += c.Stations[row] as number;
      revenue += c.Revenue[row] as number;
    }
    beds.length[b] = metres;
    beds.plants[b] = plants;
    beds.revenue[b] = revenue;
    beds.count[b] = rowsOfBed[b]?.length ?? 0;
    finishBed(b);
  };
  const rollOrder = (k: number): void => {
    let seeds = 0;
    for (const row of rowsOfVariety[k] ?? []) seeds += c.Seeds[row] as number;
    order.seeds[k] = seeds;
    finishOrder(k);
  };
  const rollups = (): void => {
    for (const totals of [beds.length, beds.plants, beds.revenue, beds.count, order.seeds]) totals.fill(0);
    for (let i = 0; i < count; i++) {
      const b = bed[i] as number;
      const k = variety[i] as number;
      beds.length[b] = (beds.length[b] as number) + (length[i] as number);
      beds.plants[b] = (beds.plants[b] as number) + (c.Stations[i] as number);
      beds.revenue[b] = (beds.revenue[b] as number) + (c.Revenue[i] as number);
      beds.count[b] = (beds.count[b] as number) + 1;
      order.seeds[k] = (order.seeds[k] as number) + (c.Seeds[i] as number);
    }
    for (let b = 0; b < BEDS; b++) finishBed(b);
    for (let k = 0; k < VARIETIES; k++) finishOrder(k);
  };
  const all = (): void => {
    work(0, count);
    rollups();
  };
  return {
    columns: c,
    beds,
    order,
    all,
    spacing(row, value) {
      spacing[row] = value;
      work(row, row + 1);
      rollBed(bed[row] as number);
      rollOrder(variety[row] as number);
    },
    germination(k, value) {
      v.germination[k] = value;
      const touched = new Set<number>();
      for (const row of rowsOfVariety[k] ?? []) {
        work(row, row + 1);
        touched.add(bed[row] as number);
      }
      for (const b of touched) rollBed(b);
      rollOrder(k);
    },
    spare(value) {
      farm.spare = value;
      all();
    },
    bytes: count * 8 * (COMPUTED.length + 5) + count * 4 * 2,
  };
}
