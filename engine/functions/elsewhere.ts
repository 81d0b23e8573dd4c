// Where the functions are asked for that other spreadsheets have and formulas here have not. Their list (left-out.ts) is long and
// wanted only where such a name is written, so faces fetch it once they stand: until then the checker says that there is no such
// function, and not what to use instead.

import type { LeftOut } from './left-out.ts';

let find: ((name: string) => LeftOut | undefined) | undefined;

/** The entry of a name, whatever its case; undefined for a name that is none of these, or while the list is not here. */
export function leftOut(name: string): LeftOut | undefined {
  return find?.(name);
}

/** Fetches the list; from then on its names are known. Rejects where it can't be fetched. */
export async function loadLeftOut(): Promise<void> {
  const fetched = await import('./left-out.ts');
  find = fetched.leftOut;
}
