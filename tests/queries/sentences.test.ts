// Every formula of the template is told in words: through the demo's rows and those of fresh seasons, no sentence has a function's
// name in it, a hole where something is blank, or a unit that the workbook doesn't read in.

import { beforeAll, describe, expect, test } from 'vitest';
import { demoFarm } from '../../demo/farm.ts';
import { FUNCTIONS } from '../../engine/functions/index.ts';
import { sayWhy, sheetViews } from '../../engine/index.ts';
import { libraryRows } from '../../sheets-templates/library/library.ts';
import { SEASON } from '../../sheets-templates/season.ts';
import { type Book, started } from '../book.ts';
import { runs } from '../runs.ts';
import { seasonOf } from '../sheets/season.ts';

const CAPITALS = /\b[A-Z][A-Z0-9.]*[A-Z0-9]\b/g;
/** A comma or full stop behind nothing, two blanks, empty brackets, and lists and sums that lack a part. */
const HOLES =
  /\s[,.;]|[,;]\s*[,;.]|\s{2}|\(\s|\(\)|\b(?:and|or|plus|less|times|divided by|than|worked out from|the (?:sum|largest|smallest|average) of)(?:[,.;]|\s+(?:and|plus|times|divided)\b)/;
/** Units of the other system behind a figure; '2 in blocks' is the name of a tray, and the shape of bulbs is in g/cm³ for all; nobody reads in Cdeg and Fdeg. */
const ALIEN = {
  us: /\d (?:°C|[cm]?m[²³]?|kg|m?g|m?L|ha|kg\/\S+)(?![\w/])|[CF]deg/,
  si: /\d (?:°F|in[²³]?(?! blocks| store)|ft[²³]?|lb|oz|gal|acres?|lb\/\S+)(?![\w/])|[CF]deg/,
};
/** Enough of a sheet's rows to meet its branches in the long form. */
const ROWS = runs(4, 12);

function opened(start: Parameters<typeof started>[1]): Book {
  const found = started(SEASON, start);
  if (!found.ok) throw new Error(found.problems.join('\n'));
  return found.workbook;
}

/** A season as it stands when crops were ticked and nothing else was done: no climate, no dates. */
function fresh(latitude: string, units: 'us' | 'si'): Book {
  const crops = libraryRows().flatMap(({ Crop = '' }, at) =>
    at % 5 === 0 || /^(Garlic|Lettuce)/.test(Crop) ? [Crop] : [],
  );
  return seasonOf(
    {
      Beds: [{ Bed: 'A 1' }, { Bed: 'A 2' }],
      Varieties: crops.map((crop) => ({ Variety: crop, Crop: crop })),
      Plantings: crops.map((crop) => ({ Planting: crop, Variety: crop })),
    },
    { Latitude: latitude },
    { units },
  ).book;
}

function sentences(book: Book): readonly string[] {
  return sheetViews(book.workbook).flatMap(({ id, name, columns }) => {
    const rows = [...book.rows(name)];
    const some = rows.filter((_, at) => at % Math.ceil(rows.length / ROWS) === 0);
    return columns.flatMap((column) =>
      some.flatMap((row) => {
        const said = sayWhy(book.workbook, id, row, column.id);
        return said === undefined ? [] : [`${name} / ${column.name}: ${said.words}`];
      }),
    );
  });
}

const words = (sentence: string): string => sentence.slice(sentence.indexOf(': ') + 2);

describe.each<[string, 'us' | 'si', () => Book]>([
  ['the demo', 'us', () => opened(demoFarm)],
  ['the demo in cm and kg', 'si', () => opened({ ...demoFarm, units: 'si' })],
  ['a fresh season at 36 N', 'us', () => fresh('36', 'us')],
  ['a fresh season at 56 N', 'si', () => fresh('56', 'si')],
])('every sentence of %s', (name, units, open) => {
  let said: readonly string[] = [];
  beforeAll(() => {
    said = sentences(open());
  });

  test('says what functions do, never how they are called', () => {
    expect(said.length).toBeGreaterThan(1000);
    const named = said.filter((one) => [...words(one).matchAll(CAPITALS)].some(([name]) => FUNCTIONS.has(name)));
    expect(named.slice(0, 5)).toEqual([]);
  });

  test('has a word for every part', () => {
    expect(said.filter((one) => HOLES.test(words(one))).slice(0, 5)).toEqual([]);
  });

  test('has the units that the workbook reads in', () => {
    // What the demo's people typed stays in the units that they typed it in.
    const alien = name.endsWith('cm and kg') ? /[CF]deg/ : ALIEN[units];
    expect(said.filter((one) => alien.test(words(one))).slice(0, 5)).toEqual([]);
  });
});

test('what formulas of the template call is told as a grower would say it', () => {
  const season = seasonOf(
    {
      Beds: [{ Bed: 'A 1', Length: '50 ft', Width: '30 in' }],
      Varieties: [{ Variety: 'Test onion', Crop: 'Onion, bulb' }],
      Plantings: [{ Planting: 'First', Variety: 'Test onion', Bed: 'A 1', 'Planted out': '2027-04-20' }],
    },
    { 'Spacing step': '1 in' },
  );
  const told = (sheet: string, column: string): string =>
    sentences(season.book).find((one) => one.startsWith(`${sheet} / ${column}: `)) ?? '';
  expect(told('Plantings', 'In-row spacing')).toContain('rounded to the nearest Spacing step of Farm (1 in)');
  expect(told('Farm', 'Season starts')).toMatch(/because it is 1 January of Season \(2027\)/);
  expect(told('Weeks', 'Name')).toMatch(
    /because it is put together from the year of \(Week .* and the number of the week of/,
  );
});
