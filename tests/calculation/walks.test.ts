// Short walks of random work on the small workbook; tests/properties takes long ones.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { opened } from '../book.ts';
import { acts, perform } from '../properties/acts.ts';
import { snapshot } from '../properties/snapshot.ts';
import { SMALL } from '../workbook/small.ts';

test('after a few acts the workbook equals one worked out afresh, to the last bit', () => {
  fc.assert(
    fc.property(fc.array(acts, { minLength: 20, maxLength: 20 }), (sequence) => {
      const workbook = opened(SMALL);
      for (const act of sequence) perform(workbook, act);
      expect(snapshot(workbook)).toEqual(snapshot(workbook.reopened()));
    }),
    { numRuns: 6 },
  );
});
