// Seed ageing in store: the Ellis and Roberts viability equation and what follows from it. Called by the functions and
// the seed-lot sheet; calls the normal distribution. The constants of each crop stand in seed-viability-constants.ts.

import type { Limits } from './limits.ts';
import { standardNormalCdf, standardNormalQuantile } from './normal.ts';
import type { ModelSource } from './source.ts';

export const SEED_VIABILITY_LIMITS = {
  germination: { min: 0, max: 1, why: 'germination is a share from 0 to 100 %' },
  age: { min: 0, why: 'the seed was tested before it is sown' },
  moisture: { min: 0.05, max: 0.25, why: 'Ellis & Roberts 1980: 5 to 25 % moisture, fresh weight' },
  temperature: { min: -20, max: 90, why: 'Ellis & Roberts 1980: -20 to 90 C' },
} satisfies Limits;

export const SOURCES: readonly ModelSource[] = [
  {
    model: 'Seed viability in store',
    gives: 'share of a seed lot still germinating after a time in store',
    equation: 'v = Ki - p / sigma; log10 sigma = KE - CW log10 m - CH t - CQ t^2; share = normal distribution of v',
    range: '5 to 25 % moisture (fresh weight), -20 to 90 C, constants of the crop; a test of 100 % counts as 99.5 %',
    source: 'Ellis & Roberts 1980, Annals of Botany 45:13-30 and 45:31-37',
    standing: 'published',
  },
];

/** Constants of one species: moisture enters in % of fresh weight, temperature in C, age in days. */
export interface ViabilityConstants {
  readonly ke: number;
  readonly cw: number;
  readonly ch: number;
  readonly cq: number;
}

/**
 * The most a germination test can show: of 50 seeds all growing, 1 - 1/(4 x 50). A reading of 100 % has no probit, and
 * is taken as this. Source: the adjustment 1 - 1/(4n) of bioassay probit work.
 */
export const HIGHEST_TESTED_GERMINATION = 0.995;

/** Germination share as a normal deviate, 50 % = 0; 100 % counts as 99.5 %. */
export function germinationProbit(germination: number): number {
  return standardNormalQuantile(germination <= 1 ? Math.min(germination, HIGHEST_TESTED_GERMINATION) : germination);
}

/** Days in which viability falls by one probit, at moisture (share of fresh weight) and temperature (C). */
export function viabilitySpread(
  moisture: number,
  temperature: number,
  ke: number,
  cw: number,
  ch: number,
  cq: number,
): number {
  if (!(moisture > 0)) return Number.NaN;
  return 10 ** (ke - cw * Math.log10(moisture * 100) - ch * temperature - cq * temperature * temperature);
}

/**
 * Share still germinating after `age` days in store. `germination` when tested and the answer are shares 0 to 1,
 * `moisture` a share of fresh weight, `temperature` in C. No answer for a negative age or an impossible share.
 * Source: see SOURCES.
 */
export function seedViability(
  germination: number,
  age: number,
  moisture: number,
  temperature: number,
  ke: number,
  cw: number,
  ch: number,
  cq: number,
): number {
  if (!(age >= 0)) return Number.NaN;
  const probit = germinationProbit(germination) - age / viabilitySpread(moisture, temperature, ke, cw, ch, cq);
  return standardNormalCdf(probit);
}

/** Days until half the seeds still germinate; no answer where fewer than half did when tested. */
export function halfViabilityPeriod(
  germination: number,
  moisture: number,
  temperature: number,
  constants: ViabilityConstants,
): number {
  return daysUntilViability(germination, 0.5, moisture, temperature, constants);
}

/** Days in store until germination falls to `wanted`; no answer where it is already lower. */
export function daysUntilViability(
  germination: number,
  wanted: number,
  moisture: number,
  temperature: number,
  constants: ViabilityConstants,
): number {
  const fall = germinationProbit(germination) - germinationProbit(wanted);
  if (!(fall >= 0)) return Number.NaN;
  return fall * viabilitySpread(moisture, temperature, constants.ke, constants.cw, constants.ch, constants.cq);
}

/** Moisture (share of fresh weight) at which germination falls to `wanted` in `age` days at a temperature (C). */
export function moistureForStorage(
  germination: number,
  wanted: number,
  age: number,
  temperature: number,
  constants: ViabilityConstants,
): number {
  const fall = germinationProbit(germination) - germinationProbit(wanted);
  if (!(fall > 0 && age > 0)) return Number.NaN;
  const { ke, cw, ch, cq } = constants;
  return 10 ** ((ke - ch * temperature - cq * temperature * temperature - Math.log10(age / fall)) / cw) / 100;
}

/** Temperature (C) at which germination falls to `wanted` in `age` days at a moisture (share of fresh weight). */
export function temperatureForStorage(
  germination: number,
  wanted: number,
  age: number,
  moisture: number,
  constants: ViabilityConstants,
): number {
  const fall = germinationProbit(germination) - germinationProbit(wanted);
  if (!(fall > 0 && age > 0 && moisture > 0)) return Number.NaN;
  const { ke, cw, ch, cq } = constants;
  const rest = Math.log10(age / fall) - ke + cw * Math.log10(moisture * 100);
  if (cq === 0) return -rest / ch;
  return (Math.sqrt(ch * ch - 4 * cq * rest) - ch) / (2 * cq);
}
