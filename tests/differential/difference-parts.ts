// What the lists of known differences are written with: an entry, and how it looks at the arguments and results of a difference.

import { type Difference, errorKind } from './compare.ts';

/** Who is right: 'standard' and 'arithmetic' side with us, 'either' is a choice that the standard leaves open or is silent on. */
export type Support = 'standard' | 'arithmetic' | 'either';

export interface KnownDifference {
  /** Functions, operators, 'minus' and 'percent'. */
  readonly on: string;
  readonly why: string;
  readonly supports: Support;
  readonly applies: (difference: Difference) => boolean;
}

export function num({ args }: Difference, at: number): number {
  const value = args[at];
  return typeof value === 'number' ? value : Number.NaN;
}

export function numbersOf({ args }: Difference): readonly number[] {
  return args.filter((arg): arg is number => typeof arg === 'number');
}

export function textsOf({ args }: Difference): readonly string[] {
  return args.filter((arg): arg is string => typeof arg === 'string');
}

export function isFraction(x: number): boolean {
  return !Number.isNaN(x) && !Number.isInteger(x);
}

/** How far apart two numeric results lie; not-a-number where either is none. */
export function gap({ own, peer }: Difference): number {
  return typeof own === 'number' && typeof peer === 'number' ? Math.abs(own - peer) : Number.NaN;
}

export function peerFails(kind: string): (difference: Difference) => boolean {
  return ({ peer }) => errorKind(peer) === kind;
}

export function kinds(own: string, ...peer: readonly string[]): (difference: Difference) => boolean {
  return (one) => errorKind(one.own) === own && peer.includes(errorKind(one.peer) ?? '');
}

/** Whether x is a whole number, or a whole number and a half, but for binary dust; a quotient may hide its dust. */
export function isDusty(x: number): boolean {
  const twice = 2 * x;
  return Math.abs(twice - Math.round(twice)) <= 4e-14 * Math.max(1, Math.abs(twice));
}
