// The canonical text of a formula: where parentheses and quotes are needed and where not, for each kind of part.

import { describe, expect, test } from 'vitest';
import { parseFormula } from '../../engine/language/parser.ts';
import { bracketed, printFormula, quoted, tableName } from '../../engine/language/printer.ts';
import { isUnit, withoutPlaces } from './trees.ts';

test.each([
  ['8 ft', '8 ft'],
  ['"a""b"', '"a""b"'],
  ['false', 'FALSE'],
  ["1 + 'Beds'", "1 + 'Beds'"],
  ["rows('Beds')", 'ROWS(Beds)'],
  ["rows('beds.old')", 'ROWS(beds.old)'],
  ["rows('true')", "ROWS('true')"],
  ["rows('False')", "ROWS('False')"],
  ["rows('2 beds')", "ROWS('2 beds')"],
  ["rows('beds 2')", "ROWS('beds 2')"],
  ["rows('_x')", 'ROWS(_x)'],
  ["rows('beds.')", "ROWS('beds.')"],
  ["rows('größe')", 'ROWS(größe)'],
  ["'Beds'[A]", 'Beds[A]'],
  ["'false'[A]", "'false'[A]"],
  ['f()', 'F()'],
  ['f(;)', 'F(; )'],
  ['f(1,2)', 'F(1; 2)'],
  ['f((1+2);(3))', 'F(1 + 2; 3)'],
  ['[a]]b].[c[[d]', '[a]]b].[c[[d]'],
])('%s is printed as %s', (text, printed) => {
  const parsed = parseFormula(text, isUnit);
  expect(parsed.ok && printFormula(parsed.tree)).toBe(printed);
});

describe('parentheses', () => {
  test.each([
    ['1 + 2 - 3', '1 + 2 - 3'],
    ['1 + (2 - 3)', '1 + (2 - 3)'],
    ['1 * (2 / 3)', '1 * (2 / 3)'],
    ['(1 & 2) = 3', '1 & 2 = 3'],
    ['1 & (2 = 3)', '1 & (2 = 3)'],
    ['(1 = 2) = 3', '1 = 2 = 3'],
    ['1 = (2 < 3)', '1 = (2 < 3)'],
    ['(1 * 2) ^ 3', '(1 * 2) ^ 3'],
    ['1 * (2 ^ 3)', '1 * 2 ^ 3'],
    ['(1 + 2)%', '(1 + 2)%'],
    ['(-1)%', '-1%'],
    ['-(1%)', '-(1%)'],
    ['(2 ^ 3)%', '(2 ^ 3)%'],
    ['2 ^ (3%)', '2 ^ 3%'],
    ['(5%) ^ 2', '5% ^ 2'],
    ['+(+(5))', '++5'],
    ['-(1 + 2)', '-(1 + 2)'],
    ['-([A])', '-[A]'],
    ['2 ^ (-3)', '2 ^ -3'],
    ['(8 ft) ^ [N]', '(8 ft) ^ [N]'],
    ['8 ft ^ [N] ^ 2', '(8 ft) ^ [N] ^ 2'],
    ['(2 ^ 8 ft) ^ 2', '(2 ^ 8 ft) ^ 2'],
    ['(-8 ft) ^ 2', '(-8 ft) ^ 2'],
    ['((8 ft)%) ^ 2', '8 ft% ^ 2'],
    ['(-[A]) ^ 2', '-[A] ^ 2'],
    ['2 * 8 ft * 3', '2 * 8 ft * 3'],
    ['2 ^ 8 ft', '2 ^ 8 ft'],
  ])('%s is printed as %s, and that reads as the same tree', (text, printed) => {
    const parsed = parseFormula(text, isUnit);
    expect(parsed.ok && printFormula(parsed.tree)).toBe(printed);
    const again = parseFormula(printed, isUnit);
    expect(again.ok && withoutPlaces(again.tree)).toEqual(parsed.ok && withoutPlaces(parsed.tree));
  });
});

test('names and texts are written so that they can be read again', () => {
  expect(bracketed('In-row [cm] spacing')).toBe('[In-row [[cm]] spacing]');
  expect(tableName("Tom's beds")).toBe("'Tom''s beds'");
  expect(quoted('3" pots')).toBe('"3"" pots"');
  expect(quoted('3" pots', "'")).toBe("'3\" pots'");
});
