// Texts spelt out of one or two cells of a row are looked up where rows hold what rows before held: they hold what spelling them out
// for each row gives, blanks and errors among them, also where more differ than are remembered. Days and months are the language's own
// Intl.DateTimeFormat's.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isError } from '../../engine/values/error.ts';
import { type Book, opened } from '../book.ts';
import { besideFarm, computed, entered, plain, sheet } from '../workbook/small.ts';

const TEXT = { type: 'text' } as const;
const SPELT = '"day " & TEXT(DAY([On]); "00") & " of " & TEXT(MONTH([On]); "00")';
const SHARE = 'TEXT(12 / [Parts]; "0.00") & " of " & TEXT(YEAR([On]); "0")';

interface Row {
  /** Days since 1970 began; undefined: blank. */
  readonly on: number | undefined;
  readonly parts: number | undefined;
}

const isoOf = (day: number): string => new Date(day * 86_400_000).toISOString().slice(0, 10);
const spelling = new Intl.DateTimeFormat('en-GB', { day: '2-digit', month: '2-digit', timeZone: 'UTC' });

function asked(rows: readonly Row[]): Book {
  const jobs = rows.map(({ on, parts }, at) => ({
    Name: `job ${at}`,
    ...(on === undefined ? {} : { On: isoOf(on) }),
    ...(parts === undefined ? {} : { Parts: parts }),
  }));
  const columns = [
    entered('Name', TEXT),
    entered('On', { type: 'date' }),
    entered('Parts', plain),
    computed('Spelt', TEXT, SPELT),
    computed('Share', TEXT, SHARE),
  ];
  return opened(besideFarm([sheet('Work', { columns })], { Work: jobs }));
}

/** What both columns are to hold, spelt out for this row alone. */
function spelt({ on, parts }: Row): readonly unknown[] {
  const year = on === undefined ? '' : isoOf(on).slice(0, 4);
  const [day = '', month = ''] = on === undefined ? [] : spelling.format(on * 86_400_000).split('/');
  const share = parts === undefined ? '' : (12 / parts).toFixed(2);
  return [`day ${day} of ${month}`, parts === 0 ? 'error' : `${share} of ${year}`];
}

function held(book: Book, row: number): readonly unknown[] {
  return ['Spelt', 'Share'].map((column) => {
    const value = book.value('Work', row, column);
    return isError(value) ? 'error' : value;
  });
}

const day = fc.integer({ min: 20_000, max: 20_900 });
const row = fc.record({
  on: fc.option(day, { nil: undefined, freq: 9 }),
  parts: fc.option(fc.constantFrom(0, 1, 2, 3, 4, 5, 8), { nil: undefined, freq: 9 }),
});

test('each row holds what is spelt out of its own cells, however many rows hold the same', () => {
  fc.assert(
    fc.property(
      fc.array(row, { minLength: 1, maxLength: 12 }),
      fc.integer({ min: 1, max: 60 }),
      fc.array(fc.record({ at: fc.nat(), on: day }), { maxLength: 6 }),
      (few, times, edits) => {
        const rows = Array.from({ length: few.length * times }, (_, at) => few[at % few.length] as Row);
        const book = asked(rows);
        expect(rows.map((_, at) => held(book, at))).toEqual(rows.map(spelt));
        for (const { at, on } of edits) {
          const edited = at % rows.length;
          book.edit([{ edit: 'cell', table: 'Work', row: edited, column: 'On', entry: isoOf(on) }]);
          rows[edited] = { ...(rows[edited] as Row), on };
        }
        expect(rows.map((_, at) => held(book, at))).toEqual(rows.map(spelt));
      },
    ),
    { numRuns: 30 },
  );
});

test('more days than are remembered are spelt out all the same', () => {
  const rows = Array.from({ length: 1500 }, (_, at) => ({ on: 20_000 + ((at * 7) % 733), parts: 1 + (at % 5) }));
  const book = asked(rows);
  expect(rows.map((_, at) => held(book, at))).toEqual(rows.map(spelt));
});
