// Keys of an entry that is open in the grid: taking it and going on, taking it into all selected cells, giving it up. Entries of
// the table.

import type { TakenTo } from '../grid/grid-entry.ts';
import type { PageCommand } from './command.ts';

const TAKEN: readonly (readonly [TakenTo, string, string])[] = [
  ['down', 'Enter', 'Take the entry and go down'],
  ['up', 'Shift Enter', 'Take the entry and go up'],
  ['right', 'Tab', 'Take the entry and go on'],
  ['left', 'Shift Tab', 'Take the entry and go back'],
];

const QUICK: readonly (readonly [TakenTo, string, string])[] = [
  ['down', 'ArrowDown', 'Take what was typed over a cell and go down'],
  ['up', 'ArrowUp', 'Take what was typed over a cell and go up'],
];

export const ENTRY: readonly PageCommand[] = [
  {
    id: 'take into all',
    label: 'Take the entry into every selected cell',
    keys: ['Ctrl Enter'],
    where: ['entry'],
    run: ({ grid }) => grid?.takeIntoAll(),
  },
  ...TAKEN.map(
    ([to, key, label]): PageCommand => ({
      id: `take entry ${to}`,
      label,
      keys: [key],
      where: ['entry'],
      run: ({ grid }) => grid?.takeEntry(to),
    }),
  ),
  ...QUICK.map(
    ([to, key, label]): PageCommand => ({
      id: `take quick entry ${to}`,
      label,
      keys: [key],
      where: ['entry'],
      applies: ({ grid }) => grid?.isQuickEntry() === true,
      run: ({ grid }) => grid?.takeEntry(to),
    }),
  ),
  {
    id: 'leave entry',
    label: 'Give the entry up',
    keys: ['Escape'],
    where: ['entry'],
    run: ({ grid }) => grid?.leaveEntry(),
  },
];
