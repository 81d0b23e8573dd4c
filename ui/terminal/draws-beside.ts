// Drawn seasons shared with threads beside the terminal's own: each opens the workbook itself, from the same bytes, and draws its
// share. `draws` begins them before it opens the workbook; main.ts runs the same program again in each.

import { availableParallelism } from 'node:os';
import { setFlagsFromString } from 'node:v8';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { type Drawn, Draws, toBeSent, uncertainInputs } from '../../engine/index.ts';
import { SEASON_CHANCES } from '../../sheets-templates/index.ts';
import { streams } from '../chance.ts';
import { withWanted } from '../wanted.ts';
import { lookInto, openBytes } from './workbook-files.ts';
import { refuse, type SeasonsOrder, type Threads, type World } from './world.ts';

/** More threads than these gain little: each opens the workbook first. */
const MOST_THREADS = 4;
/** About what V8 itself begins with (main.ts asks for less). */
const EAGER = 66_000;

/** Threads that run the module at `program`, which is to call drawnHere. */
export function threadsOf(program: string): Threads {
  return {
    count: Math.min(MOST_THREADS, availableParallelism()),
    draw: (order) => {
      const thread = new Worker(new URL(program), { workerData: order });
      const drawn = new Promise<Drawn>((done, failed) => {
        thread.once('message', done);
        thread.once('error', failed);
      });
      // Whoever ends it before it is done hears of no fault.
      drawn.catch(() => undefined);
      return { drawn, end: () => void thread.terminate() };
    },
    longWork: () => setFlagsFromString(`--interrupt-budget=${EAGER}`),
  };
}

/** In such a thread: draws what it was begun for; false in any other. */
export async function drawnHere(world: World): Promise<boolean> {
  if (isMainThread || parentPort === null) return false;
  const { file, bytes, branch, asked, from, until, seed }: SeasonsOrder = workerData;
  const draws = await withWanted(async () => {
    // Notes on the file are told once, by whoever began this.
    const opened = await openBytes(file, bytes, { ...world, warn: () => undefined });
    const workbook = lookInto(opened, file, branch);
    const inputs = uncertainInputs(workbook, SEASON_CHANCES.plan);
    return new Draws(workbook, { inputs, asked, from, until, chances: SEASON_CHANCES }, streams(seed));
  });
  const why = draws.step(until - from);
  if (why !== undefined) refuse(why);
  parentPort.postMessage(toBeSent(draws.result()));
  return true;
}
