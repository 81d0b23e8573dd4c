// Help while a formula is typed: what the word at the cursor could become, and which part of which function the cursor is
// in. Pure: text and cursor in, suggestions out; works on half-typed text. Called by the formula bar.

import { nameOfDimension } from '../units/dimension.ts';
import type { RecordFigure } from '../values/type.ts';
import type { CheckContext } from './context.ts';
import { findColumn, findTable, linksOf, ownTable, tableOfId } from './context.ts';
import { LET_SIGNATURE, namesGiven } from './let-help.ts';
import { cutFormula, type Token } from './lexer.ts';
import { editDistance } from './nearest.ts';
import { bracketed, quoted, tableName } from './printer.ts';
import type { Signature } from './signature.ts';
import { parameterIndex } from './standing.ts';
import type { Span } from './tree.ts';
import type { ColumnShape, TableShape } from './typed.ts';
import { signatureText, signatureWithPlaces, typeInWords } from './wording.ts';

export type AssistContext = Pick<CheckContext, 'catalog' | 'table' | 'functions' | 'vocabulary'>;

export interface Completion {
  readonly kind: 'column' | 'linked column' | 'table' | 'function' | 'unit' | 'value';
  /** What the list shows. */
  readonly label: string;
  /** What stands in the text once it is taken. */
  readonly text: string;
  /** A line that says what it is: a column's type, a function's doc. */
  readonly doc: string;
}

export interface Completions extends Span {
  /** Best first; taking one replaces the text from `from` to `to`. */
  readonly items: readonly Completion[];
}

export interface CallHelp extends Span {
  readonly signature: Signature;
  /** 'IF(condition; then; [otherwise])' with the place of each parameter in it. */
  readonly text: string;
  readonly places: readonly Span[];
  /** Which parameter the cursor is in; undefined on the function's name, or past the last. */
  readonly active: number | undefined;
}

/** What the word that ends at the cursor could become; undefined where nothing is to be proposed. */
export function completionsAt(text: string, cursor: number, context: AssistContext): Completions | undefined {
  const typed = text.slice(0, cursor);
  const tokens = cutFormula(typed, (symbol) => context.vocabulary.find(symbol) !== undefined).tokens.slice(0, -1);
  const last = tokens.at(-1);
  const before = tokens.slice(0, -1);
  const given = namesGiven(tokens);
  if (last === undefined) return ranked('', { from: cursor, to: cursor }, operands(context, given));
  switch (last.token) {
    case 'bracket':
      if (last.closed) return undefined;
      return ranked(last.name, { from: last.from, to: endOfName(text, cursor, ']') }, columnsFor(before, context));
    case 'quoted':
      if (last.closed) return undefined;
      return ranked(last.name, { from: last.from, to: endOfName(text, cursor, "'") }, tables(context));
    case 'text':
      if (last.closed) return undefined;
      return ranked(last.value, { from: last.from, to: endOfName(text, cursor, '"') }, choices(before, context));
    case 'quantity':
      return last.to === cursor ? units(last.unit, last.unitSpan, context) : undefined;
    case 'word': {
      if (last.to !== cursor) return undefined;
      const afterNumber = before.at(-1)?.token === 'number';
      return afterNumber ? units(last.word, last, context) : ranked(last.word, last, operands(context, given));
    }
    case 'sign': {
      if (last.sign === ')' || last.sign === '%') return undefined;
      const items = last.sign === '.' ? columnsFor(tokens, context) : operands(context, given);
      return ranked('', { from: cursor, to: cursor }, items);
    }
    default:
      return undefined;
  }
}

/** The function whose name the cursor is on, else the innermost call it stands in. */
export function callAt(text: string, cursor: number, functions: ReadonlyMap<string, Signature>): CallHelp | undefined {
  const { tokens } = cutFormula(text, () => false);
  const open: (OpenCall | undefined)[] = [];
  for (const [index, token] of tokens.entries()) {
    const signature = token.token === 'word' ? signatureOf(token.word, functions) : undefined;
    if (signature !== undefined && token.from <= cursor && cursor <= token.to) {
      return { signature, ...signatureWithPlaces(signature), active: undefined, from: token.from, to: token.to };
    }
    if (token.token !== 'sign' || token.to > cursor) continue;
    if (token.sign === '(') {
      open.push(callOpenedAfter(tokens[index - 1], functions));
    } else if (token.sign === ')') {
      open.pop();
    } else if (token.sign === ';' || token.sign === ',') {
      const inner = open.at(-1);
      if (inner !== undefined) inner.argument += 1;
    }
  }
  const inside = open.findLast((call) => call !== undefined);
  if (inside === undefined) return undefined;
  const { signature, from, argument } = inside;
  const place = parameterIndex(signature, argument);
  const active = place < signature.parameters.length ? place : undefined;
  return { signature, ...signatureWithPlaces(signature), active, from, to: cursor };
}

/** A call whose parenthesis is open at the cursor, and how many separators of its own stand before the cursor. */
interface OpenCall {
  readonly signature: Signature;
  readonly from: number;
  argument: number;
}

/** The call that a parenthesis behind `name` opens; undefined for a parenthesis that only groups, or an unknown name. */
function callOpenedAfter(name: Token | undefined, functions: ReadonlyMap<string, Signature>): OpenCall | undefined {
  if (name?.token !== 'word') return undefined;
  const signature = signatureOf(name.word, functions);
  return signature && { signature, from: name.from, argument: 0 };
}

function signatureOf(word: string, functions: ReadonlyMap<string, Signature>): Signature | undefined {
  const name = word.toUpperCase();
  return name === LET_SIGNATURE.name ? LET_SIGNATURE : functions.get(name);
}

/** Where a half-typed name goes on behind the cursor up to its closing sign; the cursor where it doesn't. */
function endOfName(text: string, cursor: number, close: string): number {
  const end = cursor + text.slice(cursor).search(/[[\]"';,()]|$/);
  return text.charAt(end) === close ? end + 1 : cursor;
}

function operands(context: AssistContext, given: readonly string[]): readonly Completion[] {
  const offered = [...context.functions.values(), LET_SIGNATURE].filter(({ former }) => former !== true);
  const named = given.map(
    (name): Completion => ({ kind: 'value', label: name, text: name, doc: 'named earlier in this LET' }),
  );
  const functions = offered.map(
    (signature): Completion => ({
      kind: 'function',
      label: signature.name,
      text: signature.parameters.length === 0 ? `${signature.name}()` : `${signature.name}(`,
      doc: `${signatureText(signature)} ${signature.doc}`,
    }),
  );
  const yesNo = ['TRUE', 'FALSE'].map(
    (word): Completion => ({ kind: 'value', label: word, text: word, doc: 'yes or no' }),
  );
  return [...named, ...columnsHere(context), ...functions, ...tables(context), ...yesNo];
}

function columnItem(column: ColumnShape, kind: Completion['kind'], prefix: string): Completion {
  const text = prefix + bracketed(column.name);
  const doc = column.type === undefined ? 'its formula does not check yet' : typeInWords(column.type);
  return { kind, label: prefix === '' ? column.name : text, text, doc };
}

/** This row's columns, then those its links lead to, then the one-row sheets'. */
function columnsHere(context: AssistContext): readonly Completion[] {
  const own = ownTable(context);
  const linked =
    own === undefined
      ? []
      : linksOf(own, context.catalog).flatMap(({ link, to }) =>
          to.columns.map((column) => columnItem(column, 'linked column', `${bracketed(link)}.`)),
        );
  const singles = context.catalog.tables
    .filter((table) => table.oneRow && table !== own)
    .flatMap((table) => table.columns.map((column) => columnItem(column, 'column', tableName(table.name))));
  return [...(own?.columns ?? []).map((column) => columnItem(column, 'column', '')), ...linked, ...singles];
}

/** Columns that can stand in the bracket being typed: of the table before it, of the link before it, else of this row. */
function columnsFor(before: readonly Token[], context: AssistContext): readonly Completion[] {
  const previous = before.at(-1);
  const followed = previous?.token === 'sign' && previous.sign === '.';
  const name = tableNameOf(previous);
  if (!followed && name === undefined) return columnsHere(context);
  const ended = name === undefined ? columnAtEnd(before.slice(0, -1), context)?.type : undefined;
  if (ended?.kind === 'record') return ended.record.figures.map(figureItem);
  const table = name === undefined ? tableAfter(before.slice(0, -1), context) : findTable(context.catalog, name);
  return (table?.columns ?? []).map((column) => columnItem(column, 'column', ''));
}

function figureItem({ name, type }: RecordFigure): Completion {
  return { kind: 'column', label: name, text: bracketed(name), doc: typeInWords(type) };
}

function tableNameOf(token: Token | undefined): string | undefined {
  if (token?.token === 'word') return token.word;
  return token?.token === 'quoted' ? token.name : undefined;
}

/** The column a path of brackets ends in: [A].[B] from this row, or Table[Column]. */
function columnAtEnd(tokens: readonly Token[], context: AssistContext): ColumnShape | undefined {
  const last = tokens.at(-1);
  if (last?.token !== 'bracket') return undefined;
  const previous = tokens.at(-2);
  const linked = previous?.token === 'sign' && previous.sign === '.';
  const name = tableNameOf(previous);
  const table = linked
    ? tableAfter(tokens.slice(0, -2), context)
    : name === undefined
      ? ownTable(context)
      : findTable(context.catalog, name);
  return table === undefined ? undefined : findColumn(table, last.name);
}

/** The table that the link a path ends in leads to. */
function tableAfter(tokens: readonly Token[], context: AssistContext): TableShape | undefined {
  const type = columnAtEnd(tokens, context)?.type;
  return type?.kind === 'link' ? tableOfId(context.catalog, type.table) : undefined;
}

function tables(context: AssistContext): readonly Completion[] {
  return context.catalog.tables.map((table) => ({
    kind: 'table',
    label: table.name,
    text: tableName(table.name),
    doc: table.oneRow ? 'a sheet of one row' : 'a sheet',
  }));
}

/** Units whose symbol begins so, else the nearest by any of its spellings: fee gives ft. */
function units(typed: string, { from, to }: Span, context: AssistContext): Completions | undefined {
  const { vocabulary } = context;
  const lower = typed.toLowerCase();
  const begun = vocabulary.symbols.filter((symbol) => symbol.toLowerCase().startsWith(lower));
  const nearest = begun.length === 0 ? vocabulary.nearest(typed) : undefined;
  const items = (nearest === undefined ? begun : [nearest]).flatMap((symbol): Completion[] => {
    const unit = vocabulary.find(symbol);
    if (unit === undefined) return [];
    const { dimension } = unit;
    const doc = unit.offset === 0 ? nameOfDimension(dimension) : 'a temperature';
    return [{ kind: 'unit', label: symbol, text: symbol, doc }];
  });
  return items.length === 0 ? undefined : { from, to, items };
}

/** What a choice can be, where text is compared with one: [Start] = "bl, or COUNTIF(Plantings[Start]; "bl. */
function choices(before: readonly Token[], context: AssistContext): readonly Completion[] {
  const sign = before.at(-1);
  if (sign?.token !== 'sign' || !['=', '<>', ';', ','].includes(sign.sign)) return [];
  const type = columnAtEnd(before.slice(0, -1), context)?.type;
  if (type?.kind !== 'choice') return fieldsOf(before, context);
  return type.options.map((option) => ({ kind: 'value', label: option, text: quoted(option), doc: 'a choice' }));
}

/** The columns of the sheet named earlier in the call, where one of them is wanted in quotes: DSUM(Plantings; "Se. */
function fieldsOf(before: readonly Token[], context: AssistContext): readonly Completion[] {
  let depth = 0;
  let argument = 0;
  let sheet: TableShape | undefined;
  for (const [at, token] of [...before.entries()].reverse()) {
    const sign = token.token === 'sign' ? token.sign : undefined;
    const name = tableNameOf(token);
    if (sign === ')') depth += 1;
    else if (sign === '(' && depth === 0) {
      const called = before[at - 1];
      const signature = called?.token === 'word' ? context.functions.get(called.word.toUpperCase()) : undefined;
      const place = signature === undefined ? 0 : parameterIndex(signature, argument);
      if (signature?.parameters[place]?.pattern.is !== 'field') return [];
      return (sheet?.columns ?? []).map((column) => ({
        ...columnItem(column, 'column', ''),
        text: quoted(column.name),
      }));
    } else if (sign === '(') depth -= 1;
    else if ((sign === ';' || sign === ',') && depth === 0) argument += 1;
    else if (name !== undefined && depth === 0) sheet ??= findTable(context.catalog, name);
  }
  return [];
}

/** Those that go with what is typed, best first: the same beginning, a word's beginning, within, then nearly spelt so. */
function ranked(typed: string, { from, to }: Span, items: readonly Completion[]): Completions | undefined {
  const wanted = typed.toLowerCase();
  const scored = items.flatMap((item) => {
    const rank = rankOf(wanted, item.label.toLowerCase());
    return rank === undefined ? [] : [{ item, rank }];
  });
  scored.sort((a, b) => a.rank - b.rank);
  return scored.length === 0 ? undefined : { from, to, items: scored.map(({ item }) => item) };
}

function rankOf(wanted: string, label: string): number | undefined {
  if (label.startsWith(wanted)) return 0;
  const within = label.indexOf(wanted);
  if (within > 0) return /[\p{L}\p{N}]/u.test(label.charAt(within - 1)) ? 2 : 1;
  const most = Math.floor(wanted.length / 3);
  const beginning = label.slice(0, wanted.length);
  const distance = Math.min(editDistance(wanted, label), editDistance(wanted, beginning));
  return distance <= most ? 2 + distance : undefined;
}
