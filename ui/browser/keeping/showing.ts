// What comes on screen in place of what was there: a kept workbook with the session that goes on keeping it, or a fresh one; and
// the way back. Called by start.ts, switching.ts and what opens files; calls opening.ts to read what is kept and beginning.ts to
// begin with what is not.

import type { Workbook } from '../../../engine/index.ts';
import { showWorkbook } from '../store/show.ts';
import { keptWorkbook, otherTab } from '../store/workbook.ts';
import { beginAgainWhereGone, beginKeeping, beginWith, forgetFresh, freshSteps, whenBegun } from './beginning.ts';
import { handOf, takeInHand } from './hand.ts';
import { keepVersionNow } from './keep-version.ts';
import { takeLastWords } from './last-words.ts';
import { newSession, putOnScreen, sessionOnScreen } from './on-screen.ts';
import { type Found, type KeptOpening, type OpenedKept, openFound, type Rest } from './opening.ts';
import type { OwnFile } from './records.ts';
import type { Session } from './session.ts';
import type { Unsaved } from './standing.ts';
import { keeping, keptAs, ownFile, saveToFile } from './state.ts';
import { faultOf, within } from './storage.ts';
import { noteOpened } from './workbooks.ts';

/** So long a part of the page is waited for where a workbook waits for it. */
const FETCHING = 2_000;

/** A kept workbook that was found: as read, with the session that will keep it. */
export interface FoundKept {
  readonly session: Session;
  readonly found: Found;
}

/** Looks for a kept workbook. Rejects with a StorageFault where the database can't be asked. */
export async function findWorkbook(id: string): Promise<FoundKept> {
  const session = newSession(id, beginAgainWhereGone);
  try {
    return { session, found: await session.find() };
  } catch (problem) {
    session.end();
    throw faultOf(problem);
  }
}

/** Opens it and puts it on screen, with changes that are not on the disk yet. What can't be opened leaves everything as it is. */
export async function showFound({ session, found }: FoundKept, unsaved: Unsaved = []): Promise<KeptOpening> {
  const opened = await openFound(found);
  const { id } = session;
  if (!opened.ok) {
    session.end();
    return opened;
  }
  const hand = await handOf(id);
  leave();
  putOnScreen(session);
  keeping.value = { state: 'kept', at: Date.now() };
  keptAs.value = id;
  showWorkbook(opened.workbook);
  if (hand !== undefined) takeInHand(hand);
  if (opened.rest !== undefined && session.writes) await mend(id, opened, opened.rest).catch(() => undefined);
  void keepVersionNow('opened', opened.place);
  session.begin(opened, [...unsaved, ...takeLastWords(id)]);
  void noteShown(session, opened.workbook).catch(() => undefined);
  return opened;
}

/** Before anything is written: what comes too late must not cut off what was done since. */
async function mend(id: string, opened: OpenedKept, rest: Rest): Promise<void> {
  const mending = await within(FETCHING, import('./mending.ts'));
  await mending.mend(id, opened, rest);
}

/** Notes that it was opened, and reminds of its file where it is time to. */
async function noteShown(session: Session, workbook: Workbook): Promise<void> {
  const record = await noteOpened(session.id);
  if (sessionOnScreen() !== session || record === undefined) return;
  ownFile.value = record.file;
  const { remindOfFile } = await import('./reminding.ts');
  if (sessionOnScreen() === session) remindOfFile(workbook, record, saveToFile);
}

/** Sets aside what can't be opened at all, where it can be. */
export async function setAside(id: string, rest: Rest): Promise<void> {
  const work = within(FETCHING, import('./mending.ts')).then((mending) => mending.setAside(id, rest));
  await work.catch(() => undefined);
}

/** Puts a workbook on screen that is not kept until it is changed. */
export function showFresh(workbook: Workbook): void {
  leave();
  keeping.value = { state: 'nothing yet' };
  showWorkbook(workbook);
}

/** Puts a workbook on screen and keeps it at once. */
export async function showAndKeep(workbook: Workbook, own?: OwnFile): Promise<void> {
  showFresh(workbook);
  ownFile.value = own;
  keeping.value = { state: 'keeping' };
  await beginKeeping();
}

/** The way back to what is on screen now, for when another workbook has taken its place; what is not on the disk comes along. */
export function wayBack(): () => Promise<void> {
  const [before, id] = [keptWorkbook(), keptAs.peek()];
  const [unsaved, done, own] = [sessionOnScreen()?.unsaved ?? [], freshSteps(), ownFile.peek()];
  return async () => {
    if (before === undefined) return;
    const found = id === undefined ? undefined : await findWorkbook(id).catch(() => undefined);
    if (found !== undefined && (await showFound(found, unsaved)).ok) return;
    showFresh(before);
    if (id === undefined && done.length === 0) return;
    ownFile.value = own;
    await beginWith(done);
  };
}

/** Waits until all of the workbook on screen is on the disk; gives whether it is. A fresh one that nobody changed may go. */
export async function settleKeeping(): Promise<boolean> {
  await whenBegun();
  const session = sessionOnScreen();
  if (session === undefined) return keptWorkbook() === undefined || keeping.peek().state === 'nothing yet';
  return session.settle();
}

function leave(): void {
  sessionOnScreen()?.end();
  putOnScreen(undefined);
  forgetFresh();
  ownFile.value = undefined;
  keptAs.value = undefined;
  otherTab.value = undefined;
}
