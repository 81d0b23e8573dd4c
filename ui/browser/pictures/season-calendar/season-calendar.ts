// The season calendar's model: every bed a line, every planting a bar from the day it goes in until the bed is free again, what is
// free, and where more stands than there is room. Lengths in metres, days as civil days, a last day not counted. Pure: from
// the engine's queries to what is drawn; the picture, the glance and the tests call it.

import {
  type Book,
  cellValue,
  rowId,
  rowName,
  rows,
  rowWithId,
  settings,
  sheetView,
  type Writing,
} from '../../../../engine/index.ts';
import { freeTimes, placeAlong } from '../../panels/bed-season/bed-calendar.ts';
import { BED, BEDS, PLANTING, PLANTINGS } from '../../panels/columns.ts';
import { figureAt, type Season, seasonOf } from '../../panels/read.ts';
import { dayWords } from '../../store/day-words.ts';
import { columnOf } from '../../store/sheets.ts';
import { askRow, bareFigure, inUnit, type Needs } from '../kit/ask.ts';
import { withSaidUnit } from '../kit/model.ts';

/** Ids the calendar can't do without. */
export const CALENDAR_NEEDS: Needs = {
  [BEDS]: [BED.length],
  [PLANTINGS]: [PLANTING.bed, PLANTING.lengthUsed, PLANTING.plantedOut, PLANTING.bedFree],
};

const FIELD = 'field';
const SPREADS_OVER = 'spreads-over';
const CROP = 'crop';
const HARVEST = 'harvest';
const HARVEST_ENDS = 'harvest-ends';
const ENDS_EARLY = 'harvest-ends-low';
const ENDS_LATE = 'harvest-ends-high';
const SOWN = 'sown';

export interface CalendarBar {
  /** The planting's row id and name. */
  readonly planting: string;
  readonly name: string;
  readonly crop: string;
  /** The id of the bed it stands on; '' where it has none. */
  readonly bed: string;
  /** It lies over this bed from the one beside it. */
  readonly spreading: boolean;
  readonly from: number;
  /** The likely day from which the bed is free, and the earliest and latest where they are known. */
  readonly until: number;
  readonly untilEarly: number;
  readonly untilLate: number;
  /** First day of the harvest and the day after its last; undefined where no harvest comes. */
  readonly harvest: { readonly from: number; readonly until: number } | undefined;
  /** Neither of its dates is typed: they are what the workbook proposes. */
  readonly proposed: boolean;
  readonly length: number;
  /** Where along the bed it begins, in metres. */
  readonly at: number;
}

/** Days on which more stands on a bed than it is long, and by how much. */
export interface Overfull {
  readonly from: number;
  readonly until: number;
  readonly by: number;
}

export interface CalendarLine {
  /** The bed's row id; '' for plantings that have no bed yet. */
  readonly bed: string;
  readonly name: string;
  readonly field: string;
  /** Of the bed; for the line of plantings without one, all of them side by side. */
  readonly length: number;
  readonly bars: readonly CalendarBar[];
  readonly overfull: readonly Overfull[];
  /** The share of the season's bed-days that is taken, 0 to 1 and more. */
  readonly taken: number;
}

export interface SeasonCalendar {
  readonly season: Season;
  readonly today: number;
  readonly lines: readonly CalendarLine[];
  readonly says: string;
  /** How the months along it are written. */
  readonly writing: Writing | undefined;
}

/** What stands in place of a picture of the beds. */
export const NO_BEDS = 'There are no beds yet: enter them on the sheet Beds.';

/** Undefined where the workbook has no beds, or the columns aren't there. */
export function seasonCalendar(book: Book, today: number): SeasonCalendar | undefined {
  const beds = Array.from(rows(book, BEDS));
  if (beds.length === 0) return undefined;
  const season = seasonOf(book);
  const { bars, left } = barsOf(book, season);
  const lines = beds.map((bed): CalendarLine => {
    const length = figureAt(book, BEDS, bed, BED.length) ?? 0;
    return lineOf(
      {
        bed: rowId(book, BEDS, bed),
        name: rowName(book, BEDS, bed),
        field: askRow(book, BEDS, bed).text(FIELD),
        length,
      },
      bars.get(bed) ?? [],
      season,
    );
  });
  const homeless = bars.get(undefined) ?? [];
  const all =
    homeless.length === 0
      ? lines
      : [...lines, lineOf({ bed: '', name: 'No bed yet', field: '', length: 0 }, homeless, season)];
  return { season, today, lines: all, says: sentence(book, all, season, left), writing: settings(book).writing };
}

type Unplaced = Omit<CalendarBar, 'at'>;

/** Why a planting has no bar. */
type NoBar = 'no date' | 'no length' | 'outside';

/** How many plantings have no bar, by what they lack. */
type LeftOut = Readonly<Record<NoBar, number>>;

interface Bars {
  /** By the slot of their bed; a planting that spreads over a second bed stands on both. */
  readonly bars: ReadonlyMap<number | undefined, readonly Unplaced[]>;
  readonly left: LeftOut;
}

function barsOf(book: Book, season: Season): Bars {
  const left: Record<NoBar, number> = { 'no date': 0, 'no length': 0, outside: 0 };
  const found = new Map<number | undefined, Unplaced[]>();
  const put = (bed: number | undefined, bar: Unplaced): void => {
    const there = found.get(bed) ?? [];
    there.push(bar);
    found.set(bed, there);
  };
  for (const slot of rows(book, PLANTINGS)) {
    const bar = barOf(book, slot, season);
    if (typeof bar === 'string') {
      left[bar] += 1;
      continue;
    }
    const bed = linked(book, slot, PLANTING.bed);
    put(bed, { ...bar, bed: bed === undefined ? '' : rowId(book, BEDS, bed) });
    const beside = linked(book, slot, SPREADS_OVER);
    if (beside !== undefined) put(beside, { ...bar, bed: rowId(book, BEDS, beside), spreading: true });
  }
  return { bars: found, left };
}

function linked(book: Book, slot: number, column: string): number | undefined {
  const value = cellValue(book, PLANTINGS, slot, column);
  return typeof value === 'number' ? value : undefined;
}

/** Whether a planting has a bar on the calendar: a day to begin, within the season, and a length. */
export function isOnCalendar(book: Book, planting: string): boolean {
  const slot = rowWithId(book, PLANTINGS, planting);
  return slot !== undefined && typeof barOf(book, slot, seasonOf(book)) !== 'string';
}

function barOf(book: Book, slot: number, season: Season): Unplaced | NoBar {
  const row = askRow(book, PLANTINGS, slot);
  const from = row.figure(PLANTING.plantedOut);
  const length = row.figure(PLANTING.lengthUsed);
  if (from === undefined) return 'no date';
  if (length === undefined) return 'no length';
  const until = row.figure(PLANTING.bedFree) ?? season.last + 1;
  if (until <= from || until <= season.first || from > season.last) return 'outside';
  const ends = row.figure(HARVEST_ENDS);
  const begins = row.figure(HARVEST);
  // The bed is cleared so many days after the last harvest, whichever day that is.
  const shifted = (column: string): number => {
    const end = row.figure(column);
    return end === undefined || ends === undefined ? until : until + (end - ends);
  };
  return {
    planting: row.id,
    name: rowName(book, PLANTINGS, slot),
    crop: row.text(CROP),
    bed: '',
    spreading: false,
    from,
    until,
    untilEarly: Math.min(until, shifted(ENDS_EARLY)),
    untilLate: Math.max(until, shifted(ENDS_LATE)),
    harvest: begins === undefined ? undefined : { from: begins, until: Math.max(begins + 1, (ends ?? until - 1) + 1) },
    proposed: !row.typed(PLANTING.plantedOut) && !row.typed(SOWN),
    length,
  };
}

function lineOf(
  bed: Pick<CalendarLine, 'bed' | 'name' | 'field' | 'length'>,
  bars: readonly Unplaced[],
  { first, last }: Season,
): CalendarLine {
  const placed = placeAlong(bars);
  const end = last + 1;
  const length = bed.bed === '' ? Math.max(0, ...placed.map((bar) => bar.at + bar.length)) : bed.length;
  const times = freeTimes(bars, length, first, end);
  const overfull = times.flatMap(({ from, until, free }) => (free < -1e-6 ? [{ from, until, by: -free }] : []));
  const days = bars.reduce(
    (sum, bar) => sum + bar.length * Math.max(0, Math.min(bar.until, end) - Math.max(bar.from, first)),
    0,
  );
  return { ...bed, length, bars: placed, overfull, taken: length > 0 ? days / (length * (end - first)) : 0 };
}

function sentence(book: Book, lines: readonly CalendarLine[], season: Season, left: LeftOut): string {
  const beds = lines.filter(({ bed }) => bed !== '');
  const metres = beds.reduce((sum, { length }) => sum + length, 0);
  const taken = metres > 0 ? beds.reduce((sum, line) => sum + line.taken * line.length, 0) / metres : 0;
  const planted = new Set(beds.flatMap(({ bars }) => bars.map(({ planting }) => planting))).size;
  const full = beds.filter(({ overfull }) => overfull.length > 0);
  const homeless = lines.find(({ bed }) => bed === '')?.bars.length ?? 0;
  return [
    `${count(planted, 'planting')} on ${count(beds.length, 'bed')} (${lengthInAll(book, metres)}), ${dayWords(book, season.first)} to ${dayWords(book, season.last)}: ${Math.round(taken * 100)}% of the bed-days are taken.`,
    full.length === 0
      ? 'No bed is too full.'
      : `Too full at some time: ${full
          .slice(0, 4)
          .map(({ name }) => name)
          .join(', ')}${full.length > 4 ? ` and ${full.length - 4} more` : ''}.`,
    homeless === 0 ? '' : `${count(homeless, 'planting has', 'plantings have')} no bed yet.`,
    leftOutWords(left),
  ]
    .filter((part) => part !== '')
    .join(' ');
}

/** 'Not drawn: 7 plantings without a date.'; '' where all are. */
function leftOutWords(left: LeftOut): string {
  const parts = [
    left['no date'] === 0 ? '' : `${count(left['no date'], 'planting')} without a date`,
    left['no length'] === 0 ? '' : `${count(left['no length'], 'planting')} without a length`,
    left.outside === 0 ? '' : `${count(left.outside, 'planting')} outside the season`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? '' : `Not drawn: ${parts.join(', ')}.`;
}

/** A length of many beds together: '1330 ft', '7.5 m'; a part of a foot or metre among hundreds says nothing. */
export function lengthInAll(book: Book, metres: number): string {
  const view = columnOf(sheetView(book, BEDS), BED.length);
  return withSaidUnit(bareFigure(view, metres), view?.unit ?? '', 1, settings(book).writing);
}

function count(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

/** The same as a table: a row a planting and bed. */
export function calendarTable(
  book: Book,
  { lines }: SeasonCalendar,
): {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
} {
  return {
    head: ['Bed', 'Planting', 'In the bed from', 'Harvest from', 'Bed free', 'Length'],
    rows: lines.flatMap(({ name, bars }) =>
      bars.map((bar) => [
        name,
        bar.name,
        dayWords(book, bar.from),
        bar.harvest === undefined ? '' : dayWords(book, bar.harvest.from),
        dayWords(book, bar.until),
        inUnit(book, PLANTINGS, PLANTING.lengthUsed, bar.length),
      ]),
    ),
  };
}

/** What a bar says of itself: 'Keeper clumps, Onion, bulb, on Barn 1, 22 Apr to 5 Aug 2027, 50 ft'. */
export function barWords(book: Book, bar: CalendarBar, line: CalendarLine): string {
  const parts = [
    bar.name,
    bar.crop,
    line.bed === '' ? 'no bed yet' : `on ${line.name}`,
    `${dayWords(book, bar.from)} to ${dayWords(book, bar.until - 1)}`,
    inUnit(book, PLANTINGS, PLANTING.lengthUsed, bar.length),
  ];
  return parts.filter((part) => part !== '').join(', ');
}
