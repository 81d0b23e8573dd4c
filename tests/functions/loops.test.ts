// A function with a loop over many rows gives there what it gives row by row.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Loop, RunBody } from '../../engine/functions/definition.ts';
import { FUNCTIONS } from '../../engine/functions/index.ts';
import { PLAIN } from '../../engine/functions/standard/types.ts';
import type { Signature } from '../../engine/language/signature.ts';

/** The loop of a body and the same for one row. */
function pairOf(body: RunBody): { loop: Loop; one: (numbers: readonly number[]) => number } | undefined {
  if (body.lane === 'numeric' && body.loop !== undefined) {
    return { loop: body.loop, one: (numbers) => body.compute(...numbers) };
  }
  return undefined;
}

const TO_WHOLE = [
  { type: PLAIN, constant: undefined },
  { type: PLAIN, constant: 0 },
];

const LOOPS = [...FUNCTIONS.values()].flatMap(({ signature, body }) => {
  const pair = pairOf(body.lane === 'by type' ? body.choose(TO_WHOLE) : body);
  return pair === undefined ? [] : [{ name: signature.name, count: numbersOf(signature), ...pair }];
});

/** How many numbers a body is given: a record comes as its figures. */
function numbersOf({ parameters }: Signature): number {
  return parameters.reduce(
    (sum, { pattern }) => sum + (pattern.is === 'record' ? pattern.record.figures.length : 1),
    0,
  );
}

const figure = fc.oneof(
  fc.integer({ min: -3, max: 40 }),
  fc.double({ min: -1, max: 2, noNaN: true }),
  fc.double({ min: -1e6, max: 1e6, noNaN: true }),
  fc.constantFrom(110.00000000000001, 0.5, 2.5, -2.5, 2 ** 52 + 1, 2 ** 53 + 2, 1e300),
);

test.each(LOOPS)('$name', ({ count, loop, one }) => {
  const rows = fc.array(fc.tuple(...Array.from({ length: count }, () => figure)), { minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(
      rows,
      fc.array(fc.boolean(), { minLength: count, maxLength: count }),
      fc.nat(3),
      (given, uniform, at) => {
        const args = uniform.map((alone, k) => {
          const values = new Float64Array(at + given.length);
          given.forEach((row, i) => {
            values[at + i] = row[k] ?? 0;
          });
          return { values, at, uniform: alone };
        });
        // As in the recalculation: where all arguments are one value, one row is asked for.
        const rowCount = uniform.every(Boolean) ? 1 : given.length;
        const out = new Float64Array(given.length);
        loop(out, rowCount, args);
        for (let i = 0; i < rowCount; i++) {
          // Minus zero is kept as zero.
          expect((out[i] ?? Number.NaN) + 0).toBe(
            one(args.map(({ values, uniform: alone }) => values[alone ? at : at + i] ?? 0)) + 0,
          );
        }
      },
    ),
  );
});

test('the functions that every season calls row by row have a loop', () => {
  expect(LOOPS.map(({ name }) => name).sort()).toEqual(
    [
      'BINOM.DIST',
      'BINOMDIST',
      'COEFFICIENTON',
      'ISOWEEKNUM',
      'LN',
      'ROUND',
      'ROUNDDOWN',
      'ROUNDUP',
      'WATERTAKEN',
    ].sort(),
  );
});
