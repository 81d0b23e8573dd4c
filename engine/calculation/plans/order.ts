// How stored values of a type compare: numbers with dust forgiven, texts ignoring case. Used by the planner's operators,
// look-ups and conditions.

import type { Texts } from '../../values/texts.ts';
import type { ValueType } from '../../values/type.ts';

/** The order of two stored texts; undefined for types that compare as numbers. Equality alone is cheaper: `equality`. */
export function orderFor(
  type: ValueType,
  equality: boolean,
  texts: Texts,
): ((a: number, b: number) => number) | undefined {
  if (type.kind !== 'text' && type.kind !== 'choice') return undefined;
  if (equality) return (a, b) => (texts.fold(a) === texts.fold(b) ? 0 : 1);
  return (a, b) => {
    const [left, right] = [texts.text(a).toLowerCase(), texts.text(b).toLowerCase()];
    return left < right ? -1 : left > right ? 1 : 0;
  };
}
