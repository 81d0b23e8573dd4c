// A station's daily CSV as edits of a workbook: the average year into a sheet with a row a day and columns Low and High, frost
// dates into Frost years where the workbook has it. Called by csv-import.ts; does nothing to the workbook itself.

import { calendarIndex, type Gap } from '../agronomy/climate.ts';
import type { FrostYear } from '../agronomy/frost.ts';
import { isoDate } from '../values/civil.ts';
import { showDate } from '../values/show.ts';
import type { Edit, WorkbookFace } from '../workbook/face.ts';
import { readStationCsv, type StationRecord } from './climate-csv.ts';
import type { CsvSplitter } from './csv.ts';
import type { CsvFailure, CsvRows } from './csv-rows.ts';

const [LOW, HIGH, FROST_YEARS] = ['Low', 'High', 'Frost years'] as const;
/** Gaps named one by one; the rest are counted. */
const MOST_NAMED = 4;

/** Whether a sheet takes a station's file: a row a day, a low and a high. */
export function takesStation(workbook: WorkbookFace, table: string): boolean {
  const view = workbook.table(table);
  if (view?.source.from !== 'span' || view.source.step !== 'day') return false;
  return [LOW, HIGH].every((name) => view.columns.some((column) => column.name === name && column.role !== 'computed'));
}

/** What a station's file asks of the workbook; apply the edits as one transaction. */
export function readStationRows(
  workbook: WorkbookFace,
  table: string,
  text: string,
  split: CsvSplitter,
): CsvRows | CsvFailure {
  const station = readStationCsv(text, split);
  if (!station.ok) return station;
  const days = dayEdits(workbook, table, station);
  const frosts = frostEdits(workbook, station);
  const edits = [...days.edits, ...frosts.edits];
  return {
    ok: true,
    edits,
    lines: edits.map(() => 1),
    added: frosts.added,
    updated: days.updated + frosts.updated,
    unchanged: days.left,
    notes: notesOf(station),
  };
}

function dayEdits(
  workbook: WorkbookFace,
  table: string,
  { year }: StationRecord,
): { readonly edits: readonly Edit[]; readonly updated: number; readonly left: number } {
  const source = workbook.table(table)?.source;
  const edits: Edit[] = [];
  let updated = 0;
  let left = 0;
  for (const row of workbook.rows(table)) {
    const day = source?.from === 'span' ? workbook.value(table, row, source.as) : null;
    const place = typeof day === 'number' ? calendarIndex(day) : -1;
    const [low, high] = [year.lows[place] ?? Number.NaN, year.highs[place] ?? Number.NaN];
    if (Number.isNaN(low + high)) {
      left++;
      continue;
    }
    edits.push({ edit: 'cell', table, row, column: LOW, entry: entryOf(low, workbook) });
    edits.push({ edit: 'cell', table, row, column: HIGH, entry: entryOf(high, workbook) });
    updated++;
  }
  return { edits, updated, left };
}

/** A bare number, which the column reads in the unit of the workbook and shows without another. */
function entryOf(celsius: number, { units }: WorkbookFace): string {
  return (units === 'us' ? (celsius * 9) / 5 + 32 : celsius).toFixed(3);
}

function known(frost: FrostYear | undefined, half: 'spring' | 'autumn'): boolean {
  return (half === 'spring' ? frost?.springKnown : frost?.autumnKnown) === true;
}

/** A date only where the half-year's record is whole enough to trust it. */
function dateOf(frost: FrostYear | undefined, half: 'spring' | 'autumn'): string {
  const day = (half === 'spring' ? frost?.lastSpring : frost?.firstAutumn) ?? Number.NaN;
  return known(frost, half) && !Number.isNaN(day) ? isoDate(day) : '';
}

function frostEdits(
  workbook: WorkbookFace,
  { frosts, hardFrosts }: StationRecord,
): { readonly edits: readonly Edit[]; readonly added: number; readonly updated: number } {
  const edits: Edit[] = [];
  let added = 0;
  let updated = 0;
  if (workbook.table(FROST_YEARS) === undefined) return { edits, added, updated };
  for (const [index, frost] of frosts.entries()) {
    if (!known(frost, 'spring') && !known(frost, 'autumn')) continue;
    const hard = hardFrosts[index];
    const entries: Readonly<Record<string, string>> = {
      Year: String(frost.year),
      'Last frost': dateOf(frost, 'spring'),
      'First frost': dateOf(frost, 'autumn'),
      'Last hard frost': dateOf(hard, 'spring'),
      'First hard frost': dateOf(hard, 'autumn'),
      'Spring known': known(frost, 'spring') ? 'yes' : 'no',
      'Autumn known': known(frost, 'autumn') ? 'yes' : 'no',
      'Hard spring known': known(hard, 'spring') ? 'yes' : 'no',
      'Hard autumn known': known(hard, 'autumn') ? 'yes' : 'no',
    };
    const row = workbook.rowOf(FROST_YEARS, String(frost.year));
    if (row === undefined) {
      const filled = Object.entries(entries).filter(([, entry]) => entry !== '');
      edits.push({ edit: 'insert row', table: FROST_YEARS, entries: Object.fromEntries(filled) });
      added++;
      continue;
    }
    for (const [column, entry] of Object.entries(entries)) {
      if (column !== 'Year') edits.push({ edit: 'cell', table: FROST_YEARS, row, column, entry });
    }
    updated++;
  }
  return { edits, added, updated };
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
