// What the floor's sums over plantings have in common: a planting's share is taken out before it changes and put in again after, so
// that an edit costs that planting's days and weeks. Floats drift by it, far below what agree.ts forgives.

export interface Part {
  /** Takes out a planting's share. */
  take(row: number): void;
  /** Puts in a planting's share, by the columns as they stand. */
  put(row: number): void;
  /** Brings what follows from the sums up to date. */
  finish(): void;
  /** As if nothing were put in yet. */
  clear(): void;
}

/** The weeks that a sheet has a row for. */
export interface Weeks {
  /** The Monday, or first day, of each. */
  readonly first: number;
  readonly count: number;
}

/** The first and last week that days from one to another, both counted, fall in; none where `last` is below `first`. */
export function weeksOf({ first, count }: Weeks, from: number, to: number): readonly [number, number] {
  if (Number.isNaN(from + to)) return [0, -1];
  return [Math.max(0, Math.floor((from - first) / 7)), Math.min(count - 1, Math.floor((to - first) / 7))];
}
