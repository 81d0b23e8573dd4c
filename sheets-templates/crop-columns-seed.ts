// Crops, first part: names, what is sown or planted, its seed, and how seed comes up. crops.ts puts the parts together.

import {
  choice,
  DEGREE_DAYS,
  entered,
  group,
  PLAIN,
  PLANT_MASS,
  quantity,
  SHARE,
  SIZE,
  SPACING,
  TEMPERATURE,
  TEXT,
  WEEKS,
  withDefault,
} from './authoring.ts';

/** How a planting begins. The Plantings sheet offers the same words. */
export const START_METHODS = ['blocks', 'cells', 'deep tray', 'nursery bed', 'direct seed', 'sets', 'plants'] as const;

const PLANTED_PIECES = ['clove', 'set', 'seed tuber', 'slip', 'crown', 'runner', 'division', 'root piece', 'cutting'];
const SEED_COUNT = quantity('seeds/g');

/**
 * Germination of sound new seed where none is known for the crop: the lots of USDA Agriculture Handbook 506, Table 13,
 * stood 7 to 38 points above the legal least of their kinds, half of them within 18.
 */
const ABOVE_THE_LEAST = { low: '7%', likely: '15%', high: '38%' } as const;

function aboveTheLeast(points: string, most: string): string {
  return `IF(NOT(ISBLANK([Germination standard])); MIN(${most}; [Germination standard] + ${points}))`;
}

export const SEED_COLUMNS = [
  ...group(
    'Crop',
    entered('crop', 'Crop', TEXT, { required: true }),
    entered('also-called', 'Also called', TEXT, { note: 'Other names for it.', otherNames: true }),
    entered('family', 'Family', TEXT, { note: 'Botanical family; rotation goes by it.' }),
    entered('start-methods', 'Start methods', TEXT, { note: 'The ways this crop is usually started.' }),
    entered('usual-start', 'Usual start', choice(...START_METHODS), {
      note: 'Sets stands for cloves and tubers too, plants for bought plants and slips; deep tray and nursery bed for seedlings raised loose, lifted and parted.',
    }),
    entered('planted-piece', 'Planted piece', choice(...PLANTED_PIECES), {
      note: 'What is planted where it is not seed; blank for seed.',
    }),
    entered('planted-piece-mass', 'Planted piece mass', PLANT_MASS, { note: 'One of them.', decimals: 1, least: 0 }),
    entered('years-to-first-harvest', 'Years to first harvest', PLAIN, {
      note: 'After the year of planting, for crops that stand for years; blank is the same season.',
      decimals: 0,
      least: 0,
    }),
    withDefault('overwinters', 'Overwinters', choice('no', 'autumn planted', 'either'), '"no"', {
      note: 'Whether it is sown or planted in autumn for the next season.',
    }),
  ),
  ...group(
    'Seed',
    entered('seeds-per-gram', 'Seeds per gram', SEED_COUNT, { least: 0, decimals: 0 }),
    entered('germination-standard', 'Germination standard', SHARE, {
      note: 'Least share of seed that must germinate for seed sold in the United States.',
      least: 0,
      most: 100,
      decimals: 0,
    }),
    withDefault(
      'typical-germination-low',
      'Typical germination low',
      SHARE,
      aboveTheLeast(ABOVE_THE_LEAST.low, '[Typical germination]'),
      {
        decimals: 0,
        least: 0,
        most: 100,
      },
    ),
    withDefault('typical-germination', 'Typical germination', SHARE, aboveTheLeast(ABOVE_THE_LEAST.likely, '95%'), {
      note: 'What sound new seed germinates. Where not known, 15 points above the least that may be sold, as lots in print stood (USDA Agriculture Handbook 506, Table 13).',
      decimals: 0,
      least: 0,
      most: 100,
    }),
    withDefault(
      'typical-germination-high',
      'Typical germination high',
      SHARE,
      `MAX([Typical germination]; ${aboveTheLeast(ABOVE_THE_LEAST.high, '98%')})`,
      {
        decimals: 0,
        least: 0,
        most: 100,
      },
    ),
    withDefault('seedlings-per-seed', 'Seedlings per seed', PLAIN, '1', {
      note: 'From one sown seed or ball that germinates: beet and chard balls hold several.',
      decimals: 1,
      least: 1,
    }),
    entered('seed-life', 'Seed life', PLAIN, { note: 'Years in a cool, dry place.', least: 0, decimals: 0 }),
    entered('seed-oil', 'Seed oil', SHARE, {
      note: 'Oil in dry seed, by mass; sets its moisture in store.',
      least: 0,
      most: 100,
    }),
    entered('ke', 'KE', PLAIN, { note: 'Seed viability constant; blank where none is published or usable.' }),
    entered('cw', 'CW', PLAIN, { note: 'Seed viability constant of moisture.' }),
    entered('ch', 'CH', PLAIN, { note: 'Seed viability constant of temperature.' }),
    entered('cq', 'CQ', PLAIN, { note: 'Seed viability constant of temperature squared.' }),
  ),
  ...group(
    'Coming up',
    entered('germination-minimum', 'Germination minimum', TEMPERATURE, {
      note: 'Coolest soil in which it germinates.',
    }),
    entered('germination-best-from', 'Germination best from', TEMPERATURE),
    entered('germination-best-to', 'Germination best to', TEMPERATURE),
    entered('germination-maximum', 'Germination maximum', TEMPERATURE, {
      note: 'Warmest soil in which it germinates.',
    }),
    entered('emergence-base', 'Emergence base', TEMPERATURE, {
      note: 'Soil temperature at which coming up stands still.',
    }),
    entered('emergence-thermal-time', 'Emergence thermal time', DEGREE_DAYS, {
      note: 'Degree-days above the base to emergence.',
      least: 0,
    }),
    entered('seeding-depth', 'Seeding depth', SIZE, { least: 0 }),
    entered('sowing-soil-minimum', 'Sowing soil minimum', TEMPERATURE, {
      note: 'Coolest soil worth sowing in outdoors; seed germinates in cooler.',
    }),
  ),
  ...group(
    'Raising',
    entered('weeks-in-propagation', 'Weeks in propagation', WEEKS, { note: 'From sowing to planting out.', least: 0 }),
    withDefault('transplant-height-low', 'Transplant height low', SPACING, '[Transplant height]', { least: 0 }),
    entered('transplant-height', 'Transplant height', SPACING, { note: 'Of a plant ready to go out.', least: 0 }),
    withDefault('transplant-height-high', 'Transplant height high', SPACING, '[Transplant height]', { least: 0 }),
    withDefault('usual-seeds-per-block', 'Usual seeds per block', PLAIN, '1', {
      note: 'Seeds, or plants wanted, in one block or cell.',
      decimals: 1,
      least: 0,
    }),
    entered('raising-temperature', 'Raising temperature', TEMPERATURE, {
      note: 'Days for growing seedlings on after they are up.',
    }),
  ),
];
