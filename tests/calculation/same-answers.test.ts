// Rows that ask one after another for what lies between their bounds, and for the texts that stand before theirs: many rows are
// answered together, or by a list in order, and hold what looking through the other table for each of them finds.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compareNumbers } from '../../engine/values/tolerance.ts';
import { type Book, opened } from '../book.ts';
import { besideFarm, computed, entered, plain, sheet } from '../workbook/small.ts';

const TEXT = { type: 'text' } as const;
const STANDING = 'Spans[Of]; [Of]; Spans[From]; "<=" & [At]; Spans[To]; ">" & [At]';

type Span = {
  readonly Of: string;
  readonly From: number;
  readonly To: number;
  readonly Length: number;
  readonly Name: string;
};

interface Place {
  readonly Of: string | undefined;
  readonly At: number | undefined;
  readonly Name: string;
}

function asked(spans: readonly Span[], places: readonly Place[]): Book {
  const columns = [entered('Of', TEXT), entered('Name', TEXT)];
  const spanColumns = ['From', 'To', 'Length'].map((name) => entered(name, plain));
  const filled = places.map(({ Of, At, Name }) => ({
    Name,
    ...(Of === undefined ? {} : { Of }),
    ...(At === undefined ? {} : { At }),
  }));
  return opened(
    besideFarm(
      [
        sheet('Spans', { columns: [...columns, ...spanColumns] }),
        sheet('Places', {
          columns: [
            ...columns,
            entered('At', plain),
            computed('Used', plain, `SUMIFS(Spans[Length]; ${STANDING})`),
            computed('Longest', plain, `MAXIFS(Spans[Length]; ${STANDING})`),
            computed('Names', TEXT, `NAMESIFS(Spans[Name]; ${STANDING})`),
            computed('Next', plain, 'MINIFS(Spans[From]; Spans[Of]; [Of]; Spans[From]; ">" & [At])'),
            computed('Begun', plain, 'COUNTIFS(Spans[Of]; [Of]; Spans[From]; "<" & [At])'),
            computed('Below', plain, 'COUNTIFS(Spans[Of]; [Of]; Spans[Name]; "<" & [Name])'),
            computed('Up to', plain, 'COUNTIFS(Spans[Of]; [Of]; Spans[Name]; "<=" & [Name])'),
            computed('Above', plain, 'COUNTIFS(Spans[Of]; [Of]; Spans[Name]; ">" & [Name])'),
            computed('From it', plain, 'COUNTIFS(Spans[Of]; [Of]; Spans[Name]; ">=" & [Name])'),
          ],
        }),
      ],
      { Spans: spans, Places: filled },
    ),
  );
}

/** What each of those columns is to hold in a row, found by going through all spans. */
function found(spans: readonly Span[], { Of, At, Name }: Place): readonly (number | string | null)[] {
  const own = spans.filter((span) => span.Of.toLowerCase() === Of?.toLowerCase());
  const byName = (takes: (order: number) => boolean): number | null => {
    if (Of === undefined) return null;
    const [name, others] = [Name.toLowerCase(), own.map((span) => span.Name.toLowerCase())];
    return others.filter((other) => takes(other === name ? 0 : other < name ? -1 : 1)).length;
  };
  const names = [byName((o) => o < 0), byName((o) => o <= 0), byName((o) => o > 0), byName((o) => o >= 0)];
  if (Of === undefined || At === undefined) return [null, null, null, null, null, ...names];
  const standing = own.filter(({ From, To }) => compareNumbers(From, At) <= 0 && compareNumbers(To, At) > 0);
  const sorted = standing.toSorted((a, b) => a.From - b.From);
  const lengths = standing.map(({ Length }) => Length);
  const later = own.map(({ From }) => From).filter((from) => compareNumbers(from, At) > 0);
  const said = [...new Map(standing.map((span) => [span.Name.toLowerCase(), span.Name])).keys()].map(
    (key) => standing.find((span) => span.Name.toLowerCase() === key)?.Name,
  );
  return [
    sorted.reduce((sum, { Length }) => sum + Length, 0),
    lengths.length === 0 ? null : Math.max(...lengths),
    said.length === 0 ? null : said.join(', '),
    later.length === 0 ? null : Math.min(...later),
    own.filter(({ From }) => compareNumbers(From, At) < 0).length,
    ...names,
  ];
}

const COLUMNS = ['Used', 'Longest', 'Names', 'Next', 'Begun', 'Below', 'Up to', 'Above', 'From it'];

function held(workbook: Book, row: number): readonly unknown[] {
  return COLUMNS.map((column) => workbook.value('Places', row, column));
}

// Tenths added up and tenths written out differ by dust: 0.1 + 0.2 and 0.3.
const day = fc.oneof(
  fc.integer({ min: 0, max: 12 }).map((tenths) => tenths / 10),
  fc.integer({ min: 0, max: 12 }).map((tenths) => Array.from({ length: tenths }).reduce((sum: number) => sum + 0.1, 0)),
);
const of = fc.constantFrom('a', 'b', 'B');
const name = fc.constantFrom('amber', 'Amber', 'red', 'white', 'Round');
const span = fc.record({ Of: of, From: day, To: day, Length: fc.integer({ min: 1, max: 9 }), Name: name });
const place = fc.record({
  Of: fc.option(of, { nil: undefined, freq: 12 }),
  At: fc.option(day, { nil: undefined, freq: 12 }),
  Name: name,
});

test('rows one after another hold what going through the other table for each of them finds', () => {
  fc.assert(
    fc.property(
      fc.array(span, { maxLength: 14 }),
      fc.array(place, { minLength: 1, maxLength: 90 }),
      fc.boolean(),
      (spans, places, inOrder) => {
        // As the weeks of a bed stand: one of a kind after another, their days rising.
        const rows = inOrder
          ? places.toSorted((a, b) => (a.Of ?? '').localeCompare(b.Of ?? '') || (a.At ?? 0) - (b.At ?? 0))
          : places;
        const workbook = asked(spans, rows);
        expect(rows.map((_, row) => held(workbook, row))).toEqual(rows.map((row) => found(spans, row)));
      },
    ),
    { numRuns: 60 },
  );
});

test('a bound that moves past a value by more than dust is answered anew, and one that moves by dust is not', () => {
  const spans = [{ Of: 'a', From: 0.3, To: 9, Length: 2, Name: 'red' }];
  const at = [0.1, 0.2, 0.1 + 0.2, 0.3, 0.4, 8.5, 9, 9.5];
  const workbook = asked(
    spans,
    at.map((day) => ({ Of: 'a', At: day, Name: 'red' })),
  );
  expect(at.map((_, row) => workbook.value('Places', row, 'Used'))).toEqual([0, 0, 2, 2, 2, 2, 0, 0]);
  expect(at.map((_, row) => workbook.value('Places', row, 'Next'))).toEqual([
    0.3,
    0.3,
    null,
    null,
    null,
    null,
    null,
    null,
  ]);
});

test('many spans of one kind are passed over in blocks, and what was not looked at is looked at again', () => {
  const spans = Array.from({ length: 200 }, (_, at) => ({
    Of: 'a',
    From: Math.floor(at / 2),
    To: Math.floor(at / 2) + 1 + (at % 7),
    Length: 1 + (at % 5),
    Name: `n${at}`,
  }));
  const places = Array.from({ length: 240 }, (_, at) => ({ Of: 'a', At: Math.floor(at / 2), Name: `n${at}` }));
  const workbook = asked(spans, places);
  expect(places.map((_, row) => held(workbook, row))).toEqual(places.map((row) => found(spans, row)));
});

test('what rows chose is chosen anew where spans, days or rows change, in a branch and beside it', () => {
  const change = fc.oneof(
    fc.record({ table: fc.constant('Spans'), row: fc.nat(), column: fc.constantFrom('From', 'To'), value: day }),
    fc.record({ table: fc.constant('Places'), row: fc.nat(), column: fc.constant('At'), value: day }),
    fc.record({ table: fc.constantFrom('Spans', 'Places'), row: fc.nat(), column: fc.constant('Of'), value: of }),
  );
  fc.assert(
    fc.property(
      fc.array(span, { minLength: 1, maxLength: 10 }),
      fc.array(place, { minLength: 40, maxLength: 60 }),
      fc.array(fc.record({ line: fc.nat({ max: 1 }), change }), { minLength: 1, maxLength: 8 }),
      (spans, places, acts) => {
        const begun = asked(spans, places);
        const lines = [begun, begun.branch()].map((book) => ({ book, spans: [...spans], places: [...places] }));
        for (const { line, change: act } of acts) {
          const there = lines[line];
          if (there === undefined) continue;
          const { table, column, value } = act;
          const rows: object[] = table === 'Spans' ? there.spans : there.places;
          const row = act.row % rows.length;
          there.book.edit([{ edit: 'cell', table, row, column, entry: String(value) }]);
          rows[row] = { ...rows[row], [column]: value };
          for (const { book, spans: stand, places: ask } of lines)
            expect(ask.map((_, at) => held(book, at))).toEqual(ask.map((one) => found(stand, one)));
        }
      },
    ),
    { numRuns: 40 },
  );
});
