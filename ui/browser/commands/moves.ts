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

export const MOVES: readonly PageCommand[] = [
  ...DIRECTIONS.flatMap(([move, key, words]): readonly PageCommand[] => [
    {
      id: `stretch ${move}`,
      label: `Stretch the selection ${words}`,
      keys: [`Shift ${key}`],
      where: ['grid'],
      run: ({ grid }) => grid?.move(move, { stretch: true }),
    },
    {
      id: `stretch far ${move}`,
      label: `Stretch the selection all the way ${words}`,
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
    id: 'shrink',
    label: 'Back to the cell in hand alone',
    keys: ['Escape'],
    where: ['grid'],
    applies: ({ grid }) => grid?.isWide() === true,
    run: ({ grid }) => grid?.shrink(),
  },
];
