// Where the beds of the map lie on the ground: those with a place of their own there, the others south of them, and what a move
// types. Pure; the picture, the bed map on paper and the tests call it.

import { type Book, type Command, settings, sheetView } from '../../../../engine/index.ts';
import { BED, BEDS } from '../../panels/columns.ts';
import { columnOf } from '../../store/sheets.ts';
import { askRows, bareFigure, hasColumns, inUnit } from '../kit/ask.ts';
import { type BedMap, type BedOnMap, type Place, TURNED } from './bed-map.ts';

export interface LaidBed {
  readonly bed: BedOnMap;
  readonly place: Place;
}

export interface Ground {
  readonly beds: readonly LaidBed[];
  /** The whole, in metres. */
  readonly west: number;
  readonly north: number;
  readonly wide: number;
  readonly tall: number;
}

/** From the middle of a bed to that of the next one, in metres, where nobody said. */
const PITCH = 1.5;
const FIELD_GAP = 2;

/** Whether beds of the workbook can be given a place. */
export function takesPlaces(book: Book): boolean {
  return hasColumns(book, { [BEDS]: [BED.east, BED.north] });
}

/** The beds where they lie; undefined while none has a place. */
export function groundOf(map: BedMap): Ground | undefined {
  const all = map.fields.flatMap(({ beds }) => beds);
  const placed = all.flatMap((bed): LaidBed[] => (bed.place === undefined ? [] : [{ bed, place: bed.place }]));
  if (placed.length === 0) return undefined;
  const south = Math.min(...placed.map(southOf)) - FIELD_GAP;
  const west = Math.min(...placed.map(westOf));
  const rest = all
    .filter(({ place }) => place === undefined)
    .map(
      (bed, index): LaidBed => ({
        bed: { ...bed, turned: false },
        place: { east: west, north: south - index * PITCH },
      }),
    );
  const beds = [...placed, ...rest];
  const north = Math.max(...beds.map(({ place }) => place.north)) + PITCH;
  return {
    beds,
    west,
    north,
    wide: Math.max(1, ...beds.map((laid) => eastOf(laid) - west)),
    tall: north - Math.min(...beds.map(southOf)) + PITCH,
  };
}

function westOf({ bed, place }: LaidBed): number {
  return bed.turned ? place.east - PITCH / 2 : place.east;
}

function eastOf({ bed, place }: LaidBed): number {
  return place.east + (bed.turned ? PITCH / 2 : bed.length + bed.over);
}

function southOf({ bed, place }: LaidBed): number {
  return bed.turned ? place.north - bed.length - bed.over : place.north;
}

/** Whether beds of the workbook can be turned. */
export function canTurn(book: Book): boolean {
  return hasColumns(book, { [BEDS]: [BED.lies] });
}

/** What turns a bed the other way, about its end. */
export function turnCommands({ bed, turned }: BedOnMap): readonly Command[] {
  const content = turned ? null : TURNED;
  return [{ command: 'put cell', sheet: BEDS, row: bed, column: BED.lies, content }];
}

/** Every bed at a place of its own: field beside field, as the map by field draws them, for a person to move from there. */
export function firstPlaces(book: Book, map: BedMap): readonly LaidBed[] {
  const pitch = 3 * stepOf(book);
  const souths = [0, 0];
  return map.fields.flatMap(({ beds }) => {
    const column = (souths[1] ?? 0) < (souths[0] ?? 0) ? 1 : 0;
    const top = souths[column] ?? 0;
    souths[column] = top + (beds.length + 1) * pitch;
    return beds.map(
      (bed, index): LaidBed => ({
        bed,
        place: { east: column * Math.ceil(map.longest + FIELD_GAP), north: -(top + index * pitch) },
      }),
    );
  });
}

/** The step in which beds move, in metres: half a metre, or two feet. */
export function stepOf(book: Book): number {
  return settings(book).units === 'us' ? 0.6096 : 0.5;
}

/** A place on the step nearest to it. */
export function onStep(book: Book, { east, north }: Place): Place {
  const step = stepOf(book);
  return { east: Math.round(east / step) * step, north: Math.round(north / step) * step };
}

/** '12 ft east, 4 ft south' of the farm's own point. */
export function placeWords(book: Book, { east, north }: Place): string {
  const words = (metres: number, ahead: string, behind: string): string =>
    `${inUnit(book, BEDS, BED.length, Math.abs(metres), 1)} ${metres < 0 ? behind : ahead}`;
  return `${words(east, 'east', 'west')}, ${words(north, 'north', 'south')}`;
}

/** Where a bed lies now, which the drawing shows a frame later: keys come faster. */
export function placeNow(book: Book, { bed, place }: LaidBed): Place {
  const row = askRows(book, BEDS).find(({ id }) => id === bed.bed);
  return { east: row?.figure(BED.east) ?? place.east, north: row?.figure(BED.north) ?? place.north };
}

/** What puts a bed at a place, as if it were typed in the workbook's unit of length. */
export function placeCommands(book: Book, { bed, place }: LaidBed): readonly Command[] {
  const { east, north } = onStep(book, place);
  return [[BED.east, east] as const, [BED.north, north] as const].flatMap(([column, metres]): Command[] => {
    const view = columnOf(sheetView(book, BEDS), column);
    if (view?.type?.kind !== 'number') return [];
    const number = Number(bareFigure(view, metres).toFixed(6));
    const content = { number, unit: view.type.unit.symbol, follows: true } as const;
    return [{ command: 'put cell', sheet: BEDS, row: bed.bed, column, content }];
  });
}

/** What lays all beds out by field again. */
export function byFieldCommands(map: BedMap): readonly Command[] {
  return map.fields
    .flatMap(({ beds }) => beds)
    .filter(({ place }) => place !== undefined)
    .flatMap(({ bed: row }) =>
      [BED.east, BED.north].map(
        (column): Command => ({ command: 'put cell', sheet: BEDS, row, column, content: null }),
      ),
    );
}
