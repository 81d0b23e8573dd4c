// What a person typed in a cell that a formula fills otherwise: so two dates can each follow from the other, whichever was
// typed. The checker makes a node of its own of the call (language/calls.ts); read by trade/index.ts.

import type { FunctionDefinition } from '../definition.ts';

const CELL = { is: 'letter', letter: 'T', among: 'anything' } as const;

export const TYPED: readonly FunctionDefinition[] = [
  {
    signature: {
      name: 'TYPED',
      group: 'information',
      parameters: [{ name: 'cell', pattern: CELL }],
      repeating: 0,
      result: CELL,
      doc: "What a person typed in a cell of this row; blank where the cell's own formula stands in. It may be asked of cells that follow from this one.",
      source: 'Dibble',
    },
    body: { lane: 'scalar', blanks: 'pass', compute: ([value = null]) => value },
  },
];
