// A planting's figures at every spacing offered, by the workbook's own formulas: each spacing is tried on a branch of the
// workbook, so that the curve says what the sheet would say. Also the sentence that sums it up. No drawing here.

import {
  type Command,
  type Content,
  cellValue,
  fromCanonical,
  type SheetView,
  type Unit,
  type Workbook,
  type Writing,
} from '../../../../engine/index.ts';
import type { Reading } from '../../drawing/reader.tsx';
import type { RowAt } from '../../store/selection.ts';
import { columnOf, unitOf } from '../../store/sheets.ts';
import { plainFigure, withUnit } from '../../store/shown.ts';
import { PLANTING, PLANTINGS } from '../columns.ts';

const { spacing: SPACING, yield: YIELD, mass, diameter, stations, seeds, margin } = PLANTING;

/** The columns drawn or listed against spacing, those that the sheet has: what a row works out by itself. */
export const CURVES: readonly string[] = [YIELD, mass, diameter, stations, seeds];

/** With money, which rests on the whole season: every spacing then costs as much as an edit with all that follows. */
export const CURVES_WITH_MONEY: readonly string[] = [...CURVES, margin];

/** One spacing: figures by column in the units shown; blank or without an answer is left out. */
export interface CurvePoint {
  readonly spacing: number;
  readonly figures: ReadonlyMap<string, number>;
}

/** A spacing as it is put in a cell: a figure in the unit of the column, which it follows when units are switched. */
export function spacingContent(figure: number, unit: Unit): Content {
  return { number: figure, unit: unit.symbol, follows: true };
}

/**
 * The points of a planting at these spacings, in the unit of the spacing column: one after another, so that whoever asks may let
 * other things be done in between. All are of the workbook as it was when the first was asked for.
 */
export function* curveOf(
  book: Workbook,
  sheet: SheetView,
  row: RowAt,
  spacings: readonly number[],
  curves: readonly string[],
): Generator<CurvePoint, void> {
  const unit = unitOf(columnOf(sheet, SPACING));
  if (unit === undefined) return;
  const columns = curves.flatMap((id) => {
    const shownIn = unitOf(columnOf(sheet, id));
    return shownIn === undefined ? [] : [{ id, shownIn }];
  });
  const place = { sheet: PLANTINGS, row: row.id, column: SPACING };
  const cells = columns.map(({ id }) => ({ sheet: PLANTINGS, row: row.slot, column: id }));
  const branch = book.branch();
  try {
    for (const spacing of spacings) {
      const figures = new Map<string, number>();
      const put: Command = { command: 'put cell', ...place, content: spacingContent(spacing, unit) };
      if (branch.tryOut([put], cells) === undefined) {
        for (const { id, shownIn } of columns) {
          const value = cellValue(branch, PLANTINGS, row.slot, id);
          if (typeof value === 'number') figures.set(id, fromCanonical(shownIn, value));
        }
      }
      yield { spacing, figures };
    }
  } finally {
    branch.release();
  }
}

/** Figures of one column against spacing, in order. */
export function series(points: readonly CurvePoint[], column: string): readonly { spacing: number; figure: number }[] {
  return points.map(({ spacing, figures }) => ({ spacing, figure: figures.get(column) ?? Number.NaN }));
}

/** Whether a column has a figure at any spacing. */
export function hasFigures(points: readonly CurvePoint[], column: string): boolean {
  return points.some(({ figures }) => figures.has(column));
}

/** What spacing and figure are measured in, and how both are written. */
export interface CurveUnits {
  readonly spacing: string;
  readonly figure: string;
  readonly writing?: Writing | undefined;
}

/** Every spacing that has a figure, in words: '4.5 in: 122 lb.' */
export function curveReadings(points: readonly CurvePoint[], column: string, units: CurveUnits): readonly Reading[] {
  return points.flatMap(({ spacing, figures }) => {
    const figure = figures.get(column);
    if (figure === undefined) return [];
    const words = `${withUnit(plainFigure(spacing, 2, units.writing), units.spacing)}: ${withUnit(brief(figure, units.writing), units.figure)}.`;
    return [{ x: spacing, words }];
  });
}

/** A figure to three digits that mean something: 129, 8.54, 0.431. */
export function brief(figure: number, writing?: Writing): string {
  if (figure === 0) return '0';
  const decimals = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(figure))));
  return plainFigure(figure, Math.min(4, decimals), writing);
}

/**
 * What closer and wider would do to one column: 'Now at 6 in, 115 lb; closer at 4.5 in, 122 lb; wider at 9 in, 98 lb.' Empty
 * where there is no figure at today's spacing.
 */
export function curveSentence(points: readonly CurvePoint[], today: number, column: string, units: CurveUnits): string {
  const at = (wanted: number): CurvePoint | undefined =>
    points.reduce<CurvePoint | undefined>(
      (best, point) =>
        best === undefined || Math.abs(point.spacing - wanted) < Math.abs(best.spacing - wanted) ? point : best,
      undefined,
    );
  const words = (point: CurvePoint | undefined, opening: string): string | undefined => {
    const figure = point?.figures.get(column);
    if (point === undefined || figure === undefined) return undefined;
    const spacing = withUnit(plainFigure(point.spacing, 2, units.writing), units.spacing);
    return `${opening} at ${spacing}, ${withUnit(brief(figure, units.writing), units.figure)}`;
  };
  const now = at(today);
  const closer = at(today * 0.75);
  const wider = at(today * 1.5);
  const said = [words(now, 'Now')];
  if (said[0] === undefined) return '';
  if (closer !== now) said.push(words(closer, 'closer'));
  if (wider !== now) said.push(words(wider, 'wider'));
  return `${said.filter((part) => part !== undefined).join('; ')}.`;
}
