// TYPED: two cells that each follow from the other, whichever a person typed, without a circle; kept current as cells are
// typed, taken back, undone, and on rows that follow from another sheet.

import { describe, expect, it } from 'vitest';
import { type Book, opened, type SheetDeclaration } from '../book.ts';

const DATE = { type: 'date' } as const;
const column = (name: string, role: 'entered' | 'computed' | 'default', formula = '', type: object = DATE) =>
  ({ name, role, formula, type, group: '', note: '' }) as SheetDeclaration['columns'][number];

const DATES = [
  column('Sown', 'default', 'TYPED([Set out]) - 28 days'),
  column('Set out', 'default', 'TYPED([Sown]) + 28 days'),
  column('Any', 'computed', 'IF(ISBLANK(TYPED([Sown])); TYPED([Set out]); TYPED([Sown]))'),
];

const sheet = (name: string, rest: Partial<SheetDeclaration>): SheetDeclaration => ({
  name,
  question: '',
  about: '',
  rows: { from: 'entry' },
  columns: [],
  checks: [],
  cautions: [],
  ...rest,
});

function book(formula = ''): Book {
  return opened({
    title: 'T',
    units: 'si',
    currency: 'USD',
    today: 0,
    sheets: [
      sheet('Beds', { key: 'Bed', columns: [column('Bed', 'entered', '', { type: 'text' }), ...DATES] }),
      sheet('Works', { rows: { from: 'each', table: 'Beds', as: 'Of', where: '' }, columns: DATES }),
      ...(formula === '' ? [] : [sheet('More', { columns: [column('X', 'computed', formula)] })]),
    ],
    rows: { Beds: [{ Bed: 'a', Sown: '2027-03-01' }, { Bed: 'b', 'Set out': '2027-05-29' }, { Bed: 'c' }] },
  });
}

const dates = (of: Book, table: string, row = 0) =>
  ['Sown', 'Set out', 'Any'].map((name) => of.cell(table, of.rows(table)[row] ?? -1, name).text);
const type = (of: Book, table: string, row: number, name: string, entry: string) =>
  of.edit([{ edit: 'cell', table, row: of.rows(table)[row] ?? -1, column: name, entry }], 'type');

it('is asked of every row, the first and the others', () => {
  const of = book();
  expect([0, 1, 2].map((row) => dates(of, 'Beds', row))).toEqual([
    ['1 Mar 2027', '29 Mar 2027', '1 Mar 2027'],
    ['1 May 2027', '29 May 2027', '29 May 2027'],
    ['', '', ''],
  ]);
});

describe.each(['Beds', 'Works'])('what is typed on %s', (table) => {
  it('gives the other date from whichever is typed, and follows every change', () => {
    const of = book();
    if (table === 'Works') type(of, table, 0, 'Sown', '2027-03-01');
    expect(dates(of, table)).toEqual(['1 Mar 2027', '29 Mar 2027', '1 Mar 2027']);
    type(of, table, 0, 'Set out', '2027-04-10');
    expect(dates(of, table)).toEqual(['1 Mar 2027', '10 Apr 2027', '1 Mar 2027']);
    type(of, table, 0, 'Sown', '');
    expect(dates(of, table)).toEqual(['13 Mar 2027', '10 Apr 2027', '10 Apr 2027']);
    type(of, table, 0, 'Set out', '');
    expect(dates(of, table)).toEqual(['', '', '']);
    of.undo();
    of.undo();
    expect(dates(of, table)).toEqual(['1 Mar 2027', '10 Apr 2027', '1 Mar 2027']);
  });

  it('opens again as it was', () => {
    const of = book();
    type(of, table, 2, 'Set out', '2027-06-26');
    expect(dates(of.reopened(), table, 2)).toEqual(['29 May 2027', '26 Jun 2027', '26 Jun 2027']);
  });
});

describe('TYPED', () => {
  it('is asked of a cell of this row alone', () => {
    const why = book('TYPED([X] + 1 day)').column('More', 'X')?.diagnostic?.why;
    expect(why).toBe('TYPED wants a cell of this row, as in TYPED([Sown]).');
  });

  it('is explained by what was typed, and as blank where nothing was', () => {
    const of = book();
    expect(of.explain('Beds', of.rows('Beds')[0] ?? -1, 'Set out')?.inValues).toBe('TYPED(1 Mar 2027) + 28 days');
    const untyped = of.explain('Beds', of.rows('Beds')[2] ?? -1, 'Set out');
    expect(untyped?.inValues).toBe('blank + 28 days');
    expect(untyped?.rests).toEqual([]);
  });
});
