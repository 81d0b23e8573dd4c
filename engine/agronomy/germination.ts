// How temperature governs germination: days to emergence and the share of normal seedlings between the temperatures of
// the table. Called by the functions and the sowing plan; calls the table.

import { GERMINATION_BY_TEMPERATURE, type GerminationRow } from './germination-table.ts';
import type { Limits } from './limits.ts';
import type { ModelSource } from './source.ts';

export const GERMINATION_LIMITS = {
  temperature: { min: 0, max: 40, why: 'Harrington & Minges 1954: tested from 0 to 40 C' },
} satisfies Limits;

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Germination by temperature',
    gives: 'days to emergence and share of normal seedlings at a temperature, 24 vegetables',
    equation: 'table at 0, 5 ... 40 C; between two temperatures the rate 1/days and the share run in straight lines',
    range: '0 to 40 C held constant, 1/2 inch deep in moist sand: field emergence takes longer',
    source:
      'Harrington & Minges 1954, Vegetable Seed Germination, University of California Agricultural Extension Mimeo',
    standing: 'published',
  },
];

const ROW_OF_KIND = new Map(GERMINATION_BY_TEMPERATURE.map((row) => [row.kind, row]));

/** The table's row for a kind as it names it ('Onion', 'Bean, snap'); undefined for others. */
export function germinationRow(kind: string): GerminationRow | undefined {
  return ROW_OF_KIND.get(kind);
}

// Degrees between neighbours; the first is 0 C. Beyond the table's ends there is no neighbour, and so no answer.
const STEP = 5;

/**
 * Days to emergence of a row of the table at a temperature (C), 1/days in a straight line between neighbours. No answer
 * outside 0 to 40 C or where a neighbour gives no days.
 */
export function daysToEmergence(row: GerminationRow, temperature: number): number {
  const below = Math.floor(temperature / STEP);
  const part = temperature / STEP - below;
  const daysBelow = row.days[below] ?? Number.NaN;
  if (part === 0) return daysBelow;
  const daysAbove = row.days[below + 1] ?? Number.NaN;
  return 1 / ((1 - part) / daysBelow + part / daysAbove);
}

/** Share (0 to 1) of normal seedlings at a temperature (C), straight lines between neighbours; no answer where one is untested. */
export function normalSeedlings(row: GerminationRow, temperature: number): number {
  const below = Math.floor(temperature / STEP);
  const part = temperature / STEP - below;
  const shareBelow = (row.percent[below] ?? Number.NaN) / 100;
  if (part === 0) return shareBelow;
  const shareAbove = (row.percent[below + 1] ?? Number.NaN) / 100;
  return (1 - part) * shareBelow + part * shareAbove;
}
