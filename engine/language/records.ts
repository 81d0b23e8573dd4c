// Functions that answer with several figures at once, and those that take such answers. A record is worked out in a column of
// its own and read figure by figure, so that the figures are there once, whoever asks for them.

import { figureColumn } from '../values/figures.ts';
import type { RecordType } from '../values/type.ts';
import { bracketed, printFormula } from './printer.ts';
import { refuse } from './refuse.ts';
import type { Parameter, Pattern, Signature } from './signature.ts';
import type { Missing, Span, Tree } from './tree.ts';
import type { Typed } from './typed.ts';

/**
 * What to say where one value is wanted and a record stands: '[Fit] holds several figures: name one, as in [Fit].[Ceiling]'. A
 * figure is read off a column, never straight off the function that gives it.
 */
export function severalFigures(text: string, { figures }: RecordType): string {
  const first = figures[0]?.name ?? '';
  if (text.endsWith(')')) {
    return `${text} holds several figures: put it in a column of its own, and name one of them there, as in [Column].${bracketed(first)}.`;
  }
  return `${text} holds several figures: name one of them, as in ${text}.${bracketed(first)}.`;
}

/** The argument of a parameter that takes a record: a column of that record, of this row or through links. */
export function recordArgument(
  given: Tree,
  typed: Typed,
  wanted: RecordType,
  { signature }: { readonly signature: Signature },
): Typed {
  const { type } = typed;
  if (type.kind === 'record' && type.record.id === wanted.id && typed.node === 'cell') return typed;
  const wants = `${signature.name} wants the figures of a ${wanted.name}`;
  if (typed.node === 'call' && type.kind === 'record') {
    return refuse(given, `${wants}: put ${printFormula(given)} in a column of its own and name that.`);
  }
  return refuse(given, `${wants} here: name the column that works them out.`);
}

const byFigure = new WeakMap<Signature, Signature>();

/** A call as its body sees it: every record argument as its figures, one parameter each. */
export function figureByFigure(
  signature: Signature,
  args: readonly Typed[],
): { readonly signature: Signature; readonly args: readonly Typed[] } {
  if (!signature.parameters.some(({ pattern }) => pattern.is === 'record')) return { signature, args };
  return { signature: signatureByFigure(signature), args: args.flatMap(figuresOf) };
}

function figuresOf(argument: Typed): readonly Typed[] {
  const { type } = argument;
  if (argument.node !== 'cell' || type.kind !== 'record') return [argument];
  return type.record.figures.map((figure): Typed => {
    return { ...argument, column: figureColumn(argument.column, figure.id), type: figure.type };
  });
}

function signatureByFigure(signature: Signature): Signature {
  const known = byFigure.get(signature);
  if (known !== undefined) return known;
  const parameters = signature.parameters.flatMap((parameter): readonly Parameter[] => {
    if (parameter.pattern.is !== 'record') return [parameter];
    return parameter.pattern.record.figures.map(({ name, type }) => ({ name, pattern: patternOf(type) }));
  });
  const made = { ...signature, parameters };
  byFigure.set(signature, made);
  return made;
}

function patternOf(type: RecordType['figures'][number]['type']): Pattern {
  switch (type.kind) {
    case 'number':
      return { is: 'quantity', dimension: type.dimension };
    case 'temperature':
    case 'date':
    case 'yesno':
      return { is: type.kind };
    default:
      return { is: 'text' };
  }
}

/**
 * Refuses records that stand anywhere but where a column works one out: as the whole formula, or as a branch of IF and its
 * kin there; and where a function takes them.
 */
export function checkRecords(tree: Typed, formula: Tree): void {
  if (tree.type.kind === 'record') {
    if (tree.node === 'call') {
      const branching = tree.signature.result.is !== 'record';
      for (const argument of tree.args) {
        if (branching && argument.type.kind === 'record') checkRecords(argument, formula);
        else refuseRecords(argument, formula);
      }
      return;
    }
    if (tree.node !== 'blank') refuse(tree, severalFigures(written(tree, formula), tree.type.record));
    return;
  }
  refuseRecords(tree, formula);
}

function refuseRecords(tree: Typed, formula: Tree): void {
  if (tree.type.kind === 'record' && tree.node !== 'blank') {
    refuse(tree, severalFigures(written(tree, formula), tree.type.record));
  }
  switch (tree.node) {
    case 'negate':
    case 'key':
      refuseRecords(tree.operand, formula);
      return;
    case 'binary':
      refuseRecords(tree.left, formula);
      refuseRecords(tree.right, formula);
      return;
    case 'condition':
      refuseRecords(tree.value, formula);
      return;
    case 'call':
      for (const argument of tree.args) refuseRecords(argument, formula);
      return;
    default:
  }
}

/** A part of the formula as it is written. */
function written(part: Span, tree: Tree | Missing): string {
  if (tree.tree !== 'missing' && tree.from === part.from && tree.to === part.to) return printFormula(tree);
  const inner = partsOf(tree).find(({ from, to }) => from <= part.from && part.to <= to);
  return inner === undefined ? 'This' : written(part, inner);
}

function partsOf(tree: Tree | Missing): readonly (Tree | Missing)[] {
  if (tree.tree === 'call') return tree.args;
  if (tree.tree === 'binary') return [tree.left, tree.right];
  return tree.tree === 'unary' ? [tree.operand] : [];
}
