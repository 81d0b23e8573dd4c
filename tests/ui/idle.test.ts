// What may wait gives way: to the frame of a change, to a person's key, to its time. The browser's clock and its turns are played
// here, so nothing rests on how fast a machine is.

import { afterEach, beforeEach, expect, test, vi } from 'vitest';

type Idle = (deadline: { readonly didTimeout: boolean; timeRemaining(): number }) => void;

let now = 0;
let idle: { readonly run: Idle; readonly latest: number }[] = [];
let frames: (() => void)[] = [];
let timers: (() => void)[] = [];
let keyWaits = false;

beforeEach(() => {
  now = 1_000;
  idle = [];
  frames = [];
  timers = [];
  keyWaits = false;
  vi.stubGlobal('performance', { now: () => now });
  vi.stubGlobal('navigator', { scheduling: { isInputPending: () => keyWaits } });
  vi.stubGlobal('requestIdleCallback', (run: Idle, { timeout = Number.POSITIVE_INFINITY } = {}) =>
    idle.push({ run, latest: now + timeout }),
  );
  vi.stubGlobal('requestAnimationFrame', (run: () => void) => frames.push(run));
  vi.stubGlobal('setTimeout', (run: () => void) => timers.push(run));
});

afterEach(() => vi.unstubAllGlobals());

/** The page has nothing to do for so many milliseconds. */
function rest(left: number): void {
  for (const { run, latest } of idle.splice(0)) run({ didTimeout: now >= latest, timeRemaining: () => left });
}

function runAll(waiting: (() => void)[]): void {
  for (const run of waiting.splice(0)) run();
}

/** The idle turns as the page first has them. */
async function fresh() {
  vi.resetModules();
  return import('../../ui/browser/store/idle.ts');
}

test('a slice ends when its time is up, and when a key waits', async () => {
  const { inSlice } = await fresh();
  const said: boolean[] = [];
  const slice = (goOn: () => boolean): void => {
    said.push(goOn());
    now += 6;
    said.push(goOn());
    now += 6;
    said.push(goOn());
  };
  inSlice(slice, 400);
  rest(50);
  expect(said.splice(0)).toEqual([true, true, false]);
  inSlice(slice, 400);
  rest(5);
  expect(said.splice(0)).toEqual([true, false, false]);
  keyWaits = true;
  inSlice(slice, 400);
  rest(50);
  expect(said).toEqual([false, false, false]);
});

test('a change is drawn once, before its frame; no slice begins until the frame has come, unless it has waited too long', async () => {
  const { forNextFrame, inSlice } = await fresh();
  let drawn = 0;
  let slices = 0;
  const change = (): void =>
    forNextFrame(() => {
      drawn += 1;
    });
  const slice = (): void => {
    slices += 1;
  };
  change();
  inSlice(slice, 400);
  rest(12);
  runAll(timers);
  rest(12);
  expect([drawn, slices]).toEqual([1, 0]);
  runAll(frames);
  rest(12);
  expect([drawn, slices]).toEqual([1, 1]);

  // The frame may come first.
  change();
  runAll(frames);
  runAll(timers);
  expect(drawn).toBe(2);

  // A page out of sight has no frames.
  change();
  inSlice(slice, 400);
  now += 399;
  rest(12);
  expect(slices).toBe(1);
  now += 1;
  rest(12);
  expect(slices).toBe(2);
});
