// The average last and first frost of a place as services print them, beside those the workbook tells from the monthly mean lows
// alone, as in a season in which nobody has typed a frost date. Dates that the rule was set against (engine/agronomy/
// frost-season.ts: Madison, Ithaca, Oxford) make no fact.

import { civilDayOfIso } from '../../engine/index.ts';
import { seasonOf } from '../sheets/season.ts';
import { daysAfter, latitudeOf, monthsOf } from './calendars.ts';
import type { Fact, Publication } from './check.ts';
import { FREEZE_NORMALS } from './publications.ts';

const SPRING = 'Average last frost';
const AUTUMN = 'Average first frost';

interface Told {
  readonly place: string;
  readonly column: typeof SPRING | typeof AUTUMN;
  /** Month and day. */
  readonly date: string;
  readonly source: Publication;
  readonly at: string;
  readonly off?: { readonly upTo: number; readonly why: string };
}

/** Days the printed date may lie off: a monthly mean low says no more, and stations of one county differ by as much. */
const WITHIN = 14;
const SOUTH = 'where springs are unsettled, frost comes with a milder mean low than in the north';

const MACON: Publication = {
  author: 'National Park Service',
  year: 2023,
  title: 'Ocmulgee Mounds National Historical Park: Weather (Macon, Georgia)',
  publisher: 'National Park Service, Washington',
  url: 'https://www.nps.gov/ocmu/planyourvisit/weather.htm',
};

const DATES: readonly Told[] = [
  {
    place: 'Raleigh NC',
    column: AUTUMN,
    date: '11-08',
    source: FREEZE_NORMALS,
    at: 'station Raleigh State University, North Carolina: 50 % chance of 32 F',
  },
  {
    place: 'Raleigh NC',
    column: SPRING,
    date: '04-13',
    source: {
      author: 'North Carolina State Extension',
      year: 'undated, table by county station',
      title: 'Average last spring frost dates for selected North Carolina locations',
      publisher: 'N.C. Cooperative Extension, Raleigh',
    },
    at: 'Durham, standard deviation 12 days',
    off: { upTo: 22, why: SOUTH },
  },
  {
    place: 'Fairbanks AK',
    column: AUTUMN,
    date: '09-15',
    source: {
      author: 'Thoman, R., National Weather Service Alaska',
      year: 2017,
      title: 'First freeze at Fairbanks, broadcast of 22 August',
      publisher: 'KUAC, Fairbanks',
    },
    at: 'typical first freeze at the airport over 17 years',
  },
  {
    place: 'Macon GA',
    column: SPRING,
    date: '03-22',
    source: MACON,
    at: 'end of the window of freezing temperatures',
    off: { upTo: 19, why: SOUTH },
  },
  {
    place: 'Macon GA',
    column: AUTUMN,
    date: '11-07',
    source: MACON,
    at: 'begin of the window of freezing temperatures',
  },
  {
    place: 'Napa CA',
    column: AUTUMN,
    date: '12-05',
    source: {
      author: 'UC Master Gardeners of Napa County',
      year: 'undated, a column of August',
      title: 'Master Gardeners: How to enjoy tomatoes in winter',
      publisher: 'Napa Valley Register, Napa, California',
      url: 'https://napavalleyregister.com/lifestyles/home-and-garden/columnists/master-gardener/master-gardeners-how-to-enjoy-tomatoes-in-winter/article_6cae5b9c-db72-54e6-a9e5-4348b220f62c.html',
    },
    at: 'half of the years by early December',
    off: { upTo: 18, why: 'lows are those of Santa Rosa, which lies farther from the bay' },
  },
];

export const facts: readonly Fact[] = DATES.map(
  ({ place, column, date, source, at, off }): Fact => ({
    kind: 'published',
    fact: `${column.toLowerCase()} at ${place} from monthly lows`,
    unit: 'd',
    source,
    at,
    points: [
      {
        what: `${date}; days late`,
        given: 0,
        computed: () => {
          const season = seasonOf({ 'Monthly climate': monthsOf(place) }, { Latitude: String(latitudeOf(place)) });
          return daysAfter(Number(season.value('Farm', '', column)), civilDayOfIso(`2027-${date}`) ?? Number.NaN);
        },
        tolerance: WITHIN,
        ...(off === undefined ? {} : { off }),
      },
    ],
  }),
);
