// The sheets of weather: Climate, a row a day of the season with an average year's low and high; Monthly climate, twelve
// months that fill it where no daily figures are entered; Frost years, each year's last and first frost. All may stay
// empty: the other sheets then reckon by days.

import {
  BULBING_BASE,
  BULBING_UPPER,
  LEAF_GROWTH_BASE,
  LEAF_GROWTH_UPPER,
  MONTHS,
  type SheetDeclaration,
} from '../engine/index.ts';
import {
  computed,
  DATE,
  DEGREE_DAYS,
  entered,
  group,
  HOURS,
  made,
  PLAIN,
  SHARE,
  TEMPERATURE,
  TEXT,
  WARMTH,
  WATER_DEPTH,
  WATER_PER_DAY,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';

/** Above the hottest monthly mean of highs on record anywhere, 47 to 48 degC (memory). */
const HOTTEST_MONTH = '52 degC';
/** Where even the warmest month stays below it no tree grows: the 10 degC line of Köppen (common practice). */
const TREE_LINE = '10 degC';

export const monthlyClimateSheet: SheetDeclaration = {
  id: 'monthly-climate',
  name: 'Monthly climate',
  question: 'Where',
  about: 'Twelve months of mean low and high, from a station near you. Climate makes smooth daily values of them.',
  rows: { from: 'entry' },
  key: 'month',
  columns: [
    ...group(
      'Month',
      entered('month', 'Month', TEXT, { required: true }),
      entered('number', 'Number', PLAIN, { note: '1 to 12.', decimals: 0, least: 1, most: 12, required: true }),
      entered('low', 'Low', TEMPERATURE, { note: "Mean of the days' lows." }),
      entered('high', 'High', TEMPERATURE, { note: "Mean of the days' highs." }),
      entered('reference-evapotranspiration', 'Reference evapotranspiration', WATER_PER_DAY, {
        note: 'Of short grass, a day, from a weather service; Bed water needs it.',
        decimals: 2,
        least: 0,
        most: 20,
      }),
      entered('rain', 'Rain', WATER_DEPTH, { note: 'Of the whole month.', decimals: 1, least: 0 }),
      entered('year-to-year', 'Year to year', WARMTH, {
        note: "Standard deviation of the month's mean between years, from the station: how far drawn seasons are warmer or colder.",
        decimals: 1,
        least: 0,
        most: 10,
      }),
    ),
  ],
  checks: [
    {
      id: 'low-above-high',
      name: 'Low above high',
      level: 'error',
      column: 'low',
      says: 'IF([Low] > [High]; "The low is above the high: look at both figures.")',
    },
    {
      id: 'other-scale',
      name: 'Typed in the other scale',
      level: 'warning',
      column: 'high',
      says: `IF([High] > ${HOTTEST_MONTH}; "Hotter than any month anywhere: was it typed in Fahrenheit? With °F after the figure it is turned over.";
        IF(AND(COUNT('Monthly climate'[High]) = 12; MAX('Monthly climate'[High]) < ${TREE_LINE}; [High] = MAX('Monthly climate'[High]));
          "Even the warmest month is too cold for any crop to ripen. Were the months typed in Celsius? With °C after each figure they are turned over."))`,
    },
  ],
  cautions: [],
};

export const MONTHLY_CLIMATE_ROWS: readonly Readonly<Record<string, string>>[] = MONTHS.map((name, index) => ({
  Month: name,
  Number: String(index + 1),
}));

/** Ids of the columns of Frost years with the warmth of January to December. */
export const MONTHS_WARMER: readonly string[] = MONTHS.map((name) => `${name.toLowerCase()}-warmer`);

export const frostYearsSheet: SheetDeclaration = {
  id: 'frost-years',
  name: 'Frost years',
  question: 'Where',
  about:
    'The last frost of spring and the first of autumn, year by year, at 0 degC and at -2 degC, and how warm its months were. Two years or more give the chance of frost by date.',
  rows: { from: 'entry' },
  key: 'year',
  columns: [
    ...group(
      'Year',
      entered('year', 'Year', TEXT, { required: true }),
      entered('last-frost', 'Last frost', DATE, { note: 'Last day of spring at 0 degC or below.' }),
      entered('first-frost', 'First frost', DATE, { note: 'First day of autumn at 0 degC or below.' }),
      entered('last-hard-frost', 'Last hard frost', DATE, { note: 'At -2 degC or below.' }),
      entered('first-hard-frost', 'First hard frost', DATE, { note: 'At -2 degC or below.' }),
    ),
    ...group(
      'Record',
      withDefault('spring-known', 'Spring known', YES_OR_NO, 'NOT(ISBLANK([Last frost]))', {
        note: 'Yes without a date is a spring without frost; it counts so.',
      }),
      withDefault('autumn-known', 'Autumn known', YES_OR_NO, 'NOT(ISBLANK([First frost]))'),
      withDefault('hard-spring-known', 'Hard spring known', YES_OR_NO, 'NOT(ISBLANK([Last hard frost]))'),
      withDefault('hard-autumn-known', 'Hard autumn known', YES_OR_NO, 'NOT(ISBLANK([First hard frost]))'),
    ),
    ...group(
      'Warmth of its months',
      ...MONTHS.map((name, index) =>
        entered(MONTHS_WARMER[index] ?? name, `${name} warmer`, WARMTH, {
          note: `How much warmer ${name} was than in the average year; colder below zero. Drawn seasons take such a year whole.`,
          decimals: 1,
        }),
      ),
    ),
  ],
  checks: [],
  cautions: [],
};

function frostColumn(
  id: string,
  name: string,
  of: 'FROSTTOCOME' | 'FROSTCOME',
  dates: string,
  known: string,
  note: string,
) {
  return computed(id, name, SHARE, `${of}([Day]; 'Frost years'[${dates}]; 'Frost years'[${known}]; TRUE)`, {
    note,
    decimals: 0,
  });
}

export const climateSheet: SheetDeclaration = {
  id: 'climate',
  name: 'Climate',
  question: 'Where',
  about:
    'An average year, a row a day: day length from the latitude, warmth from the station. Import the daily file of a station (DATE, TMAX, TMIN, with its unit: TMAX (degF)), which fills Frost years too, or fill Monthly climate; either may wait.',
  rows: { from: 'span', first: 'Farm[Season starts]', last: 'Farm[Season ends]', step: 'day', as: made('day', 'Day') },
  columns: [
    ...group(
      'Weather',
      withDefault(
        'low',
        'Low',
        TEMPERATURE,
        `DAILYOFMONTHS([Day]; 'Monthly climate'[Number]; 'Monthly climate'[Low])`,
        {
          decimals: 1,
        },
      ),
      withDefault(
        'high',
        'High',
        TEMPERATURE,
        `DAILYOFMONTHS([Day]; 'Monthly climate'[Number]; 'Monthly climate'[High])`,
        {
          decimals: 1,
        },
      ),
      computed('mean', 'Mean', TEMPERATURE, '[Low] + ([High] - [Low]) / 2', { decimals: 1 }),
    ),
    ...group('Light', computed('day-length', 'Day length', HOURS, 'DAYLENGTH(Farm[Latitude]; [Day])', { decimals: 2 })),
    ...group(
      'Warmth',
      computed(
        'degree-days-above-5-degc',
        'Bulbing degree-days',
        DEGREE_DAYS,
        `THERMALTIME([Low]; [High]; ${BULBING_BASE} degC; ${BULBING_UPPER} degC)`,
        {
          note: 'Of onions: above 5 degC, counted to 25 degC.',
          decimals: 1,
        },
      ),
      computed(
        'degree-days-6-to-20-degc',
        'Leaf growth degree-days',
        DEGREE_DAYS,
        `THERMALTIME([Low]; [High]; ${LEAF_GROWTH_BASE} degC; ${LEAF_GROWTH_UPPER} degC)`,
        {
          note: 'Of onions: 6 to 20 degC.',
          decimals: 1,
        },
      ),
      computed('degree-days-above-10-degc', 'Tender degree-days', DEGREE_DAYS, 'THERMALTIME([Low]; [High]; 10 degC)', {
        note: 'Above 10 degC.',
        decimals: 1,
      }),
    ),
    ...group(
      'Frost',
      frostColumn(
        'spring-frost-to-come',
        'Spring frost to come',
        'FROSTTOCOME',
        'Last frost',
        'Spring known',
        'Chance of a frost at 0 degC after this day in spring.',
      ),
      frostColumn(
        'autumn-frost-come',
        'Autumn frost come',
        'FROSTCOME',
        'First frost',
        'Autumn known',
        'Chance that the first frost of autumn has come.',
      ),
      frostColumn(
        'hard-spring-frost-to-come',
        'Hard spring frost to come',
        'FROSTTOCOME',
        'Last hard frost',
        'Hard spring known',
        'At -2 degC.',
      ),
      frostColumn(
        'hard-autumn-frost-come',
        'Hard autumn frost come',
        'FROSTCOME',
        'First hard frost',
        'Hard autumn known',
        'At -2 degC.',
      ),
    ),
  ],
  checks: [
    {
      id: 'low-above-high',
      name: 'Low above high',
      level: 'error',
      column: 'low',
      says: 'IF([Low] > [High]; "The low is above the high: look at both figures.")',
    },
  ],
  cautions: ['An average year is not this year: frost pockets and slopes differ from the station by weeks.'],
};
