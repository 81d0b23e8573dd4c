// The sheets of lots: what each planting gives for each product, and what becomes of it week by week: what comes in from the
// bed, is sold, is lost and is left. Reads Plantings, Products, Stored lots, Weekly harvest, Demand by week
// and Supply against demand.
//
// Weight that a stored lot loses goes by a share a month. So that weeks can be added up, amounts are reckoned back to the first
// day of the season (columns ending in "standing"), where nothing is lost; `Kept` turns them into what is there in a week.

import { MONTH_DAYS, type SheetDeclaration } from '../engine/index.ts';
import {
  computed,
  DATE,
  group,
  link,
  MASS,
  MONEY,
  made,
  PLAIN,
  SHARE,
  TEXT,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';

const PLANTING = '[Planting]';
const PRODUCT = '[Product]';
const GRADE = `${PRODUCT}.[Grade].[Grade]`;
const THINNINGS = `${PRODUCT}.[Form] = "thinnings"`;
/** A product of one variety takes all of that variety's harvest; a product without a crop takes what has no other. */
const MEANT_FOR = `IF(ISBLANK(${PRODUCT}.[Crop]); ${PLANTING}.[Products of the crop] + ${PLANTING}.[Products of the variety] = 0;
    IF(${PRODUCT}.[Crop name] <> ${PLANTING}.[Crop]; FALSE; IF(ISBLANK(${PRODUCT}.[Variety]); OR(${THINNINGS}; ${PLANTING}.[Products of the variety] = 0);
      ${PRODUCT}.[Variety name] = ${PLANTING}.[Variety].[Variety])))`;

function stored(column: string): string {
  return `'Stored lots'[${column}]; 'Stored lots'[Planting]; ${PLANTING}`;
}

export const lotsSheet: SheetDeclaration = {
  id: 'lots',
  name: 'Lots',
  question: 'Storing',
  about:
    'What each planting gives for each product, and what became of it: sold, lost, left. Shares are worked out from size grades and from how many products a crop has: type your own.',
  rows: {
    from: 'pairs',
    sheets: ['plantings', 'products'],
    as: [made('planting', 'Planting'), made('product', 'Product')],
    where: `AND(IF(${THINNINGS}; ${PLANTING}.[Fresh thinnings] > 0 kg; ${PLANTING}.[Sold weight] > 0 kg);
    ${MEANT_FOR})`,
  },
  columns: [
    ...group(
      'Lot',
      computed('lot', 'Lot', TEXT, `${PLANTING}.[Planting]`),
      computed('crop', 'Crop', TEXT, `${PLANTING}.[Crop]`),
      computed('of-thinnings', 'Of thinnings', YES_OR_NO, THINNINGS),
      computed('of-all-sizes', 'Of all sizes', YES_OR_NO, `AND(NOT([Of thinnings]); ISBLANK(${PRODUCT}.[Grade]))`),
      computed(
        'share-of-its-grade',
        'Share of its grade',
        SHARE,
        `IF(AND(NOT([Of thinnings]); NOT([Of all sizes])); IF(${GRADE} = "small"; ${PLANTING}.[Mass small]; IF(${GRADE} = "medium"; ${PLANTING}.[Mass medium];
          IF(${GRADE} = "large"; ${PLANTING}.[Mass large]; ${PLANTING}.[Mass extra large]))) / ${PLANTING}.[Marketable yield])`,
        { note: 'By mass, of products of one size.', decimals: 0 },
      ),
      computed(
        'left-by-grades',
        'Left by grades',
        SHARE,
        `1 - SUM(SUMIFS(Lots[Share of its grade]; Lots[Planting]; ${PLANTING}))`,
        { note: 'For products of all sizes.', decimals: 0 },
      ),
      computed(
        'products-of-all-sizes',
        'Products of all sizes',
        PLAIN,
        `COUNTIFS(Lots[Planting]; ${PLANTING}; Lots[Of all sizes]; TRUE)`,
        { decimals: 0 },
      ),
      withDefault(
        'share',
        'Share',
        SHARE,
        `IF([Of thinnings]; 1 / COUNTIFS(Lots[Planting]; ${PLANTING}; Lots[Of thinnings]; TRUE);
          IF([Of all sizes]; MAX(0%; [Left by grades]) / [Products of all sizes]; [Share of its grade]))`,
        { note: 'Of the harvest of the planting that goes to this product.', decimals: 0, least: 0, most: 100 },
      ),
      computed(
        'mass',
        'Mass',
        MASS,
        `[Share] * IF([Of thinnings]; ${PLANTING}.[Fresh thinnings]; ${PLANTING}.[Sold weight])`,
        { note: 'Cured where it is cured.', decimals: 1 },
      ),
    ),
    ...group(
      'Keeping',
      computed('stored', 'Stored', YES_OR_NO, `AND(NOT([Of thinnings]); ${PLANTING}.[Goes into store])`, {
        note: 'Kept for later weeks; the rest is sold in the week it is picked.',
      }),
      computed('store', 'Store', link('stores'), `IF([Stored]; FIRSTIFS(${stored('Store')}))`),
      computed('all-at-once', 'All at once', YES_OR_NO, `OR([Of thinnings]; NOT(ISBLANK(${PLANTING}.[Cured yield])))`, {
        note: 'Comes on one day rather than picking by picking.',
      }),
      computed(
        'first-in',
        'First in',
        DATE,
        `IF([Of thinnings]; ${PLANTING}.[Thinned on]; IF([All at once]; IF([Stored]; MAXIFS(${stored('Stored on')}); ${PLANTING}.[Cured on]);
          ${PLANTING}.[Harvest]))`,
      ),
      computed('last-in', 'Last in', DATE, `IF([All at once]; [First in]; ${PLANTING}.[Harvest ends])`),
      computed('until', 'Until', DATE, `IF([Stored]; MAX([Last in]; MAXIFS(${stored('Keeps until')})); [Last in])`, {
        note: 'What is still there then is lost.',
      }),
      computed('monthly-loss', 'Monthly loss', SHARE, `IF([Stored]; SUM(MAXIFS(${stored('Monthly loss')})); 0%)`, {
        decimals: 1,
      }),
      computed(
        'with-its-end',
        'With its end',
        PLAIN,
        `IF([Stored]; COUNTIFS(Lots[Product]; ${PRODUCT}; Lots[Stored]; TRUE; Lots[Until]; [Until]; Lots[Lot]; "<" & [Lot]))`,
        { note: 'Lots of the product that end on its last day and come before it by name.', decimals: 0 },
      ),
      computed(
        'place',
        'Place',
        PLAIN,
        `IF([Stored]; 1 + COUNTIFS(Lots[Product]; ${PRODUCT}; Lots[Stored]; TRUE; Lots[Until]; "<" & [Until]) + [With its end])`,
        { note: '1 is sold first: the shortest time left.', decimals: 0 },
      ),
    ),
    ...group(
      'What became of it',
      computed(
        'sold',
        'Sold',
        MASS,
        `SUM(SUMIFS('Lots by week'[Sold]; 'Lots by week'[Planting]; ${PLANTING}; 'Lots by week'[Product]; ${PRODUCT}))`,
        {
          note: 'What outlets take, by Demand.',
          decimals: 1,
        },
      ),
      computed(
        'lost',
        'Lost',
        MASS,
        `SUM(SUMIFS('Lots by week'[Lost]; 'Lots by week'[Planting]; ${PLANTING}; 'Lots by week'[Product]; ${PRODUCT}))`,
        {
          note: 'Unsold in its week, shrunk or past its life in store.',
          decimals: 1,
        },
      ),
      computed(
        'money',
        'Money',
        MONEY,
        `SUM(SUMIFS('Lots by week'[Money]; 'Lots by week'[Planting]; ${PLANTING}; 'Lots by week'[Product]; ${PRODUCT}))`,
        { note: 'What outlets pay for it.', decimals: 2 },
      ),
      computed('left', 'Left', MASS, 'MAX(0 kg; [Mass] - [Sold] - [Lost])', {
        note: 'In store when Weeks end.',
        decimals: 1,
      }),
    ),
  ],
  checks: [
    {
      id: 'shares-add-up',
      name: 'Shares add up',
      level: 'error',
      column: 'share',
      says: `IF(AND(NOT([Of thinnings]); SUMIFS(Lots[Share]; Lots[Planting]; ${PLANTING}; Lots[Of thinnings]; FALSE) > 100.01%);
        "More than all of this planting is promised to products: lower a share until they come to 100 %.")`,
    },
    {
      id: 'part-of-it-unplaced',
      name: 'Part of it unplaced',
      level: 'note',
      column: 'share',
      says: `IF(AND(NOT([Of thinnings]); SUMIFS(Lots[Share]; Lots[Planting]; ${PLANTING}; Lots[Of thinnings]; FALSE) < 99.99%);
        "Part of this planting goes to no product: raise a share, or add a product for the rest.")`,
    },
  ],
  cautions: [],
};

const LOT = '[Lot]';
/** The whole season's share of a planting's harvest that comes in a week goes to the product by the lot's share. */
const PICKED = `SUM(SUMIFS('Weekly harvest'[Mass]; 'Weekly harvest'[Planting]; [Planting]; 'Weekly harvest'[Week]; [Week]))`;

/** All weeks of the lot before this one. */
function before(column: string): string {
  return `SUM(SUMIFS('Lots by week'[${column}]; 'Lots by week'[Lot]; ${LOT}; 'Lots by week'[Week starts]; "<" & [Week starts]))`;
}

/** What is left of a mass in store from the first day of the season to a date. */
function keptTo(date: string): string {
  return `(1 - ${LOT}.[Monthly loss]) ^ ((${date} - Farm[Season starts]) / ${MONTH_DAYS} days)`;
}

export const lotsByWeekSheet: SheetDeclaration = {
  id: 'lots-by-week',
  name: 'Lots by week',
  question: 'Storing',
  about:
    'Every lot week by week: what comes in, what outlets take of it, what is lost and left. Of stored lots the one with the shortest time left is sold first.',
  rows: {
    from: 'pairs',
    sheets: ['lots', 'weeks'],
    as: [made('lot', 'Lot'), made('week', 'Week')],
    where: `AND([Week].[Ends] >= ${LOT}.[First in]; [Week].[Week] <= ${LOT}.[Until])`,
  },
  columns: [
    ...group(
      'Week',
      computed('week-starts', 'Week starts', DATE, '[Week].[Week]'),
      computed('lot-name', 'Lot name', TEXT, `${LOT}.[Lot]`),
      computed('planting', 'Planting', link('plantings'), `${LOT}.[Planting]`),
      computed('product', 'Product', link('products'), `${LOT}.[Product]`),
      computed('store', 'Store', link('stores'), `${LOT}.[Store]`),
      computed('place', 'Place', PLAIN, `${LOT}.[Place]`, { decimals: 0 }),
      computed('keeps-until', 'Keeps until', DATE, `${LOT}.[Until]`),
      computed('last-week', 'Last week', YES_OR_NO, '[Week].[Ends] >= [Keeps until]'),
    ),
    ...group(
      'In and wanted',
      computed(
        'in',
        'In',
        MASS,
        `IF(${LOT}.[All at once]; IF(AND(${LOT}.[First in] >= [Week starts]; ${LOT}.[First in] <= [Week].[Ends]); ${LOT}.[Mass]; 0 kg);
          ${LOT}.[Share] * ${PICKED})`,
        { decimals: 1 },
      ),
      computed(
        'wanted',
        'Wanted',
        MASS,
        `SUM(SUMIFS('Demand by week'[Weight]; 'Demand by week'[Product]; [Product]; 'Demand by week'[Week]; [Week]))`,
        { note: 'Of the product, by all outlets.', decimals: 1 },
      ),
      computed('kept', 'Kept', SHARE, keptTo('[Week starts]'), {
        note: 'Of a mass in store since the season began.',
        decimals: 1,
      }),
      computed('kept-to-the-end', 'Kept to the end', SHARE, keptTo('([Week starts] + 7 days)'), { decimals: 1 }),
      computed('in-standing', 'In standing', MASS, `IF(${LOT}.[Stored]; [In] / [Kept])`, { decimals: 1 }),
      computed(
        'asked-for',
        'Asked for',
        link('products'),
        `IF(AND(${LOT}.[Stored]; SUM(SUMIFS('Demand by week'[Weight]; 'Demand by week'[Product]; [Product])) > 0 kg); [Product])`,
        {
          note: 'The product, where it comes out of store and anybody wants it this season: its lots are sold by their places.',
        },
      ),
      computed('wanted-standing', 'Wanted standing', MASS, `IF(${LOT}.[Stored]; [Wanted] / [Kept])`, { decimals: 1 }),
    ),
    ...group(
      'Out',
      computed(
        'sold-standing',
        'Sold standing',
        MASS,
        `IF(${LOT}.[Stored]; IF(ISBLANK([Asked for]); 0 kg; SOLDFROMSTORE([Place]; [Week starts]; 'Lots by week'[Place];
          'Lots by week'[Week starts]; 'Lots by week'[In standing]; 'Lots by week'[Wanted standing]; 'Lots by week'[Asked for]; [Asked for])))`,
        { decimals: 1 },
      ),
      computed(
        'share-taken',
        'Share taken',
        SHARE,
        `SUM(SUMIFS('Supply against demand'[Share taken]; 'Supply against demand'[Product]; [Product]; 'Supply against demand'[Week]; [Week]))`,
        { note: 'Of what is picked of the product this week.', decimals: 0 },
      ),
      computed(
        'sold',
        'Sold',
        MASS,
        `IF(${LOT}.[Stored]; [Sold standing] * [Kept]; IF([Share taken] > 0%; [In] * [Share taken]; 0 kg))`,
        { decimals: 1 },
      ),
      computed(
        'from-before',
        'From before',
        MASS,
        `IF(${LOT}.[Stored]; MAX(0 kg; ${before('In standing')} - ${before('Sold standing')}) * [Kept]; 0 kg)`,
        {
          note: 'In store when the week begins.',
          decimals: 1,
        },
      ),
      computed(
        'left',
        'Left',
        MASS,
        `IF(OR([Last week]; NOT(${LOT}.[Stored])); 0 kg; MAX(0 kg; ([From before] + [In] - [Sold]) / [Kept] * [Kept to the end]))`,
        { note: 'When the week ends.', decimals: 1 },
      ),
      computed('lost', 'Lost', MASS, 'MAX(0 kg; [From before] + [In] - [Sold] - [Left])', { decimals: 1 }),
      computed(
        'money',
        'Money',
        MONEY,
        `IF([Sold] > 0 kg; [Sold] * SUM(SUMIFS('Demand by week'[Money]; 'Demand by week'[Product]; [Product]; 'Demand by week'[Week]; [Week]))
          / SUMIFS('Lots by week'[Sold]; 'Lots by week'[Product]; [Product]; 'Lots by week'[Week]; [Week]); 0 money)`,
        { note: 'At the mean of what the outlets pay that week.', decimals: 2 },
      ),
    ),
  ],
  checks: [],
  cautions: [],
};
