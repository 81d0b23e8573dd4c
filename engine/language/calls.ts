// Checks a call: the function is found, its arguments are counted and matched with its parameters, letters are given
// their types, and the result's type follows. Called by checker.ts; arguments.ts matches each argument.

import { canonicalUnit, multiplyUnits, ONE, powerUnit } from '../units/arithmetic.ts';
import { multiplyDimensions, NONE, powerOfDimension } from '../units/dimension.ts';
import { DATE, TEXT, type ValueType, YESNO } from '../values/type.ts';
import { type Argument, argumentOf, type Letters, settled } from './arguments.ts';
import type { CheckContext } from './context.ts';
import { findTable } from './context.ts';
import type { FoundColumn } from './names.ts';
import { nearestName } from './nearest.ts';
import { CELSIUS, numberType, PLAIN } from './operators.ts';
import { bracketed, tableName } from './printer.ts';
import { figureByFigure } from './records.ts';
import { refuse } from './refuse.ts';
import type { ArgumentType, Signature } from './signature.ts';
import { constantOf, parameterAt, parameterIndex } from './standing.ts';
import type { Missing, Tree } from './tree.ts';
import type { Typed } from './typed.ts';
import { signatureText } from './wording.ts';

type CallTree = Extract<Tree, { readonly tree: 'call' }>;

export function callNode(tree: CallTree, context: CheckContext, check: (of: Tree) => Typed): Typed {
  const signature = functionNamed(tree, context);
  countArguments(tree, signature);
  const letters: Letters = new Map();
  const args: Argument[] = [];
  let columns: FoundColumn | undefined;
  for (const [index, given] of tree.args.entries()) {
    const parameter = parameterAt(signature, index, tree.args.length);
    if (parameter === undefined) continue;
    const sheet = args.findLast(({ table }) => table !== undefined)?.table;
    const argument = argumentOf(given, parameter, { signature, context, check, letters, before: args.at(-1), sheet });
    if (parameter.pattern.is === 'column' && argument.column !== undefined) {
      columns ??= argument.column;
      if (columns.table !== argument.column.table) refuseTwoTables(given, signature, columns, argument.column);
    }
    args.push(argument);
  }
  const typedArgs = args.map((argument) => settled(argument, letters));
  const type = resultType(tree, signature, typedArgs, letters);
  const place = { from: tree.from, to: tree.to };
  if (signature.name === 'TODAY') return { node: 'today', type: DATE, ...place };
  if (signature.name === 'TYPED') return typedNode(tree, typedArgs);
  return { node: 'call', ...figureByFigure(signature, typedArgs), type, ...place };
}

/** TYPED is asked of a cell of this row: of anything else there is no telling who typed it. */
function typedNode(tree: CallTree, [cell]: readonly Typed[]): Typed {
  if (cell?.node !== 'cell' || cell.links.length > 0) {
    return refuse(tree.args[0] ?? tree, 'TYPED wants a cell of this row, as in TYPED([Sown]).');
  }
  const { table, column, type } = cell;
  return { node: 'typed', table, column, type, from: tree.from, to: tree.to };
}

function functionNamed(tree: CallTree, context: CheckContext): Signature {
  const { text } = tree.name;
  const signature = context.functions.get(text.toUpperCase());
  if (signature !== undefined) return signature;
  const elsewhere = context.leftOut?.(text);
  if (elsewhere !== undefined) {
    return refuse(tree.name, `There is no ${text} here. ${elsewhere.why}. Use instead: ${elsewhere.use}.`);
  }
  const table = findTable(context.catalog, text)?.name;
  if (table !== undefined) {
    return refuse(
      tree.name,
      `${table} is a sheet: name one of its columns in brackets, as in ${tableName(table)}[Column].`,
    );
  }
  const near = nearestName(text, offeredNames(context));
  if (near === undefined) return refuse(tree.name, `There is no function ${text}.`);
  return refuse(tree.name, `There is no function ${text}; the nearest name is ${near}.`, near);
}

/** Names that are offered: not those kept for earlier templates. */
function offeredNames({ functions }: CheckContext): readonly string[] {
  return [...functions.values()].flatMap(({ name, former }) => (former === true ? [] : [name]));
}

function countArguments(tree: CallTree, signature: Signature): void {
  const { parameters, repeating, otherwise } = signature;
  const given = tree.args.length;
  if (repeating === 0 && given > parameters.length) {
    const extra = tree.args[parameters.length] ?? tree;
    const most = parameters.length === 0 ? 'nothing between its parentheses' : `at most ${parts(parameters.length)}`;
    refuse(extra.to > extra.from ? extra : tree, `${signature.name} takes ${most}: ${signatureText(signature)}.`);
  }
  const needed = parameters.findLastIndex(({ optional }) => optional !== true) + 1;
  const next = parameterIndex(signature, given);
  const amidGroup = next > parameters.length - repeating && otherwise !== true;
  const short = given < needed ? parameters[given] : amidGroup ? parameters[next] : undefined;
  if (short === undefined) return;
  refuse(tree, `${signature.name} still wants ${short.name}: ${signatureText(signature)}.`);
}

function parts(count: number): string {
  return count === 1 ? 'one part' : `${count} parts`;
}

function refuseTwoTables(tree: Tree | Missing, signature: Signature, one: FoundColumn, other: FoundColumn): never {
  const name = ({ table, column }: FoundColumn): string => tableName(table.name) + bracketed(column);
  return refuse(
    tree,
    `${signature.name} goes through the rows of one sheet: ${name(one)} and ${name(other)} stand in two.`,
  );
}

function resultType(tree: CallTree, { result }: Signature, typedArgs: readonly Typed[], letters: Letters): ValueType {
  switch (result.is) {
    case 'power': {
      const { dimension, unit } = numberOf(letters.get(result.letter)?.type);
      return numberType(powerOfDimension(dimension, result.exponent), powerUnit(unit, result.exponent));
    }
    case 'product': {
      let [dimension, unit] = [NONE, ONE];
      for (const { letter, exponent } of result.powers) {
        const factor = numberOf(letters.get(letter)?.type);
        dimension = multiplyDimensions(dimension, powerOfDimension(factor.dimension, exponent));
        unit = multiplyUnits(unit, powerUnit(factor.unit, exponent));
      }
      return numberType(dimension, unit);
    }
    case 'rule': {
      const type = result.rule(typedArgs.map(argumentType));
      return typeof type === 'string' ? refuse(tree, type) : type;
    }
    case 'quantity':
      return numberType(result.dimension, canonicalUnit(result.dimension));
    case 'letter':
      return letters.get(result.letter)?.type ?? PLAIN;
    case 'temperature':
      return { kind: 'temperature', unit: CELSIUS };
    case 'date':
      return DATE;
    case 'text':
      return TEXT;
    case 'yesno':
      return YESNO;
    case 'record':
      return { kind: 'record', record: result.record };
  }
}

function argumentType(typed: Typed): ArgumentType {
  if (typed.node === 'blank') return { type: undefined, constant: undefined };
  return { type: typed.type, constant: constantOf(typed) };
}

function numberOf(type: ValueType | undefined): Extract<ValueType, { readonly kind: 'number' }> {
  return type?.kind === 'number' ? type : PLAIN;
}
