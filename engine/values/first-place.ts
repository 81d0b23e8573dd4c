// Looking for a place in a list in order by halving it.

/** The first place from one up to another of which `isBefore` no longer holds; it holds of all places before some one, and of none from it on. */
export function firstPlace(from: number, to: number, isBefore: (place: number) => boolean): number {
  let low = from;
  let high = to;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (isBefore(middle)) low = middle + 1;
    else high = middle;
  }
  return low;
}
