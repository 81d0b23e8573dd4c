// A computed cell that goes back to its formula: whatever reads it follows, also where what was typed can't stay because the
// column can't hold it, or because the row that it named went.

import { expect, test } from 'vitest';
import { type Command, cellView, type Workbook } from '../../engine/index.ts';
import { BEGINNING, everything, openFarm } from './farm.ts';

const MESSAGE = { code: 'work', parts: {} };
const [P1 = ''] = (BEGINNING.rows.plantings ?? []).map(({ id }) => id);

/** Gives the id of the column that came, if one did. */
function run(workbook: Workbook, command: Command): string {
  const done = workbook.do([command], MESSAGE);
  if (done.refused) throw new Error(done.why);
  return done.transaction.operations.flatMap((one) => (one.op === 'add column' ? [one.column.id] : []))[0] ?? '';
}

/** As a fresh workbook of the same data shows it. */
function expectFresh(workbook: Workbook): void {
  expect(everything(workbook)).toEqual(everything(openFarm(workbook.data())));
}

test('a total loses a figure that its cell can no longer hold, where the formula has none', () => {
  const workbook = openFarm();
  const sheet = 'plantings';
  const mine = run(workbook, {
    command: 'add formula',
    sheet,
    name: 'Mine',
    formula: 'IF([Length] > 100 ft; [Length])',
  });
  const all = run(workbook, { command: 'add formula', sheet: 'farm', name: 'All', formula: 'SUM(Plantings[Mine])' });
  run(workbook, { command: 'set cell', sheet, row: P1, column: mine, entry: '5 ft' });
  expect(cellView(workbook, 'farm', 0, all).text).toBe('5');
  run(workbook, { command: 'put cell', sheet, row: P1, column: mine, content: { number: 3, unit: 'lb' } });
  expect(cellView(workbook, 'farm', 0, all).text).toBe('0');
  expectFresh(workbook);
});

test('what a variety needs loses the seed typed over a planting that is then given a length in its place', () => {
  const workbook = openFarm();
  const seeds = { sheet: 'plantings', row: P1, column: 'seeds' };
  const needed = (): string => cellView(workbook, 'varieties', 0, 'seeds').text;
  run(workbook, { command: 'set cell', ...seeds, column: 'length', entry: '' });
  const without = needed();
  run(workbook, { command: 'set cell', ...seeds, entry: '77' });
  expect(needed()).not.toBe(without);
  run(workbook, { command: 'put cell', ...seeds, content: { number: 8, unit: 'in' } });
  expect(needed()).toBe(without);
  expectFresh(workbook);
});

test('a computed link goes back to its formula when the row typed over it is removed', () => {
  const workbook = openFarm();
  const sheet = 'plantings';
  const column = run(workbook, { command: 'add formula', sheet, name: 'Same bed', formula: '[Bed]' });
  run(workbook, { command: 'insert row', sheet: 'beds', entries: { bed: 'B3' } });
  run(workbook, { command: 'set cell', sheet, row: P1, column, entry: 'B3' });
  const [, , { id: bed = '' } = {}] = workbook.data().rows.beds ?? [];
  workbook.receive({
    id: 'removal',
    actor: 'bert',
    time: 1e6,
    source: 'remote',
    message: MESSAGE,
    operations: [{ op: 'remove row', sheet: 'beds', row: bed }],
  });
  expect(cellView(workbook, sheet, 0, column).text).toBe('B1');
  expectFresh(workbook);
});
