// Harvest signs, curing conditions, loss in store and rotation against print.
import { CURING_CONDITIONS, curedMass, SWEET_ONION_CURING_LOSS } from '../../engine/agronomy/curing.ts';
import { GROWTH_AFTER_LODGING, LODGED_TO_PULL } from '../../engine/agronomy/harvest.ts';
import { clearYearsBetween, DISEASE_CLEAR_YEARS, earliestReturn } from '../../engine/agronomy/rotation.ts';
import { massAfter } from '../../engine/agronomy/storage.ts';
import type { Check } from './check.ts';

const HOEPTING = 'Hoepting, Cornell Cooperative Extension, onion harvest and post-harvest tips';
const ROTATION = 'University of Connecticut IPM, rotation periods suggested to help control vegetable diseases';

function celsius(fahrenheit: number): number {
  return ((fahrenheit - 32) * 5) / 9;
}

interface Printed {
  readonly crop: string;
  readonly source: string;
  readonly temperature: readonly [number, number];
  readonly days: readonly [number, number];
}

const PRINTED: readonly Printed[] = [
  {
    crop: 'Onion',
    source: 'University of Massachusetts Extension, onions, harvest and curing (68 to 86 F)',
    temperature: [celsius(68), celsius(86)],
    days: [14, 20],
  },
  { crop: 'Potato', source: 'Kitinoja & Kader, FAO ae075e05, curing table', temperature: [15, 20], days: [5, 10] },
  { crop: 'Sweet potato', source: 'Kitinoja & Kader, FAO ae075e05, curing table', temperature: [30, 32], days: [4, 7] },
];

const curing = PRINTED.flatMap(({ crop, source, temperature, days }): readonly Check[] => {
  const kept = CURING_CONDITIONS.find((row) => row.crop === crop);
  const end = (part: 'temperature' | 'days', index: 0 | 1): Check => ({
    source:
      part === 'days' && crop === 'Onion'
        ? 'Oregon State University, sustainable onion production, drying and curing'
        : source,
    what: `${crop}, curing ${part}, ${index === 0 ? 'least' : 'most'}`,
    unit: part === 'days' ? 'days' : 'degC',
    published: (part === 'days' ? days : temperature)[index],
    computed: () => kept?.[part][index] ?? Number.NaN,
    tolerance: 0.05,
    standing: 'published',
  });
  return [end('temperature', 0), end('temperature', 1), end('days', 0), end('days', 1)];
});

const rotation = [2, 2, 3, 7, 3, 2, 3, 2, 4, 3, 3].map((published, index): Check => {
  const row = DISEASE_CLEAR_YEARS[index];
  return {
    source: ROTATION,
    what: `clear years for ${row?.crops}, ${row?.disease}`,
    unit: 'years',
    published,
    computed: () => clearYearsBetween(2024, earliestReturn(2024, row?.years ?? Number.NaN)),
    tolerance: 0,
    standing: 'published',
  };
});

export const checks: readonly Check[] = [
  {
    source: HOEPTING,
    what: 'share of tops down from which onions are pulled',
    unit: '%',
    published: 50,
    computed: () => LODGED_TO_PULL * 100,
    tolerance: 0,
    standing: 'published',
  },
  {
    source: HOEPTING,
    what: 'least growth after tops fall',
    unit: '%',
    published: 25,
    computed: () => GROWTH_AFTER_LODGING.low * 100,
    tolerance: 0,
    standing: 'published',
  },
  {
    source: HOEPTING,
    what: 'most growth after tops fall',
    unit: '%',
    published: 33,
    computed: () => GROWTH_AFTER_LODGING.high * 100,
    tolerance: 0.5,
    standing: 'published',
  },
  ...curing,
  {
    source:
      'Maw & Mullinix 2005, Postharvest Biol. Technol. 35: 223-227 (cured at optimal maturity) and Msika & Jackson 1997, in Rabinowitch & Currah 2002 (3.3 % a month)',
    what: '1000 kg of sweet onions cured, then six months in warm store',
    unit: 'kg',
    published: 757.9,
    computed: () => massAfter(curedMass(1000, SWEET_ONION_CURING_LOSS.optimal), 0.033, 6),
    tolerance: 0.05,
    standing: 'dataset',
  },
  ...rotation,
];
