// The workbook on screen: which one is open, and how the page hears of its changes. Parts of the page read workbook() and
// draw again for the next frame when something changed; what follows change sets gets them joined, so that none is lost before it
// is drawn. Calls the engine alone.

import { batch, computed, signal, untracked } from '@preact/signals';
import {
  type Change,
  type ChangeSet,
  keepWork,
  openBranch,
  sayMessage,
  settings,
  type Workbook,
} from '../../../engine/index.ts';
import { forNextFrame } from './idle.ts';
import { whenAtRest } from './rest.ts';

const opened = signal<Workbook | undefined>(undefined);

/** The branch of the open workbook that is on screen in its place. */
const branch = signal<{ readonly id: string; readonly workbook: Workbook } | undefined>(undefined);

/** Raised when what changed is drawn for the next frame, and when another workbook is opened. Reading it makes a part draw then. */
export const revision = signal(0);

/** Raised once changes have come to rest for a moment: what stands around the cells follows them then (see rest.ts). */
export const rests = signal(0);

/** Raised whenever a workbook is opened in place of another: what was made for the old one is made anew. */
export const openings = signal(0);

/** Raised as well when a branch comes on screen or goes: what stood for a cell of the other is made anew. */
export const screens = signal(0);

/** Where another tab keeps the order of changes: a step is taken back, or done again, by asking it. */
export interface OtherTab {
  back(): void;
  again(): void;
}

/** The tab that keeps the order of changes, if that isn't this one: what is done here stands in the history once it is there. */
export const otherTab = signal<OtherTab | undefined>(undefined);

/** Whether a workbook is open; the page draws its parts only then. */
export const isOpen = computed(() => opened.value !== undefined);

/** The id of the branch on screen; undefined where the plan itself is. */
export const branchOnScreen = computed(() => branch.value?.id);

/** The workbook that is open, or its branch on screen. A part that reads it draws again after every change. */
export function workbook(): Workbook {
  revision.value;
  const now = branch.value?.workbook ?? opened.value;
  if (now === undefined) throw new Error('A part of the page was drawn before a workbook was open.');
  return now;
}

/** The workbook for what may come a moment after the cells: a part that reads it draws again when changes have come to rest. */
export function workbookAtRest(): Workbook {
  rests.value;
  screens.value;
  return untracked(workbook);
}

/** The workbook without subscribing: for event handlers and for what follows change sets itself. */
export function workbookNow(): Workbook | undefined {
  return branch.peek()?.workbook ?? opened.peek();
}

/** The workbook that is kept and saved: the plan itself, whatever branch of it is on screen. */
export function keptWorkbook(): Workbook | undefined {
  return opened.peek();
}

/** US customary or SI, as the workbook shows figures. */
export const units = computed(() => (opened.value === undefined ? 'us' : settings(workbook()).units));

/**
 * What undo would take back and redo would do again, in words; undefined where there is nothing. Asked of the workbook each time: a
 * key may come between a change and the frame that draws it.
 */
export function steps(): { readonly undo: string | undefined; readonly redo: string | undefined } {
  const { done, undone } = workbook().history;
  const [last, next] = [done.at(-1), undone.at(-1)];
  return {
    undo: last === undefined ? undefined : sayMessage(last.done.message),
    redo: next === undefined ? undefined : sayMessage(next.done.message),
  };
}

const everyFrame = new Set<(change: ChangeSet) => void>();
const everyChange = new Set<(change: Change) => void>();

/** Hears of all changes that are drawn together as one change set, of whatever workbook is open; gives back the way to stop. */
export function followFrames(listener: (change: ChangeSet) => void): () => void {
  everyFrame.add(listener);
  return () => everyFrame.delete(listener);
}

/** Hears of every transaction of the workbook that is kept, as it is done, of whatever workbook is open; gives back the way to stop. */
export function followChanges(listener: (change: Change) => void): () => void {
  everyChange.add(listener);
  return () => everyChange.delete(listener);
}

/** Draws again what shows the history, which another tab's word may change without a change of the workbook. */
export function redrawSteps(): void {
  revision.value += 1;
}

let stopFollowing = (): void => undefined;
let stopBranch = (): void => undefined;

function followed(workbook: Workbook): () => void {
  return workbook.follow(
    (change) => {
      batch(() => {
        revision.value += 1;
        for (const listener of everyFrame) listener(change);
      });
      whenAtRest(() => {
        rests.value += 1;
      });
    },
    (flush) => {
      if (held === undefined) forNextFrame(flush);
      else held.push(flush);
    },
  );
}

/** What waits to be drawn while many changes belong together; undefined where nothing is held back. */
let held: (() => void)[] | undefined;

/** Draws none of the changes that follow until the way given back is gone: then they are drawn as one. */
export function holdFrames(): () => void {
  held = [];
  return () => {
    const waiting = held ?? [];
    held = undefined;
    for (const flush of waiting) forNextFrame(flush);
  };
}

/** Puts a branch on screen in place of the plan, or the plan again. What is done in the branch is kept in the plan at once. */
export function showBranch(id: string | undefined): void {
  const base = opened.peek();
  const workbook = id === undefined || base === undefined ? undefined : openBranch(base, id);
  stopBranch();
  stopBranch = () => undefined;
  if (id !== undefined && base !== undefined && workbook !== undefined) {
    const frames = followed(workbook);
    const changes = workbook.subscribe(() => keepWork(base, id, workbook));
    stopBranch = () => {
      frames();
      changes();
    };
  }
  batch(() => {
    branch.value = id === undefined || workbook === undefined ? undefined : { id, workbook };
    screens.value += 1;
    revision.value += 1;
  });
}

/** A branch follows the plan: it is opened anew when the plan changes under it. */
function followBase({ transaction }: Change): void {
  const id = branch.peek()?.id;
  if (id !== undefined && transaction.operations.some(({ op }) => op !== 'branch')) showBranch(id);
}

/** Takes a workbook in place of the one before. show.ts puts it on screen. */
export function takeWorkbook(next: Workbook): void {
  stopFollowing();
  stopBranch();
  stopBranch = () => undefined;
  const frames = followed(next);
  const changes = next.subscribe((change) => {
    for (const listener of everyChange) listener(change);
    followBase(change);
  });
  stopFollowing = () => {
    frames();
    changes();
  };
  batch(() => {
    branch.value = undefined;
    opened.value = next;
    openings.value += 1;
    screens.value += 1;
    revision.value += 1;
  });
}
