// Crop coefficients and water against the worked examples and tables of FAO Irrigation and Drainage Paper 56.
import { climateCoefficient, cropCoefficient, meanCoefficient, seasonLength } from '../../engine/agronomy/water.ts';
import type { Check } from './check.ts';
import { numberOf, readTable, textOf } from './table.ts';

const PAPER = 'Allen et al. 1998, FAO Irrigation and Drainage Paper 56';

const BEAN_STAGES = { initial: 25, development: 25, middle: 30, late: 20 };
const BEAN_COEFFICIENTS = { initial: 0.15, middle: 1.19, end: 0.35 };

const days = [
  [20, 0.15],
  [40, 0.77],
  [70, 1.19],
  [95, 0.56],
].map(
  ([day = Number.NaN, published = Number.NaN]): Check => ({
    source: PAPER,
    what: `example 28: dry bean, coefficient on day ${day}`,
    unit: '',
    published,
    computed: () => cropCoefficient(day, BEAN_STAGES, BEAN_COEFFICIENTS),
    tolerance: 0.005,
    standing: 'published',
  }),
);

const TEN_DAYS = [0.15, 0.15, 0.2, 0.57, 0.98, 1.19, 1.19, 1.19, 0.98, 0.56];
const REFERENCE = [3.0, 3.4, 4.0, 4.2, 4.5, 5.1, 5.6, 6.0, 5.5, 5.2];
const CROP = [0.5, 0.5, 0.8, 2.4, 4.4, 6.1, 6.7, 7.1, 5.4, 2.9];

const decades = TEN_DAYS.flatMap((published, index): readonly Check[] => {
  const mean = (): number => meanCoefficient(index * 10, index * 10 + 10, BEAN_STAGES, BEAN_COEFFICIENTS);
  return [
    {
      source: PAPER,
      what: `figure 36: dry bean, mean coefficient of ten days from day ${index * 10}`,
      unit: '',
      published,
      computed: mean,
      tolerance: 0.006,
      standing: 'published',
    },
    {
      source: PAPER,
      what: `figure 36: dry bean, water a day in ten days from day ${index * 10}`,
      unit: 'mm/day',
      published: CROP[index] ?? Number.NaN,
      computed: () => mean() * (REFERENCE[index] ?? Number.NaN),
      tolerance: 0.06,
      standing: 'published',
    },
  ];
});

/** Box 14 prints to five hundredths in part; the humid rows are for very humid air (80 %). */
const wheat = (
  [
    [4, 0.3, 1.25],
    [2, 0.3, 1.2],
    [1, 0.3, 1.17],
    [4, 0.45, 1.2],
    [2, 0.45, 1.15],
    [1, 0.45, 1.12],
    [4, 0.8, 1.1],
    [2, 0.8, 1.05],
    [1, 0.8, 1.02],
  ] as const
).map(
  ([wind, humidity, published]): Check => ({
    source: PAPER,
    what: `box 14: wheat, mid-season coefficient at wind ${wind} m/s, least humidity ${humidity * 100} %`,
    unit: '',
    published,
    computed: () => climateCoefficient(1.15, wind, humidity, 1),
    tolerance: 0.01,
    standing: 'published',
  }),
);

/** Every printed total adds up but that of green gram, which the unit tests hold as a known slip. */
const lengths = readTable('crop-stage-lengths')
  .filter((row) => textOf(row, 'crop') !== 'green gram cowpeas')
  .map(
    (row): Check => ({
      source: PAPER,
      what: `table 11: ${textOf(row, 'crop')}, ${textOf(row, 'region')}, planted ${textOf(row, 'planted')}: season`,
      unit: 'days',
      published: numberOf(row, 'printed_total'),
      computed: () =>
        seasonLength({
          initial: numberOf(row, 'initial'),
          development: numberOf(row, 'development'),
          middle: numberOf(row, 'middle'),
          late: numberOf(row, 'late'),
        }),
      tolerance: 0,
      standing: 'published',
    }),
  );

export const checks: readonly Check[] = [
  ...days,
  ...decades,
  ...wheat,
  {
    source: PAPER,
    what: 'example 27: maize at Taipei, mid-season coefficient',
    unit: '',
    published: 1.07,
    computed: () => climateCoefficient(1.2, 1.3, 0.75, 2),
    tolerance: 0.005,
    standing: 'published',
  },
  {
    source: PAPER,
    what: 'example 27: maize at Mocha, mid-season coefficient',
    unit: '',
    published: 1.3,
    computed: () => climateCoefficient(1.2, 4.6, 0.44, 2),
    tolerance: 0.006,
    standing: 'published',
  },
  {
    source: PAPER,
    what: 'box 15: dry bean at Kimberly, mid-season coefficient',
    unit: '',
    published: 1.19,
    computed: () => climateCoefficient(1.15, 2.2, 0.3, 0.4),
    tolerance: 0.005,
    standing: 'published',
  },
  ...lengths,
];
