// What may wait until the page has nothing else to do.

/** Between two frames where the browser can tell when that is, and not later than `most` milliseconds where that is given. */
export function whenIdle(run: () => void, most?: number): void {
  if ('requestIdleCallback' in window) requestIdleCallback(run, most === undefined ? {} : { timeout: most });
  else setTimeout(run);
}
