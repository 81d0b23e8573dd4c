// Rates of work that the Work rates sheet starts with: how much a person picks, packs, weeds or plants in an hour. Nearly all
// are recalled: time your own. work-rates.ts reads them; the crops of this library name the rows they are worked by.

import { MEMORY, type Source, source } from './source.ts';

/** One person's rate, low, likely and high, in the unit of its kind. */
export interface WorkRate {
  readonly work: string;
  readonly task: WorkTask;
  /** Hours for a bed 30 in by 100 ft, pieces, kilograms or metres of row an hour. */
  readonly kind: 'hours a bed' | 'pieces an hour' | 'weight an hour' | 'row an hour';
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  readonly source: Source;
  /** What of it the source says, where it says only part. */
  readonly basis: string;
}

export const WORK_TASKS = [
  'picking',
  'washing and packing',
  'cleaning',
  'weeding',
  'thinning',
  'supporting',
  'covering',
  'planting',
  'sowing',
  'bed preparation',
  'clearing',
] as const;

export type WorkTask = (typeof WORK_TASKS)[number];

const ADEGBOLA = source('Adegbola, Fisher & Hodges 2018, HortScience 53: 1133-1138');
const BLOSSER = source(
  'Blosser, Franklin & Mumford 1944, Man labor requirements for cane fruits and tomatoes in the Willamette Valley, Oregon Agr. Exp. Sta.',
);
const CALLAHAN = source('Callahan 2021, Univ. of Vermont Extension, Root washers for produce farms');
const GARLIC_MOTION = source('Time-motion notes on garlic planting, farm blog, 18 October 2010');
const ICAR = source('ICAR-CIAE, hand-held vegetable transplanter, model I');
const KERR = source('Kerr, Planting and harvesting green beans, Farmers Weekly (South Africa)');
const MOSQUEDA = source('Mosqueda, Smith, Goorahoo & Shrestha 2018, California Agriculture 72(2): 114-119');
const PUERTO_RICO = source(
  'Journal of Agriculture of the University of Puerto Rico, article 6832, labor input for drip-irrigated vegetables',
);
const SEASONAL_JOBS = source('seasonaljobs.io 2021, strawberry pickers and packers');
const UAPB = source(
  'Izekor & Katayama, Univ. of Arkansas at Pine Bluff, Okra production update for small acreage growers',
);
const WESTERN_AUSTRALIA = source('Department of Agriculture Western Australia 2015, Growing snow peas and sugar snaps');
const WISCONSIN_CSA = source('farm newsletter, Wisconsin, summer 2011, week 13');

function rate(kind: WorkRate['kind']) {
  return (
    work: string,
    task: WorkTask,
    low: number,
    likely: number,
    high: number,
    from: Source = MEMORY,
    basis = '',
  ): WorkRate => ({ work, task, kind, low, likely, high, source: from, basis });
}

const pieces = rate('pieces an hour');
const weight = rate('weight an hour');
const rows = rate('row an hour');
const byArea = rate('hours a bed');

export const WORK_RATES: readonly WorkRate[] = [
  pieces('Bunching leaves', 'picking', 40, 60, 90),
  pieces('Bunching herbs', 'picking', 40, 60, 85),
  pieces('Bunching onions', 'picking', 30, 45, 60),
  pieces('Bunching radishes', 'picking', 40, 60, 90),
  pieces('Bunching turnips', 'picking', 40, 60, 80),
  pieces('Bunching carrots and beets', 'picking', 35, 50, 75),
  pieces('Lifting and bunching leeks', 'picking', 25, 40, 60),
  pieces('Cutting lettuce heads', 'picking', 90, 150, 240),
  pieces('Cutting romaine heads', 'picking', 80, 130, 200),
  pieces('Cutting mini lettuce', 'picking', 150, 250, 400),
  pieces('Cutting cabbage', 'picking', 80, 130, 200),
  pieces('Cutting broccoli', 'picking', 80, 120, 180),
  pieces('Cutting napa cabbage and cauliflower', 'picking', 60, 100, 150),
  pieces('Cutting kohlrabi', 'picking', 100, 160, 240),
  pieces('Cutting bok choy', 'picking', 90, 140, 200),
  pieces('Cutting fennel', 'picking', 80, 120, 180),
  pieces('Cutting celery', 'picking', 60, 90, 130),
  pieces('Lifting celeriac', 'picking', 50, 80, 120),
  pieces('Picking melons', 'picking', 60, 100, 160),
  pieces('Picking watermelons', 'picking', 50, 80, 140),
  pieces('Pulling sweet corn', 'picking', 250, 400, 700),
  pieces('Cutting flowers', 'picking', 150, 250, 400, MEMORY, 'stems'),
  weight('Cutting baby leaf with a knife', 'picking', 5.443, 9.072, 13.61),
  weight('Cutting baby leaf with a cutter', 'picking', 27.22, 45.36, 79.38),
  weight(
    'Picking tomatoes',
    'picking',
    27.22,
    49.9,
    86.64,
    BLOSSER,
    'high: hand picking of a cannery-type field crop, 1,528 lb in 8 hours; the rest memory',
  ),
  weight('Picking cherry tomatoes', 'picking', 5.443, 9.072, 13.61),
  weight('Picking peppers', 'picking', 27.22, 45.36, 72.58),
  weight('Picking tomatillos and jalapenos', 'picking', 13.61, 22.68, 36.29),
  weight('Picking eggplants', 'picking', 31.75, 49.9, 72.58),
  weight('Picking cucumbers', 'picking', 31.75, 54.43, 90.72),
  weight('Picking summer squash', 'picking', 36.29, 58.97, 99.79),
  weight('Cutting winter squash', 'picking', 90.72, 181.4, 317.5),
  weight(
    'Picking bush beans',
    'picking',
    5.44,
    9.07,
    16.7,
    KERR,
    'high: 100 kg in a 6-hour day of a good crop; the rest memory',
  ),
  weight('Picking pole beans', 'picking', 6.804, 11.34, 18.14),
  weight('Picking snap peas', 'picking', 4.54, 7.26, 11, WESTERN_AUSTRALIA, 'high: 11 kg an hour; the rest memory'),
  weight('Picking snow peas', 'picking', 3.63, 6.35, 11, WESTERN_AUSTRALIA, 'high: 11 kg an hour; the rest memory'),
  weight('Picking shelling peas', 'picking', 6.804, 9.979, 14.52),
  weight(
    'Stripping edamame',
    'picking',
    2.27,
    5.44,
    9.07,
    WISCONSIN_CSA,
    'low: 5 lb an hour picked like beans, timed; the rest memory',
  ),
  weight('Picking okra', 'picking', 8, 12, 18, UAPB, 'from 10 to 20 hours an acre and picking and a yield assumed'),
  weight('Forking potatoes', 'picking', 22.68, 40.82, 68.04),
  weight('Forking sweet potatoes', 'picking', 22.68, 40.82, 63.5),
  weight('Pulling onions', 'picking', 54.43, 90.72, 158.8, MEMORY, 'tops on'),
  weight('Pulling shallots', 'picking', 31.75, 54.43, 90.72),
  weight('Forking garlic', 'picking', 18.14, 31.75, 49.9, MEMORY, 'cured mass'),
  weight('Forking parsnips', 'picking', 18.14, 31.75, 49.9),
  weight('Pulling and topping rutabagas', 'picking', 54.43, 90.72, 145.2),
  weight('Pulling and topping radishes', 'picking', 40.82, 68.04, 108.9),
  weight('Snapping sprouts', 'picking', 5.443, 9.072, 13.61),
  weight('Cutting asparagus', 'picking', 4.536, 8.165, 13.61),
  weight('Pulling rhubarb', 'picking', 25, 45, 70),
  weight('Pulling and threshing dry beans', 'picking', 2, 4, 8, MEMORY, 'dry seed'),
  weight('Cutting corn salad', 'picking', 2, 4, 6),
  weight(
    'Picking strawberries',
    'picking',
    5.44,
    9.07,
    15,
    SEASONAL_JOBS,
    'high: 15 kg an hour from field beds; the rest memory',
  ),
  pieces('Dunking bunches of leaves', 'washing and packing', 80, 120, 200),
  pieces('Dunking bunches of herbs', 'washing and packing', 90, 150, 240),
  pieces('Peeling and trimming bunching onions', 'washing and packing', 50, 80, 120),
  pieces('Trimming leeks', 'washing and packing', 40, 70, 110),
  pieces('Dunking lettuce', 'washing and packing', 120, 200, 300),
  pieces('Crating brassica heads', 'washing and packing', 150, 250, 400),
  pieces('Dunking bok choy', 'washing and packing', 100, 160, 240),
  pieces('Hosing celery', 'washing and packing', 60, 100, 150),
  pieces('Bagging sweet corn', 'washing and packing', 250, 400, 700),
  pieces('Bunching flowers', 'washing and packing', 250, 400, 600, MEMORY, 'stems'),
  pieces(
    'Washing bunched roots on a spray table',
    'washing and packing',
    100,
    150,
    200,
    CALLAHAN,
    'likely: 150 bunches an hour, one person with a spray table and hose; low and high memory',
  ),
  weight(
    'Washing topped roots in a barrel',
    'washing and packing',
    90.72,
    136.1,
    181.4,
    CALLAHAN,
    'likely: 300 lb an hour, small barrel washer; low and high memory',
  ),
  weight('Washing and bagging leaves', 'washing and packing', 11.34, 18.14, 31.75),
  weight('Wiping and sorting tomatoes', 'washing and packing', 45.36, 81.65, 136.1),
  weight('Boxing small fruit', 'washing and packing', 18.14, 27.22, 45.36),
  weight('Wiping and sorting peppers', 'washing and packing', 54.43, 90.72, 158.8),
  weight('Dunking cucumbers and squash', 'washing and packing', 68.04, 113.4, 181.4),
  weight('Sorting beans and sprouts', 'washing and packing', 27.22, 45.36, 72.58),
  weight('Sorting peas', 'washing and packing', 22.68, 36.29, 58.97),
  weight('Washing and bagging potatoes', 'washing and packing', 54.43, 90.72, 158.8),
  weight('Rinsing sweet potatoes', 'washing and packing', 45.36, 77.11, 136.1),
  weight('Wiping winter squash', 'washing and packing', 113.4, 181.4, 317.5),
  weight('Bunching asparagus', 'washing and packing', 11.34, 18.14, 27.22),
  weight('Cleaning cured onions', 'cleaning', 27.22, 49.9, 90.72),
  weight('Cleaning cured shallots', 'cleaning', 13.61, 27.22, 45.36),
  weight('Cleaning cured garlic', 'cleaning', 9.072, 15.88, 27.22),
  byArea('Weeding drilled carrots and parsnips', 'weeding', 3, 6, 12),
  byArea('Weeding planted alliums', 'weeding', 1.5, 3, 6),
  byArea('Weeding bunching onions', 'weeding', 1.5, 3, 5),
  byArea('Weeding garlic under straw', 'weeding', 0.75, 1.5, 3),
  byArea('Weeding close-sown leaves', 'weeding', 0.5, 1.5, 4),
  byArea('Weeding drilled bunching roots', 'weeding', 0.75, 2, 4),
  byArea('Hoeing quick heads', 'weeding', 0.4, 0.8, 1.5),
  byArea('Hoeing wide rows', 'weeding', 0.6, 1.2, 2.5),
  byArea('Hoeing and hilling rows', 'weeding', 0.6, 1.2, 2.5),
  byArea('Weeding fruit crops on fabric', 'weeding', 0.25, 0.6, 1.2),
  byArea('Hoeing until squash vines run', 'weeding', 0.8, 1.5, 3),
  byArea('Hilling potatoes', 'weeding', 0.8, 1.5, 3),
  byArea('Hoeing until vines run', 'weeding', 0.5, 1, 2),
  byArea('Hoeing and pulling among herbs', 'weeding', 0.8, 1.8, 3.5),
  byArea('Weeding strawberries', 'weeding', 3, 6, 12),
  byArea('Weeding asparagus', 'weeding', 1.5, 3, 6),
  byArea('Hoeing flowers', 'weeding', 0.8, 1.5, 3),
  byArea(
    'Thinning carrots and beets',
    'thinning',
    1.2,
    2.4,
    4.8,
    MEMORY,
    '0.3, 0.6 and 1.2 hours per 100 feet of row, four rows a bed',
  ),
  byArea(
    'Thinning lettuce with a hoe',
    'thinning',
    0.063,
    0.067,
    0.072,
    MOSQUEDA,
    '6.8 to 7.8 hours an acre, long-handled hoe',
  ),
  byArea(
    'Staking and weaving tomatoes',
    'supporting',
    1.6,
    3,
    6,
    PUERTO_RICO,
    'low: 424 to 430 hours a hectare more than tomatoes on the ground; the rest memory',
  ),
  byArea('Stringing and pruning tomatoes', 'supporting', 12, 18, 28),
  byArea('Stringing and pruning cherry tomatoes', 'supporting', 14, 20, 30),
  byArea('Training cucumbers', 'supporting', 2, 6, 14),
  byArea('Netting peas and beans', 'supporting', 1.5, 2.5, 4),
  byArea('Staking peppers', 'supporting', 1, 2, 3.5),
  byArea('Staking tomatillos', 'supporting', 1.5, 3, 5),
  byArea('Netting flowers', 'supporting', 0.6, 1, 1.6),
  byArea('Putting on row cover', 'covering', 0.3, 0.5, 0.9),
  pieces(
    'Setting out blocks and plugs',
    'planting',
    300,
    500,
    900,
    ICAR,
    'low: 300 an hour through plastic; the rest memory, bursts of 960 to 1,080 read',
  ),
  pieces('Setting out pots of tomato size', 'planting', 80, 130, 200),
  pieces('Dropping leeks and onions in dibbled holes', 'planting', 500, 900, 1500),
  pieces('Planting garlic cloves', 'planting', 300, 500, 1000, GARLIC_MOTION, '20,000 cloves clocked on two farms'),
  pieces('Planting onion sets', 'planting', 500, 900, 1500),
  pieces('Planting slips', 'planting', 200, 350, 600),
  pieces('Planting bare-root strawberries', 'planting', 120, 200, 350),
  rows('Cutting and planting potatoes', 'planting', 18.3, 33.5, 54.9),
  rows('Sowing with a push seeder', 'sowing', 762, 1219, 1829),
  byArea('Sowing with a six-row seeder', 'sowing', 0.1, 0.2, 0.35),
  pieces('Making blocks with a press of four', 'sowing', 800, 1500, 2500),
  pieces('Making blocks with a stand-up press', 'sowing', 2500, 4000, 6000),
  pieces('Sowing cells by hand', 'sowing', 1000, 1800, 3000),
  pieces('Sowing cells with a plate', 'sowing', 5000, 9000, 1.5e4),
  pieces('Filling trays', 'sowing', 30, 50, 80),
  pieces(
    'Potting on',
    'sowing',
    282,
    821,
    1360,
    ADEGBOLA,
    'pricking out and sticking in 14 nurseries, 282 to 1,360 pieces a worker and hour',
  ),
  byArea('Broadforking', 'bed preparation', 0.5, 0.75, 1.25),
  byArea('Raking a seedbed', 'bed preparation', 0.25, 0.4, 0.75),
  byArea('Spreading compost', 'bed preparation', 0.4, 0.75, 1.25),
  byArea('Clearing an old crop', 'clearing', 0.3, 0.75, 1.5),
  byArea('Laying a tarp', 'bed preparation', 0.1, 0.2, 0.4),
  byArea('Laying fabric or plastic', 'bed preparation', 0.5, 0.9, 1.5),
  byArea('Laying drip lines', 'bed preparation', 0.15, 0.3, 0.6),
  weight('Cracking seed garlic', 'planting', 4.5, 8.2, 13.6),
  byArea('Pulling garlic scapes', 'clearing', 0.4, 0.75, 1.25),
];
