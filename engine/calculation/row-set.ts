// A set of rows that grows during one pass and is emptied after it: a list without repeats, or all rows. Row lists travel
// along the graph's edges as these.

import { slotsUpTo } from './row-order.ts';

/** Where one row in so many is there, going through the marks costs less than sorting, and sharing them less than adding each. */
const DENSE = 16;
/** So few rows are sorted and added whatever room they have. */
const FEW = 64;
const rowsOf = (length: number) => new Int32Array(length);
const marksOf = (length: number) => new Uint8Array(length);
const NO_ROWS = rowsOf(0);
const NO_MARKS = marksOf(0);

/** Has no room before a row is added: many only ever hold all rows. */
export class RowSet {
  all = false;
  #rows: Int32Array<ArrayBuffer> = NO_ROWS;
  #marks = NO_MARKS;
  count = 0;
  /** Whether another set has the same lists: they are copied before a row is added. */
  #shared = false;

  get empty(): boolean {
    return !this.all && this.count === 0;
  }

  add(row: number): void {
    if (this.all || this.#marks[row] === 1) return;
    if (this.#shared) this.#own();
    if (row >= this.#marks.length) this.#marks = roomFor(this.#marks, Math.max(row + 1, 64), marksOf);
    this.#marks[row] = 1;
    if (this.count === this.#rows.length) this.#rows = roomFor(this.#rows, Math.max(this.count + 1, 16), rowsOf);
    this.#rows[this.count++] = row;
  }

  addAll(): void {
    this.#forget();
    this.all = true;
  }

  /** All rows of so many, as a list of them. */
  listAll(length: number): void {
    this.#forget();
    this.all = false;
    this.#rows = slotsUpTo(length);
    this.#marks = marksOf(length).fill(1);
    this.count = length;
  }

  addFrom(other: RowSet): void {
    if (other.all) this.addAll();
    else if (this.empty && other.#isDense) this.#share(other);
    else if (other.count > FEW) this.#addEach(other);
    else for (let i = 0; i < other.count; i++) this.add(other.at(i));
  }

  /** As add() of each, with the room made once. What feeds a step mostly names the same rows from each side: then none is new. */
  #addEach(other: RowSet): void {
    if (this.all) return;
    const fresh = this.#missing(other);
    if (fresh === 0) return;
    const isInOther = other.count - fresh === this.count;
    if (isInOther && this.#shared && other.#isDense) {
      this.#share(other);
      return;
    }
    const isShared = this.#shared;
    // No more room than the other has: it holds the other's rows, and doubling it from set to set would know no end.
    const marks = this.#marksLike(other);
    const rows = roomFor(this.#rows, this.count + fresh, rowsOf, isShared);
    const given = other.#rows;
    let { count } = this;
    for (let i = 0; i < other.count; i++) {
      const row = given[i] as number;
      if (marks[row] === 1) continue;
      marks[row] = 1;
      rows[count++] = row;
    }
    this.#marks = marks;
    this.#rows = rows;
    this.#shared = false;
    this.count = count;
  }

  /** Its marks, with room for another's, and nobody else's. */
  #marksLike({ room }: RowSet): typeof NO_MARKS {
    if (!this.#shared && room <= this.room) return this.#marks;
    const marks = marksOf(Math.max(room, this.room));
    marks.set(this.#marks);
    return marks;
  }

  /** Up to which row it has room to mark. */
  get room(): number {
    return this.#marks.length;
  }

  /** How many rows of another are not here. */
  #missing(other: RowSet): number {
    const marks = this.#marks;
    const given = other.#rows;
    let count = 0;
    for (let i = 0; i < other.count; i++) if (marks[given[i] as number] !== 1) count++;
    return count;
  }

  /** Whether much of the room it has is used. */
  get #isDense(): boolean {
    return this.count > FEW && this.count * DENSE > this.#marks.length;
  }

  /** Of one that is empty. */
  #share(other: RowSet): void {
    this.#rows = other.#rows;
    this.#marks = other.#marks;
    this.count = other.count;
    this.#shared = true;
    other.#shared = true;
  }

  #own(): void {
    this.#rows = this.#rows.slice();
    this.#marks = this.#marks.slice();
    this.#shared = false;
  }

  copy(): RowSet {
    const copy = new RowSet();
    copy.addFrom(this);
    return copy;
  }

  /** The i-th row added; only where not `all`. */
  at(i: number): number {
    return this.#rows[i] ?? 0;
  }

  has(row: number): boolean {
    return this.all || this.#marks[row] === 1;
  }

  /** The rows in rising order, as a view that is good until the next change. */
  sorted(): Int32Array {
    const rows = this.#rows.subarray(0, this.count);
    if (this.#isDense) this.#listMarks(rows);
    else if (this.count > 1) rows.sort();
    return rows;
  }

  /** Takes the first out, so many, as sorted() has them. */
  dropFirst(count: number): void {
    this.sorted();
    if (this.#shared) this.#own();
    for (let i = 0; i < count; i++) this.#marks[this.#rows[i] as number] = 0;
    this.#rows.copyWithin(0, count, this.count);
    this.count -= count;
  }

  #listMarks(into: Int32Array): void {
    const marks = this.#marks;
    let count = 0;
    for (let row = 0; count < into.length; row++) if (marks[row] === 1) into[count++] = row;
  }

  clear(): void {
    this.#forget();
    this.all = false;
  }

  #forget(): void {
    if (this.#shared) {
      this.#rows = NO_ROWS;
      this.#marks = NO_MARKS;
      this.#shared = false;
    } else for (let i = 0; i < this.count; i++) this.#marks[this.#rows[i] ?? 0] = 0;
    this.count = 0;
  }
}

/** None, for whoever asks and adds nothing. */
export const NOTHING = new RowSet();

/** The rows of either of two sets, as one of them where the other has none. */
export function inEither(one: RowSet | undefined, other = NOTHING): RowSet {
  if (one === undefined || one.empty) return other;
  if (other.empty) return one;
  const both = one.copy();
  both.addFrom(other);
  return both;
}

/** A list with room for so many, the same where it has it and is nobody else's too. */
function roomFor<T extends Int32Array | Uint8Array>(
  list: T,
  needed: number,
  make: (length: number) => T,
  isShared = false,
): T {
  if (needed <= list.length && !isShared) return list;
  const larger = make(needed <= list.length ? list.length : Math.max(needed, list.length * 2));
  larger.set(list);
  return larger;
}
