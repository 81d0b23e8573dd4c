// The whole bed small, with a mark for every place and a frame around the stretch that is shown enlarged.

import { stationPositions } from '../../../../engine/index.ts';
import type { PlantedBed } from './bed-layout.ts';

/** So many places are drawn one by one; beyond, rows stand as lines. */
const MOST_PLACES = 6_000;

export interface WholeBedProps {
  readonly bed: PlantedBed;
  /** The length that the picture above shows enlarged, in metres. */
  readonly stretch: number;
  readonly says: string;
}

export function WholeBed({ bed, stretch, says }: WholeBedProps) {
  const { length, width, spacing, rows } = bed;
  const dot = Math.min(spacing, width / rows) * 0.4;
  const places = (length / spacing) * rows <= MOST_PLACES;
  const path = places
    ? stationPositions(bed)
        .map(({ x, y }) => `M${round(x)} ${round(y)}h.001`)
        .join('')
    : Array.from(
        { length: Math.floor(rows) },
        (_, row) => `M${spacing / 2} ${round(((row + 0.5) * width) / rows)}H${length - spacing / 2}`,
      ).join('');
  const rim = length * 0.004;
  return (
    <svg
      class="whole-bed"
      viewBox={`${-rim} ${-rim} ${length + 2 * rim} ${width + 2 * rim}`}
      role="img"
      aria-label={says}
      preserveAspectRatio="xMidYMid meet"
    >
      <rect class="bed-soil" x={0} y={0} width={length} height={width} />
      <path class="whole-places" d={path} stroke-width={dot} />
      <rect class="whole-edge" x={0} y={0} width={length} height={width} stroke-width={rim / 2} />
      {stretch < length ? (
        <rect class="whole-stretch" x={0} y={0} width={stretch} height={width} stroke-width={rim * 1.5} />
      ) : null}
    </svg>
  );
}

function round(metres: number): number {
  return Math.round(metres * 1000) / 1000;
}
