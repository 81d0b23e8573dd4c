// Things under what they have in common. Pure; lists of sheets and columns, pages for paper and the phone's day call it.

/** Each group where its first thing stands, its things in the order in which they came. */
export function grouped<T>(things: readonly T[], nameOf: (thing: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const thing of things) {
    const name = nameOf(thing);
    const group = groups.get(name);
    if (group === undefined) groups.set(name, [thing]);
    else group.push(thing);
  }
  return groups;
}
