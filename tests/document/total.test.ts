// What is asked of a workbook and can't be: the row of a one-row sheet stays the one there is, and nothing is taken in that a file
// could not hold.

import { describe, expect, test } from 'vitest';
import { type Command, type Operation, rows, type SheetDeclaration, type Workbook } from '../../engine/index.ts';
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

test('a sheet whose rows follow from its own has none, and what is typed in it is kept aside', () => {
  const workbook = openFarm();
  const ring: SheetDeclaration = {
    id: 'ring',
    name: 'Ring',
    question: 'Own sheets',
    about: '',
    rows: { from: 'each', sheet: 'ring', as: { id: 'row', name: 'Row' }, where: '' },
    columns: [{ id: 'note', name: 'Note', type: { type: 'text' }, role: 'entered', formula: '', group: '', note: '' }],
    checks: [],
    cautions: [],
  };
  receive(workbook, { op: 'add sheet', sheet: ring });
  receive(workbook, { op: 'cell', sheet: 'ring', row: P1, column: 'note', content: 'kept' });
  expect([...rows(workbook, 'ring')]).toEqual([]);
  expect(workbook.document.shelf.cells('ring', P1).get('note')).toBe('kept');
});

describe('refused, with the workbook as it was', () => {
  test.each<readonly [string, Command]>([
    ['a day whose year has five digits', { command: 'set today', today: 3_000_000 }],
    ['a day long before any calendar', { command: 'set today', today: -10_000_000 }],
    [
      'a number that is none',
      {
        command: 'put cell',
        sheet: 'plantings',
        row: P1,
        column: 'length',
        content: { number: Number.NaN, unit: 'ft' },
      },
    ],
    [
      'rows with a number beyond every number',
      {
        command: 'put rows',
        sheet: 'beds',
        columns: ['bed', 'length'],
        rows: [{ row: 'b7', cells: ['B7', Number.POSITIVE_INFINITY] }],
      },
    ],
    ['no name', { command: 'put cell', sheet: 'plantings', row: P1, column: 'planting', content: null }],
    ['a name that is taken', { command: 'put cell', sheet: 'plantings', row: P1, column: 'planting', content: 'P2' }],
    [
      'a row without an id',
      { command: 'put rows', sheet: 'beds', columns: ['bed'], rows: [{ row: '', cells: ['B7'] }] },
    ],
    [
      'a choice without a letter',
      { command: 'add column', sheet: 'beds', name: 'Kind', type: { type: 'choice', options: [''] } },
    ],
    [
      'a check without a name',
      {
        command: 'set check',
        sheet: 'beds',
        check: { id: 'c', name: '', level: 'note', column: 'length', says: '""' },
      },
    ],
    [
      'a filter by what is no number',
      {
        command: 'set view',
        sheet: 'beds',
        view: {
          id: 'v',
          name: 'V',
          filters: [{ by: 'cell', column: 'length', when: { is: 'at least', least: Number.NaN } }],
        },
      },
    ],
    [
      'a colour beyond every number',
      {
        command: 'set colour',
        sheet: 'beds',
        rule: {
          id: 'c',
          name: 'C',
          column: 'length',
          when: { is: 'at most', most: Number.NEGATIVE_INFINITY },
          tone: 'leaf',
          mark: '',
        },
      },
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
