// What the page and the workers that draw seasons tell each other. Plain data.

import type { AskedWeeks, DocumentData, Drawn, Figure } from '../../../engine/index.ts';

/** What is asked of seasons that a seed gives. */
export interface SeasonsOf {
  readonly figures: readonly Figure[];
  readonly weekly: readonly AskedWeeks[];
  readonly seed: number;
}

export interface SeasonsOrder extends SeasonsOf {
  /** Of all seasons that the seed gives, those from the first up to the last but one. */
  readonly from: number;
  readonly until: number;
}

export type DrawsAsked =
  /** A copy of the plan to draw from, and what is most likely to be asked of it: a share of that is drawn ahead. */
  | { readonly ask: 'open'; readonly data: DocumentData; readonly likely: SeasonsOrder | undefined }
  /** `drawing`: which one it is, for whatever is told of it. */
  | { readonly ask: 'draw'; readonly drawing: number; readonly order: SeasonsOrder }
  | { readonly ask: 'stop' };

export type DrawsTold = { readonly drawing: number } & (
  | { readonly told: 'progress'; readonly done: number }
  | { readonly told: 'drawn'; readonly drawn: Drawn }
  | { readonly told: 'failed'; readonly why: string }
);
