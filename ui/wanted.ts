// What the engine fetches only when a workbook first asks for it: the list of general units, the functions of former templates. Work is
// done without them, and once more with what a word or a call asked for: most plans want none, and to fetch them takes as long as to
// open one.

import { loadFormerFunctions, loadGeneralUnits, wantsFormerFunctions, wantsGeneralUnits } from '../engine/index.ts';

/** Whether something was asked for that is not here: what was refused may be understood once it is. */
export function isWanting(): boolean {
  return wantsGeneralUnits() || wantsFormerFunctions();
}

/** Fetches what was asked for. Rejects where it can't be fetched. */
export async function loadWanted(): Promise<void> {
  await Promise.all([
    wantsGeneralUnits() ? loadGeneralUnits() : undefined,
    wantsFormerFunctions() ? loadFormerFunctions() : undefined,
  ]);
}

/** Does something, and once more with what it asked for; what comes may let it ask for more, as a unit a function beside it. */
export async function withWanted<T>(work: () => T | Promise<T>): Promise<T> {
  let done = await work();
  while (isWanting()) {
    await loadWanted();
    done = await work();
  }
  return done;
}
