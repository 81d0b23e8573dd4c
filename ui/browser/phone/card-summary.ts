// What a card says of its row besides its name: a few figures that tell rows apart. Pure; the list of cards calls it.

import { type Book, cellView, type SheetView } from '../../../engine/index.ts';
import { columnOf } from '../store/sheets.ts';
import { inWords } from '../store/shown.ts';

/** By sheet, for those whose first columns aren't the telling ones. A test holds the ids against the sheets. */
export const TELLING: Readonly<Record<string, readonly string[]>> = {
  plantings: ['variety', 'bed', 'in-row-spacing', 'planted-out', 'harvest', 'marketable-yield'],
  varieties: ['crop', 'suits-this-farm', 'seeds-needed'],
  'seed-lots': ['variety', 'seeds-in-lot', 'germination-at-sowing', 'advice'],
  beds: ['field', 'length', 'width', 'free-length', 'next-free-date'],
  'seed-order': ['seeds-to-buy', 'packs', 'supplier', 'cost'],
  packs: ['variety', 'supplier', 'seeds', 'price'],
  crops: ['family', 'in-row-spacing', 'rows-per-bed', 'days-to-maturity'],
};

/** At most so many on a card of any other sheet. */
const SHOWN = 4;

export interface Told {
  readonly id: string;
  readonly name: string;
  readonly text: string;
}

/** At most so many where a view says which. */
const OF_A_VIEW = 8;

/** Names and values of the telling columns that are filled; of a view's where one is asked for. */
export function tellingOf(book: Book, sheet: SheetView, slot: number, view?: readonly string[]): readonly Told[] {
  const telling = view ?? TELLING[sheet.id];
  const columns =
    telling === undefined
      ? sheet.columns.filter(({ id, role }) => id !== sheet.key && role !== 'made')
      : telling.flatMap((id) => columnOf(sheet, id) ?? []);
  const told = columns.map(({ id, name }) => ({ id, name, text: inWords(cellView(book, sheet.id, slot, id)) }));
  return told.filter(({ text }) => text !== '').slice(0, view === undefined ? (telling?.length ?? SHOWN) : OF_A_VIEW);
}

/** Whether a row's name or what its card says holds every word looked for. */
export function answers(name: string, told: readonly Told[], wanted: string): boolean {
  const text = [name, ...told.map((each) => each.text)].join(' ').toLowerCase();
  return wanted
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
