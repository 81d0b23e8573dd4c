// Where units that the own table lacks are asked for. The list of them (general-units.ts) is large, so it is fetched when one is
// first met: until then no such word is a unit here, and that one was asked for is noted, so that a face knows to fetch the
// list and try again. Called by the vocabulary; faces fetch through the engine's public face.

import type { Atom } from './table.ts';

export type GeneralUnits = (name: string) => Atom | undefined;

/**
 * Named otherwise by growers, or measured otherwise than the list says: acre, spoons and stick are inexact there, months
 * and years have no fixed length, a drop is no measure, forces are easily taken for masses, the rest are other things.
 */
const REFUSED = new Set(
  (
    'acre acres teaspoon teaspoons tablespoon tablespoons stick sticks month months year years decade decades century ' +
    'centuries millennium millennia drop gtt gtts lt cp C F EC b bits bit B bytes byte lbf poundforce kgf ' +
    'kilogramforce kip kips newton N dyn dyne VAR VA eV electronvolt electronvolts Hz hertz link links li dr'
  ).split(' '),
);

/** What such a unit's name looks like; a letter alone stands for too many things. */
const NAME = /^[a-z][a-z0-9]+$|^W$/i;

let units: GeneralUnits | undefined;
let wanted = false;

/** The unit of this name in general use; undefined where it is none, or the list is not here yet. */
export function generalUnit(name: string): Atom | undefined {
  if (!NAME.test(name) || REFUSED.has(name)) return undefined;
  if (units === undefined) wanted = true;
  return units?.(name);
}

/** Whether the list of general units is here. */
export function knowsGeneralUnits(): boolean {
  return units !== undefined;
}

/**
 * Whether a word that the own table lacks was asked for while the list was not here: what was refused may be understood once
 * it is.
 */
export function wantsGeneralUnits(): boolean {
  return wanted && units === undefined;
}

/** Fetches the list of general units; from then on they are known at once. Rejects where it can't be fetched. */
export async function loadGeneralUnits(): Promise<void> {
  if (units !== undefined) return;
  const fetched = await import('./general-units.ts');
  units = fetched.generalUnit;
}
