// Explains why two parts of a formula don't go together: which is what, in which unit, and what to write instead. Every
// sentence names the terms as they stand in the formula. Called by operators.ts and arguments.ts.

import { differenceUnit } from '../units/arithmetic.ts';
import {
  AREA,
  type Dimension,
  divideDimensions,
  LENGTH,
  MASS,
  MONEY,
  nameOfDimension,
  sameDimension,
  TIME,
  VOLUME,
} from '../units/dimension.ts';
import type { Unit } from '../units/unit.ts';
import { civilDayOfIso, yearMonthDay } from '../values/civil.ts';
import { isPlainNumber, nameOfType, type ValueType } from '../values/type.ts';
import { printFormula, quoted } from './printer.ts';
import { severalFigures } from './records.ts';
import { refuse } from './refuse.ts';
import type { Tree } from './tree.ts';
import { amountText, literalNumber, operandText, type Part, partInWords, quote } from './wording.ts';

type BinaryTree = Extract<Tree, { readonly tree: 'binary' }>;
type NumberType = Extract<ValueType, { readonly kind: 'number' }>;

/** A part that is no number stands where one is reckoned with. */
export function refuseNotANumber({ tree, typed }: Part, operation: Tree): never {
  const text = quote(tree);
  const { type } = typed;
  switch (type.kind) {
    case 'yesno': {
      const fix = `IF(${printFormula(tree)}; 1; 0)`;
      return refuse(tree, `${text} is yes or no, not a number: IF(${text}; 1; 0) counts it.`, fix);
    }
    case 'record':
      return refuse(tree, severalFigures(text, type.record));
    case 'link':
      return refuse(
        tree,
        `${text} is a row of ${type.called ?? type.table}, not a number: follow it to one of its columns, as in ${text}.[Column].`,
      );
    case 'date':
      return refuse(
        tree,
        `${text} is a date: a time can be added to it (7 days) or another date taken from it, nothing else.`,
      );
    case 'temperature': {
      const base = type.unit.symbol === 'degF' ? '40 degF' : '5 degC';
      return refuse(
        tree,
        `${text} is a temperature on its scale, so it can't be reckoned with like this: take a difference first, as in ${text} - ${base}.`,
      );
    }
    case 'text':
    case 'choice': {
      if (operation.tree === 'binary' && operation.operator === '+') {
        const fix = { text: '&', span: operation.operatorSpan };
        return refuse(tree, `${text} is text, not a number: texts are joined with &.`, fix);
      }
      return refuse(
        tree,
        `${text} is text, not a number: VALUE(${text}) reads a number from text.`,
        `VALUE(${printFormula(tree)})`,
      );
    }
    case 'number':
      return refuse(tree, `${text} is ${nameOfType(type)} and has no place here.`);
  }
}

/** The two sides of an operator don't go together. */
export function refuseUnlike(tree: BinaryTree, left: Part, right: Part): never {
  const [a, b] = [left.typed.type, right.typed.type];
  if (a.kind === 'number' && b.kind === 'number') return refuseDimensions(tree, left, right, a, b);
  if (tree.operator === '+' || tree.operator === '-') {
    if (a.kind === 'date' || b.kind === 'date') return refuseWithDate(tree, left, right);
    if (a.kind === 'temperature') return refuseWithTemperature(tree, left, right, a.unit);
    if (b.kind === 'temperature') return refuseWithTemperature(tree, left, right, b.unit);
  }
  return refuseComparison(tree, left, right);
}

const HOW = { '+': 'added', '-': 'subtracted' } as const;

function howOf(tree: BinaryTree): string {
  return tree.operator === '+' || tree.operator === '-' ? HOW[tree.operator] : 'compared';
}

function refuseDimensions(tree: BinaryTree, left: Part, right: Part, a: NumberType, b: NumberType): never {
  const both = `${partInWords(left)}, ${partInWords(right)}`;
  const plain = isPlainNumber(a) ? left : isPlainNumber(b) ? right : undefined;
  if (plain !== undefined) {
    const measured = plain === left ? b : a;
    const literal = literalNumber(plain.tree);
    const amount = literal === undefined ? undefined : amountText(literal, measured.unit);
    if (amount !== undefined) refuse(plain.tree, `${both}: write ${amount}.`, amount);
    const example = amountText('2', measured.unit) ?? nameOfType(measured);
    const times = tree.operator === '+' ? 'multiply, or ' : '';
    return refuse(plain.tree, `${both}: ${times}write a measure such as ${example}.`);
  }
  const way = bridge(left.tree, right.tree, a.dimension, b.dimension);
  return refuse(right.tree, `${both}: they can't be ${howOf(tree)}${way}.`);
}

/** What would turn one of two quantities into the other's kind, where it is something a grower names. */
function bridge(left: Tree, right: Tree, a: Dimension, b: Dimension): string {
  const named = (of: Dimension): string | undefined =>
    [LENGTH, AREA, VOLUME, MASS, TIME, MONEY].some((known) => sameDimension(known, of))
      ? nameOfDimension(of)
      : undefined;
  const forRight = named(divideDimensions(a, b));
  if (forRight !== undefined) return `; multiply ${quote(right)} by ${forRight} first`;
  const forLeft = named(divideDimensions(b, a));
  return forLeft === undefined ? '' : `; multiply ${quote(left)} by ${forLeft} first`;
}

function refuseWithDate(tree: BinaryTree, left: Part, right: Part): never {
  const [a, b] = [left.typed.type, right.typed.type];
  if (a.kind === 'date' && b.kind === 'date') {
    return refuse(
      tree,
      "Two dates can't be added: take one from the other for the time between them, or add a time such as 7 days.",
    );
  }
  const other = a.kind === 'date' ? right : left;
  if (a.kind !== 'date' && tree.operator === '-') {
    return refuse(
      tree,
      `A date can't be taken from ${nameOfType(a)}: put the date first, as in ${quote(right.tree)} - 7 days.`,
    );
  }
  if (isPlainNumber(other.typed.type)) {
    const literal = literalNumber(other.tree);
    const fix =
      literal === undefined ? `${operandText(other.tree)} * 1 day` : `${literal} ${literal === '1' ? 'day' : 'days'}`;
    return refuse(other.tree, `${partInWords(other)}: say how long it is, ${fix}.`, fix);
  }
  return refuse(other.tree, `${partInWords(other)}: only a time, such as 7 days, moves a date.`);
}

function refuseWithTemperature(tree: BinaryTree, left: Part, right: Part, scale: Unit): never {
  const [a, b] = [left.typed.type, right.typed.type];
  const degrees = differenceUnit(scale).symbol;
  if (a.kind === 'temperature' && b.kind === 'temperature') {
    const literal = right.tree.tree === 'quantity' ? right.tree : undefined;
    const fix = literal === undefined ? undefined : `${literal.value} ${degrees}`;
    const instead = fix === undefined ? `a difference is written 5 ${degrees}` : `for a difference write ${fix}`;
    return refuse(
      fix === undefined ? tree : right.tree,
      `Two temperatures can't be added: ${instead}; AVERAGE gives their mean.`,
      fix,
    );
  }
  const other = a.kind === 'temperature' ? right : left;
  if (a.kind !== 'temperature' && tree.operator === '-') {
    return refuse(tree, `A temperature can't be taken from ${nameOfType(a)}: put the temperature first.`);
  }
  const literal = isPlainNumber(other.typed.type) ? literalNumber(other.tree) : undefined;
  if (literal !== undefined) {
    const fix = `${literal} ${degrees}`;
    return refuse(other.tree, `${partInWords(other)}: write the difference with its unit, ${fix}.`, fix);
  }
  return refuse(
    other.tree,
    `${partInWords(other)}: only a difference of temperatures, such as 5 ${degrees}, can be added to one.`,
  );
}

function refuseComparison(tree: BinaryTree, left: Part, right: Part): never {
  if (left.tree.tree === 'binary' && left.typed.type.kind === 'yesno') {
    const fix = `AND(${printFormula(left.tree)}; ${printFormula({ ...tree, left: left.tree.right })})`;
    return refuse(tree, `Compare two things at a time: ${fix}.`, { text: fix, span: tree });
  }
  for (const [part, other] of [
    [right, left],
    [left, right],
  ] as const) {
    const fix = asOther(part.tree, other.typed.type);
    if (fix !== undefined) return refuse(part.tree, `${partInWords(other)}, ${partInWords(part)}: write ${fix}.`, fix);
  }
  const kinds = [left.typed.type.kind, right.typed.type.kind];
  const dateAsText = kinds.includes('date') && kinds.includes('text') ? '; a date is written DATE(2027; 3; 15)' : '';
  return refuse(tree, `${partInWords(left)}, ${partInWords(right)}: they can't be compared${dateAsText}.`);
}

/** A literal rewritten as the type that is wanted, where there is one way to. */
export function asOther(tree: Tree, wanted: ValueType): string | undefined {
  const number = literalNumber(tree);
  switch (wanted.kind) {
    case 'number':
      return number === undefined || isPlainNumber(wanted) ? undefined : amountText(number, wanted.unit);
    case 'temperature':
      return number === undefined ? undefined : `${number} ${wanted.unit.symbol}`;
    case 'date': {
      const civil = tree.tree === 'text' ? civilDayOfIso(tree.value) : undefined;
      if (civil === undefined) return undefined;
      const { year, month, day } = yearMonthDay(civil);
      return `DATE(${year}; ${month}; ${day})`;
    }
    case 'yesno': {
      const said = tree.tree === 'text' ? tree.value.toLowerCase() : number;
      if (said === 'yes' || said === 'true' || said === '1') return 'TRUE';
      return said === 'no' || said === 'false' || said === '0' ? 'FALSE' : undefined;
    }
    case 'record':
      return undefined;
    case 'text':
    case 'choice':
    case 'link':
      return number === undefined ? undefined : quoted(number);
  }
}

/** A part rewritten as the type that is wanted: a literal, or an operation that plainly leads there; undefined where none does. */
export function rewritten(tree: Tree, given: ValueType, wanted: ValueType): string | undefined {
  const literal = asOther(tree, wanted);
  if (literal !== undefined) return literal;
  if (wanted.kind === 'text') return `${operandText(tree)} & ""`;
  if (wanted.kind === 'yesno') return given.kind === 'number' ? `${operandText(tree)} <> 0` : undefined;
  if (wanted.kind !== 'number') return undefined;
  const toPlain = isPlainNumber(wanted);
  if (given.kind === 'yesno') return toPlain ? `IF(${printFormula(tree)}; 1; 0)` : undefined;
  if (given.kind !== 'number' || toPlain === isPlainNumber(given)) return undefined;
  const one = amountText('1', toPlain ? given.unit : wanted.unit);
  return one === undefined || one.includes('/') ? undefined : `${operandText(tree)} ${toPlain ? '/' : '*'} ${one}`;
}
