// The usual ground of a farm by the measures it thinks in: how wide and long its beds are and in which steps it sets plants. A
// workbook starts with it (season.ts), and one in which nothing is planted yet takes the other's when its units are changed.

import { type Book, type Command, cellValue, cellView, ONLY_ROW, rows, type UnitSystem } from '../engine/index.ts';

interface Measure {
  readonly column: string;
  readonly name: string;
  /** As typed in a workbook of these units, and in metres; nothing where the sheet's own default stands. */
  readonly typed: Readonly<Record<UnitSystem, readonly [entry: string, metres: number] | undefined>>;
}

/** Common practice on hand-worked beds. */
const MEASURES: readonly Measure[] = [
  { column: 'spacing-step', name: 'Spacing step', typed: { us: ['1 in', 0.0254], si: ['1 cm', 0.01] } },
  { column: 'bed-width', name: 'Bed width', typed: { us: undefined, si: ['75 cm', 0.75] } },
  { column: 'bed-length', name: 'Bed length', typed: { us: undefined, si: ['15 m', 15] } },
  { column: 'path-width', name: 'Path width', typed: { us: undefined, si: ['45 cm', 0.45] } },
];

const FARM = 'farm';

/** What the Farm sheet starts with, by the names of its columns. */
export function usualGround(units: UnitSystem): Readonly<Record<string, string>> {
  return Object.fromEntries(
    MEASURES.flatMap(({ name, typed }) => (typed[units] === undefined ? [] : [[name, typed[units][0]]])),
  );
}

/** Of a workbook that is given other units: its usual ground in them, where it is as it came and nothing is planted; else nothing. */
export function groundIn(book: Book, from: UnitSystem, to: UnitSystem): readonly Command[] {
  const [row] = rows(book, FARM);
  if (row === undefined || rows(book, 'plantings').length > 0) return [];
  return MEASURES.flatMap(({ column, typed }): Command[] => {
    const [came, comes] = [typed[from], typed[to]];
    const stands = cellValue(book, FARM, row, column);
    if (came !== undefined && (typeof stands !== 'number' || Math.abs(stands - came[1]) > 1e-9)) return [];
    if (came === undefined && cellView(book, FARM, row, column).origin === 'entered') return [];
    return [{ command: 'set cell', sheet: FARM, row: ONLY_ROW, column, entry: comes?.[0] ?? '', plain: true }];
  });
}
