// Typing on in the formula line, with the words offered for it, and taking what was typed: the line calls it, and the table of
// commands by keys and menus once the line is there.

import { message, tryEntry, tryFormula, type Workbook } from '../../../engine/index.ts';
import { farQuestion } from '../entry/entry-questions.ts';
import { change, typeCell } from '../store/change.ts';
import { announce } from '../store/notices.ts';
import { arrival, type Place, rowAt, selection } from '../store/selection.ts';
import { columnAt } from '../store/sheets.ts';
import { withFetched } from '../store/wanted.ts';
import { workbookNow } from '../store/workbook.ts';
import { active, caretAt, draft, help, isTyping, offered, refused } from './draft.ts';
import { isFormula, lineCell } from './shown-text.ts';

/** Takes what was typed so far. */
export function typeInLine(text: string, caret: number): void {
  const book = workbookNow();
  const place = draft.peek()?.place ?? selection.peek();
  const cell = book === undefined ? undefined : lineCell(book, place);
  if (book === undefined || cell === undefined) return;
  draft.value = { place, text, caret };
  refused.value = undefined;
  active.value = -1;
  offer();
}

/** Offers what the word at the caret could become; where the code for that has yet to come, when it has. */
function offer(): void {
  const book = workbookNow();
  const now = draft.peek();
  const cell = book === undefined || now === undefined ? undefined : lineCell(book, now.place);
  if (book === undefined || now === undefined || cell === undefined || !isFormula(now.text, cell.column)) {
    offered.value = undefined;
    return;
  }
  if (help.peek() === undefined) fetchHelp();
  offered.value = help.peek()?.completionsFor(book, now.place.sheet, now.text, now.caret);
}

let fetching = false;

/** A formula can be typed without help: where there is no way to it, the next key tries again. */
function fetchHelp(): void {
  if (fetching) return;
  fetching = true;
  import('./help.tsx')
    .then((came) => {
      help.value = came;
      offer();
    })
    .catch(() => undefined)
    .finally(() => {
      fetching = false;
    });
}

export function markOffer(step: 1 | -1): void {
  const count = offered.peek()?.items.length ?? 0;
  if (count > 0) active.value = (active.peek() + step + count) % count;
}

/** Puts one of the words offered in the text. */
export function takeOffer(index: number): void {
  const now = draft.peek();
  const list = offered.peek();
  const item = list?.items[index];
  const helping = help.peek();
  if (now === undefined || list === undefined || item === undefined || helping === undefined) return;
  const { text, caret } = helping.complete(now.text, list, item);
  typeInLine(text, caret);
  offered.value = undefined;
  caretAt.value = caret;
}

/** Writes the text and goes back to the cell; where it can't stand, it stays with the sentence that says why. */
export function takeLine(): void {
  writeLine(() => {
    arrival.value += 1;
  });
}

/** Writes the text where it can stand, then goes on. */
export function writeLine(then: () => void): void {
  offered.value = undefined;
  const now = draft.peek();
  if (now === undefined || !isTyping()) {
    draft.value = undefined;
    then();
    return;
  }
  withFetched(
    () => write(now.place, now.text),
    (why) => why !== undefined,
    (why) => {
      refused.value = why;
      if (why !== undefined) announce(why);
      else {
        draft.value = undefined;
        then();
      }
    },
  );
}

/**
 * Writes a text typed in the line; undefined where it was taken, else why not. A formula that doesn't check, or that would
 * close a circle, is not taken: the column keeps the one it has.
 */
function write(place: Place, text: string): string | undefined {
  const book = workbookNow();
  const column = book === undefined ? undefined : columnAt(book, place);
  if (book === undefined || column === undefined) return undefined;
  const typed = text.trim();
  if (isFormula(text, column)) return writeFormula(book, { sheet: place.sheet, column: column.id }, column.name, typed);
  if (place.row === undefined) return undefined;
  const slot = rowAt(book, place.sheet, place.row)?.slot;
  const question = farQuestion(tryEntry(book, place.sheet, column.id, typed, slot));
  // Put once: the next key takes the sentence away, and the same text taken again is meant.
  if (question !== undefined && question !== refused.peek()) return question;
  const done = typeCell({ sheet: place.sheet, row: place.row, column: column.id }, column.name, typed, {
    quietly: true,
  });
  return done.refused ? done.why : undefined;
}

function writeFormula(
  book: Workbook,
  place: { readonly sheet: string; readonly column: string },
  name: string,
  formula: string,
): string | undefined {
  const tried = tryFormula(book, place.sheet, place.column, formula);
  if (!tried.ok) return tried.diagnostic.why;
  const command = { command: 'set formula', ...place, formula } as const;
  const said = message('set formula', { column: name });
  // A circle is found once the formula stands among the others: on a branch, so that a refused one leaves no trace.
  const circle = book.onBranch((branch) => {
    branch.do([command], said);
    return columnAt(branch, place)?.diagnostic;
  });
  if (circle !== undefined) return circle.why;
  const done = change([command], said, { quietly: true });
  return done.refused ? done.why : undefined;
}
