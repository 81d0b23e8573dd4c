// Beds for plantings: never overfull, nothing fixed moved, rotated, the cost kept is the cost, and on small farms no plan is
// better, which trying every plan proves.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  BedPlan,
  type BedQuestion,
  BedSearch,
  costOfPlan,
  isRotated,
  NO_BED,
  PLAN_COSTS,
  type PlanPlanting,
  seededNumbers,
  whyNotPlaced,
} from '../../engine/index.ts';
import { farm } from './bed-farms.ts';

function searched(question: BedQuestion, changes = 4000, seed = 1): BedSearch {
  const search = new BedSearch(question, seededNumbers(seed), changes);
  while (!search.step(500)) expect(search.progress).toBeLessThan(1);
  return search;
}

/** The fullest any bed gets, over its length, by looking at every day; plantings that stand fixed left out where they alone are too many. */
function overfull({ beds, plantings }: BedQuestion, bedOf: ArrayLike<number>): number {
  const on = (b: number, day: number, fixedOnly: boolean): number =>
    plantings.reduce((sum, planting, p) => {
      const { from, until, length, across, fixed } = planting;
      const stands = bedOf[p] === b || (across > 1 && b > 0 && bedOf[p] === b - 1);
      return stands && from <= day && day < until && (!fixedOnly || fixed !== undefined) ? sum + length : sum;
    }, 0);
  let most = 0;
  beds.forEach(({ length }, b) => {
    for (const { from: day } of plantings) {
      if (on(b, day, true) <= length) most = Math.max(most, on(b, day, false) - length);
    }
  });
  return most;
}

/** The least cost of any plan, by trying all. */
function leastCost(question: BedQuestion): number {
  const plan = new BedPlan(question);
  const free = question.plantings.flatMap(({ fixed }, p) => (fixed === undefined ? [p] : []));
  let least = Number.POSITIVE_INFINITY;
  const tryFrom = (k: number): void => {
    const p = free[k];
    if (p === undefined) {
      least = Math.min(least, plan.cost);
      return;
    }
    tryFrom(k + 1);
    for (const bed of plan.allowed[p] ?? []) {
      if (!plan.hasRoom(p, bed)) continue;
      plan.place(p, bed);
      tryFrom(k + 1);
      plan.lift(p);
    }
  };
  tryFrom(0);
  return least;
}

const SEEDS = fc.integer({ min: 1, max: 1_000_000 });

describe('a bed plan', () => {
  it('is never overfull, moves nothing fixed, rotates, and keeps its cost', () => {
    fc.assert(
      fc.property(SEEDS, (seed) => {
        const question = farm(8, 30, seed);
        const search = searched(question, 2000, seed);
        expect(overfull(question, search.beds)).toBeLessThan(1e-6);
        expect(costOfPlan(question, search.beds)).toBeCloseTo(search.cost, 6);
        question.plantings.forEach((planting, p) => {
          const bed = search.beds[p] ?? NO_BED;
          if (planting.fixed !== undefined) expect(bed).toBe(planting.fixed);
          else if (bed !== NO_BED)
            expect(question.beds.some((one, b) => b === bed && isRotated(planting, one))).toBe(true);
        });
      }),
      { numRuns: 25 },
    );
  });

  it('is the same again from the same numbers, in slices or at once', () => {
    const question = farm(10, 40, 7);
    const sliced = searched(question, 3000, 5);
    const whole = new BedSearch(question, seededNumbers(5), 3000);
    expect(whole.step(1e9)).toBe(true);
    expect([...whole.beds]).toEqual([...sliced.beds]);
  });

  it('is as good as any on small farms, proven by trying every plan', () => {
    fc.assert(
      fc.property(SEEDS, fc.integer({ min: 2, max: 4 }), fc.integer({ min: 1, max: 7 }), (seed, beds, plantings) => {
        const question = farm(beds, plantings, seed, 0.15);
        expect(searched(question, 4000, seed).cost).toBeCloseTo(leastCost(question), 6);
      }),
      { numRuns: 60 },
    );
  });

  it('finds the only way round where one after another does not', () => {
    // The largest goes first, on the first of two equal beds; two that fit nowhere else but together need that bed.
    const bed = (field: string) => ({ length: 10, width: 1, field, families: [] });
    const planting = (length: number, from: number, until: number): PlanPlanting => {
      return { length, width: 1, from, until, crop: 'a', family: '', rotationYears: 0, across: 1 };
    };
    const question = {
      beds: [bed('one'), bed('one')],
      plantings: [planting(6, 0, 10), planting(6, 0, 10), planting(4, 0, 10), planting(4, 5, 12), planting(10, 10, 20)],
    };
    const search = searched(question);
    expect([...search.beds]).not.toContain(NO_BED);
    expect(search.cost).toBe(0);
  });
});

describe('what could not be placed', () => {
  const base: PlanPlanting = {
    length: 5,
    width: 1,
    from: 0,
    until: 10,
    crop: 'a',
    family: 'F',
    rotationYears: 3,
    across: 1,
  };
  const beds = [{ length: 10, width: 1, field: 'x', families: ['F'] }];
  const why = (planting: Partial<PlanPlanting>, more: readonly PlanPlanting[] = [], on = beds) => {
    const plan = new BedPlan({ beds: on, plantings: [{ ...base, ...planting }, ...more] });
    return whyNotPlaced(plan, 0);
  };

  it('is told why', () => {
    expect(why({ length: 11 })).toBe('longer than any bed');
    expect(why({})).toBe('rotation');
    expect(why({ until: Number.NaN })).toBe('no dates');
    const there = { ...base, length: 8, fixed: 0 };
    expect(why({ family: 'G' }, [there])).toBe('full');
    const beside = { length: 10, width: 1, field: 'x', families: ['G'] };
    expect(why({ family: 'G' }, [there], [...beds, beside])).toBe('no room');
  });

  it('costs more than anything else in the plan', () => {
    expect(PLAN_COSTS.unplaced).toBeGreaterThan(10 * (PLAN_COSTS.field + PLAN_COSTS.repeat + PLAN_COSTS.width));
  });
});

it('sees a family among several that stood on a bed in one year', () => {
  const carrots: PlanPlanting = {
    ...{ length: 5, width: 0.8, from: 100, until: 180, crop: 'Carrot', family: 'Apiaceae' },
    ...{ rotationYears: 3, across: 1 },
  };
  const bed = (...families: readonly string[]) => ({ length: 20, width: 0.8, field: 'Home', families });
  expect(isRotated(carrots, bed('Asteraceae, Apiaceae'))).toBe(false);
  expect(isRotated(carrots, bed('', 'Apiaceae, Asteraceae'))).toBe(false);
  expect(isRotated(carrots, bed('Asteraceae', '', 'Apiaceae, Fabaceae'))).toBe(true);
  expect(isRotated(carrots, bed('Asteraceae, Fabaceae'))).toBe(true);
  expect(isRotated({ ...carrots, family: '' }, bed('', 'Apiaceae'))).toBe(true);
});
