// The map of beds in the page: a slider goes through the weeks of the year, or plays them; lengths are to scale. Beds lie by field, or
// where a person placed them.

import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { message, settings } from '../../../../engine/index.ts';
import { fitted } from '../../drawing/text-width.ts';
import { change } from '../../store/change.ts';
import { goTo } from '../../store/selection.ts';
import { workbook } from '../../store/workbook.ts';
import { Frame } from '../kit/frame.tsx';
import type { PaperSize } from '../kit/paper-size.ts';
import { dayOfWeek, weekAt, weeksOf, weekWords } from '../kit/weeks.ts';
import { NO_BEDS, seasonCalendar } from '../season-calendar/season-calendar.ts';
import { byFieldCommands, firstPlaces, groundOf, placeCommands, takesPlaces } from './bed-ground.ts';
import { type BedMap, type BedOnMap, bedMap, mapParts, standsWords } from './bed-map.ts';
import { BedStrip, MapSvg } from './bed-strip.tsx';
import { GroundDrawing } from './ground-drawing.tsx';

/** How long a week stands while the year plays, in milliseconds. */
const A_WEEK = 450;

export const MAP_LEGEND = [
  { mark: 'mark-free', words: 'free' },
  { mark: 'mark-planted', words: 'planted' },
  { mark: 'mark-harvest', words: 'being picked' },
  { mark: 'mark-cover', words: 'cover crop' },
  { mark: 'mark-over', words: 'too much' },
];

export function BedMapPicture() {
  const book = workbook();
  const { today } = settings(book);
  const calendar = seasonCalendar(book, today);
  const weeks = calendar === undefined ? [] : weeksOf(calendar.season);
  const [at, setAt] = useState<number | undefined>(undefined);
  const [plays, play] = useState(false);
  const [looked, look] = useState('');
  const index = at ?? weekAt(weeks, today);
  useEffect(() => {
    if (!plays) return undefined;
    if (index >= weeks.length - 1) {
      play(false);
      return undefined;
    }
    const next = setTimeout(() => setAt(index + 1), A_WEEK);
    return () => clearTimeout(next);
  }, [plays, index, weeks.length]);
  const week = weeks[index];
  if (calendar === undefined || week === undefined) return <p class="no-picture">{NO_BEDS}</p>;
  const map = bedMap(book, calendar, dayOfWeek(week, calendar.season));
  return (
    <Frame
      title="The beds, week by week"
      says={map.says}
      table={map.table}
      legend={MAP_LEGEND}
      choices={
        <div class="picture-choices map-weeks">
          <button
            type="button"
            onClick={() => {
              if (!plays && index >= weeks.length - 1) setAt(0);
              play(!plays);
            }}
          >
            {plays ? 'Stop' : 'Play the year'}
          </button>
          <input
            type="range"
            min={0}
            max={weeks.length - 1}
            value={index}
            aria-label="Week"
            aria-valuetext={weekWords(book, week)}
            onInput={({ currentTarget }) => {
              play(false);
              setAt(Number(currentTarget.value));
            }}
          />
          <output>{weekWords(book, week)}</output>
          {takesPlaces(book) ? <Placing map={map} /> : null}
        </div>
      }
      draw={(width) => <BedMapDrawing map={map} width={width} onLook={look} />}
      drawOnPaper={(size) => mapOnPaper(map, size)}
      below={<InFull map={map} looked={looked} />}
    />
  );
}

/** All that stands on the bed that is looked at: on the drawing it is cut to the bed's length. */
function InFull({ map, looked }: { readonly map: BedMap; readonly looked: string }) {
  const bed = map.fields.flatMap(({ beds }) => beds).find((each) => each.bed === looked);
  if (bed === undefined)
    return <p class="map-looked">Point at a bed, walk to it or touch it to read all that stands there.</p>;
  return (
    <p class="map-looked">
      <b>{bed.name}</b>: {standsWords(workbook(), bed)}{' '}
      <button type="button" class="quiet door" onClick={() => goTo('beds', bed.bed)}>
        Open the bed
      </button>
    </p>
  );
}

/** The ways between beds by field and beds where they lie: each is one step of undo. */
function Placing({ map }: { readonly map: BedMap }) {
  if (groundOf(map) !== undefined) {
    return (
      <>
        <button type="button" onClick={() => change(byFieldCommands(map), message('beds by field', {}))}>
          Lay them out by field
        </button>
        <p class="map-keys" id="ground-keys">
          Drag a bed to where it lies, or choose it and move it with the arrows; Shift takes longer steps, R turns it
          north to south and back.
        </p>
      </>
    );
  }
  return (
    <button
      type="button"
      onClick={() => {
        const commands = firstPlaces(workbook(), map).flatMap((laid) => placeCommands(workbook(), laid));
        change(commands, message('place beds', {}));
      }}
    >
      Place them as they lie
    </button>
  );
}

const BED_TALL = 24;
const PITCH = 30;
const FIELD_HEAD = 22;
const GAP = 18;
const LEFT = 84;

function nobodyLooks(): void {}

interface MapDrawingProps {
  readonly map: BedMap;
  readonly width: number;
  /** A bed is pointed at, walked to or touched; left out on paper. */
  readonly onLook?: (bed: string) => void;
}

/** The beds where a person placed them, else by field. */
export function BedMapDrawing({ map, width, onLook = nobodyLooks }: MapDrawingProps) {
  const ground = groundOf(map);
  if (ground !== undefined) return <GroundDrawing ground={ground} says={map.says} width={width} onLook={onLook} />;
  return <FieldsDrawing map={map} width={width} onLook={onLook} />;
}

/** A drawing a page; the ground as it lies is one, no taller than a page. */
export function mapOnPaper(map: BedMap, { width, tall }: PaperSize): readonly ComponentChildren[] {
  const ground = groundOf(map);
  if (ground !== undefined) {
    const across = Math.min(width, (tall * ground.wide) / ground.tall);
    return [
      <div key="ground" style={{ width: `${(across / width) * 100}%` }}>
        <GroundDrawing ground={ground} says={map.says} width={across} onLook={nobodyLooks} />
      </div>,
    ];
  }
  return mapParts(map, columnsIn(width), Math.floor(tall / PITCH)).map((part) => (
    <FieldsDrawing key={part.fields[0]?.name} map={part} width={width} onLook={nobodyLooks} />
  ));
}

function columnsIn(width: number): number {
  return width >= 900 ? 2 : 1;
}

/** Fields side by side where there is room for two, each bed a strip as long as it is on the ground. */
function FieldsDrawing({ map, width, onLook }: Required<MapDrawingProps>) {
  const id = useId();
  const columns = columnsIn(width);
  const wide = (width - GAP * (columns - 1)) / columns;
  const perMetre = map.longest > 0 ? (wide - LEFT - 4) / map.longest : 0;
  const tops = Array.from({ length: columns }, () => 0);
  const placed = map.fields.map((field) => {
    const column = tops.indexOf(Math.min(...tops));
    const top = tops[column] ?? 0;
    tops[column] = top + FIELD_HEAD + field.beds.length * PITCH + GAP;
    return { field, left: column * (wide + GAP), top };
  });
  const height = Math.max(60, ...tops);
  return (
    <MapSvg id={id} width={width} height={height} says={map.says}>
      {placed.map(({ field, left, top }) => (
        <g key={field.name} transform={`translate(${left} ${top})`}>
          <text class="field-name" x={0} y={15}>
            {field.name === '' ? 'Beds' : field.name}
          </text>
          {field.beds.map((bed, index) => (
            <Bed key={bed.bed} bed={bed} top={FIELD_HEAD + index * PITCH} perMetre={perMetre} id={id} onLook={onLook} />
          ))}
        </g>
      ))}
    </MapSvg>
  );
}

interface BedProps {
  readonly bed: BedOnMap;
  readonly top: number;
  readonly perMetre: number;
  readonly id: string;
  readonly onLook: (bed: string) => void;
}

function Bed({ bed, top, perMetre, id, onLook }: BedProps) {
  const words = `${bed.name}: ${standsWords(workbook(), bed)}`;
  const pressedBy = useRef('');
  const open = (): void => goTo('beds', bed.bed);
  return (
    <g>
      {/* biome-ignore lint/a11y/useSemanticElements: a part of a drawing can't be a button element */}
      <g
        class="map-bed"
        role="button"
        tabindex={0}
        aria-label={words}
        onFocus={() => onLook(bed.bed)}
        onPointerEnter={() => onLook(bed.bed)}
        onPointerDown={({ pointerType }) => {
          pressedBy.current = pointerType;
        }}
        // A finger has no way of looking without pressing.
        onClick={() => (pressedBy.current === 'touch' ? onLook(bed.bed) : open())}
        onKeyDown={(event) => {
          if (event.key === 'Enter') open();
        }}
      >
        <title>{words}</title>
        <BedStrip bed={bed} left={LEFT} top={top} tall={BED_TALL} perMetre={perMetre} id={id} />
      </g>
      <BedNames bed={bed} top={top} perMetre={perMetre} />
    </g>
  );
}

/** Written on the bed and cut to what room there is; the bed itself is called by the whole of it. */
function BedNames({ bed, top, perMetre }: Omit<BedProps, 'id' | 'onLook'>) {
  const { name, length, pieces, cover } = bed;
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in it takes the focus
    <g class="drawn-names" aria-hidden="true">
      <text x={LEFT - 8} y={top + BED_TALL / 2 + 4.5} text-anchor="end">
        {fitted(name, LEFT - 10)}
      </text>
      {cover !== '' && pieces.length === 0 ? (
        <text x={LEFT + 5} y={top + BED_TALL / 2 + 4.5}>
          {fitted(cover, length * perMetre - 10)}
        </text>
      ) : null}
      {pieces.map((piece) => (
        <text key={piece.planting} class="piece-name" x={LEFT + piece.at * perMetre + 5} y={top + BED_TALL / 2 + 4}>
          {fitted(piece.name, piece.length * perMetre - 10)}
        </text>
      ))}
    </g>
  );
}
