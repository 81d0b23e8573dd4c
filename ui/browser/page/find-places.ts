// Finding anything in the workbook by its name: sheets, columns and rows. Pure; the go-to box calls it.

import { type Book, rowId, rowName, rows, type SheetView, sheetViews } from '../../../engine/index.ts';

export interface FoundPlace {
  readonly kind: 'sheet' | 'column' | 'row';
  readonly name: string;
  /** The sheet it is in; for a sheet, its question. */
  readonly within: string;
  readonly sheet: string;
  readonly row: string | undefined;
  readonly column: string | undefined;
}

interface Ranked {
  readonly place: FoundPlace;
  readonly rank: number;
}

/** The best `most` matches, those that begin with the words first, sheets before rows before columns. */
export function findPlaces(book: Book, typed: string, most: number): readonly FoundPlace[] {
  const wanted = typed.trim().toLowerCase();
  const sheets = sheetViews(book);
  if (wanted === '') return sheets.map(sheetPlace).slice(0, most);
  const found = sheets.flatMap((sheet) => [
    ...ranked([sheet], 0, wanted, sheetPlace),
    ...ranked(sheet.columns, 2, wanted, ({ id, name }) => placeIn(sheet, 'column', name, undefined, id)),
    ...ranked(namesOf(book, sheet), 1, wanted, ({ name, slot }) =>
      placeIn(sheet, 'row', name, rowId(book, sheet.id, slot), sheet.key),
    ),
  ]);
  return found
    .sort((a, b) => a.rank - b.rank || a.place.name.length - b.place.name.length)
    .slice(0, most)
    .map(({ place }) => place);
}

function ranked<T extends { readonly name: string }>(
  things: readonly T[],
  kindRank: number,
  wanted: string,
  placeOf: (thing: T) => FoundPlace,
): readonly Ranked[] {
  return things.flatMap((thing) => {
    const rank = rankOf(thing.name.toLowerCase(), wanted);
    return rank === undefined ? [] : [{ place: placeOf(thing), rank: rank * 4 + kindRank }];
  });
}

function namesOf(book: Book, sheet: SheetView): readonly { readonly name: string; readonly slot: number }[] {
  if (sheet.oneRow) return [];
  return Array.from(rows(book, sheet.id), (slot) => ({ name: rowName(book, sheet.id, slot), slot }));
}

function sheetPlace({ id, name, question }: SheetView): FoundPlace {
  return { kind: 'sheet', name, within: question, sheet: id, row: undefined, column: undefined };
}

function placeIn(
  sheet: SheetView,
  kind: 'row' | 'column',
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
