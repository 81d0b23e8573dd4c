// The workbook's columns inside hyperformula: each that a paper names stands on a sheet of its own, hidden behind the name, and
// follows the workbook. Nothing goes the other way. room.ts calls it.

import type { HyperFormula, RawCellContent } from 'hyperformula';
import { type Book, type ChangeSet, cellValue, isError, rowName, rows, type Scalar } from '../../engine/index.ts';
import { type Measure, plainFigure } from './figures.ts';
import type { ColumnNames, NamedColumn } from './names.ts';

/** Cells that are put one by one; more at once are put as a whole column. */
const FEW = 50;

interface Standing {
  readonly named: NamedColumn;
  /** hyperformula's number of the sheet it stands on. */
  readonly sheet: number;
  length: number;
}

function measureOfColumn({ column: { type }, unit }: NamedColumn): Measure {
  if (unit !== undefined) return { is: 'number', unit };
  return type?.kind === 'date' ? { is: 'date' } : { is: 'as is' };
}

export class Tables {
  readonly #engine: HyperFormula;
  readonly #book: Book;
  readonly #names: ColumnNames;
  readonly #standing = new Map<string, Standing>();

  constructor(engine: HyperFormula, book: Book, names: ColumnNames) {
    this.#engine = engine;
    this.#book = book;
    this.#names = names;
  }

  /** Puts the columns of these names there, where they are none yet and the workbook has them. */
  want(names: Iterable<string>): void {
    for (const name of names) {
      const key = name.toLowerCase();
      const named = this.#standing.has(key) ? undefined : this.#names.find(name);
      if (named === undefined) continue;
      const engine = this.#engine;
      const title = engine.addSheet(`·${this.#standing.size + 1}`);
      const sheet = engine.getSheetId(title);
      if (sheet === undefined) continue;
      const standing = { named, sheet, length: 0 };
      this.#standing.set(key, standing);
      standing.length = this.#fill(standing);
    }
  }

  /**
   * The cells that a name stands for, as a formula has them; undefined for a name that is none here. Formulas are given cells
   * and no name, since hyperformula must know how many there are before it works a formula out.
   */
  cellsOf(name: string): string | undefined {
    const standing = this.#standing.get(name.toLowerCase());
    if (standing === undefined) return undefined;
    const title = this.#engine.getSheetName(standing.sheet) ?? '';
    return `'${title}'!$A$1:$A$${Math.max(1, standing.length)}`;
  }

  /** What a column counts in, by hyperformula's number of the sheet that it stands on. */
  measureOn(sheet: number): Measure | undefined {
    for (const standing of this.#standing.values())
      if (standing.sheet === sheet) return measureOfColumn(standing.named);
    return undefined;
  }

  /** Brings what stands here in line with what changed. Gives the names, in small letters, that stand for more or fewer cells now. */
  follow(change: ChangeSet): ReadonlySet<string> {
    const lengths = new Map([...this.#standing].map(([key, { length }]) => [key, length]));
    for (const standing of this.#standing.values()) {
      const { sheet, column } = standing.named;
      if (change.rowsOf.includes(sheet.id)) this.#refill(standing);
      else {
        const changed = change.cells.find((one) => one.sheet === sheet.id && one.column === column.id);
        if (changed === undefined) this.#followNames(standing, change);
        else if (changed.rows === 'all' || changed.rows.length > FEW) this.#refill(standing);
        else this.#putCells(standing, changed.rows);
      }
    }
    return new Set([...this.#standing].flatMap(([key, { length }]) => (lengths.get(key) === length ? [] : [key])));
  }

  /** A link reads as the row it names, whose name may have changed. */
  #followNames(standing: Standing, change: ChangeSet): void {
    const { type } = standing.named.column;
    if (type?.kind !== 'link') return;
    const touched = change.rowsOf.includes(type.table) || change.cells.some(({ sheet }) => sheet === type.table);
    if (touched) this.#refill(standing);
  }

  #putCells({ named, sheet }: Standing, changed: Int32Array): void {
    const places = new Map<number, number>();
    for (const [row, slot] of rows(this.#book, named.sheet.id).entries()) places.set(slot, row);
    for (const slot of changed) {
      const row = places.get(slot);
      if (row !== undefined) this.#engine.setCellContents({ sheet, row, col: 0 }, [[this.#cell(named, slot)]]);
    }
  }

  #refill(standing: Standing): void {
    standing.length = this.#fill(standing);
  }

  /** How many rows it has. */
  #fill({ named, sheet }: Standing): number {
    const slots = rows(this.#book, named.sheet.id);
    const cells = Array.from(slots, (slot) => [this.#cell(named, slot)]);
    this.#engine.setSheetContent(sheet, cells.length === 0 ? [[null]] : cells);
    return slots.length;
  }

  #cell(named: NamedColumn, slot: number): RawCellContent {
    const { sheet, column } = named;
    const value = cellValue(this.#book, sheet.id, slot, column.id);
    if (isError(value)) return '#VALUE!';
    const { type } = column;
    if (type?.kind === 'link') return typeof value === 'number' ? asText(rowName(this.#book, type.table, value)) : null;
    if (type?.kind === 'date') return typeof value === 'number' ? dateOf(value) : null;
    return asText(plainFigure(value, measureOfColumn(named)));
  }
}

/** A text stays a text, whatever it looks like. */
function asText(value: Scalar): RawCellContent {
  if (typeof value === 'string') return `'${value}`;
  return isError(value) ? '#VALUE!' : value;
}

/** hyperformula takes days as dates of this place. */
function dateOf(civil: number): Date {
  const day = new Date(civil * 86_400_000);
  return new Date(day.getUTCFullYear(), day.getUTCMonth(), day.getUTCDate());
}
