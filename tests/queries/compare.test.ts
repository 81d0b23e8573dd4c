// What differs between two states of a workbook: told by what people call things, typed apart from what follows, counted whole
// where only some are told; nothing where nothing differs, and nothing of either changed by asking.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Command, type Comparison, compareBooks, type Workbook } from '../../engine/index.ts';
import { chances, commandFor } from '../document/any-command.ts';
import { BEGINNING, everything, openFarm } from '../document/farm.ts';
import { runs } from '../runs.ts';

const MESSAGE = { code: 'work', parts: {} };
const [P1 = '', P2 = ''] = (BEGINNING.rows.plantings ?? []).map(({ id }) => id);

function changed(...commands: readonly Command[]): Workbook {
  const workbook = openFarm();
  const done = workbook.do(commands, MESSAGE);
  if (done.refused) throw new Error(done.why);
  return workbook;
}

const isEmpty = (found: Comparison): boolean =>
  Object.values(found).every((list: readonly unknown[]) => list.length === 0);

test('a typed cell is told before and after, with what follows from it', () => {
  const after = changed({ command: 'set cell', sheet: 'plantings', row: P1, column: 'length', entry: '10 ft' });
  const { cells, ...rest } = compareBooks(openFarm(), after);
  const of = (column: string) => cells.filter((each) => each.column === column);
  expect(of('length')).toEqual([
    {
      sheet: 'plantings',
      sheetName: 'Plantings',
      column: 'length',
      columnName: 'Length',
      typed: true,
      count: 1,
      cells: [{ row: P1, rowName: 'P1', before: '30 ft', after: '10 ft' }],
    },
  ]);
  expect(of('stations')).toMatchObject([{ typed: false, count: 1, cells: [{ rowName: 'P1' }] }]);
  expect(Object.values(rest).flat()).toEqual([]);
});

test('a cell typed over a formula is told as typed, and back again', () => {
  const after = changed({ command: 'set cell', sheet: 'plantings', row: P1, column: 'stations', entry: '7' });
  const told = (found: Comparison) =>
    found.cells.filter(({ column, typed }) => column === 'stations' && typed).flatMap(({ cells }) => cells);
  const [there] = told(compareBooks(openFarm(), after));
  const [back] = told(compareBooks(after, openFarm()));
  expect(there).toMatchObject({ after: '7 stations' });
  expect(back).toMatchObject({ before: '7 stations', after: there?.before });
});

test('rows, columns, sheets, formulas, names and settings are told by what they are called', () => {
  const after = changed(
    { command: 'remove rows', sheet: 'plantings', rows: [P2] },
    { command: 'insert row', sheet: 'beds', entries: { bed: 'New bed', length: '10 ft' } },
    { command: 'add formula', sheet: 'plantings', name: 'Double', formula: '[Length] * 2' },
    { command: 'add sheet', name: 'Notes', about: '', rows: { from: 'entry' } },
    { command: 'set formula', sheet: 'beds', column: 'free', formula: '[Length] - [Used] - 1 ft' },
    { command: 'rename column', sheet: 'plantings', column: 'length', name: 'Bed length' },
    { command: 'set title', title: 'Another' },
    { command: 'set units', units: 'us' },
  );
  const found = compareBooks(openFarm(), after);
  expect(found.rowsGone.map(({ rowName }) => rowName)).toEqual(['P2']);
  expect(found.rowsAdded.map(({ sheetName, rowName }) => `${sheetName} / ${rowName}`)).toEqual(['Beds / New bed']);
  expect(found.added.map(({ sheetName, columnName }) => [sheetName, columnName])).toEqual([
    ['Plantings', 'Double'],
    ['Notes', ''],
  ]);
  expect(found.formulas.map(({ columnName, after: text }) => [columnName, text])).toEqual([
    ['Free', '[Length] - [Used] - 1 ft'],
  ]);
  expect(found.renamed).toMatchObject([{ before: 'Length', after: 'Bed length' }]);
  expect(found.settings.map(({ what }) => what)).toContain('Title');
  const backwards = compareBooks(after, openFarm());
  expect(backwards.gone).toEqual(found.added);
  expect(backwards.rowsAdded).toEqual(found.rowsGone);
});

test('of many cells the first are told and all are counted', () => {
  const after = changed(
    ...[P1, P2].map(
      (row): Command => ({ command: 'set cell', sheet: 'plantings', row, column: 'length', entry: '9 ft' }),
    ),
  );
  const [length] = compareBooks(openFarm(), after, 1).cells.filter(({ column }) => column === 'length');
  expect([length?.count, length?.cells.length]).toEqual([2, 1]);
});

test('what a person could see otherwise is told, and nothing where nothing differs', () => {
  fc.assert(
    fc.property(fc.array(chances, { minLength: 1, maxLength: 5 }), (sequence) => {
      const [before, after] = [openFarm(), openFarm()];
      for (const by of sequence) {
        const command = commandFor(after, by);
        // Order, checks and the day are no cells.
        const isOther = command !== undefined && /move|check|today|template/.test(command.command);
        if (command !== undefined && !isOther) after.do([command], MESSAGE);
      }
      const [first, second] = [everything(before), everything(after)];
      const found = compareBooks(before, after);
      // What leaves only a trace in the file, such as a column added and removed, is nothing to tell.
      if (!isEmpty(found)) expect(second.file).not.toBe(first.file);
      else expect(second.shown).toEqual(first.shown);
      expect([everything(before), everything(after)]).toEqual([first, second]);
    }),
    { numRuns: runs(60, 2000) },
  );
});
