// Crops, third part: the room a crop takes, how crowding tells on it, how long it takes, and the soil and water it needs.
// crops.ts puts the parts together.

import { SQUARENESS_LOSS_AT_RANGE } from '../engine/index.ts';
import {
  computed,
  DAYS,
  DENSITY,
  entered,
  group,
  PLAIN,
  PLANT_MASS,
  quantity,
  SHARE,
  SPACING,
  withDefault,
  YIELD,
} from './authoring.ts';
import { ownFirst } from './own-figures.ts';

/** Nutrients carried off in the harvest. */
const REMOVAL = quantity('lb/ton', 'kg/t');

/** The bed that Rows per bed is given for. */
const LIBRARY_BED = '30 in';

/** Yield of all plants, sold or not, before the loss of standing far from square. */
const GROWN = `${ownFirst('Own yield', '[Yield]')} / ([Marketable share]
  * SQUARENESS(RECTANGULARITY([Row spacing]; [In-row spacing]); [Squareness loss]))`;

function days(id: string, name: string, note: string) {
  return entered(id, name, DAYS, { note, decimals: 0, least: 0 });
}

/**
 * An end of days without a printed range, as a share of the likely ones: the middle of the ranges that the library holds
 * (47 crops run from 82 to 118 % of their days, 28 harvests from 75 to 117 % of their length).
 */
function end(name: string, which: 'low' | 'high', share: string) {
  const id = name.toLowerCase().replaceAll(' ', '-');
  return withDefault(`${id}-${which}`, `${name} ${which}`, DAYS, `[${name}] * ${share}`, { decimals: 0, least: 0 });
}

/** FAO Irrigation and Drainage Paper 56 draws most vegetables near these shares of their days in the bed. */
function stage(id: string, name: string, share: string, note = '') {
  return withDefault(
    id,
    name,
    DAYS,
    `IF(ISBLANK([Days to maturity]); [Days to maturity direct]; [Days to maturity]) * ${share}`,
    { note, decimals: 0, least: 0 },
  );
}

export const GROWING_COLUMNS = [
  ...group(
    'Space',
    entered('in-row-spacing', 'In-row spacing', SPACING, { note: 'Between single plants in the row.', least: 0 }),
    entered('rows-per-bed', 'Rows per bed', PLAIN, { note: 'On a bed {30 in|76 cm} wide.', decimals: 0, least: 0 }),
    entered('clump-in-row-spacing', 'Clump in-row spacing', SPACING, {
      note: 'Between blocks of several plants.',
      least: 0,
    }),
    withDefault('beds-across', 'Beds across', PLAIN, '1', {
      note: 'Beds that one row of plants covers in the end.',
      decimals: 0,
      least: 1,
    }),
    computed('row-spacing', 'Row spacing', SPACING, `${LIBRARY_BED} * [Beds across] / [Rows per bed]`, {
      note: 'Between rows, by the rows on a bed {30 in|76 cm} wide.',
      decimals: 1,
    }),
    computed('usual-density', 'Usual density', DENSITY, '1 / ([Row spacing] * [In-row spacing])', {
      note: 'Single plants on the ground they cover.',
      decimals: 2,
    }),
    withDefault('share-of-ceiling', 'Share of ceiling', SHARE, 'IF([Usual density] >= 20/1 m2; 67%; 50%)', {
      note: 'Share of what crowding cannot pass that the usual spacing reaches. Where no trial says: two thirds at {2 plants per ft²|20 plants per m²} and closer, half where they stand wider (a judgement).',
      decimals: 0,
      least: 1,
      most: 99,
    }),
    entered('density-least', 'Density least', DENSITY, { note: 'Of the trials behind it.', decimals: 2, least: 0 }),
    entered('density-most', 'Density most', DENSITY, { decimals: 2, least: 0 }),
    withDefault('squareness-loss', 'Squareness loss', SHARE, `${SQUARENESS_LOSS_AT_RANGE}`, {
      note: 'Yield lost where rows stand eight times as far apart as plants in them.',
      decimals: 1,
      least: 0,
      most: 100,
    }),
    withDefault(
      'isolated-plant-mass',
      'Isolated plant mass',
      PLANT_MASS,
      `${GROWN} / ([Usual density] * (1 - [Share of ceiling]))`,
      {
        note: 'What the part that is harvested weighs with all the room it can use: set so that the usual spacing gives the yield.',
        decimals: 0,
        least: 0,
      },
    ),
    withDefault('ceiling-yield', 'Ceiling yield', YIELD, `${GROWN} / [Share of ceiling]`, {
      note: 'What crowding cannot pass, however close the plants: set so that the usual spacing gives the yield.',
      decimals: 2,
      least: 0,
    }),
  ),
  ...group(
    'Days',
    end('Days to maturity', 'low', '82%'),
    days(
      'days-to-maturity',
      'Days to maturity',
      'From planting out to first harvest; of perennials from spring growth.',
    ),
    end('Days to maturity', 'high', '118%'),
    end('Days to maturity direct', 'low', '82%'),
    days('days-to-maturity-direct', 'Days to maturity direct', 'From sowing in the bed to first harvest.'),
    end('Days to maturity direct', 'high', '118%'),
    end('Harvest window', 'low', '75%'),
    days('harvest-window', 'Harvest window', 'From first to last harvest of one planting.'),
    end('Harvest window', 'high', '117%'),
  ),
  ...group(
    'Soil and water',
    entered('rotation-years', 'Rotation years', PLAIN, {
      note: 'Years before the family comes back to the bed.',
      decimals: 0,
      least: 0,
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
    stage('initial-stage', 'Initial stage', '20%', 'Planting to a tenth of the ground covered.'),
    stage('development-stage', 'Development stage', '30%', 'To full cover.'),
    stage('mid-season-stage', 'Mid-season stage', '30%', 'To the first yellowing.'),
    stage('late-stage', 'Late stage', '20%', 'To harvest.'),
  ),
];
