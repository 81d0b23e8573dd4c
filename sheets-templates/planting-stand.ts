// Plantings, first part: what is planted where and when, the seed it takes and what comes up. plantings.ts puts the parts
// together.

import { BULBING_BASE, BULBING_THERMAL_TIME } from '../engine/index.ts';
import {
  AREA,
  choice,
  computed,
  DATE,
  DEGREE_DAYS,
  entered,
  group,
  LENGTH,
  link,
  MASS,
  PLAIN,
  SHARE,
  SPACING,
  TEXT,
  VOLUME,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';
import { START_METHODS } from './crop-columns-seed.ts';
import { DATE_COLUMNS } from './planting-dates.ts';
import { WANTED_COLUMNS } from './planting-wanted.ts';

const CROP = '[Variety].[Crop]';

/** The seed lot aged to this planting's own sowing date, by the method its lot uses. */
const LOT_GERMINATION = `IF([Seed lot].[Method] = "viability equation";
      SEEDVIABILITY([Seed lot].[Germination when tested]; MAX(0 days; [Sown] - [Seed lot].[Ages from]); [Seed lot].[Moisture];
        [Seed lot].[Store temperature]; [Variety].[Crop].[KE]; [Variety].[Crop].[CW]; [Variety].[Crop].[CH]; [Variety].[Crop].[CQ]);
      SEEDLIFE([Seed lot].[Germination when tested]; MAX(0 days; [Sown] - [Seed lot].[Ages from]); [Variety].[Crop].[Seed life]))`;

export const STAND_COLUMNS = [
  ...group(
    'Planting',
    entered('planting', 'Planting', TEXT, { required: true }),
    entered('variety', 'Variety', link('varieties'), { required: true }),
    computed('crop', 'Crop', TEXT, '[Variety].[Crop].[Crop]'),
    computed('family', 'Family', TEXT, '[Variety].[Crop].[Family]'),
    withDefault('start', 'Start', choice(...START_METHODS), '[Variety].[Crop].[Usual start]'),
    entered('seed-lot', 'Seed lot', link('seed-lots'), { note: 'Blank: new seed.' }),
    entered('carried-from', 'Carried from', PLAIN, {
      note: 'The season it was planted in, where it stood when this one began: nothing is bought, sown or set out for it. Roll over writes it.',
      decimals: 0,
    }),
    computed('loose', 'Loose', YES_OR_NO, 'OR([Start] = "deep tray"; [Start] = "nursery bed")', {
      note: 'Raised close together, then lifted and parted.',
    }),
    computed('raised', 'Raised', YES_OR_NO, 'OR([Start] = "blocks"; [Start] = "cells"; [Loose])', {
      note: 'In the propagation house first, or in a nursery bed.',
    }),
    computed('from-seed', 'From seed', YES_OR_NO, 'OR([Raised]; [Start] = "direct seed")'),
    computed('sown-by-the-place', 'Sown by the place', YES_OR_NO, 'AND([From seed]; NOT([Loose]))', {
      note: 'Seed falls into the block, cell or place that the plants come from.',
    }),
  ),
  ...WANTED_COLUMNS,
  ...group(
    'Bed',
    withDefault('bed', 'Bed', link('beds'), '[Proposed bed]', {
      note: 'As typed; else the bed proposed, which a new proposal may change.',
    }),
    withDefault('spreads-over', 'Spreads over', link('beds'), '[Proposed bed beside]', {
      note: 'The bed beside it, for crops whose Beds across is more than one.',
    }),
    entered('proposed-bed', 'Proposed bed', link('beds'), { note: 'Written when beds are proposed.' }),
    entered('proposed-bed-beside', 'Proposed bed beside', link('beds'), { note: 'Written when beds are proposed.' }),
    entered('not-placed', 'Not placed', TEXT, { note: 'Why no bed could be proposed.' }),
    withDefault(
      'bed-length-used',
      'Bed length used',
      LENGTH,
      'IF(ISBLANK([Length wanted]); IF(ISBLANK(TYPED([Bed])); Farm[Bed length]; [Bed].[Length]); [Length wanted])',
      {
        note: 'What the amount wanted takes; the whole of the bed typed where none is wanted, or the usual length.',
        least: 0,
      },
    ),
    computed('bed-width', 'Bed width', SPACING, 'IF(ISBLANK([Bed]); Farm[Bed width]; [Bed].[Width])'),
    computed('bed-area', 'Bed area', AREA, '[Bed length used] * [Bed width]', { decimals: 1 }),
    withDefault('rows', 'Rows', PLAIN, 'MAX(1; ROUND([Variety].[Crop].[Rows per bed] * ([Bed width] / 30 in); 0))', {
      decimals: 0,
      least: 1,
      most: 100,
    }),
    computed(
      'usual-spacing',
      'Usual spacing',
      SPACING,
      `IF(AND([Seeds per station] > 1.5; [Raised]; NOT(ISBLANK([Variety].[Crop].[Clump in-row spacing])));
        [Variety].[Crop].[Clump in-row spacing]; [Variety].[Crop].[In-row spacing])`,
      { note: 'In the row, as the library has it: for single plants, or for clumps.', decimals: 2 },
    ),
    withDefault(
      'in-row-spacing',
      'In-row spacing',
      SPACING,
      `IF(N(Farm[Spacing step]) = 0; [Usual spacing]; MROUND([Usual spacing]; Farm[Spacing step] /
        IF([Usual spacing] < Farm[Spacing step]; 4; IF([Usual spacing] < 3 * Farm[Spacing step]; 2; 1))))`,
      { note: 'The usual one in whole steps of the farm.', decimals: 2, least: 0 },
    ),
    withDefault('pattern', 'Pattern', choice('square', 'offset'), '"square"', {
      note: 'Offset: every second row shifted by half a spacing.',
    }),
    computed('row-spacing', 'Row spacing', SPACING, '[Bed width] / [Rows]', { decimals: 2 }),
    computed(
      'stations',
      'Stations',
      PLAIN,
      `IF([Pattern] = "offset"; OFFSETSTATIONS([Bed length used]; [In-row spacing]; [Rows]);
        STATIONS([Bed length used]; [In-row spacing]; [Rows]))`,
      { note: 'Planting places; half a spacing stays free at each end.', decimals: 0 },
    ),
    computed('offset-gain', 'Offset gain', PLAIN, 'OFFSETGAIN([Bed length used]; [In-row spacing]; [Rows])', {
      note: 'Places an offset gains on this bed; often none or fewer.',
      decimals: 0,
    }),
  ),
  ...DATE_COLUMNS,
  ...group(
    'Stand',
    withDefault(
      'seeds-per-station',
      'Seeds per station',
      PLAIN,
      `IF([Loose]; 1; IF([Raised]; IF(ISBLANK([Variety].[Crop].[Usual seeds per block]); 1; [Variety].[Crop].[Usual seeds per block]);
        IF([Start] = "direct seed"; MAX(1; ROUNDUP(1 / ([Germination] * [Field survival] * [Seedlings per seed]); 1)); 1)))`,
      {
        note: 'In one block, cell or place; 3.5 is half threes and half fours. Loose plants, sets and plants: how many go in one place. Direct seed: what leaves one plant a place on average.',
        decimals: 1,
        least: 0.1,
        most: 100,
      },
    ),
    computed(
      'seedlings-per-seed',
      'Seedlings per seed',
      PLAIN,
      'IF(ISBLANK([Variety].[Crop].[Seedlings per seed]); 1; [Variety].[Crop].[Seedlings per seed])',
      { note: 'Of one that comes up: a ball of beet or chard holds several.', decimals: 1 },
    ),
    computed(
      'germination',
      'Germination',
      SHARE,
      `IF([From seed]; IF(ISBLANK([Seed lot]); [Variety].[Germination];
        IF(ISBLANK([Seed lot].[Ages from]); [Seed lot].[Germination when tested]; ${LOT_GERMINATION})))`,
      { note: 'Of the seed lot at the sowing date, or of new seed.', decimals: 0 },
    ),
    withDefault(
      'nursery-survival',
      'Nursery survival',
      SHARE,
      'IF([Loose]; IF([Start] = "deep tray"; 85%; 70%); IF([Raised]; 95%; 100%))',
      {
        note: 'Blocks with a plant that reach planting out, memory: 90 to 98 %. Loose: plants fit to set out, memory; of onions from a bed one trial used half.',
        decimals: 0,
        least: 0,
        most: 100,
      },
    ),
    withDefault(
      'field-survival',
      'Field survival',
      SHARE,
      `IF(ISBLANK(${CROP}.[Own field survival]); IF([Start] = "direct seed"; 85%; 97%); ${CROP}.[Own field survival])`,
      {
        note: 'Plants that reach harvest. Memory: transplants lose 2 to 5 %.',
        decimals: 0,
        least: 0,
        most: 100,
      },
    ),
    entered('thin-to', 'Thin to', PLAIN, {
      note: 'Most plants left in one place; blank leaves all.',
      decimals: 0,
      least: 1,
    }),
    computed(
      'plants-per-station',
      'Plants per station',
      PLAIN,
      `IF([Sown by the place]; IF(ISBLANK([Thin to]); MEANPLANTS([Seeds per station]; [Germination]) * [Seedlings per seed];
        THINNEDMEAN([Seeds per station] * [Seedlings per seed]; [Germination]; [Thin to])); [Seeds per station])`,
      { note: 'Mean of the places with a plant.', decimals: 2 },
    ),
    computed(
      'empty-stations',
      'Empty stations',
      SHARE,
      'IF([Sown by the place]; EMPTYSHARE([Seeds per station]; [Germination]); 0%)',
      {
        note: 'Blocks or places where nothing comes up.',
        decimals: 1,
      },
    ),
    computed(
      'with-1-plant',
      'With 1 plant',
      SHARE,
      'IF([Sown by the place]; PLANTSSHARE(1; [Seeds per station]; [Germination]))',
      {
        decimals: 0,
      },
    ),
    computed(
      'with-2-plants',
      'With 2 plants',
      SHARE,
      'IF([Sown by the place]; PLANTSSHARE(2; [Seeds per station]; [Germination]))',
      {
        decimals: 0,
      },
    ),
    computed(
      'with-3-plants',
      'With 3 plants',
      SHARE,
      'IF([Sown by the place]; PLANTSSHARE(3; [Seeds per station]; [Germination]))',
      {
        decimals: 0,
      },
    ),
    computed(
      'with-4-plants',
      'With 4 plants',
      SHARE,
      'IF([Sown by the place]; PLANTSSHARE(4; [Seeds per station]; [Germination]))',
      {
        decimals: 0,
      },
    ),
    computed(
      'with-5-or-more',
      'With 5 or more',
      SHARE,
      'IF([Sown by the place]; MAX(0%; 1 - [Empty stations] - [With 1 plant] - [With 2 plants] - [With 3 plants] - [With 4 plants]))',
      { decimals: 0 },
    ),
  ),
  ...group(
    'Seed and raising',
    computed(
      'blocks-to-start',
      'Blocks to start',
      PLAIN,
      'IF(AND([Raised]; NOT([Loose]); ISBLANK([Carried from])); BLOCKSNEEDED([Stations]; (1 - EMPTYSHARE([Seeds per station]; [Germination])) * [Nursery survival]; Farm[Confidence]))',
      { note: "So that, as surely as the farm's confidence, every place gets a block with a plant.", decimals: 0 },
    ),
    computed(
      'seeds-needed',
      'Seeds needed',
      PLAIN,
      `IF(AND([From seed]; ISBLANK([Carried from])); ROUNDUP((1 + Farm[Spare seed]) * IF([Loose]; BLOCKSNEEDED([Stations] * [Seeds per station]; MIN(100%; [Germination] * [Seedlings per seed]) * [Nursery survival]; Farm[Confidence]);
        IF([Raised]; [Blocks to start]; [Stations]) * [Seeds per station]); 0); 0)`,
      { note: 'With the spare.', decimals: 0 },
    ),
    computed(
      'sets-or-plants-to-buy',
      'Sets or plants to buy',
      PLAIN,
      'IF(AND(NOT([From seed]); ISBLANK([Carried from])); ROUNDUP([Stations] * [Seeds per station] * (1 + Farm[Spare seed]); 0))',
      {
        decimals: 0,
      },
    ),
    computed('weight-to-buy', 'Weight to buy', MASS, `[Sets or plants to buy] * ${CROP}.[Planted piece mass]`, {
      note: 'Of cloves, sets or tubers.',
      decimals: 1,
    }),
    entered('tray', 'Tray', link('trays'), { note: "Blank: the farm's usual one." }),
    computed(
      'cells-per-tray',
      'Cells per tray',
      PLAIN,
      'IF(AND([Raised]; [Start] <> "nursery bed"); IF(ISBLANK([Tray]); IF([Start] = "blocks"; Farm[Blocks in block tray]; IF([Loose]; Farm[Seeds in deep tray]; Farm[Cells in cell tray])); [Tray].[Cells]))',
      { note: 'Of a deep tray the seeds.', decimals: 0 },
    ),
    computed('trays', 'Trays', PLAIN, 'ROUNDUP(IF([Loose]; [Seeds needed]; [Blocks to start]) / [Cells per tray]; 0)', {
      decimals: 0,
    }),
    computed(
      'nursery-bed-length',
      'Nursery bed length',
      LENGTH,
      'IF([Start] = "nursery bed"; [Seeds needed] / (Farm[Seeds in a nursery bed] * Farm[Bed width]))',
      { note: 'Of a bed, sown close.', decimals: 1 },
    ),
    computed(
      'mix-volume',
      'Mix volume',
      VOLUME,
      `IF([Raised]; IF([Loose]; IF([Start] = "deep tray"; [Trays] * IF(ISBLANK([Tray]); Farm[Mix in deep tray]; [Tray].[Mix per tray]); 0 L); IF(ISBLANK([Tray]);
        IF([Start] = "blocks"; [Blocks to start] * Farm[Block volume] * Farm[Mix compaction]; [Blocks to start] * Farm[Cell volume]);
        [Blocks to start] * [Tray].[Cell volume] * [Tray].[Compaction])))`,
      { note: 'Loose mix.', decimals: 1 },
    ),
    computed(
      'bench-area',
      'Bench area',
      AREA,
      'IF([Raised]; IF([Start] = "nursery bed"; 0 m2; [Trays] * IF(ISBLANK([Tray]); IF([Start] = "blocks"; Farm[Block tray area]; IF([Loose]; Farm[Deep tray area]; Farm[Cell tray area])); [Tray].[Tray area])))',
      { note: 'None for a nursery bed.', decimals: 1 },
    ),
    computed('on-bench-from', 'On bench from', DATE, 'IF([Raised]; [Sown])'),
    computed('on-bench-until', 'On bench until', DATE, 'IF([Raised]; [Planted out])'),
    entered('pot-on-into', 'Pot on into', link('trays'), {
      note: 'Larger blocks, cells or pots that the plants go on into; blank where they stay as they are.',
    }),
    withDefault('pot-on', 'Pot on', DATE, 'IF(NOT(ISBLANK([Pot on into])); [Emergence] + 14 days)', {
      note: 'Two weeks after they are up, before roots meet (common practice).',
    }),
    withDefault('harden-from', 'Harden from', DATE, 'IF([Raised]; MAX([Emergence]; [Planted out] - 7 days))', {
      note: 'A week before planting out (common practice).',
    }),
    computed(
      'ready-from',
      'Ready from',
      DATE,
      `IF([Raised]; [Sown] + IF(ISBLANK(${CROP}.[Weeks in propagation]); 6 weeks; ${CROP}.[Weeks in propagation]))`,
      { note: "By age: the crop's weeks in propagation after sowing." },
    ),
    computed(
      'thermal-time-at-planting-out',
      'Thermal time at planting out',
      DEGREE_DAYS,
      `IF([Raised]; MAX(0 days; [Planted out] - [Emergence]) * ([Raising temperature] - ${BULBING_BASE} degC); IF([From seed]; 0 degC day; ${BULBING_THERMAL_TIME} degC day))`,
      { note: 'Above 5 degC since emergence; sets and bought plants count as grown.', decimals: 0 },
    ),
  ),
];
