// A formula as a tree that can be written for both engines: names of columns, semicolons and time spans for ours, cell
// addresses and commas for the peer. Brackets stand only where the precedence of OpenFormula (ODF 1.3 part 4, 5.5) needs them, so that precedence is
// compared too.

import type { Kind } from './kind.ts';
import {
  COLUMNS,
  type ColumnName,
  columnsOf,
  lastRow,
  letterOf,
  MAIN,
  OTHER,
  WANTED,
  WANTED_COLUMNS,
  WANTED_ROWS,
} from './tables.ts';

export type TableName = typeof MAIN | typeof OTHER | typeof WANTED;

export type Operator = '+' | '-' | '*' | '/' | '^' | '&' | '=' | '<>' | '<' | '<=' | '>' | '>=';
export type Comparison = '=' | '<>' | '<' | '<=' | '>' | '>=';

export type Expression =
  | { readonly is: 'constant'; readonly kind: Kind; readonly value: number | string | boolean }
  | { readonly is: 'cell'; readonly kind: Kind; readonly column: ColumnName }
  /** A whole column, as an argument only. */
  | { readonly is: 'column'; readonly kind: Kind; readonly column: ColumnName }
  | { readonly is: 'table'; readonly kind: Kind; readonly table: TableName }
  /** An argument left out between others. */
  | { readonly is: 'missing'; readonly kind: Kind }
  | { readonly is: 'minus' | 'percent'; readonly kind: Kind; readonly args: readonly [Expression] }
  | {
      readonly is: 'binary';
      readonly kind: Kind;
      readonly operator: Operator;
      readonly args: readonly [Expression, Expression];
    }
  | { readonly is: 'call'; readonly kind: Kind; readonly name: string; readonly args: readonly Expression[] }
  /** A condition joined to a value, ">" & [Amount]; an argument only. */
  | {
      readonly is: 'condition';
      readonly kind: Kind;
      readonly comparison: Comparison;
      readonly args: readonly [Expression];
    }
  /** The days of a time span as a number, and a number as a time span of so many days. */
  | { readonly is: 'days' | 'span'; readonly kind: Kind; readonly args: readonly [Expression] };

export function partsOf(of: Expression): readonly Expression[] {
  return 'args' in of ? of.args : [];
}

/** Whether the part has a value of its own in a row, and can so stand in a cell. */
export function standsAlone(of: Expression): boolean {
  return of.is !== 'column' && of.is !== 'table' && of.is !== 'missing' && of.is !== 'condition';
}

/** The function or operator at the root; '' for a cell or a constant. */
export function rootOf(of: Expression): string {
  if (of.is === 'call') return of.name;
  if (of.is === 'binary') return of.operator;
  return of.is === 'minus' || of.is === 'percent' ? of.is : '';
}

/** How firmly a written expression holds together: higher binds tighter. */
const BINDS: Readonly<Record<Operator, number>> = {
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
const POSTFIX = 6;
const PREFIX = 7;
const WHOLE = 9;

interface Written {
  readonly text: string;
  readonly binds: number;
}

interface Syntax {
  readonly separator: string;
  constant(of: Extract<Expression, { readonly is: 'constant' }>): Written;
  cell(column: ColumnName): string;
  column(column: ColumnName): string;
  table(name: TableName): string;
  days(inner: Written): Written;
  span(inner: Written): Written;
}

/** 17 digits say a double exactly; the shortest that reads back is enough. */
function numberText(value: number): Written {
  const text = String(Math.abs(value));
  const negative = value < 0 || Object.is(value, -0);
  return negative ? { text: `-${text}`, binds: PREFIX } : { text, binds: WHOLE };
}

function quoted(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

function commonConstant(value: number | string | boolean): Written {
  if (typeof value === 'number') return numberText(value);
  return { text: typeof value === 'string' ? quoted(value) : `${value ? 'TRUE' : 'FALSE'}()`, binds: WHOLE };
}

function bracketed(inner: Written, atLeast: number): string {
  return inner.binds >= atLeast ? inner.text : `(${inner.text})`;
}

/** The peer's date 0 is 1899-12-30: days from there to 1970-01-01, our civil day 0. */
export const SERIAL_OF_CIVIL_0 = 25_569;

function dateText(serial: number, separator: string): string {
  const day = new Date((serial - SERIAL_OF_CIVIL_0) * 86_400_000);
  return `DATE(${[day.getUTCFullYear(), day.getUTCMonth() + 1, day.getUTCDate()].join(separator)})`;
}

const OWN: Syntax = {
  separator: '; ',
  constant: ({ kind, value }) => {
    if (kind === 'date' && typeof value === 'number') return { text: dateText(value, '; '), binds: WHOLE };
    if (kind === 'span' && typeof value === 'number') return { text: `${numberText(value).text} * 1 day`, binds: 4 };
    return commonConstant(value);
  },
  cell: (column) => `[${column}]`,
  column: (column) => `${COLUMNS[column].table}[${column}]`,
  table: (name) => name,
  days: (inner) => ({ text: `${bracketed(inner, 4)} / (1 day)`, binds: 4 }),
  span: (inner) => ({ text: `${bracketed(inner, 4)} * 1 day`, binds: 4 }),
};

function address(column: ColumnName, row: string): string {
  const { table } = COLUMNS[column];
  return `${table === OTHER ? `${OTHER}!` : ''}$${letterOf(column)}${row}`;
}

/** The peer's copy of the main table with a row of names above, as its database functions want one. */
export const HEADED = 'Headed';

function peerTable(name: TableName): string {
  switch (name) {
    case OTHER:
      return `${OTHER}!$A$1:$${letterOf('Label')}$${lastRow('Label')}`;
    case WANTED:
      return `${WANTED}!$A$1:$${String.fromCharCode(64 + WANTED_COLUMNS.length)}$${WANTED_ROWS + 1}`;
    case MAIN:
      return `${HEADED}!$A$1:$${String.fromCharCode(64 + columnsOf(MAIN).length)}$${lastRow('Amount') + 1}`;
  }
}

function peerSyntax(row: number): Syntax {
  return {
    separator: ', ',
    constant: ({ kind, value }) => {
      if (kind === 'date' && typeof value === 'number') return { text: dateText(value, ', '), binds: WHOLE };
      return commonConstant(value);
    },
    cell: (column) => address(column, String(row + 1)),
    column: (column) => `${address(column, '$1')}:$${letterOf(column)}$${lastRow(column)}`,
    table: peerTable,
    days: (inner) => inner,
    span: (inner) => inner,
  };
}

function written(of: Expression, syntax: Syntax): Written {
  const inner = (part: Expression): Written => written(part, syntax);
  switch (of.is) {
    case 'constant':
      return syntax.constant(of);
    case 'cell':
      return { text: syntax.cell(of.column), binds: WHOLE };
    case 'column':
      return { text: syntax.column(of.column), binds: WHOLE };
    case 'table':
      return { text: syntax.table(of.table), binds: WHOLE };
    case 'missing':
      return { text: '', binds: WHOLE };
    case 'minus':
      return { text: `-${bracketed(inner(of.args[0]), PREFIX)}`, binds: PREFIX };
    case 'percent':
      return { text: `${bracketed(inner(of.args[0]), POSTFIX)}%`, binds: POSTFIX };
    case 'days':
      return syntax.days(inner(of.args[0]));
    case 'span':
      return syntax.span(inner(of.args[0]));
    case 'condition':
      return {
        text: `${quoted(of.comparison)} & ${bracketed(inner(of.args[0]), BINDS['&'] + 1)}`,
        binds: BINDS['&'],
      };
    case 'binary': {
      const binds = BINDS[of.operator];
      const [left, right] = [bracketed(inner(of.args[0]), binds), bracketed(inner(of.args[1]), binds + 1)];
      return { text: `${left} ${of.operator} ${right}`, binds };
    }
    case 'call':
      return { text: `${of.name}(${of.args.map((part) => inner(part).text).join(syntax.separator)})`, binds: WHOLE };
  }
}

export function ownText(of: Expression): string {
  return written(of, OWN).text;
}

/** As a cell of the peer's sheet in this row, from 0. */
export function peerText(of: Expression, row: number): string {
  return `=${written(of, peerSyntax(row)).text}`;
}
