// Restoring: after any work, a workbook put back to an earlier state holds what it held then, to the last bit, and one step back
// leads to what it held in between. The day is today's whichever state is restored.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { schemaDifferences } from '../../engine/document/schema-differences.ts';
import { applySchema, isSchemaOperation } from '../../engine/document/schema-operations.ts';
import {
  compareBooks,
  type DocumentData,
  readWorkbookFile,
  restoring,
  type Workbook,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { runs } from '../runs.ts';
import { type Chances, chances, commandFor } from './any-command.ts';
import { openFarm, shelf, everythingByAmount as state, VERSION_2 } from './farm.ts';

const MESSAGE = { code: 'work', parts: {} };
const some = fc.array(chances, { maxLength: 12 });

function work(workbook: Workbook, sequence: readonly Chances[]): void {
  for (const by of sequence) {
    const command = commandFor(workbook, by);
    if (command !== undefined) workbook.do([command], MESSAGE);
    if (by.what % 11 === 0) workbook.undo();
  }
}

/** As a version is kept: as the text of a file. */
function kept(workbook: Workbook): DocumentData {
  const read = readWorkbookFile(writeWorkbookFile(workbook.data()), shelf(VERSION_2));
  if (!read.ok) throw new Error(read.why);
  return read.data;
}

test('what was kept is there again, and the state in between one step back', () => {
  fc.assert(
    fc.property(some, some, (before, after) => {
      const workbook = openFarm();
      work(workbook, before);
      const data = kept(workbook);
      work(workbook, after);
      const between = state(workbook);
      const { today } = workbook.data();
      const done = workbook.do([restoring(data)], MESSAGE);
      expect(done.refused).toBe(false);
      const then = openFarm({ ...data, today });
      expect(state(workbook)).toEqual(state(then));
      expect(Object.values(compareBooks(then, workbook)).flat()).toEqual([]);
      if (done.refused || done.transaction.operations.length === 0) return;
      workbook.undo();
      expect(state(workbook)).toEqual(between);
    }),
    { numRuns: runs(25, 4000) },
  );
});

test('rows that link to each other go in one step, one by one, and come back with their links', () => {
  const workbook = openFarm();
  const type = { type: 'link', sheet: 'beds' } as const;
  workbook.do([{ command: 'add column', sheet: 'beds', name: 'Beside', type }], MESSAGE);
  const data = kept(workbook);
  const column = Object.keys(workbook.data().own.beds?.columns ?? {})[0] ?? '';
  const [one, two, three] = [workbook.newId(), workbook.newId(), workbook.newId()];
  const beside = (row: string, other: string) => ({ row, cells: [`Bed ${row}`, { row: other }] });
  const rows = [beside(one, three), beside(two, one), beside(three, two)];
  workbook.do([{ command: 'put rows', sheet: 'beds', columns: ['bed', column], rows }], MESSAGE);
  const between = state(workbook);
  expect(between.file).toContain(`{"row":"${three}"}`);
  workbook.do([restoring(data)], MESSAGE);
  expect(state(workbook).file).not.toContain(`{"row":"${three}"}`);
  workbook.undo();
  expect(state(workbook)).toEqual(between);
});

test('restoring the present changes nothing', () => {
  fc.assert(
    fc.property(some, (before) => {
      const workbook = openFarm();
      work(workbook, before);
      const done = workbook.do([restoring(kept(workbook))], MESSAGE);
      expect(done).toMatchObject({ refused: false, transaction: { operations: [] } });
    }),
    { numRuns: runs(15, 1000) },
  );
});

test('between any two states of the sheets lie operations that lead from one to the other', () => {
  fc.assert(
    fc.property(some, some, (one, other) => {
      const [from, to] = [one, other].map((sequence) => {
        const workbook = openFarm();
        work(workbook, sequence);
        return workbook.data().own;
      });
      if (from === undefined || to === undefined) return;
      let state = { own: from, template: VERSION_2 };
      for (const operation of schemaDifferences(from, to)) {
        expect(isSchemaOperation(operation)).toBe(true);
        if (isSchemaOperation(operation)) state = applySchema(operation, state, shelf(VERSION_2), () => false) ?? state;
      }
      expect(state.own).toEqual(to);
    }),
    { numRuns: runs(25, 4000) },
  );
});

test('a workbook of another kind, or with other money, is refused', () => {
  const workbook = openFarm();
  const data = workbook.data();
  const other = { ...data, template: { name: 'other', version: 1 } };
  expect(workbook.do([restoring(other)], MESSAGE)).toMatchObject({
    refused: true,
    why: expect.stringMatching(/another kind/),
  });
  const money = { ...data, currency: 'CHF' };
  expect(workbook.do([restoring(money)], MESSAGE)).toMatchObject({
    refused: true,
    why: 'It counts money in CHF, and this workbook in EUR.',
  });
});

test('a total has the bits of a workbook opened anew after rows are moved, and moved back', () => {
  const workbook = openFarm();
  workbook.do([{ command: 'add formula', sheet: 'farm', name: 'All', formula: 'SUM(Plantings[Length])' }], MESSAGE);
  // 30 ft, 25 ft and 10 ft in metres come to another last bit where the third is added first.
  for (const before of ['r6', undefined, 'r7', undefined]) {
    workbook.do([{ command: 'move rows', sheet: 'plantings', rows: ['r8'], before }], MESSAGE);
    expect(state(workbook)).toEqual(state(openFarm(workbook.data())));
  }
});
