// Timing helpers of the benchmark: a median over repeats, percentiles over many edits. Figures are for ratios within one run.

export interface Spread {
  readonly median: number;
  readonly p95: number;
}

/** Milliseconds of each call. */
export function timeEach(calls: number, act: (call: number) => void): Spread {
  const times: number[] = [];
  for (let call = 0; call < calls; call++) {
    const start = performance.now();
    act(call);
    times.push(performance.now() - start);
  }
  return spreadOf(times);
}

/** Milliseconds of each call of two ways of doing the same, in turn, so that drift of the machine hits both. */
export function timePair(
  calls: number,
  one: (call: number) => void,
  other: (call: number) => void,
): readonly [Spread, Spread] {
  const times: [number[], number[]] = [[], []];
  for (let call = 0; call < calls; call++) {
    const start = performance.now();
    one(call);
    const middle = performance.now();
    other(call);
    times[0].push(middle - start);
    times[1].push(performance.now() - middle);
  }
  return [spreadOf(times[0]), spreadOf(times[1])];
}

function spreadOf(times: number[]): Spread {
  const sorted = times.sort((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
  return { median: at(0.5), p95: at(0.95) };
}
