// How pictures read the workbook: figures in canonical units, a planted bed, the season's days. Pure questions.

import {
  type Book,
  cellValue,
  civilDay,
  ONLY_ROW,
  rowWithId,
  type SheetView,
  settings,
  showDate,
  type Workbook,
  type Writing,
  yearMonthDay,
} from '../../../engine/index.ts';
import type { Mark } from '../drawing/chart.tsx';
import { monthsBetween } from '../drawing/scale.ts';
import { columnOf } from '../store/sheets.ts';
import type { PlantedBed } from './bed-picture/bed-layout.ts';
import { FARM, FARM_COLUMN, PLANTING, PLANTINGS } from './columns.ts';

/** A figure in canonical units; undefined where the cell is blank, an error or no figure. */
export function figureAt(book: Book, sheet: string, slot: number, column: string): number | undefined {
  const value = cellValue(book, sheet, slot, column);
  return typeof value === 'number' ? value : undefined;
}

/** A figure of the one-row Farm sheet. */
export function farmFigure(book: Book, column: string): number | undefined {
  const slot = rowWithId(book, FARM, ONLY_ROW);
  return slot === undefined ? undefined : figureAt(book, FARM, slot, column);
}

/** The planted bed of a row; undefined where a measure is missing or nothing can be planted. */
export function readBed(book: Book, slot: number): PlantedBed | undefined {
  const read = (column: string): number | undefined => figureAt(book, PLANTINGS, slot, column);
  const length = read(PLANTING.lengthUsed);
  const width = read(PLANTING.bedWidth);
  const rows = read(PLANTING.rows);
  const spacing = read(PLANTING.spacing);
  if (!isAbove(length) || !isAbove(width) || !isAbove(rows) || !isAbove(spacing)) return undefined;
  return {
    length,
    width,
    rows,
    spacing,
    pattern: cellValue(book, PLANTINGS, slot, PLANTING.pattern) === 'offset' ? 'offset' : 'square',
    perStation: read(PLANTING.perStation) ?? 1,
    diameter: read(PLANTING.diameter),
  };
}

function isAbove(value: number | undefined): value is number {
  return value !== undefined && value > 0 && Number.isFinite(value);
}

/** What the spacing would be if nothing were typed there: the crop's usual, in metres; undefined without a formula. */
export function usualSpacing(book: Workbook, sheet: SheetView, row: { readonly slot: number; readonly id: string }) {
  const { spacing: column } = PLANTING;
  if (columnOf(sheet, column)?.role !== 'default') return undefined;
  const [answer] = book.whatIf(
    [[{ command: 'take back', sheet: PLANTINGS, row: row.id, column }]],
    [{ sheet: PLANTINGS, row: row.slot, column }],
  );
  const value = answer?.[0];
  return typeof value === 'number' && isAbove(value) ? value : undefined;
}

export interface Season {
  readonly first: number;
  readonly last: number;
}

/** From the season's first day to its last; the calendar year of today where the farm gives none. */
export function seasonOf(book: Book): Season {
  const { year } = yearMonthDay(settings(book).today);
  const first = farmFigure(book, FARM_COLUMN.starts) ?? civilDay(year, 1, 1);
  const last = farmFigure(book, FARM_COLUMN.ends) ?? civilDay(year, 12, 31);
  return last > first ? { first, last } : { first, last: first + 364 };
}

/** So many names of months stand side by side. */
const MOST_MONTHS = 7;

/** Marks of the months on an axis of days, every second one or fewer where there is little room; the ends where no two months begin. */
export function monthMarks({ first, last }: Season, writing?: Writing): readonly Mark[] {
  const months = monthsBetween(first, last, writing);
  if (months.length < 2) {
    return [...new Set([first, last])].map((day) => ({
      figure: day,
      text: showDate(day, writing).replace(/ \d+$/, ''),
    }));
  }
  const step = Math.ceil(months.length / MOST_MONTHS);
  return months.filter((_, index) => index % step === 0).map(({ day, name }) => ({ figure: day, text: name }));
}
