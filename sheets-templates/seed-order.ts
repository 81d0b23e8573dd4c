// The Seed order sheet: one row for every variety that needs seed, what is on hand, and the cheapest packs for the rest.
// Reads Plantings, Seed lots and Packs.

import type { SheetDeclaration } from '../engine/index.ts';
import { computed, figures, group, made, PLAIN, quantity, TEXT } from './authoring.ts';

const MONEY = quantity('money');

/** The cheapest packs for a need of this row's variety; blank where there is none. */
export function coverOf(needed: string, onOffer: string): string {
  return `IF([${needed}] > 0; COVER([${needed}]; Packs[${onOffer}]; Packs[Price]; Packs[Pack]; Packs[Supplier]; Packs[Variety]; [Variety]))`;
}

export const seedOrderSheet: SheetDeclaration = {
  id: 'seed-order',
  name: 'Seed order',
  question: 'Seed',
  about:
    'What to buy: the seeds all plantings need, less what is on hand, in the cheapest packs that cover it. Postage is not reckoned here: work out the order, and Suppliers and Order lines say what to buy where.',
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
      computed('cover', 'Cover', figures('cover-of-a-need'), coverOf('Seeds to buy', 'Seeds on offer'), {
        note: 'The cheapest packs that cover it, none of fifty times the need where a smaller one is sold.',
      }),
      computed('packs', 'Packs', TEXT, '[Cover].[Packs]', { note: 'The cheapest that cover it.' }),
      computed('supplier', 'Supplier', TEXT, '[Cover].[Supplier]'),
      computed('seeds-bought', 'Seeds bought', PLAIN, 'IF([Seeds to buy] > 0; [Cover].[Holds]; 0)', { decimals: 0 }),
      computed('cost', 'Cost', MONEY, 'IF([Seeds to buy] > 0; [Cover].[Cost]; 0 money)', {
        note: 'By themselves, without postage.',
        decimals: 2,
      }),
      computed(
        'in-the-order',
        'In the order',
        PLAIN,
        'SUMIFS(Packs[Pieces to order]; Packs[Variety]; [Variety]; Packs[Form]; "seed")',
        { note: 'Seeds in the packs of the whole order: see Packs and Suppliers.', decimals: 0 },
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
      id: 'order-too-small',
      name: 'Order too small',
      level: 'warning',
      column: 'in-the-order',
      says: 'IF(AND(Farm[Packs in the order] > 0; [In the order] < [Seeds to buy]; NOT(ISBLANK([Cost]))); "The order holds too few: work it out again.")',
    },
    {
      id: 'nothing-on-offer',
      name: 'Nothing on offer',
      level: 'warning',
      column: 'packs',
      says: 'IF(AND([Seeds to buy] > 0; ISBLANK([Cost])); "No pack with seeds and a price is listed for this variety: add one in Packs.")',
    },
    {
      id: 'order-too-large',
      name: 'Order too large',
      level: 'note',
      column: 'in-the-order',
      says: 'IF(AND([In the order] > 2 * [Seeds to buy]; [In the order] > [Seeds bought]); "The order holds more than twice what is needed now, and smaller packs cover it: work it out again.")',
    },
    {
      id: 'pack-far-above-need',
      name: 'Pack far above need',
      level: 'note',
      column: 'packs',
      says: 'IF(AND([Seeds to buy] > 0; [Seeds bought] >= 20 * [Seeds to buy]); "The cheapest pack holds " & TEXT([Seeds bought] / [Seeds to buy]; "0") & " times what is needed: look for a smaller one, or share it.")',
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
