// Plantings, fourth part: what each planting earns and costs, and its place on the bed and in the rotation. plantings.ts
// puts the parts together.

import {
  computed,
  DATE,
  entered,
  figures,
  group,
  LENGTH,
  MASS,
  MONEY,
  PLAIN,
  PRICE_BY_WEIGHT,
  quantity,
  SHARE,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';

/** Columns of Beds, the last year first. */
const PAST = ['Family last year', 'Family two years ago', 'Family three years ago', 'Family four years ago'] as const;
const CROP = '[Variety].[Crop]';
const STAGES = [
  'Initial stage',
  'Development stage',
  'Mid-season stage',
  'Late stage',
  'Crop coefficient initial',
  'Crop coefficient mid',
  'Crop coefficient end',
] as const;
const PER_AREA = quantity('money/ft2', 'money/m2');

function priceShare(grade: string): string {
  return `XLOOKUP("${grade}"; 'Size grades'[Grade]; 'Size grades'[Price share])`;
}

/** Cured weight over fresh for crops that are cured, 1 for the rest. */
const KEPT = 'IF(ISBLANK([Cured yield]); 1; 1 - [Variety].[Crop].[Curing loss])';

function revenueColumn(id: string, name: string, grade: string) {
  return computed(id, name, MONEY, `[Mass ${grade}] * ${KEPT} * [Price] * ${priceShare(grade)}`, { decimals: 2 });
}

export const MONEY_COLUMNS = [
  ...group(
    'Selling',
    entered('price', 'Price', PRICE_BY_WEIGHT, {
      note: 'Of the main product: cured onions, or the crop as harvested.',
      decimals: 2,
      least: 0,
    }),
    entered('price-each', 'Price each', MONEY, {
      note: 'Of a bunch, head or bulb, where it is sold so.',
      decimals: 2,
      least: 0,
    }),
    entered('fresh-price', 'Fresh price', PRICE_BY_WEIGHT, { note: 'Of thinnings.', decimals: 2, least: 0 }),
    computed('sold-weight', 'Sold weight', MASS, 'IF(ISBLANK([Cured yield]); [Marketable yield]; [Cured yield])', {
      range: { low: 'sold-weight-low', high: 'sold-weight-high' },
      decimals: 1,
    }),
    computed(
      'sold-weight-low',
      'Sold weight low',
      MASS,
      'IF(ISBLANK([Cured yield]); [Marketable yield low]; [Cured yield low])',
      {
        note: "By the crop's lowest yield.",
        decimals: 1,
      },
    ),
    computed(
      'sold-weight-high',
      'Sold weight high',
      MASS,
      'IF(ISBLANK([Cured yield]); [Marketable yield high]; [Cured yield high])',
      {
        note: "By the crop's highest yield.",
        decimals: 1,
      },
    ),
    computed('sold-pieces', 'Sold pieces', PLAIN, 'IF(NOT(ISBLANK([Price each])); [Pieces])', {
      decimals: 0,
    }),
    revenueColumn('revenue-small', 'Revenue small', 'small'),
    revenueColumn('revenue-medium', 'Revenue medium', 'medium'),
    revenueColumn('revenue-large', 'Revenue large', 'large'),
    revenueColumn('revenue-extra-large', 'Revenue extra large', 'extra large'),
    computed('revenue-thinnings', 'Revenue thinnings', MONEY, '[Fresh thinnings] * [Fresh price]', { decimals: 2 }),
    computed('sales-by-outlets', 'Sales by outlets', MONEY, 'SUM(SUMIFS(Lots[Money]; Lots[Planting]; [Planting]))', {
      note: 'By Demand: what is taken, at what is paid.',
      decimals: 2,
    }),
    computed(
      'revenue',
      'Revenue',
      MONEY,
      `IF(AND(NOT(ISBLANK([Marketable yield])); NOT(AND(ISBLANK([Price]); ISBLANK([Price each]); ISBLANK([Fresh price]))));
        IF([Harvested later]; 0 money; SUM([Revenue thinnings]; IF(NOT(ISBLANK([Price each])); [Sold pieces] * [Price each];
          IF(NOT([Variety].[Bulb crop]); [Sold weight] * [Price];
            [Revenue small] + [Revenue medium] + [Revenue large] + [Revenue extra large]))));
        IF([Sales by outlets] > 0 money; [Sales by outlets]))`,
      {
        range: { low: 'revenue-low', high: 'revenue-high' },
        note: 'By the piece where a price each is given; onions by size grade; what outlets pay where no price stands here.',
        decimals: 2,
      },
    ),
    computed(
      'products-of-the-variety',
      'Products of the variety',
      PLAIN,
      'COUNTIFS(Products[Crop name]; [Crop]; Products[Variety name]; [Variety].[Variety]; Products[Form]; "<>thinnings")',
      { note: 'In Products, for this variety alone.', decimals: 0 },
    ),
    computed(
      'products-of-the-crop',
      'Products of the crop',
      PLAIN,
      'COUNTIFS(Products[Crop name]; [Crop]; Products[Variety name]; "any"; Products[Form]; "<>thinnings")',
      { note: 'In Products, for all varieties.', decimals: 0 },
    ),
    computed('revenue-low', 'Revenue low', MONEY, '[Revenue] * [Marketable yield low] / [Marketable yield]', {
      decimals: 2,
    }),
    computed('revenue-high', 'Revenue high', MONEY, '[Revenue] * [Marketable yield high] / [Marketable yield]', {
      decimals: 2,
    }),
  ),
  ...group(
    'Cost',
    withDefault(
      'price-of-a-set-or-plant',
      'Price of a set or plant',
      MONEY,
      'IF([Start] = "sets"; [Variety].[Price of sets]; IF([Start] = "plants"; [Variety].[Price of plants]))',
      { note: 'The best price in Packs where you type none.', decimals: 3, least: 0 },
    ),
    computed(
      'seed-cost',
      'Seed cost',
      MONEY,
      `IF([From seed]; IF(ISBLANK([Seed lot]); [Seeds needed] * [Variety].[Price per 1,000 seeds] / 1000; 0 money);
        [Sets or plants to buy] * [Price of a set or plant])`,
      { note: 'New seed at its best pack price; seed on hand is paid for.', decimals: 2 },
    ),
    computed('cost-of-sets-or-plants', 'Cost of sets or plants', MONEY, 'IF([From seed]; 0 money; [Seed cost])', {
      note: 'Bought, not raised.',
      decimals: 2,
    }),
    computed('mix-cost', 'Mix cost', MONEY, '[Mix volume] * Farm[Mix price]', { decimals: 2 }),
    computed('labour-cost', 'Labour cost', MONEY, '[Hours] * Farm[Wage]', { decimals: 2 }),
    computed('costs', 'Costs', MONEY, 'SUM([Seed cost]; [Mix cost]; [Labour cost])', {
      note: 'Of those known.',
      decimals: 2,
    }),
    computed('margin', 'Margin', MONEY, '[Revenue] - [Costs]', {
      range: { low: 'margin-low', high: 'margin-high' },
      decimals: 2,
    }),
    computed('margin-per-bed-area', 'Margin per bed area', PER_AREA, '[Margin] / [Ground area]', {
      note: 'Of the ground it takes.',
      decimals: 2,
    }),
    computed(
      'margin-per-bed-length',
      'Margin per bed length',
      quantity('money/ft', 'money/m'),
      '[Margin] / [Bed length used]',
      {
        decimals: 2,
      },
    ),
    computed(
      'margin-per-week-of-bed',
      'Margin per week of bed',
      quantity('money/week'),
      '[Margin] / ([Bed free] - [Planted out])',
      { note: 'For the weeks it takes the ground.', decimals: 2 },
    ),
    computed('an-hour-brings', 'An hour brings', quantity('money/h'), '([Margin] + SUM([Labour cost])) / [Hours]', {
      note: 'Before labour is paid.',
      decimals: 2,
    }),
    computed(
      'margin-low',
      'Margin low',
      MONEY,
      '[Revenue low] - SUM([Seed cost]; [Mix cost]; [Hours high] * Farm[Wage])',
      {
        note: 'Low yield and slow work together.',
        decimals: 2,
      },
    ),
    computed(
      'margin-high',
      'Margin high',
      MONEY,
      '[Revenue high] - SUM([Seed cost]; [Mix cost]; [Hours low] * Farm[Wage])',
      {
        note: 'High yield and quick work together.',
        decimals: 2,
      },
    ),
  ),
  ...group(
    'Ground',
    computed(
      'bed-in-use',
      'Bed in use',
      LENGTH,
      `IF(NOT(ISBLANK([Bed])); SUMIFS(Plantings[Bed length used]; Plantings[Bed]; [Bed];
        Plantings[Planted out]; "<=" & [Planted out]; Plantings[Bed free]; ">" & [Planted out])
        + SUMIFS(Plantings[Bed length used]; Plantings[Spreads over]; [Bed]; Plantings[Planted out]; "<=" & [Planted out]; Plantings[Bed free]; ">" & [Planted out]))`,
      { note: 'Of this bed on the day this planting goes in, itself included.', decimals: 1 },
    ),
    computed(
      'years-since-the-family',
      'Years since the family',
      PLAIN,
      `IF(ISBLANK([Carried from]); MIN(${PAST.map((column, at) => `IF(ISNUMBER(SEARCH([Family]; [Bed].[${column}])); ${at + 1})`).join(';\n        ')}))`,
      { note: 'On this bed, of the last four; where several stood there, any of them.', decimals: 0 },
    ),
    computed(
      'back-too-soon',
      'Back too soon',
      YES_OR_NO,
      '[Years since the family] < [Variety].[Crop].[Rotation years]',
    ),
    computed(
      'family-before-it',
      'Family before it',
      DATE,
      `IF([Bed length used] + SUM(SUMIFS(Plantings[Bed length used]; Plantings[Bed]; [Bed]; Plantings[Family]; [Family]; Plantings[Bed free]; "<=" & [Planted out])) > [Bed].[Length];
        MAXIFS(Plantings[Bed free]; Plantings[Bed]; [Bed]; Plantings[Family]; [Family]; Plantings[Bed free]; "<=" & [Planted out]))`,
      { note: 'When its own family left the same ground this season; blank where there is room beside.' },
    ),
    computed(
      'touches-soil',
      'Touches soil',
      YES_OR_NO,
      'IF(ISBLANK([Variety].[Crop].[Touches soil]); TRUE; [Variety].[Crop].[Touches soil])',
      { note: 'The part that is sold: the days after raw manure go by it.' },
    ),
    computed(
      'water-course',
      'Water course',
      figures('course-of-water'),
      `WATERCOURSE(${STAGES.map((stage) => `${CROP}.[${stage}]`).join('; ')}; [Bed free] - [Planted out])`,
      { note: 'Water use against short grass; the four stages of the crop are stretched to its time on the bed.' },
    ),
    computed(
      'share-of-margin',
      'Share of margin',
      SHARE,
      'IF(SUM(Plantings[Margin this season]) <> 0 money; [Margin this season] / SUM(Plantings[Margin this season]))',
      {
        note: "Of the farm's whole margin this season.",
        decimals: 1,
      },
    ),
  ),
];
