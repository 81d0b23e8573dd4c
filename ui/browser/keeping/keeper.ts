// Follows the work in the workbook on screen and has it kept: hands every change to the session that keeps it, or to
// beginning.ts where there is none yet, has a version kept before what changes much, and notes title, time of work and file for the
// list of workbooks. Begun by main.tsx; what comes on screen is in showing.ts.

import { type Change, settings, type TransactionSource } from '../../../engine/index.ts';
import { beforeChanges } from '../store/change.ts';
import { followChanges, keptWorkbook } from '../store/workbook.ts';
import { beforeFreshChange, beginAgainWhereGone, freshChanged, leaveWordsOfFresh } from './beginning.ts';
import { keepVersionBefore } from './keep-version.ts';
import { leaveLastWords } from './last-words.ts';
import { sessionOnScreen } from './on-screen.ts';
import type { OwnFile } from './records.ts';
import { type Helps, helpWith, keeping, keptAs, ownFile } from './state.ts';
import { whenOpenAgain } from './storage.ts';
import { noteWorkbook } from './workbooks.ts';

let notedAt = 0;
let persistAsked = false;

const MINUTE = 60_000;

/** Follows every change from now on. */
export function startKeeping(helps: Helps): void {
  helpWith(helps);
  followChanges(onChange);
  beforeChanges(onBefore);
  whenOpenAgain(() => void beginAgainWhereGone());
  window.addEventListener('beforeunload', (event) => {
    sessionOnScreen()?.tryNow();
    if (keeping.peek().state === 'failed') event.preventDefault();
  });
  window.addEventListener('pagehide', () => {
    const session = sessionOnScreen();
    if (session !== undefined) leaveLastWords(session.id, session.unsaved);
    else leaveWordsOfFresh();
  });
}

function onBefore(source: TransactionSource): void {
  if (sessionOnScreen() === undefined) beforeFreshChange();
  else keepVersionBefore(source);
}

function onChange(change: Change): void {
  const session = sessionOnScreen();
  if (session !== undefined) session.changed(change);
  else freshChanged(change);
  if (!change.received) askToPersist();
  noteWorked(change);
}

/** At the first change of one's own: that the browser does not clear it when room gets short. */
function askToPersist(): void {
  if (persistAsked) return;
  persistAsked = true;
  if ('storage' in navigator) void navigator.storage.persist().catch(() => undefined);
}

/** Title and time of work, for the list of workbooks. */
function noteWorked({ transaction }: Change): void {
  const id = keptAs.peek();
  const now = Date.now();
  const titled = transaction.operations.some(({ op }) => op === 'title' || op === 'template');
  const workbook = keptWorkbook();
  if (id === undefined || workbook === undefined || (!titled && Math.abs(now - notedAt) < MINUTE)) return;
  notedAt = now;
  void noteWorkbook(id, { title: settings(workbook).title, worked: now }).catch(() => undefined);
}

/** Notes where the workbook on screen was saved, and what it held then. */
export function noteFile(own: OwnFile): void {
  ownFile.value = own;
  const id = keptAs.peek();
  if (id !== undefined) void noteWorkbook(id, { file: own }).catch(() => undefined);
}
