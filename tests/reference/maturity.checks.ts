// Days from planting to harvest at different dates, as trials and services print them, beside the harvest of a planting of that date.

import { civilDayOfIso, isoDate } from '../../engine/index.ts';
import type { Fact, Point, Publication } from './check.ts';
import { planted } from './workbook.ts';

function weeksBefore(date: string, weeks: number): string {
  return isoDate((civilDayOfIso(date) ?? Number.NaN) - 7 * weeks);
}

interface Planting {
  readonly place: string;
  readonly crop: string;
  readonly start: 'cells' | 'direct seed';
  /** In the bed. */
  readonly date: string;
  readonly weeksRaised?: number;
  readonly planting?: Readonly<Record<string, string>>;
}

function asked({ place, crop, start, date, weeksRaised = 5, planting }: Planting) {
  return planted({
    place,
    crop,
    start,
    sown: start === 'cells' ? weeksBefore(date, weeksRaised) : date,
    plantedOut: date,
    ...(planting === undefined ? {} : { planting }),
  });
}

/** Days from the bed to the first harvest. */
function daysToHarvest(planting: Planting): number {
  return asked(planting).day('Harvest') - (civilDayOfIso(planting.date) ?? Number.NaN);
}

/** Days from the bed to the middle of the harvest. */
function daysToMiddle(planting: Planting): number {
  const one = asked(planting);
  return (one.day('Harvest') + one.day('Harvest ends')) / 2 - (civilDayOfIso(planting.date) ?? Number.NaN);
}

const DUFAULT: Publication = {
  author: 'Dufault, R. J., Korkmaz, A., Ward, B. K. & Hassell, R. L.',
  year: 2006,
  title: 'Planting date and cultivar affect melon quality and productivity',
  publisher: 'HortScience 41: 1559-1564',
};

/** Mean days from setting out to harvest, three years and four cultivars; earlier settings were lost to frost in part. */
const MELONS: readonly (readonly [date: string, days: number])[] = [
  ['2027-03-12', 105],
  ['2027-03-26', 88],
  ['2027-04-09', 79],
  ['2027-04-23', 70],
  ['2027-05-07', 64],
  ['2027-05-21', 60],
  ['2027-06-04', 60],
  ['2027-06-18', 59],
  ['2027-07-02', 56],
];

const WURR: Publication = {
  author: 'Wurr, D. C. E., Fellows, J. R. & Hiron, R. W. P.',
  year: 1990,
  title: 'Relationships between the times of transplanting, curd initiation and maturity in cauliflower',
  publisher: 'Journal of Agricultural Science, Cambridge 114: 193-199',
};

const FLORIDA: Publication = {
  author: 'Horticultural Sciences Department, University of Florida, Institute of Food and Agricultural Sciences',
  year: 'undated, the table of SP 103',
  title: 'Vegetable Planting Guide (Florida Vegetable Gardening Guide)',
  publisher: 'Florida Cooperative Extension Service, Gainesville; reprinted at growables.com',
  url: 'https://growables.com/informationVeg/VegPlantingGuide.htm',
};

interface Range {
  readonly crop: string;
  readonly start: 'cells' | 'direct seed';
  readonly from: number;
  readonly to: number;
  readonly dates: readonly string[];
  readonly off?: { readonly upTo: number; readonly why: string };
}

const BOTH = ['2027-03-01', '2027-09-15'];
const FLORIDA_DAYS: readonly Range[] = [
  {
    crop: 'Arugula',
    start: 'direct seed',
    from: 35,
    to: 60,
    dates: BOTH,
    off: { upTo: 22, why: 'cut young by the library, as baby leaf is' },
  },
  { crop: 'Bean, snap bush', start: 'direct seed', from: 45, to: 60, dates: ['2027-03-01'] },
  { crop: 'Bean, snap pole', start: 'direct seed', from: 50, to: 70, dates: BOTH },
  { crop: 'Beet', start: 'direct seed', from: 50, to: 70, dates: BOTH },
  { crop: 'Broccoli', start: 'cells', from: 50, to: 70, dates: BOTH },
  {
    crop: 'Brussels sprouts',
    start: 'cells',
    from: 70,
    to: 90,
    dates: BOTH,
    off: { upTo: 28, why: 'days to maturity of the library are those of the north' },
  },
  { crop: 'Cabbage', start: 'cells', from: 70, to: 90, dates: BOTH },
  { crop: 'Melon', start: 'direct seed', from: 85, to: 110, dates: ['2027-03-01'] },
  {
    crop: 'Carrot',
    start: 'direct seed',
    from: 70,
    to: 120,
    dates: BOTH,
    off: { upTo: 34, why: 'bunched young by the library' },
  },
  { crop: 'Cauliflower', start: 'cells', from: 50, to: 70, dates: BOTH },
];

const florida = FLORIDA_DAYS.map(
  ({ crop, start, from, to, dates, off }): Fact => ({
    kind: 'published',
    fact: `days to harvest of ${crop.toLowerCase()} in north Florida`,
    unit: 'd',
    source: FLORIDA,
    at: `days to harvest, from ${start === 'cells' ? 'transplants, in brackets' : 'seed'}`,
    points: dates.map(
      (date): Point => ({
        what: `in the bed ${date.slice(5)}, middle of ${from} to ${to} days`,
        given: (from + to) / 2,
        computed: () => daysToHarvest({ place: 'Gainesville FL', crop, start, date }),
        tolerance: (to - from) / 2,
        ...(off === undefined ? {} : { off }),
      }),
    ),
  }),
);

const OCONNELL: Publication = {
  author: 'O’Connell, S., Rivard, C., Peet, M. M., Harlow, C. & Louws, F.',
  year: 2012,
  title:
    'High tunnel and field production of organic heirloom tomatoes: yield, fruit quality, disease, and microclimate',
  publisher: 'HortScience 47: 1283-1290',
};

const CAROLINA: Publication = {
  author: 'North Carolina State Extension',
  year: 'undated, AG-552',
  title: 'Commercial production of pickling and slicing cucumbers in North Carolina (AG-552)',
  publisher: 'North Carolina Cooperative Extension Service, Raleigh',
};

export const facts: readonly Fact[] = [
  {
    kind: 'published',
    fact: 'days from setting out to the mean harvest of melons by date',
    unit: 'd',
    source: DUFAULT,
    at: 'abstract: days to mean harvest at Charleston, South Carolina, 32.8 N; told with the normals of Macon, 32.7 N',
    points: MELONS.map(([date, days]) => ({
      what: `set out ${date.slice(5)}`,
      given: days,
      computed: () => daysToMiddle({ place: 'Macon GA', crop: 'Melon', start: 'cells', date, weeksRaised: 4 }),
      tolerance: 10, // four cultivars, three years
    })),
  },
  {
    kind: 'published',
    fact: 'days from setting out to maturity of cauliflower in May and July',
    unit: 'd',
    source: WURR,
    at: 'abstract: 77 to 94 days from planting in May, 67 to 106 in July, three years, 52 N',
    points: [
      {
        what: 'set out 15 May at Oxford, middle of the range',
        given: 85.5,
        computed: () =>
          daysToHarvest({
            place: 'Oxford UK',
            crop: 'Cauliflower',
            start: 'cells',
            date: '2027-05-15',
            weeksRaised: 6,
          }),
        tolerance: 8.5,
        off: { upTo: 19, why: 'a cultivar of summer and autumn; the crop of the library is an early one' },
      },
      {
        what: 'set out 15 July at Oxford, middle of the range',
        given: 86.5,
        computed: () =>
          daysToHarvest({
            place: 'Oxford UK',
            crop: 'Cauliflower',
            start: 'cells',
            date: '2027-07-15',
            weeksRaised: 6,
          }),
        tolerance: 19.5,
        off: { upTo: 25, why: 'a cultivar of summer and autumn; the crop of the library is an early one' },
      },
    ],
  },
  ...florida,
  {
    kind: 'published',
    fact: 'days from sowing to the first cucumbers in North Carolina',
    unit: 'd',
    source: CAROLINA,
    at: 'harvesting: 36 to 40 days in late spring and early summer',
    points: [
      {
        what: 'sown 25 May at Raleigh, middle of the range',
        given: 38,
        computed: () =>
          daysToHarvest({ place: 'Raleigh NC', crop: 'Cucumber', start: 'direct seed', date: '2027-05-25' }),
        tolerance: 2,
        off: { upTo: 9, why: 'pickling kinds are picked a week younger than those of the library' },
      },
    ],
  },
  {
    kind: 'published',
    fact: 'days by which tomatoes of a tunnel come before those of the field',
    unit: 'd',
    source: OCONNELL,
    at: 'abstract: harvest three weeks earlier from a tunnel planted a month before the field, North Carolina',
    points: [
      {
        what: 'tunnel set 25 March, field 25 April, Raleigh',
        given: 21,
        computed: () => {
          const harvest = (date: string, cover: string): number =>
            asked({
              place: 'Raleigh NC',
              crop: 'Tomato',
              start: 'cells',
              date,
              weeksRaised: 6,
              planting: { Cover: cover },
            }).day('Harvest');
          return harvest('2027-04-25', 'none') - harvest('2027-03-25', 'tunnel');
        },
        tolerance: 7, // whole weeks printed
      },
    ],
  },
];
