// The unit table: every unit that growers write in US customary and SI units, with its exact factor to the canonical
// unit (m, kg, day, K, 1) and the spellings people use. Powers and quotients are not listed: the vocabulary reads them.
// Factors: NIST SP 811 (2008), app. B, and NIST Handbook 44, app. C; the defined ones are exact (1 in = 25.4 mm,
// 1 lb = 0.45359237 kg, 1 US gal = 231 in3, 1 US bu = 2150.42 in3, 1 acre = 43560 ft2 of the international foot).

import { AREA, type Dimension, LENGTH, MASS, NONE, TIME, VOLUME, WARMTH } from './dimension.ts';
import { doubles, ratio } from './ratio.ts';
import type { Unit } from './unit.ts';

/** A unit that is not made of others. */
export interface Atom extends Unit {
  /** Counting words only: 'plant' of 'plants', as written after a slash. */
  readonly singular?: string;
  /** Areas and volumes with a name of their own: the length whose powers stand in where roots are taken. */
  readonly root?: 'm' | 'ft';
}

/** Two units written side by side, '2 ft 6 in'; counts as its larger unit. */
export interface MixedUnit extends Unit {
  readonly larger: Atom;
  readonly smaller: Atom;
}

function atom(symbol: string, dimension: Dimension, factor: string, more: Partial<Atom> = {}): Atom {
  return { symbol, dimension, ...doubles(ratio(factor)), offset: 0, ...more };
}

/** A plain number: no symbol, factor 1. */
export const ONE: Unit = atom('', NONE, '1');
export const PERCENT: Unit = atom('%', NONE, '0.01');

/** Symbol, factor to the canonical unit, other spellings separated by commas. */
type Row = readonly [symbol: string, factor: string, spellings: string];

const LENGTHS: readonly Row[] = [
  ['m', '1', 'meter, meters, metre, metres'],
  ['mm', '0.001', 'millimeter, millimeters, millimetre, millimetres'],
  ['cm', '0.01', 'centimeter, centimeters, centimetre, centimetres'],
  ['km', '1000', 'kilometer, kilometers, kilometre, kilometres'],
  ['in', '0.0254', 'inch, inches, ins, ", ″, ”, “'],
  ['ft', '0.3048', "foot, feet, ', ′, ’, ‘"],
  ['yd', '0.9144', 'yard, yards, yds'],
  ['mi', '1609.344', 'mile, miles'],
];

const AREAS_SI: readonly Row[] = [['ha', '10000', 'hectare, hectares']];
const AREAS_US: readonly Row[] = [['acre', '4046.8564224', 'acres, ac']];

const VOLUMES_SI: readonly Row[] = [
  ['L', '0.001', 'l, liter, liters, litre, litres, ltr'],
  ['mL', '0.000001', 'ml, milliliter, milliliters, millilitre, millilitres, cc'],
];

const VOLUMES_US: readonly Row[] = [
  ['gal', '0.003785411784', 'gallon, gallons, gals'],
  ['qt', '0.000946352946', 'quart, quarts, qts'],
  ['pt', '0.000473176473', 'pint, pints, pts'],
  ['cup', '0.0002365882365', 'cups'],
  ['fl oz', '0.0000295735295625', 'floz, fluid ounce, fluid ounces, fluidounce, fluidounces'],
  ['tbsp', '0.00001478676478125', 'tablespoon, tablespoons, tbs'],
  ['tsp', '0.00000492892159375', 'teaspoon, teaspoons'],
  ['bu', '0.03523907016688', 'bushel, bushels, bsh'],
  ['peck', '0.00880976754172', 'pecks'],
];

const MASSES: readonly Row[] = [
  ['kg', '1', 'kilogram, kilograms, kilo, kilos, kgs'],
  ['g', '0.001', 'gram, grams, gm, gms'],
  ['mg', '0.000001', 'milligram, milligrams'],
  ['t', '1000', 'tonne, tonnes, metric ton, metric tons'],
  ['lb', '0.45359237', 'lbs, pound, pounds, lbm, #'],
  ['oz', '0.028349523125', 'ounce, ounces, ozs'],
  ['cwt', '45.359237', 'hundredweight, hundredweights'],
  ['ton', '907.18474', 'tons, short ton, short tons'],
];

const TIMES: readonly Row[] = [
  ['day', '1', 'days, d'],
  ['week', '7', 'weeks, wk, wks'],
  ['h', '1/24', 'hour, hours, hr, hrs'],
  ['min', '1/1440', 'minute, minutes, mins'],
  ['s', '1/86400', 'second, seconds, sec, secs'],
];

const DIFFERENCES: readonly Row[] = [
  ['Cdeg', '1', 'C°, Celsius degree, Celsius degrees'],
  ['Fdeg', '5/9', 'F°, Fahrenheit degree, Fahrenheit degrees'],
  ['K', '1', 'kelvin, kelvins'],
];

const PLAIN: readonly Row[] = [
  ['ppm', '0.000001', ''],
  ['dozen', '12', 'dozens, doz'],
  ['deg', '1', '°, degree, degrees'],
];

/** Counting words: plural, singular, other spellings. */
const COUNTS: readonly Row[] = [
  ['seeds', 'seed', ''],
  ['plants', 'plant', ''],
  ['transplants', 'transplant', ''],
  ['blocks', 'block', ''],
  ['cells', 'cell', ''],
  ['plugs', 'plug', ''],
  ['trays', 'tray', ''],
  ['flats', 'flat', ''],
  ['pots', 'pot', ''],
  ['stations', 'station', ''],
  ['rows', 'row', ''],
  ['beds', 'bed', ''],
  ['packs', 'pack', 'packet, packets'],
  ['bulbs', 'bulb', ''],
  ['sets', 'set', ''],
  ['roots', 'root', ''],
  ['heads', 'head', ''],
  ['bunches', 'bunch', ''],
  ['stems', 'stem', ''],
  ['pieces', 'piece', 'pcs, pc'],
  ['boxes', 'box', ''],
  ['crates', 'crate', ''],
  ['bags', 'bag', ''],
  ['bins', 'bin', ''],
  ['shares', 'share', ''],
  ['people', 'person', ''],
  ['each', 'each', 'ea'],
  ['ct', 'ct', 'count'],
];

/** What holds no one knows how many, or is counted otherwise than one by one. */
const NOT_ONE_BY_ONE = new Set('trays flats rows beds packs boxes crates bags bins shares people deg'.split(' '));

const SPELLINGS = new Map<string, Unit>();
const SYMBOLS: string[] = [];

function list(unit: Unit, spellings: string): void {
  SYMBOLS.push(unit.symbol);
  for (const spelling of [unit.symbol, ...spellings.split(', ')]) if (spelling !== '') SPELLINGS.set(spelling, unit);
}

function listAll(rows: readonly Row[], dimension: Dimension, more: Partial<Atom> = {}): void {
  for (const [symbol, factor, spellings] of rows) list(atom(symbol, dimension, factor, more), spellings);
}

listAll(LENGTHS, LENGTH);
listAll(AREAS_SI, AREA, { root: 'm' });
listAll(AREAS_US, AREA, { root: 'ft' });
listAll(VOLUMES_SI, VOLUME, { root: 'm' });
listAll(VOLUMES_US, VOLUME, { root: 'ft' });
listAll(MASSES, MASS);
listAll(TIMES, TIME);
listAll(DIFFERENCES, WARMTH);
listAll(PLAIN, NONE);
list(PERCENT, 'percent, per cent, pct');
for (const [plural, singular, spellings] of COUNTS)
  list(atom(plural, NONE, '1', { singular }), `${singular}, ${spellings}`);

/** Temperatures on their scales: 0 degC = 273.15 K, 0 degF = 459.67 x 5/9 K (NIST SP 811, app. B.8). */
list(
  atom('degC', WARMTH, '1', { offset: 273.15 }),
  '°C, ° C, deg C, degrees C, degree C, celsius, degrees celsius, Celsius, degrees Celsius, centigrade',
);
list(
  atom('degF', WARMTH, '5/9', { offset: (459.67 * 5) / 9 }),
  '°F, ° F, deg F, degrees F, degree F, fahrenheit, degrees fahrenheit, Fahrenheit, degrees Fahrenheit',
);

/** The unit of the table with this symbol; only for symbols that stand in it. */
export function listed(symbol: string): Atom {
  const unit = SPELLINGS.get(symbol);
  if (unit === undefined) throw new Error(`the unit table lacks ${symbol}`);
  return unit;
}

function mixed(larger: string, smaller: string): MixedUnit {
  const first = listed(larger);
  return { ...first, symbol: `${larger} ${smaller}`, larger: first, smaller: listed(smaller) };
}

/** What people write side by side: 2 ft 6 in, 3 lb 4 oz, 1 h 30 min, 2 weeks 3 days. */
export const FEET_AND_INCHES: MixedUnit = mixed('ft', 'in');
export const MIXED_UNITS: readonly MixedUnit[] = [
  FEET_AND_INCHES,
  mixed('lb', 'oz'),
  mixed('h', 'min'),
  mixed('week', 'day'),
];
for (const unit of MIXED_UNITS) SPELLINGS.set(unit.symbol, unit);

export function isMixed(unit: Unit): unit is MixedUnit {
  return 'smaller' in unit;
}

const WRITTEN_OUT = new Set(['day', 'week', 'acre', 'ton', 'cup', 'peck', 'rod', 'chain']);

/** The symbol beside any number but 1: 'days' for day, as words are written; symbols proper (in, lb) stay as they are. */
export function pluralOf(unit: Unit): string {
  return WRITTEN_OUT.has(unit.symbol) ? `${unit.symbol}s` : unit.symbol;
}

/** Whether a plain unit says how many things there are: plants, bunches, dozens, but not crates, and no shares. */
export function countsThings({ symbol, numerator, denominator }: Unit): boolean {
  return numerator >= denominator && !NOT_ONE_BY_ONE.has(symbol);
}

/** Every spelling of the table with its unit. */
export const TABLE: ReadonlyMap<string, Unit> = SPELLINGS;
/** One symbol a unit, in the order of the table. */
export const TABLE_SYMBOLS: readonly string[] = SYMBOLS;
