// How a planted bed is laid out on its picture: where each place lies, how many plants stand in each group and where, and
// which stretch is shown enlarged. Metres throughout. Pure; the bed picture calls it.

import { type Layout, type Pattern, type Station, stationPositions } from '../../../../engine/index.ts';

/** A planted bed as its picture needs it. */
export interface PlantedBed {
  readonly length: number;
  readonly width: number;
  readonly spacing: number;
  readonly rows: number;
  readonly pattern: Pattern;
  /** Seeds or plants in one place; 3.5 is half threes and half fours. */
  readonly perStation: number;
  /** Of one plant or bulb at harvest; undefined where it isn't known. */
  readonly diameter: number | undefined;
}

export interface Group {
  readonly station: Station;
  readonly plants: readonly Station[];
}

/** At most so many plants are drawn in one group. */
const MOST_IN_A_GROUP = 12;

/**
 * The groups of a stretch that begins at the bed's end. A picture this long holds all places of a row whose middle lies in
 * it.
 */
export function groupsIn(bed: PlantedBed, until: number): readonly Group[] {
  const { perStation } = bed;
  const radius = plantRadius(bed);
  return stationPositions(cut(bed, until)).flatMap((station, index) => {
    if (station.x - bed.spacing / 2 > until) return [];
    const plants = ring(countAt(index, perStation), radius).map(({ x, y }) => ({ x: station.x + x, y: station.y + y }));
    return [{ station, plants }];
  });
}

/** The bed no longer than the picture needs, so that a long bed costs no more than a short one. */
function cut(bed: PlantedBed, until: number): Layout {
  const needed = (Math.floor(until / bed.spacing) + 3) * bed.spacing;
  return { ...bed, length: Math.min(bed.length, needed) };
}

/** Plants in the group at an index, so that groups of two sizes alternate as evenly as they can. */
export function countAt(index: number, perStation: number): number {
  if (!(perStation > 0)) return 0;
  const count = Math.floor((index + 1) * perStation + 1e-9) - Math.floor(index * perStation + 1e-9);
  return Math.min(MOST_IN_A_GROUP, count);
}

/** Half the diameter where it is known, else a dot that leaves room between places. */
export function plantRadius({ diameter, spacing, width, rows }: PlantedBed): number {
  if (diameter !== undefined && diameter > 0) return diameter / 2;
  const room = Math.min(spacing, rows > 0 ? width / rows : spacing);
  return Math.min(0.011, room * 0.16);
}

/** Where the plants of one group stand about its middle: touching in a ring, one of more than five in the middle. */
export function ring(count: number, radius: number): readonly Station[] {
  if (count <= 0) return [];
  if (count === 1) return [{ x: 0, y: 0 }];
  const inMiddle = count > 5;
  const around = inMiddle ? count - 1 : count;
  const reach = Math.max(radius / Math.sin(Math.PI / around), inMiddle ? 2 * radius : 0);
  const places = Array.from({ length: around }, (_, index) => {
    const angle = (2 * Math.PI * index) / around - Math.PI / 2;
    return { x: reach * Math.cos(angle), y: reach * Math.sin(angle) };
  });
  return inMiddle ? [{ x: 0, y: 0 }, ...places] : places;
}

/**
 * How much of the bed the enlarged picture shows: twelve usual spacings, but from one to two bed widths so that it is
 * neither a strip nor a tower, and never fewer than four spacings nor more than the bed. It doesn't follow today's
 * spacing, so that the pattern moves and the frame stands still.
 */
export function stretchOf(bed: PlantedBed, usual: number | undefined): number {
  const spacing = usual ?? bed.spacing;
  const legible = Math.min(2 * bed.width, Math.max(bed.width, 12 * spacing));
  return Math.min(bed.length, Math.max(legible, 4 * spacing));
}
