// Own sheets and columns whose removal is taken back, while somebody else changes them: whoever hears of what first, both have
// the sheet or column with all that either changed.

import { describe, expect, test } from 'vitest';
import type { Command, Workbook } from '../../engine/index.ts';
import { BEGINNING, everything, openFarm } from './farm.ts';
import { done, hear, undone } from './two-people.ts';

const start = openFarm();
done(start, { command: 'add sheet', name: 'Egg count', about: '', rows: { from: 'entry' } });
done(start, { command: 'add formula', sheet: 'plantings', name: 'Mine', formula: '1 + 1' });
const DATA = start.data();
const SHEET = Object.keys(DATA.own).find((id) => DATA.own[id]?.declaration !== undefined) ?? '';
const COLUMN = Object.keys(DATA.own.plantings?.columns ?? {})[0] ?? '';

const REMOVE_SHEET: Command = { command: 'remove sheet', sheet: SHEET };
const REMOVE_COLUMN: Command = { command: 'remove column', sheet: 'plantings', column: COLUMN };

/** What an own sheet is called and holds, and what an own column is called and reads. */
function told(workbook: Workbook): readonly string[] {
  const { program } = workbook.document;
  const sheet = program.sheet(SHEET);
  const column = program.sheet('plantings')?.column(COLUMN);
  return [
    `${sheet?.name}: ${sheet?.columns.map(({ name }) => name).join(', ')}`,
    `${column?.name} = ${column?.formula}`,
  ];
}

const CHANGES: readonly (readonly [string, Command, readonly Command[], readonly string[]])[] = [
  [
    'a sheet with a column that the other added',
    REMOVE_SHEET,
    [{ command: 'add column', sheet: SHEET, name: 'Eggs', type: { type: 'number', unit: { us: '', si: '' } } }],
    ['Egg count: Name, Eggs', 'Mine = 1 + 1'],
  ],
  [
    'a sheet that the other renamed',
    REMOVE_SHEET,
    [{ command: 'rename sheet', sheet: SHEET, name: 'Hen book' }],
    ['Hen book: Name', 'Mine = 1 + 1'],
  ],
  [
    'a column whose formula and name the other changed',
    REMOVE_COLUMN,
    [
      { command: 'set formula', sheet: 'plantings', column: COLUMN, formula: '5' },
      { command: 'rename column', sheet: 'plantings', column: COLUMN, name: 'Ours' },
    ],
    ['Egg count: Name', 'Ours = 5'],
  ],
];

describe.each(CHANGES)('%s', (_, removal, changes, wanted) => {
  test.each(['before', 'after'])('%s the removal, which is taken back before they meet', (when) => {
    const [anna, bert] = [openFarm(DATA, 'anna'), openFarm(DATA, 'bert')];
    const early = when === 'before' ? changes.map((one) => done(bert, one)) : [];
    const ofAnna = [done(anna, removal), undone(anna)];
    const ofBert = when === 'before' ? early : changes.map((one) => done(bert, one));
    hear(anna, ofBert);
    hear(bert, ofAnna);
    expect([told(anna), told(bert)]).toEqual([wanted, wanted]);
    expect(everything(anna)).toEqual(everything(bert));
  });

  test('between the removal and its taking back, after they met', () => {
    const [anna, bert] = [openFarm(DATA, 'anna'), openFarm(DATA, 'bert')];
    const removed = done(anna, removal);
    hear(
      anna,
      changes.map((one) => done(bert, one)),
    );
    hear(bert, [removed]);
    hear(bert, [undone(anna)]);
    expect([told(anna), told(bert)]).toEqual([wanted, wanted]);
    expect(everything(anna)).toEqual(everything(bert));
  });
});

test('an own sheet that was added, taken back and added again has what was done in it until then', () => {
  const workbook = openFarm(BEGINNING);
  done(workbook, { command: 'add sheet', name: 'Hens', about: '', rows: { from: 'entry' } });
  const sheet = Object.keys(workbook.data().own)[0] ?? '';
  done(workbook, { command: 'rename sheet', sheet, name: 'Hen book' });
  const end = everything(workbook);
  while (workbook.undo() !== undefined);
  while (workbook.redo() !== undefined);
  expect(everything(workbook)).toEqual(end);
});
