// The browser killed at random moments while lengths of beds are typed: every figure that the page had shown as kept is there
// when it is opened again, what is there is a beginning of what was typed, in its order, and undo takes back the last of it.

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Random, randomFrom, seedOfRun } from '../differential/random.ts';
import { BEDS, BedsPage, KillableBrowser, type Lengths, servePage } from './page.ts';
import { Tally, type Trial } from './trial.ts';

export const browserKills: Trial = {
  name: 'browser',
  about: 'the browser killed while a person types',
  full: 300,
  async run(count, tell) {
    const tally = new Tally(tell);
    const served = await servePage();
    const profile = mkdtempSync(join(tmpdir(), 'dibble-profile-'));
    const typed = new Typed();
    const seed = seedOfRun();
    try {
      for (let i = 0; i < count; i += 1) {
        await tally.try(`kill ${seed + i}`, () => once(served.address, profile, typed, randomFrom(seed + i)), Infinity);
        tell?.(i + 1);
      }
      const last = await KillableBrowser.start(profile);
      await tally.try('after the last kill', async () =>
        typed.faultOf((await BedsPage.open(last.context, served.address, 'yard')).read()),
      );
      await last.kill();
    } finally {
      await served.close();
      rmSync(profile, { recursive: true, force: true });
    }
    return tally.outcome();
  },
};

/** Every state that the lengths went through, in order. */
class Typed {
  #states: Lengths[] = [];
  /** The last of them that the page had shown as kept. */
  #kept = 0;
  #figure = 100;

  get last(): Lengths | undefined {
    return this.#states.at(-1);
  }

  /** A figure that was never typed. */
  next(): string {
    this.#figure += 1;
    return String(this.#figure);
  }

  add(row: number, figure: string): void {
    this.#states.push((this.last ?? []).map((each, i) => (i === row ? figure : each)));
  }

  /** A state that follows without anything being typed: an undo. */
  push(state: Lengths): void {
    this.#states.push(state);
  }

  /** The page has shown as kept what reads so: the first state that does, for the page may be behind what was typed. */
  noteKept(lengths: Lengths): void {
    const at = this.#states.findIndex((state, i) => i >= this.#kept && state.join() === lengths.join());
    if (at >= 0) this.#kept = at;
  }

  /** Takes what is there after a kill for how far it came; what is wrong with it where it is no such state. */
  async faultOf(reading: Promise<Lengths>): Promise<string | undefined> {
    const lengths = await reading;
    if (this.#states.length === 0) {
      this.#states = [lengths];
      return undefined;
    }
    const at = this.#states.findLastIndex((state) => state.join() === lengths.join());
    const kept = this.#states[this.#kept]?.join() ?? '';
    this.#states = [lengths];
    const before = this.#kept;
    this.#kept = 0;
    if (at < 0) return `${lengths.join()} was never on screen; shown as kept was ${kept}`;
    return at < before ? `${lengths.join()} is older than ${kept}, which was shown as kept` : undefined;
  }
}

async function once(address: string, profile: string, typed: Typed, random: Random): Promise<string | undefined> {
  const browser = await KillableBrowser.start(profile);
  let killed = false;
  try {
    const beds = await BedsPage.open(browser.context, address, 'yard', (lengths) => {
      if (!killed) typed.noteKept(lengths);
    });
    const wrong = await typed.faultOf(beds.read());
    if (wrong !== undefined) return wrong;
    const undone = await undoneFault(beds, typed);
    if (undone !== undefined) return undone;
    const typing = typeOn(beds, typed, random);
    // In the middle of the typing or a moment after it.
    await Promise.race([typing, beds.page.waitForTimeout(random.whole(200, 2_500))]);
    if (random.chance(0.5)) await beds.page.waitForTimeout(random.whole(0, 60));
    killed = true;
    await browser.kill();
    await typing;
    return undefined;
  } finally {
    if (!killed) await browser.kill();
  }
}

/** Undo takes back the last length that is there: its figure goes, and no other changes. */
async function undoneFault(beds: BedsPage, typed: Typed): Promise<string | undefined> {
  const now = typed.last ?? [];
  const [, figure] = /Length: (\d+)/.exec(await beds.undoWords()) ?? [];
  if (figure === undefined) return undefined;
  const row = now.indexOf(figure);
  if (row < 0) return `undo would take back ${figure}, and the lengths are ${now.join()}`;
  await beds.undo();
  for (let tries = 0; tries < 200; tries += 1) {
    const after = await beds.read();
    if (after[row] !== figure) {
      typed.push(after);
      const others = after.findIndex((each, i) => i !== row && each !== now[i]);
      return others < 0 ? undefined : `undo of ${figure} changed ${now.join()} into ${after.join()}`;
    }
    await beds.page.waitForTimeout(20);
  }
  return `undo of ${figure} did nothing`;
}

/** Types until the browser is gone. */
async function typeOn(beds: BedsPage, typed: Typed, random: Random): Promise<void> {
  for (let edits = random.whole(1, 12); edits > 0; edits -= 1) {
    const [row, figure] = [random.whole(0, BEDS - 1), typed.next()];
    // Noted first: it may be on the disk before this process hears that the key was pressed.
    typed.add(row, figure);
    try {
      await beds.type(row, figure);
    } catch {
      return;
    }
  }
}
