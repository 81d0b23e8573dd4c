// The page's address names the workbook on screen, so that a reload, a bookmark or a second tab shows the same one: a kept one by
// its id, the demo farm as it comes by a word.

import { effect } from '@preact/signals';
import { keptAs } from './state.ts';

/** In the address of the demo farm as it comes. */
export const DEMO = 'demo';

/** The id in the address; undefined where it has none. */
export function addressed(): string | undefined {
  const id = location.hash.slice(1);
  return /^[a-z0-9]{4,40}$/.test(id) ? id : undefined;
}

/** Writes the workbook on screen into the address from now on. */
export function followAddress(): void {
  effect(() => {
    const id = keptAs.value;
    if (id !== undefined || addressed() !== DEMO) writeAddress(id);
  });
}

/** Writes what is on screen into the address: an id, DEMO, or nothing for what is not kept yet. */
export function writeAddress(name: string | undefined): void {
  if (name === addressed()) return;
  const bare = location.pathname + location.search;
  history.replaceState(history.state, '', name === undefined ? bare : `#${name}`);
}
