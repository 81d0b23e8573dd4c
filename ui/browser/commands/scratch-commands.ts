// Commands about scratch papers. Entries of the table.

import { scratchOnScreen } from '../scratch/scratch-surface.ts';
import { view } from '../store/view.ts';
import { putOnClipboard } from './clipboard.ts';
import type { PageCommand } from './command.ts';

const HERE = ['scratch'] as const;
const isThere = (): boolean => scratchOnScreen.value !== undefined;

export const SCRATCH_COMMANDS: readonly PageCommand[] = [
  {
    id: 'scratch paper',
    label: 'Scratch paper',
    menus: { workbook: 0 },
    run: () => {
      view.value = { at: 'scratch' };
    },
  },
  {
    id: 'copy on paper',
    label: 'Copy cells of a scratch paper',
    keys: ['Ctrl C'],
    where: HERE,
    clipboard: 'copy',
    applies: isThere,
    run: (_, clipboard) => putOnClipboard(scratchOnScreen.peek()?.copied(), clipboard),
  },
  {
    id: 'cut on paper',
    label: 'Cut cells of a scratch paper',
    keys: ['Ctrl X'],
    where: HERE,
    clipboard: 'cut',
    applies: isThere,
    run: (_, clipboard) => putOnClipboard(scratchOnScreen.peek()?.cut(), clipboard),
  },
  {
    id: 'paste on paper',
    label: 'Paste into a scratch paper',
    keys: ['Ctrl V'],
    where: HERE,
    clipboard: 'paste',
    applies: isThere,
    run: (_, clipboard) =>
      scratchOnScreen.peek()?.paste(clipboard?.getData('text/plain') ?? '', clipboard?.getData('text/html') ?? ''),
  },
  {
    id: 'clear on paper',
    label: 'Clear cells of a scratch paper',
    keys: ['Delete', 'Backspace'],
    where: HERE,
    applies: isThere,
    run: () => scratchOnScreen.peek()?.clear(),
  },
  ...(['down', 'right'] as const).map(
    (way): PageCommand => ({
      id: `fill ${way} on paper`,
      label: `Fill ${way === 'down' ? 'down' : 'to the right'} on a scratch paper`,
      keys: [way === 'down' ? 'Ctrl D' : 'Ctrl R'],
      where: HERE,
      applies: isThere,
      run: () => scratchOnScreen.peek()?.fill(way),
    }),
  ),
  {
    id: 'all of paper',
    label: 'Select all of a scratch paper',
    keys: ['Ctrl A'],
    where: HERE,
    applies: isThere,
    run: () => scratchOnScreen.peek()?.selectAll(),
  },
  {
    id: 'sum to column',
    label: 'Turn the sum into a column',
    applies: isThere,
    refusal: () => scratchOnScreen.value?.turnRefusal(),
    run: () => scratchOnScreen.peek()?.turn(),
  },
];
