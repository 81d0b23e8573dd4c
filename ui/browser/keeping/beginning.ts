// A fresh workbook on screen, which is kept from its first change on: what was done in it is remembered here until it can be
// kept, and tried again where it could not. The same for one that the browser cleared under an open page. Called by keeper.ts with
// every change, and by showing.ts; calls workbooks.ts, and puts a session on screen.

import {
  type Change,
  HistoryReach,
  NO_CHANGE,
  type Step,
  settings,
  type Workbook,
  writeWorkbookFile,
} from '../../../engine/index.ts';
import { newId } from '../files/world.ts';
import { keptWorkbook } from '../store/workbook.ts';
import { entryAfter, type Place, START } from './entries.ts';
import { faultWords } from './faults.ts';
import { keepVersion } from './keep-version.ts';
import { leaveLastWords } from './last-words.ts';
import { newSession, putOnScreen, sessionOnScreen } from './on-screen.ts';
import type { OpenedKept } from './opening.ts';
import type { JournalRecord } from './records.ts';
import { fail, keeping, keptAs, ownFile, tellWithHelp } from './state.ts';
import { faultOf } from './storage.ts';
import { beginWorkbook, isHere } from './workbooks.ts';

/** What was done so far, and how the workbook stood before that. */
let steps: Step[] = [];
let untouched: Workbook | undefined;
let beginning: Promise<void> | undefined;
/** The id under which it is being begun. */
let beginningAs: string | undefined;
/** When it was last tried. */
let triedAt = 0;
let again: ReturnType<typeof setTimeout> | undefined;

/** So many steps of a workbook that can't be kept are remembered for the day it can. */
const REMEMBERED = 2_000;
/** So long until what could not be begun is tried again. */
const AGAIN = 10_000;

/** Before a change of the fresh workbook: a copy that costs nothing before one of the two is changed. */
export function beforeFreshChange(): void {
  if (steps.length === 0) untouched = keptWorkbook()?.branch();
}

/** After a change of the fresh workbook. */
export function freshChanged(change: Change): void {
  steps.push({ done: change.transaction, inverse: change.inverse });
  if (keeping.peek().state !== 'failed') keeping.value = { state: 'keeping' };
  if (Date.now() - triedAt > AGAIN || Date.now() < triedAt) void beginKeeping();
}

/** What was done in the fresh workbook on screen so far. */
export function freshSteps(): readonly Step[] {
  return steps;
}

/** Another workbook comes on screen: nothing more is begun. */
export function forgetFresh(): void {
  steps = [];
  untouched = undefined;
  beginning = undefined;
  triedAt = 0;
  clearTimeout(again);
}

/** The page goes while a workbook is being begun. */
export function leaveWordsOfFresh(): void {
  if (beginningAs === undefined) return;
  leaveLastWords(
    beginningAs,
    steps.map(({ done }) => done),
  );
}

/** Done once the workbook that is being begun, if any, is kept or can't be. */
export async function whenBegun(): Promise<void> {
  await beginning;
}

/** Begins to keep the workbook on screen, with these steps for its history. */
export function beginWith(done: readonly Step[]): Promise<void> {
  steps = [...done];
  return beginKeeping();
}

/** Begins to keep the fresh workbook on screen with all that was done in it so far. */
export function beginKeeping(): Promise<void> {
  beginning ??= begin().finally(() => {
    beginning = undefined;
    beginningAs = undefined;
  });
  return beginning;
}

async function begin(): Promise<void> {
  const workbook = keptWorkbook();
  if (workbook === undefined || sessionOnScreen() !== undefined) return;
  triedAt = Date.now();
  clearTimeout(again);
  const id = newId();
  beginningAs = id;
  steps = steps.slice(-REMEMBERED);
  const done = steps.slice();
  const { entries, place, reach } = journalOf(id, done);
  const text = writeWorkbookFile(workbook.data());
  const file = ownFile.peek();
  const own = file === undefined ? {} : { file };
  try {
    await beginWorkbook({ id, title: settings(workbook).title, text, entries, ...own });
  } catch (problem) {
    if (keptWorkbook() !== workbook) return;
    again = setTimeout(() => void beginKeeping(), AGAIN);
    fail(faultWords(faultOf(problem)));
    return;
  }
  if (keptWorkbook() !== workbook) return;
  const atFirst = done.length === 0 ? text : untouched && writeWorkbookFile(untouched.data());
  untouched?.release();
  untouched = undefined;
  const next = newSession(id, beginAgainWhereGone);
  const ids = new Set(done.map((step) => step.done.id));
  const opened: OpenedKept = { ok: true, workbook, place, reach, turns: [], ids, since: 0, notes: [], rest: undefined };
  await next.openBegun(opened);
  if (keptWorkbook() !== workbook) {
    next.end();
    return;
  }
  putOnScreen(next);
  triedAt = 0;
  keptAs.value = id;
  if (atFirst !== undefined) {
    void keepVersion({ workbook: id, kind: 'opened', text: atFirst, place: START }).catch(() => undefined);
  }
  // What was done while it was begun.
  for (const { done: transaction, inverse } of steps.slice(done.length)) {
    next.changed({ transaction, inverse, change: NO_CHANGE, received: false });
  }
  steps = [];
  if (next.isDone) keeping.value = { state: 'kept', at: Date.now() };
}

/** The journal that these steps make, where it ends, and how far back what they undo reaches. */
function journalOf(id: string, done: readonly Step[]) {
  const entries: JournalRecord[] = [];
  let place: Place = START;
  const reach = new HistoryReach();
  for (const step of done) {
    const entry = entryAfter(place, id, step);
    entries.push(entry);
    place = { seq: entry.seq, sum: entry.sum };
    reach.note(step.done, entry.seq);
  }
  return { entries, place, reach };
}

/** Where the browser cleared its storage under an open page, the workbook on screen is kept anew with all that can be undone. */
export async function beginAgainWhereGone(): Promise<void> {
  const [now, workbook] = [sessionOnScreen(), keptWorkbook()];
  if (now === undefined || workbook === undefined || !now.writes) return;
  const there = await isHere(now.id).catch(() => undefined);
  if (sessionOnScreen() !== now || there === true) return;
  if (there === undefined) {
    // It was being taken away while it was asked.
    setTimeout(() => void beginAgainWhereGone(), 1_000);
    return;
  }
  now.end();
  putOnScreen(undefined);
  keptAs.value = undefined;
  tellWithHelp(
    'The browser had cleared what it kept for this page. The workbook on screen is kept again from here on.',
  );
  await beginWith(workbook.history.done);
}
