// The page's address names the workbook on screen, so that a reload, a bookmark or a second tab shows the same one.

import { effect } from '@preact/signals';
import { keptAs } from './keeper.ts';

/** The id in the address; undefined where it has none. */
export function addressed(): string | undefined {
  const id = location.hash.slice(1);
  return /^[a-z0-9]{4,40}$/.test(id) ? id : undefined;
}

/** Writes the workbook on screen into the address from now on. */
export function followAddress(): void {
  effect(() => {
    const id = keptAs.value;
    if (id === addressed()) return;
    const bare = location.pathname + location.search;
    history.replaceState(history.state, '', id === undefined ? bare : `#${id}`);
  });
}
