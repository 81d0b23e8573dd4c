// The season that the benchmark works out: 200 varieties, 50 beds and any number of plantings with 7 entered and 26 computed
// columns, 5 bed rollups and a seed order of 200 rows. Invented figures from a fixed sequence, the same for all three engines.

import type {
  ColumnDeclaration,
  RowEntries,
  SheetDeclaration,
  TypeDeclaration,
  WorkbookDeclaration,
} from '../../book.ts';

export const VARIETIES = 200;
export const BEDS = 50;

/** A fixed sequence of numbers in [0, 1): multiplicative congruential, Park & Miller 1988 (CACM 31:1192). */
export function sequence(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

export interface VarietyFigures {
  readonly germination: number;
  readonly seedsPerGram: number;
  readonly trayDays: number;
  readonly daysToMaturity: number;
  readonly harvestDays: number;
  readonly plantMass: number;
  readonly price: number;
  readonly cellsPerTray: number;
  readonly rows: number;
  readonly survival: number;
}

export interface PlantingFigures {
  readonly variety: number;
  readonly bed: number;
  readonly length: number;
  readonly spacing: number;
  /** Civil day. */
  readonly sown: number;
  readonly wanted: number;
  readonly waste: number;
}

export interface SeasonFigures {
  readonly varieties: readonly VarietyFigures[];
  readonly bedLengths: readonly number[];
  readonly plantings: readonly PlantingFigures[];
  readonly farm: {
    readonly spare: number;
    readonly nursery: number;
    readonly bedWidth: number;
    readonly priceFactor: number;
  };
}

const FIRST_DAY = 20_820;

export function seasonFigures(count: number): SeasonFigures {
  const next = sequence(20_270_315);
  const pick = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1));
  return {
    farm: { spare: 0.1, nursery: 0.95, bedWidth: 0.75, priceFactor: 1.02 },
    varieties: Array.from({ length: VARIETIES }, () => ({
      germination: pick(60, 95) / 100,
      seedsPerGram: pick(40, 900),
      trayDays: pick(20, 70),
      daysToMaturity: pick(40, 120),
      harvestDays: pick(7, 40),
      plantMass: pick(50, 900) / 1000,
      price: pick(150, 900) / 100,
      cellsPerTray: [50, 72, 98, 128][pick(0, 3)] ?? 72,
      rows: pick(1, 5),
      survival: pick(80, 98) / 100,
    })),
    bedLengths: Array.from({ length: BEDS }, () => pick(10, 40) * 1.5),
    plantings: Array.from({ length: count }, () => ({
      variety: pick(0, VARIETIES - 1),
      bed: pick(0, BEDS - 1),
      length: pick(2, 24) / 2,
      spacing: pick(5, 60) / 100,
      sown: FIRST_DAY + pick(0, 200),
      wanted: pick(80, 99) / 100,
      waste: pick(0, 20) / 100,
    })),
  };
}

const number = (unit: string): TypeDeclaration => ({ type: 'number', unit: { us: unit, si: unit } });
const date: TypeDeclaration = { type: 'date' };

function entered(name: string, type: TypeDeclaration): ColumnDeclaration {
  return { name, type, group: '', note: '', role: 'entered', formula: '' };
}

function computed(name: string, type: TypeDeclaration, formula: string): ColumnDeclaration {
  return { name, type, group: '', note: '', role: 'computed', formula };
}

function sheet(name: string, key: string | undefined, columns: readonly ColumnDeclaration[]): SheetDeclaration {
  return {
    name,
    question: 'Benchmark',
    about: '',
    rows: key === undefined ? { from: 'single' } : { from: 'entry' },
    ...(key === undefined ? {} : { key }),
    columns,
    checks: [],
    cautions: [],
  };
}

const SHEETS: readonly SheetDeclaration[] = [
  sheet('Farm', undefined, [
    entered('Spare seed', number('')),
    entered('Nursery survival', number('')),
    entered('Bed width', number('m')),
    entered('Price factor', number('')),
  ]),
  sheet('Varieties', 'Variety', [
    entered('Variety', { type: 'text' }),
    entered('Germination', number('')),
    entered('Seeds per gram', number('1/g')),
    entered('Tray days', number('day')),
    entered('Days to maturity', number('day')),
    entered('Harvest days', number('day')),
    entered('Plant mass', number('kg')),
    entered('Price', number('money/kg')),
    entered('Cells per tray', number('')),
    entered('Rows', number('')),
    entered('Field survival', number('')),
  ]),
  sheet('Beds', 'Bed', [
    entered('Bed', { type: 'text' }),
    entered('Length', number('m')),
    computed('Planted length', number('m'), 'SUMIFS(Plantings[Length]; Plantings[Bed]; [Bed])'),
    computed('Plants', number(''), 'SUMIFS(Plantings[Stations]; Plantings[Bed]; [Bed])'),
    computed('Revenue', number('money'), 'SUMIFS(Plantings[Revenue]; Plantings[Bed]; [Bed])'),
    computed('Plantings', number(''), 'COUNTIFS(Plantings[Bed]; [Bed])'),
    computed('Free length', number('m'), '[Length] - [Planted length]'),
  ]),
  sheet('Plantings', 'Planting', [
    entered('Planting', { type: 'text' }),
    entered('Variety', { type: 'link', table: 'Varieties' }),
    entered('Bed', { type: 'link', table: 'Beds' }),
    entered('Length', number('m')),
    entered('Spacing', number('m')),
    entered('Sown', date),
    entered('Wanted', number('')),
    entered('Waste', number('')),
    computed('Germination', number(''), '[Variety].[Germination]'),
    computed('Rows', number(''), '[Variety].[Rows]'),
    computed('Row spacing', number('m'), 'Farm[Bed width] / [Rows]'),
    computed('Stations', number(''), '[Rows] * ROUNDDOWN([Length] / [Spacing]; 0)'),
    computed('Area', number('m2'), '[Length] * Farm[Bed width]'),
    computed('Density', number('1/m2'), '[Stations] / [Area]'),
    computed('Target', number(''), 'ROUNDUP([Stations] * (1 + Farm[Spare seed]); 0)'),
    computed('Seeds per cell', number(''), 'MAX(1; ROUNDUP(LN(1 - [Wanted]) / LN(1 - [Germination]); 0))'),
    computed(
      'Cell chance',
      number(''),
      '(1 - BINOM.DIST(0; [Seeds per cell]; [Germination]; TRUE)) * Farm[Nursery survival]',
    ),
    computed('Cells', number(''), 'ROUNDUP([Target] / [Cell chance]; 0)'),
    computed('Cells per tray', number(''), '[Variety].[Cells per tray]'),
    computed('Trays', number(''), 'ROUNDUP([Cells] / [Cells per tray]; 0)'),
    computed('Whole cells', number(''), '[Trays] * [Cells per tray]'),
    computed('Seeds', number(''), '[Whole cells] * [Seeds per cell]'),
    computed('Seed mass', number('g'), '[Seeds] / [Variety].[Seeds per gram]'),
    computed('Planted out', date, '[Sown] + [Variety].[Tray days]'),
    computed('First harvest', date, '[Planted out] + [Variety].[Days to maturity]'),
    computed('Last harvest', date, '[First harvest] + [Variety].[Harvest days]'),
    computed('Harvest week', number(''), 'ISOWEEKNUM([First harvest])'),
    computed('Shortfall risk', number(''), 'BINOM.DIST([Stations] - 1; [Cells]; [Cell chance]; TRUE)'),
    computed('Plants standing', number(''), '[Stations] * [Variety].[Field survival]'),
    computed('Yield', number('kg'), '[Plants standing] * [Variety].[Plant mass] * (1 - [Waste])'),
    computed('Yield per area', number('kg/m2'), '[Yield] / [Area]'),
    computed('Price', number('money/kg'), '[Variety].[Price] * Farm[Price factor]'),
    computed('Revenue', number('money'), '[Yield] * [Price]'),
    computed('Revenue per area', number('money/m2'), '[Revenue] / [Area]'),
  ]),
  {
    ...sheet('Seed order', 'Variety', [
      computed('Seeds', number(''), 'SUMIFS(Plantings[Seeds]; Plantings[Variety]; [Variety])'),
      computed('Mass', number('g'), '[Seeds] / [Variety].[Seeds per gram]'),
      computed('Packs', number(''), 'ROUNDUP([Mass] / 5 g; 0)'),
      computed('Cost', number('money'), '[Packs] * 3.5 money'),
    ]),
    rows: { from: 'each', table: 'Varieties', as: 'Variety', where: '' },
  },
];

function isoOf(day: number): string {
  return new Date(day * 86_400_000).toISOString().slice(0, 10);
}

export const varietyName = (index: number): string => `Variety ${index + 1}`;
export const bedName = (index: number): string => `Bed ${index + 1}`;
export const plantingName = (index: number): string => `Planting ${index + 1}`;

/** The same figures as a workbook. */
export function seasonWorkbook(figures: SeasonFigures): WorkbookDeclaration {
  const { farm } = figures;
  return {
    title: 'Benchmark season',
    units: 'si',
    currency: 'EUR',
    today: FIRST_DAY,
    sheets: SHEETS.map((one) => (one.name === 'Seed order' ? withoutKey(one) : one)),
    rows: {
      Farm: [
        {
          'Spare seed': farm.spare,
          'Nursery survival': farm.nursery,
          'Bed width': farm.bedWidth,
          'Price factor': farm.priceFactor,
        },
      ],
      Varieties: figures.varieties.map(
        (one, index): RowEntries => ({
          Variety: varietyName(index),
          Germination: one.germination,
          'Seeds per gram': one.seedsPerGram,
          'Tray days': one.trayDays,
          'Days to maturity': one.daysToMaturity,
          'Harvest days': one.harvestDays,
          'Plant mass': one.plantMass,
          Price: one.price,
          'Cells per tray': one.cellsPerTray,
          Rows: one.rows,
          'Field survival': one.survival,
        }),
      ),
      Beds: figures.bedLengths.map((length, index): RowEntries => ({ Bed: bedName(index), Length: length })),
      Plantings: figures.plantings.map(
        (one, index): RowEntries => ({
          Planting: plantingName(index),
          Variety: varietyName(one.variety),
          Bed: bedName(one.bed),
          Length: one.length,
          Spacing: one.spacing,
          Sown: isoOf(one.sown),
          Wanted: one.wanted,
          Waste: one.waste,
        }),
      ),
    },
  };
}

function withoutKey({ key: _key, ...rest }: SheetDeclaration): SheetDeclaration {
  return rest;
}
