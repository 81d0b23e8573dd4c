// The graph's nodes around groups: one keeps an index current, one keeps group totals current. The rows of an index node's
// change sets are groups, not rows; the same holds for a rollup node.

import { type Node, Source } from './graph.ts';
import type { GroupIndex } from './group-index.ts';
import type { Rollup } from './rollup.ts';
import { RowSet } from './row-set.ts';

/** Dirty: rows of the table whose key cells or existence changed. Changed: groups that gained or lost rows. */
export class IndexNode implements Node {
  readonly name = '';
  readonly dirty = new RowSet();
  readonly feeds: Node[] = [];
  readonly source = new Source(this);
  rank = 0;
  kept = false;
  readonly index: GroupIndex;

  constructor(index: GroupIndex) {
    this.index = index;
  }

  run(changed: RowSet): void {
    if (this.dirty.all) {
      this.index.fromScratch();
      this.kept = true;
      changed.addAll();
      return;
    }
    for (let i = 0; i < this.dirty.count; i++) this.index.update(this.dirty.at(i), changed);
  }
}

/** A node that works by groups and also hears of changed rows: those become groups only when the index is known to be current. */
abstract class GroupReader implements Node {
  readonly name = '';
  readonly dirty = new RowSet();
  readonly feeds: Node[] = [];
  readonly source = new Source(this);
  rank = 0;
  readonly index: GroupIndex;
  readonly #rows = new RowSet();

  constructor(index: GroupIndex) {
    this.index = index;
  }

  /** Takes changed rows of the source table. */
  rowsChanged(rows: RowSet): void {
    if (rows.all) this.dirty.addAll();
    else this.#rows.addFrom(rows);
  }

  /** Adds the groups of the changed rows to the dirty ones. */
  protected takeRows(): void {
    for (let i = 0; i < this.#rows.count; i++) {
      const group = this.index.groupOf[this.#rows.at(i)] ?? -1;
      if (group >= 0) this.dirty.add(group);
    }
    this.#rows.clear();
  }

  abstract run(changed: RowSet): void;
}

/** Dirty: groups, and rows of the source table whose value or filter cells changed. Changed: groups whose total did. */
export class RollupNode extends GroupReader {
  readonly rollup: Rollup;

  constructor(rollup: Rollup) {
    super(rollup.index);
    this.rollup = rollup;
  }

  override run(changed: RowSet): void {
    const { rollup, index } = this;
    this.takeRows();
    if (this.dirty.all) {
      for (let group = 0; group < index.groupCount; group++) rollup.refresh(group);
      changed.addAll();
      return;
    }
    for (let i = 0; i < this.dirty.count; i++) {
      const group = this.dirty.at(i);
      if (group < index.groupCount && rollup.refresh(group)) changed.add(group);
    }
  }
}

/** As a rollup node without a total: says which groups' rows changed in cells that scanning formulas read. */
export class WatchNode extends GroupReader {
  override run(changed: RowSet): void {
    this.takeRows();
    changed.addFrom(this.dirty);
  }
}
