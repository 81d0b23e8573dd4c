// Which spacing serves best on one bed: every candidate worked out with its edges, crowding, squareness and size grades, and
// the one picked that gives the most marketable mass, the most money or the most bulbs of one band. Units as in the files it
// calls (m, kg and currency in the workbook). Calls spacing.ts, yield-density.ts, grades.ts and size-bands.ts.

import { meanDiameterOfMass } from './grades.ts';
import type { Limits } from './limits.ts';
import { bandShares, type SizeBand } from './size-bands.ts';
import type { ModelSource } from './source.ts';
import { type Pattern, patternStations, plantDensity, rectangularity, rowSpacing } from './spacing.ts';
import { standPlantMass } from './yield-density.ts';

/** A size band with what it fetches; a band with no price is not sold, and counts as nothing marketable. */
export interface PricedBand extends SizeBand {
  /** Money per mass; blank where the band is not sold. */
  readonly price?: number;
}

export interface Candidate {
  readonly spacing: number;
  readonly rows: number;
}

/** A bed and the crop on it. */
export interface BedCrop {
  readonly length: number;
  readonly width: number;
  readonly pattern: Pattern;
  /** Plants that stand at a place, gaps counted in. */
  readonly plantsPerStation: number;
  readonly isolated: number;
  readonly ceiling: number;
  readonly squarenessLoss?: number;
  readonly clumpFactor?: number;
  /** Coefficient of variation of diameters, a share. */
  readonly spread: number;
  /** Mass over diameter cubed. */
  readonly shape: number;
  /** Share of the bands' mass that is fit for sale (sound, single, not bolted); blank is all of it. */
  readonly sound?: number;
  /** Money spent on each place (block, mix, setting out); blank is none. */
  readonly costPerStation?: number;
  readonly bands: readonly PricedBand[];
}

export interface BandYield {
  readonly name: string;
  readonly shareByNumber: number;
  readonly shareByMass: number;
  readonly number: number;
  readonly mass: number;
  readonly money: number;
}

export interface SpacingResult {
  readonly spacing: number;
  readonly rows: number;
  readonly rowSpacing: number;
  readonly stations: number;
  readonly density: number;
  readonly rectangularity: number;
  readonly meanMass: number;
  readonly meanDiameter: number;
  /** Whole yield of the bed, and per area of bed. */
  readonly yield: number;
  readonly yieldPerArea: number;
  readonly bands: readonly BandYield[];
  readonly marketableMass: number;
  /** Takings of the sold bands less the cost of the places. */
  readonly money: number;
}

/** What is wanted of a bed. */
export type Goal =
  | { readonly most: 'mass' }
  | { readonly most: 'money' }
  | { readonly most: 'bulbs'; readonly band: string };

export const BEST_SPACING_LIMITS = {
  sound: { min: 0, max: 1, why: 'a share of the crop' },
  plantsPerStation: { min: 0, why: 'plants are counted' },
} satisfies Limits;

function resultOf(crop: BedCrop, { spacing, rows }: Candidate): SpacingResult {
  const between = rowSpacing(crop.width, rows);
  const area = crop.length * crop.width;
  const places = patternStations({ length: crop.length, width: crop.width, spacing, rows, pattern: crop.pattern });
  const plants = places * crop.plantsPerStation;
  const density = plantDensity(places, crop.plantsPerStation, area);
  const squareness = rectangularity(between, spacing);
  const meanMass = standPlantMass({ ...crop, density, rectangularity: squareness });
  const meanDiameter = meanDiameterOfMass(meanMass, crop.spread, crop.shape);
  const total = plants * meanMass;
  const sound = crop.sound ?? 1;
  const bands = bandShares(meanDiameter, crop.spread, crop.bands).map(
    ({ band, byNumber, byMass }, index): BandYield => {
      const mass = total * byMass * sound;
      const price = crop.bands[index]?.price;
      return {
        name: band.name,
        shareByNumber: byNumber,
        shareByMass: byMass,
        number: plants * byNumber * sound,
        mass,
        money: price === undefined ? 0 : mass * price,
      };
    },
  );
  const sold = bands.filter((_, index) => crop.bands[index]?.price !== undefined);
  return {
    spacing,
    rows,
    rowSpacing: between,
    stations: places,
    density,
    rectangularity: squareness,
    meanMass,
    meanDiameter,
    yield: total,
    yieldPerArea: total / area,
    bands,
    marketableMass: sold.reduce((sum, band) => sum + band.mass, 0),
    money: sold.reduce((sum, band) => sum + band.money, 0) - places * (crop.costPerStation ?? 0),
  };
}

/** Every candidate worked out, in the order given. A candidate that cannot be laid out has NaN in place of figures. */
export function spacingCurve(crop: BedCrop, candidates: readonly Candidate[]): readonly SpacingResult[] {
  return candidates.map((candidate) => resultOf(crop, candidate));
}

/** Every pairing of spacings and row counts, to try in `spacingCurve`. */
export function candidatesOf(spacings: readonly number[], rowCounts: readonly number[]): readonly Candidate[] {
  return rowCounts.flatMap((rows) => spacings.map((spacing) => ({ spacing, rows })));
}

function score(result: SpacingResult, goal: Goal): number {
  switch (goal.most) {
    case 'mass':
      return result.marketableMass;
    case 'money':
      return result.money;
    case 'bulbs':
      return result.bands.find((band) => band.name === goal.band)?.number ?? Number.NaN;
  }
}

/**
 * The candidate of a curve that serves a goal best; of equals, the one with fewest places, which takes least seed and work.
 * Undefined where no candidate has an answer, as when the band named is not among the bands.
 */
export function bestSpacing(curve: readonly SpacingResult[], goal: Goal): SpacingResult | undefined {
  let best: SpacingResult | undefined;
  for (const result of curve) {
    const value = score(result, goal);
    if (Number.isNaN(value)) continue;
    const lead = best === undefined ? 0 : value - score(best, goal);
    if (best === undefined || lead > 0 || (lead === 0 && result.stations < best.stations)) best = result;
  }
  return best;
}

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Best spacing',
    gives: 'yield, sizes and takings of one bed at each spacing, and the spacing that serves best',
    equation: 'places on the bed, then crowding and squareness, then size bands by mass and price',
    range: 'as the yield-density and grade models it joins; only the spacings tried',
    source: 'Graded yield from a diameter distribution: J. Agric. Sci. Camb.; Chapman 1981, J. Agric. Sci. Camb.',
    standing: 'published',
  },
];
