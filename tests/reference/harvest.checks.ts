// Hours of work against recorded hours, and harvest curves against the weighed pickings of the garden they were fitted to.

import { harvestedShare } from '../../engine/agronomy/harvest-curve.ts';
import { seasonOf } from '../sheets/season.ts';
import { latitudeOf, monthsOf } from './calendars.ts';
import type { Fact, Publication } from './check.ts';

const LENDWAY: Publication = {
  author: 'Lendway, L.',
  year: 2021,
  title: 'gardenR: garden harvest and planting tables of 2020 and 2021',
  publisher: 'R data package, GitHub: llendway/gardenR',
  url: 'https://github.com/llendway/gardenR',
};

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

/** The library took its curves from these records by least squares: that they come back says no more than that. */
const halves: Fact = {
  kind: 're-fitted',
  fact: 'share picked when half of the season was, by the library’s curve',
  unit: '%',
  data: LENDWAY,
  at: 'weighed pickings by crop and year: days from the first picking to half of the total, and to the last',
  fittedBy: 'the library’s middle and spread of each crop, by least squares on the same records',
  points: HALVES.map(([crop, season, half, length]) => {
    const share = (column: string): number => (library.number('Crops', crop, column) ?? Number.NaN) / 100;
    return {
      what: `${crop} ${season}: day ${half} of ${length}`,
      given: 50,
      computed: () => 100 * harvestedShare(half, length, share('Harvest curve middle'), share('Harvest curve spread')),
      tolerance: 25, // two seasons of one garden differ by up to this; picked when the kitchen asked
    };
  }),
};

export const PUERTO_RICO: Publication = {
  author: 'Agricultural Experiment Station, University of Puerto Rico, Fortuna Substation',
  year: 'undated, article 6832 of the journal’s site',
  title: 'Weekly and operational labor input requirements of drip irrigated vegetables, Juana Díaz',
  publisher: 'Journal of Agriculture of the University of Puerto Rico',
  url: 'https://revistas.upr.edu/index.php/jaupr/article/view/6832',
};
const PLACE = 'Raleigh NC';
const WITH_PATH = 30 / 48;
const SQUARE_METRES_A_HECTARE = 1e4;
/** Of the 3.1 h of making a bed: laying the drip line and clearing the crop, which the plots took too; tractors did the rest. */
const LINE_AND_CLEARING = (0.45 + 0.75) / 3.1;

interface Hours {
  readonly crop: string;
  readonly out: string;
  readonly hours: number;
  readonly kind: string;
  readonly off?: { readonly upTo: number; readonly why: string };
}

/** Man-hours a hectare, paths in, on bare soil and without supports; yields are not printed. */
const HOURS: readonly Hours[] = [
  { crop: 'Pepper, sweet', out: '2027-05-01', hours: 1899.8, kind: 'peppers' },
  { crop: 'Cabbage', out: '2027-03-10', hours: 1460.5, kind: 'cabbages' },
  { crop: 'Cucumber', out: '2027-05-01', hours: 1386, kind: 'cucumbers' },
  {
    crop: 'Bean, snap bush',
    out: '2027-05-01',
    hours: 1387,
    kind: 'snap beans picked several times',
    off: { upTo: 560, why: 'picked at 9 kg an hour, a rate recalled; the plots’ yield is not printed' },
  },
  {
    crop: 'Tomato',
    out: '2027-04-25',
    hours: 1467.1,
    kind: 'tomatoes on the ground',
    off: { upTo: 2200, why: 'picking and packing of the 79 t/ha of the library; the plots’ yield is not printed' },
  },
  { crop: 'Watermelon', out: '2027-05-01', hours: 1119, kind: 'watermelons' },
];

/** Hours a hectare of the same work by the workbook: no supports, drip line and clearing in, the rest of bed making out. */
function hoursOf(crop: string, out: string): number {
  const season = seasonOf(
    {
      'Monthly climate': monthsOf(PLACE),
      Varieties: [{ Variety: 'One', Crop: crop }],
      Plantings: [{ Planting: 'One', Variety: 'One', Sown: out, 'Planted out': out }],
    },
    { Latitude: String(latitudeOf(PLACE)) },
    { units: 'si' },
  );
  const number = (column: string): number => season.number('Plantings', 'One', column) ?? Number.NaN;
  const start = season.number('Plantings', 'One', 'Start hours') ?? 0;
  const left = number('Bed hours') * (1 - LINE_AND_CLEARING) + start + number('Trellising hours');
  return ((number('Hours') - left) / number('Ground area')) * SQUARE_METRES_A_HECTARE * WITH_PATH;
}

const work = HOURS.map(
  ({ crop, out, hours, kind, off }): Fact => ({
    kind: 'published',
    fact: `hours of hand work of ${kind}`,
    unit: 'h/ha',
    source: PUERTO_RICO,
    at: 'abstract: total man-hours per hectare in the plots without mulch',
    points: [
      {
        what: `${crop} at 36 N, planting to packing, without supports`,
        given: hours,
        computed: () => hoursOf(crop, out),
        tolerance: hours / 4, // the same crop took up to a quarter more under mulch, tomatoes more
        ...(off === undefined ? {} : { off }),
      },
    ],
  }),
);

export const facts: readonly Fact[] = [halves, ...work];
