// Plantings, second part: how close the plants stand, what they weigh and yield, and the sizes of the bulbs. plantings.ts
// puts the parts together.

import { computed, DENSITY, group, MASS, PLAIN, PLANT_MASS, SHARE, SIZE, withDefault, YIELD } from './authoring.ts';

function limit(grade: string, end: 'From' | 'To'): string {
  return `XLOOKUP("${grade}"; 'Size grades'[Grade]; 'Size grades'[${end}])`;
}

function share(of: 'GRADESHARE' | 'GRADEMASSSHARE', grade: string): string {
  return `${of}([Mean diameter]; [Diameter spread]; ${limit(grade, 'From')}; ${limit(grade, 'To')})`;
}

function shareColumn(id: string, name: string, grade: string) {
  return computed(id, name, SHARE, share('GRADESHARE', grade), { decimals: 1 });
}

function massColumn(id: string, name: string, grade: string) {
  return computed(id, name, MASS, `[Marketable yield] * ${share('GRADEMASSSHARE', grade)}`, { decimals: 1 });
}

export const SPACE_COLUMNS = [
  ...group(
    'Space and yield',
    computed(
      'plants-standing',
      'Plants standing',
      PLAIN,
      '[Stations] * [Plants per station] * [Field survival] * IF([Start] = "direct seed"; 1 - [Empty stations]; 1)',
      { note: 'At harvest, bulbs in clumps counted one by one.', decimals: 0 },
    ),
    computed('plant-density', 'Plant density', DENSITY, '[Plants standing] / [Bed area]', {
      note: 'Of bed, paths left out.',
      decimals: 2,
    }),
    computed('rectangularity', 'Rectangularity', PLAIN, 'RECTANGULARITY([Row spacing]; [In-row spacing])', {
      note: 'Longer spacing over shorter; 1 is square.',
      decimals: 2,
    }),
    withDefault(
      'squareness-loss',
      'Squareness loss',
      SHARE,
      'IF(ISBLANK([Variety].[Crop].[Squareness loss]); 0%; [Variety].[Crop].[Squareness loss])',
      {
        note: 'Yield lost where rows stand eight times as far apart as plants in them.',
        decimals: 1,
        least: 0,
        most: 100,
      },
    ),
    withDefault('clump-factor', 'Clump factor', SHARE, '100%', {
      note: 'Your own: what clumps weigh against singles at the same density.',
      decimals: 0,
      least: 1,
      most: 300,
    }),
    computed(
      'mean-plant-mass',
      'Mean plant mass',
      PLANT_MASS,
      `PLANTMASS([Plant density]; [Variety].[Isolated plant mass]; [Variety].[Ceiling yield])
        * SQUARENESS([Rectangularity]; [Squareness loss]) * [Clump factor]`,
      {
        note: '1/mass = 1/isolated mass + density/ceiling yield (Shinozaki & Kira), less for far from square.',
        decimals: 2,
      },
    ),
    computed('total-yield', 'Total yield', MASS, '[Plants standing] * [Mean plant mass]', { decimals: 1 }),
    withDefault('marketable-share', 'Marketable share', SHARE, '[Variety].[Crop].[Marketable share]', {
      decimals: 0,
      least: 0,
      most: 100,
    }),
    computed('marketable-yield', 'Marketable yield', MASS, '[Total yield] * [Marketable share]', { decimals: 1 }),
    computed('yield-per-bed-area', 'Yield per bed area', YIELD, '[Total yield] / [Bed area]', { decimals: 2 }),
  ),
  ...group(
    'Bulb sizes',
    withDefault('diameter-spread', 'Diameter spread', SHARE, '[Variety].[Crop].[Diameter spread]', {
      note: 'Standard deviation over mean; 10 to 18 % in onions.',
      decimals: 0,
      least: 0,
      most: 30,
    }),
    computed(
      'mean-diameter',
      'Mean diameter',
      SIZE,
      'BULBDIAMETER([Mean plant mass]; [Diameter spread]; [Variety].[Shape factor])',
      {
        decimals: 2,
      },
    ),
    computed(
      'share-under-size',
      'Share under size',
      SHARE,
      `GRADESHARE([Mean diameter]; [Diameter spread]; ; ${limit('small', 'From')})`,
      {
        note: 'By number, below the small band.',
        decimals: 1,
      },
    ),
    shareColumn('share-small', 'Share small', 'small'),
    shareColumn('share-medium', 'Share medium', 'medium'),
    shareColumn('share-large', 'Share large', 'large'),
    shareColumn('share-extra-large', 'Share extra large', 'extra large'),
    massColumn('mass-small', 'Mass small', 'small'),
    massColumn('mass-medium', 'Mass medium', 'medium'),
    massColumn('mass-large', 'Mass large', 'large'),
    massColumn('mass-extra-large', 'Mass extra large', 'extra large'),
  ),
];
