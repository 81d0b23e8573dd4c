// CONVERT: a plain number read in one unit and shown in another. Units go by the names of OpenFormula and by those of the rest of
// a formula. The result is a quantity, so it adds to others of its kind. Read by standard/index.ts.

import type { ArgumentType } from '../../language/signature.ts';
import { sameDimension } from '../../units/dimension.ts';
import { toCanonical } from '../../units/unit.ts';
import { createVocabulary } from '../../units/vocabulary.ts';
import { nameOfType, type ValueType } from '../../values/type.ts';
import { failure, makers, needed, plain, rule, takes, text } from '../build.ts';
import type { FunctionDefinition, RunBody } from '../definition.ts';
import { numberIn } from './types.ts';
import { type NamedUnit, otherMeasure, standardUnit } from './unit-names.ts';

const make = makers('mathematics');

const UNITS = createVocabulary({ currency: 'XXX' });

const NO_UNIT = failure('value', 'Write both units out in double quotes: CONVERT(10; "lb"; "kg").');

function typeIn({ unit, scale }: NamedUnit): ValueType {
  return scale ? { kind: 'temperature', unit } : numberIn(unit);
}

/** What a name can mean: the standard's unit, then that of the rest of a formula. */
function meaningsOf(name: string): readonly NamedUnit[] {
  const own = UNITS.find(name);
  const meanings = [standardUnit(name), own === undefined ? undefined : { unit: own, scale: own.offset !== 0 }];
  return meanings.filter((meaning) => meaning !== undefined);
}

function isOneKind(one: NamedUnit, other: NamedUnit): boolean {
  return one.scale === other.scale && sameDimension(one.unit.dimension, other.unit.dimension);
}

/** The two units that are of one kind: CONVERT(1; "oz"; "kg") weighs, CONVERT(1; "oz"; "cup") fills. */
function pairOf(from: string, to: string): readonly [NamedUnit, NamedUnit] | string {
  const [reads, shows] = [meaningsOf(from), meaningsOf(to)];
  for (const read of reads) for (const shown of shows) if (isOneKind(read, shown)) return [read, shown];
  const [read, shown] = [reads[0], shows[0]];
  if (read === undefined || shown === undefined) return unknown(read === undefined ? from : to);
  return `${read.unit.symbol} is ${nameOfType(typeIn(read))} and ${shown.unit.symbol} is ${nameOfType(typeIn(shown))}: name two units of one kind.`;
}

function unknown(name: string): string {
  const measure = otherMeasure(name);
  if (measure !== undefined) return `"${name}" measures ${measure}, which is not reckoned with here.`;
  const near = UNITS.nearest(name);
  return `"${name}" is not a unit known here${near === undefined ? '.' : `: did you mean ${near}?`}`;
}

function convertedType([, from, to]: readonly ArgumentType[]): ValueType | string {
  if (typeof from?.constant !== 'string' || typeof to?.constant !== 'string') return NO_UNIT.why;
  const pair = pairOf(from.constant, to.constant);
  return typeof pair === 'string' ? pair : typeIn(pair[1]);
}

function chooseConversion([, from, to]: readonly ArgumentType[]): RunBody {
  const written = typeof from?.constant === 'string' && typeof to?.constant === 'string';
  const pair = written ? pairOf(String(from.constant), String(to.constant)) : NO_UNIT.why;
  return {
    lane: 'scalar',
    blanks: 'pass',
    compute: ([given = null]) => {
      if (typeof pair === 'string') return NO_UNIT;
      return typeof given === 'number' ? toCanonical(pair[0].unit, given) : null;
    },
  };
}

export const CONVERSION: readonly FunctionDefinition[] = [
  make.other(
    'CONVERT',
    'A plain number read in the first unit and shown in the second, by the names of OpenFormula or those of formulas here: CONVERT(10; "lbm"; "kg"), CONVERT(68; "F"; "C"). Quantities convert by themselves.',
    '6.16.18',
    takes(needed('number', plain), needed('from', text), needed('to', text)),
    rule(convertedType),
    { lane: 'by type', choose: chooseConversion },
  ),
];
