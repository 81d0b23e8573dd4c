// Frost dates, degree-days and average years against a NOAA station table and four years of a NOAA station's readings,
// the latter worked out a second time by a spreadsheet library.
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
import type { Check } from './check.ts';

const NOAA_TABLE = 'NOAA freeze probabilities of one station: last spring freeze at 20 to 36 F';

type MonthAndDay = readonly [number, number];

// Chance of a later freeze 10, 20 ... 90 %.
const LAST_SPRING_FREEZES: readonly (readonly [string, readonly MonthAndDay[]])[] = [
  [
    '20 F',
    [
      [2, 28],
      [2, 20],
      [2, 13],
      [2, 8],
      [2, 2],
      [1, 28],
      [1, 22],
      [1, 15],
      [1, 5],
    ],
  ],
  [
    '24 F',
    [
      [3, 24],
      [3, 14],
      [3, 7],
      [2, 28],
      [2, 23],
      [2, 17],
      [2, 11],
      [2, 3],
      [1, 24],
    ],
  ],
  [
    '28 F',
    [
      [4, 8],
      [4, 1],
      [3, 26],
      [3, 21],
      [3, 16],
      [3, 12],
      [3, 7],
      [3, 1],
      [2, 21],
    ],
  ],
  [
    '32 F',
    [
      [4, 22],
      [4, 15],
      [4, 10],
      [4, 6],
      [4, 2],
      [3, 30],
      [3, 25],
      [3, 21],
      [3, 14],
    ],
  ],
  [
    '36 F',
    [
      [5, 10],
      [5, 5],
      [5, 1],
      [4, 27],
      [4, 24],
      [4, 20],
      [4, 17],
      [4, 13],
      [4, 7],
    ],
  ],
];

const LEVELS = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];

// The fit sees the 10, 50 and 90 % dates; the six others are told from it.
const noaa = LAST_SPRING_FREEZES.flatMap(([threshold, dates]): readonly Check[] => {
  const numbers = dates.map(([month, day]) => dayOfYear(civilDay(2023, month, day)));
  const levels = LEVELS.map((chance, i) => ({ chance, day: numbers[i] ?? Number.NaN }));
  const fit = fitFrostLevels(levels.filter((_, i) => i % 4 === 0));
  return levels
    .filter((_, i) => i % 4 !== 0)
    .map(
      ({ chance, day }): Check => ({
        source: NOAA_TABLE,
        what: `date with a ${chance * 100} % chance of a later ${threshold}, from the 10, 50 and 90 % dates`,
        unit: 'day of year',
        published: day,
        computed: () => springDateAtRisk(fit, chance),
        tolerance: 1.5, // the dates are printed to the day, those fitted and the one told
        standing: 'published',
      }),
    );
});

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
const SEATTLE = 'vega-datasets, seattle-weather.csv (NOAA, 2012-2015), worked out by HyperFormula 3';

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
  ([pick, letter, month, day]): Check => ({
    source: SEATTLE,
    what: `mean of the ${pick} of day ${day} of month ${month}`,
    unit: 'C',
    published: spreadsheet(`=SUMIFS(${column(letter)},${column('B')},${month},${column('C')},${day})/4`),
    computed: () => fromAverage(pick, month, day),
    tolerance: 1e-9,
    standing: 'dataset',
  }),
);

const sums = YEARS.map(
  (year): Check => ({
    source: SEATTLE,
    what: `degree-days above 10 C in ${year}`,
    unit: 'C d',
    published: spreadsheet(
      `=SUMPRODUCT((${column('A')}=${year})*((${column('D')}+${column('E')})/2>10)*((${column('D')}+${column('E')})/2-10))`,
    ),
    computed: () =>
      rows.reduce(
        (sum, row) => (yearMonthDay(row.day).year === year ? sum + degreeDays(row.low, row.high, 10) : sum),
        0,
      ),
    tolerance: 1e-7,
    standing: 'dataset',
  }),
);

const capped: Check = {
  source: SEATTLE,
  what: 'degree-days between 6 and 20 C in 2015',
  unit: 'C d',
  published: spreadsheet(
    `=SUMPRODUCT((${column('A')}=2015)*((${column('D')}+${column('E')})/2>6)*((${column('D')}+${column('E')})/2-6))-SUMPRODUCT((${column('A')}=2015)*((${column('D')}+${column('E')})/2>20)*((${column('D')}+${column('E')})/2-20))`,
  ),
  computed: () =>
    rows.reduce(
      (sum, row) => (yearMonthDay(row.day).year === 2015 ? sum + degreeDays(row.low, row.high, 6, 20) : sum),
      0,
    ),
  tolerance: 1e-7,
  standing: 'dataset',
};

const years = frostYears(days, lows, 0, false);
const springNumbers = years.map(({ lastSpring, year }) => dayNumberOf(lastSpring, year));
const lastFrostOf = (year: number): string =>
  `MAXIFS(${column('F')},${column('A')},${year},${column('B')},"<8",${column('D')},"<=0")`;
const firstFrostOf = (year: number): string =>
  `MINIFS(${column('F')},${column('A')},${year},${column('B')},">7",${column('D')},"<=0")`;
const lastFrostNumbers = YEARS.map((year) => spreadsheet(`=${lastFrostOf(year)}`) - civilDay(year, 1, 1) + 1);

const frosts: readonly Check[] = [
  ...YEARS.flatMap((year, i): readonly Check[] => [
    {
      source: SEATTLE,
      what: `last spring low at or below 0 C in ${year}`,
      unit: 'day of year',
      published: spreadsheet(`=${lastFrostOf(year)}`) - civilDay(year, 1, 1) + 1,
      computed: () => springNumbers[i] ?? Number.NaN,
      tolerance: 0,
      standing: 'dataset',
    },
    {
      source: SEATTLE,
      what: `first autumn low at or below 0 C in ${year}`,
      unit: 'day of year',
      published: spreadsheet(`=${firstFrostOf(year)}`) - civilDay(year, 1, 1) + 1,
      computed: () => dayNumberOf(years[i]?.firstAutumn ?? Number.NaN, year),
      tolerance: 0,
      standing: 'dataset',
    },
  ]),
  {
    source: SEATTLE,
    what: 'last spring frost at a 10 % risk of a later one, normal distribution of four years',
    unit: 'day of year',
    published: spreadsheet(
      `=NORM.INV(0.9,AVERAGE(${lastFrostNumbers.join(',')}),STDEV.S(${lastFrostNumbers.join(',')}))`,
    ),
    computed: () => springDateAtRisk(fitFrostDates(springNumbers), 0.1),
    tolerance: 1e-6,
    standing: 'dataset',
  },
];

export const checks: readonly Check[] = [...noaa, ...averages, ...sums, capped, ...frosts];
