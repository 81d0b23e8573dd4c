// The facts judged and counted: what the printed table and the README's say. Runs every computation once.

import { allFacts } from './all-checks.ts';
import { citation, type Fact, judge, KINDS, type Kind, type Point, restsOn, type Verdict } from './check.ts';

/** A point with its figure computed and judged. */
export type JudgedPoint = Omit<Point, 'computed'> & Verdict;

export interface Judged {
  readonly fact: Fact;
  readonly points: readonly JudgedPoint[];
  /** The point that lies furthest off as a part of its tolerance. */
  readonly worst: JudgedPoint;
  readonly passed: boolean;
}

export interface OfKind {
  readonly kind: Kind;
  readonly facts: number;
  readonly points: number;
  /** Publications, or programs where there are none. */
  readonly sources: number;
  readonly knownOff: number;
  readonly failed: number;
}

/** How far off a point is, in tolerances; any difference is endless where none is allowed. */
function strain({ difference, tolerance }: JudgedPoint): number {
  if (difference === 0) return 0;
  return Number.isNaN(difference) ? Number.POSITIVE_INFINITY : Math.abs(difference) / tolerance;
}

function judged(fact: Fact): Judged {
  const points = fact.points.map((point): JudgedPoint => ({ ...point, ...judge(point) }));
  const [first, ...others] = points;
  if (first === undefined) throw new Error(`${fact.fact} has no points`);
  const worst = others.reduce((most, point) => (strain(point) > strain(most) ? point : most), first);
  return { fact, points, worst, passed: points.every(({ verdict }) => verdict !== 'FAILS') };
}

/** Every fact with its verdict. */
export function judgedFacts(): readonly Judged[] {
  return allFacts.map(judged);
}

/** The publication or program a fact rests on, without the page. */
export function sourceOf(fact: Fact): string {
  if (fact.kind === 'published') return citation(fact.source);
  return fact.kind === 'library' ? fact.program.name : fact.kind === 're-fitted' ? citation(fact.data) : restsOn(fact);
}

/** Facts, points and sources of each kind. */
export function byKind(all: readonly Judged[]): readonly OfKind[] {
  return KINDS.map((kind) => {
    const own = all.filter(({ fact }) => fact.kind === kind);
    const points = own.flatMap((one) => one.points);
    return {
      kind,
      facts: own.length,
      points: points.length,
      sources: new Set(own.map(({ fact }) => sourceOf(fact))).size,
      knownOff: points.filter(({ verdict }) => verdict === 'known to be off').length,
      failed: points.filter(({ verdict }) => verdict === 'FAILS').length,
    };
  });
}

/** A figure in seven digits, the very small and large as powers. */
export function figure(value: number): string {
  if (value === 0) return '0';
  const size = Math.abs(value);
  if (size >= 1e-3 && size < 1e7) return String(Number(value.toPrecision(7)));
  return value.toExponential(3);
}
