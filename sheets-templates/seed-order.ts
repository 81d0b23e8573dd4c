// The Seed order sheet: one row for every variety that needs seed, what is on hand, and the cheapest packs for the rest.
// Reads Plantings, Seed lots and Packs.

import type { SheetDeclaration } from '../engine/index.ts';
import { computed, group, made, PLAIN, quantity, TEXT } from './authoring.ts';

const MONEY = quantity('money');

/** The packs of this row's variety; the value columns come first. */
const OF_VARIETY = 'Packs[Variety]; [Variety]';
const OFFERS = 'Packs[Seeds on offer]; Packs[Price]';

export const seedOrderSheet: SheetDeclaration = {
  id: 'seed-order',
  name: 'Seed order',
  question: 'Seed',
  about:
    'What to buy: the seeds all plantings need, less what is on hand, in the cheapest packs that cover it. Postage is not reckoned.',
  rows: { from: 'each', sheet: 'varieties', as: made('variety', 'Variety'), where: '[Variety].[Seeds needed] > 0' },
  columns: [
    ...group(
      'Need',
      computed('crop', 'Crop', TEXT, '[Variety].[Crop].[Crop]'),
      computed('seeds-needed', 'Seeds needed', PLAIN, '[Variety].[Seeds needed]', {
        note: 'Over all plantings from seed, with the spare.',
        decimals: 0,
      }),
      computed(
        'seeds-on-hand',
        'Seeds on hand',
        PLAIN,
        `SUMIFS('Seed lots'[Usable seeds]; 'Seed lots'[Variety]; [Variety])`,
        {
          note: 'In lots not to be replaced.',
          decimals: 0,
        },
      ),
      computed('seeds-to-buy', 'Seeds to buy', PLAIN, 'MAX(0; [Seeds needed] - [Seeds on hand])', { decimals: 0 }),
    ),
    ...group(
      'Order',
      computed(
        'packs',
        'Packs',
        TEXT,
        `IF([Seeds to buy] > 0; COVERPACKS([Seeds to buy]; ${OFFERS}; Packs[Pack]; ${OF_VARIETY}))`,
        {
          note: 'The cheapest that cover it.',
        },
      ),
      computed(
        'supplier',
        'Supplier',
        TEXT,
        `IF([Seeds to buy] > 0; COVERSUPPLIER([Seeds to buy]; ${OFFERS}; Packs[Supplier]; ${OF_VARIETY}))`,
      ),
      computed(
        'seeds-bought',
        'Seeds bought',
        PLAIN,
        `IF([Seeds to buy] > 0; COVERSEEDS([Seeds to buy]; ${OFFERS}; ${OF_VARIETY}); 0)`,
        { decimals: 0 },
      ),
      computed(
        'cost',
        'Cost',
        MONEY,
        `IF([Seeds to buy] > 0; COVERCOST([Seeds to buy]; ${OFFERS}; ${OF_VARIETY}); 0 money)`,
        {
          decimals: 2,
        },
      ),
    ),
    ...group(
      'Left over',
      computed('left-over', 'Left over', PLAIN, '[Seeds bought] - [Seeds to buy]', {
        note: 'Of the packs bought.',
        decimals: 0,
      }),
      computed(
        'worth-next-year',
        'Worth next year',
        MONEY,
        `IF([Left over] > 0; IF([Variety].[Crop].[Seed life] <= 1; 0 money;
          [Left over] * ([Cost] / [Seeds bought]) * SEEDLIFE([Variety].[Germination]; 365 days; [Variety].[Crop].[Seed life]) / [Variety].[Germination]);
          0 money)`,
        {
          note: 'At this price, for what will still germinate; seed that keeps a year at most counts as nothing.',
          decimals: 2,
        },
      ),
    ),
  ],
  checks: [
    {
      id: 'nothing-on-offer',
      name: 'Nothing on offer',
      level: 'warning',
      column: 'packs',
      says: 'IF(AND([Seeds to buy] > 0; ISBLANK([Cost])); "No pack with seeds and a price is listed for this variety: add one in Packs.")',
    },
    {
      id: 'much-left-over',
      name: 'Much left over',
      level: 'note',
      column: 'left-over',
      says: 'IF(AND([Left over] > [Seeds to buy]; [Worth next year] = 0 money); "More is left over than is sown, and it will not keep: look for a smaller pack or share one.")',
    },
  ],
  cautions: ['Treated seed carries a label with its treatment: ask for untreated seed where you need it.'],
};
