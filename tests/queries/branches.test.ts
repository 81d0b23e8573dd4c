// Branches of a workbook: kept as transactions on their base, compared with it, taken over, thrown away. Laws are tried with
// random commands of every kind.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Command,
  compareCells,
  compareTotals,
  compareWeeks,
  keepWork,
  lookIntoBranch,
  lostChanges,
  message,
  openBranch,
  readWorkbookFile,
  rows,
  rowWithId,
  type SheetDeclaration,
  sayChange,
  type Workbook,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { opened } from '../book.ts';
import { type Chances, chances, commandFor } from '../document/any-command.ts';
import { everything, openFarm, shelf, VERSION_2 } from '../document/farm.ts';
import { runs } from '../runs.ts';
import { besideFarm, computed, entered, number, sheet } from '../workbook/small.ts';

const MESSAGE = { code: 'work', parts: {} };
const some = fc.array(chances, { minLength: 1, maxLength: 6 });

/** Does what chance makes, each by itself. */
function work(workbook: Workbook, sequence: readonly Chances[]): void {
  for (const by of sequence) {
    const command = commandFor(workbook, by);
    if (command !== undefined) workbook.do([command], MESSAGE);
  }
}

/** A farm with a branch in which some work was done. */
function branched(before: readonly Chances[], inBranch: readonly Chances[]): Workbook {
  const workbook = openFarm();
  work(workbook, before);
  workbook.do([{ command: 'add branch', branch: 'other', name: 'Other' }], MESSAGE);
  const opened = openBranch(workbook, 'other');
  if (opened === undefined) throw new Error('no branch');
  work(opened, inBranch);
  keepWork(workbook, 'other', opened);
  return workbook;
}

function idOf(workbook: Workbook, sheet: string, at: number): string {
  return workbook.document.rowIdOf(sheet, rows(workbook, sheet)[at] ?? 0) ?? '';
}

function length(workbook: Workbook, entry: string): Command {
  return { command: 'set cell', sheet: 'plantings', row: idOf(workbook, 'plantings', 0), column: 'length', entry };
}

describe('laws', () => {
  test('a workbook differs from itself and from a fresh branch in nothing', () => {
    fc.assert(
      fc.property(some, (sequence) => {
        const workbook = openFarm();
        work(workbook, sequence);
        expect(compareCells(workbook, workbook)).toEqual([]);
        expect(compareCells(workbook, workbook.branch())).toEqual([]);
      }),
      { numRuns: runs(12, 1000) },
    );
  });

  test('taking over and undoing it leaves no trace', () => {
    fc.assert(
      fc.property(some, some, fc.nat(), (before, inBranch, by) => {
        const workbook = branched(before, inBranch);
        const start = everything(workbook);
        const all = workbook.document.branches.get('other')?.changes ?? [];
        const one = all[by % Math.max(1, all.length)];
        const changes = by % 3 === 0 || one === undefined ? undefined : [one.id];
        const done = workbook.do([{ command: 'take over', branch: 'other', changes }], MESSAGE);
        expect(done.refused).toBe(false);
        workbook.undo();
        expect(everything(workbook)).toEqual(start);
      }),
      { numRuns: runs(30, 2000) },
    );
  });

  test('a branch that is kept is what it was when it was looked into', () => {
    fc.assert(
      fc.property(some, some, (before, inBranch) => {
        const workbook = branched(before, inBranch);
        const looked = lookIntoBranch(workbook, 'other');
        workbook.do([{ command: 'take over', branch: 'other', changes: undefined }], MESSAGE);
        expect(workbook.document.branches.size).toBe(0);
        if (looked === undefined) throw new Error('no branch');
        expect(compareCells(workbook, looked)).toEqual([]);
      }),
      { numRuns: runs(12, 1000) },
    );
  });

  test('a file keeps branches, and writing what was read gives the same bytes', () => {
    fc.assert(
      fc.property(some, some, (before, inBranch) => {
        const workbook = branched(before, inBranch);
        const text = writeWorkbookFile(workbook.data());
        const read = readWorkbookFile(text, shelf(VERSION_2));
        if (!read.ok) throw new Error(read.why);
        expect(read.notes).toEqual([]);
        expect(writeWorkbookFile(read.data)).toBe(text);
        const again = openFarm(read.data);
        expect(everything(again)).toEqual(everything(workbook));
        const [a, b] = [lookIntoBranch(workbook, 'other'), lookIntoBranch(again, 'other')];
        if (a === undefined || b === undefined) throw new Error('no branch');
        expect(compareCells(a, b)).toEqual([]);
      }),
      { numRuns: runs(12, 1000) },
    );
  });
});

test('a branch follows the plan where it did not change it itself', () => {
  const workbook = openFarm();
  workbook.do([{ command: 'add branch', branch: 'b', name: 'Shorter' }], MESSAGE);
  const opened = openBranch(workbook, 'b');
  opened?.do([length(workbook, '20 ft')], MESSAGE);
  if (opened !== undefined) keepWork(workbook, 'b', opened);
  const row = idOf(workbook, 'plantings', 0);
  const spacing: Command = { command: 'set cell', sheet: 'plantings', row, column: 'spacing', entry: '1 ft' };
  workbook.do([length(workbook, '48 ft'), spacing], MESSAGE);
  const looked = lookIntoBranch(workbook, 'b');
  if (looked === undefined) throw new Error('no branch');
  const [difference] = compareCells(workbook, looked, { typedOnly: true });
  // The spacing is the plan's in both: only the length is the branch's own.
  expect(difference?.rows).toEqual([
    {
      row: idOf(workbook, 'plantings', 0),
      rowName: 'P1',
      there: 'both',
      cells: [{ column: 'length', columnName: 'Length', typed: true, base: '48 ft', branch: '20 ft' }],
    },
  ]);
  const total = {
    id: 's',
    name: 'Stations',
    figure: { figure: 'formula', formula: "SUM('#plantings'[#plantings/stations])" },
  } as const;
  const [compared] = compareTotals(workbook, [looked], [total]);
  // 48 places in the plan, 20 in the branch.
  expect(compared?.branches[0]?.difference).toBe(-28);
  expect(compared?.branches[0]?.differenceShown).toBe('−28 stations');
});

test('what a change rests on comes with it, and what rests on nothing of it stays', () => {
  const workbook = openFarm();
  workbook.do([{ command: 'add branch', branch: 'b', name: 'More' }], MESSAGE);
  const opened = openBranch(workbook, 'b');
  if (opened === undefined) throw new Error('no branch');
  opened.do([{ command: 'insert row', sheet: 'beds', entries: { bed: 'B9', length: '60 ft' } }], MESSAGE);
  opened.do([length(workbook, '25 ft')], MESSAGE);
  const planting = idOf(workbook, 'plantings', 1);
  opened.do([{ command: 'set cell', sheet: 'plantings', row: planting, column: 'bed', entry: 'B9' }], MESSAGE);
  keepWork(workbook, 'b', opened);
  const last = workbook.document.branches.get('b')?.changes[2]?.id ?? '';
  workbook.do([{ command: 'take over', branch: 'b', changes: [last] }], MESSAGE);
  expect(rows(workbook, 'beds').length).toBe(3);
  const left = workbook.document.branches.get('b')?.changes ?? [];
  expect(left.map((change) => sayChange(workbook, change))).toEqual(['work (P1)']);
  expect(rowWithId(workbook, 'plantings', planting)).toBeDefined();
});

test('a change of a row or sheet that was removed after it still says where it was', () => {
  const workbook = openFarm();
  workbook.do([{ command: 'add branch', branch: 'b', name: 'Less' }], MESSAGE);
  const opened = openBranch(workbook, 'b');
  if (opened === undefined) throw new Error('no branch');
  const type = (command: Command, column: string, entry: string): void => {
    expect(opened.do([command], message('type cell', { column, entry })).refused).toBe(false);
  };
  const done = (command: Command): void => {
    expect(opened.do([command], message('add row', { row: 'one', sheet: 'it' })).refused).toBe(false);
  };
  const said = (): readonly string[] => {
    keepWork(workbook, 'b', opened);
    const book = lookIntoBranch(workbook, 'b');
    const changes = workbook.document.branches.get('b')?.changes ?? [];
    return changes.flatMap((change) =>
      change.message.code === 'type cell' && book !== undefined ? [sayChange(book, change)] : [],
    );
  };
  type(length(workbook, '9 ft'), 'Length', '9 ft');
  const plainText = { group: '', note: '', formula: '', role: 'entered', type: { type: 'text' } } as const;
  const own: SheetDeclaration = {
    id: 'to-do',
    name: 'To do',
    question: 'Own',
    about: '',
    rows: { from: 'entry' },
    key: 'what',
    columns: [
      { ...plainText, id: 'what', name: 'What' },
      { ...plainText, id: 'who', name: 'Who' },
    ],
    checks: [],
    cautions: [],
  };
  done({ command: 'put sheet', sheet: own });
  done({ command: 'insert row', sheet: own.id, entries: { what: 'Mow' } });
  const row = idOf(opened, own.id, 0);
  type({ command: 'set cell', sheet: own.id, row, column: 'who', entry: 'Ada' }, 'Who', 'Ada');
  expect(said()).toEqual(['Length: 9 ft (P1)', 'Who: Ada (Mow)']);
  done({ command: 'remove rows', sheet: 'plantings', rows: [idOf(workbook, 'plantings', 0)] });
  done({ command: 'remove rows', sheet: own.id, rows: [row] });
  expect(said()).toEqual(['Length: 9 ft (P1)', 'Who: Ada (Mow)']);
  done({ command: 'remove sheet', sheet: own.id });
  expect(said()).toEqual(['Length: 9 ft (P1)', 'Who: Ada (in a sheet that was removed)']);
});

test('names are told apart, and a branch that is gone is refused', () => {
  const workbook = openFarm();
  const add = (branch: string, name: string) => workbook.do([{ command: 'add branch', branch, name }], MESSAGE);
  expect(add('a', 'Early').refused).toBe(false);
  expect(add('b', ' early')).toMatchObject({ why: 'There is a branch called “early” already: choose another name.' });
  expect(add('b', ' ')).toMatchObject({ why: 'A branch needs a name: write one.' });
  expect(workbook.do([{ command: 'take over', branch: 'c', changes: undefined }], MESSAGE)).toMatchObject({
    why: 'There is no such branch any more.',
  });
  expect(workbook.do([{ command: 'take over', branch: 'a', changes: ['x'] }], MESSAGE)).toMatchObject({
    why: 'Early has no such change any more: look at its list again.',
  });
});

describe('a change of a row that the plan has taken out since', () => {
  /** Lengths of two plantings changed in a branch, of one of which the plan knows nothing any more. */
  function half(removed: readonly number[]): Workbook {
    const workbook = openFarm();
    workbook.do([{ command: 'add branch', branch: 'b', name: 'Wide' }], MESSAGE);
    const opened = openBranch(workbook, 'b');
    if (opened === undefined) throw new Error('no branch');
    const of = (at: number, entry: string): Command => {
      return {
        command: 'set cell',
        sheet: 'plantings',
        row: idOf(workbook, 'plantings', at),
        column: 'length',
        entry,
      };
    };
    opened.do([of(0, '9 ft')], MESSAGE);
    opened.do([of(0, '8 ft'), of(1, '8 ft')], MESSAGE);
    keepWork(workbook, 'b', opened);
    const gone = removed.map((at) => idOf(workbook, 'plantings', at));
    const command: Command = { command: 'remove rows', sheet: 'plantings', rows: gone };
    workbook.do([command], MESSAGE);
    return workbook;
  }
  const changes = (workbook: Workbook) => workbook.document.branches.get('b')?.changes ?? [];
  const take = (workbook: Workbook, at: number) =>
    workbook.do([{ command: 'take over', branch: 'b', changes: [changes(workbook)[at]?.id ?? ''] }], MESSAGE);

  test('is told, and is not taken over as if something came of it', () => {
    const workbook = half([0]);
    const [first, second] = changes(workbook);
    expect([...lostChanges(workbook, changes(workbook))]).toEqual([
      [first?.id, 'all'],
      [second?.id, 'some'],
    ]);
    const steps = workbook.history.done.length;
    expect(take(workbook, 0)).toMatchObject({
      refused: true,
      why: expect.stringContaining('The plan has taken out since'),
    });
    expect([changes(workbook).length, workbook.history.done.length]).toEqual([2, steps]);
    expect(take(workbook, 1)).toMatchObject({ refused: false });
    workbook.undo();
    workbook.undo();
    expect([...lostChanges(workbook, changes(workbook))]).toEqual([]);
    expect(take(workbook, 0).refused).toBe(false);
  });

  test('is lost with its sheet too, and not where the branch brought the row itself', () => {
    const workbook = openFarm();
    workbook.do([{ command: 'add sheet', name: 'Own', about: '', rows: { from: 'entry' } }], MESSAGE);
    workbook.do([{ command: 'add branch', branch: 'b', name: 'Wide' }], MESSAGE);
    const own = workbook.document.program.sheets.at(-1)?.id ?? '';
    const opened = openBranch(workbook, 'b');
    if (opened === undefined) throw new Error('no branch');
    const column = workbook.document.program.sheet(own)?.columns[0]?.id ?? '';
    const inserted = opened.do([{ command: 'insert row', sheet: own, entries: { [column]: 'none' } }], MESSAGE);
    const row = inserted.refused ? '' : (inserted.inserted[0] ?? '');
    opened.do([{ command: 'set cell', sheet: own, row, column, entry: 'one' }], MESSAGE);
    keepWork(workbook, 'b', opened);
    expect([...lostChanges(workbook, changes(workbook))]).toEqual([]);
    workbook.do([{ command: 'remove sheet', sheet: own }], MESSAGE);
    expect([...lostChanges(workbook, changes(workbook)).values()]).toEqual(['all', 'all']);
  });
});

test('a drag in a branch is one step of the workbook', () => {
  const workbook = openFarm();
  workbook.do([{ command: 'add branch', branch: 'b', name: 'Drag' }], MESSAGE);
  const steps = workbook.history.done.length;
  const opened = openBranch(workbook, 'b');
  if (opened === undefined) throw new Error('no branch');
  for (const entry of ['20 ft', '21 ft', '22 ft']) {
    opened.do([length(workbook, entry)], MESSAGE);
    keepWork(workbook, 'b', opened);
  }
  expect(workbook.history.done.length).toBe(steps + 1);
  expect(workbook.history.done.at(-1)?.done.operations.length).toBe(1);
});

test('amounts by week stand side by side', () => {
  const workbook = openFarm();
  const branch = workbook.branch();
  branch.do([length(workbook, '60 ft')], MESSAGE);
  const figure = { id: 'l', name: 'Length', sheet: 'plantings', date: 'sown', column: 'length' };
  const [compared] = compareWeeks([workbook, branch], [figure]);
  // P1, sown 1 Feb 2027, of 30 ft, is 60 ft in the branch.
  expect(compared?.weeks[0]?.values.map((value) => Math.round((value ?? 0) / 0.3048))).toEqual([30, 60]);
});

test('what the sheet shows as nothing is nothing beside another plan, and a small figure stays one', () => {
  // Three parts less the whole leave dust in one plan, other dust in the next.
  const left = (parts: string): Workbook => {
    const formula = `(${parts} - 0.3) * 1 lb`;
    const columns = [
      entered('Day', { type: 'date' }),
      { ...computed('Left', number('lb', 'kg'), formula), decimals: 1 },
    ];
    return opened(besideFarm([sheet('Parts', { columns })], { Parts: [{ Day: '2027-02-01' }] })).workbook;
  };
  const total = {
    id: 'l',
    name: 'Left',
    figure: { figure: 'formula', formula: "SUM('#parts'[#parts/left])" },
    of: { sheet: 'parts', column: 'left' },
  } as const;
  const weekly = { id: 'l', name: 'Left', sheet: 'parts', date: 'day', column: 'left' };
  const plan = left('0.1 + 0.2');
  const [compared] = compareTotals(plan, [left('0.1 * 3'), left('0.31')], [total]);
  expect(compared?.base).toMatchObject({ value: 0, shown: '0 lb' });
  expect(compared?.branches[0]).toMatchObject({ value: 0, shown: '0 lb', differenceShown: '' });
  expect(compared?.branches[1]?.differenceShown).toMatch(/^\+0\.0\d+ lb$/);
  const [weeks] = compareWeeks([plan, left('0.31')], [weekly]);
  expect(weeks?.weeks[0]?.values[0]).toBe(0);
  expect(weeks?.weeks[0]?.values[1]).toBeGreaterThan(0);
});
