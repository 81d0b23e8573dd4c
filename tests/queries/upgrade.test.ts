// What bringing a workbook's sheets up to date would change, told before it is taken: formulas, figures, columns that come and go,
// own formulas that stay; and nothing of the workbook is touched by asking.

import { expect, test } from 'vitest';
import {
  type ColumnDeclaration,
  type Command,
  type Entries,
  message,
  newDocument,
  type SheetDeclaration,
  type Template,
  upgradeTo,
  Workbook,
} from '../../engine/index.ts';

const LENGTH = { type: 'number', unit: { us: 'ft', si: 'm' } } as const;

function column(id: string, name: string, type: ColumnDeclaration['type'], formula = ''): ColumnDeclaration {
  return { id, name, type, group: '', note: '', role: formula === '' ? 'entered' : 'computed', formula };
}

function beds(name: string, columns: readonly ColumnDeclaration[]): SheetDeclaration {
  const key = column('bed', 'Bed', { type: 'text' });
  return {
    id: 'beds',
    name,
    question: '',
    about: '',
    rows: { from: 'entry' },
    key: 'bed',
    columns: [key, column('length', 'Length', LENGTH), ...columns],
    checks: [],
    cautions: [],
  };
}

const OLD: Template = {
  name: 'beds',
  version: 1,
  sheets: [
    beds('Beds', [
      column('half', 'Half', LENGTH, '[Length] / 2'),
      column('third', 'Third', LENGTH, '[Length] / 3'),
      column('note', 'Note', { type: 'text' }),
    ]),
  ],
  rows: {
    beds: [
      { id: 'first', cells: { bed: 'First', length: '10 ft' } },
      { id: 'spare', cells: { bed: 'Spare' } },
    ],
  },
};

const NEW: Template = {
  name: 'beds',
  version: 2,
  sheets: [
    beds('Garden beds', [
      column('half', 'Half a bed', LENGTH, '[Length] * 60%'),
      column('third', 'Third', LENGTH, '[Length] / 3'),
      column('double', 'Double', LENGTH, '[Half a bed] * 4'),
    ]),
  ],
  rows: {
    beds: [
      { id: 'first', cells: { bed: 'First', length: '12 ft' } },
      { id: 'second', cells: { bed: 'Second' } },
      { id: 'third', cells: { bed: 'Third' } },
    ],
  },
};

let ids = 0;

function open(rows: readonly Entries[], commands: readonly Command[] = []): Workbook {
  const newId = (): string => `r${++ids}`;
  const start = { title: 'Test', units: 'us', currency: 'USD', today: 0, rows: { beds: rows } } as const;
  const made = newDocument(OLD, start, newId);
  if (!made.ok) throw new Error(made.problems.join(' '));
  const templates = {
    today: () => NEW,
    earlier: (_: string, version: number) => (version === 1 ? OLD : undefined),
  };
  const workbook = Workbook.open(made.data, { newId, now: () => 0, actor: 'a', templates });
  if (workbook === undefined) throw new Error('The template is not on the shelf.');
  const done = workbook.do(commands, message('type cell'));
  if (done.refused) throw new Error(done.why);
  return workbook;
}

const BEDS = [
  { bed: 'Short', length: '20 ft' },
  { bed: 'Long', length: '100 ft' },
];

test('a changed formula is told in both forms, as people call its column from then on', () => {
  const upgrade = upgradeTo(open(BEDS), 2);
  expect(upgrade?.formulas).toEqual([
    {
      sheet: 'beds',
      sheetName: 'Garden beds',
      column: 'half',
      columnName: 'Half a bed',
      before: '[Length] / 2',
      after: '[Length] * 60%',
    },
  ]);
});

test('figures that move are counted, and the one that moves most stands for them, with units', () => {
  const upgrade = upgradeTo(open(BEDS), 2);
  const moved = upgrade?.moved.map(({ column: id, count, example }) => ({ id, count, example }));
  expect(moved).toEqual([
    { id: 'length', count: 1, example: { rowName: 'First', before: '10 ft', after: '12 ft' } },
    { id: 'half', count: 3, example: { rowName: 'Long', before: '50 ft', after: '60 ft' } },
    { id: 'third', count: 1, example: { rowName: 'First', before: '3.333 ft', after: '4 ft' } },
  ]);
});

test('columns that come and go are named', () => {
  const upgrade = upgradeTo(open(BEDS), 2);
  expect(upgrade?.added.map(({ columnName }) => columnName)).toEqual(['Double']);
  expect(upgrade?.gone.map(({ sheetName, columnName }) => `${sheetName} / ${columnName}`)).toEqual(['Beds / Note']);
});

test('rows that the template newly ships or ships no more are named, with their sheet', () => {
  const upgrade = upgradeTo(open(BEDS), 2);
  const named = (list: readonly { readonly sheetName: string; readonly names: readonly string[] }[] = []) =>
    list.map(({ sheetName, names }) => `${sheetName}: ${names.join(', ')}`);
  expect(named(upgrade?.rowsAdded)).toEqual(['Garden beds: Second, Third']);
  expect(named(upgrade?.rowsGone)).toEqual(['Garden beds: Spare']);
  // A bed that the person gave another length is theirs.
  const length: Command = { command: 'set cell', sheet: 'beds', row: 'spare', column: 'length', entry: '7 ft' };
  expect(upgradeTo(open(BEDS, [length]), 2)?.rowsGone).toEqual([]);
});

test("an own formula stays, is named, and the sheet's stands beside it before and after", () => {
  const own: Command = { command: 'set formula', sheet: 'beds', column: 'half', formula: '[Length] / 4' };
  const workbook = open(BEDS, [own]);
  const upgrade = upgradeTo(workbook, 2);
  expect(upgrade?.formulas).toEqual([]);
  expect(upgrade?.own).toMatchObject([
    { column: 'half', own: '[Length] / 4', before: '[Length] / 2', after: '[Length] * 60%' },
  ]);
  // Only what the sheet shipped moves: the figures of the own formula follow the length alone.
  expect(upgrade?.moved.find(({ column: id }) => id === 'half')?.count).toBe(1);
});

test('a formula in which only a name changed is not told', () => {
  const workbook = open(BEDS, [{ command: 'rename column', sheet: 'beds', column: 'length', name: 'Long side' }]);
  expect(upgradeTo(workbook, 2)?.formulas.map(({ column: id }) => id)).toEqual(['half']);
});

test('asking changes nothing, and taking it does what was told', () => {
  const workbook = open(BEDS);
  const before = workbook.data();
  const upgrade = upgradeTo(workbook, 2);
  expect(workbook.data()).toEqual(before);
  expect(workbook.history.done).toHaveLength(0);
  const done = workbook.do([{ command: 'use template', version: 2 }], message('upgrade'), { source: 'upgrade' });
  expect(done).toMatchObject({ refused: false, transaction: { source: 'upgrade' } });
  // Nothing is left to bring up to date.
  expect(upgradeTo(workbook, 2)).toEqual({
    version: 2,
    added: [],
    gone: [],
    rowsAdded: [],
    rowsGone: [],
    formulas: [],
    own: [],
    moved: [],
    named: [],
  });
  expect(upgrade?.moved).not.toEqual([]);
  workbook.undo();
  expect(workbook.data()).toEqual(before);
});

test('a version that is not on record can not be taken', () => {
  expect(upgradeTo(open(BEDS), 7)).toBeUndefined();
});
