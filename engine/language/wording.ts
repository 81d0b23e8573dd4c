// The words that diagnostics are made of: how a part of the formula is quoted, what its type is called with its unit, and
// how a quantity is written so that it can be read again. Called by the checker's files and assist.ts.

import { canonicalUnit } from '../units/arithmetic.ts';
import { isMixed } from '../units/table.ts';
import type { Unit } from '../units/unit.ts';
import { nameOfType, type ValueType } from '../values/type.ts';
import { printFormula } from './printer.ts';
import type { Signature } from './signature.ts';
import type { Span, Tree } from './tree.ts';
import type { Typed } from './typed.ts';

/** A part of the formula: as written, and as the checker understands it. */
export interface Part {
  readonly tree: Tree;
  readonly typed: Typed;
}

/** The part as text, cut where it is long. */
export function quote(tree: Tree): string {
  const text = printFormula(tree);
  return text.length <= 48 ? text : `${text.slice(0, 44).trimEnd()} ...`;
}

/** 'a length (in)', 'a date', 'a plain number'. */
export function typeInWords(type: ValueType): string {
  const symbol = type.kind === 'number' || type.kind === 'temperature' ? type.unit.symbol : '';
  return symbol === '' ? nameOfType(type) : `${nameOfType(type)} (${symbol})`;
}

/** '[Row spacing] is a length (in)'. */
export function partInWords({ tree, typed }: Part): string {
  return `${quote(tree)} is ${typeInWords(typed.type)}`;
}

/** A number written out, a sign before it allowed: its text; undefined for anything else. */
export function literalNumber(tree: Tree): string | undefined {
  if (tree.tree === 'number') return printFormula(tree);
  const signed = tree.tree === 'unary' && tree.operator === '-' && tree.operand.tree === 'number';
  return signed ? printFormula(tree) : undefined;
}

/** `amount` of a unit as a formula writes it: '2 in', '3 / 1 ft2'; undefined where a unit can't be written after a number. */
export function amountText(amount: string, unit: Unit): string | undefined {
  const symbol = isMixed(unit) ? unit.larger.symbol : unit.symbol || canonicalUnit(unit.dimension).symbol;
  if (symbol.startsWith('1/') && !symbol.includes('/', 2)) return `${amount} / 1 ${symbol.slice(2)}`;
  return symbol === '' || symbol.startsWith('1/') || /[*%]/.test(symbol) ? undefined : `${amount} ${symbol}`;
}

/** The part in parentheses where it is an operation, so that it can stand beside any operator. */
export function operandText(tree: Tree): string {
  return tree.tree === 'binary' ? `(${printFormula(tree)})` : printFormula(tree);
}

/** 'IF(condition; then; [otherwise])': what a call takes, with the place of each parameter in that text. */
export function signatureWithPlaces(signature: Signature): { readonly text: string; readonly places: readonly Span[] } {
  let text = `${signature.name}(`;
  const places: Span[] = [];
  for (const [index, parameter] of signature.parameters.entries()) {
    if (index > 0) text += '; ';
    const name = parameter.optional === true ? `[${parameter.name}]` : parameter.name;
    places.push({ from: text.length, to: text.length + name.length });
    text += name;
  }
  return { text: `${text}${signature.repeating > 0 ? '; ...' : ''})`, places };
}

/** 'IF(condition; then; [otherwise])', for sentences. */
export function signatureText(signature: Signature): string {
  return signatureWithPlaces(signature).text;
}
