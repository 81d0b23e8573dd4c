// What a card says of its row besides its name: a few figures that tell rows apart. Pure; the list of cards calls it.

import type { TableView, WorkbookFace } from '../../../engine/index.ts';
import { inWords } from '../row-panel/shown.ts';

/** For the sheets whose first columns aren't the telling ones. */
const TELLING: Readonly<Record<string, readonly string[]>> = {
  Plantings: ['Variety', 'Bed', 'In-row spacing', 'Planted out', 'Harvest', 'Marketable yield'],
  Varieties: ['Crop', 'Suits this farm', 'Seeds needed'],
  'Seed lots': ['Variety', 'Seeds in lot', 'Germination at sowing', 'Advice'],
  Beds: ['Field', 'Length', 'Width', 'Free length', 'Next free date'],
  'Seed order': ['Seeds to buy', 'Packs', 'Supplier', 'Cost'],
  Packs: ['Variety', 'Supplier', 'Seeds', 'Price'],
  Crops: ['Family', 'In-row spacing', 'Rows per bed', 'Days to maturity'],
};

/** At most so many on a card of any other sheet. */
const SHOWN = 4;

export interface Told {
  readonly name: string;
  readonly text: string;
}

/** Names and values of the telling columns that are filled. */
export function tellingOf(workbook: WorkbookFace, table: TableView, row: number): readonly Told[] {
  const telling = TELLING[table.name];
  const columns =
    telling === undefined
      ? table.columns.filter(({ name, role }) => name !== table.key && role !== 'made')
      : telling.flatMap((name) => table.columns.find((column) => column.name === name) ?? []);
  const told = columns.map((column) => ({
    name: column.name,
    text: inWords(workbook.cell(table.name, row, column.name), column),
  }));
  return told.filter(({ text }) => text !== '').slice(0, telling?.length ?? SHOWN);
}

/** Whether a row's name or what its card says holds every word looked for. */
export function answers(name: string, told: readonly Told[], wanted: string): boolean {
  const text = [name, ...told.map((each) => each.text)].join(' ').toLowerCase();
  return wanted
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
