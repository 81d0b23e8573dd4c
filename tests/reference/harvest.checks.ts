// Harvest curves against the weighed pickings of one garden, light caught by onions against the table of a textbook, hours of
// work against recorded hours.

import { lightCaught } from '../../engine/agronomy/bulb-light.ts';
import { harvestedShare } from '../../engine/agronomy/harvest-curve.ts';
import { seasonOf } from '../sheets/season.ts';
import { latitudeOf, monthsOf } from './calendars.ts';
import type { Check } from './check.ts';

const LENDWAY =
  'Lendway, L. 2020 and 2021, garden harvest and planting tables (gardenR data package), days from first picking to half of the total and length of harvest';

/** Crop, season, days from the first picking to half of the total, length of the harvest in days. */
const HALVES: readonly (readonly [crop: string, season: string, half: number, length: number])[] = [
  ['Tomato', '2020', 36, 85],
  ['Tomato', '2021', 46, 97],
  ['Tomato, cherry', '2020', 49, 91],
  ['Tomato, cherry', '2021', 46, 103],
  ['Squash, summer', '2020', 43, 64],
  ['Squash, summer', '2021', 34, 74],
  ['Cucumber', '2020', 29, 48],
  ['Cucumber', '2021', 22, 62],
  ['Bean, snap bush', '2021', 14, 38],
  ['Pea, snap', '2020', 12, 33],
  ['Pepper, sweet', '2021', 38, 97],
  ['Kale', '2020', 52, 121],
  ['Kale', '2021', 80, 131],
  ['Chard', '2020', 51, 118],
  ['Basil', '2020', 33, 67],
];

const library = seasonOf({}, { Latitude: '' }, { units: 'si' });

const halves = HALVES.map(([crop, season, half, length]): Check => {
  const share = (column: string): number => (library.number('Crops', crop, column) ?? Number.NaN) / 100;
  return {
    source: LENDWAY,
    what: `${crop} ${season}: share picked by day ${half} of ${length}, by the library's curve`,
    unit: '%',
    published: 50,
    computed: () => 100 * harvestedShare(half, length, share('Harvest curve middle'), share('Harvest curve spread')),
    tolerance: 25, // two seasons of one garden differ by up to this; picked when the kitchen asked
    standing: 'dataset',
  };
});

const BREWSTER =
  'Brewster 2008, Onions and Other Vegetable Alliums, Table 4.2: light caught in bulbing and leaf area index';

const light: readonly Check[] = [
  {
    source: BREWSTER,
    what: 'share of light caught by an onion bed with leaf area index 3.7, sown 15 March at 52 N',
    unit: '%',
    published: 69,
    computed: () => 100 * lightCaught(3.7),
    tolerance: 5,
    standing: 'published',
  },
  {
    source: BREWSTER,
    what: 'share of light caught by an onion bed with leaf area index 1.5, sown 21 April at 52 N',
    unit: '%',
    published: 45,
    computed: () => 100 * lightCaught(1.5),
    tolerance: 5,
    standing: 'published',
  },
];

const PUERTO_RICO =
  'Journal of Agriculture of the University of Puerto Rico, article 6832, weekly and operational labor input for drip-irrigated vegetables: hours of all work from planting to packing';
const RALEIGH = 'Raleigh NC';
const WITH_PATH = 30 / 48;
const SQUARE_METRES_A_HECTARE = 1e4;

/** Middle of the hours a hectare printed, paths in, plots made by tractor; yields not printed. */
const HOURS: readonly (readonly [crop: string, out: string, hours: number])[] = [
  ['Pepper, sweet', '2027-05-01', 1932],
  ['Cabbage', '2027-03-10', 1552],
  ['Cucumber', '2027-05-01', 1474],
  ['Bean, snap bush', '2027-05-01', 1385],
  ['Tomato', '2027-04-25', 2456],
  ['Watermelon', '2027-05-01', 1266],
];

const work = HOURS.map(
  ([crop, out, hours]): Check => ({
    source: PUERTO_RICO,
    what: `${crop}: hours a hectare from planting to packing, without making the bed; printed for tractor-made plots of unknown yield`,
    unit: 'h/ha',
    published: hours,
    computed: () => {
      const season = seasonOf(
        {
          'Monthly climate': monthsOf(RALEIGH),
          Varieties: [{ Variety: 'One', Crop: crop }],
          Plantings: [{ Planting: 'One', Variety: 'One', Sown: out, 'Planted out': out }],
        },
        { Latitude: String(latitudeOf(RALEIGH)) },
        { units: 'si' },
      );
      const number = (column: string): number => season.number('Plantings', 'One', column) ?? Number.NaN;
      const made = number('Bed hours') + (season.number('Plantings', 'One', 'Start hours') ?? 0);
      const spent = number('Hours') - made;
      return (spent / number('Ground area')) * SQUARE_METRES_A_HECTARE * WITH_PATH;
    },
    tolerance: hours, // hand work on small beds takes up to twice the hours of a field
    standing: 'published',
  }),
);

export const checks: readonly Check[] = [...halves, ...light, ...work];
