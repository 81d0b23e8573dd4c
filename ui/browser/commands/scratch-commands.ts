// The way to scratch papers. An entry of the table; the keys within a paper are its own (scratch/paper-grid.tsx), fetched with it.

import { view } from '../store/view.ts';
import type { PageCommand } from './command.ts';

export const SCRATCH_COMMANDS: readonly PageCommand[] = [
  {
    id: 'scratch paper',
    label: 'Scratch paper',
    menus: { workbook: 0 },
    run: () => {
      view.value = { at: 'scratch' };
    },
  },
];
