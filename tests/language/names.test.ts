// Names that mean nothing, or something else, in the sheet a formula stands in: every way of being near is told apart by
// its whole sentence, the part it marks and the fix. Formulas stand in Plantings of the invented plan unless said.

import { describe, expect, test } from 'vitest';
import { type Case, expectDiagnostic } from './diagnostic-case.ts';
import { checked, column, diagnosticOf, inUnit, link, sheet } from './plan.ts';

describe('columns', () => {
  test.each<Case>([
    ['[field]', '[field]', 'Plantings has no column field; Beds has: write [Bed].[Field].', '[Bed].[Field]'],
    [
      '1 + [last frost]',
      '[last frost]',
      'Plantings has no column last frost; Farm has: write Farm[Last frost].',
      '1 + Farm[Last frost]',
    ],
    [
      'SUM(Plantings[Germination])',
      'Plantings[Germination]',
      'Plantings has no column Germination; Varieties has: a link to it, or a function over Varieties[Germination], brings it here.',
    ],
    [
      '[Variety].[Bed width]',
      '[Bed width]',
      'Varieties has no column Bed width; Farm has: a link to it, or a function over Farm[Bed width], brings it here.',
    ],
    [
      '[Variety].[Zzzzzz]',
      '[Zzzzzz]',
      'Varieties has no column Zzzzzz. Pick one of its columns, or add this one first.',
    ],
    [
      '[Variety].[Crop].[Famly]',
      '[Famly]',
      'Crops has no column Famly; the nearest name is [Family].',
      '[Variety].[Crop].[Family]',
    ],
    [
      "COUNTA('Seed lots'[Quantiti])",
      "'Seed lots'[Quantiti]",
      "Seed lots has no column Quantiti; the nearest name is 'Seed lots'[Quantity].",
      "COUNTA('Seed lots'[Quantity])",
    ],
    [
      '[Variety].[Days to maturity].[Crop].[Family]',
      '[Days to maturity].[Crop]',
      "[Days to maturity] is not a link to another sheet, so [Crop] can't follow it.",
    ],
    ['[note].[Crop].[Family]', '[note].[Crop]', "[Note] is not a link to another sheet, so [Crop] can't follow it."],
    [
      'COUNTA(varieties[broken])',
      '[broken]',
      'The formula of Varieties[Broken] does not check yet; put that right first.',
    ],
    [
      'COUNTA(Plantings[Unchecked])',
      '[Unchecked]',
      'The formula of [Unchecked] does not check yet; put that right first.',
    ],
  ])('%s', (...one) => expectDiagnostic(one));

  test('in a sheet that nothing is reached from, the sheet that has the column is named', () => {
    const catalog = { tables: [sheet('Paths', []), sheet('My beds', [column('Width', inUnit('ft'))])] };
    expect(diagnosticOf('[width]', { catalog, table: 'paths' })).toEqual({
      from: 0,
      to: 7,
      why: "Paths has no column width; My beds has: a link to it, or a function over 'My beds'[width], brings it here.",
    });
  });

  test('a link to a sheet that is gone marks the link', () => {
    const columns = [column('Here', link('Again')), column('Away', link('Gone'))];
    const catalog = { tables: [sheet('Again', columns)] };
    expect(diagnosticOf('[Here].[away].[X]', { catalog, table: 'again' })).toEqual({
      from: 7,
      to: 13,
      why: "[Away] leads to a sheet that isn't there.",
    });
  });

  test('three links are followed in their order, and the cell has the place of the whole path', () => {
    expect(checked('1 + 0 * [Rows] & [variety].[crop].[crop]')).toMatchObject({
      right: { node: 'cell', links: ['variety', 'crop'], table: 'crops', column: 'crop', from: 17, to: 40 },
    });
  });
});

describe('whole columns', () => {
  test.each<Case>([
    [
      '2 * plantings[row spacing]',
      'plantings[row spacing]',
      "Plantings[Row spacing] is the whole column; this row's value is [Row spacing].",
      '2 * [Row spacing]',
    ],
    [
      'varieties[germination]',
      'varieties[germination]',
      'Varieties[Germination] is the whole column; the value this row is linked to is [Variety].[Germination].',
      '[Variety].[Germination]',
    ],
  ])('%s', (...one) => expectDiagnostic(one));

  test('outside every sheet a whole column can only be totalled or looked up in', () => {
    expect(diagnosticOf('Beds[Length]', { table: undefined })).toEqual({
      from: 0,
      to: 12,
      why: 'Beds[Length] is a whole column, and one value is wanted here: total it, as in SUM(Beds[Length]), or look one up.',
    });
  });
});

describe('bare words', () => {
  test.each<Case>([
    ["1 + 'seed lots'", "'seed lots'", "seed lots is a sheet; name one of its columns, as in 'Seed lots'[Column]."],
    ['1 + sum', 'sum', 'SUM is a function: write SUM(...) with its parts.'],
    ['1 + today', 'today', 'TODAY is a function: write TODAY(...) with its parts.', '1 + TODAY()'],
    ['AB12', 'AB12', 'Cells have no addresses such as AB12 here: name the column in brackets, as in [Length].'],
    ['abc7', 'abc7', 'Cells have no addresses such as abc7 here: name the column in brackets, as in [Length].'],
    ["'$B$3'", "'$B$3'", 'Cells have no addresses such as $B$3 here: name the column in brackets, as in [Length].'],
    ["'B$12'", "'B$12'", 'Cells have no addresses such as B$12 here: name the column in brackets, as in [Length].'],
    ['ABCD12', 'ABCD12', 'There is no ABCD12 here. Columns stand in brackets, text in double quotes.'],
    ['_A1', '_A1', 'There is no _A1 here. Columns stand in brackets, text in double quotes.'],
    ['A1B', 'A1B', 'There is no A1B here. Columns stand in brackets, text in double quotes.'],
    ['QXZ', 'QXZ', 'There is no QXZ here. Columns stand in brackets, text in double quotes.'],
  ])('%s', (...one) => expectDiagnostic(one));

  test.each(['Lenght', 'Length'])('%s outside every sheet is near nothing', (word) => {
    expect(diagnosticOf(word, { table: undefined })).toEqual({
      from: 0,
      to: 6,
      why: `There is no ${word} here. Columns stand in brackets, text in double quotes.`,
    });
  });
});

describe('a formula that stands in no sheet', () => {
  test('has no row, so it can only name a sheet with the column', () => {
    expect(diagnosticOf('1 + [Variety].[Crop]', { table: undefined })).toEqual({
      from: 4,
      to: 20,
      why: '[Variety] names a column of this row, and this formula stands in no sheet: write Table[Variety].',
    });
    expect(diagnosticOf('[a ]] b]', { table: 'nowhere' }).why).toBe(
      '[a ]] b] names a column of this row, and this formula stands in no sheet: write Table[a ]] b].',
    );
  });

  test('names the sheet of a column that does not check', () => {
    expect(diagnosticOf('COUNTA(Plantings[Unchecked])', { table: undefined })).toEqual({
      from: 16,
      to: 27,
      why: 'The formula of Plantings[Unchecked] does not check yet; put that right first.',
    });
  });
});
