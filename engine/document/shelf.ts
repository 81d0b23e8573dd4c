// Contents that stand in no column just now: of columns that are gone, of rows that were removed or that no data makes at
// present, and what a column can't hold any more. Nothing typed is dropped: when its place comes back, so does it. For
// rows that follow from other data everything typed stays here too, since such rows come and go.

import type { Content } from './content.ts';

type Cells = Map<string, Content>;

/** A row that went with many others, as it stood among them; made into cells when somebody asks. */
interface Line {
  readonly columns: readonly string[];
  readonly cells: readonly Content[];
}

type Rows = Map<string, Cells | Line>;
type Sheets = Map<string, Rows>;

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
    const rows = this.#sheets.get(sheet);
    const found = rows?.get(row);
    if (rows === undefined || found === undefined) return NO_CELLS;
    if (found instanceof Map) return found;
    const cells = cellsOf(found);
    rows.set(row, cells);
    return cells;
  }

  content(sheet: string, row: string, column: string): Content {
    return this.cells(sheet, row).get(column) ?? null;
  }

  /** Whether any row of a sheet has anything here. */
  has(sheet: string): boolean {
    return this.#sheets.has(sheet);
  }

  /** Sheets of which anything is here. */
  sheets(): readonly string[] {
    return [...this.#sheets.keys()];
  }

  /** The rows of a sheet that have anything here. */
  rows(sheet: string): readonly string[] {
    return [...(this.#sheets.get(sheet)?.keys() ?? [])];
  }

  get isEmpty(): boolean {
    return this.#sheets.size === 0;
  }

  /** Puts a content here; null takes it away. */
  put(sheet: string, row: string, column: string, content: Content): void {
    if (content === null && this.content(sheet, row, column) === null) return;
    this.#own();
    const rows = under(this.#sheets, sheet);
    const there = rows.get(row);
    const cells = there instanceof Map ? there : there === undefined ? new Map<string, Content>() : cellsOf(there);
    rows.set(row, cells);
    if (content !== null) cells.set(column, content);
    else {
      cells.delete(column);
      if (cells.size === 0) rows.delete(row);
      if (rows.size === 0) this.#sheets.delete(sheet);
    }
  }

  /** Puts all that rows hold here, in place of what was here of them. */
  putLines(
    sheet: string,
    columns: readonly string[],
    lines: readonly { readonly row: string; readonly cells: readonly Content[] }[],
  ): void {
    if (columns.length === 0) return;
    this.#own();
    const rows = under(this.#sheets, sheet);
    for (const { row, cells } of lines) rows.set(row, { columns, cells });
  }

  /** Takes away and gives all that is here of a row; undefined where it went with others as this line, and nothing changed since. */
  take(sheet: string, row: string, line: readonly Content[]): ReadonlyMap<string, Content> | undefined {
    const found = this.#sheets.get(sheet)?.get(row);
    if (found === undefined) return NO_CELLS;
    this.#own();
    const rows = this.#sheets.get(sheet);
    rows?.delete(row);
    if (rows?.size === 0) this.#sheets.delete(sheet);
    if (found instanceof Map) return found;
    return found.cells === line ? undefined : cellsOf(found);
  }

  #own(): void {
    if (!this.#shared) return;
    const copied: Sheets = new Map();
    for (const [sheet, rows] of this.#sheets) {
      copied.set(sheet, new Map([...rows].map(([row, cells]) => [row, cells instanceof Map ? new Map(cells) : cells])));
    }
    this.#sheets = copied;
    this.#shared = false;
  }
}

function cellsOf({ columns, cells }: Line): Cells {
  return new Map(
    columns.flatMap((column, i): [string, Content][] => {
      const content = cells[i] ?? null;
      return content === null ? [] : [[column, content]];
    }),
  );
}

function under<T>(map: Map<string, Map<string, T>>, key: string): Map<string, T> {
  let found = map.get(key);
  if (found === undefined) {
    found = new Map();
    map.set(key, found);
  }
  return found;
}
