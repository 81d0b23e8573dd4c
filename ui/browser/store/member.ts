// A look into data of which nothing is known: what the browser kept for the page.

/** What stands under a name; undefined where there is no such thing, or nothing that could have one. */
export function member(from: unknown, name: string): unknown {
  return typeof from === 'object' && from !== null ? Reflect.get(from, name) : undefined;
}
