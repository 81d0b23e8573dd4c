// Sheets of one's own as files: out of one workbook and into another they are the same sheets; the gallery's all check.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { declarationOf } from '../../engine/formats/sheets-file.ts';
import {
  bringSheets,
  formulaSideBySide,
  missingHere,
  newDocument,
  readSheets,
  sheetNamed,
  sheetViews,
  Workbook,
  writeSheets,
} from '../../engine/index.ts';
import { GALLERY } from '../../sheets-templates/gallery/gallery.ts';
import { SEASON, seasonStart } from '../../sheets-templates/index.ts';
import { testWorld } from '../book.ts';
import { chances, commandFor } from '../document/any-command.ts';
import { openFarm } from '../document/farm.ts';
import { runs } from '../runs.ts';
import { TODAY } from '../sheets/season.ts';

const MESSAGE = { code: 'work', parts: {} };
let ids = 0;
const newId = (): string => `t${++ids}`;

let fresh: Workbook | undefined;

function season(): Workbook {
  const made = newDocument(SEASON, seasonStart({ season: 2027, today: TODAY }), newId);
  const opened = made.ok ? Workbook.open(made.data, testWorld(SEASON)) : undefined;
  if (opened === undefined) throw new Error('The season can’t be opened.');
  return opened;
}

function ownSheets(workbook: Workbook) {
  const { program } = workbook.document;
  return program.sheets.filter(({ schema }) => schema.own);
}

function bring(workbook: Workbook, text: string): void {
  const read = readSheets(text);
  if (!read.ok) throw new Error(read.why);
  const done = workbook.do(bringSheets(workbook, read.file, newId), MESSAGE);
  if (done.refused) throw new Error(done.why);
}

describe('sheets out and in', () => {
  test('are the same sheets in another workbook', () => {
    fc.assert(
      fc.property(fc.array(chances, { minLength: 4, maxLength: 20 }), (sequence) => {
        const workbook = openFarm();
        workbook.do([{ command: 'add sheet', name: 'Notes', about: '', rows: { from: 'entry' } }], MESSAGE);
        const notes = sheetNamed(workbook, 'Notes')?.id ?? '';
        workbook.do([{ command: 'add formula', sheet: notes, name: 'Beds', formula: 'ROWS(Beds)' }], MESSAGE);
        for (const by of sequence) {
          const command = commandFor(workbook, by);
          if (command !== undefined && command.command !== 'use template') workbook.do([command], MESSAGE);
        }
        const own = ownSheets(workbook);
        if (own.length === 0) return;
        const text = writeSheets(
          workbook,
          own.map(({ id }) => id),
          'Mine',
          '',
        );
        const fresh = openFarm();
        const { units } = workbook.document.program;
        fresh.do([{ command: 'set units', units }], MESSAGE);
        bring(fresh, text);
        expect(ownSheets(fresh).length).toBe(own.length);
        // What reads only sheets that both have stands there word for word.
        const after = ownSheets(fresh).find(({ id }) => id === notes);
        const before = own.find(({ id }) => id === notes);
        if (before !== undefined && after !== undefined) {
          expect(after.columns.map(({ id, type }) => [id, type?.kind])).toEqual(
            before.columns.map(({ id, type }) => [id, type?.kind]),
          );
        }
        // Brought in twice they stand beside each other, under names and ids of their own.
        bring(fresh, text);
        expect(ownSheets(fresh).length).toBe(2 * own.length);
        expect(new Set(fresh.document.program.sheets.map(({ name }) => name)).size).toBe(
          fresh.document.program.sheets.length,
        );
      }),
      { numRuns: runs(8, 500) },
    );
  });

  test('out, in and out again is the same text', () => {
    const workbook = openFarm();
    workbook.do([{ command: 'add sheet', name: 'Notes', about: 'A line a day.', rows: { from: 'entry' } }], MESSAGE);
    const id = sheetNamed(workbook, 'Notes')?.id ?? '';
    workbook.do([{ command: 'add column', sheet: id, name: 'Bed', type: { type: 'link', sheet: 'beds' } }], MESSAGE);
    workbook.do([{ command: 'add formula', sheet: id, name: 'Room', formula: '[Bed].[Free]' }], MESSAGE);
    const text = writeSheets(workbook, [id], 'Notes', '');
    const other = openFarm();
    bring(other, text);
    expect(writeSheets(other, [id], 'Notes', '')).toBe(text);
  });
});

test('views and colours come along, under new ids too', () => {
  const workbook = openFarm();
  workbook.do([{ command: 'add sheet', name: 'Notes', about: '', rows: { from: 'entry' } }], MESSAGE);
  const id = sheetNamed(workbook, 'Notes')?.id ?? '';
  workbook.do(
    [{ command: 'add column', sheet: id, name: 'Rate', type: { type: 'number', unit: { us: '', si: '' } } }],
    MESSAGE,
  );
  const rate = sheetNamed(workbook, 'Notes')?.columns.find(({ name }) => name === 'Rate')?.id ?? '';
  const when = { is: 'at least', least: 3 } as const;
  const done = workbook.do(
    [
      {
        command: 'set view',
        sheet: id,
        view: {
          ...{ id: 'only', name: 'Only rate', columns: [rate], sort: [{ column: rate }], totals: { [rate]: 'mean' } },
          filters: [{ by: 'cell', column: rate, when }],
        },
      },
      {
        command: 'set colour',
        sheet: id,
        rule: { id: 'high', name: 'high', column: rate, when, tone: 'leaf', mark: 'H' },
      },
    ],
    MESSAGE,
  );
  expect(done.refused).toBe(false);
  const text = writeSheets(workbook, [id], 'Notes', '');
  const other = openFarm();
  bring(other, text);
  expect(other.document.looks).toEqual(workbook.document.looks);
  expect(writeSheets(other, [id], 'Notes', '')).toBe(text);
  // Beside the sheet that is here already.
  bring(other, text);
  const second = ownSheets(other).find((sheet) => sheet.id !== id);
  const column = second?.columns.find(({ name }) => name === 'Rate')?.id;
  expect(column).not.toBe(rate);
  const { views, rules } = other.document.looks[second?.id ?? ''] ?? {};
  expect(views?.only).toMatchObject({ columns: [column], sort: [{ column }], filters: [{ column }] });
  expect(views?.only?.totals).toEqual({ [column ?? '']: 'mean' });
  expect(rules?.high?.column).toBe(column);
});

test('what a sheet reads beside it is named, and what of it another workbook has not', () => {
  const workbook = openFarm();
  for (const name of ['Helper', 'Notes'])
    workbook.do([{ command: 'add sheet', name, about: '', rows: { from: 'entry' } }], MESSAGE);
  const [helper, notes] = ['Helper', 'Notes'].map((name) => sheetNamed(workbook, name)?.id ?? '');
  if (helper === undefined || notes === undefined) throw new Error('The sheets are not there.');
  const amount = { type: 'number', unit: { us: '', si: '' } } as const;
  for (const command of [
    { command: 'add column', sheet: 'beds', name: 'Stones', type: amount },
    { command: 'add column', sheet: notes, name: 'Helper row', type: { type: 'link', sheet: helper } },
    { command: 'add formula', sheet: notes, name: 'All stones', formula: 'SUM(Beds[Stones])' },
  ] as const)
    expect(workbook.do([command], MESSAGE).refused).toBe(false);
  const named = (sheets: readonly string[]) => {
    const read = readSheets(writeSheets(workbook, sheets, 'Mine', ''));
    if (!read.ok) throw new Error(read.why);
    return read.file.elsewhere ?? {};
  };
  expect(Object.values(named([notes]))).toEqual(['Helper', 'Beds, Stones']);
  expect(Object.values(named([notes, helper]))).toEqual(['Beds, Stones']);
  expect(named([helper])).toEqual({});
  expect(missingHere(workbook, named([notes]))).toEqual([]);
  expect(missingHere(openFarm(), named([notes]))).toEqual(['Helper', 'Beds, Stones']);
});

describe('gallery', () => {
  test.each(GALLERY)('$title checks in a season, once and twice', (file) => {
    fresh ??= season();
    const workbook = fresh.branch();
    const text = `${JSON.stringify(file)}\n`;
    for (const _ of [1, 2]) bring(workbook, text);
    const own = sheetViews(workbook).filter((sheet) => sheet.own);
    expect(own.length).toBe(2 * file.sheets.length);
    for (const { name, columns } of own)
      expect([name, columns.flatMap(({ diagnostic }) => diagnostic ?? [])]).toEqual([name, []]);
    const [first] = ownSheets(workbook);
    if (first !== undefined) expect(declarationOf(workbook, first).columns).toEqual(file.sheets[0]?.columns);
  });
});

test.each([
  ['', 'The file is damaged at line 1: take a whole copy of it.'],
  ['{"format":"dibble-sheets","version":"1","title":"A","about":"","sheets":[]}', 'The file holds no sheets.'],
  ['{"format":"other"}', /^This is no file of sheets\./],
])('a file that is none is refused in a sentence: %s', (text, why) => {
  const read = readSheets(text);
  if (read.ok) throw new Error('it was read');
  if (typeof why === 'string') expect(read.why).toMatch(/^The file is damaged|^The file holds no sheets/);
  else expect(read.why).toMatch(why);
});

test('a formula is tried side by side, and the workbook stays as it is', () => {
  const workbook = openFarm();
  const tried = formulaSideBySide(workbook, 'plantings', 'stations', 'ROUNDDOWN([Length] / [Spacing]; 0) + 1');
  if (!tried.ok) throw new Error(tried.why);
  // P1: 30 ft at 8 in is 45 places.
  expect(tried.rows[0]).toMatchObject({ rowName: 'P1', before: '45 stations', after: '46 stations', differs: true });
  expect(tried.differing).toBe(3);
  const same = formulaSideBySide(workbook, 'plantings', 'stations', 'ROUNDDOWN([Length] / [Spacing]; 0)');
  expect(same.ok && same.differing).toBe(0);
  expect(formulaSideBySide(workbook, 'plantings', 'stations', null)).toMatchObject({ ok: true, differing: 0 });
  expect(formulaSideBySide(workbook, 'plantings', 'stations', '[Lenght]').ok).toBe(false);
  expect(formulaSideBySide(workbook, 'plantings', 'length', '1 ft').ok).toBe(false);
});
