// Light, dark or as the computer says: the choice, kept in this browser, and the attribute on the page that the design
// tokens follow. Also keeps which width class the window is in. The page starts it once.

import { effect, signal } from '@preact/signals';
import { drawer, narrow } from './state.ts';

export type Appearance = 'system' | 'light' | 'dark';

const KEY = 'dibble: appearance';

export const appearance = signal<Appearance>(stored());

function stored(): Appearance {
  const kept = localStorage.getItem(KEY);
  return kept === 'light' || kept === 'dark' ? kept : 'system';
}

/** Follows the choice, the computer's own setting and the window's width from now on. */
export function startAppearance(): void {
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
    localStorage.setItem(KEY, choice);
  });
  followWidth('(max-width: 700px)', (matches) => {
    narrow.value = matches;
  });
  followWidth('(max-width: 1099px)', (matches) => {
    drawer.value = matches;
  });
}

function followWidth(query: string, tell: (matches: boolean) => void): void {
  const list = matchMedia(query);
  tell(list.matches);
  list.addEventListener('change', () => tell(list.matches));
}
