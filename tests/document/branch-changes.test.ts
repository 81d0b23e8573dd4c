// A single change taken over from a branch brings what it rests on: the sheet that a link leads to or that rows are made from, the
// column that a check, a view or a colour is of, the row that a note is on. What it doesn't rest on stays in the branch.

import { expect, test } from 'vitest';
import { type Command, keepWork, openBranch, type Workbook } from '../../engine/index.ts';
import { openFarm } from './farm.ts';

const MESSAGE = { code: 'work', parts: {} };

/** Does things in a branch, each by itself, and takes the last over; gives how many are left in the branch. */
function takeLast(workbook: Workbook, makers: readonly ((branch: Workbook) => Command)[]): number {
  workbook.do([{ command: 'add branch', branch: 'other', name: 'Other' }], MESSAGE);
  const branch = openBranch(workbook, 'other');
  if (branch === undefined) throw new Error('no branch');
  for (const make of makers) {
    const done = branch.do([make(branch)], MESSAGE);
    if (done.refused) throw new Error(done.why);
  }
  keepWork(workbook, 'other', branch);
  const changes = workbook.document.branches.get('other')?.changes ?? [];
  const taken = workbook.do([{ command: 'take over', branch: 'other', changes: [changes.at(-1)?.id ?? ''] }], MESSAGE);
  if (taken.refused) throw new Error(taken.why);
  return workbook.document.branches.get('other')?.changes.length ?? 0;
}

const addCrews = (): Command => ({ command: 'add sheet', name: 'Crews', about: '', rows: { from: 'entry' } });
const unrelated = (): Command => ({ command: 'set title', title: 'Another' });
const addHands = (): Command => {
  return {
    command: 'add column',
    sheet: 'plantings',
    name: 'Hands',
    type: { type: 'number', unit: { us: '', si: '' } },
  };
};

const sheetCalled = (workbook: Workbook, name: string) =>
  workbook.document.program.sheets.find((one) => one.name === name);
const idOf = (workbook: Workbook, name: string): string => sheetCalled(workbook, name)?.id ?? '';
const handsOf = (workbook: Workbook): string =>
  workbook.document.program.sheet('plantings')?.columns.find(({ name }) => name === 'Hands')?.id ?? '';

test('a column that links to a sheet', () => {
  const workbook = openFarm();
  const left = takeLast(workbook, [
    addCrews,
    unrelated,
    (branch) => {
      const type = { type: 'link', sheet: idOf(branch, 'Crews') } as const;
      return { command: 'add column', sheet: 'plantings', name: 'Crew', type };
    },
  ]);
  const crew = workbook.document.program.sheet('plantings')?.columns.find(({ name }) => name === 'Crew');
  expect(crew?.type).toMatchObject({ kind: 'link', table: idOf(workbook, 'Crews') });
  expect(sheetCalled(workbook, 'Crews')).toBeDefined();
  expect([left, workbook.document.title]).toEqual([1, 'Small']);
});

test('a sheet whose rows follow from those of others', () => {
  const workbook = openFarm();
  takeLast(workbook, [
    addCrews,
    unrelated,
    (branch) => {
      const as = [
        { id: 'crew', name: 'Crew' },
        { id: 'bed', name: 'Bed' },
      ] as const;
      return {
        command: 'add sheet',
        name: 'Turns',
        about: '',
        rows: { from: 'pairs', sheets: [idOf(branch, 'Crews'), 'beds'], as, where: 'TRUE' },
      };
    },
  ]);
  expect([sheetCalled(workbook, 'Crews'), sheetCalled(workbook, 'Turns')]).not.toContain(undefined);
});

test('a sheet of events on dates of a column', () => {
  const workbook = openFarm();
  takeLast(workbook, [
    () => ({ command: 'add column', sheet: 'plantings', name: 'Hands', type: { type: 'date' } }),
    unrelated,
    (branch) => {
      const date = { sheet: 'plantings', column: handsOf(branch), event: 'Hoe', about: { id: 'about', name: 'About' } };
      const [as, event] = [
        { id: 'on', name: 'On' },
        { id: 'event', name: 'Event' },
      ];
      return { command: 'add sheet', name: 'Hoeing', about: '', rows: { from: 'events', dates: [date], as, event } };
    },
  ]);
  expect(handsOf(workbook)).not.toBe('');
});

test.each<readonly [string, (branch: Workbook) => Command]>([
  [
    'a check that points at a column',
    (branch) => ({
      command: 'set check',
      sheet: 'plantings',
      check: { id: 'few', name: 'few', level: 'note', column: handsOf(branch), says: '"Few."' },
    }),
  ],
  [
    'a view of a column',
    (branch) => ({
      command: 'set view',
      sheet: 'plantings',
      view: { id: 'hands', name: 'How many hands?', columns: [handsOf(branch)] },
    }),
  ],
  [
    'a colour of a column',
    (branch) => ({
      command: 'set colour',
      sheet: 'plantings',
      rule: { id: 'many', name: 'many', column: handsOf(branch), when: { is: 'filled' }, tone: 'rose', mark: '!' },
    }),
  ],
  [
    'a note on a cell of a column',
    (branch) => {
      const row = branch.document.rowIdOf('plantings', 0) ?? '';
      return { command: 'set note', sheet: 'plantings', row, column: handsOf(branch), note: 'ours' };
    },
  ],
])('%s', (_, last) => {
  const workbook = openFarm();
  expect(takeLast(workbook, [addHands, unrelated, last])).toBe(1);
  expect(handsOf(workbook)).not.toBe('');
});

test('a note on a row', () => {
  const workbook = openFarm();
  let row = '';
  takeLast(workbook, [
    () => ({ command: 'insert row', sheet: 'beds', entries: { bed: 'B9' } }),
    unrelated,
    (branch) => {
      row = branch.document.rowIdOf('beds', 2) ?? '';
      return { command: 'set note', sheet: 'beds', row, column: 'length', note: "it's row #9 [by the hedge" };
    },
  ]);
  expect(workbook.document.slotOf('beds', row)).toBeDefined();
});
