// Writes a tree as a formula's text in its one canonical form: blanks round operators, '; ' between arguments, quotes
// and parentheses only where they are needed. What is printed parses to the same tree. Called by the workbook and by
// messages that quote a part of a formula.

import { PERCENT_STRENGTH, PREFIX_STRENGTH, STRENGTH } from './parser.ts';
import { LET, type Missing, nameGiven, type Tree } from './tree.ts';

/** Never in need of parentheses. */
const WHOLE = 9;
const BARE_WORD = /^[\p{L}_][\p{L}\p{M}\p{N}_]*(?:\.[\p{L}\p{N}_][\p{L}\p{M}\p{N}_]*)*$/u;

/** The canonical text of a tree, without a leading =. */
export function printFormula(tree: Tree): string {
  return print(tree, NO_NAMES);
}

/** A column's name as formulas write it: [In-row spacing]. */
export function bracketed(column: string): string {
  return `[${column.replaceAll('[', '[[').replaceAll(']', ']]')}]`;
}

/** A table's name as formulas write it: Beds, 'Seed lots'. */
export function tableName(table: string): string {
  const upper = table.toUpperCase();
  return BARE_WORD.test(table) && upper !== 'TRUE' && upper !== 'FALSE' ? table : quoted(table, "'");
}

/** Text between quotes, quotes within it doubled. */
export function quoted(text: string, quote: "'" | '"' = '"'): string {
  return quote + text.replaceAll(quote, quote + quote) + quote;
}

/** Names given by the LETs round a part, in small letters; a name stands bare there. */
type Names = ReadonlySet<string>;

const NO_NAMES: Names = new Set();

function print(tree: Tree, names: Names): string {
  switch (tree.tree) {
    case 'number':
      return String(tree.value);
    case 'quantity':
      return `${tree.value} ${tree.unit}`;
    case 'text':
      return quoted(tree.value);
    case 'yesno':
      return tree.value ? 'TRUE' : 'FALSE';
    case 'cell':
      return tree.path.map((name) => bracketed(name.text)).join('.');
    case 'column':
      return tableName(tree.table.text) + bracketed(tree.column.text);
    case 'table':
      return names.has(tree.table.text.toLowerCase()) ? tree.table.text : quoted(tree.table.text, "'");
    case 'unary':
      if (tree.operator === '%') return `${atLeast(PERCENT_STRENGTH, tree.operand, names)}%`;
      return tree.operator + atLeast(PREFIX_STRENGTH, tree.operand, names);
    case 'binary': {
      const strength = STRENGTH[tree.operator];
      const left =
        tree.operator === '^' && endsInUnit(tree.left)
          ? `(${print(tree.left, names)})`
          : atLeast(strength, tree.left, names);
      return `${left} ${tree.operator} ${atLeast(strength + 1, tree.right, names)}`;
    }
    case 'call':
      return printCall(tree, names);
  }
}

/** LET gives its names one after another, each to what stands behind it. */
function printCall({ name, args }: Extract<Tree, { readonly tree: 'call' }>, names: Names): string {
  let known = names;
  const printed = args.map((argument, i) => {
    const text = printArgument(argument, known);
    const given = name.text === LET && i % 2 === 1 ? nameGiven(args[i - 1]) : undefined;
    if (given !== undefined) known = new Set([...known, given]);
    return text;
  });
  return `${name.text}(${printed.join('; ')})`;
}

/** Only here may a table's name stand bare; elsewhere it could be read as a unit: 8 ft / in. */
function printArgument(argument: Tree | Missing, names: Names): string {
  if (argument.tree === 'missing') return '';
  return argument.tree === 'table' ? tableName(argument.table.text) : print(argument, names);
}

function atLeast(strength: number, tree: Tree, names: Names): string {
  return strengthOf(tree) < strength ? `(${print(tree, names)})` : print(tree, names);
}

/** Whether the text ends in a unit, which would take a ^ that follows for its own: 8 ft^2 is an area, (8 ft) ^ 2 a power. */
function endsInUnit(tree: Tree): boolean {
  if (tree.tree === 'quantity') return true;
  if (tree.tree === 'unary') return tree.operator !== '%' && endsInUnit(tree.operand);
  return tree.tree === 'binary' && endsInUnit(tree.right);
}

function strengthOf(tree: Tree): number {
  switch (tree.tree) {
    case 'binary':
      return STRENGTH[tree.operator];
    case 'unary':
      return tree.operator === '%' ? PERCENT_STRENGTH : PREFIX_STRENGTH;
    default:
      return WHOLE;
  }
}
