// A bed through its season: plantings side by side never overlap, and what is free adds up.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { freeTimes, type Occupant, placeAlong } from '../../ui/browser/panels/bed-season/bed-calendar.ts';

const occupants = fc.array(
  fc
    .record({
      length: fc.integer({ min: 1, max: 10 }),
      from: fc.integer({ min: 0, max: 300 }),
      days: fc.integer({ min: 1, max: 120 }),
    })
    .map(({ length, from, days }): Occupant => ({ name: `${length} from ${from}`, length, from, until: from + days })),
  { maxLength: 8 },
);

test('one after the other stand in the same place, at the same time side by side', () => {
  const [early, late, beside] = placeAlong([
    { name: 'early', length: 10, from: 100, until: 150 },
    { name: 'late', length: 8, from: 150, until: 200 },
    { name: 'beside', length: 5, from: 160, until: 170 },
  ]);
  expect(early?.at).toBe(0);
  expect(late?.at).toBe(0);
  expect(beside?.at).toBe(8);
});

test('no two stand in the same place on the same day', () => {
  fc.assert(
    fc.property(occupants, (list) => {
      const placed = placeAlong(list);
      expect(placed).toHaveLength(list.length);
      placed.forEach((a, index) => {
        for (const b of placed.slice(index + 1)) {
          const sameDays = a.from < b.until && b.from < a.until;
          const samePlace = a.at < b.at + b.length - 1e-9 && b.at < a.at + a.length - 1e-9;
          expect(sameDays && samePlace).toBe(false);
        }
      });
    }),
  );
});

test('free times follow one another through the whole season and say what is left each day', () => {
  fc.assert(
    fc.property(occupants, (list) => {
      const pieces = freeTimes(list, 15, 0, 365);
      expect(pieces[0]?.from).toBe(0);
      expect(pieces.at(-1)?.until).toBe(365);
      pieces.forEach((piece, index) => {
        if (index > 0) expect(piece.from).toBe(pieces[index - 1]?.until);
        for (const day of [piece.from, piece.until - 1]) {
          const taken = list
            .filter((each) => each.from <= day && day < each.until)
            .reduce((sum, each) => sum + each.length, 0);
          expect(piece.free).toBe(15 - taken);
        }
      });
    }),
  );
});

test('an empty bed is free all season, in one piece', () => {
  expect(freeTimes([], 15, 0, 365)).toEqual([{ from: 0, until: 365, free: 15 }]);
});
