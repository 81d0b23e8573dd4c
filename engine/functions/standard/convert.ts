// CONVERT: a plain number read in one unit and shown in another. The result is a quantity, so it adds to others of its kind. Read by
// standard/index.ts.

import type { ArgumentType } from '../../language/signature.ts';
import { sameDimension } from '../../units/dimension.ts';
import { toCanonical, type Unit } from '../../units/unit.ts';
import { createVocabulary } from '../../units/vocabulary.ts';
import { nameOfType, type ValueType } from '../../values/type.ts';
import { failure, makers, needed, plain, rule, takes, text } from '../build.ts';
import type { FunctionDefinition, RunBody } from '../definition.ts';
import { numberIn } from './types.ts';

const make = makers('mathematics');

const UNITS = createVocabulary({ currency: 'XXX' });

const NO_UNIT = failure('value', 'Write both units out in double quotes: CONVERT(10; "lb"; "kg").');

function typeIn(unit: Unit): ValueType {
  return unit.offset === 0 ? numberIn(unit) : { kind: 'temperature', unit };
}

function unitOf(arg: ArgumentType | undefined): Unit | undefined {
  return typeof arg?.constant === 'string' ? UNITS.find(arg.constant) : undefined;
}

function convertedType([, from, to]: readonly ArgumentType[]): ValueType | string {
  if (typeof from?.constant !== 'string' || typeof to?.constant !== 'string') return NO_UNIT.why;
  const [read, shown] = [unitOf(from), unitOf(to)];
  if (read === undefined || shown === undefined) {
    const unknown = read === undefined ? from.constant : to.constant;
    const near = UNITS.nearest(unknown);
    return `"${unknown}" is not a unit known here${near === undefined ? '.' : `: did you mean ${near}?`}`;
  }
  const sameKind = typeIn(read).kind === typeIn(shown).kind && sameDimension(read.dimension, shown.dimension);
  if (sameKind) return typeIn(shown);
  return `${read.symbol} is ${nameOfType(typeIn(read))} and ${shown.symbol} is ${nameOfType(typeIn(shown))}: name two units of one kind.`;
}

function chooseConversion([, from]: readonly ArgumentType[]): RunBody {
  const read = unitOf(from);
  return {
    lane: 'scalar',
    blanks: 'pass',
    compute: ([given = null]) => {
      if (read === undefined) return NO_UNIT;
      return typeof given === 'number' ? toCanonical(read, given) : null;
    },
  };
}

export const CONVERSION: readonly FunctionDefinition[] = [
  make.other(
    'CONVERT',
    'A plain number read in the first unit and shown in the second: CONVERT(10; "lb"; "kg"). Quantities convert by themselves.',
    '6.16.18',
    takes(needed('number', plain), needed('from', text), needed('to', text)),
    rule(convertedType),
    { lane: 'by type', choose: chooseConversion },
  ),
];
