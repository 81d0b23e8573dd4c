// What is typed on rows that follow from other data stays with what the row stands for, whatever becomes of the rows around
// it: through other dates, order and filters, rows that go and come back, saving and opening.

import { beforeEach, describe, expect, test } from 'vitest';
import { type Command, rows, rowWithId, type Workbook } from '../../engine/index.ts';
import { BEGINNING, openFarm } from './farm.ts';

const MESSAGE = { code: 'work', parts: {} };

let workbook: Workbook;
beforeEach(() => {
  workbook = openFarm();
});

function run(...commands: readonly Command[]): void {
  const done = workbook.do(commands, MESSAGE);
  if (done.refused) throw new Error(done.why);
}

function type(sheet: string, row: string, column: string, entry: string): void {
  run({ command: 'set cell', sheet, row, column, entry });
}

function addRemark(sheet: string): string {
  run({ command: 'add column', sheet, name: 'Remark', type: { type: 'text' } });
  const column = workbook.document.program.sheet(sheet)?.columns.find(({ name }) => name === 'Remark');
  if (column === undefined) throw new Error('no column');
  return column.id;
}

/** What is typed in a row as it stands in its columns; undefined where the row is not there. */
function typed(sheet: string, row: string, column: string): unknown {
  const slot = rowWithId(workbook, sheet, row);
  const found = workbook.document.program.sheet(sheet)?.column(column);
  return slot === undefined || found === undefined ? undefined : workbook.document.typedAt(found, slot);
}

function reopen(): void {
  workbook = openFarm(workbook.data());
}

const idsOf = (sheet: string): readonly string[] =>
  [...rows(workbook, sheet)].map((slot) => workbook.document.rowIdOf(sheet, slot) ?? '');

describe('a week’s', () => {
  test('stays with its week when the season begins in another year, and is there again when it comes back', () => {
    const remark = addRemark('weeks');
    const third = idsOf('weeks')[2] ?? '';
    expect(third).toBe('2027-01-18');
    type('weeks', third, remark, 'snow');
    type('farm', 'only', 'season', '2028');
    expect(typed('weeks', third, remark)).toBe(undefined);
    expect(idsOf('weeks').every((week) => typed('weeks', week, remark) === null)).toBe(true);
    reopen();
    type('farm', 'only', 'season', '2027');
    expect(idsOf('weeks').flatMap((week) => (typed('weeks', week, remark) === 'snow' ? [week] : []))).toEqual([third]);
  });

  test('stays with its week when the span begins a week later', () => {
    const remark = addRemark('weeks');
    type('weeks', '2027-03-01', remark, 'frost');
    run({ command: 'set formula', sheet: 'weeks', column: 'sown', formula: '1' });
    type('farm', 'only', 'season', '2026');
    type('farm', 'only', 'season', '2027');
    expect(typed('weeks', '2027-03-01', remark)).toBe('frost');
  });
});

describe('an order row’s', () => {
  test('stays with its variety while the variety is not ordered, and when rows move', () => {
    const [amber = ''] = (BEGINNING.rows.varieties ?? []).map(({ id }) => id);
    type('order', amber, 'note', 'early');
    run({ command: 'move rows', sheet: 'varieties', rows: [amber] });
    expect(typed('order', amber, 'note')).toBe('early');
    const plantings = (BEGINNING.rows.plantings ?? []).map(({ id }) => id);
    run({ command: 'remove rows', sheet: 'plantings', rows: plantings });
    expect([...rows(workbook, 'order')]).toEqual([]);
    reopen();
    run({
      command: 'insert row',
      sheet: 'plantings',
      entries: { planting: 'P9', variety: 'Amber', bed: 'B1', length: '10 ft', spacing: '6 in' },
    });
    expect(typed('order', amber, 'note')).toBe('early');
  });
});

describe('a job’s', () => {
  test('stays with its planting and its date’s column, whatever the date becomes', () => {
    const remark = addRemark('jobs');
    const [first = '', second = ''] = (BEGINNING.rows.plantings ?? []).map(({ id }) => id);
    const jobs = idsOf('jobs');
    const job = jobs.find((id) => id.includes(second) && id.includes('sown')) ?? '';
    type('jobs', job, remark, 'with Ada');
    type('plantings', second, 'sown', '2027-01-05');
    expect(idsOf('jobs')[0]).toBe(job);
    expect(typed('jobs', job, remark)).toBe('with Ada');
    type('plantings', first, 'sown', '');
    type('plantings', second, 'sown', '');
    expect(typed('jobs', job, remark)).toBe(undefined);
    reopen();
    type('plantings', second, 'sown', '2027-05-05');
    expect(typed('jobs', job, remark)).toBe('with Ada');
    expect(idsOf('jobs').filter((id) => typed('jobs', id, remark) !== null)).toEqual([job]);
  });
});

describe('a pair’s', () => {
  test('stays with its two rows while either side changes, moves or goes', () => {
    const [bed = '', other = ''] = (BEGINNING.rows.beds ?? []).map(({ id }) => id);
    const pair = idsOf('bed-weeks').find((id) => id.startsWith(other)) ?? '';
    type('bed-weeks', pair, 'remark', 'nets on');
    run({ command: 'move rows', sheet: 'beds', rows: [bed] });
    type('beds', bed, 'length', '77 ft');
    for (const { id } of BEGINNING.rows.plantings ?? []) type('plantings', id, 'bed', 'B2');
    run({ command: 'remove rows', sheet: 'beds', rows: [bed] });
    run({ command: 'insert row', sheet: 'beds', entries: { bed: 'B0', length: '10 ft' }, before: other });
    expect(typed('bed-weeks', pair, 'remark')).toBe('nets on');
    reopen();
    expect(typed('bed-weeks', pair, 'remark')).toBe('nets on');
    expect(idsOf('bed-weeks').filter((id) => typed('bed-weeks', id, 'remark') !== null)).toEqual([pair]);
    for (const { id } of BEGINNING.rows.plantings ?? []) type('plantings', id, 'bed', '');
    run({ command: 'remove rows', sheet: 'beds', rows: [other] });
    expect(typed('bed-weeks', pair, 'remark')).toBe(undefined);
    workbook.undo();
    expect(typed('bed-weeks', pair, 'remark')).toBe('nets on');
  });
});
