// The Crops sheet: what the workbook knows of each vegetable, one row each, filled from library/ in a fresh workbook and
// open to the grower's own figures. Columns only; the figures and their sources stand in library/.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  choice,
  DAYS,
  DEGREE_DAYS,
  entered,
  group,
  HOURS,
  PLAIN,
  PLANT_MASS,
  quantity,
  SHARE,
  SIZE,
  SPACING,
  TEMPERATURE,
  TEXT,
  WEEKS,
  YIELD,
} from './authoring.ts';

/** How a planting begins. The Plantings sheet offers the same words. */
export const START_METHODS = ['blocks', 'cells', 'direct seed', 'sets', 'plants'] as const;

export const HARDINESS = ['tender', 'half-hardy', 'hardy', 'very hardy'] as const;
export const DAY_LENGTH_RESPONSES = ['none', 'long days', 'short days'] as const;
export const BOLTING_TRIGGERS = [
  'none',
  'cold',
  'cold and long days',
  'long days',
  'heat and long days',
  'heat',
] as const;
export const HARVEST_UNITS = ['weight', 'bunch', 'head', 'bulb', 'each'] as const;

/** Nutrients carried off in the harvest. */
const REMOVAL = quantity('lb/ton', 'kg/t');
const SEED_COUNT = quantity('seeds/g');
const BULB_SHAPE = quantity('g/cm3');

export const cropsSheet: SheetDeclaration = {
  name: 'Crops',
  question: 'What',
  about:
    "One row per vegetable: what its seed, space, season, harvest and store need. Every figure is a starting point with its source in the row's Sources; your own records come first.",
  rows: { from: 'entry' },
  key: 'Crop',
  columns: [
    ...group(
      'Crop',
      entered('Crop', TEXT, { required: true }),
      entered('Family', TEXT, { note: 'Botanical family; rotation goes by it.' }),
      entered('Start methods', TEXT, { note: 'The ways this crop is usually started.' }),
      entered('Usual start', choice(...START_METHODS), {
        note: 'Sets stands for cloves and tubers too, plants for bought plants and slips.',
      }),
    ),
    ...group(
      'Seed',
      entered('Seeds per gram', SEED_COUNT, { least: 0, decimals: 0 }),
      entered('Germination standard', SHARE, {
        note: 'Least share of seed that must germinate for seed sold in the United States.',
        least: 0,
        most: 100,
        decimals: 0,
      }),
      entered('Seed life', PLAIN, { note: 'Years in a cool, dry place.', least: 0, decimals: 0 }),
      entered('Seed oil', SHARE, {
        note: 'Oil in dry seed, by mass; sets its moisture in store.',
        least: 0,
        most: 100,
      }),
      entered('KE', PLAIN, { note: 'Seed viability constant; blank where none is published or usable.' }),
      entered('CW', PLAIN, { note: 'Seed viability constant of moisture.' }),
      entered('CH', PLAIN, { note: 'Seed viability constant of temperature.' }),
      entered('CQ', PLAIN, { note: 'Seed viability constant of temperature squared.' }),
    ),
    ...group(
      'Coming up',
      entered('Germination minimum', TEMPERATURE, { note: 'Coolest soil in which it germinates.' }),
      entered('Germination best from', TEMPERATURE),
      entered('Germination best to', TEMPERATURE),
      entered('Germination maximum', TEMPERATURE, { note: 'Warmest soil in which it germinates.' }),
      entered('Emergence base', TEMPERATURE, { note: 'Soil temperature at which coming up stands still.' }),
      entered('Emergence thermal time', DEGREE_DAYS, { note: 'Degree-days above the base to emergence.', least: 0 }),
      entered('Seeding depth', SIZE, { least: 0 }),
    ),
    ...group(
      'Raising',
      entered('Weeks in propagation', WEEKS, { note: 'From sowing to planting out.', least: 0 }),
      entered('Transplant height', SPACING, { least: 0 }),
      entered('Usual seeds per block', PLAIN, { note: 'Seeds, or plants wanted, in one block or cell.', least: 0 }),
    ),
    ...group(
      'Season',
      entered('Hardiness', choice(...HARDINESS)),
      entered('Frost limit', TEMPERATURE, { note: 'Hardened plants without cover are killed at about this.' }),
      entered('Plant out from last frost', WEEKS, { note: 'Earliest; below zero is before the last frost.' }),
      entered('Sow outdoors from last frost', WEEKS, { note: 'Earliest; below zero is before the last frost.' }),
      entered('Latest sowing before first frost', WEEKS, {
        note: 'Below zero is after the first frost.',
      }),
      entered('Latest sowing in', choice('trays', 'bed'), { note: 'Where that latest seed goes.' }),
      entered('Latest planting out before first frost', WEEKS),
      entered('Degree-day base', TEMPERATURE, { note: 'Growth stands still at or below this.' }),
    ),
    ...group(
      'Space',
      entered('In-row spacing', SPACING, { note: 'Between single plants in the row.', least: 0 }),
      entered('Row spacing', SPACING, { note: 'Between rows on the bed.', least: 0 }),
      entered('Rows per bed', PLAIN, { note: 'On a bed 30 in (76 cm) wide.', least: 0, decimals: 0 }),
      entered('Clump in-row spacing', SPACING, { note: 'Between blocks of several plants.', least: 0 }),
      entered('Beds across', PLAIN, { note: 'Beds that one row of plants covers in the end.', least: 1, decimals: 0 }),
      entered('Isolated plant mass', PLANT_MASS, {
        note: 'What the marketable part weighs with all the room it can use.',
        least: 0,
      }),
      entered('Ceiling yield', YIELD, { note: 'What crowding cannot pass, however close the plants.', least: 0 }),
      entered('Squareness loss', SHARE, {
        note: 'Yield lost where rows stand eight times as far apart as plants in them.',
        least: 0,
        most: 100,
      }),
    ),
    ...group(
      'Days',
      entered('Days to maturity', DAYS, { note: 'From planting out to first harvest.', least: 0, decimals: 0 }),
      entered('Days to maturity direct', DAYS, {
        note: 'From sowing in the bed to first harvest.',
        least: 0,
        decimals: 0,
      }),
      entered('Harvest window', DAYS, { note: 'From first to last harvest of one planting.', least: 0, decimals: 0 }),
      entered('Day-length response', choice(...DAY_LENGTH_RESPONSES)),
      entered('Critical day length', HOURS, {
        note: 'Day length that starts bulbs or flowers; a variety may have its own.',
        least: 0,
        most: 24,
      }),
      entered('Bolting trigger', choice(...BOLTING_TRIGGERS), { note: 'What sends it to seed.' }),
      entered('Bolting size', TEXT, { note: 'Plants smaller than this do not answer to cold.' }),
      entered('Bolting cold', TEMPERATURE, { note: 'Days cooler than this count.' }),
      entered('Bolting cold days', DAYS, { note: 'So many of them raise the risk.', least: 0, decimals: 0 }),
    ),
    ...group(
      'Harvest',
      entered('Harvest unit', choice(...HARVEST_UNITS)),
      entered('Unit mass', PLANT_MASS, { note: 'One bunch, head, bulb, fruit or root.', least: 0 }),
      entered('Yield', YIELD, { note: 'Marketable, of bed without paths: middle of low and high.', least: 0 }),
      entered('Yield low', YIELD, { least: 0 }),
      entered('Yield high', YIELD, { least: 0 }),
      entered('Marketable share', SHARE, { least: 0, most: 100 }),
      entered('Bulb shape factor', BULB_SHAPE, { note: 'Mass over diameter cubed.', least: 0 }),
      entered('Diameter spread', SHARE, { note: 'Standard deviation of diameter over its mean.', least: 0, most: 30 }),
    ),
    ...group(
      'Keeping',
      entered('Curing days', DAYS, { least: 0, decimals: 0 }),
      entered('Curing loss', SHARE, { note: 'Of fresh mass.', least: 0, most: 100 }),
      entered('Storage temperature', TEMPERATURE),
      entered('Storage humidity', SHARE, { least: 0, most: 100 }),
      entered('Storage life', DAYS, { note: 'At that temperature and humidity.', least: 0, decimals: 0 }),
      entered('Monthly storage loss', SHARE, {
        note: 'Of what is in store, in 30 days; where recalled, it goes by how long the crop keeps.',
        least: 0,
        most: 100,
      }),
    ),
    ...group(
      'Soil and water',
      entered('Rotation years', PLAIN, {
        note: 'Years before the family comes back to the bed.',
        least: 0,
        decimals: 0,
      }),
      entered('Nitrogen removal', REMOVAL, { note: 'N carried off with the harvest.', least: 0 }),
      entered('Phosphorus removal', REMOVAL, { note: 'P, not P2O5.', least: 0 }),
      entered('Potassium removal', REMOVAL, { note: 'K, not K2O.', least: 0 }),
      entered('Crop coefficient initial', PLAIN, { note: 'Water use over that of short grass.', least: 0 }),
      entered('Crop coefficient mid', PLAIN, { least: 0 }),
      entered('Crop coefficient end', PLAIN, { least: 0 }),
      entered('Initial stage', DAYS, { note: 'Planting to a tenth of the ground covered.', least: 0, decimals: 0 }),
      entered('Development stage', DAYS, { note: 'To full cover.', least: 0, decimals: 0 }),
      entered('Mid-season stage', DAYS, { note: 'To the first yellowing.', least: 0, decimals: 0 }),
      entered('Late stage', DAYS, { note: 'To harvest.', least: 0, decimals: 0 }),
    ),
    ...group(
      'Sources',
      entered('Ranges', TEXT, { note: 'Lowest and highest of figures that vary widely.' }),
      entered('Doubts', TEXT, { note: 'Where sources disagree or stop short.' }),
      entered('Sources', TEXT, { note: 'Where each figure comes from; memory marks a recalled one to check first.' }),
    ),
  ],
  checks: [],
  cautions: [
    'Figures are planning estimates: local extension advice and your own records come first.',
    'Seed sold as treated carries a label with its treatment: wear gloves, keep it from children and animals, never eat or feed it.',
  ],
};
