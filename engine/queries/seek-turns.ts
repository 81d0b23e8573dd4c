// Turns of a figure between two even steps of a seek: where it comes nearer to the goal than at both neighbours, all three on one
// side of it, it may touch the goal, or pass it and come back. Called by seek.ts.

/** A figure as it was tried at a value of the input. */
export interface Tried {
  readonly at: number;
  readonly figure: number | undefined;
  /** -1 below the goal, 0 at it, 1 above it; undefined where there is no figure. */
  readonly side: number | undefined;
}

/** The share of a stretch at which a turn is looked for: one of two places tried stays of use when the stretch is narrowed. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Narrowings of a stretch: to about a hundred-millionth of two even steps. */
const NARROWINGS = 36;
/** So many are looked into at most, the nearest to the goal: a figure of many small steps turns everywhere. */
const MOST_TURNS = 4;

interface Trying {
  /** Stretches are narrowed no further. */
  readonly finest: number;
  readonly inWholes: boolean;
  tryAt(at: number): Tried;
  /** Whether the figure of a turn that stays on its side of the goal is at it all the same. */
  touches(turn: Tried): boolean;
}

/** At each turn the place at the goal or beyond it that was found, else the nearest to it, which may touch it. */
export function turnsIn(tried: readonly Tried[], trying: Trying): readonly Tried[] {
  return tried
    .flatMap((middle, i) => {
      const [left, right] = [tried[i - 1], tried[i + 1]];
      return left !== undefined && right !== undefined && isTurn(left, middle, right) ? [{ left, middle, right }] : [];
    })
    .sort((a, b) => nearness(b.middle) - nearness(a.middle))
    .slice(0, MOST_TURNS)
    .map(({ left, middle, right }) => narrowed(left, middle, right, trying));
}

function isTurn(left: Tried, { side, ...middle }: Tried, right: Tried): boolean {
  if (side === undefined || side === 0 || left.side !== side || right.side !== side) return false;
  const [before, here, after] = [nearness(left), nearness({ side, ...middle }), nearness(right)];
  return here >= before && here >= after && (here > before || here > after);
}

/** Higher is nearer to the goal, among figures on one side of it. */
function nearness({ figure = Number.NaN, side = 0 }: Tried): number {
  return -side * figure;
}

function narrowed(left: Tried, middle: Tried, right: Tried, trying: Trying): Tried {
  const { finest, inWholes, tryAt, touches } = trying;
  const known = new Map<number, Tried>();
  const at = (place: number): Tried => {
    const wanted = inWholes ? Math.round(place) : place;
    const found = known.get(wanted) ?? tryAt(wanted);
    known.set(wanted, found);
    return found;
  };
  let [low, high] = [left.at, right.at];
  let one = at(high - (high - low) * GOLDEN);
  let other = at(low + (high - low) * GOLDEN);
  let best = middle;
  const nearest = (): Tried => (touches(best) ? { ...best, side: 0 } : best);
  for (let i = 0; i < NARROWINGS && high - low > finest && one.at < other.at; i++) {
    for (const point of [one, other]) {
      if (point.side === undefined) return nearest();
      if (point.side !== middle.side) return point;
      if (nearness(point) > nearness(best)) best = point;
    }
    if (nearness(one) >= nearness(other)) {
      high = other.at;
      other = one;
      one = at(high - (high - low) * GOLDEN);
    } else {
      low = one.at;
      one = other;
      other = at(low + (high - low) * GOLDEN);
    }
  }
  return nearest();
}
