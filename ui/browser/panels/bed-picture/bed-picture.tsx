// The planted bed to scale: a stretch from its end enlarged, with a scale bar and a handle between two places that can be
// dragged, and the whole bed small below it. The handle is for the pointer; the slider beside it does the same by key.

import { useId, useRef } from 'preact/hooks';
import type { Station } from '../../../../engine/index.ts';
import { scaleBar } from '../../drawing/scale.ts';
import { useWidth } from '../../drawing/width.ts';
import { groupsIn, type PlantedBed, plantRadius, stretchOf } from './bed-layout.ts';
import { WholeBed } from './whole-bed.tsx';

export interface BedPictureProps {
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

export function BedPicture(props: BedPictureProps) {
  const { bed, usual } = props;
  const says = wholeBedWords(props);
  return (
    <div class="bed-picture">
      <Stretch {...props} />
      <WholeBed bed={bed} stretch={stretchOf(bed, usual)} says={says} />
      <p class="picture-says">{says}</p>
    </div>
  );
}

function wholeBedWords({ bed, words, stations }: BedPictureProps): string {
  const places = stations === undefined ? '' : `, ${stations} ${stations === 1 ? 'place' : 'places'}`;
  const rows = `${bed.rows} ${bed.pattern === 'offset' ? 'offset ' : ''}${bed.rows === 1 ? 'row' : 'rows'}`;
  return `Whole bed: ${words.length} by ${words.width}, ${rows}${places}.`;
}

/** Room around the bed, as a share of the picture's length. */
const EDGE = 0.03;
/** Room above the bed for the measure, in pixels. */
const MEASURE = 30;
const FOOT = 26;

function Stretch({ bed, usual, units, words, onSpacing, onHold, onRest }: BedPictureProps) {
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
  const plants = groups.flatMap((group) => group.plants);
  const empty = groups.flatMap((group) => (group.plants.length === 0 ? [group.station] : []));
  return (
    <g class="plants" stroke-width={pixel}>
      <path class="planted" d={circles(plants, Math.max(radius, 1.2 * pixel))} />
      <path class="no-plant" d={circles(empty, 2 * pixel)} />
    </g>
  );
}

/** Circles as one path: while the spacing is dragged a hundred elements would be made and placed at every frame. */
function circles(middles: readonly Station[], radius: number): string {
  const arc = (across: number): string => `a${round(radius)} ${round(radius)} 0 1 0 ${round(across)} 0`;
  const circle = `${arc(2 * radius)}${arc(-2 * radius)}Z`;
  return middles.map(({ x, y }) => `M${round(x - radius)} ${round(y)}${circle}`).join('');
}

/** To a tenth of a millimetre: finer than a pixel, and short to write. */
function round(metres: number): number {
  return Math.round(metres * 10_000) / 10_000;
}

/** The bed's own edges in full; the cut where the stretch ends is broken. */
function Edges(props: {
  readonly stretch: number;
  readonly width: number;
  readonly whole: boolean;
  readonly pixel: number;
}) {
  const { stretch, width, whole, pixel } = props;
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

interface BarProps {
  readonly across: number;
  readonly units: 'us' | 'si';
  readonly y: number;
  readonly pixel: number;
}

function Bar({ across, units, y, pixel }: BarProps) {
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

interface MeasureProps {
  readonly spacing: number;
  readonly stretch: number;
  readonly bedWidth: number;
  readonly pixel: number;
  readonly words: string;
  readonly left: number;
  readonly onSpacing: BedPictureProps['onSpacing'];
  readonly onHold: () => void;
  readonly onRest: () => void;
}

/** From the first place to the second, with the handle on the second. */
function Measure({ spacing, stretch, bedWidth, pixel, words, left, onSpacing, onHold, onRest }: MeasureProps) {
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
