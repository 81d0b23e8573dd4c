// Branches that are let go: what they held is used for others, and the workbooks that shared it go on as if they had never been.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Workbook } from '../../engine/index.ts';
import { runs } from '../runs.ts';
import { type Chances, chances, commandFor } from './any-command.ts';
import { everything, openFarm } from './farm.ts';

const MESSAGE = { code: 'work', parts: {} };

interface Step {
  readonly line: number;
  readonly act: 'work' | 'branch' | 'release' | 'try';
  readonly by: Chances;
}

const steps: fc.Arbitrary<readonly Step[]> = fc.array(
  fc.record({
    line: fc.nat({ max: 20 }),
    act: fc.oneof(
      { weight: 6, arbitrary: fc.constant('work' as const) },
      { weight: 2, arbitrary: fc.constantFrom('branch' as const, 'release' as const, 'try' as const) },
    ),
    by: chances,
  }),
  { minLength: 10, maxLength: 40 },
);

interface Line {
  readonly workbook: Workbook;
  /** What it held after the last that was done in it. */
  held: string;
}

const holds = (workbook: Workbook): string => JSON.stringify(workbook.data());

function work(workbook: Workbook, by: Chances): void {
  const command = commandFor(workbook, by);
  if (command !== undefined) workbook.do([command], MESSAGE);
}

function take({ line, act, by }: Step, lines: Line[]): void {
  const chosen = lines[line % lines.length];
  if (chosen === undefined) return;
  const { workbook } = chosen;
  switch (act) {
    case 'branch':
      lines.push({ workbook: workbook.branch(), held: chosen.held });
      return;
    case 'release':
      if (chosen === lines[0]) return;
      workbook.release();
      lines.splice(lines.indexOf(chosen), 1);
      return;
    case 'try':
      workbook.onBranch((branch) => {
        work(branch, by);
        branch.settle();
      });
      return;
    case 'work':
      work(workbook, by);
      if (by.value % 2 === 0) workbook.settle();
      chosen.held = holds(workbook);
  }
}

test('whichever branches are made and let go, those that stay hold what they held and are worked out as afresh', () => {
  fc.assert(
    fc.property(steps, (sequence) => {
      const first = openFarm();
      const lines: Line[] = [{ workbook: first, held: holds(first) }];
      for (const step of sequence) take(step, lines);
      for (const { workbook, held } of lines) {
        expect(holds(workbook)).toBe(held);
        expect(everything(workbook)).toEqual(everything(openFarm(workbook.data())));
      }
    }),
    { numRuns: runs(40, 3000) },
  );
});

describe('a branch', () => {
  const farm = (): Workbook => {
    const workbook = openFarm();
    workbook.settle();
    return workbook;
  };
  const lengthen = (workbook: Workbook, entry: string): void => {
    const row = workbook.document.rowIdOf('plantings', 0) ?? '';
    const done = workbook.do([{ command: 'set cell', sheet: 'plantings', row, column: 'length', entry }], MESSAGE);
    expect(done.refused).toBe(false);
  };
  const lengths = ({ document }: Workbook) => {
    const { store, program } = document;
    const sheet = program.sheet('plantings');
    if (sheet === undefined) throw new Error('no plantings');
    return store.column(program.layout.column(sheet.table.id, 'length'));
  };

  test('that is let go leaves its arrays to the next, and its workbook writes without copying again', () => {
    const workbook = farm();
    const before = lengths(workbook).values;
    const branch = workbook.branch();
    lengthen(branch, '11 ft');
    const { values } = lengths(branch);
    expect(values).not.toBe(before);
    branch.release();
    lengthen(workbook, '12 ft');
    expect(lengths(workbook).values).toBe(before);
    const next = workbook.branch();
    lengthen(next, '13 ft');
    expect(lengths(next).values).toBe(values);
  });

  test('that is let go while another is looked at leaves shared what they share', () => {
    const workbook = farm();
    const [one, other] = [workbook.branch(), workbook.branch()];
    one.release();
    const shared = lengths(other).values;
    lengthen(workbook, '12 ft');
    expect(lengths(workbook).values).not.toBe(shared);
    expect(lengths(other).values).toBe(shared);
  });

  test.each([true, false])(
    'whose own branch is still looked at gives nothing back that this one reads: %s',
    (edited) => {
      const workbook = farm();
      const branch = workbook.branch();
      if (edited) lengthen(branch, '11 ft');
      const inner = branch.branch();
      const { values } = lengths(inner);
      const kept = [...values];
      branch.release();
      lengthen(workbook, '12 ft');
      const next = workbook.branch();
      lengthen(next, '13 ft');
      expect(lengths(inner).values).toBe(values);
      expect([...values]).toEqual(kept);
    },
  );

  test('cannot be read once it is let go', () => {
    const branch = farm().branch();
    branch.release();
    expect(() => lengths(branch).values).toThrow(TypeError);
  });

  test('is let go even where the work on it fails', () => {
    const workbook = farm();
    const before = lengths(workbook).values;
    expect(() =>
      workbook.onBranch(() => {
        throw new Error('stop');
      }),
    ).toThrow('stop');
    lengthen(workbook, '12 ft');
    expect(lengths(workbook).values).toBe(before);
  });
});
