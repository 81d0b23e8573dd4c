// What is kept of beds worked out at every spacing: the choice of each goal and no more, for thousands of beds are kept.

import { describe, expect, it } from 'vitest';
import { bestSpacing, candidatesOf, type Goal, spacingCurve } from '../../engine/agronomy/best-spacing.ts';
import { bedFor } from '../../engine/functions/trade/tried-beds.ts';

const BANDS = [
  ['small', 'medium', 'large', 'unsold'],
  [0.03, 0.05, 0.07, 0.1],
  [0.05, 0.07, 0.1, null],
  [0.6, 1, 1.2, null],
] as const;
const [NAMES, FROM, TO, SHARES] = BANDS;
const BED = [0.05, 0.3, 0.025, 20, 0.75, 3, 1.8, 0.4, 4, 0.05, 0.2, 900, 0.9, 1.5, 0.02] as const;

const GOALS: readonly Goal[] = [
  { most: 'mass' },
  { most: 'money' },
  ...NAMES.map((band): Goal => ({ most: 'bulbs', band })),
  { most: 'bulbs', band: 'jumbo' },
];

const curve = spacingCurve(
  {
    length: 20,
    width: 0.75,
    pattern: 'square',
    plantsPerStation: 1.8,
    isolated: 0.4,
    ceiling: 4,
    squarenessLoss: 0.05,
    spread: 0.2,
    shape: 900,
    sound: 0.9,
    costPerStation: 0.02,
    bands: NAMES.map((name, k) => {
      const band = { name, from: FROM[k] ?? 0, to: TO[k] ?? Number.POSITIVE_INFINITY };
      const share = SHARES[k];
      return typeof share === 'number' ? { ...band, price: 1.5 * share } : band;
    }),
  },
  candidatesOf(
    Array.from({ length: 11 }, (_, k) => 0.05 + k * 0.025),
    [3],
  ),
);

describe('a bed that was tried at every spacing', () => {
  const bed = bedFor([...BED, NAMES, FROM, TO, SHARES]);

  it.each(GOALS)('keeps five figures of the best for %o, and not its bands', (goal) => {
    const best = bestSpacing(curve, goal);
    const { spacing, marketableMass, meanMass, stations, money } = best ?? {};
    const expected = best === undefined ? undefined : { spacing, marketableMass, meanMass, stations, money };
    expect(bed?.best(goal)).toEqual(expected);
  });
});
