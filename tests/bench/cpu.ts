// CPU time of this process, for machines that others use too: what waits for its turn is not counted. The benchmarks of the
// season call it. Garbage collected on the way is counted, in whichever thread; what earlier figures left lying about is collected
// before one that is taken once.

import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

setFlagsFromString('--expose-gc');
const collect: () => void = runInNewContext('gc');

/** Milliseconds of CPU time since the program began. */
export function cpuNow(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

export interface Cost {
  readonly p50: number;
  readonly p95: number;
}

/** CPU milliseconds of each of several calls. */
export function costOf(calls: number, act: (call: number) => void): Cost {
  const times = Array.from({ length: calls }, (_, call) => {
    const start = cpuNow();
    act(call);
    return cpuNow() - start;
  });
  return costAmong(times);
}

/** As timed, after what others left was collected. */
export function timedAlone<T>(act: () => T): readonly [number, T] {
  collect();
  return timed(act);
}

/** CPU milliseconds of one call, and what it gives. */
export function timed<T>(act: () => T): readonly [number, T] {
  const start = cpuNow();
  const result = act();
  return [cpuNow() - start, result];
}

/**
 * CPU milliseconds of a call too short for the clock of CPU time: the mean of many together. `p95` is the worst mean but one in
 * twenty of the groups they are timed in.
 */
export function costOfShort(groups: number, inGroup: number, act: (call: number) => void): Cost {
  const times = Array.from({ length: groups }, (_, group) => {
    const start = cpuNow();
    for (let i = 0; i < inGroup; i++) act(group * inGroup + i);
    return (cpuNow() - start) / inGroup;
  });
  return costAmong(times);
}

/** Of the times of several calls. */
export function costAmong(times: number[]): Cost {
  const sorted = times.sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
  return { p50: at(0.5), p95: at(0.95) };
}
