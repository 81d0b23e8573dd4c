// Ways of looking at a sheet: views shipped, changed, added and put away; filters, orders, groups and their totals; colours
// and notes. Each is a step of undo, stands in the file, and changes no figure.

import { expect, test } from 'vitest';
import {
  arrange,
  type Command,
  colourRules,
  message,
  noteOn,
  readWorkbookFile,
  rowId,
  rowName,
  rows,
  sheetView,
  totalText,
  usualTotal,
  type View,
  type ViewDeclaration,
  valuesHeld,
  views,
  type Workbook,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { openFarm, shelf, VERSION_1, VERSION_2 } from '../document/farm.ts';
import { seasonOf } from '../sheets/season.ts';

const MESSAGE = message('trial');
const NOTHING_FOUND = (): boolean => false;

function does(workbook: Workbook, ...commands: readonly Command[]): void {
  const done = workbook.do(commands, MESSAGE);
  if (done.refused) throw new Error(done.why);
}

function refusal(workbook: Workbook, command: Command): string {
  const done = workbook.do([command], MESSAGE);
  return done.refused ? done.why : 'it was done';
}

function viewsOf(workbook: Workbook, sheet: string): readonly View[] {
  const view = sheetView(workbook, sheet);
  if (view === undefined) throw new Error(`no sheet ${sheet}`);
  return views(workbook, view);
}

const names = (list: readonly View[]): readonly string[] => list.map(({ name }) => name);

function arranged(workbook: Workbook, sheet: string, view: Partial<ViewDeclaration>): readonly string[] {
  const { rows: slots } = arrange(workbook, sheet, { id: 'all', name: 'Everything', ...view }, NOTHING_FOUND);
  return slots.map((slot) => rowName(workbook, sheet, slot));
}

test('a sheet has the views it came with and that of all its columns, its key in front of each', () => {
  const workbook = openFarm();
  expect(viewsOf(workbook, 'beds').map(({ name, shows, inFront }) => [name, shows, inFront])).toEqual([
    ['How much room?', ['bed', 'free'], 1],
    ['Everything', ['bed', 'length', 'used', 'free'], 1],
  ]);
  expect(names(viewsOf(workbook, 'varieties'))).toEqual(['Everything']);
});

test('a view is added, changed and taken out, and undo goes back step by step', () => {
  const workbook = openFarm();
  const mine: ViewDeclaration = { id: 'mine', name: 'How long?', columns: ['length'], pinned: ['used'] };
  does(workbook, { command: 'set view', sheet: 'beds', view: mine });
  expect(names(viewsOf(workbook, 'beds'))).toEqual(['How much room?', 'How long?', 'Everything']);
  expect(viewsOf(workbook, 'beds')[1]).toMatchObject({ own: true, shows: ['bed', 'used', 'length'], inFront: 2 });
  does(workbook, { command: 'set view', sheet: 'beds', view: { ...mine, name: 'How far?' } });
  expect(names(viewsOf(workbook, 'beds'))).toContain('How far?');
  does(workbook, { command: 'remove view', sheet: 'beds', view: 'mine' });
  expect(names(viewsOf(workbook, 'beds'))).toEqual(['How much room?', 'Everything']);
  workbook.undo();
  workbook.undo();
  expect(names(viewsOf(workbook, 'beds'))).toContain('How long?');
  workbook.undo();
  expect(names(viewsOf(workbook, 'beds'))).toEqual(['How much room?', 'Everything']);
});

test("one of the sheet's own views is changed, put away, and taken back as it came", () => {
  const workbook = openFarm();
  const [room] = viewsOf(workbook, 'beds');
  does(workbook, { command: 'set view', sheet: 'beds', view: { id: 'room', name: 'Room', columns: ['used'] } });
  expect(viewsOf(workbook, 'beds')[0]).toMatchObject({ name: 'Room', changed: true, own: false });
  does(workbook, { command: 'remove view', sheet: 'beds', view: 'room' });
  expect(names(viewsOf(workbook, 'beds'))).toEqual(['Everything']);
  does(workbook, { command: 'take view back', sheet: 'beds', view: 'room' });
  expect(viewsOf(workbook, 'beds')[0]).toEqual(room);
  expect(workbook.data().looks).toBeUndefined();
});

test('what cannot be a view is refused with a sentence', () => {
  const workbook = openFarm();
  const view = (part: Partial<ViewDeclaration>): Command => {
    return { command: 'set view', sheet: 'beds', view: { id: 'mine', name: 'Mine', ...part } };
  };
  expect(refusal(workbook, view({ name: ' ' }))).toMatch(/needs a name/);
  expect(refusal(workbook, view({ name: 'everything' }))).toMatch(/already has a view called everything/);
  expect(refusal(workbook, view({ columns: ['gone'] }))).toMatch(/at least one column/);
  expect(refusal(workbook, view({ sort: [{ column: 'gone' }] }))).toMatch(/no column called gone/);
  expect(refusal(workbook, { command: 'remove view', sheet: 'beds', view: 'all' })).toMatch(/keeps the view of all/);
  expect(refusal(workbook, { command: 'take view back', sheet: 'beds', view: 'mine' })).toMatch(/your own/);
});

test('a view keeps what a person changed when the template brings another, and shows columns that are there', () => {
  const workbook = openFarm();
  does(workbook, {
    command: 'set view',
    sheet: 'trays',
    view: { id: 'deep', name: 'How deep?', columns: ['depth', 'cells'] },
  });
  does(workbook, { command: 'use template', version: 2 });
  expect(viewsOf(workbook, 'trays')[0]?.shows).toEqual(['tray', 'cells']);
  expect(viewsOf(workbook, 'beds')[0]?.shows).toEqual(['bed', 'length', 'free']);
});

test('rows are sorted by several columns, blanks last whichever way', () => {
  const workbook = openFarm();
  const lengths = [...rows(workbook, 'beds')].map((slot) => rowName(workbook, 'beds', slot));
  expect(arranged(workbook, 'beds', {})).toEqual(lengths);
  expect(arranged(workbook, 'beds', { sort: [{ column: 'bed', descending: true }] })).toEqual(lengths.toReversed());
  does(
    workbook,
    { command: 'insert row', sheet: 'beds', entries: { bed: 'B9', length: '10 ft' } },
    { command: 'insert row', sheet: 'beds', entries: { bed: 'B10', length: '10 ft' } },
    { command: 'insert row', sheet: 'beds', entries: { bed: 'Blank' } },
  );
  const byLength = arranged(workbook, 'beds', { sort: [{ column: 'length', descending: true }, { column: 'bed' }] });
  expect(byLength.at(-1)).toBe('Blank');
  // Names that end in figures stand in the order of the figures.
  expect(byLength.indexOf('B9')).toBeLessThan(byLength.indexOf('B10'));
  expect(arranged(workbook, 'beds', { sort: [{ column: 'length' }] }).at(-1)).toBe('Blank');
});

test('filters leave the rows that are so: by value, by condition, by what was found', () => {
  const workbook = openFarm();
  does(workbook, { command: 'insert row', sheet: 'beds', entries: { bed: 'Short', length: '3 ft' } });
  const cell = (
    column: string,
    when: Extract<NonNullable<ViewDeclaration['filters']>[number], { by: 'cell' }>['when'],
  ) => arranged(workbook, 'beds', { filters: [{ by: 'cell', column, when }] });
  expect(cell('bed', { is: 'one of', values: ['Short'] })).toEqual(['Short']);
  expect(cell('bed', { is: 'none of', values: ['Short'] })).not.toContain('Short');
  expect(cell('length', { is: 'at most', most: 1 })).toEqual(['Short']);
  expect(cell('length', { is: 'between', least: 0.9, most: 1 })).toEqual(['Short']);
  expect(cell('bed', { is: 'holding', text: 'HOR' })).toEqual(['Short']);
  expect(cell('bed', { is: 'not holding', text: 'hor' })).not.toContain('Short');
  expect(cell('length', { is: 'blank' })).toEqual([]);
  expect(cell('gone', { is: 'blank' })).toHaveLength(rows(workbook, 'beds').length);
  const row = [...rows(workbook, 'beds')][0] ?? -1;
  does(workbook, {
    command: 'set cell',
    sheet: 'beds',
    row: rowId(workbook, 'beds', row),
    column: 'free',
    entry: '1 ft',
  });
  expect(cell('free', { is: 'typed over' })).toEqual([rowName(workbook, 'beds', row)]);
  const found = arrange(
    workbook,
    'beds',
    { id: 'all', name: 'Everything', filters: [{ by: 'finding', level: 'warning' }] },
    (id, level) => level === 'warning' && id === rowId(workbook, 'beds', row),
  );
  expect(found.rows).toEqual([row]);
  expect(found.left).toBe(rows(workbook, 'beds').length - 1);
});

test('what was typed where a formula stands in unless something is typed was typed over it, too', () => {
  const season = seasonOf({ Beds: [{ Bed: 'A' }, { Bed: 'B' }] });
  season.type('Beds', 'B', 'Length', '61 ft');
  const { workbook } = season.book;
  const over = { by: 'cell', column: 'length', when: { is: 'typed over' } } as const;
  expect(arranged(workbook, 'beds', { filters: [over] })).toEqual(['B']);
});

test('groups descend where the rows are sorted so by what groups them, nothing last', () => {
  const workbook = openFarm();
  does(workbook, { command: 'insert row', sheet: 'plantings', entries: { planting: 'Nowhere yet' } });
  const groups = (...sort: NonNullable<ViewDeclaration['sort']>): readonly string[] => {
    const view: ViewDeclaration = { id: 'all', name: 'Everything', groupBy: 'bed', sort };
    return arrange(workbook, 'plantings', view, NOTHING_FOUND).groups?.map(({ name }) => name) ?? [];
  };
  const named = groups().filter((name) => name !== '');
  expect(named.length).toBeGreaterThan(1);
  expect(groups({ column: 'bed', descending: true })).toEqual([...named.toReversed(), '']);
  expect(groups({ column: 'bed' })).toEqual([...named, '']);
  expect(groups({ column: 'length', descending: true })).toEqual([...named, '']);
});

test('a view forgets what it sorted, filtered or grouped by a column that went, until the column is back', () => {
  const workbook = openFarm();
  does(workbook, { command: 'add column', sheet: 'beds', name: 'Shade', type: { type: 'yesno' } });
  const shade = sheetView(workbook, 'beds')?.columns.find(({ name }) => name === 'Shade')?.id ?? '';
  const filters = [{ by: 'cell', column: shade, when: { is: 'filled' } }] as const;
  const view: ViewDeclaration = { id: 'all', name: 'Everything', sort: [{ column: shade }], filters, groupBy: shade };
  does(workbook, { command: 'set view', sheet: 'beds', view });
  const standing = () => viewsOf(workbook, 'beds').find(({ id }) => id === 'all');
  expect(standing()).toMatchObject({ sort: view.sort, filters, groupBy: shade });
  does(workbook, { command: 'remove column', sheet: 'beds', column: shade });
  expect(standing()).toMatchObject({ sort: [], filters: [] });
  expect(standing()?.groupBy).toBeUndefined();
  workbook.undo();
  expect(standing()).toMatchObject({ sort: view.sort, filters, groupBy: shade });
});

test('rows stand in groups by what they link to, each with its totals', () => {
  const workbook = openFarm();
  const view: ViewDeclaration = { id: 'all', name: 'Everything', groupBy: 'bed' };
  const { groups = [], rows: slots } = arrange(workbook, 'plantings', view, NOTHING_FOUND);
  expect(groups.length).toBeGreaterThan(1);
  expect(slots).toHaveLength(rows(workbook, 'plantings').length);
  expect(groups.flatMap((group) => group.rows)).toEqual(slots);
  const held = valuesHeld(workbook, 'plantings', 'bed');
  expect(held.map(({ name, count }) => [name, count])).toEqual(groups.map(({ name, rows: of }) => [name, of.length]));
  expect(usualTotal(workbook, 'plantings', 'length')).toBe('sum');
  expect(usualTotal(workbook, 'plantings', 'spacing')).toBe('mean');
  expect(usualTotal(workbook, 'plantings', 'planting')).toBe('none');
  does(workbook, { command: 'insert row', sheet: 'beds', entries: { bed: 'East', length: '10 ft' } });
  does(workbook, { command: 'insert row', sheet: 'beds', entries: { bed: 'West', length: '7.5 ft' } });
  const two = [...rows(workbook, 'beds')].slice(-2);
  expect(totalText(workbook, 'beds', 'length', two, 'sum')).toBe('17.5');
  expect(totalText(workbook, 'beds', 'length', two, 'mean')).toBe('8.75');
  expect(totalText(workbook, 'beds', 'length', two, 'least')).toBe('7.5');
  expect(totalText(workbook, 'beds', 'length', two, 'none')).toBe('');
  expect(totalText(workbook, 'beds', 'bed', two, 'sum')).toBe('');
  does(workbook, { command: 'insert row', sheet: 'beds', entries: { bed: 'Odd', length: '20.333 ft' } });
  does(workbook, { command: 'insert row', sheet: 'beds', entries: { bed: 'Long', length: '1000.125 ft' } });
  const odd = [...rows(workbook, 'beds')].slice(-2);
  expect(totalText(workbook, 'beds', 'length', odd, 'sum')).toBe('1020.5');
  expect(totalText(workbook, 'beds', 'length', [...two, ...odd.slice(0, 1)], 'mean')).toBe('12.61');
  expect(totalText(workbook, 'beds', 'length', odd, 'least')).toBe('20.333');
});

test('a sum is rounded once, shows no decimals that it has lost, and tells money, for whatever, and feet and inches in full', () => {
  const workbook = openFarm();
  const column = (name: string, unit: string, decimals?: number) =>
    ({
      id: name,
      name,
      type: { type: 'number', unit: { us: unit, si: unit } },
      group: '',
      note: '',
      role: 'entered',
      formula: '',
      ...(decimals === undefined ? {} : { decimals }),
    }) as const;
  const columns = [
    column('whole', 'lb', 0),
    column('fine', 'lb', 2),
    column('hourly', 'money/h'),
    column('run', 'ft in'),
  ];
  const kept = { id: 'loads', name: 'Loads', question: 'Own sheets', about: '', checks: [], cautions: [] };
  does(workbook, { command: 'put sheet', sheet: { ...kept, rows: { from: 'entry' }, columns } });
  does(workbook, {
    command: 'insert row',
    sheet: 'loads',
    entries: { whole: '100.46', fine: '123.46', hourly: '123.42', run: '100 ft 3 in' },
  });
  const slots = [...rows(workbook, 'loads')];
  const told = columns.map(({ id }) => totalText(workbook, 'loads', id, slots, 'sum'));
  expect(told).toEqual(['100', '123.5', '123.42', '100 ft 3 in']);
});

test('colours stand in the order they were made, and need words', () => {
  const workbook = openFarm();
  const rule = {
    id: 'b',
    name: 'short',
    column: 'length',
    when: { is: 'at most', most: 3 },
    tone: 'rose',
    mark: '!',
  } as const;
  does(workbook, { command: 'set colour', sheet: 'beds', rule });
  does(workbook, { command: 'set colour', sheet: 'beds', rule: { ...rule, id: 'a', name: 'very short' } });
  expect(colourRules(workbook, 'beds').map(({ name }) => name)).toEqual(['short', 'very short']);
  expect(refusal(workbook, { command: 'set colour', sheet: 'beds', rule: { ...rule, name: ' ' } })).toMatch(
    /needs words/,
  );
  does(workbook, { command: 'remove colour', sheet: 'beds', rule: 'b' });
  expect(colourRules(workbook, 'beds').map(({ name }) => name)).toEqual(['very short']);
});

test('a note stays on its cell, goes with its row and comes back with it', () => {
  const workbook = openFarm();
  does(workbook, { command: 'insert row', sheet: 'beds', entries: { bed: 'Noted' } });
  const row = rowId(workbook, 'beds', [...rows(workbook, 'beds')].at(-1) ?? -1);
  does(workbook, { command: 'set note', sheet: 'beds', row, column: 'length', note: ' measured along the path ' });
  expect(noteOn(workbook, 'beds', row, 'length')).toBe('measured along the path');
  does(workbook, { command: 'remove rows', sheet: 'beds', rows: [row] });
  expect(workbook.data().notes).toBeUndefined();
  workbook.undo();
  expect(noteOn(workbook, 'beds', row, 'length')).toBe('measured along the path');
  does(workbook, { command: 'set note', sheet: 'beds', row, column: 'length', note: '' });
  expect(noteOn(workbook, 'beds', row, 'length')).toBe('');
  expect(
    refusal(workbook, { command: 'set note', sheet: 'beds', row, column: 'length', note: 'x'.repeat(2001) }),
  ).toMatch(/at most 2000 letters/);
});

test('views, colours, notes and the locale stand in the file, and none of them works anything out again', () => {
  const workbook = openFarm();
  const row = rowId(workbook, 'beds', [...rows(workbook, 'beds')][0] ?? -1);
  const rule = { id: 'a', name: 'short', column: 'length', when: { is: 'blank' }, tone: 'sky', mark: '' } as const;
  const commands: readonly Command[] = [
    {
      command: 'set view',
      sheet: 'beds',
      view: { id: 'mine', name: 'Mine', filters: [{ by: 'finding', level: 'any' }] },
    },
    { command: 'set colour', sheet: 'beds', rule },
    { command: 'set note', sheet: 'beds', row, column: 'bed', note: 'By the gate' },
    { command: 'set locale', locale: 'de-CH' },
  ];
  const { program } = workbook.document;
  for (const command of commands) {
    const done = workbook.do([command], MESSAGE);
    expect(done.refused ? done.why : done.change.cells).toEqual([]);
  }
  expect(workbook.document.program).toBe(program);
  const text = writeWorkbookFile(workbook.data());
  const read = readWorkbookFile(text, shelf(VERSION_1));
  if (!read.ok) throw new Error(read.why);
  expect(read.data).toEqual(workbook.data());
  expect(read.data.locale).toBe('de-CH');
  expect(writeWorkbookFile(read.data)).toBe(text);
  const damaged = readWorkbookFile(text.replace('"tone": "sky"', '"tone": "beige"'), shelf(VERSION_2));
  // What can't be read is left out and told; the rest of the file opens.
  expect(damaged.ok ? damaged.notes.join(' ') : '').toMatch(/colour “a”.*one of “rose”/);
});
