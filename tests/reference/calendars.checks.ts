// Sowing, setting-out and harvest dates that extension services and growers print, beside those the season workbook gives there
// from monthly normals alone: a fact for each crop of each printed calendar. The rule of the earliest dates was fitted to such
// calendars, so each place is told by the rule fitted to the others (calendar-rule.ts). Rows that lie farther off than three weeks,
// or a harvest than its window and two weeks, stand in data/calendars-off.csv with their error and its reason. Shares over all
// rows, those of unnamed pages with them, are held by calendars.test.ts; `npm run checks` prints every row (calendar-lines.ts).

import { isoDate } from '../../engine/index.ts';
import { CALENDARS } from './calendar-publications.ts';
import { toldByOthers } from './calendar-rule.ts';
import { autumn, type Cut, earliest, harvests, latest, type Told } from './calendars.ts';
import type { Fact, Point } from './check.ts';
import { numberOf, readTable, textOf } from './table.ts';

const THREE_WEEKS = 21;
const GRACE = 14;
/** Days off of a row for which the workbook gives no date at all. */
const NEVER = 365;

export interface Off {
  readonly upTo: number;
  readonly why: string;
}

/** Rows known to be off, by toldName and cutName. */
export const CALENDARS_OFF: ReadonlyMap<string, Off> = new Map(
  readTable('calendars-off').map((row) => [
    ['kind', 'source', 'place', 'crop', 'start', 'date'].map((header) => textOf(row, header)).join(' | '),
    { upTo: numberOf(row, 'up_to'), why: textOf(row, 'why') },
  ]),
);

/** 'May 3' as '05-03'. */
export function shortDate(day: number): string {
  return Number.isNaN(day) ? 'none' : isoDate(day).slice(5);
}

/** What a row of a calendar is called in the list of those that are off. */
export function toldName(row: Told): string {
  return [row.kind, row.source, row.place, row.crop, row.start, shortDate(row.published)].join(' | ');
}

/** And a harvest of one: by the date in the bed and the begin of the printed window. */
export function cutName(cut: Cut): string {
  const dates = `${shortDate(cut.plantedOut)} for ${shortDate(cut.from)}`;
  return ['harvest', cut.source, cut.place, cut.crop, cut.start, dates].join(' | ');
}

interface Row {
  readonly source: string;
  readonly place: string;
  readonly crop: string;
  readonly point: Point;
}

function pointOf(name: string, what: string, days: number, tolerance: number): Point {
  const off = CALENDARS_OFF.get(name);
  const found = Number.isNaN(days) ? NEVER : days;
  return { what, given: 0, computed: () => found, tolerance, ...(off === undefined ? {} : { off }) };
}

const KINDS: Readonly<Record<string, string>> = {
  earliest: 'in the bed from',
  autumn: 'autumn crop in the bed from',
  latest: 'in the bed until',
};

function ofTold(row: Told, late: number): Row {
  const { source, place, crop, kind, start, published } = row;
  const by = kind === 'earliest' ? ', by the rule of the other places' : '';
  const what = `${start}, ${KINDS[kind] ?? kind} ${shortDate(published)}${by}; days late`;
  return { source, place, crop, point: pointOf(toldName(row), what, late, THREE_WEEKS) };
}

function ofCut(row: Cut): Row {
  const { source, place, crop, start, plantedOut, from, to, outside } = row;
  const until = Number.isNaN(to) ? 'on' : `to ${shortDate(to)}`;
  const what = `${start} in the bed ${shortDate(plantedOut)}, cut from ${shortDate(from)} ${until}; days outside`;
  return { source, place, crop, point: pointOf(cutName(row), what, outside, GRACE) };
}

const spring = earliest();
const others = toldByOthers(spring);

const rows: readonly Row[] = [
  ...spring.map((row, index) => ofTold(row, others[index] ?? Number.NaN)),
  ...[...autumn(), ...latest()].map((row) => ofTold(row, row.late)),
  ...harvests().map(ofCut),
];

/** The points of a crop of a calendar, each once: two lines may print the same date. */
function pointsOf(own: readonly Row[]): readonly Point[] {
  return [...new Map(own.map(({ point }) => [point.what, point])).values()];
}

export const facts: readonly Fact[] = Object.entries(CALENDARS).flatMap(([key, { source, at }]) => {
  const ofSource = rows.filter((row) => row.source === key);
  const names = [...new Set(ofSource.map(({ place, crop }) => `${place}: ${crop}`))];
  return names.map(
    (name): Fact => ({
      kind: 'published',
      fact: `dates of ${name} (${key})`,
      unit: 'd',
      source,
      at,
      points: pointsOf(ofSource.filter(({ place, crop }) => `${place}: ${crop}` === name)),
    }),
  );
});
