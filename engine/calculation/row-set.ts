// A set of rows that grows during one pass and is emptied after it: a list without repeats, or all rows. Row lists travel
// along the graph's edges as these.

/** So many marks are looked at in the time that sorting one row takes. */
const SORTS_AS = 16;
/** Up to so many rows are added one by one. */
const FEW = 16;
const NO_ROWS = new Int32Array(0);
const NO_MARKS = new Uint8Array(0);

/** Has no room before a row is added: many only ever hold all rows. */
export class RowSet {
  all = false;
  #rows = NO_ROWS;
  #marks = NO_MARKS;
  count = 0;

  get empty(): boolean {
    return !this.all && this.count === 0;
  }

  add(row: number): void {
    if (this.all) return;
    if (row >= this.#marks.length) {
      const marks = new Uint8Array(Math.max(row + 1, this.#marks.length * 2, 64));
      marks.set(this.#marks);
      this.#marks = marks;
    }
    if (this.#marks[row] === 1) return;
    this.#marks[row] = 1;
    if (this.count === this.#rows.length) {
      const rows = new Int32Array(Math.max(16, this.count * 2));
      rows.set(this.#rows);
      this.#rows = rows;
    }
    this.#rows[this.count++] = row;
  }

  addAll(): void {
    this.#forget();
    this.all = true;
  }

  addFrom(other: RowSet): void {
    if (other.all) this.addAll();
    else if (this.empty && other.count > FEW) this.#take(other);
    else for (let i = 0; i < other.count; i++) this.add(other.at(i));
  }

  /** Of one that is empty. */
  #take(other: RowSet): void {
    if (this.#marks.length < other.#marks.length) this.#marks = other.#marks.slice();
    else for (let i = 0; i < other.count; i++) this.#marks[other.#rows[i] as number] = 1;
    if (this.#rows.length < other.count) this.#rows = new Int32Array(other.#rows.length);
    this.#rows.set(other.#rows.subarray(0, other.count));
    this.count = other.count;
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
    // Going through the marks costs less than sorting where many of them are set.
    if (this.count > 64 && this.count * SORTS_AS > this.#marks.length) this.#listMarks(rows);
    else if (this.count > 1) rows.sort();
    return rows;
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
    for (let i = 0; i < this.count; i++) this.#marks[this.#rows[i] ?? 0] = 0;
    this.count = 0;
  }
}
