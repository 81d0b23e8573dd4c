// Rows that the template ships, when it ships others: what a person typed or wrote about one stays theirs, also where it agrees
// with what was shipped, and no row goes that they or a branch of theirs made use of.

import { expect, test } from 'vitest';
import {
  type Command,
  message,
  openBranch,
  readWorkbookFile,
  type Workbook,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { everything, openFarm, shelf, VERSION_2 } from './farm.ts';

const MESSAGE = { code: 'work', parts: {} };
const UPGRADE: Command = { command: 'use template', version: 2 };
/** Version 2 ships 120 cells in place of 128 for one, and the other no more. */
const [CHANGED, DROPPED] = ['tray-128', 'tray-72'];

function run(workbook: Workbook, ...commands: readonly Command[]): void {
  const done = workbook.do(commands, MESSAGE);
  if (done.refused) throw new Error(done.why);
}

const cells = (row: string, entry: string): Command => {
  return { command: 'set cell', sheet: 'trays', row, column: 'cells', entry };
};

const isThere = (workbook: Workbook, row: string): boolean => workbook.document.slotOf('trays', row) !== undefined;

function reopened(workbook: Workbook): Workbook {
  const read = readWorkbookFile(writeWorkbookFile(workbook.data()), shelf(VERSION_2));
  if (!read.ok) throw new Error(read.why);
  expect(read.notes).toEqual([]);
  return openFarm(read.data);
}

test('a range typed around a shipped figure makes it the person’s own', () => {
  const workbook = openFarm();
  run(workbook, cells(CHANGED, '118..138'));
  expect(workbook.document.contentOf('trays', CHANGED, 'cells')).toBe(128);
  expect(workbook.data().rows.trays).toContainEqual({ id: CHANGED, cells: { cells: 128 } });
  const again = reopened(workbook);
  expect(everything(again)).toEqual(everything(workbook));
  run(again, UPGRADE);
  expect(again.document.contentOf('trays', CHANGED, 'cells')).toBe(128);
  expect(everything(reopened(again))).toEqual(everything(again));
  run(again, cells(CHANGED, '128'), { command: 'use template', version: 1 });
  expect(again.data().rows.trays).toBeUndefined();
});

test('a shipped figure that nobody touched follows', () => {
  const workbook = openFarm();
  run(workbook, cells(DROPPED, '60..84'), UPGRADE);
  expect(workbook.document.contentOf('trays', CHANGED, 'cells')).toBe(120);
});

test.each<readonly [string, Command]>([
  ['a range', cells(DROPPED, '62..82')],
  ['a note', { command: 'set note', sheet: 'trays', row: DROPPED, column: 'cells', note: 'my own trials' }],
])('a row with %s of the person’s stays when it is shipped no more', (_, command) => {
  const workbook = openFarm();
  run(workbook, command);
  run(workbook, UPGRADE);
  expect(isThere(workbook, DROPPED)).toBe(true);
  expect(workbook.document.contentOf('trays', DROPPED, 'cells')).toBe(72);
  expect(everything(reopened(workbook))).toEqual(everything(workbook));
});

test('a row that a branch names stays, and one that nobody touched goes', () => {
  const workbook = openFarm();
  run(workbook, {
    command: 'add column',
    sheet: 'plantings',
    name: 'Raised in',
    type: { type: 'link', sheet: 'trays' },
  });
  const column = Object.keys(workbook.data().own.plantings?.columns ?? {})[0] ?? '';
  run(workbook, { command: 'add branch', branch: 'other', name: 'Other' });
  const branch = openBranch(workbook, 'other');
  const row = workbook.data().rows.plantings?.[0]?.id ?? '';
  if (branch !== undefined) run(branch, { command: 'set cell', sheet: 'plantings', row, column, entry: '72 cells' });
  const changes = branch?.history.done.map(({ done }) => done) ?? [];
  workbook.do([{ command: 'change branch', branch: 'other', changes }], message('change branch', { branch: 'Other' }));
  run(workbook, UPGRADE);
  expect(isThere(workbook, DROPPED)).toBe(true);
  workbook.undo();
  run(workbook, { command: 'remove branch', branch: 'other' }, UPGRADE);
  expect(isThere(workbook, DROPPED)).toBe(false);
});
