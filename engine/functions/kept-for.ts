// What is worked out once for a whole column, however many rows ask for it. Called by the functions of standard/ and trade/.

import type { Scalar } from '../values/error.ts';

/** Makes of a thing what is asked for, once: kept for as long as the thing itself, which nobody may change. */
export function keptFor<K extends object, T>(make: (of: K) => T): (of: K) => T {
  const kept = new WeakMap<K, { readonly made: T }>();
  return (of) => {
    let found = kept.get(of);
    if (found === undefined) {
      found = { made: make(of) };
      kept.set(of, found);
    }
    return found.made;
  };
}

/** The values of a column as numbers, not-a-number where one is none. */
export const numbersIn: (list: readonly Scalar[]) => Float64Array = keptFor((list: readonly Scalar[]) => {
  const made = new Float64Array(list.length);
  for (let i = 0; i < made.length; i++) {
    const value = list[i];
    made[i] = typeof value === 'number' ? value : Number.NaN;
  }
  return made;
});
