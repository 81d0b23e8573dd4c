// Every fact of the reference checks, one list for the reference test, the printed table and the README. A new file of checks takes a
// line here; the reference test says so if it is forgotten.
import { facts as afterHarvest } from './after-harvest.checks.ts';
import { facts as calendars } from './calendars.checks.ts';
import type { Fact } from './check.ts';
import { facts as climate } from './climate.checks.ts';
import { facts as dayLength } from './day-length.checks.ts';
import { facts as distributions } from './distributions.checks.ts';
import { facts as emergence } from './emergence.checks.ts';
import { facts as frostDates } from './frost-dates.checks.ts';
import { facts as garlic } from './garlic.checks.ts';
import { facts as grades } from './grades.checks.ts';
import { facts as harvest } from './harvest.checks.ts';
import { facts as maturity } from './maturity.checks.ts';
import { facts as nutrients } from './nutrients.checks.ts';
import { facts as onion } from './onion.checks.ts';
import { facts as propagationVolume } from './propagation-volume.checks.ts';
import { facts as seed } from './seed.checks.ts';
import { facts as seedAgeing } from './seed-ageing.checks.ts';
import { facts as soilWater } from './soil-water.checks.ts';
import { facts as spacing } from './spacing.checks.ts';
import { facts as storageLife } from './storage-life.checks.ts';
import { facts as successions } from './successions.checks.ts';
import { facts as water } from './water.checks.ts';
import { facts as work } from './work.checks.ts';
import { facts as yieldDensity } from './yield-density.checks.ts';
import { facts as yields } from './yields.checks.ts';

/** Facts by the file they stand in, without its ending. */
export const factsByFile: Readonly<Record<string, readonly Fact[]>> = {
  'after-harvest': afterHarvest,
  calendars,
  climate,
  'day-length': dayLength,
  distributions,
  'frost-dates': frostDates,
  garlic,
  grades,
  harvest,
  nutrients,
  onion,
  'propagation-volume': propagationVolume,
  seed,
  'soil-water': soilWater,
  spacing,
  successions,
  water,
  emergence,
  maturity,
  'seed-ageing': seedAgeing,
  'storage-life': storageLife,
  yields,
  work,
  'yield-density': yieldDensity,
};

export const allFacts: readonly Fact[] = Object.values(factsByFile).flat();
