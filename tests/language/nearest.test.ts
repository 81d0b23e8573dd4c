// Nearest names: distances worked out by hand, and what counts as near.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { editDistance, nearestName } from '../../engine/language/nearest.ts';

test.each([
  ['', '', 0],
  ['', 'abc', 3],
  ['abc', '', 3],
  ['kitten', 'sitting', 3],
  ['lenght', 'length', 1],
  ['ca', 'ac', 1],
  ['abcd', 'acbd', 1],
  ['onion', 'onions', 1],
  ['bed', 'bad', 1],
  // Restricted: a pair that was swapped is not touched again, so this takes three steps and not two.
  ['ca', 'abc', 3],
])('from %j to %j it takes %d', (a, b, steps) => {
  expect(editDistance(a, b)).toBe(steps);
});

test('the distance is 0 only for equal texts, the same both ways, and never above the longer text', () => {
  const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 7 });
  fc.assert(
    fc.property(word, word, (a, b) => {
      const steps = editDistance(a, b);
      expect(steps === 0).toBe(a === b);
      expect(editDistance(b, a)).toBe(steps);
      expect(steps).toBeLessThanOrEqual(Math.max(a.length, b.length));
      expect(steps).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
    }),
  );
});

test('the nearest name is within a third of the length, case aside, the first of equals', () => {
  const names = ['Length', 'Width', 'Row spacing', 'Rows'];
  expect(nearestName('lenght', names)).toBe('Length');
  expect(nearestName('WIDHT', names)).toBe('Width');
  expect(nearestName('Row', names)).toBe('Row spacing');
  expect(nearestName('Rowz', names)).toBe('Rows');
  expect(nearestName('Zzz', names)).toBe(undefined);
  expect(nearestName('Wxxxx', names)).toBe(undefined);
  expect(nearestName('Lexxth', names)).toBe('Length');
  expect(nearestName('Lexxxh', names)).toBe(undefined);
  expect(nearestName('ab', ['xb', 'ax'])).toBe('xb');
  expect(nearestName('a', [])).toBe(undefined);
  expect(nearestName('Ro', ['Row spacing'])).toBe(undefined);
  expect(nearestName('rows', ['Rowsx', 'Rows'])).toBe('Rows');
  expect(nearestName('Rowsx', ['Rows', 'Rowsy'])).toBe('Rows');
});
