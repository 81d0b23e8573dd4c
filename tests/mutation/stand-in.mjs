// Stands in for 'vitest' when mutation testing runs the tests in one process: vitest's own test, describe and hooks,
// and its own expect put together as vitest does, without the worker thread that its package asks for.

import {
  ASYMMETRIC_MATCHERS_OBJECT,
  chai,
  customMatchers,
  GLOBAL_EXPECT,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
  setState,
} from '@vitest/expect';
import '../seed.ts';

export { afterAll, afterEach, beforeAll, beforeEach, describe, it, test } from '@vitest/runner';

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

/** vitest's expect, but for snapshots, polls and soft assertions: a test that uses one of those fails at once. */
export const expect = Object.assign((value, message) => chai.expect(value, message), chai.expect, {
  extend: (matchers) => chai.expect.extend(expect, matchers),
  unreachable: (message) => chai.assert.fail(message ?? 'expected not to be reached'),
});
Object.assign(expect, globalThis[ASYMMETRIC_MATCHERS_OBJECT]);
setState({ assertionCalls: 0, isExpectingAssertions: false, expectedAssertionsNumber: null }, expect);
Object.defineProperty(globalThis, GLOBAL_EXPECT, { value: expect, writable: true, configurable: true });
expect.extend(customMatchers);
