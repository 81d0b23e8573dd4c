// What the floor works from, as typed arrays in the engine's own units (m, kg, day, K, money): what is entered, and the figures of
// crops, varieties, seed lots, beds and Farm, which no planting changes. Read out of an opened workbook once; blanks are not a number.

import { cellValue, rows, type Workbook } from '../../../../engine/index.ts';
import { FILLED } from '../../../../engine/values/column.ts';

/** By slot, blank where no row stands; yes is 1 and no 0, a link the slot it names. */
export function numbersOf(workbook: Workbook, sheet: string, column: string): Float64Array {
  const { document } = workbook;
  const found = document.program.sheet(sheet);
  const def = found?.column(column)?.def;
  if (found === undefined || def === undefined) throw new Error(`The season has no column ${column} in ${sheet}.`);
  const { values, states } = document.frame.column(def);
  const numbers = new Float64Array(document.frame.table(found.table).length).fill(Number.NaN);
  for (const slot of rows(workbook, sheet)) if (states[slot] === FILLED) numbers[slot] = values[slot] ?? Number.NaN;
  return numbers;
}

/** Only what a person typed over the column's formula. */
export function typedOf(workbook: Workbook, sheet: string, column: string): Float64Array {
  const { document } = workbook;
  const def = document.program.sheet(sheet)?.column(column)?.def;
  const over = def === undefined ? undefined : document.frame.typedIn(def)?.over;
  return numbersOf(workbook, sheet, column).map((value, slot) => (over?.has(slot) === true ? value : Number.NaN));
}

/** By slot; '' where blank. */
export function textsOf(workbook: Workbook, sheet: string, column: string): readonly string[] {
  return Array.from(numbersOf(workbook, sheet, column), (_, slot) => {
    const value = cellValue(workbook, sheet, slot, column);
    return typeof value === 'string' ? value : '';
  });
}

/** Ways to start a planting, as the floor tells them apart. */
export const STARTS = ['blocks', 'cells', 'deep tray', 'nursery bed', 'direct seed', 'sets', 'plants'] as const;
export const [BLOCKS, CELLS, DEEP_TRAY, NURSERY_BED, DIRECT, SETS, PLANTS] = [0, 1, 2, 3, 4, 5, 6] as const;

export interface Inputs {
  readonly count: number;
  /** A column of Plantings: what is typed. */
  typed(column: string): Float64Array;
  /** A column of choices of Plantings as places in a list, -1 where none is typed. */
  choice(column: string, choices: readonly string[]): Int8Array;
  /** A column of Varieties, by the variety's slot. */
  variety(column: string): Float64Array;
  /** A column of Crops, by the variety's slot. */
  crop(column: string): Float64Array;
  /** Whether a column of Crops says this, 1 or 0, by the variety's slot. */
  cropSays(column: string, ...texts: readonly string[]): Float64Array;
  /** Of a sheet that plantings link to, by slot. */
  of(sheet: string, column: string): Float64Array;
  textsOf(sheet: string, column: string): readonly string[];
  /** The one row of Farm. */
  farm(column: string): number;
  /** The slot of each planting's variety and bed. */
  readonly varietyOf: Int32Array;
  readonly bedOf: Int32Array;
}

export function inputsOf(workbook: Workbook): Inputs {
  const cropOfVariety = numbersOf(workbook, 'varieties', 'crop');
  const varietyOf = Int32Array.from(numbersOf(workbook, 'plantings', 'variety'));
  const bedOf = Int32Array.from(numbersOf(workbook, 'plantings', 'bed'));
  return {
    count: varietyOf.length,
    varietyOf,
    bedOf,
    typed(column) {
      const role = workbook.document.program.sheet('plantings')?.column(column)?.role;
      return role === 'entered' ? numbersOf(workbook, 'plantings', column) : typedOf(workbook, 'plantings', column);
    },
    choice(column, choices) {
      const typed = this.typed(column);
      const texts = textsOf(workbook, 'plantings', column);
      return Int8Array.from(typed, (value, slot) => (Number.isNaN(value) ? -1 : choices.indexOf(texts[slot] ?? '')));
    },
    variety: (column) => numbersOf(workbook, 'varieties', column),
    crop(column) {
      const figures = numbersOf(workbook, 'crops', column);
      return cropOfVariety.map((crop) => figures[crop] ?? Number.NaN);
    },
    cropSays(column, ...texts) {
      const said = textsOf(workbook, 'crops', column);
      return cropOfVariety.map((crop) => (texts.includes(said[crop] ?? '') ? 1 : 0));
    },
    of: (sheet, column) => numbersOf(workbook, sheet, column),
    textsOf: (sheet, column) => textsOf(workbook, sheet, column),
    farm: (column) => numbersOf(workbook, 'farm', column)[0] ?? Number.NaN,
  };
}

/** The columns that the floor works out, by id. */
export type Columns = Map<string, Float64Array>;

/** A new column of the floor's, under the id of the column it stands for. */
export function columnIn(columns: Columns, id: string, count: number): Float64Array {
  const made = new Float64Array(count);
  columns.set(id, made);
  return made;
}

export const isBlank = (value: number): boolean => Number.isNaN(value);
/** The larger, the smaller of those that are not blank. */
export const most = (a: number, b: number): number => (isBlank(a) ? b : isBlank(b) ? a : Math.max(a, b));
export const least = (a: number, b: number): number => (isBlank(a) ? b : isBlank(b) ? a : Math.min(a, b));
/** Adds what is known. */
export const plus = (a: number, b: number): number => (isBlank(a) ? b : isBlank(b) ? a : a + b);
export const or = (a: number, b: number): number => (isBlank(a) ? b : a);

/** A column that an earlier part of the floor works out. */
export function columnOf(columns: Columns, id: string): Float64Array {
  const found = columns.get(id);
  if (found === undefined) throw new Error(`The floor works out no column ${id} before this.`);
  return found;
}
