// Many edits in one page: each is kept as fast as the first ones were, the heap does not grow with them, and all of them are in the
// journal or its snapshot. What was measured is told on standard error; in absolute terms it means something on a quiet
// machine alone, so that only the last tenth against the first is judged.

import { BEDS, BedsPage, launch, servePage } from './page.ts';
import { Tally, type Trial } from './trial.ts';

/** The last part of the edits may cost so much more than the first, and the heap may grow by so much. */
const MORE = 1.5;
const GROWTH = 40_000_000;

export const browserEdits: Trial = {
  name: 'edits',
  about: 'edits in one page, kept as fast as the first',
  full: 10_000,
  async run(count, tell) {
    const tally = new Tally(tell);
    const served = await servePage();
    const browser = await launch();
    try {
      const context = await browser.newContext();
      const beds = await BedsPage.open(context, served.address, 'demo farm');
      await beds.page.evaluate(MEASURE);
      const control = await context.newCDPSession(beds.page);
      const heap = async (): Promise<number> => {
        await control.send('HeapProfiler.collectGarbage');
        return (await control.send('Runtime.getHeapUsage')).usedSize;
      };
      let first = 0;
      const part = Math.max(20, Math.round(count / 10));
      for (let edit = 0; edit < count; edit += 1) {
        await beds.type(edit % BEDS, String(100 + edit));
        if (edit + 1 === part) first = await heap();
        if (edit % 100 === 99) tell?.(edit + 1);
      }
      await beds.kept();
      tally.tried(count);
      const grown = (await heap()) - first;
      const { done, kept } = await beds.page.evaluate<{ done: number[]; kept: number[] }>('globalThis.measured');
      const figures = { done: parts(done, part), kept: parts(kept, part) };
      process.stderr.write(
        `  ms, 95 of 100, first and last tenth: ${JSON.stringify(figures)}; heap grew ${grown} bytes\n`,
      );
      const [before, after] = figures.done;
      if (after > before * MORE + 2) tally.hung('the last edits', `${after} ms, and the first ${before} ms`);
      const [quick, slow] = figures.kept;
      if (slow > quick * MORE + 10)
        tally.hung('the last edits', `kept after ${slow} ms, and the first after ${quick} ms`);
      if (grown > GROWTH) tally.hung('the page', `its heap grew by ${grown} bytes`);
      const wanted = await beds.read();
      await beds.reload();
      const wrong = await beds.reads(wanted);
      if (wrong !== undefined) tally.lost('after a reload', wrong);
    } finally {
      await browser.close();
      await served.close();
    }
    return tally.outcome();
  },
};

// Run in the page, as text: how long Enter takes until the next thing can be done, and from the first frame that shows the change
// until the page says that it is kept.
const MEASURE = `(() => {
  const measured = (globalThis.measured = { done: [], kept: [] });
  let shown = Infinity;
  addEventListener('keydown', ({ key }) => {
    if (key !== 'Enter') return;
    const begin = performance.now();
    const channel = new MessageChannel();
    channel.port1.onmessage = () => measured.done.push(performance.now() - begin);
    channel.port2.postMessage('');
    shown = Infinity;
    requestAnimationFrame(() => { shown = performance.now(); });
  }, { capture: true });
  let was = true;
  new MutationObserver(() => {
    const is = (document.querySelector('.kept')?.textContent ?? '').startsWith('kept on this computer');
    if (is && !was) measured.kept.push(Math.max(0, performance.now() - shown));
    was = is;
  }).observe(document, { subtree: true, childList: true, characterData: true });
})()`;

/** The 95th of 100 in the first and in the last part. */
function parts(all: readonly number[], part: number): readonly [number, number] {
  return [share(all.slice(0, part)), share(all.slice(-part))];
}

function share(list: readonly number[]): number {
  const sorted = [...list].sort((a, b) => a - b);
  return Math.round((sorted[Math.floor(sorted.length * 0.95)] ?? 0) * 10) / 10;
}
