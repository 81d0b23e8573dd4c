// FIRSTIFS, NAMESIFS and functions that are handed a whole group at once: through a workbook, and after edits the same as afresh.

import { describe, expect, it } from 'vitest';
import { civilDay } from '../../engine/index.ts';
import { type Book, opened } from '../book.ts';
import { snapshot } from '../properties/snapshot.ts';
import { computed, entered, number, plain, sheet } from '../workbook/small.ts';

const TEXT = { type: 'text' } as const;
const DATE = { type: 'date' } as const;
const mass = number('lb', 'kg');

function book(): Book {
  return opened({
    title: 'Test',
    units: 'si',
    currency: 'EUR',
    today: civilDay(2027, 1, 1),
    sheets: [
      sheet('Products', {
        key: 'Product',
        columns: [
          entered('Product', TEXT),
          computed('Names', TEXT, 'NAMESIFS(Lots[Kind]; Lots[Product]; [Product])'),
          computed('First kind', TEXT, 'FIRSTIFS(Lots[Kind]; Lots[Product]; [Product]; Lots[Place]; ">1")'),
          computed('First week', DATE, 'FIRSTIFS(Lots[Week]; Lots[Product]; [Product])'),
        ],
      }),
      sheet('Lots', {
        columns: [
          entered('Product', TEXT),
          entered('Kind', TEXT),
          entered('Place', plain),
          entered('Week', DATE),
          entered('In', mass),
          entered('Wanted', mass),
          computed(
            'Sold',
            mass,
            'SOLDFROMSTORE([Place]; [Week]; Lots[Place]; Lots[Week]; Lots[In]; Lots[Wanted]; Lots[Product]; [Product])',
          ),
        ],
      }),
    ],
    rows: {
      Products: [{ Product: 'Onions' }, { Product: 'Beets' }, { Product: 'Nothing' }],
      Lots: [
        { Product: 'Onions', Kind: 'red', Place: 2, Week: '2027-08-02', In: '50', Wanted: '20' },
        { Product: 'Beets', Kind: 'round', Place: 1, Week: '2027-08-02', In: '5', Wanted: '8' },
        { Product: 'Onions', Kind: 'yellow', Place: 1, Week: '2027-08-02', In: '30', Wanted: '20' },
        { Product: 'Onions', Kind: 'Red', Place: 2, Week: '2027-08-09', In: '0', Wanted: '20' },
        { Product: 'Onions', Kind: '', Place: 1, Week: '2027-08-09', In: '0', Wanted: '20' },
      ],
    },
  });
}

const column = (from: Book, table: string, name: string): readonly unknown[] =>
  [...from.rows(table)].map((row) => from.value(table, row, name));

describe('values of the rows that meet conditions', () => {
  it('lists each name once, in the order of the rows, and leaves blanks out', () => {
    expect(column(book(), 'Products', 'Names')).toEqual(['red, yellow', 'round', null]);
  });

  it('gives the first value that is not blank', () => {
    expect(column(book(), 'Products', 'First kind')).toEqual(['red', null, null]);
    expect(column(book(), 'Products', 'First week')).toEqual([civilDay(2027, 8, 2), civilDay(2027, 8, 2), null]);
  });

  it('follows edits as a fresh workbook has it', () => {
    const edited = book();
    edited.edit([{ edit: 'cell', table: 'Lots', row: 2, column: 'Kind', entry: 'brown' }], 'Edit');
    expect(column(edited, 'Products', 'Names')[0]).toBe('red, brown');
    edited.edit([{ edit: 'cell', table: 'Lots', row: 2, column: 'Product', entry: 'Beets' }], 'Edit');
    expect(column(edited, 'Products', 'Names')).toEqual(['red', 'round, brown', null]);
    expect(snapshot(edited)).toEqual(snapshot(edited.reopened()));
  });
});

describe('a function that is handed a whole group', () => {
  it('sells each lot as the model does, and each product by itself', () => {
    expect(column(book(), 'Lots', 'Sold')).toEqual([0, 5, 20, 10, 10]);
  });

  it('works a group out again when one of its rows changes', () => {
    const edited = book();
    edited.edit([{ edit: 'cell', table: 'Lots', row: 2, column: 'In', entry: '25' }], 'Edit');
    expect(column(edited, 'Lots', 'Sold')).toEqual([0, 5, 20, 15, 5]);
    expect(snapshot(edited)).toEqual(snapshot(edited.reopened()));
  });
});
