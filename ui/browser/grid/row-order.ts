// Which rows stand in the grid and in which order: as the view arranges them, heads before groups, the empty row last or where
// a row is being put in. While a person types, rows stay where they are: a sorted or filtered sheet is arranged anew when it
// is asked for, and says when that would change something.

import {
  type Arrangement,
  arrange,
  type Book,
  type FindingLevel,
  type RowGroup,
  rowId,
  rows,
  type SheetView,
  type View,
} from '../../../engine/index.ts';
import type { RowAt } from '../store/selection.ts';
import { headOf, isRow, type RowHandle, SPARE } from './row-handle.ts';

export interface OrderParts {
  readonly book: Book;
  readonly sheet: () => SheetView;
  readonly view: () => View;
  /** Whether something of a level was found in a row. */
  readonly found: (row: string, level: FindingLevel | 'any') => boolean;
  /** Whether the empty row is offered. */
  readonly offersRow: () => boolean;
}

export class RowOrder {
  readonly #parts: OrderParts;
  readonly #folded = new Set<string>();
  #order: readonly RowAt[] = [];
  #groups: readonly RowGroup[] | undefined;
  #left = 0;
  /** The row before which a new one is being put in; undefined: it stands last. */
  #putBefore: string | undefined;

  constructor(parts: OrderParts) {
    this.#parts = parts;
    this.arrange();
  }

  /** How many rows the filters keep back. */
  get left(): number {
    return this.#left;
  }

  /** Before which row the empty one stands. */
  get putBefore(): string | undefined {
    return this.#putBefore;
  }

  /** Puts every row where the view wants it now. */
  arrange(): void {
    const wanted = this.#wanted();
    this.#order = wanted.rows.map((slot) => this.#at(slot));
    this.#groups = wanted.groups;
    this.#left = wanted.left;
  }

  /**
   * Rows came, went or were moved. Sorted, the others stay where they are and new ones stand last; else all stand in the sheet's
   * order, those that are in sight although a filter would keep them back by now among them.
   */
  follow(): void {
    const { filters = [], sort = [], groupBy } = this.#parts.view();
    if ((filters.length === 0 && sort.length === 0) || groupBy !== undefined) {
      this.arrange();
      return;
    }
    const { book } = this.#parts;
    const { id: sheet } = this.#parts.sheet();
    const there = Array.from(rows(book, sheet), (slot) => this.#at(slot));
    const known = new Set(this.#order.map(({ id }) => id));
    const shown = new Set(this.#wanted().rows);
    const isInSight = ({ id, slot }: RowAt): boolean => known.has(id) || this.#added.has(id) || shown.has(slot);
    const inSight = there.filter(isInSight);
    this.#order = sort.length === 0 ? inSight : this.#asBefore(inSight, known);
    this.#left = there.length - inSight.length;
  }

  /** Those that stood here before in the order in which they did, then those that came. */
  #asBefore(inSight: readonly RowAt[], known: ReadonlySet<string>): readonly RowAt[] {
    const now = new Map(inSight.map((row) => [row.id, row]));
    const stayed = this.#order.flatMap(({ id }) => now.get(id) ?? []);
    return [...stayed, ...inSight.filter(({ id }) => !known.has(id))];
  }

  /** A row that a person added a moment ago stays in sight, whatever the filters say. */
  keepAdded(id: string): void {
    this.#added.add(id);
  }

  readonly #added = new Set<string>();

  #at(slot: number): RowAt {
    return { slot, id: rowId(this.#parts.book, this.#parts.sheet().id, slot) };
  }

  #wanted(): Arrangement {
    const { book, found } = this.#parts;
    return arrange(book, this.#parts.sheet().id, this.#parts.view(), found);
  }

  /** Whether arranging the rows anew would move any of them. */
  isOld(): boolean {
    const { filters = [], sort = [], groupBy } = this.#parts.view();
    if (filters.length === 0 && sort.length === 0 && groupBy === undefined) return false;
    const wanted = this.#wanted().rows;
    return wanted.length !== this.#order.length || wanted.some((slot, at) => slot !== this.#order[at]?.slot);
  }

  // The empty row and groups.

  /** Puts the empty row before another; undefined: last. */
  putSpare(before: string | undefined): void {
    this.#putBefore = before;
  }

  foldGroup(key: string): void {
    if (!this.#folded.delete(key)) this.#folded.add(key);
  }

  /** Folds every group, or opens them all where all are folded. */
  foldAll(): void {
    const keys = this.#groups?.map(({ key }) => key) ?? [];
    const fold = keys.some((key) => !this.#folded.has(key));
    for (const key of keys) {
      if (fold) this.#folded.add(key);
      else this.#folded.delete(key);
    }
  }

  /** Opens the group that holds a row. */
  open(row: string): void {
    const slot = this.#order.find(({ id }) => id === row)?.slot;
    const group = this.#groups?.find((one) => slot !== undefined && one.rows.includes(slot));
    if (group !== undefined) this.#folded.delete(group.key);
  }

  /** Every row of the grid from the top. */
  handles(): RowHandle[] {
    const list = this.#groups === undefined ? [...this.#order] : this.#grouped(this.#groups);
    if (!this.#parts.offersRow()) return list;
    const at = this.#putBefore === undefined ? -1 : list.findIndex(({ id }) => id === this.#putBefore);
    if (at < 0) return [...list, SPARE];
    return [...list.slice(0, at), SPARE, ...list.slice(at)];
  }

  #grouped(groups: readonly RowGroup[]): RowHandle[] {
    return groups.flatMap((group): RowHandle[] => {
      const folded = this.#folded.has(group.key);
      const head = headOf(group, folded);
      return folded ? [head] : [head, ...group.rows.map((slot) => this.#at(slot))];
    });
  }

  /** The rows that no filter keeps back, also those whose group is folded. */
  ids(): ReadonlySet<string> {
    return new Set(this.#order.map(({ id }) => id));
  }

  /** Its number among the rows that the filters leave, whether in a folded group or not; heads and the empty row have none. */
  numberOf(id: string): number | undefined {
    if (this.#numbered !== this.#order) {
      this.#numbered = this.#order;
      this.#numbers = new Map(this.#order.map((row, index) => [row.id, index + 1]));
    }
    return this.#numbers.get(id);
  }

  #numbered: readonly RowAt[] = [];
  #numbers: ReadonlyMap<string, number> = new Map();

  /** How many rows of the sheet are in sight. */
  count(): number {
    return this.#groups === undefined ? this.#order.length : this.handles().filter(isRow).length;
  }
}
