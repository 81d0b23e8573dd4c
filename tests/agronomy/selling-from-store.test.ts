// Selling out of store: by hand, and as properties of random stores: nothing is made or lost, the first in order goes first, and
// nobody goes without while something is there.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { soldFromStore } from '../../engine/agronomy/selling-from-store.ts';

const week = (place: number, at: number, incoming: number, wanted: number) => ({ place, week: at, incoming, wanted });

function soldOf(weeks: readonly ReturnType<typeof week>[]): Float64Array {
  const column = (name: keyof ReturnType<typeof week>) => Float64Array.from(weeks, (one) => one[name]);
  return soldFromStore({
    place: column('place'),
    week: column('week'),
    incoming: column('incoming'),
    wanted: column('wanted'),
  }).byRow;
}

describe('selling out of store', () => {
  it('takes from the first lot while it lasts, then from the next', () => {
    const weeks = [week(2, 1, 50, 20), week(1, 1, 30, 20), week(1, 2, 0, 20), week(2, 2, 0, 20), week(2, 3, 0, 90)];
    expect([...soldOf(weeks)]).toEqual([0, 20, 10, 10, 40]);
  });

  it('counts what comes in in the week it comes, and knows nothing of a lot past its last week', () => {
    expect([...soldOf([week(1, 1, 10, 4), week(2, 2, 5, 9)])]).toEqual([4, 5]);
  });

  it('takes figures that are not known, or below nothing, for nothing', () => {
    expect([...soldOf([week(1, 1, Number.NaN, 5), week(1, 2, 5, Number.NaN), week(1, 3, -2, 4)])]).toEqual([0, 0, 4]);
    expect([...soldOf([])]).toEqual([]);
  });

  it('sells nothing of a row without a place or a week', () => {
    expect([...soldOf([week(Number.NaN, 1, 9, 4), week(1, 1, 10, 4), week(1, Number.NaN, 9, 4)])]).toEqual([0, 4, 0]);
  });

  it('shares what is taken of a lot that is told in two rows', () => {
    expect([...soldOf([week(1, 1, 6, 8), week(1, 1, 4, 8)])]).toEqual([4, 4]);
  });

  const amount = fc.double({ min: 0, max: 100, noNaN: true });
  const stores = fc.record({
    lots: fc.array(fc.array(amount, { minLength: 1, maxLength: 8 }), { minLength: 1, maxLength: 5 }),
    wanted: fc.array(amount, { minLength: 8, maxLength: 8 }),
  });

  it('keeps the books of random stores', () => {
    fc.assert(
      fc.property(stores, ({ lots, wanted }) => {
        const weeks = lots.flatMap((incoming, place) =>
          incoming.map((mass, at) => week(place + 1, at, mass, wanted[at] ?? 0)),
        );
        const sold = soldOf(weeks);
        // Places and weeks that are no whole numbers stand in the same order.
        expect(soldOf(weeks.map((one) => ({ ...one, place: one.place / 3, week: one.week / 7 })))).toEqual(sold);
        const held = lots.map(() => 0);
        for (let at = 0; at < 8; at++) {
          let taken = 0;
          let there = 0;
          let openAfterEarlier = false;
          for (const [place, incoming] of lots.entries()) {
            const row = weeks.findIndex((one) => one.place === place + 1 && one.week === at);
            if (row < 0) {
              held[place] = 0;
              continue;
            }
            const stock = (held[place] ?? 0) + (incoming[at] ?? 0);
            const took = sold[row] ?? Number.NaN;
            expect(took).toBeGreaterThanOrEqual(0);
            expect(took).toBeLessThanOrEqual(stock + 1e-9);
            // A later lot is touched only when every earlier one is empty.
            if (took > 1e-9) expect(openAfterEarlier).toBe(false);
            if (stock - took > 1e-9) openAfterEarlier = true;
            held[place] = stock - took;
            taken += took;
            there += stock;
          }
          expect(taken).toBeCloseTo(Math.min(wanted[at] ?? 0, there), 6);
        }
      }),
      { numRuns: 200 },
    );
  });
});
