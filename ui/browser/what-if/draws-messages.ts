// What the page and the worker that draws seasons tell each other. Plain data.

import type { DocumentData, Drawn, Figure } from '../../../engine/index.ts';

export interface DrawsAsked {
  readonly data: DocumentData;
  readonly figures: readonly Figure[];
  readonly count: number;
  readonly seed: number;
}

export type DrawsTold =
  | { readonly told: 'progress'; readonly done: number; readonly of: number }
  | {
      readonly told: 'drawn';
      readonly inputs: readonly string[];
      readonly drawn: readonly Float64Array[];
      readonly values: readonly Float64Array[];
    }
  | { readonly told: 'failed'; readonly why: string };

/** The names of what was drawn, and the numbers. */
export function toldOf({ inputs, drawn, figures }: Drawn): DrawsTold {
  return {
    told: 'drawn',
    inputs: inputs.map(({ name }) => name),
    drawn,
    values: figures.map(({ values }) => values),
  };
}
