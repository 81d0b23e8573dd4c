// Commands that walk and stretch the selection in the grid. Entries of the table.

import type { Move } from '../grid/ranges.ts';
import type { PageCommand } from './command.ts';

const DIRECTIONS: readonly (readonly [Move, string, string])[] = [
  ['up', 'ArrowUp', 'up'],
  ['down', 'ArrowDown', 'down'],
  ['left', 'ArrowLeft', 'to the left'],
  ['right', 'ArrowRight', 'to the right'],
];

const EDGES: readonly (readonly [Move, string, string])[] = [
  ['row start', 'Home', 'the start of the row'],
  ['row end', 'End', 'the end of the row'],
  ['sheet start', 'Ctrl Home', 'the first cell of the sheet'],
  ['sheet end', 'Ctrl End', 'the last cell of the sheet'],
];

const PAGES: readonly (readonly [1 | -1, string, string])[] = [
  [1, 'PageDown', 'down'],
  [-1, 'PageUp', 'up'],
];

const TABS: readonly (readonly [1 | -1, string, string])[] = [
  [1, 'Tab', 'To the next cell'],
  [-1, 'Shift Tab', 'To the cell before'],
];

export const MOVES: readonly PageCommand[] = [
  ...DIRECTIONS.flatMap(([move, key, words]): readonly PageCommand[] => [
    { id: move, label: `Go ${words}`, keys: [key], where: ['grid'], run: ({ grid }) => grid?.move(move) },
    {
      id: `far ${move}`,
      label: `Go ${words} to the end of the data`,
      keys: [`Ctrl ${key}`],
      where: ['grid'],
      run: ({ grid }) => grid?.move(move, { far: true }),
    },
    {
      id: `stretch ${move}`,
      label: `Stretch the selection ${words}`,
      keys: [`Shift ${key}`],
      where: ['grid'],
      run: ({ grid }) => grid?.move(move, { stretch: true }),
    },
    {
      id: `stretch far ${move}`,
      label: `Stretch the selection ${words} to the end of the data`,
      keys: [`Ctrl Shift ${key}`],
      where: ['grid'],
      run: ({ grid }) => grid?.move(move, { stretch: true, far: true }),
    },
  ]),
  ...EDGES.flatMap(([move, key, words]): readonly PageCommand[] => [
    { id: `to ${move}`, label: `Go to ${words}`, keys: [key], where: ['grid'], run: ({ grid }) => grid?.move(move) },
    {
      id: `stretch to ${move}`,
      label: `Stretch the selection to ${words}`,
      keys: [key.startsWith('Ctrl ') ? key.replace('Ctrl ', 'Ctrl Shift ') : `Shift ${key}`],
      where: ['grid'],
      run: ({ grid }) => grid?.move(move, { stretch: true }),
    },
  ]),
  ...PAGES.flatMap(([by, key, words]): readonly PageCommand[] => [
    {
      id: `page ${words}`,
      label: `A screen ${words}`,
      keys: [key],
      where: ['grid'],
      run: ({ grid }) => grid?.page(by, false),
    },
    {
      id: `stretch page ${words}`,
      label: `Stretch the selection a screen ${words}`,
      keys: [`Shift ${key}`],
      where: ['grid'],
      run: ({ grid }) => grid?.page(by, true),
    },
  ]),
  ...TABS.map(
    ([by, key, label]): PageCommand => ({
      id: key,
      label,
      keys: [key],
      where: ['grid'],
      applies: ({ grid }) => grid?.canTab(by) === true,
      run: ({ grid }) => grid?.tab(by),
    }),
  ),
  {
    id: 'select rows',
    label: 'Select whole rows',
    keys: ['Shift Space'],
    where: ['grid'],
    run: ({ grid }) => grid?.selectRows(),
  },
  {
    id: 'select columns',
    label: 'Select whole columns',
    keys: ['Ctrl Space'],
    where: ['grid'],
    run: ({ grid }) => grid?.selectColumns(),
  },
  {
    id: 'select all',
    label: 'Select the whole sheet',
    keys: ['Ctrl A'],
    where: ['grid'],
    run: ({ grid }) => grid?.selectAll(),
  },
  {
    id: 'forget cut',
    label: 'Leave what was cut where it is',
    keys: ['Escape'],
    where: ['grid'],
    applies: ({ grid }) => grid?.hasCut() === true,
    run: ({ grid }) => grid?.forgetCut(),
  },
  {
    id: 'shrink',
    label: 'Back to the cell in hand alone',
    keys: ['Escape'],
    where: ['grid'],
    applies: ({ grid }) => grid?.isWide() === true,
    run: ({ grid }) => grid?.shrink(),
  },
];
