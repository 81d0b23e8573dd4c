// What a person does about a paste that waits, before saying yes: reads it otherwise, mends cells, skips some. Comes with the dialog.

import type { PasteOptions } from '../grid/clipboard/paste-job.ts';
import { pendingPaste } from './paste-state.ts';

/** Reads the block anew: another order of days, another mark, by the names in its first line or not. */
export function readPaste(options: Partial<PasteOptions>): void {
  const now = pendingPaste.peek();
  if (now === undefined) return;
  const isOther = options.byName !== undefined && options.byName !== now.job.options.byName;
  const mended = isOther ? new Map<string, string>() : now.job.options.mended;
  const skipped = isOther ? new Set<string>() : now.skipped;
  pendingPaste.value = { ...now, refused: undefined, skipped, job: now.job.with({ mended, ...options }) };
}

/** Writes another entry for a cell of the block. */
export function mendPaste(key: string, entry: string): void {
  const now = pendingPaste.peek();
  if (now !== undefined) readPaste({ mended: new Map(now.job.options.mended).set(key, entry) });
}

export function skipPaste(key: string, skip: boolean): void {
  const now = pendingPaste.peek();
  if (now === undefined) return;
  const skipped = new Set(now.skipped);
  if (skip) skipped.add(key);
  else skipped.delete(key);
  pendingPaste.value = { ...now, refused: undefined, skipped };
}

/** Does it, or keeps it open with the sentence why not. */
export function takePaste(): void {
  const now = pendingPaste.peek();
  if (now === undefined) return;
  const refused = now.take(now.job, now.skipped);
  pendingPaste.value = refused === undefined ? undefined : { ...now, refused };
}
