// Groups of tests: the engine's and the house's own run in plain Node, file after file in one process, since none leaves
// anything behind; those that look at what a process loads, or load what changes others (scratch papers), stand apart; the browser journeys drive the system's Chromium
// against the built page, which is built and served once, and only when one of them is to run. Those wait a good deal, for what is kept, for
// other tabs, for what is given up: one file more than there are cores fills that time. So they go before the others, not among them.
// The thorough ones go through every sheet, picture, dialog, size and way of the hands, do to the page what disks, networks and other tabs may, and try
// what takes long in the engine and as other programs: `npm run test:thorough`, apart from `npm test`.

import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { joinedMathjs } from './tests/joined.ts';

// The long form of random tests: `npm run test:long`, which takes an hour and more.
if (process.env.npm_lifecycle_event === 'test:long') process.env.DIBBLE_LONG_RUNS = '1';
const THOROUGH = 'tests/browser/thorough/**/*.test.ts';
const THOROUGH_OF_ENGINE = 'tests/**/*.thorough.test.ts';
const cores = availableParallelism();
const patience = process.env.DIBBLE_LONG_RUNS === '1' ? 4 * 3_600_000 : 60_000;

/** Tests that drive the built page in Chromium. */
function inBrowser(name: string, files: { readonly include: string[]; readonly exclude?: string[] }) {
  return {
    test: {
      name,
      ...files,
      sequence: { groupOrder: 0 },
      maxWorkers: cores + 1,
      globalSetup: ['tests/browser/serve.ts'],
      isolate: false,
      expect: { poll: { timeout: 15_000 } },
      testTimeout: 60_000,
      hookTimeout: 120_000,
    },
  };
}

export default defineConfig({
  test: {
    maxWorkers: Math.max(2, cores - 1),
    projects: [
      {
        resolve: { alias: { mathjs: joinedMathjs() } },
        test: {
          name: 'engine',
          sequence: { groupOrder: 1 },
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/scratch/**', 'tests/**/*.apart.test.ts', THOROUGH_OF_ENGINE],
          setupFiles: ['tests/seed.ts'],
          isolate: false,
          testTimeout: patience,
          hookTimeout: 120_000,
        },
      },
      {
        resolve: { alias: { mathjs: joinedMathjs() } },
        test: {
          name: 'apart',
          sequence: { groupOrder: 1 },
          include: ['tests/**/*.apart.test.ts', 'tests/scratch/**/*.test.ts'],
          setupFiles: ['tests/seed.ts'],
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
      {
        resolve: { alias: { mathjs: joinedMathjs() } },
        test: {
          name: 'thorough engine',
          sequence: { groupOrder: 1 },
          include: [THOROUGH_OF_ENGINE],
          setupFiles: ['tests/seed.ts'],
          testTimeout: patience,
          hookTimeout: 120_000,
        },
      },
      inBrowser('browser', { include: ['tests/browser/**/*.test.ts'], exclude: [THOROUGH] }),
      inBrowser('thorough', { include: [THOROUGH] }),
    ],
  },
});
