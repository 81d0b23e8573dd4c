// Dates that extension services and growers print for ten places, beside the dates the season workbook gives there from monthly
// normals alone: when a crop goes into the bed, when it is cut. calendars.checks.ts makes facts of them, calendars.test.ts holds
// the shares over all of them; the printed table of checks shows every error.

import { civilDay, civilDayOfIso, isoDate, yearMonthDay } from '../../engine/index.ts';
import { type Season, seasonOf } from '../sheets/season.ts';
import { numberOf, type Row, readTable, textOf } from './table.ts';

const SEASON = 2027;
const MONTHS = 'January February March April May June July August September October November December'.split(' ');
const YEAR = 365;
/** Plants are taken as six weeks old when they go out: only their date in the bed counts here. */
const RAISED_DAYS = 42;

const climates = readTable('place-climates');
const calendars = readTable('place-calendars');

export const PLACES: readonly string[] = [...new Set(climates.map((row) => textOf(row, 'place')))];

function climateOf(place: string): readonly Row[] {
  return climates.filter((row) => textOf(row, 'place') === place);
}

export function latitudeOf(place: string): number {
  return numberOf(climateOf(place)[0] ?? {}, 'latitude');
}

/** The months of a place as rows of Monthly climate. */
export function monthsOf(place: string): readonly Readonly<Record<string, string>>[] {
  return climateOf(place).map((row) => ({
    Month: MONTHS[numberOf(row, 'month') - 1] ?? '',
    Low: `${textOf(row, 'low_C')} degC`,
    High: `${textOf(row, 'high_C')} degC`,
  }));
}

/** A printed month and day as a civil day of the season; south of the equator it runs from July to June. */
function dayOf(place: string, monthAndDay: string): number {
  const inNextYear = latitudeOf(place) < 0 && Number(monthAndDay.slice(0, 2)) < 7;
  return civilDayOfIso(`${inNextYear ? SEASON + 1 : SEASON}-${monthAndDay}`) ?? Number.NaN;
}

/** Days that a date lies after another, whatever their years: from half a year before to half a year after. */
export function daysAfter(date: number, other: number): number {
  const days = (((date - other) % YEAR) + YEAR) % YEAR;
  return days > YEAR / 2 ? days - YEAR : days;
}

interface Wanted {
  readonly place: string;
  readonly crop: string;
  readonly start: string;
  readonly plantedOut: number;
}

/** A season at a place with a planting for each of these, in this order; the plantings are named 0, 1, 2 ... */
function seasonWith(place: string, wanted: readonly Wanted[]): Season {
  const crops = [...new Set(wanted.map(({ crop }) => crop))];
  return seasonOf(
    {
      'Monthly climate': monthsOf(place),
      Varieties: crops.map((crop) => ({
        Variety: crop,
        Crop: crop,
        ...(crop === 'Onion, bulb' ? { 'Day-length type': 'long' } : {}),
      })),
      Plantings: wanted.map(({ crop, start, plantedOut }, index) => ({
        Planting: String(index),
        Variety: crop,
        Start: start,
        Sown: isoDate(plantedOut - (start === 'cells' ? RAISED_DAYS : 0)),
        'Planted out': isoDate(plantedOut),
      })),
    },
    { Latitude: String(latitudeOf(place)) },
    { units: 'si' },
  );
}

function dateIn(season: Season, planting: number, column: string): number {
  const value = season.value('Plantings', String(planting), column);
  return typeof value === 'number' ? value : Number.NaN;
}

export interface Told {
  readonly place: string;
  readonly crop: string;
  /** 'earliest', 'latest', 'autumn', 'harvest': what is compared. */
  readonly kind: string;
  readonly start: string;
  readonly published: number;
  /** 'day', or 'month' where whole months are printed. */
  readonly grain: string;
  readonly computed: number;
  /**
   * Days that the workbook is late; before it is below zero. Not a number where it gives no date. Where whole months are
   * printed, any day of the first of them agrees, and days count from its nearer end.
   */
  readonly late: number;
  /** When frost alone lets it in. */
  readonly frost: number;
  /** Key of its publication (calendar-publications.ts). */
  readonly source: string;
}

/** The earliest printed date of a kind for each source, crop and way of starting at a place: later ones are a choice within the window. */
function firstOfEach(rows: readonly Row[]): readonly Row[] {
  const first = new Map<string, Row>();
  for (const row of rows) {
    const name = `${textOf(row, 'source')} ${textOf(row, 'crop')} ${textOf(row, 'start')}`;
    const kept = first.get(name);
    if (kept === undefined || textOf(row, 'from') < textOf(kept, 'from')) first.set(name, row);
  }
  return [...first.values()];
}

/** Days of the month that begins at a civil day. */
function monthFrom(day: number): number {
  const { year, month } = yearMonthDay(day);
  return civilDay(month === 12 ? year + 1 : year, month === 12 ? 1 : month + 1, 1) - day;
}

/** Days that a date is late against a printed one; where months are printed any day of the first agrees. */
export function daysLate(computed: number, published: number, grain: string): number {
  const late = daysAfter(computed, published);
  if (grain !== 'month' || late <= 0) return late;
  return Math.max(0, late - (monthFrom(published) - 1));
}

function told(kind: string, date: 'from' | 'to', column: string, otherwise = column): readonly Told[] {
  return PLACES.flatMap((place) => {
    const ofKind = calendars.filter(
      (row) => textOf(row, 'place') === place && textOf(row, 'kind') === kind && textOf(row, date) !== '',
    );
    const rows = date === 'from' ? firstOfEach(ofKind) : ofKind;
    if (rows.length === 0) return [];
    const wanted = rows.map((row) => ({
      row,
      place,
      crop: textOf(row, 'crop'),
      start: textOf(row, 'start'),
      plantedOut: dayOf(place, textOf(row, date)),
    }));
    const season = seasonWith(place, wanted);
    return wanted.map(({ row, crop, start, plantedOut }, index) => {
      const first = dateIn(season, index, column);
      const computed = Number.isNaN(first) ? dateIn(season, index, otherwise) : first;
      return {
        place,
        crop,
        kind,
        start,
        published: plantedOut,
        grain: textOf(row, 'grain'),
        computed,
        late: Number.isNaN(computed) ? Number.NaN : daysLate(computed, plantedOut, textOf(row, 'grain')),
        frost: dateIn(season, index, 'Frost lets in from'),
        source: textOf(row, 'source'),
      };
    });
  });
}

/** Earliest dates in the bed, outdoors and without cover, in spring. */
export const earliest = (): readonly Told[] => told('earliest', 'from', 'Earliest in the bed');
/** Earliest dates in the bed for the autumn crop, where summers are too hot for it; else the earliest of all, as nothing keeps it out. */
export const autumn = (): readonly Told[] => told('autumn', 'from', 'After the heat', 'Earliest in the bed');
/** Last dates in the bed. */
export const latest = (): readonly Told[] => told('latest', 'to', 'Latest in the bed');

export interface Cut {
  readonly place: string;
  readonly crop: string;
  readonly start: string;
  readonly plantedOut: number;
  readonly harvest: number;
  readonly from: number;
  readonly to: number;
  /** Days outside the printed window, 0 within it; not a number where the workbook gives no harvest. */
  readonly outside: number;
  readonly source: string;
}

function daysOutside(harvest: number, from: number, to: number): number {
  if (Number.isNaN(harvest)) return Number.NaN;
  const before = -Math.min(0, daysAfter(harvest, from));
  if (Number.isNaN(to)) return before;
  const length = (((to - from) % YEAR) + YEAR) % YEAR;
  const since = (((harvest - from) % YEAR) + YEAR) % YEAR;
  if (since <= length) return 0;
  return Math.min(since - length, YEAR - since);
}

/** First harvests of plantings at the first and the last printed date in the bed, against the printed harvest. */
export function harvests(): readonly Cut[] {
  return PLACES.flatMap((place) => {
    const rows = calendars.filter((row) => textOf(row, 'place') === place && textOf(row, 'kind').startsWith('harvest'));
    if (rows.length === 0) return [];
    const wanted = rows.flatMap((row) =>
      [...new Set([textOf(row, 'planted_from'), textOf(row, 'planted_to')])].map((planted) => ({
        row,
        place,
        crop: textOf(row, 'crop'),
        start: textOf(row, 'start'),
        plantedOut: dayOf(place, planted),
      })),
    );
    const season = seasonWith(place, wanted);
    return wanted.map(({ row, crop, start, plantedOut }, index) => {
      const harvest = dateIn(season, index, 'Harvest');
      const from = dayOf(place, textOf(row, 'from'));
      const until = textOf(row, 'to');
      const to = until === '' ? Number.NaN : dayOf(place, until);
      const outside = daysOutside(harvest, from, to);
      return { place, crop, start, plantedOut, harvest, from, to, outside, source: textOf(row, 'source') };
    });
  });
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  const [low, high] = [sorted[Math.ceil(middle) - 1], sorted[Math.floor(middle)]];
  return low === undefined || high === undefined ? Number.NaN : (low + high) / 2;
}

export function shareWithin(values: readonly number[], most: number): number {
  return values.filter((value) => Math.abs(value) <= most).length / values.length;
}
