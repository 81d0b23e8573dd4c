// Parts of the page's code that acts are done with, fetched when the first of them asks.

/**
 * What fetches a part once. Acts that ask for it are done in the order in which they asked, also while it is on its way: a browser
 * may give one part that is imported twice to the second that asked before the first. A part that didn't come is fetched again.
 */
export function part<T>(fetch: () => Promise<T>): () => Promise<T> {
  let coming: Promise<T> | undefined;
  const again = (problem: unknown): never => {
    coming = undefined;
    throw problem;
  };
  return () => {
    coming ??= fetch().catch(again);
    return coming;
  };
}
