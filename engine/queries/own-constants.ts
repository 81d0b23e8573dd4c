// Figures that stand in formulas are written in the unit that their source has; here they get the one in which people of the
// workbook's system say them. Called where a formula is told in words.

import { CELSIUS_DAY, FAHRENHEIT_DAY, unitOfParts } from '../units/arithmetic.ts';
import { AREA, dimension, LENGTH, MASS, sameDimension, VOLUME, WARMTH } from '../units/dimension.ts';
import { listed } from '../units/table.ts';
import type { Unit } from '../units/unit.ts';
import type { Scalar } from '../values/error.ts';
import type { ValueType } from '../values/type.ts';

type System = 'us' | 'si';

/** The type of a constant with the unit in which people of the system say it; what both say alike stays as it is. */
export function ownUnits(type: ValueType, value: Scalar, units: System): ValueType {
  if (typeof value !== 'number') return type;
  if (type.kind === 'temperature') return { ...type, unit: listed(units === 'us' ? 'degF' : 'degC') };
  if (type.kind !== 'number' || OF[units].test(type.unit.symbol)) return type;
  const unit = ownUnit(type.unit, Math.abs(value), units);
  return unit === undefined ? type : { ...type, unit };
}

/** Units that are the system's own already, whatever the size. */
const OF: Readonly<Record<System, RegExp>> = {
  us: /^(in|ft|yd|mi|acre|oz|lb|cwt|ton|gal|qt|pt|cup|fl oz|bu|peck|Fdeg|degFday|ft in)/,
  si: /^(mm?|cm|km|ha|kg|m?g|t|m?L|Cdeg|K|degCday)(?![a-z])/,
};

function squared(symbol: string): Unit {
  return unitOfParts([{ unit: listed(symbol), exponent: 2 }]);
}

function per(above: string, below: string, exponent: number): Unit {
  return unitOfParts([
    { unit: listed(above), exponent: 1 },
    { unit: listed(below), exponent: -exponent },
  ]);
}

const MASS_A_VOLUME = dimension({ mass: 1, length: -3 });
const MASS_AN_AREA = dimension({ mass: 1, length: -2 });

/** `size` is canonical: in metres, kilograms, square metres. */
function ownUnit({ dimension: of }: Unit, size: number, units: System): Unit | undefined {
  const us = units === 'us';
  if (sameDimension(of, LENGTH)) return listed(us ? (size < 1 ? 'in' : 'ft') : size < 1 ? 'cm' : 'm');
  if (sameDimension(of, MASS)) return listed(us ? (size < 0.45 ? 'oz' : 'lb') : size < 1 ? 'g' : 'kg');
  if (sameDimension(of, AREA)) return squared(us ? 'ft' : 'm');
  if (sameDimension(of, VOLUME)) return listed(us ? 'gal' : 'L');
  if (sameDimension(of, WARMTH)) return listed(us ? 'Fdeg' : 'Cdeg');
  if (sameDimension(of, FAHRENHEIT_DAY.dimension)) return us ? FAHRENHEIT_DAY : CELSIUS_DAY;
  if (sameDimension(of, MASS_A_VOLUME)) return us ? per('lb', 'ft', 3) : per('kg', 'm', 3);
  if (sameDimension(of, MASS_AN_AREA)) return us ? per('lb', 'ft', 2) : per('kg', 'm', 2);
  return undefined;
}
