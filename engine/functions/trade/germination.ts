// Germination by temperature and by law, as functions. Tables stand in agronomy/; read by trade/index.ts.

import { daysToEmergence, GERMINATION_LIMITS, germinationRow, normalSeedlings } from '../../agronomy/germination.ts';
import { germinationStandard } from '../../agronomy/germination-standards.ts';
import type { GerminationRow } from '../../agronomy/germination-table.ts';
import type { FunctionDefinition } from '../definition.ts';
import { DAY, inUnit, SHARE, scalar, temperature, text } from './build.ts';

const HARRINGTON =
  'Harrington & Minges 1954, Vegetable Seed Germination, University of California Agricultural Extension Mimeo';

/** 'Bean, snap' as itself, 'Onion, bulb' as Onion. */
function rowOf(kind: unknown): GerminationRow | undefined {
  if (typeof kind !== 'string') return undefined;
  return germinationRow(kind) ?? germinationRow(kind.split(',')[0] ?? kind);
}

function atTemperature(
  name: string,
  doc: string,
  result: ReturnType<typeof inUnit>,
  answer: (row: GerminationRow, celsius: number) => number,
): FunctionDefinition {
  return scalar(
    {
      name,
      group: 'seed',
      parameters: [text('crop'), temperature('temperature', { limit: GERMINATION_LIMITS.temperature })],
      result,
      doc,
      source: HARRINGTON,
    },
    ([crop, celsius]) => {
      const row = rowOf(crop);
      return row === undefined || typeof celsius !== 'number' ? null : answer(row, celsius);
    },
  );
}

export const GERMINATION: readonly FunctionDefinition[] = [
  atTemperature(
    'EMERGENCEAT',
    'Days from sowing to emergence of a crop in moist sand kept at a temperature; blank for crops that were not tried.',
    inUnit(DAY),
    daysToEmergence,
  ),
  atTemperature(
    'SEEDLINGSAT',
    'Share of seeds that make a normal seedling at a temperature; blank for crops that were not tried.',
    inUnit(SHARE),
    normalSeedlings,
  ),
  scalar(
    {
      name: 'SEEDSTANDARD',
      group: 'seed',
      parameters: [text('kind')],
      result: inUnit(SHARE),
      doc: 'Least germination of a kind of vegetable seed sold in the United States; blank for kinds not listed.',
      source: '7 CFR 201.31',
    },
    ([kind]) => {
      const share = typeof kind === 'string' ? germinationStandard(kind) : Number.NaN;
      return Number.isNaN(share) ? null : share;
    },
  ),
];
