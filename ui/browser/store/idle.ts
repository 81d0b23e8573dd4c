// What may wait until the page has nothing else to do.

/**
 * Between two frames where the browser can tell when that is, and not later than `most` milliseconds where that is given. `run` is
 * told how many milliseconds are left before the page has something to do again; undefined where nobody can tell.
 */
export function whenIdle(run: (left: number | undefined) => void, most?: number): void {
  if ('requestIdleCallback' in globalThis) {
    const idle = (deadline: IdleDeadline): void => run(deadline.didTimeout ? undefined : deadline.timeRemaining());
    requestIdleCallback(idle, most === undefined ? {} : { timeout: most });
  } else setTimeout(() => run(undefined));
}
