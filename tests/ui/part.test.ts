// Acts whose code is fetched when the first of them asks are done in the order in which they were asked for.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { part } from '../../ui/browser/store/part.ts';

test('acts are done in the order they were asked for, in whatever order fetches would be answered', async () => {
  await fc.assert(
    fc.asyncProperty(fc.scheduler(), fc.integer({ min: 2, max: 6 }), async (turns, acts) => {
      const done: number[] = [];
      const coming = part(() => turns.schedule(Promise.resolve('came')));
      const asked = Array.from({ length: acts }, (_, at) => coming().then(() => done.push(at)));
      await turns.waitAll();
      await Promise.all(asked);
      expect(done).toEqual(Array.from({ length: acts }, (_, at) => at));
    }),
  );
});

test('what did not come is asked for again, and what came is not', async () => {
  let asked = 0;
  const coming = part(async () => {
    asked += 1;
    if (asked === 1) throw new Error('no way to it');
    return asked;
  });
  await expect(coming()).rejects.toThrow('no way to it');
  expect(await coming()).toBe(2);
  expect(await coming()).toBe(2);
});
