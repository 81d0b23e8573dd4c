// A weather station's daily CSV (DATE, TMAX, TMIN; any number of years) made into an average year and frost dates year by
// year. The unit stands in the header, or is told by the readings where a year of them leaves no doubt. Pure: text in,
// figures in degC out. Called by station-import.ts and by whoever wants the figures alone.

import { type AverageYear, averageYear, DAYS_OF_YEAR, type Gap } from '../agronomy/climate.ts';
import { type FrostYear, frostYears } from '../agronomy/frost.ts';
import { type YearsApart, yearsApart } from '../agronomy/years-apart.ts';
import { civilDay, civilDayOfIso } from '../values/civil.ts';
import { type CsvRecord, type CsvSplitter, type Delimiter, firstRecord, parseCsv } from './csv.ts';

export type StationUnit = 'degC' | 'degF' | 'tenths of degC';

export interface StationRecord {
  readonly ok: true;
  readonly unit: StationUnit;
  /** Where the unit came from. */
  readonly unitFrom: 'header' | 'readings';
  /** Days with a reading. */
  readonly days: number;
  /** Averages in degC by calendar day. */
  readonly year: AverageYear;
  readonly gaps: readonly Gap[];
  /** Frost dates at 0 degC and at -2 degC. */
  readonly frosts: readonly FrostYear[];
  readonly hardFrosts: readonly FrostYear[];
  /** How its years differed month by month, in degrees C. */
  readonly warmth: YearsApart;
  /** January is warmer than July. */
  readonly southern: boolean;
  /** Lines left out because the low stands above the high. */
  readonly upsideDown: readonly number[];
}

export interface StationFailure {
  readonly ok: false;
  readonly why: string;
  readonly line?: number;
}

/** Nothing warmer was ever measured: 56.7 degC, 134 degF. */
const HOTTEST = { degC: 57, degF: 135 } as const;
/** So many days hold a summer, by which the readings tell their unit. */
const A_YEAR_OR_SO = 300;
/** A reading of this size or more stands for a missing one (-9999, 9999). */
const MISSING = 5000;
const HARD_FROST = -2;

interface Columns {
  readonly date: number;
  readonly high: number;
  readonly low: number;
  readonly station: number;
  readonly unit: StationUnit | undefined;
}

interface Reading {
  readonly line: number;
  readonly day: number;
  readonly low: number;
  readonly high: number;
}

class Refused extends Error {
  readonly line: number | undefined;

  constructor(why: string, line?: number) {
    super(line === undefined ? why : `Line ${line}: ${why}`);
    this.line = line;
  }
}

const HEADERS = {
  date: /^date$/i,
  high: /^t(?:emp(?:erature)?)?[ _]?max(?:imum)?(?![a-z])/i,
  low: /^t(?:emp(?:erature)?)?[ _]?min(?:imum)?(?![a-z])/i,
  station: /^station$/i,
} as const;

function delimiterOf(text: string, split: CsvSplitter): Delimiter {
  const fields = (delimiter: Delimiter): number => firstRecord(text, delimiter, split)?.length ?? 0;
  return ([',', ';', '\t'] as const).reduce((best, next) => (fields(next) > fields(best) ? next : best));
}

function columnsOf(header: readonly string[]): Columns | undefined {
  const at = (name: keyof typeof HEADERS): number => header.findIndex((field) => HEADERS[name].test(field));
  const [date, high, low] = [at('date'), at('high'), at('low')];
  if (date < 0 || high < 0 || low < 0) return undefined;
  return { date, high, low, station: at('station'), unit: unitIn(header[high] ?? '') ?? unitIn(header[low] ?? '') };
}

/** 'TMAX (degF)', 'TMAX_C', 'TMAX (tenths of degC)'. */
function unitIn(header: string): StationUnit | undefined {
  const rest = header
    .replace(HEADERS.high, '')
    .replace(HEADERS.low, '')
    .replace(/^max|^min/i, '');
  if (/tenth|0\.1/i.test(rest)) return 'tenths of degC';
  if (/(?:^|[^a-z])(?:deg ?f|°f|f|fahrenheit)(?:[^a-z]|$)/i.test(rest)) return 'degF';
  return /(?:^|[^a-z])(?:deg ?c|°c|c|celsius)(?:[^a-z]|$)/i.test(rest) ? 'degC' : undefined;
}

/** Whether a table is a station's: its header names a date, a highest and a lowest temperature. */
export function isStationHeader(header: readonly string[]): boolean {
  return columnsOf(header) !== undefined;
}

function dayOf(text: string, line: number): number {
  const [, year, month, day] = /^(\d{4})[-/]?(\d{1,2})[-/]?(\d{1,2})(?:[T ].*)?$/.exec(text) ?? [];
  const iso = `${year ?? ''}-${(month ?? '').padStart(2, '0')}-${(day ?? '').padStart(2, '0')}`;
  const civil = civilDayOfIso(iso);
  if (civil === undefined) throw new Refused(`“${text}” is no date: write it as 2027-03-15.`, line);
  return civil;
}

function temperatureOf(text: string, comma: boolean, line: number): number {
  if (text === '' || /^(?:na|nan|m|-)$/i.test(text)) return Number.NaN;
  const value = Number(comma ? text.replace(',', '.') : text);
  if (Number.isNaN(value))
    throw new Refused(`“${text}” is no temperature: leave the field empty where it is missing.`, line);
  return Math.abs(value) >= MISSING ? Number.NaN : value;
}

function readingsOf(records: readonly CsvRecord[], columns: Columns, comma: boolean): readonly Reading[] {
  const lines = new Map<number, number>();
  const stations = new Set<string>();
  return records.map(({ line, fields }) => {
    const field = (at: number): string => fields[at] ?? '';
    stations.add(field(columns.station));
    if (stations.size > 1) throw new Refused('a second station begins here: keep the lines of one station.', line);
    const day = dayOf(field(columns.date), line);
    const before = lines.get(day);
    if (before !== undefined) throw new Refused(`this day stands in line ${before} already: leave one of them.`, line);
    lines.set(day, line);
    const [low, high] = [field(columns.low), field(columns.high)];
    return { line, day, low: temperatureOf(low, comma, line), high: temperatureOf(high, comma, line) };
  });
}

function unitOfReadings(readings: readonly Reading[]): StationUnit {
  const hottest = readings.reduce((most, { high }) => Math.max(most, Number.isNaN(high) ? most : high), -MISSING);
  const known = readings.filter(({ high }) => !Number.isNaN(high)).length;
  if (hottest > HOTTEST.degF) return 'tenths of degC';
  if (known >= A_YEAR_OR_SO) return hottest > HOTTEST.degC ? 'degF' : 'degC';
  throw new Refused(
    'Say in the header which unit the temperatures are in: TMAX (degC), TMAX (degF) or TMAX (tenths of degC).',
  );
}

function toCelsius(value: number, unit: StationUnit): number {
  if (unit === 'degF') return ((value - 32) * 5) / 9;
  return unit === 'degC' ? value : value / 10;
}

function januaryIsWarmer({ highs }: AverageYear): boolean {
  const mean = (from: number): number => {
    const days = Array.from(highs.subarray(from, from + 31)).filter((value) => !Number.isNaN(value));
    return days.reduce((sum, value) => sum + value, 0) / days.length;
  };
  return mean(0) > mean(civilDay(2027, 7, 1) - civilDay(2027, 1, 1));
}

function read(
  header: readonly string[],
  records: readonly CsvRecord[],
  comma: boolean,
): StationRecord | StationFailure {
  const columns = columnsOf(header);
  if (columns === undefined) {
    return {
      ok: false,
      why: 'A station file needs the columns DATE, TMAX and TMIN, with their unit: TMAX (degC) or TMAX (degF).',
    };
  }
  const all = readingsOf(records, columns, comma);
  const upright = all.filter(({ low, high }) => !(low > high));
  const unit = columns.unit ?? unitOfReadings(upright);
  const readings = {
    days: upright.map(({ day }) => day),
    lows: upright.map(({ low }) => toCelsius(low, unit)),
    highs: upright.map(({ high }) => toCelsius(high, unit)),
  };
  const year = averageYear(readings);
  if (year === undefined || year.blankDays === DAYS_OF_YEAR) {
    return { ok: false, why: 'The file has no day with both a high and a low.' };
  }
  const southern = januaryIsWarmer(year);
  return {
    ok: true,
    unit,
    unitFrom: columns.unit === undefined ? 'readings' : 'header',
    days: upright.filter(({ low, high }) => !Number.isNaN(low + high)).length,
    year,
    gaps: year.gaps,
    frosts: frostYears(readings.days, readings.lows, 0, southern),
    hardFrosts: frostYears(readings.days, readings.lows, HARD_FROST, southern),
    warmth: yearsApart(readings),
    southern,
    upsideDown: all.filter(({ low, high }) => low > high).map(({ line }) => line),
  };
}

/** A station's daily CSV as text. */
export function readStationCsv(text: string, split: CsvSplitter): StationRecord | StationFailure {
  const delimiter = delimiterOf(text, split);
  const parsed = parseCsv(text, delimiter, split);
  if (!parsed.ok) return parsed;
  const [header, ...records] = parsed.records;
  return readStation(header?.fields ?? [], records, delimiter !== ',');
}

/**
 * A station's daily readings. Blank and missing readings (-9999) are gaps: averages fill those of up to five days, frost dates
 * none. Days whose low stands above the high are left out and named. Refuses what it can't read with a sentence.
 */
export function readStation(
  header: readonly string[],
  records: readonly CsvRecord[],
  comma: boolean,
): StationRecord | StationFailure {
  try {
    return read(header, records, comma);
  } catch (thrown) {
    if (!(thrown instanceof Refused)) throw thrown;
    return thrown.line === undefined
      ? { ok: false, why: thrown.message }
      : { ok: false, why: thrown.message, line: thrown.line };
  }
}
