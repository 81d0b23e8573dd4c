// Whole orders: against every order tried on small ones, and what must hold of any.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type OrderQuestion, type WholeOrder, wholeOrder } from '../../engine/index.ts';
import { order } from './orders.ts';

/** What an order costs; undefined where it leaves a need or a least order unmet. */
function priceOf({ needs, offers, suppliers }: OrderQuestion, counts: readonly number[]): number | undefined {
  const had = needs.map((_, need) =>
    offers.reduce((sum, o, k) => (o.need === need ? sum + o.size * (counts[k] ?? 0) : sum), 0),
  );
  if (needs.some((need, v) => offers.some((o) => o.need === v) && (had[v] ?? 0) < need)) return undefined;
  let cost = 0;
  for (const [s, { postage, freeFrom, least }] of suppliers.entries()) {
    const own = offers.map((o, k) => (o.supplier === s ? (counts[k] ?? 0) : 0));
    if (own.every((count) => count === 0)) continue;
    const goods = own.reduce((sum, count, k) => sum + count * (offers[k]?.price ?? 0), 0);
    if (goods < least - 1e-9) return undefined;
    cost += goods + (freeFrom !== undefined && goods >= freeFrom - 1e-9 ? 0 : postage);
  }
  return cost;
}

/** The least of any order with at most so many of each pack. */
function leastBySearch(question: OrderQuestion, most: number): number {
  let least = Number.POSITIVE_INFINITY;
  const counts = question.offers.map(() => 0);
  const look = (k: number): void => {
    if (k === counts.length) {
      least = Math.min(least, priceOf(question, counts) ?? Number.POSITIVE_INFINITY);
      return;
    }
    for (let count = 0; count <= most; count += 1) {
      counts[k] = count;
      look(k + 1);
    }
    counts[k] = 0;
  };
  look(0);
  return least;
}

const small = fc.record({
  needs: fc.array(fc.integer({ min: 1, max: 8 }), { minLength: 1, maxLength: 2 }),
  suppliers: fc.array(
    fc.record({
      postage: fc.integer({ min: 0, max: 6 }),
      freeFrom: fc.option(fc.integer({ min: 1, max: 14 }), { nil: undefined }),
      least: fc.integer({ min: 0, max: 8 }),
    }),
    { minLength: 1, maxLength: 3 },
  ),
  offers: fc.array(
    fc.record({
      need: fc.integer({ min: 0, max: 1 }),
      supplier: fc.integer({ min: 0, max: 2 }),
      size: fc.integer({ min: 1, max: 6 }),
      price: fc.integer({ min: 1, max: 7 }),
    }),
    { minLength: 1, maxLength: 5 },
  ),
});

function fitting({ needs, suppliers, offers }: OrderQuestion): OrderQuestion {
  return {
    needs,
    suppliers,
    offers: offers.filter(({ need, supplier }) => need < needs.length && supplier < suppliers.length),
  };
}

function holds(question: OrderQuestion, found: WholeOrder): void {
  expect(priceOf(question, found.counts)).toBeCloseTo(found.cost, 6);
  expect([...found.goods, ...found.postage].reduce((sum, amount) => sum + amount, 0)).toBeCloseTo(found.cost, 6);
}

describe('a whole order', () => {
  it('costs what the cheapest of all orders costs', () => {
    fc.assert(
      fc.property(small.map(fitting), (question) => {
        const found = wholeOrder(question);
        // Packs cost 1 and more and nothing is wanted beyond 14 of money: more than nine of one are never cheaper.
        const least = leastBySearch(question, 9);
        const offered = question.offers.length > 0;
        expect(found.proven).toBe(true);
        expect(found.cost).toBeCloseTo(offered ? least : 0, 6);
      }),
      { numRuns: 60 },
    );
  });

  it('adds up, covers every need that is offered, and names the others', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 8 }),
        (seed, needs, sellers) => {
          const question = order(needs, sellers, seed);
          const found = wholeOrder(question);
          holds(question, found);
          const offered = new Set(question.offers.map(({ need }) => need));
          expect(found.missing).toEqual(question.needs.flatMap((_, v) => (offered.has(v) ? [] : [v])));
        },
      ),
      { numRuns: 80 },
    );
  });

  it('is never dearer than all from one supplier, nor for a lower postage', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const question = order(6, 4, seed);
        const whole = wholeOrder(question).cost;
        for (const s of question.suppliers.keys()) {
          const alone = { ...question, offers: question.offers.filter(({ supplier }) => supplier === s) };
          const found = wholeOrder(alone);
          if (found.missing.length === wholeOrder(question).missing.length)
            expect(found.cost).toBeGreaterThanOrEqual(whole - 1e-6);
        }
        const free = { ...question, suppliers: question.suppliers.map((one) => ({ ...one, postage: 0, least: 0 })) };
        expect(wholeOrder(free).cost).toBeLessThanOrEqual(whole + 1e-6);
      }),
      { numRuns: 40 },
    );
  });

  const supplier = { postage: 6, freeFrom: undefined, least: 0 };

  it('puts things together to save a postage, though they cost more there', () => {
    const found = wholeOrder({
      needs: [100, 100],
      suppliers: [supplier, supplier],
      offers: [
        { need: 0, supplier: 0, size: 100, price: 3 },
        { need: 1, supplier: 0, size: 100, price: 8 },
        { need: 1, supplier: 1, size: 100, price: 4 },
      ],
    });
    expect(found).toMatchObject({ counts: [1, 1, 0], cost: 17, postage: [6, 0] });
  });

  it('buys a little more to have the postage free, and to come to a least order', () => {
    const offers = [
      { need: 0, supplier: 0, size: 100, price: 18 },
      { need: 0, supplier: 0, size: 150, price: 21 },
    ];
    const free = { needs: [100], suppliers: [{ ...supplier, freeFrom: 20 }], offers };
    expect(wholeOrder(free)).toMatchObject({ counts: [0, 1], cost: 21, postage: [0] });
    const least = { needs: [100], suppliers: [{ ...supplier, postage: 0, least: 30 }], offers };
    expect(wholeOrder(least)).toMatchObject({ counts: [2, 0], cost: 36 });
  });

  it('tries the eight suppliers that offer most where there are more, and does not call that proven', () => {
    const question = order(10, 11, 3);
    const found = wholeOrder(question);
    expect(found.proven).toBe(false);
    expect(found.missing.length).toBeLessThan(4);
  });

  it('of nothing is nothing', () => {
    expect(wholeOrder({ needs: [], offers: [], suppliers: [] })).toMatchObject({ counts: [], cost: 0, proven: true });
    expect(wholeOrder({ needs: [5], offers: [], suppliers: [supplier] })).toMatchObject({ cost: 0, missing: [0] });
  });
});
