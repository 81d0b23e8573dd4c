// A paste that waits for a yes, because something in it doesn't simply fit: how it is read, what is mended and what is skipped.
// The dialog draws it; the grid that it was pasted in carries it out.

import { signal } from '@preact/signals';
import type { PasteJob } from '../grid/clipboard/paste-job.ts';

export interface PendingPaste {
  readonly job: PasteJob;
  /** Cells that are left out, by line and column. */
  readonly skipped: ReadonlySet<string>;
  /** Why it could not be done after all, in a sentence. */
  readonly refused: string | undefined;
  /** Does what the job asks; gives why not. */
  readonly take: (job: PasteJob, skipped: ReadonlySet<string>) => string | undefined;
}

/** The paste that waits; undefined where none does. */
export const pendingPaste = signal<PendingPaste | undefined>(undefined);

export function givePasteUp(): void {
  pendingPaste.value = undefined;
}
