// Nutrients removed by onions: the food table's composition against a published review.
import { ratesFromComposition, removedNutrients } from '../../engine/agronomy/nutrients.ts';
import type { Fact } from './check.ts';

export const facts: readonly Fact[] = [
  {
    kind: 'published',
    fact: 'nutrients that 60 t of onions remove',
    unit: 'kg',
    source: {
      author: 'Khokhar, K. M.',
      year: 2019,
      title: 'Mineral nutrient management for onion bulb crops: a review',
      publisher: 'Journal of Horticultural Science and Biotechnology 94: 703-717',
    },
    at: 'abstract: 60 t/ha remove 108 kg N, 21 kg P and 120 kg K',
    points: [
      {
        what: 'nitrogen by the USDA food table, protein 1.10 g in 100 g of raw onion',
        given: 108,
        computed: () => removedNutrients(60_000, ratesFromComposition(1.1, 29, 146)).nitrogen,
        tolerance: 5.4,
      },
      {
        what: 'potassium by the same table, 146 mg in 100 g',
        given: 120,
        computed: () => removedNutrients(60_000, ratesFromComposition(1.1, 29, 146)).potassium,
        tolerance: 6,
        off: { upTo: 33, why: 'bulbs of the food table hold a quarter less potassium than those of the review' },
      },
      {
        what: 'phosphorus by the same table, 29 mg in 100 g',
        given: 21,
        computed: () => removedNutrients(60_000, ratesFromComposition(1.1, 29, 146)).phosphorus,
        tolerance: 1.1,
        off: { upTo: 4, why: 'bulbs of the food table hold a sixth less phosphorus than those of the review' },
      },
    ],
  },
];
