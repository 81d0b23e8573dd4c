// Varieties, the warmth each needs from the bed to its first harvest, with its early and its late: published degree-days where
// the crop has them, else the days to maturity at the crop's best growing temperatures. varieties.ts puts the parts together.

import { TEMPERATE_SUMMER } from '../engine/index.ts';
import {
  computed,
  DEGREE_DAYS,
  group,
  quantity,
  SHARE,
  TEMPERATURE,
  TEXT,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';
import { ownFirst } from './own-figures.ts';

/** A sum of the crop, for a variety that is so many days quicker or slower than the crop. */
function warmth(published: string, days: string, toEmergence: string): string {
  return `IF(ISBLANK([Crop].[${published}]); MAX(0 days; [${days}]${toEmergence}) * [Growth a day];
    [Crop].[${published}] * IF(ISBLANK([Crop].[${days}]); 1; [${days}] / [Crop].[${days}]))`;
}

/** Of the likely warmth or days; a variety with days of its own is told within a tenth either way. */
function end(which: 'low' | 'high', published: string, days: string): string {
  const tenth = which === 'low' ? '90%' : '110%';
  return `IF([${days}] <> [Crop].[${days}]; ${tenth};
    IF(ISBLANK([Crop].[${published} ${which}]); IF(ISBLANK([Crop].[${days} ${which}]); ${tenth}; [Crop].[${days} ${which}] / [Crop].[${days}]);
      [Crop].[${published} ${which}] / [Crop].[${published}]))`;
}

const A_TENTH =
  "By the crop's range; a variety with days of its own within a tenth, as melons in fifteen fields (Soto-Ortiz et al., University of Arizona).";

export const WARMTH_COLUMNS = group(
  'Warmth to harvest',
  computed(
    'comes-again-in-spring',
    'Comes again in spring',
    YES_OR_NO,
    'IF(ISBLANK([Crop].[Years to first harvest]); FALSE; [Crop].[Years to first harvest] > 0)',
    { note: 'Stands for years; first cut when it grows again.' },
  ),
  computed(
    'growth-mean',
    'Growth mean',
    TEMPERATURE,
    `IF([Comes again in spring]; [Crop].[Growth minimum] + ([Crop].[Growth best from] - [Crop].[Growth minimum]) / 2;
      MIN(${TEMPERATE_SUMMER} degC; [Crop].[Growth best from] + ([Crop].[Growth best to] - [Crop].[Growth best from]) / 2))`,
    {
      note: `At which days to maturity hold: the middle of what the crop likes best, ${TEMPERATE_SUMMER} degC at most, a summer where such days are told; for what comes again in spring its cool.`,
      decimals: 1,
    },
  ),
  computed('growth-a-day', 'Growth a day', quantity('Fdeg', 'Cdeg'), '[Growth mean] - [Crop].[Degree-day base]', {
    note: 'Degree-days of one day at the growth mean.',
    decimals: 1,
  }),
  computed(
    'warmth-by-the-library',
    'Warmth by the library',
    DEGREE_DAYS,
    warmth('Warmth to harvest', 'Days to maturity', ''),
    { note: 'From planting out.', decimals: 0 },
  ),
  computed(
    'warmth-direct-by-the-library',
    'Warmth direct by the library',
    DEGREE_DAYS,
    warmth('Warmth to harvest direct', 'Days to maturity direct', ' - [Days to emergence]'),
    { note: 'From emergence in the bed.', decimals: 0 },
  ),
  withDefault(
    'warmth-to-harvest',
    'Warmth to harvest',
    DEGREE_DAYS,
    ownFirst('Own warmth to harvest', '[Warmth by the library]'),
    {
      note: "From planting out to first harvest, above the crop's degree-day base and below its ceiling.",
      decimals: 0,
      least: 0,
    },
  ),
  withDefault(
    'warmth-to-harvest-direct',
    'Warmth to harvest direct',
    DEGREE_DAYS,
    ownFirst('Own warmth to harvest direct', '[Warmth direct by the library]'),
    { note: 'From emergence to first harvest, sown in the bed.', decimals: 0, least: 0 },
  ),
  computed(
    'warmth-from',
    'Warmth from',
    TEXT,
    `IF(ISBLANK([Crop].[Warmth to harvest]); IF(ISBLANK([Crop].[Warmth to harvest direct]); "days, scaled by warmth"; "degree-days, sown in the bed; days for plants");
      IF(ISBLANK([Crop].[Warmth to harvest direct]); "degree-days for plants; days, sown in the bed"; "degree-days"))`,
    { note: 'Published degree-days, or days to maturity taken at the growth mean and stretched where it is cooler.' },
  ),
  computed('early-share', 'Early share', SHARE, end('low', 'Warmth to harvest', 'Days to maturity'), {
    note: A_TENTH,
    decimals: 0,
  }),
  computed('late-share', 'Late share', SHARE, end('high', 'Warmth to harvest', 'Days to maturity'), { decimals: 0 }),
  computed(
    'early-share-direct',
    'Early share direct',
    SHARE,
    end('low', 'Warmth to harvest direct', 'Days to maturity direct'),
    {
      decimals: 0,
    },
  ),
  computed(
    'late-share-direct',
    'Late share direct',
    SHARE,
    end('high', 'Warmth to harvest direct', 'Days to maturity direct'),
    {
      decimals: 0,
    },
  ),
);
