// A bed through its season: what stands where along it and when, and how much of it is free from when to when. Lengths in
// metres, days as civil days, a planting's last day not counted. Pure; the bed's picture calls it.

/** A planting that takes a length of the bed from one day until before another. */
export interface Occupant {
  readonly name: string;
  readonly length: number;
  readonly from: number;
  readonly until: number;
}

/** Something with a place along the bed: `at` is where it begins. */
export type Placed<O extends Occupant = Occupant> = O & { readonly at: number };

/** A stretch of days on which the same length is free; below zero where more is planted than the bed is long. */
export interface FreeTime {
  readonly from: number;
  readonly until: number;
  readonly free: number;
}

/** Each occupant in the first place along the bed that is free for all of its days; past the bed's end where none is. */
export function placeAlong<O extends Occupant>(occupants: readonly O[]): readonly Placed<O>[] {
  const placed: Placed<O>[] = [];
  for (const occupant of [...occupants].sort((a, b) => a.from - b.from || b.until - a.until)) {
    const beside = placed
      .filter((other) => other.from < occupant.until && occupant.from < other.until)
      .sort((a, b) => a.at - b.at);
    let at = 0;
    for (const other of beside) {
      if (at + occupant.length <= other.at + 1e-9) break;
      at = Math.max(at, other.at + other.length);
    }
    placed.push({ ...occupant, at });
  }
  return placed;
}

/** The bed's free length through the days from `first` until before `end`, neighbouring days alike in one piece. */
export function freeTimes(
  occupants: readonly Occupant[],
  length: number,
  first: number,
  end: number,
): readonly FreeTime[] {
  const turns = new Set([first, ...occupants.flatMap(({ from, until }) => [from, until])]);
  const starts = [...turns].filter((day) => day >= first && day < end).sort((a, b) => a - b);
  const pieces: FreeTime[] = [];
  starts.forEach((from, index) => {
    const used = occupants
      .filter((occupant) => occupant.from <= from && from < occupant.until)
      .reduce((sum, occupant) => sum + occupant.length, 0);
    const free = length - used;
    const until = starts[index + 1] ?? end;
    const before = pieces.at(-1);
    if (before !== undefined && Math.abs(before.free - free) < 1e-9) pieces.splice(-1, 1, { ...before, until });
    else pieces.push({ from, until, free });
  });
  return pieces;
}
