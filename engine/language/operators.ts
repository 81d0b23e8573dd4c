// The types of operations: which kinds and dimensions may meet at each operator and what they give. Points and
// differences are kept apart: date - date is a time, temperature + temperature has no meaning. Called by checker.ts;
// what it refuses is explained by unlike.ts.

import {
  canonicalUnit,
  differenceUnit,
  divideUnits,
  multiplyUnits,
  ONE,
  PERCENT,
  powerUnit,
} from '../units/arithmetic.ts';
import {
  type Dimension,
  divideDimensions,
  isPlain,
  multiplyDimensions,
  NONE,
  powerOfDimension,
  TIME,
  WARMTH,
} from '../units/dimension.ts';
import { listed } from '../units/table.ts';
import { toCanonical, type Unit } from '../units/unit.ts';
import { DATE, isPlainNumber, nameOfType, TEXT, type ValueType, YESNO } from '../values/type.ts';
import { acrossTheSign } from './comparing.ts';
import { refuse } from './refuse.ts';
import { constantOf, isWords, opennessOf, sharedType, standingFor } from './standing.ts';
import type { Tree } from './tree.ts';
import type { Typed } from './typed.ts';
import { refuseNotANumber, refuseUnlike } from './unlike.ts';
import { type Part, partInWords, quote } from './wording.ts';

type BinaryTree = Extract<Tree, { readonly tree: 'binary' }>;
type UnaryTree = Extract<Tree, { readonly tree: 'unary' }>;
type NumberType = Extract<ValueType, { readonly kind: 'number' }>;

/** The scale of temperatures that no column or parameter gives one. */
export const CELSIUS: Unit = listed('degC');
export const PLAIN: NumberType = { kind: 'number', dimension: NONE, unit: ONE };

export function numberType(dimension: Dimension, unit: Unit): NumberType {
  return { kind: 'number', dimension, unit };
}

export function binaryNode(tree: BinaryTree, left: Part, right: Part): Typed {
  const node = (type: ValueType, one: Typed, other: Typed): Typed => ({
    node: 'binary',
    operator: tree.operator,
    left: one,
    right: other,
    type,
    from: tree.from,
    to: tree.to,
  });
  switch (tree.operator) {
    case '&':
      return node(TEXT, joined(left.typed), joined(right.typed));
    case '=':
    case '<>':
    case '<':
    case '<=':
    case '>':
    case '>=': {
      const [one, other] = acrossTheSign(...compared(tree, left, right));
      return node(YESNO, one, other);
    }
    case '+':
    case '-': {
      const { type, one, other } = sum(tree, left, right);
      return node(type, one, other);
    }
    case '*':
    case '/': {
      const [a, b] = [asNumber(left, tree), asNumber(right, tree)];
      const times = tree.operator === '*';
      const dimension = (times ? multiplyDimensions : divideDimensions)(a.type.dimension, b.type.dimension);
      const unit = (times ? multiplyUnits : divideUnits)(a.type.unit, b.type.unit);
      return node(numberType(dimension, unit), a.typed, b.typed);
    }
    case '^': {
      const [a, b] = [asNumber(left, tree), asNumber(right, tree)];
      return node(raised(left, right, a.type, b), a.typed, b.typed);
    }
  }
}

/** A sign before a value, or a per cent sign after it. */
export function unaryNode(tree: UnaryTree, operand: Part): Typed {
  const { typed } = operand;
  const place = { from: tree.from, to: tree.to };
  if (tree.operator === '+') {
    return typed.type.kind === 'temperature' || typed.type.kind === 'date' ? typed : asNumber(operand, tree).typed;
  }
  if (tree.operator === '%') return perCent(tree, operand);
  if (tree.operand.tree === 'quantity' && typed.type.kind === 'temperature') {
    return { ...typed, ...place, node: 'constant', value: toCanonical(typed.type.unit, -tree.operand.value) };
  }
  const number = asNumber(operand, tree);
  if (number.typed.node === 'constant' && typeof number.typed.value === 'number') {
    return { ...number.typed, ...place, value: number.typed.value === 0 ? 0 : -number.typed.value };
  }
  return { node: 'negate', operand: number.typed, type: number.type, ...place };
}

/** Divided by 100 rather than multiplied by 0.01, so that 57% is the very number 0.57. */
function perCent(tree: UnaryTree, operand: Part): Typed {
  const { typed, type } = asNumber(operand, tree);
  if (!isPlain(type.dimension)) {
    return refuse(tree, `${partInWords(operand)}; only a plain number can be a percentage.`);
  }
  const place = { from: tree.from, to: tree.to };
  const shown = numberType(NONE, PERCENT);
  if (typed.node === 'constant' && typeof typed.value === 'number') {
    return { node: 'constant', value: toCanonical(PERCENT, typed.value), type: shown, ...place };
  }
  const hundred: Typed = { node: 'constant', value: 100, type: PLAIN, ...place };
  return { node: 'binary', operator: '/', left: typed, right: hundred, type: shown, ...place };
}

/** Words by their text, a blank as no text; anything else is written out when it is joined. */
function joined(typed: Typed): Typed {
  return standingFor(typed, TEXT) ?? typed;
}

/** The operand with its number type; anything else is refused with the way to a number. */
function asNumber(part: Part, operation: Tree): { typed: Typed; type: NumberType } {
  const { typed } = part;
  if (typed.type.kind === 'number') return { typed, type: typed.type };
  return refuseNotANumber(part, operation);
}

function compared(tree: BinaryTree, left: Part, right: Part): readonly [Typed, Typed] {
  const shared = sharedType(left.typed, right.typed);
  if (shared === undefined) return refuseUnlike(tree, left, right);
  const ordering = tree.operator !== '=' && tree.operator !== '<>';
  if (ordering && shared.kind === 'yesno') {
    return refuse(tree, 'Yes and no have no order: compare them with = or <>.');
  }
  const type = ordering && isWords(shared) ? TEXT : shared;
  return [standingFor(left.typed, type) ?? left.typed, standingFor(right.typed, type) ?? right.typed];
}

interface Sum {
  readonly type: ValueType;
  readonly one: Typed;
  readonly other: Typed;
}

const DAYS = numberType(TIME, canonicalUnit(TIME));

function sum(tree: BinaryTree, left: Part, right: Part): Sum {
  const plus = tree.operator === '+';
  const [a, b] = [left.typed.type, right.typed.type];
  const as = (result: ValueType, first: ValueType, second: ValueType): Sum => {
    const [one, other] = [standingFor(left.typed, first), standingFor(right.typed, second)];
    return one === undefined || other === undefined ? refuseUnlike(tree, left, right) : { type: result, one, other };
  };
  if (a.kind === 'date' && b.kind === 'date') return plus ? refuseUnlike(tree, left, right) : as(DAYS, DATE, DATE);
  if (a.kind === 'date') return as(DATE, DATE, DAYS);
  if (b.kind === 'date') return plus ? as(DATE, DAYS, DATE) : refuseUnlike(tree, left, right);
  if (a.kind === 'temperature' && b.kind === 'temperature') {
    return plus ? refuseUnlike(tree, left, right) : as(warmthOf(a.unit), a, b);
  }
  if (a.kind === 'temperature') return as(a, a, warmthOf(a.unit));
  if (b.kind === 'temperature') return plus ? as(b, warmthOf(b.unit), b) : refuseUnlike(tree, left, right);
  if (a.kind !== 'number' || b.kind !== 'number') return refuseNotANumber(a.kind === 'number' ? right : left, tree);
  const shared = sharedType(left.typed, right.typed);
  if (shared === undefined) return refuseUnlike(tree, left, right);
  return as(opennessOf(left.typed) === 'fixed' ? a : shared, shared, shared);
}

function warmthOf(unit: Unit): NumberType {
  return numberType(WARMTH, differenceUnit(unit));
}

/** A quantity may only be raised to a number that is written out, for its dimension must be known. */
function raised(left: Part, right: Part, base: NumberType, exponent: { typed: Typed; type: NumberType }): NumberType {
  if (!isPlainNumber(exponent.type)) {
    return refuse(right.tree, `${partInWords(right)}; a power must be a plain number.`);
  }
  if (isPlain(base.dimension)) return PLAIN;
  const power = constantOf(exponent.typed);
  if (typeof power !== 'number') {
    return refuse(
      right.tree,
      `${quote(left.tree)} is ${nameOfType(base)}, so its power must be written out as a number, as in ${quote(left.tree)} ^ 2.`,
    );
  }
  return numberType(powerOfDimension(base.dimension, power), powerUnit(base.unit, power));
}
