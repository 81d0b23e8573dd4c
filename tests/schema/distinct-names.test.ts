// Columns and sheets of one name: the template's formulas read the template's, a person's go on reading what they read when they
// were written, wherever a person has put them, and none of the two names is told twice.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Command,
  cellView,
  type Entry,
  message,
  newDocument,
  readWorkbookFile,
  rows,
  type SheetView,
  sheetViews,
  type Template,
  type Transaction,
  type TransactionSource,
  upgradeTo,
  Workbook,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { templateOf } from '../book.ts';
import { runs } from '../runs.ts';
import { besideFarm, computed, entered, plain, sheet } from '../workbook/small.ts';

const TEXT = { type: 'text' } as const;

const OLD = templateOf(
  besideFarm(
    [
      sheet('Plantings', {
        key: 'Planting',
        columns: [
          entered('Planting', TEXT),
          entered('Stations', plain),
          computed('Sold', plain, '[Stations] * 2'),
          computed('Paid', plain, '[Sold] * 3'),
        ],
      }),
    ],
    {},
  ),
  1,
);

/** Takes what is lost off, and reads another new sheet. */
const NEW = templateOf(
  besideFarm(
    [
      sheet('Plantings', {
        key: 'Planting',
        columns: [
          entered('Planting', TEXT),
          entered('Stations', plain),
          computed('Lost', plain, '[Stations] / 10'),
          computed('Sold', plain, '([Stations] - [Lost]) * 2'),
          computed('Paid', plain, '[Sold] * 3 + SUM(Sales[Stations])'),
        ],
      }),
      sheet('Sales', { key: 'Sale', columns: [entered('Sale', TEXT), entered('Stations', plain)] }),
    ],
    {},
  ),
  2,
);

const shelf = {
  today: () => NEW,
  earlier: (_: string, version: number): Template | undefined => [OLD, NEW].find((one) => one.version === version),
};

let count = 0;
const newId = (): string => `n${String(++count).padStart(6, '0')}`;

function world(actor = 'anna') {
  return { newId, now: () => ++count, actor, templates: shelf };
}

function open(): Workbook {
  const typed: readonly Readonly<Record<string, Entry>>[] = [
    { planting: 'P1', stations: '100' },
    { planting: 'P2', stations: '50' },
  ];
  const start = { title: 'T', units: 'us', currency: 'USD', today: 20_800, rows: { plantings: typed } } as const;
  const made = newDocument(OLD, start, newId);
  if (!made.ok) throw new Error(made.problems.join(' '));
  return started(Workbook.open(made.data, world()));
}

function started(workbook: Workbook | undefined): Workbook {
  if (workbook === undefined) throw new Error('The template is not on the shelf.');
  return workbook;
}

function act(workbook: Workbook, ...commands: readonly Command[]): Transaction {
  const done = workbook.do(commands, message('type cell'));
  if (done.refused) throw new Error(done.why);
  return done.transaction;
}

const plantings = (workbook: Workbook): SheetView => {
  const found = sheetViews(workbook).find(({ id }) => id === 'plantings');
  if (found === undefined) throw new Error('There are no plantings.');
  return found;
};

const idOf = (workbook: Workbook, name: string): string =>
  plantings(workbook).columns.find((column) => column.name === name)?.id ?? '';

/** A column of the plantings, row by row, by its id. */
const shown = (workbook: Workbook, column: string): readonly string[] =>
  Array.from(rows(workbook, 'plantings'), (row) => cellView(workbook, 'plantings', row, column).text);

const names = (workbook: Workbook): readonly string[] => plantings(workbook).columns.map(({ name }) => name);

const upgrade: Command = { command: 'use template', version: 2 };
const lost: Command = { command: 'add formula', sheet: 'plantings', name: 'Lost', formula: '7' };
const kept: Command = { command: 'add formula', sheet: 'plantings', name: 'Kept', formula: '[Lost] * 100' };

describe('a newer template with a name that a person gave', () => {
  test.each(['where it was added', 'in front of all others'])(
    'of a column: each formula reads its own (%s)',
    (place) => {
      const workbook = open();
      act(workbook, lost, kept);
      const [own, ofOwn] = [idOf(workbook, 'Lost'), idOf(workbook, 'Kept')];
      if (place === 'in front of all others')
        act(workbook, { command: 'move column', sheet: 'plantings', column: own, after: null });
      act(workbook, upgrade);
      // (100 - 10) x 2 and (50 - 5) x 2.
      expect(shown(workbook, 'sold')).toEqual(['180', '90']);
      expect(shown(workbook, 'lost')).toEqual(['10', '5']);
      expect(shown(workbook, ofOwn)).toEqual(['700', '700']);
      const view = plantings(workbook).columns.find(({ id }) => id === ofOwn);
      expect(view?.formula).toBe('[Lost 2] * 100');
      // What is shown is taken as it is shown.
      act(workbook, { command: 'set formula', sheet: 'plantings', column: ofOwn, formula: view?.formula ?? '' });
      expect(shown(workbook, ofOwn)).toEqual(['700', '700']);
    },
  );

  test('in other letters, and beside a name that is free no more', () => {
    const workbook = open();
    act(
      workbook,
      { ...lost, name: 'LOST' },
      { command: 'add formula', sheet: 'plantings', name: 'lost 2', formula: '8' },
      upgrade,
    );
    expect(shown(workbook, 'sold')).toEqual(['180', '90']);
    expect(names(workbook).toSorted()).toEqual(['LOST 3', 'Lost', 'Paid', 'Planting', 'Sold', 'Stations', 'lost 2']);
  });

  test('given to a column of the template, or to a sheet', () => {
    const workbook = open();
    act(
      workbook,
      { command: 'rename column', sheet: 'plantings', column: 'stations', name: 'Lost' },
      { command: 'add sheet', name: 'Sales', about: '', rows: { from: 'entry' } },
      upgrade,
    );
    expect(shown(workbook, 'sold')).toEqual(['180', '90']);
    // Nothing is sold yet.
    expect(shown(workbook, 'paid')).toEqual(['540', '270']);
    expect(plantings(workbook).columns.find(({ id }) => id === 'sold')?.formula).toBe('([Lost 2] - [Lost]) * 2');
    const sheets = sheetViews(workbook).map(({ name, own }) => `${name}${own ? ' (own)' : ''}`);
    expect(sheets.toSorted()).toEqual(['Farm', 'Plantings', 'Sales', 'Sales 2 (own)']);
  });

  test('is told before it is taken, and the name is as it was once it is taken back', () => {
    const workbook = open();
    act(workbook, lost, kept, { command: 'add sheet', name: 'Sales', about: '', rows: { from: 'entry' } });
    const told = upgradeTo(workbook, 2)?.named.map(
      ({ sheetName, columnName, before, after }) => `${sheetName}/${columnName}: ${before} to ${after}`,
    );
    expect(told).toEqual(['Plantings/Lost 2: Lost to Lost 2', 'Sales 2/: Sales to Sales 2']);
    const before = workbook.data();
    const own = idOf(workbook, 'Lost');
    act(workbook, upgrade);
    workbook.undo();
    expect(workbook.data()).toEqual(before);
    expect(idOf(workbook, 'Lost')).toBe(own);
  });
});

describe('a name that comes about twice', () => {
  test('is refused where a column or sheet is to have its first name again', () => {
    const workbook = open();
    act(
      workbook,
      { command: 'rename column', sheet: 'plantings', column: 'stations', name: 'Places' },
      { command: 'add formula', sheet: 'plantings', name: 'Stations', formula: '1' },
      { command: 'rename sheet', sheet: 'plantings', name: 'Work' },
      { command: 'add sheet', name: 'plantings', about: '', rows: { from: 'entry' } },
    );
    const refusals = (
      [
        { command: 'rename column', sheet: 'plantings', column: 'stations', name: '' },
        { command: 'rename sheet', sheet: 'plantings', name: '' },
      ] as const
    ).map((command) => {
      const done = workbook.do([command], message('type cell'));
      return done.refused ? done.why : '';
    });
    expect(refusals).toEqual([
      'Work already has a column called Stations: choose another name.',
      'There is already a sheet called Plantings: choose another name.',
    ]);
  });

  test('from two people at once: both see the same, each formula reads its own', () => {
    const anna = open();
    act(anna, { command: 'rename column', sheet: 'plantings', column: 'stations', name: 'Places' });
    const bert = started(Workbook.open(anna.data(), world('bert')));
    const back = act(anna, { command: 'rename column', sheet: 'plantings', column: 'stations', name: '' });
    const added = act(
      bert,
      { command: 'add formula', sheet: 'plantings', name: 'Stations', formula: '1' },
      { command: 'add formula', sheet: 'plantings', name: 'Twice', formula: '[Stations] * 2' },
    );
    const source: TransactionSource = 'remote';
    anna.receive({ ...added, source });
    bert.receive({ ...back, source });
    for (const workbook of [anna, bert]) {
      const own = idOf(workbook, 'Stations 2');
      act(workbook, { command: 'move column', sheet: 'plantings', column: own, after: null });
      expect(shown(workbook, 'sold')).toEqual(['200', '100']);
      expect(shown(workbook, idOf(workbook, 'Twice'))).toEqual(['2', '2']);
    }
    expect(names(anna)).toEqual(names(bert));
  });

  test('in a file that was written so: it opens to the figures of the template', () => {
    const workbook = open();
    act(
      workbook,
      { command: 'add formula', sheet: 'plantings', name: 'Places', formula: '1' },
      { command: 'add formula', sheet: 'plantings', name: 'Twice', formula: '[Places] * 2' },
    );
    act(workbook, {
      command: 'move column',
      sheet: 'plantings',
      column: idOf(workbook, 'Places'),
      after: null,
    });
    const file = writeWorkbookFile(workbook.data()).replace('"Places"', '"Stations"');
    const read = readWorkbookFile(file, shelf);
    if (!read.ok) throw new Error(read.why);
    const opened = started(Workbook.open(read.data, world()));
    expect(shown(opened, 'sold')).toEqual(['200', '100']);
    expect(shown(opened, idOf(opened, 'Twice'))).toEqual(['2', '2']);
    expect(names(opened).toSorted()).toEqual(['Paid', 'Planting', 'Sold', 'Stations', 'Stations 2', 'Twice']);
  });
});

test('whatever a person called their own and wherever they put it, the template’s figures are those without it', () => {
  const bare = open();
  act(bare, upgrade);
  const ofTemplate = ['planting', 'stations', 'lost', 'sold', 'paid'];
  const figures = (workbook: Workbook): unknown => ofTemplate.map((column) => shown(workbook, column));
  const called = fc.constantFrom('Lost', 'lost', 'Lost 2', 'Sold', 'STATIONS', 'Paid', 'Mine', 'Planting');
  fc.assert(
    fc.property(
      fc.array(fc.record({ name: called, place: fc.nat(9), renames: fc.nat(3) }), { minLength: 1, maxLength: 6 }),
      (works) => {
        const workbook = open();
        const own: string[] = [];
        works.forEach(({ name, place, renames }, i) => {
          const one = plantings(workbook).columns[place % plantings(workbook).columns.length];
          if (renames === 0 && one !== undefined && !one.own)
            workbook.do([{ command: 'rename column', sheet: 'plantings', column: one.id, name }], message('type cell'));
          const added: Command = { command: 'add formula', sheet: 'plantings', name, formula: String(1000 + i) };
          if (workbook.do([added], message('type cell')).refused) return;
          own.push(idOf(workbook, name));
          const sum: Command = { command: 'add formula', sheet: 'plantings', name: `Of ${i}`, formula: `[${name}]` };
          act(workbook, sum);
          own.push(idOf(workbook, `Of ${i}`));
          const after = place % 2 === 0 ? null : (one?.id ?? null);
          act(workbook, { command: 'move column', sheet: 'plantings', column: idOf(workbook, name), after });
        });
        const before = own.map((column) => shown(workbook, column));
        act(workbook, upgrade);
        expect(figures(workbook)).toEqual(figures(bare));
        expect(own.map((column) => shown(workbook, column))).toEqual(before);
        const small = names(workbook).map((name) => name.toLowerCase());
        expect(new Set(small).size).toBe(small.length);
      },
    ),
    { numRuns: runs(40, 2000) },
  );
});
