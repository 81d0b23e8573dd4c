// What both maps of beds are drawn with, that by field and that on the ground: the drawing around the beds, and a bed as a strip
// with what stands along it: boxes on a line, so that what is free is told from what is planted without colour. Lengths of beds in metres, all else in pixels.

import type { ComponentChildren } from 'preact';
import { Hatches } from '../kit/frame.tsx';
import type { BedOnMap } from './bed-map.ts';

interface MapSvgProps {
  /** For the hatches, which are the page's by name. */
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly says: string;
  readonly children: ComponentChildren;
}

export function MapSvg({ id, width, height, says, children }: MapSvgProps) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing has no element of its own for parts that belong together
    <svg
      class="bed-map"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="group"
      aria-label={says}
    >
      <Hatches id={id} />
      {children}
    </svg>
  );
}

/** Of the bar that says what is being picked; lower on a narrow bed, so that a name has room above it. */
const PICKING = 4;
const PICKING_SHARE = 1 / 6;
/** Free ground is a line with ends so high; what stands on it are boxes. */
const END = 6;

interface BedStripProps {
  readonly bed: BedOnMap;
  readonly left: number;
  readonly top: number;
  readonly tall: number;
  readonly perMetre: number;
  readonly id: string;
  /** Nobody said that it lies there. */
  readonly isGuess?: boolean;
}

export function BedStrip({ bed, left, top, tall, perMetre, id, isGuess = false }: BedStripProps) {
  const { length, pieces, over, cover } = bed;
  const picking = Math.min(PICKING, tall * PICKING_SHARE);
  return (
    <>
      <rect
        class={cover === '' ? 'map-ground' : 'map-ground mark-cover'}
        stroke-dasharray={isGuess && cover !== '' ? '4 3' : undefined}
        x={left}
        y={top}
        width={length * perMetre}
        height={tall}
      />
      {cover === '' ? (
        <path
          class="free-ground"
          stroke-dasharray={isGuess ? '4 3' : undefined}
          d={`M${left} ${top + tall - END}V${top + tall}H${left + length * perMetre}V${top + tall - END}`}
        />
      ) : null}
      {cover !== '' && pieces.length === 0 ? (
        <rect fill={`url(#${id}-cover)`} x={left} y={top} width={length * perMetre} height={tall} />
      ) : null}
      {pieces.map((piece) => (
        <g key={piece.planting}>
          <rect
            class="mark-planted"
            x={left + piece.at * perMetre}
            y={top}
            width={Math.max(2, piece.length * perMetre)}
            height={tall}
          />
          {piece.picking ? (
            <rect
              class="mark-harvest"
              x={left + piece.at * perMetre}
              y={top + tall - picking}
              width={Math.max(2, piece.length * perMetre)}
              height={picking}
            />
          ) : null}
        </g>
      ))}
      {over > 1e-6 ? (
        <rect
          class="overfull"
          fill={`url(#${id}-over)`}
          x={left + length * perMetre}
          y={top}
          width={over * perMetre}
          height={tall}
        />
      ) : null}
    </>
  );
}
