// The ways to change the workbook on screen: commands as one step, one step back, one step forward. What is refused changes
// nothing and is said.

import type {
  Command,
  Done,
  DoOptions,
  Message,
  Refusal,
  TransactionSource,
  UnitSystem,
} from '../../../engine/index.ts';
import { message, sayMessage } from '../../../engine/index.ts';
import { groundIn } from '../../../sheets-templates/index.ts';
import { announce, tell } from './notices.ts';
import { otherTab, units, workbookNow } from './workbook.ts';

export interface ChangeOptions extends DoOptions {
  /** The caller shows the sentence of a refusal itself, beside the field. */
  readonly quietly?: boolean;
}

const beforehand = new Set<(source: TransactionSource) => void>();

/** Is told before anything is changed here, while the workbook still stands as it was. */
export function beforeChanges(listener: (source: TransactionSource) => void): void {
  beforehand.add(listener);
}

/** Does commands as one step that undo takes back, or none of them. A refusal is shown and read out. */
export function change(commands: readonly Command[], said: Message, options: ChangeOptions = {}): Done | Refusal {
  const { quietly = false, ...how } = options;
  const now = workbookNow();
  // What joins the step before was told of with that.
  if (how.joined !== true) for (const listener of beforehand) listener(how.source ?? 'user');
  const outcome: Done | Refusal =
    now === undefined
      ? { refused: true, index: 0, why: 'No workbook is open.' }
      : now.do(commands, said, { ...how, tentative: otherTab.peek() !== undefined });
  if (outcome.refused && !quietly) tell(outcome.why, 'refusal');
  return outcome;
}

/** One cell, as a person types it. `columnName` is for the words of the step. */
export function typeCell(
  place: { readonly sheet: string; readonly row: string; readonly column: string },
  columnName: string,
  entry: string,
  options: ChangeOptions = {},
): Done | Refusal {
  const cleared = entry.trim() === '';
  const said = cleared
    ? message('clear cell', { column: columnName })
    : message('type cell', { column: columnName, entry });
  return change([{ command: 'set cell', ...place, entry }], said, options);
}

/** Takes the latest step back and says which it was. */
export function undo(): void {
  const other = otherTab.peek();
  if (other !== undefined) {
    other.back();
    return;
  }
  const done = workbookNow()?.undo();
  announce(done === undefined ? 'Nothing to undo.' : `Undone: ${sayMessage(done.transaction.message)}`);
}

/** Takes so many steps back, the latest first. */
export function undoSteps(count: number): void {
  const now = workbookNow();
  let undone = 0;
  while (undone < count && now?.undo() !== undefined) undone += 1;
  announce(undone === 1 ? 'Undone: one step.' : `Undone: ${undone} steps.`);
}

/** Does again what undo took back last and says what it was. */
export function redo(): void {
  const other = otherTab.peek();
  if (other !== undefined) {
    other.again();
    return;
  }
  const done = workbookNow()?.redo();
  announce(done === undefined ? 'Nothing to redo.' : `Done again: ${sayMessage(done.transaction.message)}`);
}

/** The way back that a notice offers. */
export const UNDO = { label: 'Undo', run: undo, undoes: true } as const;

/**
 * Switches the whole workbook between US customary and SI units; undo takes it back. Before anything is planted the farm's usual
 * beds and steps of spacing become those of the other units, too.
 */
export function setUnits(next: UnitSystem): void {
  const [now, book] = [units.peek(), workbookNow()];
  if (now === next) return;
  const ground = book === undefined ? [] : groundIn(book, now, next);
  change([{ command: 'set units', units: next }, ...ground], message(next === 'us' ? 'us units' : 'si units'));
}
