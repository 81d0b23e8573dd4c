// A text being typed in the formula line: which cell it is meant for, what the word at the caret could become; how it is begun and
// given up. taking.ts, fetched with the line, types on and takes it.

import { signal } from '@preact/signals';
import type { Completions } from '../../../engine/index.ts';
import { arrival, type Place, selection } from '../store/selection.ts';
import { screens, workbookNow } from '../store/workbook.ts';
import { lineCell, shownText } from './shown-text.ts';

export interface Draft {
  readonly place: Place;
  readonly text: string;
  readonly caret: number;
}

export const draft = signal<Draft | undefined>(undefined);

/** What helps while a formula is typed: fetched when one is begun, and undefined until then. */
export const help = signal<typeof import('./help.tsx') | undefined>(undefined);

/** What the word at the caret could become, and which of them Tab takes; -1: none is marked. */
export const offered = signal<Completions | undefined>(undefined);
export const active = signal(-1);

/** Why the text as it stands was not taken; the next key begins anew. */
export const refused = signal<string | undefined>(undefined);

/** Where the caret is to stand: the box takes the focus then. */
export const caretAt = signal<number | undefined>(undefined);

// What was being typed was meant for a cell of the workbook before.
screens.subscribe(() => {
  draft.value = undefined;
  offered.value = undefined;
  refused.value = undefined;
});

/** Whether something is typed that differs from what the cell holds. */
export function isTyping(): boolean {
  const now = draft.peek();
  const book = workbookNow();
  const cell = now === undefined || book === undefined ? undefined : lineCell(book, now.place);
  return now !== undefined && book !== undefined && cell !== undefined && now.text !== shownText(book, cell);
}

/** Begins a text for the cell in hand, or for another place, the caret at its end. */
export function beginLine(text: string, place: Place = selection.peek()): void {
  draft.value = { place, text, caret: text.length };
  refused.value = undefined;
  caretAt.value = text.length;
}

/** Gives the text up and goes back to the cell. */
export function leaveLine(): void {
  draft.value = undefined;
  offered.value = undefined;
  refused.value = undefined;
  arrival.value += 1;
}
