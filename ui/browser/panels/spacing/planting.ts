// What the panel reads of one planting: its cells by the names of the Plantings sheet, in canonical units. A sheet without
// these columns has no planting panel. Calls the workbook's face alone.

import type { ColumnView, TableView, Unit, WorkbookFace } from '../../../engine/index.ts';
import type { PlantedBed } from './bed-layout.ts';

export const PLANTINGS = 'Plantings';
export const SPACING = 'In-row spacing';

/** The columns that the picture can't do without. */
const NEEDED = [SPACING, 'Bed length used', 'Bed width', 'Rows', 'Stations'];

/** Whether rows of this sheet are plantings that can be drawn. */
export function isPlantings(table: TableView): boolean {
  return table.name === PLANTINGS && NEEDED.every((name) => table.columns.some((column) => column.name === name));
}

export function columnOf(table: TableView, name: string): ColumnView | undefined {
  return table.columns.find((column) => column.name === name);
}

/** The unit in which a column shows its figures; undefined where it holds none. */
export function unitOf(column: ColumnView | undefined): Unit | undefined {
  return column?.type?.kind === 'number' ? column.type.unit : undefined;
}

/** A figure in canonical units; undefined where the cell is blank, an error or no figure. */
export function figure(workbook: WorkbookFace, table: string, row: number, column: string): number | undefined {
  const value = workbook.value(table, row, column);
  return typeof value === 'number' ? value : undefined;
}

/** The planted bed of a row; undefined where a measure is missing or nothing can be planted. */
export function readBed(workbook: WorkbookFace, row: number): PlantedBed | undefined {
  const read = (column: string): number | undefined => figure(workbook, PLANTINGS, row, column);
  const length = read('Bed length used');
  const width = read('Bed width');
  const rows = read('Rows');
  const spacing = read(SPACING);
  if (!isAbove(length) || !isAbove(width) || !isAbove(rows) || !isAbove(spacing)) return undefined;
  return {
    length,
    width,
    rows,
    spacing,
    pattern: workbook.value(PLANTINGS, row, 'Pattern') === 'offset' ? 'offset' : 'square',
    perStation: read('Seeds per station') ?? 1,
    diameter: read('Mean diameter'),
  };
}

function isAbove(value: number | undefined): value is number {
  return value !== undefined && value > 0 && Number.isFinite(value);
}

/** What the In-row spacing would be if nothing were typed there: the crop's usual, in metres; undefined without a formula. */
export function usualSpacing(workbook: WorkbookFace, table: TableView, row: number): number | undefined {
  if (columnOf(table, SPACING)?.role !== 'default') return undefined;
  const cell = { table: table.name, row, column: SPACING };
  const [answer] = workbook.whatIf([[{ edit: 'take back', ...cell }]], [cell]);
  const value = answer?.[0];
  return typeof value === 'number' && isAbove(value) ? value : undefined;
}
