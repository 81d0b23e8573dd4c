// What today's sheets would change in the workbook on screen, worked out, and taken or left. Fetched when somebody first asks.

import { message, upgradeTo } from '../../../engine/index.ts';
import { newerTemplate } from '../files/read.ts';
import { change, UNDO } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import { workbookNow } from '../store/workbook.ts';
import { pendingUpgrade } from './upgrade-state.ts';

/** Works out what today's sheets would change, where the workbook's are earlier ones. */
export function showUpgrade(): void {
  const book = workbookNow();
  const version = book === undefined ? undefined : newerTemplate(book);
  if (book !== undefined && version !== undefined) pendingUpgrade.value = upgradeTo(book, version);
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
