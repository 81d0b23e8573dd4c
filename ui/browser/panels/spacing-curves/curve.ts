// A planting's figures at every spacing offered, by the workbook's own formulas: each spacing is tried on the workbook and
// taken back, so that the curve says what the sheet would say. Also the sentence that sums it up. No drawing here.

import { fromCanonical, type TableView, type WorkbookFace } from '../../../engine/index.ts';
import { columnOf, PLANTINGS, SPACING, unitOf } from './planting.ts';
import { entryOf, plainFigure, withUnit } from './shown.ts';

/** The columns drawn or listed against spacing, those that the sheet has. */
export const CURVES = ['Marketable yield', 'Mean plant mass', 'Mean diameter', 'Stations', 'Seeds needed', 'Margin'];

/** One spacing: figures by column name in the units shown; blank or without an answer is left out. */
export interface CurvePoint {
  readonly spacing: number;
  readonly figures: ReadonlyMap<string, number>;
}

/** The points of a planting at these spacings, in the unit of the spacing column. */
export function curveOf(
  workbook: WorkbookFace,
  table: TableView,
  row: number,
  spacings: readonly number[],
): readonly CurvePoint[] {
  const unit = unitOf(columnOf(table, SPACING));
  if (unit === undefined) return [];
  const columns = CURVES.flatMap((name) => {
    const shownIn = unitOf(columnOf(table, name));
    return shownIn === undefined ? [] : [{ name, shownIn }];
  });
  const answers = workbook.whatIf(
    spacings.map((spacing) => [
      { edit: 'cell', table: PLANTINGS, row, column: SPACING, entry: entryOf(spacing, unit) },
    ]),
    columns.map(({ name }) => ({ table: PLANTINGS, row, column: name })),
  );
  return spacings.map((spacing, index) => {
    const figures = new Map<string, number>();
    columns.forEach(({ name, shownIn }, at) => {
      const value = answers[index]?.[at];
      if (typeof value === 'number') figures.set(name, fromCanonical(shownIn, value));
    });
    return { spacing, figures };
  });
}

/** Figures of one column against spacing, in order. */
export function series(points: readonly CurvePoint[], column: string): readonly { spacing: number; figure: number }[] {
  return points.map(({ spacing, figures }) => ({ spacing, figure: figures.get(column) ?? Number.NaN }));
}

/** Whether a column has a figure at any spacing. */
export function hasFigures(points: readonly CurvePoint[], column: string): boolean {
  return points.some(({ figures }) => figures.has(column));
}

/** A figure to three digits that mean something: 129, 8.54, 0.431. */
export function brief(figure: number): string {
  if (figure === 0) return '0';
  const decimals = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(figure))));
  return plainFigure(figure, Math.min(4, decimals));
}

/**
 * What closer and wider would do to one column: 'Now at 6 in, 115 lb; closer at 4.5 in, 122 lb; wider at 9 in, 98 lb.' Empty
 * where there is no figure at today's spacing.
 */
export function curveSentence(
  points: readonly CurvePoint[],
  today: number,
  column: string,
  units: { readonly spacing: string; readonly figure: string },
): string {
  const at = (wanted: number): CurvePoint | undefined =>
    points.reduce<CurvePoint | undefined>(
      (best, point) =>
        best === undefined || Math.abs(point.spacing - wanted) < Math.abs(best.spacing - wanted) ? point : best,
      undefined,
    );
  const words = (point: CurvePoint | undefined, opening: string): string | undefined => {
    const figure = point?.figures.get(column);
    if (point === undefined || figure === undefined) return undefined;
    const spacing = withUnit(plainFigure(point.spacing, 2), units.spacing);
    return `${opening} at ${spacing}, ${withUnit(brief(figure), units.figure)}`;
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
