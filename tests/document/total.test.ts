// What is asked of a workbook and can't be: the row of a one-row sheet stays the one there is, and nothing is taken in that a file
// could not hold.

import { describe, expect, test } from 'vitest';
import type { Command, Operation, Workbook } from '../../engine/index.ts';
import { BEGINNING, everything, openFarm } from './farm.ts';

const MESSAGE = { code: 'work', parts: {} };
const [P1 = ''] = (BEGINNING.rows.plantings ?? []).map(({ id }) => id);

function receive(workbook: Workbook, operation: Operation): void {
  workbook.receive({ id: 't', actor: 'bert', time: 1e6, source: 'user', message: MESSAGE, operations: [operation] });
}

test.each<Operation>([
  { op: 'remove row', sheet: 'farm', row: 'only' },
  { op: 'remove rows', sheet: 'farm', rows: ['only'] },
  { op: 'insert row', sheet: 'farm', row: 'second', at: 'c' },
  { op: 'insert rows', sheet: 'farm', columns: ['season'], rows: [{ row: 'second', at: 'c', cells: [] }] },
])('a one-row sheet has its row whatever comes: $op', (operation) => {
  const workbook = openFarm();
  const before = everything(workbook);
  receive(workbook, operation);
  expect(everything(workbook)).toEqual(before);
  workbook.undo();
  expect(everything(workbook)).toEqual(before);
});

describe('refused, with the workbook as it was', () => {
  test.each<readonly [string, Command]>([
    ['a day whose year has five digits', { command: 'set today', today: 3_000_000 }],
    ['a day long before any calendar', { command: 'set today', today: -10_000_000 }],
    ['no name', { command: 'put cell', sheet: 'plantings', row: P1, column: 'planting', content: null }],
    ['a name that is taken', { command: 'put cell', sheet: 'plantings', row: P1, column: 'planting', content: 'P2' }],
    [
      'a row without an id',
      { command: 'put rows', sheet: 'beds', columns: ['bed'], rows: [{ row: '', cells: ['B7'] }] },
    ],
    [
      'a row’s id with a blank',
      { command: 'put rows', sheet: 'beds', columns: ['bed'], rows: [{ row: 'a b', cells: ['B7'] }] },
    ],
  ])('%s', (_, command) => {
    const workbook = openFarm();
    const before = everything(workbook);
    expect(workbook.do([command], MESSAGE).refused).toBe(true);
    expect(everything(workbook)).toEqual(before);
  });
});
