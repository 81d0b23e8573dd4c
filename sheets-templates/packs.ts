// The Packs sheet: what suppliers offer this season, a row a pack: seed, sets and cloves, plants. Seed order and Sets and plants
// read it; the act that works the whole order out (acts/work-out-order.ts) writes how many of each to order.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  choice,
  computed,
  entered,
  group,
  link,
  PLAIN,
  quantity,
  SEED_MASS,
  TEXT,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';

const MONEY = quantity('money');

/** What a pack holds. Sets stands for cloves, tubers and crowns too, plants for slips and runners. */
export const PACK_FORMS = ['seed', 'sets', 'plants'] as const;

function onOffer(form: (typeof PACK_FORMS)[number]): string {
  return `IF(AND([Form] = "${form}"; NOT([Sold out])); [Seeds in pack])`;
}

/** What is to be bought of the pack's variety, in its form. */
const NEEDED = `IF([Form] = "seed"; SUMIFS('Seed order'[Seeds to buy]; 'Seed order'[Variety]; [Variety]);
          IF([Form] = "sets"; SUMIFS('Sets and plants'[Sets to buy]; 'Sets and plants'[Variety]; [Variety]); SUMIFS('Sets and plants'[Plants to buy]; 'Sets and plants'[Variety]; [Variety])))`;

export const packsSheet: SheetDeclaration = {
  id: 'packs',
  name: 'Packs',
  question: 'Seed',
  about:
    'Packs on offer, by count or by weight, with their prices: seed, sets and cloves, plants. Postage stands in Suppliers; strike a pack that is sold out. Work out the order, and it says how many of each to buy.',
  rows: { from: 'entry' },
  columns: [
    ...group(
      'Pack',
      withDefault(
        'pack',
        'Pack',
        TEXT,
        '[Supplier] & " " & TEXT([Seeds in pack]; "0") & " " & SWITCH([Form]; "seed"; "seed"; "sets"; "set"; "plant") & IF([Seeds in pack] = 1; ""; "s")',
        {
          note: 'How the order names it; write over it if the pack has a name of its own.',
        },
      ),
      entered('variety', 'Variety', link('varieties'), { required: true }),
      entered('supplier', 'Supplier', TEXT, { note: 'As named in Suppliers.' }),
      withDefault(
        'form',
        'Form',
        choice(...PACK_FORMS),
        'IF(OR([Variety].[Crop].[Usual start] = "sets"; [Variety].[Crop].[Usual start] = "plants"); [Variety].[Crop].[Usual start]; "seed")',
        { note: 'Sets stands for cloves, tubers and crowns too, plants for slips and runners.' },
      ),
    ),
    ...group(
      'Size and price',
      entered('seeds', 'Seeds', PLAIN, {
        note: 'Seeds, sets or plants, where the pack is sold by count; a weight typed here goes to Weight.',
        decimals: 0,
        least: 1,
        orElse: 'weight',
      }),
      entered('weight', 'Weight', SEED_MASS, { note: 'Where it is sold by weight.', least: 0 }),
      entered('price', 'Price', MONEY, { decimals: 2, least: 0 }),
      entered('treated', 'Treated', YES_OR_NO, { note: 'With a pesticide or coating.' }),
      withDefault('sold-out', 'Sold out', YES_OR_NO, 'FALSE'),
      computed(
        'seeds-in-pack',
        'Seeds in pack',
        PLAIN,
        `IF(ISBLANK([Seeds]); ROUNDDOWN(IF([Form] = "seed"; [Weight] * [Variety].[Crop].[Seeds per gram];
          IF([Form] = "sets"; [Weight] / [Variety].[Crop].[Planted piece mass])); 0); [Seeds])`,
        { note: "By weight: from the crop's seeds per gram, or the mass of a clove, set or tuber.", decimals: 0 },
      ),
      computed('seeds-on-offer', 'Seeds on offer', PLAIN, onOffer('seed'), { decimals: 0 }),
      computed('sets-on-offer', 'Sets on offer', PLAIN, onOffer('sets'), { decimals: 0 }),
      computed('plants-on-offer', 'Plants on offer', PLAIN, onOffer('plants'), { decimals: 0 }),
      computed(
        'price-each',
        'Price each',
        MONEY,
        'IF(AND([Form] <> "seed"; NOT([Sold out])); [Price] / [Seeds in pack])',
        {
          note: 'Of a set or plant.',
          decimals: 3,
        },
      ),
      computed('price-per-1-000-seeds', 'Price per 1,000 seeds', MONEY, '1000 * [Price] / [Seeds on offer]', {
        decimals: 2,
      }),
    ),
    ...group(
      'Order',
      computed('needed', 'Needed', PLAIN, NEEDED, {
        note: 'Of this variety in this form, over all packs.',
        decimals: 0,
      }),
      entered('proposed-packs', 'Proposed packs', PLAIN, {
        note: 'Written when the order is worked out.',
        decimals: 0,
        least: 0,
      }),
      withDefault('packs-to-order', 'Packs to order', PLAIN, '[Proposed packs]', {
        note: 'As worked out; type your own number, 0 for none, and the rest of the order is worked out around it.',
        decimals: 0,
        least: 0,
      }),
      computed('pieces-to-order', 'Pieces to order', PLAIN, '[Packs to order] * [Seeds in pack]', {
        note: 'Seeds, sets or plants.',
        decimals: 0,
      }),
      computed('order-cost', 'Order cost', MONEY, '[Packs to order] * [Price]', { decimals: 2 }),
    ),
  ],
  checks: [
    {
      id: 'no-size',
      name: 'No size',
      level: 'warning',
      column: 'seeds',
      says: 'IF(ISBLANK([Seeds in pack]); "Enter the seeds or the weight of this pack: without them it cannot be ordered.")',
    },
    {
      id: 'no-price',
      name: 'No price',
      level: 'warning',
      column: 'price',
      says: 'IF(ISBLANK([Price]); "Enter the price: without it this pack cannot be ordered.")',
    },
    {
      id: 'supplier-not-listed',
      name: 'Supplier not listed',
      level: 'note',
      column: 'supplier',
      says: 'IF(AND(NOT(ISBLANK([Supplier])); COUNTIFS(Suppliers[Supplier]; [Supplier]) = 0); "Not in Suppliers: its postage and least order count as nothing until you enter it there.")',
    },
    {
      id: 'ordered-though-sold-out',
      name: 'Ordered though sold out',
      level: 'warning',
      column: 'packs-to-order',
      says: 'IF(AND([Sold out]; [Packs to order] > 0); "Sold out, and still in the order: work the order out again.")',
    },
    {
      id: 'treated-seed',
      name: 'Treated seed',
      level: 'note',
      column: 'treated',
      says: 'IF([Treated]; "Treated seed: wear gloves, keep it from children and animals, and ask your certifier whether it is allowed.")',
    },
  ],
  cautions: [
    'Treated seed carries a label with its treatment: wear gloves, wash hands, keep it from children and animals, never eat it or feed it.',
  ],
};
