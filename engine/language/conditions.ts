// Conditions on a column, as SUMIFS and its kin take them: a value to equal, text that starts with a comparison
// (">=8 in"), or a comparison joined to a value (">=" & [Week]). Text is read here, once, so that a condition is a typed
// comparison ever after. Called by arguments.ts; conditions in cells are cut up here too.

import { civilDayOfIso } from '../values/civil.ts';
import { TEXT } from '../values/type.ts';
import type { CheckContext } from './context.ts';
import type { FoundColumn } from './names.ts';
import { parseFormula } from './parser.ts';
import { bracketed, quoted, tableName } from './printer.ts';
import { severalFigures } from './records.ts';
import { caught, refuse } from './refuse.ts';
import { isWords, keyOf, standingFor } from './standing.ts';
import type { Span, Tree } from './tree.ts';
import type { Comparison, Typed } from './typed.ts';
import { unknownUnit } from './unknown-unit.ts';
import { asOther } from './unlike.ts';
import { type Part, partInWords, typeInWords } from './wording.ts';

const COMPARISON = /^\s*(>=|<=|<>|>|<|=)/;

export function conditionNode(
  given: Tree,
  column: FoundColumn,
  context: CheckContext,
  check: (tree: Tree) => Typed,
): Typed {
  const node = (comparison: Comparison, value: Typed): Typed => ({
    node: 'condition',
    comparison,
    value,
    type: { kind: 'yesno' },
    from: given.from,
    to: given.to,
  });
  if (given.tree === 'text') {
    const { comparison, rest } = splitCondition(given.value);
    return node(comparison ?? '=', written(given, comparison ?? '', rest, column, context, check));
  }
  const opening = openingText(given);
  const { comparison, rest } = splitCondition(opening?.value ?? '');
  if (opening === undefined || comparison === undefined) {
    const part = { tree: given, typed: check(given) };
    return node('=', matched(part, column));
  }
  const value = withoutOpening(given, opening, rest);
  return node(comparison, matched({ tree: value, typed: check(value) }, column));
}

/** The comparison that a text begins with, and what follows it: '>=8 in' is >= and 8 in. */
export function splitCondition(text: string): { comparison: Comparison | undefined; rest: string } {
  const sign = COMPARISON.exec(text);
  return { comparison: comparisonOf(sign?.[1]), rest: sign === null ? text : text.slice(sign[0].length) };
}

function comparisonOf(sign: string | undefined): Comparison | undefined {
  switch (sign) {
    case '=':
    case '<>':
    case '<':
    case '<=':
    case '>':
    case '>=':
      return sign;
    default:
      return undefined;
  }
}

/** The text at the very left of what is joined with &. */
function openingText(tree: Tree): Extract<Tree, { readonly tree: 'text' }> | undefined {
  let left = tree;
  while (left.tree === 'binary' && left.operator === '&') left = left.left;
  return left.tree === 'text' ? left : undefined;
}

/** What is joined to the opening comparison: ">=" & [Week] leaves [Week], ">=a" & [Name] leaves "a" & [Name]. */
function withoutOpening(tree: Tree, opening: Tree, rest: string): Tree {
  if (tree === opening) return { tree: 'text', value: rest, from: tree.from, to: tree.to };
  if (tree.tree !== 'binary') return tree;
  if (tree.left === opening && rest === '') return tree.right;
  return { ...tree, left: withoutOpening(tree.left, opening, rest) };
}

/** The value of a condition that is all text. */
function written(
  given: Span,
  sign: string,
  rest: string,
  column: FoundColumn,
  context: CheckContext,
  check: (tree: Tree) => Typed,
): Typed {
  const { type } = column;
  const place = { from: given.from, to: given.to };
  if (rest.trim() === '') {
    if (sign === '' || sign === '=' || sign === '<>') return { node: 'blank', type, ...place };
    return refuse(given, `Something is missing after ${sign} in this condition.`);
  }
  switch (type.kind) {
    case 'text':
    case 'choice':
    case 'link':
      return { node: 'constant', value: rest, type: TEXT, ...place };
    case 'record':
      return refuse(given, severalFigures(named(column), type.record));
    case 'yesno': {
      const fix = asOther({ tree: 'text', value: rest.trim(), ...place }, type);
      if (fix === undefined) return refuse(given, `${named(column)} is yes or no: write TRUE or FALSE.`);
      return { node: 'constant', value: fix === 'TRUE', type, ...place };
    }
    case 'date': {
      const civil = civilDayOfIso(rest.trim());
      if (civil !== undefined) return { node: 'constant', value: civil, type, ...place };
      const joined = `${quoted(sign || '=')} & DATE(2027; 3; 15)`;
      return refuse(
        given,
        `${named(column)} is a date: write it as year-month-day, "${sign}2027-03-15", or as ${joined}.`,
      );
    }
    case 'number':
    case 'temperature':
      return writtenNumber(place, sign, rest, column, context, check);
  }
}

function writtenNumber(
  place: Span,
  sign: string,
  rest: string,
  column: FoundColumn,
  context: CheckContext,
  check: (tree: Tree) => Typed,
): Typed {
  const { type } = column;
  const { vocabulary } = context;
  const unknown: string[] = [];
  const parsed = parseFormula(
    rest,
    (symbol) => vocabulary.find(symbol) !== undefined,
    (symbol) => {
      const help = unknownUnit(symbol, vocabulary);
      unknown.push(help.why);
      return help;
    },
  );
  const wants = `${named(column)} is ${typeInWords(type)}`;
  const [noUnit] = unknown;
  if (noUnit !== undefined) return refuse(place, `${wants}: ${noUnit}`);
  if (!parsed.ok || !isLiteral(parsed.tree)) {
    return refuse(
      place,
      `${wants}: after ${sign || 'the quote'} a number is wanted, not ${rest.trim()}. To compare with a value, write ${quoted(sign || '=')} & and the value.`,
    );
  }
  const { tree } = parsed;
  const typed = caught(() => check(tree));
  if (!typed.ok) return refuse(place, typed.diagnostic.why);
  const standing = standingFor(typed.value, type);
  if (standing !== undefined) return { ...standing, ...place };
  const literal = asOther(tree, type);
  const fix = literal === undefined ? undefined : quoted(sign + literal);
  const said = `${wants}, ${rest.trim()} is ${typeInWords(typed.value.type)}`;
  return fix === undefined ? refuse(place, `${said}.`) : refuse(place, `${said}: write ${fix}.`, fix);
}

function isLiteral(tree: Tree): boolean {
  if (tree.tree === 'unary') return isLiteral(tree.operand);
  return tree.tree === 'number' || tree.tree === 'quantity';
}

/** A value as it is compared with the column's: links by row, or by key where the other side is text. */
function matched(part: Part, column: FoundColumn): Typed {
  const { typed } = part;
  const { type } = column;
  if (isWords(type) && isWords(typed.type)) return matchedWords(part, column);
  return standingFor(typed, type) ?? refuseMismatch(part, column);
}

function matchedWords(part: Part, column: FoundColumn): Typed {
  const { typed } = part;
  const { type } = column;
  if (typed.type.kind !== 'link') return typed;
  if (type.kind !== 'link') return keyOf(typed);
  return typed.type.table === type.table ? typed : refuseMismatch(part, column);
}

function refuseMismatch(part: Part, column: FoundColumn): never {
  const { tree, typed } = part;
  const said = `${named(column)} is ${typeInWords(column.type)}, ${partInWords(part)}`;
  const fix = asOther(tree, column.type);
  if (fix !== undefined) return refuse(tree, `${said}: write ${fix}.`, fix);
  if (isWords(typed.type) && !isWords(column.type)) {
    return refuse(tree, `${said}: join the comparison to a value, as in ">=" & ${bracketed(column.column)}.`);
  }
  return refuse(tree, `${said}: they can't be compared.`);
}

function named({ table, column }: FoundColumn): string {
  return tableName(table.name) + bracketed(column);
}
