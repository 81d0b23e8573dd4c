// The tests as mutation testing sees them: read once, each with its name, the suites around it and the function to call.

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

/** The tests of a file or a group in it, each with the suites that stand around it, outermost first. */
function* testsUnder(task, around, title) {
  const suites = [...around, { id: `suite ${task.file.filepath} ${title}`, task, hooks: getHooks(task) }];
  for (const inner of task.tasks) {
    const name = `${title} ${inner.name}`.trim();
    if (inner.type === 'suite') yield* testsUnder(inner, suites, name);
    else if (inner.mode === 'run') yield { name, suites, task: inner, body: getFn(inner) };
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
