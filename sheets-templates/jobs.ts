// The jobs of a workbook as plain data, and as a calendar file: what the terminal and the browser print, save and send. Reads
// the Tasks, Labour and Farm sheets by their ids.

import {
  type Book,
  type CalendarEvent,
  cellValue,
  cellView,
  isError,
  ONLY_ROW,
  rowId,
  rows,
  rowWithId,
  sheetViews,
  writeCalendar,
} from '../engine/index.ts';

const TASKS = 'tasks';
const LABOUR = 'labour';
const FARM = 'farm';

export interface Job {
  readonly id: string;
  /** Civil day on which it is to be done. */
  readonly on: number;
  readonly what: string;
  /** The planting, bed, outlet or store; '' where there is none. */
  readonly planting: string;
  readonly where: string;
  readonly kind: string;
  /** As shown, with their units: '320 pieces', '7 trays', '120 lb', '50 ft of bed'. */
  readonly amounts: readonly string[];
  /** Hours planned, or taken where it is done; undefined where none are known. */
  readonly hours: number | undefined;
  readonly who: string;
  readonly status: string;
  readonly note: string;
}

/**
 * Jobs by date: those wanted by their civil day and status, else all; undefined for a workbook that has no list of jobs. Of the
 * others nothing more than the day and status is read.
 */
export function jobsOf(
  book: Book,
  wanted: (on: number, status: string) => boolean = () => true,
): readonly Job[] | undefined {
  const columns = sheetViews(book).find(({ id }) => id === TASKS)?.columns;
  if (columns === undefined) return undefined;
  const units = new Map(columns.map(({ id, unit }) => [id, unit]));
  const jobs: Job[] = [];
  for (const row of rows(book, TASKS)) {
    const on = cellValue(book, TASKS, row, 'on');
    if (typeof on === 'number' && wanted(on, textAt(book, row, 'status'))) jobs.push(jobAt(book, row, on, units));
  }
  return jobs.sort((a, b) => a.on - b.on);
}

function textAt(book: Book, row: number, column: string): string {
  const value = cellValue(book, TASKS, row, column);
  return value === null || isError(value) ? '' : cellView(book, TASKS, row, column).text;
}

/** Of the sheet's columns by their ids. */
type Units = ReadonlyMap<string, string | undefined>;

function jobAt(book: Book, row: number, on: number, units: Units): Job {
  const text = (column: string): string => textAt(book, row, column);
  const hours = cellView(book, TASKS, row, 'hours-counted').number;
  return {
    id: rowId(book, TASKS, row),
    on,
    what: text('what'),
    planting: text('planting'),
    where: text('where'),
    kind: text('kind'),
    amounts: amountsAt(book, row, units),
    hours,
    who: text('who-name'),
    status: text('status'),
    note: text('note'),
  };
}

const AMOUNTS: readonly (readonly [column: string, what: string])[] = [
  ['pieces', 'pieces'],
  ['trays', 'trays'],
  ['weight', ''],
  ['length', 'of bed'],
];

/** The column that says what the pieces of a job are: 'blocks', 'cloves', 'bunches'. */
const PIECES_ARE = 'pieces-are';

function amountsAt(book: Book, row: number, units: Units): readonly string[] {
  return AMOUNTS.flatMap(([column, what]) => {
    const { number, text } = cellView(book, TASKS, row, column);
    if (number === undefined || !/[1-9]/.test(text)) return [];
    const word = column === 'pieces' && units.has(PIECES_ARE) ? cellView(book, TASKS, row, PIECES_ARE).text : what;
    return [[text, units.get(column) ?? '', text === '1' ? oneOf(word) : word].filter((part) => part !== '').join(' ')];
  });
}

/** 'tray' of 'trays', 'bunch' of 'bunches'; 'of bed' stays. */
export function oneOf(many: string): string {
  return many.replace(/(ch)es$|s$/, '$1');
}

/** Hours of a job in words, to a tenth: '1.2 h'; '' where it takes none that are counted. */
export function hoursOfJob(hours: number | undefined): string {
  if (hours === undefined || hours === 0) return '';
  return hours < 0.05 ? 'under 0.1 h' : `${hours.toFixed(1)} h`;
}

/** Hours that the hands have in the week that begins on a Monday; undefined where none are entered. */
export function handsIn(book: Book, monday: number): number | undefined {
  const row = rows(book, LABOUR).find((one) => cellValue(book, LABOUR, one, 'week') === monday);
  return row === undefined ? undefined : cellView(book, LABOUR, row, 'available').number;
}

/** The jobs as a calendar file. Those that are done say so. `written` is the civil day it is. */
export function calendarOf(book: Book, jobs: readonly Job[], written: number): string {
  const only = rowWithId(book, FARM, ONLY_ROW) ?? 0;
  const season = cellView(book, FARM, only, 'season').text;
  const events = jobs.map((job): CalendarEvent => {
    const title = [job.what, job.planting === '' ? job.where : job.planting].filter((part) => part !== '').join(': ');
    return {
      id: `${season}-${job.id}`,
      day: job.on,
      title: job.status === 'done' ? `Done: ${title}` : title,
      place: job.where,
      about: [...job.amounts, hoursOfJob(job.hours), job.who, job.note].filter((part) => part !== '').join('\n'),
      category: job.kind,
    };
  });
  return writeCalendar(events, { name: book.document.title, written });
}
