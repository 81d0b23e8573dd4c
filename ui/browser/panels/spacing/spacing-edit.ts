// Changing a planting's spacing by hand, slider or key: every move is a real edit, so that all figures follow at once, and
// the moves of one drag or one burst of keys are one step of undo.

import { signal } from '@preact/signals';
import { cellView, message, rowName, sheetView } from '../../../../engine/index.ts';
import { change } from '../../store/change.ts';
import type { RowAt } from '../../store/selection.ts';
import { columnOf, unitOf } from '../../store/sheets.ts';
import { workbookNow } from '../../store/workbook.ts';
import { PLANTING, PLANTINGS } from '../columns.ts';
import { spacingContent } from './curve.ts';

/** True while a drag or a burst of keys goes on: what is costly waits until it is over. */
export const moving = signal(false);

/** The planting whose moves join into one step. */
let row: string | undefined;
let rest: ReturnType<typeof setTimeout> | undefined;
/** While a pointer is down a pause ends nothing. */
let held = false;

/** A pause this long ends a burst of keys. */
const PAUSE = 700;

/** Sets the spacing of a planting to a figure in the column's unit, as one of a run of moves. */
export function moveSpacing({ id, slot }: RowAt, figure: number): void {
  const book = workbookNow();
  const column = book === undefined ? undefined : columnOf(sheetView(book, PLANTINGS), PLANTING.spacing);
  const unit = unitOf(column);
  if (book === undefined || column === undefined || unit === undefined) return;
  const now = cellView(book, PLANTINGS, slot, column.id);
  if (now.number === figure && now.unit === '') return;
  moving.value = true;
  const done = change(
    [{ command: 'put cell', sheet: PLANTINGS, row: id, column: column.id, content: spacingContent(figure, unit) }],
    message('move spacing', { column: column.name, row: rowName(book, PLANTINGS, slot) }),
    { joined: row === id },
  );
  row = done.refused ? undefined : id;
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
