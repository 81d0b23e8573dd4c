// Rotation: how many years a bed stays clear of a family before it comes back, and the published clear years disease by
// disease. Years are calendar years of harvest. Calls nothing.

import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

export const ROTATION_LIMITS = {
  clearYears: { min: 0, max: 20, why: 'rotations are counted in years, up to twenty for white rot of alliums' },
} satisfies Limits;

/** Years without a susceptible crop that help against a disease; `most` where a span is printed. */
export interface ClearYears {
  readonly family: string;
  readonly crops: string;
  readonly disease: string;
  readonly years: number;
  readonly most?: number;
}

/** Source of every row: University of Connecticut Integrated Pest Management, rotation periods for vegetable diseases. */
export const DISEASE_CLEAR_YEARS: readonly ClearYears[] = [
  { family: 'Fabaceae', crops: 'bean', disease: 'anthracnose', years: 2 },
  { family: 'Fabaceae', crops: 'bean', disease: 'bacterial blight', years: 2 },
  { family: 'Amaranthaceae', crops: 'beet', disease: 'Cercospora leaf spot', years: 3 },
  { family: 'Brassicaceae', crops: 'cabbage and its kin', disease: 'clubroot', years: 7 },
  { family: 'Brassicaceae', crops: 'cabbage and its kin', disease: 'blackleg', years: 3, most: 4 },
  { family: 'Brassicaceae', crops: 'cabbage and its kin', disease: 'black rot', years: 2, most: 3 },
  { family: 'Poaceae', crops: 'sweet corn', disease: 'yellow leaf blight', years: 3 },
  { family: 'Cucurbitaceae', crops: 'cucumber', disease: 'scab and leaf spot', years: 2 },
  { family: 'Solanaceae', crops: 'eggplant', disease: 'Verticillium wilt', years: 4 },
  { family: 'Solanaceae', crops: 'eggplant', disease: 'fruit rots', years: 3 },
  { family: 'Asteraceae', crops: 'lettuce', disease: 'bottom rot and drop', years: 3 },
];

/** Years to keep alliums apart where nothing worse is in the ground: three clear years. Common practice. */
export const ALLIUM_CLEAR_YEARS = 3;

/** The most clear years that any published disease of a family asks for; undefined for a family without a row. */
export function longestClearYears(family: string): number | undefined {
  const years = DISEASE_CLEAR_YEARS.filter((row) => row.family === family).map((row) => row.most ?? row.years);
  return years.length > 0 ? Math.max(...years) : undefined;
}

/** Whole years between two crops in which the bed was clear: 2024 and 2028 leave three. */
export function clearYearsBetween(earlier: number, later: number): number {
  return Math.max(0, later - earlier - 1);
}

/** The first year a family may stand on a bed again. */
export function earliestReturn(lastGrown: number, clearYears: number): number {
  return lastGrown + Math.ceil(clearYears) + 1;
}

/** Families that stood on a bed in a year, with commas between where there were several. */
export interface PastCrop {
  readonly family: string;
  readonly year: number;
}

/** A rotation kept or broken: the last year the family stood there, the clear years since, those wanted, the year to wait for. */
export interface RotationVerdict {
  readonly kept: boolean;
  readonly lastGrown: number;
  readonly clearYears: number;
  readonly wanted: number;
  readonly earliest: number;
}

function stoodThen(families: string, family: string): boolean {
  return families.split(',').some((one) => one.trim() === family);
}

/**
 * Whether a family may stand on a bed in `year`, from what stood there before. Undefined where the family never did, which
 * breaks nothing; crops of the same year and later are left out, being this season's own.
 */
export function rotationVerdict(
  history: readonly PastCrop[],
  family: string,
  year: number,
  wanted: number,
): RotationVerdict | undefined {
  const years = history.filter((crop) => stoodThen(crop.family, family) && crop.year < year).map((crop) => crop.year);
  if (years.length === 0) return undefined;
  const lastGrown = Math.max(...years);
  const earliest = earliestReturn(lastGrown, wanted);
  return { kept: year >= earliest, lastGrown, clearYears: clearYearsBetween(lastGrown, year), wanted, earliest };
}

/** A broken rotation as a grower reads it; empty where it is kept. */
export function rotationSentence(family: string, verdict: RotationVerdict): string {
  if (verdict.kept) return '';
  const clear = verdict.clearYears === 1 ? '1 clear year' : `${verdict.clearYears} clear years`;
  return `${family} stood here in ${verdict.lastGrown}: ${clear} since, ${verdict.wanted} wanted. Choose another bed, or wait until ${verdict.earliest}.`;
}

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Rotation',
    gives: 'whether a family may return to a bed',
    equation: 'first year = last year + clear years + 1',
    range: 'helps against diseases that outlast one year in soil or residue; some outlast any rotation',
    source:
      'University of Connecticut Integrated Pest Management, rotation periods suggested to help control vegetable diseases; alliums three clear years, common practice',
    standing: 'published',
  },
];
