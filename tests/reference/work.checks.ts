// Hours and rates of hand work against recorded ones of farms and trials. The rates of the library are nearly all recalled; where a
// rate was taken from a page, that page makes no fact here.

import { civilDayOfIso, isoDate } from '../../engine/index.ts';
import type { Fact, Publication } from './check.ts';
import { PUERTO_RICO } from './harvest.checks.ts';
import { type Asked, BED_SHARE, planted } from './workbook.ts';

const PLACE = 'Madison WI';
const SQUARE_METRES_AN_ACRE = 4046.8564224;
const SQUARE_METRES_A_HECTARE = 1e4;
const POUND = 0.45359237;

interface Bed {
  readonly crop: string;
  readonly start: 'cells' | 'direct seed' | 'sets';
  readonly date: string;
}

/** A market garden: a bed of each of the crops that sell most. */
const GARDEN: readonly Bed[] = [
  { crop: 'Lettuce, head', start: 'cells', date: '2027-05-01' },
  { crop: 'Carrot', start: 'direct seed', date: '2027-05-01' },
  { crop: 'Beet', start: 'direct seed', date: '2027-05-01' },
  { crop: 'Onion, bulb', start: 'cells', date: '2027-04-20' },
  { crop: 'Tomato', start: 'cells', date: '2027-06-01' },
  { crop: 'Pepper, sweet', start: 'cells', date: '2027-06-01' },
  { crop: 'Cucumber', start: 'direct seed', date: '2027-06-01' },
  { crop: 'Bean, snap bush', start: 'direct seed', date: '2027-05-25' },
  { crop: 'Kale', start: 'cells', date: '2027-05-01' },
  { crop: 'Cabbage', start: 'cells', date: '2027-05-01' },
  { crop: 'Broccoli', start: 'cells', date: '2027-05-01' },
  { crop: 'Squash, winter', start: 'direct seed', date: '2027-05-25' },
  { crop: 'Potato', start: 'sets', date: '2027-05-01' },
  { crop: 'Sweet corn', start: 'direct seed', date: '2027-05-25' },
];

const DAYS_RAISED = 42;

function bedOf({ crop, start, date }: Bed): Asked {
  const sown = start === 'cells' ? isoDate((civilDayOfIso(date) ?? Number.NaN) - DAYS_RAISED) : date;
  const variety = crop === 'Onion, bulb' ? { 'Day-length type': 'long' } : {};
  return planted({ place: PLACE, crop, start, sown, plantedOut: date, variety });
}

const garden = GARDEN.map(bedOf);

function sumOf(column: string, beds: readonly Asked[] = garden): number {
  return beds.reduce((sum, bed) => sum + bed.number(column), 0);
}

function harvestShare(bed: Asked): number {
  return (bed.number('Picking hours') + bed.number('Packing hours')) / bed.number('Hours');
}

const HENDRICKSON: Publication = {
  author: 'Hendrickson, J., Center for Integrated Agricultural Systems',
  year: 2005,
  title: 'Profit by Planning: Helping Fresh Market Vegetable Growers Meet Financial Goals (SARE LNC01-194)',
  publisher: 'University of Wisconsin-Madison; Sustainable Agriculture Research and Education',
  url: 'https://projects.sare.org/project-reports/lnc01-194/',
};
const GRUBINGER: Publication = {
  author: 'Grubinger, V. P.',
  year: 1999,
  title: 'Sustainable Vegetable Production from Start-Up to Market',
  publisher:
    'Natural Resource, Agriculture, and Engineering Service, Ithaca; quoted in Growing for Market, Strategies for efficient harvesting',
  url: 'https://growingformarket.com/articles/Strategies-for-efficient-harvesting',
};
const IOWA: Publication = {
  author: 'Franzenburg, A. & Johnson, E., Practical Farmers of Iowa',
  year: 2017,
  title: 'Enterprise Budget for Cherry Tomatoes',
  publisher: 'Practical Farmers of Iowa, Ames',
  url: 'https://www.practicalfarmers.org/people/ann-franzenberg/',
};
const TRANSPLANTER: Publication = {
  author: 'Plant Science Today',
  year: 'undated, article 6279',
  title: 'Hand-held vegetable seedling transplanter: evaluation against planting by hand',
  publisher: 'Horizon e-Publishing Group',
};
const MULTIPLIER: Publication = {
  author: 'Indian Society of Agricultural Engineers',
  year: 'undated, research of the day 3190',
  title: 'Planter for multiplier onion: hand planting at 10 x 15 cm',
  publisher: 'ISAE, New Delhi',
};
const ALLIUMS: Publication = {
  author: 'Brewster, J. L.',
  year: 2008,
  title: 'Onions and Other Vegetable Alliums, second edition',
  publisher: 'CABI, Wallingford',
};
const SMITH: Publication = {
  author: 'Smith, R.',
  year: 2016,
  title: 'Labor, efficiency and the future of weed control',
  publisher: 'Growing Produce; University of California Cooperative Extension, Monterey County',
};

export const facts: readonly Fact[] = [
  {
    kind: 'published',
    fact: 'hours of an acre of market garden',
    unit: 'h/acre',
    source: HENDRICKSON,
    at: 'hours an acre of farms under three acres: 933 to 2994, mean just under 2000; 19 growers, 2002-04',
    points: [
      {
        what: 'a bed each of fourteen crops, one crop a year, selling and driving left out',
        given: 1964,
        computed: () => (sumOf('Hours') / sumOf('Ground area')) * BED_SHARE * SQUARE_METRES_AN_ACRE,
        tolerance: 1030, // the range over farms
      },
    ],
  },
  {
    kind: 'published',
    fact: 'harvest that a person brings in an hour over all crops',
    unit: 'kg/h',
    source: GRUBINGER,
    at: '5,000 lb brought in by five people in seven hours each, bulk crops of a farm that shares its harvest',
    points: [
      {
        what: 'mass over picking hours of fourteen crops',
        given: (5000 / 35) * POUND,
        computed: () => sumOf('Marketable yield') / sumOf('Picking hours'),
        tolerance: 21, // a third: one farm, its best mornings
      },
    ],
  },
  {
    kind: 'published',
    fact: 'share of the hours of cherry tomatoes that are harvest and packing',
    unit: '%',
    source: IOWA,
    at: 'key findings: 74 % of labor-hours on one farm, 62 % on the other',
    points: [
      {
        what: 'middle of two farms, tunnels',
        given: 68,
        computed: () => 100 * harvestShare(bedOf({ crop: 'Tomato, cherry', start: 'cells', date: '2027-06-01' })),
        tolerance: 6,
        off: { upTo: 42, why: 'stringing and pruning take 20 h a bed in the library, a figure recalled' },
      },
    ],
  },
  {
    kind: 'published',
    fact: 'share of hours that are harvest and after-harvest work',
    unit: '%',
    source: PUERTO_RICO,
    at: 'abstract: 28.4 to 62.6 % of total labor over crops and mulch',
    points: [
      {
        what: 'mean of fourteen crops, middle of the range',
        given: 45.5,
        computed: () => 100 * ((sumOf('Picking hours') + sumOf('Packing hours')) / sumOf('Hours')),
        tolerance: 17.1,
      },
    ],
  },
  {
    kind: 'published',
    fact: 'share of hours that are weeding',
    unit: '%',
    source: PUERTO_RICO,
    at: 'abstract: 12.4 to 27.1 % of total labor without mulch',
    points: [
      {
        what: 'mean of fourteen crops, middle of the range',
        given: 19.75,
        computed: () => 100 * (sumOf('Weeding hours') / sumOf('Hours')),
        tolerance: 7.35,
      },
    ],
  },
  {
    kind: 'published',
    fact: 'plants that a person sets out a minute, stooping',
    unit: '1/min',
    source: TRANSPLANTER,
    at: 'abstract: 16 to 18 plants a minute by hand',
    points: [
      {
        what: 'lettuce in a bed',
        given: 17,
        computed: () => {
          const bed = bedOf({ crop: 'Lettuce, head', start: 'cells', date: '2027-05-01' });
          return bed.number('Stations') / (bed.number('Planting hours') * 60);
        },
        tolerance: 4,
        off: { upTo: 9.5, why: 'bursts of trained planters; a day has trays to carry' },
      },
    ],
  },
  {
    kind: 'published',
    fact: 'person-days to plant a hectare of onion sets by hand',
    unit: 'd/ha',
    source: MULTIPLIER,
    at: '80 to 100 person-days a hectare at 10 x 15 cm',
    points: [
      {
        what: '667,000 sets, days of eight hours',
        given: 90,
        computed: () => {
          const bed = bedOf({ crop: 'Onion, bulb', start: 'sets', date: '2027-04-20' });
          return (bed.number('Planting hours') / bed.number('Stations')) * (SQUARE_METRES_A_HECTARE / 0.015 / 8);
        },
        tolerance: 22.5, // a quarter: whole tens printed, and days differ
        off: { upTo: 80, why: 'the workbook sets out sets as slowly as plants, 500 an hour' },
      },
    ],
  },
  {
    kind: 'published',
    fact: 'hours to weed a hectare of onions by hand',
    unit: 'h/ha',
    source: ALLIUMS,
    at: 'page 196: 100 to 600 h/ha in drilled onions, by the number of weeds',
    points: [
      {
        what: 'middle of the range',
        given: 350,
        computed: () => {
          const bed = bedOf({ crop: 'Onion, bulb', start: 'cells', date: '2027-04-20' });
          return (bed.number('Weeding hours') / bed.number('Ground area')) * BED_SHARE * SQUARE_METRES_A_HECTARE;
        },
        tolerance: 250,
        off: { upTo: 470, why: 'hand-worked beds weeded three times; a rate recalled' },
      },
    ],
  },
  {
    kind: 'published',
    fact: 'hours to weed a hectare of romaine by hand',
    unit: 'h/ha',
    source: SMITH,
    at: '143 dollars an acre at the wage of the year, 9.3 h',
    points: [
      {
        what: 'herbicides before',
        given: 23,
        computed: () => {
          const bed = bedOf({ crop: 'Lettuce, romaine', start: 'cells', date: '2027-05-01' });
          return (bed.number('Weeding hours') / bed.number('Ground area')) * BED_SHARE * SQUARE_METRES_A_HECTARE;
        },
        tolerance: 6,
        off: { upTo: 220, why: 'herbicides do most of it in those fields, nothing but hands in these beds' },
      },
    ],
  },
];
