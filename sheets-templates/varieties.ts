// The Varieties sheet: what the farm grows, and for onions whether the days here get long enough, when, and how much the
// plants grow before. Reads Crops, Farm, Climate and Packs.

import {
  BULBING_THERMAL_TIME,
  DEFAULT_CRITICAL_HOURS as HOURS_OF,
  LEAF_GROWTH_BASE,
  LEAF_GROWTH_UPPER,
  type SheetDeclaration,
  TOPS_DOWN_THERMAL_TIME,
} from '../engine/index.ts';
import {
  choice,
  computed,
  DATE,
  DAYS,
  DEGREE_DAYS,
  entered,
  group,
  HOURS,
  link,
  PLAIN,
  PLANT_MASS,
  quantity,
  SHARE,
  TEXT,
  withDefault,
  YES_OR_NO,
  YIELD,
} from './authoring.ts';
import { OWN_VARIETY_COLUMNS, ownFirst } from './own-figures.ts';
import { WARMTH_COLUMNS } from './variety-warmth.ts';

const DEGREES = quantity('deg');

/** What the library gives for onions of no type. */
const ONION_HOURS = 14;
/** Of the onions sold past 50 degrees: the upper end of what Texas Cooperative Extension gives for long-day onions. */
const NORTHERN_HOURS = 16;

/**
 * By how much the onions usually sold at a latitude need longer or shorter days than an onion of no type (common practice:
 * short-day onions up to 32 degrees, intermediate ones to 38, long-day ones beyond).
 */
const LONGER_DAYS_HERE = `IF(ABS(Farm[Latitude]) < 32 deg; ${HOURS_OF.short - ONION_HOURS} h; IF(ABS(Farm[Latitude]) < 38 deg; ${HOURS_OF.intermediate - ONION_HOURS} h;
            IF(ABS(Farm[Latitude]) < 50 deg; ${HOURS_OF.long - ONION_HOURS} h; ${NORTHERN_HOURS - ONION_HOURS} h)))`;

export const varietiesSheet: SheetDeclaration = {
  id: 'varieties',
  name: 'Varieties',
  question: 'What',
  about:
    'Every variety the farm sows or thinks of sowing. An onion that never meets its day length makes no bulb: see Suits this farm.',
  rows: { from: 'entry' },
  key: 'variety',
  columns: [
    ...group(
      'Variety',
      entered('variety', 'Variety', TEXT, { required: true }),
      entered('crop', 'Crop', link('crops'), { required: true }),
      entered('notes', 'Notes', TEXT),
    ),
    ...group(
      'Seed',
      computed(
        'germination-of-the-crop',
        'Germination of the crop',
        SHARE,
        `IF(OR(ISBLANK([Crop].[Planted piece]); NOT(ISBLANK([Crop].[Germination standard]))); IF(ISBLANK([Crop].[Typical germination]);
          IF(ISBLANK([Crop].[Germination standard]); 70%; [Crop].[Germination standard]); [Crop].[Typical germination]))`,
        { note: 'By the library.', decimals: 0 },
      ),
      withDefault('germination', 'Germination', SHARE, ownFirst('Own germination', '[Germination of the crop]'), {
        range: { low: 'germination-low', high: 'germination-high' },
        note: 'Of new seed, as its label says; where blank, what sound seed of the crop usually gives, the least that may be sold, or 70 %. Crops set as cloves, tubers or slips have none.',
        decimals: 0,
        least: 0,
        most: 100,
      }),
      computed(
        'germination-low',
        'Germination low',
        SHARE,
        '[Germination] * [Crop].[Typical germination low] / [Crop].[Typical germination]',
        {
          decimals: 0,
        },
      ),
      computed(
        'germination-high',
        'Germination high',
        SHARE,
        'MIN(100%; [Germination] * [Crop].[Typical germination high] / [Crop].[Typical germination])',
        {
          decimals: 0,
        },
      ),
      computed(
        'seeds-needed',
        'Seeds needed',
        PLAIN,
        'SUMIFS(Plantings[Seeds needed]; Plantings[Variety]; [Variety])',
        {
          note: 'Over all plantings from seed, with the spare.',
          decimals: 0,
        },
      ),
      ...(['sets', 'plants'] as const).flatMap((form) => [
        computed(
          `${form}-needed`,
          form === 'sets' ? 'Sets needed' : 'Plants needed',
          PLAIN,
          `SUMIFS(Plantings[Sets or plants to buy]; Plantings[Variety]; [Variety]; Plantings[Start]; "${form}")`,
          { decimals: 0 },
        ),
        computed(
          `price-of-${form}`,
          form === 'sets' ? 'Price of sets' : 'Price of plants',
          quantity('money'),
          `MINIFS(Packs[Price each]; Packs[Variety]; [Variety]; Packs[Form]; "${form}")`,
          { note: 'Each, of the pack with the best price.', decimals: 3 },
        ),
      ]),
      computed(
        'price-per-1-000-seeds',
        'Price per 1,000 seeds',
        quantity('money'),
        'MINIFS(Packs[Price per 1,000 seeds]; Packs[Variety]; [Variety])',
        {
          note: 'In the pack of best value.',
          decimals: 2,
        },
      ),
    ),
    ...group(
      'Day length',
      computed(
        'bulb-crop',
        'Bulb crop',
        YES_OR_NO,
        'AND(NOT(ISBLANK([Crop].[Bulb shape factor])); NOT(ISBLANK([Crop].[Critical day length])))',
        { note: 'Makes bulbs by day length.' },
      ),
      entered('day-length-type', 'Day-length type', choice('short', 'intermediate', 'long'), {
        note: 'For onions. A guide: sources differ by an hour or more.',
      }),
      withDefault(
        'critical-day-length',
        'Critical day length',
        HOURS,
        `IF(ISBLANK([Day-length type]);
          IF([Bulb crop]; [Crop].[Critical day length] + IF(ISBLANK(Farm[Latitude]); 0 h; ${LONGER_DAYS_HERE}));
          IF([Day-length type] = "short"; ${HOURS_OF.short} h; IF([Day-length type] = "intermediate"; ${HOURS_OF.intermediate} h; ${HOURS_OF.long} h)))`,
        {
          note: `Bulbs start once the day is this long. By type: ${HOURS_OF.short}, ${HOURS_OF.intermediate}, ${HOURS_OF.long} h (Oregon State University Extension, its listed varieties). Without a type, of the onions usually sold at this latitude.`,
          decimals: 2,
          least: 8,
          most: 20,
        },
      ),
      computed('longest-day-here', 'Longest day here', HOURS, 'LONGESTDAY(Farm[Latitude]; Farm[Season])', {
        decimals: 2,
      }),
      computed(
        'day-length-reached',
        'Day length reached',
        DATE,
        'DAYLENGTHDATE(Farm[Latitude]; [Critical day length]; Farm[Season])',
        {
          note: 'First day of the season as long as it needs; blank where it never is.',
        },
      ),
      entered('adapted-from-latitude', 'Adapted from latitude', DEGREES, {
        note: 'Nearest the equator it is offered for, north or south.',
        decimals: 0,
        least: 0,
        most: 90,
      }),
      entered('adapted-to-latitude', 'Adapted to latitude', DEGREES, {
        note: 'Farthest from the equator.',
        decimals: 0,
        least: 0,
        most: 90,
      }),
    ),
    ...group(
      'Suits this farm',
      computed(
        'earliest-planting-out',
        'Earliest planting-out',
        DATE,
        'Farm[Last frost of half the years] + [Crop].[Plant out from last frost]',
        {
          note: 'Earliest practical: from the average last frost and the crop.',
        },
      ),
      computed(
        'leaf-growth-before-bulbing',
        'Leaf growth before bulbing',
        DEGREE_DAYS,
        `IF([Day length reached] <= [Earliest planting-out]; 0 degC day;
          IF(ISBLANK(WARMTHBETWEEN([Earliest planting-out]; [Day length reached]; ${LEAF_GROWTH_BASE} degC; ${LEAF_GROWTH_UPPER} degC; Climate[Day]; Climate[Mean]));
            ([Day length reached] - [Earliest planting-out]) * 6 Cdeg;
            WARMTHBETWEEN([Earliest planting-out]; [Day length reached]; ${LEAF_GROWTH_BASE} degC; ${LEAF_GROWTH_UPPER} degC; Climate[Day]; Climate[Mean])))`,
        {
          note: 'Degree-days between 6 and 20 degC from the earliest planting-out; 6 a day where Climate is empty.',
          decimals: 0,
        },
      ),
      computed(
        'suits-this-farm',
        'Suits this farm',
        choice('yes', 'marginal', 'no'),
        `SUITSFARM([Longest day here]; [Critical day length]; [Leaf growth before bulbing]; Farm[Latitude]; [Adapted from latitude]; [Adapted to latitude])`,
      ),
      computed(
        'why',
        'Why',
        TEXT,
        `SUITSWHY([Longest day here]; [Critical day length]; [Leaf growth before bulbing]; Farm[Latitude]; [Adapted from latitude]; [Adapted to latitude])`,
      ),
    ),
    ...group(
      'Bulbing to harvest',
      withDefault(
        'thermal-time-to-bulbing',
        'Thermal time to bulbing',
        DEGREE_DAYS,
        `IF([Bulb crop]; ${BULBING_THERMAL_TIME} degC day)`,
        {
          note: 'Above 5 degC since emergence, before it can bulb (Lancaster et al. 1996).',
          decimals: 0,
          least: 0,
        },
      ),
      withDefault(
        'thermal-time-to-tops-down',
        'Thermal time to tops down',
        DEGREE_DAYS,
        `IF([Bulb crop]; ${TOPS_DOWN_THERMAL_TIME} degC day)`,
        {
          note: 'Above 5 degC from the start of bulbing. Common practice: refit from your own dates.',
          decimals: 0,
          least: 0,
        },
      ),
      withDefault(
        'days-from-bulbing-to-tops-down',
        'Days from bulbing to tops down',
        DAYS,
        'IF([Bulb crop]; 70 days)',
        {
          note: 'Used where Climate is empty. Common practice.',
          decimals: 0,
          least: 0,
        },
      ),
    ),
    ...group(
      'Days',
      withDefault('days-to-maturity', 'Days to maturity', DAYS, '[Crop].[Days to maturity]', {
        note: 'From planting out to first harvest.',
        decimals: 0,
        least: 0,
      }),
      withDefault('days-to-maturity-direct', 'Days to maturity direct', DAYS, '[Crop].[Days to maturity direct]', {
        note: 'From sowing in the bed to first harvest.',
        decimals: 0,
        least: 0,
      }),
      computed(
        'days-to-emergence',
        'Days to emergence',
        DAYS,
        `IF(ISBLANK([Crop].[Emergence thermal time]); 0 days;
          EMERGENCEDAYS([Growth mean]; [Crop].[Emergence base]; [Crop].[Emergence thermal time]))`,
        { note: 'At the growth mean.', decimals: 0 },
      ),
      withDefault('storage-life', 'Storage life', DAYS, '[Crop].[Storage life]', {
        range: { low: 'storage-life-low', high: 'storage-life-high' },
        decimals: 0,
        least: 0,
      }),
      computed(
        'storage-life-low',
        'Storage life low',
        DAYS,
        '[Storage life] * [Crop].[Storage life low] / [Crop].[Storage life]',
        {
          decimals: 0,
        },
      ),
      computed(
        'storage-life-high',
        'Storage life high',
        DAYS,
        '[Storage life] * [Crop].[Storage life high] / [Crop].[Storage life]',
        {
          decimals: 0,
        },
      ),
      computed('bunched-life', 'Bunched life', DAYS, '[Crop].[Bunched life]', {
        note: 'Bunched with tops on, kept cold.',
        decimals: 0,
      }),
    ),
    ...WARMTH_COLUMNS,
    ...OWN_VARIETY_COLUMNS,
    ...group(
      'Size',
      entered('bulb-shape', 'Bulb shape', choice('flat', 'globe', 'tall')),
      withDefault(
        'shape-factor',
        'Shape factor',
        quantity('g/cm3'),
        `IF(ISBLANK([Bulb shape]); [Crop].[Bulb shape factor];
          IF([Bulb shape] = "flat"; 0.38 g/cm3; IF([Bulb shape] = "tall"; 0.5 g/cm3; [Crop].[Bulb shape factor])))`,
        {
          note: 'Mass over diameter cubed: flat sweet onions 0.36 to 0.40 g/cm3 (Maw et al.), a ball 0.50.',
          decimals: 2,
          least: 0,
        },
      ),
      withDefault('isolated-plant-mass', 'Isolated plant mass', PLANT_MASS, '[Crop].[Isolated plant mass]', {
        note: 'With all the room it can use.',
        decimals: 0,
        least: 0,
      }),
      withDefault('ceiling-yield', 'Ceiling yield', YIELD, '[Crop].[Ceiling yield]', {
        note: 'What crowding cannot pass.',
        decimals: 2,
        least: 0,
      }),
    ),
  ],
  checks: [
    {
      id: 'does-not-suit',
      name: 'Does not suit',
      level: 'warning',
      column: 'suits-this-farm',
      says: 'IF([Suits this farm] <> "yes"; [Why])',
    },
    {
      id: 'germination-below-standard',
      name: 'Germination below standard',
      level: 'note',
      column: 'germination',
      says: 'IF([Germination] < [Crop].[Germination standard]; "Below the least germination for seed sold in the United States (7 CFR 201.31).")',
    },
  ],
  cautions: [
    'Day-length types are guides: a neighbour who has grown the variety knows more.',
    'Bolted onions are sold fresh at once; they do not keep.',
  ],
};
