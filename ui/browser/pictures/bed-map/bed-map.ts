// The map of the farm's beds on a day: beds by field, each with what stands along it, what is free, and what is too much. Lengths in
// metres. Pure: out of the season calendar's model; the picture, the bed map on paper and the tests call it.

import { type Book, mondayOf, sheetView } from '../../../../engine/index.ts';
import { BED, BEDS } from '../../panels/columns.ts';
import { dayWords } from '../../store/day-words.ts';
import { columnOf } from '../../store/sheets.ts';
import { askRows, bareFigure, hasColumns, inUnit } from '../kit/ask.ts';
import type { PictureTable } from '../kit/model.ts';
import { type CalendarLine, lengthInAll, type SeasonCalendar } from '../season-calendar/season-calendar.ts';

export interface Piece {
  readonly planting: string;
  readonly name: string;
  readonly crop: string;
  readonly at: number;
  readonly length: number;
  readonly picking: boolean;
}

export interface Place {
  readonly east: number;
  readonly north: number;
}

export interface BedOnMap {
  readonly bed: string;
  readonly name: string;
  readonly length: number;
  readonly width: number;
  /** Where it lies, in metres from the farm's own point: its west end, its middle; undefined where nobody said. */
  readonly place: Place | undefined;
  /** Its length runs from north to south: then its place is that of the middle of its north end. */
  readonly turned: boolean;
  readonly pieces: readonly Piece[];
  readonly free: number;
  /** How much more stands on it than it is long; 0 where all fits. */
  readonly over: number;
  /** What covers it meanwhile, where the workbook says. */
  readonly cover: string;
}

export interface FieldOnMap {
  readonly name: string;
  readonly beds: readonly BedOnMap[];
}

export interface BedMap {
  readonly day: number;
  readonly fields: readonly FieldOnMap[];
  readonly longest: number;
  readonly says: string;
  readonly table: PictureTable;
}

const CALENDAR = 'bed-calendar';

export function bedMap(book: Book, calendar: SeasonCalendar, day: number): BedMap {
  const covers = coversOn(book, day);
  const ground = groundsOf(book);
  const fields = new Map<string, BedOnMap[]>();
  for (const line of calendar.lines) {
    if (line.bed === '') continue;
    const there = fields.get(line.field) ?? [];
    there.push({ ...onMap(line, day, covers.get(line.bed) ?? ''), ...(ground.get(line.bed) ?? NOWHERE) });
    fields.set(line.field, there);
  }
  const all = [...fields].map(([name, beds]): FieldOnMap => ({ name, beds }));
  const beds = all.flatMap((field) => field.beds);
  return {
    day,
    fields: all,
    longest: Math.max(0, ...beds.map(({ length, over }) => length + over)),
    says: sentence(book, beds, day),
    table: {
      head: ['Bed', 'Stands', 'Free'],
      rows: beds.map((bed) => [bed.name, standsWords(book, bed), lengthWords(book, bed.free)]),
    },
  };
}

/** A field's name and the gap below it take up as much as so many beds. */
const FIELD_ROWS = 1.5;

/**
 * The map in parts for paper, each of so many columns with room for so many beds, one field under the other. A field goes on in the next
 * column where it is too long for the one, and on the next part only where a whole part is too small for it.
 */
export function mapParts(map: BedMap, columns: number, rows: number): readonly BedMap[] {
  const empty = Array.from({ length: columns }, () => 0);
  const parts: { fields: FieldOnMap[]; taken: readonly number[] }[] = [];
  for (const field of map.fields) {
    let left: FieldOnMap | undefined = field;
    while (left !== undefined) {
      const last = parts.at(-1);
      const here: Placed | undefined = last === undefined ? undefined : placed(left, last.taken, rows);
      if (last !== undefined && here !== undefined && (here.left === undefined || last.fields.length === 0)) {
        last.fields.push(...here.pieces);
        last.taken = here.taken;
        left = here.left;
        if (left === undefined) continue;
      }
      parts.push({ fields: [], taken: empty });
    }
  }
  return parts.map(({ fields }) => ({ ...map, fields }));
}

interface Placed {
  readonly pieces: readonly FieldOnMap[];
  readonly taken: readonly number[];
  /** What found no room. */
  readonly left: FieldOnMap | undefined;
}

/** A field put where most room is left, as often as it takes. A column holds a bed at least, however little room it has. */
function placed(field: FieldOnMap, before: readonly number[], rows: number): Placed {
  const taken = [...before];
  const pieces: FieldOnMap[] = [];
  let left: FieldOnMap = field;
  for (;;) {
    const column = taken.indexOf(Math.min(...taken));
    const used = taken[column] ?? 0;
    const room = Math.max(used === 0 ? 1 : 0, Math.floor(rows - used - FIELD_ROWS));
    if (room < 1) return { pieces, taken, left };
    const beds = left.beds.slice(0, room);
    pieces.push({ name: left.name, beds });
    taken[column] = used + beds.length + FIELD_ROWS;
    if (beds.length === left.beds.length) return { pieces, taken, left: undefined };
    left = { name: continued(field.name), beds: left.beds.slice(room) };
  }
}

function continued(name: string): string {
  return name.endsWith(', continued') ? name : `${name === '' ? 'Beds' : name}, continued`;
}

type Ground = Pick<BedOnMap, 'width' | 'place' | 'turned'>;

const NOWHERE: Ground = { width: 0, place: undefined, turned: false };

/** What the column says of a bed whose length runs from north to south. */
export const TURNED = 'north to south';

/** How wide each bed is and where it lies, by its id. */
function groundsOf(book: Book): ReadonlyMap<string, Ground> {
  if (!hasColumns(book, { [BEDS]: [BED.width, BED.east, BED.north] })) return new Map();
  return new Map(
    askRows(book, BEDS).map((row) => {
      const [east, north] = [row.figure(BED.east), row.figure(BED.north)];
      const place = east === undefined || north === undefined ? undefined : { east, north };
      return [row.id, { width: row.figure(BED.width) ?? 0, place, turned: row.text(BED.lies) === TURNED }] as const;
    }),
  );
}

function onMap({ bed, name, length, bars }: CalendarLine, day: number, cover: string): Omit<BedOnMap, keyof Ground> {
  // End to end, whatever places along the bed they were given for the whole season.
  let at = 0;
  const standing = bars.filter(({ from, until }) => from <= day && day < until).toSorted((a, b) => a.at - b.at);
  const pieces = standing.map(({ planting, name: called, crop, length: taken, harvest }): Piece => {
    const picking = harvest !== undefined && harvest.from <= day && day < harvest.until;
    const piece = { planting, name: called, crop, at, length: taken, picking };
    at += taken;
    return piece;
  });
  const taken = pieces.reduce((sum, piece) => sum + piece.length, 0);
  return { bed, name, length, pieces, free: Math.max(0, length - taken), over: Math.max(0, taken - length), cover };
}

/** Cover crops of the week, by the id of the bed. */
function coversOn(book: Book, day: number): ReadonlyMap<string, string> {
  if (!hasColumns(book, { [CALENDAR]: ['bed', 'week-starts', 'cover-crop'] })) return new Map();
  const monday = mondayOf(day);
  const ids = new Map(askRows(book, BEDS).map(({ slot, id }) => [slot, id]));
  return new Map(
    askRows(book, CALENDAR).flatMap((row) => {
      const bed = ids.get(row.figure('bed') ?? -1);
      const cover = row.figure('week-starts') === monday ? row.text('cover-crop') : '';
      return bed === undefined || cover === '' ? [] : [[bed, cover] as const];
    }),
  );
}

/** As a tape is laid: to a tenth of a foot or a centimetre; what is shorter than that would be nothing, and stands in full. */
function lengthWords(book: Book, metres: number): string {
  const view = columnOf(sheetView(book, BEDS), BED.length);
  const steps = bareFigure(view, metres) * (view?.unit === 'm' ? 100 : 10);
  return inUnit(book, BEDS, BED.length, metres < SHORTEST ? metres : (metres / steps) * Math.round(steps));
}

const SHORTEST = 0.05;

/** 'Lettuce 1 (25 ft), Lettuce 2 (25 ft)', 'free', 'clover'. */
export function standsWords(book: Book, { pieces, over, cover }: BedOnMap): string {
  const stands = pieces.map(({ name, length }) => `${name} (${lengthWords(book, length)})`);
  const more = over > 1e-6 ? `; ${lengthWords(book, over)} too much` : '';
  if (stands.length > 0) return `${stands.join(', ')}${more}`;
  return cover === '' ? 'free' : cover;
}

/** '1 of 6 beds carries something', '3 of 6 beds carry something'. */
function carryWords(planted: number, all: number): string {
  return `${planted} of ${all} ${all === 1 ? 'bed' : 'beds'} ${planted === 1 || all === 1 ? 'carries' : 'carry'} something`;
}

function sentence(book: Book, beds: readonly BedOnMap[], day: number): string {
  const free = beds.filter(({ pieces }) => pieces.length === 0);
  const over = beds.filter((bed) => bed.over > 1e-6);
  const metres = beds.reduce((sum, bed) => sum + bed.free, 0);
  const parts = [
    `${dayWords(book, day)}: ${carryWords(beds.length - free.length, beds.length)}; ${lengthInAll(book, metres)} of bed are free.`,
    over.length === 0 ? '' : `Too full: ${over.map(({ name }) => name).join(', ')}.`,
  ];
  return parts.filter((part) => part !== '').join(' ');
}
