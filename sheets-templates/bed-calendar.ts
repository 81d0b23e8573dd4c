// The Bed calendar: every bed week by week, what stands on it, what is free and when the next planting comes; and Bed nitrogen, what
// leaves each bed and what is given back. Reads Beds, Plantings, Planting jobs, Cover crops, Inputs, Nutrients and Weeks.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  choice,
  computed,
  DATE,
  entered,
  group,
  LENGTH,
  MASS,
  made,
  PLAIN,
  quantity,
  TEXT,
  YES_OR_NO,
} from './authoring.ts';

const BED = '[Bed]';
const STANDING = `Plantings[Bed]; ${BED}; Plantings[Planted out]; "<=" & [Middle]; Plantings[Bed free]; ">" & [Middle]`;
const SPREADING = `Plantings[Spreads over]; ${BED}; Plantings[Planted out]; "<=" & [Middle]; Plantings[Bed free]; ">" & [Middle]`;
const COVERED = `'Cover crops'[Bed]; ${BED}; 'Cover crops'[Sown]; "<=" & [Middle]; 'Cover crops'[Stands until]; ">" & [Middle]`;

export const bedCalendarSheet: SheetDeclaration = {
  id: 'bed-calendar',
  name: 'Bed calendar',
  question: 'Ground',
  about:
    'Every bed week by week: what stands on it, how much is free and until when, cover crops, beds being prepared.',
  rows: {
    from: 'pairs',
    sheets: ['beds', 'weeks'],
    as: [made('bed', 'Bed'), made('week', 'Week')],
    where: '[Week].[In season]',
  },
  columns: [
    ...group(
      'Week',
      computed('week-starts', 'Week starts', DATE, '[Week].[Week]'),
      computed('middle', 'Middle', DATE, '[Week].[Week] + 3 days', {
        note: 'What stands on Thursday stands for the week.',
      }),
      computed(
        'planted',
        'Planted',
        LENGTH,
        `SUM(SUMIFS(Plantings[Bed length used]; ${STANDING}); SUMIFS(Plantings[Bed length used]; ${SPREADING}))`,
        { note: 'Of the bed, this week.', decimals: 0 },
      ),
      computed('covered', 'Covered', LENGTH, `SUM(SUMIFS('Cover crops'[Length]; ${COVERED}))`, {
        note: 'By a cover crop.',
        decimals: 0,
      }),
      computed('stands', 'Stands', TEXT, `IF([Planted] > 0 m; NAMESIFS(Plantings[Planting]; ${STANDING}))`),
      computed('families', 'Families', TEXT, `IF([Planted] > 0 m; NAMESIFS(Plantings[Family]; ${STANDING}))`),
      computed('cover-crop', 'Cover crop', TEXT, `IF([Covered] > 0 m; NAMESIFS('Cover crops'[Name]; ${COVERED}))`),
      computed(
        'being-prepared-for',
        'Being prepared for',
        TEXT,
        `NAMESIFS('Planting jobs'[Name]; 'Planting jobs'[Bed]; ${BED}; 'Planting jobs'[Prepare on]; ">=" & [Week starts]; 'Planting jobs'[Prepare on]; "<=" & ([Week starts] + 6 days))`,
      ),
    ),
    ...group(
      'Room',
      computed('free', 'Free', LENGTH, `MAX(0 m; ${BED}.[Length] - [Planted] - [Covered])`, { decimals: 0 }),
      computed(
        'state',
        'State',
        choice('free', 'part free', 'full', 'cover crop', 'too full'),
        `IF([Planted] > ${BED}.[Length]; "too full"; IF([Free] <= 0 m; IF([Planted] <= 0 m; "cover crop"; "full"); IF([Planted] + [Covered] > 0 m; "part free"; "free")))`,
      ),
      computed(
        'next-planting',
        'Next planting',
        DATE,
        `MINIFS(Plantings[Planted out]; Plantings[Bed]; ${BED}; Plantings[Planted out]; ">" & [Middle])`,
      ),
      computed(
        'weeks-until-it',
        'Weeks until it',
        PLAIN,
        'IF([Free] > 0 m; ROUNDDOWN(([Next planting] - [Week starts]) / 7 days; 0))',
        {
          note: 'For which the free part is free.',
          decimals: 0,
        },
      ),
    ),
  ],
  checks: [],
  cautions: [],
};

const RATE = quantity('lb/acre', 'kg/ha');

export const bedNitrogenSheet: SheetDeclaration = {
  id: 'bed-nitrogen',
  name: 'Bed nitrogen',
  question: 'Ground',
  about:
    'Nitrogen that leaves each bed with the harvest against what inputs and cover crops give this season. A balance for planning, not a fertiliser recommendation.',
  rows: { from: 'each', sheet: 'beds', as: made('bed', 'Bed'), where: '' },
  columns: [
    ...group(
      'Nitrogen',
      computed(
        'removed',
        'Removed',
        MASS,
        `SUM(SUMIFS('Nutrients and rotation'[Nitrogen]; 'Nutrients and rotation'[Bed]; ${BED}))`,
        {
          note: 'With the harvest.',
          decimals: 2,
        },
      ),
      computed(
        'from-inputs',
        'From inputs',
        MASS,
        `SUM(SUMIFS(Inputs[Nitrogen]; Inputs[Bed]; ${BED}; Inputs[Given on]; ">=" & (Farm[Season starts] - 26 weeks); Inputs[Given on]; "<=" & Farm[Season ends]))`,
        {
          note: 'Manure, compost, fertiliser since last autumn.',
          decimals: 2,
        },
      ),
      computed(
        'from-cover-crops',
        'From cover crops',
        MASS,
        `SUM(SUMIFS('Cover crops'[Nitrogen left]; 'Cover crops'[Bed]; ${BED}; 'Cover crops'[Ended]; ">=" & (Farm[Season starts] - 26 weeks); 'Cover crops'[Ended]; "<=" & Farm[Season ends]))`,
        {
          note: 'Ended since last autumn.',
          decimals: 2,
        },
      ),
      entered('from-the-soil', 'From the soil', RATE, {
        note: 'What its humus gives in a season, by a soil test.',
        decimals: 0,
        least: 0,
      }),
      computed('given', 'Given', MASS, `SUM([From inputs]; [From cover crops]; [From the soil] * ${BED}.[Area])`, {
        decimals: 2,
      }),
      computed('balance', 'Balance', MASS, '[Given] - [Removed]', {
        note: 'Below nothing: more leaves than comes.',
        decimals: 2,
      }),
      computed('balance-per-area', 'Balance per area', RATE, `[Balance] / ${BED}.[Area]`, { decimals: 0 }),
      computed('anything-noted', 'Anything noted', YES_OR_NO, '[Given] > 0 kg'),
    ),
  ],
  checks: [
    {
      id: 'far-more-than-leaves',
      name: 'Far more than leaves',
      level: 'note',
      column: 'balance-per-area',
      says: 'IF(AND([Given] > 2 * [Removed]; [Balance per area] > 100 kg/ha); "Far more than twice the nitrogen that leaves: what plants do not take washes out. Give less, or sow a cover crop after (a judgement; local limits come first).")',
    },
  ],
  cautions: [
    'A planning estimate: test the soil, and keep to local limits on nitrogen, phosphorus, manure and compost.',
  ],
};
