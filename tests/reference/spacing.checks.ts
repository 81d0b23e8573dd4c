// Published counts and densities against spacing.ts.
import { drilledDensity, plantDensity, plantsOnArea, stations } from '../../engine/agronomy/spacing.ts';
import { tolerantFloor } from '../../engine/values/tolerance.ts';
import type { Check } from './check.ts';
import { numberOf, readTable, textOf } from './table.ts';

const ACRE = 43_560 * 144;
const SQUARE_FOOT = 0.09290304;

const BAILEY = 'L. H. Bailey, The Farm and Garden Rule-Book, plants to the acre';
const STAND = 'Agricultural support page "Onion density": (germination % x 9 x rows) / (bed width m x in-row mm)';
const TRIAL = 'On-farm onion spacing trial, bed of 30 in x 20 ft';

/** Bailey's table cuts fractions off; the grower table rounds them. */
const perAcre = readTable('plants-per-acre').map((row): Check => {
  const between = numberOf(row, 'between_in');
  const within = numberOf(row, 'within_in');
  const cutsOff = textOf(row, 'table') === 'Bailey';
  return {
    source: cutsOff ? BAILEY : 'Plant population table, growers’ magazine, March 2021, p. 12 Table 1',
    what: `plants to the acre at ${between} x ${within} in`,
    unit: 'plants',
    published: numberOf(row, 'plants'),
    computed: () => (cutsOff ? tolerantFloor : Math.round)(plantsOnArea(ACRE, between, within)),
    tolerance: 0,
    standing: 'published',
  };
});

const squareFoot = [3, 4, 6, 12].map(
  (spacing, index): Check => ({
    source: 'Public square-foot planting chart',
    what: `places in 12 x 12 in at ${spacing} in`,
    unit: 'places',
    published: [16, 9, 4, 1][index] ?? Number.NaN,
    computed: () => stations(12, spacing, 12 / spacing),
    tolerance: 0,
    standing: 'common practice',
  }),
);

export const checks: readonly Check[] = [
  ...perAcre,
  ...squareFoot,
  {
    source: STAND,
    what: '85 % germination x field factor 0.9, 8 rows, bed 1.5 m, 50 mm in the row',
    unit: 'plants/m2',
    published: 81.6,
    computed: () => drilledDensity(0.85 * 0.9, 8, 1.5, 0.05),
    tolerance: 0.05,
    standing: 'published',
  },
  {
    source: STAND,
    what: 'the same on 1.8 m centres',
    unit: 'plants/ha',
    published: 680_000,
    computed: () => drilledDensity(0.85 * 0.9, 8, 1.8, 0.05) * 10_000,
    tolerance: 500,
    standing: 'published',
  },
  {
    source: TRIAL,
    what: '4 rows at 6 in',
    unit: 'plants',
    published: 160,
    computed: () => stations(20 * 12, 6, 4),
    tolerance: 0,
    standing: 'published',
  },
  {
    source: TRIAL,
    what: '4 rows at 6 in, per area',
    unit: 'plants/ft2',
    published: 3.2,
    computed: () => plantDensity(stations(20 * 12, 6, 4), 1, 2.5 * 20),
    tolerance: 0.05,
    standing: 'published',
  },
  {
    source: 'Trade page on clumped onions: four a block at 12 x 12 in',
    what: 'four a block at 12 x 12 in',
    unit: 'plants/ft2',
    published: 4,
    computed: () => plantDensity(stations(120, 12, 10), 4, 100),
    tolerance: 0,
    standing: 'common practice',
  },
  {
    source: 'Trade page on clumped onions: four a block at 12 x 12 in',
    what: 'the same as singles 3 in apart in rows 12 in apart',
    unit: 'plants/ft2',
    published: 4,
    computed: () => plantsOnArea(144, 12, 3),
    tolerance: 0,
    standing: 'common practice',
  },
  {
    source:
      'The effects of plant spacing on the yield of bulb onions grown from seed, J. Hort. Sci. 41 (1966), abstract',
    what: '7 plants/ft2 in metric',
    unit: 'plants/m2',
    published: 75,
    computed: () => plantDensity(7, 1, SQUARE_FOOT),
    tolerance: 0.5,
    standing: 'published',
  },
  {
    source: 'Shock et al., Malheur Experiment Station, plant population trials 2011-2012, abstract',
    what: '593 000 plants/ha per m2',
    unit: 'plants/m2',
    published: 59.3,
    computed: () => plantDensity(593_000, 1, 10_000),
    tolerance: 0.05,
    standing: 'published',
  },
];
