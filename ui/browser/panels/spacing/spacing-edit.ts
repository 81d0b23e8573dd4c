// Changing a planting's spacing by hand, slider or key: every move is a real edit, so that all figures follow at once, and
// the moves of one drag or one burst of keys are one step of undo.

import { signal } from '@preact/signals';
import { edit, workbookNow } from '../state.ts';
import { columnOf, PLANTINGS, SPACING, unitOf } from './planting.ts';
import { entryOf } from './shown.ts';

/** True while a drag or a burst of keys goes on: what is costly waits until it is over. */
export const moving = signal(false);

/** The row whose moves join into one step. */
let row: number | undefined;
let rest: ReturnType<typeof setTimeout> | undefined;
/** While a pointer is down a pause ends nothing. */
let held = false;

/** A pause this long ends a burst of keys. */
const PAUSE = 700;

/** Sets the spacing of a planting to a figure in the column's unit, as one of a run of moves. */
export function moveSpacing(planting: number, figure: number): void {
  const workbook = workbookNow();
  const table = workbook?.table(PLANTINGS);
  const unit = table === undefined ? undefined : unitOf(columnOf(table, SPACING));
  if (workbook === undefined || unit === undefined) return;
  const entry = entryOf(figure, unit);
  if (workbook.cell(PLANTINGS, planting, SPACING).entry === entry) return;
  const joined = row === planting ? 'joined' : undefined;
  moving.value = true;
  const label = `${SPACING} of ${workbook.rowName(PLANTINGS, planting)}`;
  const done = edit([{ edit: 'cell', table: PLANTINGS, row: planting, column: SPACING, entry }], label, false, joined);
  row = done.refused ? undefined : planting;
  clearTimeout(rest);
  if (done.refused) moving.value = false;
  else if (!held) rest = setTimeout(restSpacing, PAUSE);
}

/** Holds the run open while a pointer is down, however long it pauses. */
export function holdSpacing(): void {
  held = true;
  clearTimeout(rest);
}

/** Ends the run: the next move is a step of its own. */
export function restSpacing(): void {
  held = false;
  clearTimeout(rest);
  row = undefined;
  moving.value = false;
}
