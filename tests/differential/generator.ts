// Random expressions by type: constants, cells, operators and calls, with sensible arguments most of the time and odd ones
// now and then. What each function takes stands in functions.ts
// and is handed in.

import type { Comparison, Expression, Operator } from './expression.ts';
import type { Kind } from './kind.ts';
import type { Random } from './random.ts';
import { COLUMN_NAMES, COLUMNS, type ColumnName, figure, MAIN } from './tables.ts';

/** A share of arguments that are anything of the right type, whatever the function wants. */
const ODD = 0.08;

const COMPARISONS: readonly Comparison[] = ['=', '<>', '<', '<=', '>', '>='];
const CONSTANT_TEXTS = ['', 'a', 'Amber', 'red', 'late', 'Row two', '12', 'x y', 'Ä', '*', 'a?b', '100%'];

/** What a function takes and gives, as random arguments. */
export interface Call {
  /** Types it can be asked to give. */
  readonly gives: readonly Kind[];
  readonly args: (g: Generator, kind: Kind) => readonly Expression[];
}

export class Generator {
  readonly random: Random;
  readonly #calls: ReadonlyMap<string, Call>;
  /** How deep the next expression may nest. */
  #depth: number;

  constructor(random: Random, calls: ReadonlyMap<string, Call>) {
    this.random = random;
    this.#calls = calls;
    this.#depth = 0;
  }

  #specOf(name: string): Call {
    const call = this.#calls.get(name);
    if (call === undefined) throw new Error(`functions.ts does not say what ${name} takes`);
    return call;
  }

  /** A formula whose root is a call of this function. */
  callOf(name: string, depth: number): Expression {
    this.#depth = depth;
    return this.#call(name, this.random.pick(this.#specOf(name).gives));
  }

  /** A formula whose root is an operator. */
  operation(depth: number): Expression {
    this.#depth = depth;
    const kind = this.random.pick<Kind>(['number', 'number', 'number', 'yesno', 'yesno', 'text', 'date', 'span']);
    return this.#deeper(() => this.#operation(kind));
  }

  /** Any expression of the type. */
  of(kind: Kind): Expression {
    if (this.#depth <= 0 || this.random.chance(0.35)) return this.leaf(kind);
    return this.#deeper(() => (this.random.chance(0.5) ? this.#operation(kind) : this.#anyCall(kind)));
  }

  number(): Expression {
    return this.of('number');
  }

  text(): Expression {
    return this.of('text');
  }

  yesno(): Expression {
    return this.of('yesno');
  }

  date(): Expression {
    return this.of('date');
  }

  span(): Expression {
    return this.of('span');
  }

  /** A whole number from a range, written out or in a column of counts; now and then any number. */
  whole(from: number, to: number): Expression {
    if (this.random.chance(ODD)) return this.number();
    if (from >= 0 && to >= 12 && this.random.chance(0.4)) return cell('Count');
    return constant('number', this.random.whole(from, to));
  }

  /** A number from a range; now and then any number. */
  between(from: number, to: number): Expression {
    if (this.random.chance(ODD)) return this.number();
    if (from <= 0.05 && to >= 20 && this.random.chance(0.4)) return cell('Rate');
    if (from <= 0 && to >= 1 && to < 20 && this.random.chance(0.4)) return cell('Share');
    const decimals = this.random.whole(1, 4);
    return constant('number', Number((from + this.random.next() * (to - from)).toFixed(decimals)));
  }

  share(): Expression {
    return this.between(0, 1);
  }

  /** A text from a list; now and then any text. */
  oneOf(...texts: readonly string[]): Expression {
    return this.random.chance(ODD) ? this.text() : constant('text', this.random.pick(texts));
  }

  /** A whole column of the type, of the main table where `table` says so. */
  column(kind: Kind, table?: string): Expression {
    const fitting = COLUMN_NAMES.filter(
      (name) => COLUMNS[name].kind === kind && (table === undefined || COLUMNS[name].table === table),
    );
    return wholeColumn(this.random.pick(fitting));
  }

  /** A whole column of the main table, of any type. */
  anyColumn(): Expression {
    return this.column(this.random.pick<Kind>(['number', 'number', 'text', 'yesno', 'date']), MAIN);
  }

  /** Cells and whole columns of a type, mixed. */
  values(kind: Kind): readonly Expression[] {
    if (this.random.chance(0.4)) return [this.column(kind)];
    return Array.from({ length: this.random.whole(1, 4) }, () =>
      this.random.chance(0.3) ? this.column(kind) : this.of(kind),
    );
  }

  /** A column and a condition on it. */
  conditioned(): readonly [Expression, Expression] {
    const column = this.anyColumn();
    return [column, this.condition(column.kind)];
  }

  condition(kind: Kind): Expression {
    const value = this.random.chance(0.6) ? this.leaf(kind) : this.of(kind);
    if (kind === 'text' || kind === 'yesno' || this.random.chance(0.2)) return value;
    return { is: 'condition', kind: 'text', comparison: this.random.pick(COMPARISONS), args: [value] };
  }

  /** These arguments, so many of the last left out. */
  atMost(needed: number, args: readonly Expression[]): readonly Expression[] {
    return args.slice(0, this.random.whole(needed, args.length));
  }

  leaf(kind: Kind): Expression {
    const { random } = this;
    const columns = COLUMN_NAMES.filter((name) => COLUMNS[name].kind === kind && COLUMNS[name].table === MAIN);
    if (kind === 'span') return constant('span', random.whole(-40, 400) / random.pick([1, 1, 4]));
    if (random.chance(0.65)) return cell(random.pick(columns));
    switch (kind) {
      case 'number':
        return constant('number', this.#numberConstant());
      case 'text':
        return constant('text', random.pick(CONSTANT_TEXTS));
      case 'yesno':
        return constant('yesno', random.chance(0.5));
      case 'date':
        return constant('date', random.whole(20_000, 60_000));
    }
  }

  #numberConstant(): number {
    const { random } = this;
    if (random.chance(0.4)) return random.whole(-3, 12);
    if (random.chance(0.1)) return random.pick([0.1, 1e-9, 1e6, 123456789, 1e15, 1 / 3, 2.675, -0.5, 1e-300, 1e200]);
    return figure(random);
  }

  #deeper(make: () => Expression): Expression {
    this.#depth -= 1;
    const made = make();
    this.#depth += 1;
    return made;
  }

  #call(name: string, kind: Kind): Expression {
    return this.#deeper(() => ({ is: 'call', kind, name, args: this.#specOf(name).args(this, kind) }));
  }

  #anyCall(kind: Kind): Expression {
    const fitting = [...this.#calls].filter(([, { gives }]) => gives.includes(kind));
    return this.#call(this.random.pick(fitting)[0], kind);
  }

  #operation(kind: Kind): Expression {
    const { random } = this;
    switch (kind) {
      case 'number':
        return this.#arithmetic();
      case 'text':
        return binary('text', '&', this.text(), this.text());
      case 'yesno': {
        const of = random.pick<Kind>(['number', 'number', 'text', 'date', 'yesno', 'span']);
        const comparison = of === 'yesno' ? random.pick<Comparison>(['=', '<>']) : random.pick(COMPARISONS);
        return binary('yesno', comparison, this.of(of), this.of(of));
      }
      case 'date':
        return random.chance(0.5)
          ? binary('date', '+', this.date(), this.span())
          : binary('date', '-', this.date(), this.span());
      case 'span':
        if (random.chance(0.3)) return { is: 'span', kind: 'span', args: [this.number()] };
        return random.chance(0.5)
          ? binary('span', '-', this.date(), this.date())
          : binary('span', random.pick<Operator>(['+', '-']), this.span(), this.span());
    }
  }

  #arithmetic(): Expression {
    const { random } = this;
    if (random.chance(0.12)) return { is: 'minus', kind: 'number', args: [this.number()] };
    if (random.chance(0.08)) return { is: 'percent', kind: 'number', args: [this.number()] };
    if (random.chance(0.15)) return { is: 'days', kind: 'number', args: [this.span()] };
    if (random.chance(0.15)) return binary('number', '^', this.number(), this.whole(-3, 4));
    return binary('number', random.pick<Operator>(['+', '-', '*', '/']), this.number(), this.number());
  }
}

export function constant(kind: Kind, value: number | string | boolean): Expression {
  return { is: 'constant', kind, value };
}

export function cell(column: ColumnName): Expression {
  return { is: 'cell', kind: COLUMNS[column].kind, column };
}

export function wholeColumn(column: ColumnName): Expression {
  return { is: 'column', kind: COLUMNS[column].kind, column };
}

function binary(kind: Kind, operator: Operator, left: Expression, right: Expression): Expression {
  return { is: 'binary', kind, operator, args: [left, right] };
}
