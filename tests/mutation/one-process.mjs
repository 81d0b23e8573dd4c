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
import { failureOf, readTests } from './collect.mjs';

globalThis[INSTRUMENTER_CONSTANTS.NAMESPACE] ??= {};
const switches = globalThis[INSTRUMENTER_CONSTANTS.NAMESPACE];
// The first run, by one process alone, joins the tests; the processes of the mutants find them joined.
const folder = '.joined-tests';
const countingFolder = '.counting-tests';
const timesFile = '.test-times.json';
/** Milliseconds of tests that a mutant has to outlive. One that does counts as survived, so the score is never too high;
 * a test that takes longer by itself is not tried. */
const patience = Number(process.env.MUTATION_PATIENCE ?? 1000);

class OneProcessRunner {
  tests = undefined;
  runs = 0;
  spoiled = false;

  /** A mutant in code that also ran while the tests were read is tried in the tests alone, as in any worker of vitest's;
   * so nothing has to be read again, and the core need not replace the process. */
  capabilities() {
    return { reloadEnvironment: true };
  }

  async dryRun() {
    switches.activeMutant = undefined;
    for (const test of (await readTests(countingFolder, true)).values()) {
      switches.currentTestId = test.id;
      await this.run(test);
      switches.currentTestId = undefined;
    }
    this.tests = await readTests(folder, false);
    const results = [];
    for (const test of this.tests.values()) results.push(await this.run(test));
    const times = Object.fromEntries(results.map(({ id, timeSpentMs }) => [id, timeSpentMs]));
    writeFileSync(timesFile, JSON.stringify(times));
    return { status: DryRunStatus.Complete, tests: results, mutantCoverage: switches.mutantCoverage };
  }

  async mutantRun({ testFilter, activeMutant, mutantActivation, hitLimit }) {
    if (this.spoiled) throw new Error('An earlier mutant left something behind in this process.');
    if (mutantActivation === 'static')
      throw new Error('Static mutants are left out: set ignoreStatic in the settings.');
    this.tests ??= await readTests(folder, false);
    this.runs += 1;
    Object.assign(switches, { activeMutant: activeMutant.id, hitCount: 0, hitLimit });
    const results = [];
    const end = performance.now() + patience;
    for (const test of this.chosen(testFilter)) {
      if (performance.now() > end) break;
      results.push(await this.run(test));
      if (results.at(-1).status === TestStatus.Failed) {
        await this.passesWithout(test);
        break;
      }
    }
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
    const failure = await failureOf(test);
    Object.assign(switches, { activeMutant, hitCount, hitLimit });
    if (failure === undefined) return;
    this.spoiled = true;
    if (this.runs > 1) throw new Error('An earlier mutant left something behind in this process.');
  }

  async run(test) {
    const begin = performance.now();
    const failure = await failureOf(test);
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
