// Comparisons of sums. Equality forgives binary dust at the size of the given values, as OpenFormula allows (ODF 1.3 part 4, 6.4.7).
// Where they are differences the given values are their terms, not the little that is left of them, so what is subtracted is taken
// over to the other side: 1 - 0.9 - 0.1 = 0 is asked as 1 = 0.9 + 0.1. Called by operators.ts alone.

import type { Typed } from './typed.ts';

interface Terms {
  readonly added: Typed[];
  readonly subtracted: Typed[];
}

function collect(typed: Typed, into: Terms): void {
  if (typed.node === 'negate') collect(typed.operand, { added: into.subtracted, subtracted: into.added });
  else if (typed.node === 'binary' && (typed.operator === '+' || typed.operator === '-')) {
    collect(typed.left, into);
    collect(typed.right, typed.operator === '+' ? into : { added: into.subtracted, subtracted: into.added });
  } else into.added.push(typed);
}

function termsOf(typed: Typed): Terms {
  const terms: Terms = { added: [], subtracted: [] };
  collect(typed, terms);
  return terms;
}

function isDifference({ added, subtracted }: Terms): boolean {
  return added.length > 0 && subtracted.length > 0;
}

/** Dates are whole days and carry no dust. */
function mayCarryDust({ added, subtracted }: Terms): boolean {
  return [...added, ...subtracted].every(({ type }) => type.kind === 'number' || type.kind === 'temperature');
}

function isZero(typed: Typed): boolean {
  return typed.node === 'constant' && typed.value === 0 && typed.type.kind === 'number';
}

/** The terms added up, a nought written out left away; a temperature and differences make a temperature. */
function sumOf(terms: readonly Typed[], at: Typed): Typed {
  const counting = terms.filter((term) => !isZero(term));
  return (counting.length > 0 ? counting : terms).reduce((left, right) => ({
    node: 'binary',
    operator: '+',
    left,
    right,
    type: right.type.kind === 'temperature' ? right.type : left.type,
    from: at.from,
    to: at.to,
  }));
}

/** The two sides of a comparison with what is subtracted on either added to the other; as they are where neither is a difference. */
export function acrossTheSign(left: Typed, right: Typed): readonly [Typed, Typed] {
  const [one, other] = [termsOf(left), termsOf(right)];
  if (!(isDifference(one) || isDifference(other)) || !mayCarryDust(one) || !mayCarryDust(other)) return [left, right];
  return [sumOf([...one.added, ...other.subtracted], left), sumOf([...one.subtracted, ...other.added], right)];
}
