// The row of a text that is as a pattern with wildcards says: that which going through the texts one by one finds, whatever stands in
// the column; and however often a column is asked, it is gone through no more than a few times.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rowByWildcards } from '../../engine/functions/standard/wildcard-rows.ts';
import { fitsWildcards, smallLetters } from '../../engine/functions/standard/wildcards.ts';
import type { Scalar } from '../../engine/values/error.ts';
import { runs } from '../runs.ts';

function oneByOne(list: readonly Scalar[], pattern: string, way: 1 | -1): number {
  const fits = fitsWildcards(pattern);
  const found = list.flatMap((entry, row) => (typeof entry === 'string' && fits(smallLetters(entry)) ? [row] : []));
  return found.at(way > 0 ? 0 : -1) ?? -1;
}

test('is the first, or the last, of those that fit', () => {
  // Letters that small ones are two of, or none; a sign that stands before all others.
  const letter = fc.constantFrom('a', 'A', 'b', 'ß', 'İ', 'i', '\u0307', '🌱', '\0', ' ');
  const text = fc.array(letter, { maxLength: 4 }).map((list) => list.join(''));
  const entry: fc.Arbitrary<Scalar> = fc.oneof(
    { weight: 5, arbitrary: text },
    fc.constantFrom(null, 4, true, { error: 'value', why: 'none' } as const),
  );
  const pattern = fc
    .array(fc.oneof({ weight: 3, arbitrary: letter }, fc.constantFrom('*', '?', '~', '~*')), { maxLength: 4 })
    .map((list) => list.join(''));
  fc.assert(
    fc.property(
      fc.array(entry, { maxLength: 12 }),
      fc.oneof(
        pattern,
        text,
        text.map((one) => `${one}*`),
      ),
      fc.constantFrom(1 as const, -1 as const),
      (list, wanted, way) => {
        expect(rowByWildcards(list, wanted, way)).toBe(oneByOne(list, wanted, way));
      },
    ),
    { numRuns: runs(500, 20_000) },
  );
});

test('a column of two thousand names is gone through a few times for as many questions', () => {
  let reads = 0;
  const names: Scalar[] = Array.from({ length: 2000 }, (_, i) => `Planting ${i}`);
  const list = new Proxy(names, {
    get(target, property, receiver) {
      if (typeof property === 'string' && /^\d+$/.test(property)) reads += 1;
      return Reflect.get(target, property, receiver);
    },
  });
  const asked = names.map((name) => [
    rowByWildcards(list, `${name}*`, 1),
    rowByWildcards(list, `${name}`, -1),
    rowByWildcards(list, `*${name}`, 1),
  ]);
  expect(asked).toEqual(names.map((_, i) => [i, i, i]));
  expect(reads).toBeLessThanOrEqual(4 * names.length);
});
