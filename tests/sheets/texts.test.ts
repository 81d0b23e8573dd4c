// What formulas say in words has no hole where a figure is blank: every text and finding of fresh seasons, with and without a climate,
// with and without dates.

import { describe, expect, test } from 'vitest';
import { sheetViews } from '../../engine/index.ts';
import { monthsOf } from '../reference/calendars.ts';
import { type Season, seasonOf } from './season.ts';

const CROPS = [
  'Garlic',
  'Lettuce, head',
  'Onion, bulb',
  'Radicchio',
  'Radish',
  'Cabbage',
  'Carrot',
  'Celery',
  'Spinach',
  'Tomato',
  'Potato',
  'Cilantro',
  'Asparagus',
];

/** A comma or full stop behind nothing, two blanks, a word that wants a figure and has none. */
const HOLES =
  /^\s|\s$|\s[,.;]|[,;]\s*[,;.]|\s{2}|:\s*[.;]|\b(?:about|after|from|until|before|by|than|of|with|and)(?:[,.;]|\s+of\b)/;

/** What is put together for comparing, not for reading. */
const UNREAD = 'Successions / As it stands';

function texts({ book }: Season): readonly string[] {
  const cells = sheetViews(book.workbook).flatMap(({ name, columns }) =>
    columns
      .filter(({ role, type }) => role !== 'entered' && type?.kind === 'text')
      .flatMap((column) =>
        Array.from(book.rows(name), (row) => book.value(name, row, column.name)).flatMap((value) =>
          typeof value === 'string' ? [`${name} / ${column.name}: ${value}`] : [],
        ),
      ),
  );
  return [...cells, ...book.attention().map(({ table, column, says }) => `${table} / ${column}: ${says}`)];
}

function planted(latitude: string, units: 'us' | 'si', place: string, more: Readonly<Record<string, string>>): Season {
  return seasonOf(
    {
      ...(place === '' ? {} : { 'Monthly climate': monthsOf(place) }),
      Beds: [{ Bed: 'A 1' }],
      Varieties: CROPS.map((crop) => ({ Variety: crop, Crop: crop })),
      Plantings: CROPS.map((crop) => ({ Planting: crop, Variety: crop, ...more })),
    },
    { Latitude: latitude },
    { units },
  );
}

describe.each<[string, string, 'us' | 'si', string]>([
  ['36 N without a climate', '36', 'us', ''],
  ['56 N without a climate', '56', 'si', ''],
  ['36 N', '36', 'us', 'Raleigh NC'],
  ['56 N', '56', 'si', 'Oxford UK'],
])('fresh seasons at %s', (_, latitude, units, place) => {
  test.each<Readonly<Record<string, string>>>([
    {},
    { 'Planted out': '2027-06-01' },
    { Sown: '2027-09-15' },
    { 'Planted out': '2027-01-15', Bed: 'A 1' },
  ])('with %o say whole sentences', (more) => {
    const said = texts(planted(latitude, units, place, more)).filter((text) => !text.startsWith(UNREAD));
    expect(said.length).toBeGreaterThan(50);
    expect(said.filter((text) => HOLES.test(text.slice(text.indexOf(': ') + 2)))).toEqual([]);
  });
});

test('cold, heat and long days are told where they send a crop to seed, and not of crops that they do nothing to', () => {
  const season = planted('36', 'us', 'Raleigh NC', { 'Planted out': '2027-04-15' });
  expect(season.value('Plantings', 'Lettuce, head', 'Cold says')).toBeNull();
  expect(season.value('Plantings', 'Lettuce, head', 'Heat says')).toMatch(/^\d+ days above the mean .*, \d+ of which/);
  expect(season.value('Plantings', 'Celery', 'Cold says')).toMatch(/^\d+ days of full cold after .* about \d+/);
  expect(season.value('Plantings', 'Celery', 'Heat says')).toBeNull();
});
