// What the page and the workers that draw seasons tell each other. Plain data.

import type { AskedWeeks, DocumentData, Drawn, Figure } from '../../../engine/index.ts';

export interface DrawsAsked {
  readonly data: DocumentData;
  readonly figures: readonly Figure[];
  readonly weekly: readonly AskedWeeks[];
  /** Of all seasons that the seed gives, those from the first up to the last but one. */
  readonly from: number;
  readonly until: number;
  readonly seed: number;
}

export type DrawsTold =
  | { readonly told: 'progress'; readonly done: number }
  | { readonly told: 'drawn'; readonly drawn: Drawn }
  | { readonly told: 'failed'; readonly why: string };

/** What was drawn, without the types of figures, which the page knows. */
export function toldOf({ inputs, figures, weekly }: Drawn): DrawsTold {
  return {
    told: 'drawn',
    drawn: {
      inputs,
      figures: figures.map(({ values }) => ({ type: undefined, values })),
      weekly: weekly.map(({ weeks }) => ({ type: undefined, weeks })),
    },
  };
}
