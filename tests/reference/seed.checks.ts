// Seed ageing, seed moisture, emergence and germination against worked examples and trial results in print.
import { emergenceDays } from '../../engine/agronomy/emergence.ts';
import { daysToEmergence, germinationRow } from '../../engine/agronomy/germination.ts';
import { STORAGE_LIVES } from '../../engine/agronomy/seed-life.ts';
import { humidityAtMoisture, seedMoisture } from '../../engine/agronomy/seed-moisture.ts';
import {
  daysUntilViability,
  germinationProbit,
  halfViabilityPeriod,
  moistureForStorage,
  seedViability,
  temperatureForStorage,
  type ViabilityConstants,
  viabilitySpread,
} from '../../engine/agronomy/seed-viability.ts';
import { VIABILITY_CONSTANTS } from '../../engine/agronomy/seed-viability-constants.ts';
import { meanPlants } from '../../engine/agronomy/stand.ts';
import type { Check } from './check.ts';

const NO_CONSTANTS: ViabilityConstants = { ke: Number.NaN, cw: Number.NaN, ch: Number.NaN, cq: Number.NaN };

function constantsOf(crop: string, source: string): ViabilityConstants {
  return VIABILITY_CONSTANTS.find((row) => row.crop === crop && row.source.startsWith(source)) ?? NO_CONSTANTS;
}

const RICE = constantsOf('Rice', 'Ellis & Hong 2007');
const SOYBEAN = constantsOf('Soybean', 'Ellis et al. 1982');
const SOYBEAN_1988 = constantsOf('Soybean', 'Ellis 1988');
const CHICKPEA = constantsOf('Chickpea', 'Ellis et al. 1982');

const MANUAL = 'Aravind et al., viabilitymetrics (R package) reference';

const spreadOf = (constants: ViabilityConstants, moisture: number, temperature: number): number =>
  viabilitySpread(moisture, temperature, constants.ke, constants.cw, constants.ch, constants.cq);

const viability: readonly Check[] = [
  {
    source: `${MANUAL}, Sigma`,
    what: 'days per probit, soybean (Ellis et al. 1982), 8 % moisture, -18 C',
    unit: 'd',
    published: 18719.85,
    computed: () => spreadOf(SOYBEAN, 0.08, -18),
    tolerance: 0.005,
    standing: 'published',
  },
  {
    source: `${MANUAL}, Sigma`,
    what: 'days per probit, soybean (Ellis 1988), 8 % moisture, -18 C',
    unit: 'd',
    published: 11354.51,
    computed: () => spreadOf(SOYBEAN_1988, 0.08, -18),
    tolerance: 0.005,
    standing: 'published',
  },
  {
    source: `${MANUAL}, FinalViability`,
    what: 'days per probit, rice, 10 % moisture, 5 C',
    unit: 'd',
    published: 5382.388,
    computed: () => spreadOf(RICE, 0.1, 5),
    tolerance: 0.0005,
    standing: 'published',
  },
  {
    source: `${MANUAL}, FinalViability`,
    what: 'germination of rice of 98 % after 365 days at 10 % moisture, 5 C',
    unit: '%',
    published: 97.64797,
    computed: () => 100 * seedViability(0.98, 365, 0.1, 5, RICE.ke, RICE.cw, RICE.ch, RICE.cq),
    tolerance: 0.000005,
    standing: 'published',
  },
  {
    source: `${MANUAL}, FinalViability`,
    what: 'days for rice to fall from 98 to 95 % at 10 % moisture, 5 C',
    unit: 'd',
    published: 2200.833,
    computed: () => daysUntilViability(0.98, 0.95, 0.1, 5, RICE),
    tolerance: 0.0005,
    standing: 'published',
  },
  {
    source: `${MANUAL}, FinalViability`,
    what: 'moisture at which rice falls from 98 to 95 % in 3,650 days at 5 C',
    unit: '%',
    published: 8.900918,
    computed: () => 100 * moistureForStorage(0.98, 0.95, 3650, 5, RICE),
    tolerance: 0.0000005,
    standing: 'published',
  },
  {
    source: `${MANUAL}, FinalViability`,
    what: 'temperature at which rice falls from 98 to 95 % in 3,650 days at 8 % moisture',
    unit: 'C',
    published: 10.252,
    computed: () => temperatureForStorage(0.98, 0.95, 3650, 0.08, RICE),
    tolerance: 0.0005,
    standing: 'published',
  },
  {
    source: `${MANUAL}, P50`,
    what: 'days until half of chickpea of 98 % is dead, 5 % moisture, -20 C',
    unit: 'd',
    published: 1960829,
    computed: () => halfViabilityPeriod(0.98, 0.05, -20, CHICKPEA),
    tolerance: 0.5,
    standing: 'published',
  },
];

const PROBITS: readonly (readonly [number, number])[] = [
  [0.5, 0],
  [0.6, 0.2533471],
  [0.7, 0.52440051],
  [0.75, 0.67448975],
  [0.8, 0.84162123],
  [0.85, 1.03643339],
  [0.9, 1.28155157],
  [0.95, 1.64485363],
  [0.98, 2.05374891],
  [0.99, 2.32634787],
  [1, 2.575829],
];

const probits = PROBITS.map(
  ([germination, probit]): Check => ({
    source: `${MANUAL}, Percent2Probit`,
    what: `probit of ${germination * 100} % germination${germination === 1 ? ', of 50 seeds' : ''}`,
    unit: 'deviates',
    published: probit,
    computed: () => germinationProbit(germination),
    tolerance: germination === 1 ? 5e-7 : 5e-9,
    standing: 'published',
  }),
);

const moisture: readonly Check[] = [
  {
    source: `${MANUAL}, SeedEqMC (Cromarty, Ellis & Roberts 1985)`,
    what: 'moisture of seed with 29 % oil at 13 % humidity, 25 C, fresh weight',
    unit: '%',
    published: 3.877459,
    computed: () => 100 * seedMoisture(0.13, 25, 0.29),
    tolerance: 0.0000005,
    standing: 'published',
  },
  {
    source: `${MANUAL}, SeedEqMC (Cromarty, Ellis & Roberts 1985)`,
    what: 'humidity over seed with 29 % oil at 5 % moisture of dry weight, 25 C',
    unit: '%',
    published: 19.26179,
    computed: () => 100 * humidityAtMoisture(0.05 / 1.05, 25, 0.29),
    tolerance: 0.000005,
    standing: 'published',
  },
  {
    source: `${MANUAL}, SeedEqMC (Cromarty, Ellis & Roberts 1985)`,
    what: 'humidity over seed with 29 % oil at 5 % moisture of fresh weight, 25 C',
    unit: '%',
    published: 21.10662,
    computed: () => 100 * humidityAtMoisture(0.05, 25, 0.29),
    tolerance: 0.000005,
    standing: 'published',
  },
];

const HARRINGTON = 'Harrington & Minges 1954, Vegetable Seed Germination, onion at 5 C';

const emergence: readonly Check[] = [
  {
    source: 'Brewster 2008, Onions and Other Vegetable Alliums, eq 4.6-4.7 (data of Harrington 1962)',
    what: 'days to half germination of onion at 22.5 C',
    unit: 'd',
    published: 4,
    computed: () => emergenceDays(22.5, 2.5, 80),
    tolerance: 1e-9,
    standing: 'published',
  },
  {
    source: 'Brewster 2008, Onions and Other Vegetable Alliums, eq 4.6-4.7 (data of Harrington 1962)',
    what: 'days to half germination of onion at 7.5 C',
    unit: 'd',
    published: 16,
    computed: () => emergenceDays(7.5, 2.5, 80),
    tolerance: 1e-9,
    standing: 'published',
  },
  {
    source: HARRINGTON,
    what: 'days to emergence of onion at 5 C by the thermal time of Brewster 2008',
    unit: 'd',
    published: 31,
    computed: () => emergenceDays(5, 2.5, 80),
    tolerance: 1.5, // whole days printed; germination against emergence from 1/2 inch
    standing: 'published',
  },
];

function onionDays(temperature: number): number {
  const row = germinationRow('Onion');
  return row === undefined ? Number.NaN : daysToEmergence(row, temperature);
}

const practice: readonly Check[] = [
  ...[10, 15, 20, 24].map(
    (temperature): Check => ({
      source: 'common practice: onions come up within two weeks at 10 to 24 C',
      what: `days to emergence of onion at ${temperature} C`,
      unit: 'd',
      published: 8,
      computed: () => onionDays(temperature),
      tolerance: 6, // 2 to 14 days
      standing: 'common practice',
    }),
  ),
  {
    source: 'common practice: allium seed only within a year of packing',
    what: 'storage life of onion seed',
    unit: 'years',
    published: 1,
    computed: () => STORAGE_LIVES.find((life) => life.kind === 'Onion')?.handbook ?? Number.NaN,
    tolerance: 0,
    standing: 'common practice',
  },
  {
    source: 'common practice: two to four seeds a block for a mean of three plants',
    what: 'mean plants of blocks with 3.5 seeds of 85 %',
    unit: 'plants',
    published: 3,
    computed: () => meanPlants(3.5, 0.85),
    tolerance: 0.3,
    standing: 'common practice',
  },
];

export const checks: readonly Check[] = [...viability, ...probits, ...moisture, ...emergence, ...practice];
