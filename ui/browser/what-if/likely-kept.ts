// What the season drawn last said; draws-state.ts fills it, the bar above the sheet shows it.

import { signal } from '@preact/signals';

interface Kept {
  readonly says: string;
  readonly old: boolean;
  /** The one that it was drawn from (kept-answers.ts). */
  readonly plan: number;
}

/** What was drawn in one sentence; undefined while nothing is, or once it was put away. */
export const likelyKept = signal<Kept | undefined>(undefined);
