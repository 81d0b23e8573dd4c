// Moving a planting in time or to another bed: the commands that do it, and what follows from it, tried on a branch so that nothing
// is changed while a hand is still moving. Pure; the calendar's picture and the tests call it.

import {
  type Book,
  type Command,
  Findings,
  isoDate,
  message,
  rowName,
  rowWithId,
  type Workbook,
} from '../../../../engine/index.ts';
import { BEDS, PLANTING, PLANTINGS } from '../../panels/columns.ts';
import type { Season } from '../../panels/read.ts';
import { askRow, askRows, hasColumns, inUnit } from '../kit/ask.ts';
import { type CalendarBar, isOnCalendar } from './season-calendar.ts';

const SOWN = 'sown';

export interface Move {
  /** The planting's row id. */
  readonly planting: string;
  /** Days later; below zero earlier. */
  readonly days: number;
  /** The bed to stand on, by its row id; undefined stays where it is. */
  readonly bed: string | undefined;
}

/** So many days, or as many of them as leave a bar a day within the season: beyond it nobody would see where it went. */
export function withinSeason(
  { from, until }: Pick<CalendarBar, 'from' | 'until'>,
  days: number,
  season: Season,
): number {
  return Math.max(season.first + 1 - until, Math.min(season.last - from, days));
}

/**
 * What a move types: whichever of sown and planted out was typed goes along; where neither was, the one that the planting begins
 * with is typed. Empty where nothing moves, or the planting has no dates.
 */
export function moveCommands(book: Book, { planting, days, bed }: Move): readonly Command[] {
  const slot = rowWithId(book, PLANTINGS, planting);
  if (slot === undefined) return [];
  const row = askRow(book, PLANTINGS, slot);
  const commands: Command[] = [];
  if (days !== 0) {
    const typed = [SOWN, PLANTING.plantedOut].filter((column) => row.typed(column));
    const columns = typed.length > 0 ? typed : [inTheBedFrom(row)];
    for (const column of columns) {
      const day = row.figure(column);
      if (day === undefined) continue;
      const content = { date: isoDate(day + days) };
      commands.push({ command: 'put cell', sheet: PLANTINGS, row: planting, column, content });
    }
  }
  if (bed !== undefined) {
    commands.push({
      command: 'put cell',
      sheet: PLANTINGS,
      row: planting,
      column: PLANTING.bed,
      content: { row: bed },
    });
  }
  return commands;
}

/** Raised plants and sets are planted out; seed sown in the bed is sown. */
function inTheBedFrom(row: ReturnType<typeof askRow>): string {
  return row.yes(PLANTING.raised) || !row.yes(PLANTING.fromSeed) ? PLANTING.plantedOut : SOWN;
}

export interface Followed {
  readonly name: string;
  readonly before: string;
  readonly after: string;
  readonly changed: boolean;
}

export interface WhatFollows {
  /** Why it can't be done; undefined where it can. */
  readonly why: string | undefined;
  readonly lines: readonly Followed[];
  /** What would need attention that doesn't now. */
  readonly warnings: readonly string[];
  /** The workbook as it would be; pictures of it can be drawn. */
  readonly after: Book;
}

/** Columns of the planting itself, in the order in which they are looked at. */
const OF_THE_PLANTING: readonly (readonly [string, string])[] = [
  ['Sown', SOWN],
  ['Planted out', PLANTING.plantedOut],
  ['Harvest from', 'harvest'],
  ['Bed free', PLANTING.bedFree],
  ['Can be sold', PLANTING.yield],
  ['Seeds needed', PLANTING.seeds],
  ['Bench', 'bench-area'],
  ['Margin', PLANTING.margin],
];

interface Peak {
  readonly name: string;
  readonly sheet: string;
  readonly column: string;
  readonly take: 'most' | 'sum';
}

const OF_THE_FARM: readonly Peak[] = [
  { name: 'Busiest week of the year', sheet: 'labour', column: 'hours', take: 'most' },
  { name: 'Curing racks at their fullest', sheet: 'harvest-and-curing', column: 'racks-that-day', take: 'most' },
  { name: 'Store at its fullest', sheet: 'stores-by-week', column: 'left', take: 'most' },
  { name: 'Seed to buy, all of it', sheet: 'seed-order', column: 'cost', take: 'sum' },
  { name: 'Margin, all plantings', sheet: PLANTINGS, column: PLANTING.margin, take: 'sum' },
];

/** What a move changes. Nothing is changed in the workbook itself. */
export function whatFollows(workbook: Workbook, move: Move, found: Findings = new Findings(workbook)): WhatFollows {
  const branch = workbook.branch();
  const done = branch.do(moveCommands(workbook, move), message('trial'));
  const bed = (book: Book): string => {
    const slot = rowWithId(book, PLANTINGS, move.planting);
    return slot === undefined ? '' : askRow(book, PLANTINGS, slot).text(PLANTING.bed);
  };
  const lines = [
    followed('Bed', bed(workbook), bed(branch)),
    ...OF_THE_PLANTING.flatMap(([name, column]) => {
      if (!hasColumns(workbook, { [PLANTINGS]: [column] })) return [];
      return followed(name, cellWords(workbook, move.planting, column), cellWords(branch, move.planting, column));
    }),
    ...OF_THE_FARM.flatMap((peak) => {
      const [before, after] = [peakWords(workbook, peak), peakWords(branch, peak)];
      return before === '' && after === '' ? [] : followed(peak.name, before, after);
    }),
  ];
  const known = new Set(found.all().map(sameness));
  const leaves = isOnCalendar(workbook, move.planting) && !isOnCalendar(branch, move.planting);
  const warnings = new Findings(branch)
    .all()
    .filter((finding) => finding.level !== 'note' && !known.has(sameness(finding)))
    .map(({ rowName: row, says }) => (row === '' ? says : `${row}: ${says}`));
  return {
    why: done.refused ? done.why : undefined,
    lines,
    warnings: leaves ? [LEAVES, ...warnings] : warnings,
    after: branch,
  };
}

const LEAVES = 'It would stand outside the season, and no longer on the calendar.';

function sameness({ sheet, rowId, column, check, says }: ReturnType<Findings['all']>[number]): string {
  return [sheet, rowId, column, check, says].join('\n');
}

function followed(name: string, before: string, after: string): Followed {
  return { name, before, after, changed: before !== after };
}

function cellWords(book: Book, planting: string, column: string): string {
  const slot = rowWithId(book, PLANTINGS, planting);
  return slot === undefined ? '' : askRow(book, PLANTINGS, slot).full(column);
}

function peakWords(book: Book, { sheet, column, take }: Peak): string {
  if (!hasColumns(book, { [sheet]: [column] })) return '';
  const figures = askRows(book, sheet).flatMap((row) => row.figure(column) ?? []);
  if (figures.length === 0) return '';
  const figure = take === 'sum' ? figures.reduce((sum, each) => sum + each, 0) : Math.max(...figures);
  return inUnit(book, sheet, column, figure);
}

/** What a move leaves as it was, as far as it is known: 'The same: harvest from 3 Jul 2027; can be sold 190 lb.' */
export function sameWords(lines: readonly Followed[]): string {
  if (lines.every(({ changed }) => !changed)) return 'Nothing has moved yet.';
  const same = lines.filter(({ changed, before }) => !changed && before !== '');
  if (same.length === 0) return '';
  return `The same: ${same.map(({ name, before }) => `${name.toLowerCase()} ${before}`).join('; ')}.`;
}

/** 'Keeper clumps goes a week later, to Barn 2.': read out as it moves. */
export function moveWords(book: Book, { planting, days, bed }: Move): string {
  const slot = rowWithId(book, PLANTINGS, planting);
  const name = slot === undefined ? '' : rowName(book, PLANTINGS, slot);
  const bedSlot = bed === undefined ? undefined : rowWithId(book, BEDS, bed);
  const parts = [
    days === 0 ? '' : `${Math.abs(days)} ${Math.abs(days) === 1 ? 'day' : 'days'} ${days > 0 ? 'later' : 'earlier'}`,
    bedSlot === undefined ? '' : `to ${rowName(book, BEDS, bedSlot)}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? `${name} stays where it is.` : `${name}: ${parts.join(', ')}.`;
}
