// The sheets of places: Stores, where things are kept or cured, and Lots and stores, how well each store suits each planting that
// keeps. Reads Farm, Plantings and Crops.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  AREA,
  choice,
  computed,
  entered,
  group,
  MASS,
  made,
  PLAIN,
  SHARE,
  TEMPERATURE,
  TEXT,
  WARMTH,
  withDefault,
} from './authoring.ts';

const CROP = '[Planting].[Variety].[Crop]';
const STORE = '[Store]';

/** Published best and what growers do with onions, which keep at 3 to 4 degC (common practice). */
export const BEST_TO = `IF([Planting].[Variety].[Bulb crop]; MAX(${CROP}.[Storage temperature]; 4 degC); ${CROP}.[Storage temperature])`;

export const storesSheet: SheetDeclaration = {
  id: 'stores',
  name: 'Stores',
  question: 'Storing',
  about:
    'Places to keep and to cure in: temperature, humidity and room of each. The cold store of the farm is there; add a cellar, a dry shed, a second rack.',
  rows: { from: 'entry' },
  key: 'store',
  columns: [
    ...group(
      'Place',
      entered('store', 'Store', TEXT, { required: true }),
      withDefault('for', 'For', choice('keeping', 'curing'), '"keeping"'),
      withDefault('temperature', 'Temperature', TEMPERATURE, 'Farm[Cold store temperature]', {
        note: "Blank: the farm's cold store.",
        decimals: 1,
      }),
      withDefault('humidity', 'Humidity', SHARE, 'Farm[Cold store humidity]', { decimals: 0, least: 0, most: 100 }),
      withDefault(
        'room',
        'Room',
        MASS,
        'IF(AND([For] = "keeping"; COUNTIFS(Stores[For]; "keeping") = 1); Farm[Cold store capacity])',
        {
          note: 'What it holds. With one store it is the cold store of Farm; with more, type each.',
          decimals: 0,
          least: 0,
        },
      ),
      entered('area', 'Area', AREA, { note: 'Of racks or floor, where things are cured.', decimals: 0, least: 0 }),
      entered('note', 'Note', TEXT),
    ),
  ],
  checks: [],
  cautions: [
    'Close off no cold store with a person in it: the door must open from inside.',
    'Heaters, fans and coolers: sound wiring, air, room to anything that burns; follow local codes.',
  ],
};

export const STORE_ROWS: readonly Readonly<Record<string, string>>[] = [{ Store: 'Cold store' }];

/** How far a humidity may lie from the best before it counts. */
const HUMIDITY_SLACK = '5%';

export const lotsAndStoresSheet: SheetDeclaration = {
  id: 'lots-and-stores',
  name: 'Lots and stores',
  question: 'Storing',
  about:
    'How well each store suits each planting that goes into store. Stored lots takes the one with the fewest points.',
  rows: {
    from: 'pairs',
    sheets: ['plantings', 'stores'],
    as: [made('planting', 'Planting'), made('store', 'Store')],
    where: `AND([Planting].[Goes into store]; ${STORE}.[For] = "keeping")`,
  },
  columns: [
    ...group(
      'Against the best',
      computed(
        'degrees-away',
        'Degrees away',
        WARMTH,
        `MAX(0 Cdeg; ${CROP}.[Storage temperature] - ${STORE}.[Temperature]; ${STORE}.[Temperature] - ${BEST_TO})`,
        { note: 'From the temperatures it keeps best at.', decimals: 1 },
      ),
      computed(
        'humidity-away',
        'Humidity away',
        SHARE,
        `MAX(0%; ABS(${STORE}.[Humidity] - ${CROP}.[Storage humidity]) - ${HUMIDITY_SLACK})`,
        { note: 'Past five points, which do no harm.', decimals: 0 },
      ),
      computed('points', 'Points', PLAIN, 'SUM([Degrees away] / 1 Cdeg; [Humidity away] / 5%)', {
        note: 'One a degree, one for five points of humidity (a judgement). The fewer the better.',
        decimals: 1,
      }),
      computed(
        'says',
        'Says',
        TEXT,
        `STOREVERDICT(${STORE}.[Temperature]; ${STORE}.[Humidity]; ${CROP}.[Storage temperature]; ${BEST_TO}; ${CROP}.[Storage humidity])`,
      ),
    ),
  ],
  checks: [],
  cautions: [],
};
