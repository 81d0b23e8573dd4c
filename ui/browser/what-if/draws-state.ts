// The season drawn by chance: shared by workers, followed, cancelled, and kept, marked old while the plan is another.

import { effect, signal } from '@preact/signals';
import {
  type Chance,
  chanceInWeek,
  chanceOf,
  type Drawn,
  hangsOn,
  intervalOf,
  joinDrawn,
  quantile,
} from '../../../engine/index.ts';
import { followChanges, keptWorkbook, openings } from '../store/workbook.ts';
import type { DrawnAnswer, DrawnWeek, Goal, LikelyFigure } from './drawn-answer.ts';
import type { DrawsTold, SeasonsOf } from './draws-messages.ts';
import { drawAmong, endWorkers, stopWorkers } from './draws-workers.ts';
import { keepAnswers, planNow } from './kept-answers.ts';
import { likelyKept } from './likely-kept.ts';
import { answerInWords } from './likely-model.ts';
import { followAge } from './old-answers.ts';

export type Drawing =
  | { readonly state: 'none' }
  | { readonly state: 'drawing'; readonly done: number; readonly of: number }
  | { readonly state: 'failed'; readonly why: string }
  /** `plan` is the one that it was drawn from. */
  | { readonly state: 'drawn'; readonly answer: DrawnAnswer; readonly plan: number };

export const drawing = signal<Drawing>({ state: 'none' });

/** Inputs named of those on which a figure hangs. */
const NAMED = 8;

followAge(
  () => {
    const now = drawing.peek();
    return now.state === 'drawn' ? now.plan : likelyKept.peek()?.plan;
  },
  (old) => {
    const now = drawing.peek();
    if (now.state === 'drawn' && now.answer.old !== old) drawing.value = { ...now, answer: { ...now.answer, old } };
    const kept = likelyKept.peek();
    if (kept !== undefined && kept.old !== old) likelyKept.value = { ...kept, old };
  },
);

/** Changes of the plan so far: where none came while seasons were drawn, it need not be compared with what it was. */
let changes = 0;
followChanges(() => {
  changes += 1;
});

// What was drawn of one workbook says nothing of another.
effect(() => {
  openings.value;
  cancelDrawing();
  endWorkers();
  likelyKept.value = undefined;
});

export interface SeasonsAsked {
  readonly figure: LikelyFigure;
  readonly count: number;
  readonly seed: number;
  readonly goal: Goal | undefined;
}

export function drawSeasons(asked: SeasonsAsked): void {
  const book = keptWorkbook();
  if (book === undefined) return;
  const { figure, count, seed } = asked;
  cancelDrawing();
  drawing.value = { state: 'drawing', done: 0, of: count };
  const before = changes;
  const done: number[] = [];
  const parts: Drawn[] = [];
  const hear = (at: number, told: DrawsTold): void => {
    if (told.told === 'failed') {
      cancelDrawing();
      drawing.value = { state: 'failed', why: told.why };
      return;
    }
    if (told.told === 'progress') {
      done[at] = told.done;
      drawing.value = { state: 'drawing', done: done.reduce((sum, one) => sum + one, 0), of: count };
      return;
    }
    parts[at] = told.drawn;
    const all = parts.flat();
    if (all.length < shares) return;
    cancelDrawing();
    const old = changes !== before && plan !== planNow();
    const answer = answerOf(asked, joinDrawn(all), old);
    drawing.value = { state: 'drawn', answer, plan };
    const says = answerInWords(book, answer);
    likelyKept.value = says === undefined ? undefined : { says, old, plan };
    keepAnswers({ drawn: { plan, answer: { ...answer, old: false }, says } });
  };
  const shares = drawAmong(book, { ...askedOf(figure), count, seed }, hear);
  // What tells the plan takes as long as writing it down: the workers draw meanwhile.
  const plan = planNow();
}

/** What seasons are asked for, of a figure. */
export function askedOf(figure: LikelyFigure): Pick<SeasonsOf, 'figures' | 'weekly'> {
  return figure.by === 'week'
    ? { figures: [], weekly: [figure.weekly] }
    : { figures: [figure.named.figure], weekly: [] };
}

function answerOf({ figure, count, seed, goal }: SeasonsAsked, drawn: Drawn, old: boolean): DrawnAnswer {
  const weeks = (drawn.weekly[0]?.weeks ?? []).flatMap(({ week, values }): DrawnWeek[] => {
    const interval = intervalOf(values);
    return interval === undefined
      ? []
      : [{ week, interval, chance: goal === undefined ? undefined : chanceInWeek(values, goal.value, goal.side) }];
  });
  const values = figure.by === 'season' ? (drawn.figures[0]?.values ?? new Float64Array()) : sumOfWeeks(drawn, count);
  return {
    figure,
    count,
    seed,
    goal,
    interval: intervalOf(values),
    chance: figure.by === 'season' ? chanceAt(values, goal) : undefined,
    weeks,
    quantiles: figure.by === 'season' ? quantilesOf(values) : [],
    hangsOn: hangsOn(drawn.inputs, values, NAMED),
    old,
  };
}

/** Every so many parts of a hundred. */
const STEP = 2;

function quantilesOf(values: Float64Array): DrawnAnswer['quantiles'] {
  const sorted = values.filter(Number.isFinite).sort();
  if (sorted.length === 0) return [];
  return Array.from({ length: 100 / STEP + 1 }, (_, at) => {
    const share = (at * STEP) / 100;
    return { share, value: quantile(sorted, share) };
  });
}

function chanceAt(values: Float64Array, goal: Goal | undefined): Chance | undefined {
  return goal === undefined ? undefined : chanceOf(values, goal.value, goal.side);
}

function sumOfWeeks({ weekly: [figure] }: Drawn, count: number): Float64Array {
  const sums = new Float64Array(count);
  for (const { values } of figure?.weeks ?? []) {
    values.forEach((value, at) => {
      if (Number.isFinite(value)) sums[at] = (sums[at] ?? 0) + value;
    });
  }
  return sums;
}

export function cancelDrawing(): void {
  stopWorkers();
  drawing.value = { state: 'none' };
}
