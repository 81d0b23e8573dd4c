// The random tables that formulas read: typed columns of every kind, some sorted; a small second table; and a sheet of
// criteria for the database functions. The same figures stand in both engines.

import type { Kind } from './kind.ts';
import type { Random } from './random.ts';

export const MAIN = 'Trial';
export const OTHER = 'Steps';
/** Its columns are named like those of the main table that they set conditions on. */
export const WANTED = 'Wanted';
export const WANTED_COLUMNS = ['Amount', 'Count', 'Name'] as const satisfies readonly ColumnName[];

export const COLUMNS = {
  Amount: { table: MAIN, kind: 'number' },
  Count: { table: MAIN, kind: 'number' },
  Rate: { table: MAIN, kind: 'number' },
  Share: { table: MAIN, kind: 'number' },
  Rising: { table: MAIN, kind: 'number' },
  Falling: { table: MAIN, kind: 'number' },
  Paid: { table: MAIN, kind: 'number' },
  Name: { table: MAIN, kind: 'text' },
  Note: { table: MAIN, kind: 'text' },
  Digits: { table: MAIN, kind: 'text' },
  Good: { table: MAIN, kind: 'yesno' },
  Late: { table: MAIN, kind: 'yesno' },
  Sown: { table: MAIN, kind: 'date' },
  Ready: { table: MAIN, kind: 'date' },
  Due: { table: MAIN, kind: 'date' },
  Step: { table: OTHER, kind: 'number' },
  Price: { table: OTHER, kind: 'number' },
  Label: { table: OTHER, kind: 'text' },
} as const satisfies Record<string, { readonly table: string; readonly kind: Kind }>;

export type ColumnName = keyof typeof COLUMNS;
export const COLUMN_NAMES = Object.keys(COLUMNS).filter((name): name is ColumnName => name in COLUMNS);

const ROWS = 9;
const STEPS = 5;
export const WANTED_ROWS = 2;

export function columnsOf(table: string): readonly ColumnName[] {
  return COLUMN_NAMES.filter((name) => COLUMNS[name].table === table);
}

export function lastRow(column: ColumnName): number {
  return COLUMNS[column].table === MAIN ? ROWS : STEPS;
}

/** The peer's column letter. */
export function letterOf(column: ColumnName): string {
  return String.fromCharCode(65 + columnsOf(COLUMNS[column].table).indexOf(column));
}

/** Dates are serials of the peer: days since 1899-12-30. */
export type Cell = number | string | boolean;
export interface Tables {
  readonly columns: Readonly<Record<ColumnName, readonly Cell[]>>;
  /** Conditions as text, a cell for each of WANTED_COLUMNS; '' for none. */
  readonly wanted: readonly (readonly string[])[];
}

const NAMES = ['Amber', 'amber', 'Red', 'Long red', 'Storm', 'Winter white', 'Ox-heart', 'Zebra', 'B 12', 'Äpfel'];
const NOTES = ['early', 'late', 'late, wet', 'a b a b', 'Row  two', 'x', 'Sow "thick"', '100%', 'm²', 'the end.'];
const DIGITS = ['12', '3.5', '-7', '0.25', '1E3', '85%', '40', '007', '0', 'none', '12 kg', '2027-03-15'];
/** 1996-01-01 to 2031-12-31. */
const [FIRST_DAY, LAST_DAY] = [35_065, 48_213];

function column(size: number, make: () => Cell): readonly Cell[] {
  return Array.from({ length: size }, make).map((cell) => (Object.is(cell, -0) ? 0 : cell));
}

/** A figure as people type them: whole, a few decimals, now and then with all the digits a double has. */
export function figure(random: Random): number {
  const size = 10 ** random.whole(0, 4);
  const raw = (random.next() * 2 - 0.7) * size;
  const decimals = random.pick([0, 0, 1, 2, 2, 15]);
  return Number(raw.toFixed(decimals)) + 0;
}

/** A condition on a column of numbers, or none. */
function criterion(random: Random, column: readonly Cell[]): string {
  return random.chance(0.4) ? '' : `${random.pick(['>', '<', '>=', '<=', '<>', '='])}${random.pick(column)}`;
}

export function randomTables(random: Random): Tables {
  const main = (make: () => Cell): readonly Cell[] => column(ROWS, make);
  const step = (make: () => Cell): readonly Cell[] => column(STEPS, make);
  const sorted = (list: readonly Cell[], sign: number): readonly Cell[] =>
    [...list].sort((a, b) => sign * (Number(a) - Number(b)));
  const columns = {
    Amount: main(() => figure(random)),
    Count: main(() => random.whole(0, 12)),
    Rate: main(() => Number((random.next() * 20 + 0.05).toFixed(random.whole(1, 4)))),
    Share: main(() => Number(random.next().toFixed(random.pick([1, 2, 4])))),
    Rising: sorted(
      main(() => random.whole(-20, 60) / 2),
      1,
    ),
    Falling: sorted(
      main(() => random.whole(-20, 60) / 2),
      -1,
    ),
    Paid: main(() => figure(random)).map((paid, at) =>
      at === 0 ? -Math.abs(Number(paid)) - 50 : Math.abs(Number(paid)),
    ),
    Name: main(() => random.pick(NAMES)),
    Note: main(() => random.pick(NOTES)),
    Digits: main(() => random.pick(DIGITS)),
    Good: main(() => random.chance(0.6)),
    Late: main(() => random.chance(0.3)),
    Sown: main(() => random.whole(FIRST_DAY, LAST_DAY)),
    Ready: main(() => random.whole(FIRST_DAY, LAST_DAY)),
    // The day of each payment: the first is the earliest.
    Due: main(() => random.whole(FIRST_DAY + 1, FIRST_DAY + 1500)).map((day, at) => (at === 0 ? FIRST_DAY : day)),
    Step: sorted(
      step(() => random.whole(0, 40)),
      1,
    ),
    Price: step(() => random.whole(10, 990) / 100),
    Label: step(() => random.pick(NAMES)),
  };
  const wanted = Array.from({ length: WANTED_ROWS }, () => [
    criterion(random, columns.Amount),
    criterion(random, columns.Count),
    random.chance(0.6) ? '' : random.pick(['Amber', 'red', 'Storm', '<>Zebra']),
  ]);
  return { columns, wanted };
}
