// What is said of an entry before it is taken: what marks and order leave open, and dates far from everything around them;
// and a workbook that names a locale of its own.

import { expect, test } from 'vitest';
import { cellView, message, rows, settings, tryEntry, Workbook, type World } from '../../engine/index.ts';
import { writingOf } from '../../ui/browser/store/writing.ts';
import { BEGINNING, world } from '../document/farm.ts';
import { seasonOf } from '../sheets/season.ts';

/** The farm at a machine that writes so. */
function farmAt(machine: string): Workbook {
  const at: World = { ...world(), writings: (locale) => writingOf(locale ?? machine) };
  const workbook = Workbook.open(BEGINNING, at);
  if (workbook === undefined) throw new Error('its template is not known');
  return workbook;
}

function tried(workbook: Workbook, sheet: string, column: string, entry: string, row?: number) {
  const answer = tryEntry(workbook, sheet, column, entry, row);
  if (!answer.ok) throw new Error(answer.why);
  return answer;
}

const first = (workbook: Workbook, sheet: string): number => rows(workbook, sheet)[0] ?? -1;

test('1,234 is shown as it was read, with what else it could have been and how that is written', () => {
  expect(tried(farmAt('en-US'), 'beds', 'length', '1,234')).toMatchObject({
    text: '1234 ft',
    other: { text: '1.234 ft', write: '1.234' },
  });
  expect(tried(farmAt('de-DE'), 'beds', 'length', '1,234')).toMatchObject({
    text: '1,234 ft',
    other: { text: '1234 ft', write: '1234' },
  });
  expect(tried(farmAt('de-DE'), 'beds', 'length', '1.234')).toMatchObject({
    text: '1234 ft',
    other: { text: '1,234 ft', write: '1,234' },
  });
});

test('nothing is left open by 1.5, 1,5, 12,345,678 or, where decimals have a point, 1.234', () => {
  for (const entry of ['1.5', '1,5', '12,345,678', '1.234', '0,125', '20 cm']) {
    expect(tried(farmAt('en-US'), 'beds', 'length', entry).other, entry).toBeUndefined();
  }
});

test('of what is counted nobody is asked whether a broken number is meant', () => {
  const { workbook } = seasonOf({}).book;
  expect(tried(workbook, 'records', 'amount', '1,234').other).toMatchObject({ write: '1.234' });
  expect(tried(workbook, 'records', 'count', '1,234')).toEqual({ ok: true, text: '1234' });
});

test('3/4 is shown as it was read; 15/3 can be only one day', () => {
  expect(tried(farmAt('en-US'), 'plantings', 'sown', '03/04')).toMatchObject({
    text: '4 Mar 2027',
    other: { text: '3 Apr 2027', write: '3 Apr 2027' },
  });
  expect(tried(farmAt('en-GB'), 'plantings', 'sown', '03/04')).toMatchObject({ text: '3 Apr 2027' });
  expect(tried(farmAt('en-US'), 'plantings', 'sown', '15/3').other).toBeUndefined();
  expect(tried(farmAt('en-US'), 'plantings', 'sown', '3/3').other).toBeUndefined();
});

test('two figures in front that are taken for the year could be the day', () => {
  expect(tried(farmAt('sv-SE'), 'plantings', 'sown', '27-04-26')).toMatchObject({
    text: '26 apr. 2027',
    other: { text: '27 apr. 2026' },
  });
  expect(tried(farmAt('sv-SE'), 'plantings', 'sown', '27-04-40').other).toBeUndefined();
});

test('a date far from the season and from all dates around it is asked about', () => {
  const workbook = farmAt('en-US');
  expect(tried(workbook, 'plantings', 'sown', '15 Mar 2072').far).toBe('45 years after the season 2027');
  expect(tried(workbook, 'plantings', 'sown', '15 Mar 1927').far).toBe('100 years before the season 2027');
  expect(tried(workbook, 'plantings', 'sown', '15 Mar 2028').far).toBeUndefined();
  expect(tried(workbook, 'plantings', 'sown', '1 Feb 2026').far).toBeUndefined();
  // What others in the column have is nothing to ask about.
  const row = workbook.document.rowIdOf('plantings', first(workbook, 'plantings')) ?? '';
  workbook.do(
    [{ command: 'set cell', sheet: 'plantings', row, column: 'sown', entry: '15 Mar 2072' }],
    message('trial'),
  );
  expect(tried(workbook, 'plantings', 'sown', '1 Apr 2072').far).toBeUndefined();
  expect(tried(workbook, 'plantings', 'sown', '1 Apr 2072', first(workbook, 'plantings')).far).toMatch(/45 years/);
});

test('a workbook shows figures and days as its machine does, or as the locale says that it names; undo goes back', () => {
  const workbook = farmAt('en-US');
  const slot = first(workbook, 'beds');
  const row = workbook.document.rowIdOf('beds', slot) ?? '';
  const set = (entry: string) =>
    workbook.do([{ command: 'set cell', sheet: 'beds', row, column: 'length', entry }], message('trial'));
  set('12.5');
  expect(cellView(workbook, 'beds', slot, 'length')).toMatchObject({ figure: '12.5', entry: '12.5' });
  const done = workbook.do([{ command: 'set locale', locale: 'de-DE' }], message('set locale', { locale: 'de-DE' }));
  expect(done.refused ? [] : done.change.columnsOf).toContain('beds');
  expect(settings(workbook)).toMatchObject({ locale: 'de-DE' });
  expect(cellView(workbook, 'beds', slot, 'length')).toMatchObject({ figure: '12,5', entry: '12,5' });
  set('12345,5');
  expect(cellView(workbook, 'beds', slot, 'length')).toMatchObject({ figure: '12.345,5', entry: '12345,5' });
  expect(workbook.branch().document.writing).toBe(workbook.document.writing);
  workbook.undo();
  workbook.undo();
  expect(cellView(workbook, 'beds', slot, 'length')).toMatchObject({ figure: '12.5' });
  expect(workbook.do([{ command: 'set locale', locale: 'no place' }], message('trial'))).toMatchObject({
    refused: true,
    why: '“no place” names no language and place: write one such as en-US, de-DE or fr.',
  });
});

test('an entry that a program wrote is read as formulas have it, whatever the locale', () => {
  const workbook = farmAt('de-DE');
  const slot = first(workbook, 'beds');
  const row = workbook.document.rowIdOf('beds', slot) ?? '';
  workbook.do(
    [{ command: 'set cell', sheet: 'beds', row, column: 'length', entry: '1.125', plain: true }],
    message('trial'),
  );
  expect(cellView(workbook, 'beds', slot, 'length').figure).toBe('1,125');
});
