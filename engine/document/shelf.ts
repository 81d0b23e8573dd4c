// Contents that stand in no column just now: of columns that are gone, of rows that were removed or that no data makes at
// present, and what a column can't hold any more. Nothing typed is dropped: when its place comes back, so does it. For
// rows that follow from other data everything typed stays here too, since such rows come and go.

import type { Content } from './content.ts';

type Cells = Map<string, Content>;
type Rows = Map<string, Cells>;
type Sheets = Map<string, Rows>;

export interface ShelvedCell {
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
  readonly content: Content;
}

const NO_ROWS: ReadonlyMap<string, ReadonlyMap<string, Content>> = new Map();
const NO_CELLS: ReadonlyMap<string, Content> = new Map();

export class Shelf {
  #sheets: Sheets;
  /** Another shelf holds the same maps: they are copied before they are written. */
  #shared: boolean;

  constructor(sheets: Sheets = new Map(), shared = false) {
    this.#sheets = sheets;
    this.#shared = shared;
  }

  copy(): Shelf {
    this.#shared = true;
    return new Shelf(this.#sheets, true);
  }

  /** The cells of a row, by column. */
  cells(sheet: string, row: string): ReadonlyMap<string, Content> {
    return this.#sheets.get(sheet)?.get(row) ?? NO_CELLS;
  }

  content(sheet: string, row: string, column: string): Content {
    return this.cells(sheet, row).get(column) ?? null;
  }

  /** The rows of a sheet that have anything here. */
  rows(sheet: string): ReadonlyMap<string, ReadonlyMap<string, Content>> {
    return this.#sheets.get(sheet) ?? NO_ROWS;
  }

  get isEmpty(): boolean {
    return this.#sheets.size === 0;
  }

  /** Puts a content here; null takes it away. */
  put(sheet: string, row: string, column: string, content: Content): void {
    if (content === null && this.content(sheet, row, column) === null) return;
    this.#own();
    const rows = under(this.#sheets, sheet);
    const cells = under(rows, row);
    if (content !== null) cells.set(column, content);
    else {
      cells.delete(column);
      if (cells.size === 0) rows.delete(row);
      if (rows.size === 0) this.#sheets.delete(sheet);
    }
  }

  *all(): Iterable<ShelvedCell> {
    for (const [sheet, rows] of this.#sheets) {
      for (const [row, cells] of rows) {
        for (const [column, content] of cells) yield { sheet, row, column, content };
      }
    }
  }

  #own(): void {
    if (!this.#shared) return;
    const copied: Sheets = new Map();
    for (const [sheet, rows] of this.#sheets) {
      copied.set(sheet, new Map([...rows].map(([row, cells]) => [row, new Map(cells)])));
    }
    this.#sheets = copied;
    this.#shared = false;
  }
}

function under<T>(map: Map<string, Map<string, T>>, key: string): Map<string, T> {
  let found = map.get(key);
  if (found === undefined) {
    found = new Map();
    map.set(key, found);
  }
  return found;
}
