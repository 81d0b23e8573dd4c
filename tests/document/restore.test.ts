// Restoring: after any work, a workbook put back to an earlier state holds what it held then, to the last bit, and one step back
// leads to what it held in between. The day is today's whichever state is restored.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { schemaDifferences } from '../../engine/document/schema-differences.ts';
import { applySchema, isSchemaOperation } from '../../engine/document/schema-operations.ts';
import {
  compareBooks,
  createVocabulary,
  type DocumentData,
  readWorkbookFile,
  toCanonical,
  type Workbook,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { runs } from '../runs.ts';
import { type Chances, chances, commandFor } from './any-command.ts';
import { everything, openFarm, shelf, VERSION_2 } from './farm.ts';

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

const vocabulary = createVocabulary({ currency: 'EUR' });

/** A quantity that waits aside is written in the unit of the day it was put there: what counts is how much it is. */
function state(workbook: Workbook): ReturnType<typeof everything> {
  const { file, shown } = everything(workbook);
  const followed = /\[([-\d.e]+), "([^"]+)", true\]/g;
  const canonical = file.replace(followed, (_, number: string, symbol: string) => {
    const unit = vocabulary.find(symbol);
    return unit === undefined ? `${number} ${symbol}` : String(toCanonical(unit, Number(number)));
  });
  return { file: canonical, shown };
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
      const done = workbook.do([{ command: 'restore', data }], MESSAGE);
      expect(done.refused).toBe(false);
      const then = openFarm({ ...data, today });
      expect(state(workbook)).toEqual(state(then));
      expect(Object.values(compareBooks(then, workbook)).flat()).toEqual([]);
      if (done.refused || done.transaction.operations.length === 0) return;
      workbook.undo();
      expect(state(workbook)).toEqual(between);
    }),
    { numRuns: runs(50, 4000) },
  );
});

test('restoring the present changes nothing', () => {
  fc.assert(
    fc.property(some, (before) => {
      const workbook = openFarm();
      work(workbook, before);
      const done = workbook.do([{ command: 'restore', data: kept(workbook) }], MESSAGE);
      expect(done).toMatchObject({ refused: false, transaction: { operations: [] } });
    }),
    { numRuns: runs(30, 1000) },
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
        if (isSchemaOperation(operation)) state = applySchema(operation, state, shelf(VERSION_2)) ?? state;
      }
      expect(state.own).toEqual(to);
    }),
    { numRuns: runs(50, 4000) },
  );
});

test('a workbook of another kind, or with other money, is refused', () => {
  const workbook = openFarm();
  const data = workbook.data();
  const other = { ...data, template: { name: 'other', version: 1 } };
  expect(workbook.do([{ command: 'restore', data: other }], MESSAGE)).toMatchObject({
    refused: true,
    why: expect.stringMatching(/another kind/),
  });
  const money = { ...data, currency: 'CHF' };
  expect(workbook.do([{ command: 'restore', data: money }], MESSAGE)).toMatchObject({
    refused: true,
    why: 'It counts money in CHF, and this workbook in EUR.',
  });
});
