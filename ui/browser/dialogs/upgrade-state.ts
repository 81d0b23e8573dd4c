// What bringing the sheets up to date would change, shown before it is taken. The dialog draws it; opening a file and the
// menu of the workbook bring it up.

import { signal } from '@preact/signals';
import { message, type Upgrade, upgradeTo } from '../../../engine/index.ts';
import { newerTemplate } from '../files/read.ts';
import { change, UNDO } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import { workbookNow } from '../store/workbook.ts';

/** The upgrade that waits for a yes; undefined where none does. */
export const pendingUpgrade = signal<Upgrade | undefined>(undefined);

/** Shows what today's sheets would change, where the workbook's are earlier ones. */
export function offerUpgrade(): void {
  const book = workbookNow();
  const version = book === undefined ? undefined : newerTemplate(book);
  if (book !== undefined && version !== undefined) pendingUpgrade.value = upgradeTo(book, version);
}

/** Says that there are newer sheets, with the way to see what they would change. */
export function upgradeNotice(): void {
  tell('The sheets of this workbook are those of an earlier Dibble, and they work on as they are.', 'done', {
    label: 'See what today’s would change',
    run: offerUpgrade,
  });
}

/** Takes today's sheets, as one step that undo takes back. */
export function takeUpgrade(): void {
  const pending = pendingUpgrade.peek();
  pendingUpgrade.value = undefined;
  if (pending === undefined) return;
  const command = { command: 'use template', version: pending.version } as const;
  const done = change([command], message('upgrade'), { source: 'upgrade' });
  if (!done.refused) tell('The sheets are up to date.', 'done', UNDO);
}

export function keepSheets(): void {
  pendingUpgrade.value = undefined;
}
