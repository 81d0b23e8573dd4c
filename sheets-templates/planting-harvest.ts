// Plantings, third part: when an onion bulbs and comes in, when other crops do, when the bed is free, and what curing
// leaves. plantings.ts puts the parts together. Where Climate is empty, days stand in for warmth.

import {
  choice,
  computed,
  DATE,
  DEGREE_DAYS,
  group,
  MASS,
  PLAIN,
  PLANT_MASS,
  quantity,
  TEXT,
  withDefault,
} from './authoring.ts';

const LEAF_AREA = quantity('in2', 'cm2');
const DAYS_OF_CLIMATE = 'Climate[Day]; Climate[Mean]';

const THERMAL_DATE = `WARMTHDATE([Planted out]; [Thermal time to come]; 5 degC; 25 degC; ${DAYS_OF_CLIMATE})`;
const TOPS_DATE = `WARMTHDATE([Bulbing starts]; [Variety].[Thermal time to tops down]; 5 degC; 25 degC; ${DAYS_OF_CLIMATE})`;

/**
 * Degree-days between 6 and 20 degC that plants bring from the propagation house: half of those counted there, for plants
 * crowded in trays under winter light grow about half as fast, and for onions no more than 300, a plant of 10 to 15 cm, at
 * which they stand still until planted out (both a judgement).
 */
const HEAD_START = `IF([Raised]; MIN(IF([Variety].[Bulb crop]; 300 degC day; 5000 degC day);
  50% * MAX(0 days; [Planted out] - [Emergence]) * (Farm[Nursery temperature] - 6 degC)); 0 degC day)`;
const UNTIL = 'IF([Variety].[Bulb crop]; [Bulbing starts]; [Harvest])';
const BOLTING = `[Crop]; [Planted out]; ${UNTIL}; ${HEAD_START}; [Cover gain]; Climate[Day]; Climate[Low]; Climate[High]`;

export const HARVEST_COLUMNS = [
  ...group(
    'Bulbing',
    computed(
      'thermal-time-to-come',
      'Thermal time to come',
      DEGREE_DAYS,
      'MAX(0 degC day; [Variety].[Thermal time to bulbing] - [Thermal time at planting out])',
      {
        note: 'Still needed at planting out before it can bulb.',
        decimals: 0,
      },
    ),
    computed(
      'large-enough',
      'Large enough',
      DATE,
      `IF([Variety].[Bulb crop]; IF(ISBLANK(${THERMAL_DATE});
        [Planted out] + CEILING([Thermal time to come] / 10 Cdeg; 1 day); ${THERMAL_DATE}))`,
      { note: 'Thermal time reached; 10 degree-days a day where Climate is empty.' },
    ),
    computed(
      'days-long-enough',
      'Days long enough',
      DATE,
      'LONGDAYFROM(Farm[Latitude]; [Variety].[Critical day length]; [Planted out])',
      {
        note: 'First day in the bed as long as the variety needs.',
      },
    ),
    computed(
      'bulbing-starts',
      'Bulbing starts',
      DATE,
      'IF([Variety].[Bulb crop]; LONGDAYFROM(Farm[Latitude]; [Variety].[Critical day length]; MAX([Large enough]; [Planted out])))',
      { note: 'Both: large enough and days long enough (Lancaster et al. 1996).' },
    ),
    computed('held-back-by', 'Held back by', TEXT, 'IF([Days long enough] >= [Large enough]; "day length"; "size")', {
      note: 'The gate that opens last.',
    }),
    computed(
      'leaf-growth-in-the-bed',
      'Leaf growth in the bed',
      DEGREE_DAYS,
      `WARMTHBETWEEN([Planted out]; [Bulbing starts]; 6 degC; 20 degC; ${DAYS_OF_CLIMATE})`,
      { note: 'Between 6 and 20 degC until bulbing: the more, the larger the bulbs.', decimals: 0 },
    ),
    computed(
      'leaf-growth-at-bulbing',
      'Leaf growth at bulbing',
      DEGREE_DAYS,
      `IF(AND([Variety].[Bulb crop]; [From seed]); IF([Raised]; ${HEAD_START} + [Leaf growth in the bed];
        LEAFGROWTH([Emergence]; [Bulbing starts]; ${DAYS_OF_CLIMATE})))`,
      {
        note: 'Since emergence: half counted in the trays, to 300 degC days, and all in the bed. Needs Climate.',
        decimals: 0,
      },
    ),
    computed(
      'leaf-area-at-bulbing',
      'Leaf area at bulbing',
      LEAF_AREA,
      'IF([Leaf growth at bulbing] <= 600 degC day; LEAFAREA([Leaf growth at bulbing]))',
      {
        note: 'Of one plant (Brewster 2008). Earlier sowing or planting shows here. Blank past 600 degC days, where neighbours shade it.',
        decimals: 0,
      },
    ),
    computed(
      'tops-down',
      'Tops down',
      DATE,
      `IF([Variety].[Bulb crop]; IF(ISBLANK(${TOPS_DATE}); [Bulbing starts] + [Variety].[Days from bulbing to tops down]; ${TOPS_DATE}))`,
      { note: 'About half the tops fallen.' },
    ),
  ),
  ...group(
    'Harvest',
    computed('harvest', 'Harvest', DATE, `IF([Finishes] > 0; MIN([Ripe]; [Cold ends it] - 1 day))`, {
      note: 'First harvest: tops down for onions; ripe, or the last day before the cold. Blank where it does not finish.',
    }),
    computed(
      'harvest-reckoned-by',
      'Harvest reckoned by',
      TEXT,
      `IF([Variety].[Bulb crop]; "day length and warmth"; IF(ISBLANK(Farm[Middle of summer]); "days";
        IF(ISBLANK(IF([In place]; [Variety].[Crop].[Warmth to harvest direct]; [Variety].[Crop].[Warmth to harvest]));
          "days, scaled by warmth"; "degree-days")))`,
      {
        note: 'Published degree-days; days to maturity stretched where it is cooler than the crop likes best; or days alone.',
      },
    ),
    computed(
      'harvest-ends',
      'Harvest ends',
      DATE,
      `IF(NOT(ISBLANK([Harvest])); MIN([Cold ends it] - 1 day;
        IF(ISBLANK([Variety].[Crop].[Harvest window]); [Harvest]; [Harvest] + [Variety].[Crop].[Harvest window] - 1 day)))`,
      { note: 'The window of the crop, or the cold.' },
    ),
    computed('bed-free', 'Bed free', DATE, '[Harvest ends] + 1 day'),
    computed(
      'warmth-to-harvest',
      'Warmth to harvest',
      DEGREE_DAYS,
      `WARMTHBETWEEN([Planted out]; [Harvest]; [Variety].[Crop].[Degree-day base]; 30 degC; ${DAYS_OF_CLIMATE})`,
      { note: "In the bed, above the crop's base, to 30 degC. Needs Climate.", decimals: 0 },
    ),
    withDefault('thinning-mass', 'Thinning mass', PLANT_MASS, 'IF(NOT(ISBLANK([Thin to])); 14 g)', {
      note: 'One plant pulled young. Memory: a salad onion weighs about 14 g.',
      decimals: 1,
      least: 0,
    }),
    computed(
      'plants-thinned',
      'Plants thinned',
      PLAIN,
      'IF(NOT(ISBLANK([Thin to])); [Stations] * THINNINGS([Seeds per station]; [Germination]; [Thin to]))',
      {
        decimals: 0,
      },
    ),
    computed('fresh-thinnings', 'Fresh thinnings', MASS, '[Plants thinned] * [Thinning mass]', {
      note: 'Sold fresh.',
      decimals: 1,
    }),
    computed('cured-on', 'Cured on', DATE, '[Harvest] + [Variety].[Crop].[Curing days]'),
    computed(
      'cured-yield',
      'Cured yield',
      MASS,
      'IF(NOT(ISBLANK([Variety].[Crop].[Curing days])); [Marketable yield] * (1 - [Variety].[Crop].[Curing loss]))',
      {
        note: 'After curing loss; blank for crops that are not cured.',
        decimals: 1,
      },
    ),
  ),
  ...group(
    'Bolting',
    computed('bolting-risk', 'Bolting risk', choice('low', 'raised', 'high'), `BOLTRISK(${BOLTING})`, {
      note: 'From planting out to bulbing or harvest; needs Climate.',
    }),
    computed('bolting-why', 'Bolting why', TEXT, `BOLTWHY(${BOLTING})`),
  ),
];
