// The cells that drawn seasons write: put in once as a person would, from then on by their numbers alone. Called by draws.ts and
// moving-decisions.ts.

import type { Frame } from '../calculation/frame.ts';
import type { TrialRun } from '../calculation/graph/trial-run.ts';
import { RowSet } from '../calculation/row-set.ts';
import type { Workbook } from '../commands/workbook.ts';
import type { ProgramColumn } from '../schema/compile.ts';
import { FILLED } from '../values/column.ts';
import { columnOf } from './book.ts';
import { type Input, putInput } from './inputs.ts';

/** The cells of one column that are drawn, side by side. */
export interface DrawnColumn {
  readonly column: ProgramColumn;
  readonly slots: RowSet;
  /** Canonical, a season each. */
  readonly cells: readonly { readonly input: Input; readonly slot: number; readonly values: Float64Array }[];
}

/** Inputs by their columns; those that are no longer there are left out. */
export function drawnColumns(
  book: Workbook,
  inputs: readonly Input[],
  drawn: readonly Float64Array[],
): readonly DrawnColumn[] {
  const columns = new Map<ProgramColumn, { input: Input; slot: number; values: Float64Array }[]>();
  inputs.forEach(({ sheet, row, column: id }, i) => {
    const column = columnOf(book, sheet, id);
    const slot = book.document.slotOf(sheet, row);
    const values = drawn[i];
    if (column === undefined || slot === undefined || values === undefined) return;
    const cell = { input: { sheet, row, column: id }, slot, values };
    const cells = columns.get(column);
    if (cells === undefined) columns.set(column, [cell]);
    else cells.push(cell);
  });
  return [...columns].map(([column, cells]) => {
    const slots = new RowSet();
    for (const { slot } of cells) slots.add(slot);
    return { column, cells, slots };
  });
}

/** What hears of the cells: readers of their values, and of what is typed there. */
export function sourcesOf({ document }: Workbook, columns: readonly DrawnColumn[]) {
  const { built } = document.program;
  return columns.flatMap(({ column: { def } }) => {
    const typed = built.typedSource(def);
    return typed === undefined ? [built.columnSource(def)] : [built.columnSource(def), typed];
  });
}

/** Puts the first season's values into a branch as a person would, so that the cells count as typed; the sentence of a refusal. */
export function typeFirst(branch: Workbook, columns: readonly DrawnColumn[]): string | undefined {
  const commands = columns.flatMap(({ cells }) =>
    cells.map(({ input, values }) => putInput(branch, input, { value: values[0] ?? 0, unit: undefined })),
  );
  return branch.tryOut(commands, []);
}

/** Writes the values of one season, counted from the first that is drawn, and tells who hears of them. */
export function writeSeason(
  { document }: Workbook,
  frame: Frame,
  run: TrialRun,
  columns: readonly DrawnColumn[],
  season: number,
): void {
  const { built } = document.program;
  for (const { column, cells, slots } of columns) {
    const own = frame.ownColumn(column.def);
    for (const { slot, values } of cells) own.put(slot, (values[season] ?? 0) + 0, FILLED);
    own.touched();
    run.changed(frame, built.columnSource(column.def), slots);
    const typed = built.typedSource(column.def);
    if (typed !== undefined) run.changed(frame, typed, slots);
  }
}
