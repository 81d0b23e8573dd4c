// The season drawn by chance: asked of a worker, followed, cancelled, and kept until the plan changes, when it is marked old.

import { signal } from '@preact/signals';
import { chanceOf, type Interval, intervalOf, type NamedFigure, shareOfSpread } from '../../../engine/index.ts';
import { followChanges, keptWorkbook } from '../store/workbook.ts';
import type { DrawsAsked, DrawsTold } from './draws-messages.ts';

export interface DrawnAnswer {
  readonly figure: NamedFigure;
  readonly count: number;
  readonly seed: number;
  readonly interval: Interval | undefined;
  readonly chance: { readonly chance: number; readonly error: number } | undefined;
  readonly hangsOn: readonly { readonly name: string; readonly share: number }[];
  /** The plan has changed since. */
  readonly old: boolean;
}

export type Drawing =
  | { readonly state: 'none' }
  | { readonly state: 'drawing'; readonly done: number; readonly of: number }
  | { readonly state: 'failed'; readonly why: string }
  | { readonly state: 'drawn'; readonly answer: DrawnAnswer };

export const drawing = signal<Drawing>({ state: 'none' });

/** Inputs named of those on which a figure hangs. */
const NAMED = 8;

let worker: Worker | undefined;

followChanges(() => {
  const now = drawing.peek();
  if (now.state === 'drawn') drawing.value = { ...now, answer: { ...now.answer, old: true } };
});

export function drawSeasons(figure: NamedFigure, count: number, seed: number, goal: number | undefined): void {
  const book = keptWorkbook();
  if (book === undefined) return;
  cancelDrawing();
  worker = new Worker(new URL('./draws-worker.ts', import.meta.url), { type: 'module' });
  drawing.value = { state: 'drawing', done: 0, of: count };
  let old = false;
  const stop = followChanges(() => {
    old = true;
  });
  worker.addEventListener('message', ({ data: told }: MessageEvent<DrawsTold>) => {
    if (told.told === 'progress') drawing.value = { state: 'drawing', done: told.done, of: told.of };
    else {
      stop();
      cancelDrawing();
      drawing.value = told.told === 'failed' ? { state: 'failed', why: told.why } : answered(told);
    }
  });
  const answered = ({
    inputs,
    drawn,
    values: [values = new Float64Array()],
  }: Extract<DrawsTold, { told: 'drawn' }>): Drawing => ({
    state: 'drawn',
    answer: {
      figure,
      count,
      seed,
      old,
      interval: intervalOf(values),
      chance: goal === undefined ? undefined : chanceOf(values, goal, 'at least'),
      hangsOn: inputs
        .map((name, i) => ({ name, share: shareOfSpread(drawn[i] ?? new Float64Array(), values) }))
        .sort((a, b) => b.share - a.share)
        .slice(0, NAMED)
        .filter(({ share }) => share > 0.005),
    },
  });
  const asked: DrawsAsked = { data: book.data(), figures: [figure.figure], count, seed };
  worker.postMessage(asked);
}

export function cancelDrawing(): void {
  worker?.terminate();
  worker = undefined;
  drawing.value = { state: 'none' };
}
