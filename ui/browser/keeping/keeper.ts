// Keeps the workbook on screen: says how things stand with it, begins to keep a fresh one with its first change, keeps versions
// before what changes much and at the turn of days, and remembers what was in hand. The page asks and calls this file; what
// is written where stands in session.ts.

import { signal } from '@preact/signals';
import {
  type Change,
  HistoryReach,
  NO_CHANGE,
  type Step,
  sayMessage,
  settings,
  type TransactionSource,
  type Workbook,
  writeWorkbookFile,
} from '../../../engine/index.ts';
import { newId } from '../files/world.ts';
import { beforeChanges } from '../store/change.ts';
import { whenIdle } from '../store/idle.ts';
import { announce, tell } from '../store/notices.ts';
import { showAgain, showWorkbook } from '../store/show.ts';
import { followChanges, keptWorkbook, otherTab, redrawSteps } from '../store/workbook.ts';
import { entryAfter, type Place, START } from './entries.ts';
import { faultWords } from './faults.ts';
import { handOf, takeInHand } from './hand.ts';
import { leaveLastWords, takeLastWords } from './last-words.ts';
import { type Found, type KeptOpening, type OpenedKept, openFound, type Rest } from './opening.ts';
import type { JournalRecord, OwnFile, VersionKind } from './records.ts';
import { Session, type SessionEvents } from './session.ts';
import type { Unsaved } from './standing.ts';
import { faultOf, StorageFault, whenOpenAgain, within } from './storage.ts';
import type { Role } from './tabs.ts';
import type { NewVersion } from './versions.ts';
import { beginWorkbook, isHere, noteOpened, noteWorkbook } from './workbooks.ts';

export type Keeping =
  /** Fresh, and not changed yet. */
  | { readonly state: 'nothing yet' }
  | { readonly state: 'keeping' }
  | { readonly state: 'kept'; readonly at: number }
  | { readonly state: 'failed'; readonly why: string };

/** How things stand with what is on screen; the top line shows it. */
export const keeping = signal<Keeping>({ state: 'nothing yet' });

/** The id under which the workbook on screen is kept; undefined for a fresh one that was not changed yet. */
export const keptAs = signal<string | undefined>(undefined);

/** The person's file of the workbook on screen, as far as it is known. */
export const ownFile = signal<OwnFile | undefined>(undefined);

/** The part this tab plays among those in which the workbook is open. */
export const role = signal<Role>('writer');

/** What a person can do when the workbook can't be kept; main.tsx says what saving is. */
export interface Helps {
  readonly saveToFile: () => void;
}

let helps: Helps = { saveToFile: () => undefined };
let session: Session | undefined;
/** Of a fresh workbook: what was done so far, and how it stood before that. */
let steps: Step[] = [];
let untouched: Workbook | undefined;
let beginning: Promise<void> | undefined;
/** The id under which it is being begun. */
let beginningAs: string | undefined;
/** The day of the last version, so that each day worked has one. */
let versionDay = '';
let notedAt = 0;
let persistAsked = false;
/** When it was last tried to begin with the fresh workbook. */
let triedAt = 0;
let again: ReturnType<typeof setTimeout> | undefined;

/** So many steps of a workbook that can't be kept are remembered for the day it can. */
const REMEMBERED = 2_000;
/** So long until what could not be begun is tried again. */
const AGAIN = 10_000;
const MINUTE = 60_000;
/** So long a part of the page is waited for where a workbook waits for it. */
const FETCHING = 2_000;

/** Follows every change from now on. */
export function startKeeping(given: Helps): void {
  helps = given;
  followChanges(onChange);
  beforeChanges(onBefore);
  whenOpenAgain(() => void beginAgainWhereGone());
  window.addEventListener('beforeunload', (event) => {
    session?.tryNow();
    if (keeping.peek().state === 'failed') event.preventDefault();
  });
  window.addEventListener('pagehide', () => {
    if (session !== undefined) leaveLastWords(session.id, session.unsaved);
    else if (beginningAs !== undefined)
      leaveLastWords(
        beginningAs,
        steps.map(({ done }) => done),
      );
  });
}

// What comes on screen.

/** A kept workbook that was found: as read, with the session that will keep it. */
export interface FoundKept {
  readonly session: Session;
  readonly found: Found;
}

/** Looks for a kept workbook. Rejects with a StorageFault where the database can't be asked. */
export async function findWorkbook(id: string): Promise<FoundKept> {
  const next: Session = new Session(
    id,
    eventsOf(() => next),
  );
  try {
    return { session: next, found: await next.find() };
  } catch (problem) {
    next.end();
    throw faultOf(problem);
  }
}

/** Opens it and puts it on screen, with changes that are not on the disk yet. What can't be opened leaves everything as it is. */
export async function showFound({ session: next, found }: FoundKept, unsaved: Unsaved = []): Promise<KeptOpening> {
  const opened = await openFound(found);
  const { id } = next;
  if (!opened.ok) {
    next.end();
    return opened;
  }
  const hand = await handOf(id);
  leave();
  session = next;
  keeping.value = { state: 'kept', at: Date.now() };
  keptAs.value = id;
  showWorkbook(opened.workbook);
  if (hand !== undefined) takeInHand(hand);
  versionDay = '';
  if (opened.rest !== undefined && next.writes) await mend(id, opened, opened.rest).catch(() => undefined);
  void keepVersionNow('opened', opened.place);
  next.begin(opened, [...unsaved, ...takeLastWords(id)]);
  void noteOpened(id)
    .then((record) => {
      if (session !== next || record === undefined) return;
      ownFile.value = record.file;
      return import('./reminding.ts').then(({ remindOfFile }) => {
        if (session === next) remindOfFile(opened.workbook, record, helps.saveToFile);
      });
    })
    .catch(() => undefined);
  return opened;
}

/** Before anything is written: what comes too late must not cut off what was done since. */
async function mend(id: string, opened: OpenedKept, rest: Rest): Promise<void> {
  const mending = await within(FETCHING, import('./mending.ts'));
  await mending.mend(id, opened, rest);
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
  const [unsaved, done, own] = [session?.unsaved ?? [], steps, ownFile.peek()];
  return async () => {
    if (before === undefined) return;
    const found = id === undefined ? undefined : await findWorkbook(id).catch(() => undefined);
    if (found !== undefined && (await showFound(found, unsaved)).ok) return;
    showFresh(before);
    if (id === undefined && done.length === 0) return;
    steps = done;
    ownFile.value = own;
    await beginKeeping();
  };
}

/** Waits until all of the workbook on screen is on the disk; gives whether it is. A fresh one that nobody changed may go. */
export async function settleKeeping(): Promise<boolean> {
  if (beginning !== undefined) await beginning;
  if (session === undefined) return keptWorkbook() === undefined || keeping.peek().state === 'nothing yet';
  return session.settle();
}

function leave(): void {
  session?.end();
  session = undefined;
  steps = [];
  untouched = undefined;
  beginning = undefined;
  triedAt = 0;
  clearTimeout(again);
  ownFile.value = undefined;
  keptAs.value = undefined;
  otherTab.value = undefined;
  role.value = 'writer';
}

// Changes.

function onChange(change: Change): void {
  if (session !== undefined) session.changed(change);
  else {
    steps.push({ done: change.transaction, inverse: change.inverse });
    if (keeping.peek().state !== 'failed') keeping.value = { state: 'keeping' };
    if (Date.now() - triedAt > AGAIN || Date.now() < triedAt) void beginKeeping();
  }
  if (!change.received) askToPersist();
  noteWorked(change);
}

/** Begins to keep the fresh workbook on screen with all that was done in it so far. */
function beginKeeping(): Promise<void> {
  beginning ??= begin().finally(() => {
    beginning = undefined;
    beginningAs = undefined;
  });
  return beginning;
}

async function begin(): Promise<void> {
  const workbook = keptWorkbook();
  if (workbook === undefined || session !== undefined) return;
  triedAt = Date.now();
  clearTimeout(again);
  const id = newId();
  beginningAs = id;
  steps = steps.slice(-REMEMBERED);
  const done = steps.slice();
  const entries: JournalRecord[] = [];
  let place: Place = START;
  const reach = new HistoryReach();
  for (const step of done) {
    const entry = entryAfter(place, id, step);
    entries.push(entry);
    place = { seq: entry.seq, sum: entry.sum };
    reach.note(step.done, entry.seq);
  }
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
  untouched = undefined;
  const next = new Session(
    id,
    eventsOf(() => next),
  );
  const ids = new Set(done.map((step) => step.done.id));
  const opened: OpenedKept = { ok: true, workbook, place, reach, turns: [], ids, since: 0, notes: [], rest: undefined };
  await next.openBegun(opened);
  if (keptWorkbook() !== workbook) {
    next.end();
    return;
  }
  session = next;
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

/** Where the browser cleared its storage under an open page, the workbook on screen is kept anew with all that can be undone. */
async function beginAgainWhereGone(): Promise<void> {
  const [now, workbook] = [session, keptWorkbook()];
  if (now === undefined || workbook === undefined || !now.writes) return;
  const there = await isHere(now.id).catch(() => undefined);
  if (session !== now || there === true) return;
  if (there === undefined) {
    // It was being taken away while it was asked.
    setTimeout(() => void beginAgainWhereGone(), 1_000);
    return;
  }
  now.end();
  session = undefined;
  keptAs.value = undefined;
  steps = [...workbook.history.done];
  tell(
    'The browser had cleared what it kept for this page. The workbook on screen is kept again from here on.',
    'refusal',
    { label: 'Save to a file', run: () => helps.saveToFile() },
  );
  await beginKeeping();
}

/** Tries again at once to keep what could not be kept. */
export function keepAgain(): void {
  if (session !== undefined) session.tryNow();
  else if (keeping.peek().state === 'failed') void beginKeeping();
}

/** Notes where the workbook on screen was saved, and what it held then. */
export function noteFile(own: OwnFile): void {
  ownFile.value = own;
  const id = keptAs.peek();
  if (id !== undefined) void noteWorkbook(id, { file: own }).catch(() => undefined);
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

/** At the first change of one's own: that the browser does not clear it when room gets short. */
function askToPersist(): void {
  if (persistAsked) return;
  persistAsked = true;
  if ('storage' in navigator) void navigator.storage.persist().catch(() => undefined);
}

// Versions.

/** Before a change that is not a person's own single act, and before the first of a day. */
function onBefore(source: TransactionSource): void {
  if (session === undefined) {
    // A copy that costs nothing before one of the two is changed.
    if (steps.length === 0) untouched = keptWorkbook()?.branch();
    return;
  }
  const today = new Date().toDateString();
  if (source === 'import' || source === 'upgrade') keepVersionSoon(source);
  else if (versionDay !== today) keepVersionSoon('day');
}

/** Keeps a version of the workbook as it is before a change, written out once the change is on screen. */
function keepVersionSoon(kind: VersionKind): void {
  const [workbook, id, place] = [keptWorkbook()?.branch(), keptAs.peek(), session?.place];
  if (workbook === undefined || id === undefined || place === undefined) return;
  versionDay = new Date().toDateString();
  whenIdle(
    () => void keepVersion({ workbook: id, kind, text: writeWorkbookFile(workbook.data()), place }).catch(() => false),
    1_000,
  );
}

/** Keeps a version of the workbook on screen as it is now; gives whether it was. What fails is said where it was asked for. */
export async function keepVersionNow(kind: VersionKind, at?: Place, name?: string): Promise<boolean> {
  const workbook = keptWorkbook();
  const id = keptAs.peek();
  const place = at ?? session?.place;
  if (workbook === undefined || id === undefined || place === undefined) return false;
  versionDay = new Date().toDateString();
  const text = writeWorkbookFile(workbook.data());
  const named = name === undefined ? {} : { name };
  return keepVersion({ workbook: id, kind, text, place, ...named }).catch((problem: unknown) => {
    if (kind === 'named') throw faultOf(problem);
    return false;
  });
}

async function keepVersion(version: NewVersion): Promise<boolean> {
  return (await import('./versions.ts')).keepVersion(version);
}

// What the session tells.

function eventsOf(whose: () => Session): SessionEvents {
  const isNow = (): boolean => session === undefined || session === whose();
  return {
    keeping: () => {
      if (isNow() && keeping.peek().state !== 'failed') keeping.value = { state: 'keeping' };
    },
    // One that is being begun says so itself, once it takes changes.
    kept: (at) => {
      if (session === whose()) keeping.value = { state: 'kept', at };
    },
    failed: (fault) => fail(faultWords(fault)),
    failedElsewhere: fail,
    failedWords: faultWords,
    silent: () => {
      const why = 'Another tab keeps this workbook, and it does not answer: what you change here is not kept.';
      fail(why, { label: 'Keep it from this tab', run: () => session?.takeOver() });
    },
    role: (now) => {
      role.value = now;
      if (now === 'writer') void beginAgainWhereGone();
      otherTab.value = now === 'follower' ? { back: () => whose().back(), again: () => whose().again() } : undefined;
      if (now === 'apart') tellApart();
    },
    replaced: ({ workbook }) => showAgain(workbook),
    lost: (why) => fail(why instanceof StorageFault ? faultWords(why) : `${why} Save the workbook to a file.`),
    historyChanged: redrawSteps,
    stepped: (transaction) => {
      if (transaction === false) announce('Nothing was taken back: something else was changed in another tab.');
      else {
        const words = transaction.undoes === undefined ? 'Done again' : 'Undone';
        announce(`${words}: ${sayMessage(transaction.message)}`);
      }
    },
  };
}

let apartTold = false;

function tellApart(): void {
  if (apartTold) return;
  apartTold = true;
  tell('This browser keeps tabs from talking to each other: work in one tab at a time.');
}

function fail(why: string, help?: { readonly label: string; readonly run: () => void }): void {
  const before = keeping.peek();
  keeping.value = { state: 'failed', why };
  if (before.state === 'failed' && before.why === why) return;
  tell(why, 'refusal', help ?? { label: 'Save to a file', run: () => helps.saveToFile() });
}
