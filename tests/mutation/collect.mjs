// The tests as mutation testing sees them: read once, each with its name, its hooks and the function to call.

import { readdirSync } from 'node:fs';
import { relative } from 'node:path';
import { collectTests, getFn, getHooks } from '@vitest/runner';
import { joinTests } from './bundle.mjs';

// Those that look at the whole project, which a mutant does not change; those that compare with a snapshot; and random
// work of many seconds, which would be done for each mutant.
const leftOut = [
  /^tests\/(browser|terminal|bench|ui|files|values|units|sheets)\//,
  /^tests\/(architecture|set-up)\.test/,
  /^tests\/functions\/page\.test/,
  /^tests\/reference\/readme\.test/,
  /^tests\/differential\/(differential|never-throws|blanks)\.test/,
  /^tests\/properties\//,
];

/** For one room at a time: MUTATION_TESTS=agronomy runs the test files whose path holds that alone. */
const wanted = new RegExp(process.env.MUTATION_TESTS ?? '');

/** Paths of the test files, from the working folder. */
const testFiles = () =>
  readdirSync('tests', { recursive: true, encoding: 'utf8' })
    .map((name) => `tests/${name}`)
    .filter((file) => file.endsWith('.test.ts') && wanted.test(file) && !leftOut.some((pattern) => pattern.test(file)))
    .sort();

/** The tests of a file or a group in it, with the hooks that stand around them, outermost first. */
function* testsUnder(suite, around, title) {
  const hooks = [...around, getHooks(suite)];
  for (const task of suite.tasks) {
    const name = `${title} ${task.name}`.trim();
    if (task.type === 'suite') yield* testsUnder(task, hooks, name);
    else if (task.mode === 'run') yield { name, hooks, task, body: getFn(task) };
  }
}

/** All tests by their id; `folder` keeps the joined files. Throws when a file cannot be read. */
export async function readTests(folder, counting) {
  const modules = await joinTests(testFiles(), folder, counting);
  const runner = {
    config: {
      root: process.cwd(),
      setupFiles: [],
      tags: [],
      sequence: { shuffle: false, hooks: 'stack' },
      testTimeout: 0,
      hookTimeout: 0,
    },
    importFile: (file) => import(modules.get(file)),
  };
  const tests = new Map();
  for (const file of await collectTests([...modules.keys()], runner)) {
    const [error] = file.result?.errors ?? [];
    if (error) throw new Error(`${file.name} cannot be read: ${error.stack ?? error.message}`);
    for (const test of testsUnder(file, [], '')) {
      let id = `${relative(process.cwd(), file.filepath)}#${test.name}`;
      while (tests.has(id)) id += ' again';
      tests.set(id, { ...test, id, file: file.filepath });
    }
  }
  return tests;
}

/** Runs one test with its hooks; gives what it threw, or undefined when it passed. */
export async function failureOf({ hooks, task, body }) {
  const cleanUps = [];
  try {
    for (const kind of ['beforeAll', 'beforeEach']) {
      for (const each of hooks) {
        for (const hook of each[kind]) {
          const after = await hook(kind === 'beforeAll' ? task.suite : task.context, task.suite);
          if (typeof after === 'function') cleanUps.unshift(after);
        }
      }
    }
    await body();
    return undefined;
  } catch (error) {
    return error ?? new Error('nothing was thrown');
  } finally {
    for (const kind of ['afterEach', 'afterAll']) {
      for (const each of hooks.toReversed()) for (const hook of each[kind]) await hook(task.context, task.suite);
    }
    for (const after of cleanUps) await after();
  }
}
