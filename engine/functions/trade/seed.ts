// Seed as functions: moisture in store, ageing, days to come up. Bodies stand in agronomy/; read by trade/index.ts.

import { EMERGENCE_LIMITS, emergenceDays } from '../../agronomy/emergence.ts';
import { germinationByStorageLife } from '../../agronomy/seed-life.ts';
import { SEED_MOISTURE_LIMITS, seedMoisture } from '../../agronomy/seed-moisture.ts';
import { SEED_VIABILITY_LIMITS, seedViability } from '../../agronomy/seed-viability.ts';
import type { FunctionDefinition } from '../definition.ts';
import { DAY, days, degreeDays, numeric, PLAIN, plain, temperature } from './build.ts';

const GERMINATION = plain('germination', { limit: SEED_VIABILITY_LIMITS.germination });
const AGE = days('age', { limit: SEED_VIABILITY_LIMITS.age });

export const SEED: readonly FunctionDefinition[] = [
  numeric(
    {
      name: 'SEEDMOISTURE',
      group: 'seed',
      parameters: [
        plain('humidity', { limit: SEED_MOISTURE_LIMITS.humidity }),
        temperature('temperature', { limit: SEED_MOISTURE_LIMITS.temperature }),
        plain('oil', { limit: SEED_MOISTURE_LIMITS.oil }),
      ],
      gives: PLAIN,
      doc: 'Moisture a seed settles at in the air of its store, share of fresh weight.',
      source: 'Cromarty, Ellis & Roberts 1982, The Design of Seed Storage Facilities for Genetic Conservation',
    },
    seedMoisture,
  ),
  numeric(
    {
      name: 'SEEDVIABILITY',
      group: 'seed',
      parameters: [
        GERMINATION,
        AGE,
        plain('moisture', { limit: SEED_VIABILITY_LIMITS.moisture }),
        temperature('temperature', { limit: SEED_VIABILITY_LIMITS.temperature }),
        plain('KE'),
        plain('CW'),
        plain('CH'),
        plain('CQ'),
      ],
      gives: PLAIN,
      doc: 'Share of a seed lot still germinating after a time in store, from its last test.',
      source: 'Ellis & Roberts 1980, Annals of Botany 45:13-30',
    },
    seedViability,
  ),
  numeric(
    {
      name: 'SEEDLIFE',
      group: 'seed',
      parameters: [GERMINATION, AGE, plain('life_years', { limit: { min: 0, why: 'a storage life is some years' } })],
      gives: PLAIN,
      doc: 'Share still germinating by the rule of storage life in years, for crops without viability constants.',
      source:
        "Years: Maynard & Hochmuth 1997, Knott's Handbook for Vegetable Growers; 90 % down to 70 % at their end: common practice",
    },
    germinationByStorageLife,
  ),
  numeric(
    {
      name: 'EMERGENCEDAYS',
      group: 'seed',
      parameters: [
        temperature('temperature', { limit: EMERGENCE_LIMITS.temperature }),
        temperature('base'),
        degreeDays('thermal_time', { limit: EMERGENCE_LIMITS.thermalTime }),
      ],
      gives: DAY,
      doc: 'Days from sowing to emergence at a constant temperature; blank at or below the base temperature.',
      source: 'Bierhuizen & Wagenvoort 1974, Scientia Horticulturae 2:213-219',
    },
    emergenceDays,
  ),
];
