// TEXT and its kin: a value written as the formula says. What a value is decides what its format means: a date takes "d mmm", a
// time span "h:mm", a number "#,##0.00"; a quantity needs its unit said too. Read by standard/index.ts.

import type { ArgumentType } from '../../language/signature.ts';
import { isPlain, MONEY, sameDimension, TIME } from '../../units/dimension.ts';
import { fromCanonical, type Unit } from '../../units/unit.ts';
import { createVocabulary } from '../../units/vocabulary.ts';
import type { Scalar } from '../../values/error.ts';
import { unitLabel } from '../../values/show.ts';
import { tolerantRound } from '../../values/tolerance.ts';
import { isText, nameOfType, TEXT, type ValueType } from '../../values/type.ts';
import { anything, makers, needed, optional, or, plain, rule, takes, text, yesno } from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';
import { dateWriter, isTimeFormat, numberWriter, type Read, timeWriter } from './number-format.ts';
import { atDigits } from './rounding.ts';
import { oneOf, subject } from './types.ts';

const make = makers('text');

/** Units that stand in formats. Money in compound units has no name here: the workbook's own is not known to functions. */
const NO_CURRENCY = 'XXX';
const UNITS = createVocabulary({ currency: NO_CURRENCY });

function measured(type: ValueType, unit: Unit): boolean {
  if (type.kind === 'temperature') return unit.offset !== 0 || unit.symbol === 'K';
  return type.kind === 'number' && unit.offset === 0 && sameDimension(type.dimension, unit.dimension);
}

function inUnit(format: string, unit: Unit): Read {
  const write = numberWriter(format);
  if (typeof write === 'string') return write;
  const label = unitLabel(unit, NO_CURRENCY);
  const gap = label === '%' ? '' : ' ';
  return (value) => `${write(fromCanonical(unit, value))}${gap}${label}`;
}

/** How TEXT writes a value of this type, or why it can't. */
function writerFor(type: ValueType, format: string, unitSymbol: string | undefined): Read {
  if (type.kind === 'date') return dateWriter(format);
  if (type.kind !== 'number' && type.kind !== 'temperature') {
    return `TEXT writes numbers, dates and texts, and this is ${nameOfType(type)}.`;
  }
  const costs = type.kind === 'number' && type.dimension.money !== 0;
  if (costs && !sameDimension(type.dimension, MONEY)) {
    return `Divide ${nameOfType(type)} by one of its unit first: TEXT([Price] / (1 money/lb); "0.00").`;
  }
  if (costs && unitSymbol !== undefined) return 'Leave the unit of money out: TEXT([Price]; "0.00") & " EUR".';
  if (unitSymbol !== undefined) {
    const unit = UNITS.find(unitSymbol);
    if (unit === undefined || unitSymbol === '') return `"${unitSymbol}" is not a unit known here.`;
    if (!measured(type, unit))
      return `${subject(type)} can't be written in ${unit.symbol}: name a unit of its own kind.`;
    return inUnit(format, unit);
  }
  if (type.kind === 'number') {
    if (isPlain(type.dimension) || sameDimension(type.dimension, MONEY)) return numberWriter(format);
    if (sameDimension(type.dimension, TIME) && isTimeFormat(format)) return timeWriter(format);
  }
  const unit = type.kind === 'temperature' ? type.unit.symbol : oneOf(type).slice(2);
  return `TEXT needs the unit in which to write ${nameOfType(type)}: TEXT(...; "${format}"; "${unit}").`;
}

function textType([value, format, unit]: readonly ArgumentType[]): ValueType | string {
  const type = value?.type;
  if (type === undefined || isText(type)) return TEXT;
  if (typeof format?.constant !== 'string') return 'Write the format out in double quotes: TEXT([Sown]; "d mmm").';
  if (unit?.type !== undefined && typeof unit.constant !== 'string') {
    return 'Write the unit out in double quotes: TEXT([Length]; "0.0"; "ft").';
  }
  const writer = writerFor(type, format.constant, constantText(unit));
  return typeof writer === 'string' ? writer : TEXT;
}

function constantText(arg: ArgumentType | undefined): string | undefined {
  return typeof arg?.constant === 'string' ? arg.constant : undefined;
}

function chooseText([value, format, unit]: readonly ArgumentType[]) {
  const type = value?.type;
  const writer =
    type === undefined || isText(type) ? undefined : writerFor(type, constantText(format) ?? '', constantText(unit));
  const compute = ([given = null]: readonly Scalar[]): Scalar =>
    typeof given === 'number' && typeof writer === 'function' ? writer(given) : given;
  return { lane: 'scalar', blanks: 'pass', compute } as const;
}

function fixed([number, decimals, plainDigits]: readonly Scalar[]): Scalar {
  if (typeof number !== 'number') return null;
  const places = Math.trunc(or(typeof decimals === 'number' ? decimals : undefined, 2));
  const digits = places > 0 ? `.${'0'.repeat(Math.min(places, 15))}` : '';
  const write = numberWriter(plainDigits === true ? `0${digits}` : `#,##0${digits}`);
  return typeof write === 'string' ? null : write(atDigits(number, places, tolerantRound));
}

export const TEXT_FORMAT: readonly FunctionDefinition[] = [
  make.other(
    'TEXT',
    'A value written after a format: TEXT([Sown]; "d mmm"), TEXT([Share]; "0%"), TEXT([Day length]; "h:mm"); a quantity with its unit: TEXT([Spacing]; "0.0"; "in").',
    '6.20.23',
    takes(needed('value', anything), needed('format', text), optional('unit', text)),
    rule(textType),
    { lane: 'by type', choose: chooseText },
  ),
  make.scalar(
    'FIXED',
    'A plain number written with so many decimals (2 where left out); thousands are not parted where the last is yes.',
    '6.20.10',
    takes(needed('number', plain), optional('decimals', plain), optional('plain_digits', yesno)),
    text,
    fixed,
  ),
];
