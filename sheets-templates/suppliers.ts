// The Suppliers sheet, with what each asks for postage and the order it gets, and the Order lines sheet: each pack of the order. The
// order is worked out by an act (acts/work-out-order.ts), which writes packs into Packs. Both read Packs.

import type { SheetDeclaration } from '../engine/index.ts';
import { computed, entered, group, link, made, PLAIN, quantity, TEXT } from './authoring.ts';

const MONEY = quantity('money');

function ofItsPacks(what: 'SUMIFS' | 'COUNTIFS', column: string): string {
  const counted = what === 'SUMIFS' ? `Packs[${column}]; ` : '';
  return `${what}(${counted}Packs[Supplier]; [Supplier]; Packs[Packs to order]; ">0")`;
}

export const suppliersSheet: SheetDeclaration = {
  id: 'suppliers',
  name: 'Suppliers',
  question: 'Seed',
  about:
    'Who sells seed, sets and plants, and what each asks for postage. Work out the order, and it is the cheapest whole: packs and postage together, with what each supplier alone would cost.',
  rows: { from: 'entry' },
  key: 'supplier',
  columns: [
    ...group(
      'Supplier',
      entered('supplier', 'Supplier', TEXT, { required: true, note: 'As named in Packs.' }),
      entered('postage', 'Postage', MONEY, { note: 'Of one order; blank is none.', decimals: 2, least: 0 }),
      entered('postage-free-from', 'Postage free from', MONEY, {
        note: 'Goods for which no postage is paid; blank where it always is.',
        decimals: 2,
        least: 0,
      }),
      entered('least-order', 'Least order', MONEY, {
        note: 'Goods that an order must come to; blank is none.',
        decimals: 2,
        least: 0,
      }),
      entered('note', 'Note', TEXT),
    ),
    ...group(
      'Order',
      computed('lines', 'Lines', PLAIN, ofItsPacks('COUNTIFS', 'Packs to order'), {
        note: 'Kinds of packs ordered: see Order lines.',
        decimals: 0,
      }),
      computed('goods', 'Goods', MONEY, ofItsPacks('SUMIFS', 'Order cost'), { decimals: 2 }),
      computed(
        'postage-to-pay',
        'Postage to pay',
        MONEY,
        `IF(OR([Lines] = 0; ISBLANK([Postage])); 0 money; IF(ISBLANK([Postage free from]); [Postage];
          IF([Goods] >= [Postage free from]; 0 money; [Postage])))`,
        { decimals: 2 },
      ),
      computed('to-pay', 'To pay', MONEY, '[Goods] + [Postage to pay]', { decimals: 2 }),
    ),
    ...group(
      'Alone',
      entered('alone', 'Alone', MONEY, {
        note: 'What all that this supplier has would cost from it alone, postage too; written when the order is worked out.',
        decimals: 2,
      }),
      entered('does-not-have', 'Does not have', TEXT, {
        note: 'Of what is needed; written when the order is worked out.',
      }),
    ),
  ],
  checks: [
    {
      id: 'below-its-least-order',
      name: 'Below its least order',
      level: 'warning',
      column: 'goods',
      says: 'IF(AND([Lines] > 0; [Goods] < [Least order]); "Below the least order of this supplier: work the order out again, or add packs in Packs.")',
    },
  ],
  cautions: [],
};

export const orderLinesSheet: SheetDeclaration = {
  id: 'order-lines',
  name: 'Order lines',
  question: 'Seed',
  about: 'Each pack of the order, with its supplier. Change how many in Packs.',
  rows: { from: 'each', sheet: 'packs', as: made('pack', 'Pack'), where: '[Pack].[Packs to order] > 0' },
  columns: [
    ...group(
      'Line',
      computed('supplier', 'Supplier', TEXT, '[Pack].[Supplier]'),
      computed('variety', 'Variety', link('varieties'), '[Pack].[Variety]'),
      computed('crop', 'Crop', TEXT, '[Variety].[Crop].[Crop]'),
      computed('form', 'Form', TEXT, '[Pack].[Form]'),
      computed('called', 'Called', TEXT, '[Pack].[Pack]'),
      computed('in-a-pack', 'In a pack', PLAIN, '[Pack].[Seeds in pack]', {
        note: 'Seeds, sets or plants.',
        decimals: 0,
      }),
      computed('count', 'Count', PLAIN, '[Pack].[Packs to order]', { note: 'Packs.', decimals: 0 }),
      computed('price', 'Price', MONEY, '[Pack].[Price]', { decimals: 2 }),
      computed('cost', 'Cost', MONEY, '[Pack].[Order cost]', { decimals: 2 }),
      computed('left-over', 'Left over', PLAIN, '[Pack].[Pieces to order] - [Pack].[Needed]', {
        note: 'Of what this pack alone leaves; below zero where others are bought beside it.',
        decimals: 0,
      }),
      computed('treated', 'Treated', TEXT, 'IF([Pack].[Treated]; "treated")'),
    ),
  ],
  checks: [],
  cautions: ['Treated seed carries a label with its treatment: ask for untreated seed where you need it.'],
};
