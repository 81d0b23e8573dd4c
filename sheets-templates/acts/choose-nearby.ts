// Lengths next to those that were chosen. Stations and trays are whole, so nothing grows quite evenly with its length, and a step more of
// one planting, or of one at the cost of another, may gain. Each is tried as it is. Called by choose-amounts.ts.

/** So many lengths are tried at most: each is a branch worked out, some hundredths of a second on a large farm. */
const MOST_TRIED = 100;

/** Steps away at which lengths are tried: where a station takes several steps, a single one changes nothing. */
const AWAY = [1, 2, 3];

export interface Nearby<T> {
  /** One amount a planting, in the unit in which beds are measured out; and the most that each may be. */
  readonly amounts: readonly number[];
  readonly most: readonly number[];
  /** What they come to. */
  readonly comesTo: T;
  /** Beds are measured out in whole steps. */
  readonly step: number;
  /** Which plantings to try first, by their places. */
  readonly order: readonly number[];
  /** Whether amounts keep within what is to be kept within. */
  readonly fits: (amounts: readonly number[]) => boolean;
  /** Undefined where amounts can't be done. */
  readonly tried: (amounts: readonly number[]) => T | undefined;
  readonly isBetter: (one: T, other: T) => boolean;
}

/** The best found of the amounts given and those a few steps from them, and from what was found better; never worse than those given. */
export function bestNearby<T>({ amounts, most, comesTo, step, order, fits, tried, isBetter }: Nearby<T>) {
  let best = { amounts, comesTo };
  const known = new Set([amounts.join(' ')]);
  const moves = movesOf(order);
  // Round and round, until nothing has gained since a move was last tried.
  for (let since = 0, at = 0; since < moves.length && known.size <= MOST_TRIED; at = (at + 1) % moves.length) {
    since += 1;
    const next = moved(best.amounts, moves[at] ?? [], step);
    const key = next.join(' ');
    if (known.has(key) || !next.every((one, i) => one >= 0 && one <= (most[i] ?? 0)) || !fits(next)) continue;
    known.add(key);
    const found = tried(next);
    if (found === undefined || !isBetter(found, best.comesTo)) continue;
    best = { amounts: next, comesTo: found };
    since = 0;
  }
  return best;
}

/** By how many steps the planting at a place changes. */
type Move = readonly (readonly [place: number, steps: number])[];

/** One longer or shorter, and one longer for another that is shorter; the nearest first. */
function movesOf(order: readonly number[]): readonly Move[] {
  const alone = AWAY.flatMap((away) => order.flatMap((one): Move[] => [[[one, away]], [[one, -away]]]));
  const exchanged = AWAY.flatMap((more) =>
    AWAY.flatMap((less) =>
      order.flatMap((one) =>
        order.flatMap((other): Move[] =>
          one === other
            ? []
            : [
                [
                  [one, more],
                  [other, -less],
                ],
              ],
        ),
      ),
    ),
  );
  return [...alone, ...exchanged];
}

/** A length between two steps goes to the next of them first. */
function moved(amounts: readonly number[], move: Move, step: number): readonly number[] {
  const next = [...amounts];
  for (const [place, steps] of move) {
    const now = (amounts[place] ?? 0) / step;
    const from = steps > 0 ? Math.floor(now + 1e-6) : Math.ceil(now - 1e-6);
    next[place] = Number(((from + steps) * step).toFixed(1));
  }
  return next;
}
