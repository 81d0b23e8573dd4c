// Every fact of the reference checks, one list for the reference test, the printed table and the README. A new file of checks takes a
// line here; the reference test says so if it is forgotten.
import { facts as afterHarvest } from './after-harvest.checks.ts';
import type { Fact } from './check.ts';
import { facts as climate } from './climate.checks.ts';
import { facts as dayLength } from './day-length.checks.ts';
import { facts as distributions } from './distributions.checks.ts';
import { facts as grades } from './grades.checks.ts';
import { facts as nutrients } from './nutrients.checks.ts';
import { facts as onion } from './onion.checks.ts';
import { facts as propagationVolume } from './propagation-volume.checks.ts';
import { facts as seed } from './seed.checks.ts';
import { facts as soilWater } from './soil-water.checks.ts';
import { facts as spacing } from './spacing.checks.ts';
import { facts as successions } from './successions.checks.ts';
import { facts as water } from './water.checks.ts';
import { facts as yieldDensity } from './yield-density.checks.ts';

/** Facts by the file they stand in, without its ending. */
export const factsByFile: Readonly<Record<string, readonly Fact[]>> = {
  'after-harvest': afterHarvest,
  climate,
  'day-length': dayLength,
  distributions,
  grades,
  nutrients,
  onion,
  'propagation-volume': propagationVolume,
  seed,
  'soil-water': soilWater,
  spacing,
  successions,
  water,
  'yield-density': yieldDensity,
};

export const allFacts: readonly Fact[] = Object.values(factsByFile).flat();
