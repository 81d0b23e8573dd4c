// The Products sheet: what is sold, of which crop, in which form and by what unit, and how harvest and demand come out over the
// season. Reads Crops, Plantings, Lots and Supply against demand.

import type { SheetDeclaration } from '../engine/index.ts';
import {
  choice,
  computed,
  DATE,
  entered,
  group,
  link,
  MASS,
  MONEY,
  PLAIN,
  PLANT_MASS,
  PRICE_BY_WEIGHT,
  TEXT,
  withDefault,
} from './authoring.ts';

const OF_THE_CROP = 'Plantings[Crop]; [Crop name]';

function overWeeks(column: string): string {
  return `SUM(SUMIFS('Supply against demand'[${column}]; 'Supply against demand'[Product name]; [Product]))`;
}

export const productsSheet: SheetDeclaration = {
  id: 'products',
  name: 'Products',
  question: 'Selling',
  about:
    'What you sell: a crop in a form, by weight or by the piece. A crop may have several. What has no product of its own goes to the one without a crop.',
  rows: { from: 'entry' },
  key: 'product',
  columns: [
    ...group(
      'Product',
      entered('product', 'Product', TEXT, { required: true }),
      entered('crop', 'Crop', link('crops'), { note: 'Blank: whatever has no product of its own.' }),
      entered('variety', 'Variety', link('varieties'), {
        note: 'Blank: all varieties without a product of their own.',
      }),
      withDefault(
        'form',
        'Form',
        choice('loose', 'bunched', 'topped', 'cured', 'washed', 'bagged', 'boxed', 'thinnings'),
        `IF(ISBLANK([Crop]); "loose"; IF(NOT(ISBLANK([Crop].[Curing days])); "cured"; IF([Crop].[Harvest unit] = "bunch"; "bunched"; "loose")))`,
        { note: 'Thinnings are what is pulled young where clumps are thinned.' },
      ),
      entered('grade', 'Grade', link('size-grades'), { note: 'Of bulbs: one size only. Blank: all sizes.' }),
      withDefault(
        'sold-by',
        'Sold by',
        choice('weight', 'bunch', 'head', 'bulb', 'each'),
        'IF(OR(ISBLANK([Crop]); [Form] = "cured"); "weight"; [Crop].[Harvest unit])',
      ),
      withDefault(
        'weight-of-one',
        'Weight of one',
        PLANT_MASS,
        `IF([Sold by] <> "weight"; IF(SUM(SUMIFS(Plantings[Pieces]; ${OF_THE_CROP})) > 0;
          SUMIFS(Plantings[Marketable yield]; ${OF_THE_CROP}) / SUMIFS(Plantings[Pieces]; ${OF_THE_CROP}); [Crop].[Unit mass]))`,
        { note: 'One bunch, head or piece; the mean of the plantings.', decimals: 1, least: 0 },
      ),
      withDefault(
        'price',
        'Price',
        PRICE_BY_WEIGHT,
        `IF([Sold by] = "weight"; MAXIFS(Plantings[Price]; ${OF_THE_CROP}))`,
        {
          note: 'Where it is sold by weight; the highest of its plantings.',
          decimals: 2,
          least: 0,
        },
      ),
      withDefault(
        'price-each',
        'Price each',
        MONEY,
        `IF([Sold by] <> "weight"; MAXIFS(Plantings[Price each]; ${OF_THE_CROP}))`,
        {
          note: 'Where it is sold by the piece; the highest of its plantings.',
          decimals: 2,
          least: 0,
        },
      ),
      computed(
        'price-by-weight',
        'Price by weight',
        PRICE_BY_WEIGHT,
        'IF([Sold by] = "weight"; [Price]; [Price each] / [Weight of one])',
        { decimals: 2 },
      ),
      computed('crop-name', 'Crop name', TEXT, 'IF(ISBLANK([Crop]); "any"; [Crop].[Crop])'),
      computed('variety-name', 'Variety name', TEXT, 'IF(ISBLANK([Variety]); "any"; [Variety].[Variety])'),
    ),
    ...group(
      'This season',
      computed('harvest', 'Harvest', MASS, overWeeks('From the field'), {
        note: 'That goes to it, cured where it is cured.',
        decimals: 0,
      }),
      computed('wanted', 'Wanted', MASS, overWeeks('Wanted'), { note: 'By all outlets.', decimals: 0 }),
      computed('sold', 'Sold', MASS, overWeeks('Sold'), { decimals: 0 }),
      computed('short', 'Short', MASS, overWeeks('Short'), { note: 'Promised and not there.', decimals: 0 }),
      computed('unsold', 'Unsold', MASS, overWeeks('Lost'), {
        note: 'Not taken by anyone, shrunk, or past its life in store.',
        decimals: 0,
      }),
      computed(
        'weeks-short',
        'Weeks short',
        PLAIN,
        `COUNTIFS('Supply against demand'[Product name]; [Product]; 'Supply against demand'[Short]; ">0.01 kg")`,
        { decimals: 0 },
      ),
      computed(
        'short-from',
        'Short from',
        DATE,
        `MINIFS('Supply against demand'[Week starts]; 'Supply against demand'[Product name]; [Product]; 'Supply against demand'[Short]; ">0.01 kg")`,
        { note: 'The first week that is.' },
      ),
      computed(
        'sales',
        'Sales',
        MONEY,
        `SUM(SUMIFS('Demand by week'[Money]; 'Demand by week'[Product name]; [Product]))`,
        {
          decimals: 0,
        },
      ),
    ),
  ],
  checks: [
    {
      id: 'short-of-demand',
      name: 'Short of demand',
      level: 'warning',
      column: 'short',
      says: `IF([Short] > 2% * [Wanted]; "Short in " & TEXT([Weeks short]; "0") & IF([Weeks short] = 1; " week, that of "; " weeks, first that of ") & TEXT([Short from]; "d mmm") & ": "
        & TEXT([Short] / [Wanted]; "0%") & " of what outlets were promised is not there. Plant more or at other times, or promise less.")`,
    },
    {
      id: 'nobody-asks',
      name: 'Nobody asks',
      level: 'note',
      column: 'wanted',
      says: 'IF(AND(NOT(ISBLANK([Crop])); [Harvest] > 0 kg; [Wanted] = 0 kg); "No outlet asks for it: enter who takes it in Demand, or it counts as unsold.")',
    },
    {
      id: 'price-missing',
      name: 'Price missing',
      level: 'note',
      column: 'price',
      says: 'IF(AND(NOT(ISBLANK([Crop])); [Wanted] > 0 kg; ISBLANK([Price by weight])); "It has no price: what outlets take of it counts as no money.")',
    },
    {
      id: 'variety-of-another-crop',
      name: 'Variety of another crop',
      level: 'error',
      column: 'variety',
      says: 'IF(AND(NOT(ISBLANK([Variety])); [Variety].[Crop].[Crop] <> [Crop name]); "This variety is of another crop: choose one of this crop, or leave it blank.")',
    },
  ],
  cautions: ['Rotten, mouldy, soft or sprouted produce is not sold.'],
};

export const PRODUCT_ROWS: readonly Readonly<Record<string, string>>[] = [{ Product: 'Everything else' }];
