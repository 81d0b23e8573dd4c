// Where an edit's time goes: CPU time of each step of the graph, by the column it works out, over several edits. The
// benchmark of the season prints the dearest. Steps without a name are indexes and totals that columns share.

import type { Command, Workbook } from '../../../engine/index.ts';
import { cpuNow } from '../cpu.ts';
import { edit } from './edits.ts';

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
  const { graph } = workbook.document.program.built;
  for (const command of commands.slice(0, warm)) edit(workbook, command);
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
  const measured = commands.slice(warm);
  try {
    for (const command of measured) edit(workbook, command);
  } finally {
    graph.order.forEach((node, at) => {
      const run = plain[at];
      if (run !== undefined) node.run = run;
    });
  }
  const edits = measured.length;
  return graph.order
    .map((node, at): StepCost => {
      const { cost, runs, rows } = costs[at] ?? { cost: 0, runs: 0, rows: 0 };
      return { name: node.name || unnamed(workbook, at), cost: cost / edits, runs, rows: rows / edits };
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
