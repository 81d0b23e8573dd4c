// Water in the root zone against the worked examples of FAO Irrigation and Drainage Paper 56.
import { availableWater, dryDown, readilyAvailableWater } from '../../engine/agronomy/soil-water.ts';
import type { Fact, Point } from './check.ts';
import { FAO56 } from './publications.ts';

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

function held(part: 'total' | 'readily'): readonly Point[] {
  return CROPS.flatMap(({ name, root, depletion, printed }) =>
    SOILS.map((soil, index): Point => {
      const total = (): number => availableWater(soil.fieldCapacity, soil.wiltingPoint, root);
      return {
        what: `${name} on ${soil.name}`,
        given: printed[index * 2 + (part === 'total' ? 0 : 1)] ?? Number.NaN,
        computed: part === 'total' ? total : () => readilyAvailableWater(total(), depletion),
        tolerance: 0.5,
      };
    }),
  );
}

const STRESS = [1, 1, 0.97, 0.91, 0.85, 0.8, 0.75, 0.7, 0.66, 0.62];
const DRAWN = [61, 67, 72.8, 78.3, 83.4, 88.2, 92.6, 96.9, 100.8, 104.5];

const dayOf = (index: number) =>
  dryDown(
    55,
    STRESS.map(() => 6),
    availableWater(0.32, 0.12, 0.8),
    0.4,
  )[index];

export const facts: readonly Fact[] = [
  {
    kind: 'published',
    fact: 'water a root zone holds',
    unit: 'mm',
    source: FAO56,
    at: 'example 36, total available water',
    points: held('total'),
  },
  {
    kind: 'published',
    fact: 'water a crop can readily draw',
    unit: 'mm',
    source: FAO56,
    at: 'example 36, readily available water',
    points: held('readily'),
  },
  {
    kind: 'published',
    fact: 'stress coefficient of a tomato drying out',
    unit: '',
    source: FAO56,
    at: 'example 37, tomato on silt, ten days without rain',
    points: STRESS.map((given, index) => ({
      what: `day ${index + 1}`,
      given,
      computed: () => dayOf(index)?.stress ?? Number.NaN,
      tolerance: 0.0051,
    })),
  },
  {
    kind: 'published',
    fact: 'water drawn by a tomato drying out',
    unit: 'mm',
    source: FAO56,
    at: 'example 37, tomato on silt, ten days without rain',
    points: DRAWN.map((given, index) => ({
      what: `end of day ${index + 1}`,
      given,
      computed: () => dayOf(index)?.drawnAfter ?? Number.NaN,
      tolerance: 0.1,
    })),
  },
];
