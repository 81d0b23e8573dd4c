// The Best spacing sheet: for each planting of bulbs the in-row spacing with the most mass, the most money and the most bulbs of
// each size. Reads Plantings, Varieties, Size grades and Farm.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  computed,
  figures,
  group,
  MASS,
  made,
  PLAIN,
  PLANT_MASS,
  quantity,
  SPACING,
  withDefault,
} from './authoring.ts';

const MONEY = quantity('money');
const VARIETY = '[Planting].[Variety]';
const GRADES = `'Size grades'[Grade]; 'Size grades'[From]; 'Size grades'[To]; 'Size grades'[Price share]`;
const BEST = `[Bed to try]; [Stand]; [Sale]; ${GRADES}`;

function bulbs(id: string, grade: string) {
  return computed(id, `For most ${grade}`, SPACING, `SPACINGFOR("${grade}"; ${BEST})`, { decimals: 1 });
}

export const bestSpacingSheet: SheetDeclaration = {
  id: 'best-spacing',
  name: 'Best spacing',
  question: 'When and how close',
  about:
    'The rows as planned, every spacing in the row tried from closest to widest: which gives the most mass for sale, the most money, the most bulbs of one size.',
  rows: {
    from: 'each',
    sheet: 'plantings',
    as: made('planting', 'Planting'),
    where: `AND(${VARIETY}.[Bulb crop]; NOT(ISBLANK([Planting].[Mean diameter])); [Planting].[Stations] > 0)`,
  },
  columns: [
    ...group(
      'Tried',
      withDefault('closest', 'Closest', SPACING, '1 in', { decimals: 1, least: 0.1 }),
      withDefault('widest', 'Widest', SPACING, '16 in', { decimals: 1, least: 0.1 }),
      withDefault('step', 'Step', SPACING, '0.5 in', { decimals: 2, least: 0.1 }),
      computed('as-planned', 'As planned', SPACING, '[Planting].[In-row spacing]', { decimals: 1 }),
      computed(
        'kept-after-curing',
        'Kept after curing',
        quantity('%'),
        'IF(ISBLANK([Planting].[Cured yield]); 1; [Planting].[Cured yield] / [Planting].[Marketable yield])',
        { decimals: 0 },
      ),
    ),
    ...group(
      'Worked out from',
      computed(
        'clump-and-season',
        'Clump and season',
        PLAIN,
        '[Planting].[Clump factor] * [Planting].[Season factor]',
        {
          note: 'Clumps weigh what singles at their density weigh, times your own factor.',
          decimals: 2,
        },
      ),
      computed(
        'cost-of-a-place',
        'Cost of a place',
        MONEY,
        `([Planting].[Seed cost] + [Planting].[Mix cost] + ([Planting].[Start hours] + [Planting].[Planting hours]) * Farm[Wage]) / [Planting].[Stations]`,
        { note: 'Seed, mix and the hours to start and set it out.', decimals: 2 },
      ),
      computed(
        'bed-to-try',
        'Bed to try',
        figures('bed-to-try'),
        `BEDTOTRY([Closest]; [Widest]; [Step]; [Planting].[Bed length used]; [Planting].[Bed width]; [Planting].[Rows];
          [Planting].[Plants standing] / [Planting].[Stations])`,
      ),
      computed(
        'stand',
        'Stand',
        figures('stand-of-bulbs'),
        `BULBSTAND(${VARIETY}.[Isolated plant mass] * [Clump and season]; ${VARIETY}.[Ceiling yield] * [Clump and season];
          [Planting].[Squareness loss]; [Planting].[Diameter spread]; ${VARIETY}.[Shape factor]; [Planting].[Marketable share])`,
      ),
      computed(
        'sale',
        'Sale',
        figures('sale-of-bulbs'),
        'BULBSALE([Planting].[Price] * [Kept after curing]; [Cost of a place])',
      ),
      computed('best', 'Best', figures('best-spacings'), `BESTSPACINGS(${BEST})`),
    ),
    ...group(
      'Mass',
      computed('for-most-mass', 'For most mass', SPACING, '[Best].[For most mass]', { decimals: 1 }),
      computed('mass-there', 'Mass there', MASS, '[Best].[Mass there]', {
        note: 'Fresh, of bands that sell.',
        decimals: 1,
      }),
      computed('plant-there', 'Plant there', PLANT_MASS, '[Best].[Plant there]', { decimals: 1 }),
    ),
    ...group(
      'Money',
      computed('for-most-money', 'For most money', SPACING, '[Best].[For most money]', {
        note: 'Needs a price; cured weight, bands at their price share.',
        decimals: 1,
      }),
      computed('money-there', 'Money there', MONEY, '[Best].[Money there]', {
        note: 'Less the cost of the places, where all of it is known.',
        decimals: 2,
      }),
    ),
    ...group(
      'Sizes',
      bulbs('for-most-small', 'small'),
      bulbs('for-most-medium', 'medium'),
      bulbs('for-most-large', 'large'),
      bulbs('for-most-extra-large', 'extra large'),
    ),
  ],
  checks: [
    {
      id: 'at-the-edge',
      name: 'At the edge',
      level: 'note',
      column: 'for-most-mass',
      says: 'IF([For most mass] <= [Closest]; "The most mass comes at the closest spacing tried: small bulbs still sell by these size bands. Look at the money and the sizes.")',
    },
  ],
  cautions: [
    'The curve is of trials with {1.8 to 31 plants per ft²|19 to 335 plants per m²}: outside them it is a guess.',
  ],
};
