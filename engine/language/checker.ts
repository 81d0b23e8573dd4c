// Makes a typed tree of a syntax tree: every name found, every type and dimension known, every unit turned into canonical
// numbers; or one diagnostic in a grower's words. Called by the workbook; the files beside it do the parts: names.ts,
// operators.ts, calls.ts.

import { toCanonical } from '../units/unit.ts';
import { nameOfType, type ValueType, YESNO } from '../values/type.ts';
import { callNode } from './calls.ts';
import type { CheckContext } from './context.ts';
import { letNode } from './let.ts';
import { cellNode, columnNamed, refuseBareWord, refuseWholeColumn } from './names.ts';
import { binaryNode, numberType, PLAIN, unaryNode } from './operators.ts';
import { printFormula } from './printer.ts';
import { checkRecords } from './records.ts';
import { caught, refuse } from './refuse.ts';
import { standingFor } from './standing.ts';
import { type Diagnostic, LET, type Tree } from './tree.ts';
import type { Typed } from './typed.ts';
import { unknownUnit } from './unknown-unit.ts';
import { rewritten } from './unlike.ts';
import { type Part, typeInWords } from './wording.ts';

export type { CheckContext } from './context.ts';

export type Checked =
  | { readonly ok: true; readonly typed: Typed }
  | { readonly ok: false; readonly diagnostic: Diagnostic };

/**
 * Checks a formula where it stands. A bare 0 stands for the zero of any quantity in comparisons, sums, branches and
 * arguments; blanks take the type of what they stand beside. Never throws on any tree the parser makes.
 */
export function checkFormula(tree: Tree, context: CheckContext): Checked {
  const checked = caught(() => {
    const typed = check(tree, context);
    checkRecords(typed, tree);
    return context.wanted === undefined ? typed : asWanted({ tree, typed }, context.wanted, context);
  });
  return checked.ok ? { ok: true, typed: checked.value } : checked;
}

/** One value: of this row, a constant, or reckoned from such. */
function check(tree: Tree, context: CheckContext): Typed {
  const { from, to } = tree;
  const part = (of: Tree): Part => ({ tree: of, typed: check(of, context) });
  switch (tree.tree) {
    case 'number':
      return { node: 'constant', value: tree.value, type: PLAIN, from, to };
    case 'quantity':
      return quantityNode(tree, context);
    case 'text':
      return { node: 'constant', value: tree.value, type: { kind: 'text' }, from, to };
    case 'yesno':
      return { node: 'constant', value: tree.value, type: YESNO, from, to };
    case 'cell':
      return cellNode(tree, context);
    case 'column': {
      const found = columnNamed(tree, context);
      if (!found.table.oneRow) return refuseWholeColumn(tree, found, context);
      return { node: 'single', table: found.table.id, column: found.id, type: found.type, from, to };
    }
    case 'table': {
      const given = context.given?.get(tree.table.text.toLowerCase());
      return given === undefined ? refuseBareWord(tree, context) : { ...given, from, to };
    }
    case 'unary':
      return unaryNode(tree, part(tree.operand));
    case 'binary':
      return binaryNode(tree, part(tree.left), part(tree.right));
    case 'call':
      if (tree.name.text === LET) return letNode(tree, context, check);
      return callNode(tree, context, (of) => check(of, context));
  }
}

function quantityNode(tree: Extract<Tree, { readonly tree: 'quantity' }>, context: CheckContext): Typed {
  const unit = context.vocabulary.find(tree.unit);
  if (unit === undefined) {
    const { why, fix } = unknownUnit(tree.unit, context.vocabulary);
    return refuse(tree.unitSpan, why, fix);
  }
  const type: ValueType = unit.offset === 0 ? numberType(unit.dimension, unit) : { kind: 'temperature', unit };
  return { node: 'constant', value: toCanonical(unit, tree.value), type, from: tree.from, to: tree.to };
}

/** The whole formula as the column wants it. */
function asWanted(part: Part, wanted: ValueType, context: CheckContext): Typed {
  const { tree, typed } = part;
  const standing = standingFor(typed, wanted);
  if (standing !== undefined) return standing;
  if (context.saysSomething === true && typed.type.kind === 'yesno') {
    const sentence = `IF(${printFormula(tree)}; "...")`;
    return refuse(tree, `This gives yes or no; a check gives the sentence to be said: write ${sentence}.`, sentence);
  }
  const where =
    context.column === undefined
      ? `${nameOfType(wanted)} is wanted here`
      : `${context.column} wants ${nameOfType(wanted)}`;
  const gives = `This gives ${typeInWords(typed.type)}; ${where}`;
  const fix = rewritten(tree, typed.type, wanted);
  return fix === undefined ? refuse(tree, `${gives}.`) : refuse(tree, `${gives}: write ${fix}.`, fix);
}
