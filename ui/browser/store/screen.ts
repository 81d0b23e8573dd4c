// How wide and how high the window is, in the page's own terms.

import { signal } from '@preact/signals';

/** True from 700 px down, and on a phone that lies on its side: cards instead of the grid. */
export const narrow = signal(false);

/** True below 1100 px: the panel of the row in hand is a drawer. */
export const drawer = signal(false);

/** True from 640 px down: the page scrolls where a sheet is on it, so that its rows have room. */
export const low = signal(false);

/** Follows the window from now on. */
export function followWindow(): void {
  // The style sheets have the same words.
  follow('(max-width: 700px), (max-width: 1000px) and (max-height: 480px) and (pointer: coarse)', (matches) => {
    narrow.value = matches;
  });
  follow('(max-width: 1099px)', (matches) => {
    drawer.value = matches;
  });
  follow('(max-height: 640px)', (matches) => {
    low.value = matches;
  });
}

function follow(query: string, tell: (matches: boolean) => void): void {
  const list = matchMedia(query);
  tell(list.matches);
  list.addEventListener('change', () => tell(list.matches));
}
