// What checks and what it gives: types, dimensions, display units and canonical numbers of whole formulas, as they would
// stand in the sheet Plantings of the invented plan beside this file. Exact factors: NIST SP 811 (2008), app. B.

import { describe, expect, test } from 'vitest';
import type { Typed } from '../../engine/language/typed.ts';
import { checked, choice, inUnit, link, sheet, shortType } from './plan.ts';

function typeOf(text: string): string {
  return shortType(checked(text).type);
}

describe('constants are folded into canonical numbers and keep their unit for showing', () => {
  test.each([
    ['8 in', 'number in', 0.2032],
    ['-8 in', 'number in', -0.2032],
    ['1 acre', 'number acre', 4046.8564224],
    ['2.5 lb/ft', 'number lb/ft', (2.5 * 0.45359237) / 0.3048],
    ['20 degC', 'temperature degC', 293.15],
    ['-5 degC', 'temperature degC', 268.15],
    ['5 Cdeg', 'number Cdeg', 5],
    ['2 h', 'number h', 2 / 24],
    ['57%', 'number %', 0.57],
    ['3 EUR', 'number EUR', 3],
    ['40 seeds', 'number seeds', 40],
    ['7', 'number', 7],
    ['-0', 'number', 0],
    ['"x"', 'text', 'x'],
    ['TRUE', 'yesno', true],
  ])('%s', (text, type, value) => {
    const typed = checked(text);
    expect(shortType(typed.type)).toBe(type);
    expect(typed).toMatchObject({
      node: 'constant',
      value: typeof value === 'number' ? expect.closeTo(value, 12) : value,
    });
  });
});

describe('operations give the type that follows from their parts', () => {
  test.each([
    ['[Length] + [Row spacing]', 'number ft'],
    ['[Row spacing] - [Length]', 'number in'],
    ['[Length] * Farm[Bed width]', 'number ft2'],
    ['[Mass] / [Length]', 'number lb/ft'],
    ['[Yield per length] * [Length]', 'number lb'],
    ['[Length] / [Row spacing]', 'number'],
    ['[Yield per length] * [Length] * [Price]', 'number EUR'],
    ['Farm[Wage] * 3 h', 'number EUR'],
    ['[Seeds] / [Variety].[Crop].[Seeds per gram]', 'number g'],
    ['[Share] * [Mass]', 'number lb'],
    ['[Area] ^ 0.5', 'number ft'],
    ['[Area] ^ (1 / 2)', 'number ft'],
    ['[Length] ^ 2', 'number ft2'],
    ['[Length] ^ -1', 'number 1/ft'],
    ['[Length] ^ (3 - 1 * 1)', 'number ft2'],
    ['[Length] ^ (2 ^ 1)', 'number ft2'],
    ['[Length] ^ 0', 'number'],
    ['[Length] ^ -(-2)', 'number ft2'],
    ['2 ^ [Rows]', 'number'],
    ['[Share]%', 'number %'],
    ['1 + [Share]', 'number'],
    ['[Share] + 1', 'number %'],
    ['100 * (1 + 10%)', 'number'],
    ['-[Length]', 'number ft'],
    ['+[Length]', 'number ft'],
    ['+[Sown]', 'date'],
    ['[Sown] + 7 days', 'date'],
    ['7 days + [Sown]', 'date'],
    ['[Sown] - [Days]', 'date'],
    ['[Sown] + [Variety].[Days to maturity]', 'date'],
    ['[Planted out] - [Sown]', 'number day'],
    ['[Low] - [High]', 'number Fdeg'],
    ['[Low] - 5 degC', 'number Fdeg'],
    ['[Low] + 5 Fdeg', 'temperature degF'],
    ['5 Cdeg + [Low]', 'temperature degF'],
    ['[Low] - 5 Cdeg', 'temperature degF'],
    ['"a" & [Rows] & [Variety] & [Sown]', 'text'],
    ['[Length] >= [Row spacing]', 'yesno'],
    ['[Low] < [High]', 'yesno'],
    ['[Sown] = [Planted out]', 'yesno'],
    ['[Start] = "blocks"', 'yesno'],
    ['[Start] <> [Cover]', 'yesno'],
    ['[Treated] = TRUE', 'yesno'],
    ['[Variety] = [Variety]', 'yesno'],
  ])('%s gives %s', (text, type) => {
    expect(typeOf(text)).toBe(type);
  });

  test('a per cent sign divides by 100, so that no dust comes in', () => {
    expect(checked('[Rows]%')).toMatchObject({
      node: 'binary',
      operator: '/',
      right: { node: 'constant', value: 100 },
    });
  });

  test('minus before what is not written out stays an operation', () => {
    expect(checked('-[Length]')).toMatchObject({ node: 'negate', operand: { node: 'cell', column: 'length' } });
  });
});

describe('names find their column', () => {
  test('of this row, exactly first and then ignoring case', () => {
    expect(checked('[length]')).toMatchObject({ node: 'cell', links: [], table: 'plantings', column: 'length' });
    const columns = [
      { id: 'small', name: 'x', type: inUnit('ft') },
      { id: 'capital', name: 'X', type: inUnit('lb') },
    ];
    const context = { catalog: { tables: [sheet('T', columns)] }, table: 't' };
    expect(shortType(checked('[X]', context).type)).toBe('number lb');
    expect(checked('[X]', context)).toMatchObject({ table: 't', column: 'capital' });
  });

  test('through links, as often as it takes; the table is the one reached', () => {
    expect(checked('[variety].[crop].[Family]')).toMatchObject({
      node: 'cell',
      links: ['variety', 'crop'],
      table: 'crops',
      column: 'family',
      type: { kind: 'text' },
      from: 0,
      to: 25,
    });
  });

  test('of a one-row sheet as a single value', () => {
    expect(checked('farm[bed width]')).toMatchObject({ node: 'single', table: 'farm', column: 'bed-width' });
  });
});

describe('a bare 0 is the zero of any quantity', () => {
  test.each([
    ['[Length] > 0', 'yesno'],
    ['0 < [Length]', 'yesno'],
    ['[Length] - 0', 'number ft'],
    ['0 - [Length]', 'number ft'],
    ['MAX([Length]; 0; 3 in)', 'number ft'],
    ['MAX(0; [Row spacing]; [Length])', 'number in'],
    ['IF([Treated]; 0; [Mass])', 'number lb'],
    ['IF([Treated]; [Mass]; IF([Treated]; 0; 0))', 'number lb'],
    ['IF([Treated]; IF([Treated]; ; 0); [Mass])', 'number lb'],
    ['[Sown] + 0', 'date'],
    ['[Low] - 0', 'temperature degF'],
    ['TRAYAREA(0)', 'number m2'],
    ['0 + 0', 'number'],
  ])('%s gives %s', (text, type) => {
    expect(typeOf(text)).toBe(type);
  });

  test('and takes its type in the typed tree', () => {
    const typed = checked('MAX([Length]; 0)');
    const zero = typed.node === 'call' ? typed.args[1] : undefined;
    expect(zero).toMatchObject({ node: 'constant', value: 0 });
    expect(zero === undefined ? '' : shortType(zero.type)).toBe('number ft');
  });

  test('also where a branch holds another choice', () => {
    const typed = checked('IF([Treated]; [Mass]; IF([Treated]; 0; ))');
    const inner = typed.node === 'call' ? typed.args[2] : undefined;
    const types = inner?.node === 'call' ? inner.args.map((arg) => shortType(arg.type)) : [];
    expect(types).toEqual(['yesno', 'number lb', 'number lb']);
  });
});

describe('branches and arguments of one letter agree on a type', () => {
  test.each([
    ['IF([Treated]; [Length]; 3 in)', 'number ft'],
    ['IF([Treated]; 3 in; [Length])', 'number ft'],
    ['IF([Treated]; 3 in; 2 ft)', 'number in'],
    ['IF([Treated]; 3 in)', 'number in'],
    ['IF([Treated]; ; [Sown])', 'date'],
    ['IF([Treated]; [Sown]; )', 'date'],
    ['IF([Treated]; [Start]; [Start])', 'choice blocks/sets'],
    ['IF([Treated]; [Start]; [Cover])', 'text'],
    ['IF([Treated]; "x"; [Start])', 'text'],
    ['IF([Treated]; [Variety]; [Variety])', 'link Varieties'],
    ['IF([Treated]; [Variety]; "none")', 'text'],
    ['IF([Treated]; [Low]; 5 degC)', 'temperature degF'],
    ['IF([Treated]; ; )', 'number'],
    ['IFERROR([Length]; [Row spacing])', 'number ft'],
    ['SWITCH([Rows]; 1; "a"; 2; "b")', 'text'],
    ['SWITCH([Rows]; 1; [Length]; 2 ft)', 'number ft'],
    ['IFS([Treated]; 1 in; TRUE; 2 in)', 'number in'],
    ['MAX([Sown]; [Planted out])', 'date'],
    ['AVERAGE(Plantings[Low])', 'temperature degF'],
    ['SUM(Plantings[Length]; [Row spacing])', 'number ft'],
    ['SQRT([Area])', 'number ft'],
    ['SLOPE(Plantings[Mass]; Plantings[Length])', 'number lb/ft'],
    ['POWER([Length]; 2)', 'number ft'],
    ['SQRT(0)', 'number'],
    ['COUNTA(Plantings[Length]; [Note])', 'number'],
  ])('%s gives %s', (text, type) => {
    expect(typeOf(text)).toBe(type);
  });

  test('a link among texts is read by its key', () => {
    expect(checked('IF([Treated]; [Variety]; "none")')).toMatchObject({
      args: [{}, { node: 'key', operand: { node: 'cell', column: 'variety' } }, { node: 'constant', value: 'none' }],
    });
    expect(checked('[Variety] = "x"')).toMatchObject({ left: { node: 'key' }, right: { node: 'constant' } });
    expect(checked('[Start] < [Variety]')).toMatchObject({ left: { node: 'cell' }, right: { node: 'key' } });
    expect(checked('[Variety] < [Variety]')).toMatchObject({ left: { node: 'key' }, right: { node: 'key' } });
    expect(checked('[Variety] & ""')).toMatchObject({ left: { node: 'key' } });
    expect(checked('LEFT([Variety]; 2)')).toMatchObject({ args: [{ node: 'key' }, {}] });
  });

  test('links to one sheet are compared by row', () => {
    expect(checked('[Variety] = [Variety]')).toMatchObject({ left: { node: 'cell' }, right: { node: 'cell' } });
  });
});

describe('arguments left out stand as blanks in their place', () => {
  test('in the middle and after a last separator', () => {
    expect(checked('IF([Treated]; ; 3)')).toMatchObject({ args: [{}, { node: 'blank' }, { node: 'constant' }] });
    expect(checked('IF([Treated]; [Mass]; )')).toMatchObject({ args: [{}, {}, { node: 'blank' }] });
    const typed = checked('WEIGH(50%; )');
    const blank = typed.node === 'call' ? typed.args[1] : undefined;
    expect(blank?.node).toBe('blank');
    expect(blank === undefined ? '' : shortType(blank.type)).toBe('number m');
  });

  test('but not where nothing follows', () => {
    const typed = checked('IF([Treated]; 1)');
    expect(typed.node === 'call' ? typed.args.length : 0).toBe(2);
  });
});

describe('whole columns, sheets and conditions', () => {
  test('a column argument names its sheet and column', () => {
    expect(checked('SUM(plantings[length])')).toMatchObject({
      args: [{ node: 'column', table: 'plantings', column: 'length' }],
    });
  });

  test("a one-row sheet's column is one value among values and a column where a column is wanted", () => {
    expect(checked('SUM(Farm[Bed width])')).toMatchObject({ args: [{ node: 'single' }] });
    expect(checked('COUNTIF(Farm[Bed width]; ">3 in")')).toMatchObject({ args: [{ node: 'column' }, {}] });
  });

  test('a sheet stands bare or in quotes', () => {
    expect(checked('ROWS(beds)')).toMatchObject({ args: [{ node: 'table', table: 'beds' }] });
    expect(checked("ROWS('Seed lots')")).toMatchObject({ args: [{ node: 'table', table: 'seed-lots' }] });
  });

  test("the workbook's day is a node of its own", () => {
    expect(checked('TODAY()')).toMatchObject({ node: 'today', type: { kind: 'date' } });
  });

  function condition(column: string, text: string): Typed | undefined {
    const typed = checked(`COUNTIF(Plantings[${column}]; ${text})`);
    return typed.node === 'call' ? typed.args[1] : undefined;
  }

  test.each<[string, string, string, Record<string, unknown>]>([
    ['Length', '">=8 in"', '>=', { node: 'constant', value: expect.closeTo(0.2032, 12) }],
    ['Length', '" < -8 in"', '<', { node: 'constant', value: expect.closeTo(-0.2032, 12) }],
    ['Length', '">0"', '>', { node: 'constant', value: 0 }],
    ['Length', '8 in', '=', { node: 'constant', value: expect.closeTo(0.2032, 12) }],
    ['Length', '">" & [Row spacing]', '>', { node: 'cell', column: 'row-spacing' }],
    ['Length', '"<=" & ([Length] + 1 ft)', '<=', { node: 'binary' }],
    ['Share', '">50%"', '>', { node: 'constant', value: 0.5 }],
    ['Rows', '"3"', '=', { node: 'constant', value: 3 }],
    ['Rows', '"<>3"', '<>', { node: 'constant', value: 3 }],
    ['Rows', '"=3"', '=', { node: 'constant', value: 3 }],
    ['Low', '"<40 degF"', '<', { node: 'constant', value: expect.closeTo(((40 + 459.67) * 5) / 9, 10) }],
    ['Sown', '">=1970-01-02"', '>=', { node: 'constant', value: 1 }],
    ['Sown', '">" & [Planted out]', '>', { node: 'cell', column: 'planted-out' }],
    ['Treated', '"yes"', '=', { node: 'constant', value: true }],
    ['Treated', '"<>false"', '<>', { node: 'constant', value: false }],
    ['Treated', '[Treated]', '=', { node: 'cell' }],
    ['Note', '"x y"', '=', { node: 'constant', value: 'x y' }],
    ['Note', '"<>" & [Note]', '<>', { node: 'cell', column: 'note' }],
    ['Note', '">=a" & [Note]', '>=', { node: 'binary', operator: '&', left: { value: 'a' } }],
    ['Note', '"<" & [Note] & "z"', '<', { node: 'binary', operator: '&', right: { value: 'z' } }],
    ['Note', '"bed " & [Rows]', '=', { node: 'binary', operator: '&', left: { value: 'bed ' } }],
    ['Note', '[Variety]', '=', { node: 'key' }],
    ['Variety', '"<>x"', '<>', { node: 'constant', value: 'x', type: { kind: 'text' } }],
    ['Variety', '[Variety]', '=', { node: 'cell', type: { kind: 'link' } }],
    ['Variety', '[Note]', '=', { node: 'cell', type: { kind: 'text' } }],
    ['Start', '[Cover]', '=', { node: 'cell' }],
    ['Seeds', '"<>"', '<>', { node: 'blank' }],
    ['Seeds', '"="', '=', { node: 'blank' }],
    ['Seeds', '""', '=', { node: 'blank' }],
  ])('a condition on %s: %s', (column, text, comparison, value) => {
    expect(condition(column, text)).toMatchObject({ node: 'condition', comparison, value, type: { kind: 'yesno' } });
  });

  test('several columns of one sheet with their conditions', () => {
    expect(typeOf('SUMIFS(Plantings[Mass]; Plantings[Variety]; [Variety]; Plantings[Length]; ">1 ft")')).toBe(
      'number lb',
    );
  });

  test('a wanted key is looked up as text among texts', () => {
    expect(checked('XLOOKUP([Variety]; Varieties[Variety]; Varieties[Germination])')).toMatchObject({
      type: { kind: 'number' },
      args: [{ node: 'key' }, { node: 'column' }, { node: 'column' }],
    });
    expect(checked(`XLOOKUP("x"; 'Seed lots'[Variety]; 'Seed lots'[Quantity])`)).toMatchObject({
      args: [{ node: 'constant' }, { node: 'key', operand: { node: 'column' } }, { node: 'column' }],
    });
    expect(checked(`XLOOKUP([Variety]; 'Seed lots'[Variety]; 'Seed lots'[Quantity])`)).toMatchObject({
      args: [{ node: 'cell' }, { node: 'column' }, { node: 'column' }],
    });
  });
});

describe('a plain number where a parameter takes it in its own unit', () => {
  test('is turned into the canonical number by the exact ratio', () => {
    expect(checked('HOURS(14)')).toMatchObject({
      args: [{ node: 'binary', operator: '/', left: { node: 'constant', value: 14 }, right: { value: 24 } }],
    });
    expect(checked('WARMTH([Rows])')).toMatchObject({
      type: { kind: 'temperature' },
      args: [
        {
          node: 'binary',
          operator: '+',
          left: { node: 'cell' },
          right: { value: 273.15 },
          type: { kind: 'temperature' },
        },
      ],
    });
    expect(checked('HOURS(2 day)')).toMatchObject({ args: [{ node: 'constant', value: 2 }] });
  });
});

describe('the whole formula fills the column it is for', () => {
  test('where the type is the one wanted, whatever its unit', () => {
    expect(shortType(checked('[Row spacing] * 2', { wanted: inUnit('ft') }).type)).toBe('number in');
    expect(checked('[Note]', { wanted: choice('a') })).toMatchObject({ node: 'cell' });
  });

  test('a bare 0, a blank and a key take its type', () => {
    expect(shortType(checked('0', { wanted: inUnit('lb') }).type)).toBe('number lb');
    expect(shortType(checked('IF([Treated]; 0; )', { wanted: inUnit('lb') }).type)).toBe('number lb');
    expect(shortType(checked('IF([Treated]; ; )', { wanted: { kind: 'date' } }).type)).toBe('date');
    expect(checked('[Variety]', { wanted: { kind: 'text' } })).toMatchObject({ node: 'key' });
    expect(checked('[Variety]', { wanted: link('Varieties') })).toMatchObject({ node: 'cell' });
  });
});
