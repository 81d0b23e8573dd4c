// How the crop library is written: a figure is text as a grower types it, with where it comes from. The family files
// call these; library.ts turns the crops into rows of the Crops sheet.

import type { Source } from './sources.ts';
import { MEMORY, PRACTICE } from './sources.ts';

/** The columns of the Crops sheet that the library fills with figures. */
export type FigureColumn =
  | 'Family'
  | 'Start methods'
  | 'Usual start'
  | 'Seeds per gram'
  | 'Germination standard'
  | 'Seed life'
  | 'Seed oil'
  | 'KE'
  | 'CW'
  | 'CH'
  | 'CQ'
  | 'Germination minimum'
  | 'Germination best from'
  | 'Germination best to'
  | 'Germination maximum'
  | 'Emergence base'
  | 'Emergence thermal time'
  | 'Seeding depth'
  | 'Weeks in propagation'
  | 'Transplant height'
  | 'Usual seeds per block'
  | 'Hardiness'
  | 'Frost limit'
  | 'Plant out from last frost'
  | 'Sow outdoors from last frost'
  | 'Latest sowing before first frost'
  | 'Latest sowing in'
  | 'Latest planting out before first frost'
  | 'Degree-day base'
  | 'In-row spacing'
  | 'Row spacing'
  | 'Rows per bed'
  | 'Clump in-row spacing'
  | 'Beds across'
  | 'Isolated plant mass'
  | 'Ceiling yield'
  | 'Squareness loss'
  | 'Days to maturity'
  | 'Days to maturity direct'
  | 'Harvest window'
  | 'Day-length response'
  | 'Critical day length'
  | 'Bolting trigger'
  | 'Bolting size'
  | 'Bolting cold'
  | 'Bolting cold days'
  | 'Harvest unit'
  | 'Unit mass'
  | 'Yield'
  | 'Yield low'
  | 'Yield high'
  | 'Marketable share'
  | 'Bulb shape factor'
  | 'Diameter spread'
  | 'Curing days'
  | 'Curing loss'
  | 'Storage temperature'
  | 'Storage humidity'
  | 'Storage life'
  | 'Monthly storage loss'
  | 'Rotation years'
  | 'Nitrogen removal'
  | 'Phosphorus removal'
  | 'Potassium removal'
  | 'Crop coefficient initial'
  | 'Crop coefficient mid'
  | 'Crop coefficient end'
  | 'Initial stage'
  | 'Development stage'
  | 'Mid-season stage'
  | 'Late stage';

/** A figure that varies: what the sheet starts with stands between the lowest and the highest. */
export interface Range {
  readonly low: string;
  readonly text: string;
  readonly high: string;
}

/** A figure as typed, or one with its range. */
export type Reading = string | Range;

export interface Figure {
  readonly text: string;
  readonly range: Range | undefined;
  readonly source: Source;
}

export type Figures = Partial<Readonly<Record<FigureColumn, Figure>>>;

export interface Crop {
  /** Never changes: workbooks hold what a grower changed of this crop under it. */
  readonly id: string;
  readonly name: string;
  readonly figures: Figures;
  /** Where sources disagree or stop short, a sentence each. */
  readonly doubts: readonly string[];
}

export function crop(id: string, name: string, figures: Figures, ...doubts: readonly string[]): Crop {
  return { id, name, figures, doubts };
}

export function range(low: string, text: string, high: string): Range {
  return { low, text, high };
}

/** A figure read in `source`, or with a range chosen inside the one read there. */
export function from(source: Source, reading: Reading): Figure {
  return typeof reading === 'string'
    ? { text: reading, range: undefined, source }
    : { text: reading.text, range: reading, source };
}

/** A recalled figure, to be checked before much hangs on it. */
export function memory(reading: Reading): Figure {
  return from(MEMORY, reading);
}

/** What growers commonly do, without a source. */
export function practice(reading: Reading): Figure {
  return from(PRACTICE, reading);
}

export function family(name: string, startMethods: string, usualStart: string): Figures {
  return { Family: memory(name), 'Start methods': practice(startMethods), 'Usual start': practice(usualStart) };
}

/** Soil temperatures: coolest, best from, best to, warmest. */
export function germination(
  source: Source,
  minimum: string,
  bestFrom: string,
  bestTo: string,
  maximum: string,
): Figures {
  return {
    'Germination minimum': from(source, minimum),
    'Germination best from': from(source, bestFrom),
    'Germination best to': from(source, bestTo),
    'Germination maximum': from(source, maximum),
  };
}

export function emergence(source: Source, base: string, thermalTime: string): Figures {
  return { 'Emergence base': from(source, base), 'Emergence thermal time': from(source, thermalTime) };
}

export function viability(source: Source, ke: string, cw: string, ch: string, cq: string): Figures {
  return { KE: from(source, ke), CW: from(source, cw), CH: from(source, ch), CQ: from(source, cq) };
}

/** Hardiness follows from the frost limit: tender above -1.5 C, half-hardy above -5, hardy above -11, else very hardy. */
export function frost(source: Source, limit: string, hardiness: string): Figures {
  return { 'Frost limit': from(source, limit), Hardiness: from(source, hardiness) };
}

/** The latest sowing that still finishes, weeks before the first frost, and whether that seed goes in trays or the bed. */
export function latestSowing(weeks: string, place: 'trays' | 'bed'): Figures {
  return { 'Latest sowing before first frost': memory(weeks), 'Latest sowing in': memory(place) };
}

/** Rows across a bed 30 in wide and the distance between them; a spreading crop covers more than one bed. */
export function rows(count: string, spacing: string, bedsAcross = '1'): Figures {
  return { 'Rows per bed': memory(count), 'Row spacing': memory(spacing), 'Beds across': memory(bedsAcross) };
}

/**
 * Isolated mass and ceiling yield that give the usual plant mass at the usual spacing, by 1/w = 1/isolated + density /
 * ceiling. Where plants stand at 20 per m2 and closer, crowding is taken to leave a plant a third of its isolated mass;
 * where they stand wider, a half. The plant mass is first divided by the squareness factor of the usual spacing.
 */
export function crowding(isolated: string, ceiling: string): Figures {
  return {
    'Isolated plant mass': memory(isolated),
    'Ceiling yield': memory(ceiling),
    'Squareness loss': memory('14.9%'),
  };
}

export function harvest(unit: string, mass: Figure): Figures {
  return { 'Harvest unit': practice(unit), 'Unit mass': mass };
}

/** Marketable yield of bed without paths, recalled: low, the middle of low and high, high; and the share that sells. */
export function yields(low: string, middle: string, high: string, marketable: string): Figures {
  return {
    Yield: memory(middle),
    'Yield low': memory(low),
    'Yield high': memory(high),
    'Marketable share': memory(marketable),
  };
}

export function store(source: Source, temperature: Reading, humidity: Reading, life: Reading): Figures {
  return {
    'Storage temperature': from(source, temperature),
    'Storage humidity': from(source, humidity),
    'Storage life': from(source, life),
  };
}

/** Nitrogen, phosphorus and potassium in the harvest, as elements. */
export function removal(source: Source, nitrogen: string, phosphorus: string, potassium: string): Figures {
  return {
    'Nitrogen removal': from(source, nitrogen),
    'Phosphorus removal': from(source, phosphorus),
    'Potassium removal': from(source, potassium),
  };
}

export function coefficients(source: Source, initial: Reading, mid: Reading, end: Reading): Figures {
  return {
    'Crop coefficient initial': from(source, initial),
    'Crop coefficient mid': from(source, mid),
    'Crop coefficient end': from(source, end),
  };
}

export function stages(source: Source, initial: string, development: string, mid: string, late: string): Figures {
  return {
    'Initial stage': from(source, initial),
    'Development stage': from(source, development),
    'Mid-season stage': from(source, mid),
    'Late stage': from(source, late),
  };
}
