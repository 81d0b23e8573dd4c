// Crops, fourth part: what is harvested and how it spreads over the weeks, the work it takes, and how it keeps. crops.ts
// puts the parts together.

import {
  choice,
  computed,
  DAYS,
  entered,
  group,
  link,
  PLAIN,
  PLANT_MASS,
  quantity,
  SHARE,
  TEMPERATURE,
  withDefault,
  YES_OR_NO,
  YIELD,
} from './authoring.ts';
import { ownFirst } from './own-figures.ts';
import { MASS_AN_HOUR, TIME_BY_AREA } from './work-rates.ts';

export const HARVEST_UNITS = ['weight', 'bunch', 'head', 'bulb', 'each'] as const;

const BULB_SHAPE = quantity('g/cm3');
const ENDS = [' low', '', ' high'] as const;

/** Of the harvest, by how long the crop keeps: a judgement, for few losses are published. */
const LOSS_BY_LIFE = `IF(NOT(ISBLANK([Storage life])); IF([Storage life] < 28 days; 30%;
  IF([Storage life] < 90 days; 15%; IF([Storage life] < 240 days; 5%; 2%))))`;

/** A head or a bulb is a plant; bunches and fruit take what the usual stand and its likely yield come to. */
const PLANTS_A_PIECE = `IF([Harvest unit] <> "weight"; IF(OR([Harvest unit] = "head"; [Harvest unit] = "bulb"); 1;
  [Unit mass] * [Usual density] / ${ownFirst('Own yield', '[Yield]')}))`;

/** By the first word of the crop's name, so that all its kinds are met. */
function named(...words: readonly string[]): string {
  return `OR(${words.map((word) => `LEFT([Crop]; ${word.length}) = "${word}"`).join('; ')})`;
}

const GAS = `IF(${named('Tomato', 'Melon')}; "gives off"; IF(${named('Lettuce', 'Carrot', 'Broccoli')}; "harmed by"))`;
const SMELL = `IF([Family] = "Amaryllidaceae"; "gives off"; IF(${named('Carrot', 'Cel')}; "takes on"))`;

function idOf(name: string): string {
  return name.toLowerCase().replaceAll(' ', '-');
}

/** Mass an hour by the linked row of Work rates, by its pieces where it counts pieces: low, likely, high. */
function massRates(name: string, work: string, note: string) {
  return ENDS.map((end) =>
    computed(idOf(name + end), name + end, MASS_AN_HOUR, massRate(work, end), {
      note: end === '' ? note : '',
      decimals: 1,
    }),
  );
}

function massRate(work: string, end: (typeof ENDS)[number]): string {
  return `IF(ISBLANK([${work}].[Weight an hour${end}]); [${work}].[Pieces an hour${end}] * [Unit mass]; [${work}].[Weight an hour${end}])`;
}

/** Time by bed area by the linked row of Work rates: low, likely, high; blank where the task is not done. */
function timeRates(name: string, work: string, note: string) {
  return ENDS.map((end) =>
    computed(idOf(name + end), name + end, TIME_BY_AREA, `[${work}].[Time by area${end}]`, {
      note: end === '' ? note : '',
      decimals: 2,
    }),
  );
}

function work(id: string, name: string, note: string) {
  return entered(id, name, link('work-rates'), { note });
}

/** Low, likely and high of a rate, the farm's own figure before the library's likely one. */
function ownBefore(columns: ReturnType<typeof massRates>, id: string, name: string): ReturnType<typeof massRates> {
  return columns.map((column) =>
    column.id === id
      ? { ...column, formula: ownFirst(`Own ${name.toLowerCase()}`, `[${name} by the library]`) }
      : column,
  );
}

const PICKING_RATES = ownBefore(
  massRates('Picking rate', 'Picking', 'By one person. Time your own.'),
  'picking-rate',
  'Picking rate',
);
const PACKING_RATES = ownBefore(
  massRates('Packing rate', 'Packing', 'By one person. Time your own.'),
  'packing-rate',
  'Packing rate',
);
const WEEDING_TIMES = ownBefore(
  timeRates('Weeding time', 'Weeding', 'Of bed, paths left out. Time your own.'),
  'weeding-time',
  'Weeding time',
);

export const HARVEST_COLUMNS = [
  ...group(
    'Harvest',
    entered('harvest-unit', 'Harvest unit', choice(...HARVEST_UNITS)),
    entered('unit-mass', 'Unit mass', PLANT_MASS, { note: 'One bunch, head, bulb, fruit or root.', least: 0 }),
    withDefault('plants-per-harvest-unit', 'Plants per harvest unit', PLAIN, PLANTS_A_PIECE, {
      note: 'Plants that one bunch or piece takes over the season: 1 for a head, 0.5 where a plant gives two; where not known, by the yield at the usual spacing.',
      decimals: 2,
      least: 0,
    }),
    entered('yield-low', 'Yield low', YIELD, { decimals: 2, least: 0 }),
    entered('yield', 'Yield', YIELD, {
      note: 'Marketable, of bed without paths: the likely one.',
      decimals: 2,
      least: 0,
    }),
    entered('yield-high', 'Yield high', YIELD, { decimals: 2, least: 0 }),
    withDefault('marketable-share', 'Marketable share', SHARE, '84%', {
      note: 'Where none is known for the crop: small mixed farms in Vermont left 16 % of edible vegetables (Neff et al. 2018, as quoted).',
      decimals: 0,
      least: 1,
      most: 100,
    }),
    withDefault(
      'pickings',
      'Pickings',
      PLAIN,
      'IF(OR(ISBLANK([Days between pickings]); ISBLANK([Harvest window])); 1; 1 + ROUNDDOWN([Harvest window] / [Days between pickings]; 0))',
      { note: 'In a full harvest window.', decimals: 0, least: 1 },
    ),
    entered('days-between-pickings', 'Days between pickings', DAYS, { decimals: 1, least: 0 }),
    entered('harvest-curve-middle', 'Harvest curve middle', SHARE, {
      note: 'Share of the window gone when picking is at its peak.',
      decimals: 0,
      least: 0,
      most: 100,
    }),
    entered('harvest-curve-spread', 'Harvest curve spread', SHARE, {
      note: 'The smaller, the sharper the peak; a share of the window.',
      decimals: 0,
      least: 1,
      most: 100,
    }),
    entered('second-cut-share', 'Second cut share', SHARE, {
      note: 'Of the first cut; blank where it is not cut again.',
      decimals: 0,
      least: 0,
      most: 200,
    }),
    entered('third-cut-share', 'Third cut share', SHARE, {
      note: 'Of the first cut.',
      decimals: 0,
      least: 0,
      most: 200,
    }),
    entered('side-shoot-share', 'Side shoot share', SHARE, {
      note: 'Of the whole yield, what comes after the main head.',
      decimals: 0,
      least: 0,
      most: 100,
    }),
    entered('bulb-shape-factor', 'Bulb shape factor', BULB_SHAPE, { note: 'Mass over diameter cubed.', least: 0 }),
    entered('diameter-spread', 'Diameter spread', SHARE, {
      note: 'Standard deviation of diameter over its mean.',
      least: 0,
      most: 30,
    }),
  ),
  ...group(
    'Work',
    work('picking', 'Picking', 'The row of Work rates that this crop is picked by.'),
    work('packing', 'Packing', 'Washing and packing; blank where none is needed.'),
    work('weeding', 'Weeding', 'Over the life of the crop.'),
    work('thinning', 'Thinning', 'Blank where it is not thinned.'),
    work('trellising', 'Trellising', 'Stakes, strings and nets; blank where it has none.'),
    work('cover', 'Cover', 'Row cover; blank where it is seldom covered.'),
    work('cleaning', 'Cleaning', 'After curing; blank where it is not cured.'),
    withDefault('weedings', 'Weedings', PLAIN, 'IF([Family] = "Amaryllidaceae"; 6; IF([Family] = "Apiaceae"; 4; 2))', {
      note: 'Times it is weeded. Onions lose 5 % when kept clean for 12 weeks, 75 % when for 6 (Wicks et al. 1973, Weed Science 21: 436-439); the others common practice.',
      decimals: 0,
      least: 0,
      most: 6,
    }),
    ...PICKING_RATES,
    computed('picking-rate-by-the-library', 'Picking rate by the library', MASS_AN_HOUR, massRate('Picking', ''), {
      decimals: 1,
    }),
    ...PACKING_RATES,
    computed('packing-rate-by-the-library', 'Packing rate by the library', MASS_AN_HOUR, massRate('Packing', ''), {
      decimals: 1,
    }),
    ...massRates('Cleaning rate', 'Cleaning', 'By one person, of cured weight. Time your own.'),
    ...WEEDING_TIMES,
    computed('weeding-time-by-the-library', 'Weeding time by the library', TIME_BY_AREA, '[Weeding].[Time by area]', {
      decimals: 2,
    }),
    ...timeRates('Thinning time', 'Thinning', 'Of bed. Time your own.'),
    ...timeRates('Trellising time', 'Trellising', 'Of bed. Time your own.'),
    ...timeRates('Cover time', 'Cover', 'Of bed. Time your own.'),
  ),
  ...group(
    'Keeping',
    entered('curing-days', 'Curing days', DAYS, { decimals: 0, least: 0 }),
    entered('curing-loss', 'Curing loss', SHARE, { note: 'Of fresh mass.', least: 0, most: 100 }),
    entered('storage-temperature', 'Storage temperature', TEMPERATURE),
    entered('storage-humidity', 'Storage humidity', SHARE, { least: 0, most: 100 }),
    withDefault('storage-life-low', 'Storage life low', DAYS, '[Storage life] * 67%', {
      note: 'Where no range is printed, two thirds, as half of those in print run.',
      decimals: 0,
      least: 0,
    }),
    entered('storage-life', 'Storage life', DAYS, { note: 'At that temperature and humidity.', decimals: 0, least: 0 }),
    withDefault('storage-life-high', 'Storage life high', DAYS, '[Storage life] * 127%', { decimals: 0, least: 0 }),
    entered('bunched-life', 'Bunched life', DAYS, { note: 'Of roots with their tops on.', decimals: 0, least: 0 }),
    withDefault('monthly-storage-loss', 'Monthly storage loss', SHARE, LOSS_BY_LIFE, {
      note: 'Of what is in store, in 30 days; where none is known it goes by how long the crop keeps.',
      decimals: 1,
      least: 0,
      most: 100,
    }),
    withDefault(
      'touches-soil',
      'Touches soil',
      YES_OR_NO,
      `AND(ISBLANK([Trellising]); NOT(${named('Sweet corn', 'Okra', 'Brussels', 'Sunflower')}))`,
      {
        note: 'The part that is sold touches the ground or soil splashes on it: all but what is trellised or stands high.',
      },
    ),
    withDefault('ripening-gas', 'Ripening gas', choice('gives off', 'harmed by'), GAS, {
      note: 'Ethylene. Lettuce, carrots and broccoli spoil beside what gives it off (Western Australia, Mixed storage of fruits and vegetables); tomatoes and melons giving it off: memory.',
    }),
    withDefault('smell', 'Smell', choice('gives off', 'takes on'), SMELL, {
      note: 'Celery and carrots are not kept with onions or garlic (Western Australia, Mixed storage of fruits and vegetables).',
    }),
  ),
];
