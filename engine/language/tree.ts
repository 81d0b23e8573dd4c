// The syntax tree of a formula, with the place of every part in the text (from inclusive, to exclusive). Made by the
// parser, read by the printer and the checker.

export interface Span {
  readonly from: number;
  readonly to: number;
}

export type BinaryOperator = '+' | '-' | '*' | '/' | '^' | '&' | '=' | '<>' | '<' | '<=' | '>' | '>=';
export type UnaryOperator = '-' | '+' | '%';

export type Tree = Span &
  (
    | { readonly tree: 'number'; readonly value: number }
    /** 8 in, 2.5 lb/ft, 20 degC; `unit` as written, `unitSpan` for messages. */
    | { readonly tree: 'quantity'; readonly value: number; readonly unit: string; readonly unitSpan: Span }
    | { readonly tree: 'text'; readonly value: string }
    | { readonly tree: 'yesno'; readonly value: boolean }
    /** [A] or [A].[B].[C]: this row's cell, through links. */
    | { readonly tree: 'cell'; readonly path: readonly [Name, ...Name[]] }
    /** Table[Column] */
    | { readonly tree: 'column'; readonly table: Name; readonly column: Name }
    /** A bare table name as an argument: ROWS('Seed lots'). */
    | { readonly tree: 'table'; readonly table: Name }
    /** % stands behind its operand, the signs before it. */
    | { readonly tree: 'unary'; readonly operator: UnaryOperator; readonly operand: Tree }
    | {
        readonly tree: 'binary';
        readonly operator: BinaryOperator;
        readonly left: Tree;
        readonly right: Tree;
        readonly operatorSpan: Span;
      }
    | { readonly tree: 'call'; readonly name: Name; readonly args: readonly (Tree | Missing)[] }
  );

/** An argument left out between separators: IF([A]; ; 3). */
export interface Missing extends Span {
  readonly tree: 'missing';
}

export interface Name extends Span {
  readonly text: string;
}

/** What is wrong with a formula's text: where, a sentence, and a replacement for the marked part where one is plain. */
export interface Diagnostic extends Span {
  readonly why: string;
  /** The formula reads well, but goes in a circle with others. */
  readonly circle?: boolean;
  readonly fix?: { readonly text: string; readonly span: Span };
}

export type Parsed =
  | { readonly ok: true; readonly tree: Tree }
  | { readonly ok: false; readonly diagnostic: Diagnostic };

/** LET(name; value; ...; formula) gives names to values, to be written in what stands behind them. */
export const LET = 'LET';

/** The name that a part of LET gives, in small letters; undefined where no name stands there. */
export function nameGiven(part: Tree | Missing | undefined): string | undefined {
  return part?.tree === 'table' ? part.table.text.toLowerCase() : undefined;
}
