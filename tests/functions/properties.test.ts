// What holds of every number: rounding stays within its step and forgives dust, loans are paid off to the last cent, quantiles undo shares,
// folds leave the values they are given as they are.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bodyFor } from '../../engine/functions/definition.ts';
import { FUNCTIONS } from '../../engine/functions/index.ts';
import { STANDARD } from '../../engine/functions/standard/index.ts';

function numeric(name: string): (...args: number[]) => number {
  const definition = FUNCTIONS.get(name);
  const body = definition === undefined ? undefined : bodyFor(definition, []);
  if (body?.lane !== 'numeric') throw new Error(`${name} is not numeric`);
  return body.compute;
}

const cents = fc.integer({ min: -10_000_000, max: 10_000_000 }).map((count) => count / 100);
const anyNumber = fc.double({ min: -1e9, max: 1e9, noNaN: true });
const steps = fc.constantFrom(0.05, 0.25, 1, 3, 7, 50, 1 / 3);
const DUST = 1e-13;

describe('rounding', () => {
  it('ROUND with 2 digits keeps what has two digits, whatever dust it carries', () => {
    const round = numeric('ROUND');
    fc.assert(
      fc.property(cents, (x) => {
        expect(round(x, 2)).toBe(x + 0);
        expect(round(x * (1 + 4e-16), 2)).toBe(x + 0);
      }),
    );
  });

  it('FLOOR and CEILING enclose a number within one step', () => {
    const [floor, ceiling] = [numeric('FLOOR'), numeric('CEILING')];
    fc.assert(
      fc.property(anyNumber, steps, (x, step) => {
        const slack = DUST * Math.max(1, Math.abs(x));
        const [low, high] = [floor(x, step), ceiling(x, step)];
        expect(low).toBeLessThanOrEqual(x + slack);
        expect(high).toBeGreaterThanOrEqual(x - slack);
        expect(high - low).toBeLessThanOrEqual(step + slack);
      }),
    );
  });

  it('whole multiples of a step stay where they are', () => {
    const names = ['FLOOR', 'CEILING', 'MROUND'];
    fc.assert(
      fc.property(fc.integer({ min: -1e6, max: 1e6 }), steps, (count, step) => {
        for (const name of names) expect(Math.round(numeric(name)(count * step, step) / step)).toBe(count + 0);
      }),
    );
  });

  it('MOD and QUOTIENT put a number together again', () => {
    const [mod, quotient] = [numeric('MOD'), numeric('QUOTIENT')];
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), fc.integer({ min: 1, max: 1e6 }), (a, b) => {
        expect(quotient(a, b) * b + mod(a, b)).toBe(a);
      }),
    );
  });

  it('never gives a minus sign to nought', () => {
    for (const name of ['ROUND', 'ROUNDUP', 'ROUNDDOWN', 'CEILING', 'FLOOR', 'TRUNC']) {
      expect(Object.is(numeric(name)(-0.2, name === 'FLOOR' ? 0 : Number.NaN), -0)).toBe(false);
    }
  });
});

describe('money over time', () => {
  const rates = fc.double({ min: -0.05, max: 0.3, noNaN: true }).filter((rate) => Math.abs(rate) > 1e-4);
  const due = fc.constantFrom(0, 1);

  it('a loan paid by PMT leaves nothing at the end, period by period', () => {
    const pmt = numeric('PMT');
    fc.assert(
      fc.property(rates, fc.integer({ min: 1, max: 120 }), due, (rate, periods, start) => {
        const paid = pmt(rate, periods, 1000, 0, start);
        let left = 1000;
        for (let period = 0; period < periods; period += 1) {
          left = start === 1 ? (left + paid) * (1 + rate) : left * (1 + rate) + paid;
        }
        expect(Math.abs(left)).toBeLessThan(1e-7 * Math.max(1, (1 + rate) ** periods));
      }),
    );
  });

  it('NPER and RATE find again what FV was given', () => {
    const [fv, nper, rateOf] = [numeric('FV'), numeric('NPER'), numeric('RATE')];
    fc.assert(
      fc.property(rates, fc.integer({ min: 2, max: 60 }), due, (rate, periods, start) => {
        const future = fv(rate, periods, -100, -500, start);
        expect(Math.abs(nper(rate, -100, -500, future, start) - periods)).toBeLessThan(1e-6 * periods);
        expect(Math.abs(rateOf(periods, -100, -500, future, start, Number.NaN) - rate)).toBeLessThan(1e-7);
      }),
    );
  });
});

describe('folds', () => {
  it('leave the values they are given as they are, and forget none', () => {
    const values = fc.array(fc.double({ min: 0.5, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(values, (list) => {
        for (const definition of STANDARD) {
          const body = bodyFor(definition, []);
          if (body.lane !== 'fold' && body.lane !== 'conditional fold') continue;
          const given = Float64Array.from([...list, 7, 7]);
          const result = body.fold.fold(given, list.length);
          expect([...given]).toEqual([...list, 7, 7]);
          const exact = Float64Array.from(list);
          expect(body.fold.fold(exact, list.length)).toBe(result);
        }
      }),
      { numRuns: 30 },
    );
  });
});
