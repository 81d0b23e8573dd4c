// A station's daily CSV as edits of a workbook: the average year into a sheet with a row a day and columns Low and High; frost
// dates and how warm its months were into Frost years, and the spread between years into Monthly climate, where the workbook has
// them. Called by rows-import.ts; does nothing to the workbook itself.

import { calendarIndex, type Gap } from '../agronomy/climate.ts';
import type { FrostYear } from '../agronomy/frost.ts';
import type { Command } from '../commands/command.ts';
import type { Book } from '../queries/book.ts';
import { cellValue } from '../queries/cells.ts';
import { rowId, rowNamed, rows } from '../queries/rows.ts';
import { sheetView } from '../queries/sheets.ts';
import { isoDate } from '../values/civil.ts';
import { MONTHS } from '../values/date-text.ts';
import { showDate } from '../values/show.ts';
import { isStationHeader, readStation, type StationRecord } from './climate-csv.ts';
import type { TableFailure, TableFile } from './table-file.ts';
import { HIGH, LOW } from './takes-station.ts';

/** The id by which the sheet of frosts is known, whatever it is called. */
const FROST_YEARS = 'frost-years';
/** The sheet of months, its number from 1 and the spread between years, by their ids. */
const MONTHLY = { sheet: 'monthly-climate', number: 'number', spread: 'year-to-year' } as const;
const WARMER = MONTHS.map((month) => `${month.toLowerCase()}-warmer`);
/** Gaps named one by one; the rest are counted. */
const MOST_NAMED = 4;

/** The table, where it is a station's. */
export function stationTable(file: TableFile): TableFile | undefined {
  return isStationHeader(file.header.fields) ? file : undefined;
}

export interface StationRows {
  readonly ok: true;
  readonly commands: readonly Command[];
  readonly added: number;
  readonly updated: number;
  readonly unchanged: number;
  readonly notes: readonly string[];
}

/** What a station's file asks of the workbook; do the commands as one transaction. */
export function readStationRows(
  book: Book,
  sheet: string,
  { header, records, text }: TableFile,
): StationRows | TableFailure {
  const station = readStation(header.fields, records, text !== undefined && text.delimiter !== ',');
  if (!station.ok) return station;
  const days = dayCommands(book, sheet, station);
  const frosts = frostCommands(book, station);
  const spread = spreadCommands(book, station);
  const commands = [...days.commands, ...frosts.commands, ...spread];
  return {
    ok: true,
    commands,
    added: frosts.added,
    updated: days.updated + frosts.updated + spread.length,
    unchanged: days.left,
    notes: notesOf(station),
  };
}

function dayCommands(
  book: Book,
  sheet: string,
  { year }: StationRecord,
): { readonly commands: readonly Command[]; readonly updated: number; readonly left: number } {
  const source = sheetView(book, sheet)?.source;
  const commands: Command[] = [];
  let updated = 0;
  let left = 0;
  for (const row of rows(book, sheet)) {
    const day = source?.from === 'span' ? cellValue(book, sheet, row, source.as.id) : null;
    const place = typeof day === 'number' ? calendarIndex(day) : -1;
    const [low, high] = [year.lows[place] ?? Number.NaN, year.highs[place] ?? Number.NaN];
    if (Number.isNaN(low + high)) {
      left++;
      continue;
    }
    const cell = { command: 'set cell', sheet, row: rowId(book, sheet, row), plain: true } as const;
    commands.push({ ...cell, column: LOW, entry: entryOf(low, book) });
    commands.push({ ...cell, column: HIGH, entry: entryOf(high, book) });
    updated++;
  }
  return { commands, updated, left };
}

/** A bare number, which the column reads in the unit of the workbook and shows without another. */
function entryOf(celsius: number, { document }: Book): string {
  return (document.program.units === 'us' ? (celsius * 9) / 5 + 32 : celsius).toFixed(3);
}

/** The same of a difference of temperatures. */
function differenceOf(degrees: number, { document }: Book): string {
  return (document.program.units === 'us' ? (degrees * 9) / 5 : degrees).toFixed(3);
}

function spreadCommands(book: Book, { warmth }: StationRecord): readonly Command[] {
  const { sheet, number, spread } = MONTHLY;
  const columns = sheetView(book, sheet)?.columns.map(({ id }) => id) ?? [];
  if (!columns.includes(number) || !columns.includes(spread)) return [];
  const commands: Command[] = [];
  for (const row of rows(book, sheet)) {
    const month = cellValue(book, sheet, row, number);
    const degrees = typeof month === 'number' ? (warmth.spread[month - 1] ?? Number.NaN) : Number.NaN;
    if (Number.isNaN(degrees)) continue;
    const entry = differenceOf(degrees, book);
    commands.push({ command: 'set cell', sheet, row: rowId(book, sheet, row), column: spread, entry, plain: true });
  }
  return commands;
}

/** Entries of Frost years with how much warmer each month of a year was; nothing where the sheet has no such columns. */
function warmerEntries(book: Book, { warmth }: StationRecord, year: number): Readonly<Record<string, string>> {
  const columns = new Set(sheetView(book, FROST_YEARS)?.columns.map(({ id }) => id));
  const months = warmth.years.find((one) => one.year === year)?.months;
  return Object.fromEntries(
    WARMER.flatMap((id, index) => {
      const degrees = months?.[index] ?? Number.NaN;
      return columns.has(id) ? [[id, Number.isNaN(degrees) ? '' : differenceOf(degrees, book)]] : [];
    }),
  );
}

function known(frost: FrostYear | undefined, half: 'spring' | 'autumn'): boolean {
  return (half === 'spring' ? frost?.springKnown : frost?.autumnKnown) === true;
}

/** A date only where the half-year's record is whole enough to trust it. */
function dateOf(frost: FrostYear | undefined, half: 'spring' | 'autumn'): string {
  const day = (half === 'spring' ? frost?.lastSpring : frost?.firstAutumn) ?? Number.NaN;
  return known(frost, half) && !Number.isNaN(day) ? isoDate(day) : '';
}

function frostCommands(
  book: Book,
  station: StationRecord,
): { readonly commands: readonly Command[]; readonly added: number; readonly updated: number } {
  const { frosts, hardFrosts } = station;
  const commands: Command[] = [];
  let added = 0;
  let updated = 0;
  if (sheetView(book, FROST_YEARS) === undefined) return { commands, added, updated };
  for (const [index, frost] of frosts.entries()) {
    if (!known(frost, 'spring') && !known(frost, 'autumn')) continue;
    const hard = hardFrosts[index];
    const entries: Readonly<Record<string, string>> = {
      year: String(frost.year),
      'last-frost': dateOf(frost, 'spring'),
      'first-frost': dateOf(frost, 'autumn'),
      'last-hard-frost': dateOf(hard, 'spring'),
      'first-hard-frost': dateOf(hard, 'autumn'),
      'spring-known': known(frost, 'spring') ? 'yes' : 'no',
      'autumn-known': known(frost, 'autumn') ? 'yes' : 'no',
      'hard-spring-known': known(hard, 'spring') ? 'yes' : 'no',
      'hard-autumn-known': known(hard, 'autumn') ? 'yes' : 'no',
      ...warmerEntries(book, station, frost.year),
    };
    const row = rowNamed(book, FROST_YEARS, String(frost.year));
    if (row === undefined) {
      const filled = Object.entries(entries).filter(([, entry]) => entry !== '');
      commands.push({ command: 'insert row', sheet: FROST_YEARS, entries: Object.fromEntries(filled), plain: true });
      added++;
      continue;
    }
    for (const [column, entry] of Object.entries(entries)) {
      if (column === 'year') continue;
      const place = { sheet: FROST_YEARS, row: rowId(book, FROST_YEARS, row), column };
      commands.push({ command: 'set cell', ...place, entry, plain: true });
    }
    updated++;
  }
  return { commands, added, updated };
}

function spanOf({ from, to }: Gap): string {
  return from === to ? showDate(from) : `${showDate(from)} to ${showDate(to)}`;
}

function listed(spans: readonly string[]): string {
  const more = spans.length - MOST_NAMED;
  return spans.slice(0, MOST_NAMED).join(', ') + (more > 0 ? ` and ${more} more` : '');
}

function notesOf({ unit, unitFrom, days, year, gaps, upsideDown }: StationRecord): readonly string[] {
  const [first, last] = [year.years[0] ?? 0, year.years.at(-1) ?? 0];
  const span = first === last ? String(first) : `${first} to ${last}`;
  const notes = [`The mean of ${days} days, ${span}.`];
  if (unitFrom === 'readings') {
    notes.push(`The header names no unit; the readings can only be ${unit}. Write TMAX (${unit}) to be sure.`);
  }
  const filled = gaps.filter((gap) => gap.filled);
  const open = gaps.filter((gap) => !gap.filled);
  if (filled.length > 0)
    notes.push(`Gaps filled by a straight line between their neighbours: ${listed(filled.map(spanOf))}.`);
  if (open.length > 0) notes.push(`Gaps left open, too long to fill: ${listed(open.map(spanOf))}.`);
  if (year.blankDays > 0) notes.push(`Days of the year without a reading, left as they were: ${year.blankDays}.`);
  if (upsideDown.length > 0) {
    notes.push(`Lines left out because the low stands above the high: ${listed(upsideDown.map(String))}.`);
  }
  return notes;
}
