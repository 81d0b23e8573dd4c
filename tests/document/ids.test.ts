// Ids of rows that follow from others: what they are made of is told from them again, pairs of pairs and their events among them.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { eventRowId, pairRowId, partsOfPair } from '../../engine/document/ids.ts';

const single = fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9_.:-]{0,6}$/);
const { row } = fc.letrec<{ row: string; pair: string }>((tie) => ({
  row: fc.oneof({ maxDepth: 4 }, single, tie('pair')),
  pair: fc.tuple(tie('row'), tie('row')).map(([first, second]) => pairRowId(first, second)),
}));

test('the id of a pair tells its two rows', () => {
  fc.assert(
    fc.property(row, row, (first, second) => {
      expect(partsOfPair(pairRowId(first, second))).toEqual([first, second]);
    }),
  );
});

test('the id of an event tells its row, and the column whose date it is', () => {
  fc.assert(
    fc.property(row, (one) => {
      expect(partsOfPair(eventRowId(one, 'plantings', 'planted-out'))).toEqual([one, 'plantings.planted-out']);
    }),
  );
});

test('a row that follows from no others has no parts', () => {
  fc.assert(
    fc.property(single, (one) => {
      expect(partsOfPair(one)).toBeUndefined();
    }),
  );
});
