// The workers that draw seasons. They are begun while a person still chooses what to ask, on a copy of the plan as it stands, and
// stay for the next drawing of that plan; they go once the plan is another, or when nothing was asked of them for a while, and with
// them their memory. Called by draws-state.ts and likely-part.tsx.

import { type DocumentData, sharesOf, type Workbook } from '../../../engine/index.ts';
import { followChanges } from '../store/workbook.ts';
import type { DrawsAsked, DrawsTold, SeasonsOf, SeasonsOrder } from './draws-messages.ts';

/** More would keep the page itself from a core of its own on most machines. */
const MOST_WORKERS = 4;
/** How long they wait for something to do, ms. */
const REST = 120_000;

/** So many seasons of what is asked. */
export type SeasonsWanted = SeasonsOf & { readonly count: number };

type Hear = (worker: number, told: DrawsTold) => void;

let workers: readonly Worker[] = [];
/** Their copy is of a plan that has changed since. */
let isOld = false;
let drawing = 0;
let heard: Hear | undefined;
let waiting: ReturnType<typeof setTimeout> | undefined;

followChanges(() => {
  isOld = true;
  if (heard === undefined) endWorkers();
});

/** Begins them, where they are not there yet; `likely`: what is most likely to be asked first, which they begin to draw. */
export function beginWorkers(book: Workbook, likely?: SeasonsWanted): void {
  // While they draw they stay, whatever has changed since: their answer is marked old.
  if (heard !== undefined) return;
  if (isOld) endWorkers();
  clearTimeout(waiting);
  waiting = setTimeout(endWorkers, REST);
  if (workers.length > 0) return;
  const data: DocumentData = book.data();
  const count = Math.max(1, Math.min(MOST_WORKERS, navigator.hardwareConcurrency));
  const shares = likely === undefined ? [] : ordersOf(likely, count);
  workers = Array.from({ length: count }, (_, at) => {
    const worker = new Worker(new URL('./draws-worker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', ({ data: told }: MessageEvent<DrawsTold>) => {
      if (told.drawing === drawing) heard?.(at, told);
    });
    ask(worker, { ask: 'open', data, likely: shares[at] });
    return worker;
  });
}

/** Shares out so many seasons; `hear` is told how far each worker is. The number of shares. */
export function drawAmong(book: Workbook, wanted: SeasonsWanted, hear: Hear): number {
  stopWorkers();
  beginWorkers(book);
  clearTimeout(waiting);
  heard = hear;
  const shares = ordersOf(wanted, workers.length);
  shares.forEach((order, at) => {
    const worker = workers[at];
    if (worker !== undefined) ask(worker, { ask: 'draw', drawing, order });
  });
  return shares.length;
}

function ordersOf({ count, ...seasons }: SeasonsWanted, among: number): readonly SeasonsOrder[] {
  return sharesOf(count, among).map(([from, until]) => ({ ...seasons, from, until }));
}

/** Ends what they draw, and whatever they may still tell of it. */
export function stopWorkers(): void {
  drawing += 1;
  if (heard === undefined) return;
  heard = undefined;
  for (const worker of workers) ask(worker, { ask: 'stop' });
  if (isOld) endWorkers();
  else waiting = setTimeout(endWorkers, REST);
}

export function endWorkers(): void {
  clearTimeout(waiting);
  for (const worker of workers) worker.terminate();
  workers = [];
  heard = undefined;
  isOld = false;
}

function ask(worker: Worker, asked: DrawsAsked): void {
  worker.postMessage(asked);
}
