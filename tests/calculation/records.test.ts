// Functions that answer with several figures: worked out once a row, read figure by figure, in this row and through links, taken
// whole by other functions; blanks, errors and changes as with any formula, and sentences where a record can't stand.

import { describe, expect, test } from 'vitest';
import { isError } from '../../engine/index.ts';
import { type Book, opened } from '../book.ts';
import { snapshot } from '../properties/snapshot.ts';
import { besideFarm, computed, entered, number, plain, sheet } from '../workbook/small.ts';

const length = number('in', 'cm');
const record = (id: string) => ({ type: 'record', record: id }) as const;

function beds(): Book {
  return opened(
    besideFarm(
      [
        sheet('Tries', {
          key: 'Try',
          columns: [
            entered('Try', { type: 'text' }),
            entered('Closest', length),
            entered('Rows', plain),
            computed('Bed', record('bed-to-try'), 'BEDTOTRY([Closest]; 16 in; 1 in; 50 ft; 30 in; [Rows]; 1)'),
            computed('From', length, '[Bed].[Closest]'),
            computed('Twice', length, '2 * [Bed].[Widest] + [Bed].[Step]'),
          ],
        }),
        sheet('Notes', {
          columns: [
            entered('Try', { type: 'link', table: 'Tries' }),
            computed('Rows there', plain, '[Try].[Bed].[Rows]'),
            computed(
              'Only long',
              record('bed-to-try'),
              'IF([Try].[Rows] > 2; BEDTOTRY(1 in; 2 in; 1 in; 1 ft; 1 ft; 3; 1))',
            ),
            computed('Long', length, '[Only long].[Widest]'),
          ],
        }),
      ],
      {
        Tries: [
          { Try: 'A', Closest: 2, Rows: 4 },
          { Try: 'B', Closest: '10 cm', Rows: 2 },
          { Try: 'C', Rows: 3 },
        ],
        Notes: [{ Try: 'A' }, { Try: 'B' }, { Try: 'C' }, {}],
      },
    ),
  );
}

const texts = (book: Book, table: string, column: string): readonly string[] =>
  [...book.rows(table)].map((row) => book.cell(table, row, column).text);

const why = (formula: string): string => {
  const tried = beds().tryFormula('Tries', 'Tried', formula);
  return tried.ok ? 'it checks' : tried.diagnostic.why;
};

describe('figures', () => {
  test('are read in this row and through links; a blank argument leaves all of them blank', () => {
    const book = beds();
    expect(texts(book, 'Tries', 'From')).toEqual(['2', '3.937', '']);
    expect(texts(book, 'Tries', 'Twice')).toEqual(['33', '33', '']);
    expect(texts(book, 'Notes', 'Rows there')).toEqual(['4', '2', '', '']);
  });

  test('follow a branch of IF', () => {
    expect(texts(beds(), 'Notes', 'Long')).toEqual(['2', '', '2', '']);
  });

  test('are shown together in words, in the workbook’s own units', () => {
    const book = beds();
    expect(book.cell('Tries', 0, 'Bed').text).toBe(
      'Closest 2 in, Widest 16 in, Step 1 in, Length 50 ft, Width 30 in, Rows 4, Plants a place 1',
    );
    book.edit([{ edit: 'units', units: 'si' }]);
    expect(book.cell('Tries', 0, 'Bed').text).toMatch(/^Closest 0\.0508 m, Widest 0\.406 m/);
    expect(book.value('Tries', 2, 'Bed')).toBe(null);
  });

  test('follow edits, back and forth, to the last bit', () => {
    const book = beds();
    const start = snapshot(book);
    book.edit([{ edit: 'cell', table: 'Tries', row: 0, column: 'Closest', entry: '3 in' }]);
    expect(texts(book, 'Tries', 'From')).toEqual(['3', '3.937', '']);
    expect(snapshot(book.reopened())).toEqual(snapshot(book));
    const branch = book.branch();
    book.undo();
    expect(snapshot(book)).toEqual(start);
    expect(texts(branch, 'Tries', 'From')[0]).toBe('3');
  });

  test('hold the error of what they are worked out from, which says where it began', () => {
    const book = beds();
    book.edit([{ edit: 'cell', table: 'Tries', row: 0, column: 'Rows', entry: '-1' }]);
    for (const [table, column] of [
      ['Tries', 'Bed'],
      ['Tries', 'From'],
      ['Notes', 'Rows there'],
    ] as const) {
      const value = book.value(table, 0, column);
      expect(isError(value) && [value.error, value.at]).toEqual(['range', { sheet: 'tries', row: 0, column: 'bed' }]);
    }
  });

  test('are explained as one column, with the figure that was read', () => {
    const explained = beds().explain('Tries', 0, 'From');
    expect(explained.inValues).toBe('2 in');
    expect(explained.rests.map(({ columnName, formula }) => [columnName, formula])).toEqual([
      ['Bed', 'BEDTOTRY([Closest]; 16 in; 1 in; 50 ft; 30 in; [Rows]; 1)'],
    ]);
  });
});

test('a function that takes a record is given its column', () => {
  const best = 'BESTSPACINGS([Bed]; [Bed]; ; Farm[Season]; Farm[Season]; Farm[Season]; Farm[Season])';
  expect(why(best)).toBe(
    'BESTSPACINGS wants the figures of a stand of bulbs here: name the column that works them out.',
  );
});

describe('where a record can’t stand, a sentence says what to write', () => {
  test.each([
    ['[Bed]', '[Bed] holds several figures: name one of them, as in [Bed].[Closest].'],
    ['[Bed] + 1 in', '[Bed] holds several figures: name one of them, as in [Bed].[Closest].'],
    ['[Bed] & "!"', '[Bed] holds several figures: name one of them, as in [Bed].[Closest].'],
    ['ISBLANK([Bed])', '[Bed] holds several figures: name one of them, as in [Bed].[Closest].'],
    ['[Bed].[Closesst]', '[Bed] has no figure Closesst; the nearest is [Closest].'],
    ['[Bed].[Closest].[Try]', '[Closest] is a figure: nothing can follow it.'],
    ['IF(TRUE; [Bed])', '[Bed] holds several figures: name one of them, as in [Bed].[Closest].'],
    [
      'BESTSPACINGS(BEDTOTRY(1 in; 2 in; 1 in; 1 ft; 1 ft; 3; 1); [Bed]; ; [Try]; [Rows]; [Rows]; [Rows])',
      'BESTSPACINGS wants the figures of a bed with spacings to try: put BEDTOTRY(1 in; 2 in; 1 in; 1 ft; 1 ft; 3; 1) in a column of its own and name that.',
    ],
  ])('%s', (formula, sentence) => {
    expect(why(formula)).toBe(sentence);
  });

  test('nor can it be typed over', () => {
    const done = beds().edit([{ edit: 'cell', table: 'Tries', row: 0, column: 'Bed', entry: '3' }]);
    expect(done.refused && done.why).toBe('These figures are worked out together: change what they rest on.');
  });
});

test('a column of one’s own may hold a record', () => {
  const book = beds();
  const done = book.edit([
    {
      edit: 'formula',
      table: 'Tries',
      column: 'Own',
      formula: 'BEDTOTRY([Closest] * 2; 16 in; 1 in; 50 ft; 30 in; [Rows]; 1)',
    },
  ]);
  expect(done.refused).toBe(false);
  book.edit([{ edit: 'formula', table: 'Tries', column: 'Own from', formula: '[Own].[Closest]' }]);
  expect(texts(book, 'Tries', 'Own from')).toEqual(['4', '7.874', '']);
  expect(snapshot(book.reopened())).toEqual(snapshot(book));
});
