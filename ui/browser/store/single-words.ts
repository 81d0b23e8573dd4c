// Single words that the browser remembers for this page: the choice of colours, who works here. Nothing where it remembers
// nothing, because site data is blocked or full. Anything in ui/browser may call it; it calls nothing.

/** The word of a name; undefined where there is none. */
export function remembered(name: string): string | undefined {
  try {
    return localStorage.getItem(name) ?? undefined;
  } catch {
    return undefined;
  }
}

/** Remembers it as well as the browser lets us. */
export function remember(name: string, word: string): void {
  try {
    localStorage.setItem(name, word);
  } catch {
    // It is for this visit then.
  }
}
