// Values tried one after another on a branch that nobody else sees, and what figures become of them. What is tried last stands
// in the branch until the next trial writes over it, so a trial costs one recalculation.

import type { Command } from '../commands/command.ts';
import { message } from '../commands/messages.ts';
import type { Workbook } from '../commands/workbook.ts';
import { type Figure, type FigureValue, figureIn } from './figures.ts';

/** What the figures are with these commands done, which must write the same cells at every trial; refusals as errors. */
export type RunTrial = (commands: readonly Command[]) => readonly FigureValue[];

/** What comes of trials; the branch is gone afterwards. */
export function onTrials<T>(workbook: Workbook, figures: readonly Figure[], work: (run: RunTrial) => T): T {
  return workbook.onBranch((branch) =>
    work((commands) => {
      const done = branch.do(commands, message('trial'), { joined: true });
      if (!done.refused) return figures.map((figure) => figureIn(branch, figure));
      const { why } = done;
      return figures.map(() => ({ value: { error: 'value', why }, type: undefined, shown: why }));
    }),
  );
}
