// The one menu that can be open on the page: where it stands and what it offers. Menu.tsx draws it; whoever opens it
// brings the items.

import { signal } from '@preact/signals';

export interface MenuItem {
  readonly label: string;
  /** The keys that do the same, as read: 'Ctrl D'. */
  readonly keys: string | undefined;
  /** Why it can't be done just now: it stands there so that people find it, greyed, with the reason as its hint. */
  readonly why: string | undefined;
  readonly run: () => void;
}

export interface OpenMenu {
  readonly x: number;
  readonly y: number;
  readonly label: string;
  /** Items in sets, a line between them. */
  readonly sets: readonly (readonly MenuItem[])[];
}

export const openMenu = signal<OpenMenu | undefined>(undefined);

let before: Element | null = null;

/** Opens a menu; the focus comes back to where it was when it closes. */
export function showMenu(menu: OpenMenu): void {
  before = document.activeElement;
  openMenu.value = menu;
}

export function closeMenu(): void {
  if (openMenu.peek() === undefined) return;
  openMenu.value = undefined;
  if (before instanceof HTMLElement && before.isConnected) before.focus();
}
