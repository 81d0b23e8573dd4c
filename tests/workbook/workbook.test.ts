// The workbook as its faces use it: edits that carry through links, totals and made rows, refusals that change nothing,
// overrides, units, undo. Expected figures are worked out by hand beside each check.

import { describe, expect, test } from 'vitest';
import { isError } from '../../engine/index.ts';
import { type Book, createWorkbook, type Edit, opened } from '../book.ts';
import { snapshot } from '../properties/snapshot.ts';
import { besideFarm, computed, entered, number, plain, SMALL, sheet } from './small.ts';

/** All worked out: a change set tells of what somebody asked for. */
function start(): Book {
  const book = opened(SMALL);
  book.workbook.recalculateAll();
  return book;
}

const text = (workbook: Book, table: string, row: number, column: string): string =>
  workbook.cell(table, row, column).text;

function set(workbook: Book, table: string, row: number, column: string, entry: string): void {
  const change = workbook.edit([{ edit: 'cell', table, row, column, entry }], `${column} of ${table}`);
  if (change.refused) throw new Error(change.why);
}

function refusal(workbook: Book, edit: Edit): string {
  const before = snapshot(workbook);
  const change = workbook.edit([edit], 'Refused');
  expect(change.refused).toBe(true);
  expect(snapshot(workbook)).toEqual(before);
  return change.refused ? change.why : '';
}

describe('one edit reaches everything that rests on it, and nothing else', () => {
  test('a spacing: stations, seeds, the totals of bed, variety and order', () => {
    const workbook = start();
    // 30 ft / 8 in = 45 stations; 45 / 0.85 x 1.1 = 58.2 -> 59 seeds. The variety also has 20 / 0.85 x 1.1 = 25.9 -> 26.
    expect(text(workbook, 'Plantings', 0, 'Stations')).toBe('45');
    expect(text(workbook, 'Varieties', 0, 'Seeds')).toBe('85');
    const change = workbook.edit(
      [{ edit: 'cell', table: 'Plantings', row: 0, column: 'Spacing', entry: '6 in' }],
      'Spacing',
    );
    // 30 ft / 6 in = 60; 60 / 0.85 x 1.1 = 77.6 -> 78; 78 + 26 = 104.
    expect(text(workbook, 'Plantings', 0, 'Stations')).toBe('60');
    expect(text(workbook, 'Plantings', 0, 'Seeds')).toBe('78');
    expect(text(workbook, 'Varieties', 0, 'Seeds')).toBe('104');
    expect(text(workbook, 'Order', 0, 'Needed')).toBe('104');
    expect(text(workbook, 'Order', 0, 'All')).toBe('157');
    const touched = change.refused ? [] : change.cells.map(({ table, column }) => `${table} / ${column}`);
    expect(touched).not.toContain('Beds / Used');
    expect(touched).not.toContain('Plantings / Ready');
  });

  test('a value that comes out the same wakes nobody', () => {
    const workbook = start();
    // 29.9 ft / 8 in = 44.85 -> 44 stations at first, then 29.5 ft -> 44.25 -> 44: seeds stay.
    set(workbook, 'Plantings', 0, 'Length', '29.9 ft');
    const change = workbook.edit(
      [{ edit: 'cell', table: 'Plantings', row: 0, column: 'Length', entry: '29.5 ft' }],
      'Length',
    );
    const touched = change.refused ? [] : change.cells.map(({ table, column }) => `${table} / ${column}`);
    expect(touched).toContain('Beds / Used');
    expect(touched).not.toContain('Plantings / Stations');
    expect(touched).not.toContain('Plantings / Seeds');
  });

  test('a germination reaches the plantings of that variety through the link', () => {
    const workbook = start();
    const change = workbook.edit(
      [{ edit: 'cell', table: 'Varieties', row: 0, column: 'Germination', entry: '50%' }],
      'x',
    );
    const seeds = change.refused
      ? undefined
      : change.cells.find(({ table, column }) => table === 'Plantings' && column === 'Seeds');
    expect(seeds?.rows).toEqual(Int32Array.of(0, 2));
    // 45 / 0.5 x 1.1 = 99 to the last bit, rounded up without a seed too many.
    expect(text(workbook, 'Plantings', 0, 'Seeds')).toBe('99');
  });

  test('a link moved to another row moves its totals', () => {
    const workbook = start();
    set(workbook, 'Plantings', 1, 'Bed', 'b2');
    expect(text(workbook, 'Beds', 0, 'Used')).toBe('30');
    expect(text(workbook, 'Beds', 1, 'Used')).toBe('35');
    expect(workbook.attention().filter(({ table }) => table === 'Plantings')).toEqual([]);
  });
});

describe('made rows follow what they are made from', () => {
  test('a variety that is needed no longer leaves the order; one that is comes in', () => {
    const workbook = start();
    expect(Array.from(workbook.rows('Order'), (row) => workbook.rowName('Order', row))).toEqual(['Amber', 'Red']);
    set(workbook, 'Plantings', 1, 'Variety', 'Unused');
    expect(Array.from(workbook.rows('Order'), (row) => workbook.rowName('Order', row))).toEqual(['Amber', 'Unused']);
    // 85 for Amber; 38 stations / 0.9 x 1.1 = 46.4 -> 47 for Unused.
    expect(text(workbook, 'Order', 0, 'All')).toBe('132');
  });

  test('weeks run from the first to the last date, and counts by date fall into theirs', () => {
    const workbook = start();
    const sown = (): string[] =>
      Array.from(workbook.rows('Weeks'))
        .filter((row) => text(workbook, 'Weeks', row, 'Sown') !== '0')
        .map((row) => `${text(workbook, 'Weeks', row, 'Week')}: ${text(workbook, 'Weeks', row, 'Sown')}`);
    expect(workbook.rows('Weeks')).toHaveLength(52);
    expect(sown()).toEqual(['1 Feb 2027: 1', '8 Feb 2027: 2']);
    set(workbook, 'Plantings', 0, 'Sown', '10 Feb');
    expect(sown()).toEqual(['8 Feb 2027: 3']);
    set(workbook, 'Farm', 0, 'Season', '2028');
    expect(text(workbook, 'Weeks', workbook.rows('Weeks')[0] ?? 0, 'Week')).toBe('4 Jan 2028');
  });

  test('events stand in date order and name their row', () => {
    const workbook = start();
    const jobs = (): string[] =>
      Array.from(
        workbook.rows('Jobs'),
        (row) => `${workbook.rowName('Jobs', row)} ${text(workbook, 'Jobs', row, 'Planting')}`,
      );
    expect(jobs().slice(0, 3)).toEqual(['1 Feb 2027 / Sow P1', '8 Feb 2027 / Sow P2', '10 Feb 2027 / Sow P3']);
    set(workbook, 'Plantings', 0, 'Sown', '1 Mar');
    expect(jobs()[2]).toBe('1 Mar 2027 / Sow P1');
    set(workbook, 'Plantings', 0, 'Sown', '');
    expect(jobs()).toHaveLength(4);
  });

  test('one row per pair of two sheets', () => {
    const workbook = opened({
      ...SMALL,
      sheets: [
        ...SMALL.sheets,
        sheet('Bed weeks', {
          rows: { from: 'pairs', tables: ['Beds', 'Weeks'], as: ['Bed', 'Week'], where: '' },
          columns: [
            computed(
              'Share',
              number('%'),
              'COUNTIFS(Plantings[Bed]; [Bed]; Plantings[Sown]; "<=" & [Week].[Week]) / 4',
            ),
          ],
        }),
      ],
    });
    expect(workbook.rows('Bed weeks')).toHaveLength(104);
    expect(workbook.rowName('Bed weeks', 53)).toBe('B2 / 11 Jan 2027');
    // B1 by the week of 8 February: two sown, a half.
    expect(text(workbook, 'Bed weeks', 5, 'Share')).toBe('50');
  });
});

describe('what was typed stays as typed', () => {
  test('a cell in another unit keeps it, and the workbook takes the value', () => {
    const workbook = start();
    expect(text(workbook, 'Beds', 1, 'Length')).toBe('20 m');
    expect(workbook.cell('Beds', 1, 'Length').number).toBeCloseTo(65.6168, 4);
    set(workbook, 'Beds', 0, 'Length', '2 ft 6 in');
    expect(text(workbook, 'Beds', 0, 'Length')).toBe('2 ft 6 in');
    expect(workbook.value('Beds', 0, 'Length')).toBe(0.762);
  });

  test('a switch of units changes what is shown and no value', () => {
    const workbook = start();
    const value = workbook.value('Plantings', 2, 'Length');
    workbook.edit([{ edit: 'units', units: 'si' }], 'Units');
    expect(workbook.value('Plantings', 2, 'Length')).toBe(value);
    expect(text(workbook, 'Plantings', 2, 'Length')).toBe('3.048');
    expect(workbook.table('Plantings')?.columns.find(({ name }) => name === 'Length')?.unit).toBe('m');
    expect(text(workbook, 'Plantings', 0, 'Spacing')).toBe('8 in');
    workbook.undo();
    expect(text(workbook, 'Plantings', 2, 'Length')).toBe('10');
  });

  test('a cell typed as 8 in stays 8 in through a file and a switch of units; a bare 8 follows them', () => {
    const workbook = start();
    set(workbook, 'Plantings', 0, 'Spacing', '8 in');
    set(workbook, 'Plantings', 2, 'Spacing', '8');
    const again = workbook.reopened();
    expect(again.file()).toBe(workbook.file());
    again.edit([{ edit: 'units', units: 'si' }], 'Units');
    expect(text(again, 'Plantings', 0, 'Spacing')).toBe('8 in');
    expect(text(again, 'Plantings', 2, 'Spacing')).toBe('20.32');
  });

  test('an override stands until it is taken back, and undo knows both', () => {
    const workbook = start();
    set(workbook, 'Plantings', 0, 'Stations', '40');
    expect(workbook.cell('Plantings', 0, 'Stations')).toMatchObject({ text: '40', origin: 'override' });
    set(workbook, 'Plantings', 0, 'Spacing', '6 in');
    expect(text(workbook, 'Plantings', 0, 'Stations')).toBe('40');
    workbook.edit([{ edit: 'take back', table: 'Plantings', row: 0, column: 'Stations' }], 'Take back');
    expect(workbook.cell('Plantings', 0, 'Stations')).toMatchObject({ text: '60', origin: 'computed' });
    workbook.undo();
    expect(workbook.cell('Plantings', 0, 'Stations')).toMatchObject({ text: '40', origin: 'override' });
  });

  test('a default column answers by its formula until a person does', () => {
    const workbook = opened({
      ...SMALL,
      sheets: [
        sheet('Farm', {
          rows: { from: 'single' },
          columns: [
            entered('Width', number('in', 'cm')),
            { ...computed('Path', number('in', 'cm'), '[Width] / 2'), role: 'default' },
          ],
        }),
      ],
      rows: { Farm: [{ Width: 30 }] },
    });
    expect(workbook.cell('Farm', 0, 'Path')).toMatchObject({ text: '15', origin: 'default' });
    set(workbook, 'Farm', 0, 'Path', '18');
    expect(workbook.cell('Farm', 0, 'Path')).toMatchObject({ text: '18', origin: 'entered' });
    set(workbook, 'Farm', 0, 'Path', '');
    expect(workbook.cell('Farm', 0, 'Path')).toMatchObject({ text: '15', origin: 'default' });
  });

  test('a row named anew is still found by those that link to it', () => {
    const workbook = start();
    set(workbook, 'Varieties', 0, 'Variety', 'Amber late');
    expect(text(workbook, 'Plantings', 0, 'Variety')).toBe('Amber late');
    expect(workbook.rowOf('Varieties', 'amber LATE')).toBe(0);
    expect(workbook.rowOf('Varieties', 'Amber')).toBeUndefined();
  });
});

describe('bad input gets a sentence and leaves everything as it was', () => {
  test.each<readonly [string, Edit, RegExp]>([
    ['a length of banana', { edit: 'cell', table: 'Plantings', row: 0, column: 'Length', entry: 'banana' }, /banana/],
    ['a mass for a length', { edit: 'cell', table: 'Plantings', row: 0, column: 'Length', entry: '8 lb' }, /mass/],
    [
      'a variety that is not there',
      { edit: 'cell', table: 'Plantings', row: 0, column: 'Variety', entry: 'Ambre' },
      /No row of Varieties is called “Ambre”: did you mean “Amber”/,
    ],
    [
      'a sheet that is not there',
      { edit: 'cell', table: 'Planting', row: 0, column: 'Length', entry: '3' },
      /did you mean Plantings/,
    ],
    [
      'a column that is not there',
      { edit: 'cell', table: 'Plantings', row: 0, column: 'Lenght', entry: '3' },
      /did you mean Length/,
    ],
    [
      'a row that is not there',
      { edit: 'cell', table: 'Plantings', row: 99, column: 'Length', entry: '3' },
      /no such row/,
    ],
    [
      'a name that is taken',
      { edit: 'cell', table: 'Plantings', row: 0, column: 'Planting', entry: 'p2' },
      /already has a row called “p2”/,
    ],
    ['no name', { edit: 'insert row', table: 'Plantings', entries: { Length: '3 ft' } }, /can't be empty/],
    [
      'a row that others name',
      { edit: 'remove row', table: 'Varieties', row: 0 },
      /still named in Plantings \/ P1 \/ Variety/,
    ],
    [
      'a typed link of a made row',
      { edit: 'cell', table: 'Order', row: 0, column: 'Variety', entry: 'Red' },
      /follows from the rows/,
    ],
    ['a row added to a made sheet', { edit: 'insert row', table: 'Order', entries: {} }, /none can be added/],
    [
      'a formula for an entered column',
      { edit: 'formula', table: 'Plantings', column: 'Length', formula: '1 ft' },
      /typed by hand/,
    ],
    [
      'a column name in use',
      { edit: 'add column', table: 'Plantings', column: 'length', type: plain },
      /already has a column/,
    ],
    [
      'a unit that is none',
      { edit: 'add column', table: 'Plantings', column: 'Own', type: number('blorp') },
      /not a unit/,
    ],
    [
      'a sheet’s own column removed',
      { edit: 'remove column', table: 'Plantings', column: 'Length' },
      /belongs to the sheet/,
    ],
  ])('%s', (_, edit, sentence) => {
    expect(refusal(start(), edit)).toMatch(sentence);
  });

  test('limits of a column are kept and told in its unit', () => {
    const workbook = opened({
      ...SMALL,
      sheets: [
        sheet('Farm', { rows: { from: 'single' }, columns: [entered('Spacing', number('in', 'cm'), { least: 2.54 })] }),
      ],
      rows: { Farm: [{}] },
    });
    expect(refusal(workbook, { edit: 'cell', table: 'Farm', row: 0, column: 'Spacing', entry: '0.5 in' })).toBe(
      "Spacing can't be below 1 in: write a larger value.",
    );
  });

  test('a declaration with slips is not opened, and each slip is named by sheet, row and column', () => {
    const result = createWorkbook({
      ...SMALL,
      rows: {
        ...SMALL.rows,
        Plantings: [{ Planting: 'P1', Length: 'long' }, { Planting: 'P1' }, { Planting: 'P3', Bed: 'B9' }],
        Nowhere: [],
      },
    });
    expect(result.ok).toBe(false);
    const problems = result.ok ? [] : result.problems;
    expect(problems.join('\n')).toMatch(/There are rows for nowhere, and none can be given there/);
    const rows = createWorkbook({
      ...SMALL,
      rows: {
        ...SMALL.rows,
        Plantings: [
          { Planting: 'P1', Length: 'long' },
          { Planting: 'P1' },
          { Planting: 'P3', Bed: 'B9', Weather: 'fine' },
        ],
      },
    });
    const sentences = rows.ok ? [] : rows.problems;
    expect(sentences).toHaveLength(4);
    expect(sentences.join('\n')).toMatch(/Plantings, row 1, Length: .*long/);
    expect(sentences.join('\n')).toMatch(/Plantings, row 2: .*twice/);
    expect(sentences.join('\n')).toMatch(/Plantings, row 3, Bed: .*B9/);
    expect(sentences.join('\n')).toMatch(/Plantings has no column weather to type in/);
  });
});

describe('formulas', () => {
  test('a column in a unit that nobody knows says so, whatever its formula gives', () => {
    const small = sheet('Benches', {
      key: 'Bench',
      columns: [
        entered('Bench', { type: 'text' }),
        computed('Room', number('ft2 week'), '5 ft2'),
        computed('Twice', number('ft2'), '2 * [Room]'),
      ],
    });
    const workbook = opened(besideFarm([small], { Benches: [{ Bench: 'A' }] }));
    const says = workbook.attention().map(({ column, says: why }) => `${column}: ${why}`);
    expect(says).toEqual([
      'Room: The column’s own unit: ft2 week is not a unit that Dibble knows.',
      'Twice: The formula of [Room] does not check yet; put that right first.',
    ]);
  });

  test('one that does not check is kept as typed, shows its diagnostic, and the rest goes on', () => {
    const workbook = start();
    workbook.edit(
      [{ edit: 'formula', table: 'Plantings', column: 'Stations', formula: '[Length] + [Variety].[Germination]' }],
      'Formula',
    );
    const column = workbook.table('Plantings')?.columns.find(({ name }) => name === 'Stations');
    expect(column?.formula).toBe('[Length] + [Variety].[Germination]');
    expect(column?.diagnostic?.why).toMatch(/length/);
    const value = workbook.value('Plantings', 0, 'Seeds');
    expect(isError(value) && value.at).toMatchObject({ sheet: 'plantings', column: 'stations' });
    expect(text(workbook, 'Beds', 0, 'Used')).toBe('55');
    workbook.undo();
    expect(text(workbook, 'Plantings', 0, 'Seeds')).toBe('59');
  });

  test('a circle is found when it is made, and named in full', () => {
    const workbook = start();
    workbook.edit([{ edit: 'formula', table: 'Plantings', column: 'Stations', formula: '[Seeds] * 2' }], 'Formula');
    const diagnostic = workbook.table('Plantings')?.columns.find(({ name }) => name === 'Stations')?.diagnostic;
    expect(diagnostic?.circle).toBe(true);
    expect(diagnostic?.why).toMatch(/\[Stations\]|\[Seeds\]/);
    expect(diagnostic?.why).toMatch(/reads .*reads/);
    expect(text(workbook, 'Plantings', 0, 'Ready')).toBe('12 Apr 2027');
    workbook.edit(
      [{ edit: 'formula', table: 'Plantings', column: 'Stations', formula: '[Length] / [Spacing]' }],
      'Formula',
    );
    expect(workbook.table('Plantings')?.columns.every(({ diagnostic: left }) => left === undefined)).toBe(true);
  });

  test('a circle through a total over another sheet is one too', () => {
    const workbook = start();
    workbook.edit(
      [{ edit: 'formula', table: 'Plantings', column: 'Stations', formula: '[Bed].[Free] / [Spacing]' }],
      'Formula',
    );
    expect(workbook.attention().filter(({ level }) => level === 'error')).toEqual([]);
    workbook.edit(
      [
        {
          edit: 'formula',
          table: 'Beds',
          column: 'Used',
          formula: 'SUMIFS(Plantings[Stations]; Plantings[Bed]; [Bed]) * 1 ft',
        },
      ],
      'Formula',
    );
    expect(workbook.attention().some(({ says }) => /circle/.test(says))).toBe(true);
  });

  test('a column of one’s own takes the type its formula gives, and can be removed and put back', () => {
    const workbook = start();
    workbook.edit(
      [
        {
          edit: 'formula',
          table: 'Beds',
          column: 'Stations per ft',
          formula: 'SUMIFS(Plantings[Stations]; Plantings[Bed]; [Bed]) / [Length]',
        },
      ],
      'Add',
    );
    expect(workbook.table('Beds')?.columns.find(({ name }) => name === 'Stations per ft')?.type).toMatchObject({
      kind: 'number',
    });
    // (45 + 38) / 50 ft
    expect(workbook.cell('Beds', 0, 'Stations per ft').number).toBeCloseTo(1.66, 10);
    workbook.edit([{ edit: 'remove column', table: 'Beds', column: 'Stations per ft' }], 'Remove');
    expect(workbook.table('Beds')?.columns.some(({ name }) => name === 'Stations per ft')).toBe(false);
    workbook.undo();
    expect(workbook.cell('Beds', 0, 'Stations per ft').number).toBeCloseTo(1.66, 10);
  });
});

describe('every cell can say why', () => {
  test('in words, in values, and by what it rests on', () => {
    const explained = start().explain('Plantings', 0, 'Seeds');
    expect(explained.shown).toBe('59 seeds');
    expect(explained.inValues).toBe('ROUNDUP(45 stations / 85% * (1 + 10%); 0)');
    expect(
      explained.rests.map(
        ({ sheetName, rowName, columnName, shown }) => `${sheetName} / ${rowName} / ${columnName} = ${shown}`,
      ),
    ).toEqual([
      'Plantings / P1 / Stations = 45 stations',
      'Plantings / P1 / Variety = Amber',
      'Varieties / Amber / Germination = 85%',
      'Farm / Farm / Spare seed = 10%',
    ]);
  });

  test('a total names the rows that went into it', () => {
    const explained = start().explain('Beds', 0, 'Used');
    expect(explained.rests.map(({ rowName, columnName }) => `${rowName} ${columnName}`)).toEqual([
      'P1 Length',
      'P2 Length',
      'B1 Bed',
    ]);
  });

  test('a blank says which blank it comes from, an error where it began', () => {
    const workbook = start();
    set(workbook, 'Plantings', 0, 'Spacing', '');
    expect(workbook.explain('Plantings', 0, 'Stations').why).toBe('Blank, because Spacing is blank.');
    set(workbook, 'Plantings', 0, 'Spacing', '0 in');
    expect(workbook.explain('Plantings', 0, 'Seeds').why).toMatch(
      /divides by zero.*It began at Plantings \/ P1 \/ Stations/,
    );
  });
});

test('a column of one’s own that is removed comes back in its place', () => {
  const workbook = start();
  for (const column of ['First', 'Second', 'Third'])
    workbook.edit([{ edit: 'formula', table: 'Beds', column, formula: '[Length] * 2' }], column);
  const names = (): string[] =>
    workbook
      .table('Beds')
      ?.columns.map(({ name }) => name)
      .slice(-3) ?? [];
  workbook.edit([{ edit: 'remove column', table: 'Beds', column: 'Second' }], 'Remove');
  expect(names()).toEqual(['Free', 'First', 'Third']);
  workbook.undo();
  expect(names()).toEqual(['First', 'Second', 'Third']);
});

test('listeners hear of every transaction until they stop', () => {
  const workbook = start();
  const labels: string[] = [];
  const stop = workbook.subscribe((code) => labels.push(code));
  set(workbook, 'Farm', 0, 'Spare seed', '20%');
  workbook.undo();
  stop();
  workbook.redo();
  expect(labels).toEqual(['Spare seed of Farm', 'Spare seed of Farm']);
});

test('a branch shares nothing with its workbook', () => {
  const workbook = start();
  const before = snapshot(workbook);
  const branch = workbook.branch();
  expect(snapshot(branch)).toEqual(before);
  set(branch, 'Plantings', 0, 'Spacing', '3 in');
  expect(snapshot(workbook)).toEqual(before);
  expect(text(branch, 'Plantings', 0, 'Stations')).toBe('120');
});

test('a branch works out what is asked of it, and the rest once it is settled', () => {
  const branch = start().branch();
  const told: string[] = [];
  branch.workbook.follow(
    ({ cells }) => told.push(...cells.map(({ sheet, column }) => `${sheet}/${column}`)),
    (flush) => flush(),
  );
  set(branch, 'Plantings', 0, 'Spacing', '3 in');
  expect(told.splice(0)).toEqual(['plantings/spacing']);
  expect(text(branch, 'Plantings', 0, 'Stations')).toBe('120');
  expect(told).toEqual([]);
  branch.workbook.settle();
  expect(told).toContain('plantings/stations');
  expect(told).toContain('order/needed');
  expect(branch.workbook.settle()).toBe(false);
  expect(told.splice(0)).not.toContain('plantings/spacing');
});

test('a workbook declared and opened again is the same, and declares the same', () => {
  const workbook = start();
  set(workbook, 'Plantings', 0, 'Stations', '40');
  set(workbook, 'Beds', 0, 'Length', '7.3 m');
  const again = workbook.reopened();
  expect(snapshot(again)).toEqual(snapshot(workbook));
  expect(again.file()).toBe(workbook.file());
});

test('a number given for a text is its text: rows may be named 1, 2, 3', () => {
  const workbook = opened({
    ...SMALL,
    rows: { ...SMALL.rows, Beds: [{ Bed: 1, Length: 50 }, { Bed: 2 }], Plantings: [{ Planting: 7, Bed: '2' }] },
  });
  expect(workbook.rowName('Beds', 0)).toBe('1');
  expect(text(workbook, 'Plantings', 0, 'Bed')).toBe('2');
});

test('many rows taken in parts: one step, nothing worked out until the last is there, the screen first', () => {
  const book = start();
  const { workbook } = book;
  const before = snapshot(book);
  workbook.watch(() => [{ sheet: 'plantings', column: 'stations' }]);
  const told = new Set<string>();
  workbook.follow(
    ({ cells }) => {
      for (const { sheet, column } of cells) told.add(`${sheet}/${column}`);
    },
    (flush) => flush(),
  );
  const said = { code: 'import file', parts: {} };
  for (const part of [0, 1, 2]) {
    const edits = Array.from({ length: 3 }, (_, at): Edit => {
      const row = { Planting: `New ${part} ${at}`, Variety: 'Red', Length: '30 ft', Spacing: `${4 + at} in` };
      return { edit: 'insert row', table: 'Plantings', entries: row };
    });
    expect(workbook.do(book.commands(edits), said, { joined: part > 0, isPart: true }).refused).toBe(false);
  }
  expect(told.has('plantings/spacing')).toBe(true);
  expect(told.has('plantings/stations')).toBe(false);
  let looks = 0;
  while (workbook.settleScreen(() => looks++ % 2 === 1)) expect(looks).toBeLessThan(100);
  expect(told.has('plantings/stations')).toBe(true);
  expect(told.has('order/needed')).toBe(false);
  expect(workbook.settle()).toBe(false);
  expect(told.has('order/needed')).toBe(true);
  expect(snapshot(book)).toEqual(snapshot(book.reopened()));
  expect(workbook.undo()).toBeDefined();
  expect(snapshot(book)).toEqual(before);
});
