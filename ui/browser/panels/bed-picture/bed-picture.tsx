// The planted bed to scale: a stretch from its end enlarged, with a scale bar and a handle between two places that can be
// dragged, and the whole bed small below it. The handle is for the pointer; the slider beside it does the same by key.

import { useId, useRef } from 'preact/hooks';
import { offsetVerdict, stationPositions } from '../../../engine/index.ts';
import { scaleBar } from '../drawing/scale.ts';
import { useWidth } from '../drawing/width.ts';
import { groupsIn, type PlantedBed, plantRadius, stretchOf } from './bed-layout.ts';

export interface BedPictureWishes {
  readonly bed: PlantedBed;
  /** In metres; sets the frame. */
  readonly usual: number | undefined;
  readonly units: 'us' | 'si';
  /** As shown: '6 in', '50 ft', '30 in'. */
  readonly words: { readonly spacing: string; readonly length: string; readonly width: string };
  readonly stations: number | undefined;
  /** Called with metres while the handle is dragged; undefined where nothing may be changed. */
  readonly onSpacing: ((metres: number) => void) | undefined;
  readonly onHold: () => void;
  readonly onRest: () => void;
}

export function BedPicture(wishes: BedPictureWishes) {
  const { bed, usual } = wishes;
  const says = wholeBedWords(wishes);
  return (
    <div class="bed-picture">
      <Stretch {...wishes} />
      <WholeBed bed={bed} stretch={stretchOf(bed, usual)} says={says} />
      <p class="picture-says">{says}</p>
    </div>
  );
}

/** How the picture is to be read, and what offset rows really do on this bed. */
export function BedNotes({ bed, spacing }: { readonly bed: PlantedBed; readonly spacing: string }) {
  const offset = offsetWords(bed, spacing);
  return (
    <div class="bed-notes">
      {offset === '' ? null : <p class="picture-says">{offset}</p>}
      <p class="picture-says">
        {bed.diameter === undefined
          ? 'In the picture, dots mark the places, not the size of the plants.'
          : 'In the picture, circles are bulbs of the mean size, to scale.'}{' '}
        Half a spacing stays free at each end of a row.
      </p>
    </div>
  );
}

function wholeBedWords({ bed, words, stations }: BedPictureWishes): string {
  const places = stations === undefined ? '' : `, ${stations} ${stations === 1 ? 'place' : 'places'}`;
  const rows = `${bed.rows} ${bed.pattern === 'offset' ? 'offset ' : ''}${bed.rows === 1 ? 'row' : 'rows'}`;
  return `Whole bed: ${words.length} by ${words.width}, ${rows}${places}.`;
}

/** What offset rows do on this bed, whether they are chosen or not. */
function offsetWords(bed: PlantedBed, spacing: string): string {
  const verdict = offsetVerdict(bed.length, bed.spacing, bed.rows);
  return bed.rows < 2 || verdict === '' ? '' : `At ${spacing}: ${verdict.charAt(0).toLowerCase()}${verdict.slice(1)}`;
}

/** Room around the bed, as a share of the picture's length. */
const EDGE = 0.03;
/** Room above the bed for the measure, in pixels. */
const MEASURE = 30;
const FOOT = 26;

function Stretch({ bed, usual, units, words, onSpacing, onHold, onRest }: BedPictureWishes) {
  const { ref, width } = useWidth<HTMLDivElement>();
  const stretch = stretchOf(bed, usual);
  const whole = stretch >= bed.length;
  const across = stretch * (1 + 2 * EDGE);
  /** Metres in a pixel. */
  const pixel = width > 0 ? across / width : 0.003;
  const left = -stretch * EDGE;
  const top = -MEASURE * pixel;
  const height = bed.width + (MEASURE + FOOT) * pixel;
  const hatch = useId();
  const clip = useId();
  const says = `Pattern drawn to scale: ${bed.rows} ${bed.pattern} rows, a place every ${words.spacing}.`;
  return (
    <div class="stretch" ref={ref}>
      <svg viewBox={`${left} ${top} ${across} ${height}`} role="img" aria-label={says}>
        <defs>
          <pattern
            id={hatch}
            width={6 * pixel}
            height={6 * pixel}
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <line class="hatch" x1="0" y1="0" x2="0" y2={6 * pixel} stroke-width={pixel} />
          </pattern>
          <clipPath id={clip}>
            <rect x={0} y={-bed.width} width={stretch} height={3 * bed.width} />
          </clipPath>
        </defs>
        <rect class="bed-soil" x={0} y={0} width={stretch} height={bed.width} />
        <rect class="bed-margin" fill={`url(#${hatch})`} x={0} y={0} width={bed.spacing / 2} height={bed.width} />
        <g clip-path={`url(#${clip})`}>
          <Plants bed={bed} until={stretch} pixel={pixel} />
        </g>
        <Edges stretch={stretch} width={bed.width} whole={whole} pixel={pixel} />
        <Bar across={stretch} units={units} y={bed.width + 10 * pixel} pixel={pixel} />
        <Measure
          spacing={bed.spacing}
          stretch={stretch}
          bedWidth={bed.width}
          pixel={pixel}
          words={words.spacing}
          left={left}
          {...{ onSpacing, onHold, onRest }}
        />
      </svg>
    </div>
  );
}

function Plants({ bed, until, pixel }: { readonly bed: PlantedBed; readonly until: number; readonly pixel: number }) {
  const radius = plantRadius(bed);
  const groups = groupsIn(bed, until);
  return (
    <g class="plants" stroke-width={pixel}>
      {groups.map(({ station, plants }) =>
        plants.length === 0 ? (
          <circle key={`${station.x} ${station.y}`} class="no-plant" cx={station.x} cy={station.y} r={2 * pixel} />
        ) : (
          plants.map(({ x, y }) => <circle key={`${x} ${y}`} cx={x} cy={y} r={Math.max(radius, 1.2 * pixel)} />)
        ),
      )}
    </g>
  );
}

/** The bed's own edges in full; the cut where the stretch ends is broken. */
function Edges(wishes: {
  readonly stretch: number;
  readonly width: number;
  readonly whole: boolean;
  readonly pixel: number;
}) {
  const { stretch, width, whole, pixel } = wishes;
  return (
    <g class="bed-edge" stroke-width={1.5 * pixel}>
      <path d={`M${stretch} 0H0V${width}H${stretch}`} />
      <path
        d={`M${stretch} 0V${width}`}
        stroke-dasharray={whole ? undefined : `${4 * pixel} ${4 * pixel}`}
        class={whole ? undefined : 'bed-cut'}
      />
    </g>
  );
}

interface BarWishes {
  readonly across: number;
  readonly units: 'us' | 'si';
  readonly y: number;
  readonly pixel: number;
}

function Bar({ across, units, y, pixel }: BarWishes) {
  const bar = scaleBar(across, units);
  if (bar === undefined) return null;
  const tick = 4 * pixel;
  return (
    <g class="scale-bar">
      <path
        stroke-width={1.5 * pixel}
        d={`M0 ${y - tick}V${y + tick}M0 ${y}H${bar.length}M${bar.length} ${y - tick}V${y + tick}`}
      />
      <text
        class="picture-label"
        x={bar.length + 6 * pixel}
        y={y + 4.5 * pixel}
        style={{ fontSize: `${13 * pixel}px` }}
      >
        {bar.label}
      </text>
    </g>
  );
}

interface MeasureWishes {
  readonly spacing: number;
  readonly stretch: number;
  readonly bedWidth: number;
  readonly pixel: number;
  readonly words: string;
  readonly left: number;
  readonly onSpacing: BedPictureWishes['onSpacing'];
  readonly onHold: () => void;
  readonly onRest: () => void;
}

/** From the first place to the second, with the handle on the second. */
function Measure({ spacing, stretch, bedWidth, pixel, words, left, onSpacing, onHold, onRest }: MeasureWishes) {
  const from = spacing / 2;
  const to = spacing * 1.5;
  const frame = useRef(0);
  const y = -11 * pixel;
  if (to > stretch) return null;
  const toMetres = (event: PointerEvent): number | undefined => {
    if (!(event.currentTarget instanceof SVGElement)) return undefined;
    const box = event.currentTarget.ownerSVGElement?.getBoundingClientRect();
    return box === undefined ? undefined : (left + (event.clientX - box.left) * pixel) / 1.5;
  };
  const drag = (event: PointerEvent): void => {
    if (!(event.currentTarget instanceof SVGElement) || !event.currentTarget.hasPointerCapture(event.pointerId)) return;
    const metres = toMetres(event);
    if (metres === undefined) return;
    cancelAnimationFrame(frame.current);
    frame.current = requestAnimationFrame(() => onSpacing?.(metres));
  };
  return (
    <g class="measure">
      <path
        class="measure-line"
        stroke-width={1.5 * pixel}
        d={`M${from} ${y}H${to}M${from} ${y - 5 * pixel}V${bedWidth / 2}M${to} ${y}V${bedWidth}`}
      />
      <text
        class="measure-text"
        x={to + 14 * pixel}
        y={y + 4.5 * pixel}
        style={{ fontSize: `${13 * pixel}px`, strokeWidth: `${4 * pixel}px` }}
      >
        {words}
      </text>
      {onSpacing === undefined ? null : (
        <g
          class="measure-handle"
          onPointerDown={(event) => {
            event.preventDefault();
            event.currentTarget.setPointerCapture(event.pointerId);
            onHold();
          }}
          onPointerMove={drag}
          onPointerUp={(event) => {
            event.currentTarget.releasePointerCapture(event.pointerId);
            requestAnimationFrame(() => onRest());
          }}
          onPointerCancel={() => onRest()}
        >
          <rect
            class="handle-room"
            x={to - 22 * pixel}
            y={-MEASURE * pixel}
            width={44 * pixel}
            height={bedWidth + MEASURE * pixel}
          />
          <circle class="handle-knob" cx={to} cy={y} r={8 * pixel} stroke-width={2 * pixel} />
        </g>
      )}
    </g>
  );
}

/** So many places are drawn one by one; beyond, rows stand as lines. */
const MOST_PLACES = 6_000;

function WholeBed({
  bed,
  stretch,
  says,
}: {
  readonly bed: PlantedBed;
  readonly stretch: number;
  readonly says: string;
}) {
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
