// The node that keeps rows sorted for comparisons, and says which rows of the reading table a change concerns: those whose
// conditions a changed row met before, or meets now. Its changed rows are rows of the reading table.

import { type Column, FILLED } from '../../values/column.ts';
import type { Frame, FrameState } from '../frame.ts';
import type { Members } from '../indexes/group-index.ts';
import { isWithin, type RangeCondition, type RangedRows, type RangeOf, SeenRows } from '../indexes/ranged-rows.ts';
import type { TableDef } from '../layout.ts';
import type { RowSet } from '../row-set.ts';
import { dirtyRows, type Node, Source } from './graph.ts';
import type { IndexNode } from './group-nodes.ts';

/** How the rows that read a group are found. */
export type GroupReaders =
  | { readonly by: 'any' }
  /** The group's key value with this number is the reading row. */
  | { readonly by: 'own row'; readonly key: number }
  /** An index of the reading table by the same keys. */
  | { readonly by: 'index'; readonly index: IndexNode; readonly keys: number };

/** Past this many comparisons it costs less to look at every reading row again than to find out which. */
const MOST_COMPARISONS = 2_000_000;

/** The row that a group is of, from call to call. */
const ONE_ROW: Members = { rows: new Int32Array(1), from: 0, count: 1 };

export class RangeNode implements Node {
  readonly name = '';
  readonly dependencies: Node[] = [];
  readonly source = new Source(this);
  /** The second: rows whose values alone changed, which stand where they stood. */
  readonly lanes = 2;
  rank = 0;
  firstSet = 0;
  readonly of: RangeOf;
  readonly ranged: FrameState<RangedRows>;
  readonly #reading: TableDef;
  readonly #readers: GroupReaders;

  constructor(of: RangeOf, ranged: FrameState<RangedRows>, reading: TableDef, readers: GroupReaders) {
    this.of = of;
    this.ranged = ranged;
    this.#reading = reading;
    this.#readers = readers;
  }

  isKept(frame: Frame): boolean {
    return this.ranged.read(frame).built;
  }

  run(frame: Frame, changed: RowSet): void {
    const dirty = dirtyRows(frame, this);
    const revalued = dirtyRows(frame, this, 1);
    const rows = frame.table(this.of.table).length;
    if (dirty.all || !this.ranged.read(frame).built || dirty.count * 4 > rows) {
      this.ranged.own(frame).fromScratch(frame);
      changed.addAll();
      return;
    }
    if (revalued.all || revalued.count * 4 > rows) changed.addAll();
    const seen = new SeenRows(this.of);
    if (!dirty.empty) this.ranged.own(frame).update(frame, dirty, seen);
    if (changed.all) return;
    const ranged = this.ranged.read(frame);
    for (let i = 0; i < revalued.count; i++) ranged.tell(revalued.at(i), seen);
    const reading = frame.table(this.#reading).length;
    const wanted = this.of.conditions.map((condition) => frame.column(condition.wanted));
    let comparisons = 0;
    // A few readers, as months are, have soon all heard.
    for (let at = 0; at < seen.count && changed.count < reading; at++) {
      const readers = this.#readersOf(frame, seen.group(at));
      const count = readers?.count ?? reading;
      comparisons += count;
      if (comparisons > MOST_COMPARISONS) {
        changed.addAll();
        return;
      }
      for (let i = 0; i < count; i++) {
        const reader = readers === undefined ? i : (readers.rows[readers.from + i] as number);
        if (!changed.has(reader) && this.#meets(wanted, seen, at, reader)) changed.add(reader);
      }
    }
  }

  /** The rows that read a group; undefined where any may. */
  #readersOf(frame: Frame, group: number): Members | undefined {
    const readers = this.#readers;
    if (readers.by === 'any') return undefined;
    const groups = this.of.index.read(frame);
    if (readers.by === 'own row') {
      ONE_ROW.rows[0] = groups.keyValue(group, readers.key);
      return ONE_ROW;
    }
    const index = readers.index.forWayBack(frame);
    if (readers.keys === 1) return index.members(index.findOne(groups.keyValue(group, 0)));
    const key = Array.from({ length: readers.keys }, (_, k) => groups.keyValue(group, k));
    return index.members(index.find(key));
  }

  /** Whether the conditions of a reading row are met by a row so seen; a condition without a value asks for nothing. */
  #meets(wanted: readonly Column[], seen: SeenRows, at: number, reader: number): boolean {
    const { conditions } = this.of;
    for (let k = 0; k < conditions.length; k++) {
      const { comparison } = conditions[k] as RangeCondition;
      const { values, states } = wanted[k] as Column;
      if (states[reader] !== FILLED) return false;
      if (!isWithin(comparison, seen.cell(at, k), values[reader] as number)) return false;
    }
    return true;
  }
}
