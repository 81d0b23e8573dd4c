// The spacings that the control offers: measurable steps, within reach of the usual one, today's always among them.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { snapped, spacingRange, spacingsOf, stepped } from '../../ui/browser/panels/spacing/spacing-steps.ts';

const spacing = fc.double({ min: 0.5, max: 60, noNaN: true });
const system = fc.constantFrom('us' as const, 'si' as const);

test('onions at 8 in: quarter inches from 2 to 24', () => {
  expect(spacingRange(8, 8, 'us')).toEqual({ least: 2, most: 24, step: 0.25 });
});

test('without a usual spacing todays is the middle, and without either there is no range', () => {
  expect(spacingRange(undefined, 20, 'si')).toEqual({ least: 5, most: 60, step: 0.5 });
  expect(spacingRange(undefined, undefined, 'us')).toBeUndefined();
  expect(spacingRange(0, undefined, 'us')).toBeUndefined();
});

test("the range holds today's spacing however far it lies", () => {
  fc.assert(
    fc.property(spacing, spacing, system, (usual, today, units) => {
      const range = spacingRange(usual, today, units);
      expect(range).toBeDefined();
      if (range === undefined) return;
      expect(range.least).toBeGreaterThan(0);
      expect(range.least).toBeLessThanOrEqual(Math.max(today, range.step));
      expect(range.most).toBeGreaterThanOrEqual(today - 1e-9);
    }),
  );
});

test('a step leads to the next mark that way, from between two marks too', () => {
  const range = { least: 2, most: 20, step: 0.25 };
  expect(stepped(8, 1, range)).toBe(8.25);
  expect(stepped(8, -1, range)).toBe(7.75);
  expect(stepped(7.3, 1, range)).toBe(7.5);
  expect(stepped(7.3, -1, range)).toBe(7.25);
  expect(stepped(2, -1, range)).toBe(2);
  expect(stepped(20, 1, range)).toBe(20);
  expect(snapped(7.4, range)).toBe(7.5);
  expect(snapped(100, range)).toBe(20);
});

test("the curve is taken at every mark and at today's spacing, in order, and never at more than about 100", () => {
  expect(spacingsOf({ least: 1, most: 2, step: 0.25 }, 1.3)).toEqual([1, 1.25, 1.3, 1.5, 1.75, 2]);
  fc.assert(
    fc.property(spacing, spacing, system, (usual, today, units) => {
      const range = spacingRange(usual, today, units);
      if (range === undefined) return;
      const figures = spacingsOf(range, today);
      expect(figures.length).toBeLessThanOrEqual(104);
      expect(figures).toContain(today);
      expect(figures.at(-1)).toBeGreaterThanOrEqual(range.most - 1e-6);
      expect([...figures].sort((a, b) => a - b)).toEqual(figures);
    }),
  );
});
