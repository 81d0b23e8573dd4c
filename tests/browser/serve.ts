// Builds the page as `npm start` does, into a folder of this run's own, and serves it on a free port for as long as the
// browser tests run. vitest calls this once before each group of them; groups that run in one go share the page that the first
// built. Tests learn the address through the harness.

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, preview } from 'vite';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    workbookAddress: string;
    workbookFolder: string;
  }
}

interface Served {
  readonly address: string;
  readonly folder: string;
  readonly close: () => Promise<void>;
}

// Each group has this module to itself; what they share is the process.
const SHARED = Symbol.for('the page that browser tests are served');

export default async function serve(project: TestProject): Promise<() => Promise<void>> {
  const shared = globalThis as { [SHARED]?: Promise<Served> };
  const isFirst = shared[SHARED] === undefined;
  shared[SHARED] ??= buildAndServe();
  const { address, folder, close } = await shared[SHARED];
  project.provide('workbookAddress', address);
  project.provide('workbookFolder', folder);
  return async () => {
    if (isFirst) await close();
  };
}

async function buildAndServe(): Promise<Served> {
  const folder = await mkdtemp(join(tmpdir(), 'dibble-page-'));
  await asShipped(() => build({ logLevel: 'warn', build: { outDir: folder, emptyOutDir: true } }));
  const server = await preview({ logLevel: 'warn', preview: { port: 0 }, build: { outDir: folder } });
  const address = server.resolvedUrls?.local[0];
  if (address === undefined) throw new Error('The built page is not being served: vite gave no address.');
  return {
    address,
    folder,
    close: async () => {
      await server.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

/** vitest says that this is a test, and vite would then build with the parts that are for finding slips while developing. */
async function asShipped(work: () => Promise<unknown>): Promise<void> {
  const { NODE_ENV } = process.env;
  process.env.NODE_ENV = 'production';
  try {
    await work();
  } finally {
    process.env.NODE_ENV = NODE_ENV;
  }
}
