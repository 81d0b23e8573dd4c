// Cheapest seed packs: against every combination tried by hand-written search, and cases worked out on paper.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cheapestCover, MOST_SEEDS, type Pack } from '../../engine/agronomy/seed-packs.ts';

/** Every combination that could be cheapest: no pack more often than alone covers the need. */
function cheapestBySearch(needed: number, packs: readonly Pack[]): number {
  const [first, ...others] = packs;
  if (needed <= 0) return 0;
  if (first === undefined) return Number.POSITIVE_INFINITY;
  let best = Number.POSITIVE_INFINITY;
  for (let count = 0; ; count += 1) {
    const rest = needed - count * first.seeds;
    best = Math.min(best, count * first.price + cheapestBySearch(rest, others));
    if (rest <= 0) return best;
  }
}

/** The cover the doc promises, of every combination: least cost, then fewest seeds, then fewest packs. */
function firstCover(needed: number, packs: readonly Pack[]): readonly number[] {
  const [first, ...others] = packs;
  if (first === undefined) return needed <= 0 ? [0, 0, 0] : [Number.POSITIVE_INFINITY, 0, 0];
  let best: readonly number[] = [Number.POSITIVE_INFINITY, 0, 0];
  for (let count = 0; (count - 1) * first.seeds < needed; count += 1) {
    const [cost = 0, seeds = 0, number = 0] = firstCover(needed - count * first.seeds, others);
    const whole = [cost + count * first.price, seeds + count * first.seeds, number + count];
    const apart = whole.map((value, k) => value - (best[k] ?? 0)).find((difference) => difference !== 0) ?? 0;
    if (apart < 0) best = whole;
  }
  return best;
}

const pack = fc.record({
  seeds: fc.integer({ min: 1, max: 40 }),
  price: fc.integer({ min: 0, max: 900 }).map((cents) => cents / 100),
});

describe('cheapest cover', () => {
  it('costs what the cheapest of all combinations costs', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 120 }), fc.array(pack, { minLength: 1, maxLength: 3 }), (needed, packs) => {
        const cover = cheapestCover(needed, packs);
        expect(cover?.cost).toBeCloseTo(cheapestBySearch(needed, packs), 6);
        expect(cover?.seeds).toBeGreaterThanOrEqual(needed);
      }),
    );
  });

  it('adds up: cost and seeds are those of the packs counted', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 20_000 }),
        fc.array(pack, { minLength: 1, maxLength: 6 }),
        (needed, packs) => {
          const cover = cheapestCover(needed, packs);
          const total = (value: (pack: Pack) => number): number =>
            packs.reduce((sum, one, k) => sum + value(one) * (cover?.counts[k] ?? Number.NaN), 0);
          expect(total((one) => one.price)).toBeCloseTo(cover?.cost ?? Number.NaN, 6);
          expect(total((one) => one.seeds)).toBe(cover?.seeds);
        },
      ),
    );
  });

  it('keeps to the cheapest where the bulk is bought in best-value packs', () => {
    const packs = [
      { seeds: 7, price: 2.05 },
      { seeds: 12, price: 3.1 },
      { seeds: 5, price: 1.6 },
    ];
    const cost = new Map<number, number>([[0, 0]]);
    for (let need = 1; need <= 3000; need += 1) {
      cost.set(need, Math.min(...packs.map((one) => one.price + (cost.get(Math.max(0, need - one.seeds)) ?? 0))));
    }
    for (let need = 2900; need <= 3000; need += 1) {
      expect(cheapestCover(need, packs)?.cost).toBeCloseTo(cost.get(need) ?? Number.NaN, 6);
    }
  });

  it('takes two middling packs before one large one where they are cheaper', () => {
    const packs = [
      { seeds: 250, price: 3.95 },
      { seeds: 1000, price: 9.5 },
      { seeds: 5000, price: 31 },
    ];
    // 1,600 seeds: 1000 + 3 x 250 costs 21.35, 2 x 1000 costs 19.00, 7 x 250 costs 27.65, 5000 costs 31.
    expect(cheapestCover(1600, packs)).toEqual({ counts: [0, 2, 0], cost: 19, seeds: 2000 });
    // 3,600: four of 1000 cost 38; the 5000 at 31 is less.
    expect(cheapestCover(3600, packs)).toEqual({ counts: [0, 0, 1], cost: 31, seeds: 5000 });
  });

  it('leaves the least over among combinations that cost the same', () => {
    const packs = [
      { seeds: 100, price: 5 },
      { seeds: 250, price: 10 },
    ];
    expect(cheapestCover(150, packs)).toEqual({ counts: [2, 0], cost: 10, seeds: 200 });
  });

  it.each([
    ['priced by the seed', [3, 3], [4, 4], [6, 6]],
    ['priced by the seed, largest first', [9, 9], [6, 6], [3, 3]],
    ['two of one cost a larger', [2, 1], [5, 2], [9, 4]],
    ['all at one price', [4, 2], [5, 2], [6, 2]],
    ['all free', [2, 0], [3, 0], [7, 0]],
    ['tens', [20, 2], [30, 3], [50, 4]],
  ])('settles equal costs by seeds left over and then by packs: %s', (_, ...sizes) => {
    const packs = sizes.map(([seeds = 0, price = 0]) => ({ seeds, price }));
    for (let needed = 1; needed <= 30; needed += 1) {
      const cover = cheapestCover(needed, packs);
      const count = cover?.counts.reduce((sum, number) => sum + number, 0);
      expect([cover?.cost, cover?.seeds, count]).toEqual(firstCover(needed, packs));
    }
  });

  it('keeps to the fewest packs in bulk too: 333 nines and a three, not a thousand threes', () => {
    const packs = [
      { seeds: 3, price: 3 },
      { seeds: 9, price: 9 },
    ];
    expect(cheapestCover(3000, packs)).toEqual({ counts: [1, 333], cost: 3000, seeds: 3000 });
  });

  it('leaves the best-value pack aside where the others fit better throughout', () => {
    // 49 packs of either hold less than 4,950 seeds, so 50 are needed at least, and the 50 cheapest are all of 99.
    const packs = [
      { seeds: 100, price: 10 },
      { seeds: 99, price: 9.91 },
    ];
    expect(cheapestCover(4950, packs)).toEqual({ counts: [0, 50], cost: 495.5, seeds: 4950 });
  });

  it('works out the greatest need, and passes over a pack priced below nothing', () => {
    expect(cheapestCover(MOST_SEEDS, [{ seeds: 1_000_000, price: 900 }])).toEqual({
      counts: [2],
      cost: 1800,
      seeds: 2_000_000,
    });
    expect(cheapestCover(10, [{ seeds: 100, price: -5 }])).toBeUndefined();
    expect(cheapestCover(10, [{ seeds: 100, price: 0 }])).toEqual({ counts: [1], cost: 0, seeds: 100 });
  });

  it('buys nothing for no need, and says nothing where nothing is on offer', () => {
    expect(cheapestCover(0, [{ seeds: 100, price: 5 }])).toEqual({ counts: [0], cost: 0, seeds: 0 });
    expect(cheapestCover(0, [])).toEqual({ counts: [], cost: 0, seeds: 0 });
    expect(cheapestCover(-3, [{ seeds: 100, price: 5 }])).toEqual({ counts: [0], cost: 0, seeds: 0 });
    expect(cheapestCover(10, [])).toBeUndefined();
    expect(cheapestCover(10, [{ seeds: 0, price: 1 }])).toBeUndefined();
    expect(cheapestCover(MOST_SEEDS + 1, [{ seeds: 100, price: 5 }])).toBeUndefined();
    expect(cheapestCover(Number.NaN, [{ seeds: 100, price: 5 }])).toBeUndefined();
  });

  it('handles packs by weight with odd counts at the greatest need', () => {
    const packs = [
      { seeds: 9639.2, price: 14 },
      { seeds: 333, price: 3.5 },
    ];
    const cover = cheapestCover(MOST_SEEDS, packs);
    expect(cover?.seeds).toBeGreaterThanOrEqual(MOST_SEEDS);
    expect(cover?.cost).toBeLessThanOrEqual(Math.ceil(MOST_SEEDS / 9639) * 14);
  });
});
