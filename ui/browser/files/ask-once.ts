// Asking a worker one thing: it is begun for that and goes once it has answered.

/** What the worker answers; fails with the sentence where it could not be fetched or fell over. */
export function askOnce<Told>(worker: Worker, asked: unknown, lost: string): Promise<Told> {
  return new Promise<Told>((resolve, reject) => {
    worker.addEventListener('message', ({ data }: MessageEvent<Told>) => resolve(data));
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      reject(new Error(lost));
    });
    worker.postMessage(asked);
  }).finally(() => worker.terminate());
}
