// How fast something scrolls by itself while a pointer that drags is past an edge of it: the grid and the season calendar.

/** Pixels a frame at most. */
const FASTEST = 40;

/** How far past an edge, as pixels a frame, faster the further: 0 between the edges, below zero before the first. */
export function edgeSpeed(value: number, from: number, to: number): number {
  if (value < from) return -speedFor(from - value);
  return value > to ? speedFor(value - to) : 0;
}

function speedFor(distance: number): number {
  return Math.min(FASTEST, Math.max(2, Math.round(distance / 3)));
}
