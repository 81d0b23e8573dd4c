// The sheets that compare ways to plant: Ways (what is tried), Beds to try (a bed, a variety, a price), and Ways to plant, each way on
// each bed worked out side by side. Ways to plant is made of the very columns of Plantings that its figures need, so that both
// always agree. The act that plants a way stands in acts/plant-way.ts.

import type { ColumnDeclaration, SheetDeclaration } from '../engine/index.ts';
import {
  choice,
  computed,
  DATE,
  entered,
  group,
  LENGTH,
  link,
  MONEY,
  made,
  PLAIN,
  PRICE_BY_WEIGHT,
  quantity,
  SPACING,
  TEXT,
  type UngroupedColumn,
  WEEKS,
  withDefault,
  YES_OR_NO,
} from './authoring.ts';
import { START_METHODS } from './crop-columns-seed.ts';
import type { NamedRow } from './names.ts';
import { NOTHING_NOTED } from './planting-dates.ts';
import { plantingsSheet } from './plantings.ts';

export const waysSheet: SheetDeclaration = {
  id: 'ways',
  name: 'Ways',
  question: 'When and how close',
  about:
    'Ways to start and space a crop, to be compared in Ways to plant. Change them, add your own, or say no under Tried.',
  rows: { from: 'entry' },
  key: 'way',
  columns: [
    ...group(
      'Way',
      entered('way', 'Way', TEXT, { required: true }),
      entered('start', 'Start', choice(...START_METHODS), { required: true }),
      entered('seeds-per-station', 'Seeds per station', PLAIN, {
        note: 'Loose plants, sets and plants: how many go in one place. Blank: as the crop is usually started.',
        decimals: 1,
        least: 0.1,
        most: 100,
      }),
      entered('in-row-spacing', 'In-row spacing', SPACING, { note: 'Blank: as usual.', decimals: 2, least: 0 }),
      withDefault('spacing-times', 'Spacing times', PLAIN, '1', {
        note: 'So many times the usual spacing in the row.',
        decimals: 2,
        least: 0.1,
        most: 10,
      }),
      withDefault('planted-later-by', 'Planted later by', WEEKS, '0 weeks', {
        note: 'Than the other ways; below zero is earlier.',
        decimals: 1,
        least: -180,
        most: 180,
      }),
      withDefault('raised-longer-by', 'Raised longer by', WEEKS, '0 weeks', {
        note: 'Sown so much earlier, and planted out older.',
        decimals: 1,
        least: -60,
        most: 180,
      }),
      withDefault('tried', 'Tried', YES_OR_NO, 'TRUE'),
    ),
  ],
  checks: [],
  cautions: [],
};

export const WAY_ROWS: readonly NamedRow[] = [
  { Way: 'Singles in blocks', Start: 'blocks', 'Seeds per station': '1' },
  { Way: 'Twos in blocks', Start: 'blocks', 'Seeds per station': '2' },
  { Way: 'Threes in blocks', Start: 'blocks', 'Seeds per station': '3' },
  { Way: 'Fours in blocks', Start: 'blocks', 'Seeds per station': '4' },
  { Way: 'Singles in cells', Start: 'cells', 'Seeds per station': '1' },
  { Way: 'Loose in a deep tray', Start: 'deep tray', 'Seeds per station': '1' },
  { Way: 'Loose in a nursery bed', Start: 'nursery bed', 'Seeds per station': '1' },
  { Way: 'Bought plants', Start: 'plants', 'Seeds per station': '1' },
  { Way: 'Sets', Start: 'sets', 'Seeds per station': '1' },
  { Way: 'Seed in the bed', Start: 'direct seed' },
  { Way: 'Blocks, sown three weeks earlier', Start: 'blocks', 'Raised longer by': '3 weeks' },
  { Way: 'Blocks, planted three weeks later', Start: 'blocks', 'Planted later by': '3 weeks' },
  { Way: 'Blocks, closer by a quarter', Start: 'blocks', 'Spacing times': '0.75' },
  { Way: 'Blocks, wider by a quarter', Start: 'blocks', 'Spacing times': '1.25' },
];

const PLANTING = '[Planting]';

export const bedsToTrySheet: SheetDeclaration = {
  id: 'beds-to-try',
  name: 'Beds to try',
  question: 'When and how close',
  about:
    'A bed and a variety for which to compare the ways to plant. Name a planting to take them from it, and plant the best way there.',
  rows: { from: 'entry' },
  key: 'bed-to-try',
  columns: [
    ...group(
      'Bed to try',
      entered('bed-to-try', 'Bed to try', TEXT, { required: true }),
      entered('planting', 'Planting', link('plantings'), {
        note: 'That this is about; blank: the way becomes a new one.',
      }),
      withDefault('variety', 'Variety', link('varieties'), `${PLANTING}.[Variety]`),
      withDefault('bed', 'Bed', link('beds'), `${PLANTING}.[Bed]`),
      withDefault(
        'bed-length-used',
        'Bed length used',
        LENGTH,
        `IF(NOT(ISBLANK(${PLANTING})); ${PLANTING}.[Bed length used]; IF(ISBLANK([Bed]); Farm[Bed length]; [Bed].[Length]))`,
        { least: 0 },
      ),
      entered('rows', 'Rows', PLAIN, { note: 'Blank: as usual.', decimals: 0, least: 1, most: 100 }),
      withDefault(
        'planted-out',
        'Planted out',
        DATE,
        `IF(${PLANTING}.[Dates from] <> "earliest that makes sense"; ${PLANTING}.[Planted out])`,
        { note: 'Blank: as early as makes sense for each way.' },
      ),
      withDefault(
        'cover',
        'Cover',
        choice('none', 'row cover', 'tunnel'),
        `IF(ISBLANK(${PLANTING}); "none"; ${PLANTING}.[Cover])`,
      ),
    ),
    ...group(
      'Prices',
      withDefault(
        'price',
        'Price',
        PRICE_BY_WEIGHT,
        `IF(AND(ISBLANK(${PLANTING}.[Price]); ISBLANK(${PLANTING}.[Price each])); IF(${PLANTING}.[Sales by outlets] > 0 money; ${PLANTING}.[Sales by outlets] / ${PLANTING}.[Sold weight]); ${PLANTING}.[Price])`,
        { note: 'Of the planting; what outlets pay on average where it has none.', decimals: 2, least: 0 },
      ),
      withDefault('price-each', 'Price each', MONEY, `${PLANTING}.[Price each]`, { decimals: 2, least: 0 }),
      withDefault('fresh-price', 'Fresh price', PRICE_BY_WEIGHT, `${PLANTING}.[Fresh price]`, {
        decimals: 2,
        least: 0,
      }),
      withDefault('price-of-a-set', 'Price of a set', MONEY, '[Variety].[Price of sets]', { decimals: 3, least: 0 }),
      withDefault('price-of-a-plant', 'Price of a plant', MONEY, '[Variety].[Price of plants]', {
        decimals: 3,
        least: 0,
      }),
    ),
    ...group(
      'Best',
      computed(
        'best-margin',
        'Best margin',
        MONEY,
        `MAXIFS('Ways to plant'[Margin]; 'Ways to plant'[Bed to try]; [Bed to try])`,
        {
          decimals: 2,
        },
      ),
      computed(
        'best-way',
        'Best way',
        TEXT,
        `FIRSTIFS('Ways to plant'[Name]; 'Ways to plant'[Bed to try]; [Bed to try]; 'Ways to plant'[Margin]; ">=" & [Best margin])`,
        { note: 'Of those whose margin is known.' },
      ),
    ),
  ],
  checks: [
    {
      id: 'no-variety-to-try',
      name: 'No variety to try',
      level: 'note',
      column: 'variety',
      says: 'IF(ISBLANK([Variety]); "Enter a variety, or name a planting.")',
    },
  ],
  cautions: [],
};

/** What is compared, in this order. */
const COMPARED = [
  'start',
  'sown',
  'planted-out',
  'in-row-spacing',
  'seeds-per-station',
  'stations',
  'plants-standing',
  'mean-plant-mass',
  'mean-diameter',
  'share-small',
  'share-medium',
  'share-large',
  'share-extra-large',
  'harvest',
  'no-harvest-because',
  'marketable-yield',
  'cured-yield',
  'pieces',
  'trays',
  'bench-area',
  'planting-hours',
  'hours',
  'seed-cost',
  'mix-cost',
  'labour-cost',
  'costs',
  'revenue',
  'margin',
  'margin-per-bed-area',
] as const;

const TRIAL = '[Bed to try]';
const WAY = '[Way]';

/** In place of what a planting has typed: taken from the bed to try and the way; what a planting reckons itself stands in `own`. */
const FROM_THE_WAY: Readonly<Record<string, (own: string) => string>> = {
  variety: () => `${TRIAL}.[Variety]`,
  start: () => `${WAY}.[Start]`,
  bed: () => `${TRIAL}.[Bed]`,
  'bed-length-used': () => `${TRIAL}.[Bed length used]`,
  rows: (own) => `IF(ISBLANK(${TRIAL}.[Rows]); ${own}; ${TRIAL}.[Rows])`,
  'in-row-spacing': (own) =>
    `IF(ISBLANK(${WAY}.[In-row spacing]); (${own}) * ${WAY}.[Spacing times]; ${WAY}.[In-row spacing])`,
  'seeds-per-station': (own) => `IF(ISBLANK(${WAY}.[Seeds per station]); ${own}; ${WAY}.[Seeds per station])`,
  'in-the-bed-from': (own) =>
    `IF(NOT(ISBLANK([Date typed])); [Date typed]; IF(ISBLANK(${TRIAL}.[Planted out]); ${own}; ${TRIAL}.[Planted out]) + ${WAY}.[Planted later by])`,
  'time-raised': (own) => `IF([Raised]; MAX(0 weeks; (${own}) + ${WAY}.[Raised longer by]); 0 weeks)`,
  cover: () => `${TRIAL}.[Cover]`,
  price: () => `${TRIAL}.[Price]`,
  'price-each': () => `${TRIAL}.[Price each]`,
  'fresh-price': () => `${TRIAL}.[Fresh price]`,
  'price-of-a-set-or-plant': () =>
    `IF([Start] = "sets"; ${TRIAL}.[Price of a set]; IF([Start] = "plants"; ${TRIAL}.[Price of a plant]))`,
  // A way is sold at the prices of its bed to try.
  'sales-by-outlets': () => 'IF(FALSE; 0 money)',
  // A way is neither noted of in Records nor does it stand already.
  ...Object.fromEntries(Object.entries(NOTHING_NOTED).map(([column, formula]) => [column, () => formula])),
  'carried-from': () => 'IF(FALSE; 0)',
  // A missing price is no free thing: see What has no price.
  costs: (own) => `IF(ISBLANK([What has no price]); ${own})`,
};

/** Names of the same row's columns that a formula reads. */
function ownColumns(formula: string): readonly string[] {
  return [...formula.matchAll(/(?<![\w'.\]])\[([^\]]+)\]/g)].map(([, name = '']) => name);
}

function asWay(column: ColumnDeclaration): ColumnDeclaration {
  const taken = FROM_THE_WAY[column.id];
  if (taken === undefined) return column;
  return { ...column, role: column.role === 'entered' ? 'default' : column.role, formula: taken(column.formula) };
}

/** The columns of Plantings that those compared need, as they are for a way; the compared ones apart. */
function columnsOfPlantings(): {
  readonly compared: readonly UngroupedColumn[];
  readonly others: readonly ColumnDeclaration[];
} {
  const all = plantingsSheet.columns.map(asWay);
  const byName = new Map(all.map((column) => [column.name, column]));
  const needed = new Set<string>();
  const look = (column: ColumnDeclaration): void => {
    if (needed.has(column.id)) return;
    needed.add(column.id);
    const { range } = column;
    if (range !== undefined) all.filter(({ id }) => id === range.low || id === range.high).forEach(look);
    for (const name of ownColumns(column.formula)) {
      const read = byName.get(name);
      if (read !== undefined) look(read);
    }
  };
  const compared = COMPARED.flatMap((id) => all.filter((column) => column.id === id));
  compared.forEach(look);
  return {
    compared,
    others: all.filter(({ id }) => needed.has(id) && !COMPARED.some((one) => one === id)),
  };
}

/** A crop may be started so: by its start methods; whatever is transplanted can be raised loose or bought. */
const MAY_START = `OR(ISNUMBER(SEARCH(${WAY}.[Start]; ${TRIAL}.[Variety].[Crop].[Start methods]));
      AND(OR(${WAY}.[Start] = "deep tray"; ${WAY}.[Start] = "nursery bed"; ${WAY}.[Start] = "plants");
        OR(ISNUMBER(SEARCH("blocks"; ${TRIAL}.[Variety].[Crop].[Start methods])); ISNUMBER(SEARCH("cells"; ${TRIAL}.[Variety].[Crop].[Start methods])))))`;

/** Clumps only of crops that stand in clumps. */
const MAY_CLUMP = `OR(ISBLANK(${WAY}.[Seeds per station]); ${WAY}.[Seeds per station] <= 1; NOT(ISBLANK(${TRIAL}.[Variety].[Crop].[Clump in-row spacing])))`;

const { compared, others } = columnsOfPlantings();

export const waysToPlantSheet: SheetDeclaration = {
  id: 'ways-to-plant',
  name: 'Ways to plant',
  question: 'When and how close',
  about:
    'Each way on each bed to try, side by side: yield, sizes, hours, bench, cost, margin, date of harvest. What is typed here holds for one way on one bed. Plant a way, and it becomes the planting.',
  rows: {
    from: 'pairs',
    sheets: ['beds-to-try', 'ways'],
    as: [made('bed-to-try', 'Bed to try'), made('way', 'Way')],
    where: `AND(${WAY}.[Tried]; NOT(ISBLANK(${TRIAL}.[Variety])); ${MAY_START}; ${MAY_CLUMP})`,
  },
  columns: [
    ...group(
      'Side by side',
      computed('name', 'Name', TEXT, `${WAY}.[Way]`),
      ...compared,
      computed(
        'bench-weeks',
        'Bench weeks',
        quantity('ft2*week', 'm2*week'),
        'IF([Raised]; [Bench area] * ([Planted out] - [Sown]); 0 m2 * 1 week)',
        { note: 'Of bench, from sowing to planting out.', decimals: 0 },
      ),
      computed('margin-per-hour', 'Margin per hour', quantity('money/h'), '[Margin] / [Hours]', {
        note: 'Beside the wage.',
        decimals: 2,
      }),
      computed(
        'what-has-no-price',
        'What has no price',
        TEXT,
        `IF(AND([From seed]; ISBLANK([Variety].[Price per 1,000 seeds])); "seed"; IF(AND(NOT([From seed]); ISBLANK([Price of a set or plant])); [Start];
          IF(AND([Mix volume] > 0 L; ISBLANK(Farm[Mix price])); "mix"; IF(ISBLANK(Farm[Wage]); "hours of work"))))`,
        { note: 'The first of them; costs and margin wait for it.' },
      ),
    ),
    ...others,
  ],
  checks: [
    {
      id: 'missing-price',
      name: 'Missing price',
      level: 'note',
      column: 'what-has-no-price',
      says: `IF(NOT(ISBLANK([What has no price])); "No price for " & [What has no price] & ": costs and margin of this way are not reckoned until " & IF([What has no price] = "mix"; "Farm has one, under Mix price.";
        IF([What has no price] = "hours of work"; "Farm has one, under Wage."; "Packs or Beds to try has one.")))`,
    },
    {
      id: 'no-selling-price',
      name: 'No selling price',
      level: 'note',
      column: 'revenue',
      says: 'IF(AND(ISBLANK([Revenue]); ISBLANK([Price]); ISBLANK([Price each])); "Enter what it sells for in Beds to try: the margin waits for it.")',
    },
  ],
  cautions: ['Figures are planning estimates: try two ways side by side on one bed before you change them all.'],
};
