// Help while a formula is typed: what the word at the caret could become and which part of which function the caret is in,
// from the engine's editing help. Holds what that help has to know of the workbook.

import {
  type CallHelp,
  type Completion,
  type Completions,
  callAt,
  completionsAt,
  createVocabulary,
  SIGNATURES,
  type WorkbookFace,
} from '../../../engine/index.ts';

/** What the word at the caret could become; undefined where nothing was begun. */
export function completionsFor(
  workbook: WorkbookFace,
  table: string,
  text: string,
  caret: number,
): Completions | undefined {
  const found = completionsAt(text, caret, {
    catalog: {
      tables: workbook.tables().map(({ name, oneRow, key, columns }) => ({ name, oneRow, key, columns })),
    },
    table,
    functions: SIGNATURES,
    vocabulary: createVocabulary({ currency: workbook.currency }),
  });
  // Right after an operator everything could follow: a list then would only be in the way.
  if (found === undefined || found.items.length === 0) return undefined;
  const begun = found.to > found.from || text.charAt(found.from - 1) === '.';
  return begun ? found : undefined;
}

/** The call that the caret stands in. */
export function callHelp(text: string, caret: number): CallHelp | undefined {
  return callAt(text, caret, SIGNATURES);
}

export interface Completed {
  readonly text: string;
  readonly caret: number;
}

/** The text with a completion taken, the caret after it, inside the brackets of a function. */
export function complete(text: string, { from, to }: Completions, item: Completion): Completed {
  const opens = item.kind === 'function' && !item.text.endsWith('(') && text.charAt(to) !== '(';
  const put = opens ? `${item.text}(` : item.text;
  return { text: text.slice(0, from) + put + text.slice(to), caret: from + put.length };
}
