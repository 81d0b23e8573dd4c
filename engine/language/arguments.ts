// Matches one argument of a call with its parameter: a value, a whole column or a condition (sheets.ts: a sheet); and gives
// the letters of a signature their types. Called by calls.ts.

import { canonicalUnit } from '../units/arithmetic.ts';
import { isPlain, sameDimension } from '../units/dimension.ts';
import type { Unit } from '../units/unit.ts';
import { DATE, isPlainNumber, nameOfType, TEXT, type ValueType, YESNO } from '../values/type.ts';
import { conditionNode } from './conditions.ts';
import { type CheckContext, findColumn, ownTable } from './context.ts';
import { columnNamed, type FoundColumn } from './names.ts';
import { CELSIUS, numberType, PLAIN } from './operators.ts';
import { bracketed, printFormula, tableName } from './printer.ts';
import { recordArgument } from './records.ts';
import { refuse } from './refuse.ts';
import { columnAs, criteriaNode, fieldNamed, firstColumn, sheetNamed, tableNode } from './sheets.ts';
import type { Parameter, Pattern, Signature } from './signature.ts';
import { letterOf, opennessOf, sharedType, standingFor } from './standing.ts';
import type { Missing, Tree } from './tree.ts';
import type { TableShape, Typed } from './typed.ts';
import { asOther, rewritten } from './unlike.ts';
import { amountText, type Part, partInWords, quote, typeInWords } from './wording.ts';

/** What a letter stands for so far, and the part that said so. */
interface Bound {
  readonly type: ValueType;
  readonly by: Part;
}
export type Letters = Map<string, Bound>;

export interface Argument {
  readonly parameter: Parameter;
  readonly typed: Typed;
  /** Where the argument is a whole column. */
  readonly column: FoundColumn | undefined;
  /** Where the argument names a sheet whose columns later arguments may name. */
  readonly table?: TableShape;
}

interface Call {
  readonly signature: Signature;
  readonly context: CheckContext;
  readonly check: (tree: Tree) => Typed;
  readonly letters: Letters;
  readonly before: Argument | undefined;
  /** The sheet that an earlier argument named. */
  readonly sheet: TableShape | undefined;
}

/** The argument as its parameter takes it; letters it bears are given their types. */
export function argumentOf(given: Tree | Missing, parameter: Parameter, call: Call): Argument {
  const { pattern } = parameter;
  if (given.tree === 'missing') return leftOut(given, parameter, call);
  const { signature, context } = call;
  if (pattern.is === 'table') {
    const table = sheetNamed(given, parameter, signature, context);
    return { parameter, typed: tableNode(given, table), column: undefined, table };
  }
  if (pattern.is === 'criteria') {
    const criteria = sheetNamed(given, parameter, signature, context);
    const typed = criteriaNode(given, criteria, sheetBefore(given, call), context);
    return { parameter, typed, column: undefined };
  }
  if (pattern.is === 'condition') {
    const { before, check } = call;
    if (before?.column === undefined) {
      return refuse(given, `${signature.name} wants a whole column before this condition.`);
    }
    const typed = conditionNode(given, before.column, context, check);
    return { parameter, typed, column: before.column };
  }
  if (pattern.is === 'first column') {
    const table = sheetNamed(given, parameter, signature, context);
    return { ...columnStanding(given, firstColumn(given, table, context), parameter, call), table };
  }
  if (pattern.is === 'field') {
    const found = fieldNamed(given, sheetBefore(given, call), parameter, signature, context);
    return columnStanding(given, found, parameter, call);
  }
  return valueOrColumn(given, parameter, call);
}

/** A value of this row or a whole column, as its pattern takes it. */
function valueOrColumn(given: Tree, parameter: Parameter, call: Call): Argument {
  const { pattern } = parameter;
  const column = wholeColumn(given, pattern, call);
  if (pattern.is === 'column' && column === undefined) return refuseNoColumn(given, parameter, call);
  return argument(given, column, parameter, call);
}

/** A column that was found by its sheet or its number: read as if written out, though its text is another. */
function columnStanding(given: Tree, column: FoundColumn, parameter: Parameter, call: Call): Argument {
  return argument(columnAs(column, given), column, parameter, call);
}

function argument(given: Tree, column: FoundColumn | undefined, parameter: Parameter, call: Call): Argument {
  const { pattern } = parameter;
  const typed = column === undefined ? call.check(given) : columnNode(given, column);
  if (pattern.is === 'record') return { parameter, typed: recordArgument(given, typed, pattern.record, call), column };
  const inner = 'of' in pattern ? pattern.of : pattern;
  const matched = matchedWith(inner, { tree: given, typed }, parameter, call);
  bind({ tree: given, typed: matched }, inner, call);
  return { parameter, typed: matched, column };
}

/** The sheet named earlier in the call: every signature with a field or criteria names one first. */
function sheetBefore(given: Tree, { sheet, signature }: Call): TableShape {
  return sheet ?? refuse(given, `${signature.name} wants the name of a sheet before this.`);
}

/** The argument with the type its letter came to stand for in the end. */
export function settled({ typed, parameter }: Argument, letters: Letters): Typed {
  const letter = letterOf(parameter.pattern);
  const type = letter === undefined ? undefined : letters.get(letter)?.type;
  if (type === undefined) return typed;
  return standingFor(typed, type) ?? typed;
}

function leftOut(given: Missing, parameter: Parameter, { signature }: Call): Argument {
  const { pattern } = parameter;
  const mayBeBlank = parameter.optional === true || (pattern.is === 'letter' && pattern.among === 'anything');
  if (!mayBeBlank) refuse(given, `${signature.name} still wants ${parameter.name} here.`);
  const type =
    pattern.is === 'quantity'
      ? numberType(pattern.dimension, canonicalUnit(pattern.dimension))
      : (fixedType(pattern) ?? PLAIN);
  return { parameter, typed: { node: 'blank', type, from: given.from, to: given.to }, column: undefined };
}

function fixedType(pattern: Pattern): ValueType | undefined {
  if (pattern.is === 'date') return DATE;
  if (pattern.is === 'text') return TEXT;
  if (pattern.is === 'temperature') return { kind: 'temperature', unit: CELSIUS };
  return pattern.is === 'yesno' ? YESNO : undefined;
}

/** The column an argument names; a one-row sheet's counts as one only where nothing else would do. */
function wholeColumn(given: Tree, pattern: Pattern, { context }: Call): FoundColumn | undefined {
  if (given.tree !== 'column' || !('of' in pattern)) return undefined;
  const found = columnNamed(given, context);
  return pattern.is === 'values' && found.table.oneRow ? undefined : found;
}

function columnNode(given: Tree, { table, id, type }: FoundColumn): Typed {
  return { node: 'column', table: table.id, column: id, type, from: given.from, to: given.to };
}

function refuseNoColumn(given: Tree, parameter: Parameter, { signature, context }: Call): never {
  const wants = `${signature.name} wants a whole column for ${parameter.name}`;
  const own = ownTable(context);
  const [name, more] = given.tree === 'cell' ? given.path : [];
  const column = name === undefined || more !== undefined || own === undefined ? undefined : findColumn(own, name.text);
  if (own !== undefined && column !== undefined) {
    const fix = tableName(own.name) + bracketed(column.name);
    return refuse(given, `${wants}; this is one row's value: write ${fix}.`, fix);
  }
  if (given.tree === 'binary' || given.tree === 'call' || given.tree === 'unary') {
    return refuse(given, `${wants}: put ${quote(given)} in a column of its own and name that.`);
  }
  return refuse(given, `${wants}, as in Beds[Area].`);
}

/** The part as the pattern takes it; letters are only asked whether they may stand for its type. */
function matchedWith(pattern: Pattern, part: Part, parameter: Parameter, call: Call): Typed {
  const { typed } = part;
  if (pattern.is === 'letter') {
    if (!mayStandFor(pattern.among, typed)) refuseNotAmong(part, pattern.among, parameter, call);
    return typed;
  }
  const wanted = wantedType(pattern, parameter, call);
  if (wanted === undefined) return typed;
  return (
    standingFor(typed, wanted) ?? unitGiven(part, parameter, call) ?? refuseWrongType(part, wanted, parameter, call)
  );
}

/** The one type that the pattern takes; undefined where it takes several. */
function wantedType(pattern: Pattern, parameter: Parameter, call: Call): ValueType | undefined {
  if (pattern.is === 'quantity') {
    return numberType(pattern.dimension, wantedUnit(parameter, call, canonicalUnit(pattern.dimension)));
  }
  return fixedType(pattern);
}

/** The unit to write such a quantity in: the parameter's own, else one that this sheet shows, else the canonical one. */
function wantedUnit(parameter: Parameter, { context }: Call, canonical: Unit): Unit {
  const own = parameter.unit === undefined ? undefined : context.vocabulary.find(parameter.unit);
  if (own !== undefined) return own;
  if (isPlain(canonical.dimension)) return canonical;
  for (const { type } of ownTable(context)?.columns ?? []) {
    if (type?.kind === 'number' && sameDimension(type.dimension, canonical.dimension)) return type.unit;
  }
  return canonical;
}

/** A plain number where the parameter says it may stand for so many of its unit. */
function unitGiven({ typed }: Part, parameter: Parameter, { context }: Call): Typed | undefined {
  const unit = parameter.unit === undefined ? undefined : context.vocabulary.find(parameter.unit);
  if (parameter.plain !== true || unit === undefined || !isPlainNumber(typed.type)) return undefined;
  const type: ValueType = unit.offset === 0 ? numberType(unit.dimension, unit) : { kind: 'temperature', unit };
  const place = { from: typed.from, to: typed.to };
  const steps = [
    ['*', unit.numerator, 1],
    ['/', unit.denominator, 1],
    ['+', unit.offset, 0],
  ] as const;
  let result: Typed = { ...typed, type };
  for (const [operator, by, idle] of steps) {
    if (by === idle) continue;
    const right: Typed = { node: 'constant', value: by, type: operator === '+' ? type : PLAIN, ...place };
    result = { node: 'binary', operator, left: result, right, type, ...place };
  }
  return result;
}

function mayStandFor(among: 'numbers' | 'ordered' | 'anything', typed: Typed): boolean {
  const { kind } = typed.type;
  if (among === 'anything' || kind === 'number') return true;
  return among === 'ordered' && (kind === 'temperature' || kind === 'date');
}

function refuseNotAmong(part: Part, among: string, parameter: Parameter, { signature }: Call): never {
  const wants = among === 'ordered' ? 'a number, a quantity, a temperature or a date' : 'a number or a quantity';
  const { tree, typed } = part;
  const said = `${wantsInWords(signature, wants, parameter)}; ${partInWords(part)}`;
  if (typed.type.kind === 'yesno' && typed.node !== 'column') {
    const fix = `IF(${printFormula(tree)}; 1; 0)`;
    return refuse(tree, `${said}: ${fix} counts it.`, fix);
  }
  if (typed.type.kind === 'link' && typed.node !== 'column') {
    return refuse(tree, `${said}: follow it to one of its columns, as in ${quote(tree)}.[Column].`);
  }
  return refuse(tree, `${said}.`);
}

function refuseWrongType(part: Part, wanted: ValueType, parameter: Parameter, { signature }: Call): never {
  const { tree, typed } = part;
  const said = `${wantsInWords(signature, nameOfType(wanted), parameter)}; ${partInWords(part)}`;
  const fix = typed.node === 'column' ? undefined : rewritten(tree, typed.type, wanted);
  return fix === undefined ? refuse(tree, `${said}.`) : refuse(tree, `${said}: write ${fix}.`, fix);
}

/** 'STATIONS wants a length for spacing'; the parameter goes unsaid where its name is its type. */
function wantsInWords(signature: Signature, wanted: string, { name }: Parameter): string {
  return `${signature.name} wants ${wanted}${wanted.endsWith(name) ? '' : ` for ${name}`}`;
}

/** Gives the letter of the pattern the type it shares with the part, or says which two arguments don't agree. */
function bind(part: Part, pattern: Pattern, { letters, signature }: Call): void {
  if (pattern.is !== 'letter') return;
  const { typed } = part;
  const bound = letters.get(pattern.letter);
  if (bound === undefined) {
    letters.set(pattern.letter, { type: typed.type, by: part });
    return;
  }
  const shared = sharedType({ ...bound.by.typed, type: bound.type }, typed);
  if (shared === undefined) refuseUnlikeArguments(bound, part, signature);
  const firm = opennessOf(bound.by.typed) === 'fixed' ? bound.by : part;
  letters.set(pattern.letter, { type: shared, by: firm });
}

function refuseUnlikeArguments({ by, type }: Bound, { tree, typed }: Part, signature: Signature): never {
  const both = `${quote(by.tree)} is ${typeInWords(type)}, ${quote(tree)} is ${typeInWords(typed.type)}`;
  const fix = asOther(tree, type);
  if (fix !== undefined) return refuse(tree, `${both}: write ${fix}.`, fix);
  const other = asOther(by.tree, typed.type);
  if (other !== undefined) return refuse(by.tree, `${both}: write ${other}.`, other);
  if (tree.tree === 'text' && tree.value === '') {
    const empty = { text: '', span: { from: tree.from, to: tree.to } };
    return refuse(tree, `${both}: leave this part empty for a blank.`, empty);
  }
  const example = type.kind === 'number' && isPlainNumber(typed.type) ? amountText('2', type.unit) : undefined;
  return refuse(
    tree,
    `${both}: ${signature.name} needs them alike${example === undefined ? '' : `, such as ${example}`}.`,
  );
}
