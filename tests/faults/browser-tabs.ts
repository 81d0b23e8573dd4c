// Two tabs of one workbook typed in at once, one of them closed at a random moment: the other has all that it typed, and all that
// the closed one had shown as kept; a reload shows the same.

import type { Browser } from 'playwright-core';
import { type Random, randomFrom, seedOfRun } from '../differential/random.ts';
import { BEDS, BedsPage, type Lengths, launch, servePage } from './page.ts';
import { Tally, type Trial } from './trial.ts';

export const browserTabs: Trial = {
  name: 'tabs',
  about: 'two tabs typed in at once, one closed',
  full: 100,
  async run(count, tell) {
    const tally = new Tally(tell);
    const served = await servePage();
    const browser = await launch();
    const seed = seedOfRun();
    try {
      for (let i = 0; i < count; i += 1) {
        await tally.try(`tabs ${seed + i}`, () => once(browser, served.address, randomFrom(seed + i)), Infinity);
        tell?.(i + 1);
      }
    } finally {
      await browser.close();
      await served.close();
    }
    return tally.outcome();
  },
};

async function once(browser: Browser, address: string, random: Random): Promise<string | undefined> {
  const context = await browser.newContext();
  try {
    const shown: Lengths[] = [];
    const first = await BedsPage.open(context, address, 'yard', (lengths) => shown.push(lengths));
    await first.type(0, '100');
    await first.kept();
    const second = await BedsPage.open(context, first.page.url(), 'yard');
    // Either may be the one that writes and is closed; each types in beds of its own.
    const [leaving, staying] = random.chance(0.5) ? [first, second] : [second, first];
    const typing = [typeIn(leaving, [0, 1], 200), typeIn(staying, [2, 3, 4], 300)];
    await leaving.page.waitForTimeout(random.whole(0, 2_000));
    const wanted = shown.at(-1) ?? [];
    await leaving.page.close();
    await Promise.all(typing);
    await staying.kept();
    return (await missing(staying, wanted, leaving === first)) ?? (await afterReload(staying));
  } finally {
    await context.close();
  }
}

/** Types figures that count up, a few in each bed; ends where the tab is closed. */
async function typeIn(beds: BedsPage, rows: readonly number[], from: number): Promise<void> {
  for (let i = 0; i < rows.length * 2; i += 1) {
    const row = rows[i % rows.length] ?? 0;
    try {
      await beds.type(row, String(from + i));
    } catch {
      return;
    }
  }
}

async function missing(staying: BedsPage, wanted: Lengths, told: boolean): Promise<string | undefined> {
  const now = await staying.read();
  for (const [row, last] of [
    [2, 303],
    [3, 304],
    [4, 305],
  ] as const) {
    if (now[row] !== String(last)) return `the tab that stayed typed ${last} and shows ${now.join()}`;
  }
  // Figures of a bed count up, so that a later one is no loss.
  const lost = told ? wanted.findIndex((each, row) => row < 2 && Number(now[row]) < Number(each)) : -1;
  return lost < 0 ? undefined : `${wanted.join()} was shown as kept, and ${now.join()} is there`;
}

async function afterReload(staying: BedsPage): Promise<string | undefined> {
  const before = await staying.read();
  await staying.reload();
  const wrong = await staying.reads(before.slice(0, BEDS));
  return wrong === undefined ? undefined : `after a reload ${wrong}`;
}
