// Rows and cells of a workbook file as the document has them. What is no entry is kept as the text it stands as, a column
// without an id gets one, a row without one is left out: each with a sentence. workbook-file.ts calls it.

import type { Content } from '../document/content.ts';
import type { RowData } from '../document/data.ts';
import { POSITION } from '../document/positions.ts';
import { ROW_ID } from '../schema/id.ts';
import { type ById, entry } from '../schema/records.ts';
import { isFields } from '../schema/shape.ts';
import { civilDayOfIso } from '../values/civil.ts';
import type { FileRows } from './workbook-shape.ts';

/** Sentences that a badly damaged file gives at most. */
export const MOST_NOTES = 50;

/** Sentences on rows and cells, as many as somebody reads. */
export class Notes {
  leftOut = false;
  readonly #notes: string[] = [];
  #more = 0;

  add(note: string): void {
    if (this.#notes.length < MOST_NOTES) this.#notes.push(note);
    else this.#more += 1;
  }

  told(): readonly string[] {
    return this.#more === 0 ? this.#notes : [...this.#notes, `And so it is in ${this.#more} more places.`];
  }
}

/** What is kept aside of a sheet's row, by column. Where the row itself has an entry that one stays, and what was aside is told. */
export function asideCells(sheet: string, cells: ById<unknown>, inRow: ById<Content>, notes: Notes): ById<Content> {
  return Object.fromEntries(
    Object.entries(cells).map(([column, cell]) => {
      if (entry(inRow, column) != null) {
        const found = JSON.stringify(cell).slice(0, 40);
        notes.add(
          `“${sheet}” has an entry under “${column}” twice, in the row and aside: the row’s stays, aside was “${found}”.`,
        );
      }
      const content = readCell(cell, (found) => {
        notes.add(`What is kept aside of “${sheet}” holds ${found} under “${column}”, which is no entry.`);
      });
      return [column, content ?? null];
    }),
  );
}

/** Reads the rows of one sheet. */
export class RowsReader {
  readonly #sheet: string;
  readonly #rows: FileRows;
  readonly #notes: Notes;
  readonly #seen = new Set<string>();

  constructor(sheet: string, rows: FileRows, notes: Notes) {
    this.#sheet = sheet;
    this.#rows = rows;
    this.#notes = notes;
  }

  read(): readonly RowData[] {
    const back = new Set(this.#rows.broughtBack);
    const columns = this.#columns();
    return this.#rows.rows.flatMap((row, i): RowData[] => {
      const [id, at, ...cells] = row;
      if (typeof id !== 'string' || !ROW_ID.test(id)) return this.#leftOut(i, 'has no id that can be used');
      if (this.#seen.has(id)) return this.#leftOut(i, `has the id “${id.slice(0, 40)}” of a row above it`);
      if (typeof at !== 'string' || (at !== '' && !POSITION.test(at)))
        return this.#leftOut(i, 'has no place that can be used');
      this.#seen.add(id);
      const contents = cells.flatMap((cell, k): [string, Content][] => {
        const column = columns[k];
        if (column === undefined) {
          if (cell === null) return [];
          this.#notes.leftOut = true;
          this.#note(i, 'has more cells than there are columns; those were left out');
          return [];
        }
        const content = readCell(cell, (found) => {
          this.#note(i, `holds ${found} under “${column}”, which is no entry; it is kept aside`);
        });
        return content === undefined ? [] : [[column, content]];
      });
      return [
        {
          id,
          ...(at === '' ? {} : { at }),
          cells: Object.fromEntries(contents),
          ...(back.has(id) ? { broughtBack: true } : {}),
        },
      ];
    });
  }

  /** The columns by their ids. One without an id that can be used, or with another's, gets one, so that its cells are kept aside. */
  #columns(): readonly string[] {
    const taken = new Set<string>();
    return this.#rows.columns.map((given, k) => {
      let id = given;
      if (id === '' || taken.has(id)) {
        const why = id === '' ? 'has no id that can be used' : `has the id “${id}” of a column before it`;
        this.#notes.add(`Column ${k + 1} of the rows of “${this.#sheet}” ${why}; what stands in it is kept aside.`);
        id = `unnamed-${k + 1}`;
        while (this.#rows.columns.includes(id)) id += '-1';
      }
      taken.add(id);
      return id;
    });
  }

  #leftOut(i: number, why: string): [] {
    this.#notes.leftOut = true;
    this.#note(i, `${why}; it was left out`);
    return [];
  }

  #note(i: number, what: string): void {
    this.#notes.add(`Row ${i + 1} of “${this.#sheet}” ${what}.`);
  }
}

/** A cell's content; undefined for no cell. What can't be read is kept as the text it stands as. */
function readCell(cell: unknown, warn: (found: string) => void): Content | undefined {
  if (cell === null || cell === undefined) return undefined;
  if (typeof cell === 'string' || typeof cell === 'boolean') return cell;
  if (typeof cell === 'number' && Number.isFinite(cell)) return cell;
  if (Array.isArray(cell)) {
    const quantity = readQuantity(cell);
    if (quantity !== undefined) return quantity;
  } else if (isFields(cell)) {
    const names = Object.keys(cell);
    if (names.length === 0) return null;
    const { date, row } = cell;
    if (names.length === 1 && typeof date === 'string' && civilDayOfIso(date) !== undefined) return { date };
    if (names.length === 1 && typeof row === 'string' && ROW_ID.test(row)) return { row };
  }
  const found = typeof cell === 'number' ? String(cell) : JSON.stringify(cell);
  warn(`“${found.slice(0, 40)}”`);
  return found;
}

function readQuantity([number, unit, third, ...more]: readonly unknown[]): Content | undefined {
  if (typeof number !== 'number' || !Number.isFinite(number) || typeof unit !== 'string' || more.length > 0)
    return undefined;
  if (third === undefined) return { number, unit };
  if (third === true) return { number, unit, follows: true };
  return typeof third === 'string' ? { number, unit, shownIn: third } : undefined;
}
