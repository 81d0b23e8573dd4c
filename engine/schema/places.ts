// Where sheets and columns stand that a person added or moved: each right after another thing, which its `after` names. Laying
// them in order, and what has to hang elsewhere so that one thing moves and the others stay. Pure; overlay.ts and the commands call it.

import type { After } from './own.ts';

/** `after` undefined: where the template has it. */
export interface Place {
  readonly id: string;
  readonly after: After | undefined;
}

/**
 * Things in order: those without a place of their own as they come, the others right after the one they name. Of several
 * at one place the one with the later id comes first; what names nothing that is there, or each other, comes last.
 */
export function inPlace<T extends Place>(things: readonly T[]): readonly T[] {
  const order = things.filter(({ after }) => after === undefined);
  let waiting = things.filter(({ after }) => after !== undefined).toSorted((a, b) => (a.id < b.id ? -1 : 1));
  while (waiting.length > 0) {
    const left: T[] = [];
    for (const one of waiting) {
      const at = one.after === null ? -1 : order.findIndex(({ id }) => id === one.after);
      if (at < 0 && one.after !== null) left.push(one);
      else order.splice(at + 1, 0, one);
    }
    if (left.length === waiting.length) return [...order, ...left];
    waiting = left;
  }
  return order;
}

/**
 * What hangs elsewhere once one of some things, given in their order, stands behind `to` (null, or one that is not among them:
 * in front) or, `to` undefined, is gone, and all others stand as they did. What hung on it hangs on what it stood behind.
 */
export function rehung(things: readonly Place[], moved: string, to: After | undefined): ReadonlyMap<string, After> {
  const ids = things.map(({ id }) => id);
  const wanted = ids.filter((id) => id !== moved);
  const hung = new Map(things.map(({ id, after }) => [id, after]));
  const before = ids[ids.indexOf(moved) - 1] ?? null;
  for (const { id, after } of things) if (after === moved) hung.set(id, before);
  if (to !== undefined) {
    const at = wanted.indexOf(to ?? '');
    hung.set(moved, wanted[at] ?? null);
    wanted.splice(at + 1, 0, moved);
  }
  const previous = (id: string): After => wanted[wanted.indexOf(id) - 1] ?? null;
  // Where several hang on one thing, or on nothing that is there, some hang on what stands before them, until all stand right:
  // each turn settles one more, and when all are settled the order is the wanted one.
  for (;;) {
    const order = inPlace(wanted.map((id) => ({ id, after: hung.get(id) })));
    const at = order.findIndex(({ id }, i) => id !== wanted[i]);
    const loose = [wanted[at], order[at]?.id, ...wanted].find(
      (id) => id !== undefined && hung.get(id) !== undefined && hung.get(id) !== previous(id),
    );
    if (at < 0 || loose === undefined) break;
    hung.set(loose, previous(loose));
  }
  const changed = things.flatMap(({ id, after }): [string, After][] => {
    const now = hung.get(id);
    return now === undefined || now === after || (id === moved && to === undefined) ? [] : [[id, now]];
  });
  return new Map(changed);
}
