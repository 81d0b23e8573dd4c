// Cutting a text into tokens: numbers, names, quotes, units and signs with their places, and the diagnostic about each
// thing that is no part of a formula. `show` writes a token as kind, content and place.

import { describe, expect, test } from 'vitest';
import { cutFormula, type Token } from '../../engine/language/lexer.ts';
import { isUnit } from './trees.ts';

function show(token: Token): string {
  const place = `${token.from}-${token.to}`;
  switch (token.token) {
    case 'number':
      return `number ${token.value} ${place}`;
    case 'quantity':
      return `quantity ${token.value} ${token.unit} ${place} unit ${token.unitSpan.from}-${token.unitSpan.to}`;
    case 'text':
      return `text <${token.value}>${token.closed ? '' : ' open'} ${place}`;
    case 'bracket':
    case 'quoted':
      return `${token.token} <${token.name}>${token.closed ? '' : ' open'} ${place}`;
    case 'word':
      return `word ${token.word} ${place}`;
    case 'sign':
      return `sign ${token.sign} ${place}`;
    case 'end':
      return `end ${place}`;
  }
}

/** All tokens but the end, which must close the text. */
function cut(text: string): readonly string[] {
  const { tokens } = cutFormula(text, isUnit);
  const shown = tokens.map(show);
  expect(shown.at(-1)).toBe(`end ${text.length}-${text.length}`);
  return shown.slice(0, -1);
}

describe('numbers', () => {
  test.each([
    ['7', ['number 7 0-1']],
    ['12.75', ['number 12.75 0-5']],
    ['12.', ['number 12 0-3']],
    ['.25', ['number 0.25 0-3']],
    ['1e3', ['number 1000 0-3']],
    ['1E+12', ['number 1000000000000 0-5']],
    ['25e-2', ['number 0.25 0-5']],
    ['1e', ['number 1 0-1', 'word e 1-2']],
    ['1.2.3', ['number 1.2 0-3', 'number 0.3 3-5']],
    ['  42 ', ['number 42 2-4']],
    ['4\u00a0+\t2', ['number 4 0-1', 'sign + 2-3', 'number 2 4-5']],
  ])('%j', (text, tokens) => {
    expect(cut(text)).toEqual(tokens);
    expect(cutFormula(text, isUnit).diagnostic).toBe(undefined);
  });
});

describe('names', () => {
  test.each([
    ['SUM', ['word SUM 0-3']],
    ['BINOM.DIST(', ['word BINOM.DIST 0-10', 'sign ( 10-11']],
    ['log10', ['word log10 0-5']],
    ['_a1_b', ['word _a1_b 0-5']],
    ['größe', ['word größe 0-5']],
    // A letter and its accent as two signs.
    ['cafe\u0301s', ['word cafe\u0301s 0-6']],
    ['x.1e\u0301b', ['word x.1e\u0301b 0-6']],
    ['a.b_c.d', ['word a.b_c.d 0-7']],
    ['ab.', ['word ab 0-2', 'sign . 2-3']],
    ['a.(', ['word a 0-1', 'sign . 1-2', 'sign ( 2-3']],
    ['[ Row spacing ]', ['bracket <Row spacing> 0-15']],
    ['[a [[b]] c]*2', ['bracket <a [b] c> 0-11', 'sign * 11-12', 'number 2 12-13']],
    ['[Tom\'s "best"]', ['bracket <Tom\'s "best"> 0-14']],
    ["'Seed lots'[Lot]", ['quoted <Seed lots> 0-11', 'bracket <Lot> 11-16']],
    ["' Tom''s beds '", ["quoted <Tom's beds> 0-15"]],
    ['" a ""b"" "', ['text < a "b" > 0-11']],
    ['""', ['text <> 0-2']],
    ['"[x"', ['text <[x> 0-4']],
  ])('%j', (text, tokens) => {
    expect(cut(text)).toEqual(tokens);
    expect(cutFormula(text, isUnit).diagnostic).toBe(undefined);
  });
});

describe('units', () => {
  test.each([
    ['8in', ['quantity 8 in 0-3 unit 1-3']],
    ['8  in', ['quantity 8 in 0-5 unit 3-5']],
    ['3 fl oz', ['quantity 3 fl oz 0-7 unit 2-7']],
    ['3 fl  oz', ['quantity 3 fl oz 0-8 unit 2-8']],
    ['3 fl', ['number 3 0-1', 'word fl 2-4']],
    ['3 ft in', ['quantity 3 ft 0-4 unit 2-4', 'word in 5-7']],
    ['8 ft ^ 2', ['quantity 8 ft^2 0-8 unit 2-8']],
    ['8 ft^12', ['quantity 8 ft 0-4 unit 2-4', 'sign ^ 4-5', 'number 12 5-7']],
    ['8 ft^2.5', ['quantity 8 ft 0-4 unit 2-4', 'sign ^ 4-5', 'number 2.5 5-8']],
    ['2 lb  /  ft', ['quantity 2 lb/ft 0-11 unit 2-11']],
    ['2 lb/ft/day', ['quantity 2 lb/ft/day 0-11 unit 2-11']],
    ['2 lb/ft^2/day', ['quantity 2 lb/ft^2/day 0-13 unit 2-13']],
    ['2 lb/3', ['quantity 2 lb 0-4 unit 2-4', 'sign / 4-5', 'number 3 5-6']],
    ['2 lb/xx', ['quantity 2 lb 0-4 unit 2-4', 'sign / 4-5', 'word xx 5-7']],
    [
      '2 lb/ft(3)',
      ['quantity 2 lb 0-4 unit 2-4', 'sign / 4-5', 'word ft 5-7', 'sign ( 7-8', 'number 3 8-9', 'sign ) 9-10'],
    ],
    ['2 lb [A]', ['number 2 0-1', 'word lb 2-4', 'bracket <A> 5-8']],
    ['2 in (3)', ['number 2 0-1', 'word in 2-4', 'sign ( 5-6', 'number 3 6-7', 'sign ) 7-8']],
    ['5€', ['quantity 5 € 0-2 unit 1-2']],
    ['9 m²', ['quantity 9 m² 0-4 unit 2-4']],
    ['9 m2', ['quantity 9 m2 0-4 unit 2-4']],
    ['5 $', ['number 5 0-1']],
  ])('%j', (text, tokens) => {
    expect(cut(text)).toEqual(tokens);
  });

  test.each([
    ['20 °C', '°C'],
    ['20 n°', 'n°'],
    ['3 US$', 'US$'],
    ['3 m³', 'm³'],
    ['3 e\u0301t', 'e\u0301t'],
  ])('%j is one unit where it is known', (text, unit) => {
    const { tokens } = cutFormula(text, (symbol) => symbol === unit);
    expect(tokens[0]).toMatchObject({ token: 'quantity', unit, to: text.length });
  });

  test('each part and the whole have to be units, else the word or the stroke stays outside', () => {
    const known = new Set(['a', 'b', 'a^2']);
    const first = (text: string) => cutFormula(text, (symbol) => known.has(symbol)).tokens.map(show)[0];
    expect(first('1 a/b')).toBe('quantity 1 a 0-3 unit 2-3');
    expect(first('1 b^2')).toBe('quantity 1 b 0-3 unit 2-3');
    expect(first('1 a^2/b')).toBe('quantity 1 a^2 0-5 unit 2-5');
    expect(first('1 c/b')).toBe('number 1 0-1');
  });
});

describe('signs', () => {
  test.each([...'-+*/^&=<>%();,.', '<=', '>=', '<>'])('%s stands for itself', (sign) => {
    expect(cut(`a ${sign} b`)).toEqual([
      'word a 0-1',
      `sign ${sign} 2-${2 + sign.length}`,
      `word b ${3 + sign.length}-${4 + sign.length}`,
    ]);
  });

  test.each([
    ['≤', '<='],
    ['≥', '>='],
    ['≠', '<>'],
    ['×', '*'],
    ['·', '*'],
    ['÷', '/'],
    ['−', '-'],
    ['–', '-'],
  ])('%s stands for %s and keeps its own place', (written, sign) => {
    expect(cut(`a${written}b`)).toEqual(['word a 0-1', `sign ${sign} 1-2`, 'word b 2-3']);
    expect(cutFormula(`a${written}b`, isUnit).diagnostic).toBe(undefined);
  });

  test.each([
    ['==', '=', 'Equal is written with one sign: =.'],
    ['!=', '<>', 'Unequal is written <>.'],
    ['=>', '>=', 'At least is written >=.'],
    ['=<', '<=', 'At most is written <=.'],
    ['**', '^', 'A power is written with ^.'],
  ])('%s is read as %s, with a diagnostic', (written, sign, why) => {
    expect(cut(`a ${written} b`)).toEqual(['word a 0-1', `sign ${sign} 2-4`, 'word b 5-6']);
    expect(cutFormula(`a ${written} b`, isUnit).diagnostic).toEqual({
      from: 2,
      to: 4,
      why,
      fix: { text: sign, span: { from: 2, to: 4 } },
    });
  });
});

describe('what is no part of a formula is warned of once, and the rest is still cut', () => {
  test.each<[string, readonly string[], number, number, string]>([
    ['[Len', ['bracket <Len> open 0-4'], 0, 4, 'This [ is not closed: put ] after the name of the column.'],
    [
      '[ Len [B]',
      ['bracket <Len> open 0-6', 'bracket <B> 6-9'],
      0,
      6,
      'This [ is not closed: put ] after the name of the column.',
    ],
    [
      '1+[ ]+[]',
      ['number 1 0-1', 'sign + 1-2', 'bracket <> 2-5', 'sign + 5-6', 'bracket <> 6-8'],
      2,
      5,
      'Write the name of a column between the brackets.',
    ],
    [
      "1+'Se",
      ['number 1 0-1', 'sign + 1-2', 'quoted <Se> open 2-5'],
      2,
      5,
      "This ' is not closed: put ' after the name of the table.",
    ],
    ["' '", ['quoted <> 0-3'], 0, 3, 'Write the name of a table between the quotes.'],
    [
      '1&"a""',
      ['number 1 0-1', 'sign & 1-2', 'text <a"> open 2-6'],
      2,
      6,
      'This text is not closed: put " at its end.',
    ],
    ['1 # 2 ?', ['number 1 0-1', 'number 2 4-5'], 2, 3, '# has no meaning in a formula; take it out.'],
    ['1 \u{1F955} 2', ['number 1 0-1', 'number 2 5-6'], 2, 4, '\u{1F955} has no meaning in a formula; take it out.'],
    ['a]b', ['word a 0-1', 'word b 2-3'], 1, 2, 'This ] closes nothing: put [ before the name of the column.'],
    [
      'a:b',
      ['word a 0-1', 'word b 2-3'],
      1,
      2,
      'Columns are named whole, not by ranges of cells: write Table[Column].',
    ],
    [
      '1e400+2',
      ['number Infinity 0-5', 'sign + 5-6', 'number 2 6-7'],
      0,
      5,
      'This number is too large to reckon with.',
    ],
  ])('%j', (text, tokens, from, to, why) => {
    expect(cut(text)).toEqual(tokens);
    expect(cutFormula(text, isUnit).diagnostic).toEqual({ from, to, why });
  });

  test.each(['“', '”', '„', '«', '»'])('%s', (sign) => {
    expect(cutFormula(sign, isUnit).diagnostic?.why).toBe('Put text between straight quotes: "text".');
  });

  test.each(['‘', '’', '`', '´'])('%s', (sign) => {
    expect(cutFormula(sign, isUnit).diagnostic?.why).toBe(
      "Put the name of a table between straight quotes: 'Seed lots'.",
    );
  });

  test.each(['$', '€', '£'])('%s before its amount', (sign) => {
    expect(cutFormula(`${sign}5`, isUnit).diagnostic).toEqual({
      from: 0,
      to: 1,
      why: `Write the amount before its currency: 5 ${sign}.`,
    });
  });

  test.each(['{', '}'])('%s', (sign) => {
    expect(cutFormula(sign, isUnit).diagnostic?.why).toBe(
      'Lists of values are not written in formulas; put them in a table and name its column.',
    );
  });

  test.each([
    ['[A] * 8"', 6, '8 in'],
    ["[A] * 2.5'", 6, '2.5 ft'],
  ])('%s: inches and feet are written with letters', (text, from, fix) => {
    const { length } = text;
    expect(cutFormula(text, isUnit).diagnostic).toEqual({
      from,
      to: length,
      why: `Inches and feet are written with letters in a formula: ${fix}.`,
      fix: { text: fix, span: { from, to: length } },
    });
  });
});
