// The laws of documents and transactions, tried with random commands of every kind: what is done and taken back leaves no
// trace; composed and squashed transactions do what their parts did; a transaction that went through JSON does the same on
// a copy; after any work with undo, branches, saving, opening and another template, a workbook is to the last bit what a
// fresh one made of its file is.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { oneByOne } from '../../engine/document/transaction.ts';
import {
  type Command,
  compose,
  type DocumentData,
  readWorkbookFile,
  squash,
  type Transaction,
  type Workbook,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { runs } from '../runs.ts';
import { type Chances, cellCommandFor, chances, commandFor } from './any-command.ts';
import { BEGINNING, BROUGHT_BACK, everything, openFarm, shelf, VERSION_2 } from './farm.ts';

const MESSAGE = { code: 'work', parts: {} };

/** Does the commands that chance makes, each by itself; gives the transactions that came of them. */
function work(workbook: Workbook, sequence: readonly Chances[], make = commandFor): Transaction[] {
  return sequence.flatMap((by) => {
    const command = make(workbook, by);
    const done = command === undefined ? undefined : workbook.do([command], MESSAGE);
    return done === undefined || done.refused || done.transaction.operations.length === 0 ? [] : [done.transaction];
  });
}

const some = fc.array(chances, { minLength: 1, maxLength: 8 });

describe('a transaction', () => {
  test('done and taken back leaves no trace, and done again it stands as before', () => {
    fc.assert(
      fc.property(some, chances, fc.constantFrom(BEGINNING, BROUGHT_BACK), (before, by, data) => {
        const workbook = openFarm(data);
        work(workbook, before);
        const start = everything(workbook);
        if (work(workbook, [by]).length === 0) return;
        const end = everything(workbook);
        workbook.undo();
        expect(everything(workbook)).toEqual(start);
        workbook.redo();
        expect(everything(workbook)).toEqual(end);
      }),
      { numRuns: runs(50, 5000) },
    );
  });

  test('that is refused in its middle leaves no trace', () => {
    const bad: Command = { command: 'set cell', sheet: 'farm', row: 'only', column: 'season', entry: 'banana' };
    fc.assert(
      fc.property(some, some, (before, then) => {
        const workbook = openFarm();
        work(workbook, before);
        const start = everything(workbook);
        const commands = then.flatMap((by) => commandFor(workbook, by) ?? []);
        expect(workbook.do([...commands, bad], MESSAGE).refused).toBe(true);
        expect(everything(workbook)).toEqual(start);
      }),
      { numRuns: runs(25, 2000) },
    );
  });

  test('is plain data: sent as JSON it does the same to a copy', () => {
    fc.assert(
      fc.property(some, (sequence) => {
        const workbook = openFarm();
        const copy = openFarm();
        for (const transaction of work(workbook, sequence))
          copy.receive(JSON.parse(JSON.stringify(transaction)) as Transaction);
        expect(everything(copy)).toEqual(everything(workbook));
      }),
      { numRuns: runs(25, 2000) },
    );
  });

  test('of many rows at once does what it would one by one', () => {
    fc.assert(
      fc.property(some, (sequence) => {
        const workbook = openFarm();
        const copy = openFarm();
        for (const transaction of work(workbook, sequence))
          copy.receive({ ...transaction, operations: transaction.operations.flatMap(oneByOne) });
        expect(everything(copy)).toEqual(everything(workbook));
      }),
      { numRuns: runs(35, 3000) },
    );
  });

  test('composed of several does what they did, whichever were composed first', () => {
    fc.assert(
      fc.property(fc.array(chances, { minLength: 3, maxLength: 3 }), (sequence) => {
        const workbook = openFarm();
        const [a, b, c] = work(workbook, sequence);
        if (a === undefined || b === undefined || c === undefined) return;
        const left = compose(compose(a, b), c);
        expect(left).toEqual(compose(a, compose(b, c)));
        const copy = openFarm();
        copy.receive(left);
        expect(everything(copy)).toEqual(everything(workbook));
      }),
      { numRuns: runs(35, 3000) },
    );
  });

  test('squashed with the next does what both did, and cells written over and over stand in it once', () => {
    fc.assert(
      fc.property(some, fc.array(chances, { minLength: 2, maxLength: 12 }), (before, drag) => {
        const workbook = openFarm();
        const done = [...work(workbook, before), ...work(workbook, drag, cellCommandFor)];
        const [first, ...rest] = done;
        if (first === undefined) return;
        const squashed = rest.reduce(squash, first);
        const copy = openFarm();
        copy.receive(squashed);
        expect(everything(copy)).toEqual(everything(workbook));
        const cells = squashed.operations
          .slice(squashed.operations.findLastIndex(({ op }) => op !== 'cell') + 1)
          .map((one) => (one.op === 'cell' ? `${one.sheet}/${one.row}/${one.column}` : ''));
        expect(new Set(cells).size).toBe(cells.length);
      }),
      { numRuns: runs(25, 2000) },
    );
  });
});

/** The document that a file of this workbook gives. */
function saved(workbook: Workbook): DocumentData {
  const read = readWorkbookFile(writeWorkbookFile(workbook.data()), shelf(VERSION_2));
  if (!read.ok) throw new Error(read.why);
  expect(read.notes).toEqual([]);
  return read.data;
}

/** Commands, steps back and on, branches, saving and opening with the history kept. */
function randomWork(start: Workbook, sequence: readonly Chances[]): Workbook {
  let workbook = start;
  for (const by of sequence) {
    const turn = by.what % 100;
    if (turn < 12) workbook.undo();
    else if (turn < 18) workbook.redo();
    else if (turn < 22) workbook = openFarm(saved(workbook), 'anna', workbook.history);
    else if (turn < 25) workbook = workbook.branch();
    else work(workbook, [{ ...by, what: by.what + by.value }]);
  }
  return workbook;
}

test('after any work a workbook is to the last bit what a fresh one made of its file is', () => {
  fc.assert(
    fc.property(fc.array(chances, { minLength: 1, maxLength: 24 }), (sequence) => {
      const workbook = randomWork(openFarm(), sequence);
      expect(everything(openFarm(saved(workbook)))).toEqual(everything(workbook));
    }),
    { numRuns: runs(50, 10_000) },
  );
});

test('everything taken back after a save leads to the beginning, and everything done again to the end', () => {
  fc.assert(
    fc.property(fc.array(chances, { minLength: 1, maxLength: 16 }), (sequence) => {
      const first = openFarm();
      const start = everything(first);
      work(first, sequence);
      const workbook = openFarm(saved(first), 'anna', first.history);
      const end = everything(workbook);
      while (workbook.undo() !== undefined);
      expect(everything(workbook)).toEqual(start);
      while (workbook.redo() !== undefined);
      expect(everything(workbook)).toEqual(end);
    }),
    { numRuns: runs(20, 2000) },
  );
});

test('a branch and the workbook it came from know nothing of each other’s changes', () => {
  fc.assert(
    fc.property(some, some, some, (before, here, there) => {
      const workbook = openFarm();
      work(workbook, before);
      const start = everything(workbook);
      const branch = workbook.branch();
      expect(everything(branch)).toEqual(start);
      work(branch, there);
      const branched = everything(branch);
      expect(everything(workbook)).toEqual(start);
      work(workbook, here);
      expect(everything(branch)).toEqual(branched);
      expect(everything(openFarm(saved(workbook)))).toEqual(everything(workbook));
    }),
    { numRuns: runs(25, 2000) },
  );
});
