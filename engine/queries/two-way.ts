// A table of one input against another, or of one input against several figures: each pair of values tried on a branch.

import type { Workbook } from '../commands/workbook.ts';
import type { Figure, FigureValue } from './figures.ts';
import { type Input, type InputValue, putInput, refuseInput } from './inputs.ts';
import { onTrials } from './trials.ts';

export interface InputAt {
  readonly input: Input;
  readonly values: readonly InputValue[];
}

export type TwoWay =
  | {
      readonly ok: true;
      /** By the values down, then those across. */
      readonly cells: readonly (readonly FigureValue[])[];
    }
  | { readonly ok: false; readonly why: string };

/** The figure at every pair of values. */
export function twoWay(workbook: Workbook, down: InputAt, across: InputAt, figure: Figure): TwoWay {
  const why = refuseInput(workbook, down.input) ?? refuseInput(workbook, across.input);
  if (why !== undefined) return { ok: false, why };
  if (isSame(down.input, across.input))
    return { ok: false, why: 'Both inputs are the same cell: choose another for one.' };
  const cells = onTrials(workbook, [figure], (run) =>
    down.values.map((first) => {
      const put = putInput(workbook, down.input, first);
      return across.values.flatMap((second) => run([put, putInput(workbook, across.input, second)]));
    }),
  );
  return { ok: true, cells };
}

/** Several figures at each value of one input: by values, then by figures. */
export function oneWay(workbook: Workbook, { input, values }: InputAt, figures: readonly Figure[]): TwoWay {
  const why = refuseInput(workbook, input);
  if (why !== undefined) return { ok: false, why };
  const cells = onTrials(workbook, figures, (run) => values.map((value) => run([putInput(workbook, input, value)])));
  return { ok: true, cells };
}

function isSame(a: Input, b: Input): boolean {
  return a.sheet === b.sheet && a.row === b.row && a.column === b.column;
}
