// Why a cell is what it is, in a sentence: what its formula comes to for this row, with figures, in the branch that is taken. The
// panel of a row shows it before any formula; what it rests on there is what the sentence names.

import type { Typed } from '../language/typed.ts';
import { isComputed } from '../schema/schema.ts';
import { isError, type Scalar } from '../values/error.ts';
import { showWithUnit } from '../values/show.ts';
import { type Book, columnOf, sheetOf } from './book.ts';
import { choices, isDecision, type Term, termsOf } from './formula-parts.ts';
import { ownUnits } from './own-constants.ts';
import { inOwnDegrees } from './own-units.ts';
import { placeOf, type RowOf, valuesOf } from './row-values.ts';
import { COUNTED, countedNodes, held, listed, type SayPart, sayCall, saying } from './say-calls.ts';
import { inWords, rowName, scalarAt } from './shown.ts';

export interface Saying {
  /** '300 places, because 50 ft at 8 in is 75 a row, less half a spacing at each end, times 4 rows.' */
  readonly words: string;
  /** Whether the sentence names a cell, or looks at it to choose: the others have no bearing on this row. */
  readonly matters: (sheet: string, row: number, column: string) => boolean;
  /** What the formula calls that isn't in everyone's spreadsheet, each with a sentence. */
  readonly terms: readonly Term[];
}

type Call = Extract<Typed, { readonly node: 'call' }>;
type Binary = Extract<Typed, { readonly node: 'binary' }>;
type Cell = Extract<Typed, { readonly node: 'cell' }>;

/** Past so many letters a value isn't said again before its reasons. */
const OPENED = 40;

const MOST_EXPLAINED = 2;

/** The sentence of a computed cell that has a value; undefined for typed cells, blanks and errors, which say why themselves. */
export function sayWhy(book: Book, sheetId: string, row: number, columnId: string): Saying | undefined {
  const sheet = sheetOf(book, sheetId);
  const column = columnOf(book, sheetId, columnId);
  if (sheet === undefined || column?.typed === undefined || !isComputed(column)) return undefined;
  if (book.document.isTyped(column, row)) return undefined;
  const value = scalarAt(book, column, row);
  if (value === null || value === '' || isError(value)) return undefined;
  return new Sentence(book, { sheet: sheetId, row }, column.typed).of(inWords(book, column, row));
}

class Sentence {
  readonly #book: Book;
  readonly #at: RowOf;
  readonly #tree: Typed;
  readonly #values: ReadonlyMap<Typed, Scalar>;
  readonly #named = new Set<string>();
  readonly #since: string[] = [];
  /** What the trade's own functions do that the sentence has called on: a sentence each behind it. */
  readonly #explained = new Set<string>();

  constructor(book: Book, at: RowOf, tree: Typed) {
    this.#book = book;
    this.#at = at;
    this.#tree = tree;
    this.#values = valuesOf(book, at, choices(tree));
  }

  of(shown: string): Saying {
    const taken = this.#taken(this.#tree);
    const decides = isDecision(taken);
    if (decides) this.#since.push(this.#condition(taken, this.#values.get(taken) === true, true));
    const { text, noun = '' } = decides ? { text: '' } : this.#phrase(taken);
    const since = [...new Set(this.#since)].filter((each) => each !== '').slice(0, 3);
    return {
      words: [sentence(`${shown}${noun === '' ? '' : ` ${noun}`}`, taken, text, since), ...this.#explained]
        .filter((each) => each !== '')
        .join(' '),
      matters: (sheet, row, column) => this.#named.has(`${sheet} ${row} ${column}`),
      terms: termsOf(this.#tree).map(({ name, means }) => {
        return { name, means: inOwnDegrees(means, this.#book.document.program.units) };
      }),
    };
  }

  /** The branch that is in force, and why. */
  #taken(node: Typed): Typed {
    if (node.node !== 'call') return node;
    const { args } = node;
    const [first, second, third] = args;
    switch (node.signature.name) {
      case 'IF': {
        if (first === undefined) return node;
        const holds = this.#values.get(first) === true;
        this.#since.push(this.#condition(first, holds));
        const branch = holds ? second : third;
        return branch === undefined ? { ...node, node: 'blank' } : this.#taken(branch);
      }
      case 'SWITCH':
        for (let i = 1; i + 1 < args.length; i += 2) {
          const [key, answer] = [args[i], args[i + 1]];
          if (first === undefined || key === undefined || answer === undefined) break;
          if (this.#values.get(first) !== this.#values.get(key)) continue;
          this.#since.push(`${this.#phrase(first).name ?? ''} is ${this.#phrase(key).text}`);
          return this.#taken(answer);
        }
        return this.#otherwise(node);
      case 'IFS':
        for (let i = 0; i + 1 < args.length; i += 2) {
          const [condition, answer] = [args[i], args[i + 1]];
          if (condition === undefined || answer === undefined || this.#values.get(condition) !== true) continue;
          this.#since.push(this.#condition(condition, true));
          return this.#taken(answer);
        }
        return node;
      case 'IFERROR':
      case 'IFNA':
        return first === undefined ? node : this.#taken(first);
      default:
        return node;
    }
  }

  /** What SWITCH comes to where no case is met: its last argument, if it stands alone. */
  #otherwise(node: Call): Typed {
    const [first] = node.args;
    const last = node.args.length % 2 === 0 ? node.args.at(-1) : undefined;
    if (last === undefined) return { ...node, node: 'blank' };
    const { name, shown } = first === undefined ? {} : this.#phrase(first);
    if (name !== undefined) this.#since.push(shown === '' ? name : `${name} is ${shown}`);
    return this.#taken(last);
  }

  #phrase(given: Typed): SayPart {
    const node = this.#taken(given);
    switch (node.node) {
      case 'cell':
        return this.#cell(node);
      case 'single':
        return this.#named1(node.table, 0, node.column);
      case 'typed':
        return this.#named1(node.table, this.#at.row, node.column);
      case 'constant':
        return { text: this.#constant(node.value, node), value: node.value };
      case 'today':
        return { text: 'today' };
      case 'column':
        return { text: `${this.#columnName(node.table, node.column)} of ${this.#sheetName(node.table)}` };
      case 'key':
        return this.#phrase(node.operand);
      case 'negate':
        return { text: `less ${this.#phrase(node.operand).text}` };
      case 'binary':
        return this.#binary(node);
      case 'call':
        return this.#call(node);
      default:
        return { text: '' };
    }
  }

  #cell({ links, table, column }: Cell): SayPart {
    let at: RowOf = this.#at;
    for (const [i, link] of links.entries()) {
      this.#named.add(`${at.sheet} ${at.row} ${link}`);
      const next = placeOf(this.#book, this.#at, links.slice(0, i + 1));
      if (next === undefined) return { text: `${this.#columnName(table, column)} (blank)` };
      at = next;
    }
    return this.#named1(table, at.row, column, links.length > 0);
  }

  /** A cell by name and value; of another row with that row's name. */
  #named1(table: string, row: number, columnId: string, elsewhere = table !== this.#at.sheet): SayPart {
    const record = columnId.split('·')[0] ?? columnId;
    this.#named.add(`${table} ${row} ${record}`);
    const column = columnOf(this.#book, table, record);
    if (column === undefined) return { text: '' };
    const value = record === columnId ? scalarAt(this.#book, column, row) : null;
    // Elsewhere in its column's own unit, here as a person typed it.
    const shown = record === columnId ? inWords(this.#book, column, row, elsewhere) : '';
    const of = elsewhere ? ` of ${rowName(this.#book, table, row)}` : '';
    const name = `${column.name}${of}`;
    const isShare = shown.endsWith('%');
    return { text: shown === '' ? name : `${name} (${shown})`, name, shown, value, isShare };
  }

  #binary(node: Binary): SayPart {
    const { operator, left, right } = node;
    if (operator === '&') return this.#putTogether(node);
    if (isNumber(left, 1) && operator === '-') return { text: `what ${held(this.#phrase(right))} leaves` };
    const neutral = operator === '*' || operator === '/' ? 1 : operator === '+' || operator === '-' ? 0 : undefined;
    if (isNumber(this.#taken(right), neutral)) return this.#phrase(left);
    if (isNumber(this.#taken(left), neutral) && (operator === '*' || operator === '+')) return this.#phrase(right);
    const [one, other] = [this.#phrase(left), this.#phrase(right)];
    if (operator === '*' && isWhole(other)) return one;
    if (operator === '*' && isWhole(one)) return other;
    const loose = operator === '*' || operator === '/' || operator === '^';
    const text = `${this.#operand(left, one, loose)} ${BETWEEN[operator]} ${this.#operand(right, other, loose || operator === '-')}`;
    return { text, many: true };
  }

  /** What a text is put together from, without the words that stand between; '' where it is words alone. */
  #putTogether(node: Binary): SayPart {
    const parts = (given: Typed): readonly SayPart[] => {
      const part = this.#taken(given);
      if (part.node === 'binary' && part.operator === '&') return [...parts(part.left), ...parts(part.right)];
      return part.node === 'constant' ? [] : [this.#phrase(part)];
    };
    const said = saying(parts(node));
    return { text: said.length === 0 ? '' : `put together from ${listed(said)}`, many: said.length > 1 };
  }

  /** A sum within a product is held together, and what else is said of several things within anything. */
  #operand(given: Typed, part: SayPart, holds: boolean): string {
    const node = this.#taken(given);
    const { text } = part;
    if (node.node !== 'binary' || text === '') return held(part);
    const isSum = node.node === 'binary' && (node.operator === '+' || node.operator === '-');
    const whole = isSum && node.operator === '-' && isNumber(node.left, 1);
    return holds && isSum && !whole ? `(${text})` : text;
  }

  #call(node: Call): SayPart {
    const counted = countedNodes(node);
    if (counted !== undefined) return { text: this.#total(node, counted) };
    const args = node.args.map((each) => (each.node === 'blank' ? undefined : this.#phrase(each)));
    const said = sayCall(node.signature, args);
    if (said.explained !== undefined && this.#explained.size < MOST_EXPLAINED) {
      this.#explained.add(inOwnDegrees(said.explained, this.#book.document.program.units));
    }
    return said;
  }

  /** A total over the rows that meet conditions: how many they are. */
  #total(node: Call, { of, says }: NonNullable<ReturnType<typeof countedNodes>>): string {
    const { document } = this.#book;
    const rows = document.frame.countedRows(node, this.#at.row);
    const many = rows === undefined ? '' : `${rows.length} ${rows.length === 1 ? 'row' : 'rows'} of `;
    for (const row of rows ?? []) this.#named.add(`${of.table} ${row} ${of.column}`);
    const what = says === COUNTED ? says : `${says} ${this.#columnName(of.table, of.column)} over`;
    return `${what} ${many}${this.#sheetName(of.table)}`;
  }

  /** What decided, in words; '' where it goes without saying, unless it is what was asked. */
  #condition(given: Typed, holds: boolean, asked = false): string {
    const node = this.#taken(given);
    if (node.node === 'binary') return this.#comparison(node, holds, asked);
    if (node.node === 'cell' || node.node === 'single') {
      const { name = '' } = this.#phrase(node);
      return `${name} is ${holds ? 'yes' : 'no'}`;
    }
    if (node.node !== 'call') return '';
    const [first] = node.args;
    switch (node.signature.name) {
      case 'NOT':
        return first === undefined ? '' : this.#condition(first, !holds, asked);
      case 'AND':
      case 'OR': {
        // One part that fails decides an AND, one that holds an OR; else all of them do.
        const one = (node.signature.name === 'AND') !== holds;
        const deciding = node.args.filter((part) => (this.#values.get(part) === true) === holds);
        const said = deciding.map((part) => this.#condition(part, holds, asked)).filter((each) => each !== '');
        return (one ? said.slice(0, 1) : said.slice(0, 2)).join(' and ');
      }
      case 'ISBLANK': {
        const { name = '' } = first === undefined ? { name: '' } : this.#phrase(first);
        if (!holds) return asked ? `${name} is known` : '';
        return name === '' ? '' : `${name} is blank`;
      }
      default:
        return '';
    }
  }

  #comparison({ operator, left, right }: Binary, holds: boolean, asked: boolean): string {
    const words = HOW[operator];
    if (words === undefined) return '';
    // Not this choice goes without saying where there are others; that it is more or less doesn't.
    if (operator === '=' && !holds && !asked) return '';
    return `${this.#phrase(left).text} ${holds ? words[0] : words[1]} ${this.#phrase(right).text}`;
  }

  #constant(value: Scalar, { type }: Typed): string {
    const { currency, units } = this.#book.document.program;
    if (type.kind === 'link' && typeof value === 'number') return rowName(this.#book, type.table, value);
    return showWithUnit(value, ownUnits(type, value, units), { currency, writing: this.#book.document.writing });
  }

  #columnName(table: string, column: string): string {
    return columnOf(this.#book, table, column.split('·')[0] ?? column)?.name ?? '';
  }

  #sheetName(id: string): string {
    return sheetOf(this.#book, id)?.name ?? '';
  }
}

const BETWEEN: Readonly<Record<string, string>> = {
  '+': 'plus',
  '-': 'less',
  '*': 'times',
  '/': 'divided by',
  '^': 'to the power of',
  '=': 'is the same as',
  '<>': 'differs from',
  '<': 'is less than',
  '<=': 'is at most',
  '>': 'is more than',
  '>=': 'is at least',
};

/** A comparison that holds, and one that doesn't. */
const HOW: Readonly<Record<string, readonly [string, string]>> = {
  '=': ['is', 'is not'],
  '<>': ['is not', 'is'],
  '<': ['is less than', 'is not less than'],
  '<=': ['is at most', 'is more than'],
  '>': ['is more than', 'is not more than'],
  '>=': ['is at least', 'is less than'],
};

function isNumber(node: Typed, value: number | undefined): boolean {
  return node.node === 'constant' && value !== undefined && node.value === value;
}

/** All there is of something: as a factor it says nothing. */
function isWhole({ isShare = false, value }: SayPart): boolean {
  return isShare && value === 1;
}

function sentence(shown: string, taken: Typed, phrase: string, since: readonly string[]): string {
  const head = shown.length > OPENED ? 'So it reads' : shown;
  const fixed = taken.node === 'constant' || phrase === '';
  if (fixed)
    return since.length === 0 ? 'As usual: nothing else is typed.' : `${head}, because ${since.join(' and ')}.`;
  const because = since.length === 0 ? '' : `, since ${since.join(' and ')}`;
  if (taken.node === 'cell' || taken.node === 'single' || taken.node === 'typed')
    return `Taken from ${phrase}${because}.`;
  return `${head}, because it is ${phrase}${because}.`.replace('because it is =', 'because ');
}
