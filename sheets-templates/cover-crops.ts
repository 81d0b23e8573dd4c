// The sheets of cover crops: Cover crop kinds, what each brings, and Cover crops, what stands on which bed from when until when
// and what nitrogen it leaves to what comes after. Reads Beds and Plantings.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  AREA,
  choice,
  computed,
  DATE,
  entered,
  group,
  HOURS,
  LENGTH,
  link,
  MASS,
  MONEY,
  quantity,
  SHARE,
  TEXT,
  withDefault,
} from './authoring.ts';

const RATE = quantity('lb/acre', 'kg/ha');

export const coverCropKindsSheet: SheetDeclaration = {
  id: 'cover-crop-kinds',
  name: 'Cover crop kinds',
  question: 'Ground',
  about:
    'Cover crops with what they weigh dry and the nitrogen in them. Cut, dry and weigh your own: stands differ threefold.',
  rows: { from: 'entry' },
  key: 'kind',
  columns: [
    ...group(
      'Kind',
      entered('kind', 'Kind', TEXT, { required: true }),
      entered('group', 'Group', choice('annual legume', 'perennial legume', 'grass', 'broadleaf', 'mix')),
      entered('family', 'Family', TEXT, { note: 'As in Crops.' }),
      entered('winter', 'Winter', choice('dies', 'stands')),
    ),
    ...group(
      'Gives',
      entered('dry-mass', 'Dry mass', RATE, { note: 'Of a good stand, above ground.', decimals: 0, least: 0 }),
      entered('nitrogen-in-it', 'Nitrogen in it', SHARE, {
        note: 'Of the dry mass, when it flowers.',
        decimals: 1,
        least: 0,
        most: 10,
      }),
      withDefault('serves-the-next-crop', 'Serves the next crop', SHARE, '50%', {
        note: 'Of its nitrogen, worked in; half of that where it is left on the surface in a cool climate.',
        decimals: 0,
        least: 0,
        most: 100,
      }),
      entered('source', 'Source', TEXT),
    ),
  ],
  checks: [],
  cautions: [],
};

const SHARE_SOURCE =
  'Nitrogen: University of California Santa Cruz, Teaching Organic Farming and Gardening, unit 1.6, after Managing Cover Crops Profitably, 2nd ed.; dry mass: memory';

function kind(
  name: string,
  of: string,
  family: string,
  winter: 'dies' | 'stands',
  mass: number,
  nitrogen: number,
): Readonly<Record<string, string>> {
  return {
    Kind: name,
    Group: of,
    Family: family,
    Winter: winter,
    'Dry mass': `${mass} lb/acre`,
    'Nitrogen in it': `${nitrogen}%`,
    Source: SHARE_SOURCE,
  };
}

/** Nitrogen when flowering: annual legumes 3 to 3.5 %, perennial 2 to 2.5 %, grasses and brassicas 1.5 to 2.5 %. */
export const COVER_CROP_ROWS: readonly Readonly<Record<string, string>>[] = [
  kind('Hairy vetch', 'annual legume', 'Fabaceae', 'stands', 3500, 3.25),
  kind('Crimson clover', 'annual legume', 'Fabaceae', 'stands', 4000, 3.25),
  kind('Field peas', 'annual legume', 'Fabaceae', 'dies', 4000, 3.25),
  kind('Red clover', 'perennial legume', 'Fabaceae', 'stands', 3500, 2.25),
  kind('White clover', 'perennial legume', 'Fabaceae', 'stands', 2500, 2.25),
  kind('Winter rye', 'grass', 'Poaceae', 'stands', 5000, 1.5),
  kind('Rye and vetch', 'mix', 'Poaceae', 'stands', 5000, 2.25),
  kind('Oats', 'grass', 'Poaceae', 'dies', 4000, 2),
  kind('Oats and peas', 'mix', 'Poaceae', 'dies', 4500, 2.5),
  kind('Sorghum-sudangrass', 'grass', 'Poaceae', 'dies', 8000, 1.5),
  kind('Buckwheat', 'broadleaf', 'Polygonaceae', 'dies', 2500, 2),
  kind('Mustard', 'broadleaf', 'Brassicaceae', 'dies', 4000, 2),
  kind('Phacelia', 'broadleaf', 'Boraginaceae', 'dies', 3000, 2),
];

export const coverCropsSheet: SheetDeclaration = {
  id: 'cover-crops',
  name: 'Cover crops',
  question: 'Ground',
  about:
    'Cover crops on the beds: sown, ended, and the nitrogen they leave. They take their place in the Bed calendar and in Tasks.',
  rows: { from: 'entry' },
  columns: [
    ...group(
      'Where and when',
      entered('bed', 'Bed', link('beds'), { required: true }),
      entered('kind', 'Kind', link('cover-crop-kinds'), { required: true }),
      entered('sown', 'Sown', DATE),
      entered('ended', 'Ended', DATE, { note: 'Mown, worked in or covered; blank: it stands past the season.' }),
      withDefault('length', 'Length', LENGTH, '[Bed].[Length]', { decimals: 0, least: 0 }),
      computed('name', 'Name', TEXT, '[Kind].[Kind]'),
      computed('stands-until', 'Stands until', DATE, 'IF(ISBLANK([Ended]); Farm[Season ends] + 26 weeks; [Ended])'),
    ),
    ...group(
      'Gives',
      computed('area', 'Area', AREA, '[Length] * [Bed].[Width]', { decimals: 0 }),
      withDefault('dry-mass', 'Dry mass', RATE, '[Kind].[Dry mass]', {
        note: 'Weigh your own.',
        decimals: 0,
        least: 0,
      }),
      computed('nitrogen', 'Nitrogen', MASS, '[Area] * [Dry mass] * [Kind].[Nitrogen in it]', {
        note: 'In it.',
        decimals: 2,
      }),
      computed('nitrogen-left', 'Nitrogen left', MASS, '[Nitrogen] * [Kind].[Serves the next crop]', {
        note: 'To the next crop.',
        decimals: 2,
      }),
    ),
    ...group(
      'Takes',
      entered('cost', 'Cost', MONEY, { note: 'Of the seed.', decimals: 2, least: 0 }),
      withDefault('hours-to-sow', 'Hours to sow', HOURS, '[Area] * Farm[Bed making] * 15%', {
        note: 'Raked over and sown: a seventh of making a bed (memory).',
        decimals: 1,
        least: 0,
      }),
      withDefault('hours-to-end', 'Hours to end', HOURS, '[Area] * Farm[Bed making] * 24%', {
        note: 'As clearing a bed (memory).',
        decimals: 1,
        least: 0,
      }),
      entered('note', 'Note', TEXT),
    ),
  ],
  checks: [
    {
      id: 'ends-before-it-begins',
      name: 'Ends before it begins',
      level: 'error',
      column: 'ended',
      says: 'IF([Ended] < [Sown]; "It ends before it is sown: look at both dates.")',
    },
    {
      id: 'something-stands-there',
      name: 'Something stands there',
      level: 'warning',
      column: 'sown',
      says: `IF([Length] + SUM(SUMIFS(Plantings[Bed length used]; Plantings[Bed]; [Bed]; Plantings[Planted out]; "<=" & [Sown]; Plantings[Bed free]; ">" & [Sown])) > [Bed].[Length];
        "The bed is not free for it on that day: " & NAMESIFS(Plantings[Planting]; Plantings[Bed]; [Bed]; Plantings[Planted out]; "<=" & [Sown]; Plantings[Bed free]; ">" & [Sown]) & " still stands there.")`,
    },
    {
      id: 'in-the-way',
      name: 'In the way',
      level: 'warning',
      column: 'ended',
      says: `IF(COUNTIFS(Plantings[Bed]; [Bed]; Plantings[Planted out]; ">" & [Sown]; Plantings[Planted out]; "<" & [Stands until]) > 0;
        "It still stands when " & FIRSTIFS(Plantings[Planting]; Plantings[Bed]; [Bed]; Plantings[Planted out]; ">" & [Sown]; Plantings[Planted out]; "<" & [Stands until]) & " goes into this bed: end it some weeks before.")`,
    },
  ],
  cautions: ['Mowers and tillers: guards on, stones off the bed, nobody near; let a machine stop before you touch it.'],
};
