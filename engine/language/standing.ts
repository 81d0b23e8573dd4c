// What may stand for what: a bare 0 for the zero of any quantity, nothing for anything, a link for its key's text. So
// IF branches and the arguments of MAX agree on one type, and `[Length] > 0` needs no unit. Called by the checker's files.

import { sameDimension } from '../units/dimension.ts';
import { fits, TEXT, type ValueType } from '../values/type.ts';
import type { Parameter, Pattern, Signature } from './signature.ts';
import type { Typed } from './typed.ts';

/** 'blank': may take any type; 'zero': may take that of any quantity; 'fixed': has its type. */
export type Openness = 'blank' | 'zero' | 'fixed';

export function opennessOf(typed: Typed): Openness {
  if (typed.node === 'blank') return 'blank';
  if (typed.node === 'constant') return isBareZero(typed) ? 'zero' : 'fixed';
  if (typed.node !== 'call') return 'fixed';
  const shared = sharedArguments(typed.signature, typed.args);
  if (shared === undefined) return 'fixed';
  const all = shared.map(({ arg }) => opennessOf(arg));
  return all.includes('fixed') ? 'fixed' : all.includes('zero') ? 'zero' : 'blank';
}

/** Zero without a unit, so far unchanged: `0 in` and `0%` have their type. */
function isBareZero({ value, type }: Extract<Typed, { readonly node: 'constant' }>): boolean {
  return value === 0 && type.kind === 'number' && type.unit.symbol === '';
}

/** The arguments whose type a call gives back (the branches of IF); undefined where the result is another's. */
function sharedArguments(
  signature: Signature,
  args: readonly Typed[],
): readonly { arg: Typed; index: number }[] | undefined {
  const { result } = signature;
  if (result.is !== 'letter') return undefined;
  return args.flatMap((arg, index) => {
    const parameter = parameterAt(signature, index, args.length);
    return parameter !== undefined && letterOf(parameter.pattern) === result.letter ? [{ arg, index }] : [];
  });
}

export function letterOf(pattern: Pattern): string | undefined {
  if (pattern.is === 'letter') return pattern.letter;
  return 'of' in pattern ? letterOf(pattern.of) : undefined;
}

/** The parameter that argument `index` of `count` fills; undefined beyond the last. */
export function parameterAt(signature: Signature, index: number, count: number): Parameter | undefined {
  const place = parameterIndex(signature, index);
  const first = signature.parameters.length - signature.repeating;
  const otherwise = signature.otherwise === true && index === count - 1 && place === first && index > first;
  return otherwise ? signature.parameters.at(-1) : signature.parameters[place];
}

/** Which parameter argument `index` fills, as if more arguments followed; past the last where there is none. */
export function parameterIndex(
  { parameters, repeating }: Pick<Signature, 'parameters' | 'repeating'>,
  index: number,
): number {
  const fixed = parameters.length - repeating;
  return index < fixed || repeating === 0 ? index : fixed + ((index - fixed) % repeating);
}

/** `typed` as it stands where `type` is wanted; undefined where it can't. */
export function standingFor(typed: Typed, type: ValueType): Typed | undefined {
  const openness = opennessOf(typed);
  if (openness !== 'fixed' && (openness === 'blank' || type.kind === 'number')) return retyped(typed, type);
  if (fits(type, typed.type)) return typed;
  if (typed.type.kind === 'link' && type.kind === 'text') return keyOf(typed);
  return undefined;
}

function retyped(typed: Typed, type: ValueType): Typed {
  if (typed.node !== 'call') return { ...typed, type };
  const shared = new Set(sharedArguments(typed.signature, typed.args)?.map(({ index }) => index));
  return { ...typed, type, args: typed.args.map((arg, index) => (shared.has(index) ? retyped(arg, type) : arg)) };
}

/** The text a link is shown by. */
export function keyOf(typed: Typed): Typed {
  return { node: 'key', operand: typed, type: TEXT, from: typed.from, to: typed.to };
}

/** The type that two values share; undefined where there is none. Of two units the first shows, of a constant's the other's. */
export function sharedType(a: Typed, b: Typed): ValueType | undefined {
  const [first, second] = [opennessOf(a), opennessOf(b)];
  if (first !== 'fixed') {
    if (first === 'blank' || b.type.kind === 'number') return b.type;
    return second === 'blank' ? a.type : undefined;
  }
  if (second !== 'fixed') return second === 'blank' || a.type.kind === 'number' ? a.type : undefined;
  return alike(a, b);
}

function alike(a: Typed, b: Typed): ValueType | undefined {
  const [one, other] = [a.type, b.type];
  if (one.kind === 'number' && other.kind === 'number') {
    if (!sameDimension(one.dimension, other.dimension)) return undefined;
    return a.node === 'constant' && b.node !== 'constant' ? other : one;
  }
  if (one.kind === 'choice' && other.kind === 'choice') {
    const same = one.options.length === other.options.length && one.options.every((o, at) => o === other.options[at]);
    return same ? one : TEXT;
  }
  if (one.kind === 'link' && other.kind === 'link') return one.table === other.table ? one : undefined;
  if (isWords(one) && isWords(other)) return TEXT;
  return one.kind === other.kind ? one : undefined;
}

/** Text, or what is shown by a text. */
export function isWords(type: ValueType): boolean {
  return type.kind === 'text' || type.kind === 'choice' || type.kind === 'link';
}

/** The value of a part that is written out, or reckoned from numbers written out; undefined for anything else. */
export function constantOf(typed: Typed): number | string | boolean | undefined {
  if (typed.node === 'constant') {
    return typed.value === null || typeof typed.value === 'object' ? undefined : typed.value;
  }
  if (typed.node === 'negate') {
    const value = constantOf(typed.operand);
    return typeof value === 'number' ? -value : undefined;
  }
  if (typed.node !== 'binary') return undefined;
  const [left, right] = [constantOf(typed.left), constantOf(typed.right)];
  if (typeof left !== 'number' || typeof right !== 'number') return undefined;
  switch (typed.operator) {
    case '+':
      return left + right;
    case '-':
      return left - right;
    case '*':
      return left * right;
    case '/':
      return right === 0 ? undefined : left / right;
    case '^':
      return Number.isFinite(left ** right) ? left ** right : undefined;
    default:
      return undefined;
  }
}
