// Work done without the list of general units, and once more with it where a word asked for it: most plans name no such unit, and
// fetching the list takes as long as opening one. Called by the workers that draw seasons, of the page and of the terminal.

import { loadGeneralUnits, wantsGeneralUnits } from '../engine/index.ts';

export async function withUnitsWanted<T>(work: () => T | Promise<T>): Promise<T> {
  const done = await work();
  if (!wantsGeneralUnits()) return done;
  await loadGeneralUnits();
  return work();
}
