// Where the functions of former templates are asked for. Where they are not at hand from the start (former-later.ts), a name that no
// function has is noted when one is met, so that a face knows to fetch them and try again.

import { AT_HAND } from './former-at-hand.ts';
import { addFunctions } from './index.ts';

let areHere = AT_HAND.length > 0;
let wanted = false;

/** A formula calls a function, or a column holds the record of one, that is not here. */
export function noteUnknownFunction(): void {
  wanted = true;
}

/** Whether an unknown function was met while those of former templates were not here: it may be one of them. */
export function wantsFormerFunctions(): boolean {
  return wanted && !areHere;
}

/** Fetches the functions of former templates; from then on formulas may call them. Rejects where they can't be fetched. */
export async function loadFormerFunctions(): Promise<void> {
  if (areHere) return;
  const { FORMER } = await import('./former/index.ts');
  addFunctions(FORMER);
  areHere = true;
}
