// Entries that are not known for sure, in the writing of many places: the first figure has the unit of the last however either is
// written, and what an editor opens with is read as the very same figures.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cellRange,
  cellView,
  fromCanonical,
  message,
  newDocument,
  readInputs,
  rowId,
  rows,
  sayInput,
  sheetView,
  tryEntry,
  uncertainInputs,
  Workbook,
} from '../../engine/index.ts';
import { writingOf } from '../../ui/browser/store/writing.ts';
import { templateOf } from '../book.ts';
import { LOCALES } from '../locales.ts';
import { runs } from '../runs.ts';
import { computed, entered, number, sheet } from '../workbook/small.ts';

const TEMPLATE = templateOf({
  sheets: [
    sheet('Figures', {
      columns: [
        entered('Length', number('ft', 'm')),
        entered('Mass', number('g')),
        entered('Share', number('%')),
        entered('Price', number('money/lb', 'money/kg')),
        entered('Yield', number('lb/ft2', 'kg/m2')),
        entered('Warmth', number('Fdeg', 'Cdeg')),
        entered('Temperature', { type: 'temperature' }),
        entered('Day', { type: 'date' }),
        { ...computed('Pieces', number('', ''), '30'), role: 'default', orElse: 'Weight' },
        entered('Weight', number('lb', 'kg')),
      ],
    }),
  ],
});

function bookIn(locale: string, units: 'us' | 'si' = 'us'): Workbook {
  const start = { title: 'Ranges', units, currency: 'EUR', today: 0, rows: { figures: [{}] } };
  let ids = 0;
  const newId = () => `n${++ids}`;
  const started = newDocument(TEMPLATE, start, newId);
  if (!started.ok) throw new Error(started.problems.join('\n'));
  const workbook = Workbook.open(started.data, {
    newId,
    now: () => ++ids,
    actor: 'anna',
    templates: { today: () => TEMPLATE, earlier: () => undefined },
    writings: (named) => writingOf(named ?? locale),
  });
  if (workbook === undefined) throw new Error('its template is not known');
  return workbook;
}

function type(workbook: Workbook, column: string, entry: string, plain?: true): string | undefined {
  const row = rowId(workbook, 'figures', rows(workbook, 'figures')[0] ?? -1);
  const typed = { command: 'set cell', sheet: 'figures', row, column, entry } as const;
  const done = workbook.do([plain === true ? { ...typed, plain } : typed], message('trial'));
  return done.refused ? done.why : undefined;
}

const viewed = (workbook: Workbook, column: string) =>
  cellView(workbook, 'figures', rows(workbook, 'figures')[0] ?? -1, column);

const canonical = (workbook: Workbook, column: string) =>
  cellRange(workbook, 'figures', rows(workbook, 'figures')[0] ?? -1, column);

/** Low, likely and high in the unit of the column. */
function figures(workbook: Workbook, column: string): readonly number[] {
  const range = canonical(workbook, column);
  const kind = sheetView(workbook, 'figures')?.columns.find(({ id }) => id === column)?.type;
  if (range === undefined || (kind?.kind !== 'number' && kind?.kind !== 'temperature')) return [];
  return [range.low, range.likely, range.high].map((value) => Number(fromCanonical(kind.unit, value).toPrecision(9)));
}

describe('the first figures have the unit of the last', () => {
  test.each([
    ['en-US', 'length', '1.5..2 yd', [4.5, 5.25, 6]],
    ['en-US', 'length', '1 1/2..2 yd', [4.5, 5.25, 6]],
    ['en-US', 'length', '½..1 1/2 yd', [1.5, 3, 4.5]],
    ['en-US', 'length', '1,200..1,500 in', [100, 112.5, 125]],
    ['en-US', 'length', '1..1 1/4..2 yd', [3, 3.75, 6]],
    ['en-US', 'length', '1..2 ft 6 in', [1, 1.75, 2.5]],
    ['en-US', 'length', '6 in..2', [0.5, 1.25, 2]],
    ['de-DE', 'mass', '1.5..2 kg', [1500, 1750, 2000]],
    ['de-DE', 'mass', '1,5..2 kg', [1500, 1750, 2000]],
    ['de-DE', 'mass', '1,5..1,75..2,5 kg', [1500, 1750, 2500]],
    ['fr-FR', 'mass', '1 200,5..1 300 mg', [1.2005, 1.25025, 1.3]],
    ['de-CH', 'mass', "1'200.5..1'300 mg", [1.2005, 1.25025, 1.3]],
    ['ar-EG', 'mass', '١٫٥..٢ kg', [1500, 1750, 2000]],
    ['en-US', 'share', '0.5..0.7%', [0.5, 0.6, 0.7]],
    ['en-US', 'share', '80..90%', [80, 85, 90]],
    ['en-US', 'share', '0.5..0.7', [50, 60, 70]],
    ['en-US', 'price', '3..€4/kg', [3 * 0.45359237, 3.5 * 0.45359237, 4 * 0.45359237]],
    ['en-US', 'yield', '1..3 oz/ft2', [1 / 16, 2 / 16, 3 / 16]],
    ['en-US', 'warmth', '5..10 Cdeg', [9, 13.5, 18]],
    ['en-US', 'temperature', '10..20 C', [50, 59, 68]],
    ['de-DE', 'temperature', '10,5..20,5 °C', [50.9, 59.9, 68.9]],
  ])('%s: %s %s', (locale, column, entry, expected) => {
    const workbook = bookIn(locale);
    expect(type(workbook, column, entry)).toBeUndefined();
    const shown = figures(workbook, column);
    expect(shown).toHaveLength(3);
    shown.forEach((figure, at) => {
      expect(figure).toBeCloseTo(expected[at] ?? Number.NaN, 6);
    });
  });

  test('also among the values that an input is tried at', () => {
    const workbook = bookIn('de-DE');
    const row = rowId(workbook, 'figures', rows(workbook, 'figures')[0] ?? -1);
    const input = { sheet: 'figures', row, column: 'mass' };
    const read = readInputs(workbook, input, '1,5..2,5 kg by 0,5');
    expect(read.ok ? read.values.map(({ value }) => Number(value.toPrecision(9))) : read.why).toEqual([1.5, 2, 2.5]);
    const says = read.ok ? read.values.map((value) => sayInput(workbook, input, value)) : [];
    expect(says).toEqual(['1,5 kg', '2 kg', '2,5 kg']);
  });
});

test('what a program wrote is read as formulas have it, whatever the locale', () => {
  const workbook = bookIn('de-DE');
  expect(type(workbook, 'length', '1.125..1.375', true)).toBeUndefined();
  expect(figures(workbook, 'length')).toEqual([1.125, 1.25, 1.375]);
});

test('what it would mean is said in the writing of the place', () => {
  expect(tryEntry(bookIn('de-DE'), 'figures', 'length', '40,5..50')).toMatchObject({
    text: '40,5 to 50, likely 45,25 ft',
  });
});

const UNITS: Readonly<Record<string, readonly string[]>> = {
  length: ['', ' ft', ' in', ' yd', ' cm', ' m'],
  mass: ['', ' g', ' kg', ' lb', ' oz'],
  share: ['', '%'],
  price: ['', ' EUR/kg', ' EUR/lb', ' EUR/oz'],
  yield: ['', ' kg/m2', ' oz/ft2'],
  warmth: ['', ' Cdeg', ' Fdeg'],
  temperature: ['', ' °C', ' °F'],
};

/** Figures as people type them, with up to four digits behind the mark. */
const figure = fc
  .tuple(
    fc.oneof(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 40_000 })),
    fc.constantFrom(0, 1, 2, 3, 4),
    fc.nat(9999),
  )
  .map(([whole, digits, broken]) => Number(`${whole}.${String(broken).padStart(4, '0').slice(0, digits)}`));

test('a cell whose range another column’s entry took the place of is on its default for sure', () => {
  const workbook = bookIn('en-US');
  expect(type(workbook, 'pieces', '20..60')).toBeUndefined();
  expect(uncertainInputs(workbook, ['figures']).map(({ column }) => column)).toEqual(['pieces']);
  expect(type(workbook, 'pieces', '12 lb')).toBeUndefined();
  expect(cellView(workbook, 'figures', 0, 'weight').text).toBe('12');
  expect(cellView(workbook, 'figures', 0, 'pieces')).toMatchObject({ text: '30', entry: '30' });
  expect(uncertainInputs(workbook, ['figures'])).toEqual([]);
  expect(workbook.data().ranges).toBeUndefined();
});

describe('what an editor opens with is read as the very same figures and unit', () => {
  const range = fc.record({
    column: fc.constantFrom(...Object.keys(UNITS)),
    unit: fc.nat(9),
    figures: fc.array(figure, { minLength: 2, maxLength: 3 }),
    days: fc.array(fc.integer({ min: 1, max: 364 }), { minLength: 2, maxLength: 3 }),
    units: fc.constantFrom('us', 'si' as const),
  });
  test.each(LOCALES)('%s', (locale) => {
    const books = { us: bookIn(locale, 'us'), si: bookIn(locale, 'si') };
    const settled = (workbook: Workbook, column: string) => {
      const { entry, unit, text } = viewed(workbook, column);
      return { entry, unit, text, range: canonical(workbook, column) };
    };
    const reopens = (workbook: Workbook, column: string, entry: string) => {
      expect(type(workbook, column, entry, true)).toBeUndefined();
      const before = settled(workbook, column);
      expect(before.range).toBeDefined();
      expect(type(workbook, column, before.entry), before.entry).toBeUndefined();
      expect(settled(workbook, column)).toEqual(before);
    };
    fc.assert(
      fc.property(range, ({ column, unit, figures: chosen, days, units }) => {
        const choices = UNITS[column] ?? [];
        const sorted = chosen.toSorted((a, b) => a - b);
        // Between 0 and 1 a bare figure is a share.
        const signed = column === 'share' && sorted.some((n) => n < 1);
        const word = signed ? '%' : (choices[unit % choices.length] ?? '');
        reopens(books[units], column, sorted.map((n) => `${n}${word}`).join('..'));
        const dates = days
          .toSorted((a, b) => a - b)
          .map((day) => new Date(Date.UTC(2027, 0, day)).toISOString().slice(0, 10));
        reopens(books[units], 'day', dates.join('..'));
      }),
      { numRuns: runs(15, 500) },
    );
  });

  test('also of shares that no per cent gives exactly, beside such as are less than one per cent', () => {
    const workbook = bookIn('de-DE');
    const share = fc.double({ min: 1e-4, max: 0.0099, noNaN: true });
    fc.assert(
      fc.property(fc.array(share, { minLength: 2, maxLength: 3 }), (shares) => {
        const entry = shares.toSorted((a, b) => a - b).join('..');
        expect(type(workbook, 'share', entry, true)).toBeUndefined();
        const before = canonical(workbook, 'share');
        expect(type(workbook, 'share', viewed(workbook, 'share').entry)).toBeUndefined();
        expect(canonical(workbook, 'share')).toEqual(before);
      }),
      { numRuns: runs(200, 2000) },
    );
  });
});
