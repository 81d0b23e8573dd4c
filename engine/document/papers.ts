// Scratch papers: free cells for sums on the side, kept as a person typed them, by address. Nothing here is worked out: no
// sheet reads a paper, and what its formulas give is the business of whoever shows it. A copy costs nothing until one of the
// two is written.

import type { ById } from '../schema/records.ts';

/** The last column, ZZ, and the last row of a paper. */
export const PAPER_COLUMNS = 702;
export const PAPER_ROWS = 20_000;

/** Where a cell of a paper stands: 'B12'. */
export const PAPER_CELL = /^[A-Z]{1,2}[1-9][0-9]{0,4}$/;

/** The number of a column by its letters, from 1 for A; small letters count too. */
export function columnOfLetters(letters: string): number {
  let column = 0;
  for (const letter of letters.toUpperCase()) column = column * 26 + letter.charCodeAt(0) - 64;
  return column;
}

export interface PaperData {
  /** Absent where a paper was taken away while another typed on it: what was typed is kept, and the paper with it. */
  readonly name?: string;
  /** What is typed, by address. */
  readonly cells: ById<string>;
}

export interface Paper {
  readonly name: string | null;
  readonly cells: ReadonlyMap<string, string>;
}

const NO_CELLS: ReadonlyMap<string, string> = new Map();

export class Papers {
  readonly #papers: Map<string, Paper>;
  /** Papers whose cells no copy shares. */
  readonly #own = new Map<string, Map<string, string>>();

  constructor(papers: Iterable<readonly [string, Paper]> = []) {
    this.#papers = new Map(papers);
  }

  static of(data: ById<PaperData> = {}): Papers {
    return new Papers(
      Object.entries(data).map(([id, { name = null, cells }]) => [id, { name, cells: new Map(Object.entries(cells)) }]),
    );
  }

  copy(): Papers {
    this.#own.clear();
    return new Papers(this.#papers);
  }

  get size(): number {
    return this.#papers.size;
  }

  all(): Iterable<[id: string, Paper]> {
    return this.#papers;
  }

  /** undefined where there is no such paper and nothing is typed on one. */
  paper(id: string): Paper | undefined {
    return this.#papers.get(id);
  }

  entry(id: string, cell: string): string | null {
    return this.#papers.get(id)?.cells.get(cell) ?? null;
  }

  /** null takes the paper away, but for what is typed on it. */
  name(id: string, name: string | null): void {
    this.#put(id, { name, cells: this.#papers.get(id)?.cells ?? NO_CELLS });
  }

  /** null clears the cell. */
  put(id: string, cell: string, entry: string | null): void {
    const before = this.#papers.get(id);
    if (entry === null && before === undefined) return;
    let cells = this.#own.get(id);
    if (cells === undefined) {
      cells = new Map(before?.cells);
      this.#own.set(id, cells);
    }
    if (entry === null) cells.delete(cell);
    else cells.set(cell, entry);
    this.#put(id, { name: before?.name ?? null, cells });
  }

  #put(id: string, paper: Paper): void {
    if (paper.name === null && paper.cells.size === 0) {
      this.#papers.delete(id);
      this.#own.delete(id);
    } else this.#papers.set(id, paper);
  }
}
