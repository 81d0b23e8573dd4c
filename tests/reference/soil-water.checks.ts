// Water in the root zone against the worked examples of FAO Irrigation and Drainage Paper 56.
import { availableWater, dryDown, readilyAvailableWater } from '../../engine/agronomy/soil-water.ts';
import type { Check } from './check.ts';

const PAPER = 'Allen et al. 1998, FAO Irrigation and Drainage Paper 56';

interface Soil {
  readonly name: string;
  readonly fieldCapacity: number;
  readonly wiltingPoint: number;
}

const SOILS: readonly Soil[] = [
  { name: 'loamy sand', fieldCapacity: 0.15, wiltingPoint: 0.06 },
  { name: 'silt', fieldCapacity: 0.32, wiltingPoint: 0.15 },
  { name: 'silty clay', fieldCapacity: 0.35, wiltingPoint: 0.23 },
];

/** Rooting depth, depletion fraction, and for each soil the printed total and readily available water. */
const CROPS = [
  { name: 'onion', root: 0.4, depletion: 0.3, printed: [36, 11, 68, 20, 48, 14] },
  { name: 'tomato', root: 0.8, depletion: 0.4, printed: [72, 29, 136, 54, 96, 38] },
  { name: 'maize', root: 1.2, depletion: 0.55, printed: [108, 59, 204, 112, 144, 79] },
] as const;

const held = CROPS.flatMap(({ name, root, depletion, printed }) =>
  SOILS.flatMap((soil, index): readonly Check[] => {
    const total = (): number => availableWater(soil.fieldCapacity, soil.wiltingPoint, root);
    const check = (what: string, published: number | undefined, computed: () => number): Check => ({
      source: PAPER,
      what: `example 36: ${what}, ${name} on ${soil.name}`,
      unit: 'mm',
      published: published ?? Number.NaN,
      computed,
      tolerance: 0.5,
      standing: 'published',
    });
    return [
      check('total available water', printed[index * 2], total),
      check('readily available water', printed[index * 2 + 1], () => readilyAvailableWater(total(), depletion)),
    ];
  }),
);

const STRESS = [1, 1, 0.97, 0.91, 0.85, 0.8, 0.75, 0.7, 0.66, 0.62];
const DRAWN = [61, 67, 72.8, 78.3, 83.4, 88.2, 92.6, 96.9, 100.8, 104.5];

const drying = STRESS.flatMap((stress, index): readonly Check[] => {
  const day = () =>
    dryDown(
      55,
      STRESS.map(() => 6),
      availableWater(0.32, 0.12, 0.8),
      0.4,
    )[index];
  return [
    {
      source: PAPER,
      what: `example 37: tomato on silt, stress coefficient on day ${index + 1}`,
      unit: '',
      published: stress,
      computed: () => day()?.stress ?? Number.NaN,
      tolerance: 0.0051,
      standing: 'published',
    },
    {
      source: PAPER,
      what: `example 37: tomato on silt, water drawn by the end of day ${index + 1}`,
      unit: 'mm',
      published: DRAWN[index] ?? Number.NaN,
      computed: () => day()?.drawnAfter ?? Number.NaN,
      tolerance: 0.1,
      standing: 'published',
    },
  ];
});

export const checks: readonly Check[] = [...held, ...drying];
