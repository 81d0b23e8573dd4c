// Light, dark or as the computer says: the choice, kept in this browser, and the attribute on the page that the design
// tokens follow. The page starts it once.

import { effect, signal } from '@preact/signals';
import { remember, remembered } from './single-words.ts';

export type Appearance = 'system' | 'light' | 'dark';

const KEY = 'dibble: appearance';

export const appearance = signal<Appearance>('system');

function stored(): Appearance {
  const kept = remembered(KEY);
  return kept === 'light' || kept === 'dark' ? kept : 'system';
}

/** Follows the choice and the computer's own setting from now on. */
export function startAppearance(): void {
  appearance.value = stored();
  const dark = matchMedia('(prefers-color-scheme: dark)');
  const systemIsDark = signal(dark.matches);
  dark.addEventListener('change', () => {
    systemIsDark.value = dark.matches;
  });
  effect(() => {
    const choice = appearance.value;
    const shown = choice === 'system' ? (systemIsDark.value ? 'dark' : 'light') : choice;
    document.documentElement.dataset.theme = shown;
    document.documentElement.dataset.agThemeMode = shown;
    remember(KEY, choice);
  });
}
