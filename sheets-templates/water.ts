// The sheets of water: Weather by week, reference evapotranspiration and rain out of Monthly climate, and Bed water, what each
// planting takes week by week. Reads Plantings, Crops, Monthly climate and Farm.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  computed,
  DATE,
  DAYS,
  group,
  link,
  made,
  PLAIN,
  TEMPERATURE,
  TEXT,
  VOLUME,
  WATER_DEPTH,
  WATER_PER_DAY,
  withDefault,
} from './authoring.ts';

const CROP = '[Planting].[Variety].[Crop]';
const MONTHS = `'Monthly climate'[Number]`;
export const weatherByWeekSheet: SheetDeclaration = {
  id: 'weather-by-week',
  name: 'Weather by week',
  question: 'Ground',
  about:
    'Water that grass takes and rain that falls, week by week, out of the months of Monthly climate. Write over a week with what was measured.',
  rows: {
    from: 'span',
    first: 'Farm[Season starts]',
    last: 'Farm[Season ends]',
    step: 'week',
    as: made('week', 'Week'),
  },
  columns: [
    ...group(
      'Weather',
      computed('mean-low', 'Mean low', TEMPERATURE, 'TEMPERATUREAROUND([Week] + 3 days; Climate[Day]; Climate[Low])', {
        note: 'Of the average year.',
        decimals: 1,
      }),
      computed(
        'mean-high',
        'Mean high',
        TEMPERATURE,
        'TEMPERATUREAROUND([Week] + 3 days; Climate[Day]; Climate[High])',
        {
          decimals: 1,
        },
      ),
      computed(
        'from-temperatures',
        'From temperatures',
        WATER_PER_DAY,
        'HARGREAVES(Farm[Latitude]; [Week] + 3 days; [Mean low]; [Mean high])',
        { note: 'Reference evapotranspiration by the Hargreaves equation (FAO-56), where none is typed.', decimals: 2 },
      ),
      computed(
        'from-the-months',
        'From the months',
        WATER_PER_DAY,
        `DAILYOFMONTHS([Week] + 3 days; ${MONTHS}; 'Monthly climate'[Reference evapotranspiration])`,
        { note: 'Of short grass, from a weather service.', decimals: 2 },
      ),
      withDefault(
        'reference-evapotranspiration',
        'Reference evapotranspiration',
        WATER_PER_DAY,
        'IF(ISBLANK([From the months]); [From temperatures]; [From the months])',
        { note: 'Of short grass; write over a week what was measured.', decimals: 2, least: 0 },
      ),
      withDefault(
        'rain',
        'Rain',
        WATER_DEPTH,
        `XLOOKUP(MONTH([Week] + 3 days); ${MONTHS}; 'Monthly climate'[Rain]) * 7 / DAY(EDATE(DATE(YEAR([Week] + 3 days); MONTH([Week] + 3 days); 1); 1) - 1 day)`,
        { note: 'Mean of the month.', decimals: 2, least: 0 },
      ),
    ),
    ...group(
      'Water',
      computed(
        'water-for-all-beds',
        'Water for all beds',
        VOLUME,
        `SUMIFS('Bed water'[Water]; 'Bed water'[Week starts]; [Week])`,
        {
          decimals: 0,
        },
      ),
      computed('water-on', 'Water on', DATE, 'IF([Water for all beds] > 0 L; [Week])', {
        note: 'A week in which beds want water.',
      }),
    ),
  ],
  checks: [],
  cautions: [],
};

export const bedWaterSheet: SheetDeclaration = {
  id: 'bed-water',
  name: 'Bed water',
  question: 'Ground',
  about:
    'Water each planting takes, week by week (FAO-56): crop coefficient x reference evapotranspiration, less rain that serves, on the area of its bed. Where Monthly climate has no evapotranspiration it is reckoned from temperatures.',
  rows: {
    from: 'pairs',
    sheets: ['plantings', 'weather-by-week'],
    as: [made('planting', 'Planting'), made('week', 'Week')],
    where: `AND([Week].[Week] + 7 days > [Planting].[Planted out]; [Week].[Week] < [Planting].[Bed free];
      NOT(ISBLANK(${CROP}.[Crop coefficient mid])); NOT(ISBLANK([Week].[Reference evapotranspiration])))`,
  },
  columns: [
    ...group(
      'Time',
      computed('week-starts', 'Week starts', DATE, '[Week].[Week]'),
      computed('crop', 'Crop', TEXT, '[Planting].[Crop]'),
      computed('bed', 'Bed', link('beds'), '[Planting].[Bed]'),
      computed('season', 'Season', DAYS, '[Planting].[Bed free] - [Planting].[Planted out]', {
        note: 'The four stages of the crop are stretched to it.',
        decimals: 0,
      }),
      computed('from', 'From', DAYS, 'MAX(0 days; [Week].[Week] - [Planting].[Planted out])', {
        note: 'Since planting.',
        decimals: 0,
      }),
      computed('to', 'To', DAYS, 'MIN([Season]; [Week].[Week] + 7 days - [Planting].[Planted out])', { decimals: 0 }),
    ),
    ...group(
      'Water',
      computed(
        'crop-coefficient',
        'Crop coefficient',
        PLAIN,
        'COEFFICIENTON([Planting].[Water course]; ([From] + [To]) / 2)',
        {
          note: 'In the middle of the days.',
          decimals: 2,
        },
      ),
      computed(
        'crop-takes',
        'Crop takes',
        WATER_DEPTH,
        'WATERTAKEN([Planting].[Water course]; [Week].[Reference evapotranspiration]; [From]; [To])',
        {
          decimals: 2,
        },
      ),
      computed(
        'rain-that-serves',
        'Rain that serves',
        WATER_DEPTH,
        'IF(ISBLANK([Week].[Rain]); 0 mm; [Week].[Rain] * ([To] - [From]) / 7 days * Farm[Rain that serves])',
        {
          decimals: 2,
        },
      ),
      withDefault(
        'to-give',
        'To give',
        WATER_DEPTH,
        'MAX(0 mm; [Crop takes] - [Rain that serves]) / Farm[Water that arrives]',
        {
          decimals: 2,
          least: 0,
        },
      ),
      computed('water', 'Water', VOLUME, '[To give] * [Planting].[Bed area]', {
        note: 'On the whole planting.',
        decimals: 0,
      }),
    ),
  ],
  checks: [],
  cautions: [
    'An estimate for planning: dig and feel the soil, and let rain and heat change it.',
    'Water from ponds and rivers may carry disease: follow local rules for crops eaten raw.',
  ],
};
