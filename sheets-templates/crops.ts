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
      entered('crop', 'Crop', TEXT, { required: true }),
      entered('family', 'Family', TEXT, { note: 'Botanical family; rotation goes by it.' }),
      entered('start-methods', 'Start methods', TEXT, { note: 'The ways this crop is usually started.' }),
      entered('usual-start', 'Usual start', choice(...START_METHODS), {
        note: 'Sets stands for cloves and tubers too, plants for bought plants and slips.',
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
    ),
    ...group(
      'Raising',
      entered('weeks-in-propagation', 'Weeks in propagation', WEEKS, {
        note: 'From sowing to planting out.',
        least: 0,
      }),
      entered('transplant-height', 'Transplant height', SPACING, { least: 0 }),
      entered('usual-seeds-per-block', 'Usual seeds per block', PLAIN, {
        note: 'Seeds, or plants wanted, in one block or cell.',
        least: 0,
      }),
    ),
    ...group(
      'Season',
      entered('hardiness', 'Hardiness', choice(...HARDINESS)),
      entered('frost-limit', 'Frost limit', TEMPERATURE, {
        note: 'Hardened plants without cover are killed at about this.',
      }),
      entered('plant-out-from-last-frost', 'Plant out from last frost', WEEKS, {
        note: 'Earliest; below zero is before the last frost.',
      }),
      entered('sow-outdoors-from-last-frost', 'Sow outdoors from last frost', WEEKS, {
        note: 'Earliest; below zero is before the last frost.',
      }),
      entered('latest-sowing-before-first-frost', 'Latest sowing before first frost', WEEKS, {
        note: 'Below zero is after the first frost.',
      }),
      entered('latest-sowing-in', 'Latest sowing in', choice('trays', 'bed'), { note: 'Where that latest seed goes.' }),
      entered('latest-planting-out-before-first-frost', 'Latest planting out before first frost', WEEKS),
      entered('degree-day-base', 'Degree-day base', TEMPERATURE, { note: 'Growth stands still at or below this.' }),
      entered('plants-per-harvest-unit', 'Plants per harvest unit', PLAIN),
      entered('pickings', 'Pickings', PLAIN),
      entered('share-of-ceiling', 'Share of ceiling', SHARE),
      entered('harvest-curve-middle', 'Harvest curve middle', SHARE),
      entered('harvest-curve-spread', 'Harvest curve spread', SHARE),
      entered('second-cut-share', 'Second cut share', SHARE),
      entered('third-cut-share', 'Third cut share', SHARE),
      entered('side-shoot-share', 'Side shoot share', SHARE),
      entered('density-least', 'Density least', quantity('plants/ft2', 'plants/m2')),
      entered('density-most', 'Density most', quantity('plants/ft2', 'plants/m2')),
      entered('usual-density', 'Usual density', quantity('plants/ft2', 'plants/m2')),
      entered('days-between-pickings', 'Days between pickings', DAYS),
      entered('storage-life-low', 'Storage life low', DAYS),
      entered('storage-life-high', 'Storage life high', DAYS),
      entered('harvest-window-low', 'Harvest window low', DAYS),
      entered('harvest-window-high', 'Harvest window high', DAYS),
      entered('picking-rate-low', 'Picking rate low', quantity('lb/h', 'kg/h')),
      entered('picking-rate', 'Picking rate', quantity('lb/h', 'kg/h')),
      entered('picking-rate-high', 'Picking rate high', quantity('lb/h', 'kg/h')),
      entered('packing-rate-low', 'Packing rate low', quantity('lb/h', 'kg/h')),
      entered('packing-rate', 'Packing rate', quantity('lb/h', 'kg/h')),
      entered('packing-rate-high', 'Packing rate high', quantity('lb/h', 'kg/h')),
      entered('cleaning-rate-low', 'Cleaning rate low', quantity('lb/h', 'kg/h')),
      entered('cleaning-rate', 'Cleaning rate', quantity('lb/h', 'kg/h')),
      entered('cleaning-rate-high', 'Cleaning rate high', quantity('lb/h', 'kg/h')),
      entered('weeding-time-low', 'Weeding time low', quantity('min/ft2', 'min/m2')),
      entered('weeding-time', 'Weeding time', quantity('min/ft2', 'min/m2')),
      entered('weeding-time-high', 'Weeding time high', quantity('min/ft2', 'min/m2')),
      entered('thinning-time-low', 'Thinning time low', quantity('min/ft2', 'min/m2')),
      entered('thinning-time', 'Thinning time', quantity('min/ft2', 'min/m2')),
      entered('thinning-time-high', 'Thinning time high', quantity('min/ft2', 'min/m2')),
      entered('trellising-time-low', 'Trellising time low', quantity('min/ft2', 'min/m2')),
      entered('trellising-time', 'Trellising time', quantity('min/ft2', 'min/m2')),
      entered('trellising-time-high', 'Trellising time high', quantity('min/ft2', 'min/m2')),
      entered('cover-time-low', 'Cover time low', quantity('min/ft2', 'min/m2')),
      entered('cover-time', 'Cover time', quantity('min/ft2', 'min/m2')),
      entered('cover-time-high', 'Cover time high', quantity('min/ft2', 'min/m2')),
      entered('seedlings-per-seed', 'Seedlings per seed', PLAIN),
      entered('typical-germination', 'Typical germination', SHARE),
      entered('bolting-cold-base', 'Bolting cold base', TEMPERATURE),
      entered('bolting-cold-best-from', 'Bolting cold best from', TEMPERATURE),
      entered('bolting-cold-best-to', 'Bolting cold best to', TEMPERATURE),
      entered('bolting-cold-days-most', 'Bolting cold days most', DAYS),
      entered('bolting-size-warmth', 'Bolting size warmth', DEGREE_DAYS),
      entered('bolting-size-warmth-base', 'Bolting size warmth base', TEMPERATURE),
      entered('bolting-day-length', 'Bolting day length', HOURS),
      entered('bolting-heat', 'Bolting heat', TEMPERATURE),
      entered('bolting-heat-days', 'Bolting heat days', DAYS),
      entered('growth-minimum', 'Growth minimum', TEMPERATURE),
      entered('growth-best-from', 'Growth best from', TEMPERATURE),
      entered('growth-best-to', 'Growth best to', TEMPERATURE),
      entered('growth-maximum', 'Growth maximum', TEMPERATURE),
      entered('degree-day-ceiling', 'Degree-day ceiling', TEMPERATURE),
      entered('warmth-to-harvest-low', 'Warmth to harvest low', DEGREE_DAYS),
      entered('warmth-to-harvest', 'Warmth to harvest', DEGREE_DAYS),
      entered('warmth-to-harvest-high', 'Warmth to harvest high', DEGREE_DAYS),
      entered('warmth-to-harvest-direct-low', 'Warmth to harvest direct low', DEGREE_DAYS),
      entered('warmth-to-harvest-direct', 'Warmth to harvest direct', DEGREE_DAYS),
      entered('warmth-to-harvest-direct-high', 'Warmth to harvest direct high', DEGREE_DAYS),
      entered('warmth-counts-from', 'Warmth counts from', choice('start', '12-hour day in spring', 'spring growth')),
      entered('overwinters', 'Overwinters', choice('no', 'autumn planted', 'either')),
      entered('autumn-soil-maximum', 'Autumn soil maximum', TEMPERATURE),
      entered('frost-limit-young', 'Frost limit young', TEMPERATURE),
      entered('freezing-point', 'Freezing point', TEMPERATURE),
      entered('chill-below', 'Chill below', TEMPERATURE),
      entered('chill-days', 'Chill days', DAYS),
      entered(
        'planted-piece',
        'Planted piece',
        choice('clove', 'set', 'seed tuber', 'slip', 'crown', 'runner plant', 'division', 'root piece'),
      ),
      entered('years-to-first-harvest', 'Years to first harvest', PLAIN),
      entered('days-to-maturity-low', 'Days to maturity low', DAYS),
      entered('days-to-maturity-high', 'Days to maturity high', DAYS),
      entered('days-to-maturity-direct-low', 'Days to maturity direct low', DAYS),
      entered('days-to-maturity-direct-high', 'Days to maturity direct high', DAYS),
    ),
    ...group(
      'Space',
      entered('in-row-spacing', 'In-row spacing', SPACING, { note: 'Between single plants in the row.', least: 0 }),
      entered('row-spacing', 'Row spacing', SPACING, { note: 'Between rows on the bed.', least: 0 }),
      entered('rows-per-bed', 'Rows per bed', PLAIN, { note: 'On a bed 30 in (76 cm) wide.', least: 0, decimals: 0 }),
      entered('clump-in-row-spacing', 'Clump in-row spacing', SPACING, {
        note: 'Between blocks of several plants.',
        least: 0,
      }),
      entered('beds-across', 'Beds across', PLAIN, {
        note: 'Beds that one row of plants covers in the end.',
        least: 1,
        decimals: 0,
      }),
      entered('isolated-plant-mass', 'Isolated plant mass', PLANT_MASS, {
        note: 'What the marketable part weighs with all the room it can use.',
        least: 0,
      }),
      entered('ceiling-yield', 'Ceiling yield', YIELD, {
        note: 'What crowding cannot pass, however close the plants.',
        least: 0,
      }),
      entered('squareness-loss', 'Squareness loss', SHARE, {
        note: 'Yield lost where rows stand eight times as far apart as plants in them.',
        least: 0,
        most: 100,
      }),
    ),
    ...group(
      'Days',
      entered('days-to-maturity', 'Days to maturity', DAYS, {
        note: 'From planting out to first harvest.',
        least: 0,
        decimals: 0,
      }),
      entered('days-to-maturity-direct', 'Days to maturity direct', DAYS, {
        note: 'From sowing in the bed to first harvest.',
        least: 0,
        decimals: 0,
      }),
      entered('harvest-window', 'Harvest window', DAYS, {
        note: 'From first to last harvest of one planting.',
        least: 0,
        decimals: 0,
      }),
      entered('day-length-response', 'Day-length response', choice(...DAY_LENGTH_RESPONSES)),
      entered('critical-day-length', 'Critical day length', HOURS, {
        note: 'Day length that starts bulbs or flowers; a variety may have its own.',
        least: 0,
        most: 24,
      }),
      entered('bolting-trigger', 'Bolting trigger', choice(...BOLTING_TRIGGERS), { note: 'What sends it to seed.' }),
      entered('bolting-size', 'Bolting size', TEXT, { note: 'Plants smaller than this do not answer to cold.' }),
      entered('bolting-cold', 'Bolting cold', TEMPERATURE, { note: 'Days cooler than this count.' }),
      entered('bolting-cold-days', 'Bolting cold days', DAYS, {
        note: 'So many of them raise the risk.',
        least: 0,
        decimals: 0,
      }),
    ),
    ...group(
      'Harvest',
      entered('harvest-unit', 'Harvest unit', choice(...HARVEST_UNITS)),
      entered('unit-mass', 'Unit mass', PLANT_MASS, { note: 'One bunch, head, bulb, fruit or root.', least: 0 }),
      entered('yield', 'Yield', YIELD, { note: 'Marketable, of bed without paths: middle of low and high.', least: 0 }),
      entered('yield-low', 'Yield low', YIELD, { least: 0 }),
      entered('yield-high', 'Yield high', YIELD, { least: 0 }),
      entered('marketable-share', 'Marketable share', SHARE, { least: 0, most: 100 }),
      entered('bulb-shape-factor', 'Bulb shape factor', BULB_SHAPE, { note: 'Mass over diameter cubed.', least: 0 }),
      entered('diameter-spread', 'Diameter spread', SHARE, {
        note: 'Standard deviation of diameter over its mean.',
        least: 0,
        most: 30,
      }),
    ),
    ...group(
      'Keeping',
      entered('curing-days', 'Curing days', DAYS, { least: 0, decimals: 0 }),
      entered('curing-loss', 'Curing loss', SHARE, { note: 'Of fresh mass.', least: 0, most: 100 }),
      entered('storage-temperature', 'Storage temperature', TEMPERATURE),
      entered('storage-humidity', 'Storage humidity', SHARE, { least: 0, most: 100 }),
      entered('storage-life', 'Storage life', DAYS, {
        note: 'At that temperature and humidity.',
        least: 0,
        decimals: 0,
      }),
      entered('monthly-storage-loss', 'Monthly storage loss', SHARE, {
        note: 'Of what is in store, in 30 days; where recalled, it goes by how long the crop keeps.',
        least: 0,
        most: 100,
      }),
    ),
    ...group(
      'Soil and water',
      entered('rotation-years', 'Rotation years', PLAIN, {
        note: 'Years before the family comes back to the bed.',
        least: 0,
        decimals: 0,
      }),
      entered('nitrogen-removal', 'Nitrogen removal', REMOVAL, { note: 'N carried off with the harvest.', least: 0 }),
      entered('phosphorus-removal', 'Phosphorus removal', REMOVAL, { note: 'P, not P2O5.', least: 0 }),
      entered('potassium-removal', 'Potassium removal', REMOVAL, { note: 'K, not K2O.', least: 0 }),
      entered('crop-coefficient-initial', 'Crop coefficient initial', PLAIN, {
        note: 'Water use over that of short grass.',
        least: 0,
      }),
      entered('crop-coefficient-mid', 'Crop coefficient mid', PLAIN, { least: 0 }),
      entered('crop-coefficient-end', 'Crop coefficient end', PLAIN, { least: 0 }),
      entered('initial-stage', 'Initial stage', DAYS, {
        note: 'Planting to a tenth of the ground covered.',
        least: 0,
        decimals: 0,
      }),
      entered('development-stage', 'Development stage', DAYS, { note: 'To full cover.', least: 0, decimals: 0 }),
      entered('mid-season-stage', 'Mid-season stage', DAYS, { note: 'To the first yellowing.', least: 0, decimals: 0 }),
      entered('late-stage', 'Late stage', DAYS, { note: 'To harvest.', least: 0, decimals: 0 }),
    ),
    ...group(
      'Sources',
      entered('ranges', 'Ranges', TEXT, { note: 'Lowest and highest of figures that vary widely.' }),
      entered('doubts', 'Doubts', TEXT, { note: 'Where sources disagree or stop short.' }),
      entered('sources', 'Sources', TEXT, {
        note: 'Where each figure comes from; memory marks a recalled one to check first.',
      }),
    ),
  ],
  checks: [],
  cautions: [
    'Figures are planning estimates: local extension advice and your own records come first.',
    'Seed sold as treated carries a label with its treatment: wear gloves, keep it from children and animals, never eat or feed it.',
  ],
};
