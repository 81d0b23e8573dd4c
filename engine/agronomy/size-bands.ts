// Size bands: the grower's own set of names and limits, the checks that make it one (sorted, no overlap), and the official
// size names, which overlap and so cannot sort a crop. Limits are in metres. Calls grades.ts.

import { gradeMassShare, gradeShare } from './grades.ts';

/** A band takes diameters from `from` up to, not including, `to`; an open end is -Infinity or Infinity. */
export interface SizeBand {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

const INCH = 0.0254;

/**
 * Bands to start from, in the trade's names; a grower edits them. Limits: medium 2 1/4 to 3 in, jumbo 3 to 4 in, colossal
 * above 4 in as in the Malheur spacing trials (Shock et al.); nothing below 1 1/2 in, the default minimum of 7 CFR 51.3198.
 */
export const ONION_BANDS: readonly SizeBand[] = [
  { name: 'Under size', from: Number.NEGATIVE_INFINITY, to: 1.5 * INCH },
  { name: 'Small', from: 1.5 * INCH, to: 2.25 * INCH },
  { name: 'Medium', from: 2.25 * INCH, to: 3 * INCH },
  { name: 'Jumbo', from: 3 * INCH, to: 4 * INCH },
  { name: 'Colossal', from: 4 * INCH, to: Number.POSITIVE_INFINITY },
];

/** United States size names for onions, 7 CFR 51.3198. They overlap: a 2 1/8 in onion is Small, Repacker and Medium. */
export const US_ONION_SIZES: readonly SizeBand[] = [
  { name: 'Small', from: 1 * INCH, to: 2.25 * INCH },
  { name: 'Repacker/Prepacker', from: 1.75 * INCH, to: 3 * INCH },
  { name: 'Medium', from: 2 * INCH, to: 3.25 * INCH },
  { name: 'Large or Jumbo', from: 3 * INCH, to: Number.POSITIVE_INFINITY },
  { name: 'Colossal', from: 3.75 * INCH, to: Number.POSITIVE_INFINITY },
];

/** Why a set of bands cannot sort a crop. */
export type BandFault =
  | { readonly kind: 'empty'; readonly band: string }
  | { readonly kind: 'overlap'; readonly band: string; readonly other: string };

/** Every fault of a set of bands: a band whose upper limit is not above its lower, and each pair that overlaps. */
export function bandFaults(bands: readonly SizeBand[]): readonly BandFault[] {
  const faults: BandFault[] = [];
  bands.forEach((band, index) => {
    if (!(band.to > band.from)) faults.push({ kind: 'empty', band: band.name });
    for (const other of bands.slice(index + 1)) {
      if (band.from < other.to && other.from < band.to) {
        faults.push({ kind: 'overlap', band: band.name, other: other.name });
      }
    }
  });
  return faults;
}

/** A fault as a grower reads it. */
export function bandFaultSentence(fault: BandFault): string {
  if (fault.kind === 'empty') return `${fault.band}: the upper limit must be above the lower one.`;
  return `${fault.band} and ${fault.other} overlap, so a bulb could be counted twice. Let one end where the other begins.`;
}

export interface BandShare {
  readonly band: SizeBand;
  readonly byNumber: number;
  readonly byMass: number;
}

/** Each band's share of a crop with a mean diameter and coefficient of variation. Shares are NaN as in `gradeShare`. */
export function bandShares(mean: number, spread: number, bands: readonly SizeBand[]): readonly BandShare[] {
  return bands.map((band) => ({
    band,
    byNumber: gradeShare(mean, spread, band.from, band.to),
    byMass: gradeMassShare(mean, spread, band.from, band.to),
  }));
}

/**
 * Greatest spread of diameters in one pack whose smallest bulb is `smallest`, UNECE standard FFV-25 (second hand): 5 mm
 * from 10 mm, 15 from 20, 20 from 40, 30 from 70. NaN below the standard's minimum of 10 mm.
 */
export function packSpread(smallest: number): number {
  if (!(smallest >= 0.01)) return Number.NaN;
  if (smallest < 0.02) return 0.005;
  if (smallest < 0.04) return 0.015;
  return smallest < 0.07 ? 0.02 : 0.03;
}
