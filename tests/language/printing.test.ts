// Printing and reading are each other's inverse, and the printed text is the one canonical form.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseFormula } from '../../engine/language/parser.ts';
import { printFormula } from '../../engine/language/printer.ts';
import { isUnit, trees, withoutPlaces } from './trees.ts';

function reprinted(text: string): string {
  const parsed = parseFormula(text, isUnit);
  return parsed.ok ? printFormula(parsed.tree) : parsed.diagnostic.why;
}

test('what is printed reads as the same tree, whatever the tree', () => {
  fc.assert(
    fc.property(trees(), (tree) => {
      const parsed = parseFormula(printFormula(tree), isUnit);
      expect(parsed.ok ? withoutPlaces(parsed.tree) : parsed.diagnostic).toEqual(withoutPlaces(tree));
    }),
    { numRuns: 3000 },
  );
});

test.each([
  ['=1+2*3', '1 + 2 * 3'],
  ['(1+2)*3', '(1 + 2) * 3'],
  ['((1*2))/(3)', '1 * 2 / 3'],
  ['1-(2-3)', '1 - (2 - 3)'],
  ['(1-2)-3', '1 - 2 - 3'],
  ['2^(3^2)', '2 ^ (3 ^ 2)'],
  ['(2^3)^2', '2 ^ 3 ^ 2'],
  ['-(2^2)', '-(2 ^ 2)'],
  ['(-2)^2', '-2 ^ 2'],
  ['(5%)%', '5%%'],
  ['-(5%)', '-(5%)'],
  ['if([A]>3,,"x")', 'IF([A] > 3; ; "x")'],
  ['8ft^2', '8 ft^2'],
  ['(8 ft)^2', '(8 ft) ^ 2'],
  ['(-(8 ft))^2', '(-8 ft) ^ 2'],
  ['2.5 lb / ft', '2.5 lb/ft'],
  ["sum('Seed lots'[ Quantity ])", "SUM('Seed lots'[Quantity])"],
  ["ROWS('Beds')", 'ROWS(Beds)'],
  ["ROWS('Tom''s beds')", "ROWS('Tom''s beds')"],
  ["'TRUE'[A]", "'TRUE'[A]"],
  ['[a [[b]] c]', '[a [[b]] c]'],
  ['[Variety] . [Crop].[Family]', '[Variety].[Crop].[Family]'],
  ['"he said ""yes"""', '"he said ""yes"""'],
  ['true()', 'TRUE'],
  ['[A]≤3×2', '[A] <= 3 * 2'],
])('%s is printed as %s', (text, printed) => {
  expect(reprinted(text)).toBe(printed);
});
