// Finds where two engines part: formulas are compared as a whole, and one that differs is taken apart until the parts are found whose
// arguments agree and whose results do not. Those are what a list of known differences has to answer for.

import { ownResults, peerResults, type Results, type Value } from './engines.ts';
import { type Expression, partsOf, rootOf, standsAlone } from './expression.ts';
import type { Cell, Tables } from './tables.ts';

/**
 * Numbers agree to 1e-9 of their size: both engines add and multiply doubles in their own order and take their own series
 * for roots, logarithms and distributions, which costs some 1e-16 a step and up to 1e-11 in a tail, while a wrong term shows at once.
 */
const TOLERANCE = 1e-9;

/** Kinds of error that both engines have; others agree by being errors. */
const KIND: ReadonlyMap<string, string> = new Map([
  ['DIV_BY_ZERO', 'divide'],
  ['NUM', 'number'],
  ['NA', 'missing'],
  ['VALUE', 'value'],
  ['REF', 'reference'],
]);

export function isFailure(value: Value | readonly Cell[] | undefined): value is { readonly error: string } {
  return typeof value === 'object' && value !== null && 'error' in value;
}

/** The kind of an error in our words; undefined for a value. */
export function errorKind(value: Value): string | undefined {
  return isFailure(value) ? (KIND.get(value.error) ?? value.error) : undefined;
}

export function agree(own: Value, peer: Value): boolean {
  if (isFailure(own) || isFailure(peer)) return errorKind(own) === errorKind(peer);
  if (typeof own !== 'number' || typeof peer !== 'number') return own === peer;
  return own === peer || Math.abs(own - peer) <= TOLERANCE * Math.max(Math.abs(own), Math.abs(peer));
}

/** A function or operator that gives different results for arguments that agree. */
export interface Difference {
  readonly formula: Expression;
  readonly root: string;
  readonly row: number;
  /** Columns as lists; an argument left out is a blank. */
  readonly args: readonly (Value | readonly Cell[])[];
  readonly own: Value;
  readonly peer: Value;
  /** With the peer's arguments, to the last bit, ours agrees: the difference began below the tolerance in an argument. */
  readonly carried: boolean;
}

/** Every part that has a value of its own, the whole first. */
function* partsStandingAlone(of: Expression): Generator<Expression> {
  if (standsAlone(of)) yield of;
  for (const part of partsOf(of)) yield* partsStandingAlone(part);
}

/** The nearest parts below that have values of their own. */
function argumentsOf(of: Expression): readonly Expression[] {
  return partsOf(of).flatMap((part) => (standsAlone(part) ? [part] : argumentsOf(part)));
}

class Worked {
  readonly #own = new Map<Expression, Results>();
  readonly #peer = new Map<Expression, Results>();

  /** Both engines at once: ours here, the peer in its thread. */
  static async of(tables: Tables, formulas: readonly Expression[], rows: readonly number[]): Promise<Worked> {
    const worked = new Worked();
    const asked = peerResults(tables, formulas, rows);
    const own = ownResults(tables, formulas, rows);
    const peer = await asked;
    formulas.forEach((formula, at) => {
      worked.#own.set(formula, own[at] ?? []);
      worked.#peer.set(formula, peer[at] ?? []);
    });
    return worked;
  }

  own(formula: Expression, at: number): Value {
    return this.#own.get(formula)?.[at] ?? null;
  }

  peer(formula: Expression, at: number): Value {
    return this.#peer.get(formula)?.[at] ?? null;
  }

  differs(formula: Expression, at: number): boolean {
    return !agree(this.own(formula, at), this.peer(formula, at));
  }
}

/** The parts, each with its place among the rows, whose arguments agree and whose results do not. */
function parting(of: Expression, at: number, worked: Worked, found: Map<Expression, Set<number>>): void {
  const below = argumentsOf(of).filter((part) => worked.differs(part, at));
  for (const part of below) parting(part, at, worked, found);
  if (below.length > 0) return;
  const places = found.get(of) ?? new Set<number>();
  found.set(of, places.add(at));
}

/** The same part with its arguments written out as the peer worked them out. */
function withArguments(of: Expression, at: number, worked: Worked): Expression {
  const fixed = (part: Expression): Expression => {
    if (!standsAlone(part)) return 'args' in part ? withArguments(part, at, worked) : part;
    const value = worked.peer(part, at);
    if (value === null || isFailure(value) || worked.own(part, at) === value) return part;
    return { is: 'constant', kind: part.kind, value };
  };
  switch (of.is) {
    case 'call':
      return { ...of, args: of.args.map(fixed) };
    case 'binary':
      return { ...of, args: [fixed(of.args[0]), fixed(of.args[1])] };
    case 'minus':
    case 'percent':
    case 'condition':
    case 'days':
    case 'span':
      return { ...of, args: [fixed(of.args[0])] };
    default:
      return of;
  }
}

function argumentValue(of: Expression, at: number, worked: Worked, tables: Tables): Value | readonly Cell[] {
  if (of.is === 'column') return tables.columns[of.column];
  if (of.is === 'condition') return argumentValue(of.args[0], at, worked, tables);
  return standsAlone(of) ? worked.peer(of, at) : null;
}

/** All differences between the engines in these formulas, in these rows of these tables. */
export async function differencesIn(
  tables: Tables,
  formulas: readonly Expression[],
  rows: readonly number[],
): Promise<readonly Difference[]> {
  const whole = await Worked.of(tables, formulas, rows);
  const places = rows.map((_, at) => at);
  const unlike = formulas.filter((formula) => places.some((at) => whole.differs(formula, at)));
  if (unlike.length === 0) return [];
  const parts = await Worked.of(
    tables,
    [...new Set(unlike.flatMap((formula) => [...partsStandingAlone(formula)]))],
    rows,
  );
  const found = new Map<Expression, Set<number>>();
  for (const formula of unlike)
    for (const at of places) if (parts.differs(formula, at)) parting(formula, at, parts, found);
  const cases = [...found].flatMap(([part, at]) =>
    [...at].map((place) => ({ part, place, settled: withArguments(part, place, parts) })),
  );
  const settled = await Worked.of(
    tables,
    cases.map((one) => one.settled),
    rows,
  );
  return cases.map(({ part, place, settled: formula }) => {
    const carried = !settled.differs(formula, place);
    const judged = carried ? parts : settled;
    const of = carried ? part : formula;
    return {
      formula: of,
      root: rootOf(of),
      row: rows[place] ?? 0,
      args: partsOf(part).map((one) => argumentValue(one, place, parts, tables)),
      own: judged.own(of, place),
      peer: judged.peer(of, place),
      carried,
    };
  });
}
