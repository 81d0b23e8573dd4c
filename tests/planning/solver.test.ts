// Whole orders and bed plans against the optimum that an integer solver (HiGHS) proves on the same question, stated anew.

import { describe, expect, it } from 'vitest';
import { BedSearch, seededNumbers, wholeOrder } from '../../engine/index.ts';
import { farm } from './bed-farms.ts';
import { order } from './orders.ts';
import { bedProgram, orderProgram, solve } from './programs.ts';

describe('against a solver', () => {
  it.each([
    [10, 3, 1],
    [12, 4, 2],
    [14, 5, 3],
    [10, 8, 4],
  ])('an order of %d things from %d suppliers is the cheapest', async (needs, suppliers, seed) => {
    const question = order(needs, suppliers, seed);
    const proven = await solve(orderProgram(question), 60);
    expect(proven.status).toBe('Optimal');
    const found = wholeOrder(question);
    expect(found.proven).toBe(true);
    expect(Math.abs(found.cost - proven.value)).toBeLessThan(0.005);
  });

  it('a plan of beds for a small farm is the best, and never better than the best', async () => {
    const question = farm(6, 14, 5);
    const proven = await solve(bedProgram(question), 60);
    expect(proven.status).toBe('Optimal');
    const search = new BedSearch(question, seededNumbers(1));
    search.step(Number.POSITIVE_INFINITY);
    expect(search.cost).toBeCloseTo(proven.value, 6);
  });
});
