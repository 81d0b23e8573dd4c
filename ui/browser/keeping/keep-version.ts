// When a version of the workbook on screen is kept: before what changes much, at the turn of days, and when it is asked for.
// keeper.ts calls it before changes, showing.ts and beginning.ts when a workbook comes on screen, and the page by hand. What a
// version is stands in versions.ts, which is fetched when the first is kept.

import { type TransactionSource, writeWorkbookFile } from '../../../engine/index.ts';
import { whenIdle } from '../store/idle.ts';
import { keptWorkbook } from '../store/workbook.ts';
import type { Place } from './entries.ts';
import { sessionOnScreen } from './on-screen.ts';
import type { VersionKind } from './records.ts';
import { keptAs } from './state.ts';
import { faultOf } from './storage.ts';
import type { NewVersion } from './versions.ts';

/** The day of the last version, so that each day worked has one. */
let versionDay = '';

/** Before a change that is not a person's own single act, and before the first of a day. */
export function keepVersionBefore(source: TransactionSource): void {
  const today = new Date().toDateString();
  if (source === 'import' || source === 'upgrade') keepVersionSoon(source);
  else if (versionDay !== today) keepVersionSoon('day');
}

/** Keeps a version of the workbook as it is before a change, written out once the change is on screen. */
function keepVersionSoon(kind: VersionKind): void {
  const [workbook, id, place] = [keptWorkbook()?.branch(), keptAs.peek(), sessionOnScreen()?.place];
  if (workbook === undefined || id === undefined || place === undefined) return;
  versionDay = new Date().toDateString();
  whenIdle(() => {
    const text = writeWorkbookFile(workbook.data());
    workbook.release();
    void keepVersion({ workbook: id, kind, text, place }).catch(() => false);
  }, 1_000);
}

/** Keeps a version of the workbook on screen as it is now; gives whether it was. What fails is said where it was asked for. */
export async function keepVersionNow(kind: VersionKind, at?: Place, name?: string): Promise<boolean> {
  const workbook = keptWorkbook();
  const id = keptAs.peek();
  const place = at ?? sessionOnScreen()?.place;
  if (workbook === undefined || id === undefined || place === undefined) return false;
  versionDay = new Date().toDateString();
  const text = writeWorkbookFile(workbook.data());
  const named = name === undefined ? {} : { name };
  return keepVersion({ workbook: id, kind, text, place, ...named }).catch((problem: unknown) => {
    if (kind === 'named') throw faultOf(problem);
    return false;
  });
}

/** Keeps a version whose text is at hand. */
export async function keepVersion(version: NewVersion): Promise<boolean> {
  return (await import('./versions.ts')).keepVersion(version);
}
