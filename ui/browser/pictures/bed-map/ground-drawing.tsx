// The beds where they lie on the ground, to scale; each is dragged to its place, or moved there with the arrows while it is chosen.

import { useId, useState } from 'preact/hooks';
import { message } from '../../../../engine/index.ts';
import { change } from '../../store/change.ts';
import { announce } from '../../store/notices.ts';
import { goTo } from '../../store/selection.ts';
import { workbook } from '../../store/workbook.ts';
import {
  canTurn,
  type Ground,
  type LaidBed,
  onStep,
  placeCommands,
  placeNow,
  placeWords,
  stepOf,
  turnCommands,
} from './bed-ground.ts';
import { type Place, standsWords } from './bed-map.ts';
import { namesOnBed } from './bed-names.ts';
import { BedStrip, MapSvg } from './bed-strip.tsx';

const EDGE = 4;
const MOST_TALL = 1100;
const LEAST_BED = 18;
const MOST_BED = 26;
/** So far a press may slip and still be a press. */
const SLIP = 4;
/** So many steps an arrow takes with Shift. */
const STRIDE = 5;

interface GroundProps {
  readonly ground: Ground;
  readonly says: string;
  readonly width: number;
  readonly onLook: (bed: string) => void;
}

export function GroundDrawing({ ground, says, width, onLook }: GroundProps) {
  const id = useId();
  const perMetre = Math.min((width - 2 * EDGE) / ground.wide, MOST_TALL / ground.tall);
  const height = ground.tall * perMetre;
  return (
    <MapSvg id={id} width={width} height={height} says={says}>
      {ground.beds.map((laid) => (
        <GroundBed key={laid.bed.bed} laid={laid} ground={ground} perMetre={perMetre} id={id} onLook={onLook} />
      ))}
    </MapSvg>
  );
}

interface GroundBedProps {
  readonly laid: LaidBed;
  readonly ground: Ground;
  readonly perMetre: number;
  readonly id: string;
  readonly onLook: (bed: string) => void;
}

interface Held {
  readonly x: number;
  readonly y: number;
  readonly place: Place;
  readonly moved: boolean;
}

function place(laid: LaidBed): void {
  const book = workbook();
  const said = message('place bed', { row: laid.bed.name });
  if (!change(placeCommands(book, laid), said).refused) {
    announce(`${laid.bed.name}: ${placeWords(book, onStep(book, laid.place))}`);
  }
}

function turn({ bed }: LaidBed): void {
  if (change(turnCommands(bed), message('turn bed', { row: bed.name })).refused) return;
  announce(`${bed.name}: ${bed.turned ? 'west to east' : 'north to south'}`);
}

function GroundBed({ laid, ground, perMetre, id, onLook }: GroundBedProps) {
  const { bed } = laid;
  const book = workbook();
  const [held, hold] = useState<Held | undefined>(undefined);
  const at = held?.place ?? laid.place;
  const left = EDGE + (at.east - ground.west) * perMetre;
  const middle = (ground.north - at.north) * perMetre;
  const thick = Math.min(MOST_BED, Math.max(LEAST_BED, bed.width * perMetre));
  const stands = standsWords(book, bed);
  const way = bed.turned ? ', north to south' : '';
  const words = `${bed.name}: ${stands}. Lies ${placeWords(book, onStep(book, at))}${way}`;
  const onKey = (event: KeyboardEvent): void => {
    const step = stepOf(book) * (event.shiftKey ? STRIDE : 1);
    const [east, north] = ARROWS[event.key] ?? [0, 0];
    if (event.key === 'Enter') goTo('beds', bed.bed);
    else if (event.key.toLowerCase() === 'r' && !event.ctrlKey && !event.metaKey && canTurn(book)) turn(laid);
    else if (east === 0 && north === 0) return;
    else {
      const now = placeNow(book, laid);
      place({ bed, place: { east: now.east + east * step, north: now.north + north * step } });
    }
    event.preventDefault();
  };
  return (
    <g transform={`translate(${left} ${middle})${bed.turned ? ' rotate(90)' : ''}`}>
      {/* biome-ignore lint/a11y/useSemanticElements: a part of a drawing can't be a button element */}
      <g
        class={`map-bed ground-bed${held?.moved === true ? ' is-held' : ''}`}
        role="button"
        tabindex={0}
        aria-label={words}
        aria-describedby="ground-keys"
        onKeyDown={onKey}
        onFocus={() => onLook(bed.bed)}
        onPointerEnter={() => onLook(bed.bed)}
        onPointerDown={(event) => {
          if (event.button !== 0) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          hold({ x: event.clientX, y: event.clientY, place: laid.place, moved: false });
        }}
        onPointerMove={(event) => {
          if (held === undefined) return;
          const [x, y] = [event.clientX - held.x, event.clientY - held.y];
          const moved = held.moved || Math.hypot(x, y) > SLIP;
          if (!moved) return;
          const to = { east: laid.place.east + x / perMetre, north: laid.place.north - y / perMetre };
          hold({ ...held, place: onStep(book, to), moved });
        }}
        onPointerUp={({ pointerType }) => {
          if (held === undefined) return;
          hold(undefined);
          if (held.moved) place({ bed, place: held.place });
          // A finger has no way of looking without pressing.
          else if (pointerType === 'touch') onLook(bed.bed);
          else goTo('beds', bed.bed);
        }}
        onPointerCancel={() => hold(undefined)}
      >
        <title>{words}</title>
        <BedStrip
          bed={bed}
          left={0}
          top={-thick / 2}
          tall={thick}
          perMetre={perMetre}
          id={id}
          isGuess={bed.place === undefined}
        />
      </g>
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in it takes the focus */}
      <g class="drawn-names" aria-hidden="true">
        {namesOnBed(bed, perMetre).map(({ x, text }) => (
          <text
            key={x}
            class={bed.pieces.length > 0 ? 'piece-name' : undefined}
            x={x}
            y={bed.pieces.some(({ picking }) => picking) ? 2.5 : 4.5}
          >
            {text}
          </text>
        ))}
      </g>
    </g>
  );
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
