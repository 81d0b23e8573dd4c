// The Sets and plants sheet: cloves, sets, tubers, crowns and bought plants, ordered like seed: what all plantings need, what is on
// hand, and the cheapest packs for the rest. Reads Varieties and Packs.

import type { SheetDeclaration } from '../engine/index.ts';
import { computed, entered, figures, group, MASS, made, PLAIN, quantity, TEXT } from './authoring.ts';
import { coverOf } from './seed-order.ts';

const MONEY = quantity('money');

function orderOf(form: 'sets' | 'plants') {
  const Form = form === 'sets' ? 'Sets' : 'Plants';
  const small = Form.toLowerCase();
  return group(
    Form,
    computed(`${small}-needed`, `${Form} needed`, PLAIN, `[Variety].[${Form} needed]`, {
      note: 'Over all plantings, with the spare.',
      decimals: 0,
    }),
    entered(`${small}-on-hand`, `${Form} on hand`, PLAIN, {
      note: form === 'sets' ? 'Of your own, kept to plant.' : 'Of your own, raised or kept.',
      decimals: 0,
      least: 0,
    }),
    computed(
      `${small}-to-buy`,
      `${Form} to buy`,
      PLAIN,
      `MAX(0; [${Form} needed] - IF(ISBLANK([${Form} on hand]); 0; [${Form} on hand]))`,
      { decimals: 0 },
    ),
    computed(
      `cover-of-${small}`,
      `Cover of ${small}`,
      figures('cover-of-a-need'),
      coverOf(`${Form} to buy`, `${Form} on offer`),
    ),
    computed(`packs-of-${small}`, `Packs of ${small}`, TEXT, `[Cover of ${small}].[Packs]`, {
      note: 'The cheapest that cover it.',
    }),
    computed(`supplier-of-${small}`, `Supplier of ${small}`, TEXT, `[Cover of ${small}].[Supplier]`),
    computed(
      `cost-of-${small}`,
      `Cost of ${small}`,
      MONEY,
      `IF([${Form} to buy] > 0; [Cover of ${small}].[Cost]; 0 money)`,
      { note: 'By themselves, without postage.', decimals: 2 },
    ),
    computed(
      `${small}-in-the-order`,
      `${Form} in the order`,
      PLAIN,
      `SUMIFS(Packs[Pieces to order]; Packs[Variety]; [Variety]; Packs[Form]; "${small}")`,
      { note: 'In the packs of the whole order.', decimals: 0 },
    ),
  );
}

function checksOf(form: 'sets' | 'plants'): SheetDeclaration['checks'] {
  const Form = form === 'sets' ? 'Sets' : 'Plants';
  return [
    {
      id: `no-${form}-on-offer`,
      name: `No ${form} on offer`,
      level: 'warning',
      column: `packs-of-${form}`,
      says: `IF(AND([${Form} to buy] > 0; ISBLANK([Cost of ${form}])); "No pack of ${form} with a number and a price is listed for this variety: add one in Packs, or enter what is on hand.")`,
    },
    {
      id: `too-few-${form}-in-the-order`,
      name: `Too few ${form} in the order`,
      level: 'warning',
      column: `${form}-in-the-order`,
      says: `IF(AND(Farm[Packs in the order] > 0; [${Form} in the order] < [${Form} to buy]; NOT(ISBLANK([Cost of ${form}]))); "The order holds too few: work it out again.")`,
    },
    {
      id: `too-many-${form}-in-the-order`,
      name: `Too many ${form} in the order`,
      level: 'note',
      column: `${form}-in-the-order`,
      says: `IF(AND([${Form} in the order] > 2 * [${Form} to buy]; [${Form} in the order] > [Cover of ${form}].[Holds]); "The order holds more than twice what is needed now, and smaller packs cover it: work it out again.")`,
    },
  ];
}

export const plantOrderSheet: SheetDeclaration = {
  id: 'plant-order',
  name: 'Sets and plants',
  question: 'Seed',
  about:
    'Cloves, sets, tubers, crowns and bought plants: what all plantings need, less what is on hand, in the cheapest packs that cover it. Sets stands for all that is planted dormant.',
  rows: {
    from: 'each',
    sheet: 'varieties',
    as: made('variety', 'Variety'),
    where: '[Variety].[Sets needed] + [Variety].[Plants needed] > 0',
  },
  columns: [
    ...group(
      'Need',
      computed('crop', 'Crop', TEXT, '[Variety].[Crop].[Crop]'),
      computed('piece', 'Piece', TEXT, '[Variety].[Crop].[Planted piece]', { note: 'What is planted.' }),
      computed('weight-needed', 'Weight needed', MASS, '[Sets needed] * [Variety].[Crop].[Planted piece mass]', {
        note: 'Of cloves, sets or tubers.',
        decimals: 1,
      }),
    ),
    ...orderOf('sets'),
    ...orderOf('plants'),
  ],
  checks: [...checksOf('sets'), ...checksOf('plants')],
  cautions: [
    'Sets, cloves and plants can bring disease onto the farm: buy sound stock, and look it over before it goes in.',
  ],
};
