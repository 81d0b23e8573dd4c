// One pass over some tests: what stands before all tests of a suite is done once, when the first of them is run.

export class Session {
  /** The suites that are ready, with what to call when the pass ends and the milliseconds they took. */
  #ready = new Map();

  /** Makes the suites around a test ready; `during` hears of each before its work begins. Throws what a hook throws. */
  async prepare({ suites }, during = () => undefined) {
    for (const suite of suites) {
      if (this.#ready.has(suite)) continue;
      const ready = { after: [], time: 0 };
      this.#ready.set(suite, ready);
      during(suite);
      const begin = performance.now();
      for (const hook of suite.hooks.beforeAll) keep(ready.after, await hook(suite.task));
      ready.time = performance.now() - begin;
    }
  }

  /** Milliseconds that the suites around a test took to make ready. */
  preparation({ suites }) {
    return suites.reduce((sum, suite) => sum + (this.#ready.get(suite)?.time ?? 0), 0);
  }

  /** Runs one test; gives what it threw, or undefined when it passed. */
  async failureOf(test) {
    const after = [];
    try {
      await this.prepare(test);
      for (const { hooks, task } of test.suites)
        for (const hook of hooks.beforeEach) keep(after, await hook(test.task.context, task));
      await test.body();
      return undefined;
    } catch (error) {
      return error ?? new Error('nothing was thrown');
    } finally {
      for (const { hooks, task } of test.suites.toReversed())
        for (const hook of hooks.afterEach) await hook(test.task.context, task);
      for (const hook of after.toReversed()) await hook();
    }
  }

  async end() {
    for (const [suite, { after }] of [...this.#ready].toReversed()) {
      for (const hook of suite.hooks.afterAll) await hook(suite.task);
      for (const hook of after.toReversed()) await hook();
    }
  }
}

function keep(after, cleanUp) {
  if (typeof cleanUp === 'function') after.push(cleanUp);
}
