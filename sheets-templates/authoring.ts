// How the built-in sheets are written: short makers for columns, types and unit pairs, so that a sheet reads as a list
// of the things it holds. Every file in sheets-templates/ may call it; it calls nothing and knows no sheet.

import type { ColumnDeclaration, MadeColumn, RangeColumns, TypeDeclaration, UnitPair } from '../engine/index.ts';

/** A column without its group; `group` adds it. */
export type UngroupedColumn = Omit<ColumnDeclaration, 'group'>;

/** What a column may say besides its name, type and formula. `least` and `most` are in the SI unit of the pair. */
export interface ColumnDetails {
  readonly note?: string;
  readonly decimals?: number;
  readonly least?: number;
  readonly most?: number;
  /** Counts things one by one. */
  readonly whole?: boolean;
  readonly required?: boolean;
  /** The id of the column that takes an entry which this one can't: 5 g typed as a Quantity of seeds goes to Weight. */
  readonly orElse?: string;
  /** Other names of the row, with commas between. */
  readonly otherNames?: boolean;
  /** The ids of the columns that hold its low and its high. */
  readonly range?: RangeColumns;
}

function make(
  role: ColumnDeclaration['role'],
  id: string,
  name: string,
  type: TypeDeclaration,
  formula: string,
  details: ColumnDetails,
): UngroupedColumn {
  const { note = '', ...limits } = details;
  return { id, name, type, note, role, formula, ...limits };
}

/**
 * A column that a person fills. Its id is what workbooks keep it by: it never changes, whatever becomes of its name.
 */
export function entered(id: string, name: string, type: TypeDeclaration, details: ColumnDetails = {}): UngroupedColumn {
  return make('entered', id, name, type, '', details);
}

/** A column that its formula fills; a hand-typed override shows as one. */
export function computed(
  id: string,
  name: string,
  type: TypeDeclaration,
  formula: string,
  details: ColumnDetails = {},
): UngroupedColumn {
  return make('computed', id, name, type, formula, details);
}

/** A column that a person fills, and whose formula stands in where they don't. */
export function withDefault(
  id: string,
  name: string,
  type: TypeDeclaration,
  formula: string,
  details: ColumnDetails = {},
): UngroupedColumn {
  return make('default', id, name, type, formula, details);
}

/** The column in which a made sheet names what its rows are made of. */
export function made(id: string, name: string): MadeColumn {
  return { id, name };
}

/** The columns that answer one question of the sheet, in order. Spread into a sheet's `columns`. */
export function group(question: string, ...columns: readonly UngroupedColumn[]): readonly ColumnDeclaration[] {
  return columns.map((column) => ({ ...column, group: question }));
}

/** A number shown in `us` units or `si` units; one name for both where the trade uses one. */
export function quantity(us: string, si: string = us): TypeDeclaration {
  const unit: UnitPair = { us, si };
  return { type: 'number', unit };
}

/** One of the words given. */
export function choice(...options: readonly string[]): TypeDeclaration {
  return { type: 'choice', options };
}

/** Figures that one function works out together, by the id of its record; each is read as [Column].[Figure]. */
export function figures(record: string): TypeDeclaration {
  return { type: 'record', record };
}

/** A row of another sheet, named by the sheet's id. */
export function link(sheet: string): TypeDeclaration {
  return { type: 'link', sheet };
}

export const TEXT: TypeDeclaration = { type: 'text' };
export const DATE: TypeDeclaration = { type: 'date' };
export const YES_OR_NO: TypeDeclaration = { type: 'yesno' };
/** A temperature on its scale, degF or degC; for a difference of temperatures use WARMTH. */
export const TEMPERATURE: TypeDeclaration = { type: 'temperature' };

/** A plain number: a count, a coefficient, an hour-less ratio. */
export const PLAIN = quantity('');
/** A share of a whole, shown in percent. */
export const SHARE = quantity('%');

/** Between plants, rows, seeds and soil: inches or centimetres. */
export const SPACING = quantity('in', 'cm');
/** Diameters of bulbs and depth of sowing. */
export const SIZE = quantity('in', 'mm');
/** Beds, fields, rows: feet or metres. */
export const LENGTH = quantity('ft', 'm');
export const AREA = quantity('ft2', 'm2');
/** Rain, irrigation, mixes. */
export const VOLUME = quantity('gal', 'L');

/** Depths of rain and of water given. */
export const WATER_DEPTH = quantity('in', 'mm');
export const WATER_PER_DAY = quantity('in/day', 'mm/day');

/** Harvests and stores. */
export const MASS = quantity('lb', 'kg');
/** One plant, one bulb, one bunch. */
export const PLANT_MASS = quantity('oz', 'g');
/** Weights of seed. */
export const SEED_MASS = quantity('oz', 'g');
export const YIELD = quantity('lb/ft2', 'kg/m2');
/** Plants per bed area. */
export const DENSITY = quantity('plants/ft2', 'plants/m2');

export const DAYS = quantity('day');
export const WEEKS = quantity('week');
export const HOURS = quantity('h');
export const MINUTES = quantity('min');
export const DEGREE_DAYS = quantity('degF day', 'degC day');
/** A difference of temperatures. */
export const WARMTH = quantity('Fdeg', 'Cdeg');

/** Prices: money for a weight, money for a thing. */
export const MONEY = quantity('money');
export const PRICE_BY_WEIGHT = quantity('money/lb', 'money/kg');

/** The Monday of the week that a date lies in. */
export function mondayOf(date: string): string {
  return `${date} - (WEEKDAY(${date}; 2) - 1) * 1 day`;
}
