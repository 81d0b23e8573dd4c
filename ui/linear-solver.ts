// Solves the linear programs of engine/planning/choice.ts by yalps. Fetched when something is first chosen.

import { type Constraint, type Model, solve } from 'yalps';
import type { Solver } from '../engine/index.ts';

/** An amount counts in the program as what it is above its least, since the solver's amounts begin at nothing. */
export const linearSolver: Solver = ({ gains, rows, least, most }) => {
  const constraints = new Map<string, Constraint>();
  for (const row of rows) {
    const already = row.takes.reduce((sum, takes, i) => sum + takes * (least[i] ?? 0), 0);
    constraints.set(`row ${row.id}`, { max: row.most - already });
  }
  most.forEach((end, i) => {
    constraints.set(`end ${i}`, { max: end - (least[i] ?? 0) });
  });
  const variables = gains.map((gain, i): [string, Map<string, number>] => [
    String(i),
    new Map([
      ['gain', gain],
      ...rows.map((row): [string, number] => [`row ${row.id}`, row.takes[i] ?? 0]),
      [`end ${i}`, 1],
    ]),
  ]);
  const model: Model = { direction: 'maximize', objective: 'gain', constraints, variables };
  const found = solve(model, { includeZeroVariables: true });
  if (found.status !== 'optimal') return undefined;
  const above = new Map(found.variables.map(([name, value]) => [String(name), value]));
  return least.map((end, i) => end + (above.get(String(i)) ?? 0));
};
