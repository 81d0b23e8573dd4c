// Choosing amounts within limits, held against every corner of the room of small farms.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Choice, choose, type Limit, type LinearProgram } from '../../engine/index.ts';
import { linearSolver } from '../../ui/linear-solver.ts';
import { runs } from '../runs.ts';

/** The best corner of all: where as many bounds meet as there are amounts. Undefined where no corner keeps within all. */
function bruteForce({ gains, rows, least, most }: LinearProgram): number | undefined {
  const n = gains.length;
  const unit = (i: number): number[] => gains.map((_, k) => (k === i ? 1 : 0));
  const bounds = [
    ...rows.map(({ takes, most: end }) => ({ takes: [...takes], end })),
    ...most.map((end, i) => ({ takes: unit(i), end })),
    ...least.map((end, i) => ({ takes: unit(i).map((one) => -one), end: -end })),
  ];
  let best: number | undefined;
  for (const chosen of subsets(bounds, n)) {
    const corner = meeting(chosen);
    if (corner === undefined) continue;
    const within = bounds.every(({ takes, end }) => dot(takes, corner) <= end + 1e-7 * Math.max(1, Math.abs(end)));
    if (!within) continue;
    const gain = dot(gains, corner);
    if (best === undefined || gain > best) best = gain;
  }
  return best;
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, one, i) => sum + one * (b[i] ?? 0), 0);
}

function* subsets<T>(items: readonly T[], size: number, from = 0): Generator<T[]> {
  if (size === 0) yield [];
  else
    for (let at = from; at < items.length; at++) {
      const one = items[at];
      if (one !== undefined) for (const rest of subsets(items, size - 1, at + 1)) yield [one, ...rest];
    }
}

/** Where bounds meet, by elimination; undefined where they don't in one point. */
function meeting(bounds: readonly { readonly takes: readonly number[]; readonly end: number }[]): number[] | undefined {
  const n = bounds.length;
  const table = bounds.map(({ takes, end }) => [...takes, end]);
  for (let column = 0; column < n; column++) {
    const pivot = table.slice(column).reduce((a, b) => (Math.abs(b[column] ?? 0) > Math.abs(a[column] ?? 0) ? b : a));
    const lead = pivot[column] ?? 0;
    if (Math.abs(lead) < 1e-9) return undefined;
    table.splice(table.indexOf(pivot), 1);
    table.splice(column, 0, pivot);
    for (const [at, row] of table.entries()) {
      const factor = at === column ? 0 : (row[column] ?? 0) / lead;
      if (factor !== 0) for (const [k, value] of pivot.entries()) row[k] = (row[k] ?? 0) - factor * value;
    }
  }
  return table.map((row, i) => (row[n] ?? 0) / (row[i] ?? 1));
}

const amount = fc.integer({ min: 0, max: 20 });

const farms = fc
  .record({ crops: fc.integer({ min: 1, max: 4 }), limits: fc.integer({ min: 1, max: 3 }) })
  .chain(({ crops, limits }) =>
    fc.record({
      gains: fc.array(fc.integer({ min: -5, max: 20 }), { minLength: crops, maxLength: crops }),
      most: fc.array(amount, { minLength: crops, maxLength: crops }),
      takes: fc.array(fc.array(fc.integer({ min: 0, max: 9 }), { minLength: crops, maxLength: crops }), {
        minLength: limits,
        maxLength: limits,
      }),
      ends: fc.array(fc.integer({ min: 0, max: 60 }), { minLength: limits, maxLength: limits }),
    }),
  );

test('what is chosen gains what the best corner gains, and keeps within every limit', () => {
  fc.assert(
    fc.property(farms, ({ gains, most, takes, ends }) => {
      const limits = ends.map((end, i): Limit => ({ id: `l${i}`, name: `Limit ${i}`, most: end }));
      const choices = gains.map((gain, i): Choice => {
        const uses = new Map(limits.map(({ id }, k) => [id, takes[k]?.[i] ?? 0]));
        return { id: `c${i}`, name: `Crop ${i}`, gain, least: 0, most: most[i] ?? 0, takes: uses };
      });
      const chosen = choose(choices, limits, linearSolver);
      const rows = limits.map(({ id, most: end }, k) => ({ id, most: end, takes: takes[k] ?? [] }));
      const best = bruteForce({ gains, rows, least: gains.map(() => 0), most });
      expect(chosen?.gain).toBeCloseTo(best ?? Number.NaN, 6);
      const amounts = choices.map(({ id }) => chosen?.amounts.get(id) ?? Number.NaN);
      for (const row of rows) expect(dot(row.takes, amounts)).toBeLessThanOrEqual(row.most + 1e-6);
      for (const [i, one] of amounts.entries()) expect(one).toBeLessThanOrEqual((most[i] ?? 0) + 1e-9);
      // What one more of a limit is worth is what the best corner gains by it.
      for (const { limit, worth } of chosen?.heldBackBy ?? []) {
        const wider = rows.map((row) => (row.id === limit.id ? { ...row, most: row.most + 1 } : row));
        const then = bruteForce({ gains, rows: wider, least: gains.map(() => 0), most });
        expect(worth).toBeCloseTo((then ?? 0) - (best ?? 0), 6);
      }
    }),
    { numRuns: runs(300, 5000) },
  );
});

test('by hand: two crops on one bed with few hours', () => {
  const crop = (id: string, gain: number, bed: number, hours: number, most: number): Choice => {
    return {
      id,
      name: id,
      gain,
      least: 0,
      most,
      takes: new Map([
        ['bed', bed],
        ['hours', hours],
      ]),
    };
  };
  const limits: Limit[] = [
    { id: 'bed', name: 'Bed', most: 100 },
    { id: 'hours', name: 'Hours', most: 40 },
  ];
  // Salad gains 3 a foot at half an hour, squash 1 at a tenth. 100 = s + q and 40 = 0.5 s + 0.1 q: s 75, q 25, gain 250.
  const chosen = choose([crop('salad', 3, 1, 0.5, 200), crop('squash', 1, 1, 0.1, 200)], limits, linearSolver);
  expect(chosen?.amounts.get('salad')).toBeCloseTo(75, 9);
  expect(chosen?.amounts.get('squash')).toBeCloseTo(25, 9);
  expect(chosen?.gain).toBeCloseTo(250, 9);
  // An hour more: 2.5 ft of squash become salad, 5 gained; a foot more: 1.25 ft of squash for 0.25 ft of salad, 0.5 gained.
  expect(chosen?.heldBackBy.map(({ limit, worth }) => [limit.id, Number(worth.toFixed(6))])).toEqual([
    ['hours', 5],
    ['bed', 0.5],
  ]);
  const least = { ...crop('salad', 3, 1, 0.5, 200), least: 90 };
  expect(choose([least], limits, linearSolver)).toBeUndefined();
});
