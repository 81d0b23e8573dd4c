// Keys and the clipboard: finds the command of the table that is meant and carries it out. Listens on the window before
// anything else does, because the grid hands its own events out late. What stands in a text being typed, a menu or a list to
// pick from keeps the keys of its kind.

import { isOpen } from '../store/workbook.ts';
import { carryOut, refusalOf } from './carry-out.ts';
import type { PageCommand } from './command.ts';
import { Situation, type Surface } from './situation.ts';
import { COMMANDS } from './table.ts';

/** Follows keys and the clipboard from now on. */
export function startKeys(): void {
  window.addEventListener('keydown', onKey, true);
  for (const name of ['copy', 'cut', 'paste'] as const) document.addEventListener(name, onClipboard);
}

/** The keys that were pressed last: several commands share the clipboard's events and are told apart by them. */
let pressed: Pressed | undefined;

function onKey(event: KeyboardEvent): void {
  if (event.isComposing || !isOpen.peek()) return;
  pressed = event;
  const now = new Situation(surfaceOf(event.target));
  const command = COMMANDS.find((each) => each.clipboard === undefined && isMeant(each, event, now));
  if (command === undefined) {
    beginEntry(event, now);
    return;
  }
  // A key that types something does so where its command can't be done.
  if (types(event) && refusalOf(command, now) !== undefined) return;
  event.preventDefault();
  event.stopPropagation();
  carryOut(command, now);
}

/** A letter on a cell begins an entry with it. */
function beginEntry(event: KeyboardEvent, { surface, grid }: Situation): void {
  const alone = types(event) || (event.key.length === 1 && event.getModifierState('AltGraph'));
  if (surface !== 'grid' || !alone || grid === undefined) return;
  event.preventDefault();
  event.stopPropagation();
  grid.startEditing(event.key);
}

function onClipboard(event: ClipboardEvent): void {
  const now = new Situation(surfaceOf(document.activeElement));
  const able = COMMANDS.filter((each) => each.clipboard === event.type && works(each, now));
  const last = pressed;
  const meant = able.find(({ keys = [] }) => last !== undefined && keys.some((each) => matches(each, last)));
  const command = meant ?? able[0];
  if (command === undefined) return;
  event.preventDefault();
  carryOut(command, now, event.clipboardData ?? undefined);
}

function works({ where, applies }: PageCommand, now: Situation): boolean {
  return (where?.includes(now.surface) ?? true) && (applies?.(now) ?? true);
}

function isMeant(command: PageCommand, event: KeyboardEvent, now: Situation): boolean {
  return (command.keys ?? []).some((keys) => matches(keys, event)) && works(command, now);
}

type Pressed = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>;

/** Whether these are the keys that were pressed: 'Ctrl Shift Z', 'Alt Backspace', '='. */
export function matches(keys: string, event: Pressed): boolean {
  const parts = keys.split(' ');
  const key = parts.at(-1) ?? '';
  const pressed = event.key === ' ' ? 'Space' : event.key;
  if (pressed.toLowerCase() !== key.toLowerCase()) return false;
  // Where a sign stands on the keyboard, and whether it needs Shift, is the keyboard's own affair.
  const shift = /^[^a-z0-9]$/i.test(key) || event.shiftKey === parts.includes('Shift');
  return shift && event.altKey === parts.includes('Alt') && (event.ctrlKey || event.metaKey) === parts.includes('Ctrl');
}

function types({ key, ctrlKey, metaKey, altKey }: Pressed): boolean {
  return key.length === 1 && !ctrlKey && !metaKey && !altKey;
}

/** Where on the page something has the focus. */
export function surfaceOf(target: EventTarget | null): Surface {
  if (!(target instanceof Element)) return 'page';
  if (target.closest('dialog') !== null) return 'dialog';
  if (target.closest('.formula-box') !== null) return 'formula line';
  if (target.closest('.scratch-grid') !== null && !isText(target)) return 'scratch';
  const inCell = target.closest('.ag-cell') !== null;
  if (isText(target)) return inCell ? 'entry' : 'text';
  if (inCell) return 'grid';
  return target.closest('.field-value') === null ? 'page' : 'field';
}

function isText(target: Element): boolean {
  if (target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement) return true;
  return target instanceof HTMLInputElement && !['range', 'radio', 'checkbox', 'button', 'file'].includes(target.type);
}
