// Every model's entry for the Sources page, in the order of a grower's season. Read by the sheets through engine/index.ts;
// gathers the lists that stand beside the models.

import { SOURCES as bestSpacing } from './best-spacing.ts';
import { SOURCES as bulbLight } from './bulb-light.ts';
import { SOURCES as bulbing } from './bulbing.ts';
import { SOURCES as climate } from './climate.ts';
import { SOURCES as cold } from './cold-of-year.ts';
import { SOURCES as courseOfYear } from './course-of-year.ts';
import { SOURCES as curing } from './curing.ts';
import { SOURCES as dayLength } from './day-length.ts';
import { SOURCES as densityFit } from './density-fit.ts';
import { SOURCES as emergence } from './emergence.ts';
import { SOURCES as fitIntervals } from './fit-intervals.ts';
import { SOURCES as frost } from './frost.ts';
import { SOURCES as frostSeason } from './frost-season.ts';
import { SOURCES as germination } from './germination.ts';
import { SOURCES as germinationStandards } from './germination-standards.ts';
import { SOURCES as grades } from './grades.ts';
import { SOURCES as harvest } from './harvest.ts';
import { SOURCES as harvestCurve } from './harvest-curve.ts';
import { SOURCES as leafGrowth } from './leaf-growth.ts';
import { SOURCES as learning } from './learning.ts';
import { SOURCES as monthlyMeans } from './monthly-means.ts';
import { SOURCES as nutrients } from './nutrients.ts';
import { SOURCES as plantingSeason } from './planting-season.ts';
import { SOURCES as propagationVolume } from './propagation-volume.ts';
import { SOURCES as referenceEvapotranspiration } from './reference-evapotranspiration.ts';
import { SOURCES as rotation } from './rotation.ts';
import { SOURCES as seedLife } from './seed-life.ts';
import { SOURCES as seedMoisture } from './seed-moisture.ts';
import { SOURCES as seedPacks } from './seed-packs.ts';
import { SOURCES as seedViability } from './seed-viability.ts';
import { SOURCES as sellingFromStore } from './selling-from-store.ts';
import { SOURCES as soilWater } from './soil-water.ts';
import type { ModelSource } from './source.ts';
import { SOURCES as spacing } from './spacing.ts';
import { SOURCES as stand } from './stand.ts';
import { SOURCES as storage } from './storage.ts';
import { SOURCES as suitability } from './suitability.ts';
import { SOURCES as thermalTime } from './thermal-time.ts';
import { SOURCES as topsDown } from './tops-down.ts';
import { SOURCES as water } from './water.ts';
import { SOURCES as yieldDensity } from './yield-density.ts';

/** One entry a model. */
export const MODEL_SOURCES: readonly ModelSource[] = [
  ...dayLength,
  ...suitability,
  ...climate,
  ...monthlyMeans,
  ...courseOfYear,
  ...frost,
  ...frostSeason,
  ...plantingSeason,
  ...thermalTime,
  ...seedMoisture,
  ...seedViability,
  ...seedLife,
  ...germinationStandards,
  ...germination,
  ...emergence,
  ...seedPacks,
  ...stand,
  ...propagationVolume,
  ...spacing,
  ...yieldDensity,
  ...densityFit,
  ...fitIntervals,
  ...bestSpacing,
  ...grades,
  ...bulbing,
  ...leafGrowth,
  ...bulbLight,
  ...cold,
  ...topsDown,
  ...harvest,
  ...harvestCurve,
  ...curing,
  ...storage,
  ...sellingFromStore,
  ...referenceEvapotranspiration,
  ...water,
  ...nutrients,
  ...rotation,
  ...soilWater,
  ...learning,
];
