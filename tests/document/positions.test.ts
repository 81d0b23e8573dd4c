// Places of rows: always room between two, and short however many rows are put at the end.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { POSITION, positionBetween, positionsBetween } from '../../engine/document/positions.ts';

const sorted = (places: readonly string[]): readonly string[] => [...places].sort((a, b) => (a < b ? -1 : 1));

test('between any two there is room, wherever rows were put before', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.nat(), fc.integer({ min: 1, max: 9 })), { maxLength: 60 }), (puts) => {
      const places: string[] = [];
      for (const [where, count] of puts) {
        const at = where % (places.length + 1);
        places.splice(at, 0, ...positionsBetween(places[at - 1] ?? '', places[at], count));
      }
      expect(sorted(places)).toEqual(places);
      expect(new Set(places).size).toBe(places.length);
      for (const place of places) expect(place).toMatch(POSITION);
    }),
    { numRuns: 500 },
  );
});

test('between two that are one, or the wrong way round, there is none, and it says so', () => {
  expect(() => positionBetween('K', 'K')).toThrow('no place between K and K');
  expect(() => positionsBetween('e', 'K', 3)).toThrow('no place between e and K');
});

test('200,000 rows put at the end one by one have places of at most eight letters', () => {
  let last = '';
  let longest = 0;
  for (let i = 0; i < 200_000; i++) {
    const next = positionBetween(last, undefined);
    if (!(next > last)) throw new Error(`${next} does not stand after ${last}`);
    longest = Math.max(longest, next.length);
    last = next;
  }
  expect(longest).toBeLessThanOrEqual(8);
});
