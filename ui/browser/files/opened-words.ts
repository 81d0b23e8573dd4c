// What is said of a workbook that came on screen.

import type { Shown } from '../keeping/switching.ts';

/** That it was opened, by its name, and what was noted on the way. */
export function openedWords(name: string, notes: readonly string[]): Shown {
  return { ok: true, says: [`Opened ${name}.`, ...notes].join(' '), flawed: notes.length > 0 };
}
