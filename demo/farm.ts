// The demo: an invented market garden planning its season. demo/README.md tells its story. Rows are typed as a grower would
// type them, on top of the season template; every name in them is made up.

import { civilDay, type Start } from '../engine/index.ts';
import { seasonStart } from '../sheets-templates/index.ts';
import { PAST_RESULTS, RECORDS } from './diary.ts';
import { PLANTINGS } from './plantings.ts';
import { BULBING_RECORDS, TRIALS } from './records.ts';
import { PACKS, SEED_LOTS, SETS, SUPPLIERS, VARIETIES } from './seed.ts';
import { DEMAND, OUTLETS, PRODUCTS } from './selling.ts';
import { LAID, SUCCESSIONS } from './successions.ts';
import { table } from './table.ts';

/** The newest field, Ridge 1 to Ridge 24, where most of what is sown again and again stands. */
const RIDGE = Array.from({ length: 24 }, (_, at) => ({
  Bed: `Ridge ${at + 1}`,
  Field: 'Ridge',
  Length: '60 ft',
  'Soil cover': 'compost',
  'Family last year': at < 8 ? 'Poaceae' : at < 16 ? 'Polygonaceae' : 'Fabaceae',
}));

const BEDS = table(
  'Bed | Field | Length | Soil cover | Family last year | Family two years ago | Family three years ago',
  'Barn 1 | Barn | 50 ft | leaves | Brassicaceae | Apiaceae | Solanaceae',
  'Barn 2 | Barn | 50 ft | leaves | Brassicaceae | Cucurbitaceae | Fabaceae',
  'Barn 3 | Barn | 50 ft | compost | Asteraceae | Fabaceae | Brassicaceae',
  'Barn 4 | Barn | 50 ft | compost | Amaryllidaceae | Apiaceae | Cucurbitaceae',
  'Barn 5 | Barn | 50 ft | straw | Amaryllidaceae | Brassicaceae | Fabaceae',
  'Creek 1 | Creek | 100 ft | green manure | Fabaceae | Solanaceae | Asteraceae',
  'Creek 2 | Creek | 100 ft | green manure | Solanaceae | Amaranthaceae | Brassicaceae',
  'Creek 3 | Creek | 100 ft | straw | Cucurbitaceae | Apiaceae | Fabaceae',
  'Creek 4 | Creek | 100 ft | straw | Apiaceae | Fabaceae | Amaryllidaceae',
  'Creek 5 | Creek | 100 ft | bare | Amaranthaceae | Asteraceae | Apiaceae',
  'Creek 6 | Creek | 100 ft | bare | Brassicaceae | Apiaceae | Amaranthaceae',
  'Creek 7 | Creek | 100 ft | leaves | Poaceae | Asteraceae | Brassicaceae',
  'Orchard 1 | Orchard | 40 ft | leaves | Asteraceae | Amaranthaceae | Brassicaceae',
  'Orchard 2 | Orchard | 40 ft | leaves | Fabaceae | Asteraceae | Cucurbitaceae',
  'Orchard 3 | Orchard | 40 ft | sheet | Brassicaceae | Fabaceae | Asteraceae',
  'Orchard 4 | Orchard | 40 ft | compost | Amaranthaceae | Fabaceae | Asteraceae',
);

const MONTHS = table(
  'Month | Number | Low | High | Reference evapotranspiration | Rain',
  'January | 1 | 8 degF | 25 degF | 0.02 | 1.1',
  'February | 2 | 12 degF | 30 degF | 0.03 | 1.0',
  'March | 3 | 23 degF | 41 degF | 0.06 | 2.0',
  'April | 4 | 35 degF | 57 degF | 0.11 | 3.0',
  'May | 5 | 46 degF | 69 degF | 0.16 | 4.0',
  'June | 6 | 56 degF | 78 degF | 0.19 | 4.6',
  'July | 7 | 60 degF | 82 degF | 0.20 | 4.1',
  'August | 8 | 58 degF | 80 degF | 0.17 | 4.2',
  'September | 9 | 49 degF | 71 degF | 0.12 | 4.1',
  'October | 10 | 38 degF | 58 degF | 0.07 | 2.7',
  'November | 11 | 26 degF | 41 degF | 0.03 | 2.0',
  'December | 12 | 14 degF | 29 degF | 0.02 | 1.4',
);

const STORES = table(
  'Store | Temperature | Humidity | Room',
  'Cold store | 38 degF | 67% | 3000 lb',
  'Root cellar | 33 degF | 96% | 4000 lb',
  'Dry shed | 55 degF | 60% | 1500 lb',
);

const HANDS = table(
  'Name | Hours a week | From | Until',
  'Nell | 24 h | 2026-09-01 | 2028-08-31',
  'Tobin | 20 h | 2027-03-01 | 2027-11-30',
);

const OWN_JOBS = table(
  'Job | First on | Every | Until | Kind | Hours | Who',
  'Order seed | 2027-01-14 | | | other | 3 h | Nell',
  'Mow the paths | 2027-05-11 | 2 | 2027-10-12 | ground | 1.5 h | Tobin',
  'Turn the compost | 2027-04-06 | 4 | 2027-10-19 | ground | 1 h | Tobin',
  'Books and letters | 2027-01-08 | 4 | 2027-12-17 | other | 2 h | Nell',
);

const OWN_COSTS = table(
  'Cost | Kind | Amount | First on | Every',
  'Rent of the ridge | land | 60 | 2027-01-01 | quarter',
  'Insurance | insurance | 340 | 2027-02-15 | once',
  'Power for the stores | buildings | 22 | 2027-01-20 | month',
  'Market fee | fees | 120 | 2027-05-10 | once',
  'Crates and bags | packaging | 95 | 2027-05-20 | once',
);

const INPUTS = table(
  'Input | Bed | Given on | Amount | Hours | Cost | Worked in',
  'Compost of leaves and manure | Barn 1 | 2027-04-14 | 200 lb | 1 h | 8 | yes',
  'Compost of leaves and manure | Creek 5 | 2027-04-28 | 300 lb | 1.5 h | 12 | yes',
  'Straw-pack beef manure, raw | Orchard 3 | 2026-10-30 | 400 lb | 2 h | 0 | yes',
  'Feather meal | Creek 4 | 2027-05-03 | 10 lb | 0.5 h | 14 | yes',
);

const COVER_CROPS = table(
  'Bed | Kind | Sown | Ended | Cost',
  'Creek 2 | Rye and vetch | 2026-09-20 | 2027-05-20 | 9',
  'Creek 7 | Rye and vetch | 2027-09-20 | | 9',
  'Barn 1 | Oats and peas | 2027-08-25 | | 6',
  'Creek 6 | Oats and peas | 2027-09-28 | | 6',
);

const FROST_YEARS = table(
  'Year | Last frost | First frost | Last hard frost | First hard frost',
  '2019 | 2019-05-12 | 2019-09-28 | 2019-04-30 | 2019-10-10',
  '2020 | 2020-05-09 | 2020-09-21 | 2020-04-27 | 2020-10-03',
  '2021 | 2021-05-02 | 2021-10-04 | 2021-04-22 | 2021-10-19',
  '2022 | 2022-05-16 | 2022-09-26 | 2022-05-01 | 2022-10-08',
  '2023 | 2023-05-08 | 2023-10-01 | 2023-04-25 | 2023-10-16',
  '2024 | 2024-05-05 | 2024-10-07 | 2024-04-20 | 2024-10-21',
  '2025 | 2025-05-14 | 2025-09-24 | 2025-05-03 | 2025-10-06',
  '2026 | 2026-05-07 | 2026-09-30 | 2026-04-26 | 2026-10-12',
);

export const demoFarm: Start = seasonStart({
  title: 'Lantern Hollow Gardens 2027',
  units: 'us',
  currency: 'USD',
  season: 2027,
  today: civilDay(2027, 7, 16),
  farm: {
    'Farm name': 'Lantern Hollow Gardens (invented)',
    Latitude: '44.6',
    Longitude: '-90.2',
    Elevation: '980 ft',
    Wage: '19',
    'Jobs noted from': '2027-07-12',
    'Mix price': '2.40',
    'Bench area': '160 ft2',
    'Curing area': '220 ft2',
    'Cold store capacity': '3000 lb',
    'Mix compaction': '1.6',
  },
  rows: {
    'Monthly climate': MONTHS,
    'Frost years': FROST_YEARS,
    Varieties: VARIETIES,
    Suppliers: SUPPLIERS,
    Packs: [...PACKS, ...SETS],
    'Seed lots': SEED_LOTS,
    Beds: [...BEDS, ...RIDGE],
    Stores: STORES,
    Successions: SUCCESSIONS,
    Plantings: [...PLANTINGS, ...LAID],
    Products: PRODUCTS,
    Outlets: OUTLETS,
    Demand: DEMAND,
    Hands: HANDS,
    'Own jobs': OWN_JOBS,
    'Own costs': OWN_COSTS,
    Inputs: INPUTS,
    'Cover crops': COVER_CROPS,
    Records: RECORDS,
    'Past results': PAST_RESULTS,
    Trials: TRIALS,
    'Bulbing records': BULBING_RECORDS,
  },
});
