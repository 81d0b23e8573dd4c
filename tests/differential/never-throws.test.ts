// A formula that checks never stops the workbook and never gives what is no number: every function, called at random over figures of
// every size, blanks, errors and dates from year 1 to 9999, when the workbook opens and after edits.

import { expect, test } from 'vitest';
import { type ColumnView, SIGNATURES } from '../../engine/index.ts';
import { type Book, type Edit, opened, type WorkbookDeclaration } from '../book.ts';
import { computed, entered, number, plain, sheet } from '../workbook/small.ts';
import { anyCall, anyOperation } from './any-call.ts';
import { type Random, randomFrom, seedOfRun } from './random.ts';

const ROUNDS = 5;
const CALLS_EACH = 2;
const ROWS = 7;
const EDITS = 12;

const FIGURES = ['', '0', '1', '-1', '0.5', '3', '-250', '1e15', '1e300', '-1e300', '1e-300', '5', '12'];
const DAYS = ['', '0001-01-01', '9999-12-31', '1900-02-28', '2027-03-15', '2024-02-29', '1969-12-31'];
const ENTRIES: Readonly<Record<string, readonly string[]>> = {
  Small: FIGURES,
  Huge: FIGURES,
  Length: FIGURES,
  Long: FIGURES,
  Weight: FIGURES,
  Low: ['', '-200 degC', '0', '20', '1e6'],
  Sown: DAYS,
  Far: DAYS,
  Name: ['', 'Amber', 'a', '*?-~[(', '12', '😀', 'x'.repeat(3000)],
  Good: ['', 'yes', 'no'],
};

function randomEntries(random: Random): Record<string, string> {
  return Object.fromEntries(Object.entries(ENTRIES).map(([name, entries]) => [name, random.pick(entries)]));
}

type Start = Pick<WorkbookDeclaration, 'units' | 'rows'>;

function randomStart(random: Random): Start {
  return {
    units: random.chance(0.5) ? 'us' : 'si',
    rows: {
      Wild: Array.from({ length: ROWS }, () => randomEntries(random)),
      Wanted: [{ Small: '>0' }, { Name: 'a' }],
    },
  };
}

/** Columns of all sorts with these formulas beside them, each taking its type from what it gives. */
function wildWorkbook(start: Start, formulas: readonly string[]): Book {
  const wild = sheet('Wild', {
    columns: [
      entered('Small', plain),
      entered('Huge', plain),
      entered('Length', number('ft', 'm')),
      entered('Long', number('in', 'cm')),
      entered('Weight', number('lb', 'kg')),
      entered('Low', { type: 'temperature' }),
      entered('Sown', { type: 'date' }),
      entered('Far', { type: 'date' }),
      entered('Name', { type: 'text' }),
      entered('Good', { type: 'yesno' }),
      computed('Broken', plain, 'IF([Small] > 1; NA(); 1 / [Small])'),
      computed('Counted', plain, 'COUNTIFS(Wild[Small]; [Small])'),
      computed('Lost', { type: 'date' }, 'IF([Good]; [Far] + 30 days)'),
      computed('Missing', { type: 'text' }, 'MID([Name]; [Small]; 2)'),
      computed('Unsure', { type: 'yesno' }, '[Sown] < [Far]'),
      ...formulas.map((formula, at) => ({ ...computed(`f${at}`, { type: 'text' }, formula), inferred: true })),
    ],
  });
  return opened({
    title: 'Wild',
    currency: 'EUR',
    today: 20_700,
    sheets: [
      wild,
      sheet('Wanted', { columns: [entered('Small', { type: 'text' }), entered('Name', { type: 'text' })] }),
    ],
    ...start,
  });
}

/** Cells that hold a number which is none. */
function notNumbers(workbook: Book, columns: readonly ColumnView[]): readonly string[] {
  return [...workbook.rows('Wild')].flatMap((row) =>
    columns
      .filter(({ name }) => {
        const value = workbook.value('Wild', row, name);
        return typeof value === 'number' && !Number.isFinite(value);
      })
      .map(({ formula, name }) => `${name} = ${formula} in row ${row}: ${workbook.value('Wild', row, name)}`),
  );
}

function randomEdit(random: Random, workbook: Book): Edit {
  const rows = workbook.rows('Wild');
  const row = rows[random.whole(0, rows.length - 1)];
  if (row === undefined || random.chance(0.1)) {
    return { edit: 'insert row', table: 'Wild', entries: randomEntries(random) };
  }
  if (random.chance(0.1)) return { edit: 'remove row', table: 'Wild', row };
  const [column, entries] = random.pick(Object.entries(ENTRIES));
  return { edit: 'cell', table: 'Wild', row, column, entry: random.pick(entries) };
}

const seed = seedOfRun();

test(`every function over whatever stands in the cells, seed ${seed}`, { timeout: 300_000 }, () => {
  const checked = new Map<string, number>();
  for (let round = 0; round < ROUNDS; round++) {
    const random = randomFrom(seed + round);
    const start = randomStart(random);
    const formulas = [...SIGNATURES.values()].flatMap((signature) => [
      ...Array.from({ length: CALLS_EACH }, () => ({ name: signature.name, formula: anyCall(signature, random) })),
      { name: '', formula: anyOperation(random) },
    ]);
    const workbook = wildWorkbook(
      start,
      formulas.map(({ formula }) => formula),
    );
    const columns = (workbook.table('Wild')?.columns ?? []).filter(({ diagnostic }) => diagnostic === undefined);
    const good = new Set(columns.map(({ name }) => name));
    formulas.forEach(({ name }, at) => {
      if (good.has(`f${at}`)) checked.set(name, (checked.get(name) ?? 0) + 1);
    });
    expect(notNumbers(workbook, columns)).toEqual([]);
    for (let step = 0; step < EDITS; step++) {
      workbook.edit([randomEdit(random, workbook)], 'whatever');
      expect(notNumbers(workbook, columns)).toEqual([]);
    }
  }
  const never = [...SIGNATURES.keys()].filter((name) => !checked.has(name));
  expect(never.length, `never checked: ${never.join(' ')}`).toBeLessThan(SIGNATURES.size / 10);
});
