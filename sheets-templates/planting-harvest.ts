// Plantings, third part: when an onion bulbs and comes in, when other crops do, when the bed is free, and what curing
// leaves. plantings.ts puts the parts together. Where Climate is empty, days stand in for warmth.

import {
  BULBING_BASE,
  BULBING_UPPER,
  LEAF_GROWTH_BASE,
  LEAF_GROWTH_LIMITS,
  LEAF_GROWTH_UPPER,
  OVERWINTERED_SHARE,
  WINTER_LEAF_LEAST,
  WINTER_LEAF_MOST,
} from '../engine/index.ts';
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
  WARMTH,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';

const LEAF_AREA = quantity('in2', 'cm2');
const DAYS_OF_CLIMATE = 'Climate[Day]; Climate[Mean]';

const BULBING_RANGE = `${BULBING_BASE} degC; ${BULBING_UPPER} degC`;
const LEAF_RANGE = `${LEAF_GROWTH_BASE} degC; ${LEAF_GROWTH_UPPER} degC`;
const LEAF_MOST = `${LEAF_GROWTH_LIMITS.degreeDays.max} degC day`;

const THERMAL_DATE = `WARMTHDATE([Planted out]; [Thermal time to come]; ${BULBING_RANGE}; ${DAYS_OF_CLIMATE})`;
const TOPS_DATE = `WARMTHDATE([Bulbing starts]; [Thermal time to fall]; ${BULBING_RANGE}; ${DAYS_OF_CLIMATE})`;

/**
 * Degree-days between 6 and 20 degC that plants bring from the propagation house: half of those counted there, for plants
 * crowded in trays under winter light grow about half as fast, and for onions no more than 300, a plant of 10 to 15 cm, at
 * which they stand still until planted out (both a judgement).
 */
const HEAD_START = `IF([Raised]; MIN(300 degC day; 50% * MAX(0 days; [Planted out] - [Emergence]) * (MIN([Raising temperature]; ${LEAF_GROWTH_UPPER} degC) - ${LEAF_GROWTH_BASE} degC)); 0 degC day)`;

/** Midwinter by the calendar, before the summer that a planting belongs to. */
const MIDWINTER = '[Summer] - 213 days';
const FIRST_LONG_DAY = `LONGDAYFROM(Farm[Latitude]; [Variety].[Critical day length]; ${MIDWINTER})`;

/** First harvest of a variety at a share of the warmth wanted; an onion within a tenth of its thermal time; days within their own range. */
function ofVariety(share: string, end: 'low' | 'high'): string {
  const tenth = end === 'low' ? '90%' : '110%';
  return `IF([Variety].[Bulb crop];
    IF(ISBLANK(Farm[Middle of summer]); [Bulbing starts] + ([Tops down] - [Bulbing starts]) * ${tenth};
      WARMTHDATE([Bulbing starts]; [Thermal time to fall] * ${tenth}; ${BULBING_RANGE}; ${DAYS_OF_CLIMATE}));
    IF(ISBLANK(Farm[Middle of summer]); [Planted out] + ([Ripe] - [Planted out]) * ${share};
      WARMTHDATE([Growth counts from]; [Warmth wanted] * ${share}; [Growth base]; [Growth ceiling]; ${DAYS_OF_CLIMATE})))`;
}

/** First harvest in the warm or cool one of ten years. Degrees more on every day count as a base and a ceiling so much lower. */
function ofYear(end: 'low' | 'high'): string {
  const less = end === 'low' ? '-' : '+';
  const shifted = (limit: string): string => `${limit} ${less} [One year in ten differs by]`;
  return `IF([Variety].[Bulb crop];
    WARMTHDATE([Bulbing starts]; [Thermal time to fall]; ${shifted(`${BULBING_BASE} degC`)}; ${shifted(`${BULBING_UPPER} degC`)}; ${DAYS_OF_CLIMATE});
    WARMTHDATE([Growth counts from]; [Warmth wanted]; ${shifted('[Growth base]')}; ${shifted('[Growth ceiling]')}; ${DAYS_OF_CLIMATE}))`;
}

const EARLY_END = `IF([Finishes] > 0; MIN([Cold ends it] - 1 day; [Harvest by variety low]; [Harvest by year low]))`;

/** By variety or by year, whichever is later; one that would never be ripe is cut before the cold. */
const LATE_END = `IF([Finishes] > 0;
  IF(OR(ISBLANK([Harvest by variety high]); AND(ISBLANK([Harvest by year high]); NOT(ISBLANK([One year in ten differs by]))));
    [Cold ends it] - 1 day; MIN([Cold ends it] - 1 day; MAX([Harvest by variety high]; [Harvest by year high]))))`;

/** Standard deviations from the middle beyond which one year in ten lies, and days of a mean month. */
const ONE_IN_TEN = '1.2816';
const DAYS_OF_A_MONTH = '30.4';

function endOfWindow(end: 'low' | 'high'): string {
  const window = `[Variety].[Crop].[Harvest window ${end}]`;
  return `IF(NOT(ISBLANK([Harvest])); MIN([Cold ends it] - 1 day; [Harvest ${end}] + IF(ISBLANK(${window}); [Window]; ${window}) - 1 day))`;
}

export const HARVEST_COLUMNS = [
  ...group(
    'Bulbing',
    computed(
      'over-winter',
      'Over winter',
      YES_OR_NO,
      'AND(NOT(ISBLANK([Planted out])); NOT(ISBLANK([Variety].[Crop].[Overwinters])); [Variety].[Crop].[Overwinters] <> "no"; [Planted out] > [Summer] - 10 days)',
      { note: 'Planted after midsummer to stand over winter.' },
    ),
    computed(
      'bulbing-not-before',
      'Bulbing not before',
      DATE,
      'IF([Over winter]; [Summer] + 155 days; [Planted out])',
      {
        note: 'The days of autumn grow shorter: an onion planted then bulbs in the spring after midwinter.',
      },
    ),
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
      'LONGDAYFROM(Farm[Latitude]; [Variety].[Critical day length]; [Bulbing not before])',
      {
        note: 'First day in the bed as long as the variety needs.',
      },
    ),
    computed(
      'long-days-begin',
      'Long days begin',
      DATE,
      `IF(AND([Variety].[Bulb crop]; NOT([Over winter]); ${FIRST_LONG_DAY} > ${MIDWINTER}); ${FIRST_LONG_DAY})`,
      {
        note: 'First day after midwinter as long as the variety needs.',
      },
    ),
    computed(
      'bulbing-starts',
      'Bulbing starts',
      DATE,
      'IF([Variety].[Bulb crop]; LONGDAYFROM(Farm[Latitude]; [Variety].[Critical day length]; MAX([Large enough]; [Bulbing not before])))',
      { note: 'Both: large enough and days long enough (Lancaster et al. 1996).' },
    ),
    computed('held-back-by', 'Held back by', TEXT, 'IF([Days long enough] >= [Large enough]; "day length"; "size")', {
      note: 'The gate that opens last.',
    }),
    computed(
      'leaf-growth-in-the-bed',
      'Leaf growth in the bed',
      DEGREE_DAYS,
      `WARMTHBETWEEN([Planted out]; [Bulbing starts]; ${LEAF_RANGE}; ${DAYS_OF_CLIMATE})`,
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
      `IF([Leaf growth at bulbing] <= ${LEAF_MOST}; LEAFAREA([Leaf growth at bulbing]))`,
      {
        note: 'Of one plant (Brewster 2008). Earlier sowing or planting shows here. Blank past 600 degC days, where neighbours shade it.',
        decimals: 0,
      },
    ),
    computed(
      'thermal-time-to-fall',
      'Thermal time to fall',
      DEGREE_DAYS,
      `[Variety].[Thermal time to tops down] * IF([Over winter]; ${OVERWINTERED_SHARE}; 1)`,
      { note: 'From the start of bulbing to tops down; less for plants that come large out of winter.', decimals: 0 },
    ),
    computed(
      'tops-down',
      'Tops down',
      DATE,
      `IF([Variety].[Bulb crop]; IF(ISBLANK(${TOPS_DATE}); [Bulbing starts] + [Variety].[Days from bulbing to tops down] * IF([Over winter]; ${OVERWINTERED_SHARE}; 1); ${TOPS_DATE}))`,
      { note: 'About half the tops fallen.' },
    ),
  ),
  ...group(
    'Winter',
    computed(
      'winter-sets-in',
      'Winter sets in',
      DATE,
      `IF([Over winter]; MIN(WARMUNTIL([Summer]; ${LEAF_GROWTH_BASE} degC; ${DAYS_OF_CLIMATE}); [Summer] + 130 days))`,
      { note: `The mean falls to ${LEAF_GROWTH_BASE} degC, or some 130 days after midsummer where winter is mild.` },
    ),
    computed(
      'leaf-growth-at-winter',
      'Leaf growth at winter',
      DEGREE_DAYS,
      `IF(AND([Variety].[Bulb crop]; [From seed]); ${HEAD_START} + WARMTHBETWEEN([Up]; [Winter sets in]; ${LEAF_RANGE}; ${DAYS_OF_CLIMATE}))`,
      { note: 'Of an onion from seed, since emergence.', decimals: 0 },
    ),
    computed(
      'winter-size',
      'Winter size',
      choice('too small', 'right', 'too large'),
      `IF([Leaf growth at winter] < ${WINTER_LEAF_LEAST} degC day; "too small"; IF([Leaf growth at winter] > ${WINTER_LEAF_MOST} degC day; "too large"; "right"))`,
      {
        note: `Right from ${WINTER_LEAF_LEAST} to ${WINTER_LEAF_MOST} degree-days: smaller onions die in a hard winter and yield little after a mild one, larger ones bolt.`,
      },
    ),
  ),
  ...group(
    'Harvest',
    computed('harvest', 'Harvest', DATE, `IF([Finishes] > 0; MIN([Ripe]; [Cold ends it] - 1 day))`, {
      range: { low: 'harvest-low', high: 'harvest-high' },
      note: 'First harvest: tops down for onions; ripe, or the last day before the cold. Blank where it does not finish.',
    }),
    computed('harvest-by-variety-low', 'Harvest by variety low', DATE, ofVariety('[Early ripe share]', 'low'), {
      note: 'Of an early one, in the average year.',
    }),
    computed('harvest-by-variety-high', 'Harvest by variety high', DATE, ofVariety('[Late ripe share]', 'high'), {
      note: 'Of a late one, in the average year.',
    }),
    computed(
      'one-year-in-ten-differs-by',
      'One year in ten differs by',
      WARMTH,
      `IF(NOT(ISBLANK([Ripe])); ${ONE_IN_TEN} * Farm[Year to year] / SQRT(MAX(1; ([Ripe] - IF([Variety].[Bulb crop]; [Bulbing starts]; [Growth counts from])) / ${DAYS_OF_A_MONTH} days)))`,
      {
        note: "How much warmer or colder its time of growing is in the tenth year: from the months' Year to year, which evens out over longer times. Blank where none is entered.",
        decimals: 1,
      },
    ),
    computed('harvest-by-year-low', 'Harvest by year low', DATE, ofYear('low'), {
      note: 'Of this variety, in the warm one of ten years.',
    }),
    computed('harvest-by-year-high', 'Harvest by year high', DATE, ofYear('high'), {
      note: 'Of this variety, in the cool one of ten years.',
    }),
    computed('harvest-low', 'Harvest low', DATE, EARLY_END, {
      note: 'First harvest of an early variety or a warm year.',
    }),
    computed('harvest-high', 'Harvest high', DATE, LATE_END, {
      note: 'First harvest of a late variety or a cool year; at the latest before the cold.',
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
      { range: { low: 'harvest-ends-low', high: 'harvest-ends-high' }, note: 'The window of the crop, or the cold.' },
    ),
    computed('harvest-ends-low', 'Harvest ends low', DATE, endOfWindow('low'), {
      note: 'Of a short harvest that starts early.',
    }),
    computed('harvest-ends-high', 'Harvest ends high', DATE, endOfWindow('high'), {
      note: 'Of a long one that starts late.',
    }),
    computed(
      'harvested-later',
      'Harvested later',
      YES_OR_NO,
      'IF(ISBLANK([Harvest ends]); FALSE; [Harvest ends] > Farm[Season ends] + 52 weeks)',
      { note: 'Ends more than a year after the season: its harvest, money and hours of picking are not counted yet.' },
    ),
    computed(
      'bed-free',
      'Bed free',
      DATE,
      'MAX(IF(ISBLANK([Harvest ends]); [Cold ends it]; [Harvest ends] + 1 day); IF([Variety].[Comes again in spring]; Farm[Season ends] + 1 day))',
      { note: 'What stands for years takes its bed to the end of the season: type the day on which you clear it.' },
    ),
    computed(
      'warmth-to-harvest',
      'Warmth to harvest',
      DEGREE_DAYS,
      `WARMTHBETWEEN([Planted out]; [Harvest]; [Variety].[Crop].[Degree-day base]; 30 degC; ${DAYS_OF_CLIMATE})`,
      { note: "In the bed, above the crop's base, to 30 degC. Needs Climate.", decimals: 0 },
    ),
    withDefault('thinning-mass', 'Thinning mass', PLANT_MASS, 'IF(NOT(ISBLANK([Thin to])); 14 g)', {
      note: 'One plant pulled young. Memory: a salad onion weighs about {0.5 oz|14 g}.',
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
    withDefault(
      'thinned-on',
      'Thinned on',
      DATE,
      'IF(NOT(ISBLANK([Thin to])); MIN([Harvest] - 14 days; IF([Raised]; [Planted out] + 35 days; [Up] + 21 days)))',
      { note: 'Five weeks after setting out, or three after coming up: as large as salad onions (common practice).' },
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
        range: { low: 'cured-yield-low', high: 'cured-yield-high' },
        note: 'After curing loss; blank for crops that are not cured.',
        decimals: 1,
      },
    ),
    computed(
      'cured-yield-low',
      'Cured yield low',
      MASS,
      '[Cured yield] * [Marketable yield low] / [Marketable yield]',
      {
        note: "By the crop's lowest yield.",
        decimals: 1,
      },
    ),
    computed(
      'cured-yield-high',
      'Cured yield high',
      MASS,
      '[Cured yield] * [Marketable yield high] / [Marketable yield]',
      {
        note: "By the crop's highest yield.",
        decimals: 1,
      },
    ),
    computed(
      'goes-into-store',
      'Goes into store',
      YES_OR_NO,
      `AND(NOT(ISBLANK([Marketable yield])); NOT(ISBLANK([Harvest ends])); IF(ISBLANK([Variety].[Crop].[Storage life]); FALSE; [Variety].[Crop].[Storage life] >= 30 days))`,
      { note: 'Crops that keep less than a month are sold in the week they are picked.' },
    ),
  ),
];
