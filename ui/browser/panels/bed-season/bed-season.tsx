// A bed in hand: what stands on it through the season, drawn to scale in days along it and in length down it, with names
// in words, and in a list what is free from when to when.

import { type Book, cellValue, fromCanonical, rowName, rows, settings } from '../../../../engine/index.ts';
import { TableOf } from '../../drawing/chart.tsx';
import { linearScale, monthsBetween } from '../../drawing/scale.ts';
import { namedMonths } from '../../drawing/text-width.ts';
import { useWidth } from '../../drawing/width.ts';
import { dayWords } from '../../store/day-words.ts';
import { columnOf, unitOf } from '../../store/sheets.ts';
import { plainFigure, withUnit } from '../../store/shown.ts';
import { workbook } from '../../store/workbook.ts';
import { BED, BEDS, PLANTING, PLANTINGS } from '../columns.ts';
import type { PanelProps } from '../panel.ts';
import { figureAt, type Season, seasonOf } from '../read.ts';
import { type FreeTime, freeTimes, type Occupant, type Placed, placeAlong } from './bed-calendar.ts';

const TITLE = 'This bed through the season';

export function BedSeason({ sheet, row: { slot } }: PanelProps) {
  const book = workbook();
  const length = figureAt(book, BEDS, slot, BED.length);
  const column = columnOf(sheet, BED.length);
  const unit = unitOf(column);
  if (length === undefined || length <= 0 || unit === undefined || column === undefined) return null;
  const { writing } = settings(book);
  const inUnit = (metres: number): string =>
    withUnit(plainFigure(fromCanonical(unit, metres), 1, writing), column.unit);
  const occupants = occupantsOf(book, slot);
  const season = spanOf(seasonOf(book), occupants);
  const placed = placeAlong(occupants);
  const free = freeTimes(occupants, length, season.first, season.last + 1);
  const over = placed.some((each) => each.at + each.length > length + 1e-6);
  return (
    <figure class="bed-season">
      <figcaption>{TITLE}</figcaption>
      <Picture {...{ book, placed, length, season, inUnit }} />
      {over ? <p class="finding level-warning">More stands here at one time than the bed is long.</p> : null}
      <ul class="free-times">
        {free.map((each) => (
          <li key={each.from}>{freeWords(book, each, length, season, inUnit)}</li>
        ))}
      </ul>
      <TableOf
        title={TITLE}
        table={{
          head: ['Planting', 'From', 'Until before', 'Length'],
          rows: placed.map(({ name, from, until, length: taken }) => [
            name,
            dayWords(book, from),
            dayWords(book, until),
            inUnit(taken),
          ]),
        }}
      />
    </figure>
  );
}

/** Plantings that name this bed and have their dates; without an end, they stand to the end of the season. */
function occupantsOf(book: Book, bed: number): readonly Occupant[] {
  const { last } = seasonOf(book);
  return Array.from(rows(book, PLANTINGS)).flatMap((slot) => {
    const from = figureAt(book, PLANTINGS, slot, PLANTING.plantedOut);
    const length = figureAt(book, PLANTINGS, slot, PLANTING.lengthUsed);
    if (cellValue(book, PLANTINGS, slot, PLANTING.bed) !== bed || from === undefined || length === undefined) return [];
    const until = figureAt(book, PLANTINGS, slot, PLANTING.bedFree) ?? last + 1;
    return until > from ? [{ name: rowName(book, PLANTINGS, slot), length, from, until }] : [];
  });
}

/** The season, with what began before it or goes on after. */
function spanOf({ first, last }: Season, occupants: readonly Occupant[]): Season {
  return {
    first: Math.min(first, ...occupants.map((each) => each.from)),
    last: Math.max(last, ...occupants.map((each) => each.until)),
  };
}

function freeWords(
  book: Book,
  piece: FreeTime,
  length: number,
  { first, last }: Season,
  inUnit: (metres: number) => string,
): string {
  const from = piece.from <= first ? '' : `from ${dayWords(book, piece.from)}`;
  const until = piece.until > last ? '' : `until ${dayWords(book, piece.until)}`;
  const when = [from, until].filter((part) => part !== '').join(' ') || 'all season';
  if (piece.free < -1e-6) return `${inUnit(-piece.free)} too much, ${when}`;
  if (piece.free < 1e-6) return `Full ${when}`;
  return `${piece.free > length - 1e-6 ? 'All' : inUnit(piece.free)} free ${when}`;
}

interface PictureProps {
  readonly book: Book;
  readonly placed: readonly Placed[];
  readonly length: number;
  readonly season: Season;
  readonly inUnit: (metres: number) => string;
}

const TOP = 20;
const DEEP = 150;

function Picture({ book, placed, length, season, inUnit }: PictureProps) {
  const { ref, width } = useWidth<HTMLDivElement>();
  const x = linearScale(season.first, season.last + 1, 1, Math.max(2, width - 1));
  const deepest = Math.max(length, ...placed.map((each) => each.at + each.length));
  const y = linearScale(0, deepest, TOP, TOP + DEEP);
  return (
    <div class="chart-picture" ref={ref}>
      {width > 0 ? (
        <svg
          viewBox={`0 0 ${width} ${TOP + DEEP + 2}`}
          width={width}
          height={TOP + DEEP + 2}
          role="img"
          aria-label={pictureWords(book, placed, inUnit)}
        >
          {monthsBetween(season.first, season.last).map(({ day }) => (
            <line key={day} class="month-rule" x1={x.at(day)} x2={x.at(day)} y1={TOP} y2={y.at(length)} />
          ))}
          {namedMonths(season.first, season.last, x, settings(book).writing).map(({ day, name }) => (
            <text key={day} class="picture-label" x={x.at(day) + 2} y={13}>
              {name}
            </text>
          ))}
          <rect class="season-bed" x={x.at(season.first)} y={TOP} width={width - 2} height={y.at(length) - TOP} />
          {placed.map((each) => (
            <Standing
              key={`${each.name} ${each.from}`}
              x={x.at(each.from)}
              y={y.at(each.at)}
              width={x.at(each.until) - x.at(each.from)}
              height={y.at(each.at + each.length) - y.at(each.at)}
              name={each.name}
              room={width}
            />
          ))}
        </svg>
      ) : null}
    </div>
  );
}

interface StandingProps {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly name: string;
  readonly room: number;
}

/** About the width of a letter at 13 px. */
const LETTER = 7.2;

/** One planting; its name stands in it, else to its right, else across it as far as the picture's edge. */
function Standing({ x, y, width, height, name, room }: StandingProps) {
  const wide = name.length * LETTER;
  const beside = x + width + 4;
  const inside = wide + 8 <= width || beside + wide > room;
  const at = inside ? Math.max(2, Math.min(x + 5, room - wide - 2)) : beside;
  return (
    <g>
      <rect class="season-planting" x={x} y={y} width={Math.max(1, width)} height={Math.max(1, height)} />
      {height >= 14 ? (
        <text class="season-name" x={at} y={y + height / 2 + 4.5}>
          {name}
        </text>
      ) : null}
    </g>
  );
}

function pictureWords(book: Book, placed: readonly Placed[], inUnit: (metres: number) => string): string {
  if (placed.length === 0) return `${TITLE}: nothing is planted.`;
  const each = placed.map(
    ({ name, length, from, until }) =>
      `${name}, ${inUnit(length)}, ${dayWords(book, from)} to ${dayWords(book, until - 1)}`,
  );
  return `${TITLE}: ${each.join('; ')}.`;
}
