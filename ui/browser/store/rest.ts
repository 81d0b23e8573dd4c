// Waits until changes have come to rest, so that what stands around the cells (findings, counts, the list of sheets) is worked out
// after the changed cells are painted, and not at every frame of something dragged. workbook.ts calls it; what
// waits for idle moments (idle.ts) waits as long.

/** So long nothing changed: milliseconds. Less than an eye waits, more than two frames of a drag. */
export const QUIET = 50;
/** While changes go on, it is done at least so often: milliseconds. */
const AT_LEAST_EVERY = 1_000;

let timer: ReturnType<typeof setTimeout> | undefined;
let waitingSince = 0;

/** Does something once when nothing has changed for a moment; asked again before, it waits on. */
export function whenAtRest(act: () => void): void {
  const now = performance.now();
  if (timer === undefined) waitingSince = now;
  else clearTimeout(timer);
  const left = waitingSince + AT_LEAST_EVERY - now;
  timer = setTimeout(
    () => {
      timer = undefined;
      act();
    },
    Math.max(0, Math.min(QUIET, left)),
  );
}
