// What may wait gives way: to the frame of a change, to a person's key, to its time. The browser's clock and its turns are played
// here, so nothing rests on how fast a machine is.

import { afterEach, beforeEach, expect, test, vi } from 'vitest';

type Idle = (deadline: { readonly didTimeout: boolean; timeRemaining(): number }) => void;

let now = 0;
let idle: { readonly run: Idle; readonly latest: number }[] = [];
let frames: (() => void)[] = [];
let timers: { readonly run: () => void; readonly due: number }[] = [];
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
  vi.stubGlobal('setTimeout', (run: () => void, wait = 0) => timers.push({ run, due: now + wait }));
});

afterEach(() => vi.unstubAllGlobals());

/** The page has nothing to do for so many milliseconds. */
function rest(left: number): void {
  for (const { run, latest } of idle.splice(0)) run({ didTimeout: now >= latest, timeRemaining: () => left });
}

/** So many milliseconds pass: timers run that are due by then. */
function pass(milliseconds: number): void {
  now += milliseconds;
  const due = timers.filter((timer) => timer.due <= now);
  timers = timers.filter((timer) => timer.due > now);
  for (const { run } of due) run();
}

function drawFrames(): void {
  for (const run of frames.splice(0)) run();
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
  pass(0);
  expect([drawn, slices]).toEqual([1, 0]);
  pass(100);
  rest(12);
  expect([drawn, slices]).toEqual([1, 0]);
  drawFrames();
  rest(12);
  expect([drawn, slices]).toEqual([1, 1]);

  // The frame may come first.
  change();
  drawFrames();
  pass(0);
  expect(drawn).toBe(2);

  // A page out of sight has no frames.
  change();
  inSlice(slice, 400);
  rest(12);
  pass(399);
  rest(12);
  expect(slices).toBe(1);
  pass(1);
  rest(12);
  expect(slices).toBe(1);
  pass(100);
  expect(slices).toBe(2);
});

test('while changes come one after another no slice begins, but for one that has waited too long', async () => {
  const { forNextFrame, inSlice } = await fresh();
  let slices = 0;
  const drag = (milliseconds: number): void => {
    for (let frame = 0; frame < milliseconds / 20; frame += 1) {
      forNextFrame(() => undefined);
      drawFrames();
      rest(12);
      pass(20);
    }
  };
  const slice = (): void => {
    slices += 1;
  };
  forNextFrame(() => undefined);
  drawFrames();
  inSlice(slice, 400);
  drag(380);
  expect(slices).toBe(0);
  drag(60);
  expect(slices).toBe(1);

  // Late, it begins when the change that it comes upon is painted, not before.
  inSlice(slice, 400);
  drag(380);
  forNextFrame(() => undefined);
  pass(30);
  rest(12);
  expect(slices).toBe(1);
  drawFrames();
  expect(slices).toBe(1);
  pass(0);
  expect(slices).toBe(2);

  // At rest it begins a moment after the last of them.
  forNextFrame(() => undefined);
  drawFrames();
  inSlice(slice, 400);
  rest(12);
  pass(30);
  rest(12);
  expect(slices).toBe(2);
  pass(20);
  rest(12);
  expect(slices).toBe(3);

  // Without a change there is nothing to wait for.
  inSlice(slice, 400);
  rest(12);
  expect(slices).toBe(4);
});
