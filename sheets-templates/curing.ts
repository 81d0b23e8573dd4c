// The Harvest and curing sheet: each planting that is cured, from pulling to dry necks: what is sold fresh, the racks it takes
// and when, what is left. Reads Plantings, Crops and Farm.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  AREA,
  computed,
  DATE,
  DAYS,
  entered,
  group,
  link,
  MASS,
  made,
  PLAIN,
  quantity,
  SHARE,
  SPACING,
  TEXT,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';

export const BULK_DENSITY = quantity('lb/ft3', 'kg/m3');
export const CONTAINER = quantity('bu', 'L');
const AIR = quantity('ft3/min', 'm3/h');
const CROP = '[Planting].[Variety].[Crop]';

export const curingSheet: SheetDeclaration = {
  id: 'harvest-and-curing',
  name: 'Harvest and curing',
  question: 'Harvest',
  about:
    'Every planting that is cured: pull it dry, sell bolted, doubled and thick-necked bulbs fresh, cure the rest until the necks are dry. Racks are added up by day against the curing area of the farm.',
  rows: {
    from: 'each',
    sheet: 'plantings',
    as: made('planting', 'Planting'),
    where: 'NOT(ISBLANK([Planting].[Cured yield]))',
  },
  columns: [
    ...group(
      'Harvest',
      computed('crop', 'Crop', TEXT, '[Planting].[Crop]'),
      withDefault('brought-in', 'Brought in', DATE, '[Planting].[Harvest]', { note: 'In dry weather.' }),
      entered('tops-fallen', 'Tops fallen', SHARE, { note: 'Seen in the bed.', decimals: 0, least: 0, most: 100 }),
      computed('pull', 'Pull', TEXT, 'IF([Planting].[Variety].[Bulb crop]; LODGINGSAYS([Tops fallen]))'),
      computed('fresh-mass', 'Fresh mass', MASS, '[Planting].[Total yield]', { decimals: 1 }),
      withDefault('bolters-and-doubles', 'Bolters and doubles', SHARE, '3%', {
        note: 'Of the fresh mass, sold fresh, never cured. Memory: count your own.',
        decimals: 0,
        least: 0,
        most: 100,
      }),
      computed(
        'sold-fresh',
        'Sold fresh',
        MASS,
        '[Fresh mass] * MIN([Bolters and doubles]; 1 - [Planting].[Marketable share])',
        {
          note: 'Out of what is not fit for store.',
          decimals: 1,
        },
      ),
      computed('to-cure', 'To cure', MASS, '[Planting].[Marketable yield]', { decimals: 1 }),
    ),
    ...group(
      'Curing',
      computed('cure-at', 'Cure at', TEXT, 'CURINGCONDITIONS([Crop])'),
      withDefault('curing-days', 'Curing days', DAYS, `${CROP}.[Curing days]`, {
        note: 'Until necks are dry.',
        decimals: 0,
        least: 0,
      }),
      computed('cured-on', 'Cured on', DATE, '[Brought in] + [Curing days]'),
      entered('necks-dry', 'Necks dry', YES_OR_NO, { note: 'Tight, no slip between finger and thumb; skins rustle.' }),
      withDefault('curing-loss', 'Curing loss', SHARE, `${CROP}.[Curing loss]`, {
        note: 'Of fresh mass.',
        decimals: 1,
        least: 0,
        most: 100,
      }),
      computed('cured-mass', 'Cured mass', MASS, 'CUREDMASS([To cure]; [Curing loss])', { decimals: 1 }),
      entered('weighed-cured', 'Weighed cured', MASS, { note: 'What came off the racks.', decimals: 1, least: 0 }),
      computed('measured-loss', 'Measured loss', SHARE, 'CURINGLOSS([To cure]; [Weighed cured])', {
        note: 'Against the mass planned.',
        decimals: 1,
      }),
    ),
    ...group(
      'Racks',
      withDefault('bulk-density', 'Bulk density', BULK_DENSITY, '550 kg/m3', {
        note: 'Of loose bulbs. Published {24 to 42 lb/ft³|390 to 679 kg/m³}; {34 to 41|550 to 650} is memory.',
        decimals: 0,
        least: 0,
      }),
      withDefault('depth', 'Depth', SPACING, '4 in', {
        note: 'On the rack: one or two layers.',
        decimals: 1,
        least: 0,
      }),
      computed('rack-area', 'Rack area', AREA, 'RACKAREA([To cure]; [Bulk density]; [Depth])', { decimals: 0 }),
      entered('cured-in', 'Cured in', link('stores'), {
        note: 'A place of Stores that is for curing; blank: the curing area of Farm.',
      }),
      computed('place', 'Place', TEXT, 'IF(ISBLANK([Cured in]); "Curing area"; [Cured in].[Store])'),
      computed('room', 'Room', AREA, 'IF(ISBLANK([Cured in]); Farm[Curing area]; [Cured in].[Area])', { decimals: 0 }),
      computed(
        'racks-that-day',
        'Racks that day',
        AREA,
        `SUMIFS('Harvest and curing'[Rack area]; 'Harvest and curing'[Place]; [Place]; 'Harvest and curing'[Brought in]; "<=" & [Brought in];
          'Harvest and curing'[Cured on]; ">" & [Brought in])`,
        { note: 'All batches in this place the day this one comes in.', decimals: 0 },
      ),
      withDefault('air-changes', 'Air changes', quantity('1/min'), '2.5/1 min', {
        note: 'Of the bulk of the bulbs, 2 to 3 a minute where air is forced.',
        decimals: 1,
        least: 0,
      }),
      computed('air', 'Air', AIR, 'CURINGAIR([To cure]; [Bulk density]; [Air changes])', {
        note: 'A fan for it, where air is forced.',
        decimals: 0,
      }),
      withDefault('container', 'Container', CONTAINER, '1 bu', {
        note: 'Breathable: crate, net or sack.',
        decimals: 1,
        least: 0,
      }),
      computed('containers', 'Containers', PLAIN, 'CONTAINERS([Cured mass]; [Bulk density]; [Container])', {
        decimals: 0,
      }),
    ),
  ],
  checks: [
    {
      id: 'racks-full',
      name: 'Racks full',
      level: 'warning',
      column: 'racks-that-day',
      says: 'IF([Racks that day] > [Room]; "More is on the racks this day than this place holds: pull in two parts, stack deeper with a fan, or find more room.")',
    },
    {
      id: 'bolters',
      name: 'Bolters',
      level: 'note',
      column: 'bolters-and-doubles',
      says: 'IF(AND([Planting].[Variety].[Bulb crop]; [Planting].[Bolting risk] <> "low"); "Bolters are likely here: sell bolted and doubled bulbs fresh, never cure them.")',
    },
    {
      id: 'necks-wet',
      name: 'Necks wet',
      level: 'warning',
      column: 'necks-dry',
      says: 'IF(AND(NOT([Necks dry]); NOT(ISBLANK([Weighed cured]))); "The necks were not dry: bulbs with wet necks rot in store. Dry them on, or sell them now.")',
    },
    {
      id: 'much-lost',
      name: 'Much lost',
      level: 'note',
      column: 'measured-loss',
      says: 'IF([Measured loss] > 15%; "More was lost than curing takes: sort for rot, and note what it was.")',
    },
  ],
  cautions: [
    'Heaters and fans in curing rooms: vent burnt gas outside, keep wiring sound and dry, leave room to anything that burns, have an alarm; follow local codes.',
    'Dry bulbs and skins raise dust: wear a mask and air the room.',
    'Full crates and sacks are heavy: lift with a straight back, share the load, stack no higher than stands safely.',
    'Bulbs with thick or bolted necks, wounds, soft spots or mould do not store: sell sound ones fresh, leave rotten ones out.',
  ],
};
