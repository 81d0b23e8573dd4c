// The propagation house in numbers: blocks that fit a tray, trays to fill, mix to make and bench to clear. Lengths, areas
// and volumes are in one set of units (m, m2, m3 in the workbook). Calls values/tolerance.ts alone.

import { tolerantCeil, tolerantFloor } from '../values/tolerance.ts';
import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

export const PROPAGATION_LIMITS = {
  compaction: { min: 1, max: 4, why: 'loose mix over pressed: 1 to 3 in published figures' },
} satisfies Limits;

const INCH = 0.0254;

/** A tray format as its makers print it. Cell volume is the box around the cell, an upper bound since cells taper. */
export interface TrayFormat {
  readonly name: string;
  readonly along: number;
  readonly across: number;
  readonly cellWidth: number;
  readonly cellDepth: number;
}

/** Printed counts and cell sizes of the standard 11 x 21 in tray. The counts are to be trusted before any geometry. */
export const TRAY_FORMATS: readonly TrayFormat[] = [
  { name: '50 cells', along: 10, across: 5, cellWidth: 1.75 * INCH, cellDepth: 2.5 * INCH },
  { name: '72 cells', along: 12, across: 6, cellWidth: 1.5 * INCH, cellDepth: 2.25 * INCH },
  { name: '128 cells', along: 16, across: 8, cellWidth: 1.125 * INCH, cellDepth: 1.5 * INCH },
];

/** Inside of the standard tray, 10.5 x 21 in (University of Maryland Extension). */
export const STANDARD_TRAY = { length: 21 * INCH, width: 10.5 * INCH } as const;

/** Cells of a tray format. */
export function cellCount(format: TrayFormat): number {
  return format.along * format.across;
}

/**
 * Square blocks that fit a tray side by side, with a gap between blocks but none at the edges. A published count for a
 * block size goes before this. NaN for a block not above zero or a negative gap.
 */
export function blocksPerTray(trayLength: number, trayWidth: number, block: number, gap: number): number {
  if (!(block > 0) || !(gap >= 0) || !(trayLength >= 0) || !(trayWidth >= 0)) return Number.NaN;
  const along = (side: number): number => tolerantFloor((side + gap) / (block + gap));
  return along(trayLength) * along(trayWidth);
}

/** Trays or other containers for a number of things, the last one perhaps part filled. NaN where none fit. */
export function containersFor(count: number, perContainer: number): number {
  return count >= 0 && perContainer > 0 ? tolerantCeil(count / perContainer) : Number.NaN;
}

/** Volume of a block or box. */
export function boxVolume(width: number, breadth: number, depth: number): number {
  return width >= 0 && breadth >= 0 && depth >= 0 ? width * breadth * depth : Number.NaN;
}

/** Volume of a square cell that tapers from `top` to `bottom` across: the frustum of a pyramid. */
export function taperedVolume(top: number, bottom: number, depth: number): number {
  return top >= 0 && bottom >= 0 && depth >= 0
    ? (depth * (top * top + top * bottom + bottom * bottom)) / 3
    : Number.NaN;
}

/**
 * Loose mix for a number of blocks or cells: number x volume of one x compaction, the loose volume that presses into one.
 * Published figures run from about 1.0 to 3, so compaction is the grower's own; 1 is filling without pressing.
 */
export function mixVolume(count: number, each: number, compaction: number): number {
  return count >= 0 && each >= 0 && compaction >= 1 ? count * each * compaction : Number.NaN;
}

/** The compaction a grower measured: loose mix used over the volume it pressed into. */
export function measuredCompaction(looseVolume: number, count: number, each: number): number {
  return looseVolume > 0 && count > 0 && each > 0 ? looseVolume / (count * each) : Number.NaN;
}

/** A part of a recipe given by volume: its share of the whole mix. */
export interface MixPart {
  readonly name: string;
  readonly parts: number;
}

/** The volume of each part in a mix of a given volume. Parts shrink together when mixed; measure the parts, not the sum. */
export function mixParts(
  volume: number,
  recipe: readonly MixPart[],
): readonly { readonly name: string; readonly volume: number }[] {
  const whole = recipe.reduce((sum, part) => sum + part.parts, 0);
  return recipe.map(({ name, parts }) => ({ name, volume: whole > 0 ? (volume * parts) / whole : Number.NaN }));
}

/** Bench that a number of trays takes, edge to edge. */
export function benchArea(trays: number, trayLength: number, trayWidth: number): number {
  return trays >= 0 && trayLength > 0 && trayWidth > 0 ? trays * trayLength * trayWidth : Number.NaN;
}

/** Bench in use on each of a run of periods: the area of every batch that stands in it. Ends are not counted. */
export interface BenchBatch {
  readonly from: number;
  readonly until: number;
  readonly area: number;
}

/** Area taken on each day or week of [first, first + count): batches stand from `from` up to, not including, `until`. */
export function benchUse(
  batches: readonly BenchBatch[],
  first: number,
  step: number,
  count: number,
): readonly number[] {
  return Array.from({ length: count }, (_, index) => {
    const start = first + index * step;
    return batches.reduce(
      (sum, batch) => (batch.from < start + step && batch.until > start ? sum + batch.area : sum),
      0,
    );
  });
}

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Trays, blocks and mix',
    gives: 'trays, loose mix and bench for a number of blocks',
    equation: 'count x block volume x compaction; trays rounded up; bench = trays x tray area',
    range: 'compaction 1 to 3 in published figures, which disagree: measure your own',
    source: 'Geometry and printed tray formats; tray inside from University of Maryland Extension',
    standing: 'common practice',
  },
];
