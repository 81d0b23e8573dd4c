// Values tried one after another on a branch that nobody else sees, and what figures become of them. What is tried last stands
// in the branch until the next trial writes over it, so a trial costs one recalculation.

import type { Command } from '../commands/command.ts';
import { message } from '../commands/messages.ts';
import type { Workbook } from '../commands/workbook.ts';
import { type Figure, type FigureValue, figureIn } from './figures.ts';

export class Trials {
  readonly #branch: Workbook;
  readonly #figures: readonly Figure[];

  constructor(workbook: Workbook, figures: readonly Figure[]) {
    this.#branch = workbook.branch();
    this.#figures = figures;
  }

  /** What the figures are with these commands done, which must write the same cells at every trial; refusals as errors. */
  run(commands: readonly Command[]): readonly FigureValue[] {
    const done = this.#branch.do(commands, message('trial'), { joined: true });
    if (!done.refused) return this.#figures.map((figure) => figureIn(this.#branch, figure));
    const { why } = done;
    return this.#figures.map(() => ({ value: { error: 'value', why }, type: undefined, shown: why }));
  }
}
