// Plants to an area and along a row.
import { drilledDensity, plantDensity, plantsOnArea, stations } from '../../engine/agronomy/spacing.ts';
import { tolerantFloor } from '../../engine/values/tolerance.ts';
import type { Fact, Publication } from './check.ts';
import { numberOf, readTable } from './table.ts';

const ACRE = 43_560 * 144;
const SQUARE_FOOT = 0.09290304;

const BAILEY: Publication = {
  author: 'Bailey, L. H.',
  year: 1911,
  title: 'Farm and Garden Rule-Book: A Manual of Ready Rules and Reference',
  publisher: 'Macmillan, New York',
};

const ONION_DENSITY: Publication = {
  author: 'Agricultural Support Online',
  year: 'undated, as it stands on the site',
  title: 'Onion density',
  publisher: 'agrisupportonline.com',
  url: 'https://www.agrisupportonline.com/Articles/onion_density.htm',
};

export const facts: readonly Fact[] = [
  {
    kind: 'published',
    fact: 'plants to the acre at a distance',
    unit: 'plants',
    source: BAILEY,
    at: 'table of the number of plants to the acre; fractions are cut off',
    points: readTable('plants-per-acre').map((row) => {
      const [between, within] = [numberOf(row, 'between_in'), numberOf(row, 'within_in')];
      return {
        what: `${between} x ${within} in`,
        given: numberOf(row, 'plants'),
        computed: () => tolerantFloor(plantsOnArea(ACRE, between, within)),
        tolerance: 0,
      };
    }),
  },
  {
    kind: 'published',
    fact: 'stand of a drilled bed',
    unit: 'plants/m2',
    source: ONION_DENSITY,
    at: 'formula and example: (germination % x 9 x rows) / (bed width in m x distance in the row in mm)',
    points: [
      {
        what: '85 % germination, 8 rows, bed 1.5 m, 50 mm in the row',
        given: 81.6,
        computed: () => drilledDensity(0.85 * 0.9, 8, 1.5, 0.05),
        tolerance: 0.05,
      },
      {
        what: 'the same on 1.8 m centres (680,000 plants/ha)',
        given: 68,
        computed: () => drilledDensity(0.85 * 0.9, 8, 1.8, 0.05),
        tolerance: 0.05,
      },
    ],
  },
  {
    kind: 'common practice',
    fact: 'places in a square foot',
    unit: 'places',
    practice: 'planting by the square foot: 1, 4, 9 or 16 to a foot',
    points: [3, 4, 6, 12].map((spacing, index) => ({
      what: `${spacing} in apart`,
      given: [16, 9, 4, 1][index] ?? Number.NaN,
      computed: () => stations(12, spacing, 12 / spacing),
      tolerance: 0,
    })),
  },
  {
    kind: 'arithmetic',
    fact: 'plants of rows and clumps on an area',
    unit: 'plants/ft2',
    rule: 'length / spacing x rows x plants a place / area',
    points: [
      {
        what: '4 rows at 6 in on a bed of 30 in x 20 ft',
        given: 3.2,
        computed: () => plantDensity(stations(20 * 12, 6, 4), 1, 2.5 * 20),
        tolerance: 1e-12,
      },
      {
        what: 'four a block at 12 x 12 in',
        given: 4,
        computed: () => plantDensity(stations(120, 12, 10), 4, 100),
        tolerance: 0,
      },
      {
        what: 'singles 3 in apart in rows 12 in apart',
        given: 4,
        computed: () => plantsOnArea(144, 12, 3),
        tolerance: 0,
      },
      {
        what: '75 plants to the square metre',
        given: 7,
        computed: () => plantDensity(75, 1, 1 / SQUARE_FOOT),
        tolerance: 0.05,
      },
    ],
  },
];
