// Nutrients removed by onions against a published review.
import { ratesFromComposition, removedNutrients } from '../../engine/agronomy/nutrients.ts';
import type { Check } from './check.ts';

const REVIEW =
  'Khokhar 2019, J. Hort. Sci. Biotechnol. 94: 703-717, abstract: 60 t/ha of onions remove 108 N, 21 P, 120 K';
const RATES = { nitrogen: 1.8, phosphorus: 0.35, potassium: 2 };

const removed = (['nitrogen', 'phosphorus', 'potassium'] as const).map(
  (nutrient, index): Check => ({
    source: REVIEW,
    what: `${nutrient} in 60 t of onions at ${RATES[nutrient]} kg/t`,
    unit: 'kg',
    published: [108, 21, 120][index] ?? Number.NaN,
    computed: () => removedNutrients(60_000, RATES)[nutrient],
    tolerance: 0.5,
    standing: 'published',
  }),
);

export const checks: readonly Check[] = [
  ...removed,
  {
    source: REVIEW,
    what: 'nitrogen in 60 t of onions from the USDA food table (protein 1.10 g in 100 g)',
    unit: 'kg',
    published: 108,
    computed: () => removedNutrients(60_000, ratesFromComposition(1.1, 29, 146)).nitrogen,
    tolerance: 5.4,
    standing: 'published',
  },
];
