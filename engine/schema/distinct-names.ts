// Names under which sheets, and the columns of one sheet, can be told apart: formulas are checked by names, so each must have one
// of its own. The template's stand first. What a person called so as well, before the template did or in another copy, is shown
// under a free name beside it, and has its own again once that is free. Called by overlay.ts,
// and by the commands that take in names.

import { freeName } from './free-name.ts';

interface Named {
  readonly id: string;
  readonly name: string;
}

/** Names are told apart by this: case makes no difference, nor whether an accent is part of its letter. */
export function asTold(name: string): string {
  return name.normalize().toLowerCase();
}

/** Whether one of these, but for that of the id `own`, has the name. */
export function isTaken(name: string, among: readonly Named[], own: string | undefined): boolean {
  return among.some((one) => one.id !== own && asTold(one.name) === asTold(name));
}

/** The things in their order; `isOwn` says which a person named. Of two that persons named, the one with the earlier id keeps its name. */
export function distinctNames<T extends Named>(things: readonly T[], isOwn: (thing: T) => boolean): readonly T[] {
  const taken = new Set<string>();
  const take = (name: string): boolean => taken.size < taken.add(asTold(name)).size;
  const own = things.filter(isOwn).toSorted((a, b) => (a.id < b.id ? -1 : 1));
  const twice = [...things.filter((one) => !isOwn(one)), ...own].filter(({ name }) => !take(name));
  const names = new Map(twice.map(({ id, name }) => [id, freeName(name, (one) => !take(one))]));
  return names.size === 0 ? things : things.map((one) => ({ ...one, name: names.get(one.id) ?? one.name }));
}
