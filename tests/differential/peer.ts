// Asks the peer, which works in a thread of its own so that both engines run side by side. The thread starts with the
// first question and does not keep the process alive.

import { Worker } from 'node:worker_threads';

export type PeerCell = number | string | boolean | null;

interface Answer {
  readonly id: number;
  readonly values?: readonly (readonly unknown[])[];
  readonly failure?: string;
}

type Waiting = (answer: Answer) => void;

const waiting = new Map<number, Waiting>();
/** Some 50 times what a batch takes. */
const PATIENCE = 180_000;

let asked = 0;
let thread: Worker | undefined;

function started(): Worker {
  const worker = new Worker(new URL('./peer-thread.mjs', import.meta.url));
  worker.on('message', (answer: Answer) => {
    waiting.get(answer.id)?.(answer);
    waiting.delete(answer.id);
  });
  worker.unref();
  return worker;
}

/** The values of the sheet wanted, row by row; errors as objects with their type. */
export function askPeer(
  sheets: Readonly<Record<string, readonly (readonly PeerCell[])[]>>,
  wanted: string,
): Promise<readonly (readonly unknown[])[]> {
  thread ??= started();
  const id = ++asked;
  thread.postMessage({ id, sheets, wanted });
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => reject(new Error('the peer does not come to an end with these formulas')), PATIENCE);
    waiting.set(id, ({ values, failure }) => {
      clearTimeout(late);
      if (values === undefined) reject(new Error(failure));
      else resolve(values);
    });
  });
}
