// Which rows of another sheet each reading row chose by its conditions, kept for other calls with the same conditions: a bed's week is
// asked for the length that is taken, for what stands there and for the families of it. Called by range-plans.ts alone.

import { type Batch, rowAt } from '../kernels/vector.ts';
import type { ColumnDef, Layout, TableDef } from '../layout.ts';
import type { RangedRequest } from './reader.ts';

export class Selections {
  readonly #columns: readonly ColumnDef[];
  readonly #tables: readonly TableDef[];
  #stamp: string | undefined;
  #turn = 0;
  /** By reading row: in which turn its rows were kept, and where in `rows` they stand. */
  #turns: Int32Array = new Int32Array(0);
  #from: Int32Array = new Int32Array(0);
  #counts: Int32Array = new Int32Array(0);
  #rows: Int32Array = new Int32Array(0);
  #used = 0;
  /** How many calls have these conditions: with one alone nothing is kept. */
  calls = 0;

  constructor(columns: readonly ColumnDef[], tables: readonly TableDef[]) {
    this.#columns = columns;
    this.#tables = tables;
  }

  get isShared(): boolean {
    return this.calls > 1;
  }

  /** The rows chosen stand in this list: those of a row from `from` on, so many. */
  get rows(): Int32Array {
    return this.#rows;
  }

  from(row: number): number {
    return this.#from[row] as number;
  }

  count(row: number): number {
    return this.#counts[row] as number;
  }

  /** Whether what every row of a batch chose is known; forgets all where anything that is asked became another. */
  knowsAll(batch: Batch): boolean {
    const { frame, count } = batch;
    const stamp = frame.stampOf(this.#columns, this.#tables);
    if (stamp !== this.#stamp) {
      this.#stamp = stamp;
      this.#turn += 1;
      this.#used = 0;
      return false;
    }
    const turns = this.#turns;
    const turn = this.#turn;
    for (let i = 0; i < count; i++) if (turns[rowAt(batch, i)] !== turn) return false;
    return true;
  }

  /** Keeps what a reading row chose: the first so many of a list. */
  keep(row: number, chosen: Int32Array, count: number): void {
    // Beside a row of which nothing can be known all of a batch are looked at again.
    if (this.#turns[row] === this.#turn) return;
    if (this.#used + count > this.#rows.length) this.#rows = longer(this.#rows, this.#used + count);
    for (let k = 0; k < count; k++) this.#rows[this.#used + k] = chosen[k] as number;
    this.#put(row, this.#used, count);
    this.#used += count;
  }

  /** A row chose what another did. */
  keepSame(row: number, as: number): void {
    if (this.#turns[row] !== this.#turn) this.#put(row, this.from(as), this.count(as));
  }

  #put(row: number, from: number, count: number): void {
    if (row >= this.#turns.length) {
      this.#turns = longer(this.#turns, row + 1);
      this.#from = longer(this.#from, row + 1);
      this.#counts = longer(this.#counts, row + 1);
    }
    this.#turns[row] = this.#turn;
    this.#from[row] = from;
    this.#counts[row] = count;
  }
}

function longer(list: Int32Array, needed: number): Int32Array {
  const made = new Int32Array(Math.max(needed, 1024, list.length * 2));
  made.set(list);
  return made;
}

const kept = new WeakMap<Layout, Map<string, Selections>>();

/** The same for calls of one program with the same conditions; undefined where these are not all of columns that can be named. */
export function selectionsOf(
  layout: Layout,
  reading: TableDef,
  { table, keys, sources, filters, conditions }: RangedRequest,
): Selections | undefined {
  if (filters.length > 0 || sources.some(({ by }) => by === 'any')) return undefined;
  const asking = sources.flatMap((source) =>
    source.by === 'column' ? [layout.column(reading.id, source.column)] : [],
  );
  const wanted = conditions.map((one) => one.wanted);
  const asked = conditions.map(({ column }) => column);
  const keyed = keys.map((key) => layout.column(table, key));
  const name = JSON.stringify([
    [reading.id, table],
    [keys, sources],
    conditions.map(({ column, comparison, wanted: bound }) => [column.id, comparison, bound.id]),
  ]);
  const ofProgram = kept.get(layout) ?? new Map<string, Selections>();
  kept.set(layout, ofProgram);
  const known = ofProgram.get(name);
  if (known !== undefined) return known;
  const made = new Selections([...asking, ...wanted, ...asked, ...keyed], [reading, layout.table(table)]);
  ofProgram.set(name, made);
  return made;
}
