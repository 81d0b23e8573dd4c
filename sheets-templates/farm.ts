// The Farm sheet, one row: where the farm lies, what its beds are like, how sure a stand must be, its stores, frosts and
// rates of work. Every other sheet reads from here; what is left empty keeps the figure shown.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  AREA,
  computed,
  DATE,
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
  withDefault,
} from './authoring.ts';

const DEGREES = quantity('deg');
const WAGE = quantity('money/h');
const PER_HOUR = quantity('1/h');
const HOURS_PER_AREA = quantity('h/acre', 'h/ha');
const MIX_PRICE = quantity('money/gal', 'money/L');

/** The date at the risk accepted, from the dates of Frost years; blank with fewer than two of them. */
function frostDate(of: string, dates: string, known: string): string {
  return `${of}([Frost risk accepted]; [Season]; 'Frost years'[${dates}]; 'Frost years'[${known}]; TRUE)`;
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
    ),
    ...group(
      'Ground',
      withDefault('bed-width', 'Bed width', SPACING, '30 in', { note: 'Planted width, without the path.', least: 0 }),
      withDefault('bed-length', 'Bed length', LENGTH, '50 ft', { least: 0 }),
      withDefault('path-width', 'Path width', SPACING, '18 in', { least: 0 }),
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
      withDefault('last-frost', 'Last frost', DATE, frostDate('LASTFROSTDATE', 'Last frost', 'Spring known'), {
        note: 'In spring, at the risk you accept: from Frost years where they are filled.',
      }),
      withDefault('first-frost', 'First frost', DATE, frostDate('FIRSTFROSTDATE', 'First frost', 'Autumn known'), {
        note: 'In autumn, likewise.',
      }),
      withDefault('frost-risk-accepted', 'Frost risk accepted', SHARE, '10%', { decimals: 0, least: 0, most: 100 }),
    ),
    ...group(
      'Raising',
      withDefault('nursery-temperature', 'Nursery temperature', TEMPERATURE, '18 degC', {
        note: 'Mean of day and night where seedlings stand.',
      }),
      entered('block-tray', 'Block tray', link('trays'), { note: 'Used where a planting in blocks names no tray.' }),
      entered('cell-tray', 'Cell tray', link('trays'), { note: 'Used where a planting in cells names no tray.' }),
      withDefault('mix-compaction', 'Mix compaction', PLAIN, '1.5', {
        note: 'Loose mix to pressed block. Published figures run from 1 to 3: measure your own.',
        least: 1,
        most: 4,
        decimals: 2,
      }),
      entered('mix-price', 'Mix price', MIX_PRICE, { note: 'Of loose mix.', decimals: 2, least: 0 }),
      entered('bench-area', 'Bench area', AREA, { note: 'Room for trays in the propagation house.', least: 0 }),
      computed('blocks-in-block-tray', 'Blocks in block tray', PLAIN, '[Block tray].[Cells]', { decimals: 0 }),
      computed('cells-in-cell-tray', 'Cells in cell tray', PLAIN, '[Cell tray].[Cells]', { decimals: 0 }),
      computed('block-volume', 'Block volume', quantity('in3', 'mL'), '[Block tray].[Cell volume]', { decimals: 1 }),
      computed('cell-volume', 'Cell volume', quantity('in3', 'mL'), '[Cell tray].[Cell volume]', { decimals: 1 }),
      computed('block-tray-area', 'Block tray area', AREA, '[Block tray].[Tray area]', { decimals: 2 }),
      computed('cell-tray-area', 'Cell tray area', AREA, '[Cell tray].[Tray area]', { decimals: 2 }),
    ),
    ...group(
      'Seed store',
      withDefault('seed-store-temperature', 'Seed store temperature', TEMPERATURE, '15 degC', {
        note: 'Common practice: degrees Fahrenheit and percent humidity should add up to less than 100.',
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
      entered('wage', 'Wage', WAGE, { note: 'Per hour, what an hour of work costs the farm.', decimals: 2, least: 0 }),
      withDefault('blocks-made-and-sown', 'Blocks made and sown', PER_HOUR, '600/1 h', {
        note: 'By one person. Memory: time your own.',
        decimals: 0,
        least: 1,
      }),
      withDefault('plants-set-out', 'Plants set out', PER_HOUR, '400/1 h', {
        note: 'Blocks or plants by one person. Memory: time your own.',
        decimals: 0,
        least: 1,
      }),
      withDefault('weeding', 'Weeding', HOURS_PER_AREA, '200 h/acre', {
        note: 'Hand weeding of bed area in a season. Memory: time your own.',
        decimals: 0,
        least: 0,
      }),
      withDefault('harvest-work', 'Harvest work', HOURS_PER_AREA, '60 h/acre', {
        note: 'Pulling or cutting, by bed area. Memory: time your own.',
        decimals: 0,
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
      says: 'IF(ISBLANK([Last frost]); "Enter the last frost date: planting-out dates are checked against it.")',
    },
    {
      id: 'frosts-in-order',
      name: 'Frosts in order',
      level: 'warning',
      column: 'first-frost',
      says: 'IF([First frost] <= [Last frost]; "The first frost comes before the last one: look at both dates.")',
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
