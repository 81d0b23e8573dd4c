// How mutation testing runs the tests: all in one process, loaded once, one mutant after another. A mutant then costs
// milliseconds where a worker thread of its own costs seconds. What one mutant leaves behind must not kill the next:
// a test that fails is run again without the mutant, and when it fails then too, the process is replaced.

import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { INSTRUMENTER_CONSTANTS } from '@stryker-mutator/api/core';
import { declareFactoryPlugin, PluginKind } from '@stryker-mutator/api/plugin';
import {
  DryRunStatus,
  determineHitLimitReached,
  TestStatus,
  toMutantRunResult,
} from '@stryker-mutator/api/test-runner';
import { readTests } from './collect.mjs';
import { Session } from './session.mjs';

globalThis[INSTRUMENTER_CONSTANTS.NAMESPACE] ??= {};
const switches = globalThis[INSTRUMENTER_CONSTANTS.NAMESPACE];
const folder = '.joined-tests';
const countingFolder = '.counting-tests';
const timesFile = '.test-times.json';
/** Milliseconds of tests that a mutant has to outlive. One that does counts as survived, so the score is never too high;
 * a test that takes longer by itself is not tried. */
const patience = Number(process.env.MUTATION_PATIENCE ?? 1000);

class OneProcessRunner {
  tests = new Map();
  runs = 0;
  spoiled = false;

  /** A mutant in code that also ran while the tests were read is tried in the tests alone, as in any worker of vitest's;
   * so nothing has to be read again, and the core need not replace the process. */
  capabilities() {
    return { reloadEnvironment: true };
  }

  /** Tests are read here, where the time that it takes counts against no mutant. */
  async init() {
    switches.activeMutant = undefined;
    this.tests = await readTests(folder, false);
  }

  async dryRun() {
    const begin = performance.now();
    await this.count(await readTests(countingFolder, true));
    const session = new Session();
    const results = [];
    const times = {};
    for (const test of this.tests.values()) {
      await session.prepare(test);
      const result = await this.run(test, session);
      results.push(result);
      times[test.id] = result.timeSpentMs + session.preparation(test);
    }
    await session.end();
    writeFileSync(timesFile, JSON.stringify(times));
    // What no test accounts for is taken for overhead, and every mutant is given it before it counts as hanging. Joining,
    // reading and counting come once only, so they go to the first test's account.
    const [first] = results;
    const told = results.reduce((sum, { timeSpentMs }) => sum + timeSpentMs, 0);
    if (first !== undefined) first.timeSpentMs += performance.now() - begin - told;
    return { status: DryRunStatus.Complete, tests: results, mutantCoverage: switches.mutantCoverage };
  }

  /** Finds out which mutants' places each test passes, itself or in what stands before all tests of its suites. */
  async count(tests) {
    const session = new Session();
    for (const test of tests.values()) {
      await session.prepare(test, ({ id }) => {
        switches.currentTestId = id;
      });
      switches.currentTestId = test.id;
      await session.failureOf(test);
      switches.currentTestId = undefined;
    }
    await session.end();
    const { perTest } = switches.mutantCoverage;
    const counted = (id) => perTest[id] ?? {};
    const suites = new Set();
    for (const test of tests.values()) {
      const own = { ...counted(test.id) };
      for (const { id } of test.suites) {
        suites.add(id);
        for (const [mutant, hits] of Object.entries(counted(id))) own[mutant] = (own[mutant] ?? 0) + hits;
      }
      perTest[test.id] = own;
    }
    for (const id of suites) delete perTest[id];
  }

  async mutantRun({ testFilter, activeMutant, mutantActivation, hitLimit }) {
    if (this.spoiled) throw new Error('An earlier mutant left something behind in this process.');
    if (mutantActivation === 'static')
      throw new Error('Static mutants are left out: set ignoreStatic in the settings.');
    this.runs += 1;
    Object.assign(switches, { activeMutant: activeMutant.id, hitCount: 0, hitLimit });
    const results = [];
    const session = new Session();
    const end = performance.now() + patience;
    for (const test of this.chosen(testFilter)) {
      if (performance.now() > end) break;
      results.push(await this.run(test, session));
      if (results.at(-1).status === TestStatus.Failed) {
        await this.passesWithout(test);
        break;
      }
    }
    await session.end().catch(() => undefined);
    const timedOut = determineHitLimitReached(switches.hitCount, hitLimit);
    Object.assign(switches, { activeMutant: undefined, hitCount: undefined, hitLimit: undefined });
    return toMutantRunResult(timedOut ?? { status: DryRunStatus.Complete, tests: results });
  }

  /** The quickest test first: most mutants are found by one of a millisecond. */
  chosen(ids) {
    this.times ??= existsSync(timesFile) ? JSON.parse(readFileSync(timesFile, 'utf8')) : {};
    const time = ({ id }) => this.times[id] ?? 0;
    return ids
      .map((id) => this.tests.get(id))
      .filter((test) => time(test) <= patience)
      .sort((a, b) => time(a) - time(b));
  }

  /** Throws, so that the process is replaced and the mutant tried again, when the test fails without the mutant too. In a
   * process that has seen no other mutant the failure is the mutant's own; then only the next needs a new process. */
  async passesWithout(test) {
    const { activeMutant, hitCount, hitLimit } = switches;
    Object.assign(switches, { activeMutant: undefined, hitLimit: undefined });
    const failure = await new Session().failureOf(test);
    Object.assign(switches, { activeMutant, hitCount, hitLimit });
    if (failure === undefined) return;
    this.spoiled = true;
    if (this.runs > 1) throw new Error('An earlier mutant left something behind in this process.');
  }

  async run(test, session) {
    const begin = performance.now();
    const failure = await session.failureOf(test);
    const about = { id: test.id, name: test.name, fileName: test.file, timeSpentMs: performance.now() - begin };
    return failure === undefined
      ? { ...about, status: TestStatus.Success }
      : { ...about, status: TestStatus.Failed, failureMessage: String(failure?.stack ?? failure) };
  }
}

export const strykerPlugins = [
  declareFactoryPlugin(
    PluginKind.TestRunner,
    'one-process',
    Object.assign(() => new OneProcessRunner(), { inject: [] }),
  ),
];
