// Plantings, the crop's warmth and cold: from when a planting counts its warmth, when it is ripe by it, when cold ends it, and
// what of the harvest it takes. Where Climate is empty, days and the frost dates stand in, and what can't be known stays blank.

import { DAYS_PER_DEGREE } from '../engine/index.ts';
import {
  choice,
  computed,
  DATE,
  DAYS,
  DEGREE_DAYS,
  group,
  PLAIN,
  SHARE,
  TEMPERATURE,
  TEXT,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';

const CROP = '[Variety].[Crop]';
/** Emergence outdoors where its warmth is not known, as the Plantings sheet takes it. */
export const UNKNOWN_EMERGENCE = '14 days';
export const MEANS = 'Climate[Day]; Climate[Mean]';
export const LOWS = 'Climate[Day]; Climate[Low]';
export const GROWTH = `[Growth base]; [Growth ceiling]; ${MEANS}`;

const DAYS_TO_MATURITY = 'IF([In place]; [Variety].[Days to maturity direct]; [Variety].[Days to maturity])';
const YOUNG_LIMIT = `IF(ISBLANK(${CROP}.[Frost limit young]); ${CROP}.[Frost limit]; ${CROP}.[Frost limit young])`;

/** Days that a cold below freezing comes later in autumn, or goes earlier in spring, where no lows are known. */
function harder(limit: string): string {
  return `ROUND((0 degC - ${limit} + [Cover gain at night]) * ${DAYS_PER_DEGREE} days / 1 Cdeg; 1 day)`;
}

/** Below this share of its harvest a planting is told as one that does not finish (a judgement). */
const WORTH_PICKING = '5%';

/** A mean of 7 degC has nights at the 4 to 5 that clove garlic (a judgement). */
const CHILL_ALLOWANCE = '2.5 Cdeg';

/** So much warmer a day chills nothing; between, in part. Memory: chill units count hours whole to 9, half to 12.5 degC and none above. */
const CHILL_NONE = '8.5 Cdeg';
const ALL_COLDER = '0 degC - 90 Cdeg; 0 degC - 90 Cdeg';

/** With less than this share of its cold a crop is told as one without a harvest (a judgement). */
const FAR_SHORT = '50%';
const CHILL_FAR_SHORT = `AND(NOT(ISBLANK([Cold days had])); [Cold days had] < ${FAR_SHORT} * ${CROP}.[Chill days])`;

/** Dates typed that can't both be right: nothing is reckoned from them. */
const OUT_BEFORE_SOWN = 'NOT(OR(ISBLANK([Sown]); ISBLANK([Planted out]); [Planted out] >= [Sown]))';

/** Share of the harvest picked by a time after the first picking: along the curve, by cuts, or after the main head; else `even`. */
function pickedAlong(time: string, planting: string, even: string): string {
  const crop = `${planting}${CROP}`;
  const own = (column: string): string => `${planting}[${column}]`;
  return `SWITCH(${own('Harvest pattern')}; "curve"; HARVESTED(${time}; ${own('Window')}; ${crop}.[Harvest curve middle]; ${crop}.[Harvest curve spread]);
    "cuts"; CUTS(${time} - 1 day; ${own('Days between cuts')}; ${crop}.[Second cut share]; ${own('Third cut')});
    "head and shoots"; (1 - ${crop}.[Side shoot share]) * MIN(1; ${time} / 7 days) + ${crop}.[Side shoot share] * MAX(0; MIN(1; (${time} - 7 days) / ${own('Days of shoots')}));
    ${even})`;
}

/** The same, and evenly over the days picked for a crop without a pattern of its own. */
export function pickedBy(time: string, planting = ''): string {
  return pickedAlong(time, planting, `MIN(1; ${time} / ${planting}[Days picked])`);
}

export const RIPENING_COLUMNS = group(
  'Warmth and cold',
  computed(
    'summer',
    'Summer',
    DATE,
    `IF(ISBLANK(Farm[Middle of summer]); Farm[Season starts] + 203 days;
      HOTTESTDAY([Belongs near]; ${MEANS}))`,
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
    'years-to-the-harvest',
    'Years to the harvest',
    PLAIN,
    `IF([Variety].[Comes again in spring]; MAX(${CROP}.[Years to first harvest]; ROUND((Farm[Season starts] + 203 days - [Summer]) / 365.25 days; 0)))`,
    {
      note: 'Of what stands for years: from the year of planting to its first harvest, then to that of this season.',
      decimals: 0,
    },
  ),
  computed(
    'grows-again-from',
    'Grows again from',
    DATE,
    `IF([Variety].[Comes again in spring]; IF(ISBLANK(WARMFROM([Summer]; ${CROP}.[Growth minimum]; ${MEANS}));
      EDATE([Summer]; 12 * [Years to the harvest]) - 182 days;
      WARMFROM(EDATE([Summer]; 12 * [Years to the harvest]); ${CROP}.[Growth minimum]; ${MEANS})))`,
    { note: 'In the spring of that harvest; midwinter where it never stops.' },
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
    `IF([Variety].[Comes again in spring]; EDATE(IF(ISBLANK([Frost lets in from]); [Planted out]; [Frost lets in from]); 12 * [Years to the harvest]) + ${DAYS_TO_MATURITY};
      MAX([Planted out] + ${DAYS_TO_MATURITY}; [Emergence] + 1 day))`,
    {
      note: 'By the calendar alone; used where Climate is empty. What stands for years is reckoned from the spring of its harvest, about when it could be set out there.',
    },
  ),
  computed(
    'ripe',
    'Ripe',
    DATE,
    `IF([Variety].[Bulb crop]; [Tops down]; IF(OR(ISBLANK(Farm[Middle of summer]); ISBLANK([Warmth wanted])); [Ripe by days]; [Ripe by warmth]))`,
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
  computed('cut-once', 'Cut once', YES_OR_NO, '[Harvest pattern] = "even"', {
    note: 'Stands ready until it is lifted or cut: what frost would take is cut before.',
  }),
  computed('window', 'Window', DAYS, `IF(ISBLANK(${CROP}.[Harvest window]); 1 day; ${CROP}.[Harvest window])`, {
    note: 'From first to last harvest, if no cold comes.',
    decimals: 0,
  }),
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
    'picked-before-the-cold',
    'Picked before the cold',
    SHARE,
    `IF(NOT([Cut once]); ${pickedAlong('MAX(1 day; [Cold ends it] - [Ripe])', '', '100%')})`,
    { note: 'Of a harvest picked over weeks; the first day of it at least.', decimals: 0 },
  ),
  computed(
    'early-are-ripe',
    'Early are ripe',
    SHARE,
    'IF([Early ripe share] >= 1; 0%; MAX(0%; ([Share of warmth] - [Early ripe share]) / (1 - [Early ripe share])))',
    { note: 'Of the plants, where the warmth ends between that of an early one and the likely.', decimals: 0 },
  ),
  withDefault(
    'cold-days-had',
    'Cold days had',
    DAYS,
    `IF(NOT(ISBLANK(${CROP}.[Chill days])); COLDFELT([Planted out]; IF(${CROP}.[Warmth counts from] = "12-hour day in spring"; [Ripe]; [Growth counts from]);
      ${ALL_COLDER}; ${CROP}.[Chill below] + ${CHILL_ALLOWANCE}; ${CROP}.[Chill below] + ${CHILL_NONE}; ${MEANS}))`,
    {
      note: 'Days with a mean up to {4.5 °F|2.5 °C} over the cold the crop needs, warmer ones in part, to none {15 °F|8.5 °C} over it. Type over it where cloves or plants were cooled first.',
      decimals: 0,
      least: 0,
    },
  ),
  computed(
    'finishes',
    'Finishes',
    SHARE,
    `IF(OR(${OUT_BEFORE_SOWN}; ${CHILL_FAR_SHORT}); 0%; IF([Share of warmth] >= 1; IF(OR([Cut once]; ISBLANK([Cold ends it])); 100%; IF([Picked before the cold] < ${WORTH_PICKING}; 0%; 100%));
      IF([Early are ripe] * IF([Cut once]; 1; [Picked before the cold]) < ${WORTH_PICKING}; 0%; [Early are ripe])))`,
    {
      note: `All where it is ripe before the cold, none where even an early one is not, where less than ${WORTH_PICKING} of the harvest would be picked, or with less than ${FAR_SHORT} of the cold it needs.`,
      decimals: 0,
    },
  ),
  computed(
    'no-harvest-because',
    'No harvest because',
    TEXT,
    `IF([Finishes] = 0; IF(${OUT_BEFORE_SOWN}; "it is planted out before it is sown"; IF(${CHILL_FAR_SHORT}; "it has " & TEXT([Cold days had] / 1 day; "0") & " of the " & TEXT(${CROP}.[Chill days] / 1 day; "0") & " days of cold it needs"; IF([Killed in spring]; "frost kills it in spring: in half the years it comes until " & TEXT([Spring kills until]; "d mmm");
      IF(AND([Variety].[Bulb crop]; ISBLANK([Bulbing starts])); "it never bulbs: the days stay shorter than this variety needs";
        IF(ISBLANK([Ripe]); "it is never warm enough here for this crop";
          IF([Share of warmth] >= 1; "cold ends it about " & TEXT([Cold ends it]; "d mmm") & ", as the first of it ripens";
            "cold ends it about " & TEXT([Cold ends it]; "d mmm") & ", with " & TEXT([Share of warmth]; "0%") & " of the warmth it needs")))))))`,
  ),
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
    'window-lost',
    'Window lost',
    SHARE,
    `IF(ISBLANK([Days picked]); 0%; IF(OR([Days picked] >= [Window]; [Cut once]); 0%; 1 - ${pickedBy('[Days picked]')}))`,
    { note: 'Of the harvest, that cold cuts off; a crop cut once is cut in time.', decimals: 0 },
  ),
);
