// Finding anything in the workbook by its name: sheets, columns and rows, those of the sheet on screen first, and then by what
// stands in its cells. Pure; the go-to box calls it.

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

/** One place in so many is kept for values, however many names there are. */
const VALUES = 6;

/**
 * The best `most` matches: names before values, those that begin with the words first, the sheet on screen before others,
 * sheets before rows before columns before rows that others made.
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
  const inOrder = [...sheets].sort((a, b) => Number(b.id === here) - Number(a.id === here));
  const values = valuePlaces(book, inOrder, wanted, Math.max(Math.floor(most / VALUES), most - found.length));
  const named = found
    .sort((a, b) => a.rank - b.rank || a.place.name.length - b.place.name.length)
    .slice(0, most - values.length)
    .map(({ place }) => place);
  return [...named, ...values];
}

/** Cells that hold the words, other than those that name a row. */
function valuePlaces(book: Book, sheets: readonly SheetView[], wanted: string, most: number): readonly FoundPlace[] {
  const places: FoundPlace[] = [];
  let looked = 0;
  for (const sheet of sheets) {
    for (const slot of rows(book, sheet.id)) {
      for (const { id, name } of sheet.columns) {
        if (places.length >= most || looked >= MOST_CELLS) return places;
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
