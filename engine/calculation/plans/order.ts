// How stored values of a type compare: numbers with dust forgiven, texts ignoring case. Used by the planner's operators,
// look-ups and conditions.

import type { Texts } from '../../values/texts.ts';
import type { ValueType } from '../../values/type.ts';
import type { Order } from '../kernels/compare-kernels.ts';

/** The order of two stored texts; undefined for types that compare as numbers. Equality alone, which is cheaper, needs no order. */
export function orderFor(type: ValueType, equality: boolean, texts: Texts): Order | undefined {
  if (type.kind !== 'text' && type.kind !== 'choice') return undefined;
  return equality ? texts : (a, b) => texts.order(a, b);
}
