// In the sun: stronger contrast on every part of the page, chosen by hand and kept in this browser. The page starts it once.

import { effect, signal } from '@preact/signals';
import { remember, remembered } from './single-words.ts';

const KEY = 'dibble: in the sun';

export const inTheSun = signal(false);

/** Follows the choice from now on. */
export function startSun(): void {
  inTheSun.value = remembered(KEY) === 'yes';
  effect(() => {
    const chosen = inTheSun.value;
    document.documentElement.toggleAttribute('data-sun', chosen);
    remember(KEY, chosen ? 'yes' : 'no');
  });
}
