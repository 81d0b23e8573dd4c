// Sowing, setting-out and harvest dates that extension services and growers print, beside those the season workbook gives there
// from monthly normals alone. Rows that lie farther off than three weeks are named with their reason and stand in the shares
// over all rows; `calendarLines` prints the error of each.

import { type CourseOfYear, courseOfYear, warmSpan } from '../../engine/agronomy/course-of-year.ts';
import { dailyFromMonthlyMeans } from '../../engine/agronomy/monthly-means.ts';
import { COOL_SUMMER_MARGIN, START_POINTS, startTemperature } from '../../engine/agronomy/planting-season.ts';
import { civilDay, civilDayOfIso, isoDate, yearMonthDay } from '../../engine/index.ts';
import { seasonOf } from '../sheets/season.ts';
import {
  autumn,
  type Cut,
  daysAfter,
  earliest,
  harvests,
  latest,
  latitudeOf,
  median,
  monthsOf,
  PLACES,
  shareWithin,
  type Told,
} from './calendars.ts';
import type { Check } from './check.ts';
import { readTable, textOf } from './table.ts';

const THREE_WEEKS = 21;
const GRACE = 14;

/** Rows beyond three weeks or outside the window with its grace, each with why. */
const BEYOND: Readonly<Record<string, string>> = {
  'earliest Oxford UK Beet direct seed': 'gardeners print the month of March; the rule of cool places is later',
  'earliest Oxford UK Kale cells': 'set out in June for winter, though it could go in from March',
  'earliest Oxford UK Cabbage cells': 'hardened spring cabbage goes in a month before the bed is warm',
  'earliest Oxford UK Cauliflower cells': 'early summer cauliflower goes in before the bed is warm',
  'earliest Oxford UK Onion, bulb direct seed': 'sown in February to lie in cold soil',
  'earliest Oxford UK Radish direct seed': 'gardeners print the month of March',
  'earliest Oxford UK Salad turnip direct seed': 'gardeners print the month of March',
  'earliest Christchurch NZ Onion, bulb direct seed':
    'drilled in September by custom, though the bed is warm in August',
  'earliest Christchurch NZ Carrot direct seed': 'a community garden finds September too early',
};

function nameOf(row: Told): string {
  return `${row.kind} ${row.place} ${row.crop} ${row.start}`;
}

const spring = earliest();
const fall = autumn();
const last = latest();
const cuts = harvests();

function shortDate(day: number): string {
  return Number.isNaN(day) ? 'none' : isoDate(day).slice(5);
}

const rowChecks = spring
  .filter((row) => !(nameOf(row) in BEYOND))
  .map(
    (row): Check => ({
      source: row.source,
      what: `${row.place}: ${row.crop}, ${row.start}, earliest in the bed ${shortDate(row.published)}; days the workbook is late`,
      unit: 'd',
      published: 0,
      computed: () => row.late,
      tolerance: THREE_WEEKS,
      standing: 'published',
    }),
  );

const ALL = 'All calendars of these checks, by place and crop';

function over(what: string, unit: string, published: number, computed: () => number, tolerance: number): Check {
  return { source: ALL, what, unit, published, computed, tolerance, standing: 'published' };
}

function lates(rows: readonly Told[]): readonly number[] {
  return rows.map(({ late }) => (Number.isNaN(late) ? 365 : late));
}

const sizes = (rows: readonly Told[]): readonly number[] => lates(rows).map(Math.abs);

const shares: readonly Check[] = [
  over(`median error of ${spring.length} earliest dates in the bed`, 'd', 0, () => median(sizes(spring)), 10),
  over(
    'earliest dates in the bed within three weeks',
    '%',
    100,
    () => 100 * shareWithin(lates(spring), THREE_WEEKS),
    15,
  ),
  over(`median error of ${last.length} latest dates in the bed`, 'd', 0, () => median(sizes(last)), 14),
  over('latest dates in the bed within three weeks', '%', 100, () => 100 * shareWithin(lates(last), THREE_WEEKS), 25),
  over(
    `median error of ${fall.length} earliest dates of the autumn crop at 36 north`,
    'd',
    0,
    () => median(sizes(fall)),
    21,
  ),
  over(
    `first harvests in the printed window with ${GRACE} days' grace, of ${cuts.length}`,
    '%',
    100,
    () =>
      100 *
      shareWithin(
        cuts.map(({ outside }) => (Number.isNaN(outside) ? 365 : outside)),
        GRACE,
      ),
    20,
  ),
  ...PLACES.filter((place) => spring.some((row) => row.place === place)).map((place) =>
    over(
      `${place}: median error of the earliest dates in the bed`,
      'd',
      0,
      () => median(sizes(spring.filter((row) => row.place === place))),
      20,
    ),
  ),
];

const harvestChecks = cuts
  .filter(({ outside }) => outside <= GRACE)
  .map(
    (cut): Check => ({
      source: cut.source,
      what: `${cut.place}: ${cut.crop}, ${cut.start}, in the bed ${shortDate(cut.plantedOut)}, cut ${shortDate(cut.from)} to ${shortDate(cut.to)}; days outside`,
      unit: 'd',
      published: 0,
      computed: () => cut.outside,
      tolerance: GRACE,
      standing: 'published',
    }),
  );

/** Smooth daily means of a place and the weeks from last frost at which its crops start, for the rule alone. */
function courseAt(place: string): CourseOfYear {
  const degrees = (text: string | undefined): number => Number((text ?? '').replace(' degC', ''));
  const means = monthsOf(place).map(({ Low, High }) => (degrees(Low) + degrees(High)) / 2);
  const course = courseOfYear(dailyFromMonthlyMeans(means));
  if (course === undefined) throw new Error(`${place} lacks a month`);
  return course;
}

const library = seasonOf({}, { Latitude: '' }, { units: 'si' });

function weeksOf(row: Told): number {
  const column = row.start === 'direct seed' ? 'Sow outdoors from last frost' : 'Plant out from last frost';
  const other = row.start === 'direct seed' ? 'Plant out from last frost' : 'Sow outdoors from last frost';
  return library.number('Crops', row.crop, column) ?? library.number('Crops', row.crop, other) ?? Number.NaN;
}

/** The nearest point of the rule to the weeks at which calendars start a crop. */
function pointOf(weeks: number): number {
  return START_POINTS.reduce(
    (best, { weeks: at }, index) =>
      Math.abs(at - weeks) < Math.abs((START_POINTS[best]?.weeks ?? Number.NaN) - weeks) ? index : best,
    0,
  );
}

/** Mean temperature on the printed date. */
function meanOn(row: Told): number {
  const { year } = yearMonthDay(row.published);
  return courseAt(row.place).values[Math.min(364, row.published - civilDay(year, 1, 1))] ?? Number.NaN;
}

/** Where summers are cool the date goes by the summer, and says nothing of the crop. */
function goesBySummer(row: Told): boolean {
  const { values, warmest } = courseAt(row.place);
  return startTemperature(weeksOf(row)) > (values[warmest] ?? Number.NaN) - COOL_SUMMER_MARGIN;
}

/** Days late of a place's earliest dates by the rule with its temperatures taken from the other places alone. */
function leftOut(place: string): readonly number[] {
  const others = spring.filter((row) => row.place !== place && !goesBySummer(row));
  const points = START_POINTS.map(({ weeks, mean }, index) => {
    const seen = others.filter((row) => pointOf(weeksOf(row)) === index);
    return { weeks, mean: seen.length > 0 ? median(seen.map(meanOn)) : mean };
  });
  const course = courseAt(place);
  const warmest = course.values[course.warmest] ?? Number.NaN;
  return spring
    .filter((row) => row.place === place)
    .map((row) => {
      const wanted = Math.min(startTemperature(weeksOf(row), points), warmest - COOL_SUMMER_MARGIN);
      const span = warmSpan(course, wanted);
      const from = typeof span === 'string' ? Number.NaN : course.warmest + span.from;
      const warm = daysAfter(civilDay(yearMonthDay(row.published).year, 1, 1) + from, row.published);
      return Math.max(warm, Number.isNaN(row.frost) ? warm : daysAfter(row.frost, row.published));
    });
}

const crossed = (): readonly number[] => PLACES.flatMap(leftOut);

const crossChecks: readonly Check[] = [
  over(
    'median error of the earliest dates with the rule fitted to the other places alone',
    'd',
    0,
    () => median(crossed().map(Math.abs)),
    10,
  ),
  over(
    'share within three weeks with the rule fitted to the other places alone',
    '%',
    100,
    () => 100 * shareWithin(crossed(), THREE_WEEKS),
    20,
  ),
];

const frostChecks = readTable('place-frosts')
  .filter((row) => textOf(row, 'chance') !== '10%')
  .map((row): Check => {
    const place = textOf(row, 'place');
    const column = textOf(row, 'event') === 'last_spring' ? 'Average last frost' : 'Average first frost';
    const printed = civilDayOfIso(`2027-${textOf(row, 'date')}`) ?? Number.NaN;
    return {
      source: textOf(row, 'source'),
      what: `${place}: ${column.toLowerCase()}, ${textOf(row, 'date')}, told from the monthly mean lows alone; days late`,
      unit: 'd',
      published: 0,
      computed: () => {
        const season = seasonOf({ 'Monthly climate': monthsOf(place) }, { Latitude: String(latitudeOf(place)) });
        return daysAfter(Number(season.value('Farm', '', column)), printed);
      },
      tolerance: THREE_WEEKS,
      standing: 'published',
    };
  });

interface GarlicFact {
  readonly place: string;
  readonly source: string;
  readonly column: string;
  readonly what: string;
  readonly date: string;
  readonly tolerance: number;
}

const GARLIC: readonly GarlicFact[] = [
  {
    place: 'Finger Lakes NY',
    source:
      'Ontario garlic growers and Ministry of Agriculture (onvegetables.com 2024): planted in autumn, harvested in July, 43 N',
    column: 'Harvest',
    what: 'harvest, the middle of July',
    date: '07-16',
    tolerance: 15,
  },
  {
    place: 'Finger Lakes NY',
    source: 'Dawling 2016, Growing for Market: planting garlic, New Hampshire in mid-October',
    column: 'Earliest in the bed',
    what: 'planting opens, mid-October in New Hampshire at the same latitude',
    date: '10-15',
    tolerance: 14,
  },
  {
    place: 'Raleigh NC',
    source: 'Dawling 2016, Growing for Market: planting garlic, Virginia zone 7a in early November',
    column: 'Earliest in the bed',
    what: 'planting opens, early November in the Virginia piedmont',
    date: '11-05',
    tolerance: 14,
  },
  {
    place: 'Oxford UK',
    source: 'UK exhibition growers, A Year in the Vegetable Garden: garlic in October',
    column: 'Earliest in the bed',
    what: 'planting opens, October',
    date: '10-15',
    tolerance: 16,
  },
];

const garlicChecks = GARLIC.map(
  ({ place, source, column, what, date, tolerance }): Check => ({
    source,
    what: `${place}: garlic, ${what}; days late`,
    unit: 'd',
    published: 0,
    computed: () => {
      const season = seasonOf(
        {
          'Monthly climate': monthsOf(place),
          Varieties: [{ Variety: 'Garlic', Crop: 'Garlic' }],
          Plantings: [{ Planting: 'Garlic', Variety: 'Garlic', Sown: '2026-10-20' }],
        },
        { Latitude: String(latitudeOf(place)) },
      );
      const told = season.value('Plantings', 'Garlic', column);
      return daysAfter(Number(told), civilDayOfIso(`2027-${date}`) ?? Number.NaN);
    },
    tolerance,
    standing: 'published',
  }),
);

export const checks: readonly Check[] = [
  ...shares,
  ...crossChecks,
  ...frostChecks,
  ...garlicChecks,
  ...rowChecks,
  ...harvestChecks,
];

function ofTold(row: Told): string {
  const off = BEYOND[nameOf(row)];
  const days = Number.isNaN(row.late) ? 'no date' : `${row.late > 0 ? '+' : ''}${Math.round(row.late)} d`;
  return `${row.place} | ${row.kind} | ${row.crop}, ${row.start} | ${shortDate(row.published)} | ${shortDate(row.computed)} | ${days}${off === undefined ? '' : ` | ${off}`}`;
}

function ofCut(cut: Cut): string {
  const days = Number.isNaN(cut.outside) ? 'no harvest' : `${Math.round(cut.outside)} d outside`;
  return `${cut.place} | harvest | ${cut.crop}, ${cut.start}, in the bed ${shortDate(cut.plantedOut)} | ${shortDate(cut.from)} to ${shortDate(cut.to)} | ${shortDate(cut.harvest)} | ${days}`;
}

/** Every printed date beside the one told, its error in days and, where it is off, why: for the printed table. */
export function calendarLines(): readonly string[] {
  return [
    'Place | what | crop | printed | told | error',
    ...[...spring, ...fall, ...last].map(ofTold),
    ...cuts.map(ofCut),
  ];
}
