// Formulas over sheets of criteria, and look-ups in sheets, after edits: of the data, of the criteria, of keys, with rows
// added and removed, they equal what a fresh workbook made from the same entries works out, bit for bit.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Book, type Edit, opened, type WorkbookDeclaration } from '../book.ts';
import { snapshot } from '../properties/snapshot.ts';
import { computed, entered, number, plain, SMALL, sheet } from '../workbook/small.ts';

const TEXT = { type: 'text' } as const;

const FORMULAS = [
  computed('Total', number('ft', 'm'), 'DSUM(Plantings; "Length"; Wanted)'),
  computed('Rows', plain, 'DCOUNT(Plantings; ; Wanted)'),
  computed('Filled', plain, 'DCOUNTA(Plantings; "Variety"; Wanted)'),
  computed('Latest', { type: 'date' }, 'DMAX(Plantings; "Sown"; Wanted)'),
  computed('Only', TEXT, 'DGET(Plantings; "Planting"; Wanted)'),
  computed('Spread', number('ft2', 'm2'), 'DVARP(Plantings; "Length"; Wanted)'),
  computed('Price', number('EUR'), 'VLOOKUP([Least]; Prices; "Price")'),
  computed('Same price', number('EUR'), 'VLOOKUP([Least]; Prices; 2; FALSE)'),
  computed('Of amber', number('ft', 'm'), 'SUMIFS(Plantings[Length]; Plantings[Variety]; "Amber")'),
  computed('First amber', TEXT, 'XLOOKUP("Amber"; Plantings[Variety]; Plantings[Planting])'),
  computed('Amber row', plain, 'MATCH("Amber"; Plantings[Variety]; 0)'),
  computed('Unsown', plain, 'COUNTIFS(Plantings[Sown]; "=")'),
];

/** The small workbook with criteria on plantings, prices by length, and a sheet of two rows that reads them. */
const DECLARATION: WorkbookDeclaration = {
  ...SMALL,
  sheets: [
    ...SMALL.sheets,
    sheet('Wanted', {
      columns: [entered('Variety', TEXT), entered('Length', TEXT), entered('Seeds', number('seeds'))],
    }),
    sheet('Prices', { columns: [entered('From', number('ft', 'm')), entered('Price', number('EUR'))] }),
    sheet('Found', { columns: [entered('Least', number('ft', 'm')), ...FORMULAS] }),
  ],
  rows: {
    ...SMALL.rows,
    Wanted: [{ Variety: 'amber', Length: '>15 ft' }, { Variety: 'Red' }],
    Prices: [
      { From: 0, Price: 5 },
      { From: 15, Price: 4 },
      { From: 25, Price: 3 },
    ],
    Found: [{ Least: 15 }, { Least: 20 }],
  },
};

function shown(workbook: Book, column: string, row = 0): string {
  return workbook.cell('Found', row, column).text;
}

/** Everything the workbook shows but the names of rows: those of sheets without a key tell the slot. */
function figures(workbook: Book): readonly unknown[] {
  return Object.entries(snapshot(workbook)).map(([sheetName, rows]) => [
    sheetName,
    rows.map((row) => ({ ...row, '': '' })),
  ]);
}

function edited(workbook: Book, ...edits: Edit[]): void {
  expect(workbook.edit(edits, 'Test').refused).toBe(false);
}

function cell(table: string, row: number, column: string, entry: string): Edit {
  return { edit: 'cell', table, row, column, entry };
}

describe('a sheet of criteria', () => {
  // Plantings: P1 Amber 30 ft, P2 Red 25 ft, P3 Amber 10 ft; wanted: Amber above 15 ft, or Red.
  test('is followed from its opening through edits of data, of criteria and of rows', () => {
    const workbook = opened(DECLARATION);
    expect([shown(workbook, 'Total'), shown(workbook, 'Rows')]).toEqual(['55', '2']);
    edited(workbook, cell('Plantings', 2, 'Length', '16 ft'));
    expect([shown(workbook, 'Total'), shown(workbook, 'Rows')]).toEqual(['71', '3']);
    edited(workbook, cell('Wanted', 0, 'Length', '>20 ft'));
    expect([shown(workbook, 'Total'), shown(workbook, 'Rows')]).toEqual(['55', '2']);
    edited(workbook, { edit: 'remove row', table: 'Wanted', row: 1 });
    expect([shown(workbook, 'Total'), shown(workbook, 'Only')]).toEqual(['30', 'P1']);
    edited(workbook, { edit: 'insert row', table: 'Wanted', entries: { Variety: '<>Amber' } });
    expect([shown(workbook, 'Total'), shown(workbook, 'Rows')]).toEqual(['55', '2']);
    edited(workbook, { edit: 'remove row', table: 'Plantings', row: 1 });
    expect([shown(workbook, 'Total'), shown(workbook, 'Rows')]).toEqual(['30', '1']);
    workbook.undo();
    expect([shown(workbook, 'Total'), shown(workbook, 'Rows')]).toEqual(['55', '2']);
    expect(figures(workbook)).toEqual(figures(workbook.reopened()));
  });

  test('follows the keys of the rows that links name', () => {
    const workbook = opened(DECLARATION);
    edited(workbook, cell('Varieties', 1, 'Variety', 'Crimson'));
    expect([shown(workbook, 'Total'), shown(workbook, 'Rows')]).toEqual(['30', '1']);
    edited(workbook, cell('Varieties', 0, 'Variety', 'Gold'));
    expect(shown(workbook, 'Rows')).toBe('0');
    expect(['Of amber', 'Total'].map((column) => shown(workbook, column))).toEqual(['0', '0']);
    expect(figures(workbook)).toEqual(figures(workbook.reopened()));
  });

  test('a condition that can not be read is an error until it is put right', () => {
    const workbook = opened(DECLARATION);
    edited(workbook, cell('Wanted', 0, 'Length', '>banana'));
    expect(workbook.value('Found', 0, 'Total')).toMatchObject({
      error: 'value',
      why: "The condition >banana in Wanted[Length] can't be read: Plantings[Length] is a length (ft), so write it as in >8 ft.",
    });
    edited(workbook, cell('Wanted', 0, 'Length', ''));
    expect(shown(workbook, 'Total')).toBe('65');
  });

  test('a look-up in a sheet follows prices and rows', () => {
    const workbook = opened(DECLARATION);
    const prices = (): readonly string[] =>
      ['Price', 'Same price'].flatMap((column) => [shown(workbook, column, 0), shown(workbook, column, 1)]);
    expect(prices().slice(0, 3)).toEqual(['4.00', '4.00', '4.00']);
    edited(workbook, cell('Prices', 1, 'From', '20 ft'));
    expect([prices()[0], prices()[1], prices()[3]]).toEqual(['5.00', '4.00', '4.00']);
    edited(workbook, { edit: 'remove row', table: 'Prices', row: 1 });
    expect(prices().slice(0, 2)).toEqual(['5.00', '5.00']);
  });
});

const which = fc.nat({ max: 1000 });
const length = fc.constantFrom('', '10 ft', '15 ft', '20 ft', '25 ft', '30 ft', '7 m', '0.1 ft', '33.3 ft');
const condition = fc.constantFrom('', '>15 ft', '<=25 ft', '=', '<>', '10 ft', '>banana', '>5', '<>30 ft', '< 7 m');
const words = fc.constantFrom('', 'Amber', 'red', '<>Amber', '=', '<>', '>=B', 'Unknown');
const key = fc.constantFrom('Amber', 'Red', 'Gold', 'Beta');

type Random = (workbook: Book) => Edit[];

function onRow(table: string, at: number, make: (row: number) => Edit): Random {
  return (workbook) => {
    const rows = workbook.rows(table);
    const row = rows[at % Math.max(1, rows.length)];
    return row === undefined ? [] : [make(row)];
  };
}

function cells(table: string, column: string, entry: fc.Arbitrary<string>): fc.Arbitrary<Random> {
  return fc.tuple(which, entry).map(([at, text]) => onRow(table, at, (row) => cell(table, row, column, text)));
}

function removals(table: string): fc.Arbitrary<Random> {
  return which.map((at) => onRow(table, at, (row) => ({ edit: 'remove row', table, row })));
}

const edits: fc.Arbitrary<Random> = fc.oneof(
  cells('Plantings', 'Length', length),
  cells('Plantings', 'Variety', key),
  cells('Plantings', 'Sown', fc.constantFrom('', '2027-03-01', '2027-03-08')),
  cells('Varieties', 'Variety', key),
  cells('Wanted', 'Length', condition),
  cells('Wanted', 'Variety', words),
  cells('Wanted', 'Seeds', fc.constantFrom('', '53', '44')),
  cells('Prices', 'From', length),
  cells('Prices', 'Price', fc.constantFrom('', '1', '2.50')),
  cells('Found', 'Least', length),
  removals('Plantings'),
  removals('Wanted'),
  removals('Prices'),
  removals('Varieties'),
  fc.tuple(words, condition).map(
    ([variety, text]): Random =>
      () => [{ edit: 'insert row', table: 'Wanted', entries: { Variety: variety, Length: text } }],
  ),
  fc.tuple(fc.nat({ max: 30 }), key, length).map(
    ([n, variety, text]): Random =>
      () => [
        { edit: 'insert row', table: 'Plantings', entries: { Planting: `N${n}`, Variety: variety, Length: text } },
      ],
  ),
  length.map(
    (from): Random =>
      () => [{ edit: 'insert row', table: 'Prices', entries: { From: from, Price: '2' } }],
  ),
);

test('after any edits, undos and redos all is as in a fresh workbook', () => {
  const acts = fc.oneof(
    { weight: 8, arbitrary: edits },
    { weight: 2, arbitrary: fc.constantFrom('undo' as const, 'redo' as const) },
  );
  fc.assert(
    fc.property(fc.array(acts, { minLength: 60, maxLength: 60 }), (sequence) => {
      const workbook = opened(DECLARATION);
      sequence.forEach((act, step) => {
        if (act === 'undo') workbook.undo();
        else if (act === 'redo') workbook.redo();
        else workbook.edit(act(workbook), 'Random work');
        if (step % 10 === 9) expect(figures(workbook)).toEqual(figures(workbook.reopened()));
      });
    }),
    { numRuns: 20 },
  );
});
