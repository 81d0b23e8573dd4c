// Seed ageing and moisture against the printed examples of an independent package, emergence against trials in print.
import { emergenceDays } from '../../engine/agronomy/emergence.ts';
import { daysToEmergence, germinationRow } from '../../engine/agronomy/germination.ts';
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
import type { ByLibrary, Fact, Point } from './check.ts';
import { HARRINGTON_MINGES, VIABILITY_MANUAL } from './publications.ts';

const NO_CONSTANTS: ViabilityConstants = { ke: Number.NaN, cw: Number.NaN, ch: Number.NaN, cq: Number.NaN };

function constantsOf(crop: string, source: string): ViabilityConstants {
  return VIABILITY_CONSTANTS.find((row) => row.crop === crop && row.source.startsWith(source)) ?? NO_CONSTANTS;
}

const RICE = constantsOf('Rice', 'Ellis & Hong 2007');
const SOYBEAN = constantsOf('Soybean', 'Ellis et al. 1982');
const SOYBEAN_1988 = constantsOf('Soybean', 'Ellis 1988');
const CHICKPEA = constantsOf('Chickpea', 'Ellis et al. 1982');

const spreadOf = (constants: ViabilityConstants, moisture: number, temperature: number): number =>
  viabilitySpread(moisture, temperature, constants.ke, constants.cw, constants.ch, constants.cq);

/** An example that the package's manual prints with its result. */
function byPackage(fact: string, call: string, unit: string, points: readonly Point[]): ByLibrary {
  const program = {
    name: 'viabilitymetrics (R)',
    version: 'of its online manual',
    call: `${call}, example in its manual`,
  };
  return { kind: 'library', fact, unit, program, data: VIABILITY_MANUAL, points };
}

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

/** Temperature and days to emergence. */
const ONION_EMERGENCE = [
  [5, 31],
  [10, 13],
  [15, 7],
  [20, 5],
  [25, 4],
] as const;

function onionDays(temperature: number): number {
  const row = germinationRow('Onion');
  return row === undefined ? Number.NaN : daysToEmergence(row, temperature);
}

export const facts: readonly Fact[] = [
  byPackage('days in store per probit of germination', 'Sigma, FinalViability', 'd', [
    {
      what: 'soybean (Ellis et al. 1982), 8 % moisture, -18 C',
      given: 18719.85,
      computed: () => spreadOf(SOYBEAN, 0.08, -18),
      tolerance: 0.005,
    },
    {
      what: 'soybean (Ellis 1988), 8 % moisture, -18 C',
      given: 11354.51,
      computed: () => spreadOf(SOYBEAN_1988, 0.08, -18),
      tolerance: 0.005,
    },
    { what: 'rice, 10 % moisture, 5 C', given: 5382.388, computed: () => spreadOf(RICE, 0.1, 5), tolerance: 0.0005 },
  ]),
  byPackage('germination after a time in store', 'FinalViability', '%', [
    {
      what: 'rice of 98 % after 365 days at 10 % moisture, 5 C',
      given: 97.64797,
      computed: () => 100 * seedViability(0.98, 365, 0.1, 5, RICE.ke, RICE.cw, RICE.ch, RICE.cq),
      tolerance: 0.000005,
    },
  ]),
  byPackage('time until seed falls to a germination', 'FinalViability, P50', 'd', [
    {
      what: 'rice from 98 to 95 % at 10 % moisture, 5 C',
      given: 2200.833,
      computed: () => daysUntilViability(0.98, 0.95, 0.1, 5, RICE),
      tolerance: 0.0005,
    },
    {
      what: 'chickpea of 98 % to half, 5 % moisture, -20 C',
      given: 1960829,
      computed: () => halfViabilityPeriod(0.98, 0.05, -20, CHICKPEA),
      tolerance: 0.5,
    },
  ]),
  byPackage('moisture that keeps seed for a time', 'FinalViability', '%', [
    {
      what: 'rice from 98 to 95 % in 3,650 days at 5 C',
      given: 8.900918,
      computed: () => 100 * moistureForStorage(0.98, 0.95, 3650, 5, RICE),
      tolerance: 0.0000005,
    },
  ]),
  byPackage('temperature that keeps seed for a time', 'FinalViability', 'C', [
    {
      what: 'rice from 98 to 95 % in 3,650 days at 8 % moisture',
      given: 10.252,
      computed: () => temperatureForStorage(0.98, 0.95, 3650, 0.08, RICE),
      tolerance: 0.0005,
    },
  ]),
  byPackage(
    'probit of a germination',
    'Percent2Probit',
    'deviates',
    PROBITS.map(([germination, given]) => ({
      what: `${germination * 100} % germination${germination === 1 ? ', of 50 seeds' : ''}`,
      given,
      computed: () => germinationProbit(germination),
      tolerance: germination === 1 ? 5e-7 : 5e-9,
    })),
  ),
  byPackage('moisture of seed in air, and humidity over seed', 'SeedEqMC (Cromarty, Ellis & Roberts 1985)', '%', [
    {
      what: 'moisture at 13 % humidity, 25 C, 29 % oil, fresh weight',
      given: 3.877459,
      computed: () => 100 * seedMoisture(0.13, 25, 0.29),
      tolerance: 0.0000005,
    },
    {
      what: 'humidity at 5 % moisture of dry weight, 25 C, 29 % oil',
      given: 19.26179,
      computed: () => 100 * humidityAtMoisture(0.05 / 1.05, 25, 0.29),
      tolerance: 0.000005,
    },
    {
      what: 'humidity at 5 % moisture of fresh weight, 25 C, 29 % oil',
      given: 21.10662,
      computed: () => 100 * humidityAtMoisture(0.05, 25, 0.29),
      tolerance: 0.000005,
    },
  ]),
  {
    kind: 'published',
    fact: 'days to emergence of onion by thermal time',
    unit: 'd',
    source: HARRINGTON_MINGES,
    at: 'table of days to emergence from half an inch deep, by soil temperature: onion',
    points: ONION_EMERGENCE.map(([temperature, given]) => ({
      what: `${temperature} C, 80 degree-days above 2.5 C`,
      given,
      computed: () => emergenceDays(temperature, 2.5, 80),
      tolerance: 1.5, // whole days printed; germination against emergence from half an inch
      ...(temperature === 10
        ? { off: { upTo: 2.5, why: 'thermal time is of germination; the seedlings of the table had still to rise' } }
        : {}),
    })),
  },
  {
    kind: 'common practice',
    fact: 'days until onions come up',
    unit: 'd',
    practice: 'onions come up within two weeks at 10 to 24 C',
    points: [10, 15, 20, 24].map((temperature) => ({
      what: `${temperature} C, 2 to 14 days`,
      given: 8,
      computed: () => onionDays(temperature),
      tolerance: 6,
    })),
  },
  {
    kind: 'common practice',
    fact: 'seeds to a block of three plants',
    unit: 'plants',
    practice: 'two to four seeds a block make three plants on average',
    points: [{ what: '3.5 seeds of 85 %', given: 3, computed: () => meanPlants(3.5, 0.85), tolerance: 0.3 }],
  },
];
