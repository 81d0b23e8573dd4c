// The demo: an invented market garden planning its season. demo/README.md tells its story. Rows are typed as a grower would
// type them, on top of the season template; every name in them is made up.

import { civilDay, type Start } from '../engine/index.ts';
import { seasonStart } from '../sheets-templates/index.ts';
import { PLANTINGS } from './plantings.ts';
import { BULBING_RECORDS, TRIALS } from './records.ts';
import { PACKS, SEED_LOTS, VARIETIES } from './seed.ts';
import { table } from './table.ts';

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
  today: civilDay(2027, 1, 12),
  farm: {
    'Farm name': 'Lantern Hollow Gardens (invented)',
    Latitude: '44.6',
    Longitude: '-90.2',
    Elevation: '980 ft',
    Wage: '19',
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
    Packs: PACKS,
    'Seed lots': SEED_LOTS,
    Beds: BEDS,
    Plantings: PLANTINGS,
    Trials: TRIALS,
    'Bulbing records': BULBING_RECORDS,
  },
});
