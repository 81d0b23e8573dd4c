// A conditional total kept per group: one value for each group of the source table's rows, folded from one column over the
// rows that meet the fixed conditions. Cells of other tables read it by key, so a total is worked out once however many
// cells show it.

import type { Fold } from '../functions/definition.ts';
import { BLANK, Column, FAULT, FILLED } from '../values/column.ts';
import type { Faults } from '../values/texts.ts';
import type { GroupIndex } from './group-index.ts';

/** Whether a stored value of a column meets a condition. */
export interface RowFilter {
  readonly column: Column;
  readonly meets: (value: number, state: number) => boolean;
  /** Where the column holds links: the keys that their rows are known by, which the condition rests on too. */
  readonly keys?: Column;
}

/** Room for gathering a group's numbers; grows with the largest group. */
export class Gathering {
  values = new Float64Array(1024);
  count = 0;
  /** The number of the first fault met, if any. */
  fault: number | undefined;

  start(room: number): void {
    if (room > this.values.length) this.values = new Float64Array(room * 2);
    this.count = 0;
    this.fault = undefined;
  }

  /** Takes in one stored value as the fold wants it. */
  take(fold: Fold, value: number, state: number): void {
    if (state === FILLED) {
      if (fold.takes !== 'blanks') this.values[this.count++] = value;
    } else if (state === BLANK) {
      if (fold.takes === 'blanks') this.values[this.count++] = 0;
    } else if (fold.takes === 'filled') this.values[this.count++] = 0;
    else if (fold.takes === 'numbers' && this.fault === undefined) this.fault = value;
  }

  /** Folds what was taken in and writes it as a cell. */
  finish(fold: Fold, into: Column, slot: number, faults: Faults): boolean {
    if (this.fault !== undefined) return into.write(slot, this.fault, FAULT);
    const result = fold.fold(this.values, this.count);
    if (result - result === 0) return into.write(slot, result, FILLED);
    if (fold.undefinedMeans === 'blank') return into.write(slot, 0, BLANK);
    return into.write(slot, faults.number(fold.undefinedMeans), FAULT);
  }
}

export class Rollup {
  readonly index: GroupIndex;
  readonly column: Column | undefined;
  readonly filters: readonly RowFilter[];
  readonly fold: Fold;
  /** One cell a group; the last but one slot past the groups is not used. */
  readonly totals = new Column(false);
  /** The fold of no rows at all, for keys that no row has. */
  readonly nothing = new Column(false);
  readonly #faults: Faults;
  readonly #gathering = new Gathering();

  /** `column` undefined: rows are counted rather than values. */
  constructor(
    index: GroupIndex,
    column: Column | undefined,
    filters: readonly RowFilter[],
    fold: Fold,
    faults: Faults,
  ) {
    this.index = index;
    this.column = column;
    this.filters = filters;
    this.fold = fold;
    this.#faults = faults;
    this.nothing.grow(1);
    this.#gathering.start(0);
    this.#gathering.finish(fold, this.nothing, 0, faults);
  }

  /** Works one group out again; true where its total changed. */
  refresh(group: number): boolean {
    this.totals.grow(this.index.groupCount);
    const { rows, count } = this.index.members(group);
    this.#gathering.start(count);
    const { column, filters, fold } = this;
    if (column === undefined && filters.length === 0 && fold.takes !== 'blanks') {
      this.#gathering.values.fill(1, 0, count);
      this.#gathering.count = count;
    } else if (column === undefined) {
      for (let i = 0; i < count; i++) if (this.#meets(rows[i] ?? 0)) this.#gathering.take(fold, 1, FILLED);
    } else if (filters.length === 0 && column.exceptions === 0 && fold.takes !== 'blanks') {
      const gathered = this.#gathering.values;
      const { values } = column;
      for (let i = 0; i < count; i++) gathered[i] = values[rows[i] as number] as number;
      this.#gathering.count = count;
    } else {
      for (let i = 0; i < count; i++) {
        const row = rows[i] ?? 0;
        if (filters.length === 0 || this.#meets(row)) {
          this.#gathering.take(fold, column.values[row] ?? 0, column.states[row] ?? BLANK);
        }
      }
    }
    return this.#gathering.finish(fold, this.totals, group, this.#faults);
  }

  #meets(row: number): boolean {
    for (const filter of this.filters) {
      if (!filter.meets(filter.column.values[row] ?? 0, filter.column.states[row] ?? BLANK)) return false;
    }
    return true;
  }
}
