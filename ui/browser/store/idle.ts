// What may wait until the page has nothing else to do, and gives way when it has.

import { QUIET } from './rest.ts';

/** Milliseconds of a slice, so that a frame has room beside it. */
const SLICE = 10;

/** Milliseconds that a slice which has waited too long waits on for a frame. A page out of sight has none. */
const FRAME = 100;

/**
 * Between two frames where the browser can tell when that is, and not later than `most` milliseconds where that is given. `run` is
 * told how many milliseconds are left before the page has something to do again; undefined where nobody can tell.
 */
export function whenIdle(run: (left: number | undefined) => void, most?: number): void {
  if ('requestIdleCallback' in globalThis) {
    const idle = (deadline: IdleDeadline): void => run(deadline.didTimeout ? undefined : deadline.timeRemaining());
    requestIdleCallback(idle, most === undefined ? {} : { timeout: Math.max(1, most) });
  } else setTimeout(() => run(undefined));
}

/**
 * Does a slice of work that may wait: when the page is idle and changes have come to rest, and not later than `most` milliseconds
 * from now. `run` is given what says whether to go on: not when its time is up, and not when a person's key or press waits for the page.
 */
export function inSlice(run: (goOn: () => boolean) => void, most: number): void {
  const latest = performance.now() + most;
  const begin = (left: number | undefined, isDrawn = false): void => {
    const now = performance.now();
    // The next change may come, as while something is dragged or typed.
    const pause = Math.min(latest, changed + QUIET) - now;
    if (pause > 0) {
      setTimeout(() => whenIdle(begin, latest - performance.now()), pause);
      return;
    }
    if (frames > 0 && now < latest) {
      whenIdle(begin, latest - now);
      return;
    }
    // Changes went on for as long as it can wait: right after a frame it holds none of them up.
    const isBusy = frames > 0 || (now < changed + QUIET && !isDrawn);
    if (isBusy && now < latest + FRAME) {
      afterFrame(() => begin(undefined, true), latest + FRAME - now);
      return;
    }
    const until = now + Math.min(SLICE, left ?? SLICE);
    run(() => performance.now() < until && !handWaits());
  };
  whenIdle(begin, most);
}

/** Once the next frame is painted, and not later than `most` milliseconds from now. */
function afterFrame(run: () => void, most: number): void {
  let isRun = false;
  const once = (): void => {
    if (isRun) return;
    isRun = true;
    run();
  };
  requestAnimationFrame(() => setTimeout(once));
  setTimeout(once, most);
}

/** Changes that wait for the frame that paints them. */
let frames = 0;
/** When the last of them came, in milliseconds. */
let changed = Number.NEGATIVE_INFINITY;

/**
 * Draws what changed for the next frame: at once when what is being done is done, so that the wait for the frame is made use of, and at
 * the latest when it begins. Until then no slice is begun that would hold the frame up.
 */
export function forNextFrame(draw: () => void): void {
  let isDrawn = false;
  const once = (): void => {
    if (isDrawn) return;
    isDrawn = true;
    draw();
  };
  frames += 1;
  changed = performance.now();
  requestAnimationFrame(() => {
    frames -= 1;
    once();
  });
  setTimeout(once);
}

declare global {
  interface Navigator {
    /** Of some browsers only: whether a key or a press waits until the page is free. */
    readonly scheduling?: { isInputPending(): boolean };
  }
}

function handWaits(): boolean {
  return globalThis.navigator?.scheduling?.isInputPending() === true;
}
