// Every published check of the project, one list for the reference test and the printed table. A new file of checks takes
// a line here; the reference test says so if it is forgotten.
import { checks as afterHarvest } from './after-harvest.checks.ts';
import { checks as calendars } from './calendars.checks.ts';
import type { Check } from './check.ts';
import { checks as climate } from './climate.checks.ts';
import { checks as dayLength } from './day-length.checks.ts';
import { checks as distributions } from './distributions.checks.ts';
import { checks as grades } from './grades.checks.ts';
import { checks as harvest } from './harvest.checks.ts';
import { checks as nutrients } from './nutrients.checks.ts';
import { checks as onion } from './onion.checks.ts';
import { checks as propagationVolume } from './propagation-volume.checks.ts';
import { checks as seed } from './seed.checks.ts';
import { checks as soilWater } from './soil-water.checks.ts';
import { checks as spacing } from './spacing.checks.ts';
import { checks as water } from './water.checks.ts';
import { checks as yieldDensity } from './yield-density.checks.ts';

/** Checks by the file they stand in, without its ending. */
export const checksByFile: Readonly<Record<string, readonly Check[]>> = {
  'after-harvest': afterHarvest,
  calendars,
  climate,
  'day-length': dayLength,
  distributions,
  grades,
  harvest,
  nutrients,
  onion,
  'propagation-volume': propagationVolume,
  seed,
  'soil-water': soilWater,
  spacing,
  water,
  'yield-density': yieldDensity,
};

export const allChecks: readonly Check[] = Object.values(checksByFile).flat();

/** Whether a computed figure lies within the tolerance of the published one; no figure never does. */
export function passes(check: Check, computed: number): boolean {
  // A hair of slack keeps a difference that is equal to the tolerance on paper from failing in binary.
  return Math.abs(computed - check.published) <= check.tolerance * (1 + 1e-9);
}
