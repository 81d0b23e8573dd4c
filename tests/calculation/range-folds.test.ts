// Totals of the rows above, below, between and other than what each row asks for: over many rows they are put together from what is
// known of rows side by side, and hold what looking through all rows for each of them gives; extremes, counts and the first to the last
// bit, sums but for the order of adding. However a workbook came to hold its cells, its figures are those of one opened afresh, to the last bit.

import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { Layout } from '../../engine/calculation/layout.ts';
import { RangeFolds } from '../../engine/calculation/plans/range-folds.ts';
import { rowId, rows } from '../../engine/index.ts';
import { compareNumbers } from '../../engine/values/tolerance.ts';
import { type Book, opened, type RowEntries } from '../book.ts';
import { runs } from '../runs.ts';
import { besideFarm, computed, entered, plain, sheet } from '../workbook/small.ts';
import { emptyFrame } from './frames.ts';

const TEXT = { type: 'text' } as const;

interface Lot {
  readonly Of: string;
  readonly Kind: string;
  readonly Day: number;
  /** None is blank, and one below nought is a fault. */
  readonly Amount: number | undefined;
}

interface Question {
  readonly Of: string;
  readonly Kind: string;
  readonly At: number;
}

type Takes = (lot: Lot, question: Question) => boolean;

const [below, above] = [
  (lot: Lot, { At }: Question) => compareNumbers(lot.Day, At) < 0,
  (lot: Lot, { At }: Question) => compareNumbers(lot.Day, At) > 0,
];
const other = (lot: Lot, { At }: Question): boolean => compareNumbers(lot.Day, At) !== 0;
const own = (lot: Lot, { Of }: Question): boolean => lot.Of === Of;

const CONDITIONS: Readonly<Record<string, readonly [formula: string, takes: Takes]>> = {
  below: ['Lots[Day]; "<" & [At]', below],
  above: ['Lots[Day]; ">" & [At]', above],
  between: [
    'Lots[Day]; ">" & [At]; Lots[Day]; "<=" & [At] + 4',
    (lot, question) => above(lot, question) && compareNumbers(lot.Day, question.At + 4) <= 0,
  ],
  'own above': ['Lots[Of]; [Of]; Lots[Day]; ">" & [At]', (lot, question) => own(lot, question) && above(lot, question)],
  'another day': ['Lots[Day]; "<>" & [At]', other],
  'another kind': ['Lots[Kind]; "<>" & [Kind]', (lot, { Kind }) => lot.Kind.toLowerCase() !== Kind.toLowerCase()],
  'kind before': ['Lots[Kind]; "<" & [Kind]', (lot, { Kind }) => lot.Kind.toLowerCase() < Kind.toLowerCase()],
  'kind up to': ['Lots[Kind]; "<=" & [Kind]', (lot, { Kind }) => lot.Kind.toLowerCase() <= Kind.toLowerCase()],
  'own of a kind behind': [
    'Lots[Of]; [Of]; Lots[Kind]; ">" & [Kind]',
    (lot, question) => own(lot, question) && lot.Kind.toLowerCase() > question.Kind.toLowerCase(),
  ],
  'kind from it on': ['Lots[Kind]; ">=" & [Kind]', (lot, { Kind }) => lot.Kind.toLowerCase() >= Kind.toLowerCase()],
  'own of another kind': [
    'Lots[Of]; [Of]; Lots[Kind]; "<>" & [Kind]',
    (lot, question) => own(lot, question) && lot.Kind.toLowerCase() !== question.Kind.toLowerCase(),
  ],
  'another day and kind': [
    'Lots[Day]; "<>" & [At]; Lots[Kind]; "<>" & [Kind]',
    (lot, question) => other(lot, question) && lot.Kind.toLowerCase() !== question.Kind.toLowerCase(),
  ],
  'above of another kind': [
    'Lots[Day]; ">" & [At]; Lots[Kind]; "<>" & [Kind]',
    (lot, question) => above(lot, question) && lot.Kind.toLowerCase() !== question.Kind.toLowerCase(),
  ],
  'own on another day of a kind from it on': [
    'Lots[Of]; [Of]; Lots[Day]; "<>" & [At]; Lots[Kind]; ">=" & [Kind]',
    (lot, question) =>
      own(lot, question) && other(lot, question) && lot.Kind.toLowerCase() >= question.Kind.toLowerCase(),
  ],
  'some between of another kind': [
    'Lots[Of]; "red"; Lots[Day]; ">=" & [At]; Lots[Day]; "<" & [At] + 4; Lots[Kind]; "<>" & [Kind]',
    (lot, question) =>
      lot.Of === 'red' &&
      !below(lot, question) &&
      compareNumbers(lot.Day, question.At + 4) < 0 &&
      lot.Kind.toLowerCase() !== question.Kind.toLowerCase(),
  ],
  'some of another kind': [
    'Lots[Of]; "red"; Lots[Kind]; "<>" & [Kind]',
    (lot, question) => lot.Of === 'red' && lot.Kind.toLowerCase() !== question.Kind.toLowerCase(),
  ],
};

/** Those of which sums are added in the order of rows, however many rows ask. */
const IN_ROW_ORDER: readonly string[] = [
  'another day and kind',
  'above of another kind',
  'own on another day of a kind from it on',
  'some between of another kind',
];

const FUNCTIONS = ['SUMIFS', 'AVERAGEIFS', 'MINIFS', 'MAXIFS', 'COUNTIFS', 'FIRSTIFS'] as const;
type FunctionName = (typeof FUNCTIONS)[number];

function asked(lots: readonly Lot[], questions: readonly Question[]): Book {
  const given = (row: object): RowEntries =>
    Object.fromEntries(Object.entries(row).filter(([, value]) => value !== undefined));
  const columns = Object.entries(CONDITIONS).flatMap(([name, [condition]]) =>
    FUNCTIONS.map((called) => {
      const values = called === 'COUNTIFS' ? '' : 'Lots[Held]; ';
      return computed(`${called} ${name}`, plain, `IFERROR(${called}(${values}${condition}); -1)`);
    }),
  );
  return opened(
    besideFarm(
      [
        sheet('Lots', {
          columns: [
            entered('Of', TEXT),
            entered('Kind', TEXT),
            entered('Day', plain),
            entered('Amount', plain),
            computed('Held', plain, 'IF([Amount] < 0; 1 / 0; [Amount])'),
          ],
        }),
        sheet('Questions', { columns: [entered('Of', TEXT), entered('Kind', TEXT), entered('At', plain), ...columns] }),
      ],
      { Lots: lots.map(given), Questions: questions.map(given) },
    ),
  );
}

function found(lots: readonly Lot[], question: Question, takes: Takes, called: FunctionName): number | null {
  const met = lots.filter((lot) => takes(lot, question));
  if (called === 'COUNTIFS') return met.length;
  const amounts = met.flatMap(({ Amount }) => Amount ?? []);
  if (called === 'FIRSTIFS') return amounts[0] ?? null;
  if (amounts.some((amount) => amount < 0)) return -1;
  const sum = amounts.reduce((so, amount) => so + amount, 0);
  if (called === 'SUMIFS') return sum;
  if (amounts.length === 0) return called === 'AVERAGEIFS' ? -1 : null;
  if (called === 'AVERAGEIFS') return sum / amounts.length;
  return amounts.reduce((a, b) => (called === 'MINIFS' ? Math.min(a, b) : Math.max(a, b)));
}

function agrees(workbook: Book, lots: readonly Lot[], questions: readonly Question[]): void {
  for (const [name, [, takes]] of Object.entries(CONDITIONS)) {
    for (const called of FUNCTIONS) {
      questions.forEach((question, row) => {
        const value = workbook.value('Questions', row, `${called} ${name}`);
        const right = found(lots, question, takes, called);
        const isAdded = called === 'SUMIFS' || called === 'AVERAGEIFS';
        if (!isAdded || right === null || IN_ROW_ORDER.includes(name))
          expect(value, `${called} ${name} ${row}`).toBe(right);
        else
          expect(Math.abs(Number(value) - right), `${called} ${name} ${row}`).toBeLessThanOrEqual(
            1e-12 * Math.abs(right),
          );
      });
    }
  }
}

/** Every figure of the questions. */
function figures(workbook: Book, count: number): unknown {
  const names = Object.keys(CONDITIONS).flatMap((name) => FUNCTIONS.map((called) => `${called} ${name}`));
  return Array.from({ length: count }, (_, row) => names.map((name) => workbook.value('Questions', row, name)));
}

const of = fc.constantFrom('amber', 'red');
const kind = fc.constantFrom('round', 'Round', 'flat', 'long', 'ROUND');
// Tenths added up and tenths written out differ by dust.
const day = fc.oneof(
  fc.integer({ min: 0, max: 120 }).map((tenths) => tenths / 10),
  fc.integer({ min: 0, max: 40 }).map((tenths) => Array.from({ length: tenths }).reduce((sum: number) => sum + 0.1, 0)),
);
const filled = fc.integer({ min: 1, max: 999 }).map((thousandths) => thousandths / 1000);
const amount = fc.oneof(
  { weight: 40, arbitrary: filled },
  { weight: 3, arbitrary: fc.constant(undefined) },
  { weight: 1, arbitrary: fc.constant(-1) },
);
const lot = fc.record({ Of: of, Kind: kind, Day: day, Amount: amount });
const soundLot = fc.record({ Of: of, Kind: kind, Day: day, Amount: fc.option(filled, { nil: undefined, freq: 20 }) });
const question = fc.record({ Of: of, Kind: kind, At: day });
const lots = fc.oneof(
  fc.array(lot, { minLength: 1, maxLength: 30 }),
  fc.array(soundLot, { minLength: 60, maxLength: 150 }),
);

test('rows hold what looking through all of them gives, and after edits what a workbook opened afresh holds', () => {
  fc.assert(
    fc.property(
      lots,
      fc.array(question, { minLength: 1, maxLength: 20 }),
      fc.array(fc.tuple(fc.nat(), lot), { maxLength: 3 }),
      fc.tuple(fc.nat(), question),
      (given, questions, changes, [which, other]) => {
        const workbook = asked(given, questions);
        agrees(workbook, given, questions);
        const now: Lot[] = [...given];
        for (const [at, { Amount, Day, Kind }] of changes) {
          const row = at % given.length;
          now[row] = { ...(now[row] as Lot), Amount, Day, Kind };
          const entries = { Amount: `${Amount ?? ''}`, Day: `${Day}`, Kind };
          const edits = Object.entries(entries).map(([column, entry]) => {
            return { edit: 'cell', table: 'Lots', row, column, entry } as const;
          });
          expect(workbook.edit(edits, 'Test').refused).toBe(false);
        }
        // The first is another where rows stand in another order.
        const ids = [...rows(workbook.workbook, 'lots')].map((slot) => rowId(workbook.workbook, 'lots', slot));
        const moved = which % ids.length;
        const move = { command: 'move rows', sheet: 'lots', rows: [ids[moved] ?? ''], before: ids[0] } as const;
        expect(workbook.workbook.do([move], { code: 'test', parts: {} }).refused).toBe(false);
        now.unshift(...now.splice(moved, 1));
        agrees(workbook, now, questions);
        // One row that asks by itself.
        const row = which % questions.length;
        const edit = { edit: 'cell', table: 'Questions', row, column: 'At', entry: `${other.At}` } as const;
        expect(workbook.edit([edit], 'Test').refused).toBe(false);
        const asking = questions.map((one, at) => (at === row ? { ...one, At: other.At } : one));
        agrees(workbook, now, asking);
        expect(figures(workbook, asking.length)).toEqual(figures(workbook.reopened(), asking.length));
      },
    ),
    { numRuns: runs(25, 1000) },
  );
});

describe('over thousands of rows', () => {
  const many = fc.sample(soundLot, { numRuns: 2600, seed: 20261130 });
  const questions = fc.sample(question, { numRuns: 40, seed: 7 });

  test('what is put together of blocks is the same', () => {
    const workbook = asked(many, questions);
    agrees(workbook, many, questions);
    const edit = { edit: 'cell', table: 'Lots', row: 1300, column: 'Amount', entry: '0.123' } as const;
    expect(workbook.edit([edit], 'Test').refused).toBe(false);
    const now = many.map((one, at) => (at === 1300 ? { ...one, Amount: 0.123 } : one));
    agrees(workbook, now, questions);
    expect(figures(workbook, questions.length)).toEqual(figures(workbook.reopened(), questions.length));
  });

  test('a fault in a block is passed on by those alone that hold it', () => {
    const now = many.map((one, at) => (at === 1300 ? { ...one, Amount: -1 } : one));
    agrees(asked(now, questions), now, questions);
  });
});

test('rows that differ in two ways from each of many are told without comparing every one with every other', () => {
  const given = fc.sample(soundLot, { numRuns: 400, seed: 5 });
  const workbook = asked(
    given,
    given.map(({ Of, Kind, Day }) => ({ Of, Kind, At: Day })),
  );
  const { texts } = workbook.workbook.document.program.words;
  const compared = [vi.spyOn(texts, 'fold'), vi.spyOn(texts, 'order')];
  const names = ['COUNTIFS another day and kind', 'FIRSTIFS another kind', 'SUMIFS above of another kind'];
  for (const name of names) expect(workbook.value('Questions', 0, name)).not.toBeNull();
  const all = compared.reduce((sum, { mock }) => sum + mock.calls.length, 0);
  expect(all / names.length).toBeLessThan(given.length * 20);
});

test('what stands before and behind the rows that are asked for changes no bit of what comes of them', () => {
  const frame = emptyFrame(new Layout());
  const { none, join, comesTo } = { none: 0, join: (a: number, b: number) => a + b, comesTo: (known: number) => known };
  const row = fc.record({ at: fc.nat({ max: 200 }), amount: fc.double({ min: 0.001, max: 1000, noNaN: true }) });
  type Row = { readonly at: number; readonly amount: number };
  const sumOf = (all: readonly Row[], least: number, most: number): number => {
    const sorted = all.toSorted((a, b) => a.at - b.at);
    const rows = Int32Array.from(sorted, (_, place) => place);
    const group = { rows, values: Float64Array.from(sorted, ({ at }) => at), from: 0, count: rows.length };
    const cells = { values: sorted.map(({ amount }) => amount), states: new Uint8Array(rows.length) };
    const folds = new RangeFolds(() => cells, { none, join, comesTo });
    const from = sorted.findIndex(({ at }) => at >= least);
    const to = sorted.findLastIndex(({ at }) => at <= most) + 1;
    return folds.between(from, to, group, frame, {}).value;
  };
  fc.assert(
    fc.property(
      fc.array(row, { minLength: 50, maxLength: 300 }),
      fc.array(row, { maxLength: 40 }),
      fc.nat({ max: 100 }),
      fc.integer({ min: 100, max: 200 }),
      (given, others, least, most) => {
        const inside = given.filter(({ at }) => at >= least && at <= most);
        fc.pre(inside.length > 0);
        const outside = [...given, ...others].filter(({ at }) => at < least || at > most);
        const sum = sumOf(inside, least, most);
        expect(sumOf([...inside, ...outside], least, most)).toBe(sum);
        expect(Math.abs(sum - inside.reduce((so, { amount }) => so + amount, 0))).toBeLessThanOrEqual(1e-12 * sum);
      },
    ),
    { numRuns: runs(200, 20_000) },
  );
});
