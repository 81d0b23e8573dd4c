// The Propagation sheet: bench and germination space week by week against what the farm has, with the trays and the mix of the week;
// and the Sowing list: what is sown and potted on, day by day. Read Raising, Plantings, Weeks and Farm.

import type { EventDate, SheetDeclaration } from '../engine/index.ts';
import { AREA, computed, DATE, entered, group, link, made, PLAIN, TEXT, VOLUME, YES_OR_NO } from './authoring.ts';

/** Summed over what stands somewhere on the day of the week that counts. */
function standing(column: string, from: string, until: string, more = ''): string {
  return `SUMIFS(Raising[${column}]; Raising[${from}]; "<=" & [Middle]; Raising[${until}]; ">" & [Middle]${more})`;
}

/** Summed over what happens in the week. */
function inTheWeek(column: string, on: string): string {
  return `SUMIFS(Raising[${column}]; Raising[${on}]; ">=" & [Week starts]; Raising[${on}]; "<=" & ([Week starts] + 6 days))`;
}

export const propagationSheet: SheetDeclaration = {
  id: 'propagation',
  name: 'Propagation',
  question: 'Raising',
  about:
    'Week by week, what stands in the germination space and on the bench against the room there is, and the trays, blocks and mix to get ready.',
  rows: { from: 'each', sheet: 'weeks', as: made('week', 'Week'), where: '[Week].[In season]' },
  columns: [
    ...group(
      'Week',
      computed('week-starts', 'Week starts', DATE, '[Week].[Week]'),
      computed('middle', 'Middle', DATE, '[Week].[Week] + 3 days', {
        note: 'What stands on Thursday stands for the week.',
      }),
    ),
    ...group(
      'To sow',
      computed('trays', 'Trays', PLAIN, inTheWeek('Trays', 'Sown'), { decimals: 0 }),
      computed('blocks', 'Blocks', PLAIN, inTheWeek('Blocks', 'Sown'), { note: 'Or cells.', decimals: 0 }),
      computed('seeds', 'Seeds', PLAIN, inTheWeek('Seeds', 'Sown'), { decimals: 0 }),
      computed('trays-to-pot-on', 'Trays to pot on', PLAIN, inTheWeek('Trays potted on', 'Pot on'), { decimals: 0 }),
      computed(
        'mix-to-make',
        'Mix to make',
        VOLUME,
        `${inTheWeek('Mix volume', 'Sown')} + ${inTheWeek('Mix for potting on', 'Pot on')}`,
        { note: 'Loose mix.', decimals: 1 },
      ),
    ),
    ...group(
      'Germination',
      computed(
        'germinating',
        'Germinating',
        AREA,
        standing('Area', 'Sown', 'On bench from', '; Raising[Germinates apart]; "yes"'),
        { decimals: 1 },
      ),
      computed('germination-area', 'Germination area', AREA, 'Farm[Germination area]', { decimals: 1 }),
      computed('germination-area-free', 'Germination area free', AREA, '[Germination area] - [Germinating]', {
        decimals: 1,
      }),
    ),
    ...group(
      'Bench',
      computed('as-sown', 'As sown', AREA, standing('Area', 'On bench from', 'First trays until'), { decimals: 1 }),
      computed('potted-on', 'Potted on', AREA, standing('Area potted on', 'Pot on', 'On bench until'), { decimals: 1 }),
      computed('bench-used', 'Bench used', AREA, '[As sown] + [Potted on]', { decimals: 1 }),
      computed('bench-area', 'Bench area', AREA, 'Farm[Bench area]', { decimals: 1 }),
      computed('bench-free', 'Bench free', AREA, '[Bench area] - [Bench used]', { decimals: 1 }),
    ),
  ],
  checks: [
    {
      id: 'bench-full',
      name: 'Bench full',
      level: 'warning',
      column: 'bench-free',
      says: 'IF([Bench free] < 0 m2; "More trays than the bench holds this week: sow some later, harden some earlier, or use smaller cells.")',
    },
    {
      id: 'germination-space-full',
      name: 'Germination space full',
      level: 'warning',
      column: 'germination-area-free',
      says: 'IF([Germination area free] < 0 m2; "More trays than the germination space holds this week: sow over more days, or stack what needs no light.")',
    },
  ],
  cautions: [],
};

const RAISED = made('raised', 'Raised');
const SOWN_DIRECT = made('direct', 'Direct');

const DATES: readonly EventDate[] = [
  { sheet: 'raising', column: 'sown', event: 'Sow', about: RAISED },
  { sheet: 'raising', column: 'pot-on', event: 'Pot on', about: RAISED },
  { sheet: 'planting-jobs', column: 'sow-in-the-bed-on', event: 'Sow in bed', about: SOWN_DIRECT },
];

const PLANTING = 'IF(ISBLANK([Raised]); [Direct].[Planting]; [Raised].[Planting])';

export const sowingListSheet: SheetDeclaration = {
  id: 'sowing-list',
  name: 'Sowing list',
  question: 'Raising',
  about: 'What is sown and potted on, day by day: how many trays of what, seeds in each, from which lot, in which mix.',
  rows: { from: 'events', dates: DATES, as: made('on', 'On'), event: made('job', 'Job') },
  columns: [
    ...group(
      'What',
      computed('planting', 'Planting', link('plantings'), PLANTING),
      computed('variety', 'Variety', link('varieties'), '[Planting].[Variety]'),
      computed('crop', 'Crop', TEXT, '[Planting].[Crop]'),
      computed(
        'seed-lot',
        'Seed lot',
        TEXT,
        'IF([Job] <> "Pot on"; IF(ISBLANK([Planting].[Seed lot]); "new seed"; [Planting].[Seed lot].[Lot]))',
      ),
    ),
    ...group(
      'How much',
      computed('tray', 'Tray', link('trays'), 'IF([Job] = "Pot on"; [Raised].[Into]; [Raised].[Tray])'),
      computed('trays', 'Trays', PLAIN, 'IF([Job] = "Pot on"; [Raised].[Trays potted on]; [Raised].[Trays])', {
        decimals: 0,
      }),
      computed(
        'pieces',
        'Pieces',
        PLAIN,
        'IF([Job] = "Pot on"; [Raised].[Plants to pot on]; IF([Job] = "Sow"; [Raised].[Blocks]; [Planting].[Stations]))',
        { note: 'Blocks, cells or places in the bed.', decimals: 0 },
      ),
      computed(
        'seeds-each',
        'Seeds each',
        PLAIN,
        'IF([Job] = "Sow"; [Raised].[Seeds per station]; IF([Job] = "Sow in bed"; [Planting].[Seeds per station]))',
        { decimals: 1 },
      ),
      computed('seeds', 'Seeds', PLAIN, 'IF([Job] <> "Pot on"; [Planting].[Seeds needed])', { decimals: 0 }),
      computed('mix', 'Mix', link('mixes'), '[Raised].[Mix]'),
      computed(
        'mix-volume',
        'Mix volume',
        VOLUME,
        'IF([Job] = "Pot on"; [Raised].[Mix for potting on]; [Raised].[Mix volume])',
        { note: 'Loose mix.', decimals: 1 },
      ),
      computed('bed', 'Bed', link('beds'), 'IF([Job] = "Sow in bed"; [Planting].[Bed])'),
    ),
    ...group('Done', entered('done', 'Done', YES_OR_NO), entered('note', 'Note', TEXT)),
  ],
  checks: [],
  cautions: ['Treated seed: wear gloves, wash hands, keep it from children and animals.'],
};
