// The phone's day: jobs by the place they are done at, a tick that says when, and notes that become records.

import { describe, expect, test } from 'vitest';
import { civilDay, message, rowId, rowWithId } from '../../../engine/index.ts';
import {
  countedTooMany,
  dayOf,
  type JobsAt,
  KINDS,
  noteCommand,
  tickCommands,
} from '../../../ui/browser/phone/today/day.ts';
import { jobAmount } from '../../../ui/browser/phone/today/job-amount.ts';
import { photoKey } from '../../../ui/browser/phone/today/photos.ts';
import { plantingsFor } from '../../../ui/browser/phone/today/which-planting.ts';
import { demoBook } from '../../browser/workbook-page.ts';

const demo = demoBook();
const { workbook } = demo;
const april = civilDay(2027, 4, 22);
const ALL = { due: Number.POSITIVE_INFINITY, later: Number.POSITIVE_INFINITY };

describe('jobs', () => {
  const day = dayOf(workbook, april, ALL);

  test('what is due stands by place, what is later in the week apart, and no job twice', () => {
    const due = day?.due.flatMap(({ jobs }) => jobs) ?? [];
    const later = day?.later.flatMap(({ jobs }) => jobs) ?? [];
    expect(due.every(({ on }) => on <= april)).toBe(true);
    expect(later.every(({ on }) => on > april)).toBe(true);
    expect(due.length + later.length).toBe(day?.week.jobs.length);
    for (const { where, jobs } of day?.due ?? [])
      expect(new Set(jobs.map((job) => job.where))).toEqual(new Set([where]));
    const beds = (day?.due ?? []).map(({ where }) => where).filter((where) => where.startsWith('Creek'));
    expect(beds).toEqual(beds.toSorted());
  });

  test('of more jobs than are wanted those nearest to today stay, and all are counted', () => {
    const book = demoBook();
    // Nothing was noted so far: what is past is late.
    book.edit([{ edit: 'cell', table: 'Farm', row: 0, column: 'Jobs noted from', entry: '' }]);
    const days = (places: readonly JobsAt[] = []): readonly number[] =>
      places.flatMap(({ jobs }) => jobs.map(({ on }) => on)).sort((a, b) => a - b);
    const all = dayOf(book.workbook, april, ALL);
    const some = dayOf(book.workbook, april, { due: 20, later: 3 });
    expect(days(all?.due).length).toBeGreaterThan(20);
    expect(days(some?.due)).toEqual(days(all?.due).slice(-20));
    expect(days(some?.later)).toEqual(days(all?.later).slice(0, 3));
    expect(some?.counts).toEqual({ due: days(all?.due).length, later: days(all?.later).length });
    expect(dayOf(book.workbook, april, { due: 0, later: 0 })).toMatchObject({ due: [], later: [] });
  });

  test('a tick says that it is done and on which day, and is taken away as a whole', () => {
    const book = demoBook();
    // Nothing was noted so far: what is past is late.
    expect(book.edit([{ edit: 'cell', table: 'Farm', row: 0, column: 'Jobs noted from', entry: '' }]).refused).toBe(
      false,
    );
    const job = dayOf(book.workbook, april, ALL)?.due[0]?.jobs[0];
    if (job === undefined) throw new Error('Nothing is due.');
    expect(book.workbook.do(tickCommands(job, april), message('trial')).refused).toBe(false);
    const row = rowWithId(book.workbook, 'tasks', job.row) ?? -1;
    expect(book.value('Tasks', row, 'Done on')).toBe(april);
    expect(book.workbook.do(tickCommands({ ...job, done: true }, april), message('trial')).refused).toBe(false);
    expect(book.value('Tasks', row, 'Done')).toBeNull();
    expect(book.value('Tasks', row, 'Done on')).toBeNull();
  });
});

describe('notes', () => {
  test('a planting in its harvest comes first where a picking is noted', () => {
    const july = civilDay(2027, 7, 25);
    const [first] = plantingsFor(workbook, 'picked', july);
    const row = [...demo.rows('Plantings')].find((each) => demo.rowName('Plantings', each) === first?.name) ?? -1;
    expect(Number(demo.value('Plantings', row, 'Harvest'))).toBeLessThanOrEqual(july);
    expect(Number(demo.value('Plantings', row, 'Harvest ends')) + 7).toBeGreaterThanOrEqual(july);
    expect(plantingsFor(workbook, 'picked', july).length).toBe(demo.rows('Plantings').length);
  });

  test('a planting of which a picking is due comes before all that are in harvest, and then what was picked last', () => {
    const book = demoBook();
    const day = civilDay(2027, 7, 16);
    const dueFrom = (first: number): readonly string[] =>
      [...book.rows('Tasks')].flatMap((row) =>
        ['Pick', 'Lift and cure'].includes(book.cell('Tasks', row, 'Job').text) &&
        Number(book.value('Tasks', row, 'On')) >= first &&
        Number(book.value('Tasks', row, 'On')) <= day &&
        book.value('Tasks', row, 'Is done') !== true
          ? [book.cell('Tasks', row, 'Planting').text]
          : [],
      );
    const due = dueFrom(day);
    expect(due).toContain('Snap beans 1');
    const order = (): readonly string[] => plantingsFor(book.workbook, 'picked', day).map(({ name }) => name);
    expect(order().slice(0, due.length).toSorted()).toEqual(due.toSorted());
    const ripe = [...book.rows('Plantings')].filter(
      (row) =>
        Number(book.value('Plantings', row, 'Harvest')) <= day &&
        Number(book.value('Plantings', row, 'Harvest ends')) >= day,
    );
    const names = new Set(ripe.map((row) => book.rowName('Plantings', row)));
    const last = plantingsFor(book.workbook, 'picked', day).findLast(({ name }) => names.has(name));
    if (last === undefined) throw new Error('Nothing is in harvest.');
    expect(order().indexOf(last.name)).toBeGreaterThan(due.length);
    const typed = { figure: '3', weighed: true, of: '', on: day - 1 };
    expect(book.workbook.do([noteCommand(last, 'picked', typed)], message('trial')).refused).toBe(false);
    // Those due since a week ago stay before it.
    expect(order()[new Set(dueFrom(day - 6)).size]).toBe(last.name);
  });

  test.each(KINDS.map(({ kind }) => kind))('%s becomes a record of today', (kind) => {
    const book = demoBook();
    const [planting] = plantingsFor(book.workbook, kind, april);
    if (planting === undefined) throw new Error('There are no plantings.');
    const before = book.rows('Records').length;
    const weighed = kind === 'picked';
    const command = noteCommand(planting, kind, { figure: '12', weighed, of: '', on: april });
    expect(book.workbook.do([command], message('trial')).refused).toBe(false);
    expect(book.rows('Records').length).toBe(before + 1);
    const row = [...book.rows('Records')].at(-1) ?? -1;
    expect(book.cell('Records', row, 'Planting').text).toBe(planting.name);
    expect(book.value('Records', row, 'On')).toBe(april);
    expect(book.cell('Records', row, 'What').text).toBe(kind);
    expect(book.cell('Records', row, weighed ? 'Amount' : 'Count').number).toBeCloseTo(12, 9);
  });

  test('a count of a part says out of how many; one of the whole planting moves no survival', () => {
    const book = demoBook();
    const survival = () => {
      const row = [...book.rows('Planting results')].find(
        (each) => book.cell('Planting results', each, 'Planting').text === 'Keeper clumps',
      );
      return book.cell('Planting results', row ?? -1, 'Field survival').number;
    };
    const keeper = plantingsFor(book.workbook, 'stood', april).find(({ name }) => name === 'Keeper clumps');
    if (keeper === undefined) throw new Error('There are no keepers.');
    const count = (figure: string, of: string) =>
      book.workbook.do([noteCommand(keeper, 'stood', { figure, weighed: false, of, on: april })], message('trial'));
    expect(survival()).toBeCloseTo(85, 9);
    expect(count('240', '').refused).toBe(false);
    expect(survival()).toBeCloseTo(85, 9);
    expect(count('30', '40').refused).toBe(false);
    expect(survival()).toBeCloseTo(81, 9);
  });

  test('no more stand than they were counted out of', () => {
    const why = (figure: string, of: string) => countedTooMany(workbook, { figure, of });
    expect(why('50', '40')).toContain('50 are more than the 40');
    expect(why('50', '0')).toContain('more than the 0');
    expect(why('1,250', '999')).toContain('more than the 999');
    for (const [figure, of] of [
      ['40', '40'],
      ['0', '0'],
      ['50', ''],
      ['', '40'],
      ['9', '10'],
    ] as const) {
      expect(why(figure, of)).toBeUndefined();
    }
  });

  test.each(['2 trays', '50%', '1/2', '24.5', '2 crates'])('%s is no amount, counted or weighed', (figure) => {
    const [planting] = plantingsFor(workbook, 'picked', april);
    if (planting === undefined) throw new Error('There are no plantings.');
    const note = (weighed: boolean) =>
      workbook.do([noteCommand(planting, 'picked', { figure, weighed, of: '', on: april })], message('trial'));
    expect(note(false)).toMatchObject({ refused: true, why: expect.stringContaining('write a whole number') });
    if (/[a-z%]/.test(figure)) {
      expect(note(true)).toMatchObject({ refused: true, why: expect.stringContaining('this column wants a mass') });
    }
  });
});

describe('the amount of a job', () => {
  const july = civilDay(2027, 7, 20);

  /** Slots of the jobs of a kind. */
  const jobsCalled = (book: typeof demo, job: string): readonly number[] =>
    [...book.rows('Tasks')].filter((row) => book.cell('Tasks', row, 'Job').text === job);

  test('is weighed where it is picked, counted where it is sown or set out, and not asked of weeding', () => {
    const ask = (job: string) => jobAmount(workbook, jobsCalled(demo, job)[0] ?? -1, july);
    expect(ask('Pick')?.note).toMatchObject({ kind: 'picked', weighed: true });
    expect(ask('Lift and cure')?.note).toMatchObject({ kind: 'picked', weighed: true });
    expect(ask('Sow')?.note).toMatchObject({ kind: 'sown', weighed: false });
    expect(ask('Set out')?.note).toMatchObject({ kind: 'set out', weighed: false });
    expect(ask('Weed')).toBeUndefined();
    expect(ask('Water')).toBeUndefined();
  });

  test('is a line of the records of the day it was done, and found again there', () => {
    const book = demoBook();
    const slot = jobsCalled(book, 'Pick').find((row) => Number(book.value('Tasks', row, 'On')) > july) ?? -1;
    const row = rowId(book.workbook, 'tasks', slot);
    const [done] = dayOf(book.workbook, july, ALL)?.week.jobs ?? [];
    if (done === undefined) throw new Error('There are no jobs.');
    book.workbook.do(tickCommands({ ...done, row, done: false }, july), message('trial'));
    const before = jobAmount(book.workbook, slot, july + 3);
    if (before === undefined) throw new Error('A picking has an amount.');
    expect([before.on, before.noted.length]).toEqual([july, 0]);
    const picked = () => {
      const of = [...book.rows('Planting results')].find(
        (each) => book.cell('Planting results', each, 'Planting').text === before.planting.name,
      );
      return of === undefined ? 0 : (book.cell('Planting results', of, 'Picked').number ?? 0);
    };
    const sofar = picked();
    const typed = { figure: '7', weighed: true, of: '', on: before.on };
    expect(book.workbook.do([noteCommand(before.planting, before.note.kind, typed)], message('trial')).refused).toBe(
      false,
    );
    expect(picked()).toBeCloseTo(sofar + 7, 6);
    const after = jobAmount(book.workbook, slot, july + 3);
    expect(after?.noted.map(({ column }) => column)).toEqual(['amount']);
    const record = rowWithId(book.workbook, 'records', after?.noted[0]?.row ?? '') ?? -1;
    expect(book.cell('Records', record, 'Amount').number).toBeCloseTo(7, 9);
  });
});

describe('a photo of a job', () => {
  const of = { workbook: 'r1', season: 2027, job: 'weed-1', past: true };

  test('is of one workbook and one season: the same row of the next is another job', () => {
    const keys = [of, { ...of, workbook: 'r2' }, { ...of, season: 2028 }, { ...of, job: 'weed-2' }].map(photoKey);
    expect(new Set(keys).size).toBe(4);
    expect(photoKey({ ...of, past: false })).toBe(photoKey(of));
    expect(photoKey({ ...of, workbook: undefined })).toBeUndefined();
  });
});
