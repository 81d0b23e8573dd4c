// Keeps the working copy: soon after each change, at once when the page is left, one writing at a time, the latest state
// always last. A failure is said and tried again with the next change; nothing kept before is lost by it.

import { effect, signal } from '@preact/signals';
import { packWorkbook } from '../../../engine/index.ts';
import { tell } from '../messages.ts';
import { readOnly, revision, workbookNow } from '../state.ts';
import { keepCopy } from './store.ts';

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
let stale = false;

/** Follows every change from now on. */
export function startKeeping(): void {
  let seen = revision.peek();
  effect(() => {
    const now = revision.value;
    if (now === seen) return;
    seen = now;
    keepSoon();
  });
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
  if (writing) {
    stale = true;
    return;
  }
  void keep();
}

async function keep(): Promise<void> {
  const workbook = workbookNow();
  if (workbook === undefined) return;
  writing = true;
  try {
    do {
      stale = false;
      const seen = revision.peek();
      const at = Date.now();
      await keepCopy('latest', { text: packWorkbook(workbookNow()?.declaration() ?? workbook.declaration()), at });
      if (seen === revision.peek()) keeping.value = { state: 'kept', at };
      else stale = true;
    } while (stale);
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
