// What a person typed in one column, beside the values: which computed cells were typed over, and in which unit a cell was
// typed where it was not the column's own. Kept in frames; the document writes it, the column's node reads it.

import type { Unit } from '../units/unit.ts';
import type { Token } from '../values/column.ts';

/** Units that cells were typed in, each with a number; grows for as long as the workbook is open. */
export class TypedUnits {
  readonly #units: Unit[] = [];
  readonly #numbers = new Map<string, number>();

  /** The number of a unit; 0 is no unit of its own. */
  number(unit: Unit | undefined): number {
    if (unit === undefined) return 0;
    const known = this.#numbers.get(unit.symbol);
    if (known !== undefined) return known;
    this.#units.push(unit);
    this.#numbers.set(unit.symbol, this.#units.length);
    return this.#units.length;
  }

  unit(number: number): Unit | undefined {
    return number === 0 ? undefined : this.#units[number - 1];
  }
}

export class TypedCells {
  /** Rows whose computed cell a person typed over. */
  readonly over: Set<number>;
  #units: Uint32Array;
  owner: Token | undefined;

  constructor(owner: Token, over: Set<number> = new Set(), units: Uint32Array = new Uint32Array(0)) {
    this.owner = owner;
    this.over = over;
    this.#units = units;
  }

  copy(owner: Token): TypedCells {
    return new TypedCells(owner, new Set(this.over), this.#units.slice());
  }

  /** The number of the unit that a cell was typed in; 0 where it was the column's. */
  unitNumber(row: number): number {
    return this.#units[row] ?? 0;
  }

  setUnit(row: number, number: number): void {
    if (row >= this.#units.length) {
      if (number === 0) return;
      const units = new Uint32Array(Math.max(row + 1, this.#units.length * 2));
      units.set(this.#units);
      this.#units = units;
    }
    this.#units[row] = number;
  }

  /** Whether there is anything to forget about a row. */
  isMarked(row: number): boolean {
    return this.over.has(row) || this.unitNumber(row) !== 0;
  }

  forget(row: number): void {
    this.over.delete(row);
    this.setUnit(row, 0);
  }
}
