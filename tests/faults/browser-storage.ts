// The browser's storage failing at random under a person who types, in every way that it can: writes refused, thrown and without
// room, the database not opened or not answering, the clock set back. Once it works again, all that was typed is kept.

import type { Browser } from 'playwright-core';
import { type Random, randomFrom, seedOfRun } from '../differential/random.ts';
import { BEDS, BedsPage, launch, servePage } from './page.ts';
import { Tally, type Trial } from './trial.ts';

export const browserStorage: Trial = {
  name: 'storage',
  about: 'the browser’s storage failing at random',
  full: 200,
  async run(count, tell) {
    const tally = new Tally(tell);
    const served = await servePage();
    const browser = await launch();
    const seed = seedOfRun();
    try {
      for (let i = 0; i < count; i += 1) {
        await tally.try(`storage ${seed + i}`, () => once(browser, served.address, randomFrom(seed + i)), Infinity);
        tell?.(i + 1);
      }
    } finally {
      await browser.close();
      await served.close();
    }
    return tally.outcome();
  },
};

// Run in the page before it, as text: how likely it is that a thing fails is set from outside.
const FAILING = `(() => {
  globalThis.failing = { write: 0, open: 0, silent: 0, back: 0 };
  const fails = (what) => Math.random() < globalThis.failing[what];
  const names = ['QuotaExceededError', 'UnknownError', 'InvalidStateError', 'AbortError'];
  for (const way of ['add', 'put']) {
    const real = IDBObjectStore.prototype[way];
    IDBObjectStore.prototype[way] = function (...given) {
      if (fails('write')) {
        this.transaction.abort();
        throw new DOMException('It fails.', names[Math.floor(Math.random() * names.length)]);
      }
      if (fails('silent')) setTimeout(() => { try { this.transaction.abort(); } catch {} });
      return real.apply(this, given);
    };
  }
  const open = IDBFactory.prototype.open;
  IDBFactory.prototype.open = function (...given) {
    if (fails('open')) {
      if (Math.random() < 0.5) throw new DOMException('It fails.', 'SecurityError');
      return open.call(this, 'another database that nobody answers for');
    }
    return open.apply(this, given);
  };
  const Clock = Date;
  globalThis.Date = class Date extends Clock {
    constructor(...given) {
      if (given.length === 0) super(Date.now());
      else super(...given);
    }
    static now() { return Clock.now() - globalThis.failing.back; }
  };
})();`;

interface Failing {
  readonly write: number;
  readonly open: number;
  readonly silent: number;
  /** Milliseconds by which the clock is set back. */
  readonly back: number;
}

async function once(browser: Browser, address: string, random: Random): Promise<string | undefined> {
  const context = await browser.newContext();
  try {
    await context.addInitScript(FAILING);
    const beds = await BedsPage.open(context, address, 'demo farm');
    const set = (failing: Failing): Promise<unknown> =>
      beds.page.evaluate((given) => Reflect.set(globalThis, 'failing', given), failing);
    const share = (): number => (random.chance(0.5) ? random.next() : 0);
    const back = random.chance(0.5) ? random.whole(1, 400) * 86_400_000 : 0;
    await set({ write: share(), open: 0, silent: share() / 4, back });
    let figure = 100;
    for (let edits = random.whole(2, 6); edits > 0; edits -= 1) {
      figure += 1;
      await beds.type(random.whole(0, BEDS - 1), String(figure));
    }
    await set({ write: 0, open: 0, silent: 0, back: random.chance(0.5) ? back : 0 });
    await beds.type(0, '99');
    const wanted = await beds.read();
    await beds.kept();
    await beds.reload();
    const wrong = await beds.reads(wanted);
    if (wrong !== undefined) return `after a reload ${wrong}`;
    // A page that can open no database opens all the same.
    await context.addInitScript(`globalThis.failing.open = ${random.chance(0.5) ? 1 : 0};`);
    await beds.reload();
    return undefined;
  } finally {
    await context.close();
  }
}
