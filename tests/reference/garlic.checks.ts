// Garlic: when it goes in and is lifted, as services print it, beside what the workbook says at a place like theirs.

import { civilDayOfIso } from '../../engine/index.ts';
import { type Season, seasonOf } from '../sheets/season.ts';
import { daysAfter, latitudeOf, monthsOf } from './calendars.ts';
import type { Fact, Publication } from './check.ts';

function garlicAt(place: string): Season {
  return seasonOf(
    {
      'Monthly climate': monthsOf(place),
      Varieties: [{ Variety: 'Garlic', Crop: 'Garlic' }],
      Plantings: [{ Planting: 'Garlic', Variety: 'Garlic', Sown: '2026-10-20' }],
    },
    { Latitude: String(latitudeOf(place)) },
  );
}

interface Garlic {
  readonly fact: string;
  readonly place: string;
  readonly column: 'Harvest' | 'Earliest in the bed';
  readonly date: string;
  readonly tolerance: number;
  readonly source: Publication;
  readonly at: string;
}

const GARLIC: readonly Garlic[] = [
  {
    fact: 'garlic lifted at 43 N',
    place: 'Finger Lakes NY',
    column: 'Harvest',
    date: '07-16',
    tolerance: 15, // July is printed
    source: {
      author: 'Ontario Ministry of Agriculture, Food and Agribusiness',
      year: 2024,
      title: 'Garlic: planted in autumn, harvested in July',
      publisher: 'ONvegetables, Guelph',
      url: 'https://onvegetables.com/',
    },
    at: 'season of garlic in Ontario, 43 N',
  },
  {
    fact: 'garlic planting opens in inland northern California',
    place: 'Napa CA',
    column: 'Earliest in the bed',
    date: '11-15',
    tolerance: 46, // October to December is printed
    source: {
      author: 'University of California Statewide Integrated Pest Management Program',
      year: 'undated, Pests in Gardens and Landscapes',
      title: 'Garlic: cultural tips, planting by region',
      publisher: 'University of California Agriculture and Natural Resources, Davis',
    },
    at: 'north coast: October to December',
  },
];

const garlic = GARLIC.map(
  ({ fact, place, column, date, tolerance, source, at }): Fact => ({
    kind: 'published',
    fact,
    unit: 'd',
    source,
    at,
    points: [
      {
        what: `${date} at ${place}; days late`,
        given: 0,
        computed: () =>
          daysAfter(
            Number(garlicAt(place).value('Plantings', 'Garlic', column)),
            civilDayOfIso(`2027-${date}`) ?? Number.NaN,
          ),
        tolerance,
      },
    ],
  }),
);

const days: Fact = {
  kind: 'published',
  fact: 'days of garlic from planting to lifting in a maritime climate',
  unit: 'd',
  source: {
    author: 'Washington State University Extension',
    year: 'undated, FS162E',
    title: 'Home Vegetable Gardening: Garlic (FS162E)',
    publisher: 'Washington State University, Pullman',
  },
  at: 'planted in autumn, midsummer harvest, about 240 days',
  points: [
    {
      what: 'planted 20 October at 52 N',
      given: 240,
      computed: () => {
        const season = garlicAt('Oxford UK');
        return (
          Number(season.value('Plantings', 'Garlic', 'Harvest')) -
          Number(season.value('Plantings', 'Garlic', 'Planted out'))
        );
      },
      tolerance: 30, // a month either side of midsummer
    },
  ],
};

export const facts: readonly Fact[] = [...garlic, days];
