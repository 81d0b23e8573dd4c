// Nutrients removed and rotation.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  asElements,
  asOxides,
  nutrientBalance,
  PHOSPHATE_PER_PHOSPHORUS,
  POTASH_PER_POTASSIUM,
  ratesFromComposition,
  removedNutrients,
} from '../../engine/agronomy/nutrients.ts';
import {
  clearYearsBetween,
  earliestReturn,
  longestClearYears,
  rotationSentence,
  rotationVerdict,
} from '../../engine/agronomy/rotation.ts';

describe('nutrients', () => {
  const rates = { nitrogen: 1.8, phosphorus: 0.35, potassium: 2 };

  it('grow with the harvest', () => {
    expect(removedNutrients(500, rates)).toEqual({ nitrogen: 0.9, phosphorus: 0.175, potassium: 1 });
    expect(removedNutrients(-1, rates).nitrogen).toBeNaN();
  });

  it('carry either name without loss', () => {
    const amount = fc.double({ min: 0, max: 500, noNaN: true });
    fc.assert(
      fc.property(amount, amount, amount, (nitrogen, phosphorus, potassium) => {
        const oxides = asOxides({ nitrogen, phosphorus, potassium });
        const back = asElements(oxides.n, oxides.p2o5, oxides.k2o);
        expect(back.phosphorus).toBeCloseTo(phosphorus, 9);
        expect(back.potassium).toBeCloseTo(potassium, 9);
        expect(oxides.n).toBe(nitrogen);
      }),
    );
    expect(PHOSPHATE_PER_PHOSPHORUS).toBeCloseTo(141.943 / 61.948, 3);
    expect(POTASH_PER_POTASSIUM).toBeCloseTo(94.196 / 78.197, 3);
  });

  it('come out of a food table', () => {
    const garlic = ratesFromComposition(6.36, 153, 401);
    expect(garlic.nitrogen).toBeCloseTo(10.176, 10);
    expect(garlic.phosphorus).toBeCloseTo(1.53, 10);
    expect(garlic.potassium).toBeCloseTo(4.01, 10);
  });

  it('balance what is given with what leaves', () => {
    const balance = nutrientBalance(
      { nitrogen: 12, phosphorus: 2, potassium: 10 },
      { nitrogen: 10, phosphorus: 3, potassium: 10 },
    );
    expect(balance).toEqual({ nitrogen: 2, phosphorus: -1, potassium: 0 });
  });
});

describe('rotation', () => {
  const history = [
    { family: 'Amaryllidaceae', year: 2022 },
    { family: 'Amaryllidaceae', year: 2024 },
    { family: 'Fabaceae', year: 2025 },
    { family: 'Amaryllidaceae', year: 2027 },
  ];

  it('counts clear years between crops', () => {
    expect(clearYearsBetween(2024, 2028)).toBe(3);
    expect(clearYearsBetween(2024, 2025)).toBe(0);
    expect(clearYearsBetween(2024, 2024)).toBe(0);
    expect(earliestReturn(2024, 3)).toBe(2028);
    expect(earliestReturn(2024, 0)).toBe(2025);
  });

  it('is broken by the last crop of the family before the year, and says until when', () => {
    const verdict = rotationVerdict(history, 'Amaryllidaceae', 2027, 3);
    expect(verdict).toEqual({ kept: false, lastGrown: 2024, clearYears: 2, wanted: 3, earliest: 2028 });
    if (verdict === undefined) throw new Error('no verdict');
    expect(rotationSentence('The onion family', verdict)).toBe(
      'The onion family stood here in 2024: 2 clear years since, 3 wanted. Choose another bed, or wait until 2028.',
    );
  });

  it('is kept after enough clear years, and by a family that never stood there', () => {
    const verdict = rotationVerdict(history, 'Fabaceae', 2028, 2);
    expect(verdict?.kept).toBe(true);
    expect(verdict && rotationSentence('The pea family', verdict)).toBe('');
    expect(rotationVerdict(history, 'Solanaceae', 2028, 4)).toBeUndefined();
  });

  it('knows the most any disease of a family asks for', () => {
    expect(longestClearYears('Brassicaceae')).toBe(7);
    expect(longestClearYears('Solanaceae')).toBe(4);
    expect(longestClearYears('Apiaceae')).toBeUndefined();
  });
});
