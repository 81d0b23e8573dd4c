// The Packs sheet: what seed houses offer this season, a row a pack. Seed order buys the cheapest packs that cover a need.

import type { SheetDeclaration } from '../engine/index.ts';
import {
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

export const packsSheet: SheetDeclaration = {
  id: 'packs',
  name: 'Packs',
  question: 'Seed',
  about:
    'Packs on offer, by seed count or by weight, with their prices. Leave postage out; strike a pack that is sold out.',
  rows: { from: 'entry' },
  columns: [
    ...group(
      'Pack',
      withDefault('pack', 'Pack', TEXT, '[Supplier] & " " & TEXT([Seeds in pack]; "0") & " seeds"', {
        note: 'How the order names it; write over it if the pack has a name of its own.',
      }),
      entered('variety', 'Variety', link('varieties'), { required: true }),
      entered('supplier', 'Supplier', TEXT),
    ),
    ...group(
      'Size and price',
      entered('seeds', 'Seeds', PLAIN, {
        note: 'Where the pack is sold by count; a weight typed here goes to Weight.',
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
        'IF(ISBLANK([Seeds]); ROUNDDOWN([Weight] * [Variety].[Crop].[Seeds per gram]; 0); [Seeds])',
        { note: "By weight: from the crop's seeds per gram.", decimals: 0 },
      ),
      computed('seeds-on-offer', 'Seeds on offer', PLAIN, 'IF(NOT([Sold out]); [Seeds in pack])', { decimals: 0 }),
      computed('price-per-1-000-seeds', 'Price per 1,000 seeds', MONEY, '1000 * [Price] / [Seeds on offer]', {
        decimals: 2,
      }),
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
