// Spacing of successions: how far apart plantings must be so that their harvests are so far apart, beside dates that growers
// print. The dates come from the season workbook itself, out of monthly normals.

import { civilDay, isoDate } from '../../engine/index.ts';
import { type Season, seasonOf } from '../sheets/season.ts';
import { latitudeOf, monthsOf } from './calendars.ts';
import type { Fact, Publication } from './check.ts';

const GROWER: Publication = {
  author: 'Coleman, E.',
  year: 1989,
  title: 'The New Organic Grower',
  publisher: 'Chelsea Green, Chelsea',
};
const SCHEDULING: Publication = {
  author: 'Bachmann, J.',
  year: 'undated, archived in 2008',
  title: 'Scheduling Vegetable Plantings for Continuous Harvest',
  publisher: 'NCAT, National Sustainable Agriculture Information Service',
  url: 'https://attra.ncat.org/product/scheduling-vegetable-plantings-for-continuous-harvest',
};

const MONTHS = 'January February March April May June July August September October November December'.split(' ');

/** Normals of 1971 to 2000, degF: NOAA's for Acadia National Park, as the Maine Encyclopedia prints them under Temperature Normals. */
const ACADIA_HIGHS = [31.9, 34.4, 41.6, 52.7, 65.0, 74.2, 79.8, 78.2, 69.2, 57.9, 47.1, 36.9];
const ACADIA_LOWS = [10.0, 13.8, 22.3, 32.0, 42.3, 51.3, 57.1, 56.3, 48.1, 38.4, 28.8, 16.7];

type Row = Readonly<Record<string, string>>;

function seasonWith(latitude: number, months: readonly Row[], crop: string, plantings: readonly Row[]): Season {
  return seasonOf(
    {
      'Monthly climate': months,
      Varieties: [{ Variety: crop, Crop: crop }],
      Plantings: plantings.map((planting, at) => ({ Planting: String(at), Variety: crop, ...planting })),
    },
    { Latitude: String(latitude) },
  );
}

function gap(season: Season, column: string): number {
  const day = (planting: string): number => Number(season.value('Plantings', planting, column));
  return day('1') - day('0');
}

function acadia(plantings: readonly Row[]): Season {
  const months = MONTHS.map((Month, at) => ({
    Month,
    Low: `${ACADIA_LOWS[at]} degF`,
    High: `${ACADIA_HIGHS[at]} degF`,
  }));
  return seasonWith(44.4, months, 'Lettuce, leaf', plantings);
}

const APRIL = '2027-04-21';
const MAY = '2027-05-01';

function lettuceHarvests(): number {
  return gap(acadia([{ 'Planted out': APRIL }, { 'Planted out': MAY }]), 'Harvest');
}

/** Harvests eight days apart wanted: how far apart the plantings are then. */
function lettucePlantings(): number {
  const first = Number(acadia([{ 'Planted out': APRIL }]).value('Plantings', '0', 'Harvest'));
  const wanted = acadia([{ 'Wanted from': isoDate(first) }, { 'Wanted from': isoDate(first + 8) }]);
  return gap(wanted, 'Planted out');
}

/** Days between the harvests of peas sown on the earliest day and two weeks on. */
function peas(place: string): number {
  const from = (sown: readonly Row[]): Season => seasonWith(latitudeOf(place), monthsOf(place), 'Pea, shelling', sown);
  const earliest = Number(from([{}]).value('Plantings', '0', 'Sown'));
  return gap(from([{ Sown: isoDate(earliest) }, { Sown: isoDate(earliest + 14) }]), 'Harvest');
}

/** Dates are printed to the day and are of one year; an average year has them that much earlier or later. */
const OF_ONE_YEAR = 2;
const OLDER =
  'the first were sown on 1 March and the second on 1 April: plants three weeks older are ahead, which is not reckoned';
const PEA_PLACES = ['Raleigh NC', 'Madison WI', 'Finger Lakes NY', 'Oxford UK'];

export const facts: readonly Fact[] = [
  {
    kind: 'published',
    fact: 'days between lettuces set out in spring and between their harvests, in Maine',
    unit: 'd',
    source: GROWER,
    at: 'page 47: set out 21 April and 1 May, ready 25 May and 2 June',
    points: [
      {
        what: 'between harvests, set out ten days apart, at the normals of Acadia',
        given: civilDay(2027, 6, 2) - civilDay(2027, 5, 25),
        computed: lettuceHarvests,
        tolerance: OF_ONE_YEAR,
        off: { upTo: 6, why: OLDER },
      },
      {
        what: 'between settings out, harvests wanted eight days apart',
        given: civilDay(2027, 5, 1) - civilDay(2027, 4, 21),
        computed: lettucePlantings,
        tolerance: OF_ONE_YEAR,
      },
    ],
  },
  {
    kind: 'published',
    fact: 'days between harvests of peas sown at the first possible date and two weeks later',
    unit: 'd',
    source: SCHEDULING,
    at: 'Introduction: “usually mature only one week apart”',
    points: PEA_PLACES.map((place) => ({
      what: `shelling peas at ${place}`,
      given: 7,
      computed: () => peas(place),
      tolerance: OF_ONE_YEAR,
    })),
  },
];
