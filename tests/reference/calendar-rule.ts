// The rule by which the workbook tells when a bed is warm enough (engine/agronomy/planting-season.ts), fitted anew to all places
// but one and tried there: its constants were fitted to these calendars, so only so do they test it. Called by the checks.

import { type CourseOfYear, courseOfYear, warmSpan } from '../../engine/agronomy/course-of-year.ts';
import { dailyFromMonthlyMeans } from '../../engine/agronomy/monthly-means.ts';
import {
  BED_LAG,
  COOL_SUMMER_MARGIN,
  type StartPoint,
  startTemperature,
} from '../../engine/agronomy/planting-season.ts';
import { civilDay, yearMonthDay } from '../../engine/index.ts';
import { seasonOf } from '../sheets/season.ts';
import { daysAfter, daysLate, monthsOf, PLACES, type Told } from './calendars.ts';

const courses = new Map<string, CourseOfYear>();

/** Smooth daily means of a place. */
function courseAt(place: string): CourseOfYear {
  const known = courses.get(place);
  if (known !== undefined) return known;
  const degrees = (text: string | undefined): number => Number((text ?? '').replace(' degC', ''));
  const means = monthsOf(place).map(({ Low, High }) => (degrees(Low) + degrees(High)) / 2);
  const course = courseOfYear(dailyFromMonthlyMeans(means));
  if (course === undefined) throw new Error(`${place} lacks a month`);
  courses.set(place, course);
  return course;
}

const library = seasonOf({}, { Latitude: '' }, { units: 'si' });

/** Weeks from the average last frost at which calendars start the crop, by the library. */
function weeksOf({ crop, start }: Told): number {
  const columns = ['Sow outdoors from last frost', 'Plant out from last frost'] as const;
  const [first, second] = start === 'direct seed' ? columns : ([columns[1], columns[0]] as const);
  return library.number('Crops', crop, first) ?? library.number('Crops', crop, second) ?? Number.NaN;
}

/** Days late of a printed date by the rule with these points; frost as the workbook has it. */
function lateBy(row: Told, points: readonly StartPoint[]): number {
  const course = courseAt(row.place);
  const weeks = weeksOf(row);
  const warmest = course.values[course.warmest] ?? Number.NaN;
  const span = warmSpan(course, Math.min(startTemperature(weeks, points), warmest - COOL_SUMMER_MARGIN));
  const follows = Math.round(BED_LAG.days * Math.max(0, Math.min(1, weeks / BED_LAG.weeks)));
  const newYear = civilDay(yearMonthDay(row.published).year, 1, 1);
  const days: number[] = [];
  if (typeof span !== 'string') days.push(newYear + course.warmest + span.from + follows);
  if (!Number.isNaN(row.frost)) days.push(row.frost);
  if (days.length === 0) return Number.NaN;
  const latest = Math.max(...days.map((day) => daysAfter(day, row.published)));
  return daysLate(row.published + latest, row.published, row.grain);
}

/** Points tried: steps of half a degree for hardy crops, of a degree for tender ones. */
const TRIED: readonly (readonly StartPoint[])[] = [5, 5.5, 6, 6.5, 7, 7.5].flatMap((early) =>
  [6, 6.5, 7, 7.5, 8, 8.5, 9]
    .filter((later) => later >= early)
    .flatMap((later) =>
      [13, 14, 15, 16].map((tender) => [
        { weeks: -6, mean: early },
        { weeks: -3, mean: later },
        { weeks: 0, mean: tender },
        { weeks: 1, mean: tender + 1.5 },
        { weeks: 2, mean: tender + 3 },
      ]),
    ),
);

/** Errors beyond this count the same: one odd custom must not bend the rule. */
const FAR = 40;

/** Mean error of a place's rows by points tried. */
function misfitAt(rows: readonly Told[], place: string, points: readonly StartPoint[]): number {
  const errors = rows
    .filter((row) => row.place === place)
    .map((row) => Math.abs(lateBy(row, points)))
    .map((late) => (Number.isNaN(late) ? FAR : Math.min(FAR, late)));
  return errors.length === 0 ? 0 : errors.reduce((sum, error) => sum + error, 0) / errors.length;
}

/** Days late of every earliest date by the rule of the other places, in the order of the rows. */
export function toldByOthers(rows: readonly Told[]): readonly number[] {
  const pointsOf = new Map<string, readonly StartPoint[]>();
  const each = TRIED.map((points) => ({
    points,
    byPlace: new Map(PLACES.map((place) => [place, misfitAt(rows, place, points)])),
  }));
  for (const left of PLACES) {
    const others = PLACES.filter((place) => place !== left);
    const total = ({ byPlace }: (typeof each)[number]): number =>
      others.reduce((sum, place) => sum + (byPlace.get(place) ?? 0), 0);
    const best = each.reduce((a, b) => (total(b) < total(a) ? b : a));
    pointsOf.set(left, best.points);
  }
  return rows.map((row) => lateBy(row, pointsOf.get(row.place) ?? []));
}
