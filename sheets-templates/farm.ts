// The Farm sheet, one row: where the farm lies, what its beds are like, how sure a stand must be, its stores, frosts and
// rates of work. Every other sheet reads from here; what is left empty keeps the figure shown.

import { FROST_DATE_DEVIATION, LOW_AT_FIRST_FROST, LOW_AT_LAST_FROST, type SheetDeclaration } from '../engine/index.ts';
import {
  AREA,
  computed,
  DATE,
  DENSITY,
  entered,
  group,
  LENGTH,
  link,
  MASS,
  PLAIN,
  quantity,
  SHARE,
  SPACING,
  TEMPERATURE,
  TEXT,
  VOLUME,
  WARMTH,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';

const DEGREES = quantity('deg');
const WAGE = quantity('money/h');
const PER_HOUR = quantity('1/h');

/** What one person does in an hour where the farm has no figure of its own (memory, and a few timings: see the notes). */
export const USUAL_RATES = { blocks: '600/1 h', plants: '500/1 h', row: '1200 m/h' } as const;

const TIME_BY_AREA = quantity('min/ft2', 'min/m2');
const MIX_PRICE = quantity('money/gal', 'money/L');

/** The date at a risk, from the dates of Frost years; blank with fewer than two of them. */
function frostDate(of: string, risk: string, dates: string, known: string): string {
  return `${of}(${risk}; [Season]; 'Frost years'[${dates}]; 'Frost years'[${known}]; TRUE)`;
}

/** The first of two that is known. */
function known(first: string, otherwise: string): string {
  return `IF(ISBLANK(${first}); ${otherwise}; ${first})`;
}

const LAST = ['Last frost', 'Spring known'] as const;
const FIRST = ['First frost', 'Autumn known'] as const;

/** Days between the average date of a frost and the one at the risk accepted. */
const MARGIN = `ROUND(NORM.S.INV(1 - [Frost risk accepted]) * ${FROST_DATE_DEVIATION} days; 1 day)`;
const LOWS = 'Climate[Day]; Climate[Low]';

/** Typed over, where nothing else is known or it differs from what is reckoned. */
function typedOver(column: string, reckoned: string): string {
  return `IF(ISBLANK([${reckoned}]); NOT(ISBLANK([${column}])); [${column}] <> [${reckoned}])`;
}

/** First and last months, in the north and in the south. */
interface Months {
  readonly north: readonly [number, number];
  readonly south: readonly [number, number];
}

/** Nearer to the equator the warmest weeks come before the rains, which may be in any month (common practice). */
const BEYOND = '10 deg';
const SUMMER: Months = { north: [6, 8], south: [12, 2] };
const SPRING: Months = { north: [3, 6], south: [9, 12] };
const WHICH_IS_RIGHT =
  'is it that of another place, or has the latitude the wrong sign? South of the equator it is below zero.';

/** Whether a day lies in the months of the other half of the world than the latitude. */
function otherHalf(day: string, { north, south }: Months): string {
  const within = ([first, last]: readonly [number, number]): string => {
    const both = [`MONTH(${day}) >= ${first}`, `MONTH(${day}) <= ${last}`].join('; ');
    return first <= last ? `AND(${both})` : `OR(${both})`;
  };
  return `OR(AND([Latitude] < -${BEYOND}; ${within(north)}); AND([Latitude] > ${BEYOND}; ${within(south)}))`;
}

export const farmSheet: SheetDeclaration = {
  id: 'farm',
  name: 'Farm',
  question: 'Where',
  about: 'The farm and the season in one row. Start here: latitude and frost dates set what can be grown and when.',
  rows: { from: 'single' },
  columns: [
    ...group(
      'Place',
      entered('farm-name', 'Farm name', TEXT),
      entered('season', 'Season', PLAIN, {
        note: 'The year being planned. South of the equator, the year in which its spring falls.',
        decimals: 0,
        least: 1900,
        most: 2200,
        required: true,
      }),
      entered('latitude', 'Latitude', DEGREES, {
        note: 'Degrees; north of the equator above zero, south below.',
        decimals: 2,
        least: -90,
        most: 90,
      }),
      entered('longitude', 'Longitude', DEGREES, {
        note: 'Degrees; east above zero.',
        decimals: 2,
        least: -180,
        most: 180,
      }),
      entered('elevation', 'Elevation', LENGTH, { decimals: 0 }),
      entered('currency', 'Currency', TEXT, { note: 'Money everywhere in this workbook is counted in it.' }),
      withDefault(
        'season-starts',
        'Season starts',
        DATE,
        `IF(AND(NOT(ISBLANK([Latitude])); [Latitude] < 0); DATE([Season]; 7; 1); DATE([Season]; 1; 1))`,
        {
          note: 'First day of the Climate sheet.',
        },
      ),
      withDefault('season-ends', 'Season ends', DATE, 'EDATE([Season starts]; 12) - 1 day'),
      computed(
        'weeks-until',
        'Weeks until',
        DATE,
        `MAX([Season ends] + 26 weeks; MAXIFS(Plantings[Harvest ends]; Plantings[Harvest ends]; "<=" & ([Season ends] + 52 weeks)))`,
        { note: 'Weeks go on for half a year, or until all is harvested that is ripe within a year of the season.' },
      ),
      entered('nothing-sown-before', 'Nothing sown before', DATE, {
        note: 'Dates are proposed so that no seed has to be sown before this day: a new season has the day it was begun on. Blank: any day.',
      }),
    ),
    ...group(
      'Ground',
      withDefault('bed-width', 'Bed width', SPACING, '30 in', { note: 'Planted width, without the path.', least: 0 }),
      withDefault('bed-length', 'Bed length', LENGTH, '50 ft', { least: 0 }),
      withDefault('path-width', 'Path width', SPACING, '18 in', { least: 0 }),
      entered('spacing-step', 'Spacing step', SPACING, {
        note: 'Usual spacings are taken to the nearest of it; to halves under three of them, to quarters under one. Blank: as the library has them.',
        least: 0,
      }),
    ),
    ...group(
      'How sure',
      withDefault('confidence', 'Confidence', SHARE, '90%', {
        note: 'Chance that enough blocks stand to fill the bed.',
        decimals: 0,
        least: 0,
        most: 99.99,
      }),
      withDefault('spare-seed', 'Spare seed', SHARE, '10%', {
        note: 'Spilt, doubled, kept back.',
        decimals: 0,
        least: 0,
        most: 200,
      }),
    ),
    ...group(
      'Frost',
      withDefault('frost-risk-accepted', 'Frost risk accepted', SHARE, '10%', { decimals: 0, least: 0.1, most: 99.9 }),
      computed(
        'middle-of-summer',
        'Middle of summer',
        DATE,
        'HOTTESTDAY([Season starts] + 182 days; Climate[Day]; Climate[Mean])',
        {
          note: 'Warmest day of the average year; needs Climate.',
        },
      ),
      computed(
        'summer-by-the-calendar',
        'Summer by the calendar',
        DATE,
        `IF(NOT(ISBLANK([Middle of summer])); DATE(YEAR([Middle of summer]); IF(AND(MONTH([Middle of summer]) > 3; MONTH([Middle of summer]) < 11); 7; 1); 22))`,
        {
          note: 'A month past the longest day. By a sea the warmest day may come weeks later; what belongs to which summer goes by this one.',
        },
      ),
      computed(
        'average-last-frost-reckoned',
        'Average last frost reckoned',
        DATE,
        known(
          frostDate('LASTFROSTDATE', '50%', ...LAST),
          `WARMFROM([Middle of summer]; ${LOW_AT_LAST_FROST} degC; ${LOWS})`,
        ),
        { note: `From Frost years; else when the mean low of Climate passes ${LOW_AT_LAST_FROST} degC.` },
      ),
      withDefault('average-last-frost', 'Average last frost', DATE, '[Average last frost reckoned]', {
        note: 'In spring: later in half the years. Calendars count their weeks from it.',
      }),
      computed(
        'last-frost-reckoned',
        'Last frost reckoned',
        DATE,
        known(frostDate('LASTFROSTDATE', '[Frost risk accepted]', ...LAST), `[Average last frost] + ${MARGIN}`),
        { note: `From Frost years; else the average with a spread of ${FROST_DATE_DEVIATION} days.` },
      ),
      withDefault('last-frost', 'Last frost', DATE, '[Last frost reckoned]', {
        note: 'In spring, at the risk you accept: later only in so many of a hundred years.',
      }),
      computed(
        'last-frost-of-half-the-years',
        'Last frost of half the years',
        DATE,
        `IF(AND(${typedOver('Last frost', 'Last frost reckoned')}; NOT(${typedOver('Average last frost', 'Average last frost reckoned')}));
          [Last frost] - ${MARGIN}; [Average last frost])`,
        {
          note: 'The average that dates are counted from; where only the date at your risk was typed, reckoned back from it.',
        },
      ),
      computed(
        'average-first-frost-reckoned',
        'Average first frost reckoned',
        DATE,
        known(
          frostDate('FIRSTFROSTDATE', '50%', ...FIRST),
          `WARMUNTIL([Middle of summer]; ${LOW_AT_FIRST_FROST} degC; ${LOWS})`,
        ),
        { note: `From Frost years; else when the mean low of Climate falls below ${LOW_AT_FIRST_FROST} degC.` },
      ),
      withDefault('average-first-frost', 'Average first frost', DATE, '[Average first frost reckoned]', {
        note: 'In autumn: earlier in half the years.',
      }),
      computed(
        'first-frost-reckoned',
        'First frost reckoned',
        DATE,
        known(frostDate('FIRSTFROSTDATE', '[Frost risk accepted]', ...FIRST), `[Average first frost] - ${MARGIN}`),
        { note: `From Frost years; else the average with a spread of ${FROST_DATE_DEVIATION} days.` },
      ),
      withDefault('first-frost', 'First frost', DATE, '[First frost reckoned]', {
        note: 'In autumn, at the risk you accept: earlier only in so many of a hundred years.',
      }),
      computed(
        'first-frost-of-half-the-years',
        'First frost of half the years',
        DATE,
        `IF(AND(${typedOver('First frost', 'First frost reckoned')}; NOT(${typedOver('Average first frost', 'Average first frost reckoned')}));
          [First frost] + ${MARGIN}; [Average first frost])`,
        { note: 'The average that dates are counted from.' },
      ),
      computed(
        'mean-low-at-first-frost',
        'Mean low at first frost',
        TEMPERATURE,
        `TEMPERATUREAROUND([First frost]; ${LOWS})`,
        {
          note: 'On the date at your risk: colder frosts come when the mean low has fallen as much further.',
          decimals: 1,
        },
      ),
      computed(
        'mean-low-at-last-frost',
        'Mean low at last frost',
        TEMPERATURE,
        `TEMPERATUREAROUND([Last frost of half the years]; ${LOWS})`,
        { note: 'On the average date.', decimals: 1 },
      ),
      computed(
        'coldest-mean',
        'Coldest mean',
        TEMPERATURE,
        'TEMPERATUREAROUND([Middle of summer] + 183 days; Climate[Day]; Climate[Mean])',
        {
          note: 'Of midwinter.',
          decimals: 1,
        },
      ),
      computed(
        'warmest-mean',
        'Warmest mean',
        TEMPERATURE,
        'TEMPERATUREAROUND([Middle of summer]; Climate[Day]; Climate[Mean])',
        { note: 'Of the middle of summer.', decimals: 1 },
      ),
      computed(
        'year-to-year',
        'Year to year',
        WARMTH,
        `IF(COUNT('Monthly climate'[Year to year]) > 0; AVERAGE('Monthly climate'[Year to year]))`,
        { note: "Standard deviation of a month's mean between years, over the months entered.", decimals: 1 },
      ),
    ),
    ...group(
      'Raising',
      withDefault('nursery-temperature', 'Nursery temperature', TEMPERATURE, '18 degC', {
        note: 'Mean of day and night where seedlings grow on, heated.',
      }),
      withDefault('heated-to-germinate', 'Heated to germinate', YES_OR_NO, 'TRUE', {
        note: 'A warm mat, cupboard or room until seed is up. Each planting can have its own.',
      }),
      withDefault('nursery-heated', 'Nursery heated', YES_OR_NO, 'TRUE', {
        note: 'While plants grow on. Each planting can have its own.',
      }),
      entered('block-tray', 'Block tray', link('trays'), { note: 'Used where a planting in blocks names no tray.' }),
      entered('cell-tray', 'Cell tray', link('trays'), { note: 'Used where a planting in cells names no tray.' }),
      entered('deep-tray', 'Deep tray', link('trays'), {
        note: 'Used where seedlings are raised loose and the planting names no tray.',
      }),
      withDefault('seeds-in-a-nursery-bed', 'Seeds in a nursery bed', DENSITY, '500/1 m2', {
        note: 'Of bed, sown close to be lifted and parted. Memory: {30 to 90 a square foot|300 to 1000 a square metre}.',
        decimals: 0,
        least: 1,
      }),
      entered('usual-mix', 'Usual mix', link('mixes'), { note: 'Used where a planting names no mix.' }),
      withDefault('mix-compaction', 'Mix compaction', PLAIN, '1.5', {
        note: 'Loose mix to pressed block. Published figures run from 1 to 3: measure your own.',
        least: 1,
        most: 4,
        decimals: 2,
      }),
      withDefault('mix-price', 'Mix price', MIX_PRICE, '[Usual mix].[Price of the mix]', {
        note: 'Of loose mix; from its ingredients where they have prices.',
        decimals: 2,
        least: 0,
      }),
      entered('bench-area', 'Bench area', AREA, { note: 'Room for trays in the propagation house.', least: 0 }),
      entered('germination-area', 'Germination area', AREA, {
        note: 'A chamber, cupboard or mat where trays stand until they are up; blank where they come up on the bench.',
        least: 0,
      }),
      computed('blocks-in-block-tray', 'Blocks in block tray', PLAIN, '[Block tray].[Cells]', { decimals: 0 }),
      computed('cells-in-cell-tray', 'Cells in cell tray', PLAIN, '[Cell tray].[Cells]', { decimals: 0 }),
      computed('block-volume', 'Block volume', quantity('in3', 'mL'), '[Block tray].[Cell volume]', { decimals: 1 }),
      computed('cell-volume', 'Cell volume', quantity('in3', 'mL'), '[Cell tray].[Cell volume]', { decimals: 1 }),
      computed('seeds-in-deep-tray', 'Seeds in deep tray', PLAIN, '[Deep tray].[Cells]', { decimals: 0 }),
      computed('mix-in-deep-tray', 'Mix in deep tray', VOLUME, '[Deep tray].[Mix per tray]', { decimals: 1 }),
      computed('deep-tray-area', 'Deep tray area', AREA, '[Deep tray].[Tray area]', { decimals: 2 }),
      computed('block-tray-area', 'Block tray area', AREA, '[Block tray].[Tray area]', { decimals: 2 }),
      computed('cell-tray-area', 'Cell tray area', AREA, '[Cell tray].[Tray area]', { decimals: 2 }),
    ),
    ...group(
      'Seed store',
      withDefault('seed-store-temperature', 'Seed store temperature', TEMPERATURE, '15 degC', {
        note: 'Common practice: degrees Fahrenheit and percent humidity should add up to less than 100, as 50 degF and 45 % do.',
      }),
      computed('packs-in-the-order', 'Packs in the order', PLAIN, 'SUM(Packs[Packs to order])', {
        note: 'None until the order is worked out.',
        decimals: 0,
      }),
      withDefault('seed-store-humidity', 'Seed store humidity', SHARE, '40%', { decimals: 0, least: 0, most: 100 }),
    ),
    ...group(
      'Keeping',
      entered('curing-area', 'Curing area', AREA, { note: 'Racks or floor for curing.', least: 0 }),
      withDefault('cold-store-temperature', 'Cold store temperature', TEMPERATURE, '3.5 degC', {
        note: 'Onions: 3 to 4 degC is common practice.',
      }),
      withDefault('cold-store-humidity', 'Cold store humidity', SHARE, '67%', {
        note: 'Onions: 65 to 70 %.',
        decimals: 0,
        least: 0,
        most: 100,
      }),
      entered('cold-store-capacity', 'Cold store capacity', MASS, { decimals: 0, least: 0 }),
    ),
    ...group(
      'Water',
      withDefault('rain-that-serves', 'Rain that serves', SHARE, '80%', {
        note: 'Of the rain that falls. Common practice.',
        decimals: 0,
        least: 0,
        most: 100,
      }),
      withDefault('water-that-arrives', 'Water that arrives', SHARE, '90%', {
        note: 'Of the water given: drip 90 %, sprinklers less. Common practice.',
        decimals: 0,
        least: 1,
        most: 100,
      }),
    ),
    ...group(
      'Work',
      entered('jobs-noted-from', 'Jobs noted from', DATE, {
        note: 'Jobs due before this day are taken as done: for a workbook taken up in the middle of a season.',
      }),
      entered('wage', 'Wage', WAGE, { note: 'Per hour, what an hour of work costs the farm.', decimals: 2, least: 0 }),
      withDefault('blocks-made-and-sown', 'Blocks made and sown', PER_HOUR, USUAL_RATES.blocks, {
        note: 'By one person, seed sown too. Memory: time your own.',
        decimals: 0,
        least: 1,
      }),
      withDefault('plants-set-out', 'Plants set out', PER_HOUR, USUAL_RATES.plants, {
        note: 'Blocks or plants by one person: 300 an hour through plastic, 480 on ridges, 960 in bursts were timed. Time your own.',
        decimals: 0,
        least: 1,
      }),
      withDefault('seeds-sown-loose', 'Seeds sown loose', PER_HOUR, '6000/1 h', {
        note: 'Broadcast or in bands, trays filled too. Memory: time your own.',
        decimals: 0,
        least: 1,
      }),
      withDefault('plants-lifted-and-parted', 'Plants lifted and parted', PER_HOUR, '600/1 h', {
        note: 'Loose seedlings lifted, parted and laid ready to set out. Memory: time your own.',
        decimals: 0,
        least: 1,
      }),
      withDefault('row-sown', 'Row sown', quantity('ft/h', 'm/h'), USUAL_RATES.row, {
        note: 'Of row by a push seeder. Memory: time your own.',
        decimals: 0,
        least: 1,
      }),
      withDefault('bed-making', 'Bed making', TIME_BY_AREA, '8 min/m2', {
        note: 'Clearing, compost, loosening, raking and drip line: 3.1 h a bed of {250 ft²|23 m²}. Memory: time your own.',
        decimals: 2,
        least: 0,
      }),
      withDefault('tending-a-week', 'Tending a week', TIME_BY_AREA, '0.2 min/m2', {
        note: 'Watering, feeding, looking for pests: some 5 minutes a week for a bed of {250 ft²|23 m²}. Memory: time your own.',
        decimals: 3,
        least: 0,
      }),
      withDefault('walking-a-bed-over', 'Walking a bed over', TIME_BY_AREA, '0.26 min/m2', {
        note: 'Least time of a picking: 0.1 h a bed of {250 ft²|23 m²}; okra, {10 to 20 h an acre|25 to 50 h a hectare} (Izekor & Katayama, University of Arkansas at Pine Bluff).',
        decimals: 3,
        least: 0,
      }),
    ),
  ],
  checks: [
    {
      id: 'latitude-missing',
      name: 'Latitude missing',
      level: 'warning',
      column: 'latitude',
      says: 'IF(ISBLANK([Latitude]); "Enter the latitude: day length, bulbing and harvest dates wait for it.")',
    },
    {
      id: 'frost-missing',
      name: 'Frost missing',
      level: 'note',
      column: 'last-frost',
      says: 'IF(AND(ISBLANK([Last frost]); ISBLANK([Middle of summer])); "Enter the last frost date, or fill Monthly climate: planting-out dates are checked against it.")',
    },
    {
      id: 'frosts-in-order',
      name: 'Frosts in order',
      level: 'warning',
      column: 'first-frost',
      says: 'IF([First frost] <= [Last frost]; "The first frost comes before the last one: look at both dates.")',
    },
    {
      id: 'other-half',
      name: 'Climate of the other half of the world',
      level: 'warning',
      column: 'latitude',
      says: `IF(NOT(ISBLANK([Middle of summer])); IF(${otherHalf('[Middle of summer]', SUMMER)};
          "The climate is warmest in " & TEXT([Middle of summer]; "mmmm") & ", in the middle of winter at this latitude: ${WHICH_IS_RIGHT}");
        IF(${otherHalf('[Average last frost]', SPRING)};
          "The last frost is in " & TEXT([Average last frost]; "mmmm") & ", in autumn at this latitude: ${WHICH_IS_RIGHT}"))`,
    },
    {
      id: 'damp-seed-store',
      name: 'Damp seed store',
      level: 'warning',
      column: 'seed-store-humidity',
      says: 'IF([Seed store humidity] > 60%; "Seed ages fast in air this damp: a closed tin with a drying agent keeps it.")',
    },
  ],
  cautions: [
    'Figures are planning estimates: local extension advice and your own records come first.',
    'Heaters, fans and lamps in propagation and curing houses need ventilation, sound wiring and room from anything that burns: follow local codes.',
  ],
};
