// What every part of the page shares: the workbook that is open, when it last changed, which cell is in hand, and the
// ways to change it. Parts of the page read the signals and call the functions; this file calls the engine's workbook and
// messages.ts, and knows nothing of how anything is drawn.

import { computed, signal } from '@preact/signals';
import type { Attention, ChangeSet, Edit, Refusal, WorkbookDeclaration, WorkbookFace } from '../../engine/index.ts';
import { announce, tell } from './messages.ts';

/** The engine's workbook as the page holds it: its face, and what a file needs to keep it. */
export interface Workbook extends WorkbookFace {
  declaration(): WorkbookDeclaration;
}

/** A cell, or a whole sheet where row and column are absent. `row` is a slot. */
export interface Place {
  readonly table: string;
  readonly row: number | undefined;
  readonly column: string | undefined;
}

const opened = signal<Workbook | undefined>(undefined);

/** Raised once per change set and whenever another workbook is opened. Reading its value makes a part draw again then. */
export const revision = signal(0);

/** Raised whenever a workbook is opened in place of another: what was made for the old one is made anew. */
export const openings = signal(0);

/** The latest change set; undefined right after a workbook was opened. */
export const latestChange = signal<ChangeSet | undefined>(undefined);

/** The sheet on screen and the cell in hand. */
export const selection = signal<Place>({ table: '', row: undefined, column: undefined });

/** The sheet on screen alone, for parts that don't care which of its cells is in hand. */
export const tableOnScreen = computed(() => selection.value.table);

/** Raised by goTo: the grid scrolls to the selection and takes the focus. */
export const arrival = signal(0);

/** Why nothing can be changed just now (the workbook is open in another tab), as a sentence; undefined where it can. */
export const readOnly = signal<string | undefined>(undefined);

/** True from 700 px down: cards instead of the grid. */
export const narrow = signal(false);

/** True below 1100 px: the panel of the row in hand is a drawer. */
export const drawer = signal(false);

/** Whether a workbook is open; the page draws its parts only then. */
export const isOpen = computed(() => opened.value !== undefined);

/** The workbook that is open. A part that reads it draws again after every change. */
export function workbook(): Workbook {
  revision.value;
  const now = opened.value;
  if (now === undefined) throw new Error('A part of the page was drawn before a workbook was open.');
  return now;
}

/** The workbook without subscribing: for event handlers and for what follows change sets itself. */
export function workbookNow(): Workbook | undefined {
  return opened.peek();
}

/** US customary or SI, as the workbook shows figures. */
export const units = computed(() => (opened.value === undefined ? 'us' : workbook().units));

/** What needs attention, errors first, computed once per change. */
export const attention = computed<readonly Attention[]>(() => {
  if (opened.value === undefined) return [];
  const order = { error: 0, warning: 1, note: 2 };
  return [...workbook().attention()].sort((a, b) => order[a.level] - order[b.level]);
});

/** Puts a workbook on screen in place of the one before, at its first sheet or at the same place where it has one. */
export function showWorkbook(next: Workbook): void {
  stopFollowing();
  const at = selection.peek();
  opened.value = next;
  latestChange.value = undefined;
  openings.value += 1;
  stopFollowing = next.subscribe((change) => {
    latestChange.value = change;
    revision.value += 1;
    keepSelectionOnARow();
  });
  revision.value += 1;
  const first = next.tables()[0];
  const table = next.table(at.table) ?? first;
  if (table !== undefined) selectPlace({ table: table.name, row: undefined, column: undefined });
}

let stopFollowing = (): void => undefined;

/** The row in hand may have gone with the change; then its neighbour is in hand. */
function keepSelectionOnARow(): void {
  const now = opened.peek();
  const { table, row, column } = selection.peek();
  if (now === undefined || row === undefined || now.table(table) === undefined) return;
  const rows = now.rows(table);
  if (rows.includes(row)) return;
  const neighbour = [...rows].reverse().find((slot) => slot < row) ?? rows[0];
  selection.value = { table, row: neighbour, column };
}

/**
 * Does the edits as one step that undo takes back. Where they are refused nothing is done; the sentence is shown and read
 * out unless `quietly` (the caller shows it beside the field) is true. `joined` makes it one step with the one before of
 * the same label, as while something is dragged.
 */
export function edit(edits: readonly Edit[], label: string, quietly = false, joined?: 'joined'): ChangeSet | Refusal {
  const now = opened.peek();
  const why = readOnly.peek();
  const outcome: ChangeSet | Refusal =
    why !== undefined || now === undefined
      ? { refused: true, index: 0, why: why ?? 'No workbook is open.' }
      : now.edit(edits, label, joined);
  if (outcome.refused && !quietly) tell(outcome.why, 'refusal');
  return outcome;
}

/** One cell, as a person types it. */
export function editCell(place: { table: string; row: number; column: string }, entry: string): ChangeSet | Refusal {
  return edit([{ edit: 'cell', ...place, entry }], `${place.column}: ${entry === '' ? 'cleared' : entry}`);
}

/** Takes the latest step back and says which it was. */
export function undo(): void {
  if (refuseWhileReadOnly()) return;
  const done = opened.peek()?.undo();
  announce(done === undefined ? 'Nothing to undo.' : `Undone: ${done.label}`);
}

/** Does again what undo took back last and says what it was. */
export function redo(): void {
  if (refuseWhileReadOnly()) return;
  const done = opened.peek()?.redo();
  announce(done === undefined ? 'Nothing to redo.' : `Done again: ${done.label}`);
}

function refuseWhileReadOnly(): boolean {
  const why = readOnly.peek();
  if (why !== undefined) tell(why, 'refusal');
  return why !== undefined;
}

/** Puts a cell in hand without moving the focus: the grid calls it as a person walks the cells. */
export function selectPlace(place: Place): void {
  const at = selection.peek();
  if (at.table === place.table && at.row === place.row && at.column === place.column) return;
  selection.value = place;
}

/** Goes to a sheet, a row or a cell: the sheet comes on screen, scrolls there and takes the focus. */
export function goTo(table: string, row?: number, column?: string): void {
  selection.value = { table, row, column };
  arrival.value += 1;
}

/** Switches the whole workbook between US customary and SI units; undo takes it back. */
export function setUnits(next: 'us' | 'si'): void {
  if (opened.peek()?.units === next) return;
  edit([{ edit: 'units', units: next }], next === 'us' ? 'Show US customary units' : 'Show metric units');
}
