// The Raising sheet: every planting that is raised, from the seed tray to the bed: trays, mix, where it stands when, potting on,
// hardening, and whether it is ready by age and by height. Reads Plantings, Trays, Crops and Farm.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  AREA,
  choice,
  computed,
  DATE,
  entered,
  group,
  link,
  made,
  PLAIN,
  SPACING,
  TEXT,
  VOLUME,
  WEEKS,
  withDefault,
} from './authoring.ts';

const P = '[Planting]';
const CROP = `${P}.[Variety].[Crop]`;

/** So many weeks about a crop's usual age are of no account (a judgement). */
const AGE_SLACK = '2 weeks';

const TRIMMING =
  'No need: one, two or three cuts lost neither yield nor keeping in one trial (Menezes Júnior and others), and tops and roots cut back to 10 to 15 cm lost a little in others (Brewster 2008, p. 297). Cut back only what falls over, with clean blades.';

export const raisingSheet: SheetDeclaration = {
  id: 'raising',
  name: 'Raising',
  question: 'Raising',
  about:
    'Every planting that is raised, from sowing to planting out: trays and mix, where they stand, when to pot on and to harden, and whether the plants are ready by age and by height.',
  rows: {
    from: 'each',
    sheet: 'plantings',
    as: made('planting', 'Planting'),
    where: `AND(${P}.[Raised]; ISBLANK(${P}.[Carried from]))`,
  },
  columns: [
    ...group(
      'What',
      computed('name', 'Name', TEXT, `${P}.[Planting]`),
      computed('variety', 'Variety', link('varieties'), `${P}.[Variety]`),
      computed('crop', 'Crop', TEXT, `${P}.[Crop]`),
      computed('seed-lot', 'Seed lot', link('seed-lots'), `${P}.[Seed lot]`),
      computed('start', 'Start', TEXT, `${P}.[Start]`),
    ),
    ...group(
      'Sow',
      computed('sown', 'Sown', DATE, `${P}.[Sown]`),
      computed('seeds-per-station', 'Seeds per station', PLAIN, `IF(${P}.[Loose]; ; ${P}.[Seeds per station])`, {
        note: 'In each block or cell.',
        decimals: 1,
      }),
      computed('blocks', 'Blocks', PLAIN, `${P}.[Blocks to start]`, { note: 'Or cells.', decimals: 0 }),
      computed('seeds', 'Seeds', PLAIN, `${P}.[Seeds needed]`, { note: 'With the spare.', decimals: 0 }),
      computed(
        'tray',
        'Tray',
        link('trays'),
        `IF(NOT(ISBLANK(${P}.[Tray])); ${P}.[Tray]; IF([Start] = "blocks"; Farm[Block tray]; IF([Start] = "cells"; Farm[Cell tray]; IF([Start] = "deep tray"; Farm[Deep tray]))))`,
      ),
      computed('trays', 'Trays', PLAIN, `${P}.[Trays]`, { decimals: 0 }),
      withDefault('mix', 'Mix', link('mixes'), 'Farm[Usual mix]'),
      computed('mix-volume', 'Mix volume', VOLUME, `${P}.[Mix volume]`, { note: 'Loose mix.', decimals: 1 }),
    ),
    ...group(
      'Stand',
      computed('area', 'Area', AREA, `${P}.[Bench area]`, { note: 'As sown.', decimals: 1 }),
      computed('up', 'Up', DATE, `${P}.[Emergence]`),
      computed(
        'germinates-apart',
        'Germinates apart',
        choice('yes', 'no'),
        `IF(AND(${P}.[Heated to germinate]; NOT(ISBLANK(Farm[Germination area]))); "yes"; "no")`,
        { note: 'In the germination space of Farm, where there is one and the planting is heated to germinate.' },
      ),
      withDefault('on-bench-from', 'On bench from', DATE, 'IF([Germinates apart] = "yes"; [Up]; [Sown])', {
        note: 'When it is up, where it germinates apart.',
      }),
      computed('harden-from', 'Harden from', DATE, `${P}.[Harden from]`),
      computed('planted-out', 'Planted out', DATE, `${P}.[Planted out]`),
      withDefault('on-bench-until', 'On bench until', DATE, '[Planted out]', {
        note: 'Until planting out; type the day it moves to a frame to harden.',
      }),
    ),
    ...group(
      'Pot on',
      computed('pot-on', 'Pot on', DATE, `IF(NOT(ISBLANK(${P}.[Pot on into])); ${P}.[Pot on])`),
      computed('into', 'Into', link('trays'), `${P}.[Pot on into]`),
      computed(
        'plants-to-pot-on',
        'Plants to pot on',
        PLAIN,
        `IF(NOT(ISBLANK([Pot on])); IF(${P}.[Loose]; ${P}.[Stations] * ${P}.[Seeds per station] / ${P}.[Nursery survival]; [Blocks] * (1 - ${P}.[Empty stations])))`,
        { note: 'Blocks with a plant; loose, as many plants as are set out and fail.', decimals: 0 },
      ),
      computed('trays-potted-on', 'Trays potted on', PLAIN, 'ROUNDUP([Plants to pot on] / [Into].[Cells]; 0)', {
        decimals: 0,
      }),
      computed('area-potted-on', 'Area potted on', AREA, '[Trays potted on] * [Into].[Tray area]', { decimals: 1 }),
      computed(
        'mix-for-potting-on',
        'Mix for potting on',
        VOLUME,
        'IF(ISBLANK([Pot on]); 0 L; [Trays potted on] * [Into].[Mix per tray])',
        { note: 'Loose mix.', decimals: 1 },
      ),
      computed('first-trays-until', 'First trays until', DATE, 'IF(ISBLANK([Pot on]); [On bench until]; [Pot on])', {
        note: 'When the trays as sown leave the bench.',
      }),
    ),
    ...group(
      'Ready',
      computed('age-set-out', 'Age set out', WEEKS, '[Planted out] - [Sown]', { decimals: 1 }),
      computed('usual-age', 'Usual age', WEEKS, `${P}.[Ready from] - ${P}.[Sown]`, { decimals: 1 }),
      computed('ready-from', 'Ready from', DATE, `${P}.[Ready from]`, { note: 'By age.' }),
      computed(
        'by-age',
        'By age',
        choice('young', 'right', 'old'),
        `IF([Age set out] < [Usual age] - ${AGE_SLACK}; "young"; IF([Age set out] > [Usual age] + ${AGE_SLACK}; "old"; "right"))`,
        { note: 'When set out; two weeks either way are right.' },
      ),
      computed('height-from', 'Height from', SPACING, `${CROP}.[Transplant height low]`, {
        note: 'Of a plant ready to go out. Onions {4 to 6 in|10 to 15 cm}: common practice.',
        decimals: 1,
      }),
      computed('height-to', 'Height to', SPACING, `${CROP}.[Transplant height high]`, { decimals: 1 }),
      entered('height-measured', 'Height measured', SPACING, { note: 'Of a middling plant.', decimals: 1, least: 0 }),
      entered('measured-on', 'Measured on', DATE),
      computed(
        'by-height',
        'By height',
        choice('short', 'ready', 'tall'),
        'IF(AND(NOT(ISBLANK([Height measured])); NOT(ISBLANK([Height from]))); IF([Height measured] < [Height from]; "short"; IF([Height measured] > [Height to] * 1.5; "tall"; "ready")))',
        { note: 'Half as tall again as it need be is tall.' },
      ),
      computed('trimming', 'Trimming', TEXT, `IF(${P}.[Family] = "Amaryllidaceae"; "${TRIMMING}")`),
    ),
  ],
  checks: [
    {
      id: 'too-young',
      name: 'Too young',
      level: 'note',
      column: 'by-age',
      says: 'IF(AND([By age] = "young"; [Age set out] >= 0 days); "Set out younger than usual, at " & TEXT([Age set out] / 7 days; "0.0") & " weeks: sow it earlier, or wait.")',
    },
    {
      id: 'too-old',
      name: 'Too old',
      level: 'note',
      column: 'by-age',
      says: 'IF([By age] = "old"; "Set out older than usual, at " & TEXT([Age set out] / 7 days; "0.0") & " weeks: sow it later, or pot it on.")',
    },
    {
      id: 'pot-on-out-of-time',
      name: 'Pot on out of time',
      level: 'error',
      column: 'pot-on',
      says: 'IF(OR([Pot on] < [Sown]; [Pot on] >= [Planted out]); "Potted on before it is sown or after it is planted out: give it a day between the two, in Plantings.")',
    },
    {
      id: 'on-bench-in-order',
      name: 'On bench in order',
      level: 'error',
      column: 'on-bench-until',
      says: 'IF([On bench until] < [On bench from]; "It leaves the bench before it comes there: look at both dates.")',
    },
  ],
  cautions: [
    'Heaters, fans and lamps need ventilation, sound wiring and room from anything that burns: follow local codes.',
    'Peat, compost and mineral mixes raise dust: wet the mix before turning it, or wear a mask.',
  ],
};
