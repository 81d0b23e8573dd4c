// Finding anything in the workbook: sheets by name, then what the sheet on screen has by name and in its cells, then the names and
// cells of the others. Pure; the go-to box calls it.

import { type Book, cellView, rowId, rowName, rows, type SheetView, sheetViews } from '../../../engine/index.ts';

export interface FoundPlace {
  readonly kind: 'sheet' | 'column' | 'row' | 'value';
  readonly name: string;
  /** The sheet it is in; for a sheet, its question; for a value, its column and row. */
  readonly within: string;
  readonly sheet: string;
  readonly row: string | undefined;
  readonly column: string | undefined;
}

interface Ranked {
  readonly place: FoundPlace;
  readonly rank: number;
}

interface NamedRow {
  readonly name: string;
  readonly slot: number;
}

/** So many cells are looked through for values while a person types. */
const MOST_CELLS = 12_000;

/**
 * Of made rows that are not on screen so many of a sheet are looked through by name: they are called as the rows that made them, of
 * which all are, and a season of two thousand plantings makes a quarter of a million.
 */
const MOST_MADE = 2_000;

/** The kinds of places that match alike, in order; a better match comes before all of them. */
const [LAST, KINDS] = [6, 8];

/** One place in so many is kept for names and for values of other sheets, however many names there are here. */
const ELSEWHERE = 6;

/** And for the values of the sheet on screen. */
const VALUES_HERE = 3;

/**
 * The best `most` matches: sheets and the names on the sheet on screen, its values, then the names and then the values of other sheets.
 * Of names those that begin with the words stand first, sheets before rows before columns before rows that others made.
 */
export function findPlaces(book: Book, typed: string, most: number, here = ''): readonly FoundPlace[] {
  const wanted = typed.trim().toLowerCase();
  const sheets = sheetViews(book);
  if (wanted === '') return sheets.map(sheetPlace).slice(0, most);
  const found = sheets.flatMap((sheet) => {
    const isHere = sheet.id === here;
    const away = isHere ? 0 : 3;
    const isMadeAway = !isHere && !sheet.entered;
    const rows = namesOf(book, sheet, isMadeAway ? MOST_MADE : undefined);
    return [
      ...ranked([sheet], 0, wanted, sheetPlace),
      ...ranked(sheet.columns, away + 2, wanted, ({ id, name }) => placeIn(sheet, 'column', name, undefined, id)),
      ...ranked(rows, isMadeAway ? LAST : away + 1, wanted, ({ name, slot }) =>
        placeIn(sheet, 'row', name, rowId(book, sheet.id, slot), sheet.key),
      ),
    ];
  });
  const named = found
    .sort((a, b) => a.rank - b.rank || a.place.name.length - b.place.name.length)
    .map(({ place }) => place);
  const isNear = ({ kind, sheet }: FoundPlace): boolean => kind === 'sheet' || sheet === here;
  const few = Math.floor(most / ELSEWHERE);
  const [fewHere, left] = [Math.floor(most / VALUES_HERE), most - named.length];
  const onScreen = sheets.filter(({ id }) => id === here);
  const cellsHere = onScreen.reduce((sum, { columns }) => sum + columns.length * rows(book, here).length, 0);
  const others = sheets.filter(({ id }) => id !== here);
  return shared(most, [
    { places: named.filter(isNear), least: few },
    { places: valuePlaces(book, onScreen, wanted, Math.max(fewHere, left), MOST_CELLS), least: fewHere },
    { places: named.filter((place) => !isNear(place)), least: few },
    { places: valuePlaces(book, others, wanted, Math.max(few, left), MOST_CELLS - cellsHere), least: few },
  ]);
}

interface Share {
  readonly places: readonly FoundPlace[];
  /** So many of them are shown, however many the others have. */
  readonly least: number;
}

/** `most` places out of several lists, in their order: names take what room is left, and then values. */
function shared(most: number, [near, valuesHere, far, valuesFar]: readonly [Share, Share, Share, Share]) {
  const takes = new Map(
    [near, valuesHere, far, valuesFar].map((each) => [each, Math.min(each.least, each.places.length)]),
  );
  let room = most - [...takes.values()].reduce((sum, count) => sum + count, 0);
  for (const each of [near, far, valuesHere, valuesFar]) {
    const has = takes.get(each) ?? 0;
    const more = Math.min(room, each.places.length - has);
    takes.set(each, has + more);
    room -= more;
  }
  return [...takes].flatMap(([{ places }, count]) => places.slice(0, count));
}

/** Cells that hold the words, other than those that name a row; so many `cells` are looked at. */
function valuePlaces(
  book: Book,
  sheets: readonly SheetView[],
  wanted: string,
  most: number,
  cells: number,
): readonly FoundPlace[] {
  const places: FoundPlace[] = [];
  let looked = 0;
  for (const sheet of sheets) {
    for (const slot of rows(book, sheet.id)) {
      for (const { id, name } of sheet.columns) {
        if (places.length >= most || looked >= cells) return places;
        looked += 1;
        if (id === sheet.key) continue;
        const { text } = cellView(book, sheet.id, slot, id);
        if (!text.toLowerCase().includes(wanted)) continue;
        const within = sheet.oneRow ? name : `${name}, ${rowName(book, sheet.id, slot)}`;
        const place = placeIn(sheet, 'value', text, rowId(book, sheet.id, slot), id);
        places.push({ ...place, within });
      }
    }
  }
  return places;
}

function ranked<T extends { readonly name: string }>(
  things: readonly T[],
  kindRank: number,
  wanted: string,
  placeOf: (thing: T) => FoundPlace,
): readonly Ranked[] {
  return things.flatMap((thing) => {
    const rank = rankOf(thing.name.toLowerCase(), wanted);
    return rank === undefined ? [] : [{ place: placeOf(thing), rank: rank * KINDS + kindRank }];
  });
}

function namesOf(book: Book, { id, oneRow }: SheetView, most: number | undefined): readonly NamedRow[] {
  if (oneRow) return [];
  return Array.from(rows(book, id).subarray(0, most), (slot) => ({ name: rowName(book, id, slot), slot }));
}

function sheetPlace({ id, name, question }: SheetView): FoundPlace {
  return { kind: 'sheet', name, within: question, sheet: id, row: undefined, column: undefined };
}

function placeIn(
  sheet: SheetView,
  kind: 'row' | 'column' | 'value',
  name: string,
  row: string | undefined,
  column: string | undefined,
): FoundPlace {
  return { kind, name, within: sheet.name, sheet: sheet.id, row, column };
}

/** 0 the same, 1 begins with it, 2 a word begins with it, 3 holds it; undefined: no match. */
function rankOf(name: string, wanted: string): number | undefined {
  if (name === wanted) return 0;
  if (name.startsWith(wanted)) return 1;
  if (name.includes(` ${wanted}`)) return 2;
  return name.includes(wanted) ? 3 : undefined;
}
