// Changing a planting's spacing by hand, slider or key: every move is a real edit, so that all figures follow at once, and
// the moves of one drag or one burst of keys are one step of undo. When it comes to rest the outcome is read out.

import { signal } from '@preact/signals';
import { announce } from '../messages.ts';
import { edit, workbookNow } from '../state.ts';
import { columnOf, PLANTINGS, SPACING, unitOf } from './planting.ts';
import { entryOf, inWords } from './shown.ts';

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
  const planting = row;
  row = undefined;
  moving.value = false;
  if (planting !== undefined) announce(outcome(planting));
}

const READ_OUT = ['Stations', 'Plant density', 'Mean plant mass', 'Marketable yield', 'Margin'];

/** 'In-row spacing 6 in: Stations 400, Mean plant mass 4.9 oz, ...' */
function outcome(planting: number): string {
  const workbook = workbookNow();
  const table = workbook?.table(PLANTINGS);
  if (workbook === undefined || table === undefined) return '';
  const words = (name: string): string => {
    const column = columnOf(table, name);
    return column === undefined ? '' : inWords(workbook.cell(PLANTINGS, planting, name), column);
  };
  const figures = READ_OUT.map((name) => ({ name, text: words(name) })).filter(({ text }) => text !== '');
  return `${SPACING} ${words(SPACING)}: ${figures.map(({ name, text }) => `${name} ${text}`).join(', ')}.`;
}
