// The tests that mutation testing runs: the engine's own. Those of the browser, the terminal and the house itself look
// at the whole project, which a mutant does not change. `npm run mutation` reads this file.

import { defineConfig } from 'vitest/config';
import { joinedMathjs } from './tests/joined.ts';

export default defineConfig({
  resolve: { alias: { mathjs: joinedMathjs() } },
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: [
      'tests/browser/**',
      'tests/terminal/**',
      'tests/bench/**',
      // Minutes of random work for each mutant.
      'tests/differential/**',
      'tests/properties/season.test.ts',
      'tests/architecture.test.ts',
      'tests/set-up.test.ts',
    ],
    testTimeout: 60_000,
  },
});
