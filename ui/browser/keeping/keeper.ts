// Keeps the working copy: soon after each change, at once when the page is left, one writing at a time, the latest state
// always last. A failure is said and tried again with the next change; nothing kept before is lost by it.

import { signal } from '@preact/signals';
import { writeWorkbookFile } from '../../../engine/index.ts';
import { tell } from '../store/notices.ts';
import { followChanges, openings, readOnly, workbookNow } from '../store/workbook.ts';
import { keepCopy } from './copies.ts';

export type Keeping =
  | { readonly state: 'nothing yet' }
  | { readonly state: 'keeping' }
  | { readonly state: 'kept'; readonly at: number }
  | { readonly state: 'failed'; readonly why: string };

/** How things stand with the working copy; the top line shows it. */
export const keeping = signal<Keeping>({ state: 'nothing yet' });

/** Changes that follow each other closely are kept together. */
const SOON = 250;

let waiting: ReturnType<typeof setTimeout> | undefined;
let writing = false;
/** Counts the changes, so that one that came while a copy was written is not passed over. */
let changes = 0;

/** Follows every change from now on, and every workbook that comes on screen in place of this one. */
export function startKeeping(): void {
  let seen = openings.peek();
  openings.subscribe((count) => {
    if (count !== seen) keepSoon();
    seen = count;
  });
  followChanges(keepSoon);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') keepNow();
  });
  window.addEventListener('pagehide', keepNow);
  window.addEventListener('beforeunload', (event) => {
    keepNow();
    if (keeping.peek().state === 'failed') event.preventDefault();
  });
}

function keepSoon(): void {
  if (readOnly.peek() !== undefined) return;
  changes += 1;
  keeping.value = { state: 'keeping' };
  clearTimeout(waiting);
  waiting = setTimeout(() => whenIdle(keepNow), SOON);
}

/** Between two frames where the browser can tell when that is. */
function whenIdle(run: () => void): void {
  if ('requestIdleCallback' in window) requestIdleCallback(run, { timeout: SOON });
  else run();
}

/** Keeps what isn't kept yet. */
export function keepNow(): void {
  if (keeping.peek().state !== 'keeping' || readOnly.peek() !== undefined) return;
  clearTimeout(waiting);
  if (!writing) void keep();
}

async function keep(): Promise<void> {
  writing = true;
  try {
    for (let kept = -1; kept !== changes; ) {
      kept = changes;
      const workbook = workbookNow();
      if (workbook === undefined) return;
      const at = Date.now();
      await keepCopy('latest', { text: writeWorkbookFile(workbook.data()), history: workbook.history, at });
      if (kept === changes) keeping.value = { state: 'kept', at };
    }
  } catch (problem) {
    const why = `The working copy could not be kept on this computer${reason(problem)} Save the workbook to a file.`;
    if (keeping.peek().state !== 'failed') tell(why, 'refusal');
    keeping.value = { state: 'failed', why };
  } finally {
    writing = false;
  }
}

function reason(problem: unknown): string {
  const full = problem instanceof DOMException && problem.name === 'QuotaExceededError';
  return full ? ': its storage is full.' : '.';
}
