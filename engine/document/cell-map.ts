// Something for single cells, by the ids of sheet, row and column, whether they are there just now or not: notes. A copy costs
// nothing until one of the two is written.

type Cells<T> = Map<string, T>;
type Rows<T> = Map<string, Cells<T>>;
type Sheets<T> = Map<string, Rows<T>>;

export interface MappedCell<T> {
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
  readonly content: T;
}

const NOTHING: ReadonlyMap<string, never> = new Map<string, never>();

export class CellMap<T> {
  #sheets: Sheets<T>;
  /** Another holds the same maps: they are copied before they are written. */
  #shared: boolean;

  constructor(sheets: Sheets<T> = new Map(), shared = false) {
    this.#sheets = sheets;
    this.#shared = shared;
  }

  copy(): CellMap<T> {
    this.#shared = true;
    return new CellMap(this.#sheets, true);
  }

  /** The cells of a row, by column. */
  cells(sheet: string, row: string): ReadonlyMap<string, T> {
    return this.#sheets.get(sheet)?.get(row) ?? NOTHING;
  }

  content(sheet: string, row: string, column: string): T | null {
    return this.#sheets.get(sheet)?.get(row)?.get(column) ?? null;
  }

  /** The rows of a sheet that have anything here. */
  rows(sheet: string): ReadonlyMap<string, ReadonlyMap<string, T>> {
    return this.#sheets.get(sheet) ?? NOTHING;
  }

  /** Puts something here; null takes it away. */
  put(sheet: string, row: string, column: string, content: T | null): void {
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

  *all(): Iterable<MappedCell<T>> {
    for (const [sheet, rows] of this.#sheets) {
      for (const [row, cells] of rows) {
        for (const [column, content] of cells) yield { sheet, row, column, content };
      }
    }
  }

  #own(): void {
    if (!this.#shared) return;
    const copied: Sheets<T> = new Map();
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
