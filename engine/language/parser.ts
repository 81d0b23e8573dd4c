// Makes the syntax tree of a formula, or says in one sentence what is wrong and where. Operators and their strength are
// those of OpenFormula (ODF 1.3 part 4, 5.5): signs before a number hold tightest, then %, then ^ (from the left), then
// * /, + -, & and the comparisons. Calls lexer.ts; called by the workbook when a formula is entered.

import { cutFormula, type Token } from './lexer.ts';
import { caught, refuse } from './refuse.ts';
import { refuseMissing, refuseStray, type UnitHelp } from './stray.ts';
import type { BinaryOperator, Missing, Name, Parsed, Span, Tree } from './tree.ts';

/** Letters of a formula; far above what a person writes. */
const MOST_LETTERS = 8192;
/** Parts between the parentheses of one call. */
const MOST_ARGUMENTS = 255;
/** Parentheses, calls and signs within each other; far above what a person writes, far below what a stack holds. */
const MOST_NESTED = 200;
/** Steps in one chain such as a + b + c; every later pass may walk the tree by plain recursion. */
const MOST_STEPS = 1000;

/** How tightly each operator holds; equal ones are taken from the left. */
export const STRENGTH: Readonly<Record<BinaryOperator, number>> = {
  '=': 1,
  '<>': 1,
  '<': 1,
  '<=': 1,
  '>': 1,
  '>=': 1,
  '&': 2,
  '+': 3,
  '-': 3,
  '*': 4,
  '/': 4,
  '^': 5,
};
export const PERCENT_STRENGTH = 6;
export const PREFIX_STRENGTH = 7;

/** A tree, its place with the parentheses round it, and how many steps lie between its top and its deepest part. */
interface Grown extends Span {
  readonly tree: Tree;
  readonly height: number;
}

function leaf(tree: Tree): Grown {
  return { tree, height: 1, from: tree.from, to: tree.to };
}

/**
 * The tree of a formula's text (a leading = is allowed), or what is wrong with it. `isUnit` tells which words after a
 * number are units, `unitHelp` what to say of others. Never throws, whatever the text.
 */
export function parseFormula(text: string, isUnit: (symbol: string) => boolean, unitHelp?: UnitHelp): Parsed {
  if (text.length > MOST_LETTERS) {
    const why = `A formula has at most ${MOST_LETTERS} letters, and this one has ${text.length}: put parts of it in columns of their own.`;
    return { ok: false, diagnostic: { from: MOST_LETTERS, to: text.length, why } };
  }
  const leading = /^\s*=(?!=)/.exec(text)?.[0].length ?? 0;
  const lexed = cutFormula(' '.repeat(leading) + text.slice(leading), isUnit);
  if (lexed.diagnostic !== undefined) return { ok: false, diagnostic: lexed.diagnostic };
  const read = caught(() => new Parser(text, lexed.tokens, unitHelp).whole());
  return read.ok ? { ok: true, tree: read.value } : read;
}

class Parser {
  private readonly text: string;
  private readonly tokens: readonly Token[];
  private readonly unitHelp: UnitHelp | undefined;
  private index = 0;
  private nested = 0;

  constructor(text: string, tokens: readonly Token[], unitHelp: UnitHelp | undefined) {
    this.text = text;
    this.tokens = tokens;
    this.unitHelp = unitHelp;
  }

  whole(): Tree {
    if (this.next().token === 'end') refuse(this.next(), 'The formula is empty: write what the column should hold.');
    const { tree } = this.expression(0);
    if (this.next().token !== 'end') this.stray();
    return tree;
  }

  /** Always there: nothing goes on once the closing 'end' is taken. */
  private next(): Token {
    return this.tokens[this.index] as Token;
  }

  private take(): Token {
    const token = this.next();
    this.index += 1;
    return token;
  }

  private nextIs(sign: string): boolean {
    const token = this.next();
    return token.token === 'sign' && token.sign === sign;
  }

  private takeIf(sign: string): Token | undefined {
    return this.nextIs(sign) ? this.take() : undefined;
  }

  /** Everything that holds more tightly than `least`. */
  private expression(least: number): Grown {
    let left = this.operand();
    while (true) {
      const token = this.next();
      if (token.token !== 'sign') return left;
      if (token.sign === '%') {
        if (PERCENT_STRENGTH <= least) return left;
        this.take();
        left = this.grow(
          { tree: 'unary', operator: '%', operand: left.tree, from: left.from, to: token.to },
          left.height,
        );
        continue;
      }
      const operator = binaryOperator(token.sign);
      if (operator === undefined || STRENGTH[operator] <= least) return left;
      this.take();
      const right = this.expression(STRENGTH[operator]);
      left = this.grow(
        {
          tree: 'binary',
          operator,
          left: left.tree,
          right: right.tree,
          operatorSpan: { from: token.from, to: token.to },
          from: left.from,
          to: right.to,
        },
        Math.max(left.height, right.height),
      );
    }
  }

  private grow(tree: Tree, below: number): Grown {
    if (below >= MOST_STEPS) {
      refuse(
        tree,
        `This has more than ${MOST_STEPS} steps in one chain; spread it over two columns, or total a column.`,
      );
    }
    return { tree, height: below + 1, from: tree.from, to: tree.to };
  }

  /** Counts how deep things stand within each other while `inside` is read. */
  private within<T>(span: Span, inside: () => T): T {
    if (this.nested >= MOST_NESTED) {
      refuse(
        span,
        `More than ${MOST_NESTED} parts stand within each other here; put some of them in a column of their own.`,
      );
    }
    this.nested += 1;
    const result = inside();
    this.nested -= 1;
    return result;
  }

  private operand(): Grown {
    const token = this.take();
    const { from, to } = token;
    switch (token.token) {
      case 'number':
        return leaf({ tree: 'number', value: token.value, from, to });
      case 'quantity': {
        const { value, unit, unitSpan } = token;
        return leaf({ tree: 'quantity', value, unit, unitSpan, from, to });
      }
      case 'text':
        return leaf({ tree: 'text', value: token.value, from, to });
      case 'bracket':
        return this.cell({ text: token.name, from, to });
      case 'quoted':
        return this.tableOrColumn({ text: token.name, from, to });
      case 'word':
        return this.word({ text: token.word, from, to });
      case 'end':
        return refuseMissing(this.tokens[this.index - 2], token);
      case 'sign':
        return this.signed(token, token.sign);
    }
  }

  private signed(token: Token, sign: string): Grown {
    const { from } = token;
    if (sign === '-' || sign === '+') {
      const operand = this.within(token, () => this.expression(PREFIX_STRENGTH));
      return this.grow({ tree: 'unary', operator: sign, operand: operand.tree, from, to: operand.to }, operand.height);
    }
    if (sign === '(') {
      const inside = this.within(token, () => {
        if (this.nextIs(')')) refuse({ from, to: this.next().to }, 'Nothing stands between these parentheses.');
        return this.expression(0);
      });
      return { ...inside, from, to: this.close(token).to };
    }
    return refuseMissing(this.tokens[this.index - 2], token);
  }

  private close(open: Token): Token {
    const close = this.takeIf(')');
    if (close !== undefined) return close;
    if (this.next().token !== 'end') this.stray();
    return refuse(open, 'This ( is not closed: put ) where it ends.');
  }

  private cell(first: Name): Grown {
    const path: [Name, ...Name[]] = [first];
    let last = first;
    while (this.nextIs('.')) {
      const stroke = this.take();
      const token = this.take();
      if (token.token !== 'bracket') {
        return refuse(stroke, 'After the point the name of a column in brackets is wanted, as in [Variety].[Crop].');
      }
      last = { text: token.name, from: token.from, to: token.to };
      path.push(last);
    }
    return leaf({ tree: 'cell', path, from: first.from, to: last.to });
  }

  private word(name: Name): Grown {
    if (this.nextIs('(')) return this.call(name);
    const upper = name.text.toUpperCase();
    if ((upper === 'TRUE' || upper === 'FALSE') && this.next().token !== 'bracket') {
      return leaf({ tree: 'yesno', value: upper === 'TRUE', from: name.from, to: name.to });
    }
    return this.tableOrColumn(name);
  }

  private tableOrColumn(table: Name): Grown {
    const token = this.next();
    if (token.token !== 'bracket') {
      return leaf({ tree: 'table', table, from: table.from, to: table.to });
    }
    this.take();
    if (this.nextIs('.')) {
      refuse(this.next(), 'A link can be followed from this row only: start with a column of this sheet.');
    }
    const column = { text: token.name, from: token.from, to: token.to };
    return leaf({ tree: 'column', table, column, from: table.from, to: token.to });
  }

  private call(name: Name): Grown {
    const open = this.take();
    const args: (Tree | Missing)[] = [];
    let height = 0;
    const missingAt = (at: number): Missing => ({ tree: 'missing', from: at, to: at });
    this.within(open, () => {
      while (!this.nextIs(')')) {
        if (args.length >= MOST_ARGUMENTS) this.refuseArguments(name);
        if (this.nextIs(';') || this.nextIs(',')) {
          args.push(missingAt(this.take().from));
        } else {
          if (this.next().token === 'end') this.refuseUnclosedCall(name, args.at(-1));
          const argument = this.expression(0);
          args.push(argument.tree);
          height = Math.max(height, argument.height);
          const separator = this.takeIf(';') ?? this.takeIf(',');
          if (separator === undefined) {
            if (this.nextIs(')')) break;
            if (this.next().token !== 'end') this.stray();
            this.refuseUnclosedCall(name, argument.tree);
          }
        }
        if (this.nextIs(')')) args.push(missingAt(this.next().from));
      }
    });
    const close = this.take();
    const upper = name.text.toUpperCase();
    if ((upper === 'TRUE' || upper === 'FALSE') && args.length === 0) {
      return leaf({ tree: 'yesno', value: upper === 'TRUE', from: name.from, to: close.to });
    }
    const call = { tree: 'call', name: { ...name, text: upper }, args, from: name.from, to: close.to } as const;
    return this.grow(call, height);
  }

  private refuseArguments(name: Name): never {
    const function_ = name.text.toUpperCase();
    return refuse(
      this.next(),
      `${function_} takes at most ${MOST_ARGUMENTS} parts: put some of them in columns of their own, or name a whole column.`,
    );
  }

  private refuseUnclosedCall(name: Name, last: Span | undefined): never {
    const to = last?.to ?? name.to;
    return refuse({ from: name.from, to }, `${name.text.toUpperCase()}( is not closed: put ) after its last part.`);
  }

  /** Something follows a finished part that can't; the closing 'end' always may, so a token stands on both sides. */
  private stray(): never {
    const { tokens, index } = this;
    return refuseStray(this.text, tokens[index - 1] as Token, this.next(), tokens[index + 1] as Token, this.unitHelp);
  }
}

function binaryOperator(sign: string): BinaryOperator | undefined {
  switch (sign) {
    case '=':
    case '<>':
    case '<':
    case '<=':
    case '>':
    case '>=':
    case '&':
    case '+':
    case '-':
    case '*':
    case '/':
    case '^':
      return sign;
    default:
      return undefined;
  }
}
