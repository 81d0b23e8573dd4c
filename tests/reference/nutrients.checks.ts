// Nutrients that crops carry off: the food table's composition against a review, a guide and trials.
import { ratesFromComposition, removedNutrients } from '../../engine/agronomy/nutrients.ts';
import type { Fact, Publication } from './check.ts';
import { cropFigure } from './workbook.ts';

const NEW_ENGLAND: Publication = {
  author: 'New England Vegetable Management Guide',
  year: 'undated, the guide as it stands on its site',
  title: 'Removal of Nutrients from the Soil',
  publisher: 'Extension services of the New England states',
  url: 'https://nevegetable.org/cultural-practices/removal-nutrients-soil',
};

const POUND = 0.45359237;
const SHORT_TON = 0.90718474;

interface Removal {
  readonly crop: string;
  readonly harvested: string;
  readonly tons: number;
  readonly pounds: number;
  readonly off?: { readonly upTo: number; readonly why: string };
}

const WITH_LEAVES = 'the guide counts the whole plant or a richer crop; the food table what is eaten';

/** Nitrogen alone: the guide leaves open whether its other columns are oxides. */
const REMOVALS: readonly Removal[] = [
  { crop: 'Cabbage', harvested: 'whole', tons: 20, pounds: 125, off: { upTo: 1.2, why: WITH_LEAVES } },
  { crop: 'Carrot', harvested: 'roots', tons: 25, pounds: 80 },
  { crop: 'Cauliflower', harvested: 'whole', tons: 6, pounds: 45 },
  { crop: 'Kale', harvested: 'whole', tons: 10, pounds: 125, off: { upTo: 1.7, why: WITH_LEAVES } },
  { crop: 'Lettuce, head', harvested: 'whole', tons: 15, pounds: 75 },
  { crop: 'Melon', harvested: 'fruit', tons: 11, pounds: 95, off: { upTo: 3.1, why: WITH_LEAVES } },
  { crop: 'Onion, bulb', harvested: 'bulbs', tons: 20, pounds: 110, off: { upTo: 1, why: WITH_LEAVES } },
  {
    crop: 'Broccoli',
    harvested: 'heads',
    tons: 5,
    pounds: 20,
    off: { upTo: 2.6, why: 'the food table has 2.8 % protein in broccoli, more than twice what the guide implies' },
  },
];

const guide = REMOVALS.map(({ crop, harvested, tons, pounds, off }): Fact => {
  const given = (pounds * POUND) / (tons * SHORT_TON);
  return {
    kind: 'published',
    fact: `nitrogen that a tonne of ${crop.toLowerCase()} carries off`,
    unit: 'kg',
    source: NEW_ENGLAND,
    at: 'Table 4, approximate nutrient removal by selected vegetable crops',
    points: [
      {
        what: `${pounds} lb in ${tons} tons, ${harvested}`,
        given,
        computed: () => cropFigure(crop, 'Nitrogen removal'),
        tolerance: 0.2 * given, // approximate, as the guide says of itself
        ...(off === undefined ? {} : { off }),
      },
    ],
  };
});

const HEGDE: Publication = {
  author: 'Hegde, D. M.',
  year: 1997,
  title: 'Nutrient Requirements of Solanaceous Vegetable Crops',
  publisher: 'Food and Fertilizer Technology Center, Taipei',
  url: 'https://www.agnet.org/library.php?func=view&id=20110801133428',
};

interface Uptake {
  readonly crop: string;
  /** kg that the plants take up for a tonne of fruit: nitrogen, phosphorus, potassium, from and to. */
  readonly taken: readonly (readonly [column: string, from: number, to: number, off?: number])[];
}

/** Fruit hold 45 to 60 % of the nitrogen, 50 to 60 % of the phosphorus and 55 to 70 % of the potassium. */
const IN_FRUIT: Readonly<Record<string, readonly [number, number]>> = {
  Nitrogen: [0.45, 0.6],
  Phosphorus: [0.5, 0.6],
  Potassium: [0.55, 0.7],
};

const UPTAKES: readonly Uptake[] = [
  {
    crop: 'Tomato',
    taken: [
      ['Nitrogen', 2.5, 3],
      ['Phosphorus', 0.2, 0.3, 0.12],
      ['Potassium', 3, 3.5],
    ],
  },
  {
    crop: 'Eggplant',
    taken: [
      ['Nitrogen', 3, 3.5],
      ['Phosphorus', 0.2, 0.3, 0.12],
      ['Potassium', 2.5, 3, 0.6],
    ],
  },
  {
    crop: 'Pepper, sweet',
    taken: [
      ['Nitrogen', 3, 3.5],
      ['Phosphorus', 0.8, 1, 0.35],
      ['Potassium', 5, 6, 1.8],
    ],
  },
];

const fruit = UPTAKES.map(
  ({ crop, taken }): Fact => ({
    kind: 'published',
    fact: `nutrients in a tonne of fruit of ${crop.toLowerCase()}`,
    unit: 'kg',
    source: HEGDE,
    at: 'abstract: uptake for a tonne of fruit, and the share of it that fruit hold',
    points: taken.map(([nutrient, from, to, off]) => {
      const [least, most] = IN_FRUIT[nutrient] ?? [Number.NaN, Number.NaN];
      const [low, high] = [from * least, to * most];
      return {
        what: `${nutrient.toLowerCase()}, middle of ${low.toFixed(2)} to ${high.toFixed(2)}`,
        given: (low + high) / 2,
        computed: () => cropFigure(crop, `${nutrient} removal`),
        tolerance: (high - low) / 2,
        ...(off === undefined
          ? {}
          : { off: { upTo: off, why: 'the food table’s fruit hold another share of it than those of the trials' } }),
      };
    }),
  }),
);

export const facts: readonly Fact[] = [
  ...guide,
  ...fruit,
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
