// Planting places on a bed with edges: rows square to each other, rows shifted by half a spacing, and the true triangular
// grid; where each place lies; and the density and squareness that follow. Every length is in one unit (metres in the
// workbook) and every area in its square. The function library and the bed picture call it.

import { tolerantFloor } from '../values/tolerance.ts';
import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

/** Square: places of neighbouring rows stand side by side. Offset: every second row is shifted by half a spacing. */
export type Pattern = 'square' | 'offset';

export interface Layout {
  readonly length: number;
  readonly width: number;
  readonly spacing: number;
  /** A whole number of rows along the bed. */
  readonly rows: number;
  readonly pattern: Pattern;
}

/** A place on the bed: x along its length, y across its width, both from one corner. */
export interface Station {
  readonly x: number;
  readonly y: number;
}

export const SPACING_LIMITS = {
  length: { min: 0, why: 'a bed cannot be shorter than nothing' },
  spacing: { min: 0.001, why: 'in-row spacing below 1 mm is not a spacing' },
  rows: { min: 0, why: 'rows are counted' },
} satisfies Limits;

const HALF = 0.5;
const TRIANGLE_PITCH = Math.sqrt(3) / 2;

function placesInRow(length: number, spacing: number, shifted: boolean): number {
  return Math.max(0, tolerantFloor((shifted ? length - spacing * HALF : length) / spacing));
}

function isLayable(length: number, spacing: number, rows: number): boolean {
  return length >= 0 && Number.isFinite(length) && spacing > 0 && rows >= 0 && Number.isFinite(rows);
}

/**
 * Planting places on a bed: rows x floor(length / spacing), so that half a spacing stays free at each end. A quotient
 * within binary dust of a whole number is that number. A part of a row counts as none. NaN where the spacing is not
 * above zero or anything is negative.
 */
export function stations(length: number, spacing: number, rows: number): number {
  if (!isLayable(length, spacing, rows)) return Number.NaN;
  return tolerantFloor(rows) * placesInRow(length, spacing, false);
}

/**
 * Planting places when every second row is shifted by half a spacing: a shifted row keeps floor((length - spacing / 2) /
 * spacing) places, which is as many as its neighbour or one fewer. NaN as for `stations`.
 */
export function offsetStations(length: number, spacing: number, rows: number): number {
  if (!isLayable(length, spacing, rows)) return Number.NaN;
  const whole = tolerantFloor(rows);
  const shiftedRows = Math.floor(whole * HALF);
  return (whole - shiftedRows) * placesInRow(length, spacing, false) + shiftedRows * placesInRow(length, spacing, true);
}

/** Places of either pattern. NaN as for `stations`. */
export function patternStations(layout: Layout): number {
  const count = layout.pattern === 'offset' ? offsetStations : stations;
  return count(layout.length, layout.spacing, layout.rows);
}

/** Places an offset gains on this bed with the rows kept: never above zero, since the rows stay and the ends cost places. */
export function offsetGain(length: number, spacing: number, rows: number): number {
  return offsetStations(length, spacing, rows) - stations(length, spacing, rows);
}

/** What the offset does on this bed, as a grower reads it; empty where the bed or spacing is not usable. */
export function offsetVerdict(length: number, spacing: number, rows: number): string {
  const gain = offsetGain(length, spacing, rows);
  if (Number.isNaN(gain)) return '';
  if (gain === 0) return 'Offset rows hold as many plants as square rows on this bed; they only stand more evenly.';
  const places = gain === -1 ? '1 place' : `${-gain} places`;
  return `Offset rows hold ${places} fewer than square rows on this bed: every second row loses half a spacing at its ends.`;
}

/** A bed planted on a grid from edge to edge: how many rows it takes and how many places in all. */
export interface GridCount {
  readonly rows: number;
  readonly stations: number;
}

function gridCount(length: number, width: number, spacing: number, setback: number, triangular: boolean): GridCount {
  const clearLength = length - 2 * setback;
  const clearWidth = width - 2 * setback;
  if (!(spacing > 0) || !(setback >= 0) || !(clearLength >= 0) || !(clearWidth >= 0)) {
    return { rows: Number.NaN, stations: Number.NaN };
  }
  const pitch = triangular ? spacing * TRIANGLE_PITCH : spacing;
  const rows = tolerantFloor(clearWidth / pitch) + 1;
  const fullRow = tolerantFloor(clearLength / spacing) + 1;
  if (!triangular) return { rows, stations: rows * fullRow };
  const shiftedRow = tolerantFloor((clearLength - spacing * HALF) / spacing) + 1;
  const shiftedRows = Math.floor(rows * HALF);
  return { rows, stations: (rows - shiftedRows) * fullRow + shiftedRows * shiftedRow };
}

/**
 * A square grid of one spacing both ways, its outer plants `setback` from every edge. NaN where the setbacks meet or the
 * spacing is not above zero.
 */
export function squareGrid(length: number, width: number, spacing: number, setback: number): GridCount {
  return gridCount(length, width, spacing, setback, false);
}

/**
 * A triangular grid of one spacing every way: rows spacing x sqrt(3) / 2 apart, every second one shifted by half a
 * spacing. It holds 15.5 % more than a square grid without edges, and on a narrow bed often no more at all.
 */
export function triangularGrid(length: number, width: number, spacing: number, setback: number): GridCount {
  return gridCount(length, width, spacing, setback, true);
}

/** Places a triangular grid gains over a square one on this bed; often zero or below on a narrow bed. */
export function triangularGain(length: number, width: number, spacing: number, setback: number): number {
  return (
    triangularGrid(length, width, spacing, setback).stations - squareGrid(length, width, spacing, setback).stations
  );
}

/**
 * Every planting place of a layout, row after row, as many as `patternStations` counts. Rows stand evenly across the
 * width; the first place of a row is half a spacing from the end, or a whole one in a shifted row.
 */
export function stationPositions(layout: Layout): readonly Station[] {
  const { length, width, spacing, rows, pattern } = layout;
  if (!isLayable(length, spacing, rows)) return [];
  const places: Station[] = [];
  const whole = tolerantFloor(rows);
  for (let row = 0; row < whole; row += 1) {
    const shifted = pattern === 'offset' && row % 2 === 1;
    const y = ((row + HALF) * width) / whole;
    const first = shifted ? spacing : spacing * HALF;
    const count = placesInRow(length, spacing, shifted);
    for (let place = 0; place < count; place += 1) places.push({ x: first + place * spacing, y });
  }
  return places;
}

/** Distance from a place to its nearest neighbour. NaN where a spacing is not above zero. */
export function nearestNeighbour(spacing: number, rowSpacing: number, pattern: Pattern): number {
  if (!(spacing > 0) || !(rowSpacing > 0)) return Number.NaN;
  if (pattern === 'square') return Math.min(spacing, rowSpacing);
  return Math.min(spacing, Math.hypot(rowSpacing, spacing * HALF), 2 * rowSpacing);
}

/** Distance between rows that stand evenly across a bed. NaN without rows. */
export function rowSpacing(width: number, rows: number): number {
  return rows > 0 && width >= 0 ? width / rows : Number.NaN;
}

/** Plants per area of bed, from places, plants a place and the bed's area. NaN where the area is not above zero. */
export function plantDensity(placeCount: number, plantsPerPlace: number, area: number): number {
  return area > 0 && placeCount >= 0 && plantsPerPlace >= 0 ? (placeCount * plantsPerPlace) / area : Number.NaN;
}

/** Plants on an area without edges, area / (row spacing x in-row spacing), not rounded: 1 acre at 4 x 7 in is 224 022.857. */
export function plantsOnArea(area: number, between: number, within: number): number {
  return area >= 0 && between > 0 && within > 0 ? area / (between * within) : Number.NaN;
}

/**
 * Plants per area of a drilled stand: seeds that come up, over bed width (or bed centres) x in-row spacing of each row.
 * `emerged` is germination x field factor, a share.
 */
export function drilledDensity(emerged: number, rows: number, bedWidth: number, within: number): number {
  return emerged >= 0 && rows >= 0 && bedWidth > 0 && within > 0 ? (emerged * rows) / (bedWidth * within) : Number.NaN;
}

/** Longer spacing over shorter, 1 where square. NaN where a spacing is not above zero. */
export function rectangularity(between: number, within: number): number {
  return between > 0 && within > 0 ? Math.max(between, within) / Math.min(between, within) : Number.NaN;
}

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Stations',
    gives: 'planting places on a bed with edges, square or offset',
    equation: 'rows x floor(length / spacing); a shifted row keeps floor((length - spacing / 2) / spacing)',
    range: 'any bed',
    source: 'Geometry; half a spacing kept free at each end is common practice',
    standing: 'common practice',
  },
  {
    model: 'Plants per acre',
    gives: 'plants on an area without edges',
    equation: 'area / (row spacing x in-row spacing)',
    range: 'any spacing',
    source:
      'L. H. Bailey, The Farm and Garden Rule-Book, table of plants to the acre (its figures are cut off, not rounded)',
    standing: 'published',
  },
];
