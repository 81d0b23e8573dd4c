// Where the time goes: CPU time of each step of the graph, by the column it works out, over several edits, of which the
// benchmark of the season prints the dearest; and over everything worked out again, told apart by whether the floor has the
// column too. Steps without a name are indexes and totals that columns share.

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
  for (const command of commands.slice(0, warm)) edit(workbook, command);
  const measured = commands.slice(warm);
  return costsOver(workbook, measured.length, () => {
    for (const command of measured) edit(workbook, command);
  });
}

export interface Share {
  readonly steps: number;
  /** CPU milliseconds. */
  readonly cost: number;
}

/** Runs in which machine code is still being made, of the engine's code as of the floor's. */
const WARM = 40;

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
  for (let time = 0; time < WARM; time++) {
    workbook.recalculateAll();
    floor.all();
  }
  const steps: Record<Kind, number> = { floor: 0, other: 0, shared: 0 };
  const costs: Record<Kind, number[]> = { floor: [], other: [], shared: [] };
  const ofFloor: number[] = [];
  for (let time = 0; time < times; time++) {
    const sums: Record<Kind, number> = { floor: 0, other: 0, shared: 0 };
    for (const { name, cost } of costsOver(workbook, 1, () => workbook.recalculateAll())) {
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
}

type Kind = 'floor' | 'other' | 'shared';

/** CPU time of each step while something is done, for one of so many times that it is done. */
function costsOver(workbook: Workbook, times: number, act: () => void): readonly StepCost[] {
  const { graph } = workbook.document.program.built;
  const costs = graph.order.map(() => ({ cost: 0, runs: 0, rows: 0 }));
  const plain = graph.order.map((node) => node.run);
  graph.order.forEach((node, at) => {
    const sum = costs[at];
    if (sum === undefined) return;
    const run = node.run.bind(node);
    node.run = (frame, changed) => {
      const start = cpuNow();
      run(frame, changed);
      sum.cost += cpuNow() - start;
      sum.runs++;
      sum.rows += changed.all ? Number.POSITIVE_INFINITY : changed.count;
    };
  });
  try {
    act();
  } finally {
    graph.order.forEach((node, at) => {
      const run = plain[at];
      if (run !== undefined) node.run = run;
    });
  }
  return graph.order
    .map((node, at): StepCost => {
      const { cost, runs, rows } = costs[at] ?? { cost: 0, runs: 0, rows: 0 };
      return { name: node.name || unnamed(workbook, at), cost: cost / times, runs, rows: rows / times };
    })
    .sort((a, b) => b.cost - a.cost);
}

/** A shared index or total, by the first column that reads it. */
function unnamed(workbook: Workbook, at: number): string {
  const { order } = workbook.document.program.built.graph;
  const node = order[at];
  const reader = order.find((one) => node !== undefined && one.name !== '' && one.dependencies.includes(node));
  return `(index for ${reader?.name ?? '?'})`;
}
