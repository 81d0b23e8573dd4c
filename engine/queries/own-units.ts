// Figures that stand in formulas and in prose are written in one system; here they are turned into the workbook's own.

import { FAHRENHEIT_DAY, unitOfParts } from '../units/arithmetic.ts';
import { AREA, LENGTH, MASS, sameDimension, WARMTH } from '../units/dimension.ts';
import { listed } from '../units/table.ts';
import type { Unit } from '../units/unit.ts';
import type { Scalar } from '../values/error.ts';
import type { ValueType } from '../values/type.ts';

type System = 'us' | 'si';

/** The type of a constant with the unit in which people of the system say it. */
export function ownUnits(type: ValueType, value: Scalar, units: System): ValueType {
  if (units !== 'us' || typeof value !== 'number') return type;
  if (type.kind === 'temperature') return { ...type, unit: listed('degF') };
  if (type.kind !== 'number') return type;
  const unit = usUnit(type.unit, Math.abs(value));
  return unit === undefined ? type : { ...type, unit };
}

const SQUARE_FEET = unitOfParts([{ unit: listed('ft'), exponent: 2 }]);

/** `size` is in metres, kilograms or square metres. */
function usUnit({ dimension, symbol }: Unit, size: number): Unit | undefined {
  if (US.test(symbol)) return undefined;
  if (sameDimension(dimension, LENGTH)) return listed(size < 1 ? 'in' : 'ft');
  if (sameDimension(dimension, MASS)) return listed(size < 0.45 ? 'oz' : 'lb');
  if (sameDimension(dimension, AREA)) return SQUARE_FEET;
  if (sameDimension(dimension, WARMTH)) return listed('Fdeg');
  if (sameDimension(dimension, FAHRENHEIT_DAY.dimension)) return FAHRENHEIT_DAY;
  return undefined;
}

const US = /^(in|ft|yd|oz|lb|degF|Fdeg|ft²|acre)/;

const NUMBER = '[-\\u2212]?\\d[\\d,]*(?:\\.\\d+)?';
const DEGREES = new RegExp(`(?:(${NUMBER})( to | and ))?(${NUMBER}) deg([CF])( days?\\b)?`, 'g');

/** Prose with its temperatures in the workbook's own degrees: '20 to 30 degC' is '68 to 86 °F' where those are read. */
export function inOwnDegrees(text: string, units: System): string {
  if (!/ deg[CF]\b/.test(text)) return text;
  const own = units === 'us' ? 'F' : 'C';
  return text.replace(DEGREES, (_, first: string | undefined, between = '', last = '', scale = '', days = '') => {
    const turned = (figure: string): string => (scale === own ? figure : turn(figure, own, days !== ''));
    return `${first === undefined ? '' : `${turned(first)}${between}`}${turned(last)} °${own}${days}`;
  });
}

/** To a tenth where the figure has one, else to a whole degree; sums of warmth have no zero to begin from. */
function turn(figure: string, own: string, sums: boolean): string {
  const from = Number(figure.replace('\u2212', '-').replaceAll(',', ''));
  const turned = own === 'F' ? from * 1.8 + (sums ? 0 : 32) : (from - (sums ? 0 : 32)) / 1.8;
  return turned.toFixed(figure.includes('.') ? 1 : 0).replace(/^-0$/, '0');
}
