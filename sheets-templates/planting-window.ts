// Plantings, when a planting can go in: the dates between which frost, the warmth of the bed, the heat of summer, winter and
// the warmth still to come let it, for the start method used. Blank where that can't be known.

import { BED_LAG, COOL_SUMMER_MARGIN, DAYS_PER_DEGREE } from '../engine/index.ts';
import { computed, DATE, DAYS, group, TEMPERATURE, TEXT, WEEKS, withDefault, YES_OR_NO } from './authoring.ts';
import { coldFelt } from './planting-bolting.ts';
import { GROWTH, LOWS, MEANS, UNKNOWN_EMERGENCE } from './planting-ripening.ts';

const CROP = '[Variety].[Crop]';

/** Mean above which cool-season crops grow on under the shortest days. */
const GROWING_WINTER = '9 degC';
/** Between fruit set and the first ripe fruit. */
const FRUIT_FILLING = '21 days';
/** Over the warmest a crop grows well in: for most cool crops 27 C, 80 F, above which seed and plants fail in the bed (common practice). */
const TOO_HOT_TO_START = '3 Cdeg';
/** An onion planted later than this after its day length comes has hardly a leaf to make a bulb with. */
const AFTER_DAY_LENGTH = '14 days';
/** From the middle of summer, 22 July in the north, to the middle of October. */
const TO_MID_AUTUMN = '85 days';
/** Before heads are cut. */
const HEADING = '14 days';
/** Mean air over soil at planting depth in the morning, when garlic goes in (a judgement). */
const AIR_OVER_SOIL = '2 Cdeg';

/** In the bed from the first day that seed may be sown: blank where any day will do. */
export const SOWN_IN_TIME = 'Farm[Nothing sown before] + [Time raised]';

/** The latest date to be up or set out so that the crop is ripe by a date. */
export function upFor(by: string): string {
  return `WARMTHSTART(${by}; [Warmth wanted]; ${GROWTH})`;
}

/** The latest date in the bed from which it is up by a date: seed sown there comes up first. */
export function inTheBedFor(up: string): string {
  return `IF(NOT([Comes up in the bed]); ${up}; IF(ISBLANK(${CROP}.[Emergence thermal time]); ${up} - ${UNKNOWN_EMERGENCE};
    WARMTHSTART(${up}; ${CROP}.[Emergence thermal time]; ${CROP}.[Emergence base] - [Cover gain]; 25 degC; ${MEANS})))`;
}

/** After the season's first day, tried in turn: the first of them from which too little cold is left to send it all to seed. */
const WAITS = [0, 30, 60, 90, 120] as const;

/** The day from which it is safe from the cold of the winter that the season begins in; the last one tried where none is. */
const PAST_THE_COLD = WAITS.reduceRight((later, wait) => {
  const day = `Farm[Season starts] + ${wait} days`;
  const until = `WARMTHDATE(${day}; [Warmth wanted]; ${GROWTH})`;
  const from = `IF(OR([Raised]; ISBLANK(${CROP}.[Bolting size warmth])); ${day}; WARMTHDATE(${day}; ${CROP}.[Bolting size warmth]; ${CROP}.[Bolting size warmth base]; 25 degC; ${MEANS}))`;
  const felt = coldFelt('', from, until);
  return later === '' ? day : `IF(${felt} < ${CROP}.[Bolting cold days most]; ${day}; ${later})`;
}, '');

const THIS_SEASON = `MAX([Earliest in the bed]; ${SOWN_IN_TIME}; [Past the cold]; IF(ISBLANK([Ripe by]); Farm[Season starts]))`;

export const WINDOW_COLUMNS = group(
  'When it can go in',
  computed(
    'weeks-from-last-frost',
    'Weeks from last frost',
    WEEKS,
    `IF(OR([Start] = "direct seed"; ISBLANK(${CROP}.[Plant out from last frost]));
      ${CROP}.[Sow outdoors from last frost]; ${CROP}.[Plant out from last frost])`,
    { note: 'At which calendars begin, from the average last frost; below zero is before it.', decimals: 1 },
  ),
  withDefault(
    'warm-enough-at',
    'Warm enough at',
    TEMPERATURE,
    `MIN(STARTWARMTH([Weeks from last frost]); Farm[Warmest mean] - ${COOL_SUMMER_MARGIN} Cdeg) - [Cover gain]`,
    { note: 'Daily mean outdoors from which it goes in; a cover makes up its degrees.', decimals: 1 },
  ),
  computed(
    'bed-follows-by',
    'Bed follows by',
    DAYS,
    `MAX(0 days; MIN(1; [Weeks from last frost] / ${BED_LAG.weeks} weeks) * ${BED_LAG.days} days)`,
    {
      note: 'The soil dries and warms after the air of spring; hardy crops wait for the soil, tender ones for the air.',
      decimals: 0,
    },
  ),
  computed(
    'warm-from',
    'Warm from',
    DATE,
    `WARMFROM([Summer]; [Warm enough at]; ${MEANS}) + ROUND([Bed follows by]; 1 day)`,
    {
      note: 'Blank: warm enough all winter, or not known.',
    },
  ),
  computed(
    'frost-lets-in-from',
    'Frost lets in from',
    DATE,
    `MAX(Farm[Last frost of half the years] + [Weeks from last frost] - ROUND([Cover gain at night] * ${DAYS_PER_DEGREE} days / 1 Cdeg; 1 day);
      IF(AND(${CROP}.[Hardiness] = "tender"; NOT([In place])); Farm[Last frost] - ROUND([Cover gain at night] * ${DAYS_PER_DEGREE} days / 1 Cdeg; 1 day));
      IF(NOT([In place]); [Spring kills until]))`,
    { note: 'Calendar weeks from the average last frost; tender plants not before the last frost at your risk.' },
  ),
  computed('too-hot-from', 'Too hot from', DATE, `WARMFROM([Summer]; ${CROP}.[Growth maximum]; ${MEANS})`, {
    note: 'From then on the mean is above what the crop grows well in: it bolts, or sets and hearts badly.',
  }),
  computed('too-hot-until', 'Too hot until', DATE, `WARMUNTIL([Summer]; ${CROP}.[Growth maximum]; ${MEANS})`),
  computed(
    'fruit-sets-before',
    'Fruit sets before',
    DAYS,
    `IF(AND(${CROP}.[Hardiness] = "tender"; NOT([Cut once])); ${FRUIT_FILLING}; 0 days)`,
    {
      note: 'Fruit picked again and again has set three weeks before it is ripe; heat stops the setting, not the ripening (a judgement).',
      decimals: 0,
    },
  ),
  computed('ripe-before-the-heat', 'Ripe before the heat', DATE, '[Too hot from] + [Fruit sets before]'),
  computed(
    'cool-again-from',
    'Cool again from',
    DATE,
    `IF(AND(${CROP}.[Hardiness] <> "tender"; OR(${CROP}.[Harvest unit] = "head"; NOT([Cut once])));
      WARMUNTIL([Summer]; ${CROP}.[Growth maximum] - (${CROP}.[Growth maximum] - ${CROP}.[Growth best to]) / 2; ${MEANS}))`,
    {
      note: 'Heads and leaves are grown for the cool: half way from the warmest they grow well in to the warmest they like best. Blank for roots and fruit.',
    },
  ),
  computed(
    'ripe-again-from',
    'Ripe again from',
    DATE,
    `MAX([Too hot until] + [Fruit sets before] + IF(${CROP}.[Harvest unit] = "head"; ${HEADING}; 0 days); [Cool again from])`,
    { note: 'Heads fill in the two weeks before they are cut, and want those cool (common practice).' },
  ),
  computed('ripe-by-at-latest', 'Ripe by at latest', DATE, `[Growth ends] - MIN(14 days; ROUND([Window] / 2; 1 day))`, {
    note: 'Some of the harvest still to come before growth ends.',
  }),
  computed(
    'mild-winter',
    'Mild winter',
    YES_OR_NO,
    `IF(ISBLANK(Farm[Coldest mean]); FALSE; Farm[Coldest mean] > ${GROWING_WINTER})`,
    {
      note: 'Warm enough to grow through, short days or not.',
    },
  ),
  computed(
    'growth-ends',
    'Growth ends',
    DATE,
    `MIN([Killing night]; IF(AND(${CROP}.[Overwinters] = "no"; NOT([Mild winter])); SHORTDAYFROM(Farm[Latitude]; 10 h; [Summer])))`,
    {
      note: 'Cold, or for crops that do not stand the winter a day under ten hours, unless winters are mild. Blank: it grows on.',
    },
  ),
  computed('up-before-the-heat', 'Up before the heat', DATE, upFor('[Ripe before the heat]'), {
    note: 'Latest to be up or set out, to be ripe then.',
  }),
  computed('before-the-heat', 'Before the heat', DATE, inTheBedFor('[Up before the heat]'), {
    note: 'Latest in the bed to be ripe before the heat.',
  }),
  computed('up-after-the-heat', 'Up after the heat', DATE, upFor('[Ripe again from]'), {
    note: 'Earliest to be up or set out, to be ripe then.',
  }),
  computed('ripe-after-the-heat', 'Ripe after the heat', DATE, inTheBedFor('[Up after the heat]'), {
    note: 'Earliest in the bed to be ripe when the heat is over.',
  }),
  computed(
    'after-the-heat',
    'After the heat',
    DATE,
    `IF(NOT(ISBLANK([Ripe after the heat])); MAX([Ripe after the heat]; WARMUNTIL([Summer]; ${CROP}.[Growth maximum] + ${TOO_HOT_TO_START}; ${MEANS})))`,
    { note: 'And not while it is far too hot to start it.' },
  ),
  computed('up-before-the-cold', 'Up before the cold', DATE, upFor('[Ripe by at latest]'), {
    note: 'Latest to be up or set out, to be ripe then.',
  }),
  computed(
    'for-the-cold',
    'For the cold',
    DATE,
    `IF(ISBLANK(Farm[Middle of summer]); IF(OR(${CROP}.[Hardiness] <> "tender"; NOT(ISBLANK([Killing night]))); [Growth ends]) - IF([In place]; ${CROP}.[Latest sowing before first frost]; ${CROP}.[Latest planting out before first frost]);
      ${inTheBedFor('[Up before the cold]')})`,
    { note: 'To be ripe before growth ends, whatever the year.' },
  ),
  computed(
    'before-the-cold',
    'Before the cold',
    DATE,
    'IF(AND([For the cold] > [Summer] - 200 days; IF(ISBLANK([Spring start]); TRUE; [For the cold] >= [Spring start])); [For the cold])',
    {
      note: 'Latest in the bed to be ripe before growth ends; blank where the season is too short for the crop.',
    },
  ),
  computed(
    'spring-start',
    'Spring start',
    DATE,
    `IF(AND(ISBLANK([Warm from]); ISBLANK([Frost lets in from])); EDATE(IF([Variety].[Bulb crop]; WARMUNTIL([Summer]; ${CROP}.[Growth best to]; ${MEANS}); [After the heat]); -12);
      MAX([Warm from]; [Frost lets in from]))`,
    { note: 'Where winter is warm enough, the autumn before.' },
  ),
  computed(
    'autumn-crop',
    'Autumn crop',
    YES_OR_NO,
    `AND(NOT([Variety].[Bulb crop]); NOT(ISBLANK([After the heat])); NOT(ISBLANK([Meant for]));
      [Meant for] > MAX([Before the heat] + ([After the heat] - [Before the heat]) / 2; [Spring start] + 45 days))`,
    { note: 'It goes in for the cool time after the heat of summer.' },
  ),
  computed(
    'autumn-opens',
    'Autumn opens',
    DATE,
    `IF(${CROP}.[Overwinters] = "autumn planted"; IF(ISBLANK(Farm[Middle of summer]); IF(ISBLANK(Farm[First frost of half the years]); [Summer] + ${TO_MID_AUTUMN}; Farm[First frost of half the years]); WARMUNTIL([Summer]; MAX(${CROP}.[Autumn soil maximum] + ${AIR_OVER_SOIL}; Farm[Coldest mean] + 3 Cdeg); ${MEANS})))`,
    {
      note: 'For what is planted in autumn: the soil has cooled, to some {4 °F|2 °C} under the mean air; where it never cools so far, the coolest months; where Climate is empty the average first frost, or the middle of autumn (common practice).',
    },
  ),
  computed(
    'autumn-closes',
    'Autumn closes',
    DATE,
    `IF(NOT(ISBLANK([Autumn opens])); IF(ISBLANK(WARMUNTIL([Summer]; 0 degC; ${MEANS})); [Summer] + 155 days; WARMUNTIL([Summer]; 0 degC; ${MEANS})))`,
    { note: 'The ground freezes, or midwinter.' },
  ),
  computed(
    'earliest-in-the-bed',
    'Earliest in the bed',
    DATE,
    `IF(NOT(ISBLANK([Autumn opens])); [Autumn opens]; IF([Autumn crop]; [After the heat];
      IF(AND(ISBLANK([Spring start]); NOT(ISBLANK(Farm[Middle of summer]))); Farm[Season starts]; [Spring start])))`,
    {
      note: 'By frost, warmth of the bed and heat, under the cover chosen; the first day of the season where any day will do.',
    },
  ),
  computed(
    'past-the-cold',
    'Past the cold',
    DATE,
    `IF(AND(NOT([Variety].[Bulb crop]); ISBLANK([Ripe by]); [Earliest in the bed] < Farm[Season starts]; ISNUMBER(SEARCH("cold"; ${CROP}.[Bolting trigger])); NOT(ISBLANK(${CROP}.[Bolting cold days most])));
      ${PAST_THE_COLD})`,
    { note: 'Where the season begins in a mild winter: when too little of it is left to send the crop to seed.' },
  ),
  computed(
    'earliest-this-season',
    'Earliest this season',
    DATE,
    `IF(NOT(ISBLANK([Earliest in the bed])); IF(AND(ISBLANK([Ripe by]); NOT(ISBLANK([Latest in the bed])); ${THIS_SEASON} > [Latest in the bed]; EDATE([Earliest in the bed]; 12) <= Farm[Season ends]);
      MAX(EDATE([Earliest in the bed]; 12); ${SOWN_IN_TIME}); ${THIS_SEASON}))`,
    {
      note: 'Where winters are mild the time to plant has begun in the year before; what is proposed waits for the season, the day from which it can be sown, and the end of cold that sends it to seed, or for its next time.',
    },
  ),
  computed(
    'latest-in-the-bed',
    'Latest in the bed',
    DATE,
    `IF(NOT(ISBLANK([Autumn closes])); [Autumn closes]; IF([Variety].[Bulb crop]; IF(NOT([Variety].[Day length reached] + ${AFTER_DAY_LENGTH} < [Spring start]); [Variety].[Day length reached] + ${AFTER_DAY_LENGTH}); IF(ISBLANK([Before the heat]); [Before the cold];
      IF([Autumn crop]; IF(ISBLANK([Growth ends]); EDATE([Before the heat]; 12); [Before the cold]); MAX([Before the heat]; [Spring start] + 21 days)))))`,
    {
      note: 'To be ripe before the heat or the cold. Blank: at any time, or where the season is too short for a full harvest from any.',
    },
  ),
  computed(
    'not-then-because',
    'Not then because',
    TEXT,
    `IF(AND(NOT(ISBLANK([Ripe by])); ISBLANK([Date typed])); IF([Dates from] = "earliest that makes sense"; IF([Autumn crop]; "it is too hot then"; "it would have to be in the bed before " & TEXT([Earliest this season]; "d mmm"));
      IF([Dates from] = "the cold"; "it would not be ripe before the cold"; IF(AND([Ripe] > [Ripe before the heat]; [Ripe] < [Ripe again from]); "it is too hot then";
        IF(OR([Finishes] < 1; [Window lost] > 50%); "the cold cuts it off")))))`,
    { note: 'Why it cannot be had for the date wanted.' },
  ),
  computed(
    'mean-when-it-goes-in',
    'Mean when it goes in',
    TEMPERATURE,
    `TEMPERATUREAROUND([Planted out]; ${MEANS}) + [Cover gain]`,
    {
      note: 'Day and night, under the cover chosen; the top soil is about as warm.',
      decimals: 1,
    },
  ),
  computed(
    'low-when-it-goes-in',
    'Low when it goes in',
    TEMPERATURE,
    `TEMPERATUREAROUND([Planted out]; ${LOWS}) + [Cover gain at night]`,
    { decimals: 1 },
  ),
  computed(
    'sow-from',
    'Sow from',
    DATE,
    `[Earliest in the bed] - IF([Raised]; ${CROP}.[Weeks in propagation]; 0 weeks)`,
    {
      note: 'In trays or in the bed.',
    },
  ),
  computed(
    'sow-until',
    'Sow until',
    DATE,
    `[Latest in the bed] - IF([Raised]; ${CROP}.[Weeks in propagation]; 0 weeks)`,
  ),
);
