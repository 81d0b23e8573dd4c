// Where the time goes: CPU time of each step of the graph, by the column it works out, over several edits, of which the
// benchmark of the season prints the dearest; and over everything worked out again, told apart by whether the floor has the
// column too. Steps without a name are indexes and totals that columns share.

import type { Node } from '../../../engine/calculation/graph/graph.ts';
import type { Command, Workbook } from '../../../engine/index.ts';
import { costAmong, cpuNow, timed } from '../cpu.ts';
import { edit } from './edits.ts';
import { columnsOfFloor } from './floor/agree.ts';
import type { SeasonFloor } from './floor/floor.ts';

export interface StepCost {
  readonly name: string;
  /** CPU milliseconds an edit. */
  readonly cost: number;
  /** Of the edits, how many came to this step. */
  readonly runs: number;
  /** Rows it changed, an edit. */
  readonly rows: number;
}

/** The dearest first, after the first edits have warmed what they touch. */
export function stepCosts(workbook: Workbook, commands: readonly Command[], warm: number): readonly StepCost[] {
  return clocked(workbook, (taken) => {
    for (const command of commands.slice(0, warm)) edit(workbook, command);
    taken();
    const measured = commands.slice(warm);
    for (const command of measured) edit(workbook, command);
    return taken()
      .map((step): StepCost => ({ ...step, cost: step.cost / measured.length, rows: step.rows / measured.length }))
      .sort((a, b) => b.cost - a.cost);
  });
}

export interface Share {
  readonly steps: number;
  /** CPU milliseconds. */
  readonly cost: number;
}

/** Runs in which machine code is still being made, of the engine's code as of the floor's: at least so many, for at least so many ms. */
const [WARM, WARM_FOR] = [40, 5000];

/**
 * What everything again costs in the columns that the floor has, in other columns, and in what columns share: the median of so many
 * times, each in turn with the floor.
 */
export function sharesOfAll(
  workbook: Workbook,
  floor: SeasonFloor,
  times: number,
): { readonly shares: Readonly<Record<Kind, Share>>; readonly floor: number } {
  const onFloor = new Set(columnsOfFloor(floor).flatMap(([sheet, ids]) => ids.map((id) => `${sheet}/${id}`)));
  return clocked(workbook, (taken) => {
    for (let time = 0, end = cpuNow() + WARM_FOR; time < WARM || cpuNow() < end; time++) {
      workbook.recalculateAll();
      floor.all();
    }
    taken();
    const steps: Record<Kind, number> = { floor: 0, other: 0, shared: 0 };
    const costs: Record<Kind, number[]> = { floor: [], other: [], shared: [] };
    const ofFloor: number[] = [];
    for (let time = 0; time < times; time++) {
      const sums: Record<Kind, number> = { floor: 0, other: 0, shared: 0 };
      workbook.recalculateAll();
      for (const { name, cost } of taken()) {
        const kind = name.startsWith('(') ? 'shared' : onFloor.has(name) ? 'floor' : 'other';
        if (time === 0) steps[kind]++;
        sums[kind] += cost;
      }
      for (const kind of ['floor', 'other', 'shared'] as const) costs[kind].push(sums[kind]);
      ofFloor.push(timed(() => floor.all())[0]);
    }
    const share = (kind: Kind): Share => ({ steps: steps[kind], cost: costAmong(costs[kind]).p50 });
    return {
      shares: { floor: share('floor'), other: share('other'), shared: share('shared') },
      floor: costAmong(ofFloor).p50,
    };
  });
}

type Kind = 'floor' | 'other' | 'shared';

/** CPU milliseconds that the clock itself takes between two looks at it; a step of a small season takes some ten times that. */
function costOfClock(): number {
  const looks = 20_000;
  let sum = 0;
  for (let look = 0; look < looks; look++) {
    const start = cpuNow();
    sum += cpuNow() - start;
  }
  return sum / looks;
}

/**
 * Acts while a clock stands at every step of the graph, and gives what that gives. `taken`: what each step took since it was asked
 * before, less what looking at the clock takes. The clock stands at the kinds of steps, not at each: steps that were changed one by
 * one would be slower ones.
 */
function clocked<T>(workbook: Workbook, act: (taken: () => readonly StepCost[]) => T): T {
  const { order } = workbook.document.program.built.graph;
  const names = order.map((node, at) => node.name || unnamed(workbook, at));
  const costs = order.map(() => ({ cost: 0, runs: 0, rows: 0 }));
  const clock = costOfClock();
  const plain = new Map<Kindred, Kindred['run']>();
  for (const node of order) {
    const kindred: Kindred = Object.getPrototypeOf(node);
    if (!plain.has(kindred)) plain.set(kindred, kindred.run);
  }
  /** A step that runs itself in parts is not counted twice. */
  let running = false;
  for (const [kindred, run] of plain) {
    kindred.run = function (this: Node, frame, changed) {
      const sum = costs[this.rank];
      if (running || sum === undefined) {
        run.call(this, frame, changed);
        return;
      }
      running = true;
      const start = cpuNow();
      run.call(this, frame, changed);
      sum.cost += cpuNow() - start - clock;
      sum.runs++;
      sum.rows += changed.all ? Number.POSITIVE_INFINITY : changed.count;
      running = false;
    };
  }
  const taken = (): readonly StepCost[] =>
    costs.map((sum, at) => {
      const step = { name: names[at] ?? '', ...sum };
      Object.assign(sum, { cost: 0, runs: 0, rows: 0 });
      return step;
    });
  try {
    return act(taken);
  } finally {
    for (const [kindred, run] of plain) kindred.run = run;
  }
}

/** What steps of one kind run by. */
type Kindred = Pick<Node, 'run'>;

/** A shared index or total, by the first column that reads it. */
function unnamed(workbook: Workbook, at: number): string {
  const { order } = workbook.document.program.built.graph;
  const node = order[at];
  const reader = order.find((one) => node !== undefined && one.name !== '' && one.dependencies.includes(node));
  return `(index for ${reader?.name ?? '?'})`;
}
