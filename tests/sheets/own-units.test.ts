// What the template ships and says stands in the workbook's own units: cells of the library, notes, heads and what is found, in US
// customary units and in cm, kg and degrees Celsius. What is kept of a cell is not touched by how it is shown.

import { describe, expect, test } from 'vitest';
import { cellView, readEntry, sheetViews, toCanonical, writeWorkbookFile } from '../../engine/index.ts';
import { copyOf } from '../../ui/browser/grid/clipboard/copied.ts';
import { seasonOf } from './season.ts';

type System = 'us' | 'si';

/** Words of the other system that no grower of this one should meet; whole words behind a figure, or behind 'a' and 'per'. */
const ALIEN: Readonly<Record<System, RegExp>> = {
  us: /[CF]deg|deg[CF]|°C|\d (?:[cm]?m[²23]?|kg|g|m?L|kg\/\S+)\b|(?:an?|per) (?:square metre|hectare|m[²2]|litre)|plants\/m/,
  si: /[CF]deg|deg[CF]|°F|\d (?:inch(?:es)?|ft[²23]?|lb|oz|gal|lb\/\S+)\b|\d in(?= (?:wide|of|apart|deep)|[.,;:)])|(?:an?|per) (?:square foot|acre|ft[²2]|gallon)/,
};

/** Figures that a source is quoted with in brackets, and what the growing of onions is counted in everywhere. */
const quoted = (text: string): string => text.replace(/\([^)]*\)/g, '').replaceAll('g/cm3', '');

const seasons = { us: seasonOf({}), si: seasonOf({}, {}, { units: 'si' }) };

/** Typed cells of the rows that a fresh season comes with. */
function shippedCells(units: System) {
  const { book } = seasons[units];
  return sheetViews(book.workbook).flatMap(({ id, name, columns }) =>
    name === 'Farm'
      ? []
      : columns.flatMap((column) =>
          Array.from(book.rows(name), (row) => {
            const cell = cellView(book.workbook, id, row, column.id);
            return { sheet: id, name: `${name} / ${column.name} / ${book.rowName(name, row)}`, row, column, cell };
          }).filter(({ cell }) => cell.origin === 'entered' && cell.number !== undefined),
        ),
  );
}

describe.each<System>(['us', 'si'])('a fresh season in %s units', (units) => {
  const { book } = seasons[units];

  test("shows what came with the template in the head's unit, as exact as ever", () => {
    const cells = shippedCells(units);
    expect(cells.length).toBeGreaterThan(1000);
    expect(cells.filter(({ cell }) => cell.unit !== '').map(({ name, cell }) => `${name}: ${cell.text}`)).toEqual([]);
    for (const { sheet, name, row, column, cell } of cells) {
      const { type } = column;
      if (type?.kind !== 'number' && type?.kind !== 'temperature') throw new Error(name);
      // A share below one per cent is copied as any figure of its column, and has no other unit to come from.
      if (type.unit.symbol === '%') continue;
      // Copied, where it stands under a head, not a bit of it is lost: where that unit can't give it, it has its own.
      const { text } = copyOf(book.workbook, sheet, { rows: [{ id: '', slot: row }], columns: [column] }, false);
      const read = readEntry(text, type, book.workbook.document.entry);
      expect(read.ok && read.value, name).toBe(cell.value);
    }
  });

  test('notes, heads and findings have the same units', () => {
    const said = sheetViews(book.workbook).flatMap(({ name, about, cautions, columns }) => [
      // The head of a station's file is what it is.
      `${name}: ${about.replace('TMAX (degF)', '')}`,
      ...cautions.map((caution) => `${name}: ${caution}`),
      ...columns.flatMap((column) => [
        `${name} / ${column.name} ${column.unit}`,
        `${name} / ${column.name}: ${quoted(column.note)}`,
      ]),
    ]);
    const found = book.attention().map(({ says }) => says);
    expect([...said, ...found].filter((text) => ALIEN[units].test(text))).toEqual([]);
    expect(said.filter((text) => /[{}|]/.test(text))).toEqual([]);
  });
});

test('a rate printed in kilograms is read in pounds, rounded as its column is, and kept as it was', () => {
  const { book } = seasons.us;
  const [found] = shippedCells('us').filter(({ cell }) => cell.entry === '5.443 kg/h');
  expect(found?.cell.text).toBe('12');
  expect(found?.cell.fullUnit).toBe('lb/h');
  expect(found?.cell.value).toBe(5.443 * 24);
  if (found === undefined) return;
  const row = { id: '', slot: found.row };
  const { text } = copyOf(book.workbook, found.sheet, { rows: [row], columns: [found.column] }, false);
  const type = found.column.type;
  if (type?.kind !== 'number') throw new Error('no rate');
  expect(toCanonical(type.unit, Number(text))).toBe(found.cell.value);
});

test('a unit that a person typed stays, in the library too, and taking it back follows the workbook again', () => {
  const season = seasonOf({});
  const before = writeWorkbookFile(season.book.workbook.data());
  const shown = season.shown('Crops', 'Carrot', 'Row spacing');
  season.type('Crops', 'Carrot', 'Row spacing', '21 cm');
  expect(season.shown('Crops', 'Carrot', 'Row spacing')).toBe('21 cm');
  season.book.undo();
  expect(season.shown('Crops', 'Carrot', 'Row spacing')).toBe(shown);
  expect(writeWorkbookFile(season.book.workbook.data())).toEqual(before);
});

test('a difference of temperatures reads in degrees', () => {
  expect(
    sheetViews(seasons.us.book.workbook)
      .flatMap(({ columns }) => columns)
      .find(({ id }) => id === 'cover-gain')?.unit,
  ).toBe('°F');
  expect(
    sheetViews(seasons.si.book.workbook)
      .flatMap(({ columns }) => columns)
      .find(({ id }) => id === 'cover-gain')?.unit,
  ).toBe('°C');
});
