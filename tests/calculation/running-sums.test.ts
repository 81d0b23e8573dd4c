// Sums of what was put in before a day, asked for by many rows: as balances week by week they go on where the row before ended, and hold
// what adding up from the beginning for each row gives, to the last bit.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compareNumbers } from '../../engine/values/tolerance.ts';
import { type Book, opened, type RowEntries } from '../book.ts';
import { besideFarm, computed, entered, plain, sheet } from '../workbook/small.ts';

const TEXT = { type: 'text' } as const;

interface Move {
  readonly Of: string;
  readonly Day: number;
  /** None counts as nothing, and one below nought is a fault. */
  readonly Amount: number | undefined;
}

interface Week {
  readonly Of: string | undefined;
  readonly At: number;
}

const CONDITIONS = [
  ['Before', '<', (order: number) => order < 0],
  ['Until', '<=', (order: number) => order <= 0],
  ['After', '>', (order: number) => order > 0],
] as const;

function asked(moves: readonly Move[], weeks: readonly Week[]): Book {
  const given = (row: object): RowEntries =>
    Object.fromEntries(Object.entries(row).filter(([, value]) => value !== undefined));
  const sums = CONDITIONS.map(([name, sign]) =>
    computed(name, plain, `IFERROR(SUMIFS(Moves[Put in]; Moves[Of]; [Of]; Moves[Day]; "${sign}" & [At]); -1)`),
  );
  return opened(
    besideFarm(
      [
        sheet('Moves', {
          columns: [
            entered('Of', TEXT),
            entered('Day', plain),
            entered('Amount', plain),
            computed('Put in', plain, 'IF([Amount] < 0; 1 / 0; [Amount])'),
          ],
        }),
        sheet('Weeks', { columns: [entered('Of', TEXT), entered('At', plain), ...sums] }),
      ],
      { Moves: moves.map(given), Weeks: weeks.map(given) },
    ),
  );
}

function added(moves: readonly Move[], { Of, At }: Week, takes: (order: number) => boolean): number | null {
  if (Of === undefined) return null;
  const met = moves.filter((move) => move.Of === Of && takes(compareNumbers(move.Day, At)));
  const amounts = met.toSorted((a, b) => a.Day - b.Day).flatMap(({ Amount }) => Amount ?? []);
  return amounts.some((amount) => amount < 0) ? -1 : amounts.reduce((sum, amount) => sum + amount, 0);
}

function agrees(workbook: Book, moves: readonly Move[], weeks: readonly Week[]): void {
  for (const [name, , takes] of CONDITIONS) {
    expect(weeks.map((_, row) => workbook.value('Weeks', row, name))).toEqual(
      weeks.map((week) => added(moves, week, takes)),
    );
  }
}

// Tenths added up and tenths written out differ by dust.
const day = fc.oneof(
  fc.integer({ min: 0, max: 20 }).map((tenths) => tenths / 10),
  fc.integer({ min: 0, max: 20 }).map((tenths) => Array.from({ length: tenths }).reduce((sum: number) => sum + 0.1, 0)),
);
const of = fc.constantFrom('amber', 'red', 'white');
const amount = fc.oneof(
  { weight: 20, arbitrary: fc.integer({ min: 1, max: 999 }).map((thousandths) => thousandths / 1000) },
  { weight: 2, arbitrary: fc.constant(undefined) },
  { weight: 1, arbitrary: fc.constant(-1) },
);
const move = fc.record({ Of: of, Day: day, Amount: amount });
const week = fc.record({ Of: fc.option(of, { nil: undefined, freq: 60 }), At: day });

/** What is typed into one of the moves: another amount, day or group. */
const edit = fc.record({
  at: fc.nat({ max: 29 }),
  to: fc.oneof(
    amount.map((Amount) => ({ Amount })),
    day.map((Day) => ({ Day })),
    of.map((Of) => ({ Of })),
  ),
});

test('rows hold the sums up to their days, in whatever order they ask, after edits and after these are taken back', () => {
  fc.assert(
    fc.property(
      fc.array(move, { minLength: 1, maxLength: 30 }),
      fc.array(week, { minLength: 1, maxLength: 60 }),
      fc.boolean(),
      fc.array(edit, { minLength: 1, maxLength: 4 }),
      (moves, weeks, inOrder, edits) => {
        const rows = inOrder ? weeks.toSorted((a, b) => (a.Of ?? '').localeCompare(b.Of ?? '') || a.At - b.At) : weeks;
        const workbook = asked(moves, rows);
        agrees(workbook, moves, rows);
        let now: readonly Move[] = moves;
        for (const { at, to } of edits) {
          const row = at % moves.length;
          for (const [column, value] of Object.entries(to)) {
            const entry = `${value ?? ''}`;
            expect(workbook.edit([{ edit: 'cell', table: 'Moves', row, column, entry }], 'Test').refused).toBe(false);
          }
          now = now.map((one, i) => (i === row ? { ...one, ...to } : one));
          agrees(workbook, now, rows);
        }
        for (const _ of edits) workbook.undo();
        agrees(workbook, moves, rows);
      },
    ),
    { numRuns: 60 },
  );
});

test('a sum too large for a number is none, and the days before it have theirs', () => {
  const moves = [1, 2, 3].map((at) => ({ Of: 'red', Day: at, Amount: 1e308 }));
  const weeks = Array.from({ length: 12 }, (_, at) => ({ Of: 'red', At: at / 2 }));
  const workbook = asked(moves, weeks);
  const before = weeks.map((_, row) => workbook.value('Weeks', row, 'Before'));
  expect(before.slice(0, 5)).toEqual([0, 0, 0, 1e308, 1e308]);
  expect(before.slice(5)).toEqual(Array.from({ length: 7 }, () => null));
});
