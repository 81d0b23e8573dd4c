// The Mixes and Mix ingredients sheets: seed and potting mixes by parts, how much of each the season takes, and what that is of each
// ingredient. Read Raising and Farm.

import type { SheetDeclaration } from '../engine/index.ts';
import { computed, entered, group, link, PLAIN, quantity, SHARE, TEXT, VOLUME } from './authoring.ts';
import type { NamedRow } from './names.ts';

const MONEY = quantity('money');
const MIX_PRICE = quantity('money/gal', 'money/L');

function ofItsIngredients(what: 'SUMIFS' | 'COUNTIFS', column: string): string {
  const counted = what === 'SUMIFS' ? `'Mix ingredients'[${column}]; ` : '';
  return `${what}(${counted}'Mix ingredients'[Mix]; [Mix])`;
}

export const mixesSheet: SheetDeclaration = {
  id: 'mixes',
  name: 'Mixes',
  question: 'Raising',
  about:
    'Seed and potting mixes. Their ingredients stand by parts in Mix ingredients; the season says how much to make.',
  rows: { from: 'entry' },
  key: 'mix',
  columns: [
    ...group(
      'Mix',
      entered('mix', 'Mix', TEXT, { required: true }),
      computed('parts', 'Parts', PLAIN, ofItsIngredients('SUMIFS', 'Parts'), {
        note: 'Of all ingredients.',
        decimals: 1,
      }),
      computed(
        'needed',
        'Needed',
        VOLUME,
        'SUM(SUMIFS(Raising[Mix volume]; Raising[Mix]; [Mix]); SUMIFS(Raising[Mix for potting on]; Raising[Mix]; [Mix]))',
        { note: 'Over the season, loose.', decimals: 0 },
      ),
      computed(
        'price-of-the-mix',
        'Price of the mix',
        MIX_PRICE,
        `IF(AND([Parts] > 0; ${ofItsIngredients('SUMIFS', 'Without a price')} = 0); SUM(${ofItsIngredients('SUMIFS', 'Price by parts')}) / [Parts])`,
        { note: 'Of loose mix; blank where an ingredient has no price.', decimals: 2 },
      ),
      entered('source', 'Source', TEXT),
    ),
  ],
  checks: [
    {
      id: 'no-ingredients',
      name: 'No ingredients',
      level: 'note',
      column: 'parts',
      says: 'IF([Parts] = 0; "Enter what it is made of in Mix ingredients, by parts.")',
    },
  ],
  cautions: ['Peat, compost and mineral mixes raise dust: wet the mix before turning it, or wear a mask.'],
};

export const mixIngredientsSheet: SheetDeclaration = {
  id: 'mix-ingredients',
  name: 'Mix ingredients',
  question: 'Raising',
  about: 'What each mix is made of, by parts of volume, and how much of it the season takes.',
  rows: { from: 'entry' },
  columns: [
    ...group(
      'Ingredient',
      entered('mix', 'Mix', link('mixes'), { required: true }),
      entered('ingredient', 'Ingredient', TEXT, { required: true }),
      entered('parts', 'Parts', PLAIN, { note: 'By volume.', decimals: 3, least: 0 }),
      entered('price', 'Price', MIX_PRICE, { decimals: 2, least: 0 }),
      computed('share', 'Share', SHARE, '[Parts] / [Mix].[Parts]', { decimals: 1 }),
      computed('needed', 'Needed', VOLUME, '[Share] * [Mix].[Needed]', {
        note: 'By parts; a mix fills a little less than its parts.',
        decimals: 1,
      }),
      computed('cost', 'Cost', MONEY, '[Needed] * [Price]', { decimals: 2 }),
      computed('price-by-parts', 'Price by parts', MIX_PRICE, '[Parts] * [Price]', { decimals: 2 }),
      computed('without-a-price', 'Without a price', PLAIN, 'IF(ISBLANK([Price]); 1; 0)', { decimals: 0 }),
    ),
  ],
  checks: [],
  cautions: [],
};

const COIR_MIX = 'Compost, coir and grit';
const PEAT_MIX = 'Peat, compost and soil';

/** Two published mixes, to start from. */
export const MIX_ROWS: readonly NamedRow[] = [
  {
    Mix: COIR_MIX,
    Source: 'Ohio State University Extension, a recipe of its volunteers: equal parts, coir wetted first',
  },
  {
    Mix: PEAT_MIX,
    Source:
      'Coleman, The New Organic Grower, as quoted: with 1/8 part of lime and 3/4 part of base fertiliser; read second-hand',
  },
];

export const MIX_INGREDIENT_ROWS: readonly NamedRow[] = [
  { Mix: COIR_MIX, Ingredient: 'compost', Parts: '1' },
  { Mix: COIR_MIX, Ingredient: 'coir, wetted', Parts: '1' },
  { Mix: COIR_MIX, Ingredient: 'fine grit or perlite', Parts: '1' },
  { Mix: PEAT_MIX, Ingredient: 'peat', Parts: '30' },
  { Mix: PEAT_MIX, Ingredient: 'sharp sand or perlite', Parts: '20' },
  { Mix: PEAT_MIX, Ingredient: 'compost', Parts: '20' },
  { Mix: PEAT_MIX, Ingredient: 'garden soil', Parts: '10' },
  { Mix: PEAT_MIX, Ingredient: 'base fertiliser: equal blood meal, colloidal phosphate, greensand', Parts: '0.75' },
  { Mix: PEAT_MIX, Ingredient: 'lime', Parts: '0.125' },
];
