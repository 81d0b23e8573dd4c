// Plantings, the crop's warmth and cold: from when a planting counts its warmth, when it is ripe by it, when cold ends it, and
// the dates between which it can go into the bed. plantings.ts puts the parts together. Where Climate is empty, days and the
// frost dates stand in, and what can't be known stays blank.

import { COOL_SUMMER_MARGIN, DAYS_PER_DEGREE } from '../engine/index.ts';
import {
  choice,
  computed,
  DATE,
  DAYS,
  DEGREE_DAYS,
  group,
  SHARE,
  TEMPERATURE,
  TEXT,
  WEEKS,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';

const CROP = '[Variety].[Crop]';
/** Emergence outdoors where its warmth is not known, as the Plantings sheet takes it. */
export const UNKNOWN_EMERGENCE = '14 days';
const MEANS = 'Climate[Day]; Climate[Mean]';
const LOWS = 'Climate[Day]; Climate[Low]';
const GROWTH = `[Growth base]; [Growth ceiling]; ${MEANS}`;

const YOUNG_LIMIT = `IF(ISBLANK(${CROP}.[Frost limit young]); ${CROP}.[Frost limit]; ${CROP}.[Frost limit young])`;

/** Days that a cold below freezing comes later in autumn, or goes earlier in spring, where no lows are known. */
function harder(limit: string): string {
  return `ROUND((0 degC - ${limit} + [Cover gain at night]) * ${DAYS_PER_DEGREE} days / 1 Cdeg; 1 day)`;
}

/** A mean of 7 degC has nights at the 4 to 5 that clove garlic (a judgement). */
const CHILL_ALLOWANCE = '2.5 Cdeg';

/** Mean above which cool-season crops grow on under the shortest days. */
const GROWING_WINTER = '9 degC';
/** Between fruit set and the first ripe fruit. */
const FRUIT_FILLING = '21 days';
/** Over the warmest a crop grows well in: seed and plants fail in hotter beds. */
const TOO_HOT_TO_START = '8 Cdeg';
/** An onion planted later than this after its day length comes has hardly a leaf to make a bulb with. */
const AFTER_DAY_LENGTH = '14 days';

/** Before heads are cut. */
const HEADING = '14 days';

/** Mean air over soil at planting depth in the morning, when garlic goes in (a judgement). */
const AIR_OVER_SOIL = '2 Cdeg';

/** Share of the harvest picked by a time after the first picking: along the curve, by cuts, after the main head, or evenly. */
export function pickedBy(time: string, planting = ''): string {
  const crop = `${planting}${CROP}`;
  const own = (column: string): string => `${planting}[${column}]`;
  return `SWITCH(${own('Harvest pattern')}; "curve"; HARVESTED(${time}; ${own('Window')}; ${crop}.[Harvest curve middle]; ${crop}.[Harvest curve spread]);
    "cuts"; CUTS(${time} - 1 day; ${own('Days between cuts')}; ${crop}.[Second cut share]; ${own('Third cut')});
    "head and shoots"; (1 - ${crop}.[Side shoot share]) * MIN(1; ${time} / 7 days) + ${crop}.[Side shoot share] * MAX(0; MIN(1; (${time} - 7 days) / ${own('Days of shoots')}));
    MIN(1; ${time} / ${own('Days picked')}))`;
}

/** The latest date to be up or set out so that the crop is ripe by a date. */
function upFor(by: string): string {
  return `WARMTHSTART(${by}; [Warmth wanted]; ${GROWTH})`;
}

/** The latest date in the bed from which it is up by a date: seed sown there comes up first. */
function inTheBedFor(up: string): string {
  return `IF(NOT([Comes up in the bed]); ${up}; IF(ISBLANK(${CROP}.[Emergence thermal time]); ${up} - ${UNKNOWN_EMERGENCE};
    WARMTHSTART(${up}; ${CROP}.[Emergence thermal time]; ${CROP}.[Emergence base] - [Cover gain]; 25 degC; ${MEANS})))`;
}

export const RIPENING_COLUMNS = group(
  'Warmth and cold',
  computed(
    'summer',
    'Summer',
    DATE,
    `IF(ISBLANK(Farm[Middle of summer]); Farm[Season starts] + 203 days;
      HOTTESTDAY(IF(ISBLANK([Planted out]); Farm[Middle of summer]; [Planted out] + 30 days); ${MEANS}))`,
    { note: 'The middle of the summer it belongs to.' },
  ),
  computed('in-place', 'In place', YES_OR_NO, 'OR([Start] = "direct seed"; ISBLANK([Variety].[Days to maturity]))', {
    note: 'Reckoned by the figures for crops sown or set in place.',
  }),
  computed('comes-up-in-the-bed', 'Comes up in the bed', YES_OR_NO, '[Start] = "direct seed"'),
  computed(
    'by-published-warmth',
    'By published warmth',
    YES_OR_NO,
    `NOT(ISBLANK(IF([In place]; ${CROP}.[Warmth to harvest direct]; ${CROP}.[Warmth to harvest])))`,
  ),
  computed('growth-base', 'Growth base', TEMPERATURE, `${CROP}.[Degree-day base] - [Cover gain]`, {
    note: "The crop's degree-day base, less what a cover adds.",
    decimals: 1,
  }),
  computed(
    'growth-ceiling',
    'Growth ceiling',
    TEMPERATURE,
    `IF([By published warmth]; ${CROP}.[Degree-day ceiling]; MIN(${CROP}.[Degree-day ceiling]; ${CROP}.[Growth best to])) - [Cover gain]`,
    {
      note: 'Warmth above it does not count; where days to maturity are scaled, warmer than the crop likes best does not hasten it.',
      decimals: 1,
    },
  ),
  withDefault(
    'warmth-wanted',
    'Warmth wanted',
    DEGREE_DAYS,
    'IF([In place]; [Variety].[Warmth to harvest direct]; [Variety].[Warmth to harvest])',
    { note: 'Until first harvest.', decimals: 0, least: 0 },
  ),
  computed(
    'grows-again-from',
    'Grows again from',
    DATE,
    `IF([Variety].[Comes again in spring]; IF(ISBLANK(WARMFROM([Summer]; ${CROP}.[Growth minimum]; ${MEANS}));
      EDATE([Summer]; 12 * ${CROP}.[Years to first harvest]) - 182 days;
      WARMFROM(EDATE([Summer]; 12 * ${CROP}.[Years to first harvest]); ${CROP}.[Growth minimum]; ${MEANS})))`,
    { note: 'In the spring of its first harvest; midwinter where it never stops.' },
  ),
  computed(
    'growth-counts-from',
    'Growth counts from',
    DATE,
    `IF(${CROP}.[Warmth counts from] = "12-hour day in spring";
      LONGDAYFROM(Farm[Latitude]; 12 h; IF([Planted out] < [Summer] - 45 days; [Planted out]; [Summer] + 155 days));
      IF([Variety].[Comes again in spring]; [Grows again from];
        IF([Comes up in the bed]; [Emergence]; [Planted out])))`,
    { note: 'Emergence, planting out, or for crops that stand over winter the spring.' },
  ),
  computed('ripe-by-warmth', 'Ripe by warmth', DATE, `WARMTHDATE([Growth counts from]; [Warmth wanted]; ${GROWTH})`, {
    note: 'Needs Climate.',
  }),
  computed(
    'ripe-by-days',
    'Ripe by days',
    DATE,
    `MAX([Planted out] + IF([In place]; [Variety].[Days to maturity direct]; [Variety].[Days to maturity]); [Emergence] + 1 day)`,
    { note: 'By the calendar alone; used where Climate is empty.' },
  ),
  computed(
    'ripe',
    'Ripe',
    DATE,
    'IF([Variety].[Bulb crop]; [Tops down]; IF(OR(ISBLANK(Farm[Middle of summer]); ISBLANK([Warmth wanted])); [Ripe by days]; [Ripe by warmth]))',
    {
      note: 'If no cold comes before.',
    },
  ),
  computed(
    'killing-low',
    'Killing low',
    TEMPERATURE,
    `IF(AND(${CROP}.[Overwinters] <> "autumn planted"; NOT([Variety].[Comes again in spring]));
      Farm[Mean low at first frost] + (${CROP}.[Frost limit] - 0 degC) - [Cover gain at night])`,
    {
      note: "When the mean low has fallen to this, a night that kills the crop has come at the farm's risk; none for crops that stand the winter in the ground.",
      decimals: 1,
    },
  ),
  computed(
    'killing-night',
    'Killing night',
    DATE,
    `IF(NOT(ISBLANK(Farm[Middle of summer])); WARMUNTIL([Summer]; [Killing low]; ${LOWS});
      IF(AND(${CROP}.[Overwinters] <> "autumn planted"; NOT([Variety].[Comes again in spring])); Farm[First frost] + ${harder(`${CROP}.[Frost limit]`)}))`,
    { note: "First of autumn or winter that kills the crop, at the farm's risk. Blank: none, or not known." },
  ),
  computed(
    'spring-kills-until',
    'Spring kills until',
    DATE,
    `IF(OR(${CROP}.[Hardiness] = "tender"; ${CROP}.[Hardiness] = "half-hardy");
      IF(ISBLANK(Farm[Middle of summer]); Farm[Last frost of half the years] - ${harder(YOUNG_LIMIT)};
        WARMFROM([Summer]; Farm[Mean low at last frost] + (${YOUNG_LIMIT} - 0 degC) - [Cover gain at night]; ${LOWS})))`,
    {
      note: 'A tender or half-hardy plant up before it is killed in more than half the years. Blank: none, or not known.',
    },
  ),
  computed('up', 'Up', DATE, 'IF([Comes up in the bed]; [Emergence]; [Planted out])', {
    note: 'Above the ground, in the bed.',
  }),
  computed(
    'killed-in-spring',
    'Killed in spring',
    YES_OR_NO,
    'AND([Start] <> "sets"; NOT(ISBLANK([Up])); [Up] < [Summer]; IF(ISBLANK([Spring kills until]); FALSE; [Up] < [Spring kills until]))',
    { note: 'Up before the frosts are over. Sets and tubers come again from below.' },
  ),
  computed(
    'cold-ends-it',
    'Cold ends it',
    DATE,
    `IF([Killed in spring]; [Up]; IF(NOT(ISBLANK([Killing night])); MAX([Killing night]; [Up])))`,
    { note: 'The day from which none of it is alive, at the risk accepted.' },
  ),
  computed(
    'early-ripe-share',
    'Early ripe share',
    SHARE,
    'IF([In place]; [Variety].[Early share direct]; [Variety].[Early share])',
    {
      note: 'Of the warmth wanted, that an early one is ripe with.',
      decimals: 0,
    },
  ),
  computed(
    'late-ripe-share',
    'Late ripe share',
    SHARE,
    'IF([In place]; [Variety].[Late share direct]; [Variety].[Late share])',
    {
      note: 'Of the warmth wanted, that a late one is ripe with.',
      decimals: 0,
    },
  ),
  computed(
    'ripe-can-be-known',
    'Ripe can be known',
    YES_OR_NO,
    `AND(NOT(ISBLANK([Up])); IF([Variety].[Bulb crop]; AND(NOT(ISBLANK(Farm[Latitude])); NOT(ISBLANK([Large enough])));
      AND(NOT(ISBLANK(Farm[Middle of summer])); NOT(ISBLANK([Warmth wanted])))))`,
    { note: 'What it hangs on is filled in: a blank date of ripeness then means never.' },
  ),
  computed(
    'share-of-warmth',
    'Share of warmth',
    SHARE,
    `IF(ISBLANK([Ripe]); IF([Ripe can be known]; 0%; 100%);
      IF(OR(ISBLANK([Cold ends it]); [Ripe] < [Cold ends it]); 100%;
        IF(OR(ISBLANK(Farm[Middle of summer]); [Variety].[Bulb crop]); MAX(0 days; [Cold ends it] - [Up]) / ([Ripe] - [Up]);
          WARMTHBETWEEN([Growth counts from]; [Cold ends it]; ${GROWTH}) / [Warmth wanted])))`,
    { note: 'Of what it needs to ripen, that comes before the cold.', decimals: 0 },
  ),
  computed(
    'finishes',
    'Finishes',
    SHARE,
    `IF([Share of warmth] >= 1; 100%; IF([Early ripe share] >= 1; 0%; MAX(0%; ([Share of warmth] - [Early ripe share]) / (1 - [Early ripe share]))))`,
    { note: 'All where it is ripe before the cold, none where even an early one is not.', decimals: 0 },
  ),
  computed(
    'cold-days-had',
    'Cold days had',
    DAYS,
    `IF(NOT(ISBLANK(${CROP}.[Chill days])); [Growth counts from] - [Planted out]
      - DAYSABOVE([Planted out]; [Growth counts from]; ${CROP}.[Chill below] + ${CHILL_ALLOWANCE}; ${MEANS}))`,
    {
      note: 'Before growth begins, for crops that need cold: days with a mean up to 2.5 degrees over the cold they want.',
      decimals: 0,
    },
  ),
  computed(
    'no-harvest-because',
    'No harvest because',
    TEXT,
    `IF([Finishes] = 0; IF([Killed in spring]; "frost kills it in spring: in half the years it comes until " & TEXT([Spring kills until]; "d mmm");
      IF(AND([Variety].[Bulb crop]; ISBLANK([Bulbing starts])); "it never bulbs: the days stay shorter than this variety needs";
        IF(ISBLANK([Ripe]); "it is never warm enough here for this crop";
          "cold ends it about " & TEXT([Cold ends it]; "d mmm") & ", with " & TEXT([Share of warmth]; "0%") & " of the warmth it needs"))))`,
  ),
  computed('cut-once', 'Cut once', YES_OR_NO, '[Harvest pattern] = "even"', {
    note: 'Stands ready until it is lifted or cut: what frost would take is cut before.',
  }),
  computed('window', 'Window', DAYS, `IF(ISBLANK(${CROP}.[Harvest window]); 1 day; ${CROP}.[Harvest window])`, {
    note: 'From first to last harvest, if no cold comes.',
    decimals: 0,
  }),
  computed(
    'days-picked',
    'Days picked',
    DAYS,
    'IF([Finishes] > 0; IF(ISBLANK([Cold ends it]); [Window]; MIN([Window]; MAX(1 day; [Cold ends it] - [Harvest]))))',
    {
      note: 'Of the window, before the cold.',
      decimals: 0,
    },
  ),
  computed(
    'harvest-pattern',
    'Harvest pattern',
    choice('curve', 'cuts', 'head and shoots', 'even'),
    `IF(NOT(ISBLANK(${CROP}.[Harvest curve middle])); "curve"; IF(NOT(ISBLANK(${CROP}.[Second cut share])); "cuts";
      IF(NOT(ISBLANK(${CROP}.[Side shoot share])); "head and shoots"; "even")))`,
    { note: 'How the harvest comes over its window.' },
  ),
  computed(
    'days-between-cuts',
    'Days between cuts',
    DAYS,
    `MIN(${CROP}.[Days between pickings]; ([Window] - 1 day) / 2)`,
    {
      note: 'Three cuts fit into the window.',
      decimals: 0,
    },
  ),
  computed('third-cut', 'Third cut', SHARE, `MAX(0%; ${CROP}.[Third cut share])`, {
    note: 'Over the first.',
    decimals: 0,
  }),
  computed('days-of-shoots', 'Days of shoots', DAYS, 'MAX(1 day; [Window] - 7 days)', {
    note: 'After the week of the main head.',
    decimals: 0,
  }),
  computed(
    'window-lost',
    'Window lost',
    SHARE,
    `IF(ISBLANK([Days picked]); 0%; IF(OR([Days picked] >= [Window]; [Cut once]); 0%; 1 - ${pickedBy('[Days picked]')}))`,
    { note: 'Of the harvest, that cold cuts off; a crop cut once is cut in time.', decimals: 0 },
  ),
);

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
  computed('warm-from', 'Warm from', DATE, `WARMFROM([Summer]; [Warm enough at]; ${MEANS})`, {
    note: 'Blank: warm enough all winter, or not known.',
  }),
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
    'ripe-again-from',
    'Ripe again from',
    DATE,
    `[Too hot until] + [Fruit sets before] + IF(${CROP}.[Harvest unit] = "head"; ${HEADING}; 0 days)`,
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
    `IF(ISBLANK(Farm[Middle of summer]); [Growth ends] - IF([In place]; ${CROP}.[Latest sowing before first frost]; ${CROP}.[Latest planting out before first frost]);
      ${inTheBedFor('[Up before the cold]')})`,
    { note: 'To be ripe before growth ends, whatever the year.' },
  ),
  computed('before-the-cold', 'Before the cold', DATE, 'IF([For the cold] > [Summer] - 200 days; [For the cold])', {
    note: 'Latest in the bed to be ripe before growth ends; blank where the season is too short for the crop.',
  }),
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
    `AND(NOT([Variety].[Bulb crop]); NOT(ISBLANK([After the heat])); NOT(ISBLANK([Planted out]));
      [Planted out] > MAX([Before the heat] + ([After the heat] - [Before the heat]) / 2; [Spring start] + 45 days))`,
    { note: 'It goes in for the cool time after the heat of summer.' },
  ),
  computed(
    'autumn-opens',
    'Autumn opens',
    DATE,
    `IF(${CROP}.[Overwinters] = "autumn planted"; WARMUNTIL([Summer]; MAX(${CROP}.[Autumn soil maximum] + ${AIR_OVER_SOIL}; Farm[Coldest mean] + 3 Cdeg); ${MEANS}))`,
    {
      note: 'For what is planted in autumn: the soil has cooled, which the mean air shows about two degrees above it; where it never cools so far, the coolest months.',
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
    'latest-in-the-bed',
    'Latest in the bed',
    DATE,
    `IF(NOT(ISBLANK([Autumn closes])); [Autumn closes]; IF([Variety].[Bulb crop]; [Variety].[Day length reached] + ${AFTER_DAY_LENGTH}; IF(ISBLANK([Before the heat]); [Before the cold];
      IF([Autumn crop]; IF(ISBLANK([Growth ends]); EDATE([Before the heat]; 12); [Before the cold]); MAX([Before the heat]; [Spring start] + 21 days)))))`,
    { note: 'To be ripe before the heat or the cold. Blank: at any time.' },
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
