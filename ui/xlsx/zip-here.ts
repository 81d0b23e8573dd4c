// Stands in for fflate in the page: its asynchronous functions start workers from texts, which the page's policy forbids. They
// do their work at once instead; whoever calls them is a worker already. vite.config.ts puts it in fflate's place.

import { type AsyncUnzipOptions, type AsyncZipOptions, type AsyncZippable, unzipSync, zipSync } from 'fflate/browser';

export * from 'fflate/browser';

type Told<T> = (error: Error | null, done: T) => void;

const NOTHING = new Uint8Array(0);

export function zip(files: AsyncZippable, options: AsyncZipOptions | Told<Uint8Array>, tell?: Told<Uint8Array>): void {
  const hear = typeof options === 'function' ? options : tell;
  atOnce(() => zipSync(files as Parameters<typeof zipSync>[0]), NOTHING, hear);
}

export function unzip(
  bytes: Uint8Array,
  options: AsyncUnzipOptions | Told<Record<string, Uint8Array>>,
  tell?: Told<Record<string, Uint8Array>>,
): void {
  const hear = typeof options === 'function' ? options : tell;
  const chosen = typeof options === 'function' ? {} : options;
  atOnce(() => unzipSync(bytes, chosen), {}, hear);
}

function atOnce<T>(work: () => T, none: T, tell: Told<T> | undefined): void {
  let done: T;
  try {
    done = work();
  } catch (thrown) {
    tell?.(thrown instanceof Error ? thrown : new Error(String(thrown)), none);
    return;
  }
  tell?.(null, done);
}
