// The nearest name to a misspelt one, by edit distance (Damerau 1964, CACM 7:171, in its restricted form: letters
// changed, added, dropped or swapped with their neighbour). Pure text; called wherever a name is not found.

/** How many letters must be changed, added, dropped or swapped with a neighbour to make `b` of `a`. */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last: number[] = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = (last[j - 1] as number) + (a.charAt(i - 1) === b.charAt(j - 1) ? 0 : 1);
      const swaps = a.charAt(i - 1) === b.charAt(j - 2) && a.charAt(i - 2) === b.charAt(j - 1);
      const swapped = swaps ? (beforeLast[j - 2] as number) + 1 : Number.POSITIVE_INFINITY;
      row.push(Math.min(changed, swapped, (last[j] as number) + 1, (row[j - 1] as number) + 1));
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length] as number;
}

/**
 * The candidate nearest to `name`, case aside; undefined where none is within a third of its length. Of several equally
 * near ones the first. A name that begins with all of `name` (three letters or more) counts as one letter away.
 */
export function nearestName(name: string, candidates: Iterable<string>): string | undefined {
  const wanted = name.toLowerCase();
  let nearest: string | undefined;
  let least = Math.max(1, Math.floor(wanted.length / 3)) + 1;
  for (const candidate of candidates) {
    const lower = candidate.toLowerCase();
    const begins = wanted.length >= 3 && lower.startsWith(wanted) && lower !== wanted;
    if (!begins && Math.abs(lower.length - wanted.length) >= least) continue;
    const distance = begins ? 1 : editDistance(wanted, lower);
    if (distance < least) {
      least = distance;
      nearest = candidate;
    }
  }
  return nearest;
}
