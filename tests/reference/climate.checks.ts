// Frost dates, degree-days and average years: published chances of frost, and four years of a NOAA station's readings worked out a
// second time by a spreadsheet library.
import { readFileSync } from 'node:fs';
import { HyperFormula } from 'hyperformula';
import { averageYear, calendarIndex } from '../../engine/agronomy/climate.ts';
import {
  dayNumberOf,
  fitFrostDates,
  fitFrostLevels,
  frostYears,
  springDateAtRisk,
} from '../../engine/agronomy/frost.ts';
import { degreeDays } from '../../engine/agronomy/thermal-time.ts';
import { civilDay, civilDayOfIso, dayOfYear, yearMonthDay } from '../../engine/values/civil.ts';
import type { Fact, Point, Publication } from './check.ts';
import { FREEZE_NORMALS, SEATTLE } from './publications.ts';

const MADISON: Publication = {
  author: 'Wisconsin State Climatology Office',
  year: 'undated, of the years 1981 to 2010',
  title:
    'Last spring freeze at Madison, quoted in the weather column of the Department of Atmospheric and Oceanic Sciences',
  publisher: 'University of Wisconsin-Madison',
};

type MonthAndDay = readonly [month: number, day: number];

const dayNumber = ([month, day]: MonthAndDay): number => dayOfYear(civilDay(2023, month, day));

/** Dates told from a normal distribution fitted to the others of the same line. */
function told(
  what: string,
  fitted: readonly (readonly [chance: number, date: MonthAndDay])[],
  asked: readonly (readonly [chance: number, date: MonthAndDay])[],
): readonly Point[] {
  const fit = fitFrostLevels(fitted.map(([chance, date]) => ({ chance, day: dayNumber(date) })));
  return asked.map(([chance, date]) => ({
    what: `${what}, chance of ${Math.round(chance * 100)} % that it comes later`,
    given: dayNumber(date),
    computed: () => springDateAtRisk(fit, chance),
    tolerance: 1.5, // the dates are printed to the day, those fitted and the one told
  }));
}

// vega-datasets, seattle-weather.csv: NOAA daily readings of 2012 to 2015.
const file = new URL('../../node_modules/vega-datasets/data/seattle-weather.csv', import.meta.url);
const rows = readFileSync(file, 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => {
    const [date = '', , high = '', low = ''] = line.split(',');
    return { day: civilDayOfIso(date) ?? Number.NaN, high: Number(high), low: Number(low) };
  });
const days = rows.map((row) => row.day);
const lows = rows.map((row) => row.low);
const highs = rows.map((row) => row.high);

// A sheet with the readings: A year, B month, C day of month, D low, E high, F civil day.
const table = rows.map(({ day, low, high }) => {
  const date = yearMonthDay(day);
  return [date.year, date.month, date.day, low, high, day];
});
const sheet = HyperFormula.buildFromArray(table, { licenseKey: 'gpl-v3', useArrayArithmetic: true });
const last = table.length;
const column = (letter: string): string => `${letter}1:${letter}${last}`;

function spreadsheet(formula: string): number {
  const answer = sheet.calculateFormula(formula, 0);
  if (typeof answer !== 'number') throw new Error(`the library gave no number for ${formula}`);
  return answer;
}

const average = averageYear({ days, lows, highs });
const fromAverage = (pick: 'lows' | 'highs', month: number, day: number): number =>
  average?.[pick][calendarIndex(civilDay(2023, month, day))] ?? Number.NaN;

const YEARS = [2012, 2013, 2014, 2015];

const averages = (
  [
    ['lows', 'D', 1, 1],
    ['highs', 'E', 3, 15],
    ['lows', 'D', 7, 4],
    ['highs', 'E', 8, 11],
    ['highs', 'E', 12, 31],
  ] as const
).map(
  ([pick, letter, month, day]): Point => ({
    what: `the ${pick} of day ${day} of month ${month}`,
    given: spreadsheet(`=SUMIFS(${column(letter)},${column('B')},${month},${column('C')},${day})/4`),
    computed: () => fromAverage(pick, month, day),
    tolerance: 1e-9,
  }),
);

const above = (year: number, base: number): string =>
  `SUMPRODUCT((${column('A')}=${year})*((${column('D')}+${column('E')})/2>${base})*((${column('D')}+${column('E')})/2-${base}))`;

const summed = (wanted: number, base: number, ceiling?: number): number =>
  rows.reduce(
    (sum, { day, low, high }) => (yearMonthDay(day).year === wanted ? sum + degreeDays(low, high, base, ceiling) : sum),
    0,
  );

const years = frostYears(days, lows, 0, false);
const springNumbers = years.map(({ lastSpring, year }) => dayNumberOf(lastSpring, year));
const lastFrostOf = (year: number): string =>
  `MAXIFS(${column('F')},${column('A')},${year},${column('B')},"<8",${column('D')},"<=0")`;
const firstFrostOf = (year: number): string =>
  `MINIFS(${column('F')},${column('A')},${year},${column('B')},">7",${column('D')},"<=0")`;
const lastFrostNumbers = YEARS.map((year) => spreadsheet(`=${lastFrostOf(year)}`) - civilDay(year, 1, 1) + 1);

const SHEET = (call: string) => ({ name: 'HyperFormula', version: '3.5.0', call });

export const facts: readonly Fact[] = [
  {
    kind: 'published',
    fact: 'first autumn freeze at Raleigh by its chances',
    unit: 'day of year',
    source: FREEZE_NORMALS,
    at: 'station Raleigh State University, North Carolina, 32 F; the 10, 50 and 90 % dates tell the others',
    points: told(
      'first 32 F',
      [
        [0.9, [10, 22]],
        [0.5, [11, 8]],
        [0.1, [11, 25]],
      ],
      [
        [0.8, [10, 28]],
        [0.2, [11, 19]],
      ],
    ),
  },
  {
    kind: 'published',
    fact: 'last spring frost at Raleigh by its chances',
    unit: 'day of year',
    source: FREEZE_NORMALS,
    at: 'station Raleigh State University, North Carolina, 36 F; the 10 and 50 % dates tell the 80 % date',
    points: told(
      'last 36 F',
      [
        [0.1, [4, 26]],
        [0.5, [4, 12]],
      ],
      [[0.8, [4, 3]]],
    ),
  },
  {
    kind: 'published',
    fact: 'last spring freeze at Madison by its chances',
    unit: 'day of year',
    source: MADISON,
    at: '32 F; the 10 and 90 % dates tell the middle',
    points: told(
      'last 32 F',
      [
        [0.1, [5, 20]],
        [0.9, [4, 18]],
      ],
      [[0.5, [5, 2]]],
    ).map((point) => ({
      ...point,
      off: { upTo: 2.5, why: 'late frosts reach further from the middle there than early ones' },
    })),
  },
  {
    kind: 'library',
    fact: 'mean low and high of a day over the years',
    unit: 'C',
    program: SHEET('SUMIFS'),
    data: SEATTLE,
    points: averages,
  },
  {
    kind: 'library',
    fact: 'degree-days of a year above a base, and below a ceiling',
    unit: 'C d',
    program: SHEET('SUMPRODUCT'),
    data: SEATTLE,
    points: [
      ...YEARS.map((year) => ({
        what: `above 10 C in ${year}`,
        given: spreadsheet(`=${above(year, 10)}`),
        computed: () => summed(year, 10),
        tolerance: 1e-7,
      })),
      {
        what: 'between 6 and 20 C in 2015',
        given: spreadsheet(`=${above(2015, 6)}-${above(2015, 20)}`),
        computed: () => summed(2015, 6, 20),
        tolerance: 1e-7,
      },
    ],
  },
  {
    kind: 'library',
    fact: 'last spring and first autumn frost of a year',
    unit: 'day of year',
    program: SHEET('MAXIFS, MINIFS'),
    data: SEATTLE,
    points: YEARS.flatMap((year, i) => [
      {
        what: `last spring low at or below 0 C in ${year}`,
        given: spreadsheet(`=${lastFrostOf(year)}`) - civilDay(year, 1, 1) + 1,
        computed: () => springNumbers[i] ?? Number.NaN,
        tolerance: 0,
      },
      {
        what: `first autumn low at or below 0 C in ${year}`,
        given: spreadsheet(`=${firstFrostOf(year)}`) - civilDay(year, 1, 1) + 1,
        computed: () => dayNumberOf(years[i]?.firstAutumn ?? Number.NaN, year),
        tolerance: 0,
      },
    ]),
  },
  {
    kind: 'library',
    fact: 'last spring frost at a risk, by a normal distribution of the years',
    unit: 'day of year',
    program: SHEET('NORM.INV of AVERAGE and STDEV.S'),
    data: SEATTLE,
    points: [
      {
        what: '10 % risk of a later one, four years',
        given: spreadsheet(
          `=NORM.INV(0.9,AVERAGE(${lastFrostNumbers.join(',')}),STDEV.S(${lastFrostNumbers.join(',')}))`,
        ),
        computed: () => springDateAtRisk(fitFrostDates(springNumbers), 0.1),
        tolerance: 1e-6,
      },
    ],
  },
];
