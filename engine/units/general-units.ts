// Units in general use that the table doesn't list (rod, chain, stone, kWh, psi ...), asked of mathjs. The only file that
// imports it. Refused are units outside our dimensions and prefixes beyond milli and kilo's neighbours. Fetched by general.ts
// when such a unit is first met.

import { create, UnitDependencies } from 'mathjs';
import { type Dimension, dimension, isPlain } from './dimension.ts';
import { doubles, multiplyRatios, type Ratio, ratio } from './ratio.ts';
import type { Atom } from './table.ts';

/** mathjs's order of base dimensions; what stands after temperature has no place in a season's plan. */
const POWERS = ['mass', 'length', 'time', 'current', 'temperature'] as const;

const PREFIXES = new Set(['', 'd', 'c', 'm', 'u', 'k', 'h', 'deci', 'centi', 'milli', 'micro', 'kilo', 'hecto']);

/** The part of mathjs's unit class that is used; its own types leave the class untyped. */
interface GeneralUnit {
  readonly value: number;
  readonly dimensions: readonly number[];
  readonly units: readonly { readonly prefix: { readonly name: string } }[];
}
interface GeneralUnits {
  new (value: number, name: string): GeneralUnit;
  isValuelessUnit(name: string): boolean;
}

function isGeneralUnits(candidate: unknown): candidate is GeneralUnits {
  return typeof candidate === 'function' && 'isValuelessUnit' in candidate;
}

let loaded: GeneralUnits | undefined;

function generalUnits(): GeneralUnits | undefined {
  if (loaded === undefined) {
    const made: unknown = Reflect.get(create(UnitDependencies ?? {}), 'Unit');
    if (isGeneralUnits(made)) loaded = made;
  }
  return loaded;
}

/** The unit that mathjs knows by this name, in our canonical units (days, not seconds); undefined where refused. */
export function generalUnit(name: string): Atom | undefined {
  const Units = generalUnits();
  if (Units === undefined || !Units.isValuelessUnit(name)) return undefined;
  const found = new Units(1, name);
  const known = dimensionOf(found.dimensions);
  const prefix = found.units[0]?.prefix.name ?? '';
  if (known === undefined || known.temperature !== 0 || isPlain(known) || !PREFIXES.has(prefix)) return undefined;
  return {
    symbol: name,
    dimension: known,
    ...doubles(multiplyRatios(ratio(String(found.value)), secondsAsDays(known.time))),
    offset: 0,
  };
}

function dimensionOf(powers: readonly number[]): Dimension | undefined {
  const of = (base: (typeof POWERS)[number]): number => powers[POWERS.indexOf(base)] ?? 0;
  if (of('current') !== 0 || powers.slice(POWERS.length).some((power) => power !== 0)) return undefined;
  return dimension({ mass: of('mass'), length: of('length'), time: of('time'), temperature: of('temperature') });
}

/** 86400^-power: a unit per second squared is 86400 x 86400 per day squared. */
function secondsAsDays(power: number): Ratio {
  const factor = String(86400 ** Math.abs(power));
  return ratio(power > 0 ? `1/${factor}` : factor);
}
